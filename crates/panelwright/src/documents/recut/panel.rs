//! One panel, old and new.

use kurbo::Vec2;

use super::same::{along, outside, same_contour, same_feature, shows, swallowed, within};
use super::words;
use super::{Added, MOVED_MM, PanelChange, TrimEdge, Verdict};
use crate::panels::{Edge, Feature, Panel};

/// Sheets that differ by more than this are of another thickness, mm: less than the hundredth a caliper shows.
const SAME_SHEET_MM: f64 = 0.001;

/// What becomes of an old panel: the best of all places that the new one could take on it.
pub(super) fn compare(old: &Panel, new: &Panel) -> PanelChange {
    let mut best: Option<PanelChange> = None;
    for by in places(old, new) {
        let change = at_place(old, new, by);
        // Equal verdicts: the place where less is to be done.
        let work = |change: &PanelChange| (change.verdict, change.why.len() + change.added.len());
        if best.as_ref().is_none_or(|best| work(&change) < work(best)) {
            best = Some(change);
        }
    }
    best.unwrap_or_else(|| at_place(old, new, Vec2::ZERO))
}

/// Where the new panel's lower left corner may lie on the old one: corner on corner, or hole on hole.
fn places(old: &Panel, new: &Panel) -> Vec<Vec2> {
    let over = [0, 1].map(|axis| old.size_mm[axis] - new.size_mm[axis]);
    let choices = |over: f64, holes: &dyn Fn(Vec2) -> f64| {
        if over.abs() <= MOVED_MM {
            return vec![0.0];
        }
        let mut out = vec![0.0, over];
        for feature in &new.features {
            if let Some(twin) = old.features.iter().find(|twin| twin.id == feature.id) {
                let by = holes(twin.centre - feature.centre);
                if by > 0.0 && by < over && !out.iter().any(|other| (other - by).abs() < 1e-6) {
                    out.push(by);
                }
            }
            if out.len() >= MOST_PLACES {
                break;
            }
        }
        out
    };
    let across = choices(over[0], &|by| by.x);
    let up = choices(over[1], &|by| by.y);
    across.iter().flat_map(|x| up.iter().map(|y| Vec2::new(*x, *y))).collect()
}

/// Most places along one direction.
const MOST_PLACES: usize = 4;

fn at_place(old: &Panel, new: &Panel, by: Vec2) -> PanelChange {
    let mut change = PanelChange {
        panel: new.id(),
        label: new.label,
        verdict: Verdict::Unchanged,
        why: Vec::new(),
        added: Vec::new(),
        trims: Vec::new(),
        new_on_old_mm: [by.x, by.y],
    };
    let mut recut: Vec<String> = Vec::new();
    if (old.thickness_mm - new.thickness_mm).abs() > SAME_SHEET_MM {
        recut.push(words::thickness(old.thickness_mm, new.thickness_mm));
    }
    let same_outline = same_contour(&old.outline, &new.outline, by);
    if !same_outline {
        recut.extend(outline(old, new, by, &mut change));
    }
    let news: Vec<&Feature> = new.features.iter().filter(|feature| !feature.notch).collect();
    let mut met = vec![false; news.len()];
    let mut lost: Vec<&Feature> = Vec::new();
    for feature in old.features.iter().filter(|feature| !feature.notch) {
        let twin = (0..news.len()).find(|index| !met[*index] && same_feature(feature, news[*index], by));
        match twin {
            Some(index) => met[index] = true,
            None => lost.push(feature),
        }
    }
    let stays_open: Vec<&&Feature> = lost
        .iter()
        .filter(|feature| {
            !outside(&feature.contour, &new.outline, by) && !news.iter().any(|other| swallowed(feature, other, by))
        })
        .collect();
    recut.extend(words::lost(&stays_open, &new.features, by));
    for feature in news.iter().zip(&met).filter(|(_, met)| !**met).map(|(feature, _)| feature) {
        let before: Vec<&&Feature> = lost.iter().filter(|other| swallowed(other, feature, by)).collect();
        let as_wide = |other: &Feature| within(&feature.contour, &other.contour, -by);
        change.added.push(Added {
            id: feature.id.clone(),
            letter: feature.key.clone(),
            diameter_mm: feature.diameter_mm,
            centre_mm: [feature.centre.x, feature.centre.y],
            depth_mm: feature.blind.map(|(depth, _)| depth),
            enlarges: !before.is_empty(),
            deepens: feature.blind.is_some() && before.iter().any(|other| as_wide(other)),
            why: if shows(feature) { feature.why.clone() } else { format!("{}, from inside", feature.why) },
        });
    }
    change.verdict = if !recut.is_empty() {
        Verdict::Recut
    } else if !same_outline {
        Verdict::Trim
    } else if !change.added.is_empty() {
        Verdict::DrillMore
    } else {
        Verdict::Unchanged
    };
    if change.verdict == Verdict::Recut {
        change.why = recut;
        // What grew is told edge by edge already.
        let shrinks = |axis: usize| old.size_mm[axis] - new.size_mm[axis] > MOVED_MM;
        if shrinks(0) || shrinks(1) {
            change.why.insert(0, words::size(old.size_mm, new.size_mm));
        }
        change.trims.clear();
        change.added.clear();
        change.new_on_old_mm = [0.0; 2];
    } else {
        change.why.extend(words::added(&change.added));
    }
    change
}

/// What another outline means: trims, or the reasons why there is not enough sheet.
fn outline(old: &Panel, new: &Panel, by: Vec2, change: &mut PanelChange) -> Vec<String> {
    let [w, h] = new.size_mm;
    let ends = [
        (Edge::Left, by.x),
        (Edge::Right, old.size_mm[0] - by.x - w),
        (Edge::Lower, by.y),
        (Edge::Upper, old.size_mm[1] - by.y - h),
    ];
    let mut grown = Vec::new();
    for (edge, off) in ends {
        if off > MOVED_MM {
            change.trims.push(TrimEdge { edge: edge.name(), by_mm: off });
        } else if off < -MOVED_MM {
            grown.push(words::grown(edge, -off));
        }
    }
    if !grown.is_empty() {
        return grown;
    }
    // The new outline in the old panel's frame must lie on sheet that is there.
    let on_sheet = along(&new.outline, by)
        .into_iter()
        .all(|point| old.outline.contains(point) || old.outline.distance_to_point(point) <= MOVED_MM);
    let kept = outside(&old.outline, &new.outline, by);
    if !on_sheet || !kept {
        return vec![words::OUTLINE_GONE.to_owned()];
    }
    change.why.extend(change.trims.iter().map(words::trimmed));
    let notches = new.features.iter().filter(|feature| feature.notch);
    let had = |feature: &Feature| {
        old.features.iter().any(|other| other.notch && within(&feature.contour, &other.contour, -by))
    };
    for notch in notches.filter(|feature| !had(feature)) {
        change.why.push(words::notch(notch));
    }
    if change.why.is_empty() {
        change.why.push(words::OUTLINE_DEEPER.to_owned());
    }
    Vec::new()
}
