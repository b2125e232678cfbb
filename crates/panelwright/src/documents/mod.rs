//! Documents: what a design hands over beside its pictures.
//!
//! Invariant: nothing here works out geometry; a document only says what the design, its panels and its findings are.

pub mod build_json;
pub mod choice_list;
pub mod kerf_test;
pub mod kits;
mod layout;
pub mod lists;
pub mod marking;
pub mod pack;
pub mod panel_files;
pub mod recut;
pub mod sheets;
pub mod source_list;
pub mod templates;
pub mod warnings;
mod wrap;
