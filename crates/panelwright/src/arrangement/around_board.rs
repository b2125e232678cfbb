//! What board, memory, cooler and card ask of the walls (rear frame, see [`super::needs`]).

use super::BoardPlace;
use super::arrange::{BESIDE_MM, EDGE_WEB_MM, gap, surround};
use super::needs::Needs;
use crate::design::{CoolerAir, IoOpening, Spec};
use crate::dimensions::coolers::{BETTER_GAP_ABOVE_DOWN_BLOWER, GAP_ABOVE_DOWN_BLOWER};
use crate::dimensions::margins;
use crate::dimensions::{boards, cards};
use crate::parts::{Part, PartKind, card};

/// Air before a card's fans, mm: a vent beside them lets them breathe; comfortable is a finger's width (common practice).
const CARD_AIR_MM: [f64; 2] = margins::CARD_AIR.get();
/// Beyond the far end of a card, mm (common practice).
const CARD_END_MM: [f64; 2] = margins::CARD_END.get();
/// Above a tower cooler, mm (common practice).
const OVER_TOWER_MM: [f64; 2] = margins::OVER_TOWER.get();
/// Above a cooler that takes its air from above, mm: 81.28 less 71.12 in the thermal design guides of the LGA775 era;
/// comfortable is 15 (from memory: measure yours).
const OVER_INTAKE_MM: [f64; 2] = [GAP_ABOVE_DOWN_BLOWER.get(), BETTER_GAP_ABOVE_DOWN_BLOWER.get()];

/// What board, cooler, memory and card ask of the walls.
pub(super) fn around_board(spec: &Spec, place: &BoardPlace, parts: &[Part]) -> Needs {
    let mut needs = Needs::around_origin();
    let g = gap(spec);
    for part in parts {
        match part.kind {
            PartKind::Cooler | PartKind::Shelf | PartKind::CardBracket => {}
            PartKind::Card => {
                let body = part.bounds();
                needs.left(body.min[0] - g - CARD_AIR_MM[0], body.min[0] - g - CARD_AIR_MM[1]);
                needs.front(body.min[1] - g - CARD_END_MM[0], body.min[1] - g - CARD_END_MM[1]);
                needs.top(body.max[2] + g + BESIDE_MM[0], body.max[2] + g + BESIDE_MM[1]);
                for keep in &part.keep_clear {
                    needs.front(keep.zone.min[1] - g, keep.zone.min[1] - g);
                    needs.top(keep.zone.max[2] + g, keep.zone.max[2] + g);
                }
            }
            _ => surround(&mut needs, spec, &part.bounds(), BESIDE_MM),
        }
    }
    if let Some(cooler_spec) = &spec.cooler
        && let Some(part) = parts.iter().find(|part| part.kind == PartKind::Cooler)
    {
        let body = part.bounds();
        let over = match cooler_spec.air {
            CoolerAir::Down | CoolerAir::Up => OVER_INTAKE_MM,
            _ => OVER_TOWER_MM,
        };
        needs.top(body.max[2] + over[0], body.max[2] + over[1]);
        needs.left(body.min[0] - g - BESIDE_MM[0], body.min[0] - g - BESIDE_MM[1]);
        needs.right(body.max[0] + g + BESIDE_MM[0], body.max[0] + g + BESIDE_MM[1]);
        needs.front(body.min[1] - g - BESIDE_MM[0], body.min[1] - g - BESIDE_MM[1]);
    }
    // The connector opening and the card window need sheet beside them in the back, which is a gap narrower.
    let right = place.to_case([boards::IO_X.get()[1], 0.0, 0.0])[0];
    let border = if spec.board.io_opening == IoOpening::Rebate { boards::IO_BORDER.get() } else { 0.0 };
    needs.right(right + g + border + EDGE_WEB_MM[0], right + g + border + EDGE_WEB_MM[1]);
    let io_top = place.to_case([0.0, 0.0, boards::IO_Z.get()[1]])[2] + border;
    needs.top(io_top + g + EDGE_WEB_MM[0], io_top + g + EDGE_WEB_MM[1]);
    if let Some(card_spec) = &spec.card {
        let window = card::window(card_spec, &spec.board, spec.sheet.thickness_mm());
        needs.left(window.x[0] - g - EDGE_WEB_MM[0], window.x[0] - g - EDGE_WEB_MM[1]);
        let tab_top = cards::shelf_z(card::table_height(card_spec.kind)).get() + cards::BRACKET_THICKNESS.get();
        let top = place.origin[2] + window.top.unwrap_or(tab_top);
        needs.top(top + g + EDGE_WEB_MM[0], top + g + EDGE_WEB_MM[1]);
    }
    needs
}
