//! What a design says of its making: method, tools, joints.

use super::joints::{Joints, SeamSpec};
use super::picks::picks;
use super::reader::Reader;
use super::{Material, Wall};
use crate::dimensions::hand_work::DRILLED_ACCURACY;
use crate::dimensions::joints;
use crate::dimensions::sheets::{Making, class_of, general_tolerance};
use crate::dimensions::source::{Source, Sourced};

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
    /// Drill of the chains where the saw does not reach; `None` when none are wanted.
    pub chain_mm: Option<f64>,
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
    /// Play that fingers and tabs of each panel want altogether, in the order of [`Wall`]; below 0 they press.
    pub play_of: [f64; 6],
    /// Thickness of a locating block.
    pub block_mm: f64,
    /// Edges of hand work are true to ± this, by the maker's own word; open: by the class of the method.
    pub own_accuracy_mm: Option<f64>,
}

impl MakingSpec {
    pub(super) fn of(read: &Reader) -> Self {
        let method = Method::of(read.name("method")).unwrap_or(Method::Hand);
        let method_of =
            Wall::ALL.map(|wall| Method::of(read.name(&format!("method.{}", wall.name()))).unwrap_or(method));
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
                chain_mm: read.on("hand.chain").then(|| read.mm("hand.chain_drill")),
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
            joints: Joints::of(read, method, method_of),
            finger_mm: read.open("joint.finger"),
            play_of: method_of.map(|method| read.open("joint.play").unwrap_or_else(|| usual_play(method, material))),
            block_mm: read.mm("joint.block"),
            own_accuracy_mm: (read.name("accuracy") == "own" || read.is_changed("sheet.cut"))
                .then(|| read.mm("sheet.cut")),
        }
    }

    /// The method of one panel.
    #[must_use]
    pub const fn method(&self, wall: Wall) -> Method {
        self.method_of[wall as usize]
    }

    /// Play of the fingers or tabs of a seam: the more of what its two panels want, for the looser tool cuts half of it.
    #[must_use]
    pub fn play_mm(&self, seam: &SeamSpec) -> f64 {
        f64::max(self.play_of[seam.through as usize], self.play_of[seam.covered as usize])
    }

    /// Whether the sleeve's width is filed to the chassis rather than cut by measure: front and top made by hand, by
    /// someone who states no accuracy of their own (*common practice*: one fits what one saws).
    #[must_use]
    pub fn sleeve_is_fitted(&self) -> bool {
        self.own_accuracy_mm.is_none()
            && [Wall::Front, Wall::Top].into_iter().all(|wall| self.method(wall) == Method::Hand)
    }

    /// How far an edge of a panel may stray when a length is cut, ± mm: the maker's own figure, else ISO 2768-1 by the
    /// class of the panel's method (c by hand, m for machines).
    #[must_use]
    pub fn accuracy_mm(&self, wall: Wall, length_mm: f64) -> Sourced<f64> {
        let method = self.method(wall);
        let own = match method {
            Method::Hand => self.own_accuracy_mm,
            Method::Router | Method::Laser => self.machine_accuracy_mm,
        };
        own.map(|own| Sourced::new(own, OWN)).unwrap_or_else(|| {
            // Beyond the table's 0.5 to 4000 mm nothing is cut here: its ends stand for what is.
            let length_mm = length_mm.clamp(0.5, 4000.0);
            general_tolerance(class_of(method.table()).get(), length_mm).unwrap_or(Sourced::new(0.0, OWN))
        })
    }

    /// How far a hole or a line is out of its place, ± mm along each axis, on a feature of this length: the maker's own
    /// figure, else what a punched centre keeps by hand, and half of a machine's tolerance, which two places share.
    #[must_use]
    pub fn place_accuracy_mm(&self, wall: Wall, length_mm: f64) -> Sourced<f64> {
        match (self.method(wall), self.own_accuracy_mm, self.machine_accuracy_mm) {
            (Method::Hand, None, _) => Sourced::new(DRILLED_ACCURACY.get()[1], DRILLED_ACCURACY.source()),
            (Method::Router | Method::Laser, _, None) => {
                let whole = self.accuracy_mm(wall, length_mm);
                Sourced::new(whole.get() / 2.0, whole.source())
            }
            _ => self.accuracy_mm(wall, length_mm),
        }
    }
}

/// Where a figure of the maker's own comes from.
const OWN: Source = Source::common_practice("The maker's own figure", "accuracy");

impl Method {
    /// The tables' name of a method.
    #[must_use]
    pub const fn table(self) -> Making {
        match self {
            Self::Hand => Making::Hand,
            Self::Router => Making::Router,
            Self::Laser => Making::Laser,
        }
    }
}

