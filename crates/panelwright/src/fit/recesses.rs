//! Recesses and openings that lie where another part's cut or another panel's edge is.

use super::finding::{Finding, Severity};
use super::moves::{from_another, from_edge};
use super::rule::Rule;
use super::scene::{Scene, Shape, face, outward};
use super::web_between::{apart, web};
use super::web_limits::WORKSHOP;
use super::webs::{Thin, add, id, name, owner, two};
use super::words;
use crate::dimensions::sheets::WEB_MIN_FIBREBOARD;
use crate::dimensions::source::Source;
use crate::panels::Purpose;
use crate::solid::TOUCH_MM;

pub(super) const RECESS_MEETS_OPENING: Rule = Rule {
    name: "recess-meets-opening",
    what: "No counterbore or rebate runs into another part's hole or opening.",
    source: WORKSHOP,
    look: recesses,
};

pub(super) const OPENING_OVER_EDGE: Rule = Rule {
    name: "opening-over-edge",
    what: "No opening lies over the edge of the panel behind it.",
    source: Source::derived("Geometry of the design", "where panels meet"),
    look: openings_over_edges,
};

fn recesses(scene: &Scene, found: &mut Vec<Finding>) {
    for sheet in &scene.sheets {
        for recess in sheet.shapes.iter().filter(|shape| shape.feature.blind.is_some()) {
            for other in &sheet.shapes {
                let itself = std::ptr::eq(recess, other);
                let joints = [recess, other].iter().all(|shape| shape.feature.purpose == Purpose::JointRebate);
                let seen_before = other.feature.blind.is_some() && other.feature.id <= recess.feature.id;
                if itself
                    || joints
                    || seen_before
                    || belong(recess, other)
                    || apart(&recess.bounds, &other.bounds) >= 0.0
                {
                    continue;
                }
                if web(recess, other) > TOUCH_MM {
                    continue;
                }
                let both = words::capital(&two(recess, other));
                found.push(
                    RECESS_MEETS_OPENING
                        .caution(format!("{both} run into each other in {}.", words::the_panel(sheet.wall())))
                        .with_mm(0.0, WEB_MIN_FIBREBOARD.get())
                        .with_mends(from_another(scene, sheet, recess, other, WEB_MIN_FIBREBOARD.get()))
                        .with_about([sheet.id().to_owned(), id(sheet, recess), id(sheet, other)])
                        .with_at(sheet.panel.frame.to_case(other.feature.centre, 0.0)),
                );
            }
        }
    }
}

/// Whether a recess is made for the same thing as a hole or opening.
fn belong(recess: &Shape, other: &Shape) -> bool {
    let shares = recess.feature.about.iter().any(|about| other.feature.about.contains(about));
    let named = |one: &Shape, other: &Shape| one.feature.about.contains(&other.feature.id);
    shares || named(recess, other) || named(other, recess) || recess.feature.id.starts_with(&other.feature.id)
}

/// How near behind a panel another's edge must lie to close an opening, mm: a sliding gap and its finishes (common
/// practice).
const BEHIND_MM: f64 = 2.0;

fn openings_over_edges(scene: &Scene, found: &mut Vec<Finding>) {
    let mut list: Vec<Thin> = Vec::new();
    for sheet in &scene.sheets {
        let (axis, sense) = outward(sheet.wall());
        let inside = face(&sheet.solid, axis, -sense);
        for behind in scene.sheets.iter().filter(|other| other.wall() != sheet.wall()) {
            let gap = (inside - face(&behind.solid, axis, sense)) * sense;
            if !(-TOUCH_MM..=BEHIND_MM).contains(&gap) {
                continue;
            }
            let edge = sheet.shadow(&behind.solid);
            for shape in sheet.shapes.iter().filter(|shape| {
                // A tab's slot is there because the other's edge lies behind it.
                shape.is_through() && !shape.is_hole() && shape.feature.purpose != Purpose::JointSlot
            }) {
                let meet = shape.bounds.intersect(edge);
                if meet.width() <= TOUCH_MM || meet.height() <= TOUCH_MM {
                    continue;
                }
                add(
                    &mut list,
                    Thin {
                        key: format!("{} {} {}", sheet.id(), behind.id(), owner(shape)),
                        severity: Severity::Caution,
                        count: 1,
                        web: -meet.width().min(meet.height()),
                        needed: 0.0,
                        source: OPENING_OVER_EDGE.source,
                        about: vec![sheet.id().to_owned(), id(sheet, shape), behind.id().to_owned()],
                        at: sheet.panel.frame.to_case(meet.center(), 0.0),
                        between: format!(
                            "{} in {} lies {} over the edge of {}",
                            name(shape),
                            words::the_panel(sheet.wall()),
                            words::short(meet.width().min(meet.height())),
                            words::the_panel(behind.wall())
                        ),
                        remedy: from_edge(scene, sheet, shape, meet.center(), [0.0, meet.width().min(meet.height())])
                            .say("leave it out"),
                    },
                );
            }
        }
    }
    for thin in list {
        let more = if thin.count > 1 { format!(" ({} alike.)", thin.count) } else { String::new() };
        found.push(
            OPENING_OVER_EDGE
                .caution(format!("{}.{more}", words::capital(&thin.between)))
                .with_mm(thin.web, thin.needed)
                .with_mends(thin.remedy)
                .with_about(thin.about)
                .with_at(thin.at),
        );
    }
}
