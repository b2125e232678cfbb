//! Brackets and captive nuts: which ones a case wants, and the search for a free place for each.
//!
//! Each is moved along its corner, nearest to its wanted place first, until it hits nothing, at rest and while the
//! sleeve comes off, and its screws lie on sound sheet. What finds no place is left out and named in
//! [`super::Unplaced`].

mod stand_in;
mod tongue;

use super::Unplaced;
use super::bench::Bench;
use super::corner::{Corner, axis_along};
use super::fixing::{self, Fixing, LegHole};
use super::joints;
use super::lane::Lane;
use super::panel::{Assembly, Purpose};
use super::seat::Seat;
use super::site::Site;
use super::sleeve;
use crate::arrangement::NEAR_FRONT_MM;
use crate::design::{BracketScrews, BracketSize, Joint, Wall};
use crate::dimensions::fasteners::FACE_SCREW_TO_CORNER;
use crate::fastening::Fastener;
use crate::parts::{Carrier, Part, PartKind};
use crate::solid::within;

/// Corners longer than this get a third bracket in the middle, mm (common practice).
const THIRD_FROM_MM: f64 = 250.0;

/// Steps of the search along a corner, mm: a fine one only where the coarse one finds nothing.
const STEPS_MM: [f64; 2] = [2.0, 0.5];

/// One stretch of a corner where a bracket may go.
struct Spot {
    walls: [Wall; 2],
    gaps: [f64; 2],
    range: [f64; 2],
    wanted: f64,
}

/// A bracket that wants a place.
struct Wanted {
    id: String,
    kind: PartKind,
    label: &'static str,
    /// Line of the shopping list.
    listed: &'static str,
    carrier: Carrier,
    size: BracketSize,
    spots: Vec<Spot>,
    /// Holes of its legs once the spot is known.
    holes: fn(&Wanted, &Spot, Fixing) -> [LegHole; 2],
    /// How legs are held to the panels they stay on.
    fixing: Fixing,
}

/// Places everything.
pub(super) fn features(bench: &mut Bench) {
    let mut site = Site::new(bench);
    tongue::bracket(bench, &mut site);
    let mut all = captives(bench);
    all.extend(chassis_brackets(bench));
    all.extend(sleeve_brackets(bench));
    for wanted in &all {
        if !place(bench, &mut site, wanted) {
            let walls = wanted.spots.first().map_or([Wall::Floor, Wall::Back], |spot| spot.walls);
            bench.unplaced.push(Unplaced { id: wanted.id.clone(), walls });
        }
    }
    stand_in::blocks(bench, &mut site, &all);
    joints::blocks(bench, &mut site);
}

/// How brackets of the sleeve are held to its panels.
const fn sleeve_fixing(bench: &Bench) -> Fixing {
    match bench.spec.hardware.screws {
        BracketScrews::Through => Fixing::Through(0.0),
        BracketScrews::Inside => Fixing::Short,
    }
}

/// Inside of the case along an axis.
fn extent(bench: &Bench, axis: usize) -> [f64; 2] {
    let case = &bench.arrangement.case;
    let (low, high) = [(Wall::Left, Wall::Right), (Wall::Front, Wall::Back), (Wall::Floor, Wall::Top)][axis];
    [case.inner(low).2, case.inner(high).2]
}

/// The part of the corner of two panels that no sliding panel comes near.
pub(super) fn clear_of_sliding(bench: &Bench, walls: [Wall; 2]) -> [f64; 2] {
    let g = bench.arrangement.case.gap_mm;
    let axis = axis_along(walls);
    let [mut from, mut to] = extent(bench, axis);
    match (sleeve::assembly(walls[0]), axis) {
        (Assembly::Chassis, _) => {
            from += g;
            to -= g;
        }
        // The floor and the back are a gap away from what hangs in the sleeve.
        (Assembly::Sleeve, 2) => from += g,
        (Assembly::Sleeve, 1) => to -= g,
        _ => {}
    }
    [from, to]
}

