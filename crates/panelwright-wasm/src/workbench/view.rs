//! What the page shows after a change, in one plain value.

use panelwright::Build;
use panelwright::design::{Design, choices, write_link};
use panelwright::fit::{self, Finding, Mend, Severity};
use panelwright::panels::{Feature, FeatureKind, Panel};
use serde::{Serialize, Serializer};

/// The design and what follows from it; its TypeScript twin in `types.ts` says what each field is.
#[derive(Debug, Serialize)]
pub struct View<'a> {
    title: &'a str,
    values: Changed<'a>,
    idle: Vec<usize>,
    fingerprint: &'a str,
    link: String,
    case: CaseTwin,
    findings: Vec<FindingTwin<'a>>,
    counts: Counts,
    verdict: String,
    panels: Vec<PanelTwin<'a>>,
    parts: Vec<PartTwin<'a>>,
}

#[derive(Debug, Serialize)]
struct CaseTwin {
    outside_mm: [f64; 3],
    inside_mm: [f64; 3],
    volume_l: f64,
    sheet_mm2: f64,
}

#[derive(Debug, Serialize)]
struct Counts {
    blocks: usize,
    caution: usize,
    note: usize,
}

#[derive(Debug, Serialize)]
struct FindingTwin<'a> {
    rule: &'a str,
    severity: &'static str,
    text: &'a str,
    remedy: &'a str,
    mends: Vec<MendTwin<'a>>,
    about: &'a [String],
    source: String,
}

#[derive(Debug, Serialize)]
struct PanelTwin<'a> {
    id: &'static str,
    label: &'a str,
    assembly: &'static str,
    size_mm: [f64; 2],
    thickness_mm: f64,
    holes: usize,
}

/// One thing cut into a panel. A panel's are asked for when they are looked at: together they are most of what could be
/// said of a design.
#[derive(Debug, Serialize)]
pub struct FeatureTwin<'a> {
    id: &'a str,
    kind: &'static str,
    key: Option<&'a str>,
    why: &'a str,
    source: String,
    centre_mm: [f64; 2],
    size_mm: [f64; 2],
    diameter_mm: Option<f64>,
    depth_mm: Option<f64>,
}

#[derive(Debug, Serialize)]
struct PartTwin<'a> {
    id: &'a str,
    kind: &'static str,
    label: &'a str,
}

impl<'a> View<'a> {
    /// The view of a case that is worked out.
    pub fn of(build: &'a Build) -> Self {
        let design = &build.design;
        let count = |severity| build.findings.iter().filter(|finding| finding.severity == severity).count();
        Self {
            title: &build.spec.title,
            values: Changed(design),
            idle: (0..choices().len()).filter(|index| !design.applies(*index)).collect(),
            fingerprint: &build.fingerprint,
            link: write_link(design),
            case: CaseTwin {
                outside_mm: build.size().outside_mm,
                inside_mm: build.size().inside_mm,
                volume_l: build.volume_l(),
                sheet_mm2: build.sheet_mm2(),
            },
            findings: build.findings.iter().map(finding).collect(),
            counts: Counts {
                blocks: count(Severity::Blocks),
                caution: count(Severity::Caution),
                note: count(Severity::Note),
            },
            verdict: fit::closest(&build.case(), &build.findings),
            panels: build.panels.iter().map(panel).collect(),
            parts: build
                .parts
                .iter()
                .map(|part| PartTwin { id: &part.id, kind: part.kind.name(), label: &part.label })
                .collect(),
        }
    }
}

/// The values that are not their choices' defaults, by key: the page has the defaults already.
#[derive(Debug)]
struct Changed<'a>(&'a Design);

impl Serialize for Changed<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(design) = self;
        serializer.collect_map(design.changed().into_iter().map(|index| (&choices()[index].key, design.json(index))))
    }
}

/// Choices with their new values, by key.
#[derive(Debug)]
struct MendTwin<'a>(&'a Mend);

impl Serialize for MendTwin<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.written())
    }
}

fn finding(finding: &Finding) -> FindingTwin<'_> {
    FindingTwin {
        rule: finding.rule,
        severity: finding.severity.name(),
        text: &finding.text,
        remedy: &finding.remedy,
        mends: finding.mends.iter().map(MendTwin).collect(),
        about: &finding.about,
        source: finding.source.cite(),
    }
}

fn panel(panel: &Panel) -> PanelTwin<'_> {
    PanelTwin {
        id: panel.id(),
        label: panel.label,
        assembly: panel.assembly.name(),
        size_mm: panel.size_mm,
        thickness_mm: panel.thickness_mm,
        holes: panel.features.iter().filter(|feature| feature.kind == FeatureKind::Hole).count(),
    }
}

/// What is cut into a panel.
pub fn features(panel: &Panel) -> Vec<FeatureTwin<'_>> {
    panel.features.iter().map(feature).collect()
}

fn feature(feature: &Feature) -> FeatureTwin<'_> {
    let bounds = feature.contour.bbox();
    FeatureTwin {
        id: &feature.id,
        kind: feature.kind.name(),
        key: feature.key.as_deref(),
        why: &feature.why,
        source: feature.source.cite(),
        centre_mm: [bounds.center().x, bounds.center().y],
        size_mm: [bounds.width(), bounds.height()],
        diameter_mm: feature.diameter_mm,
        depth_mm: feature.blind.map(|(depth, _)| depth),
    }
}
