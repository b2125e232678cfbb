//! What no layout can go below: a number of sheets under one of these is a mistake, one that meets it is proved best.
//!
//! All of them take sizes in whole units; with a gap k between pieces, pass w + k, h + k and W + k, H + k.

use crate::sorting::sort_by;

/// Size and number of equal rectangles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sized {
    /// Size along x.
    pub w: i64,
    /// Size along y.
    pub h: i64,
    /// How many.
    pub count: i64,
}

/// Sheets needed by area, L0.
#[must_use]
pub fn area(width: i64, height: i64, items: &[Sized]) -> i64 {
    let sum: i64 = items.iter().map(|item| item.w * item.h * item.count).sum();
    up(sum, width * height)
}

/// Sheets needed by Martello and Vigo's bound L2, pieces not turned (Management Science 44, 1998, 388-399).
///
/// Of two pieces wider than half a sheet and higher than half of it, each needs its own sheet. L1 counts those and
/// what stands above and below pieces that wide; L2 adds the area of pieces too narrow to count. The free numbers p and
/// q of the bound only matter where a piece enters or leaves one of its sets, so only those are tried.
#[must_use]
pub fn martello_vigo(width: i64, height: i64, items: &[Sized]) -> i64 {
    let turned: Vec<Sized> = items.iter().map(|item| Sized { w: item.h, h: item.w, ..*item }).collect();
    wide(width, height, items).max(wide(height, width, &turned))
}

/// L2 seen along the width.
fn wide(width: i64, height: i64, items: &[Sized]) -> i64 {
    let base = pairs(width, height, items);
    let mut best = base;
    for q in turning_points(width, items.iter().map(|item| item.w)) {
        let (mut broad, mut rest) = (0, 0);
        for item in items {
            if item.w > width - q {
                broad += item.h * item.count;
            } else if item.w >= q {
                rest += item.w * item.h * item.count;
            }
        }
        let free = (height * base - broad) * width;
        best = best.max(base + up(rest - free, width * height).max(0));
    }
    best
}

/// L1: only pieces wider than half a sheet, of which no two lie side by side.
fn pairs(width: i64, height: i64, items: &[Sized]) -> i64 {
    let broad: Vec<&Sized> = items.iter().filter(|item| 2 * item.w > width).collect();
    let alone: i64 = broad.iter().filter(|item| 2 * item.h > height).map(|item| item.count).sum();
    let mut more = 0;
    for p in turning_points(height, broad.iter().map(|item| item.h)) {
        let (mut tall, mut tall_height, mut slots) = (0, 0, 0);
        let (mut short, mut short_height) = (0, 0);
        for item in &broad {
            if 2 * item.h > height && item.h <= height - p {
                tall += item.count;
                tall_height += item.h * item.count;
                slots += (height - item.h) / p * item.count;
            } else if 2 * item.h <= height && item.h >= p {
                short += item.count;
                short_height += item.h * item.count;
            }
        }
        let by_height = up(short_height - (tall * height - tall_height), height);
        let by_number = up(short - slots, height / p);
        more = more.max(by_height).max(by_number);
    }
    alone + more
}

/// The numbers from 1 to half of `whole` at which a size enters or leaves the sets of the bound.
fn turning_points(whole: i64, sizes: impl Iterator<Item = i64>) -> Vec<i64> {
    let mut points = vec![1, whole / 2];
    for size in sizes {
        points.extend([size, whole - size, whole - size + 1]);
    }
    points.retain(|&point| point >= 1 && 2 * point <= whole);
    sort_by(&mut points, Ord::cmp);
    points.dedup();
    points
}

/// Division that rounds up.
const fn up(a: i64, b: i64) -> i64 {
    -(-a).div_euclid(b)
}

#[cfg(test)]
#[path = "tests/bounds.rs"]
mod tests;
