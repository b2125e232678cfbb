//! Panels against the chosen paper and the sheet they are cut from; the printer against its own bars.

use super::finding::Finding;
use super::mend::{Remedy, options, pick};
use super::rule::Rule;
use super::scene::{Scene, Sheet};
use super::words;
use crate::arrangement::{Sizing, paper_name};
use crate::design::{Joint, PaperName, Seam, SizeRule, Spec, Wall};
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
fn too_large_panels(scene: &Scene, rule: &Rule, within: [f64; 2], name: &str) -> Option<Finding> {
    let mut large: Vec<(&Sheet, f64, f64)> = scene
        .sheets
        .iter()
        .filter_map(|sheet| too_large(sheet.panel.size_mm, within).map(|(is, may)| (sheet, is, may)))
        .collect();
    sort_by(&mut large, |a, b| (b.1 - b.2).total_cmp(&(a.1 - a.2)));
    let (worst, is, may) = large.first()?;
    let size = format!("{} is {}", words::the_panel(worst.wall()), sides(worst.panel.size_mm));
    let text = match large.len() {
        1 => format!("{}: {} too large for {name}.", words::capital(&size), words::short(is - may)),
        count => format!("{count} panels are too large for {name}: {size}, {} too much.", words::short(is - may)),
    };
    Some(
        rule.blocks(text)
            .with_mm(*is, *may)
            .with_about(large.iter().map(|(sheet, ..)| sheet.id()))
            .with_at(worst.solid.centre()),
    )
}

fn panel_on_paper(scene: &Scene, found: &mut Vec<Finding>) {
    let SizeRule::Paper(name) = scene.case.spec.size else { return };
    let paper = paper_name(name);
    let within = paper::size(paper);
    let finding = too_large_panels(scene, &PANEL_ON_PAPER, within.get(), paper.label());
    found.extend(finding.map(|finding| finding.with_mends(onto_paper(scene, name)).with_source(within.source())));
}

/// What brings every panel onto a paper. What reaches into the panel beside it makes the one that does larger by up to a
/// thickness at each end: joints that do not reach may be all that is wanted.
fn onto_paper(scene: &Scene, name: PaperName) -> Remedy {
    let arrangement = scene.case.arrangement;
    let now = Sizing::of(scene.case.spec).settle(&arrangement.needs);
    // What grew the case after its size was settled grows it again: then nothing is promised.
    let outside = arrangement.case.outside_mm;
    let foreseen = now.excess > TOUCH_MM && (0..3).all(|axis| (now.outside[axis] - outside[axis]).abs() < TOUCH_MM);
    let fits = |change: &dyn Fn(&mut Spec)| {
        let mut spec = scene.case.spec.clone();
        change(&mut spec);
        foreseen && Sizing::of(&spec).excess(&arrangement.needs) < TOUCH_MM
    };
    let within = paper::size(paper_name(name)).get();
    let large = |wall: Wall| {
        let sheet = scene.sheet(wall);
        sheet.is_some_and(|sheet| too_large(sheet.panel.size_mm, within).is_some())
    };
    let sleeve = || scene.case.spec.making.joints.seams.into_iter().filter(|seam| seam.seam != Seam::FloorBack);
    let reaching: Vec<Seam> = sleeve().filter(|seam| seam.reach_mm(1.0) > 0.0).map(|seam| seam.seam).collect();
    let of_large: Vec<Seam> =
        sleeve().filter(|seam| large(seam.covered) && reaching.contains(&seam.seam)).map(|seam| seam.seam).collect();
    let mut remedy = Remedy::new();
    for (joint, words) in [(Joint::Blocks, "locating blocks"), (Joint::Brackets, "corner brackets")] {
        let change = |changed: &[Seam], spec: &mut Spec| {
            let seams = spec.making.joints.seams.iter_mut();
            seams.filter(|seam| changed.contains(&seam.seam)).for_each(|seam| seam.joint = joint);
        };
        // As few corners as will do.
        let tried = [(&of_large, "at the edges that reach too far"), (&reaching, "at every corner of the sleeve")];
        let fitting = tried.into_iter().find(|(seams, _)| !seams.is_empty() && fits(&|spec| change(seams, spec)));
        if let Some((seams, place)) = fitting {
            let choices = seams.iter().filter_map(|seam| pick(&format!("joint.{}", seam.name()), joint.name()));
            remedy = remedy.mend(format!("join with {words} {place}"), choices.collect());
        }
    }
    let area = |name: PaperName| paper::size(paper_name(name)).get().iter().product::<f64>();
    let mut larger: Vec<PaperName> = options("size.paper").filter_map(PaperName::of).collect();
    let iso = |name: PaperName| matches!(name, PaperName::A4 | PaperName::A3 | PaperName::A1 | PaperName::A0);
    larger.retain(|other| iso(*other) == iso(name) && area(*other) > area(name));
    sort_by(&mut larger, |a, b| area(*a).total_cmp(&area(*b)));
    if let Some(other) = larger.into_iter().find(|other| fits(&|spec| spec.size = SizeRule::Paper(*other))) {
        remedy = remedy.pick("size.paper", other.name(), &format!("choose {}", paper_name(other).label()));
    }
    remedy.say("choose another rule for the size").say("take smaller parts")
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
    let finding = too_large_panels(scene, &PANEL_ON_STOCK, within, &name);
    found.extend(finding.map(|finding| finding.with_remedy("Buy a larger sheet, or make the case smaller.")));
}
