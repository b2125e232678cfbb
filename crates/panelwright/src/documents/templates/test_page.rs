//! The page to print first: bars, a square, a circle and arcs that show what a printer does to lengths and corners.
//!
//! It is never corrected: its readings are what the correction of the templates is worked out from.

use kurbo::{BezPath, Point, Rect, Vec2};

use super::pen::{Line, Pen};
use crate::arrangement::paper_name;
use crate::design::PaperName;
use crate::dimensions::paper;
use crate::drawing::{Anchor, Contour, Page, PdfInfo, Weight, pdf};

/// Sizes of writing, mm, read at arm's length beside the printer (common practice).
const TITLE_MM: f64 = 5.0;
const TEXT_MM: f64 = 3.0;
const SMALL_MM: f64 = 2.4;
/// From one line of writing to the next, mm: 1.6 times the writing (common practice).
const LINE_MM: f64 = 4.8;
/// The long bar and the side of the square, mm. A longer bar shows a smaller error of scale; upright this one has room on
/// every paper.
const LONG_BAR_MM: f64 = 200.0;
const SQUARE_MM: f64 = 100.0;
/// Where the figures start, from the left and from the top of the printable part, mm: behind the upright bar
/// and below the introduction.
const LEFT_MM: f64 = 36.0;
const TOP_MM: f64 = 44.0;

const INTRODUCTION: [&str; 4] = [
    "Print this page at 100 %, actual size: no fitting, no scaling, no borderless printing.",
    "Measure with a steel ruler, from the middle of one end tick to the middle of the other, to a tenth.",
    "Say what you read under Templates: \u{201c}The bar across measures\u{201d}, \u{201c}The bar down the page measures\u{201d}.",
    "Across is along the paper's short side. Print again when you change printer, paper or settings.",
];

const CAUTIONS: [&str; 3] = [
    "A bar more than 3 mm off means that the page was scaled to fit: turn that off and print again.",
    "Paper moves with humidity: measure on the day you glue, and use little water.",
    "The circle must be round, the arcs fit a coin or radius gauge: a printer that drags shows it here.",
];

/// The test page on a paper, upright and at true size.
#[must_use]
pub fn test_page(name: PaperName) -> Page {
    let [width, height] = paper::size(paper_name(name)).get();
    let margin = paper::PRINTER_MARGIN.get();
    let area = Rect::new(margin, margin, width - margin, height - margin);
    let mut pen = Pen::new(width, height);
    let place = |x: f64, down: f64| Point::new(area.x0 + x, area.y1 - down);

    pen.text("words", place(0.0, 6.0), TITLE_MM, Anchor::Start, Weight::SemiBold, "Test page for your printer");
    lines(&mut pen, place(0.0, 13.0), &INTRODUCTION);

    bar(&mut pen, place(LEFT_MM, TOP_MM), Vec2::new(1.0, 0.0), paper::CHECK_BAR.get(), "Bar across, 100 mm");
    bar(
        &mut pen,
        place(22.0, TOP_MM + paper::CHECK_BAR.get()),
        Vec2::new(0.0, 1.0),
        paper::CHECK_BAR.get(),
        "Bar down, 100 mm",
    );
    if area.height() >= TOP_MM + LONG_BAR_MM {
        bar(&mut pen, place(8.0, TOP_MM + LONG_BAR_MM), Vec2::new(0.0, 1.0), LONG_BAR_MM, "200 mm");
    }
    if area.width() >= LEFT_MM + LONG_BAR_MM {
        bar(&mut pen, place(LEFT_MM, TOP_MM + 10.0), Vec2::new(1.0, 0.0), LONG_BAR_MM, "200 mm");
    }
    let corner = place(LEFT_MM, TOP_MM + 18.0 + SQUARE_MM);
    square(&mut pen, corner);
    circle(&mut pen, corner + Vec2::new(SQUARE_MM + 30.0, SQUARE_MM - 20.0));
    arcs(&mut pen, corner + Vec2::new(SQUARE_MM + 8.0, 0.0));
    readings(&mut pen, corner - Vec2::new(0.0, 14.0));
    lines(&mut pen, corner - Vec2::new(0.0, 58.0), &CAUTIONS);
    Page::from(pen.finish())
}

/// The test page as a PDF.
#[must_use]
pub fn test_page_pdf(name: PaperName) -> Vec<u8> {
    let label = paper_name(name).label();
    let info = PdfInfo { title: format!("Test page, {label}"), subject: "bars to measure".to_owned() };
    pdf(&[test_page(name)], &info)
}

fn lines(pen: &mut Pen, from: Point, words: &[&str]) {
    for (index, line) in words.iter().enumerate() {
        let at = from - Vec2::new(0.0, index as f64 * LINE_MM);
        pen.text("words", at, TEXT_MM, Anchor::Start, Weight::Regular, line);
    }
}

/// A bar with a tick every 10 mm, those at its ends longer.
fn bar(pen: &mut Pen, from: Point, along: Vec2, length: f64, words: &str) {
    let side = Vec2::new(along.y, along.x);
    pen.line("bars", from, from + along * length, Line::Bar);
    let steps = (length / 10.0) as usize;
    for step in 0..=steps {
        let at = from + along * (step as f64 * 10.0);
        let reach = if step % steps == 0 { 3.0 } else { 1.0 };
        pen.line("bars", at - side * reach, at + side * reach, Line::Bar);
    }
    if along.y > 0.0 {
        pen.upright_text("bars", from + Vec2::new(-1.8, 12.0), TEXT_MM, words);
    } else {
        pen.text("bars", from + Vec2::new(12.0, 1.8), TEXT_MM, Anchor::Start, Weight::SemiBold, words);
    }
}

