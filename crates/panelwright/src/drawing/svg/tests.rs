//! What the SVG says, against what the format (SVG 2) means by it. Other programs read it in `tests/outside`.

use super::*;
use crate::drawing::{Colour, Dash};

fn one(item: impl Into<Item>) -> Drawing {
    let mut layer = Layer::new("things");
    layer.push(item);
    Drawing { width_mm: 210.0, height_mm: 297.0, layers: vec![layer] }
}

#[track_caller]
fn holds(text: &str, wanted: &str) {
    assert!(text.contains(wanted), "{wanted}\nis not in\n{text}");
}

#[test]
fn the_size_is_in_millimetres_and_so_are_user_units() {
    let text = svg(&Drawing::new(215.9, 279.4), &SvgOptions::default());
    holds(&text, r#"width="215.9mm""#);
    holds(&text, r#"height="279.4mm""#);
    holds(&text, r#"viewBox="0 0 215.9 279.4""#);
}

#[test]
fn y_is_turned_over_and_arcs_turn_with_it() {
    let line = Style::line(Colour::Ink, 0.5);
    // Counter-clockwise with y up: sweep flag 0 with y down.
    let shape = Shape::new(Form::Contours(vec![Contour::rounded_rect(10., 20., 60., 40., 5.)]), line);
    let text = svg(&one(shape), &SvgOptions::default());
    holds(
        &text,
        r#"d="M15 277L55 277A5 5 0 0 0 60 272L60 262A5 5 0 0 0 55 257L15 257A5 5 0 0 0 10 262L10 272A5 5 0 0 0 15 277Z""#,
    );
    let mut path = BezPath::new();
    path.move_to((0., 0.));
    path.quad_to((1., 2.), (3., 4.));
    path.curve_to((5., 6.), (7., 8.), (9., 297.));
    path.close_path();
    holds(
        &svg(&one(Shape::new(path.into(), line)), &SvgOptions::default()),
        r#"d="M0 297Q1 295 3 293C5 291 7 289 9 0Z""#,
    );
    let circle = Shape::new(Contour::circle(10., 20., 2.25).into(), line);
    holds(&svg(&one(circle), &SvgOptions::default()), r#"<circle cx="10" cy="277""#);
}

#[test]
fn what_users_write_cannot_break_the_file() {
    let shape = Shape::new(Contour::circle(1., 1., 1.).into(), Style::default())
        .with_id("a\"><script x='")
        .with_title("<b>&\u{0}\u{1b} \"quoted\"</b>");
    let mut drawing = one(shape);
    drawing.layers[0].name = "\" onload=\"x".to_owned();
    drawing.layers[0].push(Text::new(Point::ZERO, 3.0, "</text><script>&\u{7}"));
    drawing.layers[0].push(Group::about("\" onload=\"x", vec![Text::new(Point::ZERO, 3.0, "\" onload=\"x").into()]));
    for options in [SvgOptions::for_page("p-"), SvgOptions::for_file()] {
        let text = svg(&drawing, &options);
        assert!(!text.contains("<script") && !text.contains('\u{0}'), "{text}");
        holds(&text, "<title>&lt;b&gt;&amp; \"quoted\"&lt;/b&gt;</title>");
        // The library's own reader finds as many ends as starts.
        let (mut starts, mut ends) = (0, 0);
        for event in ::svg::read(&text).expect("readable") {
            match event {
                ::svg::parser::Event::Tag(_, kind, attributes) if kind != ::svg::node::element::tag::Type::End => {
                    assert!(!attributes.contains_key("onload"), "{text}");
                    starts += i32::from(kind == ::svg::node::element::tag::Type::Start);
                }
                ::svg::parser::Event::Tag(_, ::svg::node::element::tag::Type::End, _) => ends += 1,
                ::svg::parser::Event::Error(error) => panic!("{error}"),
                _ => {}
            }
        }
        assert!(starts > 2 && starts == ends);
    }
}

#[test]
fn neighbours_of_one_style_state_it_once() {
    let mut layer = Layer::new("vents");
    let style = Style::line(Colour::Ink, 0.25).with_dash(Dash::Hidden).with_fill(Colour::Paper).with_opacity(0.5);
    for column in 0..50 {
        layer.circle(Point::new(f64::from(column), 5.0), 0.4, style);
    }
    layer.circle(Point::new(0.0, 8.0), 0.4, Style::filled(Colour::Sheet));
    let text = svg(&Drawing { width_mm: 60.0, height_mm: 10.0, layers: vec![layer] }, &SvgOptions::for_page(""));
    assert_eq!(text.matches("<circle").count(), 51);
    assert_eq!(text.matches("stroke-dasharray=\"3 0.75\"").count(), 1);
    assert_eq!(text.matches("fill-opacity=\"0.5\"").count(), 1);
    assert_eq!(text.matches("class=\"fill-paper\"").count(), 1);
    assert_eq!(text.matches("class=\"fill-sheet bare\"").count(), 1);
}

#[test]
fn text_stays_text_on_the_page_and_becomes_outlines_in_files() {
    let words = Text::new(Point::new(50., 100.), 4.0, "⌀ 4.5 & more").anchored(Anchor::Middle).turned(1);
    let page = svg(&one(words.clone().weighing(Weight::SemiBold)), &SvgOptions::for_page(""));
    holds(&page, r#"font-family="Panelwright Sans, sans-serif""#);
    holds(&page, r#"transform="rotate(-90 50 197)""#);
    holds(&page, r#"text-anchor="middle""#);
    holds(&page, r#"font-weight="600""#);
    holds(&page, ">⌀ 4.5 &amp; more</text>");
    let file = svg(&one(words), &SvgOptions::for_file());
    assert!(!file.contains("<text") && !file.contains("font-family"), "{file}");
    holds(&file, "<path aria-label=\"⌀ 4.5 &amp; more\"");
}

#[test]
fn what_is_in_a_group_lies_where_it_would_outside() {
    let shape = Shape::new(Form::Circle { centre: Point::new(40., 10.), radius_mm: 1. }, Style::filled(Colour::Ink));
    let alone = svg(&one(shape.clone()), &SvgOptions::default());
    let group = svg(&one(Group::about("fan-1", vec![shape.into()])), &SvgOptions::default());
    let circle = alone.lines().find(|line| line.contains("<circle"));
    assert!(circle.is_some());
    assert_eq!(group.lines().find(|line| line.contains("<circle")), circle);
    holds(&group, r#"<g data-about="fan-1">"#);
}

#[test]
fn the_same_picture_gives_the_same_characters() {
    let mut layer = Layer::new("many");
    for index in 0..40 {
        layer.push(
            Shape::new(
                Contour::circle(f64::from(index), 3., 0.3).into(),
                Style::line(Colour::Ink, 0.01 * f64::from(index)),
            )
            .with_id(format!("hole-{index}")),
        );
    }
    let drawing = Drawing { width_mm: 60., height_mm: 10., layers: vec![layer] };
    let first = svg(&drawing, &SvgOptions::for_page("a-"));
    // Each call makes its attributes' maps anew; their order must not show.
    for _ in 0..5 {
        assert_eq!(svg(&drawing, &SvgOptions::for_page("a-")), first);
    }
}
