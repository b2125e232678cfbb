//! The search as a whole: many quick layouts, then backtracking and repair by turns, the best so far always at hand.
//!
//! 1. *Quick layouts*: pieces in some order (by area, by the longer side, …), each to the best place on the open
//!    sheets, by every sensible meaning of "best".
//! 2. If all could go on one sheet, `single` looks for that by backtracking.
//! 3. *Repair*: a few sheets, often the emptiest, are cleared and their pieces laid anew in an order with some chance.
//!    What is no worse is kept; a full sheet and a nearly empty one count better than two half-full ones.
//! 4. *Tidying*: the pieces of one sheet are laid anew, low or left, for a larger offcut.

use super::board::Fit;
use super::draft::{Draft, Score, Used};
use super::finish::{self, whole};
use super::job::{Job, JobError, Method};
use super::nest::Nest;
use super::offcuts::offcuts;
use super::orders;
use super::plan::Plan;
use super::problem::{Block, Problem};
use super::single::Single;
use crate::chance::Random;

/// How far a search is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Steps taken.
    pub steps: u64,
    /// Sheets the best plan so far uses.
    pub sheets: usize,
    /// Sheets no plan can go below.
    pub bound: usize,
    /// Pieces the best plan so far leaves out, those too big for every sheet included.
    pub missing: usize,
    /// Whether more steps would change nothing: the bound is met and tidying has ended.
    pub done: bool,
}

/// A search that goes on for as long as it is given steps.
///
/// A step is one place looked at for one piece, or one piece tried in backtracking: a tenth of a microsecond or so
/// natively. The same job and the same calls give the same plan on every machine.
#[derive(Debug)]
pub struct Search {
    /// What lies in openings; the job is the rest.
    nest: Nest,
    problem: Problem,
    best: Draft,
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

/// Tries of tidying without success after which a plan that meets the bound is left alone.
const TIDY_ENOUGH: u64 = 200;

/// Tries of repair without success after which it starts again from the best draft.
const REPAIR_ENOUGH: u64 = 500;

/// Quick layouts tried before anything else.
const QUICK: u64 = 24;

/// Steps between two reports of [`solve`].
const SLICE: u64 = 100_000;

/// Searches with about `steps` steps at most. After every slice of work `report` is told how far it is; when it says
/// `false`, the best plan so far is given at once.
///
/// # Errors
///
/// A number of the job makes no sense.
pub fn solve(job: &Job, steps: u64, report: &mut dyn FnMut(Progress) -> bool) -> Result<Plan, JobError> {
    let mut search = Search::new(job)?;
    while search.steps < steps {
        let progress = search.step(SLICE.min(steps - search.steps));
        if progress.done || !report(progress) {
            break;
        }
    }
    Ok(search.plan())
}

impl Search {
    /// A search with a first quick plan.
    ///
    /// # Errors
    ///
    /// A number of the job makes no sense.
    pub fn new(job: &Job) -> Result<Self, JobError> {
        job.validate()?;
        let nest = Nest::new(job);
        let mut problem = Problem::new(&nest.rest);
        if !nest.is_empty() {
            problem.bounds = Problem::new(&nest.least()).bounds;
        }
        let mut search = Self {
            nest,
            best: Draft::default(),
            score: Score { unplaced: i64::MAX, weight: 0, sheets: 0, spread: 0.0 },
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
        };
        search.turn();
        Ok(search)
    }

    /// Works for about so many steps more.
    pub fn step(&mut self, steps: u64) -> Progress {
        let end = self.steps.saturating_add(steps);
        while self.steps < end && !self.done() {
            self.turn();
        }
        self.progress()
    }

    /// How far it is.
    #[must_use]
    pub fn progress(&self) -> Progress {
        let too_big: usize = self.problem.too_big.iter().map(|unplaced| unplaced.count).sum();
        Progress {
            steps: self.steps,
            sheets: self.best.used.len(),
            bound: self.problem.bounds.sheets(),
            missing: self.best.unplaced.len() + too_big,
            done: self.done(),
        }
    }

    /// The best plan so far.
    #[must_use]
    pub fn plan(&self) -> Plan {
        let mut plan = finish::plan(&self.nest.rest, &self.problem, &self.best);
        self.nest.put_back(&mut plan);
        plan
    }

    fn done(&self) -> bool {
        self.problem.groups.is_empty() || self.met() && self.tidied >= TIDY_ENOUGH
    }

    fn met(&self) -> bool {
        self.best.unplaced.is_empty() && finish::fewest(&self.problem, &self.best)
    }

    fn method(&self) -> Method {
        self.nest.rest.rules.method
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
            orders::quick(self.quick - 1, self.method(), self.problem.stock.len())
        } else {
            None
        };
        if let Some((key, style)) = quick {
            let mut pieces = self.pieces();
            orders::sort(&self.problem, &mut pieces, key, 0, &mut self.dice);
            let mut draft = Draft::default();
            draft.lay((&self.problem, self.method()), 0, &pieces, style, &mut self.steps);
            self.consider(&draft);
        } else if self.met() || round.is_multiple_of(16) {
            self.tidy();
        } else if round.is_multiple_of(2) && self.single.possible(&self.problem, &self.score) {
            let method = self.method();
            if let Some(draft) = self.single.run(&self.problem, method, &self.score, &mut self.steps) {
                self.consider(&draft);
            }
            // Another choice of what lies in openings might leave less for the sheet.
            if self.single.exhausted() && self.nest.is_empty() {
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
        let count = |score: &Score| (score.unplaced, score.weight, score.sheets);
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
        let left = offcuts(whole(&self.problem, used), &blocks, gap, self.method(), 1);
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
        draft.lay((&self.problem, self.method()), closed, &pieces, style, &mut self.steps);
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

    /// Lays the pieces of one sheet anew so that what is left is in one.
    fn tidy(&mut self) {
        self.tidied += 1;
        if self.best.used.is_empty() {
            return;
        }
        let at =
            if self.dice.below(2) == 0 { emptiest(&self.best.used) } else { self.dice.below(self.best.used.len()) };
        let used = &self.best.used[at];
        let mut pieces: Vec<usize> = used.laid.iter().map(|laid| laid.group).collect();
        let (key, mut style) = orders::any(&mut self.dice);
        style.taste.fit = [Fit::Low, Fit::Left][self.dice.below(2)];
        let noise = [0, 10, 40, 200][self.dice.below(4)];
        orders::sort(&self.problem, &mut pieces, key, noise, &mut self.dice);
        let mut sheet = Draft { used: vec![used.cleared(&self.problem, self.method())], unplaced: Vec::new() };
        sheet.lay((&self.problem, self.method()), 0, &pieces, style, &mut self.steps);
        if sheet.used.len() > 1 || !sheet.unplaced.is_empty() {
            return;
        }
        let offcut = self.offcut_of(&sheet.used[0]);
        if offcut > self.offcut {
            let mut draft = self.best.clone();
            draft.used[at] = sheet.used.remove(0);
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
