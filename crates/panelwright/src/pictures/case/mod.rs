//! The case picture: panels as true plates, parts as simple drawn forms, hidden surfaces right from any direction.
//!
//! ```text
//! Build --view--> pieces (solids with the facets one can see) --order--> facets, far to near --paint--> Drawing
//! ```

mod forms;
mod order;
mod paint;
#[cfg(test)]
mod picture_tests;
mod piece;
mod plate;
mod pocket;
mod solids;
#[cfg(test)]
mod tests;
mod view;

pub use view::CaseView;

use kurbo::{Point, Rect, Vec2};

use crate::Build;
use crate::drawing::Drawing;
use crate::fit::Finding;
use crate::panels::{Feature, Purpose};
use crate::pictures::Projection;
use crate::solid::{Aabb, PanelFrame, by_axis};
use paint::{Owner, Plane};
use piece::{Facet, Piece};

/// Free paper around the case, mm.
const MARGIN_MM: f64 = 3.0;

/// The picture of a case, and where things are in it. Points are in the drawing's frame: mm, y up.
#[derive(Clone, Debug, PartialEq)]
pub struct CasePicture {
    /// The picture. Each part and panel is a group that says what it is about; one may be drawn in several groups.
    pub drawing: Drawing,
    /// Where a note about a part or panel that is shown can point.
    pub anchors: Vec<(String, Point)>,
    plane: Plane,
    moves: Vec<(String, [f64; 3])>,
}

impl CasePicture {
    /// Where a case point is in the picture.
    #[must_use]
    pub fn at(&self, case: [f64; 3]) -> Point {
        self.plane.point(case)
    }

    /// Where a part or panel that is shown can be pointed at; a feature (`back/fan-1-opening`) counts as its panel.
    #[must_use]
    pub fn anchor(&self, id: &str) -> Option<Point> {
        let id = id.split('/').next().unwrap_or(id);
        self.anchors.iter().find(|(other, _)| other == id).map(|(_, at)| *at)
    }

    /// Where a finding speaks about: its own point, moved with the first part or panel it names when panels are drawn
    /// apart; without one, the first thing it names that is shown.
    #[must_use]
    pub fn place_of(&self, finding: &Finding) -> Option<Point> {
        let Some(at) = finding.at else {
            return finding.about.iter().find_map(|id| self.anchor(id));
        };
        let moved = finding.about.iter().find_map(|id| {
            let id = id.split('/').next().unwrap_or(id);
            self.moves.iter().find(|(other, _)| other == id).map(|(_, by)| *by)
        });
        let by = moved.unwrap_or([0.0; 3]);
        Some(self.at(by_axis(|axis| at[axis] + by[axis])))
    }
}

/// Draws the case.
#[must_use]
pub fn case_picture(build: &Build, view: &CaseView) -> CasePicture {
    let projection = view.projection();
    let (plane, size) = plane_for(build, view, &projection);
    let mut owners: Vec<Owner> = Vec::new();
    let mut pieces: Vec<Piece> = Vec::new();
    let mut anchors = Vec::new();
    let mut moves = Vec::new();
    let mut solids: Vec<Aabb> = Vec::new();
    for part in &build.parts {
        let Some(moved) = view::part_move(build, part, view) else { continue };
        forms::pieces(owners.len(), part, &forms::Scene { build, view: &projection, moved }, &mut pieces);
        solids.extend(part.bodies.iter().map(|body| body.moved(moved)));
        owners.push(Owner { id: part.id.clone(), see_through: false });
        anchors.push((part.id.clone(), plane.point(part.bounds().moved(moved).centre())));
        moves.push((part.id.clone(), moved));
    }
    // Heads are drawn on panels that are where their screws are.
    let closed = view.apart <= 0.0;
    let head = |feature: &Feature| if closed { head_radius(feature) } else { None };
    for panel in build.panels.iter().filter(|panel| !view.off.contains(&panel.wall)) {
        let moved = view::panel_move(build, panel, view);
        let origin = by_axis(|axis| panel.frame.origin[axis] + moved[axis]);
        let frame = PanelFrame { origin, ..panel.frame };
        let around = plate::Around { frame, visitors: &solids, head: &head };
        pieces.extend(plate::plate(owners.len(), panel, &around, &projection));
        let sleeve = panel.assembly == crate::panels::Assembly::Sleeve;
        owners.push(Owner { id: panel.id().to_owned(), see_through: view.see_through && sleeve });
        let [w, h] = panel.size_mm;
        anchors.push((panel.id().to_owned(), plane.point(frame.to_case(Point::new(w / 2.0, h / 2.0), 0.0))));
        moves.push((panel.id().to_owned(), moved));
    }
    let facets = painted(pieces, &projection);
    CasePicture { drawing: paint::paint(&facets, &owners, &plane, size), anchors, plane, moves }
}

/// The picture's plane and size. They do not depend on what is off, so that nothing jumps when a panel is taken off.
fn plane_for(build: &Build, view: &CaseView, projection: &Projection) -> (Plane, [f64; 2]) {
    let sheets = build.panels.iter().map(|panel| view::sheet(panel).moved(view::panel_move(build, panel, view)));
    let whole = CaseView { off: Vec::new(), ..view.clone() };
    let parts = build.parts.iter().filter_map(|part| Some(part.bounds().moved(view::part_move(build, part, &whole)?)));
    let corners = sheets.chain(parts).flat_map(|bounds| {
        (0..8).map(move |corner: usize| {
            by_axis(|axis| if corner >> axis & 1 == 0 { bounds.min[axis] } else { bounds.max[axis] })
        })
    });
    let points = corners.map(|corner| projection.point(corner)).map(|point| Rect::from_points(point, point));
    let bounds = points.reduce(|all, point| all.union(point)).unwrap_or(Rect::ZERO).inflate(MARGIN_MM, MARGIN_MM);
    let plane = Plane { view: *projection, shift: Vec2::new(-bounds.x0, -bounds.y0) };
    // Whole hundredths, so that points rounded to hundredths stay so when a writer turns y over.
    let whole = |length: f64| f64::ceil(length * 100.0) / 100.0;
    (plane, [whole(bounds.width()), whole(bounds.height())])
}

/// Radius of the head of the screw in a hole, as drawn: a pan head is nearly twice its thread (ISO 7045: M3 5.6 mm).
fn head_radius(feature: &Feature) -> Option<f64> {
    let screw = matches!(
        feature.purpose,
        Purpose::BoardStandoff
            | Purpose::DriveScrew
            | Purpose::SupplyScrew
            | Purpose::ShelfScrew
            | Purpose::TongueBracketScrew
            | Purpose::FanScrew
            | Purpose::PortScrew
            | Purpose::BracketScrew
            | Purpose::CaptiveScrew
    );
    feature.diameter_mm.filter(|_| screw).map(|diameter| diameter * 0.85)
}

/// Everything that is drawn, with the number of its owner, the far things first.
fn painted(pieces: Vec<Piece>, view: &Projection) -> Vec<(usize, Facet)> {
    let mut out = Vec::new();
    for piece in order::back_to_front(pieces, view) {
        let owner = piece.owner;
        out.extend(piece.under.into_iter().map(|facet| (owner, facet)));
        if let Some(pockets) = &piece.plate {
            out.extend(pockets.showing());
        }
        out.extend(piece.over.into_iter().map(|facet| (owner, facet)));
    }
    out
}
