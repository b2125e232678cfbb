//! What a design says of its making: method, tools, joints.

use super::joints::Joints;
use super::picks::picks;
use super::reader::Reader;
use super::{Material, Wall};
use crate::dimensions::sheets::{ToleranceClass, general_tolerance};

picks!(/// How a panel is made.
    Method { Hand = "hand", Router = "router", Laser = "laser" });
picks!(/// How a router's inside corners are relieved.
    Relief { Diagonal = "diagonal", Along = "along", None = "none" });
picks!(/// How two panels are joined at a corner.
    Joint { Brackets = "brackets", Blocks = "blocks", Rebate = "rebate", Finger = "finger", Tab = "tab" });
/// Saws and drills.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HandSpec {
    /// Diameter of the hole that passes the blade.
    pub entry_mm: f64,
    /// Depth of the saw's frame.
    pub frame_mm: f64,
    /// Width of the saw's cut.
    pub kerf_mm: f64,
    /// Whether tables for marking out are wanted.
    pub marking: bool,
}

/// A router.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RouterSpec {
    /// Diameter of the cutter.
    pub cutter_mm: f64,
    /// Relief of inside corners.
    pub relief: Relief,
    /// Holding tabs on each panel.
    pub tabs: u8,
    /// Width of a tab.
    pub tab_width_mm: f64,
    /// Height of a tab.
    pub tab_height_mm: f64,
    /// Whether files follow the cutter's centre.
    pub compensated: bool,
}

/// A laser.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LaserSpec {
    /// Measured width of the beam's cut.
    pub kerf_mm: Option<f64>,
    /// Whether files allow for the beam.
    pub compensated: bool,
    /// Whether names and letters are engraved.
    pub lettering: bool,
}

/// Everything about the making.
#[derive(Clone, Debug, PartialEq)]
pub struct MakingSpec {
    /// The method of the design as a whole.
    pub method: Method,
    /// The method of each panel, in the order of [`Wall`].
    pub method_of: [Method; 6],
    /// The machine's accuracy, when measured.
    pub machine_accuracy_mm: Option<f64>,
    /// Saws and drills.
    pub hand: HandSpec,
    /// Router.
    pub router: RouterSpec,
    /// Laser.
    pub laser: LaserSpec,
    /// Cut lines as hairlines in SVG files.
    pub hairline: bool,
    /// How the panels are joined.
    pub joints: Joints,
    /// Wanted width of a finger or tab.
    pub finger_mm: Option<f64>,
    /// Play of fingers and tabs altogether; below 0 they press.
    pub play_mm: f64,
    /// Thickness of a locating block.
    pub block_mm: f64,
    /// Edges and holes of hand work are true to ± this, by the maker's own word.
    own_accuracy_mm: f64,
}

impl MakingSpec {
    pub(super) fn of(read: &Reader) -> Self {
        let method = Method::of(read.name("method")).unwrap_or(Method::Hand);
        let method_of = [Wall::Floor, Wall::Back, Wall::Left, Wall::Right, Wall::Front, Wall::Top]
            .map(|wall| Method::of(read.name(&format!("method.{}", wall.name()))).unwrap_or(method));
        let material = Material::of(read.name("sheet.material")).unwrap_or(Material::Other);
        Self {
            method,
            method_of,
            machine_accuracy_mm: read.open("machine.accuracy"),
            hand: HandSpec {
                entry_mm: read.mm("hand.entry"),
                frame_mm: read.mm("hand.frame"),
                kerf_mm: read.mm("hand.kerf"),
                marking: read.on("hand.marking"),
            },
            router: RouterSpec {
                cutter_mm: read.mm("router.cutter"),
                relief: Relief::of(read.name("router.relief")).unwrap_or(Relief::Diagonal),
                tabs: read.count("router.tabs"),
                tab_width_mm: read.mm("router.tab_width"),
                tab_height_mm: read.mm("router.tab_height"),
                compensated: read.on("router.compensated"),
            },
            laser: LaserSpec {
                kerf_mm: read.open("laser.kerf"),
                compensated: read.on("laser.compensated"),
                lettering: read.on("laser.lettering"),
            },
            hairline: read.on("file.hairline"),
            joints: Joints::of(read, method),
            finger_mm: read.open("joint.finger"),
            play_mm: read.open("joint.play").unwrap_or_else(|| usual_play(method, material)),
            block_mm: read.mm("joint.block"),
            own_accuracy_mm: read.mm("sheet.cut"),
        }
    }

    /// The method of one panel.
    #[must_use]
    pub const fn method(&self, wall: Wall) -> Method {
        self.method_of[wall as usize]
    }

    /// How far an edge of a panel may stray when a length is cut, ± mm: the maker's own figure, else ISO 2768-1 class m
    /// for machines. By hand the maker's figure always stands (`sheet.cut`; 0.3 is filed to the line).
    #[must_use]
    pub fn accuracy_mm(&self, wall: Wall, length_mm: f64) -> f64 {
        match self.method(wall) {
            Method::Hand => self.own_accuracy_mm,
            Method::Router | Method::Laser => self
                .machine_accuracy_mm
                .or_else(|| general_tolerance(ToleranceClass::Medium, length_mm).map(|sourced| sourced.get()))
                .unwrap_or(self.own_accuracy_mm),
        }
    }
}

/// Play that a method's fingers want, mm (*common practice*: hand fingers are filed to fit from a little tight line to
/// line; a router's want a little room for glue; a laser's press in wood by half of 0.1 and never in acrylic, where
/// 0.08 lets the cement in).
const fn usual_play(method: Method, material: Material) -> f64 {
    match (method, material) {
        (Method::Hand, _) => 0.2,
        (Method::Router, _) => 0.1,
        (Method::Laser, Material::Acrylic) => 0.08,
        (Method::Laser, Material::Plywood) => -0.1,
        (Method::Laser, _) => -0.05,
    }
}
