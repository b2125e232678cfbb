//! Templates: every panel at true scale on the maker's paper, as drawings and as one PDF.
//!
//! A panel is seen from outside, as it lies on the bench with its good face up and the template glued on. One page a
//! panel when it fits; a panel of the paper's own size gets ticks and centre lines (or several pages, as chosen); a
//! larger one is spread over as few pages as possible, with overlap and register crosses. On a large sheet (A1, A0)
//! several panels share a page.
//!
//! Invariant: a line comes out of the printer where the panel says it is. Drawings are at true size; where the maker has
//! measured the printer, a whole page is stretched by what the printer shrinks it by, and says so.

mod flow;
mod free;
mod hand_pages;
mod page;
mod pen;
mod plan;
mod shared;
mod test_page;
pub mod words;

use super::warnings::{blocked, blocking, short};
use crate::Build;
use crate::arrangement::paper_name;
use crate::design::{Method, PaperName, TemplateSpec};
use crate::dimensions::paper;
use crate::drawing::{Page, PdfInfo, pdf as write_pdf};
use crate::panels::Panel;

use flow::Flow;
use page::PackWords;
use shared::Shared;

pub use plan::{EDGE_NOT_STRAIGHT, PagePlan, PageSetup, Way, plan};
pub use test_page::{test_page, test_page_pdf};

/// How the pages are set up: the design's choice, on another paper when one is named.
#[must_use]
pub fn setup(spec: &TemplateSpec, other: Option<PaperName>) -> PageSetup {
    let name = other.unwrap_or(spec.paper);
    PageSetup {
        paper_mm: paper::size(paper_name(name)).get(),
        margin_mm: spec.margin_mm,
        overlap_mm: spec.overlap_mm,
        full: spec.full,
        correction: spec.printer.factors(),
    }
}

/// The plan of each panel, in the panels' order.
#[must_use]
pub fn plans(panels: &[Panel], setup: &PageSetup) -> Vec<PagePlan> {
    panels.iter().map(|panel| plan(panel.size_mm, panel.joint_gaps.is_empty(), setup)).collect()
}

/// The paper that pages of writing come on: the panels' own unless that is a large sheet.
#[must_use]
pub fn writing(setup: &PageSetup) -> PageSetup {
    if shared::is_large(setup) { PageSetup { paper_mm: paper::size(paper::Paper::A4).get(), ..*setup } } else { *setup }
}

/// The words of a panel's template.
fn pack_words<'a>(build: &'a Build) -> impl Fn(&Panel) -> PackWords<'a> {
    let spec = &build.spec;
    let caution = if build.blocked() {
        Some("Blocked: do not cut yet, see the first page")
    } else {
        short(&build.findings).next().map(|_| "Not enough sheet: see the first page")
    };
    move |panel| PackWords {
        title: &spec.title,
        fingerprint: &build.fingerprint,
        caution,
        sheet: &spec.sheet,
        printer: words::printer_words(&spec.template.printer),
        hand: super::marking::hand_of(spec, panel).copied(),
    }
}

/// The page that stands before all others when something blocks the design or its sheets do not suffice: what, and what
/// would mend it.
fn warning_pages(build: &Build, foot: &str, setup: &PageSetup) -> Vec<Page> {
    let findings = &build.findings;
    let blocked = blocked(findings);
    if blocked.is_none() && short(findings).next().is_none() {
        return Vec::new();
    }
    let mut flow = Flow::new(setup, if blocked.is_some() { "Do not cut yet" } else { "Before you cut" }, foot);
    blocked.iter().for_each(|words| flow.words(words));
    for finding in blocking(findings).chain(short(findings)) {
        flow.heading(finding.rule);
        flow.words(&finding.text);
        flow.words(&finding.remedy);
    }
    flow.finish()
}

