//! A panel as a piece: a true plate with its thickness, notches and openings.
//!
//! An opening wide enough to show something behind it is cut out of the visible face, and its walls are drawn inside
//! its mouth; one too narrow for that is a dark area on the face, since all the eye meets in it is wall. Recesses show
//! on the face they are cut from.

use kurbo::{Point, Rect, Vec2};

use super::piece::{At, Facet, Pen, Piece, Side, Stroke};
use super::pocket::{Front, Pocket, Pockets};
use crate::drawing::{Colour, Contour};
use crate::panels::{Face, Feature, Panel};
use crate::pictures::projection::{EDGE_ON, Projection};
use crate::solid::{Aabb, PanelFrame, TOUCH_MM, dot};
use crate::sorting::sort_by;

/// Farthest that a chord of a round hole may lie off it in the picture, mm: a third of the thin line.
pub(super) const CHORD_MM: f64 = 0.1;

/// An edge of the outline that turns more than this (cosine) from the one before it gets a line at its corner.
const SMOOTH: f64 = 0.9;

/// What a plate has to know of the rest of the scene.
pub(super) struct Around<'a> {
    /// The panel's frame in the scene: moved when panels are drawn apart.
    pub frame: PanelFrame,
    /// Boxes that may stand in its openings.
    pub visitors: &'a [Aabb],
    /// Radius of the screw head that covers a feature, mm.
    pub head: &'a dyn Fn(&Feature) -> Option<f64>,
}

/// The panel as a piece; seen edge-on, each of its edges that face the eye as one.
pub(super) fn plate(owner: usize, panel: &Panel, around: &Around, view: &Projection) -> Vec<Piece> {
    let frame = around.frame;
    let [width, height] = panel.size_mm;
    let thickness = panel.thickness_mm;
    let bounds = frame.plate(panel.size_mm, thickness);
    let front = Front::of(frame, thickness, view.eye, EDGE_ON);
    let mut work = Work {
        frame,
        thickness,
        edges: Rect::new(0.0, 0.0, width, height),
        eye: Vec2::new(dot(view.eye, frame.u), dot(view.eye, frame.v)),
        side: Side::of_axis(frame.normal_axis()),
        under: Vec::new(),
        over: Vec::new(),
        mouths: Vec::new(),
    };
    let outline = panel.outline.flatten(CHORD_MM);
    let notches: Vec<Pocket> = panel
        .features
        .iter()
        .filter(|feature| feature.notch)
        .map(|feature| feature.contour.bbox())
        .chain(panel.joint_gaps.iter().copied())
        .map(|bounds| Pocket::notch(bounds, work.edges, TOUCH_MM))
        .collect();
    work.edge_walls(&outline, &notches, front.as_ref());
    if let Some(front) = &front {
        let visitors = around.visitors.iter().filter(|visitor| visitor.overlaps(&bounds));
        let visitors: Vec<Rect> = visitors.map(|visitor| frame.shadow(visitor)).collect();
        work.face(panel, front, &outline, &visitors, around.head);
    }
    let Some(front) = front else {
        return work.over.into_iter().map(|facet| Piece::solid(owner, bounds_of(&facet), vec![facet])).collect();
    };
    work.mouths.extend(notches);
    let pockets = Pockets { front, mouths: work.mouths, within: Vec::new() };
    vec![Piece { owner, bounds, under: work.under, over: work.over, plate: Some(Box::new(pockets)) }]
}

/// The box around the areas of a facet.
fn bounds_of(facet: &Facet) -> Aabb {
    let corners = facet.rings.iter().flatten().map(|at| Aabb { min: *at, max: *at });
    corners.reduce(|all, next| all.union(&next)).unwrap_or(Aabb { min: [0.0; 3], max: [0.0; 3] })
}

struct Work {
    frame: PanelFrame,
    thickness: f64,
    edges: Rect,
    /// Direction to the eye along the panel.
    eye: Vec2,
    side: Side,
    under: Vec<Facet>,
    over: Vec<Facet>,
    mouths: Vec<Pocket>,
}

