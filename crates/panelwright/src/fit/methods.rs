//! Methods: what a laser must not cut, and what a cutter is too thick for.

use super::finding::{Finding, Severity};
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::webs::name;
use super::words;
use crate::cutting::{CutPanel, CutProblem, OUTLINE, Trouble};
use crate::design::{Material, Method};
use crate::dimensions::router_work;
use crate::dimensions::source::Source;
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

pub(super) const CANNOT_BE_CUT: Rule = Rule {
    name: "cannot-be-cut",
    what: "The tool gets into everything it has to cut, and cuts nothing it should not.",
    source: Source::derived("Geometry of the design", "contours moved by half of the tool's width"),
    look: cannot_be_cut,
};

pub(super) const TAB_HEIGHT: Rule = Rule {
    name: "tab-height",
    what: "Holding tabs are lower than the sheet and thick enough to hold.",
    source: router_work::TAB_HEIGHT.source(),
    look: tab_height,
};

/// Tabs within a range of heights; `least` is the one that is entered.
fn tabs(least: f64, most: f64) -> Remedy {
    if most < least {
        // In sheet this thin no tab is both.
        return Remedy::new();
    }
    let range = if most > least { format!(" to {}", words::limit(most)) } else { " mm".to_owned() };
    Remedy::new().at_least("router.tab_height", least, |_| format!("take tabs of {}{range}", words::bare(least)))
}

fn tab_height(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    let routed: Vec<_> = scene.sheets.iter().filter(|sheet| making.method(sheet.wall()) == Method::Router).collect();
    let Some(first) = routed.first().filter(|_| making.router.tabs > 0) else { return };
    let (height, thickness) = (making.router.tab_height_mm, first.panel.thickness_mm);
    let [least, most] = router_work::TAB_HEIGHT.get();
    let finding = if height >= thickness - TOUCH_MM {
        TAB_HEIGHT
            .caution(format!(
                "Holding tabs of {} are as high as the sheet: nothing is cut there.",
                words::limit(height)
            ))
            .with_mm(height, thickness)
            .with_mends(tabs(least, most.min(thickness - TOUCH_MM)).say("saw them through"))
    } else if height < least - TOUCH_MM {
        TAB_HEIGHT
            .note(format!("Holding tabs of {} may tear before the panel is cut out.", words::limit(height)))
            .with_mm(height, least)
            .with_mends(tabs(least, most.min(thickness - TOUCH_MM)).say("hold the panel with tape"))
    } else {
        return;
    };
    found.push(finding.with_about(routed.iter().map(|sheet| sheet.id())).with_at(first.solid.centre()));
}

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

/// How much a trouble weighs.
const fn weight(trouble: &Trouble) -> Severity {
    match trouble {
        Trouble::Lost(_) => Severity::Blocks,
        Trouble::LeftStanding { .. } | Trouble::NoDepth => Severity::Caution,
        _ => Severity::Note,
    }
}

/// What is to be done about a trouble.
const fn remedy(trouble: &Trouble) -> &'static str {
    match trouble {
        Trouble::NoDepth => "Cut it by hand afterwards, choose a router for that panel, or leave it out.",
        Trouble::Drill { .. } => "Drill them: the files have a layer for it.",
        Trouble::Lost(_) | Trouble::LeftStanding { .. } => "Take a thinner tool, or a wider opening.",
        Trouble::Corner(_) => "File the corner, where something has to go into it.",
        Trouble::NoTabs | Trouble::TabsOnMatingEdge | Trouble::TabsBesideCut => {
            "Hold the panel with tape, or saw the tabs off clean."
        }
    }
}

fn cannot_be_cut(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = scene.case.spec;
    for sheet in scene.sheets.iter().filter(|sheet| spec.making.method(sheet.wall()) != Method::Hand) {
        let cut = CutPanel::by_method(spec, sheet.panel);
        // One finding a panel for each weight and what is to be done.
        let mut groups: Vec<(Severity, &str, &CutProblem, usize)> = Vec::new();
        for problem in &cut.problems {
            let (severity, remedy) = (weight(&problem.what), remedy(&problem.what));
            match groups.iter_mut().find(|group| (group.0, group.1) == (severity, remedy)) {
                Some(group) => group.3 += 1,
                None => groups.push((severity, remedy, problem, 0)),
            }
        }
        for (severity, remedy, first, more) in groups {
            let others = if more > 0 { format!(" ({more} more there.)") } else { String::new() };
            // Files name a feature by its id; here it gets the word people have for it.
            let shape = sheet.shapes.iter().find(|shape| shape.feature.id == first.of);
            let told = CutProblem { of: shape.map_or("its outline", name).to_owned(), ..first.clone() };
            let id = if first.of == OUTLINE { sheet.id().to_owned() } else { format!("{}/{}", sheet.id(), first.of) };
            found.push(
                CANNOT_BE_CUT
                    .finds(severity, format!("In {}, {}.{others}", words::the_panel(sheet.wall()), told.says()))
                    .with_remedy(remedy)
                    .with_about([sheet.id().to_owned(), id])
                    .with_at(sheet.panel.frame.to_case(first.at, 0.0)),
            );
        }
    }
}
