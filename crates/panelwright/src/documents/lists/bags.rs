//! Kit bags: everything small, counted into bags by the step that uses it.
//!
//! Invariant: the bags of a case hold exactly its fasteners, nothing more or less: screws go by what they join, their
//! nuts and washers with them; brackets by their name; the rest by what it is.

use super::table::{Cell, Table};
use crate::Build;
use crate::fastening::{Fastener, nut_name, washer_name};
use crate::parts::PartKind;

/// What a bag is for, in the order in which the bags are opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    Chassis,
    Feet,
    Board,
    Supply,
    Drives,
    Card,
    Fans,
    Front,
    Sleeve,
    Holding,
}

impl Step {
    const ALL: [Self; 10] = [
        Self::Chassis,
        Self::Feet,
        Self::Board,
        Self::Supply,
        Self::Drives,
        Self::Card,
        Self::Fans,
        Self::Front,
        Self::Sleeve,
        Self::Holding,
    ];

    const fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::Chassis => ("Chassis", "Join the floor and the back."),
            Self::Feet => ("Feet", "Put the feet on the floor."),
            Self::Board => ("Board", "Screw the standoffs to the floor, then the board to them."),
            Self::Supply => ("Supply", "Screw the supply to its panel."),
            Self::Drives => ("Drives", "Screw the drives down from outside."),
            Self::Card => ("Card", "Put up what holds the card, then the card."),
            Self::Fans => ("Fans", "Screw the fans to their panels."),
            Self::Front => ("Front connectors", "Screw the sockets into their panel."),
            Self::Sleeve => ("Sleeve", "Join left, right, front and top."),
            Self::Holding => ("Holding the sleeve", "Put on the captive nuts, slide the sleeve over, screw it tight."),
        }
    }
}

/// A bag with what is in it, for one case.
#[derive(Clone, Debug, PartialEq)]
pub struct Bag {
    /// Letter on its label.
    pub letter: char,
    /// What stands on its label.
    pub label: &'static str,
    /// The step that uses it.
    pub step: &'static str,
    /// What is in it.
    pub lines: Vec<BagLine>,
}

/// One kind of thing in a bag.
#[derive(Clone, Debug, PartialEq)]
pub struct BagLine {
    /// What, with the same words as in `build.json`.
    pub what: String,
    /// Length.
    pub length_mm: Option<f64>,
    /// How many for one case.
    pub count: usize,
}

/// The bags of one case; empty ones are left out. The last holds the panels themselves.
#[must_use]
pub fn bags(build: &Build) -> Vec<Bag> {
    let mut filled: [Vec<BagLine>; 10] = Default::default();
    let mut put = |step: Step, what: &str, length_mm: Option<f64>, count: usize| {
        let lines = &mut filled[step as usize];
        match lines.iter_mut().find(|line| line.what == what && line.length_mm == length_mm) {
            Some(line) => line.count += count,
            None if count > 0 => lines.push(BagLine { what: what.to_owned(), length_mm, count }),
            None => {}
        }
    };
    // What is still to be shared out.
    let mut left: Vec<Fastener> = build.fasteners.clone();
    let mut take = |what: &str, length_mm: Option<f64>, count: usize| -> usize {
        let line = left.iter_mut().find(|line| line.what == what && line.length_mm == length_mm);
        line.map_or(0, |line| {
            let taken = count.min(line.count);
            line.count -= taken;
            taken
        })
    };
    for screw in &build.screws {
        let step = step_of(screw.joins.iter().map(String::as_str));
        let nuts = usize::from(screw.nut);
        for (what, length, count) in [
            (screw.what.clone(), screw.length_mm, 1),
            (nut_name(screw.thread), None, nuts),
            (washer_name(screw.thread), None, usize::from(screw.washers)),
        ] {
            let taken = take(&what, length, count);
            put(step, &what, length, taken);
        }
    }
    for part in &build.parts {
        let (name, leg) = match part.kind {
            PartKind::Bracket => ("Corner bracket", build.spec.hardware.bracket.leg_mm),
            PartKind::CaptiveNut => ("Captive-nut bracket", build.spec.hardware.captive.leg_mm),
            _ => continue,
        };
        let taken = take(name, Some(leg), 1);
        put(step_of([part.id.as_str()]), name, Some(leg), taken);
    }
    for line in &left {
        put(step_of_rest(build, line), &line.what, line.length_mm, line.count);
    }
    let mut bags = Vec::new();
    let mut letters = 'A'..='Z';
    for (step, lines) in Step::ALL.into_iter().zip(filled) {
        if lines.is_empty() {
            continue;
        }
        if let Some(letter) = letters.next() {
            let (label, step) = step.words();
            bags.push(Bag { letter, label, step, lines });
        }
    }
    if let Some(letter) = letters.next() {
        let lines = build
            .panels
            .iter()
            .map(|panel| BagLine { what: panel.label.to_owned(), length_mm: None, count: 1 })
            .collect();
        bags.push(Bag { letter, label: PANELS, step: "Cut, drill and finish before the first bag is opened.", lines });
    }
    bags
}

