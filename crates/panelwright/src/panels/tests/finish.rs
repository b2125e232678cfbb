//! Film and paint are clamped with the sheet they lie on.

use crate::Build;
use crate::design::Design;
use crate::fastening::Screw;

fn screws(choices: &[(&str, f64)]) -> Vec<Screw> {
    let mut design = Design::default();
    design.set_json("size.rule", &"smallest".into()).unwrap();
    for (key, value) in choices {
        design.set_json(key, &(*value).into()).unwrap();
    }
    Build::of(&design).screws
}

fn named<'a>(screws: &'a [Screw], start: &str) -> &'a Screw {
    screws.iter().find(|screw| screw.id.starts_with(start)).unwrap()
}

/// M3 with a nut, worked by hand: 6 sheet + 1.5 leg + 0.5 washer + 2.4 nut + two turns of 0.5 = 11.4: a 12. A millimetre
/// of film on either face makes 13.4: a 16.
#[test]
fn a_covered_sleeve_takes_longer_screws() {
    let bare = screws(&[]);
    let covered = screws(&[("sheet.film_out", 1.0), ("sheet.film_in", 1.0)]);
    let [bare, covered] = [&bare, &covered].map(|screws| named(screws, "screw-bracket-front-top"));
    assert!((bare.least_mm - 11.4).abs() < 1e-9 && bare.length_mm == Some(12.0), "{bare:?}");
    assert!((covered.least_mm - 13.4).abs() < 1e-9 && covered.length_mm == Some(16.0), "{covered:?}");
}

/// A drive's thread takes 1.5 to 2.5 mm of its screw: what lies under the head counts, what slides inside does not.
#[test]
fn a_drives_screw_reaches_through_the_floors_film_too() {
    for (film, paint) in [(0.0, 0.0), (0.5, 0.0), (0.2, 0.15)] {
        let screws = screws(&[("sheet.film_out", film), ("sheet.paint_out", paint), ("sheet.film_in", 0.3)]);
        let screw = named(&screws, "screw-drive-1");
        let clamped = 6.0 + 1.0 + film + paint;
        assert!((screw.clamped_mm - clamped).abs() < 1e-9, "{screw:?}");
        let washers = 0.5 * f64::from(screw.washers);
        let deep = screw.length_mm.unwrap() - clamped - washers;
        assert!((1.5..=2.5).contains(&deep), "{deep}: {screw:?}");
        // Its head lies on the washers, they on the film, and that on the floor's lower face at z = 0.
        assert!((screw.head_at[2] + film + paint + washers).abs() < 1e-9, "{screw:?}");
    }
}
