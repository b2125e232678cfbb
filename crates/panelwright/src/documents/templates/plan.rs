//! How many pages a panel needs, which way they lie, and which part of the panel each shows.
//!
//! All lengths of a plan are as they come out on paper. What the printer does to them is put right at the very end, when a
//! page is written: everything on it, margins, marks and lines alike, is multiplied by [`PagePlan::scale`].

use crate::design::FullPanel;

/// A paper with its printable part and how pages share a panel, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PageSetup {
    /// Width and height of the paper, upright.
    pub paper_mm: [f64; 2],
    /// Margin the printer leaves on every side.
    pub margin_mm: f64,
    /// Overlap of neighbouring pages.
    pub overlap_mm: f64,
    /// What to do with a panel that fits the paper but not its printable part.
    pub full: FullPanel,
    /// What lengths along the paper's short and long side are multiplied by to come out true.
    pub correction: [f64; 2],
}

/// Why a panel of the paper's own size is spread over several pages although one page was asked for.
pub const EDGE_NOT_STRAIGHT: &str = "fingers and tabs along its edges must be seen whole";

/// How a panel is put on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// On one page, all of it printable.
    Whole,
    /// On one page of the panel's own size: ticks where its edges cannot be printed.
    Ticks,
    /// On several pages, so many across and so many up.
    Tiles {
        /// Pages side by side.
        across: usize,
        /// Pages above each other.
        up: usize,
    },
}

/// The pages of one panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PagePlan {
    /// One page or several.
    pub way: Way,
    /// Paper width and height as it lies (turned papers are wider than high).
    pub paper_mm: [f64; 2],
    /// The same as lengths that come out true: the paper over the scale.
    pub page_mm: [f64; 2],
    /// What the page is multiplied by, across and up, when it is written.
    pub scale: [f64; 2],
    /// Size of the panel.
    pub panel_mm: [f64; 2],
    /// Margin left and right, below and above.
    pub margin_mm: [f64; 2],
    /// Overlap of neighbouring pages.
    pub overlap_mm: f64,
    /// Why there are several pages although one was asked for.
    pub why: Option<&'static str>,
}

/// Lengths that agree within this are the same, mm: far below what paper or printer keep, far above rounding.
const HAIR_MM: f64 = 1e-9;

/// Plans the pages of a panel: one page when it fits, else as few as possible.
///
/// An edge that the printer does not reach can be found from ticks when it is `straight`; fingers and tabs cannot.
#[must_use]
pub fn plan(panel_mm: [f64; 2], straight: bool, setup: &PageSetup) -> PagePlan {
    let [short, long] = setup.correction;
    let [width, height] = setup.paper_mm;
    let page = |paper_mm: [f64; 2], scale: [f64; 2]| PagePlan {
        way: Way::Whole,
        paper_mm,
        page_mm: [0, 1].map(|axis| paper_mm[axis] / scale[axis]),
        scale,
        panel_mm,
        margin_mm: scale.map(|scale| setup.margin_mm / scale),
        overlap_mm: setup.overlap_mm,
        why: None,
    };
    // Turned, the paper still runs through the printer the same way.
    let pages = [page([width, height], [short, long]), page([height, width], [long, short])];
    let fits = |room: [f64; 2]| panel_mm[0] <= room[0] + HAIR_MM && panel_mm[1] <= room[1] + HAIR_MM;
    if let Some(whole) = pages.iter().find(|page| fits(page.printable())) {
        return *whole;
    }
    let mut why = None;
    if setup.full == FullPanel::Ticks
        && let Some(page) = pages.iter().find(|page| fits(page.paper_mm))
    {
        if straight {
            return PagePlan { way: Way::Ticks, ..*page };
        }
        why = Some(EDGE_NOT_STRAIGHT);
    }
    let tiles = |page: &PagePlan| {
        let room = page.printable();
        [0, 1].map(|axis| count(panel_mm[axis], room[axis], setup.overlap_mm))
    };
    let [upright, turned] = &pages;
    let best = if product(tiles(turned)) < product(tiles(upright)) { turned } else { upright };
    let [across, up] = tiles(best);
    PagePlan { way: Way::Tiles { across, up }, why, ..*best }
}

fn product(counts: [usize; 2]) -> usize {
    counts[0] * counts[1]
}

/// Pages along one direction: each shows `room` and shares `overlap` with the next.
fn count(length: f64, room: f64, overlap: f64) -> usize {
    let step = (room - overlap).max(1.0);
    // The hair keeps a panel of exactly n pages from needing one more by binary fractions.
    f64::ceil((length - overlap) / step - HAIR_MM).max(1.0) as usize
}

impl PagePlan {
    /// Width and height of the printable part.
    #[must_use]
    pub fn printable(&self) -> [f64; 2] {
        [0, 1].map(|axis| self.page_mm[axis] - 2.0 * self.margin_mm[axis])
    }

    /// How many pages.
    #[must_use]
    pub fn pages(&self) -> usize {
        match self.way {
            Way::Whole | Way::Ticks => 1,
            Way::Tiles { across, up } => across * up,
        }
    }

    /// Pages across and up.
    #[must_use]
    pub fn grid(&self) -> [usize; 2] {
        match self.way {
            Way::Whole | Way::Ticks => [1, 1],
            Way::Tiles { across, up } => [across, up],
        }
    }

