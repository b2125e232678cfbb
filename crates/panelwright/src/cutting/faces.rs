//! Which face is up: cuts that do not go through are made from the face they lie in, and a file is drawn as that face
//! is seen.
//!
//! ```text
//!   work on the outside only, or none:   one file, seen from outside
//!   work on the inside only:             one file, seen from inside: a mirror image, everything is cut from there
//!   work on both:                        the inside first, in a file of its own; then the sheet is turned over about an
//!                                        upright edge, and the rest is cut from outside
//! ```

use kurbo::Point;

use super::files::CutSheet;
use super::panel::{Cut, CutLayer, CutPanel, LayerUse, OUTLINE, layer};
use super::rule::CutRule;
use crate::drawing::Contour;
use crate::panels::Face;

/// Layer of the part's edge in a file that does not cut it.
pub const PART: &str = "part";

impl CutPanel {
    /// Seen from the other face: mirrored about its upright middle line.
    #[must_use]
    pub fn turned_over(&self) -> Self {
        let middle = self.size_mm[0] / 2.0;
        let mut over = self.mapped(|at| Point::new(2.0 * middle - at.x, at.y), |contour| contour.mirror_x(middle));
        over.seen_from = other(self.seen_from);
        over
    }

    /// What is cut in each go, each seen from the face that is then up; the last one holds what goes through. Work by
    /// hand is not split: nobody lays a sheet on a machine for it.
    #[must_use]
    pub fn goes(self) -> Vec<Self> {
        let works = |face| self.layers.iter().any(|layer| is_work(layer) && layer.face == face);
        let (inside, outside) = (works(Face::Inside), works(Face::Outside));
        if self.rule == CutRule::Nominal || !inside {
            return vec![self];
        }
        if !outside {
            return vec![self.turned_over()];
        }
        let mut first = self.clone();
        first.layers.retain(|layer| is_work(layer) && layer.face == Face::Inside);
        // The edge is there to lay the two goes over each other.
        let mut part = layer(PART.to_owned(), LayerUse::Mark, 0.0, false, Face::Inside);
        let outline = self.layers.iter().filter(|layer| layer.name == OUTLINE).flat_map(|layer| &layer.cuts);
        part.cuts = outline.map(|cut| Cut { of: OUTLINE.to_owned(), contour: cut.contour.clone() }).collect();
        first.layers.push(part);
        first.notes = vec!["first of two goes: then turn the sheet over about an upright edge".to_owned()];
        let mut last = self;
        last.layers.retain(|layer| !(is_work(layer) && layer.face == Face::Inside));
        last.notes.insert(
            0,
            "second of two goes: before it the inside face is cut, from the file of its own in the pack".to_owned(),
        );
        vec![first.turned_over(), last]
    }

    /// One line about the face that is up.
    #[must_use]
    pub const fn face_note(&self) -> &'static str {
        match self.seen_from {
            Face::Outside => "seen from outside: the outside face is up",
            Face::Inside => "seen from inside: the inside face is up, mirror image of the outside",
        }
    }
}

impl CutSheet {
    /// The sheet turned over about an upright edge: its panels keep their places on it.
    #[must_use]
    pub fn turned_over(&self) -> Self {
        let width = self.size_mm[0];
        let point = |at: Point| Point::new(width - at.x, at.y);
        let contour = |contour: &Contour| contour.mirror_x(width / 2.0);
        let over = |panel: &CutPanel| {
            let mut over = panel.mapped(point, contour);
            over.seen_from = other(panel.seen_from);
            over
        };
        Self { label: self.label.clone(), size_mm: self.size_mm, panels: self.panels.iter().map(over).collect() }
    }
}

/// Whether a layer is worked on one face only: cut to a depth, or engraved.
fn is_work(layer: &CutLayer) -> bool {
    !layer.through && layer.usage != LayerUse::Mark
}

