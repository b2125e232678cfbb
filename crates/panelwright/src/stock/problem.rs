//! The job in the form the search works on: whole units, gap and trim already inside the sizes, equal pieces as one
//! kind.
//!
//! A piece w x h with the gap k is a rectangle (w + k) x (h + k) on a sheet (W - 2m + k) x (H - 2m + k): laid edge to
//! edge, such rectangles leave k between neighbours and nothing at the far edges.

use super::bounds::{self, Sized};
use super::job::{Grain, Job, Piece, mm, units, ways};
use super::plan::{Bounds, Reason, Unplaced};
use crate::sorting::sort_by_key;

/// Pieces of the same size that may lie the same ways; those that may be turned may have width and height swapped.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub w: i64,
    pub h: i64,
    /// The job's pieces in it, each as often as it is wanted.
    pub pieces: Vec<usize>,
    /// How many of them have the sizes the other way round.
    pub swapped: usize,
}

/// Sheets of one kind.
#[derive(Clone, Debug)]
pub(super) struct Stock {
    pub w: i64,
    pub h: i64,
    pub count: usize,
    /// What using one costs: price in 1/10000, or area.
    pub weight: i64,
    /// Left over from earlier work.
    pub offcut: bool,
}

/// A rectangle in whole units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Block {
    pub x: i64,
    pub y: i64,
    pub w: i64,
    pub h: i64,
}

impl Block {
    pub const fn area(&self) -> i64 {
        self.w * self.h
    }

    pub const fn meets(&self, other: &Self) -> bool {
        self.x < other.x + other.w
            && other.x < self.x + self.w
            && self.y < other.y + other.h
            && other.y < self.y + self.h
    }

    pub const fn holds(&self, other: &Self) -> bool {
        self.x <= other.x
            && self.y <= other.y
            && self.x + self.w >= other.x + other.w
            && self.y + self.h >= other.y + other.h
    }
}

/// A job to search on.
#[derive(Clone, Debug)]
pub(super) struct Problem {
    pub groups: Vec<Group>,
    pub stock: Vec<Stock>,
    /// By stock and group: may lie as it is, may lie turned, sizes included.
    ways: Vec<(bool, bool)>,
    /// What no sheet is large enough for.
    pub too_big: Vec<Unplaced>,
    pub bounds: Bounds,
    pub gap: i64,
}

impl Problem {
    /// Takes a job that has been validated.
    pub fn new(job: &Job) -> Self {
        let gap = units(job.rules.gap);
        let inside = |size: f64| units(size) - 2 * units(job.rules.trim) + gap;
        let priced = job.sheets.iter().all(|sheet| sheet.price.is_some() || sheet.offcut);
        let wanted: usize = job.pieces.iter().map(|piece| piece.count).sum();
        let stock: Vec<Stock> = job
            .sheets
            .iter()
            .map(|sheet| Stock {
                w: inside(sheet.width).max(0),
                h: inside(sheet.height).max(0),
                count: sheet.count.unwrap_or(wanted).min(wanted),
                weight: match sheet.price {
                    Some(price) if priced => (price * 1e4).round() as i64,
                    _ if priced => 0,
                    _ => units(sheet.width) * units(sheet.height),
                },
                offcut: sheet.offcut,
            })
            .collect();
        let mut problem =
            Self { groups: Vec::new(), ways: Vec::new(), too_big: Vec::new(), bounds: Bounds::default(), gap, stock };
        let mut same: Vec<&Piece> = Vec::new();
        for (index, piece) in job.pieces.iter().enumerate().filter(|(_, piece)| piece.count > 0) {
            let (w, h) = (units(piece.width) + gap, units(piece.height) + gap);
            let fits = problem.stock.iter().zip(&job.sheets).any(|(stock, sheet)| {
                let (upright, turned) = ways(piece, sheet);
                upright && w <= stock.w && h <= stock.h || turned && h <= stock.w && w <= stock.h
            });
            if !fits {
                let reason = problem.excess(job, piece, w, h);
                problem.too_big.push(Unplaced { piece: index, count: piece.count, reason });
                continue;
            }
            let many = std::iter::repeat_n(index, piece.count);
            let like = |other: &&Piece| alike(other, piece);
            if let Some(group) = same.iter().position(like) {
                let group = &mut problem.groups[group];
                group.pieces.extend(many);
                group.swapped += if group.w == w { 0 } else { piece.count };
            } else {
                same.push(piece);
                problem.groups.push(Group { w, h, pieces: many.collect(), swapped: 0 });
            }
        }
        for (stock, sheet) in problem.stock.iter().zip(&job.sheets) {
            for (piece, group) in same.iter().zip(&problem.groups) {
                let (upright, turned) = ways(piece, sheet);
                problem.ways.push((
                    upright && group.w <= stock.w && group.h <= stock.h,
                    turned && group.h <= stock.w && group.w <= stock.h,
                ));
            }
        }
        problem.bounds = problem.lower();
        problem
    }

    /// Which ways up a group may lie on a stock that is large enough for it.
    pub fn ways(&self, stock: usize, group: usize) -> (bool, bool) {
        self.ways[stock * self.groups.len() + group]
    }

