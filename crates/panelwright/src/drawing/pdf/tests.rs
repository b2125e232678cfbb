//! What the PDF says, read operator by operator as ISO 32000-1 defines them (8.2, table 51; 9.4). Other programs read
//! it in `tests/outside`.

use kurbo::Point;

use super::*;
use crate::drawing::{Anchor, Colour, Contour, Dash, Form, Group, Item, Layer, Style, Text, Weight, text_width_mm};

fn page(items: Vec<Item>) -> Page {
    Drawing { width_mm: 210., height_mm: 297., layers: vec![Layer { name: "things".to_owned(), items }] }.into()
}

fn info() -> PdfInfo {
    PdfInfo { title: "Templates: left – ⌀".to_owned(), subject: "f00d".to_owned() }
}

/// Everything between `stream` and `endstream` that unpacks.
fn streams(file: &[u8]) -> Vec<Vec<u8>> {
    let find = |from: usize, word: &[u8]| {
        file[from..].windows(word.len()).position(|window| window == word).map(|at| from + at)
    };
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(start) = find(at, b"\nstream\n").map(|start| start + 8) {
        let Some(end) = find(start, b"\nendstream") else { break };
        if let Ok(bytes) = miniz_oxide::inflate::decompress_to_vec_zlib(&file[start..end]) {
            found.push(bytes);
        }
        at = end;
    }
    found
}

/// The operators of the first page, each with its operands.
fn operators(file: &[u8]) -> Vec<(String, Vec<f64>)> {
    let content = streams(file).swap_remove(0);
    let mut found = Vec::new();
    let mut operands = Vec::new();
    let mut at = 0;
    while at < content.len() {
        let start = at;
        at += 1;
        match content[start] {
            // A string: up to the bracket that closes it (7.3.4.2).
            b'(' => {
                let mut depth = 1;
                while depth > 0 {
                    match content[at] {
                        b'\\' => at += 1,
                        b'(' => depth += 1,
                        b')' => depth -= 1,
                        _ => {}
                    }
                    at += 1;
                }
            }
            b'<' | b'[' => at += content[at..].iter().position(|byte| matches!(byte, b'>' | b']')).expect("an end") + 1,
            byte if byte.is_ascii_whitespace() => {}
            _ => {
                let ends = |byte: &u8| byte.is_ascii_whitespace() || b"/<([".contains(byte);
                at = content[at..].iter().position(ends).map_or(content.len(), |length| at + length);
                let word = String::from_utf8_lossy(&content[start..at]).into_owned();
                match word.parse() {
                    Ok(number) => operands.push(number),
                    Err(_) if word.starts_with('/') => {}
                    Err(_) => found.push((word, std::mem::take(&mut operands))),
                }
            }
        }
    }
    found
}

fn of<'a>(operators: &'a [(String, Vec<f64>)], name: &str) -> Vec<&'a [f64]> {
    operators.iter().filter(|(operator, _)| operator == name).map(|(_, operands)| operands.as_slice()).collect()
}

#[test]
fn a_bar_of_100_mm_is_283_4646_points_long() {
    let mut layer = Layer::default();
    layer.line(Point::new(20., 30.), Point::new(120., 30.), Style::line(Colour::Ink, 0.2));
    let found = operators(&pdf(&[page(layer.items)], &info()));
    let scale = of(&found, "cm")[0];
    assert_eq!((scale[1], scale[2], scale[4], scale[5]), (0., 0., 0., 0.));
    let (from, to) = (of(&found, "m")[0], of(&found, "l")[0]);
    // 72/25.4 points to the millimetre.
    assert!(((to[0] - from[0]) * scale[0] - 283.4646).abs() < 0.0001);
    assert!((from[1] * scale[3] - 30. * 72. / 25.4).abs() < 0.0001);
    assert_eq!(of(&found, "G"), [[0.]], "printed lines are black");
    assert_eq!(of(&found, "S").len(), 1);
}

#[test]
fn coordinates_are_exact_to_a_ten_thousandth_of_a_millimetre_all_over_the_largest_paper() {
    let mut layer = Layer::default();
    let places: Vec<Point> =
        (0..400).map(|step| Point::new(279.4 - f64::from(step) * 0.6913, 431.8 - f64::from(step) * 1.0777)).collect();
    for place in &places {
        layer.line(*place, Point::ZERO, Style::line(Colour::Ink, 0.1));
    }
    let found = operators(&pdf(&[page(layer.items)], &info()));
    let starts = of(&found, "m");
    assert_eq!(starts.len(), places.len());
    for (found, place) in starts.iter().zip(&places) {
        assert!((found[0] - place.x).abs() < 1e-4 && (found[1] - place.y).abs() < 1e-4, "{found:?} {place:?}");
    }
}

#[test]
fn circles_are_round_to_a_thousandth_of_a_millimetre() {
    for radius in [1.5, 2.25, 10., 58., 100., 250.] {
        let form = Form::Circle { centre: Point::new(105., 148.), radius_mm: radius };
        let mut layer = Layer::default();
        layer.draw(form, Style::line(Colour::Ink, 0.1));
        let found = operators(&pdf(&[page(layer.items)], &info()));
        let mut here = of(&found, "m")[0].to_vec();
        let mut worst = 0.0_f64;
        for curve in of(&found, "c") {
            for step in 0..=100 {
                let t = f64::from(step) / 100.;
                let s = 1. - t;
                let at = |axis: usize| {
                    s * s * s * here[axis]
                        + 3. * s * s * t * curve[axis]
                        + 3. * s * t * t * curve[2 + axis]
                        + t * t * t * curve[4 + axis]
                };
                let (x, y) = (at(0) - 105., at(1) - 148.);
                worst = worst.max((f64::sqrt(x * x + y * y) - radius).abs());
            }
            here = curve[4..].to_vec();
        }
        // The curves' own distance, and the rounding of their points.
        assert!(worst < 0.001 + 1e-4, "radius {radius}: {worst}");
        assert!(of(&found, "c").len() >= 4);
    }
}

