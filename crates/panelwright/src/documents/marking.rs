//! Marking out: every centre and corner of a panel as two distances from two of its edges, for those who do not glue a
//! template on.

use crate::cutting::slot_ends;
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

/// The points of a panel, in the order in which they are marked: corners of the outline, holes by letter, vents, then
/// openings.
#[must_use]
pub fn marks(panel: &Panel) -> Vec<Mark> {
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
    }
    for feature in panel.features.iter().filter(|feature| feature.kind == FeatureKind::Vent) {
        let bounds = feature.contour.bbox();
        let slim = bounds.width().min(bounds.height());
        for centre in slot_ends(feature) {
            out.push(Mark {
                key: String::new(),
                what: "Vent".to_owned(),
                across_mm: centre.x,
                up_mm: centre.y,
                then: format!("⌀{}", format_number(slim, 2)),
                id: feature.id.clone(),
            });
        }
    }
    for feature in &panel.features {
        // A notch is part of the outline already.
        if !is_hole(feature) && feature.kind != FeatureKind::Vent && !feature.notch {
            let depth = depth(feature);
            corners(&feature.contour, &short_why(feature), &feature.id, &depth, &mut out);
        }
    }
    out
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
/// fingerprint in every row.
#[must_use]
pub fn csv(panel: &Panel, fingerprint: &str) -> String {
    let mut out = "letter,what,from left edge mm,from lower edge mm,then,id,design\r\n".to_owned();
    let quoted = |text: &str| {
        if text.contains([',', '"', '\r', '\n']) {
            format!("\"{}\"", text.replace('"', "\"\""))
        } else {
            text.to_owned()
        }
    };
    for mark in marks(panel) {
        let cells = [
            quoted(&mark.key),
            quoted(&mark.what),
            format_number(mark.across_mm, 2),
            format_number(mark.up_mm, 2),
            quoted(&mark.then),
            quoted(&mark.id),
            fingerprint.to_owned(),
        ];
        out.push_str(&cells.join(","));
        out.push_str("\r\n");
    }
    out.push_str(&format!(
        ",diagonals of the panel,{0},{0},both the same: square,outline,{fingerprint}\r\n",
        format_number(diagonal_mm(panel), 2)
    ));
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::design::Design;

    #[test]
    fn every_hole_is_marked_once_where_the_panel_has_it() {
        for panel in &Build::of(&Design::default()).panels {
            let marks = marks(panel);
            for feature in panel.features.iter().filter(|feature| feature.kind == FeatureKind::Hole) {
                let mine: Vec<&Mark> = marks.iter().filter(|mark| mark.id == feature.id).collect();
                assert_eq!(mine.len(), 1, "{}", feature.id);
                assert_eq!([mine[0].across_mm, mine[0].up_mm], [feature.centre.x, feature.centre.y]);
            }
            let corners = marks.iter().filter(|mark| mark.id == "outline").count();
            assert_eq!(corners, panel.outline.segments().count());
            let text = csv(panel, "ABCD2345");
            assert_eq!(text.lines().count(), marks.len() + 2);
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
