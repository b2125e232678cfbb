//! Contours as the path data of SVG, with true arcs, and back.
//!
//! Two ways to write: in the panel's own frame (y up), as files of the project hold it, and turned over for SVG (y
//! down). The sweep flag follows: with y up a flag of 1 turns counter-clockwise.

use kurbo::Point;
use thiserror::Error;

use super::segment::length;
use super::{Arc, Contour, SAME_POINT_MM, Segment, Vertex};
use crate::drawing::number::{COORDINATE_DECIMALS, push_number};

/// What is wrong with path data that should hold one closed contour. Places count characters from 0.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum PathDataError {
    /// A letter that is no command of lines and arcs.
    #[error("at character {at}: “{letter}” is not understood; only M, L, H, V, A and Z are")]
    Command {
        /// Where.
        at: usize,
        /// Which letter.
        letter: char,
    },
    /// A number was due.
    #[error("at character {at}: a number was expected")]
    Number {
        /// Where.
        at: usize,
    },
    /// An arc with two different radii.
    #[error("at character {at}: an arc must have one radius, not two")]
    Ellipse {
        /// Where.
        at: usize,
    },
    /// The path starts anew after its end, or draws before it starts.
    #[error("at character {at}: one closed outline was expected")]
    NotOne {
        /// Where.
        at: usize,
    },
    /// There is nothing to enclose.
    #[error("the path holds no outline")]
    Empty,
}

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

    /// Reads one closed outline of lines and circular arcs: commands M, L, H, V, A, Z, upper or lower case. A missing
    /// Z is taken as meant. After reading you may rely on: at least two vertices, finite numbers, no two equal
    /// neighbours.
    ///
    /// # Errors
    /// [`PathDataError`] says what was wrong, and where.
    ///
    /// ```
    /// use panelwright::drawing::Contour;
    /// let contour = Contour::from_path_data("M0 0L40 0L40 30L0 30Z")?;
    /// assert_eq!(contour.area(), 1200.0);
    /// let refused = Contour::from_path_data("M0 0 C1 1 2 2 3 3Z").unwrap_err();
    /// assert_eq!(refused.to_string(), "at character 5: “C” is not understood; only M, L, H, V, A and Z are");
    /// # Ok::<(), panelwright::drawing::PathDataError>(())
    /// ```
    pub fn from_path_data(text: &str) -> Result<Self, PathDataError> {
        Reader { text: text.as_bytes(), at: 0, vertices: Vec::new() }.read()
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

struct Reader<'a> {
    text: &'a [u8],
    at: usize,
    vertices: Vec<Vertex>,
}

