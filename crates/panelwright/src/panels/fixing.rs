//! How a leg of a bracket is held to its panel: the hole, the screw, and the room the screw takes inside.

use kurbo::Point;

use super::bench::{Bench, Cut};
use super::corner::Corner;
use super::panel::{Assembly, Face, FeatureKind, Purpose};
use super::screws::{Grip, Plan};
use super::site::{driven_from, head_solid, screw_solids};
use super::sleeve::assembly;
use crate::design::{BracketScrews, Wall};
use crate::dimensions::fasteners::{
    PILOT_DEEPER, TappingScrew, Thread, nut, pilot_drill, sharp_corners_mm, sold_lengths, washer,
};
use crate::dimensions::source::Source;
use crate::fastening::Screw;
use crate::parts::tongue;
use crate::solid::{Aabb, minus, within};

/// Sheet left before the point of a short screw, mm (common practice).
const POINT_INSIDE_MM: f64 = 1.0;

/// Sheet left before the end of its pilot hole, mm (common practice: the drill's stop).
const PILOT_INSIDE_MM: f64 = 0.5;

/// Least depth of a short screw in the sheet, mm: two turns of thread (common practice).
const SHORT_LEAST_MM: f64 = 2.0;

/// Sheet under the leg around the pilot hole of a short screw, mm (common practice: the leg has no washer there).
const AROUND_PILOT_MM: f64 = 2.0;

/// How a leg is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Fixing {
    /// A screw from outside, a nut on the leg; so much of washers between panel and leg, mm.
    Through(f64),
    /// A short screw from inside that does not come through the face.
    Short,
    /// A screw from outside into the leg's captive nut.
    Captive,
}

/// One leg's hole, before it is made.
pub(super) struct LegHole {
    /// Its feature's name.
    pub id: String,
    pub purpose: Purpose,
    /// What it is for, in words: "Bracket 1 between floor and back".
    pub why: String,
    /// Group on the shopping list.
    pub what: &'static str,
    pub fixing: Fixing,
}

/// The hardware's thread.
pub(super) const fn thread(bench: &Bench) -> Thread {
    tongue::thread(bench.spec.hardware.thread)
}

/// The short screw that a bracket's holes take (from memory: measure yours).
const fn tapping(thread: Thread) -> (TappingScrew, f64) {
    match thread {
        Thread::M4 => (TappingScrew::St3_5, 3.5),
        _ => (TappingScrew::St2_9, 2.9),
    }
}

/// Radius of what must lie on the sheet around the hole.
pub(super) fn land(bench: &Bench, fixing: Fixing) -> f64 {
    match fixing {
        Fixing::Short => pilot_drill(tapping(thread(bench)).0).get() / 2.0 + AROUND_PILOT_MM,
        _ => washer(thread(bench)).outside_mm / 2.0,
    }
}

/// The screw of a leg.
pub(super) fn screw(bench: &Bench, corner: &Corner, index: usize, hole: &LegHole, part: &str) -> Screw {
    let case = &bench.arrangement.case;
    let wall = corner.walls[index];
    let at = corner.hole(case, index);
    let (axis, sense, _) = case.inner(wall);
    let thread = thread(bench);
    let t = bench.thickness();
    let leg = corner.size.thickness_mm;
    let mut inward = [0.0; 3];
    inward[axis] = sense;
    let mut outside = at;
    let sheet = &bench.spec.sheet;
    outside[axis] -= sense * (t + sheet.finish_out_mm);
    // The legs inside the sleeve lie on the finish that slides along the chassis; floor and back bear none there.
    let lining = if assembly(wall) == Assembly::Sleeve { sheet.finish_in_mm } else { 0.0 };
    let id = match hole.purpose {
        // Its two holes bear one name, on two panels.
        Purpose::TongueBracketScrew => format!("screw-{}-{}", hole.id, wall.name()),
        _ => format!("screw-{}", hole.id),
    };
    let joins = [wall.name(), part];
    match hole.fixing {
        Fixing::Through(washers) => {
            Plan::new(id, hole.what, thread, bench.clamped() + lining + washers + leg, Grip::Nut)
                .joins(joins)
                .screw(outside, inward)
        }
        Fixing::Captive => {
            let grip = Grip::Depth(leg + nut(thread).height_mm, None);
            Plan::new(id, hole.what, thread, bench.clamped() + corner.gaps[index], grip)
                .joins(joins)
                .screw(outside, inward)
        }
        Fixing::Short => {
            let mut head = at;
            head[axis] += sense * leg;
            short(bench, id, hole.what, head, minus(inward), leg).joined(joins)
        }
    }
}

