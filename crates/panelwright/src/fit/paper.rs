//! Panels against the chosen paper and the sheet they are cut from; the printer against its own bars.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::{Scene, Sheet};
use super::words;
use crate::arrangement::paper_name;
use crate::design::{Joint, SizeRule};
use crate::dimensions::paper;
use crate::dimensions::source::Source;
use crate::solid::TOUCH_MM;
use crate::sorting::sort_by;

pub(super) const PANEL_ON_PAPER: Rule = Rule {
    name: "panel-on-paper",
    what: "Where no panel may be larger than a paper, none is.",
    source: Source::published("ISO 216; ANSI/ASME Y14.1", "paper sizes"),
    look: panel_on_paper,
};

pub(super) const PANEL_ON_STOCK: Rule = Rule {
    name: "panel-on-stock",
    what: "Every panel can be cut from the sheet as bought.",
    source: Source::common_practice("Workshop custom", "the sheet as bought"),
    look: panel_on_stock,
};

pub(super) const PRINTER_SCALE: Rule = Rule {
    name: "printer-scale",
    what: "The bars of the test page were printed at 100 %, so that what is left is the printer's own error.",
    source: Source::common_practice("Workshop custom", "a bar more than 3 % off was fitted to the page"),
    look: printer_scale,
};

/// The side by which a panel is too large for a rectangle, whichever way it is laid: what it measures and what it may.
fn too_large(size: [f64; 2], within: [f64; 2]) -> Option<(f64, f64)> {
    let sorted = |[a, b]: [f64; 2]| [a.max(b), a.min(b)];
    let (size, within) = (sorted(size), sorted(within));
    [0, 1]
        .into_iter()
        .map(|side| (size[side], within[side]))
        .filter(|(is, may)| is - may > TOUCH_MM)
        .max_by(|a, b| (a.0 - a.1).total_cmp(&(b.0 - b.1)))
}

fn sides(size: [f64; 2]) -> String {
    format!("{} × {}", words::bare(size[0]), words::mm(size[1]))
}

/// One finding for all panels that are too large, about the worst of them.
fn too_large_panels(scene: &Scene, rule: &Rule, within: [f64; 2], name: &str, remedy: &str) -> Option<Finding> {
    let mut large: Vec<(&Sheet, f64, f64)> = scene
        .sheets
        .iter()
        .filter_map(|sheet| too_large(sheet.panel.size_mm, within).map(|(is, may)| (sheet, is, may)))
        .collect();
    sort_by(&mut large, |a, b| (b.1 - b.2).total_cmp(&(a.1 - a.2)));
    let (worst, is, may) = large.first()?;
    let size = format!("{} is {}", words::panel(worst.wall()), sides(worst.panel.size_mm));
    let text = match large.len() {
        1 => format!("{}: {} too large for {name}.", words::capital(&size), words::short(is - may)),
        count => format!("{count} panels are too large for {name}: {size}, {} too much.", words::short(is - may)),
    };
    Some(
        rule.blocks(text)
            .with_mm(*is, *may)
            .with_remedy(remedy)
            .with_about(large.iter().map(|(sheet, ..)| sheet.id()))
            .with_at(worst.solid.centre()),
    )
}

fn panel_on_paper(scene: &Scene, found: &mut Vec<Finding>) {
    let SizeRule::Paper(name) = scene.case.spec.size else { return };
    let paper = paper_name(name);
    let within = paper::size(paper);
    // What reaches into the panel beside it makes the one that does larger by a thickness at each end.
    let joints = &scene.case.spec.making.joints;
    let through = joints.seams.iter().any(|seam| matches!(seam.joint, Joint::Finger | Joint::Tab));
    let remedy = if through {
        "Fingers and tabs reach through to the outside: join with brackets or blocks, whose panels are smaller by the \
         sheet's thickness at each such corner; or choose a larger paper or smaller parts."
    } else {
        "Choose a larger paper or another rule for the size, or take smaller parts."
    };
    let finding = too_large_panels(scene, &PANEL_ON_PAPER, within.get(), paper.label(), remedy);
    found.extend(finding.map(|finding| finding.with_source(within.source())));
}

fn printer_scale(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(reading) = scene.case.spec.template.printer.fitted_mm() else { return };
    let bar = paper::CHECK_BAR.get();
    found.push(
        PRINTER_SCALE
            .caution(format!(
                "The printed bar of {} measures {}: the page was scaled to {} %. Templates are not corrected for that.",
                words::limit(bar),
                words::limit(reading),
                words::bare(reading / bar * 100.0)
            ))
            .with_mm(reading, bar)
            .with_remedy("Turn \"fit to page\" off, print the test page again at 100 % and measure its bars anew.")
            .with_source(paper::FIT_TO_PAGE.source()),
    );
}

fn panel_on_stock(scene: &Scene, found: &mut Vec<Finding>) {
    let within = scene.case.spec.sheet.stock_mm;
    let name = format!("a sheet of {}", sides(within));
    let remedy = "Buy a larger sheet, or make the case smaller.";
    found.extend(too_large_panels(scene, &PANEL_ON_STOCK, within, &name, remedy));
}
