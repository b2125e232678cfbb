//! A sheet that measures otherwise than its label says.

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::dimensions::sheets::{AcrylicKind, acrylic_thickness, real_thickness, thicknesses};
use crate::dimensions::source::Source;
use crate::solid::TOUCH_MM;

pub(super) const SHEET_NOT_AS_SOLD: Rule = Rule {
    name: "sheet-not-as-sold",
    what: "The sheet measures what sheet of its label may.",
    source: Source::published("EN 622-1", "thickness tolerance"),
    look: sheet_not_as_sold,
};

fn sheet_not_as_sold(scene: &Scene, found: &mut Vec<Finding>) {
    let sheet = &scene.case.spec.sheet;
    let Some(measured) = sheet.measured_mm else { return };
    // No sheet of the tables strays further from its label than cast acrylic.
    let widest = acrylic_thickness(AcrylicKind::Cast, sheet.nominal_mm);
    let usual = real_thickness(sheet.material.into(), sheet.nominal_mm).unwrap_or(widest);
    let off = |least: f64, most: f64| measured < least - TOUCH_MM || measured > most + TOUCH_MM;
    if !off(usual.least_mm, usual.most_mm) {
        return;
    }
    let far = off(widest.least_mm.min(usual.least_mm), widest.most_mm.max(usual.most_mm));
    let nearest = thicknesses(sheet.material.into()).get().iter().copied().min_by(|a, b| {
        let from = |label: &f64| (label - measured).abs();
        from(a).total_cmp(&from(b))
    });
    let other = nearest.filter(|label| (label - sheet.nominal_mm).abs() > TOUCH_MM).map_or_else(String::new, |label| {
        format!(" Sheet sold as {} comes nearer: set that as the thickness as sold.", words::limit(label))
    });
    let severity = if far { Severity::Caution } else { Severity::Note };
    let needed = if measured < usual.least_mm { usual.least_mm } else { usual.most_mm };
    found.push(
        SHEET_NOT_AS_SOLD
            .finds(
                severity,
                format!(
                    "The sheet measures {}; sold as {} it may be {} to {}.",
                    words::limit(measured),
                    words::limit(sheet.nominal_mm),
                    words::bare(usual.least_mm),
                    words::mm(usual.most_mm)
                ),
            )
            .with_mm(measured, needed)
            .with_remedy(format!("Measure again in a few places.{other}"))
            .with_source(usual.source),
    );
}
