//! What is to be cut, and from what: the question that is put to the search.

use thiserror::Error;

use super::plan::Rect;

/// Pieces to cut, sheets to cut them from, and how.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What is wanted.
    pub pieces: Vec<Piece>,
    /// What there is.
    pub sheets: Vec<Sheet>,
    /// How it is cut.
    pub rules: Rules,
}

/// A rectangle that is wanted, once or several times.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What the maker calls it; only passed through.
    pub label: String,
    /// Size along x, mm.
    pub width: f64,
    /// Size along y, mm.
    pub height: f64,
    /// How many.
    pub count: usize,
    /// Whether it may lie turned by 90 degrees. Does not matter where piece and sheet both have a grain: that decides.
    pub may_turn: bool,
    /// Which way the grain of the finished piece must run.
    pub grain: Grain,
    /// Rectangles within the piece, in its own directions from its lower left corner, that other pieces may be cut
    /// from. What must stay free at the rim of the opening is taken off already. Only for free cuts; usually none.
    pub openings: Vec<Rect>,
}

/// Sheets of one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What the maker calls it; only passed through.
    pub label: String,
    /// Size along x, mm.
    pub width: f64,
    /// Size along y, mm.
    pub height: f64,
    /// How many there are; `None` for as many as are needed.
    pub count: Option<usize>,
    /// Which way its grain runs.
    pub grain: Grain,
    /// Whether it is left over from earlier work: of two equal sheets the offcut is taken. Among prices an offcut without
    /// one costs nothing.
    pub offcut: bool,
    /// What one costs, in any currency. Of layouts on equally many sheets the lightest is taken: by price when every
    /// sheet that is no offcut has one, by area otherwise.
    pub price: Option<f64>,
}

/// The direction of grain, or of a face that must not be turned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Grain {
    /// None to be seen, or of no matter.
    #[default]
    None,
    /// Along the width (x).
    AlongWidth,
    /// Along the height (y).
    AlongHeight,
}

/// How sheets are cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rules {
    /// Taken off every edge of a sheet before anything else, kerf of that cut included, mm.
    pub trim: f64,
    /// Kept between neighbours: the saw's kerf, or cutter diameter plus what shall stand between two cuts, mm.
    pub gap: f64,
    /// The kind of cut.
    pub method: Method,
}

/// The kind of cut that frees a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Every cut goes straight from edge to edge of what is being cut: a panel saw, a table saw, a knife and a ruler.
    Guillotine,
    /// Any closed path: a laser, a router, a jigsaw.
    Free,
}

/// Why a job cannot be worked on.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum JobError {
    /// A size is no number, not above zero, or beyond [`LARGEST`].
    #[error("{what}: {name} must be above 0 and at most {LARGEST} mm")]
    Size {
        /// The label of the piece or sheet.
        what: String,
        /// Which of its sizes.
        name: &'static str,
    },
    /// An opening is not within its piece.
    #[error("{0}: an opening does not lie within the piece")]
    Opening(String),
    /// A trim or gap is no number, negative, or beyond [`LARGEST`].
    #[error("the {0} must be at least 0 and at most {LARGEST} mm")]
    Rule(&'static str),
    /// A price is no number, or negative, or beyond 10^9.
    #[error("{0}: the price must be a number from 0 to 1 000 000 000")]
    Price(String),
    /// More than [`MOST`] pieces.
    #[error("more than {MOST} pieces at once")]
    TooMany,
}

/// The largest size that is worked with, mm: well beyond any sheet that is sold.
pub const LARGEST: f64 = 20_000.0;

/// The most pieces in one job: beyond that the answer would keep the page waiting; a choice.
pub const MOST: usize = 2000;

impl Job {
    /// Looks whether every number makes sense.
    ///
    /// # Errors
    ///
    /// Says which number does not.
    pub fn validate(&self) -> Result<(), JobError> {
        let pieces = self.pieces.iter().map(|piece| (&piece.label, piece.width, piece.height));
        let sheets = self.sheets.iter().map(|sheet| (&sheet.label, sheet.width, sheet.height));
        for (label, width, height) in pieces.chain(sheets) {
            for (name, size) in [("width", width), ("height", height)] {
                // Below half a unit it would be nothing.
                if !(0.001..=LARGEST).contains(&size) {
                    return Err(JobError::Size { what: label.clone(), name });
                }
            }
        }
        for piece in &self.pieces {
            let within = |from: f64, size: f64, whole: f64| {
                (0.0..=LARGEST).contains(&from)
                    && (0.001..=LARGEST).contains(&size)
                    && units(from) + units(size) <= units(whole)
            };
            let sound =
                |rect: &Rect| within(rect.x, rect.width, piece.width) && within(rect.y, rect.height, piece.height);
            if !piece.openings.iter().all(sound) {
                return Err(JobError::Opening(piece.label.clone()));
            }
        }
        for (name, size) in [("trim", self.rules.trim), ("gap", self.rules.gap)] {
            if !(0.0..=LARGEST).contains(&size) {
                return Err(JobError::Rule(name));
            }
        }
        for sheet in &self.sheets {
            if !sheet.price.is_none_or(|price| (0.0..=1e9).contains(&price)) {
                return Err(JobError::Price(sheet.label.clone()));
            }
        }
        let pieces = self.pieces.iter().fold(0_usize, |sum, piece| sum.saturating_add(piece.count));
        if pieces > MOST { Err(JobError::TooMany) } else { Ok(()) }
    }
}

/// Which ways up a piece may lie on a sheet: as it is, turned by 90 degrees. Sizes are another matter.
pub(super) fn ways(piece: &Piece, sheet: &Sheet) -> (bool, bool) {
    if piece.grain == Grain::None || sheet.grain == Grain::None {
        (true, piece.may_turn)
    } else {
        (piece.grain == sheet.grain, piece.grain != sheet.grain)
    }
}

/// Millimetres to whole units of 0.001 mm, in which everything is computed exactly.
pub(super) fn units(mm: f64) -> i64 {
    (mm * 1000.0).round() as i64
}

/// And back.
pub(super) fn mm(units: i64) -> f64 {
    units as f64 / 1000.0
}
