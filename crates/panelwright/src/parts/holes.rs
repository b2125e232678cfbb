//! Screw holes in the case's sheet: how wide they are, and how far from a panel's edge they want to be.

use crate::design::{HoleFit, Material, Spec};
use crate::dimensions::acrylic_holes::{acrylic_edge_web, acrylic_hole};
use crate::dimensions::fasteners::{Fit, Thread, clearance_hole, major_diameter};
use crate::dimensions::source::Sourced;

/// Clearance hole of a thread in a case whose longest side is `longest_mm`: in the maker's series, in acrylic never less
/// than the sheet's growth asks for.
#[must_use]
pub fn clearance(spec: &Spec, longest_mm: f64, thread: Thread) -> Sourced<f64> {
    let fit = match spec.hardware.fit {
        HoleFit::Fine => Fit::Fine,
        HoleFit::Medium => Fit::Medium,
        HoleFit::Coarse => Fit::Coarse,
    };
    let series = clearance_hole(thread, fit);
    if spec.sheet.material != Material::Acrylic {
        return series;
    }
    // One drill for all: as for a hole at the end of the longest panel, which is fixed in its middle.
    let wide = acrylic_hole(major_diameter(thread).get(), longest_mm / 2.0);
    if wide.get() > series.get() { wide } else { series }
}

/// How far from a panel's edge the sheet wants the middle of a screw's hole, mm; `None` where the usual margins do.
#[must_use]
pub fn from_edge_mm(spec: &Spec, hole_mm: f64) -> Option<f64> {
    let web = || acrylic_edge_web(hole_mm, spec.sheet.thickness_mm()).get();
    (spec.sheet.material == Material::Acrylic).then(|| hole_mm / 2.0 + web())
}
