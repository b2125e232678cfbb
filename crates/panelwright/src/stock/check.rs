//! Says whether a plan keeps every rule of its job. Shares no code with the search: it looks at the finished plan with
//! plain geometry, so that a mistake in one shows in the other.

use super::cuts::{Edge, Part};
use super::job::{Grain, Job, Method};
use super::plan::{OFFCUT, Plan, Rect, SheetPlan};

/// Everything that is wrong with a plan, one line each; empty when it can be cut as it is.
#[must_use]
pub fn faults(job: &Job, plan: &Plan) -> Vec<String> {
    let mut faults = Vec::new();
    let mut seen = vec![0_usize; job.pieces.len()];
    let mut taken = vec![0_usize; job.sheets.len()];
    for unplaced in &plan.unplaced {
        seen[unplaced.piece] += unplaced.count;
    }
    for (number, sheet) in plan.sheets.iter().enumerate() {
        taken[sheet.sheet] += 1;
        let mut say = |what: String| faults.push(format!("sheet {}: {what}", number + 1));
        for placed in &sheet.placed {
            seen[placed.piece] += 1;
            if let Some(fault) = shape(job, sheet, placed.piece, &placed.rect, placed.turned) {
                say(fault);
            }
        }
        places(job, sheet, &mut say);
        nested(job, sheet, &mut say);
        if job.rules.method == Method::Guillotine {
            let rects: Vec<[i64; 4]> = sheet.placed.iter().map(|placed| whole(&placed.rect)).collect();
            if !sawable(&rects, unit(job.rules.gap)) {
                say("cannot be cut from edge to edge".to_owned());
            }
            sawn(job, sheet, &mut say);
        }
        if sheet.placed.is_empty() {
            say("is used for nothing".to_owned());
        }
    }
    for (piece, &seen) in job.pieces.iter().zip(&seen) {
        if seen != piece.count {
            faults.push(format!("{}: {} wanted, {seen} accounted for", piece.label, piece.count));
        }
    }
    for (sheet, &taken) in job.sheets.iter().zip(&taken) {
        if sheet.count.is_some_and(|count| taken > count) {
            faults.push(format!("{}: {taken} used, there are fewer", sheet.label));
        }
    }
    if plan.missing() == 0 && plan.sheets.len() < plan.bounds.sheets() {
        faults.push("fewer sheets than the lower bound".to_owned());
    }
    faults
}

/// Whole thousandths of a millimetre.
fn unit(mm: f64) -> i64 {
    (mm * 1000.0).round() as i64
}

/// Left, lower, right and upper edge.
fn whole(rect: &Rect) -> [i64; 4] {
    let (x, y) = (unit(rect.x), unit(rect.y));
    [x, y, x + unit(rect.width), y + unit(rect.height)]
}

/// Size and direction of one piece.
fn shape(job: &Job, sheet: &SheetPlan, piece: usize, rect: &Rect, turned: bool) -> Option<String> {
    let piece = &job.pieces[piece];
    let mut size = [unit(piece.width), unit(piece.height)];
    if turned {
        size.reverse();
    }
    if size != [unit(rect.width), unit(rect.height)] {
        return Some(format!("{} has another size than wanted", piece.label));
    }
    let along = |grain: Grain, turned: bool| (grain == Grain::AlongWidth) != turned;
    let grain = job.sheets[sheet.sheet].grain;
    if grain != Grain::None && piece.grain != Grain::None {
        let fits = along(piece.grain, turned) == along(grain, false);
        return (!fits).then(|| format!("{} lies across the grain", piece.label));
    }
    (turned && !piece.may_turn).then(|| format!("{} is turned and must not be", piece.label))
}

/// Trim, gaps, and offcuts.
fn places(job: &Job, sheet: &SheetPlan, say: &mut dyn FnMut(String)) {
    let of = &job.sheets[sheet.sheet];
    let (trim, gap) = (unit(job.rules.trim), unit(job.rules.gap));
    let (right, top) = (unit(of.width) - trim, unit(of.height) - trim);
    let pieces = sheet.placed.iter().map(|placed| (job.pieces[placed.piece].label.as_str(), whole(&placed.rect)));
    let offcuts = sheet.offcuts.iter().map(|rect| ("an offcut", whole(rect)));
    let all: Vec<(&str, [i64; 4])> = pieces.chain(offcuts).collect();
    for (index, (label, a)) in all.iter().enumerate() {
        if a[0] < trim || a[1] < trim || a[2] > right || a[3] > top {
            say(format!("{label} reaches into the trim"));
        }
        for (at, (other, b)) in all[..index].iter().enumerate() {
            let lies_in = |a: usize, b: usize| sheet.placed.get(a).is_some_and(|placed| placed.inside == Some(b));
            if lies_in(index, at) || lies_in(at, index) {
                continue;
            }
            let apart = (b[0] - a[2]).max(a[0] - b[2]).max(b[1] - a[3]).max(a[1] - b[3]);
            if apart < gap {
                say(format!("{label} and {other} are too close"));
            }
        }
    }
    if sheet.offcuts.iter().any(|rect| rect.width < OFFCUT || rect.height < OFFCUT) {
        say("an offcut is too small to keep".to_owned());
    }
}

