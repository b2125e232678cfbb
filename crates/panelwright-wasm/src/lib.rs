//! The boundary between the page and the core: a [`Workbench`] holds the design on screen,
//! takes a change and gives back what the page shows. Nothing is worked out here.

mod compare;
mod handover;
mod pictures;
mod sheets;
mod view;
mod workbench;

pub use workbench::Workbench;
