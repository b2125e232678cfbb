//! Sheet materials: how thick they really are, how heavy, and how they are sold.
//!
//! Invariant: a panel is worked out from the measured thickness; the numbers here are what to
//! expect before measuring. Never take "6 mm plywood" for 6.0 mm.

use super::catalogue::Entry;
use super::documents::{ACRYLIC_SHEETS, BIRCH_SHEETS, EN_622_1, ISO_7823, MDF_SHEETS, TRADE, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

pub use super::general_tolerances::*;

/// The sheets a case is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Material {
    /// Medium density fibreboard.
    Fibreboard,
    /// Birch plywood.
    Plywood,
    /// Acrylic.
    Acrylic,
    /// Hardboard.
    Hardboard,
    /// Something else: the maker measures it.
    Other,
}

/// How acrylic was made: cast sheet varies much more in thickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AcrylicKind {
    /// Cast between glass.
    Cast,
    /// Extruded.
    Extruded,
}

/// What a sheet sold under a thickness really measures, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RealThickness {
    /// As sold.
    pub nominal_mm: f64,
    /// Least to expect.
    pub least_mm: f64,
    /// Average.
    pub mean_mm: f64,
    /// Most to expect.
    pub most_mm: f64,
    /// Where these stand.
    pub source: Source,
}

impl RealThickness {
    /// The larger of the two deviations from the average: a symmetrical ± for stack-ups.
    #[must_use]
    pub fn plus_minus_mm(&self) -> f64 {
        (self.most_mm - self.mean_mm).max(self.mean_mm - self.least_mm)
    }
}

impl From<crate::design::Material> for Material {
    /// The tables' name of a material that a design chose.
    fn from(chosen: crate::design::Material) -> Self {
        use crate::design::Material as Chosen;
        match chosen {
            Chosen::Fibreboard => Self::Fibreboard,
            Chosen::Plywood => Self::Plywood,
            Chosen::Acrylic => Self::Acrylic,
            Chosen::Hardboard => Self::Hardboard,
            Chosen::Other => Self::Other,
        }
    }
}

impl Material {
    /// All materials.
    pub const ALL: [Self; 5] = [Self::Fibreboard, Self::Plywood, Self::Acrylic, Self::Hardboard, Self::Other];

    /// The plain name.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Fibreboard => "fibreboard",
            Self::Plywood => "birch plywood",
            Self::Acrylic => "acrylic",
            Self::Hardboard => "hardboard",
            Self::Other => "other sheet",
        }
    }

    /// What the maker should know about it.
    #[must_use]
    pub const fn note(self) -> &'static str {
        match self {
            Self::Fibreboard => "Screw through it with washers, never into the edge of 6 mm sheet. It swells when wet.",
            Self::Plywood => "Measure it: sheet sold as 6.5 mm may be 6.1 to 6.9 mm thick.",
            Self::Acrylic => {
                "No countersunk heads, no alcohol, large holes with soft washers; edges cut by laser may crack."
            }
            Self::Hardboard => "One smooth face. Good for backs and grilles, too thin for joints at its edge.",
            Self::Other => "Measure its thickness, and try a hole and a cut first.",
        }
    }
}

/// Birch plywood, from a producer's sheet: as sold, average, least, most.
const PLYWOOD: [RealThickness; 6] = [
    plywood(4.0, 3.5, 3.8, 4.1),
    plywood(6.5, 6.1, 6.4, 6.9),
    plywood(9.0, 8.8, 9.2, 9.5),
    plywood(12.0, 11.5, 12.0, 12.5),
    plywood(15.0, 14.3, 14.9, 15.3),
    plywood(18.0, 17.1, 17.7, 18.1),
];

const fn plywood(nominal_mm: f64, least_mm: f64, mean_mm: f64, most_mm: f64) -> RealThickness {
    RealThickness {
        nominal_mm,
        least_mm,
        mean_mm,
        most_mm,
        source: Source::published(BIRCH_SHEETS, "sanded thickness"),
    }
}

/// How far from a listed thickness plywood may be sold and still be taken for that row, mm.
const SAME_PLYWOOD_MM: f64 = 0.55;

/// What a sheet sold as `nominal_mm` really measures; `None` where nothing is known.
///
/// Acrylic is taken as cast, the less even kind: see [`acrylic_thickness`].
#[must_use]
pub fn real_thickness(material: Material, nominal_mm: f64) -> Option<RealThickness> {
    match material {
        Material::Fibreboard | Material::Hardboard => Some(fibreboard_thickness(material, nominal_mm)),
        Material::Acrylic => Some(acrylic_thickness(AcrylicKind::Cast, nominal_mm)),
        Material::Plywood => PLYWOOD
            .into_iter()
            .filter(|row| (row.nominal_mm - nominal_mm).abs() <= SAME_PLYWOOD_MM)
            .min_by(|a, b| (a.nominal_mm - nominal_mm).abs().total_cmp(&(b.nominal_mm - nominal_mm).abs())),
        Material::Other => None,
    }
}

