//! A panel's template on a page, or in a field of a page that several panels share, in page millimetres.

mod blocks;
mod letter;
mod reach;

use kurbo::{Point, Rect, Vec2};

use super::free::FreePlaces;
use super::pen::{Line, Pen};
use super::plan::{PagePlan, Way};
use crate::cutting::{BladeHole, drill_chain, opening_holes, slot_ends};
use crate::design::{HandSpec, SheetSpec};
use crate::dimensions::paper::CHECK_BAR;
use crate::drawing::number::mm;
use crate::drawing::{Anchor, Drawing, Weight, text_width_mm};
use crate::panels::words::edge_words;
use crate::panels::{Edge, Face, Feature, FeatureKind, Panel};

/// What stands on every page of a pack of templates.
#[derive(Clone, Debug)]
pub struct PackWords<'a> {
    /// Name of the design; may be empty.
    pub title: &'a str,
    /// Fingerprint of the design.
    pub fingerprint: &'a str,
    /// Sheet and finish.
    pub sheet: &'a SheetSpec,
    /// The maker's saws and drills, for a panel made by hand.
    pub hand: Option<HandSpec>,
    /// What is said first: that something blocks the design, or that its sheets do not suffice.
    pub caution: Option<&'static str>,
    /// What is said of the printer: corrected, or why not; empty when it was not measured.
    pub printer: Vec<String>,
}

/// Sizes of writing, mm: lines of text, small notes; near the heights 1.8, 2.5, 3.5 and 5 of ISO 3098-1 (from memory;
/// common practice).
const TEXT_MM: f64 = 2.6;
const SMALL_MM: f64 = 2.1;
/// Air between writing and lines to cut, mm: half a line of writing, so that a saw beside the line leaves it legible
/// (common practice).
const AIR_MM: f64 = 1.2;
/// Small shapes are filled by nothing; larger ones give room for writing inside, mm: a line of three or four words.
const ROOMY_MM: f64 = 24.0;
/// Distance of register crosses from the ends of an overlap, as a share of its length:
/// far apart, so that a turned page shows, and clear of the corners where seams cross (by trial).
const CROSS_AT: [f64; 2] = [0.22, 0.78];

/// A page of one panel.
struct Page<'a> {
    panel: &'a Panel,
    plan: &'a PagePlan,
    at: [usize; 2],
    hand: Option<HandSpec>,
    pen: &'a mut Pen,
    free: FreePlaces,
    /// Panel point (0, 0) on the page.
    origin: Vec2,
    /// The part that is printed on, page mm.
    printable: Rect,
    /// Blocks of writing and bars that found no room.
    missed: usize,
}

/// Draws the page of a column and a row of a plan.
#[must_use]
pub fn draw(panel: &Panel, plan: &PagePlan, at: [usize; 2], pack: &PackWords) -> Drawing {
    let [width, height] = plan.page_mm;
    let [left, below] = plan.margin_mm;
    let printable = Rect::new(left, below, width - left, height - below);
    let [x, y] = plan.origin(at[0], at[1]);
    let mut pen = Pen::new(width, height);
    draw_in(&mut pen, panel, plan, at, (printable, Vec2::new(x, y)), pack);
    pen.finish()
}

/// Draws a panel in a field of a page, its point (0, 0) at `origin`; gives how many blocks of writing and bars found no
/// room there.
pub fn draw_in(
    pen: &mut Pen,
    panel: &Panel,
    plan: &PagePlan,
    at: [usize; 2],
    (printable, origin): (Rect, Vec2),
    pack: &PackWords,
) -> usize {
    let free = FreePlaces::new(printable);
    let mut page = Page { panel, plan, at, hand: pack.hand, pen, free, origin, printable, missed: 0 };
    page.outline();
    let shown = page.features();
    page.neighbours();
    // The bars may cross a centre line, but never a line to cut.
    page.bars();
    page.ticks();
    page.edges();
    page.head(pack);
    page.key(&shown);
    page.out_of_reach();
    page.map();
    page.cautions();
    page.missed
}

