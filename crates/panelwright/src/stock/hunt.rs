//! One search on one choice of sheets: many quick layouts, then backtracking and repair by turns, the best so far always
//! at hand.
//!
//! 1. *Quick layouts*: pieces in some order (by area, by the longer side, …), each to the best place on the open
//!    sheets, by every sensible meaning of "best".
//! 2. If all could go on one sheet, `single` looks for that by backtracking.
//! 3. *Repair*: a few sheets, often the emptiest, are cleared and their pieces laid anew in an order with some chance.
//!    What is no worse is kept; a full sheet and a nearly empty one count better than two half-full ones.
//! 4. *Tidying*: the pieces of one sheet are laid anew, low or left, for a larger offcut; or on a lighter sheet.

use super::board::Fit;
use super::draft::{Draft, Score, Style, Used};
use super::finish::whole;
use super::job::Method;
use super::offcuts::offcuts;
use super::orders;
use super::problem::{Block, Problem};
use super::single::Single;
use crate::chance::Random;

/// A search on one choice of sheets, for as long as it is given steps.
#[derive(Debug)]
pub(super) struct Hunt {
    pub problem: Problem,
    method: Method,
    /// Whether pieces lie in openings: then another choice of those might leave less for the sheets.
    nested: bool,
    pub best: Draft,
    score: Score,
    /// Area of the best draft's largest offcut.
    offcut: i64,
    /// The draft that repair works on.
    current: Draft,
    /// Tries since repair last found something better.
    idle: u64,
    /// Tries since tidying last found something better.
    tidied: u64,
    round: u64,
    /// Quick layouts tried.
    quick: u64,
    single: Single,
    dice: Random,
    steps: u64,
}

/// Tries of tidying without success after which a plan that meets the bound is left alone: a choice
/// between waiting and a larger offcut.
const TIDY_ENOUGH: u64 = 200;

/// Tries of repair without success after which it starts again from the best draft: a choice.
const REPAIR_ENOUGH: u64 = 500;

/// Quick layouts tried before anything else: every meaning of large by four meanings of best, which come first in
/// `orders::quick`.
const QUICK: u64 = 24;

impl Hunt {
    /// A search with a first quick plan.
    pub fn new(problem: Problem, method: Method, nested: bool) -> Self {
        let mut hunt = Self {
            best: Draft::default(),
            score: Score { unplaced: i64::MAX, sheets: 0, weight: 0, bought: 0, spread: 0.0 },
            offcut: 0,
            current: Draft::default(),
            idle: 0,
            tidied: 0,
            round: 0,
            quick: 0,
            single: Single::new(&problem),
            dice: Random::new(1),
            steps: 0,
            problem,
            method,
            nested,
        };
        hunt.turn();
        hunt
    }

    /// Works until about so many steps have been taken in all.
    pub fn until(&mut self, steps: u64) {
        while self.steps < steps && !self.done() {
            self.turn();
        }
    }

    /// How good the best draft is: the lower one is better.
    pub const fn rank(&self) -> (i64, usize, i64, usize, i64) {
        let Score { unplaced, sheets, weight, bought, .. } = self.score;
        (unplaced, sheets, weight, bought, -self.offcut)
    }

    /// Whether more steps would change nothing: no draft can be better, and tidying has ended.
    pub fn done(&self) -> bool {
        self.problem.groups.is_empty() || self.met() && self.tidied >= TIDY_ENOUGH
    }

    /// Whether the best draft takes the fewest and lightest sheets, proved by the bounds.
    fn met(&self) -> bool {
        self.best.unplaced.is_empty()
            && self.score.sheets <= self.problem.bounds.sheets()
            && self.problem.lightest(self.score.sheets).is_some_and(|least| self.score.weight <= least)
    }

    /// One piece of work.
    fn turn(&mut self) {
        // Whatever comes of it, a turn counts: a search must come to its end.
        self.steps += 1;
        let round = self.round;
        self.round += 1;
        // The first quick layouts at once, the others by and by.
        let quick = if round < QUICK || round % 4 == 3 {
            self.quick += 1;
            orders::quick(self.quick - 1, self.method, self.problem.kinds())
        } else {
            None
        };
        if let Some((key, style)) = quick {
            let mut pieces = self.pieces();
            orders::sort(&self.problem, &mut pieces, key, 0, &mut self.dice);
            let mut draft = Draft::default();
            draft.lay((&self.problem, self.method), 0, &pieces, style, &mut self.steps);
            self.consider(&draft);
        } else if self.problem.kinds() > 1 && round % 16 == 8 {
            self.lighten();
        } else if self.met() || round.is_multiple_of(16) {
            self.tidy();
        } else if round.is_multiple_of(2) && self.single.possible(&self.problem, &self.score) {
            if let Some(draft) = self.single.run(&self.problem, self.method, &self.score, &mut self.steps) {
                self.consider(&draft);
            }
            // Another choice of what lies in openings might leave less for the sheet.
            if self.single.exhausted() && !self.nested {
                self.problem.bounds.tried = 2;
            }
        } else {
            self.repair();
        }
    }

    /// Every piece by its group.
    fn pieces(&self) -> Vec<usize> {
        let groups = self.problem.groups.iter().enumerate();
        groups.flat_map(|(index, group)| std::iter::repeat_n(index, group.pieces.len())).collect()
    }

    /// Takes the draft if it is better than the best.
    fn consider(&mut self, draft: &Draft) -> bool {
        let score = draft.score(&self.problem);
        let count = |score: &Score| (score.unplaced, score.sheets, score.weight, score.bought);
        if count(&score) > count(&self.score) {
            return false;
        }
        let better = count(&score) < count(&self.score);
        // The largest offcut is costly to find: only a draft with a fuller fullest sheet is looked at.
        if !better && score.spread >= self.score.spread {
            return false;
        }
        let offcut = self.largest(draft);
        if !better && offcut < self.offcut {
            return false;
        }
        self.take(draft.clone(), score, offcut);
        true
    }

