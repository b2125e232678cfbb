//! What fans ask of their panels: a round opening and four screw holes.

use kurbo::Vec2;

use super::bench::{Bench, Cut};
use super::panel::{FeatureKind, Purpose};
use super::screws::{Grip, Plan};
use crate::dimensions::fans;
use crate::dimensions::fasteners::Thread;
use crate::dimensions::source::Source;
use crate::drawing::number::format_number;

/// Sheet left between the opening and a screw hole, mm (common practice).
const LAND_MM: f64 = 2.0;

/// Frames whose holes take no more than M3, mm: holes of 3.5 mm and up are drilled for them (from memory: measure
/// yours).
const M3_UP_TO_MM: f64 = 40.0;

/// A fan's outer flange, which a screw and its nut clamp, mm (from memory: measure yours; 4 to 5 on open frames).
const FLANGE_MM: f64 = 4.0;

/// Fans thinner than this have closed corners: their screws go through the whole frame, mm (from memory: measure
/// yours).
const OPEN_FROM_MM: f64 = 20.0;

const MEASURED: Source = Source::common_practice("The maker's measure", "hole spacing of this fan");

pub(super) fn features(bench: &mut Bench) {
    for index in 0..bench.arrangement.fans.len() {
        one(bench, index);
    }
}

fn one(bench: &mut Bench, index: usize) {
    let place = bench.arrangement.fans[index];
    // Without its hole spacing nothing is cut: fans of one frame have openings that would take another's holes away.
    let (Some(spacing), Some(table)) = (place.spacing_mm, fans::fan(place.size_mm as u32)) else { return };
    let (wall, centre, number) = (place.at.wall, place.at.centre, place.number);
    let id = format!("fan-{number}");
    let drill = table.drill_mm();
    let spec = bench.spec.fans.iter().find(|fan| fan.number == number);
    let measured = spec.is_some_and(|fan| fan.spacing_mm.is_some());
    let source = table.spacing.filter(|_| !measured).map_or(MEASURED, |spacing| spacing.source());
    let to_hole = spacing * core::f64::consts::FRAC_1_SQRT_2;
    let opening = table.opening.get().min(2.0 * (to_hole - drill / 2.0 - LAND_MM));
    if opening > 0.0 {
        let cut = Cut::new(
            format!("fan-{number}-opening"),
            Purpose::FanOpening,
            format!("Opening for the air of fan {number}, {} mm", format_number(place.size_mm, 2)),
            table.opening.source(),
        )
        .about(id.as_str());
        bench.round(wall, cut, FeatureKind::Opening, None, centre, opening);
    }
    let thread = if place.size_mm <= M3_UP_TO_MM { Thread::M3 } else { Thread::M4 };
    let thickness = spec.map_or(0.0, |fan| fan.thickness_mm);
    let (through, held) = if thickness < OPEN_FROM_MM { ("frame", thickness) } else { ("outer flange", FLANGE_MM) };
    for (hole, [x, y]) in fans::hole_centres(spacing).into_iter().enumerate() {
        let screw = hole + 1;
        let at = centre + Vec2::new(x, y);
        let cut = Cut::new(
            format!("fan-{number}-hole-{screw}"),
            Purpose::FanScrew,
            format!("Screw of fan {number}: {} through its {through}, nut behind it", thread.label()),
            source,
        )
        .about(id.as_str());
        bench.hole(wall, cut, at, drill);
        let clamped = bench.clamped() + held;
        let plan = Plan::new(format!("screw-fan-{number}-{screw}"), "screw of a fan", thread, clamped, Grip::Nut)
            .joins([wall.name(), id.as_str()]);
        bench.screw_from_outside(wall, at, plan);
    }
}
