//! From what a screw has to hold to the screw: its place, its washers and the length it is sold in.

use std::ops::RangeInclusive;

use crate::dimensions::fasteners::{
    TURNS_PROUD_OF_NUT, TappedInto, Thread, engagement, major_diameter, required_length_mm, sold_length_between_mm,
    sold_lengths, tapped_length_mm, washer,
};
use crate::dimensions::source::Source;
use crate::fastening::Screw;

/// What holds a screw's end.
#[derive(Clone, Copy)]
pub(super) enum Grip {
    /// A nut with two turns of thread beyond it.
    Nut,
    /// A steel thread, entered at least one diameter deep and at most so deep.
    Steel(Option<f64>),
    /// Anything else: least and greatest depth beyond what is clamped.
    Depth(f64, Option<f64>),
}

/// A screw before its length is known.
pub(super) struct Plan {
    pub id: String,
    /// What it is for; makes the group it is counted with.
    pub what: String,
    pub thread: Thread,
    /// Sheet, spacers and legs between head and grip, without washers under the head.
    pub clamped_mm: f64,
    /// Numbers of washers that may be under the head (and nut), the usual first.
    pub washers: RangeInclusive<u8>,
    pub grip: Grip,
    pub joins: Vec<String>,
    /// Where the limits of its length come from, when not from the thread.
    pub source: Option<Source>,
}

impl Plan {
    pub fn new(id: impl Into<String>, what: impl Into<String>, thread: Thread, clamped_mm: f64, grip: Grip) -> Self {
        Self {
            id: id.into(),
            what: what.into(),
            thread,
            clamped_mm,
            washers: 1..=1,
            grip,
            joins: Vec::new(),
            source: None,
        }
    }

    pub fn joins<S: Into<String>>(mut self, ids: impl IntoIterator<Item = S>) -> Self {
        self.joins.extend(ids.into_iter().map(Into::into));
        self
    }

    /// Whether a sold length lies between the limits, with some number of washers.
    pub fn has_length(&self) -> bool {
        self.washers.clone().any(|count| self.length(count).is_some())
    }

    /// The shortest sold length that fits with so many washers.
    fn length(&self, washers: u8) -> Option<f64> {
        let (least, most) = self.limits(washers);
        sold_length_between_mm(self.thread, least, most.unwrap_or(f64::INFINITY))
    }

    /// The same where only the longest piece must not go too deep, and the usual piece holds: a screw a little short
    /// still holds by most of its turns, one too long ruins what it enters.
    fn nominal_length(&self, washers: u8) -> Option<f64> {
        /// A billionth of a millimetre: sums of tenths must not fall short of themselves.
        const ROUNDING_MM: f64 = 1e-9;
        let (least, most) = self.limits(washers);
        sold_lengths(self.thread)
            .into_iter()
            .find(|piece| {
                piece.nominal_mm >= least - ROUNDING_MM
                    && most.is_none_or(|most| piece.longest_mm <= most + ROUNDING_MM)
            })
            .map(|piece| piece.nominal_mm)
    }

    /// Least and greatest length under the head with so many washers.
    fn limits(&self, washers: u8) -> (f64, Option<f64>) {
        let count = u32::from(washers);
        let stack = self.clamped_mm + f64::from(washers) * washer(self.thread).thickness_mm;
        match self.grip {
            Grip::Nut => (required_length_mm(self.clamped_mm, self.thread, count, true), None),
            Grip::Steel(most) => (
                tapped_length_mm(self.clamped_mm, self.thread, count, TappedInto::Steel),
                most.map(|most| stack + most),
            ),
            Grip::Depth(least, most) => (stack + least, most.map(|most| stack + most)),
        }
    }

    /// The screw with its head on a face at `face`, pointing along `direction`.
    ///
    /// The first number of washers with which a sold length fits is taken, its tolerance included, else the first with
    /// which its usual piece fits; when none does, the length stays open.
    pub fn screw(self, face: [f64; 3], direction: [f64; 3]) -> Screw {
        let found = |length: fn(&Self, u8) -> Option<f64>| {
            self.washers.clone().find_map(|count| length(&self, count).map(|length| (count, length)))
        };
        let found = found(Self::length).or_else(|| found(Self::nominal_length));
        let washers = found.map_or(*self.washers.start(), |(count, _)| count);
        let length_mm = found.map(|(_, length)| length);
        let (least_mm, most_mm) = self.limits(washers);
        let nut = matches!(self.grip, Grip::Nut);
        let under = f64::from(washers) * washer(self.thread).thickness_mm;
        Screw {
            id: self.id,
            what: format!("{} {}", self.thread.label(), self.what),
            thread: self.thread.label(),
            diameter_mm: major_diameter(self.thread).get(),
            head_at: [0, 1, 2].map(|axis| face[axis] - direction[axis] * under),
            direction,
            clamped_mm: self.clamped_mm,
            least_mm,
            most_mm,
            length_mm,
            nut,
            washers,
            joins: self.joins,
            source: self.source.unwrap_or(if nut {
                TURNS_PROUD_OF_NUT.source()
            } else {
                engagement(TappedInto::Steel).source()
            }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const UP: [f64; 3] = [0.0, 0.0, 1.0];

    /// M3, one 6 mm sheet, one washer, nut: 6 + 0.5 + 2.4 + 2 x 0.5 = 9.9; a 10 may be 9.71 long (ISO 4762), so 12.
    #[test]
    fn a_screw_with_a_nut_is_long_enough_even_when_it_is_the_shortest_of_its_bag() {
        let screw = Plan::new("s", "s", Thread::M3, 6.0, Grip::Nut).screw([1.0, 2.0, 0.0], UP);
        assert!((screw.least_mm - 9.9).abs() < 1e-9);
        assert_eq!((screw.length_mm, screw.washers, screw.nut), (Some(12.0), 1, true));
        assert_eq!(screw.head_at, [1.0, 2.0, -0.5]);
    }

    /// 7 mm clamped, 1.5 to 2.5 into the drive: 10 (9.71 to 10.29) needs two washers of 0.5 under its head.
    #[test]
    fn washers_under_the_head_bring_a_sold_length_between_its_limits() {
        let plan = Plan { washers: 0..=3, ..Plan::new("s", "s", Thread::M3, 7.0, Grip::Depth(1.5, Some(2.5))) };
        let screw = plan.screw([0.0; 3], UP);
        assert_eq!((screw.length_mm, screw.washers), (Some(10.0), 2));
        assert_eq!((screw.least_mm, screw.most_mm), (9.5, Some(10.5)));
    }

    #[test]
    fn when_no_sold_length_fits_the_length_stays_open() {
        let plan = Plan::new("s", "s", Thread::M3, 7.0, Grip::Depth(1.0, Some(1.1)));
        assert_eq!(plan.screw([0.0; 3], UP).length_mm, None);
    }
}
