//! What a design says of the maker's printer: how long its bars of 100 mm came out.

use super::reader::Reader;
use crate::dimensions::paper::{CHECK_BAR, FIT_TO_PAGE};

/// A printer as the maker measured it on the test page. Across is along the short side of the paper, down along its
/// long side: the way the paper runs through the printer, whichever way a page lies on it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PrinterSpec {
    /// What the bar across measures.
    pub across_mm: Option<f64>,
    /// What the bar down the page measures.
    pub down_mm: Option<f64>,
}

/// Far below what anyone can read off a ruler, mm: keeps a reading of exactly the limit on its near side.
const HAIR_MM: f64 = 1e-9;

impl PrinterSpec {
    pub(super) fn of(read: &Reader) -> Self {
        Self { across_mm: read.open("printer.across"), down_mm: read.open("printer.down") }
    }

    /// The reading that is further off than any printer is by itself: "fit to page" was on when the page was printed.
    #[must_use]
    pub fn fitted_mm(&self) -> Option<f64> {
        let bar = CHECK_BAR.get();
        let off = |reading: &f64| (reading - bar).abs();
        let most = bar * FIT_TO_PAGE.get() / 100.0 + HAIR_MM;
        [self.across_mm, self.down_mm]
            .into_iter()
            .flatten()
            .filter(|reading| off(reading) > most)
            .max_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// What lengths across and down are multiplied by before printing, so that they come out true.
    ///
    /// 1 where nothing was measured, and both 1 after a print that was fitted to the page: that is to be printed again,
    /// not corrected.
    #[must_use]
    pub fn factors(&self) -> [f64; 2] {
        if self.fitted_mm().is_some() {
            return [1.0, 1.0];
        }
        [self.across_mm, self.down_mm].map(|reading| reading.map_or(1.0, |reading| factor(CHECK_BAR.get(), reading)))
    }
}

/// What to multiply a length by so that it prints true, when a bar of `asked` mm was printed `measured` mm long.
#[must_use]
pub fn factor(asked_mm: f64, measured_mm: f64) -> f64 {
    if measured_mm > 0.0 { asked_mm / measured_mm } else { 1.0 }
}

/// How far a printed square of `side` mm is from square, in degrees, by its two diagonals; 0 for no side.
///
/// Small angle: a square sheared by a radians has diagonals that differ by a times the diagonal.
#[must_use]
pub fn skew_deg(side_mm: f64, diagonals_mm: [f64; 2]) -> f64 {
    if side_mm > 0.0 {
        ((diagonals_mm[0] - diagonals_mm[1]) / (std::f64::consts::SQRT_2 * side_mm)).to_degrees()
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn printer(across: f64, down: f64) -> PrinterSpec {
        PrinterSpec { across_mm: Some(across), down_mm: Some(down) }
    }

    /// Worked by hand: 100/99.4, 100/100.2; 200/199.1, 200/200.3; 297 mm at 99.4 % is 295.218 mm.
    #[test]
    fn factors_are_those_worked_by_hand() {
        let [across, down] = printer(99.4, 100.2).factors();
        assert!((across - 1.006_036).abs() < 1e-6 && (down - 0.998_004).abs() < 1e-6);
        assert!((factor(200.0, 199.1) - 1.004_520).abs() < 1e-6);
        assert!((factor(200.0, 200.3) - 0.998_502).abs() < 1e-6);
        assert!((297.0 / across - 295.218).abs() < 1e-3);
        assert_eq!(PrinterSpec::default().factors(), [1.0, 1.0]);
        assert_eq!(PrinterSpec { across_mm: Some(99.0), down_mm: None }.factors()[1], 1.0);
    }

    #[test]
    fn a_print_fitted_to_the_page_is_told_from_a_printer_that_is_a_little_off() {
        assert_eq!(printer(97.0, 97.0).fitted_mm(), None);
        assert_eq!(printer(96.99, 97.0).fitted_mm(), Some(96.99));
        assert_eq!(printer(100.0, 103.01).factors(), [1.0, 1.0]);
        assert_eq!(printer(103.0, 100.0).fitted_mm(), None);
    }

    /// A square of 200 mm with diagonals of 283.1 and 282.6 mm is 0.101 degrees off.
    #[test]
    fn skew_is_that_worked_by_hand() {
        assert!((skew_deg(200.0, [283.1, 282.6]) - 0.101).abs() < 0.001);
        // A sheared square measured with Pythagoras: 150 mm, 1 degree.
        let (s, a) = (150.0, 1.0_f64.to_radians());
        let diagonal = |sense: f64| libm::hypot(s + sense * s * libm::sin(a), s * libm::cos(a));
        assert!((skew_deg(s, [diagonal(1.0), diagonal(-1.0)]) - 1.0).abs() < 0.001);
    }
}
