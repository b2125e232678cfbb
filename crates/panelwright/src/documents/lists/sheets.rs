//! The panels as a question to the packer, and how many sheets its answer takes.

use super::openings::openings;
use crate::Build;
use crate::design::GrainAlong;
use crate::stock::{Grain, Job, Method, Piece, Plan, Rules, Sheet};

/// Sheets that are needed.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetNeed {
    /// How many of the sheet that is bought.
    pub bought: usize,
    /// How many of the others at hand.
    pub at_hand: usize,
    /// Panels that find no place.
    pub missing: usize,
    /// Sheets no layout can go below.
    pub bound: usize,
}

/// The question to the packer: every panel of every case on the design's stock.
#[must_use]
pub fn job(build: &Build) -> Job {
    let stock = &build.spec.stock;
    let grain = match stock.grain {
        None => Grain::None,
        Some(GrainAlong::Width) => Grain::AlongWidth,
        Some(GrainAlong::Height) => Grain::AlongHeight,
    };
    // With a direction, panels keep upright to it: their own height runs along the grain.
    let piece_grain = if grain == Grain::None { Grain::None } else { Grain::AlongHeight };
    let pieces = build
        .panels
        .iter()
        .map(|panel| Piece {
            label: panel.label.to_owned(),
            width: panel.size_mm[0],
            height: panel.size_mm[1],
            count: build.spec.prices.cases as usize,
            may_turn: true,
            grain: piece_grain,
            openings: openings(build, panel),
        })
        .collect();
    let sheets = stock
        .sheets
        .iter()
        .map(|sheet| Sheet {
            label: if sheet.number == 1 { "Sheet".to_owned() } else { format!("Sheet {}", sheet.number) },
            width: sheet.size_mm[0],
            height: sheet.size_mm[1],
            count: sheet.count.map(|count| count as usize),
            grain,
            offcut: sheet.number > 1,
            price: None,
        })
        .collect();
    let method = if stock.straight { Method::Guillotine } else { Method::Free };
    Job { pieces, sheets, rules: Rules { trim: stock.trim_mm, gap: stock.gap_mm, method } }
}

impl SheetNeed {
    /// What a plan of a design's own [`job`] takes.
    #[must_use]
    pub fn of(plan: &Plan) -> Self {
        let bought = plan.sheets.iter().filter(|sheet| sheet.sheet == 0).count();
        Self { bought, at_hand: plan.sheets.len() - bought, missing: plan.missing(), bound: plan.bounds.sheets() }
    }
}
