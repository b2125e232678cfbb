//! Washers, nuts and screw heads, by thread.
//!
//! Sizes of M2, of M8 heads and of the inch screw are recalled, and say so; the others stand in
//! published copies of the standards.

use super::catalogue::Entry;
use super::documents::{ASME_B18_6_3, ISO_4032, ISO_4762, ISO_7045, ISO_7046, ISO_7089, ISO_7093};
use super::fasteners::Thread;
use super::source::Source;

/// A flat washer, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    /// Hole.
    pub hole_mm: f64,
    /// Outside diameter.
    pub outside_mm: f64,
    /// Nominal thickness.
    pub thickness_mm: f64,
    /// Greatest thickness, where it was found.
    pub thickness_max_mm: Option<f64>,
    /// Where these stand.
    pub source: Source,
}

/// A hexagon nut, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nut {
    /// Greatest height.
    pub height_mm: f64,
    /// Across flats.
    pub flats_mm: f64,
    /// Least across corners: real nuts are chamfered, so this is less than a sharp hexagon's.
    pub corners_min_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// A screw head that stands on the surface, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Head {
    /// Greatest diameter.
    pub diameter_mm: f64,
    /// Greatest height.
    pub height_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// A countersunk head of 90 degrees, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunkHead {
    /// Greatest actual diameter.
    pub diameter_mm: f64,
    /// Greatest depth in the sheet when flush.
    pub depth_mm: f64,
    /// Diameter of the sharp cone: the mouth to cut so that the head lies flush.
    pub mouth_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// A cap head with an inner hexagon, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CapHead {
    /// Greatest diameter.
    pub diameter_mm: f64,
    /// Greatest height.
    pub height_mm: f64,
    /// Key across flats.
    pub key_mm: f64,
    /// Where these stand.
    pub source: Source,
}

/// The ordinary flat washer (for 6-32 the one of M3.5).
#[must_use]
pub const fn washer(thread: Thread) -> Washer {
    let read = Source::published(ISO_7089, "table, transcribed");
    let recalled = Source::from_memory(ISO_7089, "table");
    let (hole_mm, outside_mm, thickness_mm, thickness_max_mm, source) = match thread {
        Thread::M2 => (2.2, 5.0, 0.3, None, recalled),
        Thread::M2_5 => (2.7, 6.0, 0.5, Some(0.55), read),
        Thread::M3 => (3.2, 7.0, 0.5, Some(0.55), read),
        Thread::M4 => (4.3, 9.0, 0.8, Some(0.9), read),
        Thread::M5 => (5.3, 10.0, 1.0, Some(1.1), read),
        Thread::M6 => (6.4, 12.0, 1.6, Some(1.8), read),
        Thread::M8 => (8.4, 16.0, 1.6, Some(1.8), read),
        Thread::Unc6_32 => (3.7, 8.0, 0.5, None, Source::from_memory(ISO_7089, "row of M3.5, used for 6-32")),
    };
    Washer { hole_mm, outside_mm, thickness_mm, thickness_max_mm, source }
}

/// The large washer for soft board, where one is recalled.
#[must_use]
pub const fn penny_washer(thread: Thread) -> Option<Washer> {
    let (hole_mm, outside_mm, thickness_mm) = match thread {
        Thread::M3 => (3.2, 9.0, 0.8),
        Thread::M4 => (4.3, 12.0, 1.0),
        Thread::M5 => (5.3, 15.0, 1.2),
        Thread::M6 => (6.4, 18.0, 1.6),
        _ => return None,
    };
    Some(Washer {
        hole_mm,
        outside_mm,
        thickness_mm,
        thickness_max_mm: None,
        source: Source::from_memory(ISO_7093, "table; M5 is often sold 1.0 mm thick"),
    })
}

/// The hexagon nut.
#[must_use]
pub const fn nut(thread: Thread) -> Nut {
    let read = Source::published(ISO_4032, "table, transcribed");
    let corners_recalled = Source::published(ISO_4032, "table, transcribed; corners from memory");
    let (height_mm, flats_mm, corners_min_mm, source) = match thread {
        Thread::M2 => (1.6, 4.0, 4.32, Source::from_memory(ISO_4032, "table")),
        Thread::M2_5 => (2.0, 5.0, 5.45, corners_recalled),
        Thread::M3 => (2.4, 5.5, 6.01, corners_recalled),
        Thread::M4 => (3.2, 7.0, 7.66, read),
        Thread::M5 => (4.7, 8.0, 8.79, read),
        Thread::M6 => (5.2, 10.0, 11.05, read),
        Thread::M8 => (6.8, 13.0, 14.38, corners_recalled),
        Thread::Unc6_32 => (2.90, 7.94, 8.74, Source::from_memory(ASME_B18_6_3, "machine screw nut, size 6")),
    };
    Nut { height_mm, flats_mm, corners_min_mm, source }
}

