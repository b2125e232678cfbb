//! The order in which pieces are drawn so that near ones cover far ones, right for any direction of sight.
//!
//! Two boxes that share no space are parted by a plane square to an axis; whichever lies on the eye's side of such a
//! plane is never hidden by the other. If neither is on the eye's side of all their parting planes, neither hides the
//! other. So each pair gives at most one "draw before", and the pieces are drawn in an order that keeps them all.
//! Where they run in a circle, one piece is cut along a face of another and both halves are tried again. This ends:
//! pieces cut by every face of one another are cells of one grid, and cells of a grid never run in a circle.
//!
//! Pieces that share space (a design whose parts collide) are cut first, until none do.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::piece::Piece;
use crate::pictures::projection::{EDGE_ON, Projection};
use crate::solid::{Aabb, TOUCH_MM, by_axis};

/// Most pieces that cutting may lead to: far more than any case needs, so that no design takes for ever. Beyond it
/// the rest is drawn by the distance of its middle.
const MOST_PIECES: usize = 3000;

/// All pieces in drawing order. What stands in the openings of a plate is put into the plate.
pub(super) fn back_to_front(pieces: Vec<Piece>, view: &Projection) -> Vec<Piece> {
    let mut waiting = part(pieces);
    let mut drawn = Vec::with_capacity(waiting.len());
    loop {
        let order = Order::of(&waiting, view);
        let mut slots: Vec<Option<Piece>> = waiting.into_iter().map(Some).collect();
        drawn.extend(order.free.iter().filter_map(|index| slots[*index].take()));
        waiting = slots.into_iter().flatten().collect();
        if waiting.is_empty() {
            break;
        }
        // Every piece left belongs to a circle or stands before one.
        let found = if drawn.len() + waiting.len() < MOST_PIECES { cut_of_a_circle(&waiting, view) } else { None };
        if let Some((index, axis, at)) = found {
            let halves = waiting[index].cut(axis, at);
            waiting.splice(index..=index, halves);
        } else {
            let farthest = (0..waiting.len())
                .min_by(|a, b| {
                    let near = |index: &usize| view.nearness(waiting[*index].bounds.centre());
                    near(a).total_cmp(&near(b))
                })
                .unwrap_or(0);
            drawn.push(waiting.remove(farthest));
        }
    }
    for piece in &mut drawn {
        if let Some(pockets) = &mut piece.plate {
            pockets.within = back_to_front(core::mem::take(&mut pockets.within), view);
        }
    }
    drawn
}

/// Cuts pieces until none share space. Of two solids the earlier stays whole; what the later loses lies inside it.
/// A plate keeps what it shares with a solid, to be trimmed to its openings.
fn part(pieces: Vec<Piece>) -> Vec<Piece> {
    let (plates, solids): (Vec<Piece>, Vec<Piece>) = pieces.into_iter().partition(|piece| piece.plate.is_some());
    let mut done: Vec<Piece> = Vec::with_capacity(plates.len() + solids.len());
    let mut waiting: Vec<Piece> = solids.into_iter().rev().chain(plates.into_iter().rev()).collect();
    while let Some(mut piece) = waiting.pop() {
        let other = done.iter().position(|other| other.bounds.overlaps(&piece.bounds));
        let Some(other) = other.filter(|_| done.len() + waiting.len() < MOST_PIECES) else {
            done.push(piece);
            continue;
        };
        let bounds = done[other].bounds;
        for axis in 0..3 {
            if piece.is_cut_by(axis, bounds.min[axis]) {
                let [below, rest] = piece.cut(axis, bounds.min[axis]);
                waiting.push(below);
                piece = rest;
            }
            if piece.is_cut_by(axis, bounds.max[axis]) {
                let [rest, above] = piece.cut(axis, bounds.max[axis]);
                waiting.push(above);
                piece = rest;
            }
        }
        // What is left is the shared space.
        if let (Some(pockets), None) = (&mut done[other].plate, &piece.plate) {
            pockets.within.push(piece);
        }
    }
    done
}

/// Who must be drawn before whom.
struct Order {
    /// Indices that can be drawn, in order; those left out run in a circle.
    free: Vec<usize>,
}

impl Order {
    fn of(pieces: &[Piece], view: &Projection) -> Self {
        let count = pieces.len();
        let sight = Sight::of(view);
        let shadows: Vec<Shadow> = pieces.iter().map(|piece| sight.shadow(&piece.bounds)).collect();
        let mut waits_for = vec![0_u32; count];
        let mut before: Vec<Vec<usize>> = vec![Vec::new(); count];
        for a in 0..count {
            for b in a + 1..count {
                match sight.first(&pieces[a].bounds, &shadows[a], &pieces[b].bounds, &shadows[b]) {
                    First::Either => {}
                    First::Left => {
                        before[a].push(b);
                        waits_for[b] += 1;
                    }
                    First::Right => {
                        before[b].push(a);
                        waits_for[a] += 1;
                    }
                }
            }
        }
        // Lowest index first among those that wait for nobody: the order does not depend on anything else.
        let mut ready: BinaryHeap<Reverse<usize>> =
            (0..count).filter(|index| waits_for[*index] == 0).map(Reverse).collect();
        let mut free = Vec::with_capacity(count);
        while let Some(Reverse(index)) = ready.pop() {
            free.push(index);
            for later in &before[index] {
                waits_for[*later] -= 1;
                if waits_for[*later] == 0 {
                    ready.push(Reverse(*later));
                }
            }
        }
        Self { free }
    }
}

