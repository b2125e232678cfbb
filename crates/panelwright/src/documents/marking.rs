//! Marking out: every centre and corner of a panel as two distances from two of its edges, for those who do not glue a
//! template on.

use kurbo::Point;

use crate::cutting::{BladeHole, drill_chain, opening_holes, slot_ends};
use crate::design::{HandSpec, Method, Spec};
use crate::documents::lists::field;
use crate::documents::templates::words::short_why;
use crate::drawing::number::format_number;
use crate::panels::{Edge, Face, Feature, FeatureKind, Panel};

/// The edges that distances are taken from: they meet at the lower left, as seen from outside.
pub const EDGES: [Edge; 2] = [Edge::Left, Edge::Lower];

/// A point to mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Letter in the hole key; empty for what has none.
    pub key: String,
    /// What it is, in words.
    pub what: String,
    /// Distance from the left edge, mm.
    pub across_mm: f64,
    /// Distance from the lower edge, mm.
    pub up_mm: f64,
    /// What to do there: drill, depth, radius of the arc that follows; may be empty.
    pub then: String,
    /// The feature's id; `outline` for the panel's own corners.
    pub id: String,
}

/// The saws and drills that a panel is made with; `None` for one that a machine makes.
#[must_use]
pub fn hand_of<'a>(spec: &'a Spec, panel: &Panel) -> Option<&'a HandSpec> {
    (spec.making.method(panel.wall) == Method::Hand).then_some(&spec.making.hand)
}

/// The points of a panel, in the order in which they are marked: corners of the outline, holes by letter, vents, then
/// openings. By hand also what is drilled to cut an opening out: its chain, or the holes that pass the blade.
#[must_use]
pub fn marks(panel: &Panel, hand: Option<&HandSpec>) -> Vec<Mark> {
    let mut out = Vec::new();
    corners(&panel.outline, "Panel", "outline", "", &mut out);
    let mut holes: Vec<&Feature> = panel.features.iter().filter(|feature| is_hole(feature)).collect();
    crate::sorting::sort_by_key(&mut holes, |feature| {
        let key = feature.key.clone().unwrap_or_default();
        (key.is_empty(), key.len(), key)
    });
    for feature in holes {
        out.push(Mark {
            key: feature.key.clone().unwrap_or_default(),
            what: short_why(feature),
            across_mm: feature.centre.x,
            up_mm: feature.centre.y,
            then: drill(feature),
            id: feature.id.clone(),
        });
        drilled_out(panel, feature, hand, &mut out);
    }
    for feature in panel.features.iter().filter(|feature| feature.kind == FeatureKind::Vent) {
        let bounds = feature.contour.bbox();
        let slim = bounds.width().min(bounds.height());
        let chain = hand.map_or_else(Vec::new, |hand| drill_chain(panel, feature, hand));
        if chain.is_empty() {
            let ends = slot_ends(feature).into_iter().map(|centre| (centre, slim));
            drills(feature, "Vent", ends, &mut out);
        } else {
            numbered(feature, "Vent, chain", &chain, &mut out);
        }
    }
    for feature in &panel.features {
        // A notch is part of the outline already.
        if !is_hole(feature) && feature.kind != FeatureKind::Vent && !feature.notch {
            let depth = depth(feature);
            corners(&feature.contour, &short_why(feature), &feature.id, &depth, &mut out);
            drilled_out(panel, feature, hand, &mut out);
        }
    }
    out
}

/// What is drilled inside an opening before it is cut out.
fn drilled_out(panel: &Panel, feature: &Feature, hand: Option<&HandSpec>, out: &mut Vec<Mark>) {
    let Some(hand) = hand else { return };
    let chained = !drill_chain(panel, feature, hand).is_empty();
    let words = if chained { "chain" } else { "blade entry" };
    numbered(feature, &format!("{}, {words}", short_why(feature)), &opening_holes(panel, feature, hand), out);
}

/// Holes that are ticked off one by one.
fn numbered(feature: &Feature, what: &str, holes: &[BladeHole], out: &mut Vec<Mark>) {
    for (index, hole) in holes.iter().enumerate() {
        let what = format!("{what} {} of {}", index + 1, holes.len());
        drills(feature, &what, [(hole.centre, hole.diameter_mm)], out);
    }
}

/// Holes without a letter.
fn drills(feature: &Feature, what: &str, holes: impl IntoIterator<Item = (Point, f64)>, out: &mut Vec<Mark>) {
    out.extend(holes.into_iter().map(|(centre, diameter_mm)| Mark {
        key: String::new(),
        what: what.to_owned(),
        across_mm: centre.x,
        up_mm: centre.y,
        then: format!("⌀{}", format_number(diameter_mm, 2)),
        id: feature.id.clone(),
    }));
}

fn is_hole(feature: &Feature) -> bool {
    feature.kind == FeatureKind::Hole || feature.diameter_mm.is_some() && feature.kind != FeatureKind::Vent
}

fn depth(feature: &Feature) -> String {
    match feature.blind {
        None => String::new(),
        Some((depth, Face::Inside)) => format!("{} deep, from inside", format_number(depth, 2)),
        Some((depth, Face::Outside)) => format!("{} deep", format_number(depth, 2)),
    }
}

fn drill(feature: &Feature) -> String {
    let size = feature.diameter_mm.map_or_else(
        || {
            let bounds = feature.contour.bbox();
            format!("{} × {}", format_number(bounds.width(), 2), format_number(bounds.height(), 2))
        },
        |diameter| format!("⌀{}", format_number(diameter, 2)),
    );
    let depth = depth(feature);
    if depth.is_empty() { size } else { format!("{size}, {depth}") }
}

