//! The edges that a tool really leaves where they differ from the part's: corner relief, and outlines broken by joints.
//!
//! A relieved corner is its nominal corner and one circle of void, so that a web to it is the lesser of two exact
//! distances; nothing is flattened.

use kurbo::{Point, Rect};

use super::mend::{Remedy, enter_at_most};
use super::scene::{Shape, Sheet};
use super::web_between::web;
use crate::cutting::{CornerFault, CutRule, Relief, ReliefCircle, Relieved, Void, relieve};
use crate::design::{Relief as WantedRelief, Spec, Wall};
use crate::drawing::Segment;
use crate::panels::{Feature, Panel, Purpose};
use crate::solid::TOUCH_MM;

/// What cutting adds to the nominal edges of one panel.
#[derive(Debug)]
pub(super) struct CutEdges {
    /// Relief circles of each feature, in the panel's order.
    pub relief: Vec<Vec<ReliefCircle>>,
    /// The outline as cut, notches left out, where fingers or tabs break the panel's edges; else empty.
    pub outline: Vec<(Segment, Rect)>,
    /// Furthest that relief goes into the sheet from the outline's nominal corners, mm.
    pub relief_mm: f64,
    /// Corners of joints that get no relief, though it is wanted.
    pub joint_faults: Vec<CornerFault>,
}

impl CutEdges {
    pub fn of(spec: &Spec, panel: &Panel) -> Self {
        let rule = relief_of(spec, panel.wall);
        let [w, h] = panel.size_mm;
        let broken = panel.sound() != Rect::new(0.0, 0.0, w, h);
        let mut relief = vec![Vec::new(); panel.features.len()];
        let around = rule.map(|(radius, kind)| relieve(&panel.outline, Void::Outside, radius, kind));
        if let (Some(rule), Some(around)) = (rule, &around) {
            for (feature, circles) in panel.features.iter().zip(&mut relief) {
                *circles = circles_of(feature, rule, around);
            }
        }
        let mut outline = Vec::new();
        if broken {
            let notches: Vec<(&Feature, &Vec<ReliefCircle>)> =
                panel.features.iter().zip(&relief).filter(|(feature, _)| feature.notch).collect();
            let contour = around.as_ref().map_or(&panel.outline, |around| &around.contour);
            outline.extend(
                contour
                    .segments()
                    .filter(|segment| !notches.iter().any(|(notch, circles)| is_of(segment, notch, circles)))
                    .map(|segment| (segment, segment.bbox())),
            );
        }
        let joint_faults = match (rule, &around) {
            (Some(rule), Some(around)) => joint_faults(panel, rule, around),
            _ => Vec::new(),
        };
        Self { relief, outline, relief_mm: rule.map_or(0.0, |(radius, _)| radius), joint_faults }
    }
}

/// Inside corners of fingers, tabs, rebates' steps and slots that stay round because a wall is too short for relief.
fn joint_faults(panel: &Panel, (radius, kind): (f64, Relief), around: &Relieved) -> Vec<CornerFault> {
    let of_joint = |at: Point| panel.joint_gaps.iter().any(|gap| gap.inflate(TOUCH_MM, TOUCH_MM).contains(at));
    let outline = around.faults.iter().filter(|(at, _)| of_joint(*at)).map(|(_, fault)| *fault);
    let slots = panel.features.iter().filter(|feature| feature.purpose == Purpose::JointSlot);
    let in_slots = slots.flat_map(|slot| relieve(&slot.contour, Void::Inside, radius, kind).faults);
    outline.chain(in_slots.map(|(_, fault)| fault)).collect()
}

/// The relief circles of one feature, on a panel whose outline is relieved like that.
fn circles_of(feature: &Feature, (radius, kind): (f64, Relief), around: &Relieved) -> Vec<ReliefCircle> {
    if feature.blind.is_some() || feature.diameter_mm.is_some() {
        return Vec::new();
    }
    if feature.notch {
        let of_it = |circle: &&ReliefCircle| feature.contour.distance_to_point(circle.corner) < TOUCH_MM;
        return around.circles.iter().filter(of_it).copied().collect();
    }
    relieve(&feature.contour, Void::Inside, radius, kind).circles
}