    fn take(&mut self, draft: Draft, score: Score, offcut: i64) {
        self.current = draft.clone();
        self.best = draft;
        self.score = score;
        self.offcut = offcut;
        self.idle = 0;
        self.tidied = 0;
    }

    fn largest(&self, draft: &Draft) -> i64 {
        draft.used.iter().map(|used| self.offcut_of(used)).max().unwrap_or(0)
    }

    fn offcut_of(&self, used: &Used) -> i64 {
        let blocks: Vec<Block> = used.laid.iter().map(|laid| laid.block).collect();
        let gap = self.problem.gap;
        let left = offcuts(whole(&self.problem, used), &blocks, gap, self.method, 1);
        left.iter().map(|block| (block.w - gap) * (block.h - gap)).max().unwrap_or(0)
    }

    /// Clears a few sheets and lays their pieces anew.
    fn repair(&mut self) {
        let before = self.current.score(&self.problem);
        let mut draft = self.current.clone();
        let mut pieces = std::mem::take(&mut draft.unplaced);
        let cleared = 1 + self.dice.below(draft.used.len().min(4));
        for index in 0..cleared.min(draft.used.len()) {
            let at = if index == 0 && self.dice.below(3) > 0 {
                emptiest(&draft.used)
            } else {
                self.dice.below(draft.used.len())
            };
            pieces.extend(draft.used.remove(at).laid.iter().map(|laid| laid.group));
        }
        let (key, style) = orders::any(&mut self.dice);
        let noise = [10, 40, 100, 300][self.dice.below(4)];
        orders::sort(&self.problem, &mut pieces, key, noise, &mut self.dice);
        // By turns only among themselves, or with what room there is elsewhere.
        let closed = if self.dice.below(2) == 0 { draft.used.len() } else { 0 };
        draft.lay((&self.problem, self.method), closed, &pieces, style, &mut self.steps);
        self.idle += 1;
        if draft.score(&self.problem) <= before {
            if !self.consider(&draft) {
                self.current = draft;
            }
        } else if self.idle.is_multiple_of(REPAIR_ENOUGH) {
            // By turns from the best again, and from what just came out of it: another corner of the search.
            self.current = if (self.idle / REPAIR_ENOUGH).is_multiple_of(2) { self.best.clone() } else { draft };
        }
    }

    /// Lays the pieces of one sheet anew on a lighter one.
    fn lighten(&mut self) {
        if self.best.used.is_empty() {
            return;
        }
        let at = self.dice.below(self.best.used.len());
        let mut used = self.best.used[at].clone();
        let lighter: Vec<usize> = (0..self.problem.stock.len())
            .filter(|&stock| {
                let taken = self.best.used.iter().filter(|used| used.stock == stock).count();
                let sheet = &self.problem.stock[stock];
                stock != used.stock
                    && taken < sheet.count
                    && sheet.weight <= self.problem.stock[used.stock].weight
                    && sheet.w * sheet.h >= used.area
            })
            .collect();
        if lighter.is_empty() {
            return;
        }
        let mut pieces: Vec<usize> = used.laid.iter().map(|laid| laid.group).collect();
        used.stock = lighter[self.dice.below(lighter.len())];
        let (key, style) = orders::any(&mut self.dice);
        let noise = [0, 10, 40, 200][self.dice.below(4)];
        orders::sort(&self.problem, &mut pieces, key, noise, &mut self.dice);
        if let Some(used) = self.anew(&used, &pieces, style) {
            let mut draft = self.best.clone();
            draft.used[at] = used;
            self.consider(&draft);
        }
    }

    /// The pieces laid on an empty sheet of the same kind; `None` when it does not hold them all.
    fn anew(&mut self, used: &Used, pieces: &[usize], style: Style) -> Option<Used> {
        let mut sheet = Draft { used: vec![used.cleared(&self.problem, self.method)], unplaced: Vec::new() };
        sheet.lay((&self.problem, self.method), 0, pieces, style, &mut self.steps);
        if sheet.used.len() > 1 || !sheet.unplaced.is_empty() { None } else { sheet.used.pop() }
    }

    /// Lays the pieces of one sheet anew so that what is left is in one.
    fn tidy(&mut self) {
        self.tidied += 1;
        if self.best.used.is_empty() {
            return;
        }
        let at =
            if self.dice.below(2) == 0 { emptiest(&self.best.used) } else { self.dice.below(self.best.used.len()) };
        let used = self.best.used[at].clone();
        let mut pieces: Vec<usize> = used.laid.iter().map(|laid| laid.group).collect();
        let (key, mut style) = orders::any(&mut self.dice);
        style.taste.fit = [Fit::Low, Fit::Left][self.dice.below(2)];
        let noise = [0, 10, 40, 200][self.dice.below(4)];
        orders::sort(&self.problem, &mut pieces, key, noise, &mut self.dice);
        let Some(sheet) = self.anew(&used, &pieces, style) else { return };
        let offcut = self.offcut_of(&sheet);
        if offcut > self.offcut {
            let mut draft = self.best.clone();
            draft.used[at] = sheet;
            self.take(draft, self.score, offcut);
        }
    }
}

/// The sheet with the least on it.
fn emptiest(used: &[Used]) -> usize {
    let mut least = 0;
    for index in 1..used.len() {
        if used[index].area < used[least].area {
            least = index;
        }
    }
    least
}
