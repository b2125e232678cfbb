//! The letter beside a hole, by which the hole key names it.

use kurbo::{Point, Rect};

use super::{Page, TEXT_MM};
use crate::drawing::{Anchor, Weight, text_width_mm};
use crate::panels::Feature;

/// Air between a hole's box and its letter, mm: to the side, and up or down.
const BESIDE_MM: f64 = 0.9;
const ABOVE_MM: f64 = 0.4;

impl Page<'_> {
    /// Writes the letter at the upper right of its hole (`bounds`, page mm), or at another corner where the printer does
    /// not reach or something else is drawn.
    pub(super) fn letter(&mut self, feature: &Feature, bounds: Rect) {
        let Some(key) = &feature.key else { return };
        let width = text_width_mm(key, TEXT_MM, Weight::SemiBold);
        let (right, left) = (bounds.x1 + BESIDE_MM, bounds.x0 - BESIDE_MM - width);
        let (above, below) = (bounds.y1 + ABOVE_MM, bounds.y0 - ABOVE_MM - TEXT_MM);
        let corners = [(right, above), (left, above), (right, below), (left, below)]
            .map(|(x, y)| Rect::new(x, y, x + width, y + TEXT_MM));
        let reached = |place: &&Rect| place.intersect(self.printable) == **place;
        let others: Vec<Rect> = self
            .panel
            .features
            .iter()
            .filter(|other| other.id != feature.id)
            .map(|other| other.contour.bbox())
            .collect();
        let clear = |place: &&Rect| others.iter().all(|other| !other.overlaps(**place - self.origin));
        let place = corners
            .iter()
            .find(|place| reached(place) && clear(place))
            .or_else(|| corners.iter().find(reached))
            .unwrap_or(&corners[0]);
        let at = Point::new(place.x0, place.y0);
        self.pen.text("marks", at, TEXT_MM, Anchor::Start, Weight::SemiBold, key);
        self.free.take(*place, 0.6);
    }
}
