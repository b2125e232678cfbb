//! The six panels while they are being worked out: where features, hardware and screws are gathered.

use kurbo::{Point, Rect};

use super::outline;
use super::panel::{Face, Feature, FeatureKind, Panel, Purpose};
use super::screws::Plan;
use super::{Unplaced, VentLeftOut, sleeve};
use crate::arrangement::Arrangement;
use crate::design::{Spec, Wall};
use crate::dimensions::fasteners::Thread;
use crate::dimensions::source::{Source, Sourced};
use crate::drawing::Contour;
use crate::fastening::{Fastener, Screw};
use crate::parts::{Part, holes};
use crate::solid::minus;

/// Panels, hardware and screws under way.
pub(super) struct Bench<'a> {
    pub spec: &'a Spec,
    pub arrangement: &'a Arrangement,
    /// In the order of [`Wall`]: floor, back, left, right, front, top.
    pub panels: Vec<Panel>,
    pub hardware: Vec<Part>,
    pub screws: Vec<Screw>,
    pub loose: Vec<Fastener>,
    pub unplaced: Vec<Unplaced>,
    pub left_out: Vec<VentLeftOut>,
    /// What notches and joints take from the rectangle of each panel.
    gone: [Vec<Rect>; 6],
}

/// Everything about a feature but its shape.
pub(super) struct Cut {
    pub id: String,
    pub purpose: Purpose,
    pub why: String,
    pub about: Vec<String>,
    pub source: Source,
}

impl Cut {
    pub fn new(id: impl Into<String>, purpose: Purpose, why: impl Into<String>, source: Source) -> Self {
        Self { id: id.into(), purpose, why: why.into(), about: Vec::new(), source }
    }

    pub fn about(mut self, id: impl Into<String>) -> Self {
        self.about.push(id.into());
        self
    }
}

impl<'a> Bench<'a> {
    pub fn new(spec: &'a Spec, arrangement: &'a Arrangement) -> Self {
        Self {
            spec,
            arrangement,
            panels: sleeve::panels(&arrangement.case),
            hardware: Vec::new(),
            screws: Vec::new(),
            loose: Vec::new(),
            unplaced: Vec::new(),
            left_out: Vec::new(),
            gone: Default::default(),
        }
    }

    pub fn panel(&self, wall: Wall) -> &Panel {
        &self.panels[wall as usize]
    }

    /// Sheet thickness, mm.
    pub fn thickness(&self) -> f64 {
        self.arrangement.case.thickness_mm
    }

    /// What a screw from outside clamps of a panel, mm: the sheet with the film and paint under the screw's head.
    pub fn clamped(&self) -> f64 {
        self.thickness() + self.spec.sheet.finish_out_mm
    }

    /// Where a point of the case lies on a panel, seen square to it.
    pub fn on(&self, wall: Wall, case: [f64; 3]) -> Point {
        self.panel(wall).frame.to_panel(case).0
    }

    /// Clearance hole of a thread: in the maker's series, in acrylic never less than the sheet's growth asks for.
    pub fn clearance(&self, thread: Thread) -> f64 {
        self.clearance_hole(thread).get()
    }

    /// The same, with where its width comes from.
    pub fn clearance_hole(&self, thread: Thread) -> Sourced<f64> {
        holes::clearance(self.spec, self.arrangement.case.longest_mm(), thread)
    }

    /// A round hole through the sheet.
    pub fn hole(&mut self, wall: Wall, cut: Cut, centre: Point, diameter_mm: f64) {
        self.round(wall, cut, FeatureKind::Hole, None, centre, diameter_mm);
    }

    /// A round feature of any kind.
    pub fn round(
        &mut self,
        wall: Wall,
        cut: Cut,
        kind: FeatureKind,
        blind: Option<(f64, Face)>,
        centre: Point,
        diameter_mm: f64,
    ) {
        let contour = Contour::circle(centre.x, centre.y, diameter_mm / 2.0);
        self.push(wall, cut, kind, blind, contour, centre, Some(diameter_mm), false);
    }

    /// A shape cut through the sheet, or a blind one; its centre is that of its bounding box.
    pub fn shape(&mut self, wall: Wall, cut: Cut, kind: FeatureKind, blind: Option<(f64, Face)>, contour: Contour) {
        let centre = contour.bbox().center();
        self.push(wall, cut, kind, blind, contour, centre, None, false);
    }

    /// A notch in the upper edge, made of steps `[from, to, floor]`; what lies off the panel is left out.
    pub fn notch(&mut self, wall: Wall, cut: Cut, steps: &[[f64; 3]]) {
        let [width, height] = self.panel(wall).size_mm;
        let Some(contour) = outline::notch_shape([width, height], steps) else { return };
        self.take(wall, &outline::of_steps([width, height], steps));
        let centre = contour.bbox().center();
        self.push(wall, cut, FeatureKind::Opening, None, contour, centre, None, true);
    }

    /// Gaps along the edges for the panels it is joined to.
    pub fn joint_gaps(&mut self, wall: Wall, gaps: &[Rect]) {
        self.take(wall, gaps);
        self.panels[wall as usize].joint_gaps.extend_from_slice(gaps);
    }

    fn take(&mut self, wall: Wall, gone: &[Rect]) {
        let all = &mut self.gone[wall as usize];
        all.extend_from_slice(gone);
        let panel = &mut self.panels[wall as usize];
        panel.outline = outline::without(panel.size_mm, all);
    }

    #[allow(clippy::too_many_arguments, reason = "the one place where a feature is put together")]
    fn push(
        &mut self,
        wall: Wall,
        cut: Cut,
        kind: FeatureKind,
        blind: Option<(f64, Face)>,
        contour: Contour,
        centre: Point,
        diameter_mm: Option<f64>,
        notch: bool,
    ) {
        self.panels[wall as usize].features.push(Feature {
            id: cut.id,
            kind,
            purpose: cut.purpose,
            blind,
            contour,
            centre,
            diameter_mm,
            key: None,
            notch,
            why: cut.why,
            about: cut.about,
            source: cut.source,
        });
    }

    /// A screw whose head lies outside a panel, on the finish of its outside face, and points straight in.
    pub fn screw_from_outside(&mut self, wall: Wall, at: Point, plan: Plan) {
        let frame = self.panel(wall).frame;
        let inward = minus(frame.out);
        self.screws.push(plan.screw(frame.to_case(at, self.spec.sheet.finish_out_mm), inward));
    }
}
