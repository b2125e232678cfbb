//! Simple solids as pieces: blocks and cylinders, with the faces that the eye can see.

use super::piece::{At, Facet, Pen, Piece, Side, Stroke, Tint};
use crate::pictures::Projection;
use crate::solid::Aabb;

/// The corners of the face of a box square to `axis`, on its upper or lower side.
pub(super) fn face_ring(bounds: &Aabb, axis: usize, upper: bool) -> Vec<At> {
    let (b, c) = ((axis + 1) % 3, (axis + 2) % 3);
    [(false, false), (true, false), (true, true), (false, true)]
        .iter()
        .map(|(high_b, high_c)| {
            let mut at = [0.0; 3];
            at[axis] = if upper { bounds.max[axis] } else { bounds.min[axis] };
            at[b] = if *high_b { bounds.max[b] } else { bounds.min[b] };
            at[c] = if *high_c { bounds.max[c] } else { bounds.min[c] };
            at
        })
        .collect()
}

/// Whether the eye sees the upper (`Some(true)`) or lower face square to `axis`, or neither.
pub(super) fn seen_side(view: &Projection, axis: usize) -> Option<bool> {
    let mut normal = [0.0; 3];
    normal[axis] = 1.0;
    if view.sees(normal) {
        return Some(true);
    }
    normal[axis] = -1.0;
    view.sees(normal).then_some(false)
}

/// A plain block.
pub(super) fn block(owner: usize, bounds: Aabb, tint: Tint, view: &Projection) -> Piece {
    let facets = (0..3)
        .filter_map(|axis| {
            let ring = face_ring(&bounds, axis, seen_side(view, axis)?);
            let stroke = Stroke { points: ring.clone(), closed: true, pen: Pen::Thin };
            Some(Facet { rings: vec![ring], tint, side: Side::of_axis(axis), strokes: vec![stroke] })
        })
        .collect();
    Piece::solid(owner, bounds, facets)
}
