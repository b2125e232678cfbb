//! The blocks of writing of a template: title, hole key, map of the pages, cautions; each where nothing is to be cut.

use kurbo::{Point, Rect, Vec2};

use super::super::pen::Line;
use super::super::plan::Way;
use super::super::words::{self, KeyRow};
use super::{PackWords, Page, SMALL_MM, TEXT_MM};
use crate::drawing::number::mm;
use crate::drawing::{Anchor, Contour, Weight, text_width_mm};
use crate::panels::words::{seen_from, up};
use crate::panels::{Feature, Purpose};

/// Size of a panel's name, mm: ISO 3098-1, read across a bench (common practice).
const NAME_MM: f64 = 5.0;

/// Height of a line of writing as a multiple of its size (1.2 to 1.5 are common practice).
const LEADING: f64 = 1.4;

/// A line of a template's head: words, size in mm, weight.
type HeadLine = (String, f64, Weight);

/// Most lines over which the reason of a row is written rather than cut short.
const MOST_LINES: usize = 3;

/// How many a row stands for, in its column; nothing in a row that goes on with the reason of the one above.
fn count_words(row: &KeyRow) -> String {
    if row.count == 0 { String::new() } else { format!("{}×", row.count) }
}

/// A row with its reason over so many lines, each as long as the others as far as words allow.
fn over_lines(row: &KeyRow, lines: usize) -> Vec<KeyRow> {
    let length = row.what.chars().count().div_ceil(lines);
    let mut rows = vec![KeyRow { what: String::new(), ..row.clone() }];
    let mut told = 0;
    for word in row.what.split_whitespace() {
        // A word belongs to the line in which its middle lies.
        let middle = told + word.chars().count() / 2;
        if middle >= rows.len() * length {
            rows.push(KeyRow { letter: String::new(), drill: String::new(), count: 0, what: String::new() });
        }
        if let Some(last) = rows.last_mut() {
            if !last.what.is_empty() {
                last.what.push(' ');
            }
            last.what.push_str(word);
        }
        told += word.chars().count() + 1;
    }
    rows
}

