//! Large sheets: several panels share a page, each in a field of its own with everything a template needs, so that a
//! whole case comes from a plotter on one or two sheets.
//!
//! A field is the panel and as much paper beside it as title, bars and hole key want; how much that is, is tried. The
//! fields are laid on pages by the packer that lays panels on stock.

use kurbo::{Rect, Vec2};

use super::page::{PackWords, draw_in};
use super::pen::{Line, Pen};
use super::plan::{PagePlan, PageSetup, Way};
use crate::drawing::{Contour, Page};
use crate::panels::Panel;
use crate::stock::{Grain, Job, Method, Piece, Rules, Sheet, solve};

/// From this on the shorter side of a paper makes it large, mm: A2 is 420 wide, A1 594.
const LARGE_MM: f64 = 500.0;

/// Paper kept between a panel's edge and its field's, mm: room for scissors (common practice).
const AIR_MM: f64 = 4.0;

/// Between two fields, mm: two lines that a plotter keeps apart (common practice).
const GAP_MM: f64 = 2.0;

/// Paper beside a panel that is tried for what finds no room within it, to its right and below it, mm: least area
/// first. A bar is 103 long, a title about 90.
const BESIDE_MM: [[f64; 2]; 8] =
    [[0.0, 0.0], [0.0, 12.0], [12.0, 0.0], [0.0, 40.0], [50.0, 0.0], [0.0, 80.0], [110.0, 0.0], [110.0, 130.0]];

/// Steps of the packer: as many as make no difference with a case's few panels.
const STEPS: u64 = 30_000;

/// Whether panels share pages of a paper.
pub fn is_large(setup: &PageSetup) -> bool {
    setup.paper_mm[0].min(setup.paper_mm[1]) >= LARGE_MM
}

/// A panel's field.
#[derive(Clone, Copy, Debug)]
struct Field {
    panel: usize,
    size_mm: [f64; 2],
    /// The panel's lower left corner within it.
    at: Vec2,
}

/// The pages that panels share, and which panels are on them.
pub struct Shared {
    /// By page: where each panel's field and its corner lie.
    pages: Vec<Vec<(usize, Rect, Vec2)>>,
    page: PagePlan,
}

impl Shared {
    /// The panels that share pages on a large paper; none on others. `pack` gives the words for each panel.
    pub fn of<'a>(
        panels: &[Panel],
        plans: &[PagePlan],
        setup: &PageSetup,
        pack: &dyn Fn(&Panel) -> PackWords<'a>,
    ) -> Self {
        let first = super::plan([1.0, 1.0], true, setup);
        let mut shared = Self { pages: Vec::new(), page: first };
        if !is_large(setup) {
            return shared;
        }
        let upright = first;
        let turned = PagePlan {
            paper_mm: [upright.paper_mm[1], upright.paper_mm[0]],
            page_mm: [1, 0].map(|axis| upright.page_mm[axis]),
            scale: [upright.scale[1], upright.scale[0]],
            margin_mm: [upright.margin_mm[1], upright.margin_mm[0]],
            ..upright
        };
        let fields: Vec<Field> = panels
            .iter()
            .zip(plans)
            .enumerate()
            .filter(|(_, (_, plan))| plan.way == Way::Whole)
            .filter_map(|(index, (panel, plan))| field(index, panel, plan, &pack(panel)))
            .collect();
        for page in [upright, turned] {
            let pages = packed(&fields, page.printable());
            let placed = |pages: &[Vec<_>]| pages.iter().map(Vec::len).sum::<usize>();
            let better = placed(&pages) > placed(&shared.pages)
                || placed(&pages) == placed(&shared.pages) && pages.len() < shared.pages.len();
            if better {
                (shared.pages, shared.page) = (pages, page);
            }
        }
        shared
    }

    /// Whether a panel is on one of them.
    pub fn holds(&self, panel: usize) -> bool {
        self.pages.iter().flatten().any(|(on, ..)| *on == panel)
    }

    /// How many pages.
    pub fn count(&self) -> usize {
        self.pages.len()
    }

    /// The pages, drawn.
    pub fn draw<'a>(&self, panels: &[Panel], plans: &[PagePlan], pack: &dyn Fn(&Panel) -> PackWords<'a>) -> Vec<Page> {
        let [width, height] = self.page.page_mm;
        let margin = Vec2::new(self.page.margin_mm[0], self.page.margin_mm[1]);
        let drawn = |fields: &Vec<(usize, Rect, Vec2)>| {
            let mut pen = Pen::new(width, height);
            for (index, field, at) in fields {
                let field = *field + margin;
                pen.contour("fields", &Contour::rect(field.x0, field.y0, field.x1, field.y1), Line::Centre);
                let origin = field.origin().to_vec2() + *at;
                draw_in(&mut pen, &panels[*index], &plans[*index], [0, 0], (field, origin), &pack(&panels[*index]));
            }
            let [width_mm, height_mm] = self.page.paper_mm;
            Page { drawing: pen.finish(), width_mm, height_mm, scale: self.page.scale }
        };
        self.pages.iter().map(drawn).collect()
    }
}

