//! Vents: slots or staggered rounds in a region before what breathes there.
//!
//! An opening that would come nearer than the web to another feature, to an edge, or to hardware and parts on the
//! inside of the panel is left out, so a crowded region has fewer openings but never a thin web.

use kurbo::{Point, Rect};

use super::bench::{Bench, Cut};
use super::left_out::{NoVent, VentLeftOut};
use super::panel::{FeatureKind, Panel, Purpose};
use super::vent_pattern;
use crate::design::{CoolerAir, VentFor, VentPattern, VentSpec, Wall};
use crate::dimensions::source::Source;
use crate::drawing::Contour;
use crate::parts::{Part, PartKind};
use crate::solid::Aabb;

/// Longest slot, mm: webs beside longer ones are whippy in sheet of 6 mm (common practice).
const LONGEST_SLOT_MM: f64 = 60.0;

/// Most openings of one vent: the web grows until no more are needed. Nobody drills more.
const MOST_OPENINGS: usize = 500;

/// Side of a region before nothing in particular, mm (common practice).
const PLAIN_REGION_MM: [f64; 2] = [80.0, 60.0];

/// A supply's fan breathes through the panel next to it when that is no further away, mm (common practice).
const NEXT_TO_MM: f64 = 60.0;

/// A part this near to the inside of a panel covers it, mm (common practice).
const COVERS_MM: f64 = 1.5;

const SOURCE: Source =
    Source::common_practice("The maker's choice", "vents, with a web of at least the measure chosen");

pub(super) fn features(bench: &mut Bench) {
    let vents: &[VentSpec] = &bench.spec.vents;
    for vent in vents {
        let (Some(pattern), Some((wall, wanted))) = (vent.pattern, wanted(bench, vent)) else { continue };
        let free = safe_area(bench.panel(wall), vent.web_mm);
        let region = wanted.intersect(free);
        let why = if region.width() <= 0.0 || region.height() <= 0.0 {
            NoVent::OffPanel
        } else if region.width().min(region.height()) < vent.size_mm {
            NoVent::TooSmall
        } else if cut(bench, vent, pattern, wall, region) == 0 {
            NoVent::Taken
        } else {
            continue;
        };
        bench.left_out.push(VentLeftOut { purpose: vent.purpose, wall, wanted, free, opening_mm: vent.size_mm, why });
    }
}

const fn name(purpose: VentFor) -> &'static str {
    match purpose {
        VentFor::Card => "card",
        VentFor::Supply => "supply",
        VentFor::Cooler => "cooler",
        VentFor::Extra => "extra",
    }
}

/// What breathes behind a vent, and the panel beside it.
struct Breathing {
    wall: Option<Wall>,
    body: Option<Aabb>,
}

fn breathing(bench: &Bench, purpose: VentFor) -> Breathing {
    let body =
        |kind: PartKind| bench.arrangement.parts.iter().find(|part| part.kind == kind).map(|part| part.bodies[0]);
    match purpose {
        // The component side of a card faces away from the processor (CEM 3.0, section 9.2).
        VentFor::Card => Breathing { wall: Some(Wall::Left), body: body(PartKind::Card) },
        VentFor::Supply => Breathing { wall: supply_wall(bench), body: body(PartKind::Supply) },
        VentFor::Cooler => cooler(bench, body(PartKind::Cooler)),
        VentFor::Extra => Breathing { wall: Some(Wall::Top), body: None },
    }
}

/// The panel that a supply's large fan looks at from nearby, with nothing large between.
fn supply_wall(bench: &Bench) -> Option<Wall> {
    let towards = bench.arrangement.supply?.fan_towards?;
    let supply = bench.arrangement.parts.iter().find(|part| part.kind == PartKind::Supply)?.bounds();
    let wall = Wall::ALL.into_iter().find(|wall| bench.panel(*wall).frame.out == towards)?;
    let frame = bench.panel(wall).frame;
    let axis = frame.normal_axis();
    let outward = frame.out[axis];
    let side = if outward > 0.0 { supply.max[axis] } else { supply.min[axis] };
    let inside = frame.origin[axis] - outward * bench.thickness();
    let gap = (inside - side) * outward;
    let way = supply.swept(axis, gap.max(0.0) * outward);
    let blocked = bench.arrangement.parts.iter().any(|part| {
        matches!(part.kind, PartKind::Board | PartKind::Memory | PartKind::Card | PartKind::Cooler | PartKind::Drive)
            && part.bodies.iter().any(|body| body.overlaps(&way))
    });
    (gap <= NEXT_TO_MM && !blocked).then_some(wall)
}