fn short(bench: &Bench, id: String, what: &str, head_at: [f64; 3], direction: [f64; 3], leg: f64) -> Screw {
    let (screw, diameter_mm) = tapping(thread(bench));
    let most = leg + bench.thickness() - POINT_INSIDE_MM;
    let least = leg + SHORT_LEAST_MM;
    // A length given is one for brackets that are all screwed from inside.
    let given = bench.spec.hardware.short_screw_mm.filter(|_| bench.spec.hardware.screws == BracketScrews::Inside);
    // Tapping screws are sold in the lengths of machine screws (from memory: measure yours).
    let length_mm = given.or_else(|| {
        sold_lengths(Thread::M3)
            .iter()
            .map(|piece| piece.nominal_mm)
            .rfind(|length| *length <= most + 1e-9 && *length >= least - 1e-9)
    });
    Screw {
        id,
        what: format!("{} {what}, short", screw.label()),
        thread: screw.label(),
        diameter_mm,
        head_at,
        direction,
        clamped_mm: leg,
        least_mm: least,
        most_mm: Some(most),
        length_mm,
        nut: false,
        washers: 0,
        joins: Vec::new(),
        source: Source::common_practice("Workshop custom", "short screws stay a millimetre inside the face"),
    }
}

impl Screw {
    fn joined<'a>(mut self, ids: impl IntoIterator<Item = &'a str>) -> Self {
        self.joins.extend(ids.into_iter().map(str::to_owned));
        self
    }
}

/// What a screw takes inside its leg, nut and thread; nothing for short screws.
pub(super) fn inner_rooms(bench: &Bench, corner: &Corner, index: usize, screw: &Screw) -> Vec<Aabb> {
    let (axis, sense, face) = bench.arrangement.case.inner(corner.walls[index]);
    if screw.direction[axis] != sense {
        return Vec::new();
    }
    let from = face + sense * (corner.gaps[index] + corner.size.thickness_mm);
    let mut solids = screw_solids(screw);
    if !screw.nut {
        // A captive nut sits on the leg.
        let nut = nut(thread(bench));
        let half = sharp_corners_mm(nut.flats_mm) / 2.0;
        let mut low = screw.head_at.map(|value| value - half);
        let mut high = screw.head_at.map(|value| value + half);
        low[axis] = from;
        high[axis] = from + sense * nut.height_mm;
        solids.push(Aabb::new(low, high));
    }
    // Only what stands inside the leg: the rest lies in sheet and leg.
    for solid in &mut solids {
        if sense > 0.0 {
            solid.min[axis] = solid.min[axis].max(from).min(solid.max[axis]);
        } else {
            solid.max[axis] = solid.max[axis].min(from).max(solid.min[axis]);
        }
    }
    solids
}

/// The room of a screw's head and washer outside its panel; nothing for short screws.
pub(super) fn outer_room(bench: &Bench, corner: &Corner, index: usize, screw: &Screw) -> Option<Aabb> {
    let (axis, sense, _) = bench.arrangement.case.inner(corner.walls[index]);
    if screw.direction[axis] == sense { head_solid(screw) } else { None }
}

/// Makes a leg's hole.
pub(super) fn cut(bench: &mut Bench, wall: Wall, at: Point, hole: &LegHole, screw: &Screw, about: &[String]) {
    let thread = thread(bench);
    let driven = driven_from(wall);
    let (why, source) = match hole.fixing {
        Fixing::Through(_) => {
            (format!("{}: {} {driven}, nut inside", hole.why, thread.label()), bench.clearance_hole(thread).source())
        }
        Fixing::Captive => {
            (format!("{}: {} {driven} into its nut", hole.why, thread.label()), bench.clearance_hole(thread).source())
        }
        Fixing::Short => {
            let drill = pilot_drill(tapping(thread).0);
            (format!("{}: pilot hole from inside for a short screw", hole.why), drill.source())
        }
    };
    let mut new = Cut::new(hole.id.as_str(), hole.purpose, why, source);
    new.about.extend_from_slice(about);
    if hole.fixing == Fixing::Short {
        let length = screw.length_mm.or(screw.most_mm).unwrap_or(screw.least_mm);
        let deep =
            within(length - screw.clamped_mm + PILOT_DEEPER.get(), 0.5, (bench.thickness() - PILOT_INSIDE_MM).max(0.5));
        let drill = pilot_drill(tapping(thread).0).get();
        bench.round(wall, new, FeatureKind::Hole, Some((deep, Face::Inside)), at, drill);
    } else {
        let diameter = bench.clearance(thread);
        bench.hole(wall, new, at, diameter);
    }
}
