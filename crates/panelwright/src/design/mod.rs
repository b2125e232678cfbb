//! What the maker chose: the one list of choices, a design as values of it, and what those values mean.
//!
//! Two layers: [`Design`] holds what was typed (every value known and inside its range); [`Spec`] says what it
//! means. After [`Spec::of`] nobody looks at a key again.

mod broken;
mod choice;
#[allow(clippy::module_inception, reason = "the design is what this module is about")]
mod design;
mod file;
pub mod fingerprint;
mod link;
mod list;
mod spec;

pub use choice::{Choice, Group, Kind, PickOption, Preset, Unit, Value, When};
pub(crate) use design::to_json;
pub use design::{Design, DesignError};
pub use file::{DesignErrors, MOST_BYTES, read_file, read_file_bytes, write_file};
pub(crate) use link::crc32::crc32;
pub use link::{LinkError, looks_like_link, read_link, write_link};
pub use list::{DRIVES, FANS, choice, choices};
pub use spec::*;
