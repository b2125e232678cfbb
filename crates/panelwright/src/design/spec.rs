//! What a design means: plain typed values, read from the choices once. Nobody looks at a key after this.
//!
//! After [`Spec::of`] you may rely on: lengths are finite millimetres inside their choice's range; parts that are
//! "none" are `None` or absent; what the maker left open and a published size exists for is filled in with that size;
//! what is unknown stays `None`.

mod joints;
mod making;
mod picks;
mod prices;
mod printer;
mod reader;
mod stock;

use super::design::Design;
use super::list::{DRIVES, FANS};
pub use joints::{Joints, REBATE_SHARE, SLOT_FROM_EDGE, Seam, SeamSpec};
pub use making::{HandSpec, Joint, LaserSpec, MakingSpec, Method, Relief, RouterSpec};
use picks::picks;
pub use prices::{Bought, PackSpec, PricesSpec, RatesSpec};
pub use printer::{PrinterSpec, factor, skew_deg};
use reader::Reader;
pub use stock::{GrainAlong, StockSheetSpec, StockSpec};

/// The whole meaning of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct Spec {
    /// Name of the design; may be empty.
    pub title: String,
    /// The main board.
    pub board: BoardSpec,
    /// The card, if any.
    pub card: Option<CardSpec>,
    /// The cooler, if any.
    pub cooler: Option<CoolerSpec>,
    /// The supply.
    pub supply: SupplySpec,
    /// Drives that are there, with their number (1 …).
    pub drives: Vec<DriveSpec>,
    /// Fans that are there.
    pub fans: Vec<FanSpec>,
    /// Power button.
    pub button: Option<ButtonSpec>,
    /// Front connectors.
    pub ports: Option<PortsSpec>,
    /// How the outside size is found.
    pub size: SizeRule,
    /// Sheet and finish.
    pub sheet: SheetSpec,
    /// Sleeve.
    pub sleeve: SleeveSpec,
    /// Brackets and screws.
    pub hardware: HardwareSpec,
    /// Feet.
    pub feet: FeetSpec,
    /// Vents, in the order card, supply, cooler, extra.
    pub vents: Vec<VentSpec>,
    /// Templates.
    pub template: TemplateSpec,
    /// How it is made: method, tools, joints.
    pub making: MakingSpec,
    /// The sheets at hand.
    pub stock: StockSpec,
    /// Prices, packs, spares and rates.
    pub prices: PricesSpec,
}

picks!(/// Size class of the board.
    BoardForm { MiniItx = "mini-itx", MiniDtx = "mini-dtx", Dtx = "dtx", FlexAtx = "flexatx", MicroAtx = "microatx", Atx = "atx" });
picks!(/// Where the memory stands.
    MemorySide { Right = "right", Front = "front" });
picks!(/// The rear connector opening.
    IoOpening { Open = "open", Rebate = "rebate" });
picks!(/// Height class of a card's bracket.
    CardKind { LowProfile = "low-profile", Standard = "standard" });
picks!(/// Where a card takes its power.
    PlugAt { None = "none", Top = "top", End = "end" });
picks!(/// A card's power plug.
    CardPlug { SixPin = "6-pin", EightPin = "8-pin", SixteenPin = "16-pin" });
picks!(/// How the card window ends.
    Window { Edge = "edge", Closed = "closed" });
picks!(/// What holds the card's tab.
    CardHold { Shelf = "shelf", Tie = "tie", None = "none" });
picks!(/// Kind of cooler.
    CoolerKind { Tower = "tower", Flat = "flat" });
picks!(/// Where a cooler's air goes.
    CoolerAir { Back = "back", Front = "front", Left = "left", Right = "right", Down = "down", Up = "up", None = "none" });
picks!(/// Kind of supply.
    SupplyKind { FullSize = "full-size", Sfx = "sfx", SfxL = "sfx-l", Tfx = "tfx", Flex = "flex", Brick = "brick" });
picks!(/// Pose of the supply.
    SupplyPose { Auto = "auto", EndFront = "end-front", EndBeside = "end-beside", BackFlat = "back-flat", BackTall = "back-tall" });