/// A piece, an axis and a place at which to cut it, so that a circle among `pieces` opens. Plates are cut last.
fn cut_of_a_circle(pieces: &[Piece], view: &Projection) -> Option<(usize, usize, f64)> {
    let circle = circle(pieces, view)?;
    for plates_too in [false, true] {
        for piece in circle.iter().filter(|index| plates_too || pieces[**index].plate.is_none()) {
            for other in circle.iter().filter(|other| *other != piece) {
                for axis in 0..3 {
                    let faces = [pieces[*other].bounds.min[axis], pieces[*other].bounds.max[axis]];
                    if let Some(at) = faces.into_iter().find(|at| pieces[*piece].is_cut_by(axis, *at)) {
                        return Some((*piece, axis, at));
                    }
                }
            }
        }
    }
    None
}

/// Indices of pieces of which each must be drawn before the one listed ahead of it, and the first before the last.
fn circle(pieces: &[Piece], view: &Projection) -> Option<Vec<usize>> {
    let sight = Sight::of(view);
    let shadows: Vec<Shadow> = pieces.iter().map(|piece| sight.shadow(&piece.bounds)).collect();
    let mut walk: Vec<usize> = vec![0];
    loop {
        let here = *walk.last()?;
        let earlier = (0..pieces.len()).find(|other| {
            *other != here
                && matches!(
                    sight.first(&pieces[*other].bounds, &shadows[*other], &pieces[here].bounds, &shadows[here]),
                    First::Left
                )
        })?;
        if let Some(start) = walk.iter().position(|seen| *seen == earlier) {
            return Some(walk.split_off(start));
        }
        walk.push(earlier);
    }
}

/// Which of two pieces must be drawn first.
enum First {
    Left,
    Right,
    Either,
}

/// The direction of sight, made ready for many pairs.
struct Sight {
    eye: [f64; 3],
    /// The case axes in the picture.
    axes: [[f64; 2]; 3],
    /// `reach[i][j]`: how far a unit along axis i goes square to axis j in the picture.
    reach: [[f64; 3]; 3],
}

/// Where a box lies in the picture: its middle, and its half width square to each axis.
struct Shadow {
    middle: [f64; 2],
    half: [f64; 3],
}

fn cross(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

impl Sight {
    fn of(view: &Projection) -> Self {
        let axes = by_axis(|axis| [view.right[axis], view.up[axis]]);
        let reach = by_axis(|i| by_axis(|j| cross(axes[i], axes[j]).abs()));
        Self { eye: view.eye, axes, reach }
    }

    fn shadow(&self, bounds: &Aabb) -> Shadow {
        let (centre, size) = (bounds.centre(), bounds.size());
        let mut middle = [0.0; 2];
        let mut half = [0.0; 3];
        for axis in 0..3 {
            middle[0] += centre[axis] * self.axes[axis][0];
            middle[1] += centre[axis] * self.axes[axis][1];
            for (j, half) in half.iter_mut().enumerate() {
                *half += size[axis] / 2.0 * self.reach[axis][j];
            }
        }
        Shadow { middle, half }
    }

    /// Whether the two boxes overlap in the picture: no line along a projected axis parts their outlines.
    fn meet(&self, a: &Shadow, b: &Shadow) -> bool {
        let apart = [b.middle[0] - a.middle[0], b.middle[1] - a.middle[1]];
        (0..3).all(|axis| {
            let room = a.half[axis] + b.half[axis];
            // An axis seen end-on parts nothing.
            room == 0.0 || cross(apart, self.axes[axis]).abs() < room - TOUCH_MM
        })
    }

    fn first(&self, a: &Aabb, a_shadow: &Shadow, b: &Aabb, b_shadow: &Shadow) -> First {
        let (mut a_may_hide, mut b_may_hide) = (true, true);
        for axis in 0..3 {
            let eye = self.eye[axis];
            if a.max[axis] <= b.min[axis] + TOUCH_MM {
                a_may_hide &= eye < -EDGE_ON;
                b_may_hide &= eye > EDGE_ON;
            } else if b.max[axis] <= a.min[axis] + TOUCH_MM {
                a_may_hide &= eye > EDGE_ON;
                b_may_hide &= eye < -EDGE_ON;
            }
        }
        match (a_may_hide, b_may_hide) {
            (true, false) if self.meet(a_shadow, b_shadow) => First::Right,
            (false, true) if self.meet(a_shadow, b_shadow) => First::Left,
            _ => First::Either,
        }
    }
}
