//! The joints of a design: which corners there are, how each is joined, and how far its panels reach.

use super::making::{Joint, Method};
use super::reader::Reader;
use super::{Corners, SleeveJoin, Wall};
use crate::dimensions::sheets::WEB_MIN_FIBREBOARD;
use crate::dimensions::source::{Source, Sourced};
use crate::solid::TOUCH_MM;

/// Share of the sheet that a rebate takes away.
pub const REBATE_SHARE: Sourced<f64> =
    Sourced::new(0.5, Source::common_practice("Workshop custom", "rebates of half to two thirds of the thickness"));

/// Sheet beyond a slot that holds a tab, in thicknesses.
pub const SLOT_FROM_EDGE: Sourced<f64> = Sourced::new(
    1.5,
    Source::common_practice("Workshop custom", "a slot lies one and a half thicknesses from the edge"),
);

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
    pub const fn between(one: Wall, other: Wall) -> Option<Self> {
        Some(match (one, other) {
            (Wall::Left, Wall::Front) | (Wall::Front, Wall::Left) => Self::LeftFront,
            (Wall::Right, Wall::Front) | (Wall::Front, Wall::Right) => Self::RightFront,
            (Wall::Left, Wall::Top) | (Wall::Top, Wall::Left) => Self::LeftTop,
            (Wall::Right, Wall::Top) | (Wall::Top, Wall::Right) => Self::RightTop,
            (Wall::Front, Wall::Top) | (Wall::Top, Wall::Front) => Self::FrontTop,
            (Wall::Floor, Wall::Back) | (Wall::Back, Wall::Floor) => Self::FloorBack,
            _ => return None,
        })
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

impl SeamSpec {
    /// How far the covered panel reaches into the one that runs through, for sheet of `t` mm.
    #[must_use]
    pub fn reach_mm(&self, t: f64) -> f64 {
        match self.joint {
            Joint::Brackets | Joint::Blocks => 0.0,
            Joint::Rebate => t * REBATE_SHARE.get(),
            Joint::Finger | Joint::Tab => t,
        }
    }
}

/// All joints of a design.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joints {
    /// In the order of [`Seam::ALL`].
    pub seams: [SeamSpec; 6],
}

impl Joints {
    pub(super) fn of(read: &Reader, method: Method, method_of: [Method; 6]) -> Self {
        Self { seams: Seam::ALL.map(|seam| seam_of(read, seam, method, method_of)) }
    }

    /// Butt joints with brackets at every corner; the sides run through over front and top, or they over the sides.
    #[cfg(test)]
    pub(crate) fn butt(sides: bool) -> Self {
        Self {
            seams: Seam::ALL.map(|seam| {
                let through = usual_through(seam, sides);
                let covered = if seam.walls()[0] == through { seam.walls()[1] } else { seam.walls()[0] };
                SeamSpec { seam, joint: Joint::Brackets, through, covered, chosen: false }
            }),
        }
    }

    /// The joint of two panels; `None` where they slide or do not meet.
    #[must_use]
    pub fn between(&self, one: Wall, other: Wall) -> Option<&SeamSpec> {
        Seam::between(one, other).map(|seam| &self.seams[seam as usize])
    }

    /// How far the panels around `wall` stand out beyond its outside face, so that there is sheet beyond the slots for
    /// its tabs; 0 without tabs.
    fn lip_mm(&self, wall: Wall, t: f64) -> f64 {
        let tabs = self.seams.iter().any(|seam| seam.joint == Joint::Tab && seam.covered == wall);
        if tabs { t * SLOT_FROM_EDGE.get() } else { 0.0 }
    }

    /// From the inside face of a wall to the outside of the case there: its thickness and what stands out beyond it.
    #[must_use]
    pub fn shell_mm(&self, wall: Wall, t: f64) -> f64 {
        t + self.lip_mm(wall, t)
    }

