//! Arrangement: where each part sits, and how large the case around them is.
//!
//! Placement is by rule; nothing here draws a panel.

mod place;

pub use place::{Arrangement, BoardPlace, CardPlace, CaseSize, DrivePlace, FanPlace, PortKind, SupplyPlace, WallPlace};
