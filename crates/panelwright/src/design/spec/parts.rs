//! What a design says of its parts: board, card, cooler, supply, drives, fans, button, connectors.

use super::Wall;
use super::picks::picks;
use super::reader::Reader;
use crate::dimensions::plugs;

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
picks!(/// Direction of a fan.
    FanAir { Out = "out", In = "in" });

impl PlugShape {
    /// The tables' name of a shape.
    #[must_use]
    pub const fn table(self) -> plugs::PlugShape {
        match self {
            Self::Straight => plugs::PlugShape::Straight,
            Self::RightAngle => plugs::PlugShape::RightAngle,
        }
    }
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
    /// Two opposite corners of the measured opening in the face.
    pub opening: Option<[[f64; 2]; 2]>,
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

pub(super) fn board(read: &Reader) -> BoardSpec {
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

pub(super) fn card(read: &Reader) -> Option<CardSpec> {
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

pub(super) fn cooler(read: &Reader) -> Option<CoolerSpec> {
    Some(CoolerSpec {
        kind: CoolerKind::of(read.name("cooler.kind"))?,
        height_mm: read.mm("cooler.height"),
        width_mm: read.mm("cooler.width"),
        depth_mm: read.mm("cooler.depth"),
        under_mm: read.mm("cooler.under"),
        air: CoolerAir::of(read.name("cooler.air")).unwrap_or(CoolerAir::Back),
    })
}

pub(super) fn supply(read: &Reader) -> SupplySpec {
    SupplySpec {
        kind: SupplyKind::of(read.name("supply.kind")).unwrap_or(SupplyKind::FullSize),
        depth_mm: read.open("supply.depth"),
        face_width_mm: read.open("supply.face_width"),
        face_height_mm: read.open("supply.face_height"),
        pose: SupplyPose::of(read.name("supply.pose")).unwrap_or(SupplyPose::Auto),
        turned: read.on("supply.turned"),
        fan_side: FanSide::of(read.name("supply.fan_side")).unwrap_or(FanSide::Unknown),
        holes: read.points("supply.holes"),
        opening: read.points("supply.opening").try_into().ok(),
        cable_room_mm: read.mm("supply.cable_room"),
        plug: PlugShape::of(read.name("supply.plug")).unwrap_or(PlugShape::RightAngle),
        jack_hole_mm: read.open("supply.jack_hole"),
    }
}

pub(super) fn drive(read: &Reader, number: usize) -> Option<DriveSpec> {
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

pub(super) fn fan(read: &Reader, number: usize) -> Option<FanSpec> {
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

pub(super) fn button(read: &Reader) -> Option<ButtonSpec> {
    Some(ButtonSpec {
        wall: Wall::of(read.name("button.wall"))?,
        size_mm: f64::from(read.name("button.size").parse::<u16>().ok()?),
        depth_mm: read.mm("button.depth"),
        grip_mm: read.mm("button.grip"),
        across_mm: read.open("button.across"),
        up_mm: read.open("button.up"),
    })
}

pub(super) fn ports(read: &Reader) -> Option<PortsSpec> {
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
