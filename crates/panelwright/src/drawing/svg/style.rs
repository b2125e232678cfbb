//! How a shape is drawn, as attributes: colours and widths for a file, classes for a page.

use super::number;
use crate::drawing::colour::Colour;
use crate::drawing::number::format_number;
use crate::drawing::picture::{Style, THIN_LINE_MM, VISIBLE_LINE_MM};

/// The classes of a shape.
#[derive(Default)]
struct Classes(String);

impl Classes {
    fn push(&mut self, name: &[&str]) {
        if !self.0.is_empty() {
            self.0.push(' ');
        }
        for piece in name {
            self.0.push_str(piece);
        }
    }
}

/// The attributes that say how a shape is drawn. On a page its style sheet says the rest, by class. Names,
/// numbers and colours only: nothing to escape.
pub(super) fn attributes(style: &Style, page: bool) -> Vec<(&'static str, String)> {
    let mut attributes = Vec::with_capacity(7);
    let mut classes = Classes::default();
    if let Some(stroke) = style.stroke {
        match stroke.colour {
            Colour::Own(..) => attributes.push(("stroke", hex(stroke.colour.rgb()))),
            Colour::Ink | Colour::Thin if page => {}
            colour if page => classes.push(&["line-", colour.name()]),
            colour => attributes.push(("stroke", hex(colour.rgb()))),
        }
        match stroke.width_mm {
            THIN_LINE_MM if page => {}
            VISIBLE_LINE_MM if page => classes.push(&["thick"]),
            width_mm => attributes.push(("stroke-width", number(width_mm))),
        }
        let pattern = stroke.dash.pattern();
        if !pattern.is_empty() {
            let lengths: Vec<String> = pattern.iter().map(|length| number(length * stroke.width_mm)).collect();
            attributes.push(("stroke-dasharray", lengths.join(" ")));
        }
    }
    match style.fill {
        Some(colour) => {
            if page && !matches!(colour, Colour::Own(..)) {
                classes.push(&["fill-", colour.name()]);
                if let Some(shade) = style.shade.name() {
                    classes.push(&[shade]);
                }
            } else {
                attributes.push(("fill", hex(colour.shaded(style.shade))));
            }
            if !page {
                attributes.push(("fill-rule", "evenodd".to_owned()));
            }
            if let Some(opacity) = style.fill_opacity {
                attributes.push(("fill-opacity", format_number(opacity.clamp(0.0, 1.0), 3)));
            }
        }
        None if page => {}
        None => attributes.push(("fill", "none".to_owned())),
    }
    if style.stroke.is_none() && page {
        classes.push(&["bare"]);
    }
    if style.stroke.is_none() && style.fill.is_none() {
        // Not seen, yet it can be pointed at.
        attributes.push(("pointer-events", "all".to_owned()));
    }
    if !classes.0.is_empty() {
        attributes.push(("class", classes.0));
    }
    attributes
}

pub(super) fn hex(colour: [u8; 3]) -> String {
    let mut text = String::with_capacity(7);
    text.push('#');
    for digit in colour.into_iter().flat_map(|part| [part >> 4, part & 15]) {
        text.extend(char::from_digit(u32::from(digit), 16));
    }
    text
}
