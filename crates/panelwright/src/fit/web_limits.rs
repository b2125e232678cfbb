//! How thin a web may be: what the panel's method leaves standing, what lasts, what needs care.

use super::finding::Severity;
use super::scene::{Scene, Sheet};
use crate::design::Method;
use crate::dimensions::method_limits::{FRAGILE_WEB, least_web};
use crate::dimensions::sheets::{WEB_LASER_CAREFUL, WEB_MIN_FIBREBOARD};
use crate::dimensions::source::{Source, Sourced};
use crate::solid::TOUCH_MM;

pub(super) const WORKSHOP: Source =
    Source::common_practice("Workshop custom", "web of 2 mm in 6 mm fibreboard, the sheet's thickness to be careful");

/// The limits of one panel, mm, each with its source.
#[derive(Clone, Copy, Debug)]
pub(super) struct WebLimits {
    /// Thinner, and it does not survive being cut.
    least: Sourced<f64>,
    /// Thinner, and it does not last.
    lasting: Sourced<f64>,
    /// Thinner, and it wants care.
    careful: Sourced<f64>,
}

impl WebLimits {
    /// The limits of a panel by its method and how true it is cut: two lines that each stray towards the other must not
    /// meet. What lasts is the sheet's affair, and no accuracy asks for more.
    pub fn of(scene: &Scene, sheet: &Sheet) -> Self {
        let making = &scene.case.spec.making;
        let method = making.method(sheet.wall());
        let lasting = WEB_MIN_FIBREBOARD;
        let table = least_web(method.table());
        let stray = 2.0 * making.place_accuracy_mm(sheet.wall(), lasting.get()).get();
        // A careful hand lets no web live that breaks by itself.
        let floor = if method == Method::Hand { FRAGILE_WEB } else { table };
        let least = match stray {
            stray if stray > lasting.get() => lasting,
            stray if stray > floor.get() => Sourced::new(
                stray,
                Source::derived("Stack-up of tolerances", "two lines that stray towards each other"),
            ),
            _ => floor,
        };
        // The rule speaks of 6 mm sheet; thicker sheet needs no more.
        let thick = sheet.panel.thickness_mm.min(6.0);
        let careful = match method {
            Method::Laser => Sourced::new(WEB_LASER_CAREFUL.get() * thick, WEB_LASER_CAREFUL.source()),
            Method::Hand | Method::Router => Sourced::new(thick, WORKSHOP),
        };
        Self { least, lasting, careful }
    }

    /// How much a web weighs, and the limit it misses; `None` when it needs no care.
    pub fn weigh(&self, web: f64) -> Option<(Severity, Sourced<f64>)> {
        [(Severity::Blocks, self.least), (Severity::Caution, self.lasting), (Severity::Note, self.careful)]
            .into_iter()
            .find(|(_, limit)| web < limit.get() - TOUCH_MM)
    }

    /// Webs at least this wide need no thought, mm.
    pub fn reach(&self) -> f64 {
        self.careful.get().max(self.lasting.get()) - TOUCH_MM
    }
}
