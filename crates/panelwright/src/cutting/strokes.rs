//! Letters of single strokes: what is engraved or drawn by a tool goes along each line once.
//!
//! The letters stand on a grid of four by six, drawn for this program: capitals, figures and a few signs. Small letters
//! are written as capitals; what is not known is left out as a space.

use kurbo::{Point, Vec2};

/// Width of a letter's grid, in units.
const WIDE: f64 = 4.0;

/// From one letter to the next, in units.
const STEP: f64 = 6.0;

/// Height of the grid, in units.
const HIGH: f64 = 6.0;

/// The strokes of a letter: pairs of figures are grid points (across, up), a space lifts the pen.
const fn strokes_of(letter: char) -> &'static str {
    match letter {
        '0' => "010516364541301001 1135",
        '1' => "152620 1030",
        '2' => "05163645440040",
        '3' => "0516364544334241301001",
        '4' => "30360242",
        '5' => "460603334241301001",
        '6' => "4536160501103041423303",
        '7' => "064610",
        '8' => "13040516364544331302011030414233",
        '9' => "0110304145361605041343",
        'A' => "0004264440 0343",
        'B' => "00063645443303 3342413000",
        'C' => "4536160501103041",
        'D' => "00062644422000",
        'E' => "46060040 0333",
        'F' => "460600 0333",
        'G' => "45361605011030414323",
        'H' => "0006 4046 0343",
        'I' => "2026 1030 1636",
        'J' => "0110304146",
        'K' => "0006 460340",
        'L' => "060040",
        'M' => "0006234640",
        'N' => "00064046",
        'O' => "010516364541301001",
        'P' => "00063645443303",
        'Q' => "010516364541301001 2240",
        'R' => "00063645443303 2340",
        'S' => "453616050413334241301001",
        'T' => "0646 2620",
        'U' => "060110304146",
        'V' => "062046",
        'W' => "0610233046",
        'X' => "0046 0640",
        'Y' => "062346 2320",
        'Z' => "06460040",
        '.' => "2021",
        ',' => "2110",
        '-' => "1333",
        '/' => "0046",
        ':' => "2122 2425",
        '+' => "1333 2224",
        '=' => "1232 1434",
        '^' => "2026 042644",
        '(' => "36252130",
        ')' => "16252110",
        _ => "",
    }
}

/// The lines of a text whose first letter stands with its lower left corner at `at`, capitals `height_mm` high.
#[must_use]
pub fn strokes(text: &str, at: Point, height_mm: f64) -> Vec<Vec<Point>> {
    let unit = height_mm / HIGH;
    let mut lines = Vec::new();
    for (place, letter) in text.chars().enumerate() {
        let corner = at + Vec2::new(place as f64 * STEP * unit, 0.0);
        for stroke in strokes_of(letter.to_ascii_uppercase()).split(' ') {
            let line: Vec<Point> = stroke
                .as_bytes()
                .chunks_exact(2)
                .map(|pair| corner + Vec2::new(f64::from(pair[0] - b'0'), f64::from(pair[1] - b'0')) * unit)
                .collect();
            if line.len() > 1 {
                lines.push(line);
            }
        }
    }
    lines
}

/// Width of a text, mm.
#[must_use]
pub fn strokes_width_mm(text: &str, height_mm: f64) -> f64 {
    let count = text.chars().count() as f64;
    if count == 0.0 { 0.0 } else { (STEP * (count - 1.0) + WIDE) * height_mm / HIGH }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_letter_stays_on_its_grid_and_no_two_are_alike() {
        let mut seen = std::collections::BTreeSet::new();
        for letter in ('A'..='Z').chain('0'..='9').chain(".,-/:+=()^".chars()) {
            let lines = strokes(&letter.to_string(), Point::ORIGIN, 6.0);
            assert!(!lines.is_empty(), "{letter}");
            for point in lines.iter().flatten() {
                assert!((0.0..=4.0).contains(&point.x) && (0.0..=6.0).contains(&point.y), "{letter} {point:?}");
            }
            for line in &lines {
                assert!(line.windows(2).all(|pair| pair[0] != pair[1]), "{letter} rests at {line:?}");
            }
            assert!(strokes_of(letter).split(' ').all(|stroke| stroke.len() % 2 == 0), "{letter}");
            assert!(seen.insert(strokes_of(letter)), "{letter} looks like another");
        }
        assert!(strokes(" ?", Point::ORIGIN, 5.0).is_empty());
    }

    #[test]
    fn a_text_is_as_wide_as_said() {
        let lines = strokes("H-0", Point::new(10.0, 20.0), 3.0);
        let right = lines.iter().flatten().map(|point| point.x).fold(0.0, f64::max);
        assert!((right - 10.0 - strokes_width_mm("H-0", 3.0)).abs() < 1e-12);
        assert_eq!(strokes_width_mm("", 3.0), 0.0);
    }
}
