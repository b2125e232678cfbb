//! Panels, names and saw cuts on the sheets of the default case.

use super::*;
use crate::design::Design;
use crate::drawing::Anchor;
use crate::stock::{Grain, Method, Piece, Rules, Sheet, solve};

fn laid(method: Method) -> (Build, Job, Plan) {
    let build = Build::of(&Design::default());
    let piece = |panel: &Panel| Piece {
        label: panel.label.to_owned(),
        width: panel.size_mm[0],
        height: panel.size_mm[1],
        count: 1,
        may_turn: true,
        grain: Grain::None,
        openings: Vec::new(),
    };
    let sheet = Sheet {
        label: "Sheet".to_owned(),
        width: 1220.0,
        height: 610.0,
        count: None,
        grain: Grain::None,
        offcut: false,
        price: None,
    };
    let job = Job {
        pieces: build.panels.iter().map(piece).collect(),
        sheets: vec![sheet],
        rules: Rules { trim: 5.0, gap: 3.0, method },
    };
    let plan = solve(&job, 100_000, &mut |_| true).unwrap();
    (build, job, plan)
}

/// What is cut lies where the plan has put it, to the micrometre.
#[test]
fn panels_are_cut_where_the_plan_places_them() {
    let (build, job, plan) = laid(Method::Free);
    for (index, sheet) in plan.sheets.iter().enumerate() {
        let cut = cut_sheet(&build, &job, &plan, index).pop().unwrap();
        assert_eq!(cut.panels.len(), sheet.placed.len());
        for (panel, placed) in cut.panels.iter().zip(&sheet.placed) {
            let outline = panel.layers.iter().flat_map(|layer| &layer.cuts).find(|cut| cut.of == "outline").unwrap();
            let bounds = outline.contour.bbox();
            let rect = placed.rect;
            for (is, wanted) in [
                (bounds.x0, rect.x),
                (bounds.y0, rect.y),
                (bounds.x1, rect.x + rect.width),
                (bounds.y1, rect.y + rect.height),
            ] {
                assert!((is - wanted).abs() < 1e-3, "{bounds:?} {rect:?}");
            }
        }
        assert!(sheet_picture(&build, &job, &plan, index).is_some());
    }
    assert!(sheet_picture(&build, &job, &plan, plan.sheets.len()).is_none());
}

/// Where words of a picture stand, about.
fn stands(text: &Text) -> Rect {
    let (width, height) = (text_width_mm(&text.text, text.size_mm, Weight::Regular), text.size_mm * 0.7);
    let level = match text.anchor {
        Anchor::Middle => Rect::new(-width / 2.0, 0.0, width / 2.0, height),
        _ => Rect::new(0.0, 0.0, width, height),
    };
    let turned = Rect::new(-level.y1, level.x0, -level.y0, level.x1);
    (if text.quarter_turns % 2 == 1 { turned } else { level }) + text.at.to_vec2()
}

fn texts<'a>(items: impl Iterator<Item = &'a Item>) -> Vec<&'a Text> {
    let mut found = Vec::new();
    for item in items {
        match item {
            Item::Text(text) => found.push(text),
            Item::Group(group) => found.extend(texts(group.items.iter())),
            Item::Shape(_) => {}
        }
    }
    found
}

/// The back of the default case is little more than its openings: its name stands beside it, as large as the others.
#[test]
fn every_name_is_large_enough_to_be_read_and_clear_of_every_other_panel() {
    for method in [Method::Guillotine, Method::Free] {
        let (build, job, plan) = laid(method);
        for (index, sheet) in plan.sheets.iter().enumerate() {
            let picture = sheet_picture(&build, &job, &plan, index).unwrap();
            let panels = picture.layers.iter().find(|layer| layer.name == "panels").unwrap();
            let names = texts(panels.items.iter());
            assert_eq!(names.len(), sheet.placed.len());
            let by = Vec2::splat(job.sheets[0].width * MARGIN_SHARE);
            for name in names {
                // 11 pixels where the picture is 550 wide.
                assert!(name.size_mm >= picture.width_mm * 11.0 / 550.0 * 0.98, "{}: {}", name.text, name.size_mm);
                let others = sheet.placed.iter().filter(|placed| build.panels[placed.piece].label != name.text);
                for placed in others {
                    let Placed { rect, .. } = placed;
                    let area = Rect::new(rect.x, rect.y, rect.x + rect.width, rect.y + rect.height) + by;
                    assert!(!area.overlaps(stands(name)), "{} on {}", name.text, placed.piece);
                }
            }
        }
    }
}

