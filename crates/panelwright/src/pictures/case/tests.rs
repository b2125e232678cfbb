//! What hides what, held against an independent answer: a line of sight followed point by point through the solids.
//!
//! Nothing of the code under test is used on that side: solids are intersected with the line itself, openings by
//! their own shapes, and the nearest hit wins.

use kurbo::Point;

use super::piece::{Facet, Piece, Side};
use super::{painted, plate};
use crate::design::Wall;
use crate::dimensions::source::Source;
use crate::drawing::{Colour, Contour};
use crate::panels::{Assembly, Feature, FeatureKind, Panel, Purpose};
use crate::pictures::Projection;
use crate::pictures::case::solids;
use crate::solid::{Aabb, PanelFrame};

/// A small random source (Knuth's multiplier, MMIX), so that every run sees the same scenes.
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn range(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.next()
    }

    fn index(&mut self, count: usize) -> usize {
        ((self.next() * count as f64) as usize).min(count - 1)
    }
}

#[derive(Clone, Copy, Debug)]
enum Shape {
    Circle(Point, f64),
    Rect([f64; 4]),
    /// Open at the upper edge.
    Notch([f64; 4]),
}

#[derive(Clone, Debug)]
struct Sheet {
    frame: PanelFrame,
    size: [f64; 2],
    thickness: f64,
    shapes: Vec<Shape>,
}

#[derive(Clone, Debug)]
enum Thing {
    Box(Aabb),
    Sheet(Sheet),
}

/// What the eye meets: which thing, and the axis its surface is square to (`None`: a cut edge or the wall of a hole).
type Seen = Option<(usize, Option<usize>)>;

/// The stretch of a line of sight inside a box, with the axis where the eye enters it.
fn through(bounds: &Aabb, base: [f64; 3], eye: [f64; 3]) -> Option<(f64, f64, usize)> {
    let (mut low, mut high, mut enters) = (f64::NEG_INFINITY, f64::INFINITY, 0);
    for axis in 0..3 {
        if eye[axis].abs() < 1e-12 {
            if base[axis] < bounds.min[axis] || base[axis] > bounds.max[axis] {
                return None;
            }
            continue;
        }
        let [a, b] = [bounds.min[axis], bounds.max[axis]].map(|at| (at - base[axis]) / eye[axis]);
        if a.max(b) < high {
            (high, enters) = (a.max(b), axis);
        }
        low = low.max(a.min(b));
    }
    (low < high).then_some((low, high, enters))
}

/// The stretch of a line inside an opening, as if the opening had no ends along the sheet's normal.
fn in_shape(shape: &Shape, at: Point, step: kurbo::Vec2) -> Option<(f64, f64)> {
    match shape {
        Shape::Circle(centre, radius) => {
            let out = at - *centre;
            let (a, b, c) = (step.dot(step), out.dot(step), out.dot(out) - radius * radius);
            if a < 1e-18 {
                return (c < 0.0).then_some((f64::NEG_INFINITY, f64::INFINITY));
            }
            let inner = b * b - a * c;
            (inner > 0.0).then(|| ((-b - inner.sqrt()) / a, (-b + inner.sqrt()) / a))
        }
        Shape::Rect([x0, y0, x1, y1]) | Shape::Notch([x0, y0, x1, y1]) => {
            let top = if matches!(shape, Shape::Notch(_)) { 1e9 } else { *y1 };
            let bounds = Aabb::new([*x0, *y0, -1.0], [*x1, top, 1.0]);
            through(&bounds, [at.x, at.y, 0.0], [step.x, step.y, 0.0]).map(|(low, high, _)| (low, high))
        }
    }
}

