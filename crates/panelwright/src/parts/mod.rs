//! Parts: the things that go inside, as solids in the case frame once they are placed.
//!
//! Invariant: the frames of the standards (hole C of a board, the face of a supply, the underside of a drive) are
//! turned into the case frame here and nowhere else. Nothing here knows how large the case is.

pub mod board;
pub mod card;
pub mod cooler;
pub mod drive;
pub mod feet;
pub mod holes;
mod part;
mod place;
pub mod supply;
pub mod tongue;
pub mod wall;

pub use part::{Carrier, KeepClear, Part, PartKind, block_faces_mm2};
pub use place::{BoardPlace, DrivePlace, PortKind, SupplyPlace};
