//! A placed part: bodies and keep-clear zones as boxes in the case frame.

use crate::dimensions::source::Source;
use crate::solid::{Aabb, larger, smaller};

/// What a part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name is the trade's word")]
pub enum PartKind {
    Board,
    Memory,
    Cooler,
    Card,
    CardBracket,
    Shelf,
    Supply,
    Drive,
    Fan,
    Button,
    Port,
    Jack,
    Standoff,
    Washer,
    Bracket,
    CaptiveNut,
    Block,
    Foot,
}

impl PartKind {
    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Board => "board",
            Self::Memory => "memory",
            Self::Cooler => "cooler",
            Self::Card => "card",
            Self::CardBracket => "card-bracket",
            Self::Shelf => "shelf",
            Self::Supply => "supply",
            Self::Drive => "drive",
            Self::Fan => "fan",
            Self::Button => "button",
            Self::Port => "port",
            Self::Jack => "jack",
            Self::Standoff => "standoff",
            Self::Washer => "washer",
            Self::Bracket => "bracket",
            Self::CaptiveNut => "captive-nut",
            Self::Block => "block",
            Self::Foot => "foot",
        }
    }
}

/// Which assembly a part moves with when the sleeve comes off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carrier {
    /// Floor and back.
    Chassis,
    /// Left, right, front, top.
    Sleeve,
}

impl Carrier {
    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Chassis => "chassis",
            Self::Sleeve => "sleeve",
        }
    }
}

/// Room a part needs beside its body: plug and cable bend, air, a hand.
#[derive(Clone, Debug, PartialEq)]
pub struct KeepClear {
    /// The room.
    pub zone: Aabb,
    /// What it is for, in words that follow "room for": "the power plug and its bend".
    pub purpose: &'static str,
    /// Where its size comes from.
    pub source: Source,
}

/// A part in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Unique name: `board`, `card`, `drive-1`, `fan-2`, `bracket-floor-back-1`.
    pub id: String,
    /// What it is.
    pub kind: PartKind,
    /// What people call it.
    pub label: String,
    /// Which assembly it moves with.
    pub carrier: Carrier,
    /// Its solids; never empty.
    pub bodies: Vec<Aabb>,
    /// Room it needs beside them.
    pub keep_clear: Vec<KeepClear>,
}

impl Part {
    /// The smallest box holding all bodies.
    #[must_use]
    pub fn bounds(&self) -> Aabb {
        let mut bodies = self.bodies.iter();
        let first = bodies.next().copied().unwrap_or(Aabb { min: [0.0; 3], max: [0.0; 3] });
        bodies.fold(first, |all, body| all.union(body))
    }
}

/// The two glued faces of a locating block, mm², the narrower first.
#[must_use]
pub fn block_faces_mm2(body: &Aabb) -> [f64; 2] {
    let [a, b, c] = body.size();
    let longest = larger(larger(a, b), c);
    let middle = larger(smaller(a, b), smaller(larger(a, b), c));
    [smaller(smaller(a, b), c) * longest, middle * longest]
}