/// Whether what lies in an opening really does.
fn nested(job: &Job, sheet: &SheetPlan, say: &mut dyn FnMut(String)) {
    for placed in &sheet.placed {
        let Some(host) = placed.inside else { continue };
        let label = &job.pieces[placed.piece].label;
        let Some(host) = sheet.placed.get(host).filter(|host| host.inside.is_none()) else {
            say(format!("{label} lies in nothing, or in a piece that lies in another"));
            continue;
        };
        let ([x0, y0, x1, y1], [left, lower, _, upper]) = (whole(&placed.rect), whole(&host.rect));
        // Back into the host's own directions.
        let seen = if host.turned {
            [y0 - lower, whole(&host.rect)[2] - x1, y1 - lower, whole(&host.rect)[2] - x0]
        } else {
            [x0 - left, y0 - lower, x1 - left, y1 - lower]
        };
        let holds = |opening: &Rect| {
            let room = whole(opening);
            room[0] <= seen[0] && room[1] <= seen[1] && room[2] >= seen[2] && room[3] >= seen[3]
        };
        if !job.pieces[host.piece].openings.iter().any(holds) || y1 > upper {
            say(format!("{label} does not lie within an opening of {}", job.pieces[host.piece].label));
        }
        if job.rules.method == Method::Guillotine {
            say(format!("{label} lies in an opening, where no straight cut reaches"));
        }
    }
}

/// Whether straight cuts of the gap's width part all rectangles: some cut leaves whole pieces on both sides, and each
/// side can be parted in turn.
#[must_use]
pub fn sawable(rects: &[[i64; 4]], gap: i64) -> bool {
    if rects.len() < 2 {
        return true;
    }
    for axis in [0, 1] {
        for line in rects.iter().map(|rect| rect[axis + 2]) {
            let (before, after): (Vec<[i64; 4]>, Vec<[i64; 4]>) = rects.iter().partition(|rect| rect[axis + 2] <= line);
            if !after.is_empty() && after.iter().all(|rect| rect[axis] >= line + gap) {
                return sawable(&before, gap) && sawable(&after, gap);
            }
        }
    }
    false
}

/// Makes the cuts one after the other on a sheet of numbers and looks at what comes out.
fn sawn(job: &Job, sheet: &SheetPlan, say: &mut dyn FnMut(String)) {
    let of = &job.sheets[sheet.sheet];
    let (trim, gap) = (unit(job.rules.trim), unit(job.rules.gap));
    let mut plates = vec![(1, [0, 0, unit(of.width), unit(of.height)])];
    let mut pieces = vec![false; sheet.placed.len()];
    let mut offcuts = vec![false; sheet.offcuts.len()];
    let trims = if trim > 0 { 4 } else { 0 };
    let mut out = Vec::new();
    for (number, cut) in sheet.cuts.iter().enumerate() {
        let Some(at) = plates.iter().position(|plate| plate.0 == cut.plate) else {
            say(format!("cut {} is in a plate that is not there", number + 1));
            return;
        };
        let (_, plate) = plates.swap_remove(at);
        // The trim holds the kerf of its own cut.
        let kerf = if number < trims { 0 } else { gap };
        let distance = unit(cut.distance);
        let (mut off, mut rest) = (plate, plate);
        match cut.from {
            Edge::Left => (off[2], rest[0]) = (plate[0] + distance, plate[0] + distance + kerf),
            Edge::Right => (off[0], rest[2]) = (plate[2] - distance, plate[2] - distance - kerf),
            Edge::Bottom => (off[3], rest[1]) = (plate[1] + distance, plate[1] + distance + kerf),
            Edge::Top => (off[1], rest[3]) = (plate[3] - distance, plate[3] - distance - kerf),
        }
        let across = usize::from(matches!(cut.from, Edge::Left | Edge::Right));
        if unit(cut.length) != plate[2 + across] - plate[across] || off[2] > plate[2] || off[3] > plate[3] {
            say(format!("cut {} does not go from edge to edge", number + 1));
        }
        out.extend([(cut.off, off), (cut.rest, rest)]);
        for (part, rect) in [(cut.off, off), (cut.rest, rest)] {
            if let Part::Plate(number) = part {
                plates.push((number, rect));
            }
        }
    }
    if sheet.cuts.is_empty() {
        // The sheet itself is the piece.
        out.push((Part::Piece(0), plates.remove(0).1));
    }
    for (part, rect) in out {
        let empty = rect[2] <= rect[0] || rect[3] <= rect[1];
        let right = match part {
            Part::Piece(index) => {
                pieces[index] = true;
                rect == whole(&sheet.placed[index].rect)
            }
            Part::Offcut(index) => {
                offcuts[index] = true;
                rect == whole(&sheet.offcuts[index])
            }
            Part::Dust => empty,
            Part::Waste | Part::Plate(_) => !empty,
        };
        if !right {
            say(format!("the cuts give {part:?} the wrong size: {rect:?}"));
        }
    }
    if !plates.is_empty() || pieces.contains(&false) || offcuts.contains(&false) {
        say("the cuts do not free everything".to_owned());
    }
}
