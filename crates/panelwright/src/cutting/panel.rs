//! A panel as a tool follows it: layers of closed contours in the order of cutting.
//!
//! Layers come in the order in which they are cut: what does not go through first, while the sheet is whole; then
//! drilling, holes, vents, openings; the outline last. Names are plain words of the trade (see [`layer_name`]).
//!
//! # Guarantees
//! Every contour is closed, has no stretch without length and is there once. Openings run counter-clockwise like the
//! outline. What could not be cut is a [`CutProblem`], not silence.

use kurbo::{Point, Vec2};

use super::kerf;
use super::offset::Lost;
use super::order::{in_order, tidy, without_repeats};
use super::relief::{CornerFault, Relief, Void, relieve};
use super::router::{Reach, follow, is_drilled};
use super::rule::{CutProblem, CutRule, RouterRule, Trouble};
use super::tabs::{TabRule, mark, tabs};
use crate::drawing::Contour;
use crate::drawing::number::{format_number, push_number};
use crate::panels::{Face, Feature, FeatureKind, Panel, Purpose};
use crate::solid::TOUCH_MM;
use crate::sorting::sort_by;

/// One closed contour to cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Id of the feature it makes, or `outline`.
    pub of: String,
    /// What the tool follows.
    pub contour: Contour,
}

/// What a layer is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LayerUse {
    /// Contours to cut.
    Cut,
    /// Circles to drill.
    Drill,
    /// Lines to engrave or draw.
    Engrave,
    /// Marks and notes that no tool follows.
    Mark,
}

/// Contours and lines that are cut alike.
#[derive(Clone, Debug, PartialEq)]
pub struct CutLayer {
    /// Its name: `outline`, `rebate-2.0mm`.
    pub name: String,
    /// What it is for.
    pub usage: LayerUse,
    /// How deep to cut, mm; the sheet's thickness when it goes through; 0 for marks.
    pub depth_mm: f64,
    /// Whether it goes through.
    pub through: bool,
    /// The face it is cut from; through cuts are drawn from outside.
    pub face: Face,
    /// Closed contours, in order.
    pub cuts: Vec<Cut>,
    /// Open lines, in order.
    pub lines: Vec<Vec<Point>>,
}

/// A panel as a tool follows it, mm, y up: in the panel's own frame, or its mirror image (see [`CutPanel::seen_from`]).
#[derive(Clone, Debug, PartialEq)]
pub struct CutPanel {
    /// Id of the panel: `floor`.
    pub id: String,
    /// What people call it.
    pub label: String,
    /// Width and height of the part.
    pub size_mm: [f64; 2],
    /// How it was made.
    pub rule: CutRule,
    /// The face that is up while it is cut, and that it is drawn as seen from. From inside it is a mirror image.
    pub seen_from: Face,
    /// What else a file says of it, one line each.
    pub notes: Vec<String>,
    /// Its layers, in the order of cutting.
    pub layers: Vec<CutLayer>,
    /// What cannot be cut as drawn.
    pub problems: Vec<CutProblem>,
}

/// What the outline is called among the features.
pub const OUTLINE: &str = "outline";

/// How the name of the layer of holding tabs starts; their height follows.
pub const TABS: &str = "tabs";

/// The name of a feature's layer: `holes`, `vents`, `openings` go through; `rebate-2.0mm`, `groove-2.0mm`,
/// `counterbore-3.0mm` are cut from outside, and with `-inside` from the other face.
#[must_use]
pub fn layer_name(kind: FeatureKind, blind: Option<(f64, Face)>) -> String {
    let Some((depth_mm, face)) = blind else {
        let name = match kind {
            FeatureKind::Hole => "holes",
            FeatureKind::Vent => "vents",
            _ => "openings",
        };
        return name.to_owned();
    };
    let mut name = format!("{}-", kind.name());
    push_size(&mut name, depth_mm);
    if face == Face::Inside {
        name.push_str("-inside");
    }
    name
}

/// A size in a layer's name: `2.0mm`, `2.25mm`.
fn push_size(name: &mut String, size_mm: f64) {
    let shown = libm::round(size_mm * 100.0) / 100.0;
    push_number(name, shown, 2);
    if shown == f64::floor(shown) {
        name.push_str(".0");
    }
    name.push_str("mm");
}

