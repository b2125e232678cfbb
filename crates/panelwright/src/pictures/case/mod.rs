//! The case picture: what hides what, exactly, from any direction.

mod order;
mod piece;
mod plate;
mod pocket;
mod solids;
#[cfg(test)]
mod tests;

use piece::{Facet, Piece};

use crate::pictures::projection::Projection;

/// Everything that is drawn, with the number of its owner, the far things first.
fn painted(pieces: Vec<Piece>, view: &Projection) -> Vec<(usize, Facet)> {
    let mut out = Vec::new();
    for piece in order::back_to_front(pieces, view) {
        let owner = piece.owner;
        out.extend(piece.under.into_iter().map(|facet| (owner, facet)));
        if let Some(pockets) = &piece.plate {
            out.extend(pockets.showing());
        }
        out.extend(piece.over.into_iter().map(|facet| (owner, facet)));
    }
    out
}
