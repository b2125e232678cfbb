//! How a panel is to be cut, and what stands in the way.

use kurbo::Point;

use super::offset::Lost;
use super::relief::{CornerFault, Relief};
use super::tabs::TabRule;

/// How the contours of a panel become what a tool follows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum CutRule {
    /// The panel as it shall be: for hand work, and for machines whose own program makes up for the tool.
    #[default]
    Nominal,
    /// Paths of a laser beam.
    Laser {
        /// Width of the cut, mm; 0 leaves the contours where they are.
        kerf_mm: f64,
    },
    /// For a round cutter.
    Router(RouterRule),
}

/// How a router cuts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RouterRule {
    /// Diameter of the cutter, mm.
    pub cutter_mm: f64,
    /// Relief of inside corners; `None` leaves them rounded by the cutter.
    pub relief: Option<Relief>,
    /// Whether contours are the paths of the cutter's middle; otherwise they are the edges, and the machine's program
    /// moves aside by the radius.
    pub compensated: bool,
    /// Holding tabs; `None` for parts held otherwise.
    pub tabs: Option<TabRule>,
}

/// Relief is cut this much wider than the cutter, so that the cutter turns in it instead of stopping in it: about the
/// middle of the custom, [`crate::dimensions::router_work::RELIEF_ROOM`].
pub const RELIEF_ROOM: f64 = 1.05;

impl RouterRule {
    /// Radius of the cutter, mm.
    #[must_use]
    pub fn radius_mm(&self) -> f64 {
        self.cutter_mm / 2.0
    }

    /// Radius of the relief, mm.
    #[must_use]
    pub fn relief_radius_mm(&self) -> f64 {
        self.radius_mm() * RELIEF_ROOM
    }
}

impl CutRule {
    /// What a file says of it, in one line of plain letters.
    #[must_use]
    pub fn says(&self) -> String {
        let number = |value: f64| crate::drawing::number::format_number(value, 3);
        match self {
            Self::Nominal => "nominal: contours are the edges of the part".to_owned(),
            Self::Laser { kerf_mm } if *kerf_mm == 0.0 => "nominal: contours are the edges of the part".to_owned(),
            Self::Laser { kerf_mm } => {
                format!("compensated for a cut {} mm wide: do not compensate again", number(*kerf_mm))
            }
            Self::Router(rule) if rule.compensated => {
                format!("compensated for a cutter of {} mm: cut on the line", number(rule.cutter_mm))
            }
            Self::Router(rule) => {
                format!("nominal, for a cutter of {} mm: cut beside the line", number(rule.cutter_mm))
            }
        }
    }
}

/// Something that cannot be cut as drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct CutProblem {
    /// The feature, or `outline`.
    pub of: String,
    /// Where on the panel.
    pub at: Point,
    /// What is wrong.
    pub what: Trouble,
}

/// What cannot be cut as drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Trouble {
    /// No path, or no single path, is left for the tool: the contour is left out.
    Lost(Lost),
    /// A round hole too small for the cutter: it is on the layer for drilling.
    Drill {
        /// Its diameter, mm.
        diameter_mm: f64,
    },
    /// The cutter does not reach all of it.
    LeftStanding {
        /// How much it leaves, mm².
        area_mm2: f64,
    },
    /// An inside corner stays rounded.
    Corner(CornerFault),
    /// A cut that does not go through, by a tool that only cuts through: left out.
    NoDepth,
    /// The part leaves no straight edge for a holding tab.
    NoTabs,
    /// Tabs are on an edge that meets another panel: clean it well.
    TabsOnMatingEdge,
    /// Every place for a tab is beside a hole, an opening or a recess.
    TabsBesideCut,
}

impl CutProblem {
    /// One sentence for the maker.
    #[must_use]
    pub fn says(&self) -> String {
        let number = |value: f64| crate::drawing::number::format_number(value, 2);
        let of = &self.of;
        match self.what {
            Trouble::Lost(Lost::Vanished) => format!("{of}: too narrow for the tool; it is left out"),
            Trouble::Lost(Lost::Split(pieces)) => {
                format!("{of}: the tool gets into {pieces} separate pieces of it; it is left out")
            }
            Trouble::Lost(Lost::Crossing) => format!("{of}: the tool's path would cross itself; it is left out"),
            Trouble::Drill { diameter_mm } => {
                format!("{of}: {} mm across is too small for the cutter; drill it", number(diameter_mm))
            }
            Trouble::LeftStanding { area_mm2 } => {
                format!("{of}: the cutter leaves {} mm² standing in a gap narrower than itself", number(area_mm2))
            }
            Trouble::Corner(CornerFault::WallTooShort { needed_mm, wall_mm }) => format!(
                "{of}: a wall of {} mm is too short for corner relief ({} mm); file its corners",
                number(wall_mm),
                number(needed_mm)
            ),
            Trouble::Corner(CornerFault::Curved) => {
                format!("{of}: a corner with a curved wall gets no relief; file it")
            }
            Trouble::Corner(CornerFault::TooTight { radius_mm }) => {
                format!("{of}: a corner of radius {} mm comes out rounder; file it", number(radius_mm))
            }
            Trouble::Corner(CornerFault::LeftRound { radius_mm }) => format!(
                "{of}: inside corners come out with a radius of {} mm; file what has to be square",
                number(radius_mm)
            ),
            Trouble::Corner(CornerFault::Crowded) => {
                format!("{of}: corner relief would meet another edge of it; file the corner")
            }
            Trouble::NoDepth => format!("{of}: does not go through the sheet, which this tool cannot do; left out"),
            Trouble::NoTabs => format!("{of}: no straight edge is long enough for a holding tab"),
            Trouble::TabsBesideCut => {
                format!(
                    "{of}: holding tabs are nearer to a hole or recess than the sheet is thick; free them with care"
                )
            }
            Trouble::TabsOnMatingEdge => {
                format!("{of}: holding tabs are on an edge that meets another panel; clean it well")
            }
        }
    }
}