/// Play that a method's fingers want, mm; below 0 they press.
const fn usual_play(method: Method, material: Material) -> f64 {
    match (method, material) {
        (Method::Hand, _) => joints::PLAY_BY_HAND.get(),
        (Method::Router, _) => joints::PLAY_ROUTED.get(),
        (Method::Laser, Material::Acrylic) => joints::PLAY_ACRYLIC.get(),
        (Method::Laser, Material::Plywood) => -joints::PRESS_LASER_PLYWOOD.get(),
        (Method::Laser, _) => -joints::PRESS_LASER_BOARD.get(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Design, Seam, Spec};

    fn making(choices: &[(&str, serde_json::Value)]) -> MakingSpec {
        let mut design = Design::default();
        for (key, value) in choices {
            design.set_json(key, value).unwrap();
        }
        Spec::of(&design).making
    }

    /// ISO 2768-1, table 1: 300 mm is ±1.2 in class c and ±0.5 in class m, 100 mm ±0.8 and ±0.3.
    #[test]
    fn accuracy_is_that_of_the_method_until_the_maker_states_one() {
        let accuracy =
            |choices: &[(&str, serde_json::Value)], length| making(choices).accuracy_mm(Wall::Left, length).get();
        assert_eq!(accuracy(&[], 300.0), 1.2);
        assert_eq!(accuracy(&[], 100.0), 0.8);
        assert_eq!(accuracy(&[("sheet.cut", 0.5.into())], 300.0), 0.5);
        // The usual figure, when the maker says that it is their own.
        assert_eq!(accuracy(&[("accuracy", "own".into())], 300.0), 0.3);
        for machine in ["router", "laser"] {
            assert_eq!(accuracy(&[("method", machine.into())], 300.0), 0.5);
            assert_eq!(accuracy(&[("method", machine.into()), ("accuracy", "own".into())], 100.0), 0.3);
            assert_eq!(accuracy(&[("method", machine.into()), ("machine.accuracy", 0.1.into())], 300.0), 0.1);
            assert_eq!(accuracy(&[("method", machine.into()), ("method.left", "hand".into())], 300.0), 1.2);
        }
        // Shorter than the table begins, longer than it ends.
        assert_eq!(accuracy(&[], 0.1), 0.2);
        assert_eq!(accuracy(&[], 9000.0), 4.0);
    }

    /// Laser-cut plywood presses by 0.1 mm; what is cut by hand wants 0.2 mm of play, whatever it meets.
    #[test]
    fn a_joint_has_the_play_of_the_looser_of_its_two_panels() {
        let play = |choices: &[(&str, serde_json::Value)], seam: Seam| {
            let making = making(choices);
            making.play_mm(&making.joints.seams[seam as usize])
        };
        let laser = [("method", "laser".into()), ("sheet.material", "plywood".into())];
        let mixed = [laser[0].clone(), laser[1].clone(), ("method.left", "hand".into())];
        assert_eq!(play(&laser, Seam::LeftFront), -0.1);
        assert_eq!(play(&mixed, Seam::LeftFront), 0.2);
        assert_eq!(play(&mixed, Seam::RightFront), -0.1);
        let own = [laser[0].clone(), mixed[2].clone(), ("joint.play", 0.05.into())];
        assert_eq!(play(&own, Seam::LeftFront), 0.05);
    }

    #[test]
    fn no_panel_gets_a_rebate_that_its_method_cannot_cut() {
        let joints = |left: &str| {
            let making = making(&[("method", "router".into()), ("method.left", left.into())]);
            [Seam::LeftFront, Seam::RightFront].map(|seam| making.joints.seams[seam as usize].joint)
        };
        assert_eq!(joints("same"), [Joint::Rebate, Joint::Rebate]);
        assert_eq!(joints("laser"), [Joint::Finger, Joint::Rebate]);
        assert_eq!(joints("hand"), [Joint::Brackets, Joint::Rebate]);
    }

    #[test]
    fn places_stray_less_than_lengths() {
        let place = |choices: &[(&str, serde_json::Value)]| making(choices).place_accuracy_mm(Wall::Left, 76.6);
        assert_eq!(place(&[]), Sourced::new(DRILLED_ACCURACY.get()[1], DRILLED_ACCURACY.source()));
        assert_eq!(place(&[("method", "router".into())]).get(), 0.15);
        assert_eq!(place(&[("method", "router".into()), ("machine.accuracy", 0.1.into())]).get(), 0.1);
        assert_eq!(place(&[("sheet.cut", 0.4.into())]).get(), 0.4);
    }
}