fn meets(thing: &Thing, base: [f64; 3], eye: [f64; 3]) -> Option<(f64, Option<usize>)> {
    match thing {
        Thing::Box(bounds) => through(bounds, base, eye).map(|(_, high, axis)| (high, Some(axis))),
        Thing::Sheet(sheet) => {
            let [w, h] = sheet.size;
            let far = sheet.frame.to_case(Point::new(w, h), -sheet.thickness);
            let bounds = Aabb::new(sheet.frame.to_case(Point::ZERO, 0.0), far);
            let (low, high, axis) = through(&bounds, base, eye)?;
            let (at, _) = sheet.frame.to_panel(base);
            let ahead = [0, 1, 2].map(|axis| base[axis] + eye[axis]);
            let step = sheet.frame.to_panel(ahead).0 - at;
            let holes: Vec<(f64, f64)> = sheet.shapes.iter().filter_map(|shape| in_shape(shape, at, step)).collect();
            let mut here = high;
            while let Some((near_end, _)) =
                holes.iter().find(|(near_end, far_end)| here > *near_end && here <= *far_end + 1e-12)
            {
                here = *near_end;
            }
            let outer = axis == sheet.frame.normal_axis() && here == high;
            (here > low).then_some((here, outer.then_some(axis)))
        }
    }
}

fn sees(things: &[Thing], view: &Projection, at: Point) -> Seen {
    let base = [0, 1, 2].map(|axis| at.x * view.right[axis] + at.y * view.up[axis]);
    let hits = things.iter().enumerate().filter_map(|(index, thing)| Some((index, meets(thing, base, view.eye)?)));
    hits.max_by(|a, b| a.1.0.total_cmp(&b.1.0)).map(|(index, (_, face))| (index, face))
}

/// Even-odd, by counting crossings of a ray to the right.
fn covers(rings: &[Vec<Point>], at: Point) -> bool {
    let crossings = rings
        .iter()
        .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)))
        .filter(|(a, b)| (a.y > at.y) != (b.y > at.y) && at.x < a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y));
    crossings.count() % 2 == 1
}

fn drawn(picture: &[(usize, Facet, Vec<Vec<Point>>)], at: Point) -> Seen {
    picture.iter().rev().find(|(_, _, rings)| covers(rings, at)).map(|(owner, facet, _)| {
        let axis = match (facet.colour, facet.side) {
            (Colour::SheetEdge, _) | (_, Side::Round | Side::Inner) => None,
            (_, Side::Across) => Some(0),
            (_, Side::Along) => Some(1),
            (_, Side::Level) => Some(2),
        };
        (*owner, axis)
    })
}

fn panel_of(sheet: &Sheet) -> Panel {
    let [w, h] = sheet.size;
    let mut outline = vec![(0.0, 0.0), (w, 0.0), (w, h)];
    let mut features = Vec::new();
    for (index, shape) in sheet.shapes.iter().enumerate() {
        let contour = match shape {
            Shape::Circle(at, radius) => Contour::circle(at.x, at.y, *radius),
            Shape::Rect([x0, y0, x1, y1]) => Contour::rect(*x0, *y0, *x1, *y1),
            Shape::Notch([x0, y0, x1, _]) => {
                outline.extend([(*x1, h), (*x1, *y0), (*x0, *y0), (*x0, h)]);
                Contour::rect(*x0, *y0, *x1, h)
            }
        };
        features.push(Feature {
            id: format!("f{index}"),
            kind: FeatureKind::Opening,
            purpose: Purpose::Vent,
            blind: None,
            centre: contour.bbox().center(),
            contour,
            diameter_mm: None,
            key: None,
            notch: matches!(shape, Shape::Notch(_)),
            why: String::new(),
            about: Vec::new(),
            source: Source::common_practice("test", "test"),
        });
    }
    outline.push((0.0, h));
    Panel {
        wall: Wall::Left,
        label: "Test",
        assembly: Assembly::Sleeve,
        thickness_mm: sheet.thickness,
        size_mm: sheet.size,
        frame: sheet.frame,
        outline: Contour::polygon(outline),
        edges: Vec::new(),
        joint_gaps: Vec::new(),
        features,
    }
}

