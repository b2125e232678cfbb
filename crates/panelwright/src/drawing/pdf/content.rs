//! What stands on one page: the drawing operators.

use kurbo::{BezPath, PathEl, Point};
use pdf_writer::types::LineJoinStyle;
use pdf_writer::{Content, Name, Settings, Str};

use super::super::colour::{Colour, Shade};
use super::super::contour::Contour;
use super::super::font::{Weight, quarter_turn, start_of};
use super::super::letters::printable;
use super::super::picture::{Dash, Drawing, Form, Item, Shape, Stroke, Style, Text};
use super::fonts::{self, FontUse};
use super::{POINTS_PER_MM, millimetres};

/// Opacity is told apart in this many steps.
pub(super) const OPACITY_STEPS: f32 = 1000.0;

/// What a page came to.
pub(super) struct Used {
    pub(super) content: Vec<u8>,
    pub(super) weights: Vec<Weight>,
    /// Opacities of surfaces, in steps, other than whole.
    pub(super) opacities: Vec<u16>,
}

/// Adds to an ordered list what is not yet in it.
fn note<T: Copy + Ord>(list: &mut Vec<T>, one: T) {
    if let Err(place) = list.binary_search(&one) {
        list.insert(place, one);
    }
}

/// Name of an opacity among a page's resources.
pub(super) fn opacity_name(steps: u16) -> String {
    format!("O{steps}")
}

/// What the page's graphics state holds, so that it is only changed when it must.
#[derive(Clone, Copy, Default, PartialEq)]
struct State {
    stroke: Option<[u8; 3]>,
    fill: Option<[u8; 3]>,
    width_mm: Option<f64>,
    dash: Option<(Dash, f64)>,
    opacity: Option<u16>,
}

pub(super) struct PageWriter<'a> {
    content: Content,
    fonts: &'a mut FontUse,
    weights: Vec<Weight>,
    opacities: Vec<u16>,
    state: State,
}

impl<'a> PageWriter<'a> {
    pub(super) fn new(fonts: &'a mut FontUse, scale: [f64; 2]) -> Self {
        let mut content = Content::with_settings(Settings { pretty: false });
        let [across, up] = scale.map(|scale| (POINTS_PER_MM * scale) as f32);
        content.transform([across, 0.0, 0.0, up, 0.0, 0.0]);
        content.set_line_join(LineJoinStyle::RoundJoin);
        Self { content, fonts, weights: Vec::new(), opacities: Vec::new(), state: State::default() }
    }

    pub(super) fn drawing(&mut self, drawing: &Drawing) {
        for layer in &drawing.layers {
            self.items(&layer.items);
        }
    }

    pub(super) fn finish(self) -> Used {
        Used { content: self.content.finish().into_vec(), weights: self.weights, opacities: self.opacities }
    }

    fn items(&mut self, items: &[Item]) {
        for item in items {
            match item {
                Item::Shape(shape) => self.shape(shape),
                Item::Text(text) => self.text(text),
                Item::Group(group) => self.items(&group.items),
            }
        }
    }

    fn shape(&mut self, shape: &Shape) {
        let style = &shape.style;
        if style.stroke.is_none() && style.fill.is_none() {
            return;
        }
        self.set_style(style);
        match &shape.form {
            Form::Path(path) => self.path(path),
            Form::Contours(contours) => {
                for contour in contours {
                    self.path(&contour.to_path());
                }
            }
            Form::Circle { centre, radius_mm } => {
                self.path(&Contour::circle(centre.x, centre.y, *radius_mm).to_path());
            }
        }
        match (style.stroke.is_some(), style.fill.is_some()) {
            (true, true) => self.content.fill_even_odd_and_stroke(),
            (false, true) => self.content.fill_even_odd(),
            _ => self.content.stroke(),
        };
    }

    fn set_style(&mut self, style: &Style) {
        if let Some(stroke) = style.stroke {
            self.set_stroke(stroke);
        }
        if let Some(colour) = style.fill {
            self.set_fill(colour, style.shade);
            let whole = OPACITY_STEPS as u16;
            let steps = style
                .fill_opacity
                .map_or(whole, |opacity| libm::round(opacity.clamp(0.0, 1.0) * f64::from(OPACITY_STEPS)) as u16);
            self.set_opacity(steps);
        }
    }

