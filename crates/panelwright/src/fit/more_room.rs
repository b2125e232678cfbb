//! More room: which outside size moves a panel out how far, and what can be done about a part in the way.

use super::mend::{Remedy, enter_at_least, entered, pick};
use super::room::Obstacle;
use super::scene::{Scene, outward};
use super::words;
use crate::arrangement::{paper_caps, paper_name};
use crate::design::{SizeRule, SupplyPose, Value, Wall};
use crate::parts::{Part, PartKind};

/// The outside sizes by axis: key and name.
const SIZES: [(&str, &str); 3] = [("size.width", "width"), ("size.depth", "depth"), ("size.height", "height")];

/// Within this a size is the paper's own, mm.
const SAME_MM: f64 = 0.01;

impl Scene<'_> {
    /// Whether the case stays as large as it is along an axis when a part in it gets a little smaller. A case as small
    /// as its parts allow shrinks with them: the part is then no better off.
    pub fn stays(&self, axis: usize) -> bool {
        let outside = self.case.arrangement.case.outside_mm[axis];
        match self.case.spec.size {
            SizeRule::Given(_) => true,
            SizeRule::Smallest => false,
            SizeRule::Paper(name) => {
                paper_caps(self.case.spec, name).iter().any(|caps| (caps[axis] - outside).abs() < SAME_MM)
            }
        }
    }

    /// Whether what ends a part's room stays where it is when the part gets smaller.
    pub fn keeps(&self, by: &Obstacle, toward: Wall) -> bool {
        match by.part {
            Some(part) => stands_fast(self, part),
            None => self.stays(outward(toward).0),
        }
    }

    /// The outside size at which a panel's inside face stands `by` further out, measured from board and back. A wider
    /// case grows on both sides. `None` for floor and back, which stay where they are.
    fn outside_for(&self, wall: Wall, by: f64) -> Option<f64> {
        let arrangement = self.case.arrangement;
        let (axis, _) = outward(wall);
        let outside = arrangement.case.outside_mm[axis];
        let shell = outside - arrangement.case.inside_mm[axis];
        let (needs, room) = (&arrangement.needs, &arrangement.room);
        match wall {
            Wall::Left => Some(needs.width_for_left(room.left - by) + shell),
            Wall::Right => Some(needs.width_for_right(room.right + by) + shell),
            Wall::Front | Wall::Top => Some(outside + by),
            Wall::Back | Wall::Floor => None,
        }
        // Never less than what is missing, nor than what everything else needs at least.
        .map(|size| size.max(outside + by).max(needs.least_inside()[axis] + shell))
    }
}

impl Remedy {
    /// The outside size at which a panel stands `by` further out; in a case whose size is not given, the rule that has
    /// to be chosen for it.
    pub fn further_out(self, scene: &Scene, wall: Wall, by: f64) -> Self {
        match scene.outside_for(wall, by) {
            Some(size) => self.outside(scene, outward(wall).0, size),
            None => self,
        }
    }

    /// An outside size of `least` or more along an axis.
    pub fn outside(self, scene: &Scene, axis: usize, least: f64) -> Self {
        let (key, name) = SIZES[axis];
        let Some(value) = enter_at_least(key, least) else { return self };
        if let SizeRule::Given(_) = scene.case.spec.size {
            let words = format!("give an outside {name} of {} or more", entered(value));
            return self.mend(words, vec![(key.to_owned(), Value::Number(value))]);
        }
        let mut sizes = scene.case.arrangement.case.outside_mm;
        sizes[axis] = value;
        let mut choices: Vec<_> = pick("size.rule", "given").into_iter().collect();
        for (size, (key, _)) in sizes.iter_mut().zip(SIZES) {
            let Some(entry) = enter_at_least(key, *size) else { return self };
            *size = entry;
            choices.push((key.to_owned(), Value::Number(entry)));
        }
        let [width, depth, height] = sizes.map(words::bare);
        let larger = match scene.case.spec.size {
            SizeRule::Paper(paper) if !fits(scene, paper, sizes) => {
                format!(", larger than {}", paper_name(paper).label())
            }
            _ => String::new(),
        };
        let words = format!("choose a given size of {width} × {depth} × {height} mm{larger}");
        self.mend(words, choices)
    }

