//! What a laser engraves: the panel's name, which way is up, and the hole key's letter beside each hole; on the inside
//! face, where it does not show.
//!
//! Letters keep clear of everything that is cut and of each other. A letter without room is left out: the templates
//! have the whole key.

use kurbo::{Point, Rect, Size, Vec2};

use super::panel::{CutLayer, LayerUse, layer};
use super::strokes::{strokes, strokes_width_mm};
use crate::design::Wall;
use crate::panels::{Face, Feature, FeatureKind, Panel};
use crate::sorting::sort_by;

/// Layer of letters.
pub const LETTERING: &str = "lettering";

/// Heights of the name's letters, mm: the largest that has room (common practice).
const NAME_MM: [f64; 6] = [10.0, 8.0, 6.0, 5.0, 4.0, 3.0];

/// Height of a hole's letter, mm: the smallest that a single stroke of a beam leaves legible (common practice).
const KEY_MM: f64 = 2.5;

/// From letters to the nearest cut, mm: scorched edges stay legible beside it (common practice).
const CLEAR_MM: f64 = 1.5;

/// From line to line, as a share of the letters' height (common practice).
const LINE_SHARE: f64 = 1.6;

/// Steps of the search for the name's place, mm: less than the letters are high that are tried first.
const STEP_MM: f64 = 4.0;

/// The letters of a panel, in the panel's own frame seen from outside, where they are mirror writing.
#[must_use]
pub fn lettering(panel: &Panel) -> CutLayer {
    let mut letters = Letters::on(panel);
    letters.name(&[panel.label.to_owned(), format!("^ {}", upward(panel.wall))]);
    for (feature, key) in lettered(panel) {
        letters.beside(feature.contour.bbox(), key);
    }
    let mut found = layer(LETTERING.to_owned(), LayerUse::Engrave, 0.0, false, Face::Inside);
    found.lines = letters.lines;
    found
}

/// The holes that get their letter: a field of vents needs none.
fn lettered(panel: &Panel) -> impl Iterator<Item = (&Feature, &str)> {
    let holes = panel.features.iter().filter(|feature| feature.kind != FeatureKind::Vent);
    holes.filter_map(|feature| Some((feature, feature.key.as_deref()?)))
}

/// What the upper edge of a panel's frame points to.
const fn upward(wall: Wall) -> &'static str {
    match wall {
        Wall::Floor | Wall::Top => "back",
        _ => "up",
    }
}

struct Letters {
    width_mm: f64,
    /// Where the sheet is whole.
    free: Rect,
    /// What is cut away, and letters placed before, each with room around.
    taken: Vec<Rect>,
    lines: Vec<Vec<Point>>,
}

impl Letters {
    fn on(panel: &Panel) -> Self {
        let cuts = panel.features.iter().map(|feature| feature.contour.bbox());
        let taken = cuts.chain(panel.joint_gaps.iter().copied()).map(|area| area.inset(CLEAR_MM)).collect();
        Self { width_mm: panel.size_mm[0], free: panel.sound().inset(-CLEAR_MM), taken, lines: Vec::new() }
    }

    fn has_room(&self, area: Rect) -> bool {
        let meets = |other: &Rect| area.x0 < other.x1 && other.x0 < area.x1 && area.y0 < other.y1 && other.y0 < area.y1;
        let free = self.free;
        free.x0 <= area.x0
            && area.x1 <= free.x1
            && free.y0 <= area.y0
            && area.y1 <= free.y1
            && !self.taken.iter().any(meets)
    }

    /// Writes a text into an area of the panel's frame so that it reads as seen from inside.
    fn write(&mut self, text: &str, area: Rect, height_mm: f64) {
        let over = |at: Point| Point::new(self.width_mm - at.x, at.y);
        let start = Point::new(self.width_mm - area.x1, area.y0);
        let lines = strokes(text, start, height_mm);
        self.lines.extend(lines.into_iter().map(|line| line.into_iter().map(over).collect::<Vec<_>>()));
    }

