//! How the case is looked at, and what moves when its panels are drawn apart.

use crate::Build;
use crate::design::{Slide, Wall};
use crate::panels::{Assembly, Panel};
use crate::parts::{Carrier, Part, PartKind};
use crate::pictures::Projection;
use crate::solid::Aabb;
use crate::sorting::sort_by;

/// How to look at the case.
#[derive(Clone, Debug, PartialEq)]
pub struct CaseView {
    /// Where the eye stands around the case, degrees: -90 before the front, 0 at the right, 90 behind, 180 at the left.
    pub azimuth_deg: f64,
    /// How high it stands, degrees: 0 level, 90 straight above.
    pub elevation_deg: f64,
    /// Panels taken off, with what hangs on them.
    pub off: Vec<Wall>,
    /// Whether one sees through the sleeve's panels.
    pub see_through: bool,
    /// How far the panels are drawn apart: 0 closed, 1 wide apart.
    pub apart: f64,
}

impl Default for CaseView {
    /// Closed, from the front right above.
    fn default() -> Self {
        Self { azimuth_deg: -58.0, elevation_deg: 24.0, off: Vec::new(), see_through: false, apart: 0.0 }
    }
}

impl CaseView {
    /// The usual view after `turns` quarter turns: from the front right, back right, back left, front left.
    #[must_use]
    pub fn quarter(turns: i32) -> Self {
        let usual = Self::default();
        Self { azimuth_deg: usual.azimuth_deg + 90.0 * f64::from(turns.rem_euclid(4)), ..usual }
    }

    /// The projection of this view.
    #[must_use]
    pub fn projection(&self) -> Projection {
        Projection::orthographic(self.azimuth_deg, self.elevation_deg)
    }

    fn apart(&self) -> f64 {
        if self.apart.is_finite() { self.apart.clamp(0.0, 1.0) } else { 0.0 }
    }
}

/// How far panels move when wide apart, as parts of the case's size across them; and the sleeve along its slide.
const ALONG_NORMAL: f64 = 0.45;
const ALONG_SLIDE: f64 = 0.35;
/// The floor carries the parts and moves less.
const FLOOR: f64 = 0.2;

/// A part this near to a panel is fixed to it, mm: more than any clearance, less than any gap for air.
const FIXED_WITHIN_MM: f64 = 1.5;

/// How far a panel is moved in this view.
pub(super) fn panel_move(build: &Build, panel: &Panel, view: &CaseView) -> [f64; 3] {
    let apart = view.apart();
    let size = build.size().outside_mm;
    let axis = panel.frame.normal_axis();
    let share = if panel.wall == Wall::Floor { FLOOR } else { ALONG_NORMAL };
    let mut by = panel.frame.out.map(|value| value * size[axis] * share * apart);
    if panel.assembly == Assembly::Sleeve {
        match build.spec.sleeve.slide {
            Slide::Up => by[2] += size[2] * ALONG_SLIDE * apart,
            Slide::Forward => by[1] -= size[1] * ALONG_SLIDE * apart,
        }
    }
    by
}

/// The panels a part is fixed to and moves with.
pub(super) fn hangs_on<'a>(build: &'a Build, part: &Part) -> Vec<&'a Panel> {
    let assembly = match (part.carrier, part.kind) {
        (Carrier::Sleeve, _) => Assembly::Sleeve,
        (Carrier::Chassis, PartKind::Fan | PartKind::Jack | PartKind::Shelf | PartKind::Foot) => Assembly::Chassis,
        (Carrier::Chassis, _) => return Vec::new(),
    };
    let bounds = part.bounds();
    let mut near: Vec<(f64, &Panel)> = build
        .panels
        .iter()
        .filter(|panel| panel.assembly == assembly)
        .map(|panel| (sheet(panel).distance(&bounds), panel))
        .collect();
    sort_by(&mut near, |a, b| a.0.total_cmp(&b.0));
    let least = near.first().map_or(0.0, |(distance, _)| *distance);
    near.retain(|(distance, _)| *distance <= least.max(FIXED_WITHIN_MM));
    // A foot has a part on either side of the floor and stands near nothing else.
    near.into_iter().map(|(_, panel)| panel).collect()
}

/// The box of a panel in the case.
pub(super) fn sheet(panel: &Panel) -> Aabb {
    panel.frame.plate(panel.size_mm, panel.thickness_mm)
}

/// Where a part is in this view: how far it is moved; `None` when it is off with its panels.
pub(super) fn part_move(build: &Build, part: &Part, view: &CaseView) -> Option<[f64; 3]> {
    let on = hangs_on(build, part);
    let stays = on.is_empty() || part.kind == PartKind::Fan && part.carrier == Carrier::Chassis;
    let shown: Vec<&&Panel> = on.iter().filter(|panel| !view.off.contains(&panel.wall)).collect();
    match shown.first() {
        Some(panel) => Some(panel_move(build, panel, view)),
        None if stays => Some([0.0; 3]),
        None => None,
    }
}
