//! Both sides of every limit: a rule speaks when its value is a hundredth of a millimetre past the limit and not when
//! it is a hundredth before it. The rows are in a file for each family.

use super::fixture::Fixture;
use super::{
    limits_board, limits_card, limits_case, limits_making, limits_measures, limits_screws, limits_supply, limits_webs,
};
use crate::fit::{RULES, Severity};
use crate::solid::Aabb;

/// A rule, the weight of its finding, what the row is about, an id the finding must name, and a case whose value lies
/// `over` past the limit (before it, when negative).
pub(super) type Row = (&'static str, Severity, &'static str, &'static str, fn(f64) -> Fixture);

fn default() -> Fixture {
    Fixture::new(&[])
}

pub(super) fn with(change: impl FnOnce(&mut Fixture)) -> Fixture {
    let mut fixture = default();
    change(&mut fixture);
    fixture
}

pub(super) fn bounds(fixture: &mut Fixture, id: &str) -> Aabb {
    fixture.part(id).bounds()
}

pub(super) fn of_spec(change: impl FnOnce(&mut crate::design::Spec)) -> Fixture {
    let mut spec = default().spec;
    change(&mut spec);
    Fixture::of(spec)
}

fn all_rows() -> impl Iterator<Item = Row> {
    [
        limits_card::rows(),
        limits_board::rows(),
        limits_supply::rows(),
        limits_case::rows(),
        limits_screws::rows(),
        limits_making::rows(),
        limits_measures::rows(),
        limits_webs::rows(),
    ]
    .into_iter()
    .flatten()
}

#[test]
fn each_rule_speaks_just_past_its_limit_and_not_just_before_it() {
    let mut wrong = Vec::new();
    for (rule, severity, what, id, case) in all_rows() {
        for over in [-0.01, 0.01] {
            let found = case(over).check();
            let speaks = found.iter().any(|finding| {
                finding.rule == rule
                    && finding.severity == severity
                    && (id.is_empty() || finding.about.iter().any(|about| about == id))
            });
            if speaks != (over > 0.0) {
                let said: Vec<_> = found.iter().map(|finding| (finding.rule, finding.severity.name())).collect();
                wrong.push(format!("{rule} ({what}) at {over}: {said:?}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_rule_has_its_limits_tested() {
    let rows: Vec<Row> = all_rows().collect();
    let missing: Vec<&str> =
        RULES.iter().map(|rule| rule.name).filter(|name| !rows.iter().any(|row| row.0 == *name)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}
