//! A case made ready for looking: every sheet and every body as a solid, every feature with its bounds.
//!
//! All solids are in the case frame, all features in their panel's frame, mm.

use kurbo::{Point, Rect, Size};

use super::Case;
use super::cut_edges::CutEdges;
use super::region::overlap_area;
use crate::cutting::{CornerFault, ReliefCircle};
use crate::design::{Spec, Wall};
use crate::drawing::Segment;
use crate::panels::{Face, Feature, FeatureKind, Panel};
use crate::parts::{Part, PartKind};
use crate::solid::{Aabb, TOUCH_MM};
use crate::sorting::sort_by_key;

/// Farthest that a chord may lie off an arc when openings are compared with what passes through them, mm: a fifth of
/// the 0.05 mm that the best hand drilling keeps.
pub(super) const FLAT_MM: f64 = 0.01;

/// One body of a part.
#[derive(Clone, Copy, Debug)]
pub(super) struct Body<'a> {
    pub part: &'a Part,
    pub solid: Aabb,
}

/// A panel as a solid.
#[derive(Debug)]
pub(super) struct Sheet<'a> {
    pub panel: &'a Panel,
    /// The whole plate, as if nothing were cut into it.
    pub solid: Aabb,
    /// Its outline as a polygon, notches left out.
    outline: Vec<Point>,
    pub shapes: Vec<Shape<'a>>,
    /// The outline as cut, where fingers or tabs break the panel's edges; else empty.
    pub cut_outline: Vec<(Segment, Rect)>,
    /// Furthest that corner relief goes into the sheet from that outline, mm.
    pub relief_mm: f64,
    /// Inside corners of its joints that a cutter leaves round though relief is wanted.
    pub joint_faults: Vec<CornerFault>,
}

/// A feature with its bounds.
#[derive(Debug)]
pub(super) struct Shape<'a> {
    pub feature: &'a Feature,
    pub bounds: Rect,
    /// What a router's corner relief takes besides.
    pub relief: Vec<ReliefCircle>,
    /// Its bounds with that relief.
    pub cut: Rect,
}

/// The case made ready.
#[derive(Debug)]
pub(super) struct Scene<'a> {
    pub case: &'a Case<'a>,
    pub bodies: Vec<Body<'a>>,
    /// Bounds of each part, in the order of `case.parts`.
    pub bounds: Vec<Aabb>,
    pub sheets: Vec<Sheet<'a>>,
    /// Parts by id, sorted.
    names: Vec<(&'a str, usize)>,
}

/// Axis and sense of the way from the middle of the case to a panel.
pub(super) const fn outward(wall: Wall) -> (usize, f64) {
    match wall {
        Wall::Left => (0, -1.0),
        Wall::Right => (0, 1.0),
        Wall::Front => (1, -1.0),
        Wall::Back => (1, 1.0),
        Wall::Floor => (2, -1.0),
        Wall::Top => (2, 1.0),
    }
}

/// The panel a direction of the case points to.
pub(super) fn towards(direction: [f64; 3]) -> Option<Wall> {
    Wall::ALL.into_iter().find(|wall| {
        let (axis, sense) = outward(*wall);
        direction[axis] * sense > 0.5
    })
}

/// The panel on the other side of the case.
pub(super) const fn opposite(wall: Wall) -> Wall {
    match wall {
        Wall::Floor => Wall::Top,
        Wall::Top => Wall::Floor,
        Wall::Back => Wall::Front,
        Wall::Front => Wall::Back,
        Wall::Left => Wall::Right,
        Wall::Right => Wall::Left,
    }
}

/// The face of a box that looks along an axis in a sense.
pub(super) const fn face(solid: &Aabb, axis: usize, sense: f64) -> f64 {
    if sense > 0.0 { solid.max[axis] } else { solid.min[axis] }
}

impl<'a> Scene<'a> {
    pub fn new(case: &'a Case<'a>) -> Self {
        let bodies = case
            .parts
            .iter()
            .flat_map(|part| part.bodies.iter().map(move |solid| Body { part, solid: *solid }))
            .collect();
        let mut names: Vec<(&str, usize)> =
            case.parts.iter().enumerate().map(|(index, part)| (part.id.as_str(), index)).collect();
        sort_by_key(&mut names, |name| *name);
        Self {
            case,
            bodies,
            names,
            bounds: case.parts.iter().map(Part::bounds).collect(),
            sheets: case.panels.iter().map(|panel| Sheet::new(case.spec, panel)).collect(),
        }
    }

    /// The panel of a wall, when there is one.
    pub fn sheet(&self, wall: Wall) -> Option<&Sheet<'a>> {
        self.sheets.iter().find(|sheet| sheet.panel.wall == wall)
    }

    /// Position of a panel's inside face along its own axis.
    pub fn inside(&self, wall: Wall) -> Option<f64> {
        let (axis, sense) = outward(wall);
        self.sheet(wall).map(|sheet| face(&sheet.solid, axis, -sense))
    }

    /// The parts of a kind.
    pub fn of(&self, kind: PartKind) -> impl Iterator<Item = &'a Part> + use<'a> {
        self.case.parts.iter().filter(move |part| part.kind == kind)
    }

    /// The first part of a kind.
    pub fn first(&self, kind: PartKind) -> Option<&'a Part> {
        self.of(kind).next()
    }

    pub fn part(&self, id: &str) -> Option<&'a Part> {
        let place = self.names.binary_search_by(|(name, _)| (*name).cmp(id)).ok()?;
        self.case.parts.get(self.names[place].1)
    }

    /// Height of the board's underside.
    pub fn board_under(&self) -> f64 {
        self.case.arrangement.board.origin[2]
    }

    /// Height of the board's top face.
    pub fn board_top(&self) -> f64 {
        self.board_under() + crate::dimensions::boards::PCB_THICKNESS.get()
    }
}

