//! What is not known, only recalled, or not measured: said plainly, so that nothing is drilled on a guess.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::{Scene, Shape, Sheet};
use super::words;
use crate::design::{FanSide, Material, SupplyKind};
use crate::dimensions::fans::SPACINGS_OF_200;
use crate::dimensions::sheets::{self, real_thickness};
use crate::dimensions::source::{Confidence, Source};
use crate::panels::Purpose;
use crate::parts::{PartKind, board};

pub(super) const SUPPLY_HOLES_UNKNOWN: Rule = Rule {
    name: "supply-holes-unknown",
    what: "Holes of supplies other than the full-size one are drilled only when measured.",
    source: Source::from_memory("ATX power supply design guides", "no drawing of SFX, TFX and Flex faces was found"),
    look: supply_holes_unknown,
};

pub(super) const SUPPLY_FAN_UNKNOWN: Rule = Rule {
    name: "supply-fan-unknown",
    what: "Which long side of a supply carries its fan must be looked up.",
    source: Source::from_memory("Trade sizes", "which of the two large sides is not standardised"),
    look: supply_fan_unknown,
};

pub(super) const FAN_HOLES_UNKNOWN: Rule = Rule {
    name: "fan-holes-unknown",
    what: "Fans without a common hole pattern are drilled only when measured.",
    source: SPACINGS_OF_200.source(),
    look: fan_holes_unknown,
};

pub(super) const JACK_HOLE_UNKNOWN: Rule = Rule {
    name: "jack-hole-unknown",
    what: "The hole for the jack of an external brick is drilled only when measured.",
    source: Source::from_memory("Trade sizes", "threaded jacks of 8 to 12 mm"),
    look: jack_hole_unknown,
};

pub(super) const SOCKET_ASSUMED: Rule = Rule {
    name: "socket-assumed",
    what: "No standard fixes the processor's place on the board.",
    source: Source::published("ATX Specification 2.2", "section 3.3.7: a recommendation only"),
    look: socket_assumed,
};

pub(super) const SHEET_NOT_MEASURED: Rule = Rule {
    name: "sheet-not-measured",
    what: "Every panel follows from the sheet's real thickness.",
    source: Source::common_practice("Workshop custom", "sheet is rarely as thick as its label says"),
    look: sheet_not_measured,
};

pub(super) const HOLE_FROM_MEMORY: Rule = Rule {
    name: "hole-from-memory",
    what: "Holes and openings whose size or place is recalled, not read, are named.",
    source: Source::from_memory("Trade sizes", "measure yours"),
    look: hole_from_memory,
};

pub(super) const MATERIAL: Rule = Rule {
    name: "material",
    what: "Sheets other than fibreboard ask for care of their own.",
    source: Source::common_practice("Workshop custom", "acrylic cracks, plywood and hardboard differ in thickness"),
    look: material,
};

fn supply_holes_unknown(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = &scene.case.spec.supply;
    if matches!(spec.kind, SupplyKind::FullSize | SupplyKind::Brick) || !spec.holes.is_empty() {
        return;
    }
    let mut finding = SUPPLY_HOLES_UNKNOWN
        .note(if spec.opening.is_some() {
            "The screw holes of this supply are not published. None is drilled."
        } else {
            "The screw holes of this supply are not published. None is drilled, and no opening cut."
        })
        .with_remedy("Measure the holes and the opening in your supply's face and enter them.")
        .with_about(["supply"]);
    if let Some(place) = &scene.case.arrangement.supply {
        finding = finding
            .with_about([place.wall.name()])
            .with_at(place.face.to_case(kurbo::Point::new(place.size_mm[0] / 2.0, place.size_mm[1] / 2.0), 0.0));
    }
    found.push(finding);
}

fn supply_fan_unknown(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = &scene.case.spec.supply;
    if spec.kind == SupplyKind::Brick || spec.fan_side != FanSide::Unknown {
        return;
    }
    let at = scene.first(PartKind::Supply).map(|part| part.bounds().centre());
    let mut finding = SUPPLY_FAN_UNKNOWN
        .note("Nobody says which long side the supply's fan is on. Its air is not checked.")
        .with_remedy("Look at your supply and choose the side.")
        .with_about(["supply"]);
    finding.at = at;
    found.push(finding);
}

fn fan_holes_unknown(scene: &Scene, found: &mut Vec<Finding>) {
    for place in scene.case.arrangement.fans.iter().filter(|place| place.spacing_mm.is_none()) {
        let frame = scene.sheet(place.at.wall).map(|sheet| sheet.panel.frame.to_case(place.at.centre, 0.0));
        let mut finding = FAN_HOLES_UNKNOWN
            .note(format!(
                "Fans of {} follow no common pattern. No screw hole is drilled for fan {}.",
                words::limit(place.size_mm),
                place.number
            ))
            .with_remedy("Measure the spacing of your fan's holes and enter it.")
            .with_about([format!("fan-{}", place.number), place.at.wall.name().to_owned()]);
        finding.at = frame;
        found.push(finding);
    }
}