fn pieces_of(things: &[Thing], view: &Projection) -> Vec<Piece> {
    let visitors: Vec<Aabb> = things.iter().filter(|thing| matches!(thing, Thing::Box(_))).map(bounds_of).collect();
    let piece = |(owner, thing): (usize, &Thing)| match thing {
        Thing::Box(bounds) => vec![solids::block(owner, *bounds, Colour::Metal, view)],
        Thing::Sheet(sheet) => {
            let around = plate::Around { frame: sheet.frame, visitors: &visitors, head: &|_| None };
            plate::plate(owner, &panel_of(sheet), &around, view)
        }
    };
    things.iter().enumerate().flat_map(piece).collect()
}

fn bounds_of(thing: &Thing) -> Aabb {
    match thing {
        Thing::Box(bounds) => *bounds,
        Thing::Sheet(sheet) => {
            let [w, h] = sheet.size;
            let far = sheet.frame.to_case(Point::new(w, h), -sheet.thickness);
            Aabb::new(sheet.frame.to_case(Point::ZERO, 0.0), far)
        }
    }
}

/// Compares the picture with what the eye meets at points all over it. Points within `slack` of a change are left out,
/// since chords stand in for circles. Gives how many points were compared.
fn compare(things: &[Thing], view: &Projection, slack: f64, about: &str) -> usize {
    let picture: Vec<(usize, Facet, Vec<Vec<Point>>)> = painted(pieces_of(things, view), view)
        .into_iter()
        .map(|(owner, facet)| {
            let flat = |ring: &Vec<[f64; 3]>| ring.iter().map(|at| view.point(*at)).collect();
            let rings = facet.rings.iter().map(flat).collect();
            (owner, facet, rings)
        })
        .collect();
    let mut compared = 0;
    for step_x in -40..=40 {
        for step_y in -40..=40 {
            let at = Point::new(f64::from(step_x) * 5.0 + 0.123, f64::from(step_y) * 5.0 + 0.377);
            let expected = sees(things, view, at);
            let around = [(slack, 0.0), (-slack, 0.0), (0.0, slack), (0.0, -slack)];
            if around.iter().any(|(x, y)| sees(things, view, Point::new(at.x + x, at.y + y)) != expected) {
                continue;
            }
            assert_eq!(drawn(&picture, at), expected, "{about}: at {at:?} of {things:#?}");
            compared += usize::from(expected.is_some());
        }
    }
    compared
}

fn random_view(random: &mut Random) -> Projection {
    match random.index(8) {
        0 => Projection::orthographic(90.0 * random.index(4) as f64, 0.0),
        1 => Projection::orthographic(90.0 * random.index(4) as f64, random.range(-80.0, 80.0)),
        2 => Projection::orthographic(random.range(-180.0, 180.0), 0.0),
        3 => Projection::orthographic(-90.0, 90.0),
        _ => Projection::orthographic(random.range(-180.0, 180.0), random.range(-85.0, 85.0)),
    }
}

/// Blocks and long bars, so that circles (a before b before c before a) happen.
fn random_box(random: &mut Random) -> Aabb {
    let long = random.index(4);
    let size = [0, 1, 2].map(|axis| if axis == long { random.range(80.0, 200.0) } else { random.range(4.0, 40.0) });
    let min = size.map(|size| random.range(-100.0, 100.0) - size / 2.0);
    Aabb::new(min, [0, 1, 2].map(|axis| min[axis] + size[axis]))
}

