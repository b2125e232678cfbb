//! What is left of a sheet in rectangles worth keeping.
//!
//! The largest free rectangle is taken as if it were one more piece, then the largest of what is left, and so on. For
//! sawing a rectangle only counts if the sheet can still be sawn with it as a piece.

use super::board::Board;
use super::cuts::{Tree, tree};
use super::job::{Method, units};
use super::plan::OFFCUT;
use super::problem::Block;

/// The offcuts beside `blocks` on a sheet, largest first, at most `most`; sizes still with the gap.
pub(super) fn offcuts(plate: Block, blocks: &[Block], gap: i64, method: Method, most: usize) -> Vec<Block> {
    let least = units(OFFCUT) + gap;
    let mut board = Board::new(plate.w, plate.h, Method::Free);
    let mut all = blocks.to_vec();
    for block in blocks {
        board.cut_out(block);
    }
    while all.len() < blocks.len() + most {
        let mut candidates = board.free().to_vec();
        if method == Method::Guillotine
            && let Some(tree) = tree(plate, &all)
        {
            wasted(plate, &tree, &mut candidates);
        }
        candidates.retain(|block| block.w >= least && block.h >= least);
        // What counts is what is in hand, without the gap.
        candidates.sort_unstable_by_key(|block| (-(block.w - gap) * (block.h - gap), block.y, block.x));
        let mut taken = None;
        for candidate in candidates {
            all.push(candidate);
            if method == Method::Free || tree(plate, &all).is_some() {
                taken = Some(candidate);
                break;
            }
            all.pop();
        }
        match taken {
            Some(taken) => board.cut_out(&taken),
            None => break,
        }
    }
    all.split_off(blocks.len())
}

/// The parts of a sawn plate with nothing on them.
fn wasted(plate: Block, tree: &Tree, into: &mut Vec<Block>) {
    match tree {
        Tree::Waste => into.push(plate),
        Tree::Piece(_) => {}
        Tree::Strips { strips, .. } => strips.iter().for_each(|(strip, tree)| wasted(*strip, tree, into)),
    }
}