    /// Writes lines below each other as near to the middle as there is room, as large as there is room.
    fn name(&mut self, texts: &[String]) {
        for height in NAME_MM {
            let wide = texts.iter().map(|text| strokes_width_mm(text, height)).fold(0.0, f64::max);
            let high = height * (1.0 + LINE_SHARE * (texts.len().max(1) - 1) as f64);
            if let Some(area) = self.place(Size::new(wide, high)) {
                for (index, text) in texts.iter().enumerate() {
                    let y = area.y1 - height * (1.0 + LINE_SHARE * index as f64);
                    // The right end in the panel's frame is where reading starts.
                    let line = Rect::new(area.x1 - strokes_width_mm(text, height), y, area.x1, y + height);
                    self.write(text, line, height);
                }
                self.taken.push(area.inset(CLEAR_MM));
                return;
            }
        }
    }

    /// The place of a rectangle nearest to the middle of the sheet.
    fn place(&self, size: Size) -> Option<Rect> {
        let middle = self.free.center();
        let reach = Vec2::new((self.free.width() - size.width) / 2.0, (self.free.height() - size.height) / 2.0);
        if reach.x < 0.0 || reach.y < 0.0 {
            return None;
        }
        let steps = |reach: f64| f64::floor(reach / STEP_MM) as i32;
        let mut at: Vec<Vec2> = Vec::new();
        for x in -steps(reach.x)..=steps(reach.x) {
            for y in -steps(reach.y)..=steps(reach.y) {
                at.push(Vec2::new(f64::from(x), f64::from(y)) * STEP_MM);
            }
        }
        sort_by(&mut at, |a, b| a.hypot2().total_cmp(&b.hypot2()));
        at.into_iter().map(|off| Rect::from_center_size(middle + off, size)).find(|area| self.has_room(*area))
    }

    /// Writes a hole's letter beside it: to its right or left, above or below.
    fn beside(&mut self, hole: Rect, key: &str) {
        let size = Size::new(strokes_width_mm(key, KEY_MM), KEY_MM);
        let out =
            Vec2::new((hole.width() + size.width) / 2.0 + CLEAR_MM, (hole.height() + size.height) / 2.0 + CLEAR_MM);
        let ways =
            [(-1.0, 0.0), (1.0, 0.0), (0.0, 1.0), (0.0, -1.0), (-1.0, 1.0), (1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)];
        let areas = ways.map(|(x, y)| Rect::from_center_size(hole.center() + Vec2::new(x * out.x, y * out.y), size));
        if let Some(area) = areas.into_iter().find(|area| self.has_room(*area)) {
            self.write(key, area, KEY_MM);
            self.taken.push(area.inset(CLEAR_MM));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Build, sample};

    #[test]
    fn letters_lie_in_whole_sheet_clear_of_every_cut() {
        let (mut panels, mut keyed, mut placed) = (0, 0, 0);
        for seed in 0..60 {
            let build = Build::of(&sample::design(seed, seed % 2 == 0));
            for panel in &build.panels {
                let found = lettering(panel);
                panels += usize::from(!found.lines.is_empty());
                keyed += lettered(panel).count();
                let mut free = Letters::on(panel);
                free.name(&[panel.label.to_owned(), format!("^ {}", upward(panel.wall))]);
                for (feature, key) in lettered(panel) {
                    let before = free.lines.len();
                    free.beside(feature.contour.bbox(), key);
                    placed += usize::from(free.lines.len() > before);
                }
                for at in found.lines.iter().flatten() {
                    assert!(panel.outline.contains(*at), "{seed} {} {at:?}", panel.id());
                    assert!(panel.outline.distance_to_point(*at) > CLEAR_MM - 1e-6, "{seed} {} {at:?}", panel.id());
                    for feature in &panel.features {
                        let contour = &feature.contour;
                        assert!(!contour.contains(*at), "{seed} {} {}", panel.id(), feature.id);
                        assert!(
                            contour.distance_to_point(*at) > CLEAR_MM - 1e-6,
                            "{seed} {} {}",
                            panel.id(),
                            feature.id
                        );
                    }
                }
            }
        }
        // Nearly every panel has room for its name, and most holes for their letter.
        assert!(panels > 340, "{panels} of 360");
        assert!(placed * 10 > keyed * 7, "{placed} of {keyed}");
    }

    #[test]
    fn it_reads_from_inside() {
        let build = Build::of(&crate::design::Design::default());
        let mut panel = build.panels[2].clone();
        panel.features.clear();
        let found = lettering(&panel);
        // The first letter, L, has its upright at the left as seen from inside: at the right in the panel's frame.
        let first = &found.lines[0];
        assert_eq!(panel.label.chars().next(), Some('L'));
        assert!(first[0].x > first[2].x && first[0].y > first[1].y);
    }
}