/// The smallest field tried in which everything finds room; the last one when none is.
fn field(index: usize, panel: &Panel, plan: &PagePlan, pack: &PackWords) -> Option<Field> {
    let [w, h] = panel.size_mm;
    let mut tried: Vec<[f64; 2]> =
        BESIDE_MM.iter().map(|[right, below]| [w + 2.0 * AIR_MM + right, h + 2.0 * AIR_MM + below]).collect();
    crate::sorting::sort_by(&mut tried, |a, b| (a[0] * a[1]).total_cmp(&(b[0] * b[1])));
    let room = plan.printable();
    tried.retain(|size| size[0] <= room[0] && size[1] <= room[1]);
    let field = |size_mm: [f64; 2]| Field { panel: index, size_mm, at: Vec2::new(AIR_MM, size_mm[1] - h - AIR_MM) };
    let takes_all = |size: &&[f64; 2]| {
        let field = field(**size);
        let area = Rect::new(0.0, 0.0, size[0], size[1]);
        draw_in(&mut Pen::new(size[0], size[1]), panel, plan, [0, 0], (area, field.at), pack) == 0
    };
    tried.iter().find(takes_all).or(tried.last()).copied().map(field)
}

/// The fields on pages with so much room.
fn packed(fields: &[Field], room: [f64; 2]) -> Vec<Vec<(usize, Rect, Vec2)>> {
    let piece = |field: &Field| Piece {
        label: String::new(),
        width: field.size_mm[0],
        height: field.size_mm[1],
        count: 1,
        may_turn: false,
        grain: Grain::None,
        openings: Vec::new(),
    };
    let page = Sheet {
        label: String::new(),
        width: room[0],
        height: room[1],
        count: None,
        grain: Grain::None,
        offcut: false,
        price: None,
    };
    let job = Job {
        pieces: fields.iter().map(piece).collect(),
        sheets: vec![page],
        rules: Rules { trim: 0.0, gap: GAP_MM, method: Method::Free },
    };
    // Sizes of panels and papers always make sense; what they do not is left to pages of its own.
    let Ok(plan) = solve(&job, STEPS, &mut |_| true) else { return Vec::new() };
    let placed = |sheet: &crate::stock::SheetPlan| {
        let on = sheet.placed.iter().filter_map(|placed| {
            let (field, rect) = (fields.get(placed.piece)?, placed.rect);
            Some((field.panel, Rect::new(rect.x, rect.y, rect.x + rect.width, rect.y + rect.height), field.at))
        });
        on.collect()
    };
    plan.sheets.iter().map(placed).collect()
}

#[cfg(test)]
mod tests {
    use super::super::{page_count, pages, plans, setup};
    use super::*;
    use crate::Build;
    use crate::design::{Design, PaperName};

    #[test]
    fn a_whole_case_comes_on_one_large_sheet_and_nothing_is_left_out() {
        let build = Build::of(&Design::default());
        for (paper, most) in [(PaperName::A1, 2), (PaperName::A0, 1)] {
            let setup = setup(&build.spec.template, Some(paper));
            let plans = plans(&build.panels, &setup);
            let pack = |_: &Panel| PackWords {
                title: "Quay",
                fingerprint: "ABCD2345",
                caution: None,
                sheet: &build.spec.sheet,
                hand: Some(build.spec.making.hand),
                printer: Vec::new(),
            };
            let shared = Shared::of(&build.panels, &plans, &setup, &pack);
            assert!((1..=most).contains(&shared.count()), "{paper:?} {}", shared.count());
            assert!((0..build.panels.len()).all(|panel| shared.holds(panel)));
            for page in &shared.pages {
                for (index, (panel, field, at)) in page.iter().enumerate() {
                    assert!(page[..index].iter().all(|(_, other, _)| other.intersect(*field).area() == 0.0));
                    let size = build.panels[*panel].size_mm;
                    let inside = Rect::from_origin_size(field.origin() + *at, (size[0], size[1]));
                    assert_eq!(field.intersect(inside), inside);
                    let mut pen = Pen::new(2000.0, 2000.0);
                    let origin = field.origin().to_vec2() + *at;
                    let panel = &build.panels[*panel];
                    assert_eq!(draw_in(&mut pen, panel, &plans[0], [0, 0], (*field, origin), &pack(panel)), 0);
                }
            }
        }
        // A3 is no large sheet: a page a panel at least, as ever.
        let setup = setup(&build.spec.template, Some(PaperName::A3));
        assert!(page_count(&build, &setup) >= build.panels.len());
        assert_eq!(pages(&build, &setup).len(), page_count(&build, &setup));
    }
}
