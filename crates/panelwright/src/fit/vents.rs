//! Ways for the air: vents that were asked for and have no opening, and cases that are shut.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::VentFor;
use crate::dimensions::source::Source;
use crate::panels::{NoVent, Purpose, VentLeftOut};
use crate::parts::PartKind;

pub(super) const VENT_NOT_CUT: Rule = Rule {
    name: "vent-not-cut",
    what: "Of each vent that is asked for at least one opening is cut.",
    source: Source::derived("Geometry of the design", "region, openings and webs of the vent"),
    look: vent_not_cut,
};

pub(super) const AIR_WAYS: Rule = Rule {
    name: "air-ways",
    what: "Air has a way into the case and another out of it; gaps around connectors and a card are not counted.",
    source: Source::common_practice("Workshop custom", "air in low and out high; sheet hardly lets heat through"),
    look: air_ways,
};

/// One way in, one way out.
const WAYS: usize = 2;

fn air_ways(scene: &Scene, found: &mut Vec<Finding>) {
    let each = |purpose| scene.sheets.iter().map(move |sheet| sheet.with_purpose(purpose).count()).sum::<usize>();
    // A panel's vents are one way, however many slots they have.
    let vented = scene.sheets.iter().filter(|sheet| sheet.with_purpose(Purpose::Vent).next().is_some()).count();
    let ways = vented + each(Purpose::FanOpening) + each(Purpose::SupplyOpening);
    if ways >= WAYS {
        return;
    }
    let text = if ways == 0 {
        "The case is shut: no vent, fan or supply lets air through a panel."
    } else {
        "Air has one way through the panels; it needs one in and one out."
    };
    let mut finding = AIR_WAYS
        .caution(text)
        .with_counts(ways, WAYS)
        .with_remedy("Cut a vent low in one panel and one high in another, or put a fan on a panel.");
    // What suffers most: the cooler, or the board under it.
    let hot = [PartKind::Cooler, PartKind::Board];
    if let Some(part) = hot.iter().find_map(|kind| scene.case.parts.iter().find(|part| part.kind == *kind)) {
        finding = finding.with_about([part.id.as_str()]).with_at(part.bounds().centre());
    }
    found.push(finding);
}

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
        let panel = words::the_panel(vent.wall);
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
