//! Joints: what each corner takes from the two panels that meet there.
//!
//! [`CaseSize::panel`](crate::arrangement::CaseSize::panel) already lets every panel reach as far as its joints want, as a
//! plain rectangle. Where two such rectangles then claim the same room, this module says who has it:
//!
//! ```text
//!   rebate                     fingers                       tabs
//!   ......+-----+              +-----+                       +-----+
//!   covered     | through      |     | turn and turn about   | === |  the covered panel's tab in a slot,
//!   ......+--+  |              +--+--+ along the corner      |     |  sheet beyond it
//! ```
//!
//! At the two upper front corners three panels meet; the cube there belongs to the one that runs through over both
//! others. Invariants: joined panels touch and never share room (a press aside, which the play says); the outline runs
//! around every gap.

mod blocks;
mod layout;

use kurbo::Rect;

use super::bench::{Bench, Cut};
use super::corner::axis_along;
use super::panel::{Face, FeatureKind, Purpose};
use crate::arrangement::CaseSize;
use crate::design::{Joint, Joints, Seam, SeamSpec, Wall};
use crate::dimensions::source::Source;
use crate::drawing::Contour;
use crate::solid::Aabb;
pub(crate) use blocks::THINNEST_MM as THINNEST_BLOCK_MM;
pub(super) use blocks::{block, features as blocks};
use layout::Stretch;

const PRACTICE: Source = Source::common_practice("Workshop custom", "proportions of joints in thin sheet");

/// What brackets and blocks of one joint have in common in their names: `floor-back` of `bracket-floor-back-1`.
pub(crate) fn stem(id: &str) -> &str {
    let kind = id.find('-').map_or(0, |end| end + 1);
    id[kind..].trim_end_matches(|end: char| end.is_ascii_digit()).trim_end_matches('-')
}

/// Cuts every joint of the design.
pub(super) fn features(bench: &mut Bench) {
    let case = bench.arrangement.case;
    if case.joints.seams.iter().all(|seam| matches!(seam.joint, Joint::Brackets | Joint::Blocks)) {
        return;
    }
    let corners = [Wall::Left, Wall::Right].map(|side| Cube::of(&case, side));
    for cube in corners.iter().flatten() {
        for wall in cube.walls.into_iter().filter(|wall| *wall != cube.owner) {
            gap(bench, wall, &[cube.room]);
        }
    }
    for seam in case.joints.seams {
        let [one, other] = [seam.through, seam.covered].map(|wall| sheet(&case, wall));
        if !one.overlaps(&other) {
            continue;
        }
        let axis = axis_along(seam.seam.walls());
        let mut shared = one.intersection(&other);
        for cube in corners.iter().flatten().filter(|cube| cube.meets(&seam)) {
            if cube.room.min[axis] > (shared.min[axis] + shared.max[axis]) / 2.0 {
                shared.max[axis] = shared.max[axis].min(cube.room.min[axis]);
            } else {
                shared.min[axis] = shared.min[axis].max(cube.room.max[axis]);
            }
        }
        match seam.joint {
            Joint::Brackets | Joint::Blocks => {}
            Joint::Rebate => rebate(bench, &seam, shared),
            Joint::Finger => fingers(bench, &seam, shared, axis),
            Joint::Tab => tabs(bench, &seam, shared, axis),
        }
    }
}

/// The box of a panel's rectangle.
fn sheet(case: &CaseSize, wall: Wall) -> Aabb {
    let (size, frame) = case.panel(wall);
    frame.plate(size, case.thickness_mm)
}

/// The cube where a side, the front and the top meet, when all three reach into it.
struct Cube {
    room: Aabb,
    walls: [Wall; 3],
    owner: Wall,
}

impl Cube {
    fn of(case: &CaseSize, side: Wall) -> Option<Self> {
        let t = case.thickness_mm;
        let walls = [side, Wall::Front, Wall::Top];
        let mut room = Aabb::new([0.0; 3], [0.0; 3]);
        for wall in walls {
            let (axis, sense, at) = case.inner(wall);
            room.min[axis] = at.min(at - sense * t);
            room.max[axis] = at.max(at - sense * t);
        }
        let joints: &Joints = &case.joints;
        let seams: Vec<&SeamSpec> = [(side, Wall::Front), (side, Wall::Top), (Wall::Front, Wall::Top)]
            .into_iter()
            .filter_map(|(one, other)| joints.between(one, other))
            .collect();
        let fingers = seams.iter().any(|seam| seam.joint == Joint::Finger);
        if !fingers || !walls.iter().all(|wall| sheet(case, *wall).overlaps(&room)) {
            return None;
        }
        // Where each covers one neighbour and is covered by the other, the side has it.
        let owner = walls
            .into_iter()
            .find(|wall| seams.iter().filter(|seam| seam.through == *wall).count() == 2)
            .unwrap_or(side);
        Some(Self { room, walls, owner })
    }

    fn meets(&self, seam: &SeamSpec) -> bool {
        self.walls.contains(&seam.through) && self.walls.contains(&seam.covered)
    }
}

