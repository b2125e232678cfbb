//! A layout while the search works on it: sheets with groups on them, and how good that is.

use super::board::{Board, Place, Taste};
use super::job::Method;
use super::problem::{Block, Problem};

/// A piece of a group on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Laid {
    pub group: usize,
    pub block: Block,
    pub turned: bool,
}

/// A sheet in use.
#[derive(Clone, Debug)]
pub(super) struct Used {
    pub stock: usize,
    pub laid: Vec<Laid>,
    pub board: Board,
    /// Area laid.
    pub area: i64,
}

/// Sheets in use and what found no place on them.
#[derive(Clone, Debug, Default)]
pub(super) struct Draft {
    pub used: Vec<Used>,
    /// Groups, one entry a piece.
    pub unplaced: Vec<usize>,
}

/// How good a draft is; the lower one is better: what has no place, then how many sheets, then how much they weigh. The
/// last number falls when a few sheets are full and the others nearly empty: that is the way to one sheet less, and to a
/// large offcut.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub(super) struct Score {
    pub unplaced: i64,
    pub sheets: usize,
    pub weight: i64,
    /// Sheets that are no offcuts: of two equal ones the one at hand is taken.
    pub bought: usize,
    pub spread: f64,
}

/// Which new sheet is opened when no open one has room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Open {
    /// The lightest that the piece fits.
    Light,
    /// The one that is lightest for its area.
    Cheap,
    /// The largest.
    Large,
}

/// All the ways a draft can be made from an order of pieces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Style {
    pub taste: Taste,
    pub open: Open,
    /// Best place on any open sheet, or on the first that has room.
    pub anywhere: bool,
}

impl Used {
    /// The same sheet with nothing on it.
    pub fn cleared(&self, problem: &Problem, method: Method) -> Self {
        let stock = &problem.stock[self.stock];
        Self { stock: self.stock, laid: Vec::new(), board: Board::new(stock.w, stock.h, method), area: 0 }
    }
}

impl Draft {
    /// Lays pieces in the given order on the sheets in use but the first `closed`, then on new ones. Takes a step for
    /// every place looked at.
    pub fn lay(&mut self, on: (&Problem, Method), closed: usize, order: &[usize], style: Style, steps: &mut u64) {
        let (problem, method) = on;
        let mut free: Vec<usize> = problem.stock.iter().map(|stock| stock.count).collect();
        for used in &self.used {
            free[used.stock] -= 1;
        }
        let fit = style.taste.fit;
        for &group in order {
            let (w, h) = (problem.groups[group].w, problem.groups[group].h);
            let mut best: Option<(usize, Place)> = None;
            for (index, used) in self.used.iter().enumerate().skip(closed) {
                *steps += used.board.free().len() as u64;
                let place = used.board.best(w, h, problem.ways(used.stock, group), fit);
                if let Some(place) = place
                    && best.is_none_or(|(_, best)| place.score < best.score)
                {
                    best = Some((index, place));
                    if !style.anywhere {
                        break;
                    }
                }
            }
            if best.is_none()
                && let Some(stock) = next_sheet(problem, &free, group, style.open)
            {
                free[stock] -= 1;
                let board = Board::new(problem.stock[stock].w, problem.stock[stock].h, method);
                *steps += 1;
                let place = board.best(w, h, problem.ways(stock, group), fit);
                best = place.map(|place| (self.used.len(), place));
                self.used.push(Used { stock, laid: Vec::new(), board, area: 0 });
            }
            let Some((index, place)) = best else {
                self.unplaced.push(group);
                continue;
            };
            let used = &mut self.used[index];
            used.board.lay(&place, style.taste.split);
            used.laid.push(Laid { group, block: place.block, turned: place.turned });
            used.area += place.block.area();
        }
    }

    pub fn score(&self, problem: &Problem) -> Score {
        let mut spread = 0.0;
        let (mut weight, mut bought) = (0, 0);
        for used in &self.used {
            let stock = &problem.stock[used.stock];
            let share = used.area as f64 / (stock.w * stock.h) as f64;
            spread -= share * share;
            weight += stock.weight;
            bought += usize::from(!stock.offcut);
        }
        let unplaced = self.unplaced.iter().map(|&group| problem.area(group)).sum();
        Score { unplaced, sheets: self.used.len(), weight, bought, spread }
    }
}

/// The sheet to open for a piece, if one is left that it fits.
fn next_sheet(problem: &Problem, free: &[usize], group: usize, open: Open) -> Option<usize> {
    let mut best = None;
    let mut least = f64::INFINITY;
    for (index, stock) in problem.stock.iter().enumerate() {
        let ways = problem.ways(index, group);
        if free[index] == 0 || !(ways.0 || ways.1) {
            continue;
        }
        let area = (stock.w * stock.h) as f64;
        let value = match open {
            Open::Light => stock.weight as f64,
            Open::Cheap => stock.weight as f64 / area,
            Open::Large => -area,
        };
        if value < least {
            least = value;
            best = Some(index);
        }
    }
    best
}
