//! Vents that were asked for and have no opening.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::VentFor;
use crate::dimensions::source::Source;
use crate::panels::{NoVent, VentLeftOut};

pub(super) const VENT_NOT_CUT: Rule = Rule {
    name: "vent-not-cut",
    what: "Of each vent that is asked for at least one opening is cut.",
    source: Source::derived("Geometry of the design", "region, openings and webs of the vent"),
    look: vent_not_cut,
};

const fn name(purpose: VentFor) -> &'static str {
    match purpose {
        VentFor::Card => "The vent beside the card",
        VentFor::Supply => "The vent before the supply",
        VentFor::Cooler => "The vent before the cooler",
        VentFor::Extra => "The extra vent",
    }
}

fn vent_not_cut(scene: &Scene, found: &mut Vec<Finding>) {
    for vent in scene.case.left_out {
        let panel = words::panel(vent.wall);
        let because = match vent.why {
            NoVent::OffPanel => "its region lies off the panel or on its edges".to_owned(),
            NoVent::TooSmall => format!("its region has no room for an opening of {}", words::limit(vent.opening_mm)),
            NoVent::Taken => "holes, openings and parts take all of its region".to_owned(),
        };
        let mut finding = VENT_NOT_CUT
            .caution(format!("{} is not cut in {panel}: {because}.", name(vent.purpose)))
            .with_remedy(remedy(vent))
            .with_about([vent.wall.name()]);
        finding.at = scene.sheet(vent.wall).map(|sheet| sheet.panel.frame.to_case(vent.wanted.center(), 0.0));
        found.push(finding);
    }
}

fn remedy(vent: &VentLeftOut) -> String {
    let small = vent.wanted.width().min(vent.wanted.height());
    if vent.why == NoVent::Taken {
        return "Move it to a free part of the panel or to another panel, or leave it out.".to_owned();
    }
    if small < vent.opening_mm {
        let least = words::at_least(vent.opening_mm);
        return format!(
            "Give it a region of {least} or more both ways, or openings of {} or less.",
            words::at_most(small)
        );
    }
    // One opening at least lies wholly where openings may be.
    let half = vent.opening_mm / 2.0;
    let (across, up) = ([vent.free.x0 + half, vent.free.x1 - half], [vent.free.y0 + half, vent.free.y1 - half]);
    if across[0] > across[1] || up[0] > up[1] {
        return "Choose another panel for it, or leave it out.".to_owned();
    }
    let range = |[from, to]: [f64; 2]| format!("{} to {}", words::bare_at_least(from), words::at_most(to));
    format!("Set its middle {} across and {} up.", range(across), range(up))
}
