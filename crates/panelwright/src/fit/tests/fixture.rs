//! A case to try the rules on: parts placed by the tool itself, panels with the few features the rules look at.
//!
//! Every field may be changed afterwards, so that one length at a time can be pushed past its limit.

use kurbo::Point;

use crate::arrangement::{Arrangement, arrange};
use crate::design::{Design, Spec, Wall};
use crate::dimensions::source::Source;
use crate::drawing::Contour;
use crate::fastening::Screw;
use crate::fit::scene::{face, outward};
use crate::fit::{Case, Finding, check};
use crate::panels::words;
use crate::panels::{Assembly, Feature, FeatureKind, Panel, Purpose, Unplaced, VentLeftOut};
use crate::parts::{Part, PartKind};
use crate::solid::Aabb;

pub(super) const SOURCE: Source = Source::common_practice("Test", "made up");

pub(super) struct Fixture {
    pub spec: Spec,
    pub arrangement: Arrangement,
    pub panels: Vec<Panel>,
    pub screws: Vec<Screw>,
    pub parts: Vec<Part>,
    pub unplaced: Vec<Unplaced>,
    pub left_out: Vec<VentLeftOut>,
}

impl Fixture {
    /// The default design with some choices changed.
    pub fn new(choices: &[(&str, serde_json::Value)]) -> Self {
        let mut design = Design::default();
        for (key, value) in choices {
            design.set_json(key, value).unwrap();
        }
        Self::of(Spec::of(&design))
    }

    pub fn of(spec: Spec) -> Self {
        let arrangement = arrange(&spec);
        let panels = Wall::ALL
            .iter()
            .map(|wall| {
                let (size_mm, frame) = arrangement.case.panel(*wall);
                let chassis = matches!(wall, Wall::Floor | Wall::Back);
                Panel {
                    wall: *wall,
                    label: words::label(*wall),
                    assembly: if chassis { Assembly::Chassis } else { Assembly::Sleeve },
                    thickness_mm: arrangement.case.thickness_mm,
                    size_mm,
                    frame,
                    outline: Contour::rect(0.0, 0.0, size_mm[0], size_mm[1]),
                    edges: Vec::new(),
                    joint_gaps: Vec::new(),
                    features: Vec::new(),
                }
            })
            .collect();
        let parts = arrangement.parts.clone();
        let mut fixture =
            Self { spec, arrangement, panels, screws: Vec::new(), parts, unplaced: Vec::new(), left_out: Vec::new() };
        fixture.cut_openings();
        fixture
    }

    /// The openings that the parts of the default design need.
    fn cut_openings(&mut self) {
        self.cut_window(None);
        let place = self.arrangement.board;
        let low = self.flat(Wall::Back, place.to_case([166.27, -12.27, -2.24]));
        let high = self.flat(Wall::Back, place.to_case([7.52, -12.27, 42.21]));
        let aperture = Contour::rounded_rect(low.x, low.y, high.x, high.y, 0.99);
        self.feature(Wall::Back, "io-aperture", FeatureKind::Opening, Purpose::IoAperture, aperture);
        for fan in self.arrangement.fans.clone() {
            let centre = fan.at.centre;
            let id = format!("fan-{}-opening", fan.number);
            let opening = Contour::circle(centre.x, centre.y, fan.size_mm / 2.0 - 3.0);
            self.feature(fan.at.wall, &id, FeatureKind::Opening, Purpose::FanOpening, opening);
        }
        if let Some(button) = self.arrangement.button {
            let size = self.spec.button.as_ref().map_or(16.0, |button| button.size_mm);
            let hole = self.hole(button.wall, "button", Purpose::Button, button.centre, size);
            hole.about = vec!["button".into()];
            let feature = self.hole(button.wall, "button-counterbore", Purpose::ButtonCounterbore, button.centre, 26.0);
            feature.kind = FeatureKind::Counterbore;
            feature.about = vec!["button".into()];
            feature.blind = Some((3.0, crate::panels::Face::Inside));
        }
    }

    /// The card window: wide enough for plugs, wider from the shelf up for the tab, run out to the top edge or closed
    /// so far above the tab.
    pub fn cut_window(&mut self, headroom: Option<f64>) {
        self.panel(Wall::Back).features.retain(|feature| feature.id != "card-window");
        let Some(card) = self.arrangement.card else { return };
        let place = self.arrangement.board;
        let last = f64::from(card.slot + card.slots - 1);
        // Datum V lies half a card, 0.785, left of the slot; the least opening reaches from V - 13.00 to V + 0.25.
        let plug = |slot: f64| 1.57 - 20.32 * slot - 0.785 - 6.375;
        let [w, h] = self.panel(Wall::Back).size_mm;
        let mut at = |x, z| self.flat(Wall::Back, place.to_case([x, -12.27, z]));
        let (low, high) = (at(plug(f64::from(card.slot)) + 10.0, 4.30), at(plug(last) - 10.0, 105.01));
        let (tab, tab_end) = (at(7.3, 110.69), at(plug(last) - 7.3, 110.69));
        let (x0, x1) = (tab.x.min(low.x), tab_end.x.max(high.x));
        let top = headroom.map_or(h, |room| tab.y + room);
        let steps = [
            Point::new(low.x, low.y),
            Point::new(high.x, low.y),
            high,
            Point::new(x1, high.y),
            Point::new(x1, top),
            Point::new(x0, top),
            Point::new(x0, high.y),
            Point::new(low.x, high.y),
        ];
        let window = Contour::polygon(steps);
        let notch = headroom.is_none();
        self.feature(Wall::Back, "card-window", FeatureKind::Opening, Purpose::CardWindow, window).notch = notch;
        let mut outline = vec![Point::ZERO, Point::new(w, 0.0), Point::new(w, h)];
        if notch {
            outline.extend([4, 3, 2, 1, 0, 7, 6, 5].map(|index: usize| steps[index]));
        }
        outline.push(Point::new(0.0, h));
        self.panel(Wall::Back).outline = Contour::polygon(outline);
    }