impl CutPanel {
    /// The panel cut by a rule, seen from outside.
    ///
    /// ```
    /// use panelwright::{Build, cutting::{CutPanel, CutRule}, design::Design};
    /// let build = Build::of(&Design::default());
    /// let cut = CutPanel::of(&build.panels[0], CutRule::Laser { kerf_mm: 0.2 });
    /// assert_eq!(cut.layers.last().unwrap().name, "outline");
    /// ```
    #[must_use]
    pub fn of(panel: &Panel, rule: CutRule) -> Self {
        let mut bench = Bench { panel, rule, layers: Vec::new(), problems: Vec::new(), notes: Vec::new() };
        for feature in &panel.features {
            // A notch that goes through is part of the outline.
            if !(feature.notch && feature.blind.is_none()) {
                bench.feature(feature);
            }
        }
        sort_by(&mut bench.layers, |a, b| a.0.cmp(&b.0));
        let mut layers: Vec<CutLayer> = bench.layers.drain(..).map(|(_, layer)| layer).collect();
        for layer in &mut layers {
            layer.cuts = in_order(without_repeats(core::mem::take(&mut layer.cuts)));
        }
        if let Some(path) = bench.path(OUTLINE, &panel.outline, Void::Outside) {
            if let CutRule::Router(router) = rule
                && let Some(tab_rule) = router.tabs
            {
                layers.extend(bench.tabs(&path, router, tab_rule));
            }
            let mut outline = layer(OUTLINE.to_owned(), LayerUse::Cut, panel.thickness_mm, true, Face::Outside);
            outline.cuts.push(Cut { of: OUTLINE.to_owned(), contour: path });
            layers.push(outline);
        }
        Self {
            id: panel.id().to_owned(),
            label: panel.label.to_owned(),
            size_mm: panel.size_mm,
            rule,
            seen_from: Face::Outside,
            notes: bench.notes,
            layers,
            problems: bench.problems,
        }
    }

    /// Every contour in the order of cutting, with its layer.
    pub fn cuts(&self) -> impl Iterator<Item = (&CutLayer, &Cut)> {
        self.layers.iter().flat_map(|layer| layer.cuts.iter().map(move |cut| (layer, cut)))
    }

    /// The same turned by quarter turns counter-clockwise about the origin, then moved by `by`: its place on a sheet.
    #[must_use]
    pub fn placed(&self, quarter_turns: i32, by: Vec2) -> Self {
        let turned = |at: Point| match quarter_turns.rem_euclid(4) {
            1 => Point::new(-at.y, at.x),
            2 => Point::new(-at.x, -at.y),
            3 => Point::new(at.y, -at.x),
            _ => at,
        };
        let mut placed =
            self.mapped(|at| turned(at) + by, |contour| contour.quarter_turns(quarter_turns).translate(by));
        if quarter_turns.rem_euclid(2) == 1 {
            placed.size_mm.reverse();
        }
        placed
    }

    /// The same with every point and contour moved.
    pub(super) fn mapped(&self, point: impl Fn(Point) -> Point, contour: impl Fn(&Contour) -> Contour) -> Self {
        let mut mapped = self.clone();
        for layer in &mut mapped.layers {
            for cut in &mut layer.cuts {
                cut.contour = contour(&cut.contour);
            }
            for at in layer.lines.iter_mut().flatten() {
                *at = point(*at);
            }
        }
        for problem in &mut mapped.problems {
            problem.at = point(problem.at);
        }
        mapped
    }
}

/// Place of a layer in the order of cutting: blind cuts by depth, then what goes through.
type Rank = (u8, String);

struct Bench<'a> {
    panel: &'a Panel,
    rule: CutRule,
    layers: Vec<(Rank, CutLayer)>,
    problems: Vec<CutProblem>,
    notes: Vec<String>,
}

pub(super) fn layer(name: String, usage: LayerUse, depth_mm: f64, through: bool, face: Face) -> CutLayer {
    CutLayer { name, usage, depth_mm, through, face, cuts: Vec::new(), lines: Vec::new() }
}

