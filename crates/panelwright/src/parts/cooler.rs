//! The cooler: a base on the processor and fins above it.

use super::BoardPlace;
use crate::design::{BoardSpec, CoolerKind, CoolerSpec};
use crate::dimensions::boards;
use crate::dimensions::coolers::SPREADER_ALLOWANCE;
use crate::parts::board::{socket, u_box};
use crate::parts::{Carrier, Part, PartKind};

/// Room above the board's top face taken by processor and socket, mm.
pub const PROCESSOR_MM: f64 = SPREADER_ALLOWANCE.get();

/// Side of the square base under the fins, mm (from memory: measure yours).
const BASE_MM: f64 = 40.0;

/// The cooler in its place: base and fins, centred on the processor.
#[must_use]
pub fn part(spec: &CoolerSpec, board: &BoardSpec, place: &BoardPlace) -> Part {
    let [x, y] = socket(board);
    let bottom = boards::PCB_THICKNESS.get();
    let top = bottom + PROCESSOR_MM + spec.height_mm;
    // Fins of no height would be no solid: at least a tenth of the height is fins.
    let under = (bottom + spec.under_mm).min(top - spec.height_mm / 10.0);
    let about = |centre: f64, size: f64| [centre - size / 2.0, centre + size / 2.0];
    let base = BASE_MM.min(spec.width_mm).min(spec.depth_mm);
    let mut bodies = vec![u_box(place, about(x, spec.width_mm), about(y, spec.depth_mm), [under, top])];
    if under > bottom {
        bodies.push(u_box(place, about(x, base), about(y, base), [bottom, under]));
    }
    Part {
        id: "cooler".to_owned(),
        kind: PartKind::Cooler,
        label: match spec.kind {
            CoolerKind::Tower => "Tower cooler".to_owned(),
            CoolerKind::Flat => "Flat cooler".to_owned(),
        },
        carrier: Carrier::Chassis,
        bodies,
        keep_clear: Vec::new(),
    }
}
