//! The cut list: each panel with its size, mass, edges, holes and openings, and the time by the maker's own rates.

use super::table::{Cell, Table};
use crate::Build;
use crate::design::RatesSpec;
use crate::dimensions::sheets;
use crate::drawing::number::format_number;
use crate::panels::{Feature, FeatureKind, Panel};
use crate::sorting::sort_by;

/// What one panel is and takes.
#[derive(Clone, Debug, PartialEq)]
pub struct CutLine {
    /// What people call it.
    pub label: &'static str,
    /// Width and height.
    pub size_mm: [f64; 2],
    /// Thickness.
    pub thickness_mm: f64,
    /// Mass with everything cut out; `None` for a sheet nothing is known of.
    pub mass_kg: Option<f64>,
    /// Area inside its outline, openings and holes not taken off: what film has to cover.
    pub face_mm2: f64,
    /// Length of the edges that are painted: outline and openings; a brush does not get into vents.
    pub edge_mm: f64,
    /// Length of all cuts through: outline, openings, slots; drilled holes not counted.
    pub cut_mm: f64,
    /// Holes that are drilled: diameter and number, the thinnest first.
    pub holes: Vec<(f64, usize)>,
    /// Openings and slots that are cut.
    pub openings: usize,
    /// Rebates and grooves.
    pub recesses: usize,
    /// Minutes by the maker's rates; `None` when none is stated.
    pub minutes: Option<f64>,
}

/// The cut list of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct CutList {
    /// One line a panel.
    pub lines: Vec<CutLine>,
    /// How many cases.
    pub cases: u32,
    /// Density the masses are worked out with, and where it stands.
    pub density: Option<String>,
    /// Whether some rate is open while others are stated.
    pub some_rates_open: bool,
}

/// The cut list.
#[must_use]
pub fn cut_list(build: &Build) -> CutList {
    let density = sheets::density(build.spec.sheet.material.into());
    let rates = &build.spec.prices.rates;
    let lines = build.panels.iter().map(|panel| line(panel, density.map(|density| density.get()), rates)).collect();
    let stated = [rates.cut, rates.hole, rates.opening, rates.panel];
    CutList {
        lines,
        cases: build.spec.prices.cases,
        density: density.map(|density| {
            format!("Masses at {} kg/m³: {}.", format_number(density.get(), 0), density.source().cite())
        }),
        some_rates_open: stated.iter().any(Option::is_some) && stated.iter().any(Option::is_none),
    }
}

/// Whether a feature is drilled, rather than cut along a line: the hole key has a letter for it.
fn drilled(feature: &Feature) -> bool {
    feature.key.is_some()
}

/// Whether a feature is a line to cut within the outline.
fn cut_inside(feature: &Feature) -> bool {
    feature.blind.is_none() && !feature.notch && !drilled(feature)
}

/// Length of the edges of a panel that are painted: those of vents are not.
pub(super) fn edge_length_mm(panel: &Panel) -> f64 {
    let openings = panel.features.iter().filter(|feature| cut_inside(feature));
    let shown = openings.filter(|feature| feature.kind == FeatureKind::Opening);
    panel.outline.length_mm() + shown.map(|feature| feature.contour.length_mm()).sum::<f64>()
}

/// What is left of a panel's sheet, mm³.
fn volume_mm3(panel: &Panel) -> f64 {
    let through = |feature: &&Feature| feature.blind.is_none() && !feature.notch;
    let area = |feature: &Feature| feature.contour.area().abs();
    let whole = panel.outline.area().abs() - panel.features.iter().filter(through).map(area).sum::<f64>();
    let recesses: f64 = panel
        .features
        .iter()
        .filter_map(|feature| feature.blind.map(|(depth, _)| (feature, depth)))
        .map(|(feature, depth)| {
            // What goes through inside a counterbore or a ring is gone already.
            let gone = panel.features.iter().filter(through).filter(|hole| feature.contour.contains(hole.centre));
            depth * (area(feature) - gone.map(area).sum::<f64>()).max(0.0)
        })
        .sum();
    whole * panel.thickness_mm - recesses
}

