//! Sawing: whether a layout can be sawn from edge to edge, and the cuts in the order a person makes them.
//!
//! A plate is cut all the way across wherever a line meets no piece, all such lines of one direction at once; each
//! strip is then a plate for itself, cut the other way. Whether the first lines run along or across never decides
//! whether the rest can be sawn: pieces of a layout that can be sawn still can be after any cut that meets none.

use super::job::mm;
use super::problem::Block;
use crate::sorting::sort_by;

/// One saw cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// The plate that is cut: 1 is the sheet, every rest that is cut on gets the next number.
    pub plate: usize,
    /// The edge of the plate that the cut is measured from, and parallel to.
    pub from: Edge,
    /// Distance of the cut from that edge, mm: the size of what lies between them. But for trims that is something to
    /// keep, never waste beside something to keep: a sheet is not cut to the millimetre when it is bought, and what is
    /// measured over waste would be as untrue as the sheet.
    pub distance: f64,
    /// Length of the cut, mm.
    pub length: f64,
    /// Where the line starts on the sheet, mm: the side of the kerf towards [`Self::from`].
    pub start: [f64; 2],
    /// Where it ends.
    pub end: [f64; 2],
    /// What lies between that edge and the cut.
    pub off: Part,
    /// What lies beyond the cut.
    pub rest: Part,
}

/// An edge of a plate as it lies in the picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Smallest x.
    Left,
    /// Largest x.
    Right,
    /// Smallest y.
    Bottom,
    /// Largest y.
    Top,
}

/// What lies on one side of a cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// To be cut on, under this number.
    Plate(usize),
    /// A finished piece: index into what is placed on the sheet.
    Piece(usize),
    /// Worth keeping: index into the sheet's offcuts.
    Offcut(usize),
    /// Too small to keep.
    Waste,
    /// Nothing: the kerf took all of it.
    Dust,
}

/// How a plate falls into parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Tree {
    /// Nothing on it.
    Waste,
    /// Exactly this rectangle.
    Piece(usize),
    /// Strips beside each other along x, or else along y.
    Strips { along_x: bool, strips: Vec<(Block, Tree)> },
}

/// How `plate` is sawn so that every rectangle of `blocks` comes out; `None` if it cannot be.
pub(super) fn tree(plate: Block, blocks: &[Block]) -> Option<Tree> {
    let all: Vec<usize> = (0..blocks.len()).collect();
    divide(plate, blocks, &all)
}

fn divide(plate: Block, blocks: &[Block], on: &[usize]) -> Option<Tree> {
    match on {
        [] => return Some(Tree::Waste),
        [only] if blocks[*only] == plate => return Some(Tree::Piece(*only)),
        _ => {}
    }
    // More strips first: fewer settings of the fence. Of equals the shorter cuts.
    let mut both = [(true, lines(plate, blocks, on, true)), (false, lines(plate, blocks, on, false))];
    let better = (both[1].1.len(), plate.w < plate.h) > (both[0].1.len(), plate.h <= plate.w);
    if better {
        both.swap(0, 1);
    }
    let (along_x, lines) = &both[0];
    if lines.is_empty() {
        return None;
    }
    let mut strips = Vec::new();
    let (mut from, to) = if *along_x { (plate.x, plate.x + plate.w) } else { (plate.y, plate.y + plate.h) };
    for &line in lines.iter().chain([&to]) {
        let strip = if *along_x {
            Block { x: from, w: line - from, ..plate }
        } else {
            Block { y: from, h: line - from, ..plate }
        };
        let within: Vec<usize> = on.iter().copied().filter(|&index| strip.holds(&blocks[index])).collect();
        strips.push((strip, divide(strip, blocks, &within)?));
        from = line;
    }
    Some(Tree::Strips { along_x: *along_x, strips })
}

/// Where a plate can be cut across x (or y) without meeting a piece: at the near and the far side of each gap.
fn lines(plate: Block, blocks: &[Block], on: &[usize], along_x: bool) -> Vec<i64> {
    let span = |block: &Block| if along_x { (block.x, block.x + block.w) } else { (block.y, block.y + block.h) };
    let mut spans: Vec<(i64, i64)> = on.iter().map(|&index| span(&blocks[index])).collect();
    sort_by(&mut spans, Ord::cmp);
    let (start, end) = span(&plate);
    let mut lines = Vec::new();
    let mut reached = start;
    for (from, to) in spans.into_iter().chain([(end, end)]) {
        if from >= reached {
            lines.extend([reached, from]);
        }
        reached = reached.max(to);
    }
    lines.retain(|&line| line > start && line < end);
    lines.dedup();
    lines
}

/// What the cuts of a sheet need to know beside the tree.
#[derive(Debug)]
pub(super) struct Sawing {
    /// Gap and trim, whole units.
    pub gap: i64,
    pub trim: i64,
    /// The sheet before trimming, whole units.
    pub width: i64,
    pub height: i64,
    /// Rectangles from this index on are offcuts.
    pub pieces: usize,
}

