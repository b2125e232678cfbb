//! Finds free places on a page for blocks of writing, so that no word covers a line to cut.

use kurbo::Rect;

use crate::solid::within;

/// Side of one cell of the search, mm: fine enough that blocks nestle between openings.
const CELL_MM: f64 = 2.0;

/// What is taken of a page's printable part.
#[derive(Clone, Debug)]
pub struct FreePlaces {
    area: Rect,
    columns: usize,
    rows: usize,
    taken: Vec<bool>,
}

impl FreePlaces {
    /// All of `area` (page mm) is free.
    #[must_use]
    pub fn new(area: Rect) -> Self {
        let cells = |length: f64| f64::floor(length / CELL_MM).clamp(0.0, 4000.0) as usize;
        let (columns, rows) = (cells(area.width()), cells(area.height()));
        Self { area, columns, rows, taken: vec![false; columns * rows] }
    }

    /// Takes a rectangle with `air` around it.
    pub fn take(&mut self, rect: Rect, air_mm: f64) {
        let rect = rect.inflate(air_mm, air_mm);
        let index = |value: f64, most: usize| within(f64::floor(value / CELL_MM), 0.0, most as f64) as usize;
        let end = |value: f64, most: usize| within(f64::ceil(value / CELL_MM), 0.0, most as f64) as usize;
        let (x0, x1) = (index(rect.x0 - self.area.x0, self.columns), end(rect.x1 - self.area.x0, self.columns));
        let (y0, y1) = (index(rect.y0 - self.area.y0, self.rows), end(rect.y1 - self.area.y0, self.rows));
        for row in y0..y1 {
            for column in x0..x1 {
                self.taken[row * self.columns + column] = true;
            }
        }
    }

    /// Whether nothing of a rectangle is taken; what lies outside the area does not count as free.
    #[must_use]
    pub fn is_free(&self, rect: Rect) -> bool {
        if rect.intersect(self.area) != rect {
            return false;
        }
        let cell =
            |value: f64, most: usize| within(f64::floor(value / CELL_MM), 0.0, most.saturating_sub(1) as f64) as usize;
        let (x0, x1) = (cell(rect.x0 - self.area.x0, self.columns), cell(rect.x1 - self.area.x0, self.columns));
        let (y0, y1) = (cell(rect.y0 - self.area.y0, self.rows), cell(rect.y1 - self.area.y0, self.rows));
        (y0..=y1).all(|row| (x0..=x1).all(|column| !self.taken[row * self.columns + column]))
    }

    /// Finds a free place of a size, as high and then as far left as possible, and takes it.
    pub fn find(&mut self, width_mm: f64, height_mm: f64) -> Option<Rect> {
        let need = |length: f64| f64::ceil(length / CELL_MM - 1e-9).max(1.0) as usize;
        let (wide, high) = (need(width_mm), need(height_mm));
        if wide > self.columns || high > self.rows {
            return None;
        }
        // How many free cells lie downward from each cell, its own included.
        let mut depth = vec![0usize; self.columns * self.rows];
        for row in 0..self.rows {
            for column in 0..self.columns {
                let here = row * self.columns + column;
                let below = if row == 0 { 0 } else { depth[here - self.columns] };
                depth[here] = if self.taken[here] { 0 } else { below + 1 };
            }
        }
        for row in (high - 1..self.rows).rev() {
            let mut run = 0;
            for column in 0..self.columns {
                run = if depth[row * self.columns + column] >= high { run + 1 } else { 0 };
                if run == wide {
                    let x0 = self.area.x0 + (column + 1 - wide) as f64 * CELL_MM;
                    let y1 = self.area.y0 + (row + 1) as f64 * CELL_MM;
                    let found = Rect::new(x0, y1 - high as f64 * CELL_MM, x0 + wide as f64 * CELL_MM, y1);
                    self.take(found.inset(-1e-6), 0.0);
                    return Some(found);
                }
            }
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_block_never_covers_what_is_taken_and_two_blocks_never_meet() {
        let mut free = FreePlaces::new(Rect::new(10.0, 10.0, 110.0, 110.0));
        let hole = Rect::new(40.0, 60.0, 70.0, 110.0);
        free.take(hole, 2.0);
        let first = free.find(40.0, 30.0).unwrap();
        let second = free.find(26.0, 30.0).unwrap();
        for block in [first, second] {
            assert_eq!(block.intersect(hole).area(), 0.0);
            assert!(block.x0 >= 10.0 && block.y1 <= 110.0);
        }
        assert_eq!(first.intersect(second).area(), 0.0);
        assert!(free.find(101.0, 5.0).is_none());
    }
}