picks!(/// Which side of a supply its large fan is on; face towards you, level pair of holes on top.
    FanSide { Unknown = "unknown", Upper = "upper", Lower = "lower", None = "none" });
picks!(/// Straight or right-angle plugs.
    PlugShape { Straight = "straight", RightAngle = "right-angle" });
picks!(/// Width class of a drive.
    DriveKind { Inch2_5 = "2.5", Inch3_5 = "3.5" });
picks!(/// Where a drive lies.
    DrivePlace { Below = "below", Floor = "floor", Back = "back" });
picks!(/// One of the six panels of the case.
    Wall { Floor = "floor", Back = "back", Left = "left", Right = "right", Front = "front", Top = "top" });
picks!(/// Direction of a fan.
    FanAir { Out = "out", In = "in" });
picks!(/// Material of the sheet.
    Material { Fibreboard = "fibreboard", Plywood = "plywood", Acrylic = "acrylic", Hardboard = "hardboard", Other = "other" });
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
picks!(/// A paper size.
    PaperName { A4 = "a4", A3 = "a3", Letter = "letter", Legal = "legal", Tabloid = "tabloid", A1 = "a1", A0 = "a0" });
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

/// The main board and what stands on it.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardSpec {
    /// Size class.
    pub form: BoardForm,
    /// Measured depth; open: the standard's.
    pub depth_mm: Option<f64>,
    /// Floor to underside of the board.
    pub standoff_mm: f64,
    /// Above the board's top face.
    pub memory_height_mm: f64,
    /// Where the memory stands.
    pub memory_side: MemorySide,
    /// Processor centre from the board's right edge, measured.
    pub socket_from_right_mm: Option<f64>,
    /// Processor centre from the board's rear edge, measured.
    pub socket_from_rear_mm: Option<f64>,
    /// An M.2 card on the underside.
    pub m2_below: bool,
    /// Rear connector opening.
    pub io_opening: IoOpening,
}

/// The card.
#[derive(Clone, Debug, PartialEq)]
pub struct CardSpec {
    /// Bracket height class.
    pub kind: CardKind,
    /// Bracket end of the circuit board to the far end.
    pub length_mm: f64,
    /// Above the standard's top edge.
    pub above_mm: f64,
    /// Width of the bracket in slots.
    pub slots: u8,
    /// Component face to the outside of the cooler, measured.
    pub thickness_mm: Option<f64>,
    /// Slot on the board, 0 = nearest the processor.
    pub slot: u8,
    /// Where it takes its power.
    pub plug_at: PlugAt,
    /// Kind of plug.
    pub plug: CardPlug,
    /// How the window ends.
    pub window: Window,
    /// Room above the tab in a closed window.
    pub headroom_mm: f64,
    /// What holds the tab.
    pub hold: CardHold,
}

/// The cooler.
#[derive(Clone, Debug, PartialEq)]
pub struct CoolerSpec {
    /// Tower or flat.
    pub kind: CoolerKind,
    /// Above the processor.
    pub height_mm: f64,
    /// Along x.
    pub width_mm: f64,
    /// Along y.
    pub depth_mm: f64,
    /// Free height under its fins, above the board's top face.
    pub under_mm: f64,
    /// Where its air goes.
    pub air: CoolerAir,
}

/// The supply.
#[derive(Clone, Debug, PartialEq)]
pub struct SupplySpec {
    /// Kind.
    pub kind: SupplyKind,
    /// Measured depth.
    pub depth_mm: Option<f64>,
    /// Measured face width.
    pub face_width_mm: Option<f64>,
    /// Measured face height.
    pub face_height_mm: Option<f64>,
    /// Where it stands.
    pub pose: SupplyPose,
    /// Half a turn about the middle of its face.
    pub turned: bool,
    /// Side of its large fan.
    pub fan_side: FanSide,
    /// Measured hole centres in the face.
    pub holes: Vec<[f64; 2]>,
    /// Room for cables wanted at its inner end.
    pub cable_room_mm: f64,
    /// Mains plug.
    pub plug: PlugShape,
    /// Hole for the jack of an external brick.
    pub jack_hole_mm: Option<f64>,
}