impl Bench<'_> {
    /// A joint's rebate runs out past the edges it reaches, so that a round cutter leaves nothing in its ends.
    fn run_out(&self, feature: &Feature) -> Contour {
        let CutRule::Router(rule) = self.rule else { return feature.contour.clone() };
        let (edge, by) = (self.panel.outline.bbox(), rule.cutter_mm);
        let mut area = feature.contour.bbox();
        if feature.purpose == Purpose::TongueRelief && feature.blind.is_some() {
            // Open towards the card window above it.
            area.y1 += by;
            return Contour::rect(area.x0, area.y0, area.x1, area.y1);
        }
        if feature.purpose != Purpose::JointRebate {
            return feature.contour.clone();
        }
        let near = |a: f64, b: f64| (a - b).abs() < TOUCH_MM;
        area.x0 -= if near(area.x0, edge.x0) { by } else { 0.0 };
        area.x1 += if near(area.x1, edge.x1) { by } else { 0.0 };
        area.y0 -= if near(area.y0, edge.y0) { by } else { 0.0 };
        area.y1 += if near(area.y1, edge.y1) { by } else { 0.0 };
        Contour::rect(area.x0, area.y0, area.x1, area.y1)
    }

    fn feature(&mut self, feature: &Feature) {
        if feature.blind.is_some() && matches!(self.rule, CutRule::Laser { .. }) {
            self.trouble(&feature.id, feature.centre, Trouble::NoDepth);
            return;
        }
        let drilled = match self.rule {
            CutRule::Router(rule) => is_drilled(&feature.contour, rule.radius_mm()),
            _ => false,
        };
        if drilled {
            let diameter_mm = feature.contour.bbox().width();
            self.trouble(&feature.id, feature.centre, Trouble::Drill { diameter_mm });
        }
        let contour = if drilled {
            Some(feature.contour.clone())
        } else {
            self.path(&feature.id, &self.run_out(feature), Void::Inside)
        };
        let Some(contour) = contour else { return };
        let (depth_mm, face) = feature.blind.unwrap_or((self.panel.thickness_mm, Face::Outside));
        let through = feature.blind.is_none();
        let (rank, name, usage) = match (drilled, through, feature.kind) {
            (false, false, _) => (0, layer_name(feature.kind, feature.blind), LayerUse::Cut),
            (true, false, _) => (1, format!("drill-{}", layer_name(feature.kind, feature.blind)), LayerUse::Drill),
            (true, true, _) => (2, "drill".to_owned(), LayerUse::Drill),
            (_, _, FeatureKind::Hole) => (3, layer_name(feature.kind, None), LayerUse::Cut),
            (_, _, FeatureKind::Vent) => (4, layer_name(feature.kind, None), LayerUse::Cut),
            _ => (5, layer_name(feature.kind, None), LayerUse::Cut),
        };
        let cut = Cut { of: feature.id.clone(), contour };
        match self.layers.iter_mut().find(|(_, layer)| layer.name == name) {
            Some((_, layer)) => layer.cuts.push(cut),
            None => {
                let mut fresh = layer(name.clone(), usage, depth_mm, through, face);
                fresh.cuts.push(cut);
                self.layers.push(((rank, name), fresh));
            }
        }
    }

    /// What the tool follows to leave this contour; `None` when it cannot, which is then noted.
    fn path(&mut self, of: &str, contour: &Contour, void: Void) -> Option<Contour> {
        let path = match self.rule {
            CutRule::Nominal => Ok(contour.clone()),
            CutRule::Laser { kerf_mm } => kerf::compensated(contour, void, kerf_mm),
            CutRule::Router(rule) => self.routed(of, contour, void, rule),
        };
        match path {
            Ok(path) => tidy(&path),
            Err(lost) => {
                self.trouble(of, contour.bbox().center(), Trouble::Lost(lost));
                None
            }
        }
    }

    fn routed(&mut self, of: &str, contour: &Contour, void: Void, rule: RouterRule) -> Result<Contour, Lost> {
        let radius_mm = rule.radius_mm();
        let edge = match rule.relief {
            // A round hole has no corner to relieve, however nearly the cutter fills it.
            Some(relief) if contour.as_circle().is_none() => {
                let relieved = relieve(contour, void, rule.relief_radius_mm(), relief);
                for (at, fault) in relieved.faults {
                    self.trouble(of, at, Trouble::Corner(fault));
                }
                relieved.contour
            }
            None if contour.as_circle().is_none() => {
                let relieved = relieve(contour, void, radius_mm, Relief::Diagonal);
                if relieved.contour != *contour || !relieved.faults.is_empty() {
                    let fault = CornerFault::LeftRound { radius_mm };
                    self.trouble(of, contour.bbox().center(), Trouble::Corner(fault));
                }
                contour.clone()
            }
            _ => contour.clone(),
        };
        let (reach, path) = follow(&edge, void, radius_mm);
        match reach {
            Reach::Whole | Reach::Drill => {}
            Reach::Not(lost) => return Err(lost),
            Reach::Partly(area_mm2) => {
                self.trouble(of, edge.bbox().center(), Trouble::LeftStanding { area_mm2 });
            }
        }
        if rule.compensated { path } else { Ok(edge) }
    }

    fn tabs(&mut self, path: &Contour, router: RouterRule, rule: TabRule) -> Option<CutLayer> {
        let found = tabs(self.panel, rule);
        let centre = path.bbox().center();
        if found.at.is_empty() {
            self.trouble(OUTLINE, centre, Trouble::NoTabs);
            return None;
        }
        if found.on_mating_edge {
            self.trouble(OUTLINE, centre, Trouble::TabsOnMatingEdge);
        }
        if found.beside_cut {
            self.trouble(OUTLINE, centre, Trouble::TabsBesideCut);
        }
        let mut name = format!("{TABS}-");
        push_size(&mut name, rule.height_mm);
        // On the way of its middle a cutter must stay up for its own width longer, or its rim cuts the tab away.
        let length_mm = rule.width_mm + if router.compensated { router.cutter_mm } else { 0.0 };
        let number = |value| format_number(value, 2);
        self.notes.push(format!(
            "tabs: {}, each {} mm wide and {} mm high from the underside; marks on layer {name} are {} mm long{}",
            found.at.len(),
            number(rule.width_mm),
            number(rule.height_mm),
            number(length_mm),
            if router.compensated { ", the cutter included" } else { "" },
        ));
        let mut marks = layer(name, LayerUse::Mark, 0.0, false, Face::Outside);
        marks.lines = found.at.iter().map(|(at, out)| mark(path, *at, *out, length_mm)).collect();
        Some(marks)
    }

    fn trouble(&mut self, of: &str, at: Point, what: Trouble) {
        self.problems.push(CutProblem { of: of.to_owned(), at, what });
    }
}

#[cfg(test)]
mod tests;
