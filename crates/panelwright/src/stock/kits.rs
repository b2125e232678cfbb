//! Kits: how many complete cases a stack of sheets gives.
//!
//! A kit is all pieces of one case. Several designs may be mixed: a *round* holds each kit as often as its share says,
//! and the question is how many rounds fit. The answer lies between a number that has been packed and a number that
//! the lower bounds allow; the search halves that span with little patience, then tries one more round with as many
//! steps as it is given.

use super::job::{Job, JobError, MOST, Piece, Rules, Sheet};
use super::nest::Nest;
use super::plan::Plan;
use super::problem::Problem;
use super::search::{Search, solve};

/// All pieces of one case.
#[derive(Clone, Debug, PartialEq)]
pub struct Kit {
    /// What the maker calls it.
    pub label: String,
    /// How many of it are in one round; 0 leaves it out.
    pub share: usize,
    /// Its pieces, with their counts for one case.
    pub pieces: Vec<Piece>,
}

/// How many rounds were found, and how they lie on the sheets.
#[derive(Clone, Debug, PartialEq)]
pub struct KitPlan {
    /// Complete rounds.
    pub rounds: usize,
    /// Rounds that nothing can go above; equal to `rounds` when that is proved to be the most.
    pub bound: usize,
    /// The job that was packed: the pieces of all kits one after the other, `count` for all rounds together.
    pub job: Job,
    /// Where they lie.
    pub plan: Plan,
}

/// A search for the most rounds, for as long as it is given steps.
#[derive(Debug)]
pub struct KitSearch {
    kits: Vec<Kit>,
    sheets: Vec<Sheet>,
    rules: Rules,
    /// Rounds packed, and the search that packed them.
    rounds: usize,
    packed: Search,
    bound: usize,
    /// Rounds now tried, and their search.
    trial: Option<(usize, Search)>,
    /// Halving goes on between `rounds` and this.
    above: usize,
    steps: u64,
}

/// Steps a number of rounds gets while the span is halved: a few milliseconds, for most numbers tried are clearly too many
/// or too few.
const QUICK: u64 = 30_000;

impl KitSearch {
    /// A search for kits from sheets. Sheets without a count are as many as [`MOST`] pieces could ever need.
    ///
    /// # Errors
    ///
    /// A number makes no sense, or one round alone has too many pieces.
    pub fn new(kits: &[Kit], sheets: &[Sheet], rules: Rules) -> Result<Self, JobError> {
        let job = |rounds| job(kits, sheets, rules, rounds);
        job(1).validate()?;
        let packed = Search::new(&job(0))?;
        let pieces: usize = job(1).pieces.iter().map(|piece| piece.count).sum();
        let stack = sheets.iter().fold(0_usize, |sum, sheet| sum.saturating_add(sheet.count.unwrap_or(MOST)));
        // The most rounds the bounds allow, by halving: the bounds never fall with more rounds.
        let mut bound = 0;
        let mut above = MOST.checked_div(pieces).unwrap_or(0) + 1;
        while bound + 1 < above {
            let middle = usize::midpoint(bound, above);
            if allowed(&job(middle), stack) {
                bound = middle;
            } else {
                above = middle;
            }
        }
        Ok(Self {
            kits: kits.to_vec(),
            sheets: sheets.to_vec(),
            rules,
            rounds: 0,
            packed,
            bound,
            trial: None,
            above: bound + 1,
            steps: 0,
        })
    }

    /// Works for about so many steps more; gives whether the most rounds are found and proved, and laid tidily.
    pub fn step(&mut self, steps: u64) -> bool {
        let end = self.steps.saturating_add(steps);
        while self.steps < end && !self.done() {
            let slice = QUICK.min(end - self.steps);
            self.steps += slice;
            if self.rounds == self.bound {
                self.packed.step(slice);
            } else {
                self.search(slice);
            }
        }
        self.done()
    }

    /// Complete rounds found so far.
    #[must_use]
    pub const fn rounds(&self) -> usize {
        self.rounds
    }

    /// Rounds that nothing can go above.
    #[must_use]
    pub const fn bound(&self) -> usize {
        self.bound
    }

    /// The best so far.
    #[must_use]
    pub fn plan(&self) -> KitPlan {
        let job = job(&self.kits, &self.sheets, self.rules, self.rounds);
        KitPlan { rounds: self.rounds, bound: self.bound, job, plan: self.packed.plan() }
    }

    /// A plan for a given number of rounds, at most those found; for fewer a new search with at most `steps` steps.
    /// `None` when it does not place them all, although more rounds were placed.
    #[must_use]
    pub fn plan_of(&self, rounds: usize, steps: u64) -> Option<KitPlan> {
        if rounds >= self.rounds {
            return Some(self.plan());
        }
        let job = job(&self.kits, &self.sheets, self.rules, rounds);
        // The numbers were validated when the search began.
        let plan = solve(&job, steps, &mut |_| true).ok()?;
        (plan.missing() == 0).then_some(KitPlan { rounds, bound: self.bound, job, plan })
    }

    fn done(&self) -> bool {
        self.rounds == self.bound && self.packed.progress().done
    }

    fn search(&mut self, steps: u64) {
        if self.trial.is_none() {
            let rounds =
                if self.above > self.rounds + 1 { usize::midpoint(self.rounds, self.above) } else { self.rounds + 1 };
            // The numbers were validated; a job that is not is none that could be packed.
            let search = Search::new(&job(&self.kits, &self.sheets, self.rules, rounds));
            self.trial = search.ok().map(|search| (rounds, search));
        }
        let Some((rounds, search)) = &mut self.trial else {
            self.bound = self.rounds;
            return;
        };
        // Once everything lies, more steps would only tidy; that comes when no more rounds are to be had.
        let mut left = steps;
        while left > 0 && search.progress().missing > 0 {
            let slice = left.min(1000);
            search.step(slice);
            left -= slice;
        }
        let rounds = *rounds;
        if search.progress().missing == 0 {
            if let Some((_, search)) = self.trial.take() {
                self.packed = search;
                self.rounds = rounds;
                self.above = self.above.max(rounds + 1);
            }
        } else if rounds > self.rounds + 1 {
            self.above = rounds;
            self.trial = None;
        } else {
            self.above = rounds;
        }
    }
}

/// Whether the bounds let a job on so many sheets.
fn allowed(job: &Job, stack: usize) -> bool {
    if !Problem::new(job).too_big.is_empty() {
        return false;
    }
    // What could lie in openings takes no sheet.
    let problem = Problem::new(&Nest::new(job).least());
    let area: i64 = problem.groups.iter().map(|group| group.w * group.h * group.pieces.len() as i64).sum();
    let room: i64 = problem.stock.iter().map(|stock| stock.w * stock.h * stock.count as i64).sum();
    problem.bounds.sheets() <= stack && area <= room
}

/// The pieces of so many rounds.
fn job(kits: &[Kit], sheets: &[Sheet], rules: Rules, rounds: usize) -> Job {
    let pieces = kits.iter().flat_map(|kit| {
        kit.pieces.iter().map(move |piece| {
            let count = piece.count.saturating_mul(kit.share).saturating_mul(rounds);
            Piece { count, ..piece.clone() }
        })
    });
    Job { pieces: pieces.collect(), sheets: sheets.to_vec(), rules }
}
