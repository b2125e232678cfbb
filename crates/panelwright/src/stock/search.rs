//! The search as a whole: one hunt with every sheet there is, and others that leave kinds of sheets out.
//!
//! What a hunt finds depends on chance and order; with one more kind of sheet at hand it goes another way, which may be a
//! worse one. So every choice of kinds has a hunt of its own with as many steps, and the best of all counts: a sheet more
//! at hand never makes a plan worse. A hunt ends when its bounds say that it cannot beat the best any more.

use super::finish;
use super::hunt::Hunt;
use super::job::{Job, JobError};
use super::nest::Nest;
use super::plan::Plan;
use super::problem::Problem;

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
/// natively. Where there are several kinds of sheets, every choice of them takes so many. The same job and the same calls
/// give the same plan on every machine.
#[derive(Debug)]
pub struct Search {
    /// What lies in openings; the job is the rest.
    nest: Nest,
    /// The first has every sheet there is.
    hunts: Vec<Hunt>,
    /// The hunt that has the best draft.
    best: usize,
    /// Steps every hunt may have taken by now.
    steps: u64,
}

/// With more kinds of sheets than this not every choice of them is tried: only each kind alone, and all but one:
/// four kinds make 15 choices already, each with a hunt of its own.
const MOST_KINDS: usize = 4;

/// Steps between two reports of [`solve`]: about ten milliseconds natively, a moment in which nobody waits (common
/// practice).
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
        let problem = Problem::new(&nest.rest);
        // What could lie in openings takes no sheet.
        let least = if nest.is_empty() { None } else { Some(Problem::new(&nest.least())) };
        let hunts = choices(&problem)
            .iter()
            .map(|kinds| {
                let mut problem = problem.only(kinds);
                if let Some(least) = &least {
                    problem.bounds = least.only(kinds).bounds;
                }
                Hunt::new(problem, nest.rest.rules.method, !nest.is_empty())
            })
            .collect();
        let mut search = Self { nest, hunts, best: 0, steps: 0 };
        search.choose();
        Ok(search)
    }

    /// Works for about so many steps more.
    pub fn step(&mut self, steps: u64) -> Progress {
        self.steps = self.steps.saturating_add(steps);
        for index in 0..self.hunts.len() {
            if index == 0 || !self.beaten(index) {
                self.hunts[index].until(self.steps);
                self.choose();
            }
        }
        self.progress()
    }

    /// How far it is.
    #[must_use]
    pub fn progress(&self) -> Progress {
        let best = &self.hunts[self.best].best;
        let too_big: usize = self.problem().too_big.iter().map(|unplaced| unplaced.count).sum();
        Progress {
            steps: self.steps,
            sheets: best.used.len(),
            bound: self.problem().bounds.sheets(),
            missing: best.unplaced.len() + too_big,
            done: (0..self.hunts.len()).all(|index| self.hunts[index].done() || self.beaten(index)),
        }
    }

    /// The best plan so far.
    #[must_use]
    pub fn plan(&self) -> Plan {
        let mut plan = finish::plan(&self.nest.rest, self.problem(), &self.hunts[self.best].best);
        self.nest.put_back(&mut plan);
        plan
    }

    /// The problem with every sheet there is, whose bounds hold for all.
    fn problem(&self) -> &Problem {
        &self.hunts[0].problem
    }

    /// Finds the hunt with the best draft.
    fn choose(&mut self) {
        for index in 0..self.hunts.len() {
            if self.hunts[index].rank() < self.hunts[self.best].rank() {
                self.best = index;
            }
        }
    }

    /// Whether a hunt can never come to a draft as good as the best one.
    fn beaten(&self, index: usize) -> bool {
        let (unplaced, sheets, weight, ..) = self.hunts[self.best].rank();
        let problem = &self.hunts[index].problem;
        let fewest = problem.bounds.sheets();
        // So few sheets may be lighter than any layout could use; no layout is lighter.
        let least = problem.lightest(fewest).unwrap_or(0);
        index != self.best && unplaced == 0 && (!problem.holds_every_group() || (fewest, least) > (sheets, weight))
    }
}

/// Choices of kinds of sheets that have a hunt each, all of them first: whether each kind is in it.
fn choices(problem: &Problem) -> Vec<Vec<bool>> {
    let there: Vec<usize> = (0..problem.stock.len()).filter(|&stock| problem.stock[stock].count > 0).collect();
    let kinds = there.len();
    let some = |chosen: &dyn Fn(usize) -> bool| {
        let mut choice = vec![false; problem.stock.len()];
        for (place, &stock) in there.iter().enumerate() {
            choice[stock] = chosen(place);
        }
        choice
    };
    let mut out = vec![some(&|_| true)];
    if kinds <= MOST_KINDS {
        out.extend((1..(1_usize << kinds).saturating_sub(1)).map(|set| some(&|place| set >> place & 1 == 1)));
    } else {
        out.extend((0..kinds).map(|alone| some(&|place| place == alone)));
        out.extend((0..kinds).map(|without| some(&|place| place != without)));
    }
    out
}