impl<'a> Sheet<'a> {
    fn new(spec: &Spec, panel: &'a Panel) -> Self {
        let solid = panel.frame.plate(panel.size_mm, panel.thickness_mm);
        let CutEdges { relief, outline: cut_outline, relief_mm, joint_faults } = CutEdges::of(spec, panel);
        let shapes = panel
            .features
            .iter()
            .zip(relief)
            .map(|(feature, relief)| {
                let bounds = bounds_of(feature);
                let cut = relief.iter().fold(bounds, |all, circle| {
                    all.union(Rect::from_center_size(
                        circle.centre,
                        Size::new(2.0 * circle.radius_mm, 2.0 * circle.radius_mm),
                    ))
                });
                Shape { feature, bounds, relief, cut }
            })
            .collect();
        Self { panel, solid, outline: panel.outline.flatten(FLAT_MM), shapes, cut_outline, relief_mm, joint_faults }
    }

    pub fn wall(&self) -> Wall {
        self.panel.wall
    }

    pub fn id(&self) -> &'static str {
        self.panel.id()
    }

    /// A box seen square to the panel, in the panel's frame.
    pub fn shadow(&self, solid: &Aabb) -> Rect {
        self.panel.frame.shadow(solid)
    }

    /// How far outward from the outside face a box reaches: least and greatest; the sheet is `-thickness` to 0.
    pub fn reach(&self, solid: &Aabb) -> [f64; 2] {
        let (_, a) = self.panel.frame.to_panel(solid.min);
        let (_, b) = self.panel.frame.to_panel(solid.max);
        [a.min(b), a.max(b)]
    }

    /// Area of sheet, mm², that a box would have to share with the panel, when the openings that `admits` names let
    /// it pass: 0 when it passes freely or stays clear.
    ///
    /// A box passes through one opening at a time: two openings side by side do not add up, so a web between them is
    /// never overlooked.
    pub fn crossing(&self, solid: &Aabb, admits: impl Fn(&Feature) -> bool) -> f64 {
        let thickness = self.panel.thickness_mm;
        let [low, high] = self.reach(solid);
        if low.max(-thickness) + TOUCH_MM >= high.min(0.0) || !self.solid.overlaps(solid) {
            return 0.0;
        }
        let shadow = self.shadow(solid).inset(-TOUCH_MM);
        if shadow.width() <= 0.0 || shadow.height() <= 0.0 {
            return 0.0;
        }
        let mut sheet = overlap_area(&self.outline, shadow);
        let mut free = 0.0_f64;
        for shape in &self.shapes {
            let meet = shape.bounds.intersect(shadow);
            if meet.width() <= 0.0 || meet.height() <= 0.0 {
                continue;
            }
            let admitted = admits(shape.feature) && passes(shape.feature, thickness, low, high);
            if admitted == shape.feature.notch {
                continue;
            }
            let shared = overlap_area(&shape.feature.contour.flatten(FLAT_MM), shadow);
            if shape.feature.notch {
                // The outline already leaves it out; what it is not meant for may not use it.
                sheet += shared;
            } else {
                free = free.max(shared);
            }
        }
        let shared = sheet - free;
        // Relative: rounding of the two areas grows with them.
        if shared > 1e-9 * sheet.max(1.0) { shared } else { 0.0 }
    }

    /// The features with a purpose, each with its bounds.
    pub fn with_purpose(&self, purpose: crate::panels::Purpose) -> impl Iterator<Item = &Shape<'a>> {
        self.shapes.iter().filter(move |shape| shape.feature.purpose == purpose)
    }
}

impl Shape<'_> {
    /// Whether it goes through the sheet and takes material away by itself.
    pub fn is_through(&self) -> bool {
        self.feature.blind.is_none() && self.feature.kind != FeatureKind::Groove
    }

    /// Centre and radius, when it is a circle.
    pub fn round(&self) -> Option<(Point, f64)> {
        self.feature.diameter_mm.map(|diameter| (self.feature.centre, diameter / 2.0))
    }

    /// A round drilled hole; everything else is an opening.
    pub fn is_hole(&self) -> bool {
        self.feature.kind == FeatureKind::Hole && self.feature.diameter_mm.is_some()
    }
}

/// The smallest rectangle around a feature; a circle's needs no contour.
fn bounds_of(feature: &Feature) -> Rect {
    match feature.diameter_mm {
        Some(diameter) => Rect::from_center_size(feature.centre, (diameter, diameter)),
        None => feature.contour.bbox(),
    }
}

/// Whether a feature is deep enough for what reaches from `low` to `high` outward of the outside face.
fn passes(feature: &Feature, thickness: f64, low: f64, high: f64) -> bool {
    match feature.blind {
        None => true,
        Some((depth, Face::Outside)) => low >= -depth - TOUCH_MM,
        Some((depth, Face::Inside)) => high <= depth - thickness + TOUCH_MM,
    }
}