fn line(panel: &Panel, density: Option<f64>, rates: &RatesSpec) -> CutLine {
    let mut holes: Vec<(f64, usize)> = Vec::new();
    for feature in panel.features.iter().filter(|feature| drilled(feature)) {
        let diameter = feature.diameter_mm.unwrap_or(0.0);
        match holes.iter_mut().find(|(other, _)| *other == diameter) {
            Some((_, count)) => *count += 1,
            None => holes.push((diameter, 1)),
        }
    }
    sort_by(&mut holes, |a, b| a.0.total_cmp(&b.0));
    let inside = || panel.features.iter().filter(|feature| cut_inside(feature));
    let cut_mm = panel.outline.length_mm() + inside().map(|feature| feature.contour.length_mm()).sum::<f64>();
    let openings = inside().count();
    let drilled = holes.iter().map(|(_, count)| *count).sum::<usize>();
    let shares = [
        (rates.cut, cut_mm / 1000.0),
        (rates.hole, drilled as f64),
        (rates.opening, openings as f64),
        (rates.panel, 1.0),
    ];
    let stated = shares.iter().any(|(rate, _)| rate.is_some());
    CutLine {
        label: panel.label,
        size_mm: panel.size_mm,
        thickness_mm: panel.thickness_mm,
        mass_kg: density.map(|density| volume_mm3(panel) * density / 1e9),
        face_mm2: panel.outline.area().abs(),
        edge_mm: edge_length_mm(panel),
        cut_mm,
        holes,
        openings,
        recesses: panel
            .features
            .iter()
            .filter(|feature| matches!(feature.kind, FeatureKind::Rebate | FeatureKind::Groove))
            .count(),
        minutes: stated.then(|| shares.iter().map(|(rate, amount)| rate.unwrap_or(0.0) * amount).sum()),
    }
}

impl CutList {
    /// Mass of the panels of one case; `None` for a sheet nothing is known of.
    #[must_use]
    pub fn mass_kg(&self) -> Option<f64> {
        self.lines.iter().map(|line| line.mass_kg).sum()
    }

    /// Minutes for all cases; `None` when no rate is stated.
    #[must_use]
    pub fn minutes(&self) -> Option<f64> {
        self.lines.iter().map(|line| line.minutes).sum::<Option<f64>>().map(|one| one * f64::from(self.cases))
    }

    /// One row a panel, and the sum of one case.
    pub(super) fn panels_table(&self) -> Table {
        let mut table = Table::new(
            "panels",
            "Panels to cut",
            &[
                "panel",
                "#width, mm",
                "#height, mm",
                "#sheet, mm",
                "#pieces",
                "#mass of each, kg",
                "#face, m²",
                "#edges without vents, m",
                "#cut, m",
                "#holes",
                "#openings",
                "#recesses",
                "#minutes for each",
            ],
        );
        let row = |line: &CutLine, pieces: usize, holes: usize| {
            vec![
                Cell::text(line.label),
                Cell::number(line.size_mm[0], 2),
                Cell::number(line.size_mm[1], 2),
                Cell::number(line.thickness_mm, 2),
                Cell::count(pieces),
                line.mass_kg.map_or(Cell::Empty, |mass| Cell::number(mass, 3)),
                Cell::number(line.face_mm2 / 1e6, 4),
                Cell::number(line.edge_mm / 1000.0, 3),
                Cell::number(line.cut_mm / 1000.0, 3),
                Cell::count(holes),
                Cell::count(line.openings),
                Cell::count(line.recesses),
                line.minutes.map_or(Cell::Empty, |minutes| Cell::number(minutes, 1)),
            ]
        };
        let holes = |line: &CutLine| line.holes.iter().map(|(_, count)| *count).sum::<usize>();
        for line in &self.lines {
            table.rows.push(row(line, self.cases as usize, holes(line)));
        }
        let sum = |value: fn(&CutLine) -> f64| self.lines.iter().map(value).sum::<f64>();
        table.rows.push(vec![
            Cell::text("One case"),
            Cell::Empty,
            Cell::Empty,
            Cell::Empty,
            Cell::count(self.lines.len()),
            self.mass_kg().map_or(Cell::Empty, |mass| Cell::number(mass, 3)),
            Cell::number(sum(|line| line.face_mm2) / 1e6, 4),
            Cell::number(sum(|line| line.edge_mm) / 1000.0, 3),
            Cell::number(sum(|line| line.cut_mm) / 1000.0, 3),
            Cell::count(self.lines.iter().map(holes).sum()),
            Cell::count(self.lines.iter().map(|line| line.openings).sum()),
            Cell::count(self.lines.iter().map(|line| line.recesses).sum()),
            self.minutes().map_or(Cell::Empty, |all| Cell::number(all / f64::from(self.cases), 1)),
        ]);
        table.notes.extend(self.density.clone());
        if self.mass_kg().is_none() {
            table.notes.push("No masses: nothing is known of this sheet.".to_owned());
        }
        match (self.minutes(), self.some_rates_open) {
            (None, _) => table.notes.push("No times: none of your own rates is stated.".to_owned()),
            (_, true) => {
                table.notes.push("Some of your rates are open; what they stand for takes no time here.".to_owned())
            }
            _ => {}
        }
        table
    }

    /// One row for each panel and drill.
    pub(super) fn drilling_table(&self) -> Table {
        let mut table =
            Table::new("drilling", "Drilling", &["panel", "#diameter, mm", "#holes in each", "#holes in all"]);
        for line in &self.lines {
            for (diameter, count) in &line.holes {
                table.rows.push(vec![
                    Cell::text(line.label),
                    Cell::number(*diameter, 2),
                    Cell::count(*count),
                    Cell::count(count * self.cases as usize),
                ]);
            }
        }
        table.notes.push("Depths and places: the hole key on each template.".to_owned());
        table
    }
}
