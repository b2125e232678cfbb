//! The one family of letters, for page, pictures and PDF: two weights, embedded, measured the same everywhere.
//!
//! Panelwright Sans is IBM Plex Sans under another name (its licence reserves the name for the unchanged font), cut
//! down to the letters used; see `fonts/make.py` for how and `fonts/LICENSE-OFL.txt` for the licence (SIL OFL 1.1).
//! All figures are equally wide in both weights, so numbers that change keep their width. There is no kerning:
//! a text is as wide as the sum of its letters.

use std::sync::OnceLock;

use kurbo::{Affine, BezPath, Point, Vec2};
use ttf_parser::{GlyphId, OutlineBuilder, RawFace, Tag, cmap, glyf, head, hhea, hmtx, loca, maxp};

use super::letters::{UNITS_PER_EM, printable, text_width_mm};
use super::picture::{Anchor, Text};

/// Weight of the letters.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// For most text.
    #[default]
    Regular,
    /// For headings and key letters.
    SemiBold,
}

/// Name of the family in style sheets.
pub const FAMILY: &str = "Panelwright Sans";

/// Height of capitals and figures in font units (both weights; read from the font, held by a test).
pub(super) const CAP_HEIGHT: f64 = 698.0;

impl Weight {
    /// Both weights.
    pub const ALL: [Self; 2] = [Self::Regular, Self::SemiBold];

    /// The weight as style sheets count it.
    #[must_use]
    pub const fn css(self) -> u16 {
        match self {
            Self::Regular => 400,
            Self::SemiBold => 600,
        }
    }

    /// The font file (TrueType).
    #[must_use]
    pub const fn file(self) -> &'static [u8] {
        match self {
            Self::Regular => include_bytes!("../../fonts/panelwright-sans-regular.ttf"),
            Self::SemiBold => include_bytes!("../../fonts/panelwright-sans-semibold.ttf"),
        }
    }

    /// Name of the font inside files.
    #[must_use]
    pub const fn post_script_name(self) -> &'static str {
        match self {
            Self::Regular => "PanelwrightSans-Regular",
            Self::SemiBold => "PanelwrightSans-SemiBold",
        }
    }
}

/// The outlines of a text's letters where it stands in the picture; empty for a broken built-in file.
pub(super) fn text_outlines(text: &Text) -> BezPath {
    Font::of(text.weight).map(|font| font.outlines(text)).unwrap_or_default()
}

/// A font opened for drawing.
///
/// It is read table by table: a `ttf_parser::Face` would bring the readers of all other kinds of outlines into the
/// page's module, as large again as all that is needed here.
pub(super) struct Font {
    letters: cmap::Subtable<'static>,
    widths: hmtx::Table<'static>,
    outlines: glyf::Table<'static>,
    pub(super) head: head::Table,
    /// Highest and lowest reach of the letters about the baseline.
    pub(super) lines: hhea::Table,
}

impl Font {
    /// A weight, opened once. `None` would mean a broken built-in file; a test opens both.
    pub(super) fn of(weight: Weight) -> Option<&'static Self> {
        static FONTS: [OnceLock<Option<Font>>; 2] = [OnceLock::new(), OnceLock::new()];
        FONTS[usize::from(weight == Weight::SemiBold)].get_or_init(|| Self::open(weight.file())).as_ref()
    }

    fn open(file: &'static [u8]) -> Option<Self> {
        let file = RawFace::parse(file, 0).ok()?;
        let table = |name| file.table(Tag::from_bytes(name));
        let head = head::Table::parse(table(b"head")?)?;
        let lines = hhea::Table::parse(table(b"hhea")?)?;
        let glyphs = maxp::Table::parse(table(b"maxp")?)?.number_of_glyphs;
        let places = loca::Table::parse(glyphs, head.index_to_location_format, table(b"loca")?)?;
        Some(Self {
            letters: cmap::Table::parse(table(b"cmap")?)?.subtables.into_iter().find(cmap::Subtable::is_unicode)?,
            widths: hmtx::Table::parse(lines.number_of_metrics, glyphs, table(b"hmtx")?)?,
            outlines: glyf::Table::parse(places, table(b"glyf")?)?,
            head,
            lines,
        })
    }

    /// The letter's glyph; glyph 0, an empty box, for a letter the font has not.
    pub(super) fn glyph(&self, letter: char) -> GlyphId {
        self.letters.glyph_index(u32::from(letter)).unwrap_or(GlyphId(0))
    }

    /// Width of a glyph, font units.
    pub(super) fn advance(&self, glyph: GlyphId) -> f64 {
        f64::from(self.widths.advance(glyph).unwrap_or(0))
    }

    /// The outlines of a text's letters where it stands in the picture, y up. Fill them by the non-zero rule.
    pub(super) fn outlines(&self, text: &Text) -> BezPath {
        let mut pen = Pen { path: BezPath::new(), place: Affine::IDENTITY };
        let scale = text.size_mm / UNITS_PER_EM;
        let turn = quarter_turn(text.quarter_turns);
        let mut along = start_of(text);
        for letter in printable(&text.text) {
            let glyph = self.glyph(letter);
            pen.place = Affine::translate(text.at.to_vec2())
                * turn
                * Affine::translate(Vec2::new(along, 0.0))
                * Affine::scale(scale);
            // A glyph without outline (the space) draws nothing.
            let _ = self.outlines.outline(glyph, &mut pen);
            along += self.advance(glyph) * scale;
        }
        pen.path
    }
}