fn random_sheet(random: &mut Random) -> Sheet {
    let (x, y, z) = ([1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]);
    let minus = |axis: [f64; 3]| axis.map(|value: f64| -value);
    let (u, v, out) =
        [(x, z, minus(y)), (minus(x), z, y), (minus(y), z, minus(x)), (y, z, x), (x, y, z), (minus(x), y, minus(z))]
            [random.index(6)];
    let (w, h) = (random.range(60.0, 200.0), random.range(60.0, 200.0));
    let frame = PanelFrame { origin: [0, 1, 2].map(|_| random.range(-100.0, 60.0)), u, v, out };
    let mut shapes = vec![
        Shape::Circle(Point::new(w * 0.25, h * 0.3), random.range(1.0, w.min(h) * 0.2)),
        Shape::Rect([w * 0.55, h * 0.1, w * random.range(0.6, 0.9), h * random.range(0.2, 0.5)]),
    ];
    if random.index(2) == 0 {
        shapes.push(Shape::Notch([w * 0.4, h * 0.7, w * random.range(0.5, 0.8), h]));
    }
    Sheet { frame, size: [w, h], thickness: random.range(3.0, 18.0), shapes }
}

#[test]
fn boxes_hide_one_another_as_the_eye_sees_them() {
    let mut random = Random(1);
    let mut compared = 0;
    for scene in 0..40 {
        let mut things: Vec<Thing> = Vec::new();
        while things.len() < 14 {
            let next = random_box(&mut random);
            if things.iter().all(|thing| !bounds_of(thing).overlaps(&next)) {
                things.push(Thing::Box(next));
            }
        }
        compared += compare(&things, &random_view(&mut random), 0.001, &format!("scene {scene}"));
    }
    assert!(compared > 25_000, "{compared}");
}

#[test]
fn boxes_that_run_into_each_other_show_where_they_do() {
    let mut random = Random(2);
    let mut compared = 0;
    for scene in 0..40 {
        let things: Vec<Thing> = (0..8).map(|_| Thing::Box(random_box(&mut random))).collect();
        compared += compare(&things, &random_view(&mut random), 0.001, &format!("scene {scene}"));
    }
    assert!(compared > 8_000, "{compared}");
}

#[test]
fn plates_are_open_where_they_are_open() {
    let mut random = Random(3);
    let mut compared = 0;
    for scene in 0..40 {
        let mut things: Vec<Thing> = Vec::new();
        while things.len() < 9 {
            let next = if things.len() < 4 {
                Thing::Sheet(random_sheet(&mut random))
            } else {
                Thing::Box(random_box(&mut random))
            };
            if things.iter().all(|thing| !bounds_of(thing).overlaps(&bounds_of(&next))) {
                things.push(next);
            }
        }
        compared += compare(&things, &random_view(&mut random), 0.25, &format!("scene {scene}"));
    }
    assert!(compared > 15_000, "{compared}");
}

/// Bars through a window and a notch, and one that sticks in the sheet.
#[test]
fn what_stands_in_an_opening_shows_through_it() {
    let mut random = Random(4);
    let mut compared = 0;
    for scene in 0..40 {
        let mut sheet = random_sheet(&mut random);
        let [w, h] = sheet.size;
        sheet.shapes = vec![
            Shape::Rect([w * 0.1, h * 0.1, w * 0.45, h * 0.5]),
            Shape::Circle(Point::new(w * 0.75, h * 0.25), w.min(h) * 0.2),
            Shape::Notch([w * 0.3, h * 0.65, w * 0.7, h]),
        ];
        let mut things = vec![Thing::Sheet(sheet.clone())];
        for [x0, y0, x1, y1] in [[0.15, 0.15, 0.4, 0.3], [0.2, 0.35, 0.3, 0.48], [0.35, 0.7, 0.5, 0.95]] {
            let (low, high) = (random.range(-40.0, 5.0), random.range(-5.0, 40.0));
            let a = sheet.frame.to_case(Point::new(w * x0, h * y0), low);
            let b = sheet.frame.to_case(Point::new(w * x1, h * y1), high.max(low + 2.0));
            things.push(Thing::Box(Aabb::new(a, b)));
        }
        compared += compare(&things, &random_view(&mut random), 0.25, &format!("scene {scene}"));
    }
    assert!(compared > 8_000, "{compared}");
}
