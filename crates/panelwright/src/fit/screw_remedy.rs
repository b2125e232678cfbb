//! What mends a screw of the wrong length.

use super::scene::Scene;
use super::words;
use crate::fastening::Screw;
use crate::panels::washers_with_a_screw;

/// Most washers that can be chosen under a drive.
const MOST_WASHERS: u8 = 12;

/// Fewest washers that keep a drive's plugs off the sheet (see the rule `drive-washers`).
const WASHERS_WANTED: u8 = 2;

/// What to do about a screw whose length must be `range` and is not.
pub(super) fn remedy(scene: &Scene, screw: &Screw, range: &str) -> String {
    if let Some(length) = screw.length_mm {
        return format!("Take one of {range} instead of {}, or leave its length open.", words::limit(length));
    }
    let by_hand = format!("file a longer screw to {range}");
    let drive = scene.case.spec.drives.iter().find(|drive| {
        let id = format!("drive-{}", drive.number);
        screw.joins.contains(&id)
    });
    let Some(drive) = drive else { return format!("{}.", words::capital(&by_hand)) };
    let clamped = scene.case.arrangement.case.thickness_mm + scene.case.spec.sheet.finish_out_mm;
    let mut counts = washers_with_a_screw(drive, clamped, MOST_WASHERS);
    if counts.iter().any(|count| *count >= WASHERS_WANTED) {
        counts.retain(|count| *count >= WASHERS_WANTED);
    }
    // The nearest to what is chosen moves the drive least.
    counts.sort_unstable_by_key(|count| count.abs_diff(drive.washers));
    counts.truncate(2);
    match counts[..] {
        [] => format!("{}.", words::capital(&by_hand)),
        [only] => format!("Put {only} washers under drive {}, or {by_hand}.", drive.number),
        [first, other, ..] => format!("Put {first} or {other} washers under drive {}, or {by_hand}.", drive.number),
    }
}