fn captives(bench: &Bench) -> Vec<Wanted> {
    let g = bench.arrangement.case.gap_mm;
    let size = bench.spec.hardware.captive;
    let [x, y, z] = [0, 1, 2].map(|axis| extent(bench, axis));
    let middle = |range: [f64; 2]| (range[0] + range[1]) / 2.0;
    let wanted = |id: &str, carrier, spots, fixing| Wanted {
        id: id.to_owned(),
        kind: PartKind::CaptiveNut,
        label: "Captive-nut bracket",
        listed: "Captive-nut bracket",
        carrier,
        size,
        spots,
        holes: captive_holes,
        fixing,
    };
    let spot = |walls: [Wall; 2], range: [f64; 2], at: f64| Spot { walls, gaps: [0.0, g], range, wanted: at };
    let front_part = [y[0], (y[0] + NEAR_FRONT_MM).min(y[1])];
    let front = vec![
        spot([Wall::Front, Wall::Floor], x, middle(x)),
        spot([Wall::Left, Wall::Floor], front_part, y[0]),
        spot([Wall::Right, Wall::Floor], front_part, y[0]),
    ];
    let above = [z[0] + g, z[1]];
    let halves = [[x[0], middle(x)], [middle(x), x[1]]];
    let back = |wall, half: usize| {
        vec![
            spot([wall, Wall::Back], above, middle(z)),
            spot([Wall::Top, Wall::Back], halves[half], middle(halves[half])),
            spot([Wall::Top, Wall::Back], x, middle(halves[half])),
        ]
    };
    let fixing = sleeve_fixing(bench);
    let mut out = vec![
        wanted("captive-front", Carrier::Sleeve, front, fixing),
        wanted("captive-back-1", Carrier::Sleeve, back(Wall::Left, 0), fixing),
        wanted("captive-back-2", Carrier::Sleeve, back(Wall::Right, 1), fixing),
    ];
    if bench.spec.sleeve.side_screws {
        for (id, wall) in [("captive-side-1", Wall::Left), ("captive-side-2", Wall::Right)] {
            let spots = vec![spot([Wall::Floor, wall], [y[0] + g, y[1]], middle(y))];
            out.push(wanted(id, Carrier::Chassis, spots, Fixing::Through(0.0)));
        }
    }
    out
}

fn captive_holes(wanted: &Wanted, spot: &Spot, fixing: Fixing) -> [LegHole; 2] {
    [
        LegHole {
            id: format!("{}-fixing", wanted.id),
            purpose: Purpose::BracketScrew,
            why: format!("Captive-nut bracket on the {}", spot.walls[0].name()),
            what: "screw of a captive-nut bracket",
            fixing,
        },
        LegHole {
            id: wanted.id.clone(),
            purpose: Purpose::CaptiveScrew,
            why: "Screw that holds the sleeve".to_owned(),
            what: "screw that holds the sleeve",
            fixing: Fixing::Captive,
        },
    ]
}

fn bracket_holes(wanted: &Wanted, spot: &Spot, fixing: Fixing) -> [LegHole; 2] {
    [0, 1].map(|index| LegHole {
        id: format!("{}-{}", wanted.id, spot.walls[index].name()),
        purpose: Purpose::BracketScrew,
        why: format!("Bracket between {} and {}", spot.walls[0].name(), spot.walls[1].name()),
        what: "screw of a bracket",
        fixing,
    })
}

/// Brackets along one corner: one near each end, one more in the middle of a long corner.
fn along(bench: &Bench, walls: [Wall; 2], range: [f64; 2], carrier: Carrier, fixing: Fixing) -> Vec<Wanted> {
    let size = bench.spec.hardware.bracket;
    let inset = FACE_SCREW_TO_CORNER.get();
    let [from, to] = range;
    let share = |part: f64| from + (to - from) * part;
    // Each keeps to its own part of the corner: two side by side hold no more than one.
    let places = if to - from > THIRD_FROM_MM {
        let (first, second) = (share(1.0 / 3.0), share(2.0 / 3.0));
        vec![([from, first], from + inset), ([second, to], to - inset), ([first, second], share(0.5))]
    } else {
        vec![([from, share(0.5)], from + inset), ([share(0.5), to], to - inset)]
    };
    places
        .into_iter()
        .enumerate()
        .map(|(index, (range, wanted))| Wanted {
            id: format!("bracket-{}-{}-{}", walls[0].name(), walls[1].name(), index + 1),
            kind: PartKind::Bracket,
            label: "Corner bracket",
            listed: "Corner bracket",
            carrier,
            size,
            spots: vec![Spot { walls, gaps: [0.0, 0.0], range, wanted }],
            holes: bracket_holes,
            fixing,
        })
        .collect()
}

fn chassis_brackets(bench: &Bench) -> Vec<Wanted> {
    brackets(bench, Assembly::Chassis, Carrier::Chassis, Fixing::Through(0.0))
}

fn sleeve_brackets(bench: &Bench) -> Vec<Wanted> {
    brackets(bench, Assembly::Sleeve, Carrier::Sleeve, sleeve_fixing(bench))
}

fn brackets(bench: &Bench, assembly: Assembly, carrier: Carrier, fixing: Fixing) -> Vec<Wanted> {
    let seams = bench.arrangement.case.joints.seams;
    seams
        .iter()
        .filter(|seam| seam.joint == Joint::Brackets && sleeve::assembly(seam.through) == assembly)
        .flat_map(|seam| {
            let walls = seam.seam.walls();
            along(bench, walls, clear_of_sliding(bench, walls), carrier, fixing)
        })
        .collect()
}

