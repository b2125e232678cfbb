//! Fills one sheet by backtracking: the way to layouts that waste nothing, or very little.
//!
//! The pieces laid so far stand on the bottom edge of the sheet; their upper outline is a staircase. Look at one
//! *niche* of it, a step with a higher neighbour (or the sheet's edge) on both sides. In a layout without waste some
//! piece must stand in the left corner of that niche, so all pieces are tried there, one after the other, each time
//! with the rest of the search behind it. Taking the narrowest niche leaves the fewest pieces to try.
//!
//! What keeps it short:
//!
//! * equal pieces are one kind with a count, so that swapping them is never tried;
//! * the pieces standing side by side in a niche add up to its width exactly, and those above each other in a column
//!   to what is left of the height: lengths that no choice of the remaining pieces adds up to are a dead end;
//! * whatever fills a niche is no wider than it, and whatever lies above a stair no higher than what is left there: too
//!   little area of narrow or of low pieces is a dead end;
//! * kinds that continue a flat outline are tried first, with some chance in the order, so that a new run with another
//!   seed leaves a dead end that the last one was caught in.
//!
//! With an allowance for waste a niche may also be given up: it is filled to the height of its lower neighbour with
//! nothing. That search is no longer complete (a gap to the *left* of a piece is never tried), only good.

use crate::chance::Random;

/// A kind of piece: its size with the gap, and how many there are.
#[derive(Clone, Copy, Debug)]
pub(super) struct Kind {
    pub w: i64,
    pub h: i64,
    pub count: usize,
    /// May lie as it is; may lie turned by 90 degrees.
    pub upright: bool,
    pub turned: bool,
}

/// Where one piece of a kind lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Spot {
    pub kind: usize,
    pub x: i64,
    pub y: i64,
    pub turned: bool,
}

/// How a search ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    /// Whoever asked has had enough.
    Stopped,
    /// Everything was tried.
    Exhausted,
    /// The steps were used up.
    OutOfSteps,
}

/// One step of the staircase.
#[derive(Clone, Copy, Debug)]
struct Stair {
    x: i64,
    y: i64,
    w: i64,
}

/// A piece to try in a niche.
#[derive(Clone, Copy, Debug)]
struct Try {
    kind: usize,
    turned: bool,
    w: i64,
    h: i64,
    score: i64,
}

/// What a piece of the whole sheet's area is worth more than one of none.
const AREA_SHARE: i64 = 60_000;

/// Areas below this, times [`AREA_SHARE`], are whole numbers of 63 bits: sheets of up to 12 by 12 m.
const FINE_AREA: i64 = i64::MAX / AREA_SHARE;

/// Lengths up to this, in units of the common divisor, are looked up in the sums: one bit each.
const SUMS: i64 = 127;

/// The search: set up once, run as often as wished.
#[derive(Debug)]
pub(super) struct Exact {
    width: i64,
    height: i64,
    kinds: Vec<Kind>,
    left: Vec<usize>,
    pieces: usize,
    waste: i64,
    /// Binary places that areas are cut short by where they are compared, so that shares of them stay within 63 bits.
    coarse: u32,
    stairs: Vec<Stair>,
    /// The staircases of the nodes above, one behind the other.
    saved: Vec<Stair>,
    tries: Vec<Try>,
    spots: Vec<Spot>,
    /// Common divisor of all lengths when the sums are used.
    unit: Option<i64>,
    noise: i64,
    dice: Random,
    steps: u64,
}

impl Exact {
    /// A search for layouts of all `kinds` on a sheet of `width` x `height` with the waste that there is room for.
    pub fn new(width: i64, height: i64, kinds: &[Kind]) -> Self {
        let area: i64 = kinds.iter().map(|kind| kind.w * kind.h * kind.count as i64).sum();
        let lengths = kinds.iter().flat_map(|kind| [kind.w, kind.h]);
        let unit = lengths.fold(divisor(width, height), divisor);
        let waste = width * height - area;
        Self {
            width,
            height,
            kinds: kinds.to_vec(),
            left: Vec::new(),
            pieces: 0,
            waste,
            coarse: if width * height < FINE_AREA { 0 } else { 8 },
            stairs: Vec::new(),
            saved: Vec::new(),
            tries: Vec::new(),
            spots: Vec::new(),
            unit: (waste == 0 && width.max(height) <= SUMS * unit).then_some(unit),
            noise: 0,
            dice: Random::new(0),
            steps: 0,
        }
    }

    /// Runs with at most `steps` pieces tried, `noise` (0 for none) of chance in the order. Every layout found is
    /// handed to `found`, which says whether to go on. Takes what it used from `steps`.
    pub fn run(&mut self, seed: u64, noise: i64, steps: &mut u64, found: &mut dyn FnMut(&[Spot]) -> bool) -> End {
        if self.waste < 0 {
            return End::Exhausted;
        }
        self.left = self.kinds.iter().map(|kind| kind.count).collect();
        self.pieces = self.left.iter().sum();
        self.stairs = vec![Stair { x: 0, y: 0, w: self.width }];
        self.saved.clear();
        self.tries.clear();
        self.spots.clear();
        self.dice = Random::new(seed);
        self.noise = noise;
        self.steps = *steps;
        let waste = self.waste;
        let end = self.node(found);
        self.waste = waste;
        *steps = self.steps;
        end
    }