/// One drive.
#[derive(Clone, Debug, PartialEq)]
pub struct DriveSpec {
    /// 1 …: the number in its keys.
    pub number: usize,
    /// Width class.
    pub kind: DriveKind,
    /// Height.
    pub height_mm: f64,
    /// Where it lies.
    pub place: DrivePlace,
    /// Washers under it.
    pub washers: u8,
    /// Its plugs.
    pub plug: PlugShape,
    /// Left edge from the left wall inside.
    pub across_mm: Option<f64>,
    /// Near edge from the front wall inside (floor), or from the floor up (back).
    pub along_mm: Option<f64>,
}

/// One fan.
#[derive(Clone, Debug, PartialEq)]
pub struct FanSpec {
    /// 1 …: the number in its keys.
    pub number: usize,
    /// Frame size.
    pub size_mm: f64,
    /// Panel it is on.
    pub wall: Wall,
    /// Frame depth.
    pub thickness_mm: f64,
    /// Direction.
    pub air: FanAir,
    /// Centre from the panel's left edge, from outside.
    pub across_mm: Option<f64>,
    /// Centre from the panel's lower edge, from outside.
    pub up_mm: Option<f64>,
    /// Measured hole spacing.
    pub spacing_mm: Option<f64>,
}

/// The power button.
#[derive(Clone, Debug, PartialEq)]
pub struct ButtonSpec {
    /// Front or top.
    pub wall: Wall,
    /// Nominal mounting size: 12, 16, 19, 22 or 30.
    pub size_mm: f64,
    /// Depth behind the panel.
    pub depth_mm: f64,
    /// Thickest sheet it clamps.
    pub grip_mm: f64,
    /// Centre from the panel's left edge, from outside.
    pub across_mm: Option<f64>,
    /// Centre from the panel's lower edge, from outside.
    pub up_mm: Option<f64>,
}

/// Front connectors.
#[derive(Clone, Debug, PartialEq)]
pub struct PortsSpec {
    /// Front or top.
    pub wall: Wall,
    /// USB-A sockets.
    pub usb_a: u8,
    /// USB-C sockets.
    pub usb_c: u8,
    /// 3.5 mm jacks.
    pub audio: u8,
    /// Middle of the row from the panel's left edge, from outside.
    pub across_mm: Option<f64>,
    /// Middle of the row from the panel's lower edge, from outside.
    pub up_mm: Option<f64>,
}

/// How the outside size is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SizeRule {
    /// No panel larger than a paper.
    Paper(PaperName),
    /// As small as the parts allow.
    Smallest,
    /// This outside size: width, depth, height.
    Given([f64; 3]),
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
}

/// Sleeve.
#[derive(Clone, Debug, PartialEq)]
pub struct SleeveSpec {
    /// Running clearance on each sliding face, after films and paint.
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

impl Spec {
    /// The meaning of `design`.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        let read = Reader(design);
        let making = MakingSpec::of(&read);
        let stock = StockSpec::of(&read, making.method, making.hand.kerf_mm, making.router.cutter_mm);
        Self {
            title: read.text("design.title"),
            board: board(&read),
            card: card(&read),
            cooler: cooler(&read),
            supply: supply(&read),
            drives: (1..=DRIVES).filter_map(|number| drive(&read, number)).collect(),
            fans: (1..=FANS).filter_map(|number| fan(&read, number)).collect(),
            button: button(&read),
            ports: ports(&read),
            size: match read.name("size.rule") {
                "given" => SizeRule::Given([read.mm("size.width"), read.mm("size.depth"), read.mm("size.height")]),
                "smallest" => SizeRule::Smallest,
                _ => SizeRule::Paper(PaperName::of(read.name("size.paper")).unwrap_or(PaperName::A4)),
            },
            sheet: sheet(&read),
            sleeve: SleeveSpec {
                clearance_mm: read.mm("sleeve.clearance"),
                corners: Corners::of(read.name("sleeve.corners")).unwrap_or(Corners::Sides),
                join: SleeveJoin::of(read.name("sleeve.join")).unwrap_or(SleeveJoin::Brackets),
                slide: Slide::of(read.name("sleeve.slide")).unwrap_or(Slide::Up),
                side_screws: read.on("sleeve.side_screws"),
            },
            hardware: hardware(&read),
            feet: feet(&read),
            vents: vents(&read),
            template: TemplateSpec {
                paper: PaperName::of(read.name("template.paper")).unwrap_or(PaperName::A4),
                margin_mm: read.mm("template.margin"),
                full: FullPanel::of(read.name("template.full")).unwrap_or(FullPanel::Ticks),
                overlap_mm: read.mm("template.overlap"),
                printer: PrinterSpec::of(&read),
            },
            making,
            stock,
            prices: PricesSpec::of(&read),
        }
    }
}