#[test]
fn boxes_and_preferences_ask_for_true_size() {
    let text = |pages: &[Page]| String::from_utf8_lossy(&pdf(pages, &info())).into_owned();
    let letter = Page { drawing: Drawing::default(), width_mm: 215.9, height_mm: 279.4, scale: [1.0, 1.0] };
    let file = text(&[page(Vec::new()), letter]);
    for wanted in [
        "/MediaBox[0 0 595.2756 841.8898]",
        "/TrimBox[0 0 595.2756 841.8898]",
        "/MediaBox[0 0 612 792]",
        "/TrimBox[0 0 612 792]",
        "/PrintScaling/None",
        "/PickTrayByPDFSize true",
        "/Duplex/Simplex",
        "/Count 2",
        "/Creator(Panelwright)",
    ] {
        assert!(file.contains(wanted), "{wanted} is not in\n{file}");
    }
    for unwanted in ["/UserUnit", "/CreationDate", "/ModDate", "/Rotate"] {
        assert!(!file.contains(unwanted), "{unwanted}");
    }
}

#[test]
fn text_is_embedded_and_can_be_read_back() {
    let words = Text::new(Point::new(100., 50.), 4., "⌀ 4.5").anchored(Anchor::End).turned(1);
    let plain = Text::new(Point::new(10., 20.), 4., "A");
    let file = pdf(&[page(vec![words.into(), plain.into()])], &info());
    let text = String::from_utf8_lossy(&file);
    assert!(text.contains("/PanelwrightSans-Regular") && text.contains("/FontFile2"));
    assert!(!text.contains("/PanelwrightSans-SemiBold"), "a weight that is not used is not carried along");
    assert!(text.contains("<2300>"), "the map back to letters knows the diameter sign");
    assert!(streams(&file).iter().any(|stream| stream == Weight::Regular.file()), "the font is whole");
    let found = operators(&file);
    let matrices = of(&found, "Tm");
    // A quarter turn counter-clockwise; the text ends at its place, so it starts its width below it.
    let width = text_width_mm("⌀ 4.5", 4., Weight::Regular);
    assert_eq!(&matrices[0][..4], [0., 1., -1., 0.]);
    assert!((matrices[0][4] - 100.).abs() < 1e-4 && (matrices[0][5] - (50. - width)).abs() < 1e-4);
    assert_eq!(matrices[1], [1., 0., 0., 1., 10., 20.]);
}

#[test]
fn state_is_only_changed_when_it_must_be() {
    let mut layer = Layer::default();
    let line = Style::line(Colour::Ink, 0.5);
    for row in 0..20 {
        layer.line(Point::new(0., f64::from(row)), Point::new(9., f64::from(row)), line);
    }
    layer.line(Point::ZERO, Point::new(9., 9.), line.with_dash(Dash::Hidden));
    layer.line(Point::ZERO, Point::new(9., 9.), line);
    let mut inner = Layer::default();
    inner.draw(Contour::rect(0., 0., 5., 5.), Style::filled(Colour::Sheet).with_opacity(0.25));
    layer.push(Group::about("fan-1", inner.items.clone()));
    layer.items.extend(inner.items);
    layer.draw(Contour::rect(0., 0., 5., 5.), Style::filled(Colour::Sheet));
    let file = pdf(&[page(layer.items)], &info());
    let found = operators(&file);
    assert_eq!(of(&found, "w").len(), 1);
    assert_eq!(of(&found, "G").len(), 1);
    let dashes: Vec<usize> = of(&found, "d").iter().map(|operands| operands.len()).collect();
    assert_eq!(dashes.len(), 2, "dashed, and unbroken again");
    // Opacity is set once for what lies in the group and after it, and back to whole.
    assert_eq!(of(&found, "gs").len(), 2);
    let text = String::from_utf8_lossy(&file);
    assert!(text.contains("/ca 0.25") && text.contains("/ca 1") && text.contains("/Transparency"));
}

#[test]
fn the_same_pages_give_the_same_bytes_and_others_another_id() {
    let pages = |text: &str| vec![page(vec![Text::new(Point::new(9., 9.), 5., text).into()])];
    let first = pdf(&pages("one"), &info());
    assert_eq!(first, pdf(&pages("one"), &info()));
    let id = |file: &[u8]| {
        let text = String::from_utf8_lossy(file).into_owned();
        text[text.find("/ID").expect("an id")..].to_owned()
    };
    assert_ne!(id(&first), id(&pdf(&pages("two"), &info())));
}

#[test]
fn nothing_at_all_is_still_a_file() {
    assert!(pdf(&[], &PdfInfo::default()).starts_with(b"%PDF-1.7"));
    let odd = Text::new(Point::ZERO, 5., "");
    assert!(pdf(&[page(vec![odd.into()])], &info()).ends_with(b"%%EOF"));
}
