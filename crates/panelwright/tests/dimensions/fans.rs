//! Fans against the trade's sizes.

use super::near;
use panelwright::dimensions::fans::*;
use panelwright::dimensions::source::Confidence;

#[test]
fn each_frame_has_its_pattern_and_opening() {
    let expected = [
        (40, Some(32.0), 38.0, 4.3, &[10.0, 20.0, 28.0][..]),
        (50, Some(40.0), 47.0, 4.3, &[10.0, 15.0]),
        (60, Some(50.0), 57.0, 4.3, &[15.0, 20.0, 25.0]),
        (70, Some(60.0), 66.0, 4.3, &[15.0, 25.0]),
        (80, Some(71.5), 76.0, 4.5, &[15.0, 25.0]),
        (92, Some(82.5), 88.0, 4.5, &[15.0, 25.0]),
        (120, Some(105.0), 114.0, 4.5, &[15.0, 25.0, 38.0]),
        (140, Some(124.5), 134.0, 4.5, &[25.0]),
        (200, None, 190.0, 4.5, &[20.0, 25.0, 30.0]),
    ];
    assert_eq!(FANS.len(), expected.len());
    for (frame, spacing, opening, drill, thicknesses) in expected {
        let found = fan(frame).expect("listed");
        assert_eq!(found.spacing.map(|s| s.get()), spacing);
        assert_eq!(found.opening.get(), opening);
        assert_eq!(found.drill_mm(), drill);
        assert_eq!(found.thicknesses.get(), thicknesses);
    }
    assert_eq!(fan(100), None);
}

#[test]
fn holes_lie_in_the_frame_and_outside_the_opening() {
    for fan in &FANS {
        let half = f64::from(fan.frame_mm) / 2.0;
        assert!(fan.opening.get() < f64::from(fan.frame_mm));
        assert!(fan.thicknesses.get().is_sorted());
        let Some(centres) = fan.spacing.map(|spacing| hole_centres(spacing.get())) else {
            assert_eq!(fan.frame_mm, 200, "only 200 mm fans have no pattern");
            continue;
        };
        for [x, y] in centres {
            assert!(x.abs() + fan.drill_mm() / 2.0 < half && y.abs() + fan.drill_mm() / 2.0 < half);
            // The panel keeps material between the opening and each screw.
            let web = (x * x + y * y).sqrt() - fan.drill_mm() / 2.0 - fan.opening.get() / 2.0;
            assert!(web > 1.0, "fan {}: web {web}", fan.frame_mm);
        }
        let [a, b, c, d] = centres;
        near(a[0] - b[0], fan.spacing.expect("has a pattern").get(), 1e-9);
        assert_eq!([a[0] + c[0], a[1] + c[1], b[0] + d[0], b[1] + d[1]], [0.0; 4]);
    }
}

#[test]
fn spacings_that_lists_disagree_on_are_recalled() {
    for (frame, recalled) in
        [(40, false), (50, true), (60, true), (70, true), (80, false), (92, false), (120, false), (140, true)]
    {
        let spacing = fan(frame).and_then(|fan| fan.spacing).expect("listed");
        assert_eq!(spacing.source().confidence == Confidence::FromMemory, recalled, "{frame}");
    }
}

#[test]
fn radiators_carry_their_fans() {
    for radiator in RADIATORS {
        assert_eq!(radiator.class_mm, radiator.fan_frame_mm * radiator.fans);
        assert!(fan(radiator.fan_frame_mm).is_some());
        assert_eq!(radiator.pitch.is_some(), radiator.fans > 1);
        if let Some(pitch) = radiator.pitch {
            near(pitch.get(), f64::from(radiator.fan_frame_mm), 1e-9);
        }
        let [width, length, _] = radiator.seen_size.get();
        assert!(width >= f64::from(radiator.fan_frame_mm) && length >= f64::from(radiator.class_mm) + 25.0);
    }
    assert_eq!(RADIATORS.map(|radiator| radiator.class_mm), [120, 240, 280]);
}
