//! How wide a laser cuts, as published: values to start from until a test piece was measured.
//!
//! The table was made in inches on one machine; other machines, lenses and sheets give 0.08 to 0.45 mm.

use super::catalogue::Entry;
use super::sheets::Material;
use super::source::{Source, Sourced};
use super::table::sizes;

const TABLE: Source = Source::published("Laser kerf table of a university workshop", "average kerf, in inches");

/// One row: what, how thick, how wide the cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KerfRow {
    /// The material.
    pub material: Material,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Width of the cut, mm.
    pub kerf_mm: f64,
}

const fn row(material: Material, thickness_mm: f64, kerf_mm: f64) -> KerfRow {
    KerfRow { material, thickness_mm, kerf_mm }
}

/// Every published row.
pub const KERFS: [KerfRow; 9] = [
    row(Material::Acrylic, 1.6, 0.178),
    row(Material::Acrylic, 3.2, 0.229),
    row(Material::Acrylic, 6.35, 0.254),
    row(Material::Plywood, 1.6, 0.152),
    row(Material::Plywood, 3.2, 0.203),
    row(Material::Plywood, 6.35, 0.254),
    row(Material::Fibreboard, 3.2, 0.152),
    row(Material::Fibreboard, 6.35, 0.203),
    row(Material::Fibreboard, 12.0, 0.254),
];

/// A kerf to start from: the row of the material whose thickness is nearest. Hardboard is fibreboard to a beam; for any
/// other material there is none.
#[must_use]
pub fn starting_kerf(material: Material, thickness_mm: f64) -> Option<Sourced<f64>> {
    let material = if material == Material::Hardboard { Material::Fibreboard } else { material };
    let apart = |row: &&KerfRow| (row.thickness_mm - thickness_mm).abs();
    let rows = KERFS.iter().filter(|row| row.material == material);
    let nearest = rows.min_by(|a, b| apart(a).total_cmp(&apart(b)))?;
    Some(Sourced::new(nearest.kerf_mm, TABLE))
}

sizes! {
    group "making";
    KERF_RANGE: [f64; 2] = [0.08, 0.45], "Laser cuts over materials and machines", "{} to {} mm wide",
        Source::published("Notes of commercial laser cutters", "range of kerf");
    CLOSEST_CUTS: f64 = 0.5, "Laser cuts closer than this burn away what is between", "{} mm",
        Source::published("Notes of commercial laser cutters", "least distance of lines");
    LEAST_FEATURE: f64 = 1.0, "Laser-cut webs narrower than this are fragile", "{} mm",
        Source::published("Notes of commercial laser cutters", "least width of a feature");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for row in KERFS {
        let name = format!("Laser cut in {} of {} mm", row.material.label(), row.thickness_mm);
        out.push(Entry::new("making", name, "{} mm wide", &[row.kerf_mm], TABLE));
    }
    size_entries(out);
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The published table is in thousandths of an inch; each row must be one of those, and 1/16, 1/8, 1/4 in thick.
    #[test]
    fn rows_are_whole_thousandths_of_an_inch() {
        for row in KERFS {
            let thousandths = row.kerf_mm / 0.0254;
            assert!((thousandths - thousandths.round()).abs() < 0.02, "{row:?}");
        }
    }

    #[test]
    fn the_nearest_thickness_counts() {
        let kerf = |material, thickness| starting_kerf(material, thickness).map(|kerf| kerf.get());
        assert_eq!(kerf(Material::Fibreboard, 6.0), Some(0.203));
        assert_eq!(kerf(Material::Fibreboard, 18.0), Some(0.254));
        assert_eq!(kerf(Material::Acrylic, 3.0), Some(0.229));
        assert_eq!(kerf(Material::Plywood, 4.0), Some(0.203));
        assert_eq!(kerf(Material::Hardboard, 3.2), Some(0.152));
        assert_eq!(kerf(Material::Other, 6.0), None);
        assert!(KERFS.iter().all(|row| (KERF_RANGE.get()[0]..=KERF_RANGE.get()[1]).contains(&row.kerf_mm)));
    }
}
