//! Contours as the path data of SVG, with true arcs.
//!
//! Two ways to write: in the panel's own frame (y up), as files of the project hold it, and turned over for SVG (y
//! down). The sweep flag follows: with y up a flag of 1 turns counter-clockwise.

use kurbo::Point;

use super::{Arc, Contour, Segment};
use crate::drawing::number::{COORDINATE_DECIMALS, push_number};

impl Contour {
    /// Path data in the contour's own frame (mm, y up): `M`, `L` and `A` commands and a closing `Z`.
    #[must_use]
    pub fn to_path_data(&self) -> String {
        let mut text = String::new();
        self.push_path_data(&mut text, |at| at, false);
        text
    }

    /// Appends path data with every point put through `place`; `turned_over` says that `place` mirrors.
    pub(in crate::drawing) fn push_path_data(
        &self,
        text: &mut String,
        place: impl Fn(Point) -> Point,
        turned_over: bool,
    ) {
        let mut segments = self.segments().peekable();
        if let Some(first) = segments.peek() {
            text.push('M');
            push_point(text, place(first.from()));
        }
        let mut drawn = false;
        while let Some(segment) = segments.next() {
            drawn = true;
            match segment {
                // Z draws the last straight line.
                Segment::Line { .. } if segments.peek().is_none() => {}
                Segment::Line { to, .. } => {
                    text.push('L');
                    push_point(text, place(to));
                }
                Segment::Arc(arc) => {
                    let pieces = f64::ceil(arc.sweep.abs() / WIDEST_ARC - 1e-9).max(1.0);
                    for piece in 1..pieces as usize {
                        push_arc(text, &arc, place(arc.point_at(piece as f64 / pieces)), turned_over);
                    }
                    push_arc(text, &arc, place(arc.to), turned_over);
                }
            }
        }
        if drawn {
            text.push('Z');
        }
    }
}

/// Widest arc written as one `A` command, radians. Readers find the centre from the ends; near a half circle a last
/// decimal of the chord moves the centre by a hundredfold (0.02 mm at radius 3.5), so wider arcs are written in pieces.
const WIDEST_ARC: f64 = 2.0 * core::f64::consts::FRAC_PI_3;

fn push_point(text: &mut String, point: Point) {
    push_number(text, point.x, COORDINATE_DECIMALS);
    text.push(' ');
    push_number(text, point.y, COORDINATE_DECIMALS);
}

fn push_arc(text: &mut String, arc: &Arc, to: Point, turned_over: bool) {
    text.push('A');
    push_number(text, arc.radius_mm, COORDINATE_DECIMALS);
    text.push(' ');
    push_number(text, arc.radius_mm, COORDINATE_DECIMALS);
    text.push_str(if (arc.sweep > 0.0) == turned_over { " 0 0 0 " } else { " 0 0 1 " });
    push_point(text, to);
}
