//! The fonts of a PDF: the whole small font file, embedded once per weight used, with a map back to letters so that
//! readers find and copy the words.

use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Chunk, Filter, Finish, Name, Rect, Ref, Str};
use ttf_parser::GlyphId;

use super::super::font::{CAP_HEIGHT, Font, Weight};

/// Objects that one font takes in the file.
pub(super) const OBJECTS: usize = 5;

/// Name of a weight among a page's resources.
pub(super) const fn name(weight: Weight) -> Name<'static> {
    match weight {
        Weight::Regular => Name(b"R"),
        Weight::SemiBold => Name(b"S"),
    }
}

/// Which glyphs of each font were shown for which letter.
#[derive(Default)]
pub(super) struct FontUse {
    shown: [Vec<(u16, char)>; 2],
}

impl FontUse {
    /// Notes that a letter is shown and gives its glyph.
    pub(super) fn show(&mut self, weight: Weight, letter: char) -> GlyphId {
        let glyph = Font::of(weight).map_or(GlyphId(0), |font| font.glyph(letter));
        let shown = &mut self.shown[index(weight)];
        if let Err(place) = shown.binary_search_by_key(&glyph.0, |(glyph, _)| *glyph) {
            shown.insert(place, (glyph.0, letter));
        }
        glyph
    }

    /// Writes a weight's objects from number `base` on, if it was shown anywhere.
    pub(super) fn write(&self, file: &mut Chunk, weight: Weight, base: usize) {
        let shown = &self.shown[index(weight)];
        let (Some(font), false) = (Font::of(weight), shown.is_empty()) else {
            return;
        };
        let id = |offset: usize| Ref::new(i32::try_from(base + offset).unwrap_or(i32::MAX).max(1));
        let [type0, descendant, descriptor, to_unicode, font_file] = [0, 1, 2, 3, 4].map(id);
        let base_font = Name(weight.post_script_name().as_bytes());
        let system = SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };

        file.type0_font(type0)
            .base_font(base_font)
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(descendant)
            .to_unicode(to_unicode);

        let mut cid = file.cid_font(descendant);
        cid.subtype(CidFontType::Type2)
            .base_font(base_font)
            .system_info(system)
            .font_descriptor(descriptor)
            .default_width(0.0)
            .cid_to_gid_map_predefined(Name(b"Identity"));
        let mut widths = cid.widths();
        for (glyph, _) in shown {
            widths.consecutive(*glyph, [font.advance(GlyphId(*glyph)) as f32]);
        }
        widths.finish();
        cid.finish();

        let bounds = font.head.global_bbox;
        file.font_descriptor(descriptor)
            .name(base_font)
            .flags(FontFlags::NON_SYMBOLIC)
            .bbox(Rect::new(
                f32::from(bounds.x_min),
                f32::from(bounds.y_min),
                f32::from(bounds.x_max),
                f32::from(bounds.y_max),
            ))
            .italic_angle(0.0)
            .ascent(f32::from(font.lines.ascender))
            .descent(f32::from(font.lines.descender))
            .cap_height(CAP_HEIGHT as f32)
            // A stem is not stated in TrueType; readers use it only to replace a font, and ours is there.
            .stem_v(80.0)
            .font_file2(font_file);

        let mut cmap = UnicodeCmap::new(Name(b"Panelwright-Letters"), system);
        for (glyph, letter) in shown {
            cmap.pair(*glyph, *letter);
        }
        file.cmap(to_unicode, &cmap.finish());

        let bytes = weight.file();
        let packed = miniz_oxide::deflate::compress_to_vec_zlib(bytes, super::DEFLATE_LEVEL);
        file.stream(font_file, &packed)
            .filter(Filter::FlateDecode)
            .pair(Name(b"Length1"), i32::try_from(bytes.len()).unwrap_or(i32::MAX));
    }
}

const fn index(weight: Weight) -> usize {
    match weight {
        Weight::Regular => 0,
        Weight::SemiBold => 1,
    }
}
