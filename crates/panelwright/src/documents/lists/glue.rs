//! Glue: which joints want it, on how much area, and about how much that takes.

use crate::Build;
use crate::design::{Joint, Wall};
use crate::dimensions::source::{Source, Sourced};
use crate::panels::{Edge, Panel};
use crate::parts::{PartKind, block_faces_mm2};

/// Glue on a joint, ml for each square metre of one face: wood glue, and taken for others too.
pub(super) const GLUE_ML_PER_M2: Sourced<f64> = Sourced::new(
    180.0,
    Source::common_practice("Workshop custom", "wood glue on one face of a joint, 150 to 250 g/m² at 1.1 g/ml"),
);

/// Glue in a small bottle, ml.
pub(super) const BOTTLE_ML: Sourced<f64> =
    Sourced::new(250.0, Source::common_practice("Trade sizes", "small bottle of wood glue"));

/// What the glued joints of one case take.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GlueNeed {
    /// Glued corners.
    pub seams: usize,
    /// Locating blocks, also those that stand in for brackets without a place.
    pub blocks: usize,
    /// Area of the joints, mm², each joint's faces counted once.
    pub area_mm2: f64,
    /// Amount for it.
    pub volume_ml: f64,
}

/// The glue of one case; nothing where no joint is glued.
#[must_use]
pub fn glue(build: &Build) -> GlueNeed {
    let mut need = GlueNeed::default();
    let t = build.size().thickness_mm;
    for seam in &build.spec.making.joints.seams {
        let Some(covered) = build.panel(seam.covered) else { continue };
        let length = seam_length(covered, seam.through);
        // Faces that meet, in thicknesses for each millimetre of the corner: the edge itself; a rebate's wall beside
        // it; the flanks of fingers and tabs beside their ends. Each flank is shared by two fingers: with fingers of three
        // thicknesses, one flank of a thickness each.
        let faces = match seam.joint {
            Joint::Brackets => continue,
            Joint::Blocks => 1.0,
            Joint::Rebate => 1.5,
            Joint::Finger | Joint::Tab => 1.33,
        };
        need.seams += 1;
        need.area_mm2 += length * t * faces;
    }
    // A locating block is glued by two of its long faces.
    for part in build.parts.iter().filter(|part| part.kind == PartKind::Block) {
        need.blocks += 1;
        need.area_mm2 += part.bodies.iter().map(|body| block_faces_mm2(body).into_iter().sum::<f64>()).sum::<f64>();
    }
    need.volume_ml = need.area_mm2 / 1e6 * GLUE_ML_PER_M2.get();
    need
}

/// Length of the edge along which a panel meets another.
fn seam_length(panel: &Panel, other: Wall) -> f64 {
    panel.edges.iter().find(|edge| edge.meets == other).map_or(0.0, |edge| match edge.edge {
        Edge::Left | Edge::Right => panel.size_mm[1],
        Edge::Lower | Edge::Upper => panel.size_mm[0],
    })
}
