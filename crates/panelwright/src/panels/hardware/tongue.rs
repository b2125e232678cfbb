//! The bracket that holds a tongue of the card: it stands off the back by washers, so that the tongue goes between.

use super::super::bench::Bench;
use super::super::corner::Corner;
use super::super::fixing::{self, Fixing, LegHole};
use super::super::panel::Purpose;
use super::super::seat::Seat;
use super::super::site::{self, Site};
use super::{Wanted, add, bracket_holes, take};
use crate::design::Wall;
use crate::dimensions::fasteners::washer;
use crate::drawing::number::format_number;
use crate::fastening::{Fastener, washer_name};
use crate::parts::{Carrier, Part, PartKind, tongue};
use crate::solid::Aabb;

/// The bracket behind which a tongue of the card's bracket goes. Where none can stand the card is held by its tab alone,
/// which the checks tell of.
pub(super) fn bracket(bench: &mut Bench, site: &mut Site) {
    let Some(card) = bench.spec.card.as_ref() else { return };
    let hardware = &bench.spec.hardware;
    let size = hardware.bracket;
    let seats = tongue::seats(card, &bench.spec.board, &bench.arrangement.board, &size, hardware.thread);
    let case = bench.arrangement.case;
    let washer_of = washer(fixing::thread(bench));
    for seat in &seats {
        let wanted = Wanted {
            id: "bracket-tongue-1".to_owned(),
            kind: PartKind::Bracket,
            label: "Corner bracket for the card's tongue",
            listed: "Corner bracket",
            carrier: Carrier::Chassis,
            size,
            spots: Vec::new(),
            holes: bracket_holes,
            fixing: Fixing::Through(0.0),
        };
        let corner = Corner {
            walls: [Wall::Floor, Wall::Back],
            gaps: [0.0, seat.stack_mm],
            size,
            filed_mm: seat.filed_mm,
            at: seat.x,
        };
        let filed = match seat.filed_mm {
            0.0 => String::new(),
            filed => format!("its leg filed to {} mm, ", format_number(size.leg_mm - filed, 2)),
        };
        let (axis, sense, face) = case.inner(Wall::Back);
        let centre = corner.hole(&case, 1);
        let half = washer_of.outside_mm / 2.0;
        let mut low = centre.map(|value| value - half);
        let mut high = centre.map(|value| value + half);
        low[axis] = face;
        high[axis] = face + sense * seat.stack_mm;
        let washers = Aabb::new(low, high);
        // The washers may come nearer to the tongue than brackets come to parts: they turn with their screw.
        if !site.is_free(&[washers.grown(-site::AIR_MM)], Carrier::Chassis) {
            continue;
        }
        let hole = |fixing, side: &str| LegHole {
            id: "tongue-bracket-1".to_owned(),
            purpose: Purpose::TongueBracketScrew,
            why: format!("Bracket that holds the tongue of the card, {side}"),
            what: "screw of the tongue's bracket",
            fixing,
        };
        let holes = [
            hole(Fixing::Through(0.0), "on the floor"),
            hole(
                Fixing::Through(seat.stack_mm),
                &format!(
                    "{filed}set off the back by {} washers, for the tongue needs {} mm",
                    seat.washers,
                    format_number(seat.needed_mm, 2)
                ),
            ),
        ];
        let placed = Seat::new(bench, &wanted.id, corner, holes);
        if placed.lane(bench, site, [seat.x; 2], Carrier::Chassis).is_free(seat.x) {
            take(bench, site, &wanted, &placed);
            let count = seat.washers as usize;
            let part = Part {
                id: "washer-tongue-1".to_owned(),
                kind: PartKind::Washer,
                label: format!("{count} washers behind the tongue's bracket"),
                carrier: Carrier::Chassis,
                bodies: vec![washers],
                keep_clear: Vec::new(),
            };
            add(bench, site, part);
            let name = washer_name(fixing::thread(bench).label());
            bench.loose.push(Fastener::new(name, count, None, ["back", "bracket-tongue-1"]));
            return;
        }
    }
}
