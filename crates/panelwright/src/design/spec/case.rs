//! What a design says of the case: sheet, sleeve, brackets, feet, vents, templates.

use super::picks::picks;
use super::printer::PrinterSpec;
use super::reader::Reader;
use super::{Material, PaperName, Wall};
use crate::dimensions::sheets::thickness_tolerance;

picks!(/// Which panels run through at the sleeve's corners.
    Corners { Sides = "sides", Face = "face" });
picks!(/// How the sleeve's panels are joined.
    SleeveJoin { Brackets = "brackets", Glue = "glue" });
picks!(/// The way the sleeve comes off.
    Slide { Up = "up", Forward = "forward" });
picks!(/// Screw size of brackets.
    BracketThread { M3 = "m3", M4 = "m4" });
picks!(/// Clearance series of ISO 273.
    HoleFit { Fine = "fine", Medium = "medium", Coarse = "coarse" });
picks!(/// How sleeve brackets are screwed to their panels.
    BracketScrews { Through = "through", Inside = "inside" });
picks!(/// Kind of feet.
    FeetKind { Bolts = "bolts", Pads = "pads", Spikes = "spikes", None = "none" });
picks!(/// Pattern of a vent.
    VentPattern { Slots = "slots", Rounds = "rounds" });
picks!(/// What to do with a panel of the paper's own size.
    FullPanel { Ticks = "ticks", Tiles = "tiles" });

/// What a vent is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name says it")]
pub enum VentFor {
    Card,
    Supply,
    Cooler,
    Extra,
}

/// Sheet and finish.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetSpec {
    /// Material.
    pub material: Material,
    /// As sold.
    pub nominal_mm: f64,
    /// Measured; open: as sold.
    pub measured_mm: Option<f64>,
    /// Strays by ±.
    pub varies_mm: Option<f64>,
    /// Film and paint on outside faces, together.
    pub finish_out_mm: f64,
    /// Film and paint on inside faces, together.
    pub finish_in_mm: f64,
    /// Film on outside faces alone.
    pub film_out_mm: f64,
    /// Film on inside faces alone.
    pub film_in_mm: f64,
    /// Paint on cut edges.
    pub paint_edges_mm: f64,
    /// Sheet as bought: width, height.
    pub stock_mm: [f64; 2],
}

impl SheetSpec {
    /// The thickness every panel is worked out from: measured, else as sold.
    #[must_use]
    pub fn thickness_mm(&self) -> f64 {
        self.measured_mm.unwrap_or(self.nominal_mm)
    }

    /// How far its thickness strays, ± mm: as the maker says, else what its standard allows.
    #[must_use]
    pub fn strays_mm(&self) -> f64 {
        let table = thickness_tolerance(self.material.into(), self.nominal_mm);
        self.varies_mm.or(table.map(|sourced| sourced.get())).unwrap_or(0.0)
    }
}

/// Sleeve.
#[derive(Clone, Debug, PartialEq)]
pub struct SleeveSpec {
    /// Running clearance on each sliding face, after films and paint: the maker's own, else what the making needs.
    pub clearance_mm: f64,
    /// Who runs through.
    pub corners: Corners,
    /// How its panels are joined.
    pub join: SleeveJoin,
    /// The way it comes off.
    pub slide: Slide,
    /// Also held at the sides.
    pub side_screws: bool,
}

/// A right-angle bracket: two equal legs of sheet metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BracketSize {
    /// Outside of the corner to the end of a leg.
    pub leg_mm: f64,
    /// Width along the corner.
    pub width_mm: f64,
    /// Thickness of a leg.
    pub thickness_mm: f64,
    /// Outside of the corner to the hole's centre.
    pub hole_mm: f64,
}

/// Brackets and screws.
#[derive(Clone, Debug, PartialEq)]
pub struct HardwareSpec {
    /// Screw size.
    pub thread: BracketThread,
    /// Hole series.
    pub fit: HoleFit,
    /// Corner bracket.
    pub bracket: BracketSize,
    /// Captive-nut bracket.
    pub captive: BracketSize,
    /// How sleeve brackets are screwed.
    pub screws: BracketScrews,
    /// Length of the short screws, when given.
    pub short_screw_mm: Option<f64>,
}