    fn set_stroke(&mut self, stroke: Stroke) {
        let Stroke { width_mm, colour, dash } = stroke;
        let rgb = colour.rgb();
        if self.state.stroke != Some(rgb) {
            self.state.stroke = Some(rgb);
            match grey(rgb) {
                Some(level) => self.content.set_stroke_gray(level),
                None => {
                    let [red, green, blue] = unit(rgb);
                    self.content.set_stroke_rgb(red, green, blue)
                }
            };
        }
        if self.state.width_mm != Some(width_mm) {
            self.state.width_mm = Some(width_mm);
            self.content.set_line_width(millimetres(width_mm));
        }
        // A dash is as long as its line is wide; an unbroken line has none, whatever its width.
        let wanted = if dash == Dash::Solid { (dash, 0.0) } else { (dash, width_mm) };
        if self.state.dash != Some(wanted) && (self.state.dash.is_some() || dash != Dash::Solid) {
            self.content.set_dash_pattern(dash.pattern().iter().map(|length| millimetres(length * width_mm)), 0.0);
        }
        self.state.dash = Some(wanted);
    }

    fn set_fill(&mut self, colour: Colour, shade: Shade) {
        let rgb = colour.shaded(shade);
        if self.state.fill == Some(rgb) {
            return;
        }
        self.state.fill = Some(rgb);
        match grey(rgb) {
            Some(level) => self.content.set_fill_gray(level),
            None => {
                let [red, green, blue] = unit(rgb);
                self.content.set_fill_rgb(red, green, blue)
            }
        };
    }

    fn set_opacity(&mut self, steps: u16) {
        let whole = OPACITY_STEPS as u16;
        if self.state.opacity.unwrap_or(whole) != steps {
            note(&mut self.opacities, steps);
            self.content.set_parameters(Name(opacity_name(steps).as_bytes()));
            self.state.opacity = Some(steps);
        }
    }

    fn path(&mut self, path: &BezPath) {
        let mm = millimetres;
        let mut here = Point::ZERO;
        for element in path.elements() {
            match *element {
                PathEl::MoveTo(to) => self.content.move_to(mm(to.x), mm(to.y)),
                PathEl::LineTo(to) => self.content.line_to(mm(to.x), mm(to.y)),
                // The format has cubic curves only; this is the same curve, exactly.
                PathEl::QuadTo(handle, to) => {
                    let (one, two) = (here.lerp(handle, 2.0 / 3.0), to.lerp(handle, 2.0 / 3.0));
                    self.content.cubic_to(mm(one.x), mm(one.y), mm(two.x), mm(two.y), mm(to.x), mm(to.y))
                }
                PathEl::CurveTo(one, two, to) => {
                    self.content.cubic_to(mm(one.x), mm(one.y), mm(two.x), mm(two.y), mm(to.x), mm(to.y))
                }
                PathEl::ClosePath => self.content.close_path(),
            };
            here = element.end_point().unwrap_or(here);
        }
    }

    fn text(&mut self, text: &Text) {
        let start = start_of(text);
        let mut glyphs = Vec::with_capacity(2 * text.text.len());
        for letter in printable(&text.text) {
            glyphs.extend(self.fonts.show(text.weight, letter).0.to_be_bytes());
        }
        if glyphs.is_empty() {
            return;
        }
        note(&mut self.weights, text.weight);
        self.set_fill(text.colour, Shade::Plain);
        self.set_opacity(OPACITY_STEPS as u16);
        let [a, b, c, d, ..] = quarter_turn(text.quarter_turns).as_coeffs();
        let (x, y) = (text.at.x + a * start, text.at.y + b * start);
        self.content
            .begin_text()
            .set_font(fonts::name(text.weight), millimetres(text.size_mm))
            .set_text_matrix([a as f32, b as f32, c as f32, d as f32, millimetres(x), millimetres(y)])
            .show(Str(&glyphs))
            .end_text();
    }
}

/// The grey level of a colour without hue: printers then use black ink alone.
fn grey([red, green, blue]: [u8; 3]) -> Option<f32> {
    (red == green && green == blue).then(|| fraction(red))
}

fn unit(rgb: [u8; 3]) -> [f32; 3] {
    rgb.map(fraction)
}

fn fraction(part: u8) -> f32 {
    libm::roundf(f32::from(part) / 255.0 * 1000.0) / 1000.0
}
