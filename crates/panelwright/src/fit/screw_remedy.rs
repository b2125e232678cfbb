//! What mends a screw of the wrong length.

use super::drives::LEAST_WASHERS;
use super::mend::most;
use super::scene::Scene;
use super::words;
use crate::fastening::Screw;
use crate::panels::washers_with_a_screw;
use crate::sorting::sort_by_key;

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
    // At most twelve can be chosen: the cast keeps the value.
    let mut counts = washers_with_a_screw(drive, clamped, most(&format!("drive{}.washers", drive.number)) as u8);
    let enough = |count: &u8| usize::from(*count) >= LEAST_WASHERS.get();
    if counts.iter().any(enough) {
        counts.retain(enough);
    }
    // The nearest to what is chosen moves the drive least.
    sort_by_key(&mut counts, |count| count.abs_diff(drive.washers));
    counts.truncate(2);
    match counts[..] {
        [] => format!("{}.", words::capital(&by_hand)),
        [only] => format!("Put {only} washers under drive {}, or {by_hand}.", drive.number),
        [first, other, ..] => format!("Put {first} or {other} washers under drive {}, or {by_hand}.", drive.number),
    }
}