const fn other(face: Face) -> Face {
    match face {
        Face::Outside => Face::Inside,
        Face::Inside => Face::Outside,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::cutting::{RouterRule, layer_name};
    use crate::design::Design;
    use crate::panels::{Feature, FeatureKind, Panel};

    const ROUTER: CutRule =
        CutRule::Router(RouterRule { cutter_mm: 3.0, relief: None, compensated: false, tabs: None });

    /// The left panel with a groove in each of these faces, the first one nearer to its left edge as seen from outside.
    fn grooved(faces: &[Face]) -> Panel {
        let build = Build::of(&Design::default());
        let mut panel = build.panels.iter().find(|panel| panel.id() == "left").unwrap().clone();
        let pattern: Feature = build.panels[0].features[0].clone();
        panel.features = faces
            .iter()
            .zip([40.0, 100.0])
            .map(|(face, x)| Feature {
                id: format!("groove-{x}"),
                kind: FeatureKind::Groove,
                blind: Some((2.0, *face)),
                contour: Contour::rect(x, 50.0, x + 20.0, 60.0),
                diameter_mm: None,
                key: None,
                notch: false,
                ..pattern.clone()
            })
            .collect();
        panel
    }

    fn goes(faces: &[Face], rule: CutRule) -> Vec<CutPanel> {
        CutPanel::of(&grooved(faces), rule).goes()
    }

    #[test]
    fn a_panel_lies_with_the_face_up_that_is_worked_on() {
        use Face::{Inside, Outside};
        let seen = |faces: &[Face], rule| goes(faces, rule).iter().map(|go| go.seen_from).collect::<Vec<_>>();
        assert_eq!(seen(&[], ROUTER), [Outside]);
        assert_eq!(seen(&[Outside], ROUTER), [Outside]);
        assert_eq!(seen(&[Inside], ROUTER), [Inside]);
        assert_eq!(seen(&[Inside, Outside], ROUTER), [Inside, Outside]);
        // Nobody lays a sheet on a machine for work by hand; a laser cuts no groove at all.
        assert_eq!(seen(&[Inside], CutRule::Nominal), [Outside]);
        assert_eq!(seen(&[Inside], CutRule::Laser { kerf_mm: 0.2 }), [Outside]);
    }

    #[test]
    fn seen_from_inside_left_is_right() {
        let go = goes(&[Face::Inside], ROUTER).remove(0);
        let width = go.size_mm[0];
        let (layer, cut) = go.cuts().next().unwrap();
        assert_eq!(layer.name, layer_name(FeatureKind::Groove, Some((2.0, Face::Inside))));
        let bounds = cut.contour.bbox();
        assert!((bounds.x0 - (width - 60.0)).abs() < 1e-9 && (bounds.x1 - (width - 40.0)).abs() < 1e-9);
        assert!(cut.contour.area() > 0.0);
        assert!(go.face_note().contains("mirror image"));
        let back = go.turned_over();
        assert_eq!(back.seen_from, Face::Outside);
        assert!((back.cuts().next().unwrap().1.contour.bbox().x0 - 40.0).abs() < 1e-9);
    }

    #[test]
    fn both_faces_take_two_goes_and_each_cut_is_in_one_of_them() {
        let both = goes(&[Face::Inside, Face::Outside], ROUTER);
        let names = |go: &CutPanel| go.layers.iter().map(|layer| layer.name.clone()).collect::<Vec<_>>();
        assert_eq!(names(&both[0]), ["groove-2.0mm-inside", PART]);
        assert_eq!(names(&both[1]), ["groove-2.0mm", OUTLINE]);
        assert!(both[0].notes[0].contains("turn the sheet over") && both[1].notes[0].contains("second"));
        assert_eq!(both[0].layers[1].usage, LayerUse::Mark);
    }

    #[test]
    fn a_sheet_turned_over_keeps_its_panels_places() {
        let first = goes(&[Face::Inside, Face::Outside], ROUTER).remove(0).turned_over();
        let at = first.placed(0, kurbo::Vec2::new(10.0, 5.0));
        let sheet = CutSheet { label: "Sheet".to_owned(), size_mm: [900.0, 600.0], panels: vec![at.clone()] };
        let over = sheet.turned_over();
        assert_eq!(over.panels[0].seen_from, Face::Inside);
        let (before, after) =
            (at.cuts().next().unwrap().1.contour.bbox(), over.panels[0].cuts().next().unwrap().1.contour.bbox());
        assert!((before.x0 + after.x1 - 900.0).abs() < 1e-9 && (before.y0 - after.y0).abs() < 1e-9);
    }
}
