//! Panels and their features in `build.json`.

use serde::Serialize;

use super::number::{Number, Numbers, numbers};
use crate::design::Joint;
use crate::panels::{EdgeJoint, Feature, Panel};

#[derive(Serialize)]
pub(super) struct PanelEntry<'a> {
    id: &'static str,
    label: &'static str,
    assembly: &'static str,
    thickness_mm: Number,
    size_mm: Numbers,
    frame: FrameEntry,
    outline: String,
    edges: Vec<EdgeEntry>,
    features: Vec<FeatureEntry<'a>>,
}

#[derive(Serialize)]
struct FrameEntry {
    origin_mm: Numbers,
    u: Numbers,
    v: Numbers,
    out: Numbers,
}

#[derive(Serialize)]
struct EdgeEntry {
    edge: &'static str,
    meets: &'static str,
    runs_through: bool,
    fixed: bool,
    joint: Option<&'static str>,
}

#[derive(Serialize)]
struct FeatureEntry<'a> {
    id: &'a str,
    kind: &'static str,
    purpose: &'static str,
    through: bool,
    depth_mm: Number,
    face: Option<&'static str>,
    centre_mm: Numbers,
    diameter_mm: Option<Number>,
    path: String,
    notch: bool,
    key: Option<&'a str>,
    why: &'a str,
    about: &'a [String],
    source: String,
}

pub(super) fn entry(panel: &Panel) -> PanelEntry<'_> {
    PanelEntry {
        id: panel.id(),
        label: panel.label,
        assembly: panel.assembly.name(),
        thickness_mm: Number(panel.thickness_mm),
        size_mm: numbers(panel.size_mm),
        frame: FrameEntry {
            origin_mm: numbers(panel.frame.origin),
            u: numbers(panel.frame.u),
            v: numbers(panel.frame.v),
            out: numbers(panel.frame.out),
        },
        outline: panel.outline.to_path_data(),
        edges: panel.edges.iter().map(edge).collect(),
        features: panel.features.iter().map(|cut| feature(cut, panel.thickness_mm)).collect(),
    }
}

fn edge(joint: &EdgeJoint) -> EdgeEntry {
    EdgeEntry {
        edge: joint.edge.name(),
        meets: joint.meets.name(),
        runs_through: joint.runs_through,
        fixed: joint.fixed(),
        joint: joint.joint.map(Joint::name),
    }
}

fn feature(feature: &Feature, thickness_mm: f64) -> FeatureEntry<'_> {
    FeatureEntry {
        id: &feature.id,
        kind: feature.kind.name(),
        purpose: feature.purpose.name(),
        through: feature.blind.is_none(),
        depth_mm: Number(feature.blind.map_or(thickness_mm, |(depth, _)| depth)),
        face: feature.blind.map(|(_, face)| face.name()),
        centre_mm: numbers([feature.centre.x, feature.centre.y]),
        diameter_mm: feature.diameter_mm.map(Number),
        path: feature.contour.to_path_data(),
        notch: feature.notch,
        key: feature.key.as_deref(),
        why: &feature.why,
        about: &feature.about,
        source: feature.source.cite(),
    }
}