fn cooler(bench: &Bench, body: Option<Aabb>) -> Breathing {
    let air = bench.spec.cooler.as_ref().map_or(CoolerAir::None, |cooler| cooler.air);
    let (wall, body) = match air {
        CoolerAir::Down | CoolerAir::Up => (Some(Wall::Top), body),
        // It takes its air from in front of it: the stretch of the right panel just before its front face.
        CoolerAir::Back => (
            Some(Wall::Right),
            body.map(|body| {
                let depth = body.size()[1];
                body.moved([0.0, -depth, 0.0])
            }),
        ),
        CoolerAir::Left => (Some(Wall::Right), body),
        CoolerAir::Right => (Some(Wall::Left), body),
        CoolerAir::Front | CoolerAir::None => (None, body),
    };
    Breathing { wall, body }
}

/// Panel of a vent and the region it is to fill; `None` when nothing breathes there.
fn wanted(bench: &Bench, vent: &VentSpec) -> Option<(Wall, Rect)> {
    let breathing = breathing(bench, vent.purpose);
    if vent.purpose != VentFor::Extra && breathing.body.is_none() {
        return None;
    }
    let wall = vent.wall.or(breathing.wall)?;
    let panel = bench.panel(wall);
    let [width, height] = panel.size_mm;
    let plain = Rect::from_center_size((width / 2.0, height / 2.0), (PLAIN_REGION_MM[0], PLAIN_REGION_MM[1]));
    let before = breathing.body.map_or(plain, |body| panel.frame.shadow(&body));
    let centre = before.center();
    let wanted = Rect::from_center_size(
        (vent.across_mm.unwrap_or(centre.x), vent.up_mm.unwrap_or(centre.y)),
        (vent.width_mm.unwrap_or(before.width()), vent.height_mm.unwrap_or(before.height())),
    );
    Some((wall, wanted))
}

/// The panel less a web along each edge, and less the sheet that another panel holds against it there.
fn safe_area(panel: &Panel, web: f64) -> Rect {
    use super::panel::Edge;
    let mut area = Rect::new(0.0, 0.0, panel.size_mm[0], panel.size_mm[1]);
    for joint in &panel.edges {
        let behind = joint.taken_mm;
        match joint.edge {
            Edge::Left => area.x0 += web + behind,
            Edge::Right => area.x1 -= web + behind,
            Edge::Lower => area.y0 += web + behind,
            Edge::Upper => area.y1 -= web + behind,
        }
    }
    // An inside-out rectangle must not turn into a right one.
    Rect::new(area.x0, area.y0, area.x1.max(area.x0), area.y1.max(area.y0))
}

/// Openings of a region: centres relative to its lower left corner, and their length (slots) or diameter.
fn lay(vent: &VentSpec, pattern: VentPattern, size: [f64; 2]) -> (Vec<Point>, f64) {
    let wide = vent.size_mm;
    let mut web = vent.web_mm;
    loop {
        let (field, length) = match pattern {
            VentPattern::Rounds => (vent_pattern::staggered(size, wide, wide + web), wide),
            VentPattern::Slots => {
                let rows = f64::ceil((size[1] + web) / (LONGEST_SLOT_MM + web)).max(1.0);
                let length = ((size[1] - (rows - 1.0) * web) / rows).max(wide);
                (vent_pattern::slots(size, wide, length, [wide + web, length + web]), length)
            }
        };
        if field.len() <= MOST_OPENINGS {
            return (centred(field, wide, length, size), length);
        }
        web *= 1.1;
    }
}

