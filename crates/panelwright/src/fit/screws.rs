//! Screws: their length, their points, and what is in their way.
//!
//! Alike screws that fail alike give one finding with their number.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::screw_remedy::remedy;
use super::words;
use crate::dimensions::source::{Source, Sourced};
use crate::fastening::Screw;
use crate::parts::{Part, PartKind};
use crate::solid::{Aabb, TOUCH_MM, by_axis};

/// Distance wanted between a screw's point and what lies before it, and between a point and the face it must not
/// come through, mm.
const POINT_AIR: Sourced<f64> =
    Sourced::new(1.0, Source::common_practice("Workshop custom", "screws differ in length by a few tenths"));

pub(super) const SCREW_LENGTH: Rule = Rule {
    name: "screw-length",
    what: "Every screw is sold in a length that holds and does not reach too far.",
    source: Source::published("ISO 888, ISO 4762", "lengths sold and their tolerance"),
    look: screw_length,
};

pub(super) const SCREW_POINTS_OUT: Rule = Rule {
    name: "screw-points-out",
    what: "No screw comes through the face of a panel from inside.",
    source: POINT_AIR.source(),
    look: screw_points_out,
};

pub(super) const SCREW_HITS_PART: Rule = Rule {
    name: "screw-hits-part",
    what: "No screw runs into a part, bracket or panel that it does not join.",
    source: Source::derived("Geometry of the design", "two solids cannot share space"),
    look: screw_hits_part,
};

pub(super) const SCREW_HITS_SCREW: Rule = Rule {
    name: "screw-hits-screw",
    what: "No two screws run into each other.",
    source: Source::derived("Geometry of the design", "two solids cannot share space"),
    look: screw_hits_screw,
};

/// The axis a screw lies along.
fn axis(screw: &Screw) -> usize {
    (0..3).max_by(|a, b| screw.direction[*a].abs().total_cmp(&screw.direction[*b].abs())).unwrap_or(2)
}

fn point(screw: &Screw) -> Option<[f64; 3]> {
    let length = screw.length_mm?;
    Some(by_axis(|axis| screw.head_at[axis] + length * screw.direction[axis]))
}

/// The box around a screw from under its head to its point; `None` without a length.
pub(super) fn shank(screw: &Screw) -> Option<Aabb> {
    let mut solid = Aabb::new(screw.head_at, point(screw)?);
    let along = axis(screw);
    for across in (0..3).filter(|across| *across != along) {
        solid.min[across] -= screw.diameter_mm / 2.0;
        solid.max[across] += screw.diameter_mm / 2.0;
    }
    Some(solid)
}

/// How far a screw, a cylinder, goes into a box: along its axis, and how deep from the side.
fn into(screw: &Screw, shank: &Aabb, solid: &Aabb) -> Option<(f64, f64)> {
    let along = axis(screw);
    let shared = shank.overlap_by_axis(solid)[along];
    let mut squares = 0.0;
    for across in (0..3).filter(|across| *across != along) {
        let outside =
            (solid.min[across] - screw.head_at[across]).max(screw.head_at[across] - solid.max[across]).max(0.0);
        squares += outside * outside;
    }
    let depth = screw.diameter_mm / 2.0 - f64::sqrt(squares);
    (shared > TOUCH_MM && depth > TOUCH_MM).then_some((shared, depth))
}

fn joins(screw: &Screw, id: &str) -> bool {
    screw.joins.iter().any(|joined| joined == id)
}

/// Adds a finding, or one more screw to a finding about the same kind of screw.
struct Groups(Vec<(String, usize, Finding)>);

impl Groups {
    fn add(&mut self, key: String, about: &[&str], finding: impl FnOnce() -> Finding) {
        match self.0.iter_mut().find(|(known, ..)| *known == key) {
            Some((_, count, known)) => {
                *count += 1;
                let grown = std::mem::replace(known, SCREW_LENGTH.note(""));
                *known = grown.with_about(about);
            }
            None => self.0.push((key, 1, finding().with_about(about))),
        }
    }

    fn finish(self, found: &mut Vec<Finding>) {
        for (_, count, mut finding) in self.0 {
            if count > 1 {
                finding.text = format!("{} ({count} alike.)", finding.text);
            }
            found.push(finding);
        }
    }
}