/// Feet.
#[derive(Clone, Debug, PartialEq)]
pub struct FeetSpec {
    /// Kind.
    pub kind: FeetKind,
    /// Free height under the floor; 0 without feet.
    pub height_mm: f64,
    /// Centre from the floor's edges.
    pub inset_mm: f64,
}

/// One vent.
#[derive(Clone, Debug, PartialEq)]
pub struct VentSpec {
    /// What it is for.
    pub purpose: VentFor,
    /// Pattern; `None` when switched off.
    pub pattern: Option<VentPattern>,
    /// Panel; `None`: the one next to what breathes.
    pub wall: Option<Wall>,
    /// Middle of the region from the panel's left edge, from outside.
    pub across_mm: Option<f64>,
    /// Middle of the region from the panel's lower edge, from outside.
    pub up_mm: Option<f64>,
    /// Region's width.
    pub width_mm: Option<f64>,
    /// Region's height.
    pub height_mm: Option<f64>,
    /// Slot width or round diameter.
    pub size_mm: f64,
    /// Least web.
    pub web_mm: f64,
}

/// Templates.
#[derive(Clone, Debug, PartialEq)]
pub struct TemplateSpec {
    /// Paper in the printer.
    pub paper: PaperName,
    /// Printer's margin.
    pub margin_mm: f64,
    /// A panel of the paper's own size.
    pub full: FullPanel,
    /// Overlap of tiles.
    pub overlap_mm: f64,
    /// The printer, as measured.
    pub printer: PrinterSpec,
}

pub(super) fn sheet(read: &Reader) -> SheetSpec {
    SheetSpec {
        material: Material::of(read.name("sheet.material")).unwrap_or(Material::Other),
        nominal_mm: read.mm("sheet.nominal"),
        measured_mm: read.open("sheet.measured"),
        varies_mm: read.open("sheet.varies"),
        finish_out_mm: read.mm("sheet.film_out") + read.mm("sheet.paint_out"),
        finish_in_mm: read.mm("sheet.film_in") + read.mm("sheet.paint_in"),
        film_out_mm: read.mm("sheet.film_out"),
        film_in_mm: read.mm("sheet.film_in"),
        paint_edges_mm: read.mm("sheet.paint_edges"),
        stock_mm: [read.mm("stock.width"), read.mm("stock.height")],
    }
}

pub(super) fn hardware(read: &Reader) -> HardwareSpec {
    let bracket = |name: &str| BracketSize {
        leg_mm: read.mm(&format!("{name}.leg")),
        width_mm: read.mm(&format!("{name}.width")),
        thickness_mm: read.mm(&format!("{name}.thickness")),
        hole_mm: read.mm(&format!("{name}.hole")),
    };
    HardwareSpec {
        thread: BracketThread::of(read.name("hardware.thread")).unwrap_or(BracketThread::M3),
        fit: HoleFit::of(read.name("hardware.fit")).unwrap_or(HoleFit::Medium),
        bracket: bracket("bracket"),
        captive: bracket("captive"),
        screws: BracketScrews::of(read.name("bracket.screws")).unwrap_or(BracketScrews::Through),
        short_screw_mm: read.open("bracket.short_screw"),
    }
}

pub(super) fn feet(read: &Reader) -> FeetSpec {
    let kind = FeetKind::of(read.name("feet.kind")).unwrap_or(FeetKind::None);
    FeetSpec {
        kind,
        height_mm: if kind == FeetKind::None { 0.0 } else { read.mm("feet.height") },
        inset_mm: read.mm("feet.inset"),
    }
}

pub(super) fn vents(read: &Reader) -> Vec<VentSpec> {
    [
        (VentFor::Card, "vent_card"),
        (VentFor::Supply, "vent_supply"),
        (VentFor::Cooler, "vent_cooler"),
        (VentFor::Extra, "vent_extra"),
    ]
    .into_iter()
    .map(|(purpose, name)| {
        let key = |field: &str| format!("{name}.{field}");
        VentSpec {
            purpose,
            pattern: VentPattern::of(read.name(&key("pattern"))),
            wall: Wall::of(read.name(&key("panel"))),
            across_mm: read.open(&key("across")),
            up_mm: read.open(&key("up")),
            width_mm: read.open(&key("width")),
            height_mm: read.open(&key("height")),
            size_mm: read.mm(&key("size")),
            web_mm: read.mm(&key("web")),
        }
    })
    .collect()
}