impl Work {
    /// The panel's own edges that face the eye. Those along its bounding box cover whatever stands in a notch; those
    /// of a notch lie behind it and show only through the notch.
    fn edge_walls(&mut self, outline: &[Point], notches: &[Pocket], front: Option<&Front>) {
        let count = outline.len();
        for index in 0..count {
            let (from, to) = (outline[index], outline[(index + 1) % count]);
            let along = to - from;
            // Material lies on the left of the outline; the wall faces right.
            let outward = Vec2::new(along.y, -along.x);
            if outward.dot(self.eye) <= EDGE_ON * along.hypot2() {
                continue;
            }
            let quad = [(from, 0.0), (to, 0.0), (to, -self.thickness), (from, -self.thickness)];
            let quad = quad.map(|(point, w)| self.frame.to_case(point, w));
            let facet = Facet {
                strokes: self.wall_strokes(&quad, outline, index),
                rings: vec![quad.to_vec()],
                colour: Colour::SheetEdge,
                side: self.wall_side(along),
                outline: None,
            };
            let middle = from.midpoint(to);
            let mouth = notches.iter().find(|notch| !self.is_outer(from, to) && notch.holds(middle, CHORD_MM));
            match (mouth, front) {
                (Some(mouth), Some(front)) => mouth.trim(&facet, front, &mut self.under),
                _ => self.over.push(facet),
            }
        }
    }

    /// The far rim and, where the outline turns, the corner lines of an edge wall.
    fn wall_strokes(&self, quad: &[At; 4], outline: &[Point], index: usize) -> Vec<Stroke> {
        let count = outline.len();
        let at = |step: usize| outline[(index + count + step - 1) % count];
        let turns = |a: Point, b: Point, c: Point| {
            let (before, after) = (b - a, c - b);
            before.dot(after) < SMOOTH * f64::sqrt(before.hypot2() * after.hypot2())
        };
        let mut strokes = vec![line(vec![quad[0], quad[1]], Pen::Thick), line(vec![quad[2], quad[3]], Pen::Thick)];
        if turns(at(0), at(1), at(2)) {
            strokes.push(line(vec![quad[0], quad[3]], Pen::Thick));
        }
        if turns(at(1), at(2), at(3)) {
            strokes.push(line(vec![quad[1], quad[2]], Pen::Thick));
        }
        strokes
    }

    fn wall_side(&self, along: Vec2) -> Side {
        let normal = if along.y == 0.0 {
            self.frame.v
        } else if along.x == 0.0 {
            self.frame.u
        } else {
            return Side::Round;
        };
        Side::of_axis((0..3).find(|axis| normal[*axis] != 0.0).unwrap_or(2))
    }

    /// Whether a stretch of the outline lies along the bounding box.
    fn is_outer(&self, from: Point, to: Point) -> bool {
        let near = |a: f64, b: f64, edge: f64| (a - edge).abs() < TOUCH_MM && (b - edge).abs() < TOUCH_MM;
        near(from.x, to.x, self.edges.x0)
            || near(from.x, to.x, self.edges.x1)
            || near(from.y, to.y, self.edges.y0)
            || near(from.y, to.y, self.edges.y1)
    }

