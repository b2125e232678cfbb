//! Parts: the things that go inside, as solids in the case frame once they are placed.
//!
//! Invariant: the frames of the standards (hole C of a board, the face of a supply, the underside of a drive) are
//! turned into the case frame here and nowhere else.

mod part;

pub use part::{Carrier, KeepClear, Part, PartKind};