    /// Where panel point (0, 0) lies on the page of a column and a row (both from 0; row 0 is the lowest).
    ///
    /// A panel on one page stands in its middle; pages of several share what is left over evenly at both ends, so that
    /// no page shows a mere sliver.
    #[must_use]
    pub fn origin(&self, column: usize, row: usize) -> [f64; 2] {
        let grid = self.grid();
        let at = [column, row];
        [0, 1].map(|axis| {
            let room = self.printable()[axis];
            let step = room - self.overlap_mm;
            let covered = step * grid[axis] as f64 + self.overlap_mm;
            let start = if grid[axis] == 1 {
                (self.page_mm[axis] - self.panel_mm[axis]) / 2.0
            } else {
                self.margin_mm[axis] + (covered - self.panel_mm[axis]) / 2.0
            };
            start - step * at[axis] as f64
        })
    }

    /// The printable part of a page in the panel's frame: `[x0, y0, x1, y1]`.
    #[must_use]
    pub fn window(&self, column: usize, row: usize) -> [f64; 4] {
        let origin = self.origin(column, row);
        let low = [0, 1].map(|axis| self.margin_mm[axis] - origin[axis]);
        let [width, height] = self.printable();
        [low[0], low[1], low[0] + width, low[1] + height]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn setup(paper_mm: [f64; 2]) -> PageSetup {
        PageSetup { paper_mm, margin_mm: 10.0, overlap_mm: 10.0, full: FullPanel::Tiles, correction: [1.0, 1.0] }
    }

    /// Worked by hand: printable P x Q, step P - o: A4 190 x 277 (step 180 x 267), A3 277 x 400 (step 267 x 390).
    #[test]
    fn page_counts_are_those_worked_by_hand() {
        let (a4, a3) = (setup([210.0, 297.0]), setup([297.0, 420.0]));
        for (panel, paper, pages) in [
            ([350.0, 300.0], &a4, 4),
            ([350.0, 300.0], &a3, 2),
            ([460.0, 520.0], &a4, 6),
            ([460.0, 520.0], &a3, 4),
            ([190.0, 277.0], &a4, 1),
            ([190.1, 277.0], &a4, 2),
        ] {
            assert_eq!(plan(panel, true, paper).pages(), pages, "{panel:?}");
        }
    }

    #[test]
    fn a_panel_of_the_papers_own_size_takes_one_page_with_ticks_or_tiles_as_chosen() {
        let mut with = setup([210.0, 297.0]);
        // Upright 190 x 277: 287 in steps of 180 and 200 in steps of 267; turned it would take four.
        assert_eq!(plan([297.0, 210.0], true, &with).way, Way::Tiles { across: 2, up: 1 });
        with.full = FullPanel::Ticks;
        let plan = plan([297.0, 210.0], true, &with);
        assert_eq!((plan.way, plan.page_mm), (Way::Ticks, [297.0, 210.0]));
    }

    #[test]
    fn every_point_of_a_panel_is_printable_on_some_page_and_neighbours_share_the_overlap() {
        for panel in [[350.0, 300.0], [460.0, 520.0], [190.1, 277.0], [700.0, 90.0]] {
            for paper in [[210.0, 297.0], [215.9, 279.4]] {
                let plan = plan(panel, true, &setup(paper));
                let [columns, rows] = plan.grid();
                let (first, last) = (plan.window(0, 0), plan.window(columns - 1, rows - 1));
                assert!(first[0] <= 1e-9 && first[1] <= 1e-9);
                assert!(last[2] >= panel[0] - 1e-9 && last[3] >= panel[1] - 1e-9);
                if columns > 1 {
                    let next = plan.window(1, 0);
                    assert!((first[2] - next[0] - 10.0).abs() < 1e-9);
                }
            }
        }
    }
    #[test]
    fn fingers_along_an_edge_are_never_left_to_ticks_and_the_plan_says_so() {
        let with = PageSetup { full: FullPanel::Ticks, ..setup([210.0, 297.0]) };
        let fingered = plan([297.0, 210.0], false, &with);
        assert_eq!((fingered.way, fingered.why), (Way::Tiles { across: 2, up: 1 }, Some(EDGE_NOT_STRAIGHT)));
        // Nothing is said where one page would not have done anyway, or does.
        assert_eq!(plan([350.0, 300.0], false, &with).why, None);
        assert_eq!(plan([190.0, 277.0], false, &with).way, Way::Whole);
    }

    /// A printer that prints 0.6 % short across the paper needs the file 1.006 times as wide, which leaves less room;
    /// turned, the same side is the page's height.
    #[test]
    fn a_corrected_page_holds_what_comes_out_true() {
        let mut with = setup([210.0, 297.0]);
        with.correction = [100.0 / 99.4, 100.0 / 100.2];
        let upright = plan([188.8, 277.5], true, &with);
        assert_eq!((upright.way, upright.paper_mm), (Way::Whole, [210.0, 297.0]));
        assert!((upright.printable()[0] - 190.0 * 0.994).abs() < 1e-9);
        assert!((upright.printable()[1] - 277.0 * 1.002).abs() < 1e-9);
        assert_eq!(plan([188.9, 277.5], true, &with).pages(), 2);
        let turned = plan([277.5, 188.8], true, &with);
        assert_eq!((turned.paper_mm, turned.scale), ([297.0, 210.0], [100.0 / 100.2, 100.0 / 99.4]));
        // Tiles meet on paper: what the next page starts with is what this one ended with, less the overlap.
        let tiled = plan([350.0, 300.0], true, &with);
        let (first, next) = (tiled.window(0, 0), tiled.window(1, 0));
        assert!((first[2] - next[0] - 10.0).abs() < 1e-9);
    }
}
