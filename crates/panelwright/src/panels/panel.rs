//! A flat panel and its features.

use kurbo::{Point, Rect};

use crate::design::{Joint, Wall};
use crate::dimensions::source::Source;
use crate::drawing::Contour;
use crate::solid::PanelFrame;

/// Which assembly a panel belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Assembly {
    /// Floor and back: they carry every part.
    Chassis,
    /// Left, right, front, top: the cover that slides over.
    Sleeve,
}

impl Assembly {
    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Chassis => "chassis",
            Self::Sleeve => "sleeve",
        }
    }
}

/// One panel, flat, in its own frame (see [`crate::solid`]), mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// Which wall of the case it is.
    pub wall: Wall,
    /// What people call it: `Left panel`.
    pub label: &'static str,
    /// Chassis or sleeve.
    pub assembly: Assembly,
    /// Actual thickness.
    pub thickness_mm: f64,
    /// Width and height of its bounding box.
    pub size_mm: [f64; 2],
    /// Where it lies in the case.
    pub frame: PanelFrame,
    /// Its outline, counter-clockwise.
    pub outline: Contour,
    /// Its four edges and what they meet.
    pub edges: Vec<EdgeJoint>,
    /// Gaps along its edges for the fingers, tabs and corners of the panels it is joined to; the outline runs around
    /// them.
    pub joint_gaps: Vec<Rect>,
    /// Holes, openings, vents, grooves, rebates, counterbores.
    pub features: Vec<Feature>,
}

impl Panel {
    /// The rectangle inside which the sheet is whole: without the strips of fingers and tabs along its edges.
    #[must_use]
    pub fn sound(&self) -> Rect {
        let mut area = Rect::new(0.0, 0.0, self.size_mm[0], self.size_mm[1]);
        for edge in &self.edges {
            let broken = match edge.joint {
                Some(Joint::Finger) => true,
                Some(Joint::Tab) => !edge.runs_through,
                _ => false,
            };
            if broken {
                match edge.edge {
                    Edge::Left => area.x0 += edge.taken_mm,
                    Edge::Right => area.x1 -= edge.taken_mm,
                    Edge::Lower => area.y0 += edge.taken_mm,
                    Edge::Upper => area.y1 -= edge.taken_mm,
                }
            }
        }
        area
    }

    /// Name in files: `floor`, `left`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.wall.name()
    }
}

/// One edge of a panel, as seen from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name says it")]
pub enum Edge {
    Left,
    Right,
    Lower,
    Upper,
}

impl Edge {
    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Lower => "lower",
            Self::Upper => "upper",
        }
    }
}

/// What an edge meets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeJoint {
    /// The edge, seen from outside.
    pub edge: Edge,
    /// The panel it meets.
    pub meets: Wall,
    /// Whether this panel runs through and covers the other's edge.
    pub runs_through: bool,
    /// How the two panels are fixed to each other; `None` where they slide past each other with clearance.
    pub joint: Option<Joint>,
    /// From the edge of the bounding box to the inside face of the other panel: sheet that the joint takes up, mm. 0
    /// where this panel only butts against that face.
    pub taken_mm: f64,
}

impl EdgeJoint {
    /// Whether the two panels are fixed to each other.
    #[must_use]
    pub const fn fixed(&self) -> bool {
        self.joint.is_some()
    }
}

/// What a feature is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name is the trade's word")]
pub enum FeatureKind {
    Hole,
    Opening,
    Vent,
    Groove,
    Rebate,
    Counterbore,
}

impl FeatureKind {
    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Hole => "hole",
            Self::Opening => "opening",
            Self::Vent => "vent",
            Self::Groove => "groove",
            Self::Rebate => "rebate",
            Self::Counterbore => "counterbore",
        }
    }
}

/// Which face a feature that does not go through is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each name says it")]
pub enum Face {
    Outside,
    Inside,
}

impl Face {
    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Outside => "outside",
            Self::Inside => "inside",
        }
    }
}

/// Why a feature is there; checks and lists read this, people read [`Feature::why`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name says it")]
pub enum Purpose {
    BoardStandoff,
    DriveScrew,
    SupplyScrew,
    SupplyOpening,
    BrickJack,
    IoAperture,
    ShieldRebate,
    CardWindow,
    TongueRelief,
    ShelfScrew,
    CardTie,
    TongueBracketScrew,
    FanOpening,
    FanScrew,
    Button,
    ButtonCounterbore,
    Port,
    PortScrew,
    PortCounterbore,
    BracketScrew,
    CaptiveScrew,
    Foot,
    Vent,
    JointRebate,
    JointSlot,
}

impl Purpose {
    /// Whether the standards of board, card and supply say where it is: the maker can move the part, not the feature.
    #[must_use]
    pub const fn is_given_by_a_part(self) -> bool {
        matches!(
            self,
            Self::BoardStandoff
                | Self::IoAperture
                | Self::ShieldRebate
                | Self::CardWindow
                | Self::TongueRelief
                | Self::ShelfScrew
                | Self::CardTie
                | Self::SupplyScrew
                | Self::SupplyOpening
        )
    }

    /// The word used in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::BoardStandoff => "board-standoff",
            Self::DriveScrew => "drive-screw",
            Self::SupplyScrew => "supply-screw",
            Self::SupplyOpening => "supply-opening",
            Self::BrickJack => "brick-jack",
            Self::IoAperture => "io-aperture",
            Self::ShieldRebate => "shield-rebate",
            Self::CardWindow => "card-window",
            Self::TongueRelief => "tongue-relief",
            Self::ShelfScrew => "shelf-screw",
            Self::CardTie => "card-tie",
            Self::TongueBracketScrew => "tongue-bracket-screw",
            Self::FanOpening => "fan-opening",
            Self::FanScrew => "fan-screw",
            Self::Button => "button",
            Self::ButtonCounterbore => "button-counterbore",
            Self::Port => "port",
            Self::PortScrew => "port-screw",
            Self::PortCounterbore => "port-counterbore",
            Self::BracketScrew => "bracket-screw",
            Self::CaptiveScrew => "captive-screw",
            Self::Foot => "foot",
            Self::Vent => "vent",
            Self::JointRebate => "joint-rebate",
            Self::JointSlot => "joint-slot",
        }
    }
}

/// One thing cut into a panel.
#[derive(Clone, Debug, PartialEq)]
pub struct Feature {
    /// Unique on its panel: `board-standoff-C`, `fan-1-opening`.
    pub id: String,
    /// What it is.
    pub kind: FeatureKind,
    /// Why it is there, for checks.
    pub purpose: Purpose,
    /// Depth when it does not go through: `Some((depth, face it is cut from))`.
    pub blind: Option<(f64, Face)>,
    /// Its boundary in the panel's frame, counter-clockwise. A notch reaches the outline (see [`Feature::notch`]).
    pub contour: Contour,
    /// Its centre.
    pub centre: Point,
    /// Diameter, when it is round.
    pub diameter_mm: Option<f64>,
    /// Letter in the hole key; given to holes by drill, depth and reason once the panel is complete.
    pub key: Option<String>,
    /// Whether it is open to the panel's edge; the outline then already runs around it.
    pub notch: bool,
    /// Why it is there, for people.
    pub why: String,
    /// The parts and panels it is for.
    pub about: Vec<String>,
    /// Where its size or place comes from.
    pub source: Source,
}
