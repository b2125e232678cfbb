//! From facets in space to a drawing: projected, grouped by what they show, coloured and lit.

use kurbo::{BezPath, Point, Vec2};

use super::piece::{At, Facet, Pen, Side};
use crate::drawing::{Colour, Drawing, Group, Item, Layer, Shade, Shape, Style, THIN_LINE_MM, VISIBLE_LINE_MM};
use crate::pictures::Projection;

/// How much a see-through panel hides: enough to be seen, little enough to see what is behind two of them.
const SEE_THROUGH: f64 = 0.16;

/// Whose facets these are.
pub(super) struct Owner {
    /// Part or panel.
    pub id: String,
    /// Whether what is behind shows through.
    pub see_through: bool,
}

/// A flat picture plane with its origin moved so that all of the picture has positive coordinates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Plane {
    pub view: Projection,
    pub shift: Vec2,
}

impl Plane {
    pub(super) fn point(&self, at: At) -> Point {
        self.view.point(at) + self.shift
    }

    /// Rounded to 0.01 mm: a fiftieth of the thick line, so that files stay small.
    fn drawn(&self, at: At) -> Point {
        let point = self.point(at);
        let round = |value: f64| libm::round(value * 100.0) / 100.0;
        Point::new(round(point.x), round(point.y))
    }

    fn append(&self, path: &mut BezPath, points: &[At], closed: bool) {
        let Some((first, rest)) = points.split_first() else { return };
        let mut last = self.drawn(*first);
        path.move_to(last);
        for at in rest {
            let point = self.drawn(*at);
            if point != last {
                path.line_to(point);
                last = point;
            }
        }
        if closed {
            path.close_path();
        }
    }
}

/// The facets as a drawing, the first at the bottom.
pub(super) fn paint(facets: &[(usize, Facet)], owners: &[Owner], plane: &Plane, size: [f64; 2]) -> Drawing {
    let mut layer = Layer::new("case");
    for run in facets.chunk_by(|a, b| a.0 == b.0) {
        let Some(owner) = run.first().and_then(|(owner, _)| owners.get(*owner)) else { continue };
        let mut items: Vec<Item> = Vec::with_capacity(run.len());
        for (_, facet) in run {
            area(facet, owner.see_through, plane, &mut items);
            lines(facet, plane, &mut items);
        }
        layer.push(Group::about(owner.id.clone(), items));
    }
    Drawing { width_mm: size[0], height_mm: size[1], layers: vec![layer] }
}

fn width(pen: Pen) -> f64 {
    match pen {
        Pen::Thick => VISIBLE_LINE_MM,
        Pen::Thin => THIN_LINE_MM,
    }
}

fn area(facet: &Facet, see_through: bool, plane: &Plane, items: &mut Vec<Item>) {
    if facet.rings.is_empty() {
        return;
    }
    let mut path = BezPath::new();
    for ring in &facet.rings {
        plane.append(&mut path, ring, true);
    }
    let mut style = Style::filled(facet.colour).with_shade(shade(facet.side, plane.view.eye));
    if see_through && matches!(facet.colour, Colour::Sheet | Colour::SheetEdge) {
        style = style.with_opacity(SEE_THROUGH);
    }
    if let Some(pen) = facet.outline {
        style = style.with_line(Colour::Ink, width(pen));
    }
    items.push(Shape::new(path.into(), style).into());
}

fn lines(facet: &Facet, plane: &Plane, items: &mut Vec<Item>) {
    for pen in [Pen::Thin, Pen::Thick] {
        let mut path = BezPath::new();
        for stroke in facet.strokes.iter().filter(|stroke| stroke.pen == pen) {
            plane.append(&mut path, &stroke.points, stroke.closed);
        }
        if !path.elements().is_empty() {
            items.push(Shape::new(path.into(), Style::line(Colour::Ink, width(pen))).into());
        }
    }
}

/// The light comes from above and a little from the front and the back, so that sides are darker than fronts.
fn shade(side: Side, eye: At) -> Shade {
    match side {
        Side::Level if eye[2] >= 0.0 => Shade::Lit,
        Side::Along | Side::Round => Shade::Plain,
        Side::Across => Shade::Dim,
        Side::Level | Side::Inner => Shade::Dark,
    }
}