/// Looks for a place and takes it: the first that is free and out of the way of plugs and cables, else the first that
/// is free; where no place has room for a nut, a bracket of the sleeve takes short screws.
fn place(bench: &mut Bench, site: &mut Site, wanted: &Wanted) -> bool {
    let mut fixings = vec![wanted.fixing];
    if wanted.carrier == Carrier::Sleeve && wanted.fixing != Fixing::Short {
        fixings.push(Fixing::Short);
    }
    for fixing in fixings {
        let mut seats: Vec<Seat> = wanted
            .spots
            .iter()
            .map(|spot| {
                let corner =
                    Corner { walls: spot.walls, gaps: spot.gaps, size: wanted.size, filed_mm: 0.0, at: spot.wanted };
                Seat::new(bench, &wanted.id, corner, (wanted.holes)(wanted, spot, fixing))
            })
            .collect();
        if let Some((index, at)) = search(bench, site, wanted, &seats) {
            take(bench, site, wanted, &seats.swap_remove(index).moved(at));
            return true;
        }
    }
    false
}

/// Puts the bracket where its seat is, with its holes and screws.
fn take(bench: &mut Bench, site: &mut Site, wanted: &Wanted, seat: &Seat) {
    let corner = &seat.corner;
    let case = bench.arrangement.case;
    let about = [wanted.id.clone(), corner.walls[0].name().to_owned(), corner.walls[1].name().to_owned()];
    for (index, (screw, hole)) in seat.screws.iter().zip(&seat.holes).enumerate() {
        let wall = corner.walls[index];
        let point = bench.on(wall, corner.hole(&case, index));
        fixing::cut(bench, wall, point, hole, screw, &about);
        site.add_screw(screw, wanted.carrier, hole.fixing == Fixing::Captive);
        bench.screws.push(screw.clone());
    }
    let part = Part {
        id: wanted.id.clone(),
        kind: wanted.kind,
        label: wanted.label.to_owned(),
        carrier: wanted.carrier,
        bodies: corner.legs(&case).to_vec(),
        keep_clear: Vec::new(),
    };
    add(bench, site, part);
    let joins = corner.walls.map(Wall::name);
    bench.loose.push(Fastener::new(wanted.listed, 1, Some(wanted.size.leg_mm), joins));
}

fn add(bench: &mut Bench, site: &mut Site, part: Part) {
    site.add(&part);
    bench.hardware.push(part);
}

/// The first free place of all spots that is out of the way of plugs and cables, with its holes as far from the panels'
/// ends as the sheet wants them; else one that is only out of the way, else the first that is free: the spot's index and
/// the place along its corner. Fine steps only where no coarse one finds a place.
fn search(bench: &Bench, site: &Site, wanted: &Wanted, seats: &[Seat]) -> Option<(usize, f64)> {
    let half = wanted.size.width_mm / 2.0;
    let ranges: Vec<[f64; 2]> =
        wanted.spots.iter().map(|Spot { range: [low, high], .. }| [low + half, high - half]).collect();
    let mut lanes: Vec<Option<Lane>> = seats.iter().map(|_| None).collect();
    STEPS_MM.iter().find_map(|step| {
        let (mut brittle, mut crowded) = (None, None);
        for (index, range) in ranges.iter().enumerate() {
            let mut places = positions(*range, wanted.spots[index].wanted, *step).peekable();
            if places.peek().is_none() {
                continue;
            }
            let lane = lanes[index].get_or_insert_with(|| seats[index].lane(bench, site, *range, wanted.carrier));
            for at in places.filter(|at| lane.is_free(*at)) {
                if !lane.is_uncrowded(at) {
                    crowded = crowded.or(Some((index, at)));
                } else if seats[index].is_far_from_ends(bench, at) {
                    return Some((index, at));
                } else {
                    brittle = brittle.or(Some((index, at)));
                }
            }
        }
        brittle.or(crowded)
    })
}

/// Positions of a range, the nearest to the wanted one first.
fn positions([low, high]: [f64; 2], wanted: f64, step_mm: f64) -> impl Iterator<Item = f64> {
    let (start, steps) = if high < low {
        (None, 0)
    } else {
        (Some(within(wanted, low, high)), f64::ceil((high - low) / step_mm) as usize)
    };
    let beside = move |start: f64| {
        (1..=steps).flat_map(move |step| {
            let by = step as f64 * step_mm;
            // The ends of the range are tried too: a bracket in the very corner is often the only one that fits.
            [start - by, start + by]
                .into_iter()
                .filter(move |at| *at > low - step_mm && *at < high + step_mm)
                .map(move |at| within(at, low, high))
        })
    };
    start.into_iter().chain(start.into_iter().flat_map(beside))
}
