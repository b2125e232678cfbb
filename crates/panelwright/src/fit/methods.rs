//! Methods: what a laser must not cut, and what a cutter is too thick for.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{Material, Method};
use crate::dimensions::source::Source;
use crate::panels::FeatureKind;
use crate::solid::TOUCH_MM;

pub(super) const LASER_MATERIAL: Rule = Rule {
    name: "laser-material",
    what: "Nothing is cut with a laser that gives off poison, and nothing that burns is left alone.",
    source: Source::common_practice(
        "Workshop custom",
        "rules of shared laser cutters: no PVC, no vinyl, no unknown film",
    ),
    look: laser_material,
};

pub(super) const CUTTER_TOO_THICK: Rule = Rule {
    name: "cutter-too-thick",
    what: "A router's cutter goes through every hole and opening it has to cut.",
    source: Source::derived("Geometry of the design", "width of openings and diameter of the cutter"),
    look: cutter_too_thick,
};

fn laser_material(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = scene.case.spec;
    let lasered: Vec<&str> = scene
        .sheets
        .iter()
        .filter(|sheet| spec.making.method(sheet.wall()) == Method::Laser)
        .map(|sheet| sheet.id())
        .collect();
    let Some(first) = lasered.first() else { return };
    let place = scene.sheets.iter().find(|sheet| sheet.id() == *first).map(|sheet| sheet.solid.centre());
    let mut tell = |mut finding: Finding| {
        finding.at = place;
        found.push(finding.with_about(lasered.iter().copied()));
    };
    if spec.sheet.film_out_mm + spec.sheet.film_in_mm > TOUCH_MM {
        tell(
            LASER_MATERIAL
                .caution("Film must not go under a laser: vinyl and other PVC give off chlorine.")
                .with_remedy("Put the film on after cutting."),
        );
    }
    match spec.sheet.material {
        Material::Other => tell(
            LASER_MATERIAL
                .caution("Ask what this sheet is before it goes under a laser: PVC gives off chlorine.")
                .with_remedy("Cut nothing with a laser whose maker does not say that you may."),
        ),
        Material::Acrylic => tell(
            LASER_MATERIAL
                .note("Acrylic burns: a laser cutting it is never left alone.")
                .with_remedy("Keep the extraction on and watch it to the end."),
        ),
        Material::Fibreboard | Material::Plywood | Material::Hardboard => {}
    }
}

fn cutter_too_thick(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    let cutter = making.router.cutter_mm;
    for sheet in scene.sheets.iter().filter(|sheet| making.method(sheet.wall()) == Method::Router) {
        let narrow = |kind: FeatureKind| {
            sheet
                .shapes
                .iter()
                .filter(move |shape| (shape.feature.kind == FeatureKind::Hole) == (kind == FeatureKind::Hole))
                .map(|shape| (shape.bounds.width().min(shape.bounds.height()), shape))
                .filter(|(width, _)| *width < cutter - TOUCH_MM)
                .min_by(|a, b| a.0.total_cmp(&b.0))
        };
        if let Some((width, shape)) = narrow(FeatureKind::Opening) {
            let id = format!("{}/{}", sheet.id(), shape.feature.id);
            found.push(
                CUTTER_TOO_THICK
                    .blocks(format!(
                        "The cutter of {} does not go into an opening of {} in {}.",
                        words::limit(cutter),
                        words::short(width),
                        words::panel(sheet.wall())
                    ))
                    .with_mm(width, cutter)
                    .with_remedy("Take a thinner cutter, or a wider opening.")
                    .with_about([sheet.id().to_owned(), id])
                    .with_at(sheet.panel.frame.to_case(shape.feature.centre, 0.0)),
            );
        }
        if let Some((width, shape)) = narrow(FeatureKind::Hole) {
            found.push(
                CUTTER_TOO_THICK
                    .note(format!(
                        "Holes down to {} in {} are smaller than the cutter: drill them.",
                        words::short(width),
                        words::panel(sheet.wall())
                    ))
                    .with_mm(width, cutter)
                    .with_remedy("The files mark them on a layer of their own.")
                    .with_about([sheet.id().to_owned(), format!("{}/{}", sheet.id(), shape.feature.id)])
                    .with_at(sheet.panel.frame.to_case(shape.feature.centre, 0.0)),
            );
        }
    }
}
