//! Panels: every sheet part worked out flat, with every hole and opening and the reason for it.
//!
//! [`work_out`] goes in this order: plain panels; what each part asks of them; brackets and captive nuts, which look for
//! free places; vents, which leave out whatever would come too near to something else; the letters of the hole key.
//!
//! Invariants: a feature always says why it is there and where its size comes from; nothing is cut whose size nobody
//! knows; no part is moved here.

mod bench;
mod board;
mod card;
mod corner;
mod drive;
mod fan;
mod feet;
mod fixing;
mod front;
mod hardware;
mod hole_key;
mod joints;
mod lane;
mod left_out;
mod outline;
mod panel;
mod screws;
mod seat;
mod sheet;
mod site;
mod sleeve;
mod supply;
#[cfg(test)]
mod tests;
pub mod vent_pattern;
mod vents;
pub mod words;

pub(crate) use drive::washers_with_a_screw;
pub(crate) use joints::{THINNEST_BLOCK_MM, finger_widths, stem};
pub use left_out::{NoVent, Unplaced, VentLeftOut};
pub use panel::{Assembly, Edge, EdgeJoint, Face, Feature, FeatureKind, Panel, Purpose};

use crate::arrangement::Arrangement;
use crate::design::Spec;
use crate::fastening::{Fastener, Screw, shopping_list};
use crate::parts::Part;
use bench::Bench;

/// Everything worked out from an arrangement.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Floor, back, left, right, front, top.
    pub panels: Vec<Panel>,
    /// Brackets, captive nuts and washers, as parts.
    pub hardware: Vec<Part>,
    /// Every screw in its place.
    pub screws: Vec<Screw>,
    /// What is bought besides screws and their nuts and washers: standoffs, feet, brackets.
    pub loose: Vec<Fastener>,
    /// Hardware that found no free place.
    pub unplaced: Vec<Unplaced>,
    /// Vents of which not one opening was cut.
    pub left_out: Vec<VentLeftOut>,
}

impl Worked {
    /// The shopping list: every screw, nut, washer, bracket, standoff and foot, each kind once with its number.
    #[must_use]
    pub fn fasteners(&self) -> Vec<Fastener> {
        shopping_list(&self.screws, &self.loose)
    }
}

/// Works out the six panels, the hardware and the screws of an arrangement.
#[must_use]
pub fn work_out(spec: &Spec, arrangement: &Arrangement) -> Worked {
    let mut bench = with_parts(spec, arrangement);
    hardware::features(&mut bench);
    vents::features(&mut bench);
    hole_key::letter(&mut bench.panels);
    Worked {
        panels: bench.panels,
        hardware: bench.hardware,
        screws: bench.screws,
        loose: bench.loose,
        unplaced: bench.unplaced,
        left_out: bench.left_out,
    }
}

/// The panels with their joints and everything that the parts ask of them.
fn with_parts<'a>(spec: &'a Spec, arrangement: &'a Arrangement) -> Bench<'a> {
    let mut bench = Bench::new(spec, arrangement);
    joints::features(&mut bench);
    board::features(&mut bench);
    card::features(&mut bench);
    supply::features(&mut bench);
    drive::features(&mut bench);
    fan::features(&mut bench);
    front::features(&mut bench);
    feet::features(&mut bench);
    bench
}
