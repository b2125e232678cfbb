//! Arrangement: where each part sits, and how large the case around them is.
//!
//! By rule: the board lies flat against the back, the card stands upright in it, the supply stands on end in front of
//! or beside the board or lies at the back; drives, fans and connectors go where the maker puts them, else to the first
//! sensible free place. A part that grows moves its neighbours and the walls; nothing here draws a panel.

mod around_board;
mod arrange;
mod drives;
mod feet;
mod finish;
mod hang;
mod hangers;
mod hardware_room;
mod needs;
mod place;
mod supply;
#[cfg(test)]
mod tests;
mod walls;

pub use crate::parts::{BoardPlace, DrivePlace, PortKind, SupplyPlace};
pub use arrange::arrange;
pub use hardware_room::NEAR_FRONT_MM;
pub use needs::{Need, Needs, Room, Settled, Sizing, paper_caps, paper_name};
pub use place::{Arrangement, CardPlace, CaseSize, FanPlace, WallPlace};
