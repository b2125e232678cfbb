//! Feet: bolts or spikes of M6, or pads on M4, through the floor; low pads are stuck on.

use super::bench::{Bench, Cut};
use super::panel::Purpose;
use super::screws::{Grip, Plan};
use crate::design::{FeetKind, Wall};
use crate::dimensions::fasteners::Thread;
use crate::fastening::{Fastener, nut_name, washer_name};
use crate::parts::feet as feet_parts;

pub(super) fn features(bench: &mut Bench) {
    let kind = bench.spec.feet.kind;
    let height = bench.spec.feet.height_mm;
    let t = bench.thickness();
    if feet_parts::are_stuck(&bench.spec.feet, t) {
        let count = bench.arrangement.feet.len();
        bench.loose.push(Fastener::new("Pad, stuck on", count, Some(height), ["floor"]));
        return;
    }
    let (thread, why) = match kind {
        FeetKind::Bolts => (Thread::M6, "M6 bolt from below, a nut on either side of the floor"),
        FeetKind::Spikes => (Thread::M6, "M6 spike from below, nut inside"),
        FeetKind::Pads => (Thread::M4, "M4 from inside into the pad"),
        FeetKind::None => return,
    };
    let diameter = bench.clearance(thread);
    let feet = bench.arrangement.feet.clone();
    for (index, [x, y]) in feet.iter().enumerate() {
        let number = index + 1;
        let id = format!("foot-{number}");
        let at = bench.on(Wall::Floor, [*x, *y, 0.0]);
        let source = bench.clearance_hole(thread).source();
        let cut = Cut::new(id.as_str(), Purpose::Foot, format!("Foot {number}: {why}"), source).about(id.as_str());
        bench.hole(Wall::Floor, cut, at, diameter);
        let name = format!("screw-{id}");
        let joins = ["floor", id.as_str()];
        let screw = match kind {
            FeetKind::Bolts => {
                // From the head on the ground: the free length, the floor with a washer on either side, the upper nut.
                let free = feet_parts::free_mm(&bench.spec.feet);
                let clamped = feet_parts::bolt_clamped_mm(&bench.spec.feet, t);
                let plan = Plan::new(name, "bolt as a foot", thread, clamped, Grip::Nut).joins(joins);
                Plan { washers: 0..=0, ..plan }.screw([*x, *y, -free], [0.0, 0.0, 1.0])
            }
            FeetKind::Spikes => {
                let clamped = feet_parts::bolt_clamped_mm(&bench.spec.feet, t);
                let plan = Plan::new(name, "spike", thread, clamped, Grip::Nut).joins(joins);
                Plan { washers: 0..=0, ..plan }.screw([*x, *y, 0.0], [0.0, 0.0, 1.0])
            }
            FeetKind::Pads | FeetKind::None => {
                let [least, most] = feet_parts::pad_depth_mm(&bench.spec.feet, t).unwrap_or_default();
                let grip = Grip::Depth(least, Some(most));
                let plan = Plan::new(name, "screw into a pad", thread, t, grip).joins(joins);
                plan.screw([*x, *y, t], [0.0, 0.0, -1.0])
            }
        };
        bench.screws.push(screw);
    }
    let mut loose = |what: String, count: usize, length: Option<f64>| {
        bench.loose.push(Fastener::new(what, count, length, ["floor"]));
    };
    let count = feet.len();
    match kind {
        FeetKind::Bolts => {
            loose(nut_name(thread.label()), count, None);
            loose(washer_name(thread.label()), count * 2, None);
        }
        FeetKind::Spikes => loose(washer_name(thread.label()), count, None),
        FeetKind::Pads => loose("Pad, screwed".to_owned(), count, Some(height)),
        FeetKind::None => {}
    }
}