    /// The face that the eye sees, with what is cut into it.
    fn face(
        &mut self,
        panel: &Panel,
        front: &Front,
        outline: &[Point],
        visitors: &[Rect],
        head_on: &dyn Fn(&Feature) -> Option<f64>,
    ) {
        let place = |ring: &[Point]| -> Vec<At> { ring.iter().map(|point| front.place(*point)).collect() };
        let mut face = Facet { outline: Some(Pen::Thick), ..self.facet(Colour::Sheet, place(outline)) };
        let mut hollow = Facet { rings: Vec::new(), side: Side::Inner, ..self.facet(Colour::SheetEdge, Vec::new()) };
        let mut heads = Facet { rings: Vec::new(), ..self.facet(Colour::Metal, Vec::new()) };
        for feature in panel.features.iter().filter(|feature| !feature.notch && feature.blind.is_none()) {
            if let (Some(radius), true) = (head_on(feature), front.w == 0.0) {
                head(&mut heads, front, feature.centre, radius);
                continue;
            }
            let ring = feature.contour.flatten(CHORD_MM);
            let rim = place(&ring);
            let bounds = feature.contour.bbox();
            let visited = || visitors.iter().any(|visitor| visitor.overlaps(bounds));
            match gap(&feature.contour, &ring, front.shift) {
                Gap::None if visited() => {
                    self.opening_walls(front, &ring, &[]);
                    face.rings.push(rim);
                    self.mouths.push(Pocket::convex(&ring, bounds));
                }
                Gap::None => hollow.rings.push(rim),
                Gap::Convex(through) => {
                    self.opening_walls(front, &ring, &through);
                    face.rings.push(rim);
                    self.mouths.push(Pocket::convex(&ring, bounds));
                }
                Gap::Other => {
                    self.bent_opening_walls(&ring);
                    face.rings.push(rim);
                    self.mouths.push(Pocket::notch(bounds, self.edges.inflate(1.0, 1.0), 0.0));
                }
            }
        }
        self.over.push(face);
        self.recesses(panel, front);
        self.over.extend([hollow, heads].into_iter().filter(|facet| !facet.rings.is_empty()));
    }

    /// An area on the face with a thin line around it.
    fn facet(&self, colour: Colour, ring: Vec<At>) -> Facet {
        Facet { rings: vec![ring], colour, side: self.side, outline: Some(Pen::Thin), strokes: Vec::new() }
    }

    /// The walls of a convex opening, painted into its mouth: the mouth without what shows through.
    fn opening_walls(&mut self, front: &Front, ring: &[Point], through: &[Point]) {
        let place = |ring: &[Point]| -> Vec<At> { ring.iter().map(|point| front.place(*point)).collect() };
        let mut rings = vec![place(ring)];
        let mut strokes = Vec::new();
        if !through.is_empty() {
            rings.push(place(through));
            strokes.push(Stroke { points: place(through), closed: true, pen: Pen::Thin });
        }
        let count = ring.len();
        for index in 0..count {
            let (before, corner, after) = (ring[(index + count - 1) % count], ring[index], ring[(index + 1) % count]);
            let (a, b) = (corner - before, after - corner);
            let sharp = a.dot(b) < SMOOTH * f64::sqrt(a.hypot2() * b.hypot2());
            let inward = a.cross(front.shift) > 0.0 && b.cross(front.shift) > 0.0;
            if sharp && inward {
                strokes.push(line(vec![front.place(corner), front.place(corner + front.shift)], Pen::Thin));
            }
        }
        self.under.push(Facet { rings, colour: Colour::SheetEdge, side: Side::Round, outline: None, strokes });
    }

    /// The walls of any other opening that face the eye, the far ones first.
    fn bent_opening_walls(&mut self, ring: &[Point]) {
        let count = ring.len();
        let mut walls: Vec<(f64, Facet)> = Vec::new();
        for index in 0..count {
            let (from, to) = (ring[index], ring[(index + 1) % count]);
            let along = to - from;
            if Vec2::new(-along.y, along.x).dot(self.eye) <= EDGE_ON * along.hypot2() {
                continue;
            }
            let quad = [(from, 0.0), (to, 0.0), (to, -self.thickness), (from, -self.thickness)];
            let quad = quad.map(|(point, w)| self.frame.to_case(point, w));
            let facet = Facet {
                strokes: vec![line(vec![quad[0], quad[1]], Pen::Thin), line(vec![quad[2], quad[3]], Pen::Thin)],
                rings: vec![quad.to_vec()],
                colour: Colour::SheetEdge,
                side: self.wall_side(along),
                outline: None,
            };
            walls.push((from.midpoint(to).to_vec2().dot(self.eye), facet));
        }
        sort_by(&mut walls, |a, b| a.0.total_cmp(&b.0));
        self.under.extend(walls.into_iter().map(|(_, facet)| facet));
    }