/// A box of the case, seen square to a panel.
fn on(bench: &Bench, wall: Wall, room: &Aabb) -> Rect {
    Rect::from_points(bench.on(wall, room.min), bench.on(wall, room.max))
}

fn gap(bench: &mut Bench, wall: Wall, rooms: &[Aabb]) {
    let gaps: Vec<Rect> = rooms.iter().map(|room| on(bench, wall, room)).collect();
    bench.joint_gaps(wall, &gaps);
}

/// A box with another stretch along an axis.
fn along(room: &Aabb, axis: usize, [from, to]: Stretch) -> Aabb {
    let mut out = *room;
    out.min[axis] = from;
    out.max[axis] = to;
    out
}

/// The through panel loses the room of the covered panel's edge, from inside and as deep as that reaches.
fn rebate(bench: &mut Bench, seam: &SeamSpec, shared: Aabb) {
    let case = bench.arrangement.case;
    let mut room = shared;
    // Room for the glue on the covered panel's inside; its outside stays flush with the edge.
    let (across, sense, _) = case.inner(seam.covered);
    let play = bench.spec.making.play_mm(seam).max(0.0);
    if sense > 0.0 {
        room.max[across] += play;
    } else {
        room.min[across] -= play;
    }
    let rect = on(bench, seam.through, &room);
    // Two rebates of one panel may cross in its corner, both equally deep: each is cut straight through.
    let contour = Contour::rect(rect.x0, rect.y0, rect.x1, rect.y1);
    let depth = seam.reach_mm(case.thickness_mm);
    let cut = Cut::new(
        format!("rebate-{}", seam.covered.name()),
        Purpose::JointRebate,
        format!("Rebate for the edge of the {}", seam.covered.name()),
        PRACTICE,
    )
    .about(seam.covered.name());
    bench.shape(seam.through, cut, FeatureKind::Rebate, Some((depth, Face::Inside)), contour);
}

/// Turn and turn about; the through panel has both ends.
fn fingers(bench: &mut Bench, seam: &SeamSpec, shared: Aabb, axis: usize) {
    let t = bench.thickness();
    let range = [shared.min[axis], shared.max[axis]];
    let stretches = layout::fingers(range, t, bench.spec.making.finger_mm);
    let play = bench.spec.making.play_mm(seam) / 4.0;
    let last = stretches.len().saturating_sub(1);
    let rooms = |of_the_other: usize| -> Vec<Aabb> {
        stretches
            .iter()
            .enumerate()
            .filter(|(index, _)| index % 2 == of_the_other)
            .map(|(index, [from, to])| {
                // A quarter of the play at each flank of each panel; the ends of the corner stay where they are.
                let from = if index == 0 { *from } else { from - play };
                let to = if index == last { *to } else { to + play };
                along(&shared, axis, [from, to])
            })
            .collect()
    };
    gap(bench, seam.through, &rooms(1));
    gap(bench, seam.covered, &rooms(0));
}

/// The covered panel keeps its tabs only; the through panel gets a slot for each.
fn tabs(bench: &mut Bench, seam: &SeamSpec, shared: Aabb, axis: usize) {
    let t = bench.thickness();
    let whole = sheet(&bench.arrangement.case, seam.covered);
    let tabs = layout::tabs([shared.min[axis], shared.max[axis]], t, bench.spec.making.finger_mm);
    let mut from = whole.min[axis];
    let mut gaps = Vec::new();
    for [start, end] in &tabs {
        gaps.push(along(&shared, axis, [from, *start]));
        from = *end;
    }
    gaps.push(along(&shared, axis, [from, whole.max[axis]]));
    gap(bench, seam.covered, &gaps);
    let half = bench.spec.making.play_mm(seam) / 2.0;
    let (across, ..) = bench.arrangement.case.inner(seam.covered);
    for (index, [start, end]) in tabs.into_iter().enumerate() {
        let mut room = along(&shared, axis, [start - half, end + half]);
        room.min[across] -= half;
        room.max[across] += half;
        let rect = on(bench, seam.through, &room);
        let cut = Cut::new(
            format!("slot-{}-{}", seam.covered.name(), index + 1),
            Purpose::JointSlot,
            format!("Slot for a tab of the {}", seam.covered.name()),
            PRACTICE,
        )
        .about(seam.covered.name());
        let contour = Contour::rect(rect.x0, rect.y0, rect.x1, rect.y1);
        bench.shape(seam.through, cut, FeatureKind::Opening, None, contour);
    }
}

/// The stretches of a seam's fingers along its corner, as checks measure them: empty without fingers.
pub(crate) fn finger_widths(case: &CaseSize, seam: Seam, wanted_mm: Option<f64>) -> Vec<f64> {
    let spec = &case.joints.seams[seam as usize];
    if spec.joint != Joint::Finger {
        return Vec::new();
    }
    let axis = axis_along(seam.walls());
    let shared = sheet(case, spec.through).intersection(&sheet(case, spec.covered));
    layout::fingers([shared.min[axis], shared.max[axis]], case.thickness_mm, wanted_mm)
        .into_iter()
        .map(|[from, to]| to - from)
        .collect()
}
