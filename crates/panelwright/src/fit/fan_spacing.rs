//! The hole spacing of a fan as its owner measured it.

use core::f64::consts::SQRT_2;

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::dimensions::fans::{SPACINGS_OF_200, fan};
use crate::dimensions::source::Source;
use crate::solid::TOUCH_MM;

pub(super) const FAN_SPACING: Rule = Rule {
    name: "fan-spacing",
    what: "A fan's screw holes lie between its air and the edge of its frame.",
    source: Source::derived("Size lists of axial fans", "corners of the frame outside its opening"),
    look: fan_spacing,
};

fn fan_spacing(scene: &Scene, found: &mut Vec<Finding>) {
    let measured = |number: usize| scene.case.spec.fans.iter().find(|fan| fan.number == number)?.spacing_mm;
    for place in &scene.case.arrangement.fans {
        let (Some(spacing), Some(table)) = (measured(place.number), fan(place.size_mm as u32)) else { continue };
        let (opening, drill) = (table.opening.get(), table.drill_mm());
        // Holes on the diagonal, their rims outside the opening; and inside the frame.
        let (least, most) = ((opening + drill) / SQRT_2, place.size_mm - drill);
        let (what, needed) = if spacing < least - TOUCH_MM {
            ("in the air", least)
        } else if spacing > most + TOUCH_MM {
            ("beside the frame", most)
        } else {
            continue;
        };
        // Fans without a common pattern have been seen with holes this near to each other.
        let odd = table.spacing.is_none() && SPACINGS_OF_200.get().into_iter().any(|seen| spacing >= seen - TOUCH_MM);
        let severity = if odd && spacing < least { Severity::Caution } else { Severity::Blocks };
        let usual = table
            .spacing
            .map_or_else(String::new, |usual| format!(" Leave it open for the usual {}.", words::limit(usual.get())));
        let name = format!("fan-{}", place.number);
        let mut finding = FAN_SPACING
            .finds(
                severity,
                format!(
                    "Screw holes {} apart lie {what} of fan {}, which is {} wide.",
                    words::limit(spacing),
                    place.number,
                    words::limit(place.size_mm)
                ),
            )
            .with_mm(spacing, needed)
            .with_remedy(format!(
                "Measure again, from the middle of one hole to the next along a side: {} to {}.{usual}",
                words::bare_at_least(least),
                words::at_most(most)
            ))
            .with_about([name.as_str(), place.at.wall.name()]);
        finding.at = scene.sheet(place.at.wall).map(|sheet| sheet.panel.frame.to_case(place.at.centre, 0.0));
        found.push(finding);
    }
}