    /// Whether a run that ends [`End::Exhausted`] has proved that there is no other layout.
    pub fn complete(&self) -> bool {
        self.waste <= 0
    }

    fn node(&mut self, found: &mut dyn FnMut(&[Spot]) -> bool) -> End {
        if self.pieces == 0 {
            return if found(&self.spots) { End::Exhausted } else { End::Stopped };
        }
        let at = self.niche();
        let Stair { x, y, w: gap } = self.stairs[at];
        let left_wall = if at == 0 { self.height } else { self.stairs[at - 1].y };
        let right_wall = self.stairs.get(at + 1).map_or(self.height, |stair| stair.y);
        if self.unit.is_some_and(|unit| !self.sums_allow(unit, gap)) {
            return End::Exhausted;
        }
        if self.waste == 0 && !self.areas_allow() {
            return End::Exhausted;
        }
        let first = self.tries.len();
        self.collect(gap, y, left_wall, right_wall);
        let last = self.tries.len();
        sort(&mut self.tries[first..last]);
        let mut end = End::Exhausted;
        for index in first..last {
            if self.steps == 0 {
                end = End::OutOfSteps;
                break;
            }
            self.steps -= 1;
            let Try { kind, turned, w, h, .. } = self.tries[index];
            let kept = self.save();
            self.raise(at, w, h);
            self.left[kind] -= 1;
            self.pieces -= 1;
            self.spots.push(Spot { kind, x, y, turned });
            end = self.node(found);
            self.spots.pop();
            self.pieces += 1;
            self.left[kind] += 1;
            self.restore(kept);
            if end != End::Exhausted {
                break;
            }
        }
        self.tries.truncate(first);
        let lost = gap * (left_wall.min(right_wall) - y);
        if end == End::Exhausted && self.waste > 0 && lost <= self.waste && self.stairs.len() > 1 {
            if self.steps == 0 {
                return End::OutOfSteps;
            }
            self.steps -= 1;
            let kept = self.save();
            self.raise(at, gap, left_wall.min(right_wall) - y);
            self.waste -= lost;
            end = self.node(found);
            self.waste += lost;
            self.restore(kept);
        }
        end
    }

    /// The narrowest niche, the lower of equals. With waste the lowest one, or a niche could be given up for good
    /// while pieces for it are still to come.
    fn niche(&self) -> usize {
        let mut best = 0;
        let mut least = (i64::MAX, i64::MAX);
        for (index, stair) in self.stairs.iter().enumerate() {
            let low = index == 0 || self.stairs[index - 1].y > stair.y;
            if !low || self.stairs.get(index + 1).is_some_and(|next| next.y < stair.y) {
                continue;
            }
            let key = if self.waste == 0 { (stair.w, stair.y) } else { (stair.y, stair.w) };
            if key < least {
                least = key;
                best = index;
            }
        }
        best
    }

    /// Puts the pieces that go into the niche on the pile of tries, with how promising each is.
    fn collect(&mut self, gap: i64, y: i64, left_wall: i64, right_wall: i64) {
        for index in 0..self.kinds.len() {
            if self.left[index] == 0 {
                continue;
            }
            let kind = self.kinds[index];
            for turned in [false, true] {
                let allowed = if turned { kind.turned && (kind.w != kind.h || !kind.upright) } else { kind.upright };
                let (w, h) = if turned { (kind.h, kind.w) } else { (kind.w, kind.h) };
                if !allowed || w > gap || y + h > self.height {
                    continue;
                }
                let top = y + h;
                // Large, wide, thick pieces first, and what leaves a flat outline; the numbers are by trial on published
                // sets: with them the hardest one is found in a tenth of the steps that a smaller share of area takes.
                let mut score = 400 * w.min(h) / self.width.max(self.height) + 400 * w / self.width;
                score += AREA_SHARE * ((w * h) >> self.coarse) / ((self.width * self.height) >> self.coarse);
                score += 1600 * i64::from(w == gap);
                score += 800 * i64::from(top == left_wall);
                score += 800 * i64::from(w == gap && top == right_wall);
                if self.noise > 0 {
                    score += self.dice.below(self.noise as usize) as i64;
                }
                self.tries.push(Try { kind: index, turned, w, h, score });
            }
        }
    }

    /// Whether pieces that are left can add up to the niche's width, and to the height above every stair.
    fn sums_allow(&self, unit: i64, gap: i64) -> bool {
        let (widths, heights) = if self.width.max(self.height) < 64 * unit {
            let (widths, heights) = sums_64(&self.kinds, &self.left, unit);
            (u128::from(widths), u128::from(heights))
        } else {
            sums_128(&self.kinds, &self.left, unit)
        };
        widths >> (gap / unit) & 1 == 1
            && self.stairs.iter().all(|stair| heights >> ((self.height - stair.y) / unit) & 1 == 1)
    }