    /// Rebates, grooves and counterbores cut from the visible face.
    fn recesses(&mut self, panel: &Panel, front: &Front) {
        let seen = if front.w == 0.0 { Face::Outside } else { Face::Inside };
        for feature in &panel.features {
            if !matches!(feature.blind, Some((_, face)) if face == seen) {
                continue;
            }
            let bounds = feature.contour.bbox();
            let within = |other: &&Feature| {
                let theirs = other.contour.bbox();
                other.blind.is_none() && !other.notch && bounds.contains_rect(theirs)
            };
            let place = |contour: &Contour| -> Vec<At> {
                contour.flatten(CHORD_MM).into_iter().map(|point| front.place(point)).collect()
            };
            let mut recess = self.facet(Colour::SheetEdge, place(&feature.contour));
            // What goes through inside it stays open.
            recess.rings.extend(panel.features.iter().filter(within).map(|inner| place(&inner.contour)));
            self.over.push(recess);
        }
    }
}

fn line(points: Vec<At>, pen: Pen) -> Stroke {
    Stroke { points, closed: false, pen }
}

/// The head of a screw: a disc with a cross.
fn head(heads: &mut Facet, front: &Front, centre: Point, radius_mm: f64) {
    let disc = Contour::circle(centre.x, centre.y, radius_mm).flatten(CHORD_MM);
    let disc: Vec<At> = disc.into_iter().map(|point| front.place(point)).collect();
    heads.rings.push(disc);
    for arm in [Vec2::new(radius_mm / 2.0, 0.0), Vec2::new(0.0, radius_mm / 2.0)] {
        heads.strokes.push(line(vec![front.place(centre - arm), front.place(centre + arm)], Pen::Thin));
    }
}

/// What shows through an opening whose far rim seems moved by a shift.
enum Gap {
    /// Nothing: all the eye meets is wall.
    None,
    /// The common part of the mouth and the moved far rim of a convex opening.
    Convex(Vec<Point>),
    /// Something, of an opening that is not convex.
    Other,
}

fn gap(contour: &Contour, ring: &[Point], shift: Vec2) -> Gap {
    let bounds = contour.bbox();
    if shift.x.abs() >= bounds.width() || shift.y.abs() >= bounds.height() || ring.len() < 3 {
        return Gap::None;
    }
    if let Some((_, radius)) = contour.as_circle() {
        if shift.hypot2() >= 4.0 * radius * radius {
            return Gap::None;
        }
    } else if !is_convex(ring) {
        return Gap::Other;
    }
    let mut through: Vec<Point> = ring.iter().map(|point| *point + shift).collect();
    let mut next = Vec::with_capacity(through.len() + 4);
    for index in 0..ring.len() {
        let (from, along) = (ring[index], ring[(index + 1) % ring.len()] - ring[index]);
        clip(&through, |point| along.cross(point - from), &mut next);
        core::mem::swap(&mut through, &mut next);
        if through.len() < 3 {
            return Gap::None;
        }
    }
    Gap::Convex(through)
}

fn is_convex(ring: &[Point]) -> bool {
    let count = ring.len();
    (0..count).all(|index| {
        let (a, b, c) = (ring[index], ring[(index + 1) % count], ring[(index + 2) % count]);
        (b - a).cross(c - b) >= -1e-9
    })
}

/// The part of a convex ring where `inside` is not negative.
fn clip(ring: &[Point], inside: impl Fn(Point) -> f64, out: &mut Vec<Point>) {
    out.clear();
    let Some(mut from) = ring.last().copied() else { return };
    let mut a = inside(from);
    for to in ring {
        let b = inside(*to);
        if (a >= 0.0) != (b >= 0.0) {
            out.push(from.lerp(*to, a / (a - b)));
        }
        if b >= 0.0 {
            out.push(*to);
        }
        (from, a) = (*to, b);
    }
}