fn fibreboard_thickness(material: Material, nominal_mm: f64) -> RealThickness {
    let (half, source) = if nominal_mm > 19.0 {
        (0.3, Source::from_memory(EN_622_1, "thickness tolerance over 19 mm"))
    } else if material == Material::Hardboard {
        (0.2, Source::published(MDF_SHEETS, "thin dry-process board, thickness tolerance"))
    } else {
        (0.2, Source::published(EN_622_1, "thickness tolerance up to 19 mm, read on data sheets"))
    };
    symmetrical(nominal_mm, half, source)
}

/// What acrylic really measures, by how it was made.
#[must_use]
pub fn acrylic_thickness(kind: AcrylicKind, nominal_mm: f64) -> RealThickness {
    match kind {
        AcrylicKind::Cast => {
            let source = Source::from_memory(ISO_7823, "part 1, cast: 0.4 mm and a tenth of the thickness");
            symmetrical(nominal_mm, 0.4 + 0.1 * nominal_mm, source)
        }
        AcrylicKind::Extruded => {
            let source = Source::from_memory(ISO_7823, "part 2, extruded: 5 % from 3 mm up");
            symmetrical(nominal_mm, 0.05 * nominal_mm.max(3.0), source)
        }
    }
}

fn symmetrical(nominal_mm: f64, half: f64, source: Source) -> RealThickness {
    RealThickness { nominal_mm, least_mm: nominal_mm - half, mean_mm: nominal_mm, most_mm: nominal_mm + half, source }
}

/// How far a sheet strays from its average thickness, ±; `None` where nothing is known.
#[must_use]
pub fn thickness_tolerance(material: Material, nominal_mm: f64) -> Option<Sourced<f64>> {
    let real = real_thickness(material, nominal_mm)?;
    Some(Sourced::new(real.plus_minus_mm(), real.source))
}

/// Density for weights, kg/m³; `None` for a sheet nothing is known of.
#[must_use]
pub const fn density(material: Material) -> Option<Sourced<f64>> {
    match material {
        Material::Fibreboard => {
            Some(Sourced::new(750.0, Source::published(MDF_SHEETS, "density 700 to 800, thin board up to 880")))
        }
        Material::Plywood => {
            Some(Sourced::new(685.0, Source::published(BIRCH_SHEETS, "density 660 to 710, the middle")))
        }
        Material::Acrylic => {
            Some(Sourced::new(1180.0, Source::published(ACRYLIC_SHEETS, "density 1170 to 1190, the middle")))
        }
        Material::Hardboard => Some(Sourced::new(900.0, Source::from_memory("EN 622-2", "type HB: above 900"))),
        Material::Other => None,
    }
}

/// Thicknesses a material is sold in, the thinnest first; empty for a sheet nothing is known of.
#[must_use]
pub const fn thicknesses(material: Material) -> Sourced<&'static [f64]> {
    let list: &[f64] = match material {
        Material::Fibreboard => &[3.0, 4.0, 6.0, 9.0, 12.0, 15.0, 18.0, 22.0, 25.0],
        Material::Plywood => &[3.0, 4.0, 6.5, 9.0, 12.0, 15.0, 18.0],
        Material::Acrylic => &[2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0],
        Material::Hardboard => &[3.2, 6.0],
        Material::Other => &[],
    };
    Sourced::new(list, Source::common_practice(TRADE, "thicknesses in stock"))
}

/// A sheet as it is sold, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockSheet {
    /// The longer side.
    pub length_mm: f64,
    /// The shorter side.
    pub width_mm: f64,
    /// Where it stands.
    pub source: Source,
}

const fn stock(length_mm: f64, width_mm: f64) -> StockSheet {
    StockSheet { length_mm, width_mm, source: Source::common_practice(TRADE, "sheets in stock") }
}

const fn seen(length_mm: f64, width_mm: f64) -> StockSheet {
    StockSheet { length_mm, width_mm, source: Source::published(BIRCH_SHEETS, "sheet sizes") }
}

