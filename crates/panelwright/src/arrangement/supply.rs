//! Where the supply stands, and the walls it asks for (rear frame, see [`super::needs`]).

use super::arrange::{BESIDE_MM, EDGE_WEB_MM, gap, surround};
use super::needs::Needs;
use super::{SupplyPlace, feet};
use crate::design::{FanSide, FeetKind, SizeRule, Spec, SupplyPose};
use crate::dimensions::margins;
use crate::dimensions::{boards, supplies};
use crate::parts::{Part, supply};
use crate::solid::Aabb;

/// Between the board's front edge and a supply before it, mm: leads leave the board here (common practice).
const BEFORE_BOARD_MM: f64 = margins::BEFORE_BOARD.get();
/// Between parts and a supply beside them, mm (common practice).
const BESIDE_SUPPLY_MM: f64 = margins::BESIDE_SUPPLY.get();

/// Strip along the back kept free beside a supply on end, mm: a bracket's leg and air (common practice).
const BACK_STRIP_MM: f64 = margins::BRACKET_STRIP.get();

/// Parts whose middle lies further left than this, seen from hole C, bound a supply before the board on its left: the
/// card; all others on its right, mm (common practice: the processor's side of the slots).
const LEFT_OF_SUPPLY_MM: f64 = 60.0;

/// Places the supply and asks for walls around it.
pub(super) fn place_supply(spec: &Spec, pose: SupplyPose, parts: &[Part], needs: &mut Needs) -> Option<SupplyPlace> {
    let size = supply::size(&spec.supply)?;
    let extent = supply::footprint(size, pose);
    let g = gap(spec);
    let air = supplies::AIR_GAP.get();
    let board_box = parts.first()?.bodies.first()?;
    // A side whose fan has not been looked up gets the published air; a side known to have none, a hair.
    let side = |upper: bool| match (spec.supply.fan_side, upper) {
        (FanSide::Unknown, _) | (FanSide::Upper, true) | (FanSide::Lower, false) => air,
        _ => BESIDE_SUPPLY_MM,
    };
    // "Upper" looks along the face's v (see parts::supply): to the back, to the right, up, or to the right.
    let turned = spec.supply.turned;
    let along = side(!turned);
    let against = side(turned);
    let cables = spec.supply.cable_room_mm;
    // A paper may squeeze the cables; a case as small as its parts allow gives them what the maker wants.
    let cables_least = match spec.size {
        SizeRule::Smallest => cables,
        _ => cables.min(supplies::CABLE_ROOM.get()[0]),
    };
    let widest = |low: f64, high: f64, y: [f64; 2], z_top: f64| -> [f64; 2] {
        // The free stretch of x between parts that reach into these y and below this z.
        let mut from = low;
        let mut to = high;
        for body in parts.iter().flat_map(|part| &part.bodies) {
            if body.min[1] < y[1] && body.max[1] > y[0] && body.min[2] < z_top {
                if body.centre()[0] < LEFT_OF_SUPPLY_MM {
                    from = from.max(body.max[0]);
                } else {
                    to = to.min(body.min[0]);
                }
            }
        }
        [from, to]
    };
    let min = match pose {
        SupplyPose::EndFront | SupplyPose::Auto => {
            let rear = board_box.min[1] - BEFORE_BOARD_MM.max(along);
            let y = [rear - extent[1], rear];
            let [from, to] = widest(needs.left.least, f64::INFINITY, y, extent[2]);
            let has_card = spec.card.is_some() && from > needs.left.least;
            let x = if has_card {
                // Between the card and the right wall, to the right where there is more room than needed.
                let right = (needs.right.least - g - BESIDE_MM[1] - extent[0]).min(to - extent[0]);
                right.max(from + BESIDE_SUPPLY_MM)
            } else {
                // In the middle of what the board takes.
                let middle = (needs.left.least + needs.right.least) / 2.0;
                (middle - extent[0] / 2.0).max(needs.left.least + g + BESIDE_MM[0])
            };
            // The front feet stand in the strip between supply and front, unless the supply leaves them the corners.
            let strip = if spec.feet.kind == FeetKind::None { 0.0 } else { g + feet::STRIP_MM };
            let before = against.max(strip);
            needs.front(y[0] - before.max(g + BESIDE_MM[0]), y[0] - before.max(g + BESIDE_MM[1]));
            needs.top(extent[2] + g + cables_least, extent[2] + g + cables);
            [x, y[0], 0.0]
        }
        SupplyPose::EndBeside => {
            let right = boards::IO_X.get()[1].max(board_box.max[0]);
            let x = right + BESIDE_SUPPLY_MM.max(against);
            needs.right(x + extent[0] + along.max(g + BESIDE_MM[0]), x + extent[0] + along.max(g + BESIDE_MM[1]));
            needs.top(extent[2] + g + cables_least, extent[2] + g + cables);
            [x, -BACK_STRIP_MM - extent[1], 0.0]
        }
        SupplyPose::BackFlat | SupplyPose::BackTall => {
            let right = boards::IO_X.get()[1].max(board_box.max[0]);
            // Lying flat the fan looks up or down; on its side it looks to the right or the left.
            let (left_air, right_air) =
                if pose == SupplyPose::BackTall { (against, along) } else { (BESIDE_SUPPLY_MM, BESIDE_SUPPLY_MM) };
            let x = right + EDGE_WEB_MM[1] + left_air.max(supplies::FACE_FLANGE.get());
            needs.right(
                x + extent[0] + right_air.max(g + EDGE_WEB_MM[0]),
                x + extent[0] + right_air.max(g + EDGE_WEB_MM[1]),
            );
            let above = if pose == SupplyPose::BackFlat { along } else { BESIDE_MM[0] };
            needs.top(extent[2] + g + above, extent[2] + g + above.max(BESIDE_MM[1]));
            needs.front(-extent[1] - cables_least - g, -extent[1] - cables - g);
            [x, -extent[1], 0.0]
        }
    };
    let body = Aabb::new(min, [0, 1, 2].map(|axis| min[axis] + extent[axis]));
    surround(needs, spec, &body, BESIDE_MM);
    Some(supply::place(&spec.supply, size, pose, min))
}
