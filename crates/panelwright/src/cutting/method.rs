//! From the method a design chose for a panel to the way that panel is cut.

use super::lettering::lettering;
use super::panel::CutPanel;
use super::relief::Relief;
use super::rule::{CutRule, RouterRule};
use super::tabs::TabRule;
use crate::design::{Method, Relief as WantedRelief, Spec, Wall};
use crate::dimensions::laser_kerf::starting_kerf;
use crate::dimensions::source::{Source, Sourced};
use crate::panels::{Face, Panel};

/// Width of a laser's cut in a sheet the table does not know, until it is measured.
const USUAL_KERF_MM: Sourced<f64> =
    Sourced::new(0.2, Source::published("Notes of commercial laser cutters", "about 0.2 mm for most materials"));

/// Width of the beam's cut: measured, else the published average for the sheet, else what is usual.
#[must_use]
pub fn laser_kerf_mm(spec: &Spec) -> f64 {
    spec.making.laser.kerf_mm.unwrap_or_else(|| {
        let table = starting_kerf(spec.sheet.material.into(), spec.sheet.thickness_mm());
        table.unwrap_or(USUAL_KERF_MM).get()
    })
}

impl CutRule {
    /// How a panel of a design is cut.
    #[must_use]
    pub fn of(spec: &Spec, wall: Wall) -> Self {
        let making = &spec.making;
        match making.method(wall) {
            Method::Hand => Self::Nominal,
            Method::Laser => Self::Laser { kerf_mm: if making.laser.compensated { laser_kerf_mm(spec) } else { 0.0 } },
            Method::Router => Self::Router(RouterRule {
                cutter_mm: making.router.cutter_mm,
                relief: match making.router.relief {
                    WantedRelief::Diagonal => Some(Relief::Diagonal),
                    WantedRelief::Along => Some(Relief::AlongEdge),
                    WantedRelief::None => None,
                },
                compensated: making.router.compensated,
                tabs: (making.router.tabs > 0).then(|| TabRule {
                    count: usize::from(making.router.tabs),
                    width_mm: making.router.tab_width_mm,
                    height_mm: making.router.tab_height_mm,
                    ..TabRule::default()
                }),
            }),
        }
    }
}

impl CutPanel {
    /// A panel of a design, cut by the method chosen for it.
    #[must_use]
    pub fn by_method(spec: &Spec, panel: &Panel) -> Self {
        Self::of(panel, CutRule::of(spec, panel.wall))
    }

    /// A panel of a design as its files hold it: lettering added, seen from the face that is up, and cut in two goes
    /// when both faces are worked on (see [`CutPanel::goes`]).
    #[must_use]
    pub fn for_files(spec: &Spec, panel: &Panel) -> Vec<Self> {
        let mut cut = Self::by_method(spec, panel);
        if spec.making.method(panel.wall) == Method::Laser && spec.making.laser.lettering {
            cut.layers.insert(0, lettering(panel));
        }
        cut.goes()
    }
}

/// Whether a panel lies with its inside up when a machine cuts it out (see [`CutPanel::goes`]).
#[must_use]
pub fn inside_up(spec: &Spec, panel: &Panel) -> bool {
    CutPanel::for_files(spec, panel).last().is_some_and(|cut| cut.seen_from == Face::Inside)
}

/// What the file of one of so many goes is called: the last one as its panel or sheet is, the one before it `-first`.
///
/// ```
/// use panelwright::cutting::go_name;
/// assert_eq!([0, 1].map(|number| go_name("left", number, 2)), ["left-first", "left"]);
/// assert_eq!(go_name("left", 0, 1), "left");
/// ```
#[must_use]
pub fn go_name(stem: &str, number: usize, goes: usize) -> String {
    if number + 1 < goes { format!("{stem}-first") } else { stem.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    fn rule(choices: &[(&str, serde_json::Value)]) -> CutRule {
        let mut design = Design::default();
        for (key, value) in choices {
            design.set_json(key, value).unwrap();
        }
        CutRule::of(&Spec::of(&design), Wall::Left)
    }

    #[test]
    fn each_panel_is_cut_by_its_own_method() {
        assert_eq!(rule(&[]), CutRule::Nominal);
        assert_eq!(rule(&[("method", "laser".into()), ("laser.kerf", 0.15.into())]), CutRule::Laser { kerf_mm: 0.15 });
        assert_eq!(rule(&[("method", "laser".into()), ("method.left", "hand".into())]), CutRule::Nominal);
        // A published average of fibreboard, a quarter of an inch: 0.008 in.
        assert_eq!(rule(&[("method", "laser".into())]), CutRule::Laser { kerf_mm: 0.203 });
        let choices = [("method", "laser".into()), ("laser.compensated", false.into())];
        assert_eq!(rule(&choices), CutRule::Laser { kerf_mm: 0.0 });
        let CutRule::Router(router) = rule(&[("method", "router".into()), ("router.tabs", 0.into())]) else {
            panic!("a router")
        };
        assert!(router.tabs.is_none() && router.relief == Some(Relief::Diagonal) && !router.compensated);
    }
}
