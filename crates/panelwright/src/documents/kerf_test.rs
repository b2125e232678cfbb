//! The kerf test piece of a design that a laser cuts something of: its files, and the width that measuring it gives.

use crate::Build;
use crate::cutting::{
    FileMarks, KERF_DRAWN_MM, KERF_PIECES, cut_panel_to_dxf, cut_panel_to_svg, kerf_from_test, kerf_test_piece,
};
use crate::design::{Design, Method, Value};
use crate::documents::sheets;

/// Name of the test piece among the cutting files.
pub const KERF_TEST: &str = "kerf-test";

/// The choice that the test piece is there for.
pub const KERF_KEY: &str = "laser.kerf";

/// The test piece as DXF and as SVG, each with the end of its name; none when no panel is made with a laser.
#[must_use]
pub fn files(build: &Build) -> Vec<(&'static str, String)> {
    if build.panels.iter().all(|panel| build.spec.making.method(panel.wall) != Method::Laser) {
        return Vec::new();
    }
    // Cut before anything else, whatever the checks say of the design: it bears no warning of it.
    let marks = FileMarks::of(&build.fingerprint);
    let piece = kerf_test_piece(KERF_PIECES, KERF_DRAWN_MM, build.spec.sheet.thickness_mm());
    vec![("dxf", cut_panel_to_dxf(&piece, marks)), ("svg", cut_panel_to_svg(&piece, marks, sheets::lines(build)))]
}

/// Width of a laser's cut in mm, as its choice keeps it, from what the pieces of the test piece measure together. `None`
/// for what they cannot measure, or when the choice does not take it.
#[must_use]
pub fn kerf(measured_mm: f64) -> Option<f64> {
    let kerf = kerf_from_test(KERF_DRAWN_MM, measured_mm, KERF_PIECES)?;
    let mut design = Design::default();
    design.set(KERF_KEY, Value::Number(kerf)).ok()?;
    match design.get(KERF_KEY)? {
        Value::Number(kept) => Some(*kept),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_measured_gives_the_width_as_the_design_keeps_it() {
        for (measured, wanted) in [
            (98.5, Some(0.15)),
            (98.54, Some(0.15)),
            (100.0, Some(0.0)),
            (90.0, Some(1.0)),
            (89.0, None),
            (100.1, None),
            (f64::NAN, None),
        ] {
            assert_eq!(kerf(measured), wanted, "{measured}");
        }
    }

    #[test]
    fn only_a_laser_gets_a_test_piece() {
        let mut design = Design::default();
        assert!(files(&Build::of(&design)).is_empty());
        design.set_json("method.front", &"laser".into()).unwrap();
        let kinds: Vec<&str> = files(&Build::of(&design)).into_iter().map(|(kind, _)| kind).collect();
        assert_eq!(kinds, ["dxf", "svg"]);
    }
}