/// Moves a field to the middle of its region.
fn centred(mut field: Vec<Point>, wide: f64, length: f64, size: [f64; 2]) -> Vec<Point> {
    let right = field.iter().fold(0.0_f64, |most, at| most.max(at.x)) + wide / 2.0;
    let top = field.iter().fold(0.0_f64, |most, at| most.max(at.y)) + length / 2.0;
    for at in &mut field {
        at.x += (size[0] - right) / 2.0;
        at.y += (size[1] - top) / 2.0;
    }
    field
}

/// Cuts what has its web all round; gives the number of openings.
fn cut(bench: &mut Bench, vent: &VentSpec, pattern: VentPattern, wall: Wall, region: Rect) -> usize {
    let wide = vent.size_mm;
    let (field, length) = lay(vent, pattern, [region.width(), region.height()]);
    let obstacles = obstacles(bench, wall, region.inflate(vent.web_mm, vent.web_mm));
    let purpose = name(vent.purpose);
    let (about, why) = match vent.purpose {
        VentFor::Card => (Some("card"), "Air for the card's fans"),
        VentFor::Supply => (Some("supply"), "Air for the supply's large fan"),
        VentFor::Cooler => (Some("cooler"), "Air for the processor's cooler"),
        VentFor::Extra => (None, "Air, where the maker wants it"),
    };
    let half = (length - wide) / 2.0;
    let mut number = 0;
    for at in field {
        let centre = Point::new(region.x0 + at.x, region.y0 + at.y);
        let contour = match pattern {
            VentPattern::Rounds => Contour::circle(centre.x, centre.y, wide / 2.0),
            VentPattern::Slots => Contour::slot(centre.x, centre.y - half, centre.x, centre.y + half, wide),
        };
        let bounds = Rect::from_center_size(centre, (wide, length)).inflate(vent.web_mm, vent.web_mm);
        if obstacles.iter().any(|(other, shape)| in_the_way(&contour, centre, bounds, *other, shape, vent.web_mm)) {
            continue;
        }
        number += 1;
        let id = format!("vent-{purpose}-{number}");
        let mut cut = Cut::new(id, Purpose::Vent, why, SOURCE);
        cut.about.extend(about.map(str::to_owned));
        match pattern {
            VentPattern::Rounds => bench.round(wall, cut, FeatureKind::Vent, None, centre, wide),
            VentPattern::Slots => bench.shape(wall, cut, FeatureKind::Vent, None, contour),
        }
    }
    number
}

/// What openings of a region must keep clear of: features, and what lies against the panel's inside.
fn obstacles(bench: &Bench, wall: Wall, region: Rect) -> Vec<(Rect, Contour)> {
    let panel = bench.panel(wall);
    let near = |rect: &Rect| {
        let common = rect.intersect(region);
        common.width() > 0.0 && common.height() > 0.0
    };
    let mut out: Vec<(Rect, Contour)> = panel
        .features
        .iter()
        .map(|feature| (feature.contour.bbox(), feature))
        .filter(|(bounds, _)| near(bounds))
        .map(|(bounds, feature)| (bounds, feature.contour.clone()))
        .collect();
    let parts: &[Part] = &bench.arrangement.parts;
    let inside = -panel.thickness_mm;
    for body in parts.iter().chain(&bench.hardware).flat_map(|part| &part.bodies) {
        let reach = panel.frame.to_panel(body.min).1.max(panel.frame.to_panel(body.max).1);
        let rect = panel.frame.shadow(body);
        if (reach - inside).abs() <= COVERS_MM && near(&rect) {
            out.push((rect, Contour::rect(rect.x0, rect.y0, rect.x1, rect.y1)));
        }
    }
    out
}

fn in_the_way(opening: &Contour, centre: Point, bounds: Rect, other: Rect, shape: &Contour, web: f64) -> bool {
    let common = bounds.intersect(other);
    common.width() > 0.0
        && common.height() > 0.0
        && (shape.contains(centre) || opening.contains(other.center()) || opening.distance_to(shape) < web - 1e-9)
}
