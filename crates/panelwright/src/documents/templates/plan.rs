//! How many pages a panel needs, which way they lie, and which part of the panel each shows.

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
}

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
    /// Page width and height as it lies (turned papers are wider than high).
    pub page_mm: [f64; 2],
    /// Size of the panel.
    pub panel_mm: [f64; 2],
    /// Margin on every side.
    pub margin_mm: f64,
    /// Overlap of neighbouring pages.
    pub overlap_mm: f64,
}

/// Lengths that agree within this are the same, mm: far below what paper or printer keep, far above rounding.
const HAIR_MM: f64 = 1e-9;

/// Plans the pages of a panel: one page when it fits, else as few as possible.
#[must_use]
pub fn plan(panel_mm: [f64; 2], setup: &PageSetup) -> PagePlan {
    let upright = setup.paper_mm;
    let turned = [upright[1], upright[0]];
    let make =
        |way, page_mm| PagePlan { way, page_mm, panel_mm, margin_mm: setup.margin_mm, overlap_mm: setup.overlap_mm };
    let fits = |room: [f64; 2]| panel_mm[0] <= room[0] + HAIR_MM && panel_mm[1] <= room[1] + HAIR_MM;
    let printable = |page: [f64; 2]| page.map(|length| length - 2.0 * setup.margin_mm);
    for page in [upright, turned] {
        if fits(printable(page)) {
            return make(Way::Whole, page);
        }
    }
    if setup.full == FullPanel::Ticks {
        for page in [upright, turned] {
            if fits(page) {
                return make(Way::Ticks, page);
            }
        }
    }
    let tiles = |page: [f64; 2]| {
        let room = printable(page);
        [0, 1].map(|axis| count(panel_mm[axis], room[axis], setup.overlap_mm))
    };
    let best = if product(tiles(turned)) < product(tiles(upright)) { turned } else { upright };
    let [across, up] = tiles(best);
    make(Way::Tiles { across, up }, best)
}

fn product(counts: [usize; 2]) -> usize {
    counts[0] * counts[1]
}

/// Pages along one direction: each shows `room` and shares `overlap` with the next.
fn count(length: f64, room: f64, overlap: f64) -> usize {
    let step = (room - overlap).max(1.0);
    // The hair keeps a panel of exactly n pages from needing one more by binary fractions.
    libm::ceil((length - overlap) / step - HAIR_MM).max(1.0) as usize
}

impl PagePlan {
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
            let room = self.page_mm[axis] - 2.0 * self.margin_mm;
            let step = room - self.overlap_mm;
            let covered = step * grid[axis] as f64 + self.overlap_mm;
            let start = if grid[axis] == 1 {
                (self.page_mm[axis] - self.panel_mm[axis]) / 2.0
            } else {
                self.margin_mm + (covered - self.panel_mm[axis]) / 2.0
            };
            start - step * at[axis] as f64
        })
    }

    /// The printable part of a page in the panel's frame: `[x0, y0, x1, y1]`.
    #[must_use]
    pub fn window(&self, column: usize, row: usize) -> [f64; 4] {
        let origin = self.origin(column, row);
        let low = origin.map(|start| self.margin_mm - start);
        [
            low[0],
            low[1],
            low[0] + self.page_mm[0] - 2.0 * self.margin_mm,
            low[1] + self.page_mm[1] - 2.0 * self.margin_mm,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn setup(paper_mm: [f64; 2]) -> PageSetup {
        PageSetup { paper_mm, margin_mm: 10.0, overlap_mm: 10.0, full: FullPanel::Tiles }
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
            assert_eq!(plan(panel, paper).pages(), pages, "{panel:?}");
        }
    }

    #[test]
    fn a_panel_of_the_papers_own_size_takes_one_page_with_ticks_or_tiles_as_chosen() {
        let mut with = setup([210.0, 297.0]);
        // Upright 190 x 277: 287 in steps of 180 and 200 in steps of 267; turned it would take four.
        assert_eq!(plan([297.0, 210.0], &with).way, Way::Tiles { across: 2, up: 1 });
        with.full = FullPanel::Ticks;
        let plan = plan([297.0, 210.0], &with);
        assert_eq!((plan.way, plan.page_mm), (Way::Ticks, [297.0, 210.0]));
    }

    #[test]
    fn every_point_of_a_panel_is_printable_on_some_page_and_neighbours_share_the_overlap() {
        for panel in [[350.0, 300.0], [460.0, 520.0], [190.1, 277.0], [700.0, 90.0]] {
            for paper in [[210.0, 297.0], [215.9, 279.4]] {
                let plan = plan(panel, &setup(paper));
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
}