    /// Whether enough is left that fits the pits and the shallow places below the top.
    ///
    /// Whatever covers a point of a niche lower than both its walls is no wider than the niche; whatever lies above a
    /// stair is no higher than what is left above it. So the pieces up to some width must have the area of all niches
    /// up to that width, and the same with heights.
    fn areas_allow(&self) -> bool {
        let above = |stair: &Stair| self.height - stair.y;
        self.stairs.iter().enumerate().all(|(at, stair)| {
            let (deep, wide) = (above(stair), stair.w);
            let shallow: i64 = self.stairs.iter().filter(|s| above(s) <= deep).map(|s| s.w * above(s)).sum();
            if shallow > self.area(|kind| kind.upright && kind.h <= deep || kind.turned && kind.w <= deep) {
                return false;
            }
            if self.pit(at) == 0 {
                return true;
            }
            let narrow: i64 = (0..self.stairs.len()).filter(|&s| self.stairs[s].w <= wide).map(|s| self.pit(s)).sum();
            narrow <= self.area(|kind| kind.upright && kind.w <= wide || kind.turned && kind.h <= wide)
        })
    }

    /// Area of a niche up to its lower wall; 0 for a stair that is none.
    fn pit(&self, at: usize) -> i64 {
        let Stair { y, w, .. } = self.stairs[at];
        let left = if at == 0 { self.height } else { self.stairs[at - 1].y };
        let right = self.stairs.get(at + 1).map_or(self.height, |next| next.y);
        w * (left.min(right) - y).max(0)
    }

    /// Area of the pieces left that pass.
    fn area(&self, pass: impl Fn(&Kind) -> bool) -> i64 {
        let of = |(kind, left): (&Kind, &usize)| if pass(kind) { kind.w * kind.h * *left as i64 } else { 0 };
        self.kinds.iter().zip(&self.left).map(of).sum()
    }

    /// Remembers the staircase; gives what [`Self::restore`] wants back.
    fn save(&mut self) -> usize {
        let kept = self.saved.len();
        self.saved.extend_from_slice(&self.stairs);
        kept
    }

    fn restore(&mut self, kept: usize) {
        self.stairs.clear();
        self.stairs.extend_from_slice(&self.saved[kept..]);
        self.saved.truncate(kept);
    }

    /// Raises the left `w` of a stair by `h` and joins what is level then.
    fn raise(&mut self, at: usize, w: i64, h: i64) {
        let Stair { x, y, w: gap } = self.stairs[at];
        self.stairs[at] = Stair { x, y: y + h, w };
        if w < gap {
            self.stairs.insert(at + 1, Stair { x: x + w, y, w: gap - w });
        } else if self.stairs.get(at + 1).is_some_and(|next| next.y == y + h) {
            self.stairs[at].w += self.stairs[at + 1].w;
            self.stairs.remove(at + 1);
        }
        if at > 0 && self.stairs[at - 1].y == y + h {
            self.stairs[at - 1].w += self.stairs[at].w;
            self.stairs.remove(at);
        }
    }
}

/// Makes the function that gives, as bits, all widths and all heights that some of the pieces left add up to. Twice:
/// most sheets need 64 bits only, which are several times as fast, in the page above all.
macro_rules! sums {
    ($name:ident, $bits:ty) => {
        fn $name(kinds: &[Kind], left: &[usize], unit: i64) -> ($bits, $bits) {
            let shifted = |bits: $bits, by: i64| if by < i64::from(<$bits>::BITS) { bits << by } else { 0 };
            let (mut widths, mut heights) = (1, 1);
            for (kind, &left) in kinds.iter().zip(left) {
                let (w, h) = (kind.w / unit, kind.h / unit);
                for _ in 0..left {
                    let (mut wide, mut high) = (0, 0);
                    if kind.upright {
                        wide |= shifted(widths, w);
                        high |= shifted(heights, h);
                    }
                    if kind.turned {
                        wide |= shifted(widths, h);
                        high |= shifted(heights, w);
                    }
                    widths |= wide;
                    heights |= high;
                }
            }
            (widths, heights)
        }
    };
}

sums!(sums_64, u64);
sums!(sums_128, u128);

/// Largest common divisor; 0 counts as divisible by everything.
pub(super) const fn divisor(mut a: i64, mut b: i64) -> i64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// Best first; a plain insertion sort, since the lists are short and the module stays small.
fn sort(tries: &mut [Try]) {
    for index in 1..tries.len() {
        let mut at = index;
        while at > 0 && tries[at - 1].score < tries[at].score {
            tries.swap(at - 1, at);
            at -= 1;
        }
    }
}

#[cfg(test)]
#[path = "tests/exact.rs"]
mod tests;