fn square(pen: &mut Pen, corner: Point) {
    let [x, y] = [corner.x, corner.y];
    let (right, top) = (x + SQUARE_MM, y + SQUARE_MM);
    pen.contour("square", &Contour::rect(x, y, right, top), Line::Bar);
    pen.line("square", corner, Point::new(right, top), Line::Thin);
    pen.line("square", Point::new(x, top), Point::new(right, y), Line::Thin);
    let small = |pen: &mut Pen, at: Point, words: &str| {
        pen.text("square", at, TEXT_MM, Anchor::Middle, Weight::SemiBold, words);
    };
    let middle = corner + Vec2::new(SQUARE_MM, SQUARE_MM) / 2.0;
    small(pen, corner + Vec2::new(SQUARE_MM - 16.0, SQUARE_MM - 9.0), "A");
    small(pen, corner + Vec2::new(16.0, SQUARE_MM - 9.0), "B");
    small(pen, middle - Vec2::new(0.0, 32.0), "Square, 100 mm");
    small(pen, middle - Vec2::new(0.0, 37.0), "diagonals 141.4 mm");
}

fn circle(pen: &mut Pen, centre: Point) {
    pen.circle("circle", centre, 20.0, Line::Bar);
    for axis in [Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0)] {
        pen.line("circle", centre - axis * 22.0, centre + axis * 22.0, Line::Thin);
    }
    pen.text("circle", centre + Vec2::new(2.0, 2.0), SMALL_MM, Anchor::Start, Weight::Regular, "⌀40");
}

/// Quarter arcs about one corner, each with its radius at its foot.
fn arcs(pen: &mut Pen, corner: Point) {
    pen.line("arcs", corner, corner + Vec2::new(44.0, 0.0), Line::Thin);
    pen.line("arcs", corner, corner + Vec2::new(0.0, 44.0), Line::Thin);
    for radius in [5.0, 10.0, 15.0, 20.0, 30.0, 40.0] {
        let mut path = BezPath::new();
        let start = corner + Vec2::new(radius, 0.0);
        path.move_to(start);
        let quarter = kurbo::Arc::new(corner, (radius, radius), 0.0, std::f64::consts::FRAC_PI_2, 0.0);
        quarter.to_cubic_beziers(1e-4, |a, b, c| path.curve_to(a, b, c));
        pen.path("arcs", path, Line::Bar);
        let at = start - Vec2::new(0.0, 3.2);
        pen.text("arcs", at, SMALL_MM, Anchor::Middle, Weight::Regular, &format!("{radius}"));
    }
    let at = corner + Vec2::new(22.0, -7.0);
    pen.text("arcs", at, SMALL_MM, Anchor::Middle, Weight::Regular, "radii, mm");
}

/// Lines to write the readings on, and the sum that tells whether the page is square.
fn readings(pen: &mut Pen, from: Point) {
    let rows = [
        ("Bar across", "mm", "type it in as: The bar across measures"),
        ("Bar down", "mm", "type it in as: The bar down the page measures"),
        ("Diagonal A", "mm", "A and B should be the same. Each millimetre between them is"),
        ("Diagonal B", "mm", "0.41° out of square: (A − B) / (1.414 × 100) in radians."),
    ];
    for (index, (what, unit, note)) in rows.iter().enumerate() {
        let at = from - Vec2::new(0.0, index as f64 * 8.0);
        pen.text("readings", at, TEXT_MM, Anchor::Start, Weight::SemiBold, what);
        pen.line("readings", at + Vec2::new(20.0, -0.8), at + Vec2::new(42.0, -0.8), Line::Thin);
        pen.text("readings", at + Vec2::new(43.5, 0.0), TEXT_MM, Anchor::Start, Weight::Regular, unit);
        pen.text("readings", at + Vec2::new(52.0, 0.0), TEXT_MM, Anchor::Start, Weight::Regular, note);
    }
    pen.text(
        "readings",
        from - Vec2::new(0.0, 35.0),
        SMALL_MM,
        Anchor::Start,
        Weight::Regular,
        "Out of square cannot be corrected here: mend the paper guide of the printer.",
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::{Item, text_width_mm};

    /// Every word and line lies inside the margin on every paper there is.
    #[test]
    fn nothing_on_the_page_is_cut_off() {
        for name in ["a4", "a3", "letter", "legal", "tabloid", "a1", "a0"] {
            let name = PaperName::of(name).unwrap();
            let page = test_page(name);
            let area = Rect::new(0.0, 0.0, page.width_mm, page.height_mm).inset(-10.0 + 1e-6);
            for item in page.drawing.layers.iter().flat_map(|layer| &layer.items) {
                if let Item::Text(text) = item {
                    let length = text_width_mm(&text.text, text.size_mm, text.weight);
                    let end = if text.quarter_turns == 1 {
                        text.at + Vec2::new(0.0, length)
                    } else if text.anchor == Anchor::Middle {
                        text.at + Vec2::new(length / 2.0, 0.0)
                    } else {
                        text.at + Vec2::new(length, 0.0)
                    };
                    assert!(area.contains(text.at) && area.contains(end), "{}: {}", name.name(), text.text);
                }
            }
        }
    }
}
