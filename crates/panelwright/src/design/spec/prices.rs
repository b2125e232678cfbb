//! What a design says of buying and of time: the maker's own prices, pack sizes, spares and rates.

use super::reader::Reader;

/// What is bought in packs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name says it")]
pub enum Bought {
    Bracket,
    Captive,
    Screw,
    Nut,
    Washer,
    Standoff,
    Foot,
    Fan,
}

impl Bought {
    /// Every kind, in the order of the choices.
    pub const ALL: [Self; 8] =
        [Self::Bracket, Self::Captive, Self::Screw, Self::Nut, Self::Washer, Self::Standoff, Self::Foot, Self::Fan];

    /// Its name in the keys of the choices: `price.screw`.
    const fn name(self) -> &'static str {
        match self {
            Self::Bracket => "bracket",
            Self::Captive => "captive",
            Self::Screw => "screw",
            Self::Nut => "nut",
            Self::Washer => "washer",
            Self::Standoff => "standoff",
            Self::Foot => "foot",
            Self::Fan => "fan",
        }
    }
}

/// How something is sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackSpec {
    /// What a pack costs, in the maker's currency.
    pub price: Option<f64>,
    /// Pieces in a pack; 1 when sold singly.
    pub pieces: u32,
}

/// Prices, packs, spares and rates.
#[derive(Clone, Debug, PartialEq)]
pub struct PricesSpec {
    /// How many cases are made.
    pub cases: u32,
    /// Written before every sum; may be empty.
    pub currency: String,
    /// One sheet as bought.
    pub sheet: Option<f64>,
    /// A square metre of film.
    pub film: Option<f64>,
    /// A bottle of glue.
    pub glue: Option<f64>,
    /// A tin of edge paint.
    pub paint: Option<f64>,
    /// Packs of each kind, in the order of [`Bought::ALL`].
    pub packs: [PackSpec; 8],
    /// Spares of each kind of screw, nut and washer.
    pub spare_small: u32,
    /// Film wasted, as a share.
    pub film_waste: f64,
    /// The maker's pace.
    pub rates: RatesSpec,
}

/// The maker's own pace, minutes; `None` where nothing is said.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RatesSpec {
    /// For a metre of cut.
    pub cut: Option<f64>,
    /// For a hole.
    pub hole: Option<f64>,
    /// For an opening, besides its cut.
    pub opening: Option<f64>,
    /// For a panel, besides all that.
    pub panel: Option<f64>,
}

impl PricesSpec {
    pub(super) fn of(read: &Reader) -> Self {
        // Ranges end at 5000 or below, so the casts keep the value.
        let whole = |key: &str| read.open(key).map(|count| count as u32);
        let pack = |kind: Bought| PackSpec {
            price: read.open(&format!("price.{}", kind.name())),
            pieces: whole(&format!("pack.{}", kind.name())).unwrap_or(1).max(1),
        };
        Self {
            cases: whole("kit.count").unwrap_or(1).max(1),
            currency: read.text("price.currency"),
            sheet: read.open("price.sheet"),
            film: read.open("price.film"),
            glue: read.open("price.glue"),
            paint: read.open("price.paint"),
            packs: Bought::ALL.map(pack),
            spare_small: whole("spare.small").unwrap_or(0),
            film_waste: read.mm("spare.film") / 100.0,
            rates: RatesSpec {
                cut: read.open("rate.cut"),
                hole: read.open("rate.hole"),
                opening: read.open("rate.opening"),
                panel: read.open("rate.panel"),
            },
        }
    }

    /// How a kind is sold.
    #[must_use]
    pub const fn pack(&self, kind: Bought) -> PackSpec {
        self.packs[kind as usize]
    }
}