/// Sheets a material is sold in, whole ones first, then cut-down ones.
#[must_use]
pub const fn stock_sheets(material: Material) -> &'static [StockSheet] {
    const FIBREBOARD: [StockSheet; 9] = [
        stock(2440.0, 1220.0),
        stock(2800.0, 2070.0),
        stock(3050.0, 1220.0),
        stock(2463.8, 1244.6),
        stock(1220.0, 610.0),
        stock(1200.0, 600.0),
        stock(1830.0, 610.0),
        stock(810.0, 405.0),
        stock(609.6, 609.6),
    ];
    const PLYWOOD: [StockSheet; 5] =
        [stock(1525.0, 1525.0), seen(2440.0, 1220.0), seen(3050.0, 1525.0), stock(1220.0, 610.0), stock(600.0, 300.0)];
    const ACRYLIC: [StockSheet; 6] = [
        stock(2050.0, 1520.0),
        stock(3050.0, 2030.0),
        stock(2440.0, 1220.0),
        stock(1000.0, 600.0),
        stock(600.0, 400.0),
        stock(300.0, 200.0),
    ];
    const HARDBOARD: [StockSheet; 2] = [stock(2440.0, 1220.0), stock(1220.0, 610.0)];
    match material {
        Material::Fibreboard => &FIBREBOARD,
        Material::Plywood => &PLYWOOD,
        Material::Acrylic => &ACRYLIC,
        Material::Hardboard => &HARDBOARD,
        Material::Other => &[],
    }
}

sizes! {
    group "sheets";
    EDGE_TRIM: [f64; 2] = [5.0, 10.0], "Trim off each edge of a sheet before laying panels on it", "{} to {} mm",
        Source::common_practice(WORKSHOP, "edges are rarely square and clean");
    LASER_BED_SIDES: [f64; 2] = [300.0, 200.0], "Smallest common laser bed; larger ones go to 1300 x 900", "{} × {} mm",
        Source::common_practice(TRADE, "laser beds limit the size of a panel");
    FIBREBOARD_MOVES: [f64; 2] = [0.0005, 0.0035], "Fibreboard grows for each percent of moisture, along and through, as a share of its size", "{} / {}",
        Source::published(MDF_SHEETS, "movement with moisture");
    BIG_INSET_PANEL: f64 = 300.0, "Inset fibreboard panel that wants 0.5 mm of play a side", "over {} mm",
        Source::derived(MDF_SHEETS, "movement with moisture: 0.5 mm on 350 mm for 3 percent");
    ACRYLIC_EXPANDS: f64 = 0.07, "Acrylic grows, each metre and kelvin", "{} mm",
        Source::published(ACRYLIC_SHEETS, "thermal expansion, 0.05 to 0.09");
    ACRYLIC_HOLE_EXTRA: f64 = 0.5, "Acrylic hole larger than its screw, beyond the expansion", "{} mm",
        Source::common_practice(WORKSHOP, "soft washers, no countersunk heads");
    WEB_MIN_FIBREBOARD: f64 = 2.0, "Web between holes in 6 mm fibreboard", "at least {} mm",
        Source::common_practice(WORKSHOP, "the careful rule is the sheet's thickness");
    WEB_LASER_CAREFUL: f64 = 1.0, "Laser-cut webs to be careful with are narrower than the sheet is thick", "{} times the thickness",
        Source::published("Notes of commercial laser cutters", "webs as wide as the sheet is thick");
}

/// Lists the sizes of this file and of the general tolerances.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for row in PLYWOOD {
        let name = format!("Birch plywood sold as {}: average, least, most", row.nominal_mm);
        let numbers = [row.mean_mm, row.least_mm, row.most_mm];
        out.push(Entry::new("sheets", name, "{} / {} / {} mm", &numbers, row.source));
    }
    for (name, row) in [
        ("Fibreboard up to 19 mm", fibreboard_thickness(Material::Fibreboard, 6.0)),
        ("Fibreboard over 19 mm", fibreboard_thickness(Material::Fibreboard, 22.0)),
        ("Hardboard", fibreboard_thickness(Material::Hardboard, 3.2)),
        ("Cast acrylic of 6 mm", acrylic_thickness(AcrylicKind::Cast, 6.0)),
        ("Extruded acrylic of 6 mm", acrylic_thickness(AcrylicKind::Extruded, 6.0)),
    ] {
        let name = format!("{name}: thickness strays by");
        out.push(Entry::new("sheets", name, "±{} mm", &[row.plus_minus_mm()], row.source));
    }
    for material in Material::ALL {
        let name = |what: &str| format!("{}: {what}", material.label());
        if let Some(density) = density(material) {
            out.push(Entry::new("sheets", name("density"), "{} kg/m³", &[density.get()], density.source()));
        }
        let sold = thicknesses(material);
        if !sold.get().is_empty() {
            out.push(Entry::new("sheets", name("thicknesses sold"), "{*} mm", sold.get(), sold.source()));
        }
        for sheet in stock_sheets(material) {
            let name = name(&format!("sheet {} × {}", sheet.length_mm, sheet.width_mm));
            out.push(Entry::new("sheets", name, "{} × {} mm", &[sheet.length_mm, sheet.width_mm], sheet.source));
        }
    }
    size_entries(out);
    super::general_tolerances::entries(out);
}