/// Every page: first what blocks the design or that its sheets do not suffice, if so; on a large sheet as many panels
/// together as it holds; else panel by panel, each from its lower left page on; then what is written for work by hand.
#[must_use]
pub fn pages(build: &Build, setup: &PageSetup) -> Vec<Page> {
    let Build { spec, panels, fingerprint, .. } = build;
    let foot = if spec.title.is_empty() {
        format!("design {fingerprint}")
    } else {
        format!("{}, design {fingerprint}", spec.title)
    };
    let pack = pack_words(build);
    let (plans, writing) = (plans(panels, setup), writing(setup));
    let shared = Shared::of(panels, &plans, setup, &pack);
    let mut out = warning_pages(build, &foot, &writing);
    out.extend(shared.draw(panels, &plans, &pack));
    for (index, (panel, plan)) in panels.iter().zip(&plans).enumerate() {
        let [columns, rows] = if shared.holds(index) { [0, 0] } else { plan.grid() };
        for row in 0..rows {
            for column in 0..columns {
                let drawing = page::draw(panel, plan, [column, row], &pack(panel));
                let [width_mm, height_mm] = plan.paper_mm;
                out.push(Page { drawing, width_mm, height_mm, scale: plan.scale });
            }
        }
        if spec.making.method(panel.wall) == Method::Hand && spec.making.hand.marking {
            out.extend(hand_pages::marking_pages(spec, panel, &foot, &writing));
        }
    }
    out.extend(hand_pages::order_pages(spec, panels, &foot, &writing));
    out
}

/// How many pages that makes; on paper that is no large sheet without drawing the panels.
#[must_use]
pub fn page_count(build: &Build, setup: &PageSetup) -> usize {
    let Build { spec, panels, .. } = build;
    let by_hand = |panel: &&Panel| spec.making.method(panel.wall) == Method::Hand;
    let writing = writing(setup);
    let tables = if spec.making.hand.marking {
        panels.iter().filter(by_hand).map(|panel| hand_pages::marking_pages(spec, panel, "", &writing).len()).sum()
    } else {
        0
    };
    let order = hand_pages::order_pages(spec, panels, "", &writing).len();
    let plans = plans(panels, setup);
    let shared = Shared::of(panels, &plans, setup, &pack_words(build));
    let single: usize =
        plans.iter().enumerate().filter(|(index, _)| !shared.holds(*index)).map(|(_, plan)| plan.pages()).sum();
    warning_pages(build, "", &writing).len() + shared.count() + single + tables + order
}

