//! Orders in which pieces are laid: large ones first, by several meanings of large, with or without some chance.

use super::board::{FITS, SPLITS, Taste};
use super::draft::{Open, Style};
use super::job::Method;
use super::problem::Problem;
use crate::chance::Random;
use crate::sorting::sort_by;

/// What makes a piece large.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Key {
    Area,
    Longer,
    Outline,
    Height,
    Width,
    Shorter,
}

/// All of them, those that serve most often first.
pub(super) const KEYS: [Key; 6] = [Key::Area, Key::Longer, Key::Outline, Key::Height, Key::Width, Key::Shorter];

const OPENS: [Open; 3] = [Open::Light, Open::Cheap, Open::Large];

/// Puts groups in order, largest first. Every size is raised by up to `noise` percent of itself by chance.
pub(super) fn sort(problem: &Problem, pieces: &mut [usize], key: Key, noise: usize, dice: &mut Random) {
    let size = |group: usize| {
        let (w, h) = (problem.groups[group].w, problem.groups[group].h);
        match key {
            Key::Area => w * h,
            Key::Longer => w.max(h),
            Key::Outline => w + h,
            Key::Height => h,
            Key::Width => w,
            Key::Shorter => w.min(h),
        }
    };
    let mut keyed: Vec<(i64, usize)> =
        pieces.iter().map(|&group| (-size(group) / 100 * (100 + dice.below(noise + 1) as i64), group)).collect();
    sort_by(&mut keyed, Ord::cmp);
    for (place, (_, group)) in pieces.iter_mut().zip(keyed) {
        *place = group;
    }
}

/// The quick layouts, one after the other; `None` when all have been tried.
pub(super) fn quick(round: u64, method: Method, stocks: usize) -> Option<(Key, Style)> {
    let mut rest = usize::try_from(round).ok()?;
    let mut digit = |base: usize| {
        let digit = rest % base;
        rest /= base;
        digit
    };
    let key = KEYS[digit(KEYS.len())];
    let fit = FITS[digit(FITS.len())];
    let split = SPLITS[if method == Method::Guillotine { digit(SPLITS.len()) } else { 0 }];
    let open = OPENS[if stocks > 1 { digit(OPENS.len()) } else { 0 }];
    let anywhere = digit(2) == 1;
    (rest == 0).then_some((key, Style { taste: Taste { fit, split }, open, anywhere }))
}

/// Any way to lay pieces, by chance.
pub(super) fn any(dice: &mut Random) -> (Key, Style) {
    let key = KEYS[dice.below(KEYS.len())];
    let fit = FITS[dice.below(FITS.len())];
    let split = SPLITS[dice.below(SPLITS.len())];
    let open = OPENS[dice.below(OPENS.len())];
    (key, Style { taste: Taste { fit, split }, open, anywhere: dice.below(2) == 1 })
}