#[test]
fn no_number_covers_another_and_no_name_an_opening() {
    let (build, job, plan) = laid(Method::Guillotine);
    let mut looked_at = 0;
    for (index, sheet) in plan.sheets.iter().enumerate() {
        let picture = sheet_picture(&build, &job, &plan, index).unwrap();
        let layer = |name: &str| picture.layers.iter().find(|layer| layer.name == name).unwrap();
        let numbers = texts(layer("cuts").items.iter());
        let names = texts(layer("panels").items.iter());
        assert_eq!(numbers.len(), sheet.cuts.len());
        for (place, number) in numbers.iter().enumerate() {
            let clear = |other: &&Text| !stands(other).overlaps(stands(number));
            let others = numbers[..place].iter().chain(&names);
            assert!(others.clone().all(clear), "{} stands on another", number.text);
        }
        let margin = job.sheets[0].width * MARGIN_SHARE;
        for name in names {
            let of = |placed: &&Placed| build.panels[placed.piece].label == name.text;
            let placed = sheet.placed.iter().find(of).unwrap();
            let panel = &build.panels[placed.piece];
            let place = |feature: &crate::panels::Feature| {
                on_sheet(&feature.contour, panel, false, placed, Vec2::splat(margin)).bbox()
            };
            let through = panel.features.iter().filter(|feature| feature.blind.is_none());
            assert!(through.map(place).all(|hole| !hole.overlaps(stands(name))), "{}", name.text);
            looked_at += 1;
        }
    }
    assert_eq!(looked_at, 6);
}

/// A lasered case with one routed panel: the cutter, wider than a laser's gap, leaves its neighbours whole.
#[test]
fn a_panel_made_another_way_is_cut_out_without_harm_to_its_neighbours() {
    let mut design = Design::default();
    let choices = [
        ("method", "laser".into()),
        ("method.left", "router".into()),
        ("router.cutter", 6.into()),
        ("router.compensated", true.into()),
        ("size.rule", "smallest".into()),
    ];
    for (key, value) in choices {
        let value: serde_json::Value = value;
        design.set_json(key, &value).unwrap();
    }
    let build = Build::of(&design);
    let job = crate::documents::lists::job(&build);
    let plan = solve(&job, 200_000, &mut |_| true).unwrap();
    for (index, sheet) in plan.sheets.iter().enumerate() {
        let cut = cut_sheet(&build, &job, &plan, index).pop().unwrap();
        for (place, panel) in cut.panels.iter().enumerate().filter(|(_, panel)| panel.id == "left") {
            let outline = panel.cuts().find(|(_, cut)| cut.of == "outline").unwrap().1;
            let swept = outline.contour.bbox().inflate(3.0, 3.0);
            for (other, placed) in sheet.placed.iter().enumerate().filter(|(other, _)| *other != place) {
                let rect = placed.rect;
                let whole = Rect::new(rect.x, rect.y, rect.x + rect.width, rect.y + rect.height);
                assert!(!whole.overlaps(swept), "the cutter goes into the {}", cut.panels[other].label);
            }
        }
        // And each rule is said of the panel that is cut by it.
        let marks = crate::cutting::FileMarks::of("ABCD2345");
        let file = crate::cutting::cut_sheet_to_dxf(&cut, marks);
        assert!(file.contains("Left panel: compensated for a cutter of 6 mm"));
        assert!(file.contains("Top: compensated for a cut "));
        // What is not cut has a colour of its own: a laser's program takes black lines for cuts.
        let file = crate::cutting::cut_sheet_to_svg(&cut, marks, crate::cutting::SvgLines::Hairline);
        for (layer, colour) in [("sheet", "#808080"), ("tabs-1.5mm", "#808080"), ("outline", "#000000")] {
            let group = file.split(&format!("<g id=\"{layer}\">")).nth(1).unwrap();
            let stroke = group.split("stroke=\"").nth(1).unwrap();
            assert!(stroke.starts_with(colour), "{layer}: {stroke:.20}");
        }
    }
}

#[test]
fn every_saw_cut_is_said_in_words() {
    let (build, job, plan) = laid(Method::Guillotine);
    let cuts = &plan.sheets[0].cuts;
    assert!(!cuts.is_empty());
    let said: Vec<String> = cuts.iter().map(|cut| saw_cut(&job, &plan, 0, cut)).collect();
    for panel in &plan.sheets[0].placed {
        let label = build.panels[panel.piece].label;
        assert!(said.iter().any(|line| line.contains(label)), "{label} {said:#?}");
    }
}
