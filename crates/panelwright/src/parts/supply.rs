//! The supply: its body, the room for its cables, its mains plug and its air.

use super::SupplyPlace;
use crate::design::{FanSide, SupplyKind, SupplyPose, SupplySpec, Wall};
use crate::dimensions::fasteners::major_diameter;
use crate::dimensions::source::{Source, Sourced};
use crate::dimensions::{plugs, supplies};
use crate::parts::{Carrier, KeepClear, Part, PartKind};
use crate::solid::{Aabb, PanelFrame, minus};

/// The tables' name of a supply kind.
#[must_use]
pub const fn table_kind(kind: SupplyKind) -> supplies::SupplyKind {
    match kind {
        SupplyKind::FullSize => supplies::SupplyKind::Atx,
        SupplyKind::Sfx => supplies::SupplyKind::Sfx,
        SupplyKind::SfxL => supplies::SupplyKind::SfxL,
        SupplyKind::Tfx => supplies::SupplyKind::Tfx,
        SupplyKind::Flex => supplies::SupplyKind::FlexAtx,
        SupplyKind::Brick => supplies::SupplyKind::Brick,
    }
}

/// Face width, face height and depth: measured, else published. `None` for an external brick.
#[must_use]
pub fn size(spec: &SupplySpec) -> Option<[f64; 3]> {
    let table = supplies::size(table_kind(spec.kind))?;
    Some([
        spec.face_width_mm.unwrap_or(table.face_width_mm),
        spec.face_height_mm.unwrap_or(table.face_height_mm),
        spec.depth_mm.unwrap_or(table.depth_mm),
    ])
}

/// Holes the maker measured.
const MEASURED: Source = Source::common_practice("The maker's measure", "holes in the face of this supply");

/// Holes in the face's own frame: measured ones, else published ones, else none.
#[must_use]
pub fn holes(spec: &SupplySpec) -> Vec<([f64; 2], Source)> {
    if !spec.holes.is_empty() {
        return spec.holes.iter().map(|hole| (*hole, MEASURED)).collect();
    }
    supplies::holes(table_kind(spec.kind))
        .unwrap_or_default()
        .iter()
        .map(|hole| ([hole.x_mm, hole.y_mm], hole.source))
        .collect()
}

/// A screw's hole lies so far inside the face, mm: its thread is then wholly in it.
#[must_use]
pub const fn hole_inset_mm() -> f64 {
    major_diameter(supplies::thread().get()).get() / 2.0
}

/// How far a point of the face's frame lies off the face less `inset_mm` all round, mm; 0 on it.
#[must_use]
pub fn off_face_mm(face_mm: [f64; 2], at: [f64; 2], inset_mm: f64) -> f64 {
    [0, 1]
        .map(|axis| (inset_mm - at[axis]).max(at[axis] - (face_mm[axis] - inset_mm)).max(0.0))
        .into_iter()
        .fold(0.0, f64::max)
}

/// Footprint along x, y, z in a pose.
#[must_use]
pub fn footprint(size: [f64; 3], pose: SupplyPose) -> [f64; 3] {
    let [w, h, d] = size;
    match pose {
        SupplyPose::EndFront | SupplyPose::Auto => [w, h, d],
        SupplyPose::EndBeside => [h, w, d],
        SupplyPose::BackFlat => [w, d, h],
        SupplyPose::BackTall => [h, d, w],
    }
}

/// Places a supply: `min` is the lower corner of its body, whose face lies on the inside of floor or back.
#[must_use]
pub fn place(spec: &SupplySpec, size: [f64; 3], pose: SupplyPose, min: [f64; 3]) -> SupplyPlace {
    let extent = footprint(size, pose);
    let max = [0, 1, 2].map(|axis| min[axis] + extent[axis]);
    let (x, y, z) = ([1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]);
    // Face width and height as seen from outside, before any half turn (u x v points outward).
    let (u, v, out, wall) = match pose {
        SupplyPose::EndFront | SupplyPose::Auto => (minus(x), y, minus(z), Wall::Floor),
        SupplyPose::EndBeside => (y, x, minus(z), Wall::Floor),
        SupplyPose::BackFlat => (minus(x), z, y, Wall::Back),
        SupplyPose::BackTall => (z, x, y, Wall::Back),
    };
    let (u, v) = if spec.turned { (minus(u), minus(v)) } else { (u, v) };
    // The corner from which both u and v lead into the body, on the face.
    let origin = [0, 1, 2].map(|axis| {
        let along = u[axis] + v[axis] + out[axis];
        match (axis == normal(out), along > 0.0) {
            (false, true) | (true, false) => min[axis],
            (false, false) | (true, true) => max[axis],
        }
    });
    let fan_towards = match spec.fan_side {
        FanSide::Unknown | FanSide::None => None,
        FanSide::Upper => Some(v),
        FanSide::Lower => Some(minus(v)),
    };
    let face = PanelFrame { origin, u, v, out };
    SupplyPlace { pose, wall, face, size_mm: size, fan_towards }
}

fn normal(out: [f64; 3]) -> usize {
    out.iter().position(|value| *value != 0.0).unwrap_or(2)
}

/// Room for the mains plug and its cord outside the case, mm: least and comfortable.
#[must_use]
pub const fn plug_room(spec: &SupplySpec) -> Sourced<[f64; 2]> {
    plugs::mains_plug_room(spec.plug.table())
}

/// The supply in its place. `sheet_mm` is the thickness of the wall its face lies on.
#[must_use]
pub fn part(spec: &SupplySpec, place: &SupplyPlace, sheet_mm: f64) -> Part {
    let [w, h, d] = place.size_mm;
    let at = |x, y, out| place.face.to_case(kurbo::Point::new(x, y), out);
    let body = Aabb::new(at(0.0, 0.0, 0.0), at(w, h, -d));
    let mut keep_clear = vec![KeepClear {
        zone: Aabb::new(at(0.0, 0.0, -d), at(w, h, -d - spec.cable_room_mm)),
        purpose: "the supply's cables",
        source: supplies::CABLE_ROOM.source(),
    }];
    let plug = plug_room(spec);
    keep_clear.push(KeepClear {
        zone: Aabb::new(at(0.0, 0.0, sheet_mm), at(w, h, sheet_mm + plug.get()[1])),
        purpose: "the mains plug and the supply's outgoing air",
        source: plug.source(),
    });
    if let Some(side) = place.fan_towards {
        let gap = supplies::AIR_GAP.get();
        let axis = normal(side);
        let mut zone = body;
        if side[axis] > 0.0 {
            zone.min[axis] = body.max[axis];
            zone.max[axis] = body.max[axis] + gap;
        } else {
            zone.max[axis] = body.min[axis];
            zone.min[axis] = body.min[axis] - gap;
        }
        keep_clear.push(KeepClear { zone, purpose: "the supply's air", source: supplies::AIR_GAP.source() });
    }
    Part {
        id: "supply".to_owned(),
        kind: PartKind::Supply,
        label: table_kind(spec.kind).label().to_owned(),
        carrier: Carrier::Chassis,
        bodies: vec![body],
        keep_clear,
    }
}