/// Corner diameter of a sharp hexagon, the shape a nut pocket has: across flats / cos 30°.
#[must_use]
pub fn sharp_corners_mm(flats_mm: f64) -> f64 {
    flats_mm * 2.0 / 3.0_f64.sqrt()
}

/// The pan head, the usual head for sheet.
#[must_use]
pub const fn pan_head(thread: Thread) -> Head {
    let read = Source::published(ISO_7045, "table, transcribed");
    let recalled = Source::from_memory(ISO_7045, "table");
    let (diameter_mm, height_mm, source) = match thread {
        Thread::M2 => (4.0, 1.6, recalled),
        Thread::M2_5 => (5.0, 2.1, read),
        Thread::M3 => (5.6, 2.4, read),
        Thread::M4 => (8.0, 3.1, read),
        Thread::M5 => (9.5, 3.7, read),
        Thread::M6 => (12.0, 4.6, read),
        Thread::M8 => (16.0, 6.0, recalled),
        Thread::Unc6_32 => (6.86, 2.46, Source::from_memory(ASME_B18_6_3, "pan head with cross recess, size 6")),
    };
    Head { diameter_mm, height_mm, source }
}

/// The countersunk head, where one was found.
#[must_use]
pub const fn sunk_head(thread: Thread) -> Option<SunkHead> {
    let (diameter_mm, depth_mm, mouth_mm) = match thread {
        Thread::M2_5 => (4.7, 1.5, 5.5),
        Thread::M3 => (5.5, 1.65, 6.3),
        Thread::M4 => (8.4, 2.7, 9.4),
        Thread::M5 => (9.3, 2.7, 10.4),
        Thread::M6 => (11.3, 3.3, 12.6),
        _ => return None,
    };
    Some(SunkHead {
        diameter_mm,
        depth_mm,
        mouth_mm,
        source: Source::published(ISO_7046, "table, transcribed; actual diameter from memory"),
    })
}

/// The cap head, where one was found.
#[must_use]
pub const fn cap_head(thread: Thread) -> Option<CapHead> {
    let (diameter_mm, height_mm, key_mm) = match thread {
        Thread::M2_5 => (4.5, 2.5, 2.0),
        Thread::M3 => (5.5, 3.0, 2.5),
        Thread::M4 => (7.0, 4.0, 3.0),
        Thread::M5 => (8.5, 5.0, 4.0),
        Thread::M6 => (10.0, 6.0, 5.0),
        _ => return None,
    };
    Some(CapHead { diameter_mm, height_mm, key_mm, source: Source::published(ISO_4762, "table, transcribed") })
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for thread in Thread::ALL {
        let mut push = |what: &str, pattern: &str, numbers: &[f64], source: Source| {
            let name = format!("{}: {what}", thread.label());
            out.push(Entry::new("fasteners", name, pattern, numbers, source));
        };
        let washers = [("washer", Some(washer(thread))), ("penny washer", penny_washer(thread))];
        for (what, washer) in washers {
            if let Some(washer) = washer {
                push(
                    &format!("{what}: hole, outside, thickness"),
                    "{} / {} / {} mm",
                    &[washer.hole_mm, washer.outside_mm, washer.thickness_mm],
                    washer.source,
                );
            }
        }
        let nut = nut(thread);
        push(
            "nut: height, across flats, across corners",
            "{} / {} / {} mm",
            &[nut.height_mm, nut.flats_mm, nut.corners_min_mm],
            nut.source,
        );
        let pan = pan_head(thread);
        push("pan head: diameter, height", "{} / {} mm", &[pan.diameter_mm, pan.height_mm], pan.source);
        if let Some(head) = sunk_head(thread) {
            push(
                "countersunk head: diameter, depth, mouth",
                "{} / {} / {} mm",
                &[head.diameter_mm, head.depth_mm, head.mouth_mm],
                head.source,
            );
        }
        if let Some(head) = cap_head(thread) {
            push(
                "cap head: diameter, height, key",
                "{} / {} / {} mm",
                &[head.diameter_mm, head.height_mm, head.key_mm],
                head.source,
            );
        }
    }
}
