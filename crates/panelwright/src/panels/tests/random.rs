//! Properties over random designs: what holds whatever the maker chooses.

use super::*;
use crate::arrangement::Arrangement;
use crate::design::Slide;
use crate::parts::Carrier;
use crate::sample;
use crate::solid::Aabb;

fn each(count: u64, wild: bool, mut look: impl FnMut(u64, &Spec, &Arrangement, &Worked)) {
    for seed in 0..count {
        let spec = Spec::of(&sample::design(seed, wild));
        let arrangement = arrange(&spec);
        let worked = work_out(&spec, &arrangement);
        look(seed, &spec, &arrangement, &worked);
    }
}

#[test]
fn names_are_unique_and_everything_says_why_and_from_where() {
    for wild in [false, true] {
        each(60, wild, |seed, _, _, worked| {
            for panel in &worked.panels {
                let mut ids: Vec<&str> = panel.features.iter().map(|feature| feature.id.as_str()).collect();
                ids.sort_unstable();
                assert!(ids.windows(2).all(|pair| pair[0] != pair[1]), "{seed} {:?}", panel.wall);
                for feature in &panel.features {
                    assert!(!feature.why.is_empty() && !feature.source.document.is_empty());
                    assert!(feature.contour.area() > 0.0, "{seed} {}: counter-clockwise", feature.id);
                    assert!(feature.blind.is_none_or(|(depth, _)| 0.0 < depth && depth < panel.thickness_mm));
                    assert!(feature.kind != FeatureKind::Hole || feature.key.is_some(), "{seed} {}", feature.id);
                }
            }
            let mut ids: Vec<&str> = worked.screws.iter().map(|screw| screw.id.as_str()).collect();
            ids.sort_unstable();
            assert!(ids.windows(2).all(|pair| pair[0] != pair[1]), "{seed}");
        });
    }
}

/// Whether two features are made for one thing: a counterbore around its hole, a rebate around its opening.
fn one_thing(a: &Feature, b: &Feature) -> bool {
    a.about.iter().any(|id| b.about.contains(id)) || a.about.contains(&b.id) || b.about.contains(&a.id)
}

/// What this module places of its own accord (brackets, captive nuts, vents) never spoils anything.
#[test]
fn hardware_and_vents_stay_on_the_sheet_and_clear_of_all_other_features() {
    for wild in [false, true] {
        each(40, wild, |seed, _, _, worked| {
            for panel in &worked.panels {
                for (index, own) in panel.features.iter().enumerate() {
                    let placed = matches!(own.purpose, Purpose::BracketScrew | Purpose::CaptiveScrew | Purpose::Vent);
                    if !placed {
                        continue;
                    }
                    let bbox = own.contour.bbox();
                    let [w, h] = panel.size_mm;
                    assert!(
                        bbox.x0 > 0.0 && bbox.y0 > 0.0 && bbox.x1 < w && bbox.y1 < h,
                        "{seed} {} {bbox:?} {w} x {h}",
                        own.id
                    );
                    assert!(panel.outline.contains(own.centre));
                    for (other_index, other) in panel.features.iter().enumerate() {
                        if other_index == index || one_thing(own, other) && own.purpose != Purpose::Vent {
                            continue;
                        }
                        let apart = own.contour.bbox().inflate(1.0, 1.0).intersect(other.contour.bbox());
                        if apart.width() <= 0.0 || apart.height() <= 0.0 {
                            continue;
                        }
                        assert!(
                            own.contour.distance_to(&other.contour) >= 1.0 - 1e-9,
                            "{seed} {} {}",
                            own.id,
                            other.id
                        );
                        assert!(!other.contour.contains(own.centre), "{seed} {} {}", own.id, other.id);
                    }
                }
            }
        });
    }
}

#[test]
fn hardware_shares_space_with_nothing_and_the_sleeve_takes_its_own_along() {
    for wild in [false, true] {
        each(40, wild, |seed, spec, arrangement, worked| {
            let (axis, way) = match spec.sleeve.slide {
                Slide::Up => (2, 2000.0),
                Slide::Forward => (1, -2000.0),
            };
            let sheets: Vec<(Carrier, Aabb)> = worked
                .panels
                .iter()
                .map(|panel| {
                    let solid = panel.frame.plate(panel.size_mm, panel.thickness_mm);
                    let chassis = panel.assembly == Assembly::Chassis;
                    (if chassis { Carrier::Chassis } else { Carrier::Sleeve }, solid)
                })
                .collect();
            for (index, part) in worked.hardware.iter().enumerate() {
                let others = arrangement.parts.iter().chain(worked.hardware.iter().skip(index + 1));
                let solids = others
                    .flat_map(|other| other.bodies.iter().map(move |body| (other.carrier, *body)))
                    .chain(sheets.iter().copied());
                for (carrier, other) in solids {
                    for body in &part.bodies {
                        assert!(!body.overlaps(&other), "{seed} {}", part.id);
                        if carrier != part.carrier {
                            let way = if part.carrier == Carrier::Sleeve { way } else { -way };
                            assert!(!body.swept(axis, way).overlaps(&other), "{seed} {} on its way", part.id);
                        }
                    }
                }
            }
        });
    }
}

#[test]
fn plausible_designs_find_places_for_nearly_all_their_hardware() {
    let (mut missing, mut all) = (0, 0);
    each(120, false, |_, _, _, worked| {
        missing += worked.unplaced.len();
        all += worked.unplaced.len() + worked.hardware.len();
    });
    assert!(missing * 10 < all, "{missing} of {all}");
}
