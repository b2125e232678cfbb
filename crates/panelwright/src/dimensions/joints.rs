//! What glued joints of board bear, what is relied on of it, and how tight fingers fit.

use super::catalogue::Entry;
use super::documents::{EN_204, EN_622_5, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

/// Pull across its thickness that fibreboard bears before it splits: thickness up to and including this, N/mm², source.
const INTERNAL_BOND: [(f64, f64, Source); 7] = [
    (4.0, 0.65, RECALLED),
    (6.0, 0.65, RECALLED),
    (9.0, 0.65, READ),
    (12.0, 0.60, READ),
    (19.0, 0.55, READ),
    (30.0, 0.55, READ),
    (45.0, 0.50, READ),
];

const READ: Source = Source::published(EN_622_5, "table of requirements for type MDF, internal bond (EN 319)");
const RECALLED: Source =
    Source::from_memory(EN_622_5, "table of requirements for type MDF, internal bond, rows up to 6 mm");

/// Pull across its thickness that fibreboard of a thickness bears at least, N/mm². Thicker than the table: its last row.
#[must_use]
pub fn internal_bond(thickness_mm: f64) -> Sourced<f64> {
    let last = INTERNAL_BOND[INTERNAL_BOND.len() - 1];
    let (_, bond, source) = INTERNAL_BOND.into_iter().find(|(most, ..)| thickness_mm <= *most).unwrap_or(last);
    Sourced::new(bond, source)
}

sizes! {
    group "making";
    GLUE_BEARS: f64 = 10.0, "Wood glue of class D3, sheared dry on beech", "at least {} N/mm²",
        Source::from_memory(EN_204, "class D3: stronger than the board it joins");
    FACE_SHEAR: f64 = 1.5, "Shear that a glued face of board bears; the board gives way before the glue", "{} N/mm²",
        Source::common_practice(WORKSHOP, "glued face of fibreboard, a deliberately low figure");
    JOINT_SAFETY: f64 = 4.0, "Share of a joint's strength that is relied on", "one part in {}",
        Source::common_practice(WORKSHOP, "safety of glued joints, short loads");
    CASE_IS_LIFTED_BY: f64 = 100.0, "Pull that each glued corner should bear: some 10 kg", "{} N",
        Source::common_practice(WORKSHOP, "a case is lifted by its top");
    PRESS_FIBREBOARD: [f64; 2] = [0.0, 0.1], "Fingers of fibreboard press by", "{} to {} mm",
        Source::common_practice(WORKSHOP, "press of laser-cut fingers");
    PRESS_PLYWOOD: [f64; 2] = [0.05, 0.15], "Fingers of plywood press by", "{} to {} mm",
        Source::common_practice(WORKSHOP, "press of laser-cut fingers");
    PLAY_BY_HAND: f64 = 0.2, "Play drawn between fingers cut by hand, which are filed to fit", "{} mm",
        Source::common_practice(WORKSHOP, "filed from a little tight, line to line");
    PLAY_ROUTED: f64 = 0.1, "Play of fingers cut with a router: room for glue", "{} mm",
        Source::common_practice(WORKSHOP, "glue line of 0.05 mm on both sides");
    PLAY_ACRYLIC: f64 = 0.08, "Play of laser-cut fingers of acrylic, which must never press: room for cement", "{} mm",
        Source::common_practice(WORKSHOP, "0.05 to 0.1 mm in acrylic");
    PRESS_LASER_PLYWOOD: f64 = 0.1, "Press of laser-cut fingers of plywood", "{} mm",
        Source::common_practice(WORKSHOP, "the middle of 0.05 to 0.15 mm");
    PRESS_LASER_BOARD: f64 = 0.05, "Press of laser-cut fingers of other board", "{} mm",
        Source::common_practice(WORKSHOP, "the middle of 0 to 0.1 mm");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    let mut over = 2.5;
    for (most, bond, source) in INTERNAL_BOND {
        let name = format!("Fibreboard over {over} to {most} mm: pull across its thickness");
        out.push(Entry::new("making", name, "{} N/mm²", &[bond], source));
        over = most;
    }
    size_entries(out);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dimensions::source::Confidence;

    /// EN 622-5, type MDF: rows as a producer's data sheet prints them.
    #[test]
    fn the_row_of_the_thickness_counts() {
        for (thickness, bond, read) in [
            (3.0, 0.65, false),
            (6.0, 0.65, false),
            (6.01, 0.65, true),
            (9.5, 0.60, true),
            (18.0, 0.55, true),
            (40.0, 0.50, true),
            (60.0, 0.50, true),
        ] {
            let found = internal_bond(thickness);
            assert_eq!(found.get(), bond, "{thickness}");
            assert_eq!(found.source().confidence == Confidence::Published, read, "{thickness}");
        }
    }

    /// Worked example: 250 mm of 6 mm edge on a face, pulled off: 975 N, of which a quarter.
    #[test]
    fn a_butt_joint_bears_what_the_worked_example_says() {
        let bears = 250.0 * 6.0 * internal_bond(6.0).get();
        assert!((bears - 975.0).abs() < 1e-9 && (bears / JOINT_SAFETY.get() - 243.75).abs() < 1e-9);
        // A batten's face of 250 x 15 mm, sheared.
        assert!((250.0 * 15.0 * FACE_SHEAR.get() - 5625.0).abs() < 1e-9);
        assert!(FACE_SHEAR.get() < GLUE_BEARS.get());
    }
}
