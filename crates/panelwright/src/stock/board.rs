//! One sheet while pieces are put on it: what is free, and the best place for the next piece.
//!
//! *Free cuts*: the free space is the list of all largest free rectangles, which overlap. *Sawing*: it is a list of
//! rectangles that do not; a piece goes into the corner of one, and a saw cut along one of the piece's edges splits
//! the rest in two. What is packed that way can always be sawn.

use super::job::Method;
use super::problem::Block;

/// How the place for a piece is chosen, and for sawing which way the rest is split.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Taste {
    pub fit: Fit,
    pub split: Split,
}

/// What makes a place the best one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    /// The least room left on the tighter side.
    Tight,
    /// The smallest free rectangle.
    Small,
    /// As low as possible, then as far left.
    Low,
    /// As far left as possible, then as low.
    Left,
    /// The longest touch with edges and pieces.
    Touch,
}

/// Which way a saw cut runs after a piece went into a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Split {
    /// So that the larger of the two rests is as large as can be.
    Large,
    /// So that the two rests are as equal as can be.
    Even,
    /// Always along x.
    Along,
    /// Always along y.
    Across,
}

/// Ways to choose that are tried.
pub(super) const FITS: [Fit; 5] = [Fit::Tight, Fit::Small, Fit::Low, Fit::Left, Fit::Touch];

/// Ways to split that are tried.
pub(super) const SPLITS: [Split; 4] = [Split::Large, Split::Even, Split::Along, Split::Across];

/// A place for a piece; the lower score is the better one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Place {
    pub score: (i64, i64),
    pub block: Block,
    pub turned: bool,
    free: usize,
}

/// A sheet with pieces on it.
#[derive(Clone, Debug)]
pub(super) struct Board {
    w: i64,
    h: i64,
    method: Method,
    free: Vec<Block>,
    laid: Vec<Block>,
}

impl Board {
    pub fn new(w: i64, h: i64, method: Method) -> Self {
        Self { w, h, method, free: vec![Block { x: 0, y: 0, w, h }], laid: Vec::new() }
    }

    /// A sheet with pieces on it that were laid some other way. For sawing nothing counts as free then: the cuts that
    /// were made are not known here.
    pub fn full(plate: &Block, laid: &[Block], method: Method) -> Self {
        let mut board = Self::new(plate.w, plate.h, method);
        match method {
            Method::Free => laid.iter().for_each(|block| board.cut_out(block)),
            Method::Guillotine => board.free.clear(),
        }
        board.laid.extend_from_slice(laid);
        board
    }

    /// The largest free rectangles; for sawing those left by the cuts so far.
    pub fn free(&self) -> &[Block] {
        &self.free
    }

    /// The best place for a piece `w` x `h` that may lie the given ways.
    pub fn best(&self, w: i64, h: i64, ways: (bool, bool), fit: Fit) -> Option<Place> {
        let mut best: Option<Place> = None;
        for (free, room) in self.free.iter().enumerate() {
            for turned in [false, true] {
                let (w, h) = if turned { (h, w) } else { (w, h) };
                let allowed = if turned { ways.1 && (w != h || !ways.0) } else { ways.0 };
                if !allowed || w > room.w || h > room.h {
                    continue;
                }
                let block = Block { x: room.x, y: room.y, w, h };
                let score = self.score(room, &block, fit);
                if best.is_none_or(|best| score < best.score) {
                    best = Some(Place { score, block, turned, free });
                }
            }
        }
        best
    }

    fn score(&self, room: &Block, block: &Block, fit: Fit) -> (i64, i64) {
        let (over_w, over_h) = (room.w - block.w, room.h - block.h);
        match fit {
            Fit::Tight => (over_w.min(over_h), over_w.max(over_h)),
            Fit::Small => (room.area() - block.area(), over_w.min(over_h)),
            Fit::Low => (block.y + block.h, block.x),
            Fit::Left => (block.x + block.w, block.y),
            Fit::Touch => {
                let mut touch = 0;
                let (right, top) = (block.x + block.w, block.y + block.h);
                touch += block.h * (i64::from(block.x == 0) + i64::from(right == self.w));
                touch += block.w * (i64::from(block.y == 0) + i64::from(top == self.h));
                for other in &self.laid {
                    if other.x == right || other.x + other.w == block.x {
                        touch += (top.min(other.y + other.h) - block.y.max(other.y)).max(0);
                    }
                    if other.y == top || other.y + other.h == block.y {
                        touch += (right.min(other.x + other.w) - block.x.max(other.x)).max(0);
                    }
                }
                // As a share of the outline, or large pieces would always win against small ones.
                (-1000 * touch / (block.w + block.h), over_w.min(over_h))
            }
        }
    }

    /// Lays a piece on a place that [`Self::best`] gave.
    pub fn lay(&mut self, place: &Place, split: Split) {
        self.laid.push(place.block);
        match self.method {
            Method::Free => self.cut_out(&place.block),
            Method::Guillotine => self.saw(place.free, &place.block, split),
        }
    }

    fn saw(&mut self, free: usize, block: &Block, split: Split) {
        let room = self.free.swap_remove(free);
        let (over_w, over_h) = (room.w - block.w, room.h - block.h);
        // Cut along x: the right rest is as high as the piece. Cut along y: the upper rest is as wide.
        let (right, top) = (over_w * block.h, block.w * over_h);
        let along = match split {
            Split::Large => right.min(top) == right,
            Split::Even => right.min(top) != right,
            Split::Along => true,
            Split::Across => false,
        };
        let (right_h, top_w) = if along { (block.h, room.w) } else { (room.h, block.w) };
        let right = Block { x: room.x + block.w, y: room.y, w: over_w, h: right_h };
        let top = Block { x: room.x, y: room.y + block.h, w: top_w, h: over_h };
        self.free.extend([right, top].iter().filter(|rest| rest.w > 0 && rest.h > 0));
    }

    /// Takes a rectangle out of the free space: each free rectangle it meets falls into those beside it.
    pub fn cut_out(&mut self, block: &Block) {
        let mut new: Vec<Block> = Vec::new();
        let mut index = 0;
        while index < self.free.len() {
            let room = self.free[index];
            if !room.meets(block) {
                index += 1;
                continue;
            }
            self.free.swap_remove(index);
            let (right, top) = (room.x + room.w, room.y + room.h);
            let (block_right, block_top) = (block.x + block.w, block.y + block.h);
            if block.x > room.x {
                new.push(Block { w: block.x - room.x, ..room });
            }
            if block_right < right {
                new.push(Block { x: block_right, w: right - block_right, ..room });
            }
            if block.y > room.y {
                new.push(Block { h: block.y - room.y, ..room });
            }
            if block_top < top {
                new.push(Block { y: block_top, h: top - block_top, ..room });
            }
        }
        // Only the new ones can lie within another: the old ones were largest before.
        for (index, room) in new.iter().enumerate() {
            let within = |other: &Block| other.holds(room);
            let doubled =
                new.iter().enumerate().any(|(at, other)| at != index && within(other) && (other != room || at < index));
            if !doubled && !self.free.iter().any(within) {
                self.free.push(*room);
            }
        }
    }
}
