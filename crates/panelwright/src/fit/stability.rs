//! Whether the case stands: the feet's base under its weight.
//!
//! Nobody has weighed the parts. The weight is taken to act in the middle of the case, half-way up, so the answer is a
//! first one; a tall cooler or a supply at one end moves it.

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{FeetKind, Wall};
use crate::dimensions::margins::FOOT_FROM_EDGE as LEAST_INSET;
use crate::dimensions::source::Sourced;
use crate::dimensions::stability::{TILT_EASY, TILT_LEAST};
use crate::solid::TOUCH_MM;

pub(super) const FEET_BASE: Rule = Rule {
    name: "feet-base",
    what: "The feet stand far enough apart that the case does not tip when it is tilted by 10 degrees.",
    source: TILT_LEAST.source(),
    look: feet_base,
};

/// The edge of the feet's base nearest to a point: the distance inward to it (negative outside), and its two feet.
/// `None` for fewer than two feet.
fn nearest_edge(feet: &[[f64; 2]], at: [f64; 2]) -> Option<(f64, [[f64; 2]; 2])> {
    let mut nearest: Option<(f64, [[f64; 2]; 2])> = None;
    for (index, from) in feet.iter().enumerate() {
        for (other, to) in feet.iter().enumerate() {
            let along = [to[0] - from[0], to[1] - from[1]];
            let length = f64::sqrt(along[0] * along[0] + along[1] * along[1]);
            if index == other || length < TOUCH_MM {
                continue;
            }
            // Inward distance: left of the way from one foot to the next, counter-clockwise seen from above.
            let inward = |p: &[f64; 2]| (along[0] * (p[1] - from[1]) - along[1] * (p[0] - from[0])) / length;
            if feet.iter().all(|foot| inward(foot) >= -TOUCH_MM) {
                let found = (inward(&at), [*from, *to]);
                if nearest.is_none_or(|known| found.0 < known.0) {
                    nearest = Some(found);
                }
            }
        }
    }
    nearest
}

fn feet_base(scene: &Scene, found: &mut Vec<Finding>) {
    let (spec, case) = (scene.case.spec, &scene.case.arrangement.case);
    if spec.feet.kind == FeetKind::None {
        return;
    }
    let [width, depth, height] = case.outside_mm;
    let middle = [width / 2.0, depth / 2.0];
    let Some((inward, ends)) = nearest_edge(&scene.case.arrangement.feet, middle) else { return };
    let up = spec.feet.height_mm + height / 2.0;
    let needed = |tilt: &Sourced<f64>| up * libm::tan(tilt.get().to_radians());
    let (severity, limit) = if inward < needed(&TILT_LEAST) - TOUCH_MM {
        (Severity::Blocks, TILT_LEAST)
    } else if inward < needed(&TILT_EASY) - TOUCH_MM {
        (Severity::Caution, TILT_EASY)
    } else {
        return;
    };
    let tips_at = libm::atan2(inward, up).to_degrees();
    let text = if inward <= TOUCH_MM {
        "The case does not stand on its feet: its middle is not over the base they make.".to_owned()
    } else {
        format!(
            "The case tips when it is tilted by {}°: its feet stand {} beside its middle.",
            words::bare(tips_at),
            words::mm(inward)
        )
    };
    let Some(floor) = scene.sheet(Wall::Floor) else { return };
    let room = [0, 1].map(|axis| (middle[axis] - floor.solid.min[axis]).min(floor.solid.max[axis] - middle[axis]));
    let inset = room[0].min(room[1]) - needed(&TILT_EASY);
    let remedy = if inset < LEAST_INSET.get() {
        "Take lower feet, or a wider case.".to_owned()
    } else if inset < spec.feet.inset_mm {
        format!("Set the feet {} or less from the floor's edges.", words::at_most(inset))
    } else {
        "Free the corners of the floor for the feet, or take lower feet or a wider case.".to_owned()
    };
    let [a, b] = ends;
    found.push(
        FEET_BASE
            .finds(severity, text)
            .with_mm(inward, needed(&limit))
            .with_remedy(remedy)
            .with_about(["floor", "foot-1"])
            .with_at([(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0, floor.solid.min[2]])
            .with_source(limit.source()),
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A case of 8.55 kg on four and on three feet: atan(d / height), with d from the cross product, worked by hand.
    #[test]
    fn angles_of_worked_examples() {
        let (at, up) = ([0.099_298_2, 0.166_725_1], 0.179_298_2);
        let four = [[0.015, 0.020], [0.205, 0.020], [0.205, 0.330], [0.015, 0.330]];
        for (feet, degrees) in [(&four[..], 25.1809), (&[four[0], four[1], [0.110, 0.330]][..], 11.8461)] {
            let scaled: Vec<[f64; 2]> = feet.iter().map(|foot| foot.map(|value| value * 1e3)).collect();
            let (inward, _) = nearest_edge(&scaled, at.map(|value| value * 1e3)).unwrap();
            let angle = libm::atan2(inward, up * 1e3).to_degrees();
            assert!((angle - degrees).abs() < 1e-3, "{angle} is not {degrees}");
        }
    }

    #[test]
    fn a_point_beside_the_feet_is_outside() {
        let feet = [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]];
        assert!((nearest_edge(&feet, [13.0, 5.0]).unwrap().0 + 3.0).abs() < 1e-12);
        assert_eq!(nearest_edge(&feet[..1], [0.0, 0.0]), None);
    }
}
