//! Letters of the hole key: on each panel one letter for each drill, depth and reason.

use super::panel::{Face, Feature, FeatureKind, Panel};
use crate::sorting::sort_by;

/// Gives letters to everything that is drilled: holes, counterbores, round vents.
///
/// Order of the letters: by reason, then thin before thick, then through before blind.
pub(super) fn letter(panels: &mut [Panel]) {
    for panel in panels {
        let mut groups: Vec<Group> = panel.features.iter().filter_map(group).collect();
        sort_by(&mut groups, compare);
        groups.dedup_by(|a, b| compare(a, b).is_eq());
        for feature in &mut panel.features {
            let Some(own) = group(feature) else { continue };
            feature.key = groups.iter().position(|group| compare(group, &own).is_eq()).map(name);
        }
    }
}

type Group = (super::Purpose, f64, f64, bool);

fn group(feature: &Feature) -> Option<Group> {
    let drilled = matches!(feature.kind, FeatureKind::Hole | FeatureKind::Counterbore | FeatureKind::Vent);
    let diameter = feature.diameter_mm.filter(|_| drilled)?;
    let (depth, face) = feature.blind.unwrap_or((0.0, Face::Outside));
    Some((feature.purpose, diameter, depth, face == Face::Inside))
}

fn compare(a: &Group, b: &Group) -> std::cmp::Ordering {
    a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)).then(a.2.total_cmp(&b.2)).then(a.3.cmp(&b.3))
}

/// A, B, … Z, AA, AB, …
fn name(index: usize) -> String {
    let mut rest = index + 1;
    let mut letters = Vec::new();
    while rest > 0 {
        letters.push(char::from(b'A' + ((rest - 1) % 26) as u8));
        rest = (rest - 1) / 26;
    }
    letters.iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!([0, 25, 26, 27, 51, 52].map(name), ["A", "Z", "AA", "AB", "AZ", "BA"]);
    }
}
