//! How far each wall must stand off: the least that works and what is comfortable, and the size that follows.
//!
//! Everything here is in the *rear frame*: x and y as in the case frame, origin where hole row C of the board meets the
//! inside of the back (x of hole C, y = 0 on the back's inside face and negative towards the front), z = 0 on the floor.

use crate::design::{PaperName, SizeRule, Spec, Wall};
use crate::dimensions::margins;
use crate::dimensions::paper;
use crate::solid::{by_axis, larger, smaller};

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
        self.left.least = smaller(self.left.least, least);
        self.left.easy = smaller(smaller(self.left.easy, easy), self.left.least);
    }

    /// The right panel's inside face at `x` or further right.
    pub fn right(&mut self, least: f64, easy: f64) {
        self.right.least = larger(self.right.least, least);
        self.right.easy = larger(larger(self.right.easy, easy), self.right.least);
    }

    /// The front panel's inside face at `y` or further to the front.
    pub fn front(&mut self, least: f64, easy: f64) {
        self.front.least = smaller(self.front.least, least);
        self.front.easy = smaller(smaller(self.front.easy, easy), self.front.least);
    }

    /// The top panel's inside face at `z` or higher.
    pub fn top(&mut self, least: f64, easy: f64) {
        self.top.least = larger(self.top.least, least);
        self.top.easy = larger(larger(self.top.easy, easy), self.top.least);
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

/// What bounds the outside size, worked out once for a design: a search asks it of every place it tries.
#[derive(Clone, Copy, Debug)]
pub struct Sizing {
    shell: [f64; 3],
    rule: Bound,
}

/// The size rule in lengths.
#[derive(Clone, Copy, Debug)]
enum Bound {
    Smallest,
    Given([f64; 3]),
    /// Within one of these.
    Caps([[f64; 3]; 3]),
}

impl Sizing {
    /// The sizes a design allows.
    #[must_use]
    pub fn of(spec: &Spec) -> Self {
        let rule = match spec.size {
            SizeRule::Smallest => Bound::Smallest,
            SizeRule::Given(given) => Bound::Given(given),
            SizeRule::Paper(name) => Bound::Caps(paper_caps(spec, name)),
        };
        Self { shell: shell(spec), rule }
    }

    /// Finds the outside size by the design's rule.
    #[must_use]
    pub fn settle(&self, needs: &Needs) -> Settled {
        let [least, easy] = self.outside(needs);
        let size = match &self.rule {
            Bound::Smallest => least.map(round_up),
            Bound::Given(given) => *given,
            Bound::Caps(caps) => within_caps(least, easy, caps),
        };
        Settled {
            outside: size,
            room: room(needs, by_axis(|axis| size[axis] - self.shell[axis])),
            excess: self.excess(needs),
        }
    }

    /// By how much the size rule cannot be kept, mm: [`Settled::excess`] alone.
    #[must_use]
    pub fn excess(&self, needs: &Needs) -> f64 {
        let caps = match &self.rule {
            Bound::Smallest => return 0.0,
            Bound::Given(given) => std::slice::from_ref(given),
            Bound::Caps(caps) => caps,
        };
        let least = self.around(needs.inside(|need| need.least));
        caps.iter().map(|caps| missing(least, caps)).fold(f64::INFINITY, f64::min)
    }

    /// Outside sizes: the least, and the comfortable.
    fn outside(&self, needs: &Needs) -> [[f64; 3]; 2] {
        [self.around(needs.inside(|need| need.least)), self.around(needs.inside(|need| need.easy))]
    }

    /// The outside size around an inside size.
    fn around(&self, inside: [f64; 3]) -> [f64; 3] {
        by_axis(|axis| inside[axis] + self.shell[axis])
    }
}

/// Sum over the axes of what a size lacks.
fn missing(least: [f64; 3], size: &[f64; 3]) -> f64 {
    (0..3).map(|axis| larger(least[axis] - size[axis], 0.0)).sum()
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
    by_axis(|axis| by_axis(|other| if other == axis { long + inset[other] } else { short + inset[other] }))
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

/// The size within the caps that lack least, then squeeze least.
fn within_caps(least: [f64; 3], easy: [f64; 3], caps: &[[f64; 3]; 3]) -> [f64; 3] {
    let mut best: Option<(f64, f64, [f64; 3])> = None;
    for caps in caps {
        let missing = missing(least, caps);
        let size = by_axis(|axis| {
            if least[axis] > caps[axis] { round_up(least[axis]) } else { round_up(easy[axis]).min(caps[axis]) }
        });
        let squeezed: f64 = (0..3).map(|axis| (easy[axis] - size[axis]).max(0.0)).sum();
        if best.is_none_or(|(m, s, _)| (missing, squeezed) < (m, s)) {
            best = Some((missing, squeezed, size));
        }
    }
    best.map_or(least, |(_, _, size)| size)
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
