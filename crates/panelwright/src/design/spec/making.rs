//! What a design says of its making: method, tools, joints.

use super::picks::picks;
use super::reader::Reader;
use super::{Corners, Material, SleeveJoin, Wall};
use crate::dimensions::sheets::{ToleranceClass, general_tolerance};

picks!(/// How a panel is made.
    Method { Hand = "hand", Router = "router", Laser = "laser" });
picks!(/// How a router's inside corners are relieved.
    Relief { Diagonal = "diagonal", Along = "along", None = "none" });
picks!(/// How two panels are joined at a corner.
    Joint { Brackets = "brackets", Blocks = "blocks", Rebate = "rebate", Finger = "finger", Tab = "tab" });
/// One of the corners where two panels are fixed to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name says which two panels")]
pub enum Seam {
    LeftFront,
    RightFront,
    LeftTop,
    RightTop,
    FrontTop,
    FloorBack,
}

impl Seam {
    /// Every seam.
    pub const ALL: [Self; 6] =
        [Self::LeftFront, Self::RightFront, Self::LeftTop, Self::RightTop, Self::FrontTop, Self::FloorBack];

    /// Its name in keys: `left_front`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::LeftFront => "left_front",
            Self::RightFront => "right_front",
            Self::LeftTop => "left_top",
            Self::RightTop => "right_top",
            Self::FrontTop => "front_top",
            Self::FloorBack => "floor_back",
        }
    }

    /// The two panels.
    #[must_use]
    pub const fn walls(self) -> [Wall; 2] {
        match self {
            Self::LeftFront => [Wall::Left, Wall::Front],
            Self::RightFront => [Wall::Right, Wall::Front],
            Self::LeftTop => [Wall::Left, Wall::Top],
            Self::RightTop => [Wall::Right, Wall::Top],
            Self::FrontTop => [Wall::Front, Wall::Top],
            Self::FloorBack => [Wall::Floor, Wall::Back],
        }
    }

    /// The seam of two panels, in either order; `None` where they slide or do not meet.
    #[must_use]
    pub fn between(one: Wall, other: Wall) -> Option<Self> {
        Self::ALL.into_iter().find(|seam| seam.walls() == [one, other] || seam.walls() == [other, one])
    }
}

/// A seam's joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SeamSpec {
    /// Which corner.
    pub seam: Seam,
    /// How it is joined; `auto` is resolved.
    pub joint: Joint,
    /// The panel that runs through and covers the other's edge.
    pub through: Wall,
    /// The panel whose edge is covered.
    pub covered: Wall,
    /// Whether the maker chose the joint, rather than the method.
    pub chosen: bool,
}

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
    /// Each seam's joint, in the order of [`Seam::ALL`].
    pub seams: [SeamSpec; 6],
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
        let seams = Seam::ALL.map(|seam| seam_of(read, seam, method));
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
            seams,
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

    /// The joint of a seam.
    #[must_use]
    pub const fn seam(&self, seam: Seam) -> &SeamSpec {
        &self.seams[seam as usize]
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

fn seam_of(read: &Reader, seam: Seam, method: Method) -> SeamSpec {
    let glued = SleeveJoin::of(read.name("sleeve.join")) == Some(SleeveJoin::Glue);
    let chosen = Joint::of(read.name(&format!("joint.{}", seam.name())));
    let joint = chosen.unwrap_or(match (seam, method) {
        // Floor and back carry everything: screwed, so that they come apart.
        (Seam::FloorBack, _) => Joint::Brackets,
        (_, Method::Hand) if glued => Joint::Blocks,
        (_, Method::Hand) => Joint::Brackets,
        (_, Method::Router) => Joint::Rebate,
        (_, Method::Laser) => Joint::Finger,
    });
    let [one, other] = seam.walls();
    let sides = Corners::of(read.name("sleeve.corners")) != Some(Corners::Face);
    let usual = match seam {
        Seam::LeftFront | Seam::RightFront | Seam::LeftTop | Seam::RightTop if sides => one,
        Seam::LeftFront | Seam::RightFront | Seam::LeftTop | Seam::RightTop => other,
        // The top lies over the front; the back runs down past the floor.
        Seam::FrontTop | Seam::FloorBack => other,
    };
    let through = match seam {
        Seam::FloorBack => usual,
        _ => Wall::of(read.name(&format!("through.{}", seam.name()))).unwrap_or(usual),
    };
    let covered = if through == one { other } else { one };
    SeamSpec { seam, joint, through, covered, chosen: chosen.is_some() }
}