impl Sawing {
    /// The cuts of a sheet, in order. Trim first; then from each plate strip after strip, from the near edge and from
    /// the far one, so that the largest strip is the last that stays: the heavy part lies supported the longest.
    pub fn cuts(&self, tree: &Tree) -> Vec<Cut> {
        let mut cuts = Vec::new();
        let mut plates = 1;
        let (mut x, mut y, mut w, mut h) = (0, 0, self.width, self.height);
        if self.trim > 0 {
            for from in [Edge::Left, Edge::Right, Edge::Bottom, Edge::Top] {
                let plate = plates;
                plates += 1;
                cuts.push(cut(plate, from, self.trim, [x, y, w, h], Part::Waste, Part::Plate(plates)));
                match from {
                    Edge::Left => (x, w) = (x + self.trim, w - self.trim),
                    Edge::Right => w -= self.trim,
                    Edge::Bottom => (y, h) = (y + self.trim, h - self.trim),
                    Edge::Top => h -= self.trim,
                }
            }
            // A sheet that is all one piece is done now.
            if let (Some(last), Tree::Piece(_)) = (cuts.last_mut(), tree) {
                last.rest = self.part(tree, [w, h], &mut plates);
            }
        }
        let plate = plates;
        self.saw(plate, [x, y, w, h], tree, &mut plates, &mut cuts);
        cuts
    }

    fn part(&self, tree: &Tree, size: [i64; 2], plates: &mut usize) -> Part {
        match tree {
            _ if size[0] <= 0 || size[1] <= 0 => Part::Dust,
            Tree::Waste => Part::Waste,
            Tree::Piece(index) if *index < self.pieces => Part::Piece(*index),
            Tree::Piece(index) => Part::Offcut(index - self.pieces),
            Tree::Strips { .. } => {
                *plates += 1;
                Part::Plate(*plates)
            }
        }
    }

    fn saw(&self, plate: usize, mut room: [i64; 4], tree: &Tree, plates: &mut usize, cuts: &mut Vec<Cut>) {
        let Tree::Strips { along_x, strips } = tree else { return };
        let axis = usize::from(!along_x);
        let size = |index: usize| if *along_x { strips[index].0.w } else { strips[index].0.h } - self.gap;
        let mut largest = 0;
        for index in 1..strips.len() {
            if size(index) > size(largest) {
                largest = index;
            }
        }
        let near = (0..largest).map(|index| (index, true));
        let far = (largest + 1..strips.len()).rev().map(|index| (index, false));
        let order: Vec<(usize, bool)> = near.chain(far).collect();
        let mut todo = Vec::new();
        let mut plate = plate;
        for (done, &(index, near)) in order.iter().enumerate() {
            let mut of = room;
            of[2 + axis] = size(index);
            if !near {
                of[axis] = room[axis] + room[2 + axis] - size(index);
            }
            let off = self.part(&strips[index].1, [of[2], of[3]], plates);
            let mut left = room;
            left[2 + axis] -= size(index) + self.gap;
            if near {
                left[axis] += size(index) + self.gap;
            }
            let last = done + 1 == order.len();
            let rest = if last {
                self.part(&strips[largest].1, [left[2], left[3]], plates)
            } else {
                *plates += 1;
                Part::Plate(*plates)
            };
            let edge = match (along_x, near) {
                (true, true) => Edge::Left,
                (true, false) => Edge::Right,
                (false, true) => Edge::Bottom,
                (false, false) => Edge::Top,
            };
            let kept = |part: Part| matches!(part, Part::Plate(_) | Part::Piece(_));
            if off == Part::Dust || (kept(rest) && !kept(off)) {
                // The cut is measured over what stays and shall be true.
                let other = match edge {
                    Edge::Left => Edge::Right,
                    Edge::Right => Edge::Left,
                    Edge::Bottom => Edge::Top,
                    Edge::Top => Edge::Bottom,
                };
                cuts.push(cut(plate, other, left[2 + axis], room, rest, off));
            } else {
                cuts.push(cut(plate, edge, size(index), room, off, rest));
            }
            if let Part::Plate(number) = off {
                todo.push((number, of, &strips[index].1));
            }
            room = left;
            match rest {
                Part::Plate(number) if last => todo.push((number, room, &strips[largest].1)),
                Part::Plate(number) => plate = number,
                _ => {}
            }
        }
        for (number, room, tree) in todo {
            self.saw(number, room, tree, plates, cuts);
        }
    }
}

/// A cut through the plate `[x, y, w, h]`.
fn cut(plate: usize, from: Edge, distance: i64, [x, y, w, h]: [i64; 4], off: Part, rest: Part) -> Cut {
    let (start, end) = match from {
        Edge::Left => ([x + distance, y], [x + distance, y + h]),
        Edge::Right => ([x + w - distance, y], [x + w - distance, y + h]),
        Edge::Bottom => ([x, y + distance], [x + w, y + distance]),
        Edge::Top => ([x, y + h - distance], [x + w, y + h - distance]),
    };
    let length = if matches!(from, Edge::Left | Edge::Right) { h } else { w };
    Cut { plate, from, distance: mm(distance), length: mm(length), start: start.map(mm), end: end.map(mm), off, rest }
}
