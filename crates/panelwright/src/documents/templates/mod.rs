//! Templates: every panel at true scale on the maker's paper, as drawings and as one PDF.
//!
//! A panel is seen from outside, as it lies on the bench with its good face up and the template glued on. One page a
//! panel when it fits; a panel of the paper's own size gets ticks and centre lines (or several pages, as chosen); a
//! larger one is spread over as few pages as possible, with overlap and register crosses.
//!
//! Invariant: a line comes out of the printer where the panel says it is. Drawings are at true size; where the maker has
//! measured the printer, a whole page is stretched by what the printer shrinks it by, and says so.

mod flow;
mod free;
mod hand_pages;
mod marks;
mod page;
mod pen;
mod plan;
mod test_page;
pub mod words;

use crate::arrangement::paper_name;
use crate::design::{Method, PaperName, Spec, TemplateSpec};
use crate::dimensions::paper;
use crate::drawing::{Page, PdfInfo, pdf as write_pdf};
use crate::panels::Panel;

pub use marks::BAR_MM;
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

/// Every page, panel by panel, each from its lower left page on.
#[must_use]
pub fn pages(spec: &Spec, panels: &[Panel], fingerprint: &str, setup: &PageSetup) -> Vec<Page> {
    let hand = &spec.making.hand;
    let foot = if spec.title.is_empty() {
        format!("design {fingerprint}")
    } else {
        format!("{}, design {fingerprint}", spec.title)
    };
    let mut pack = page::PackWords {
        title: &spec.title,
        fingerprint,
        sheet: &spec.sheet,
        printer: words::printer_words(&spec.template.printer),
        hand: None,
    };
    let mut out = Vec::new();
    for (panel, plan) in panels.iter().zip(plans(panels, setup)) {
        let by_hand = spec.making.method(panel.wall) == Method::Hand;
        pack.hand = by_hand.then_some(*hand);
        let [columns, rows] = plan.grid();
        for row in 0..rows {
            for column in 0..columns {
                let drawing = page::draw(panel, &plan, [column, row], &pack);
                let [width_mm, height_mm] = plan.paper_mm;
                out.push(Page { drawing, width_mm, height_mm, scale: plan.scale });
            }
        }
        if by_hand && hand.marking {
            out.extend(hand_pages::marking_pages(panel, &foot, setup));
        }
    }
    out.extend(hand_pages::order_pages(spec, panels, &foot, setup));
    out
}

/// How many pages that makes, without drawing the panels.
#[must_use]
pub fn page_count(spec: &Spec, panels: &[Panel], setup: &PageSetup) -> usize {
    let by_hand = |panel: &&Panel| spec.making.method(panel.wall) == Method::Hand;
    let tables = if spec.making.hand.marking {
        panels.iter().filter(by_hand).map(|panel| hand_pages::marking_pages(panel, "", setup).len()).sum()
    } else {
        0
    };
    let order = hand_pages::order_pages(spec, panels, "", setup).len();
    plans(panels, setup).iter().map(PagePlan::pages).sum::<usize>() + tables + order
}

/// All templates as a PDF.
#[must_use]
pub fn pdf(spec: &Spec, panels: &[Panel], fingerprint: &str, setup: &PageSetup) -> Vec<u8> {
    let sheets = pages(spec, panels, fingerprint, setup);
    let title = if spec.title.is_empty() { "Templates".to_owned() } else { format!("Templates: {}", spec.title) };
    write_pdf(&sheets, &PdfInfo { title, subject: format!("design {fingerprint}") })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::design::Design;

    #[test]
    fn pages_are_as_many_as_promised() {
        for choices in [&[][..], &[("hand.marking", true.into())], &[("method", "laser".into())]] {
            let mut design = Design::default();
            for (key, value) in choices {
                let value: &serde_json::Value = value;
                design.set_json(key, value).unwrap();
            }
            let build = Build::of(&design);
            for paper in [PaperName::A4, PaperName::A3, PaperName::A0] {
                let setup = setup(&build.spec.template, Some(paper));
                let drawn = pages(&build.spec, &build.panels, &build.fingerprint, &setup);
                assert_eq!(drawn.len(), page_count(&build.spec, &build.panels, &setup));
            }
        }
    }
}
