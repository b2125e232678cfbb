//! What drives ask of floor or back: holes in the drive's own pattern, screwed from outside.

use super::bench::{Bench, Cut};
use super::panel::Purpose;
use super::screws::{Grip, Plan};
use crate::design::{DriveKind, DriveSpec, Wall};
use crate::dimensions::drives::{self, DriveFace, HoleRow};
use crate::fastening::Fastener;
use crate::parts::drive::{WASHER_MM, table_kind};

/// Most washers put under a drive screw's head to bring a sold length between its limits: inch lengths are an eighth
/// of an inch apart, six washers of M3.5 make up for it.
const WASHERS_MOST: u8 = 6;

pub(super) fn features(bench: &mut Bench) {
    for index in 0..bench.arrangement.drives.len() {
        one(bench, index);
    }
}

fn one(bench: &mut Bench, index: usize) {
    let place = bench.arrangement.drives[index];
    let kind = table_kind(place.kind);
    let number = place.number;
    let id = format!("drive-{number}");
    let thread = drives::thread(kind).get();
    let diameter = bench.clearance(thread);
    let side = if place.wall == Wall::Floor { "from below" } else { "from behind" };
    let height = bench.spec.drives.iter().find(|drive| drive.number == number).map_or(0.0, |drive| drive.height_mm);
    let mut screws = 0;
    for (hole_index, hole) in drives::bottom_holes(kind).iter().enumerate() {
        let at = bench.on(place.wall, place.to_case(hole.a_mm, hole.b_mm, 0.0));
        let screw = hole_index + 1;
        let which = match (place.kind, hole.row) {
            (DriveKind::Inch3_5, HoleRow::Second) => ", for drives that have holes here",
            (DriveKind::Inch3_5, HoleRow::Far) => ", for drives that have holes here instead",
            _ => "",
        };
        let cut = Cut::new(
            format!("drive-{number}-hole-{screw}"),
            Purpose::DriveScrew,
            format!("Screw of drive {number}: {} {side}{which}", thread.label()),
            hole.source,
        )
        .about(id.as_str());
        bench.hole(place.wall, cut, at, diameter);
        // A 3.5 in drive has the second or the far row, never a screw in both; large ones have the far one.
        if place.kind == DriveKind::Inch3_5 && hole.row == HoleRow::Second {
            continue;
        }
        screws += 1;
        let plan =
            plan(format!("screw-drive-{number}-{screw}"), place.kind, height, bench.clamped() + place.washers_mm)
                .joins([place.wall.name(), id.as_str()]);
        bench.screw_from_outside(place.wall, at, plan);
    }
    let under = libm::round(place.washers_mm / WASHER_MM) as usize;
    if under > 0 {
        let what = format!("{} washer under a drive", thread.label());
        bench.loose.push(Fastener::new(what, under * screws, None, [place.wall.name(), id.as_str()]));
    }
}

/// A drive's screw through so much of sheet and washers.
fn plan(id: String, kind: DriveKind, height_mm: f64, clamped_mm: f64) -> Plan {
    let depth = drives::penetration(table_kind(kind), DriveFace::Bottom, height_mm);
    let what = match kind {
        DriveKind::Inch2_5 => "screw of a 2.5 in drive",
        DriveKind::Inch3_5 => "screw of a 3.5 in drive",
    };
    let grip = Grip::Depth(depth.least.get(), Some(depth.most.get()));
    let plan = Plan::new(id, what, drives::thread(table_kind(kind)).get(), clamped_mm, grip);
    Plan { washers: 0..=WASHERS_MOST, source: Some(depth.most.source()), ..plan }
}

/// The numbers of washers under a drive, up to `most`, with which a sold screw holds it on sheet that measures so
/// much with its finish outside.
pub(crate) fn washers_with_a_screw(drive: &DriveSpec, sheet_mm: f64, most: u8) -> Vec<u8> {
    let fits = |washers: &u8| {
        let clamped = sheet_mm + f64::from(*washers) * WASHER_MM;
        plan(String::new(), drive.kind, drive.height_mm, clamped).screw([0.0; 3], [0.0, 0.0, 1.0]).length_mm.is_some()
    };
    (0..=most).filter(fits).collect()
}
