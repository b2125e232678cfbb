//! The case picture of whole designs: what is in it, where notes point, what the switches do.

use kurbo::Point;

use super::{CaseView, case_picture};
use crate::Build;
use crate::design::{Design, Wall};
use crate::drawing::{Colour, Drawing, Group, Item, Shape};
use crate::fit::Finding;
use crate::sample;

fn groups(drawing: &Drawing) -> impl Iterator<Item = &Group> {
    drawing.layers.iter().flat_map(|layer| &layer.items).filter_map(|item| match item {
        Item::Group(group) => Some(group),
        _ => None,
    })
}

fn shapes(group: &Group) -> impl Iterator<Item = &Shape> {
    group.items.iter().filter_map(|item| match item {
        Item::Shape(shape) => Some(shape),
        _ => None,
    })
}

fn shows(drawing: &Drawing, id: &str) -> bool {
    groups(drawing).any(|group| group.about == id)
}

fn on_paper(drawing: &Drawing, at: Point) -> bool {
    (0.0..=drawing.width_mm).contains(&at.x) && (0.0..=drawing.height_mm).contains(&at.y)
}

fn whole_case() -> CaseView {
    CaseView { off: vec![Wall::Left, Wall::Right, Wall::Front, Wall::Top], ..CaseView::default() }
}

#[test]
fn every_part_and_panel_is_drawn_and_can_be_pointed_at_from_every_quarter() {
    let build = Build::of(&Design::default());
    for turn in 0..4 {
        for apart in [0.0, 0.4, 1.0] {
            let picture = case_picture(&build, &CaseView { apart, see_through: true, ..CaseView::quarter(turn) });
            let ids =
                build.parts.iter().map(|part| part.id.as_str()).chain(build.panels.iter().map(|panel| panel.id()));
            for id in ids {
                assert!(shows(&picture.drawing, id), "{id} is not drawn");
                let at = picture.anchor(id).unwrap_or_else(|| panic!("{id} has no anchor"));
                assert!(on_paper(&picture.drawing, at), "{id} at {at:?}");
            }
            for group in groups(&picture.drawing) {
                for shape in shapes(group) {
                    let crate::drawing::Form::Path(path) = &shape.form else { panic!() };
                    let bounds = kurbo::Shape::bounding_box(path);
                    for corner in [bounds.origin(), Point::new(bounds.x1, bounds.y1)] {
                        assert!(on_paper(&picture.drawing, corner), "{:?} at {corner:?}", group.about);
                    }
                }
            }
        }
    }
}

#[test]
fn a_panel_taken_off_is_not_drawn_and_the_rest_stays_where_it_was() {
    let build = Build::of(&Design::default());
    let closed = case_picture(&build, &CaseView::default());
    let open = case_picture(&build, &whole_case());
    assert_eq!((closed.drawing.width_mm, closed.drawing.height_mm), (open.drawing.width_mm, open.drawing.height_mm));
    assert_eq!(closed.anchor("board"), open.anchor("board"));
    assert!(shows(&closed.drawing, "front") && !shows(&open.drawing, "front") && open.anchor("front").is_none());
    // The button hangs on the front and goes with it; board and feet stay.
    assert!(shows(&closed.drawing, "button") && !shows(&open.drawing, "button"));
    assert!(shows(&open.drawing, "board") && shows(&open.drawing, "foot-1"));
}

#[test]
fn only_the_sleeve_lets_one_see_through() {
    let build = Build::of(&Design::default());
    let picture = case_picture(&build, &CaseView { see_through: true, ..CaseView::default() });
    for group in groups(&picture.drawing) {
        let id = group.about.as_str();
        let sleeve = matches!(id, "left" | "right" | "front" | "top");
        for shape in shapes(group).filter(|shape| shape.style.fill.is_some()) {
            let sheet = matches!(shape.style.fill, Some(Colour::Sheet | Colour::SheetEdge));
            assert_eq!(shape.style.fill_opacity.is_some(), sleeve && sheet, "{id}");
        }
    }
}

#[test]
fn a_note_points_at_its_place_and_moves_with_its_panel() {
    let build = Build::of(&Design::default());
    let finding = |about: &str, at| Finding {
        rule: "test",
        severity: crate::fit::Severity::Note,
        text: String::new(),
        remedy: String::new(),
        mends: Vec::new(),
        measured: None,
        needed: None,
        unit: "",
        about: vec![about.to_owned()],
        at,
        source: crate::dimensions::source::Source::common_practice("test", "test"),
    };
    let top = build.panel(Wall::Top).unwrap();
    let corner = top.frame.to_case(Point::ZERO, 0.0);
    let closed = case_picture(&build, &CaseView::default());
    assert_eq!(closed.place_of(&finding("top", Some(corner))), Some(closed.at(corner)));
    assert_eq!(closed.place_of(&finding("board", None)), closed.anchor("board"));
    assert_eq!(closed.place_of(&finding("back/io-aperture", None)), closed.anchor("back"));
    assert_eq!(closed.place_of(&finding("nothing", None)), None);
    let apart = case_picture(&build, &CaseView { apart: 1.0, ..CaseView::default() });
    let (there, still) = (apart.place_of(&finding("top", Some(corner))).unwrap(), apart.at(corner));
    // The top goes up: along its normal and along the slide.
    assert!(there.y > still.y + 50.0 && (there.x - still.x).abs() < 1e-9);
}

/// Any design, any angle, angles that are no numbers: a picture of finite size, the same every time.
#[test]
fn any_design_can_be_drawn_from_anywhere() {
    let mut random = sample::Random::new(7);
    for seed in 0..40 {
        let build = Build::of(&sample::design(seed, seed % 2 == 0));
        let angle = |random: &mut sample::Random| match random.below(10) {
            0 => f64::NAN,
            1 => f64::INFINITY,
            2 => 90.0,
            _ => random.hundredths(-400.0, 400.0),
        };
        let view = CaseView {
            azimuth_deg: angle(&mut random),
            elevation_deg: angle(&mut random),
            off: [Wall::Top, Wall::Left, Wall::Floor].into_iter().filter(|_| random.chance(30)).collect(),
            see_through: random.chance(50),
            apart: angle(&mut random) / 100.0,
        };
        let picture = case_picture(&build, &view);
        assert!(picture.drawing.width_mm.is_finite() && picture.drawing.width_mm > 0.0, "{seed} {view:?}");
        assert!(picture.anchors.iter().all(|(_, at)| at.x.is_finite() && at.y.is_finite()), "{seed} {view:?}");
        assert!(groups(&picture.drawing).count() > 3);
    }
}