    /// How far panel `wall` reaches outward past the inside face of panel `other`, which it meets at a seam.
    #[must_use]
    pub fn extent_mm(&self, wall: Wall, other: Wall, t: f64) -> f64 {
        self.between(wall, other).map_or(0.0, |seam| {
            if seam.covered == wall {
                seam.reach_mm(t)
            } else if seam.joint == Joint::Tab {
                self.shell_mm(other, t)
            } else {
                t
            }
        })
    }
}

fn seam_of(read: &Reader, seam: Seam, method: Method, method_of: [Method; 6]) -> SeamSpec {
    let [one, other] = seam.walls();
    let sides = Corners::of(read.name("sleeve.corners")) != Some(Corners::Face);
    let usual = usual_through(seam, sides);
    let through = match seam {
        Seam::FloorBack => usual,
        _ => Wall::of(read.name(&format!("through.{}", seam.name()))).unwrap_or(usual),
    };
    let covered = if through == one { other } else { one };
    let glued = SleeveJoin::of(read.name("sleeve.join")) == Some(SleeveJoin::Glue);
    let by_hand = if glued { Joint::Blocks } else { Joint::Brackets };
    let chosen = Joint::of(read.name(&format!("joint.{}", seam.name())));
    let joint = chosen.unwrap_or(match (seam, method) {
        // Floor and back carry everything: screwed, so that they come apart.
        (Seam::FloorBack, _) => Joint::Brackets,
        (_, Method::Hand) => by_hand,
        // The rebate is in the panel that runs through, which may be made in a way that cuts none.
        (_, Method::Router) => match method_of[through as usize] {
            Method::Router if bears_rebates(read) => Joint::Rebate,
            Method::Laser => Joint::Finger,
            Method::Router | Method::Hand => by_hand,
        },
        (_, Method::Laser) => Joint::Finger,
    });
    SeamSpec { seam, joint, through, covered, chosen: chosen.is_some() }
}

/// Whether the sheet is thick enough for a rebate to leave something of it.
fn bears_rebates(read: &Reader) -> bool {
    let thickness = read.open("sheet.measured").unwrap_or_else(|| read.mm("sheet.nominal"));
    thickness * (1.0 - REBATE_SHARE.get()) >= WEB_MIN_FIBREBOARD.get() - TOUCH_MM
}

/// Who runs through unless the maker says otherwise.
const fn usual_through(seam: Seam, sides: bool) -> Wall {
    let [one, other] = seam.walls();
    match seam {
        Seam::LeftFront | Seam::RightFront | Seam::LeftTop | Seam::RightTop if sides => one,
        // The top lies over the front; the back runs down past the floor.
        _ => other,
    }
}

impl super::Spec {
    /// Whether corner brackets join floor and back.
    #[must_use]
    pub fn has_chassis_brackets(&self) -> bool {
        let seams = &self.making.joints.seams;
        seams.iter().any(|seam| seam.seam == Seam::FloorBack && seam.joint == Joint::Brackets)
    }

    /// Whether corner brackets join any panels of the sleeve.
    #[must_use]
    pub fn has_sleeve_brackets(&self) -> bool {
        let seams = &self.making.joints.seams;
        seams.iter().any(|seam| seam.seam != Seam::FloorBack && seam.joint == Joint::Brackets)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Design, Spec};

    /// Half of 4 mm leaves the 2 mm that a web wants; a router joins thinner sheet as a saw does.
    #[test]
    fn a_router_cuts_no_rebate_that_leaves_too_little() {
        for (thickness, join, joint) in [
            (4.0, "glue", Joint::Rebate),
            (3.99, "glue", Joint::Blocks),
            (3.99, "brackets", Joint::Brackets),
            (6.0, "brackets", Joint::Rebate),
        ] {
            let mut design = Design::default();
            for (key, value) in [
                ("method", serde_json::Value::from("router")),
                ("sleeve.join", join.into()),
                ("sheet.measured", thickness.into()),
            ] {
                design.set_json(key, &value).unwrap();
            }
            let joints = Spec::of(&design).making.joints;
            assert_eq!(joints.seams[Seam::LeftFront as usize].joint, joint, "{thickness} {join}");
        }
    }
}
