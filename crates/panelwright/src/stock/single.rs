//! The search for one sheet that holds everything: backtracking in short runs with growing patience.
//!
//! A run that took a wrong turn early never comes back in time, so runs are short, each with another seed, laid along
//! the width and along the height by turns. Their lengths follow Luby, Sinclair and Zuckerman 1993 ("Optimal speedup
//! of Las Vegas algorithms"): 1 1 2 1 1 2 4 …

use super::board::Board;
use super::cuts;
use super::draft::{Draft, Laid, Score, Used};
use super::exact::{End, Exact, Kind, Spot};
use super::job::Method;
use super::problem::{Block, Problem};

/// Pieces tried in the shortest run: some ten for each piece of the published sets.
const PATIENCE: u64 = 250;

/// Chance in the order of pieces, on the scale of `Exact`'s scores, by turns: as much as a few hundredths of the sheet's
/// area weigh, so that pieces of about one size change places (by trial on published sets).
const NOISE: [i64; 3] = [3000, 2000, 4000];

/// The runs so far.
#[derive(Debug)]
pub(super) struct Single {
    /// Sheets large enough, lightest first.
    stocks: Vec<usize>,
    runs: u64,
    /// Everything was tried: no sheet holds everything.
    exhausted: bool,
}

impl Single {
    pub fn new(problem: &Problem) -> Self {
        let mut stocks: Vec<usize> = (0..problem.stock.len()).filter(|&stock| problem.might_hold_all(stock)).collect();
        stocks.sort_unstable_by_key(|&stock| problem.stock[stock].weight);
        Self { stocks, runs: 0, exhausted: false }
    }

    /// Whether a sheet that could hold everything would be better than the best so far.
    pub fn possible(&self, problem: &Problem, score: &Score) -> bool {
        !self.exhausted && self.stocks.iter().any(|&stock| better(problem, stock, score))
    }

    /// Whether it is proved that no sheet holds everything.
    pub const fn exhausted(&self) -> bool {
        self.exhausted
    }

    /// One run. Gives the draft if it found one.
    pub fn run(&mut self, problem: &Problem, method: Method, score: &Score, steps: &mut u64) -> Option<Draft> {
        let hopeful: Vec<usize> = self.stocks.iter().copied().filter(|&stock| better(problem, stock, score)).collect();
        let run = self.runs;
        self.runs += 1;
        let stock = *hopeful.get((run / 4) as usize % hopeful.len().max(1))?;
        let sheet = &problem.stock[stock];
        // By turns laid along the width and the height, with and without turning pieces.
        let any_turns = (0..problem.groups.len()).any(|group| problem.ways(stock, group) == (true, true));
        let modes = if any_turns { 4 } else { 2 };
        let (across, turning) = (run % 2 == 1, run % modes > 1);
        let mut kinds: Vec<Kind> = Vec::new();
        let mut of_group = Vec::new();
        for (index, group) in problem.groups.iter().enumerate() {
            let (upright, turned) = problem.ways(stock, index);
            let (w, h) = if across { (group.h, group.w) } else { (group.w, group.h) };
            let apart = if turning { 0 } else { group.swapped };
            let kind =
                Kind { w, h, count: group.pieces.len() - apart, upright, turned: turned && (turning || !upright) };
            if kind.count > 0 {
                of_group.push((index, false));
                kinds.push(kind);
            }
            // Laid as they were asked for, these are another kind.
            if apart > 0 {
                of_group.push((index, true));
                kinds.push(Kind { w: h, h: w, count: apart, upright: turned, turned: upright && !turned });
            }
        }
        let (w, h) = if across { (sheet.h, sheet.w) } else { (sheet.w, sheet.h) };
        let mut exact = Exact::new(w, h, &kinds);
        let patience = PATIENCE * luby(run / modes + 1);
        let noise = if run < modes { 0 } else { NOISE[(run / modes) as usize % NOISE.len()] };
        let mut left = patience;
        let mut draft = None;
        let plate = Block { x: 0, y: 0, w: sheet.w, h: sheet.h };
        let end = exact.run(run, noise, &mut left, &mut |spots| {
            let laid = blocks(&kinds, &of_group, spots, across);
            let all: Vec<Block> = laid.iter().map(|laid| laid.block).collect();
            if method == Method::Guillotine && cuts::tree(plate, &all).is_none() {
                return true;
            }
            let board = Board::full(&plate, &all, method);
            let area = all.iter().map(Block::area).sum();
            draft = Some(Draft { used: vec![Used { stock, laid, board, area }], unplaced: Vec::new() });
            false
        });
        *steps += patience - left;
        // Only a search that was free to turn everything, and left no gap untried, proves anything.
        let complete = exact.complete() && (turning || !any_turns);
        self.exhausted |= end == End::Exhausted && complete && self.stocks.len() == 1;
        draft
    }
}

fn better(problem: &Problem, stock: usize, score: &Score) -> bool {
    score.unplaced > 0 || (1, problem.stock[stock].weight) < (score.sheets, score.weight)
}

/// What a run found, in the sheet's own directions.
fn blocks(kinds: &[Kind], of_group: &[(usize, bool)], spots: &[Spot], across: bool) -> Vec<Laid> {
    let laid = |spot: &Spot| {
        let Kind { w, h, .. } = kinds[spot.kind];
        let (w, h) = if spot.turned { (h, w) } else { (w, h) };
        let Spot { x, y, .. } = *spot;
        let block = if across { Block { x: y, y: x, w: h, h: w } } else { Block { x, y, w, h } };
        let (group, swapped) = of_group[spot.kind];
        Laid { group, block, turned: spot.turned != swapped }
    };
    spots.iter().map(laid).collect()
}

/// The sequence 1 1 2 1 1 2 4 1 1 2 1 1 2 4 8 …, counted from 1.
fn luby(mut index: u64) -> u64 {
    loop {
        let mut whole = 1;
        while whole < index {
            whole = 2 * whole + 1;
        }
        if whole == index {
            return whole.div_ceil(2);
        }
        index -= whole / 2;
    }
}

#[cfg(test)]
mod tests {
    use super::luby;

    #[test]
    fn patience_grows_as_published() {
        // Luby, Sinclair, Zuckerman 1993, the universal strategy.
        let first: Vec<u64> = (1..=15).map(luby).collect();
        assert_eq!(first, [1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8]);
    }
}
