//! From a draft to the plan that is shown: pieces get their names back, lengths become millimetres again.

use super::cuts::{Sawing, tree};
use super::draft::{Draft, Used};
use super::job::{Job, Method, mm, units};
use super::offcuts::offcuts;
use super::plan::{Placed, Plan, Reason, Rect, SheetPlan, Unplaced};
use super::problem::{Block, Problem};

/// At most so many offcuts are named on one sheet: what a maker puts back on the rack (common practice).
const MOST_OFFCUTS: usize = 6;

/// The plan that a draft means.
pub(super) fn plan(job: &Job, problem: &Problem, draft: &Draft) -> Plan {
    let mut next = vec![0_usize; problem.groups.len()];
    let mut take = |group: usize| {
        next[group] += 1;
        problem.groups[group].pieces[next[group] - 1]
    };
    let mut sheets = Vec::new();
    for used in &draft.used {
        sheets.push(sheet(job, problem, used, &mut take));
    }
    let mut unplaced = problem.too_big.clone();
    for &group in &draft.unplaced {
        let piece = take(group);
        match unplaced.iter_mut().find(|other| other.piece == piece && other.reason == Reason::NoSheetLeft) {
            Some(other) => other.count += 1,
            None => unplaced.push(Unplaced { piece, count: 1, reason: Reason::NoSheetLeft }),
        }
    }
    unplaced.sort_unstable_by_key(|unplaced| unplaced.piece);
    let sheet_area = |sheet: &SheetPlan| job.sheets[sheet.sheet].width * job.sheets[sheet.sheet].height;
    let whole: f64 = sheets.iter().map(sheet_area).sum();
    let pieces: f64 = sheets.iter().map(|sheet| sheet.yield_share * sheet_area(sheet)).sum();
    Plan {
        bounds: problem.bounds,
        yield_share: if whole > 0.0 { pieces / whole } else { 0.0 },
        fewest: draft.unplaced.is_empty() && draft.used.len() <= problem.bounds.sheets(),
        sheets,
        unplaced,
    }
}

fn sheet(job: &Job, problem: &Problem, used: &Used, take: &mut dyn FnMut(usize) -> usize) -> SheetPlan {
    let (sheet, rules) = (&job.sheets[used.stock], &job.rules);
    let trim = units(rules.trim);
    let mut laid = used.laid.clone();
    laid.sort_unstable_by_key(|laid| (laid.block.y, laid.block.x));
    let rect = |block: &Block| Rect {
        x: mm(block.x + trim),
        y: mm(block.y + trim),
        width: mm(block.w - problem.gap),
        height: mm(block.h - problem.gap),
    };
    let placed: Vec<Placed> = laid
        .iter()
        .map(|laid| {
            let piece = take(laid.group);
            // A group may hold a piece and its like with width and height swapped.
            let swapped = units(job.pieces[piece].width) + problem.gap != problem.groups[laid.group].w;
            Placed { piece, rect: rect(&laid.block), turned: laid.turned != swapped, inside: None }
        })
        .collect();
    let mut blocks: Vec<Block> = laid.iter().map(|laid| laid.block).collect();
    let plate = whole(problem, used);
    let left = offcuts(plate, &blocks, problem.gap, rules.method, MOST_OFFCUTS);
    let mut cuts = Vec::new();
    if rules.method == Method::Guillotine {
        let pieces = blocks.len();
        blocks.extend(&left);
        let sawing = Sawing { gap: problem.gap, trim, width: units(sheet.width), height: units(sheet.height), pieces };
        if let Some(tree) = tree(plate, &blocks) {
            cuts = sawing.cuts(&tree);
        }
    }
    let area: f64 = placed.iter().map(|placed| placed.rect.area()).sum();
    SheetPlan {
        sheet: used.stock,
        offcuts: left.iter().map(rect).collect(),
        yield_share: area / (sheet.width * sheet.height),
        placed,
        cuts,
    }
}

/// The sheet inside its trim, with the gap.
pub(super) fn whole(problem: &Problem, used: &Used) -> Block {
    let stock = &problem.stock[used.stock];
    Block { x: 0, y: 0, w: stock.w, h: stock.h }
}
