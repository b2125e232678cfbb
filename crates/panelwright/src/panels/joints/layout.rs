//! How many fingers or tabs a corner gets, and where they are.

use crate::solid::within;

/// From and to along a corner, mm.
pub(super) type Stretch = [f64; 2];

/// Usual width of a finger or tab, in thicknesses (*common practice*: fingers of one to three, tabs of two to four).
const USUAL: f64 = 3.0;

/// Sheet kept free of tabs at each end of a corner, in thicknesses (*common practice*).
const END: f64 = 2.0;

/// Middle to middle of two tabs, mm, at most (*common practice*: a tab every hand's breadth).
const TAB_EVERY_MM: f64 = 100.0;

/// An odd number of equal fingers, three at least, each as near to the wanted width as can be; of two counts equally
/// near the smaller, whose fingers are wider. Without a wish no finger is narrower than the sheet is thick.
pub(super) fn fingers([from, to]: Stretch, t: f64, wanted_mm: Option<f64>) -> Vec<Stretch> {
    let length = to - from;
    if length <= 0.0 {
        return Vec::new();
    }
    let ideal = length / wanted_mm.unwrap_or(USUAL * t).max(0.5);
    // The nearest odd number: 2 k + 1 with k the nearest whole number to (ideal - 1) / 2, halves downward.
    let mut count = 2.0 * f64::ceil((ideal - 1.0) / 2.0 - 0.5) + 1.0;
    if wanted_mm.is_none() {
        count = count.min(2.0 * f64::floor((length / t - 1.0) / 2.0) + 1.0);
    }
    // As many as 401 fingers would fit the longest edge at the narrowest width.
    let count = count.clamp(3.0, 401.0) as usize;
    (0..count).map(|index| [0, 1].map(|end| from + length * (index + end) as f64 / count as f64)).collect()
}

/// Equal tabs, evenly spread, clear of both ends; none where the corner is too short for one.
pub(super) fn tabs([from, to]: Stretch, t: f64, wanted_mm: Option<f64>) -> Vec<Stretch> {
    let width = wanted_mm.unwrap_or(USUAL * t);
    let (from, to) = (from + END * t, to - END * t);
    let length = to - from;
    if length < width {
        return Vec::new();
    }
    // Neighbours stand a thickness apart at least, and half of that at each end, since they are spread evenly.
    let most = f64::floor(length / (width + t)).max(1.0);
    let least = if most >= 2.0 { 2.0 } else { 1.0 };
    let count = within(f64::ceil(length / TAB_EVERY_MM), least, most.max(least)) as usize;
    (0..count)
        .map(|index| {
            let middle = from + length * (index as f64 + 0.5) / count as f64;
            [middle - width / 2.0, middle + width / 2.0]
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Workshop arithmetic: 200 mm at 18 gives 11 fingers of 18.1818 mm; at 20, between 9 and 11, the wider 9 of 22.2222.
    #[test]
    fn counts_are_odd_and_nearest() {
        let widths = |wanted: f64| {
            let all = fingers([0.0, 200.0], 6.0, Some(wanted));
            (all.len(), all[0][1] - all[0][0])
        };
        assert_eq!(widths(18.0).0, 11);
        assert!((widths(18.0).1 - 18.1818).abs() < 1e-4);
        assert_eq!(widths(20.0).0, 9);
        assert!((widths(20.0).1 - 22.2222).abs() < 1e-4);
        assert_eq!(widths(500.0).0, 3);
    }

    #[test]
    fn no_finger_is_thinner_than_the_sheet_unless_asked() {
        for length in 18..400 {
            let all = fingers([10.0, 10.0 + f64::from(length)], 6.0, None);
            assert_eq!(all.len() % 2, 1);
            assert!(all.iter().all(|[from, to]| to - from >= 6.0 - 1e-9), "{length}");
            assert_eq!((all[0][0], all[all.len() - 1][1]), (10.0, 10.0 + f64::from(length)));
        }
        assert!(fingers([0.0, 100.0], 6.0, Some(3.0)).len() > 30);
    }

    #[test]
    fn tabs_keep_clear_of_the_ends_and_of_each_other() {
        for length in 10..500 {
            let all = tabs([0.0, f64::from(length)], 6.0, None);
            assert!(all.windows(2).all(|pair| pair[1][0] - pair[0][1] >= 6.0 - 1e-9), "{length}");
            assert!(all.iter().all(|[from, to]| *from >= 12.0 - 1e-9 && *to <= f64::from(length) - 12.0 + 1e-9));
            // 18 for the tab, 12 at each end.
            assert_eq!(all.is_empty(), length < 42, "{length}");
        }
    }
}