fn screw_length(scene: &Scene, found: &mut Vec<Finding>) {
    let mut groups = Groups(Vec::new());
    for screw in scene.case.screws {
        let least = screw.least_mm;
        let (what, measured, needed) = match screw.length_mm {
            None => ("no length sold fits".to_owned(), screw.most_mm.unwrap_or(least), least),
            Some(length) if length < least - TOUCH_MM => {
                (format!("{} is too short", words::limit(length)), length, least)
            }
            Some(length) => match screw.most_mm.filter(|most| length > most + TOUCH_MM) {
                Some(most) => (format!("{} is too long", words::limit(length)), length, most),
                None => continue,
            },
        };
        let range = match screw.most_mm {
            Some(most) => format!("{} to {}", words::bare(least), words::limit(most)),
            None => format!("{} or more", words::limit(least)),
        };
        let text = format!("{}: {what}, it must be {range}.", words::capital(&words::screw(screw)));
        groups.add(format!("{} {text}", screw.what), &[&screw.id], || {
            SCREW_LENGTH
                .blocks(text)
                .with_mm(measured, needed)
                .with_remedy(remedy(scene, screw, &range))
                .with_about(&screw.joins)
                .with_at(screw.head_at)
                .with_source(screw.source)
        });
    }
    groups.finish(found);
}

fn screw_points_out(scene: &Scene, found: &mut Vec<Finding>) {
    let mut groups = Groups(Vec::new());
    for screw in scene.case.screws.iter().filter(|screw| !screw.nut) {
        let (Some(tip), Some(length)) = (point(screw), screw.length_mm) else { continue };
        if ends_in_its_part(scene, screw, tip) {
            continue;
        }
        for sheet in scene.sheets.iter().filter(|sheet| joins(screw, sheet.id())) {
            let (_, tip_out) = sheet.panel.frame.to_panel(tip);
            let (_, head_out) = sheet.panel.frame.to_panel(screw.head_at);
            // Only screws from inside point at a face.
            if tip_out <= head_out || head_out > -TOUCH_MM {
                continue;
            }
            let left = -tip_out;
            if left >= POINT_AIR.get() - TOUCH_MM {
                continue;
            }
            let (name, panel) = (words::capital(&words::screw(screw)), words::the_panel(sheet.wall()));
            let blocks = left < -TOUCH_MM;
            groups.add(format!("{} {} {blocks}", screw.what, sheet.id()), &[&screw.id], || {
                let finding = if blocks {
                    SCREW_POINTS_OUT
                        .blocks(format!("{name} comes {} out of the face of {panel}.", words::short(-left)))
                        .with_mm(left, 0.0)
                } else {
                    SCREW_POINTS_OUT
                        .caution(format!(
                            "{name} ends {} under the face of {panel}; keep {}.",
                            words::mm(left.max(0.0)),
                            words::limit(POINT_AIR.get())
                        ))
                        .with_mm(left, POINT_AIR.get())
                };
                finding
                    .with_remedy(format!(
                        "Take a screw of {} or less.",
                        words::at_most(length - POINT_AIR.get() + left)
                    ))
                    .with_about([sheet.id()])
                    .with_at(tip)
            });
        }
    }
    groups.finish(found);
}

/// Whether a screw's point lies in a part it joins: a pad outside a panel takes the point in.
fn ends_in_its_part(scene: &Scene, screw: &Screw, tip: [f64; 3]) -> bool {
    let holds = |body: &Aabb| (0..3).all(|axis| body.min[axis] <= tip[axis] && tip[axis] <= body.max[axis]);
    scene.case.parts.iter().filter(|part| joins(screw, &part.id)).any(|part| part.bodies.iter().any(holds))
}

/// Whether a screw may pass a part that it does not name: washers go round screws.
fn may_pass(screw: &Screw, part: &Part) -> bool {
    part.kind == PartKind::Washer || joins(screw, &part.id)
}

