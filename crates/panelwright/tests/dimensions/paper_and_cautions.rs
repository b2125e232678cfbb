//! Paper sizes, what hands can do, and the cautions.

use super::{near, near_both};
use panelwright::dimensions::cautions::{CAUTIONS, caution};
use panelwright::dimensions::hand_work::{Saw, blade_hole, saw_kerf, throat};
use panelwright::dimensions::paper::{PAPER_CUT, POINTS_PER_MM, PRINTER_MARGIN, Paper, UNPRINTABLE, size};
use std::collections::BTreeSet;

#[test]
fn papers_are_those_of_iso_216_and_ansi() {
    near_both(size(Paper::A4).get(), [210.0, 297.0], 1e-9);
    near_both(size(Paper::A3).get(), [297.0, 420.0], 1e-9);
    near_both(size(Paper::Letter).get(), [8.5 * 25.4, 11.0 * 25.4], 1e-9);
    near_both(size(Paper::Legal).get(), [8.5 * 25.4, 14.0 * 25.4], 1e-9);
    near_both(size(Paper::Tabloid).get(), [11.0 * 25.4, 17.0 * 25.4], 1e-9);
    for paper in Paper::ALL {
        let [width, height] = size(paper).get();
        assert!(width < height, "{} stands upright", paper.label());
    }
}

#[test]
fn margins_and_points() {
    assert!(PRINTER_MARGIN.get() > UNPRINTABLE.get()[1]);
    assert!(PAPER_CUT.get() >= 2.0);
    near(POINTS_PER_MM.get(), 2.834_645_669, 1e-9);
    // A4 in points, as PDF readers print it.
    near(210.0 * POINTS_PER_MM.get(), 595.2756, 1e-4);
    near(297.0 * POINTS_PER_MM.get(), 841.8898, 1e-4);
}

#[test]
fn a_blade_passes_its_hole() {
    for saw in Saw::ALL {
        assert!(blade_hole(saw).get() > saw_kerf(saw).get()[1]);
        assert_eq!(throat(saw).is_none(), saw == Saw::Jigsaw);
    }
    assert_eq!(Saw::ALL.map(|saw| blade_hole(saw).get()), [3.0, 8.0, 12.0]);
    assert_eq!(throat(Saw::Coping).map(|reach| reach.get()), Some(152.0));
}

#[test]
fn each_caution_has_its_own_name_and_a_whole_sentence() {
    let names: BTreeSet<_> = CAUTIONS.iter().map(|caution| caution.id).collect();
    assert_eq!(names.len(), CAUTIONS.len());
    for row in &CAUTIONS {
        assert!(row.id.bytes().all(|b| b.is_ascii_lowercase()), "{}", row.id);
        assert!(row.text.ends_with('.') && row.text.len() > 30, "{}", row.text);
        assert_eq!(caution(row.id), Some(row));
    }
    assert_eq!(caution("nothing"), None);
    for (id, words) in [
        ("mains", "qualified electrician"),
        ("dust", "FFP2"),
        ("bars", "check bars"),
        ("heat", "70 °C"),
        ("laser", "PVC"),
        ("batteries", "ventilation"),
    ] {
        assert!(caution(id).is_some_and(|caution| caution.text.contains(words)), "{id}");
    }
}
