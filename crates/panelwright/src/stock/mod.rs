//! Stock: rectangles on the sheets a maker has, on as few sheets, then as little of them, as can be found, with as much
//! as can be left in one piece.
//!
//! Knows nothing of panels: sizes, counts and labels go in, places come out.
//!
//! ```text
//! Job (pieces, sheets, rules) -> Search, step by step -> Plan (places, offcuts, saw cuts, bounds)
//! ```
//!
//! New here? Read in this order:
//!
//! * [`Job`], the question: `job.rs`; [`Plan`], the answer: `plan.rs`.
//! * `problem.rs`: the same question in whole thousandths of a millimetre, gap and trim inside the sizes.
//! * `board.rs`: one sheet, and the best place for the next piece; `draft.rs`: several sheets.
//! * `search.rs`: which sheets are tried together; `hunt.rs`: what is tried on them, in which order.
//! * `exact.rs` and `single.rs`: the backtracking that finds layouts without waste.
//! * `nest.rs`: small pieces in the openings of large ones.
//! * `cuts.rs`: the order of saw cuts; `offcuts.rs`: what is left; `bounds.rs`: what nobody can beat.
//! * `kits.rs`: how many complete cases a stack of sheets gives.
//! * `check.rs`: says whether a plan keeps every rule, sharing no code with the search.
//!
//! Nothing here looks at a clock: work is counted in steps, so the same job gives the same plan everywhere. Whoever
//! calls gives steps for as long as there is time, and has the best plan so far at any moment.

mod board;
mod bounds;
#[cfg(test)]
pub(crate) mod check;
mod cuts;
mod draft;
mod exact;
mod finish;
mod hunt;
mod job;
mod kits;
mod nest;
mod offcuts;
mod orders;
mod plan;
mod problem;
mod search;
mod single;

pub use cuts::{Cut, Edge, Part};
pub use job::{Grain, Job, JobError, LARGEST, MOST, Method, Piece, Rules, Sheet};
pub use kits::{Kit, KitPlan, KitSearch};
pub use plan::{Bounds, OFFCUT, Placed, Plan, Reason, Rect, SheetPlan, Unplaced};
pub use search::{Progress, Search, solve};

#[cfg(test)]
mod tests;