impl Page<'_> {
    pub(super) fn head(&mut self, pack: &PackWords) {
        let wall = self.panel.wall;
        let [w, h] = self.panel.size_mm;
        let mut lines: Vec<HeadLine> = vec![(self.panel.label.to_owned(), NAME_MM, Weight::SemiBold)];
        lines.extend(pack.caution.map(|words| (words.to_owned(), TEXT_MM, Weight::SemiBold)));
        if !pack.title.is_empty() {
            lines.push((pack.title.to_owned(), TEXT_MM, Weight::SemiBold));
        }
        lines.push((format!("outside face, {}", seen_from(wall)), TEXT_MM, Weight::Regular));
        lines.push((format!("{} × {} mm, 1 : 1", mm(w), mm(h)), TEXT_MM, Weight::SemiBold));
        lines.extend(words::sheet_words(pack.sheet).into_iter().map(|line| (line, TEXT_MM, Weight::Regular)));
        let [columns, rows] = self.plan.grid();
        let page = self.at[1] * columns + self.at[0] + 1;
        lines.push((
            format!("page {page} of {}, design {}", columns * rows, pack.fingerprint),
            TEXT_MM,
            Weight::Regular,
        ));
        lines.extend(pack.printer.iter().map(|line| (line.clone(), TEXT_MM, Weight::SemiBold)));
        if self.plan.way == Way::Ticks {
            lines.push((
                "Place by the centre lines, not by the edge of the paper.".to_owned(),
                TEXT_MM,
                Weight::SemiBold,
            ));
        }
        let arrow = 14.0;
        let Some(place) = self.block(&lines, arrow).or_else(|| self.head_in_parts(&lines, pack, arrow)) else { return };
        let foot = Point::new(place.x0 + 8.0, place.y1 - 16.0);
        let tip = foot + Vec2::new(0.0, 12.0);
        self.pen.line("words", foot, tip, Line::Cut);
        self.pen.line("words", tip, tip + Vec2::new(-2.0, -4.0), Line::Cut);
        self.pen.line("words", tip, tip + Vec2::new(2.0, -4.0), Line::Cut);
        let up = up(wall);
        self.pen.upright_text("words", foot + Vec2::new(-3.0, 0.0), SMALL_MM, up);
    }

    /// The head where it finds no room as one block: first what the page is, what warns of it and the mark of its design,
    /// then the rest, line by line where it must be. A page without its mark belongs to any design.
    fn head_in_parts(&mut self, lines: &[HeadLine], pack: &PackWords, arrow: f64) -> Option<Rect> {
        self.missed += 1;
        let needed = |(words, ..): &&HeadLine| {
            words == self.panel.label || pack.caution == Some(words.as_str()) || words.ends_with(pack.fingerprint)
        };
        let (first, rest): (Vec<HeadLine>, Vec<HeadLine>) = lines.iter().cloned().partition(|line| needed(&line));
        let mut place = None;
        for (part, left_mm) in [(first, arrow), (rest, 0.0)] {
            let found = self.block(&part, left_mm);
            if found.is_none() {
                for line in part {
                    self.block(&[line], 0.0);
                }
            }
            place = place.or(found.filter(|_| left_mm > 0.0));
        }
        place
    }

    /// Finds room for lines of writing, smaller if it must be, and writes them; the rectangle used.
    fn block(&mut self, lines: &[HeadLine], left_mm: f64) -> Option<Rect> {
        for scale in [1.0, 0.85, 0.7] {
            let width =
                lines.iter().map(|(text, size, weight)| text_width_mm(text, size * scale, *weight)).fold(0.0, f64::max)
                    + left_mm
                    + 2.0;
            let height: f64 = lines.iter().map(|(_, size, _)| size * scale * LEADING).sum::<f64>() + 2.0;
            let height = if left_mm > 0.0 { height.max(18.0) } else { height };
            let Some(place) = self.free.find(width, height) else { continue };
            let mut y = place.y1 - 1.0;
            for (text, size, weight) in lines {
                y -= size * scale * LEADING;
                let at = Point::new(place.x0 + left_mm + 1.0, y + size * scale * 0.3);
                self.pen.text("words", at, size * scale, Anchor::Start, *weight, text);
            }
            return Some(place);
        }
        None
    }

    /// The hole key, in as few blocks as find room.
    pub(super) fn key(&mut self, shown: &[&Feature]) {
        let mut rows = words::key_rows(shown);
        let (chained, sawn): (Vec<&Feature>, Vec<&Feature>) =
            shown.iter().copied().partition(|feature| self.is_chained(feature));
        let count = |features: &[&Feature]| features.iter().map(|feature| self.blades(feature).len()).sum::<usize>();
        let (chain, blades) = (count(&chained), count(&sawn));
        if chain > 0 {
            rows.push(KeyRow {
                letter: String::new(),
                drill: "rings in a row".to_owned(),
                count: chain,
                what: "Drill chain, for the saw does not reach: drill hole by hole, break out, file to the line"
                    .to_owned(),
            });
        }
        if blades > 0 {
            rows.push(KeyRow {
                letter: String::new(),
                drill: "dashed ring".to_owned(),
                count: blades,
                what: "Blade entry: drill inside the opening, then saw".to_owned(),
            });
        }
        // Rounds are drilled; only slots are sawn.
        let vents =
            sawn.iter().filter(|feature| feature.purpose == Purpose::Vent && feature.diameter_mm.is_none()).count();
        if vents > 0 {
            rows.push(KeyRow {
                letter: String::new(),
                drill: "vent".to_owned(),
                count: vents,
                what: "Drill at the marks, saw between them".to_owned(),
            });
        }
        self.rows(&rows, rows.len());
    }

    /// Writes rows in tables of at most so many, smaller ones where there is no room; no row is left out as long as its
    /// letter and drill find room.
    pub(super) fn rows(&mut self, rows: &[KeyRow], chunk: usize) {
        let mut rest = rows;
        let mut chunk = chunk.max(1);
        while !rest.is_empty() {
            let (now, later) = rest.split_at(chunk.min(rest.len()));
            if self.table(now) {
                rest = later;
            } else if now.len() > 1 {
                chunk = now.len().div_ceil(2);
            } else if (2..=MOST_LINES).any(|lines| self.table(&over_lines(&now[0], lines))) {
                rest = later;
            } else {
                let short = |words: usize| {
                    let what: Vec<&str> = now[0].what.split_whitespace().take(words).collect();
                    let more = if words == 0 { "" } else { "…" };
                    [KeyRow { what: format!("{}{more}", what.join(" ")), ..now[0].clone() }]
                };
                self.missed += 1;
                let _ = [13, 10, 8, 5, 3, 2, 0].into_iter().any(|words| self.table(&short(words)));
                rest = later;
            }
        }
    }

    /// Writes rows as one table; false when no place is large enough.
    fn table(&mut self, rows: &[KeyRow]) -> bool {
        for scale in [1.0, 0.85, 0.75] {
            let size = TEXT_MM * scale;
            let wide = |pick: &dyn Fn(&KeyRow) -> String, weight: Weight| {
                rows.iter().map(|row| text_width_mm(&pick(row), size, weight)).fold(0.0, f64::max)
            };
            let columns = [
                wide(&|row| row.letter.clone(), Weight::SemiBold),
                wide(&|row| row.drill.clone(), Weight::Regular),
                wide(&count_words, Weight::Regular),
                wide(&|row| row.what.clone(), Weight::Regular),
            ];
            let gap = 2.0;
            let width: f64 = columns.iter().sum::<f64>() + 3.0 * gap + 2.0;
            let line = size * LEADING;
            let height = rows.len() as f64 * line + 2.0;
            let Some(place) = self.free.find(width, height) else { continue };
            for (index, row) in rows.iter().enumerate() {
                let y = place.y1 - 1.0 - (index + 1) as f64 * line + size * 0.3;
                let mut x = place.x0 + 1.0;
                let texts = [
                    (row.letter.clone(), Weight::SemiBold),
                    (row.drill.clone(), Weight::Regular),
                    (count_words(row), Weight::Regular),
                    (row.what.clone(), Weight::Regular),
                ];
                for ((text, weight), column) in texts.into_iter().zip(columns) {
                    if !text.is_empty() {
                        self.pen.text("key", Point::new(x, y), size, Anchor::Start, weight, &text);
                    }
                    x += column + gap;
                }
            }
            return true;
        }
        false
    }

    /// A little map of the pages of a panel, this one filled.
    pub(super) fn map(&mut self) {
        let [columns, rows] = self.plan.grid();
        if columns * rows == 1 {
            return;
        }
        let cell = 6.0;
        let Some(place) = self.free.find(columns as f64 * cell + 4.0, rows as f64 * cell + 4.0) else { return };
        for row in 0..rows {
            for column in 0..columns {
                let at = Point::new(place.x0 + 2.0 + column as f64 * cell, place.y0 + 2.0 + row as f64 * cell);
                let rect = Contour::rect(at.x, at.y, at.x + cell, at.y + cell);
                let here = [column, row] == self.at;
                self.pen.contour("map", &rect, if here { Line::Filled } else { Line::Thin });
                let number = format!("{}", row * columns + column + 1);
                let middle = at + Vec2::new(cell / 2.0, cell / 2.0 - SMALL_MM * 0.36);
                self.pen.text("map", middle, SMALL_MM, Anchor::Middle, Weight::SemiBold, &number);
            }
        }
    }

    pub(super) fn cautions(&mut self) {
        let lines: Vec<HeadLine> =
            words::PAGE_CAUTIONS.iter().map(|line| ((*line).to_owned(), SMALL_MM, Weight::Regular)).collect();
        if self.block(&lines, 0.0).is_none() {
            self.missed += 1;
            // Rather one line at a time than none.
            for line in lines {
                self.block(&[line], 0.0);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reason_is_written_over_lines_of_like_length_without_losing_a_word() {
        let what =
            "Bracket that holds the tongue of the card, set off the back by 3 washers, for the tongue needs 1.1 mm";
        let row = KeyRow { letter: "B".to_owned(), drill: "⌀3.4".to_owned(), count: 1, what: what.to_owned() };
        for lines in 2..=MOST_LINES {
            let rows = over_lines(&row, lines);
            assert_eq!(rows.len(), lines);
            let told: Vec<&str> = rows.iter().map(|row| row.what.as_str()).collect();
            assert_eq!(told.join(" "), what);
            assert!(told.iter().all(|line| line.len() <= what.len() / lines + 10), "{told:?}");
            assert_eq!((rows[0].letter.as_str(), rows[0].count, rows[1].count), ("B", 1, 0));
            assert!(rows[1].letter.is_empty() && rows[1].drill.is_empty());
        }
    }
}