/// All templates as a PDF.
#[must_use]
pub fn pdf(build: &Build, setup: &PageSetup) -> Vec<u8> {
    let Build { spec, fingerprint, .. } = build;
    let sheets = pages(build, setup);
    let title = if spec.title.is_empty() { "Templates".to_owned() } else { format!("Templates: {}", spec.title) };
    write_pdf(&sheets, &PdfInfo { title, subject: format!("design {fingerprint}") })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;
    use crate::documents::sheets::stocked;
    use crate::drawing::Item;

    #[test]
    fn pages_are_as_many_as_promised() {
        let blocked = [("size.rule", "given".into()), ("size.height", 120.into()), ("cooler.height", 200.into())];
        let few = [("kit.count", 5.into()), ("stock.count", 1.into())];
        let marking = [("hand.marking", true.into())];
        for choices in [&[][..], &marking, &[("method", "laser".into())], &blocked, &few] {
            let mut design = Design::default();
            for (key, value) in choices {
                let value: &serde_json::Value = value;
                design.set_json(key, value).unwrap();
            }
            let (build, _) = stocked(Build::of(&design));
            let short = short(&build.findings).next().is_some();
            for paper in [PaperName::A4, PaperName::A3, PaperName::A0] {
                let setup = setup(&build.spec.template, Some(paper));
                let drawn = pages(&build, &setup);
                assert_eq!(drawn.len(), page_count(&build, &setup));
                let said = |page: &Page, words: &str| {
                    let layers = page.drawing.layers.iter();
                    layers.flat_map(|layer| &layer.items).any(|item| format!("{item:?}").contains(words))
                };
                assert_eq!(said(&drawn[0], "Do not cut yet"), build.blocked());
                assert_eq!(drawn.iter().any(|page| said(page, "Blocked: do not cut yet")), build.blocked());
                assert_eq!(said(&drawn[0], "Not enough sheet: "), short);
                assert_eq!(said(&drawn[0], "Before you cut"), short && !build.blocked());
            }
        }
    }

    /// The last of the back's three pages on Letter has the panel across it, and long words of the printer.
    #[test]
    fn a_crowded_page_still_bears_its_name_its_warning_and_the_mark_of_its_design() {
        let choices = serde_json::json!({
            "method": "router", "size.paper": "tabloid", "sheet.nominal": 9, "sheet.measured": 9.04,
            "joint.floor_back": "rebate", "sleeve.join": "glue", "template.paper": "letter", "printer.across": 98.7,
            "printer.down": 102.1, "sheet.film_out": 0.1, "sheet.film_in": 0.1, "sheet.paint_out": 0.1,
            "sheet.paint_edges": 0.1, "card.kind": "low-profile", "card.hold": "tie", "drive1.kind": "3.5",
            "drive1.place": "floor", "drive2.kind": "3.5", "drive3.kind": "3.5", "hardware.thread": "m4",
            "joint.left_front": "brackets", "joint.right_front": "brackets", "joint.left_top": "brackets",
            "through.left_top": "top", "joint.front_top": "blocks", "sleeve.side_screws": true, "design.title": "J77-44",
            "hardware.fit": "fine", "router.cutter": 2, "router.relief": "along",
        });
        let mut design = Design::default();
        for (key, value) in choices.as_object().unwrap() {
            design.set_json(key, value).unwrap();
        }
        let build = Build::of(&design);
        assert!(build.blocked());
        let pack = pack_words(&build);
        let setup = setup(&build.spec.template, None);
        let mut in_parts = 0;
        for (panel, plan) in build.panels.iter().zip(plans(&build.panels, &setup)) {
            let [columns, rows] = plan.grid();
            for at in (0..rows).flat_map(|row| (0..columns).map(move |column| [column, row])) {
                let [width, height] = plan.page_mm;
                let mut pen = pen::Pen::new(width, height);
                let printable = kurbo::Rect::new(0.0, 0.0, width, height).inset(-plan.margin_mm[0]);
                let origin = kurbo::Vec2::from(<(f64, f64)>::from(plan.origin(at[0], at[1])));
                in_parts += page::draw_in(&mut pen, panel, &plan, at, (printable, origin), &pack(panel));
                let said = format!("{:?}", pen.finish());
                for wanted in [panel.label, &build.fingerprint, "Blocked: do not cut yet"] {
                    assert!(said.contains(wanted), "{} {at:?}: no {wanted}", panel.label);
                }
            }
        }
        assert!(in_parts > 0, "no page is crowded: take another design");
    }

    #[test]
    fn what_lies_in_the_printers_margin_is_given_as_a_measure() {
        let build = Build::of(&Design::default());
        let setup = setup(&build.spec.template, None);
        let drawn = pages(&build, &setup);
        let mut letters = 0;
        for page in &drawn {
            let marks = page.drawing.layers.iter().filter(|layer| layer.name == "marks");
            for item in marks.flat_map(|layer| &layer.items) {
                let Item::Text(text) = item else { continue };
                letters += 1;
                let reached = |at: f64, size: f64| setup.margin_mm <= at && at <= size - setup.margin_mm;
                assert!(reached(text.at.x, page.width_mm) && reached(text.at.y, page.height_mm), "{text:?}");
            }
        }
        assert!(letters > 40);
        // The rear opening runs to 3 mm from the back's edge, where a margin of 10 mm hides its side.
        let back = build.panels.iter().find(|panel| panel.wall == crate::design::Wall::Back).unwrap();
        let opening = back.features.iter().find(|feature| feature.id == "io-aperture").unwrap();
        let left = back.size_mm[0] / 2.0 - opening.contour.bbox().x0;
        let said = format!("goes to {} left of", crate::drawing::number::mm(left));
        let texts = drawn.iter().flat_map(|page| &page.drawing.layers).flat_map(|layer| &layer.items);
        assert!(texts.filter(|item| format!("{item:?}").contains(&said)).count() == 1, "{said}");
    }
}