fn jack_hole_unknown(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = &scene.case.spec.supply;
    if spec.kind != SupplyKind::Brick || spec.jack_hole_mm.is_some() {
        return;
    }
    let mut finding = JACK_HOLE_UNKNOWN
        .note("The jack of your brick is not known. No hole is drilled for it.")
        .with_remedy("Measure its thread and enter the hole.")
        .with_about(["jack", "back"]);
    finding.at = scene.first(PartKind::Jack).map(|part| part.bounds().centre());
    found.push(finding);
}

/// What to do first where a cooler is in the way and nobody has measured where the processor sits.
pub(super) fn measure_socket(scene: &Scene) -> Option<String> {
    let board = &scene.case.spec.board;
    let measured = board.socket_from_right_mm.is_some() && board.socket_from_rear_mm.is_some();
    (!measured).then(|| "measure where the processor sits on your board and enter it".to_owned())
}

fn socket_assumed(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = &scene.case.spec.board;
    let Some(cooler) = scene.first(PartKind::Cooler) else { return };
    if spec.socket_from_right_mm.is_some() && spec.socket_from_rear_mm.is_some() {
        return;
    }
    let [right, rear] = board::ASSUMED_SOCKET_MM;
    let right = spec.socket_from_right_mm.unwrap_or(right);
    let rear = spec.socket_from_rear_mm.unwrap_or(rear);
    found.push(
        SOCKET_ASSUMED
            .note(format!(
                "The processor is taken to sit {} from the board's right edge and {} from its rear edge. No standard says so.",
                words::mm(right),
                words::mm(rear)
            ))
            .with_remedy("Measure both on your board and enter them.")
            .with_about([cooler.id.as_str(), "board"])
            .with_at(cooler.bounds().centre()),
    );
}

fn sheet_not_measured(scene: &Scene, found: &mut Vec<Finding>) {
    let sheet = &scene.case.spec.sheet;
    if sheet.measured_mm.is_some() {
        return;
    }
    let real = real_thickness(sheet.material.into(), sheet.nominal_mm);
    let (text, source) = match real {
        Some(real) => (
            format!(
                "Every panel is worked out for {}. Sheet sold so may be {} to {}.",
                words::limit(sheet.nominal_mm),
                words::bare(real.least_mm),
                words::mm(real.most_mm)
            ),
            real.source,
        ),
        None => (
            format!("Every panel is worked out for {}, as sold.", words::limit(sheet.nominal_mm)),
            SHEET_NOT_MEASURED.source,
        ),
    };
    found.push(
        SHEET_NOT_MEASURED
            .note(text)
            .with_measured_mm(sheet.nominal_mm)
            .with_remedy("Measure your sheet in a few places and enter the middle.")
            .with_source(source),
    );
}

fn hole_from_memory(scene: &Scene, found: &mut Vec<Finding>) {
    let mut groups: Vec<(Purpose, usize, &Sheet, &Shape)> = Vec::new();
    for sheet in &scene.sheets {
        for shape in sheet.shapes.iter().filter(|shape| shape.feature.source.confidence == Confidence::FromMemory) {
            match groups.iter_mut().find(|(purpose, ..)| *purpose == shape.feature.purpose) {
                Some((_, count, ..)) => *count += 1,
                None => groups.push((shape.feature.purpose, 1, sheet, shape)),
            }
        }
    }
    for (_, count, sheet, shape) in groups {
        let feature = shape.feature;
        let which = match count {
            1 => "This hole depends".to_owned(),
            _ => format!("{count} holes and openings depend"),
        };
        found.push(
            HOLE_FROM_MEMORY
                .note(format!("{which} on a size from memory: measure yours. {}.", feature.why))
                .with_counts(count, 0)
                .with_remedy("Hold the real part against the template before you drill.")
                .with_about([format!("{}/{}", sheet.id(), feature.id)])
                .with_about(&feature.about)
                .with_at(sheet.panel.frame.to_case(feature.centre, 0.0))
                .with_source(feature.source),
        );
    }
}

fn material(scene: &Scene, found: &mut Vec<Finding>) {
    let sheet = &scene.case.spec.sheet;
    let note = sheets::Material::from(sheet.material).note();
    let finding = match sheet.material {
        Material::Fibreboard => return,
        Material::Acrylic => MATERIAL
            .caution(note)
            .with_remedy("Screw holes are drawn wider for what the sheet grows: keep them so, under soft washers. File nothing sharp, and \
                 keep it below 80 °C."),
        Material::Plywood | Material::Hardboard | Material::Other => MATERIAL.note(note),
    };
    found.push(finding);
}
