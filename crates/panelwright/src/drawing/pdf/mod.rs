//! Writes pictures as the pages of a PDF, at true size.
//!
//! One matrix turns millimetres into points (72/25.4 each) at the start of every page; y already runs up. Numbers are
//! written to [`COORDINATE_DECIMALS`] and as `f32`, which at 432 mm (the longest paper) resolves 0.00003 mm.
//!
//! Invariant: the same pages give the same bytes. No date, no random id: the file's id is worked out from its content.
//!
//! Source of the format: ISO 32000-1 (PDF 1.7); the keys of the viewer preferences are those of its table 150.

mod content;
mod fonts;
#[cfg(test)]
mod tests;

use pdf_writer::{Chunk, Filter, Finish, Name, Pdf, Rect, Ref, Settings, TextStr};

use self::content::PageWriter;
use self::fonts::FontUse;
use super::font::Weight;
use super::number::COORDINATE_DECIMALS;
use super::picture::Drawing;
use crate::fnv::{START, fnv1a, fnv1a_from};
use crate::sorting::sort_by_key;

/// Points to the millimetre (1 pt = 25.4/72 mm).
pub(super) const POINTS_PER_MM: f64 = 72.0 / 25.4;

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// What is on it; its lower left corner is the paper's.
    pub drawing: Drawing,
    /// Width of the paper, mm.
    pub width_mm: f64,
    /// Height of the paper, mm.
    pub height_mm: f64,
    /// What the picture is multiplied by, across and up, from the lower left corner; `[1.0, 1.0]` for true size.
    pub scale: [f64; 2],
}

impl From<Drawing> for Page {
    /// A page of the picture's own size.
    fn from(drawing: Drawing) -> Self {
        Self { width_mm: drawing.width_mm, height_mm: drawing.height_mm, scale: [1.0, 1.0], drawing }
    }
}

/// What the file says about itself.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PdfInfo {
    /// Title, shown by readers.
    pub title: String,
    /// What it is about: the design's fingerprint, say.
    pub subject: String,
}

/// The pages as a PDF file.
///
/// The page boxes are the paper's true size, and readers are asked not to scale when printing and to print on one
/// side only.
#[must_use]
pub fn pdf(pages: &[Page], info: &PdfInfo) -> Vec<u8> {
    // Numbers of the file's objects: a few fixed ones, then two a page, then five a font, then opacities.
    let reference = |index: usize| Ref::new(i32::try_from(index).unwrap_or(i32::MAX).max(1));
    let (catalog_id, tree_id, info_id) = (reference(1), reference(2), reference(3));
    let page_id = |index: usize| reference(4 + 2 * index);
    let content_id = |index: usize| reference(5 + 2 * index);
    let font_base = 4 + 2 * pages.len();
    let font_id = |weight: Weight| reference(font_base + fonts::OBJECTS * usize::from(weight == Weight::SemiBold));
    let opacity_base = font_base + fonts::OBJECTS * Weight::ALL.len();

    let mut file = Pdf::with_settings(Settings { pretty: false });
    file.set_version(1, 7);
    let mut fonts = FontUse::default();
    let mut opacities: Vec<(u16, Ref)> = Vec::new();
    let mut sheets = Chunk::with_settings(Settings { pretty: false });
    for (index, page) in pages.iter().enumerate() {
        let mut writer = PageWriter::new(&mut fonts, page.scale);
        writer.drawing(&page.drawing);
        let used = writer.finish();
        let packed = miniz_oxide::deflate::compress_to_vec_zlib(&used.content, DEFLATE_LEVEL);
        sheets.stream(content_id(index), &packed).filter(Filter::FlateDecode);

        let paper = Rect::new(0.0, 0.0, points(page.width_mm), points(page.height_mm));
        let mut sheet = sheets.page(page_id(index));
        sheet.parent(tree_id).media_box(paper).trim_box(paper).contents(content_id(index));
        if !used.opacities.is_empty() {
            // Blending happens in the colours the lines are given in.
            sheet.group().transparency().isolated(true).color_space().device_rgb();
        }
        let mut resources = sheet.resources();
        if !used.weights.is_empty() {
            let mut named = resources.fonts();
            for weight in &used.weights {
                named.pair(fonts::name(*weight), font_id(*weight));
            }
        }
        if !used.opacities.is_empty() {
            let mut named = resources.ext_g_states();
            for opacity in &used.opacities {
                let known = opacities.iter().position(|(known, _)| known == opacity);
                let place = known.unwrap_or_else(|| {
                    opacities.push((*opacity, reference(opacity_base + opacities.len())));
                    opacities.len() - 1
                });
                named.pair(Name(content::opacity_name(*opacity).as_bytes()), opacities[place].1);
            }
        }
    }
    for weight in Weight::ALL {
        fonts.write(&mut sheets, weight, font_base + fonts::OBJECTS * usize::from(weight == Weight::SemiBold));
    }
    sort_by_key(&mut opacities, |(opacity, _)| *opacity);
    for (opacity, id) in &opacities {
        sheets.ext_graphics(*id).non_stroking_alpha(f32::from(*opacity) / content::OPACITY_STEPS);
    }

    let mut catalog = file.catalog(catalog_id);
    catalog.pages(tree_id).lang(TextStr("en"));
    catalog
        .viewer_preferences()
        .display_doc_title(true)
        .pair(Name(b"PrintScaling"), Name(b"None"))
        .pair(Name(b"PickTrayByPDFSize"), true)
        .pair(Name(b"Duplex"), Name(b"Simplex"));
    catalog.finish();
    file.pages(tree_id).kids((0..pages.len()).map(page_id)).count(i32::try_from(pages.len()).unwrap_or(i32::MAX));
    file.document_info(info_id)
        .title(TextStr(&info.title))
        .subject(TextStr(&info.subject))
        .creator(TextStr("Panelwright"))
        .producer(TextStr("Panelwright"));
    file.extend(&sheets);
    let id = content_hash(file.as_bytes());
    file.set_file_id((id.clone(), id));
    file.finish()
}

/// How hard to pack: beyond 3 the pages hardly shrink (1 %) and the time grows by half (measured on six full pages).
const DEFLATE_LEVEL: u8 = 3;

/// Smallest steps of a coordinate to the millimetre.
const STEPS_PER_MM: f64 = 10_u32.pow(COORDINATE_DECIMALS as u32) as f64;

/// A length in points, as the file holds it.
fn points(length_mm: f64) -> f32 {
    millimetres(length_mm * POINTS_PER_MM)
}

/// A length in millimetres, as the file holds it.
fn millimetres(length_mm: f64) -> f32 {
    (libm::round(length_mm * STEPS_PER_MM) / STEPS_PER_MM) as f32
}

/// Sixteen bytes that change with the content: two 64-bit FNV-1a sums from different starts (common practice; an id,
/// not a seal).
fn content_hash(bytes: &[u8]) -> Vec<u8> {
    let (first, second) = (fnv1a(bytes), fnv1a_from(START.rotate_left(32), bytes));
    [first.to_be_bytes(), second.to_be_bytes()].concat()
}