fn board(read: &Reader) -> BoardSpec {
    BoardSpec {
        form: BoardForm::of(read.name("board.form")).unwrap_or(BoardForm::MiniItx),
        depth_mm: read.open("board.depth"),
        standoff_mm: read.mm("board.standoff"),
        memory_height_mm: read.mm("board.memory_height"),
        memory_side: MemorySide::of(read.name("board.memory_side")).unwrap_or(MemorySide::Right),
        socket_from_right_mm: read.open("board.socket_from_right"),
        socket_from_rear_mm: read.open("board.socket_from_rear"),
        m2_below: read.on("board.m2_below"),
        io_opening: IoOpening::of(read.name("board.io_opening")).unwrap_or(IoOpening::Open),
    }
}

fn card(read: &Reader) -> Option<CardSpec> {
    Some(CardSpec {
        kind: CardKind::of(read.name("card.kind"))?,
        length_mm: read.mm("card.length"),
        above_mm: read.mm("card.above"),
        slots: read.count("card.slots"),
        thickness_mm: read.open("card.thickness"),
        slot: read.count("card.slot").saturating_sub(1),
        plug_at: PlugAt::of(read.name("card.plug_at")).unwrap_or(PlugAt::None),
        plug: CardPlug::of(read.name("card.plug")).unwrap_or(CardPlug::EightPin),
        window: Window::of(read.name("card.window")).unwrap_or(Window::Edge),
        headroom_mm: read.mm("card.headroom"),
        hold: CardHold::of(read.name("card.hold")).unwrap_or(CardHold::Shelf),
    })
}

fn cooler(read: &Reader) -> Option<CoolerSpec> {
    Some(CoolerSpec {
        kind: CoolerKind::of(read.name("cooler.kind"))?,
        height_mm: read.mm("cooler.height"),
        width_mm: read.mm("cooler.width"),
        depth_mm: read.mm("cooler.depth"),
        under_mm: read.mm("cooler.under"),
        air: CoolerAir::of(read.name("cooler.air")).unwrap_or(CoolerAir::Back),
    })
}

fn supply(read: &Reader) -> SupplySpec {
    SupplySpec {
        kind: SupplyKind::of(read.name("supply.kind")).unwrap_or(SupplyKind::FullSize),
        depth_mm: read.open("supply.depth"),
        face_width_mm: read.open("supply.face_width"),
        face_height_mm: read.open("supply.face_height"),
        pose: SupplyPose::of(read.name("supply.pose")).unwrap_or(SupplyPose::Auto),
        turned: read.on("supply.turned"),
        fan_side: FanSide::of(read.name("supply.fan_side")).unwrap_or(FanSide::Unknown),
        holes: read.points("supply.holes"),
        cable_room_mm: read.mm("supply.cable_room"),
        plug: PlugShape::of(read.name("supply.plug")).unwrap_or(PlugShape::RightAngle),
        jack_hole_mm: read.open("supply.jack_hole"),
    }
}