impl Reader<'_> {
    fn read(mut self) -> Result<Contour, PathDataError> {
        let mut command = None;
        let mut closed = false;
        loop {
            self.skip_separators();
            let Some(&byte) = self.text.get(self.at) else {
                break;
            };
            if byte.is_ascii_alphabetic() || byte >= 0x80 {
                if closed {
                    return Err(PathDataError::NotOne { at: self.at });
                }
                command = Some(byte);
                self.at += 1;
            }
            let start = self.at;
            let here = self.vertices.last().map(|vertex| vertex.at);
            match (command, here) {
                (Some(b'M' | b'm'), None) => {
                    let at = self.point(Point::ZERO)?;
                    self.vertices.push(Vertex { at, bulge: 0.0 });
                    command = Some(if command == Some(b'M') { b'L' } else { b'l' });
                }
                (Some(b'Z' | b'z'), Some(_)) if !closed => closed = true,
                (Some(letter @ (b'L' | b'l' | b'H' | b'h' | b'V' | b'v' | b'A' | b'a')), Some(here)) => {
                    self.draw(letter, here)?;
                }
                (Some(b'M' | b'm' | b'Z' | b'z' | b'L' | b'l' | b'H' | b'h' | b'V' | b'v' | b'A' | b'a'), _) => {
                    return Err(PathDataError::NotOne { at: start.saturating_sub(1) });
                }
                (Some(_), _) => {
                    let at = start.saturating_sub(1);
                    let letter = String::from_utf8_lossy(&self.text[at..]).chars().next().unwrap_or('?');
                    return Err(PathDataError::Command { at, letter });
                }
                (None, _) => return Err(PathDataError::NotOne { at: start }),
            }
        }
        self.finish()
    }

    fn draw(&mut self, letter: u8, here: Point) -> Result<(), PathDataError> {
        let base = if letter.is_ascii_lowercase() { here } else { Point::ZERO };
        let mut bulge = 0.0;
        let to = match letter.to_ascii_uppercase() {
            b'H' => Point::new(base.x + self.number()?, here.y),
            b'V' => Point::new(here.x, base.y + self.number()?),
            b'A' => {
                let at = self.at;
                let (rx, ry) = (self.number()?.abs(), self.number()?.abs());
                if (rx - ry).abs() > 10.0 * SAME_POINT_MM {
                    return Err(PathDataError::Ellipse { at });
                }
                self.number()?;
                let (large, sweep) = (self.flag()?, self.flag()?);
                let to = self.point(base)?;
                bulge = bulge_of(length(to - here), rx, large, sweep);
                to
            }
            _ => self.point(base)?,
        };
        if let Some(last) = self.vertices.last_mut() {
            last.bulge = bulge;
        }
        self.vertices.push(Vertex { at: to, bulge: 0.0 });
        Ok(())
    }

    /// Drops vertices that repeat their neighbour, the closing one among them.
    fn finish(self) -> Result<Contour, PathDataError> {
        let mut kept: Vec<Vertex> = Vec::with_capacity(self.vertices.len());
        for vertex in self.vertices {
            match kept.last_mut() {
                Some(last) if length(vertex.at - last.at) <= SAME_POINT_MM => last.bulge = vertex.bulge,
                _ => kept.push(vertex),
            }
        }
        if kept.len() > 1 && length(kept[kept.len() - 1].at - kept[0].at) <= SAME_POINT_MM {
            kept.pop();
        }
        if kept.len() < 2 {
            return Err(PathDataError::Empty);
        }
        Ok(Contour::new(kept))
    }

    fn skip_separators(&mut self) {
        while self.text.get(self.at).is_some_and(|byte| byte.is_ascii_whitespace() || *byte == b',') {
            self.at += 1;
        }
    }

    fn point(&mut self, base: Point) -> Result<Point, PathDataError> {
        Ok(Point::new(base.x + self.number()?, base.y + self.number()?))
    }

    fn flag(&mut self) -> Result<bool, PathDataError> {
        self.skip_separators();
        let flag = match self.text.get(self.at) {
            Some(b'0') => false,
            Some(b'1') => true,
            _ => return Err(PathDataError::Number { at: self.at }),
        };
        self.at += 1;
        Ok(flag)
    }

    fn number(&mut self) -> Result<f64, PathDataError> {
        self.skip_separators();
        let start = self.at;
        let mut end = start;
        let mut dot = false;
        while let Some(&byte) = self.text.get(end) {
            let sign_fits = end == start || matches!(self.text[end - 1], b'e' | b'E');
            match byte {
                b'+' | b'-' if sign_fits => {}
                b'.' if !dot => dot = true,
                b'0'..=b'9' | b'e' | b'E' => {}
                _ => break,
            }
            end += 1;
        }
        let number = core::str::from_utf8(&self.text[start..end]).ok().and_then(|digits| digits.parse::<f64>().ok());
        match number {
            Some(number) if number.is_finite() => {
                self.at = end;
                Ok(number)
            }
            _ => Err(PathDataError::Number { at: start }),
        }
    }
}

/// Bulge of an arc given as SVG gives it. A radius too small for the chord counts as half the chord, as SVG says.
fn bulge_of(chord: f64, radius: f64, large: bool, sweep: bool) -> f64 {
    let half = chord / 2.0;
    if half == 0.0 || radius == 0.0 {
        return 0.0;
    }
    let r = radius.max(half);
    let height = f64::sqrt((r - half) * (r + half));
    let rise = if large { r + height } else { half * half / (r + height) };
    let bulge = rise / half;
    if sweep { bulge } else { -bulge }
}
