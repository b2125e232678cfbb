//! Where a part stands: what turns a point of its own frame into a point of the case. Arranging fills these in.

use crate::design::{DriveKind, SupplyPose, Wall};
use crate::solid::{PanelFrame, by_axis};

/// Frame U of the boards (origin hole C on the underside, x to the right, y to the front, z up) in the case:
/// `case = (origin.x + x, origin.y - y, origin.z + z)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardPlace {
    /// Hole C on the underside of the board, in the case frame.
    pub origin: [f64; 3],
}

impl BoardPlace {
    /// A point of frame U in the case frame.
    #[must_use]
    pub fn to_case(&self, u: [f64; 3]) -> [f64; 3] {
        [self.origin[0] + u[0], self.origin[1] - u[1], self.origin[2] + u[2]]
    }
}

/// A supply in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SupplyPlace {
    /// The pose in effect; never `Auto`.
    pub pose: SupplyPose,
    /// The panel its face with the inlet lies against: floor or back.
    pub wall: Wall,
    /// The face's own frame, seen from outside the case, half turn included: `u` along its width, `v` along its
    /// height, origin at its lower left corner on the panel's *inside* face. Published hole centres are points of
    /// this frame.
    pub face: PanelFrame,
    /// Face width and height, and depth.
    pub size_mm: [f64; 3],
    /// Unit vector from the supply's middle to the side of its large fan, case frame, when known and present.
    pub fan_towards: Option<[f64; 3]>,
}

/// A drive in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrivePlace {
    /// Number in the design.
    pub number: usize,
    /// Width class.
    pub kind: DriveKind,
    /// The panel its underside faces: floor or back.
    pub wall: Wall,
    /// Case position of the drive's own origin: the corner a = 0, b = 0 (connector end), h = 0 (underside).
    pub origin: [f64; 3],
    /// Unit vector of `a` (across) in the case frame.
    pub a: [f64; 3],
    /// Unit vector of `b` (away from the connector end) in the case frame.
    pub b: [f64; 3],
    /// Unit vector of `h` (up from the underside) in the case frame.
    pub h: [f64; 3],
    /// Height of the washers between panel and drive.
    pub washers_mm: f64,
}

impl DrivePlace {
    /// A point of the drive's own frame in the case frame.
    #[must_use]
    pub fn to_case(&self, a: f64, b: f64, h: f64) -> [f64; 3] {
        by_axis(|axis| self.origin[axis] + a * self.a[axis] + b * self.b[axis] + h * self.h[axis])
    }
}

/// Kind of front connector.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "each name says it")]
pub enum PortKind {
    UsbA,
    UsbC,
    Audio,
}