fn drive(read: &Reader, number: usize) -> Option<DriveSpec> {
    let key = |name: &str| format!("drive{number}.{name}");
    let kind = DriveKind::of(read.name(&key("kind")))?;
    Some(DriveSpec {
        number,
        kind,
        // The commonest height of each width in SFF-8201 and SFF-8301.
        height_mm: read.open(&key("height")).unwrap_or(match kind {
            DriveKind::Inch2_5 => 7.0,
            DriveKind::Inch3_5 => 26.1,
        }),
        place: DrivePlace::of(read.name(&key("place"))).unwrap_or(DrivePlace::Floor),
        washers: read.count(&key("washers")),
        plug: PlugShape::of(read.name(&key("plug"))).unwrap_or(PlugShape::Straight),
        across_mm: read.open(&key("across")),
        along_mm: read.open(&key("along")),
    })
}

fn fan(read: &Reader, number: usize) -> Option<FanSpec> {
    let key = |name: &str| format!("fan{number}.{name}");
    let size_mm = f64::from(read.name(&key("size")).parse::<u16>().ok()?);
    Some(FanSpec {
        number,
        size_mm,
        wall: Wall::of(read.name(&key("wall"))).unwrap_or(Wall::Back),
        thickness_mm: read.mm(&key("thickness")),
        air: FanAir::of(read.name(&key("air"))).unwrap_or(FanAir::Out),
        across_mm: read.open(&key("across")),
        up_mm: read.open(&key("up")),
        spacing_mm: read.open(&key("spacing")),
    })
}

fn button(read: &Reader) -> Option<ButtonSpec> {
    Some(ButtonSpec {
        wall: Wall::of(read.name("button.wall"))?,
        size_mm: f64::from(read.name("button.size").parse::<u16>().ok()?),
        depth_mm: read.mm("button.depth"),
        grip_mm: read.mm("button.grip"),
        across_mm: read.open("button.across"),
        up_mm: read.open("button.up"),
    })
}

fn ports(read: &Reader) -> Option<PortsSpec> {
    let ports = PortsSpec {
        wall: Wall::of(read.name("ports.wall"))?,
        usb_a: read.count("ports.usb_a"),
        usb_c: read.count("ports.usb_c"),
        audio: read.count("ports.audio"),
        across_mm: read.open("ports.across"),
        up_mm: read.open("ports.up"),
    };
    (ports.usb_a + ports.usb_c + ports.audio > 0).then_some(ports)
}

fn sheet(read: &Reader) -> SheetSpec {
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

fn hardware(read: &Reader) -> HardwareSpec {
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

fn feet(read: &Reader) -> FeetSpec {
    let kind = FeetKind::of(read.name("feet.kind")).unwrap_or(FeetKind::None);
    FeetSpec {
        kind,
        height_mm: if kind == FeetKind::None { 0.0 } else { read.mm("feet.height") },
        inset_mm: read.mm("feet.inset"),
    }
}

fn vents(read: &Reader) -> Vec<VentSpec> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::choice::Kind;
    use crate::design::list::{choice, choices};

    /// `Reader::value` asserts in debug builds that every key it is asked for is in the list.
    #[test]
    fn every_key_is_in_the_list() {
        let mut design = Design::default();
        for number in 1..=DRIVES {
            design.set_json(&format!("drive{number}.kind"), &"3.5".into()).unwrap();
        }
        for number in 1..=FANS {
            design.set_json(&format!("fan{number}.size"), &"120".into()).unwrap();
        }
        design.set_json("ports.wall", &"front".into()).unwrap();
        let spec = Spec::of(&design);
        assert_eq!(spec.drives.len(), DRIVES);
        assert_eq!(spec.fans.len(), FANS);
        assert!(spec.button.is_some() && spec.ports.is_some() && spec.card.is_some() && spec.cooler.is_some());
        assert_eq!(spec.drives[0].height_mm, 26.1);
    }

    #[test]
    fn every_option_of_a_typed_pick_has_a_meaning() {
        let Kind::Pick(options) = &choices()[choice("board.form").unwrap()].kind else { panic!() };
        assert!(options.iter().all(|option| BoardForm::of(option.name).is_some()));
    }
}
