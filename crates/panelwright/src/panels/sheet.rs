//! Whether there is whole sheet under a bracket: under its legs, and around its screws.
//!
//! Each question about a feature has a quick one beside it, which looks across one direction of the panel only: whether
//! the feature could matter at all to what moves along the other.

use kurbo::{Point, Rect};

use super::panel::{Face, Feature, FeatureKind, Panel, Purpose};
use crate::solid::Aabb;

/// Sheet between a screw's washer and another feature, mm (common practice).
const BESIDE_MM: f64 = 1.0;

/// Share of its washer that a screw's hole takes at most: of a coarse M3 hole 3.6 of 7 mm (ISO 273 and ISO 7089). A washer
/// may stand over the rim of a hollow 1 mm deep, its hole may not.
const HOLE_IN_WASHER: f64 = 0.58;

/// The direction of a panel's frame that is looked across.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Across {
    X,
    Y,
}

/// A feature with its bounds.
#[derive(Clone, Copy)]
pub(super) struct Spot<'a> {
    feature: &'a Feature,
    /// Worked out from its contour; a round one needs none.
    bounds: Rect,
}

/// The features of a panel.
pub(super) fn spots(panel: &Panel) -> impl Iterator<Item = Spot<'_>> {
    panel.features.iter().map(|feature| {
        let bounds = if feature.diameter_mm.is_some() { Rect::ZERO } else { feature.contour.bbox() };
        Spot { feature, bounds }
    })
}

impl Spot<'_> {
    /// Whether it is the hollow behind a tongue of the card's bracket.
    fn is_tongue_hollow(&self) -> bool {
        self.feature.purpose == Purpose::TongueRelief && self.feature.blind.is_some()
    }

    /// Whether there is a hollow on the panel's inside that a leg must not cover. Off a tongue's hollow the tongue itself
    /// keeps what must not be there.
    fn opens_inside(&self) -> bool {
        if self.is_tongue_hollow() {
            return false;
        }
        // Under a joint's rebate there is no hollow: the other panel's edge fills it.
        !matches!(self.feature.blind, Some((_, Face::Outside))) && self.feature.purpose != Purpose::JointRebate
    }

    /// Whether a shadow could cover it when it is moved along the other direction.
    pub fn could_be_covered(&self, shadow: Rect, across: Across) -> bool {
        if !self.opens_inside() {
            return false;
        }
        match self.feature.diameter_mm {
            Some(diameter) => {
                let [dx, dy] = apart(shadow, self.feature.centre);
                (if across == Across::X { dx } else { dy }) < diameter / 2.0
            }
            None => {
                let common = self.bounds.intersect(shadow);
                (if across == Across::X { common.width() } else { common.height() }) > 0.0
            }
        }
    }

    /// Whether a leg's shadow covers some of it.
    pub fn is_covered(&self, shadow: Rect) -> bool {
        if !self.opens_inside() {
            return false;
        }
        match self.feature.diameter_mm {
            Some(diameter) => {
                let [dx, dy] = apart(shadow, self.feature.centre);
                f64::sqrt(dx * dx + dy * dy) < diameter / 2.0
            }
            None => {
                let common = self.bounds.intersect(shadow);
                common.width() > 0.0 && common.height() > 0.0
            }
        }
    }
}

/// How far a point lies beside a rectangle, in x and in y.
fn apart(shadow: Rect, at: Point) -> [f64; 2] {
    [(shadow.x0 - at.x).max(at.x - shadow.x1).max(0.0), (shadow.y0 - at.y).max(at.y - shadow.y1).max(0.0)]
}

/// Whether a leg on the inside of a panel covers no opening, hole or recess of it.
pub(super) fn covers_nothing(panel: &Panel, leg: &Aabb) -> bool {
    let shadow = panel.frame.shadow(leg);
    spots(panel).all(|spot| !spot.is_covered(shadow))
}

/// What a screw's washer asks of the sheet.
pub(super) struct Land {
    /// Where its centre may lie.
    room: Rect,
    /// Its radius.
    washer: f64,
}

impl Land {
    pub fn new(panel: &Panel, washer: f64) -> Self {
        Self { room: panel.sound().inflate(-washer, -washer), washer }
    }

    /// Whether it lies wholly on whole sheet.
    pub fn lies_on_sheet(&self, centre: Point) -> bool {
        self.room.contains(centre)
    }

    /// Distance between its centre and a feature, from which on it is clear: of a round one's middle, of another's edge.
    fn around(&self, spot: &Spot) -> f64 {
        if spot.is_tongue_hollow() {
            return HOLE_IN_WASHER * self.washer + BESIDE_MM;
        }
        let clear = self.washer + BESIDE_MM;
        match spot.feature.diameter_mm {
            // A drilled hole has a washer of about twice its diameter around it (ISO 273 and ISO 7089).
            Some(diameter) if spot.feature.kind == FeatureKind::Hole => self.washer + diameter,
            Some(diameter) => clear + diameter / 2.0,
            None => clear,
        }
    }

    /// Whether it could come too near to a feature when it is moved along the other direction.
    pub fn could_meet(&self, centre: Point, spot: &Spot, across: Across) -> bool {
        let around = self.around(spot);
        if spot.feature.diameter_mm.is_some() {
            let apart = centre - spot.feature.centre;
            return (if across == Across::X { apart.x } else { apart.y }).abs() < around;
        }
        let bounds = spot.bounds.inflate(around, around);
        match across {
            Across::X => bounds.x0 <= centre.x && centre.x < bounds.x1,
            Across::Y => bounds.y0 <= centre.y && centre.y < bounds.y1,
        }
    }

    /// Whether it is clear of a feature.
    pub fn is_clear_of(&self, centre: Point, spot: &Spot) -> bool {
        let around = self.around(spot);
        if spot.feature.diameter_mm.is_some() {
            let apart = centre - spot.feature.centre;
            return f64::sqrt(apart.x * apart.x + apart.y * apart.y) >= around;
        }
        let contour = &spot.feature.contour;
        !spot.bounds.inflate(around, around).contains(centre)
            || (!contour.contains(centre) && contour.distance_to_point(centre) >= around)
    }
}