    /// Feet of a height or more; a case without feet gets some.
    pub fn feet(self, scene: &Scene, least: f64) -> Self {
        let Some(height) = enter_at_least("feet.height", least) else { return self };
        let bolts = (scene.case.spec.feet.height_mm <= 0.0).then(|| pick("feet.kind", "bolts")).flatten();
        let choices = bolts.into_iter().chain([("feet.height".to_owned(), Value::Number(height))]).collect();
        self.mend(format!("take feet of {} or more", entered(height)), choices)
    }

    /// Room `by` larger towards a panel, at what ends it.
    pub fn room(self, scene: &Scene, by: &Obstacle, toward: Wall, missing: f64) -> Self {
        match by.part {
            Some(part) => self.say_if(elsewhere(part)),
            None => self.further_out(scene, toward, missing),
        }
    }
}

/// Whether a part keeps its place beside board and back whatever the case and its neighbours do. Hardware, drives and
/// what hangs on panels find places of their own, unless the maker gave them one.
pub(super) fn stands_fast(scene: &Scene, part: &Part) -> bool {
    let spec = scene.case.spec;
    match part.kind {
        PartKind::Board
        | PartKind::Memory
        | PartKind::Cooler
        | PartKind::Card
        | PartKind::CardBracket
        | PartKind::Shelf
        | PartKind::Standoff => true,
        // Nothing but the board and what stands on it decides where, once its pose is chosen.
        PartKind::Supply => spec.supply.pose != SupplyPose::Auto,
        PartKind::Drive => spec.drives.iter().any(|drive| {
            part.id == format!("drive-{}", drive.number) && drive.across_mm.is_some() && drive.along_mm.is_some()
        }),
        PartKind::Fan => spec
            .fans
            .iter()
            .any(|fan| part.id == format!("fan-{}", fan.number) && fan.across_mm.is_some() && fan.up_mm.is_some()),
        _ => false,
    }
}

/// A larger case along an axis, without a number.
pub(super) const fn larger(axis: usize) -> &'static str {
    match axis {
        0 => "give a larger outside width",
        1 => "give a larger outside depth",
        _ => "give a larger outside height",
    }
}

/// Whether all panels of a case of some outside size lie within a paper.
fn fits(scene: &Scene, paper: crate::design::PaperName, outside: [f64; 3]) -> bool {
    paper_caps(scene.case.spec, paper).iter().any(|caps| (0..3).all(|axis| outside[axis] <= caps[axis] + SAME_MM))
}

/// What the maker can do about a part in the way, by the choices there are; `None` where there is none.
pub(super) fn elsewhere(part: &Part) -> Option<String> {
    let name = words::part(part);
    Some(match part.kind {
        PartKind::Fan => format!("move {name} on its panel or to another one"),
        PartKind::Drive => format!("lay {name} elsewhere"),
        PartKind::Supply => "stand the supply elsewhere".to_owned(),
        PartKind::Button => format!("move {name}"),
        PartKind::Port => "move the connectors".to_owned(),
        PartKind::Memory => "take lower memory".to_owned(),
        PartKind::Cooler => "take a smaller cooler".to_owned(),
        PartKind::Card => "take a smaller card".to_owned(),
        PartKind::Bracket => "take smaller brackets".to_owned(),
        PartKind::CaptiveNut => "take a smaller captive-nut bracket".to_owned(),
        PartKind::Block => "take thinner locating blocks".to_owned(),
        PartKind::Foot => "move the feet".to_owned(),
        PartKind::Shelf => "hold the card's tab by a tie".to_owned(),
        PartKind::Board | PartKind::CardBracket | PartKind::Standoff | PartKind::Washer | PartKind::Jack => {
            return None;
        }
    })
}
