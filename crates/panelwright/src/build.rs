//! The whole flow: a design in, everything that follows from it out.

use crate::arrangement::{Arrangement, CaseSize, arrange};
use crate::design::fingerprint::fingerprint;
use crate::design::{Design, Spec, Wall};
use crate::fastening::{Fastener, Screw};
use crate::fit::{self, Finding, Severity};
use crate::panels::{Panel, Unplaced, VentLeftOut, work_out};
use crate::parts::Part;

/// A case worked out from a design. Every part of it is plain data; nothing in it is changed later.
///
/// ```
/// use panelwright::{Build, design::Design};
/// let build = Build::of(&Design::default());
/// assert_eq!(build.panels.len(), 6);
/// assert!(!build.blocked());
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Build {
    /// What the maker chose.
    pub design: Design,
    /// What it means.
    pub spec: Spec,
    /// Short mark of the design on every file and page.
    pub fingerprint: String,
    /// Where everything sits.
    pub arrangement: Arrangement,
    /// Floor, back, left, right, front, top.
    pub panels: Vec<Panel>,
    /// All parts with brackets and other hardware, in the case frame.
    pub parts: Vec<Part>,
    /// Every screw in its place.
    pub screws: Vec<Screw>,
    /// Screws, nuts, washers, brackets, standoffs and feet, each kind once with its number.
    pub fasteners: Vec<Fastener>,
    /// Brackets and captive nuts that found no free place.
    pub unplaced: Vec<Unplaced>,
    /// Vents of which not one opening was cut.
    pub left_out: Vec<VentLeftOut>,
    /// What the checks say, the heaviest first.
    pub findings: Vec<Finding>,
}

impl Build {
    /// Works out the case of a design.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        let spec = Spec::of(design);
        let arrangement = arrange(&spec);
        let worked = work_out(&spec, &arrangement);
        let fasteners = worked.fasteners();
        let parts = [arrangement.parts.clone(), worked.hardware].concat();
        let mut build = Self {
            design: design.clone(),
            fingerprint: fingerprint(design),
            spec,
            arrangement,
            panels: worked.panels,
            parts,
            screws: worked.screws,
            fasteners,
            unplaced: worked.unplaced,
            left_out: worked.left_out,
            findings: Vec::new(),
        };
        build.findings = fit::check(&build.case());
        build
    }

    /// What the fit rules look at.
    #[must_use]
    pub fn case(&self) -> fit::Case<'_> {
        fit::Case {
            spec: &self.spec,
            arrangement: &self.arrangement,
            panels: &self.panels,
            screws: &self.screws,
            parts: &self.parts,
            unplaced: &self.unplaced,
            left_out: &self.left_out,
        }
    }

    /// Sizes of the case.
    #[must_use]
    pub fn size(&self) -> &CaseSize {
        &self.arrangement.case
    }

    /// Outside volume, litres.
    #[must_use]
    pub fn volume_l(&self) -> f64 {
        self.size().outside_mm.iter().product::<f64>() / 1e6
    }

    /// Sheet the panels take, mm²: their bounding rectangles together, for that is how sheet is cut up.
    #[must_use]
    pub fn sheet_mm2(&self) -> f64 {
        self.panels.iter().map(|panel| panel.size_mm[0] * panel.size_mm[1]).sum()
    }

    /// The panel of a wall.
    #[must_use]
    pub fn panel(&self, wall: Wall) -> Option<&Panel> {
        self.panels.iter().find(|panel| panel.wall == wall)
    }

    /// Whether something stands in the way of building or using it.
    #[must_use]
    pub fn blocked(&self) -> bool {
        self.findings.iter().any(|finding| finding.severity == Severity::Blocks)
    }
}