    pub fn case(&self) -> Case<'_> {
        Case {
            spec: &self.spec,
            arrangement: &self.arrangement,
            panels: &self.panels,
            screws: &self.screws,
            parts: &self.parts,
            unplaced: &self.unplaced,
            left_out: &self.left_out,
        }
    }

    pub fn check(&self) -> Vec<Finding> {
        check(&self.case())
    }

    pub fn panel(&mut self, wall: Wall) -> &mut Panel {
        self.panels.iter_mut().find(|panel| panel.wall == wall).unwrap()
    }

    /// A point of the case on a panel.
    pub fn flat(&mut self, wall: Wall, point: [f64; 3]) -> Point {
        self.panel(wall).frame.to_panel(point).0
    }

    /// Position of a panel's inside face along its axis.
    pub fn inside(&mut self, wall: Wall) -> f64 {
        let panel = self.panel(wall);
        let at = panel.frame.to_case(Point::ZERO, -panel.thickness_mm);
        at[panel.frame.normal_axis()]
    }

    /// Cuts a feature into a panel.
    pub fn feature(
        &mut self,
        wall: Wall,
        id: &str,
        kind: FeatureKind,
        purpose: Purpose,
        contour: Contour,
    ) -> &mut Feature {
        let centre = contour.bbox().center();
        let panel = self.panel(wall);
        panel.features.push(Feature {
            id: id.to_owned(),
            kind,
            purpose,
            blind: None,
            contour,
            centre,
            diameter_mm: None,
            key: None,
            notch: false,
            why: "Made up.".to_owned(),
            about: vec![id.to_owned()],
            source: SOURCE,
        });
        panel.features.last_mut().unwrap()
    }

    /// Drills a hole.
    pub fn hole(&mut self, wall: Wall, id: &str, purpose: Purpose, centre: Point, diameter: f64) -> &mut Feature {
        let contour = Contour::circle(centre.x, centre.y, diameter / 2.0);
        let feature = self.feature(wall, id, FeatureKind::Hole, purpose, contour);
        feature.diameter_mm = Some(diameter);
        feature.centre = centre;
        feature
    }

    pub fn part(&mut self, id: &str) -> &mut Part {
        self.parts.iter_mut().find(|part| part.id == id).unwrap_or_else(|| panic!("no part {id}"))
    }

    /// Puts one more part into the case.
    pub fn add(&mut self, id: &str, kind: PartKind, bodies: Vec<Aabb>) -> &mut Part {
        self.parts.push(Part {
            id: id.to_owned(),
            kind,
            label: id.to_owned(),
            carrier: crate::parts::Carrier::Chassis,
            bodies,
            keep_clear: Vec::new(),
        });
        self.parts.last_mut().unwrap()
    }

    /// Adds a box of 4 mm before a part's bounds (or another box), `distance` away towards a wall, as a part of its own.
    pub fn block(&mut self, section: Aabb, toward: Wall, distance: f64) -> &mut Part {
        let (axis, sense) = outward(toward);
        let mut solid = section;
        let from = face(&section, axis, sense) + distance * sense;
        solid.min[axis] = from.min(from + 4.0 * sense);
        solid.max[axis] = from.max(from + 4.0 * sense);
        self.add("obstacle", PartKind::Drive, vec![solid])
    }

    /// A screw without limits from a point along an axis.
    pub fn screw(
        &mut self,
        id: &str,
        head_at: [f64; 3],
        direction: [f64; 3],
        length: f64,
        joins: &[&str],
    ) -> &mut Screw {
        self.screws.push(Screw {
            id: id.to_owned(),
            what: format!("Screw {id}"),
            thread: "M3",
            diameter_mm: 3.0,
            head_at,
            direction,
            clamped_mm: 1.0,
            least_mm: 1.0,
            most_mm: None,
            length_mm: Some(length),
            nut: false,
            washers: 0,
            joins: joins.iter().map(|id| (*id).to_owned()).collect(),
            source: SOURCE,
        });
        self.screws.last_mut().unwrap()
    }

    /// A bracket that found no place.
    pub fn unplaced(&mut self, id: &str, walls: [Wall; 2]) {
        self.unplaced.push(Unplaced { id: id.to_owned(), walls });
    }

    /// Takes a part out.
    pub fn remove(&mut self, id: &str) {
        self.parts.retain(|part| part.id != id);
    }
}
