//! Writes a specimen of everything a picture can hold, as PDF and SVG, into the folder named on the command line.
//!
//! The checks in `tests/` read these files with other programs and compare them with what is stated here.

use kurbo::{BezPath, Point, Vec2};
use panelwright::drawing::{
    Anchor, Colour, Contour, Dash, Drawing, Form, Group, Layer, PdfInfo, Shade, Shape, Style, SvgOptions, THIN_LINE_MM,
    Text, VISIBLE_LINE_MM, Weight, pdf, svg, text_width_mm,
};

fn main() -> std::io::Result<()> {
    let Some(folder) = std::env::args_os().nth(1) else {
        return Err(std::io::Error::other("say which folder to write into"));
    };
    let folder = std::path::Path::new(&folder);
    std::fs::create_dir_all(folder)?;
    let drawing = specimen();
    let info = PdfInfo { title: "Specimen – ⌀ 4.5".to_owned(), subject: "0123456789abcdef".to_owned() };
    let mut tabloid = Drawing::new(279.4, 431.8);
    tabloid.layers.push(corner_marks(279.4, 431.8));
    std::fs::write(folder.join("specimen.pdf"), pdf(&[drawing.clone().into(), tabloid.into()], &info))?;
    std::fs::write(folder.join("specimen-page.svg"), svg(&drawing, &SvgOptions::for_page("one-")))?;
    std::fs::write(folder.join("specimen-file.svg"), svg(&drawing, &SvgOptions::for_file()))
}

/// Ticks 10 mm inside each corner of a page.
fn corner_marks(width_mm: f64, height_mm: f64) -> Layer {
    let mut layer = Layer::new("corners");
    let thin = Style::line(Colour::Thin, 0.1);
    for x in [10.0, width_mm - 10.0] {
        for y in [10.0, height_mm - 10.0] {
            layer.line(Point::new(x - 3.0, y), Point::new(x + 3.0, y), thin);
            layer.line(Point::new(x, y - 3.0), Point::new(x, y + 3.0), thin);
        }
    }
    layer
}

/// An A4 page: two bars of 100 mm, a panel with holes, dashes, surfaces, text in every pose, a group.
fn specimen() -> Drawing {
    let mut drawing = Drawing::new(210.0, 297.0);
    drawing.layers.push(corner_marks(210.0, 297.0));

    let mut bars = Layer::new("bars");
    bars.line(Point::new(20.0, 20.0), Point::new(120.0, 20.0), Style::line(Colour::Ink, 0.2));
    bars.line(Point::new(20.0, 20.0), Point::new(20.0, 120.0), Style::line(Colour::Ink, 0.2));
    bars.push(Text::new(Point::new(70.0, 22.0), 3.5, "100 mm: measure me").anchored(Anchor::Middle));
    bars.push(Text::new(Point::new(18.0, 70.0), 3.5, "100 mm up").anchored(Anchor::Middle).turned(1));
    drawing.layers.push(bars);

    let mut panel = Layer::new("panel");
    let outline = Contour::rounded_rect(40.0, 150.0, 170.0, 270.0, 5.0);
    let window = Contour::slot(60.0, 165.0, 120.0, 165.0, 12.0);
    let style = Style::line(Colour::Ink, VISIBLE_LINE_MM).with_fill(Colour::Sheet);
    panel.push(Shape::new(vec![outline, window].into(), style).with_id("left").with_title("Left panel <6 mm>"));
    let hole = Style::line(Colour::Ink, THIN_LINE_MM).with_fill(Colour::Paper);
    for column in 0..12 {
        for row in 0..6 {
            let centre = Point::new(60.0 + 8.0 * f64::from(column), 190.0 + 8.0 * f64::from(row));
            panel.circle(centre, 2.5, hole);
        }
    }
    let fan = Form::Circle { centre: Point::new(150.0, 250.0), radius_mm: 12.0 };
    panel.push(Shape::new(fan, hole).with_id("fan-1-opening").with_title("Fan 1 & its \"opening\""));
    for (row, dash) in [Dash::Solid, Dash::Hidden, Dash::ChainThin].into_iter().enumerate() {
        let y = 244.0 + 5.0 * row as f64;
        panel.line(Point::new(50.0, y), Point::new(125.0, y), Style::line(Colour::Hidden, 0.35).with_dash(dash));
    }
    drawing.layers.push(panel);

    let mut words = Layer::new("words");
    for (row, (text, weight)) in [
        ("Drill ⌀ 4.5 × 6 mm → “through”, 20° ± 0.5 ≤ 3 ≥ 2 – ½ m² m³ µm", Weight::Regular),
        ("Drill ⌀ 4.5 × 6 mm → “through”, 20° ± 0.5 ≤ 3 ≥ 2 – ½ m² m³ µm", Weight::SemiBold),
        ("0123456789 Größe ABC xyz & <tags>", Weight::Regular),
        ("1111111111 Größe ABC xyz & <tags>", Weight::SemiBold),
    ]
    .into_iter()
    .enumerate()
    {
        let at = Point::new(30.0, 138.0 - 7.0 * row as f64);
        words.push(Text::new(at, 4.5, text).weighing(weight));
        let end = at + Vec2::new(text_width_mm(text, 4.5, weight), 0.0);
        words.line(at + Vec2::new(0.0, -1.0), end + Vec2::new(0.0, -1.0), Style::line(Colour::Accent, 0.1));
    }
    for turns in 0..4 {
        words.push(Text::new(Point::new(180.0, 60.0), 4.0, format!("turn {turns}")).turned(turns));
    }
    for (row, anchor) in [Anchor::Start, Anchor::Middle, Anchor::End].into_iter().enumerate() {
        let at = Point::new(150.0, 110.0 - 6.0 * row as f64);
        words.push(Text::new(at, 4.0, "anchored").anchored(anchor).coloured(Colour::Accent));
    }
    drawing.layers.push(words);

    let mut surfaces = Layer::new("surfaces");
    for (index, colour) in Colour::NAMED.into_iter().enumerate() {
        for (row, shade) in [Shade::Lit, Shade::Plain, Shade::Dim, Shade::Dark].into_iter().enumerate() {
            let (x, y) = (30.0 + 5.0 * index as f64, 30.0 + 5.0 * row as f64);
            surfaces.draw(Contour::rect(x, y, x + 5.0, y + 5.0), Style::filled(colour).with_shade(shade));
        }
    }
    let see_through = Style::filled(Colour::Fan).with_opacity(0.4);
    surfaces.draw(Contour::circle(60.0, 55.0, 12.0), see_through);
    surfaces.draw(Contour::circle(72.0, 55.0, 12.0), see_through);
    let mut wave = BezPath::new();
    wave.move_to((100.0, 55.0));
    wave.quad_to((110.0, 75.0), (120.0, 55.0));
    wave.curve_to((125.0, 45.0), (135.0, 45.0), (140.0, 55.0));
    surfaces.draw(wave, Style::line(Colour::Accent, 0.35));
    drawing.layers.push(surfaces);

    let mut grouped = Layer::new("grouped");
    let mut inner = Layer::default();
    inner.draw(Contour::rounded_rect(30.0, 80.0, 70.0, 100.0, 4.0), Style::line(Colour::Ink, 0.35));
    inner.push(Text::new(Point::new(33.0, 87.0), 5.0, "grouped"));
    inner.draw(Contour::slot(52.0, 85.0, 70.0, 96.0, 4.0), Style::line(Colour::Accent, 0.35));
    grouped.push(Group::about("thing", inner.items));
    drawing.layers.push(grouped);
    drawing
}
