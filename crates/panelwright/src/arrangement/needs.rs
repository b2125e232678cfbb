//! How far each wall must stand off: the least that works and what is comfortable, and the size that follows.
//!
//! Everything here is in the *rear frame*: x and y as in the case frame, origin where hole row C of the board meets the
//! inside of the back (x of hole C, y = 0 on the back's inside face and negative towards the front), z = 0 on the floor.

use crate::design::{PaperName, SizeRule, Spec, Wall};
use crate::dimensions::margins;
use crate::dimensions::paper;

/// Where an inside face must be: the least position, and the comfortable one further out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Need {
    /// Nearer than this and something is in the way.
    pub least: f64,
    /// From here on there is room to spare.
    pub easy: f64,
}

/// The inside faces that can move. Left and front are negative directions: their needs are the smaller the further out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Needs {
    /// Inside face of the left panel, x.
    pub left: Need,
    /// Inside face of the right panel, x.
    pub right: Need,
    /// Inside face of the front panel, y.
    pub front: Need,
    /// Inside face of the top panel, z.
    pub top: Need,
}

/// The inside of the case in the rear frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Inside face of the left panel, x.
    pub left: f64,
    /// Inside face of the right panel, x.
    pub right: f64,
    /// Inside face of the front panel, y (negative).
    pub front: f64,
    /// Inside face of the top panel, z.
    pub top: f64,
}

impl Needs {
    /// Needs around the origin only; everything else pushes outward.
    #[must_use]
    pub fn around_origin() -> Self {
        let zero = Need { least: 0.0, easy: 0.0 };
        Self { left: zero, right: zero, front: zero, top: zero }
    }

    /// The left panel's inside face at `x` or further left.
    pub fn left(&mut self, least: f64, easy: f64) {
        self.left.least = self.left.least.min(least);
        self.left.easy = self.left.easy.min(easy).min(self.left.least);
    }

    /// The right panel's inside face at `x` or further right.
    pub fn right(&mut self, least: f64, easy: f64) {
        self.right.least = self.right.least.max(least);
        self.right.easy = self.right.easy.max(easy).max(self.right.least);
    }

    /// The front panel's inside face at `y` or further to the front.
    pub fn front(&mut self, least: f64, easy: f64) {
        self.front.least = self.front.least.min(least);
        self.front.easy = self.front.easy.min(easy).min(self.front.least);
    }

    /// The top panel's inside face at `z` or higher.
    pub fn top(&mut self, least: f64, easy: f64) {
        self.top.least = self.top.least.max(least);
        self.top.easy = self.top.easy.max(easy).max(self.top.least);
    }

    /// Width inside, in a case of a given size, at which the left panel's inside face stands at `x`; the rest is on
    /// the right. The inverse of what `settle` does with a given width.
    #[must_use]
    pub fn width_for_left(&self, x: f64) -> f64 {
        self.width_for(self.left.least - x, self.left.least - self.left.easy)
    }

    /// Width inside, in a case of a given size, at which the right panel's inside face stands at `x`.
    #[must_use]
    pub fn width_for_right(&self, x: f64) -> f64 {
        self.width_for(x - self.right.least, self.right.easy - self.right.least)
    }

    /// Width at which a side stands `beyond` its least place, when its comfortable one is `slack` further out: below
    /// the least and past the comfortable width both sides move alike, between them each by its share.
    fn width_for(&self, beyond: f64, slack: f64) -> f64 {
        let [least, _, _] = self.inside(|need| need.least);
        let [easy, _, _] = self.inside(|need| need.easy);
        if beyond <= 0.0 {
            least + 2.0 * beyond
        } else if beyond <= slack {
            least + beyond / slack * (easy - least)
        } else {
            easy + 2.0 * (beyond - slack)
        }
    }

    /// Least inside width, depth and height that hold everything.
    #[must_use]
    pub fn least_inside(&self) -> [f64; 3] {
        self.inside(|need| need.least)
    }

    fn inside(&self, pick: impl Fn(&Need) -> f64) -> [f64; 3] {
        [pick(&self.right) - pick(&self.left), -pick(&self.front), pick(&self.top)]
    }
}

/// A size found: outside of the case, and by how much the size rule could not be kept (mm, 0 when it was).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settled {
    /// Width, depth, height outside.
    pub outside: [f64; 3],
    /// Inside faces.
    pub room: Room,
    /// Sum over the axes of what is missing.
    pub excess: f64,
}

/// Outside sizes are rounded up to this, mm: a size a maker can mark out with a rule and a sharp pencil.
const ROUND_UP_MM: f64 = margins::SIZES_ROUND_UP.get();