/// The corners of a contour in their order; of a circle its centre.
fn corners(contour: &crate::drawing::Contour, what: &str, id: &str, depth: &str, out: &mut Vec<Mark>) {
    let mut push = |what: String, x: f64, y: f64, then: String| {
        let then = [depth, &then].into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join(", ");
        out.push(Mark { key: String::new(), what, across_mm: x, up_mm: y, then, id: id.to_owned() });
    };
    if let Some((centre, radius)) = contour.as_circle() {
        push(format!("{what}, centre"), centre.x, centre.y, format!("⌀{}", format_number(2.0 * radius, 2)));
        return;
    }
    for (index, segment) in contour.segments().enumerate() {
        let (at, then) = match &segment {
            crate::drawing::Segment::Line { from, .. } => (*from, String::new()),
            crate::drawing::Segment::Arc(arc) => {
                (arc.from, format!("arc of {} to the next", format_number(arc.radius_mm, 2)))
            }
        };
        push(format!("{what}, corner {}", index + 1), at.x, at.y, then);
    }
}

/// Length of the two diagonals of the rectangle around a panel, mm: when both measure the same, it is square.
#[must_use]
pub fn diagonal_mm(panel: &Panel) -> f64 {
    let [w, h] = panel.size_mm;
    f64::sqrt(w * w + h * h)
}

/// The marks of a panel as CSV (RFC 4180): one header line, distances in millimetres with a point, the design's
/// fingerprint in every row, before it what warns of the design.
#[must_use]
pub fn csv(panel: &Panel, hand: Option<&HandSpec>, fingerprint: &str, warnings: &[String]) -> String {
    let warning = warnings.join(" ");
    let mut end = String::new();
    if !warning.is_empty() {
        field(&mut end, &warning);
        end.push(',');
    }
    end.push_str(fingerprint);
    let named = if warning.is_empty() { "design" } else { "warning,design" };
    let mut out = format!("letter,what,from left edge mm,from lower edge mm,then,id,{named}\r\n");
    for mark in marks(panel, hand) {
        let [across, up] = [mark.across_mm, mark.up_mm].map(|value| format_number(value, 2));
        field(&mut out, &mark.key);
        out.push(',');
        field(&mut out, &mark.what);
        out.push_str(&format!(",{across},{up},"));
        field(&mut out, &mark.then);
        out.push(',');
        field(&mut out, &mark.id);
        out.push(',');
        out.push_str(&end);
        out.push_str("\r\n");
    }
    out.push_str(&format!(
        ",diagonals of the panel,{0},{0},both the same: square,outline,{end}\r\n",
        format_number(diagonal_mm(panel), 2)
    ));
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::cutting::drill_list;
    use crate::design::Design;

    #[test]
    fn every_hole_is_marked_where_the_panel_has_it() {
        for panel in &Build::of(&Design::default()).panels {
            let marks = marks(panel, None);
            for feature in panel.features.iter().filter(|feature| feature.kind == FeatureKind::Hole) {
                let mine: Vec<&Mark> = marks.iter().filter(|mark| mark.id == feature.id).collect();
                assert_eq!(mine.len(), 1, "{}", feature.id);
                assert_eq!([mine[0].across_mm, mine[0].up_mm], [feature.centre.x, feature.centre.y]);
            }
            let corners = marks.iter().filter(|mark| mark.id == "outline").count();
            assert_eq!(corners, panel.outline.segments().count());
            let warnings = ["Do not cut yet, please.".to_owned()];
            let text = csv(panel, None, "ABCD2345", &warnings);
            assert_eq!(text.lines().count(), marks.len() + 2);
            assert!(text.lines().skip(1).all(|row| row.ends_with(",\"Do not cut yet, please.\",ABCD2345")), "{text}");
        }
    }

    /// What the table has drilled is what the list of drills counts, chains and blade entries included.
    #[test]
    fn every_drill_of_the_list_is_marked() {
        let mut chains = 0;
        for chained in [false, true] {
            let mut design = Design::default();
            design.set_json("hand.chain", &chained.into()).unwrap();
            design.set_json("hand.frame", &102.into()).unwrap();
            let build = Build::of(&design);
            for panel in &build.panels {
                let hand = hand_of(&build.spec, panel).expect("made by hand");
                let marks = marks(panel, Some(hand));
                for drill in drill_list(panel, hand) {
                    let size = format!("⌀{}", format_number(drill.diameter_mm, 2));
                    // A round opening is marked by its centre and drawn, not drilled.
                    let mine = |mark: &&Mark| {
                        !mark.what.ends_with("centre") && mark.then.split(", ").next() == Some(size.as_str())
                    };
                    let count = marks.iter().filter(mine).count();
                    assert_eq!(count, drill.through + drill.blind, "{} {size}", panel.id());
                }
                chains += marks.iter().filter(|mark| mark.what.contains("chain 1 of")).count();
            }
            assert_eq!(chains > 0, chained);
        }
    }

    /// 3-4-5: a panel of 300 x 400 has diagonals of 500.
    #[test]
    fn diagonals_are_those_of_pythagoras() {
        let mut panel = Build::of(&Design::default()).panels[0].clone();
        panel.size_mm = [300.0, 400.0];
        assert_eq!(diagonal_mm(&panel), 500.0);
    }
}
