//! Growing a part never makes a finding that blocks vanish, while everything else stays where it is.

use super::fixture::Fixture;
use crate::fit::{Finding, Severity};
use crate::sample::Random;

/// What each finding that blocks is about: the parts and panels, without features.
fn blocked(found: &[Finding]) -> Vec<Vec<String>> {
    found
        .iter()
        .filter(|finding| finding.severity == Severity::Blocks)
        .map(|finding| finding.about.iter().filter(|id| !id.contains('/')).cloned().collect())
        .collect()
}

/// Grows one part in one direction, step by step, and looks after each step.
fn grow(mut fixture: Fixture, id: &str, axis: usize, sense: f64, step: f64, steps: usize) -> usize {
    let mut before = blocked(&fixture.check());
    let mut met = 0;
    for _ in 0..steps {
        for body in &mut fixture.part(id).bodies {
            if sense > 0.0 { body.max[axis] += step } else { body.min[axis] -= step }
        }
        let found = fixture.check();
        let now = blocked(&found);
        for ids in &before {
            let kept = now.iter().any(|about| ids.iter().all(|id| about.contains(id)));
            let kept_in_pairs =
                ids.len() > 2 && pairs(ids).all(|two| now.iter().any(|about| two.iter().all(|id| about.contains(id))));
            assert!(kept || kept_in_pairs, "{id} grown along {axis}: lost {ids:?}, has {now:?}");
        }
        assert!(before.is_empty() || !now.is_empty());
        met += now.len();
        before = now;
    }
    met
}

/// The first id with each of the others: a finding may split when another rule takes over one of its pairs.
fn pairs(ids: &[String]) -> impl Iterator<Item = [&String; 2]> {
    ids[1..].iter().map(move |other| [&ids[0], other])
}

#[test]
fn growing_any_part_of_the_default_design_keeps_what_blocks() {
    let parts = ["card", "cooler", "memory", "supply", "drive-1", "fan-1", "button", "card-bracket", "shelf", "foot-1"];
    let mut met = 0;
    for id in parts {
        for axis in 0..3 {
            for sense in [-1.0, 1.0] {
                met += grow(Fixture::new(&[]), id, axis, sense, 3.3, 14);
            }
        }
    }
    assert!(met > 500, "{met}");
}

#[test]
fn growing_random_parts_of_a_given_size_keeps_what_blocks() {
    let mut met = 0;
    for seed in 0..60 {
        let mut random = Random::new(seed);
        let choices = [
            ("size.rule", "given".into()),
            ("size.width", random.hundredths(180.0, 300.0).into()),
            ("size.depth", random.hundredths(200.0, 400.0).into()),
            ("size.height", random.hundredths(120.0, 260.0).into()),
        ];
        let fixture = Fixture::new(&choices);
        let id = fixture.parts[random.below(fixture.parts.len())].id.clone();
        let (axis, sense) = (random.below(3), if random.chance(50) { 1.0 } else { -1.0 });
        met += grow(fixture, &id, axis, sense, random.hundredths(0.5, 9.0), 8);
    }
    assert!(met > 200, "{met}");
}