fn screw_hits_part(scene: &Scene, found: &mut Vec<Finding>) {
    let mut groups = Groups(Vec::new());
    for screw in scene.case.screws {
        let (Some(shank), Some(tip)) = (shank(screw), point(screw)) else { continue };
        let along = axis(screw);
        let mut beyond = shank;
        if screw.direction[along] > 0.0 {
            beyond.max[along] += POINT_AIR.get()
        } else {
            beyond.min[along] -= POINT_AIR.get()
        }
        let name = || words::capital(&words::screw(screw));
        for (part, bounds) in scene.case.parts.iter().zip(&scene.bounds) {
            if !beyond.overlaps(bounds) || may_pass(screw, part) {
                continue;
            }
            let hit =
                part.bodies.iter().filter_map(|body| into(screw, &shank, body)).max_by(|a, b| a.0.total_cmp(&b.0));
            if let Some((deep, _)) = hit {
                groups.add(format!("{} {} blocks", screw.what, part.id), &[&screw.id], || {
                    let what = words::part(part);
                    SCREW_HITS_PART
                        .blocks(format!("{} runs {} into {what}.", name(), words::short(deep)))
                        .with_mm(-deep, 0.0)
                        .with_remedy(format!("Move {what} or the screw, or take a shorter screw."))
                        .with_about([&part.id])
                        .with_at(tip)
                });
                continue;
            }
            if part.bodies.iter().any(|body| into(screw, &beyond, body).is_some()) {
                groups.add(format!("{} {} caution", screw.what, part.id), &[&screw.id], || {
                    let what = words::part(part);
                    let gap = part
                        .bodies
                        .iter()
                        .filter(|body| into(screw, &beyond, body).is_some())
                        .map(|body| -shank.overlap_by_axis(body)[along])
                        .fold(f64::INFINITY, f64::min);
                    SCREW_HITS_PART
                        .caution(format!(
                            "{} ends {} before {what}; keep {}.",
                            name(),
                            words::mm(gap.max(0.0)),
                            words::limit(POINT_AIR.get())
                        ))
                        .with_mm(gap, POINT_AIR.get())
                        .with_remedy(format!("Take a shorter screw, or move {what}."))
                        .with_about([&part.id])
                        .with_at(tip)
                        .with_source(POINT_AIR.source())
                });
            }
        }
        for sheet in scene.sheets.iter().filter(|sheet| sheet.solid.overlaps(&shank) && !joins(screw, sheet.id())) {
            let Some((deep, _)) = into(screw, &shank, &sheet.solid) else { continue };
            // Through an opening large enough for it a screw may pass.
            if sheet.crossing(&shank, |feature| feature.blind.is_none()) <= 0.0 {
                continue;
            }
            groups.add(format!("{} {} panel", screw.what, sheet.id()), &[&screw.id], || {
                let panel = words::the_panel(sheet.wall());
                SCREW_HITS_PART
                    .blocks(format!("{} runs into {panel}, where no hole is made for it.", name()))
                    .with_mm(-deep, 0.0)
                    .with_remedy("Move the screw, or take a shorter one.")
                    .with_about([sheet.id()])
                    .with_at(tip)
            });
        }
    }
    groups.finish(found);
}

/// How deep two screws go into each other; 0 when they do not.
fn meet(one: &Screw, a: &Aabb, other: &Screw, b: &Aabb) -> f64 {
    if axis(one) != axis(other) {
        // Crossing cylinders meet where their boxes do, up to the corners at the points.
        return a.overlap_depth(b);
    }
    let along = axis(one);
    let squares: f64 = (0..3)
        .filter(|across| *across != along)
        .map(|across| one.head_at[across] - other.head_at[across])
        .map(|apart| apart * apart)
        .sum();
    let depth = (one.diameter_mm + other.diameter_mm) / 2.0 - f64::sqrt(squares);
    if a.overlap_by_axis(b)[along] > TOUCH_MM && depth > TOUCH_MM { depth } else { 0.0 }
}

fn screw_hits_screw(scene: &Scene, found: &mut Vec<Finding>) {
    let shanks: Vec<(&Screw, Aabb)> =
        scene.case.screws.iter().filter_map(|screw| shank(screw).map(|solid| (screw, solid))).collect();
    let mut groups = Groups(Vec::new());
    for (index, (one, a)) in shanks.iter().enumerate() {
        for (other, b) in &shanks[index + 1..] {
            let depth = if a.overlaps(b) { meet(one, a, other, b) } else { 0.0 };
            if depth <= 0.0 {
                continue;
            }
            groups.add(format!("{} {}", one.what, other.what), &[&one.id, &other.id], || {
                SCREW_HITS_SCREW
                    .blocks(format!(
                        "{} and {} meet: they share {}.",
                        words::capital(&words::screw(one)),
                        words::screw(other),
                        words::short(depth)
                    ))
                    .with_mm(-depth, 0.0)
                    .with_remedy("Move one of them along the edge, or take shorter screws.")
                    .with_at(point(one).unwrap_or(one.head_at))
            });
        }
    }
    groups.finish(found);
}