impl<'a> Page<'a> {
    fn outline(&mut self) {
        let outline = self.panel.outline.translate(self.origin);
        self.pen.contour("outline", &outline, Line::Cut);
        self.take_line(&outline);
    }

    /// Keeps writing off a line without closing what lies inside it.
    fn take_line(&mut self, contour: &crate::drawing::Contour) {
        // 2 mm: the cells of the search are no finer.
        let points = contour.flatten(0.2);
        for pair in points.windows(2).chain(std::iter::once([points[points.len() - 1], points[0]].as_slice())) {
            let (from, to) = (pair[0], pair[1]);
            let pieces = f64::ceil((to - from).hypot() / 4.0).max(1.0) as usize;
            for piece in 0..pieces {
                let a = from.lerp(to, piece as f64 / pieces as f64);
                let b = from.lerp(to, (piece + 1) as f64 / pieces as f64);
                self.free.take(Rect::from_points(a, b), AIR_MM);
            }
        }
    }

    fn features(&mut self) -> Vec<&'a Feature> {
        let window = self.printable - self.origin;
        let panel: &'a Panel = self.panel;
        let shown: Vec<&'a Feature> =
            panel.features.iter().filter(|feature| feature.contour.bbox().overlaps(window)).collect();
        for feature in &shown {
            self.feature(feature);
        }
        shown
    }

    fn feature(&mut self, feature: &Feature) {
        let contour = feature.contour.translate(self.origin);
        let bounds = contour.bbox();
        let line = match feature.blind {
            _ if feature.notch => Line::None,
            None => Line::Cut,
            Some((_, Face::Outside)) => Line::Thin,
            Some((_, Face::Inside)) => Line::Hidden,
        };
        let layer = match feature.kind {
            FeatureKind::Hole => "holes",
            FeatureKind::Vent => "vents",
            FeatureKind::Opening => "openings",
            _ => "rebates",
        };
        if line != Line::None {
            self.pen.contour(layer, &contour, line);
        }
        if bounds.width().max(bounds.height()) > ROOMY_MM {
            self.take_line(&contour);
        } else {
            self.free.take(bounds, AIR_MM);
        }
        let centre = feature.centre + self.origin;
        match feature.kind {
            FeatureKind::Hole | FeatureKind::Counterbore => {
                self.cross(centre, bounds.width().min(bounds.height()) / 2.0 + 2.0)
            }
            FeatureKind::Vent => self.vent_ends(feature),
            _ if feature.diameter_mm.is_some() => self.cross(centre, 4.0),
            _ => {}
        }
        self.letter(feature, bounds);
        for hole in self.blades(feature) {
            let at = hole.centre + self.origin;
            self.pen.circle("marks", at, hole.diameter_mm / 2.0, Line::Hidden);
            self.cross(at, 1.5);
            self.free.take(Rect::from_center_size(at, (hole.diameter_mm, hole.diameter_mm)), 0.6);
        }
    }

    fn cross(&mut self, centre: Point, reach: f64) {
        self.pen.line("marks", centre - Vec2::new(reach, 0.0), centre + Vec2::new(reach, 0.0), Line::Thin);
        self.pen.line("marks", centre - Vec2::new(0.0, reach), centre + Vec2::new(0.0, reach), Line::Thin);
        self.free.take(Rect::from_center_size(centre, (2.0 * reach, 2.0 * reach)), 0.2);
    }

    /// Where a saw's blade starts and turns in an opening of a panel made by hand, or the chain that is drilled instead.
    fn blades(&self, feature: &Feature) -> Vec<BladeHole> {
        self.hand.map_or_else(Vec::new, |hand| opening_holes(self.panel, feature, &hand))
    }

    /// Whether a feature is drilled out hole by hole.
    fn is_chained(&self, feature: &Feature) -> bool {
        self.hand.is_some_and(|hand| !drill_chain(self.panel, feature, &hand).is_empty())
    }

    /// Drill marks at the round ends of a slot, or in the middle of a round.
    fn vent_ends(&mut self, feature: &Feature) {
        for end in slot_ends(feature) {
            let at = end + self.origin;
            self.pen.line("marks", at - Vec2::new(1.2, 0.0), at + Vec2::new(1.2, 0.0), Line::Thin);
            self.pen.line("marks", at - Vec2::new(0.0, 1.2), at + Vec2::new(0.0, 1.2), Line::Thin);
        }
    }

    /// Ticks and centre lines of a panel whose edges the printer may not reach.
    fn ticks(&mut self) {
        if self.plan.way != Way::Ticks {
            return;
        }
        let [w, h] = self.panel.size_mm;
        let panel = Rect::new(0.0, 0.0, w, h) + self.origin;
        let middle = panel.center();
        let p = self.printable;
        self.pen.line("centre", Point::new(p.x0, middle.y), Point::new(p.x1, middle.y), Line::Centre);
        self.pen.line("centre", Point::new(middle.x, p.y0), Point::new(middle.x, p.y1), Line::Centre);
        self.free.take(Rect::new(p.x0, middle.y, p.x1, middle.y), 0.4);
        self.free.take(Rect::new(middle.x, p.y0, middle.x, p.y1), 0.4);
        let tick = 4.0;
        // Each edge out of reach: from the printable border towards the edge, with the way that is left.
        let edges = [
            (panel.x0 - p.x0, Vec2::new(-1.0, 0.0)),
            (p.x1 - panel.x1, Vec2::new(1.0, 0.0)),
            (panel.y0 - p.y0, Vec2::new(0.0, -1.0)),
            (p.y1 - panel.y1, Vec2::new(0.0, 1.0)),
        ];
        for (inside, out) in edges {
            if inside >= 0.0 {
                continue;
            }
            let upright = out.x == 0.0;
            for share in [0.0, 0.25, 0.75, 1.0] {
                let along = |from: f64, to: f64| from + (to - from) * share;
                let foot = if upright {
                    Point::new(along(panel.x0.max(p.x0), panel.x1.min(p.x1)), if out.y > 0.0 { p.y1 } else { p.y0 })
                } else {
                    Point::new(if out.x > 0.0 { p.x1 } else { p.x0 }, along(panel.y0.max(p.y0), panel.y1.min(p.y1)))
                };
                self.pen.line("ticks", foot - out * tick, foot, Line::Cut);
                self.free.take(Rect::from_points(foot - out * tick, foot), 0.6);
            }
            let edge = match (upright, out.x + out.y > 0.0) {
                (true, true) => Edge::Upper,
                (true, false) => Edge::Lower,
                (false, true) => Edge::Right,
                (false, false) => Edge::Left,
            };
            let words = format!("edge {} mm beyond these ticks", mm(-inside));
            self.along_edge("ticks", edge, &words);
        }
    }

    /// Register crosses and glue lines where a page meets its neighbours.
    fn neighbours(&mut self) {
        let [columns, rows] = self.plan.grid();
        let p = self.printable;
        let half = self.plan.overlap_mm / 2.0;
        let mut seams: Vec<(Point, Point)> = Vec::new();
        if self.at[0] + 1 < columns {
            seams.push((Point::new(p.x1 - half, p.y0), Point::new(p.x1 - half, p.y1)));
        }
        if self.at[0] > 0 {
            seams.push((Point::new(p.x0 + half, p.y0), Point::new(p.x0 + half, p.y1)));
        }
        if self.at[1] + 1 < rows {
            seams.push((Point::new(p.x0, p.y1 - half), Point::new(p.x1, p.y1 - half)));
        }
        if self.at[1] > 0 {
            seams.push((Point::new(p.x0, p.y0 + half), Point::new(p.x1, p.y0 + half)));
        }
        for (from, to) in seams {
            self.pen.line("register", from, to, Line::Centre);
            self.free.take(Rect::from_points(from, to), 0.4);
            for share in CROSS_AT {
                let at = from.lerp(to, share);
                self.pen.circle("register", at, 2.0, Line::Thin);
                self.cross(at, 4.0);
            }
        }
    }

    /// What each edge meets, written along it inside the panel.
    fn edges(&mut self) {
        let [columns, rows] = self.plan.grid();
        for edge in [Edge::Upper, Edge::Lower, Edge::Left, Edge::Right] {
            // On tiles only those pages speak of an edge that show it.
            let shown = match edge {
                Edge::Left => self.at[0] == 0,
                Edge::Right => self.at[0] + 1 == columns,
                Edge::Lower => self.at[1] == 0,
                Edge::Upper => self.at[1] + 1 == rows,
            };
            let words = edge_words(self.panel, edge);
            if shown && !words.is_empty() {
                self.along_edge("words", edge, &words);
            }
        }
    }

    /// Writes words along an edge of the panel, inside it and as near as there is room.
    fn along_edge(&mut self, layer: &str, edge: Edge, words: &str) {
        let [w, h] = self.panel.size_mm;
        let seen = (Rect::new(0.0, 0.0, w, h) + self.origin).intersect(self.printable).inset(-1.0);
        let length = text_width_mm(words, SMALL_MM, Weight::Regular);
        let level = matches!(edge, Edge::Upper | Edge::Lower);
        for depth in [0.0, 3.0, 6.0, 9.0, 12.0] {
            for share in [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95] {
                let covered = if level {
                    let x = seen.x0 + (seen.width() - length) * share;
                    let y = if edge == Edge::Upper { seen.y1 - SMALL_MM - depth } else { seen.y0 + 0.5 + depth };
                    Rect::new(x, y, x + length, y + SMALL_MM)
                } else {
                    let y = seen.y0 + (seen.height() - length) * share;
                    let x = if edge == Edge::Right { seen.x1 - SMALL_MM - depth } else { seen.x0 + 0.5 + depth };
                    Rect::new(x, y, x + SMALL_MM, y + length)
                };
                if !self.free.is_free(covered) {
                    continue;
                }
                if level {
                    let at = Point::new(covered.x0, covered.y0 + 0.4);
                    self.pen.text(layer, at, SMALL_MM, Anchor::Start, Weight::Regular, words);
                } else {
                    self.pen.upright_text(layer, Point::new(covered.x1 - 0.4, covered.y0), SMALL_MM, words);
                }
                self.free.take(covered, 0.4);
                return;
            }
        }
    }

    /// A level and an upright bar of 100 mm.
    fn bars(&mut self) {
        for upright in [false, true] {
            let thick = 7.0;
            let size = if upright { (thick, CHECK_BAR.get() + 3.0) } else { (CHECK_BAR.get() + 3.0, thick) };
            let Some(place) = self.free.find(size.0, size.1) else {
                self.missed += 1;
                continue;
            };
            let from = Point::new(place.x0 + 1.5, place.y0 + 2.0);
            let along = if upright { Vec2::new(0.0, 1.0) } else { Vec2::new(1.0, 0.0) };
            let side = Vec2::new(along.y, along.x);
            let from = if upright { Point::new(place.x0 + 5.0, place.y0 + 1.5) } else { from };
            self.pen.line("bars", from, from + along * CHECK_BAR.get(), Line::Bar);
            for end in [0.0, CHECK_BAR.get() / 2.0, CHECK_BAR.get()] {
                let at = from + along * end;
                self.pen.line("bars", at - side * 1.5, at + side * 1.5, Line::Bar);
            }
            let words = "100 mm: measure this bar";
            if upright {
                self.pen.upright_text("bars", from + Vec2::new(-1.2, 4.0), SMALL_MM, words);
            } else {
                self.pen.text("bars", from + Vec2::new(4.0, 1.2), SMALL_MM, Anchor::Start, Weight::Regular, words);
            }
        }
    }
}
