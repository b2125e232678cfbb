//! Published sizes, each with its source.
//!
//! Every number the job needs stands in one of these tables as a [`source::Sourced`] value or in a
//! row with a [`source::Source`], and [`catalogue::all`] lists them. What nobody publishes (which
//! side a supply's fan is on, the holes of small supplies, the place of the socket) is absent: the
//! maker measures, and until then nothing is drilled for it.
//!
//! Lengths are millimetres. [`boards`] and [`cards`] keep the frame of the standards, drawn in
//! [`boards`]; it is turned into the case's frame in one place, outside this module.
//!
//! Invariant: a number is written once, here, and the list of sources is made from it.

pub mod acrylic_holes;
mod board_heights;
pub mod boards;
mod card_brackets;
pub mod cards;
pub mod catalogue;
pub mod cautions;
pub mod connectors;
pub mod coolers;
mod documents;
pub mod drives;
pub mod fans;
pub mod fasteners;
mod general_tolerances;
pub mod hand_work;
mod hardware;
mod hole_accuracy;
mod io_aperture;
pub mod joints;
pub mod laser_kerf;
pub mod margins;
pub mod method_limits;
pub mod paper;
pub mod plugs;
pub mod router_work;
mod screw_lengths;
pub mod sheets;
pub mod source;
pub mod stability;
pub mod stackup;
pub mod standoffs;
pub mod supplies;
mod table;
mod wood_screws;