/// Radius and kind of the relief that a router cuts on a panel.
fn relief_of(spec: &Spec, wall: Wall) -> Option<(f64, Relief)> {
    match CutRule::of(spec, wall) {
        CutRule::Router(rule) => rule.relief.map(|kind| (rule.relief_radius_mm(), kind)),
        _ => None,
    }
}

/// What leaves `needed` between two shapes that only corner relief brings too near: relief the other way, else the
/// widest cutter, in tenths of a millimetre, with which it does. Each is tried.
pub(super) fn relief_remedy(spec: &Spec, sheet: &Sheet, shapes: [&Shape; 2], needed: f64) -> Remedy {
    let wide = spec.making.router.cutter_mm;
    let leaves = |cutter_mm: f64, wanted: WantedRelief| {
        let mut tried = spec.clone();
        tried.making.router.cutter_mm = cutter_mm;
        tried.making.router.relief = wanted;
        let Some(rule) = relief_of(&tried, sheet.wall()) else { return true };
        let around = relieve(&sheet.panel.outline, Void::Outside, rule.0, rule.1);
        let [one, other] = shapes.map(|shape| {
            let relief = circles_of(shape.feature, rule, &around);
            Shape { feature: shape.feature, bounds: shape.bounds, relief, cut: shape.cut }
        });
        web(&one, &other) >= needed - TOUCH_MM
    };
    let diagonal = spec.making.router.relief != WantedRelief::Diagonal && leaves(wide, WantedRelief::Diagonal);
    if diagonal {
        return Remedy::new()
            .pick("router.relief", "diagonal", "relieve corners across the corner instead of along an edge")
            .say("take a thinner cutter");
    }
    // Tenths from 0 up to the cutter: the last with which it holds.
    let (mut holds, mut fails) = (0, f64::ceil(wide * 10.0) as u32);
    while fails - holds > 1 {
        let middle = (holds + fails) / 2;
        if leaves(f64::from(middle) / 10.0, spec.making.router.relief) { holds = middle } else { fails = middle }
    }
    if enter_at_most("router.cutter", f64::from(holds) / 10.0).is_none() {
        return Remedy::new().say("leave corners round, under Making, and file what has to be square");
    }
    Remedy::new().at_most("router.cutter", f64::from(holds) / 10.0, |value| format!("take a cutter of {value} or less"))
}

/// Whether a stretch of the outline runs along a notch.
fn is_of(segment: &Segment, notch: &Feature, circles: &[ReliefCircle]) -> bool {
    match segment {
        Segment::Line { from, to } => notch.contour.distance_to_point(from.midpoint(*to)) < TOUCH_MM,
        Segment::Arc(arc) => circles.iter().any(|circle| (circle.centre - arc.centre).hypot2() < TOUCH_MM * TOUCH_MM),
    }
}

/// Sheet between a shape and the nearest stretch of an outline that joints break, up to `reach`; `None` beyond it.
pub(super) fn to_broken_edge(sheet: &Sheet, shape: &Shape, reach: f64) -> Option<f64> {
    if !sheet.panel.outline.contains(shape.feature.centre) {
        return Some(0.0);
    }
    let near = shape.cut.inflate(reach, reach);
    let least = sheet
        .cut_outline
        .iter()
        .filter(|(_, bounds)| bounds.x0 < near.x1 && bounds.x1 > near.x0 && bounds.y0 < near.y1 && bounds.y1 > near.y0)
        .map(|(segment, _)| to_segment(shape, segment))
        .fold(f64::INFINITY, f64::min);
    (least < reach).then_some(least)
}

fn to_segment(shape: &Shape, segment: &Segment) -> f64 {
    let round = |centre: Point, radius: f64| (segment.distance_to_point(centre) - radius).max(0.0);
    let nominal = match shape.round() {
        Some((centre, radius)) => round(centre, radius),
        None => shape.feature.contour.distance_to_segment(segment),
    };
    shape.relief.iter().map(|circle| round(circle.centre, circle.radius_mm)).fold(nominal, f64::min)
}