/// Finds the outside size by the design's rule.
#[must_use]
pub fn settle(needs: &Needs, spec: &Spec) -> Settled {
    let shell = shell(spec);
    let outside = |inside: [f64; 3]| [0, 1, 2].map(|axis| inside[axis] + shell[axis]);
    let least = outside(needs.inside(|need| need.least));
    let easy = outside(needs.inside(|need| need.easy));
    let (size, excess) = match spec.size {
        SizeRule::Smallest => (least.map(round_up), 0.0),
        SizeRule::Given(given) => {
            let missing = (0..3).map(|axis| (least[axis] - given[axis]).max(0.0)).sum();
            (given, missing)
        }
        SizeRule::Paper(name) => within_paper(least, easy, spec, name),
    };
    Settled { outside: size, room: room(needs, [0, 1, 2].map(|axis| size[axis] - shell[axis])), excess }
}

/// Sheet around the inside along each axis, on both sides together: thickness, and lips beyond tabs.
pub(super) fn shell(spec: &Spec) -> [f64; 3] {
    let t = spec.sheet.thickness_mm();
    let of = |wall: Wall| spec.making.joints.shell_mm(wall, t);
    [of(Wall::Left) + of(Wall::Right), of(Wall::Front) + t, t + of(Wall::Top)]
}

fn round_up(length: f64) -> f64 {
    // The hair keeps a length that is already round from being rounded up by binary fractions.
    f64::ceil(length / ROUND_UP_MM - 1e-6) * ROUND_UP_MM
}

/// Largest outside sizes such that every panel lies within the paper, one for each axis that may take the long side.
#[must_use]
pub fn paper_caps(spec: &Spec, name: PaperName) -> [[f64; 3]; 3] {
    let sheet = paper::size(paper_name(name)).get();
    let (short, long) = (sheet[0].min(sheet[1]), sheet[0].max(sheet[1]));
    let t = spec.sheet.thickness_mm();
    let joints = &spec.making.joints;
    // How much less than the case a panel measures, for each pair of ends along an axis; the largest panel counts.
    let less = |wall: Wall, ends: &[Wall]| -> f64 {
        ends.iter().map(|end| joints.shell_mm(*end, t) - joints.extent_mm(wall, *end, t)).sum()
    };
    let least = |walls: &[Wall], ends: &[Wall]| -> f64 {
        walls.iter().map(|wall| less(*wall, ends)).fold(f64::INFINITY, f64::min)
    };
    let inset = [
        least(&[Wall::Front, Wall::Top], &[Wall::Left, Wall::Right]),
        least(&[Wall::Left, Wall::Right, Wall::Top], &[Wall::Front]),
        least(&[Wall::Left, Wall::Right, Wall::Front], &[Wall::Top]),
    ];
    [0, 1, 2].map(|axis| [0, 1, 2].map(|other| if other == axis { long + inset[other] } else { short + inset[other] }))
}

/// The tables' name of a paper.
#[must_use]
pub const fn paper_name(name: PaperName) -> paper::Paper {
    match name {
        PaperName::A4 => paper::Paper::A4,
        PaperName::A3 => paper::Paper::A3,
        PaperName::Letter => paper::Paper::Letter,
        PaperName::Legal => paper::Paper::Legal,
        PaperName::Tabloid => paper::Paper::Tabloid,
        PaperName::A1 => paper::Paper::A1,
        PaperName::A0 => paper::Paper::A0,
    }
}

fn within_paper(least: [f64; 3], easy: [f64; 3], spec: &Spec, name: PaperName) -> ([f64; 3], f64) {
    let mut best: Option<(f64, f64, [f64; 3])> = None;
    for caps in paper_caps(spec, name) {
        let missing: f64 = (0..3).map(|axis| (least[axis] - caps[axis]).max(0.0)).sum();
        let size = [0, 1, 2].map(|axis| {
            if least[axis] > caps[axis] { round_up(least[axis]) } else { round_up(easy[axis]).min(caps[axis]) }
        });
        let squeezed: f64 = (0..3).map(|axis| (easy[axis] - size[axis]).max(0.0)).sum();
        if best.is_none_or(|(m, s, _)| (missing, squeezed) < (m, s)) {
            best = Some((missing, squeezed, size));
        }
    }
    best.map_or((least, 0.0), |(missing, _, size)| (size, missing))
}

/// Puts the inside faces of a given inside size: between least and easy in proportion, what is beyond shared evenly.
fn room(needs: &Needs, inside: [f64; 3]) -> Room {
    let least = needs.right.least - needs.left.least;
    let easy = needs.right.easy - needs.left.easy;
    let width = inside[0];
    let part = if easy > least { ((width - least) / (easy - least)).clamp(0.0, 1.0) } else { 0.0 };
    let left = needs.left.least + (needs.left.easy - needs.left.least) * part;
    let right = needs.right.least + (needs.right.easy - needs.right.least) * part;
    let rest = width - (right - left);
    Room { left: left - rest / 2.0, right: left - rest / 2.0 + width, front: -inside[1], top: inside[2] }
}