/// Label of the bag with the panels.
pub(super) const PANELS: &str = "Panels";

/// The step in which something is used, by the names of what it joins.
fn step_of<'a>(joins: impl IntoIterator<Item = &'a str>) -> Step {
    let mut step = Step::Sleeve;
    for id in joins {
        let starts = |start: &str| id.starts_with(start);
        let found = if starts("captive-") {
            Step::Holding
        } else if starts("bracket-tongue") || starts("card") || id == "shelf" {
            Step::Card
        } else if starts("bracket-floor-back") {
            Step::Chassis
        } else if starts("foot-") {
            Step::Feet
        } else if starts("standoff-") || id == "board" {
            Step::Board
        } else if id == "supply" {
            Step::Supply
        } else if starts("drive-") {
            Step::Drives
        } else if starts("fan-") {
            Step::Fans
        } else if starts("port-") || starts("button") {
            Step::Front
        } else {
            continue;
        };
        step = found;
    }
    step
}

/// The step of what neither belongs to a screw nor is a bracket.
fn step_of_rest(build: &Build, line: &Fastener) -> Step {
    let what = line.what.as_str();
    if what.contains("standoff") {
        Step::Board
    } else if what.contains("under a drive") {
        Step::Drives
    } else if what.starts_with("Pad") {
        Step::Feet
    } else if what.starts_with("Locating block") {
        let chassis = line.joins.iter().all(|id| id == "floor" || id == "back");
        if chassis { Step::Chassis } else { Step::Sleeve }
    } else if build.screws.iter().any(|screw| {
        let thread = screw.thread;
        step_of(screw.joins.iter().map(String::as_str)) == Step::Feet
            && (what == nut_name(thread) || what == washer_name(thread))
    }) {
        Step::Feet
    } else if what.contains("washer") {
        // What sets the tongue's bracket off the back.
        Step::Card
    } else {
        step_of(line.joins.iter().map(String::as_str))
    }
}

pub(super) fn table(build: &Build, bags: &[Bag]) -> Table {
    let mut table =
        Table::new("bags", "Kit bags", &["bag", "label", "what", "#length, mm", "#in each bag", "#in all", "step"]);
    let cases = build.spec.prices.cases as usize;
    for bag in bags {
        for line in &bag.lines {
            table.rows.push(vec![
                Cell::text(bag.letter),
                Cell::text(bag.label),
                Cell::text(line.what.as_str()),
                line.length_mm.map_or(Cell::Empty, |length| Cell::number(length, 4)),
                Cell::count(line.count),
                Cell::count(line.count * cases),
                Cell::text(bag.step),
            ]);
        }
    }
    table.notes.push("Counted without spares, which go into a bag of their own.".to_owned());
    table
}