/// Where a text's first letter starts, mm along its baseline from its place.
pub(super) fn start_of(text: &Text) -> f64 {
    let width = text_width_mm(&text.text, text.size_mm, text.weight);
    match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => -width / 2.0,
        Anchor::End => -width,
    }
}

/// A turn by exact quarter turns, counter-clockwise with y up.
pub(super) fn quarter_turn(quarters: i32) -> Affine {
    match quarters.rem_euclid(4) {
        1 => Affine::new([0.0, 1.0, -1.0, 0.0, 0.0, 0.0]),
        2 => Affine::new([-1.0, 0.0, 0.0, -1.0, 0.0, 0.0]),
        3 => Affine::new([0.0, -1.0, 1.0, 0.0, 0.0, 0.0]),
        _ => Affine::IDENTITY,
    }
}

/// Height of capitals and figures, mm, at a font size (em) in mm.
#[must_use]
pub fn cap_height_mm(size_mm: f64) -> f64 {
    size_mm * CAP_HEIGHT / UNITS_PER_EM
}

struct Pen {
    path: BezPath,
    place: Affine,
}

impl Pen {
    fn at(&self, x: f32, y: f32) -> Point {
        self.place * Point::new(f64::from(x), f64::from(y))
    }
}

impl OutlineBuilder for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        self.path.move_to(self.at(x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.path.line_to(self.at(x, y));
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.path.quad_to(self.at(x1, y1), self.at(x, y));
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.path.curve_to(self.at(x1, y1), self.at(x2, y2), self.at(x, y));
    }

    fn close(&mut self) {
        self.path.close_path();
    }
}

#[cfg(test)]
mod tests {
    use kurbo::Shape;

    use super::*;

    /// What the pages and templates write beyond plain letters.
    const SIGNS: &str = "×⌀Ø°–—→←↑↓≤≥≈±−²³·½¼¾“”‘’„•…µéßüñŁ€";

    #[test]
    fn both_weights_open_and_have_every_sign() {
        for weight in Weight::ALL {
            let font = Font::of(weight).expect("the built-in font is whole");
            let face = ttf_parser::Face::parse(weight.file(), 0).expect("the built-in font is whole");
            assert_eq!(f64::from(face.units_per_em()), UNITS_PER_EM);
            assert_eq!(face.capital_height().map(f64::from), Some(CAP_HEIGHT));
            assert_eq!([face.ascender(), face.descender()], [font.lines.ascender, font.lines.descender]);
            for letter in (' '..='~').chain(SIGNS.chars()) {
                assert_ne!(font.glyph(letter), GlyphId(0), "{letter}");
            }
            assert!(weight.file().len() < 25 * 1024);
        }
    }

    #[test]
    fn every_letter_is_as_wide_as_the_font_says() {
        for weight in Weight::ALL {
            let font = Font::of(weight).expect("the built-in font is whole");
            let mut there = 0;
            for letter in (0..=0xffff).filter_map(char::from_u32) {
                let glyph = font.glyph(letter);
                assert_eq!(f64::from(super::super::letters::width(letter, weight)), font.advance(glyph), "{letter}");
                there += usize::from(glyph != GlyphId(0));
            }
            assert!(there > 300, "{there}");
        }
    }

    #[test]
    fn figures_are_equally_wide_in_both_weights() {
        for weight in Weight::ALL {
            for figure in '0'..='9' {
                assert_eq!(text_width_mm(&figure.to_string(), 10.0, weight), 6.0);
            }
        }
        assert_eq!(
            text_width_mm("0123456789\n", 5.0, Weight::Regular),
            30.0 + text_width_mm(" ", 5.0, Weight::Regular)
        );
        assert_eq!(text_width_mm("", 5.0, Weight::Regular), 0.0);
    }

    #[test]
    fn outlines_stand_where_the_text_stands() {
        let font = Font::of(Weight::Regular).expect("the built-in font is whole");
        let text = Text::new(Point::new(50.0, 20.0), 10.0, "H").anchored(Anchor::Middle);
        let bounds = font.outlines(&text).bounding_box();
        assert!((bounds.y0 - 20.0).abs() < 1e-9 && (bounds.height() - cap_height_mm(10.0)).abs() < 1e-9);
        assert!((bounds.center().x - 50.0).abs() < 0.1, "an H is even on both sides");
        let turned = font.outlines(&text.turned(1)).bounding_box();
        // Turned counter-clockwise the letter's top points left.
        assert!((turned.x1 - 50.0).abs() < 1e-9 && (turned.width() - cap_height_mm(10.0)).abs() < 1e-9);
    }

    #[test]
    fn the_diameter_sign_is_a_crossed_circle() {
        let font = Font::of(Weight::Regular).expect("the built-in font is whole");
        let path = font.outlines(&Text::new(Point::ZERO, 1000.0, "⌀"));
        let centre = Point::new(330.0, 349.0);
        assert_ne!(path.winding(centre), 0, "the stroke runs through the middle");
        assert_eq!(path.winding(centre + Vec2::new(-120.0, 60.0)), 0, "the ring is open");
        assert_ne!(path.winding(centre + Vec2::new(-235.0, 0.0)), 0, "the ring is drawn");
    }
}