    /// Area of a group's piece with the gap.
    pub fn area(&self, group: usize) -> i64 {
        self.groups[group].w * self.groups[group].h
    }

    /// The same with only those kinds of sheets of which `kinds` says yes.
    pub fn only(&self, kinds: &[bool]) -> Self {
        let mut problem = self.clone();
        for (stock, chosen) in problem.stock.iter_mut().zip(kinds) {
            stock.count = if *chosen { stock.count } else { 0 };
        }
        problem.bounds = problem.lower();
        problem
    }

    /// How many kinds of sheets there are.
    pub fn kinds(&self) -> usize {
        self.stock.iter().filter(|stock| stock.count > 0).count()
    }

    /// Whether a piece of the group goes on a stock.
    fn fits(&self, stock: usize, group: usize) -> bool {
        self.stock[stock].count > 0 && self.ways(stock, group) != (false, false)
    }

    /// Whether every group goes on some sheet there is.
    pub fn holds_every_group(&self) -> bool {
        (0..self.groups.len()).all(|group| (0..self.stock.len()).any(|stock| self.fits(stock, group)))
    }

    /// Whether one sheet of a stock might hold everything: each piece goes on it, and it has the area.
    pub fn might_hold_all(&self, stock: usize) -> bool {
        let area: i64 =
            (0..self.groups.len()).map(|group| self.area(group) * self.groups[group].pieces.len() as i64).sum();
        let sheet = &self.stock[stock];
        (0..self.groups.len()).all(|group| self.fits(stock, group)) && sheet.count > 0 && area <= sheet.w * sheet.h
    }

    /// What no layout on so many sheets weighs less than; `None` when there are not so many of use.
    pub fn lightest(&self, sheets: usize) -> Option<i64> {
        let of_use = |&stock: &usize| {
            if sheets == 1 {
                self.might_hold_all(stock)
            } else {
                (0..self.groups.len()).any(|group| self.fits(stock, group))
            }
        };
        let mut kinds: Vec<&Stock> = (0..self.stock.len()).filter(of_use).map(|stock| &self.stock[stock]).collect();
        sort_by_key(&mut kinds, |stock| stock.weight);
        let (mut left, mut weight) = (sheets, 0);
        for stock in kinds {
            let taken = left.min(stock.count);
            weight += stock.weight * taken as i64;
            left -= taken;
        }
        (left == 0).then_some(weight)
    }

    /// How much a piece is too big for the sheet that is nearest to holding it.
    fn excess(&self, job: &Job, piece: &Piece, w: i64, h: i64) -> Reason {
        let mut least = i64::MAX;
        let mut reason = Reason::TooBig { sheet: None, width: 0.0, height: 0.0, turned: false };
        for (index, (stock, sheet)) in self.stock.iter().zip(&job.sheets).enumerate() {
            let (upright, turned) = ways(piece, sheet);
            for (allowed, turned, w, h) in [(upright, false, w, h), (turned, true, h, w)] {
                let (width, height) = ((w - stock.w).max(0), (h - stock.h).max(0));
                if allowed && width + height < least {
                    least = width + height;
                    reason = Reason::TooBig { sheet: Some(index), width: mm(width), height: mm(height), turned };
                }
            }
        }
        reason
    }

    /// The bounds, for the largest sheet there is: a layout on smaller ones is one on as many of those, too.
    fn lower(&self) -> Bounds {
        let (mut w, mut h) = (0, 0);
        for stock in self.stock.iter().filter(|stock| stock.count > 0) {
            w = w.max(stock.w);
            h = h.max(stock.h);
        }
        if w == 0 || h == 0 || self.groups.is_empty() {
            return Bounds::default();
        }
        let mut sizes = Vec::new();
        let mut squares = Vec::new();
        for (index, group) in self.groups.iter().enumerate() {
            let count = group.pieces.len() as i64;
            let (mut upright, mut turned) = (false, false);
            for stock in (0..self.stock.len()).filter(|&stock| self.stock[stock].count > 0) {
                let ways = self.ways(stock, index);
                upright |= ways.0;
                turned |= ways.1;
            }
            // What goes on none of them takes none of them.
            if !upright && !turned {
                continue;
            }
            sizes.push(Sized { w: group.w, h: group.h, count });
            // What may lie both ways takes at least the square of its shorter side, whichever way it lies.
            let side = group.w.min(group.h);
            squares.push(match (upright, turned) {
                (true, true) => Sized { w: side, h: side, count },
                (false, true) => Sized { w: group.h, h: group.w, count },
                _ => Sized { w: group.w, h: group.h, count },
            });
        }
        Bounds {
            area: bounds::area(w, h, &sizes) as usize,
            martello_vigo: bounds::martello_vigo(w, h, &squares) as usize,
            tried: 0,
        }
    }
}

/// Whether two pieces may take each other's place, one of them turned if it may.
fn alike(a: &Piece, b: &Piece) -> bool {
    let (aw, ah, bw, bh) = (units(a.width), units(a.height), units(b.width), units(b.height));
    let free = a.may_turn && a.grain == Grain::None;
    a.may_turn == b.may_turn && a.grain == b.grain && ((aw, ah) == (bw, bh) || free && (aw, ah) == (bh, bw))
}
