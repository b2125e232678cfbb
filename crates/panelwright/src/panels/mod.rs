//! Panels: every sheet part worked out flat, with every hole and opening and the reason for it.

mod panel;

pub use panel::{Assembly, Edge, EdgeJoint, Face, Feature, FeatureKind, Panel, Purpose};
