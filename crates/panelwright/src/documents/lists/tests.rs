//! Lists of invented designs: nothing is lost between bags, shopping list and `build.json`; sums add up.

use super::*;
use crate::design::Design;
use crate::documents::sheets::lay;
use crate::sample;

fn designs() -> Vec<Design> {
    (0..120).map(|seed| sample::design(seed, seed % 3 == 0)).collect()
}

#[test]
fn bags_hold_exactly_the_fasteners_of_the_case() {
    for design in designs() {
        let build = Build::of(&design);
        let bags = bags(&build);
        let small = || bags.iter().filter(|bag| bag.label != bags::PANELS).flat_map(|bag| &bag.lines);
        for line in &build.fasteners {
            let same = small().filter(|other| other.what == line.what && other.length_mm == line.length_mm);
            assert_eq!(same.map(|other| other.count).sum::<usize>(), line.count, "{line:?}");
        }
        let all: usize = small().map(|line| line.count).sum();
        assert_eq!(all, build.fasteners.iter().map(|line| line.count).sum::<usize>());
        // Letters run on: a missing one would be looked for.
        assert!(bags.iter().map(|bag| bag.letter).eq(('A'..='Z').take(bags.len())));
        // Nothing of the sleeve is needed before the chassis is full.
        let order: Vec<&str> = bags.iter().map(|bag| bag.label).collect();
        assert_eq!(order.last(), Some(&"Panels"));
    }
}

#[test]
fn a_sheet_is_joined_by_its_own_glue() {
    for (material, wanted) in
        [("plywood", "Wood glue"), ("acrylic", "Acrylic cement"), ("other", "Glue for this sheet")]
    {
        let mut design = Design::default();
        design.set_json("sleeve.join", &"glue".into()).unwrap();
        design.set_json("sheet.material", &material.into()).unwrap();
        let list = shopping(&Build::of(&design), None);
        let glue: Vec<&str> =
            list.lines.iter().filter(|line| line.group == "Glue").map(|line| line.what.as_str()).collect();
        assert_eq!(glue, [wanted], "{material}");
    }
}

/// Below a low board a block is glued in where no bracket finds a place, in a case that is screwed otherwise.
#[test]
fn a_block_that_stands_in_for_a_bracket_is_glued_too() {
    let design = crate::design::read_file(
        r#"{"size.rule":"smallest","board.form":"microatx","card.kind":"none","drive1.kind":"none",
        "feet.kind":"none","supply.kind":"brick","supply.jack_hole":8,"board.standoff":15}"#,
    );
    let build = Build::of(&design.unwrap());
    let blocks = build.parts.iter().filter(|part| part.kind == crate::parts::PartKind::Block).count();
    let need = glue(&build);
    assert_eq!((need.seams, need.blocks), (0, 2));
    assert_eq!(blocks, 2);
    let list = shopping(&build, None);
    let line = list.lines.iter().find(|line| line.group == "Glue").expect("a line for the glue");
    let cut: Vec<(&str, Option<f64>)> = build
        .fasteners
        .iter()
        .filter(|line| line.what.starts_with("Locating"))
        .map(|line| (line.what.as_str(), line.length_mm))
        .collect();
    assert_eq!(cut, [("Locating block 12 × 12", Some(25.0)), ("Locating block 12 × 12", Some(60.0))]);
    // Two faces of each.
    assert_eq!(need.area_mm2, 2.0 * 12.0 * (25.0 + 60.0));
    assert_eq!(line.note, "2 locating blocks, 20 cm² for each case");
}

#[test]
fn sheets_keep_the_numbers_of_their_choices() {
    let mut design = Design::default();
    design.set_json("stock3.width", &500.into()).unwrap();
    design.set_json("stock3.height", &400.into()).unwrap();
    let labels: Vec<String> = job(&Build::of(&design)).sheets.into_iter().map(|sheet| sheet.label).collect();
    assert_eq!(labels, ["Sheet", "Sheet 3"]);
}

#[test]
fn screws_of_the_feet_are_not_bagged_with_the_card() {
    let mut design = Design::default();
    design.set_json("feet.kind", &"bolts".into()).unwrap();
    let bags = bags(&Build::of(&design));
    let of = |label: &str| bags.iter().find(|bag| bag.label == label).map(|bag| bag.lines.clone()).unwrap();
    let feet: Vec<(String, usize)> = of("Feet").into_iter().map(|line| (line.what, line.count)).collect();
    let expected = [("M6 bolt as a foot", 4), ("M6 nut", 8), ("M6 washer", 8)];
    assert_eq!(feet, expected.map(|(what, count)| (what.to_owned(), count)));
    assert!(of("Card").iter().all(|line| !line.what.starts_with("M6")));
}

#[test]
fn the_shopping_list_buys_what_the_bags_hold_and_spares() {
    for mut design in designs() {
        design.set_json("kit.count", &7.into()).unwrap();
        design.set_json("spare.small", &3.into()).unwrap();
        design.set_json("pack.screw", &50.into()).unwrap();
        design.set_json("price.screw", &2.5.into()).unwrap();
        let build = Build::of(&design);
        let list = shopping(&build, None);
        let groups = ["Brackets", "Screws", "Nuts", "Washers", "Standoffs", "Feet", "Other"];
        let bought: f64 = list.lines.iter().filter(|line| groups.contains(&line.group)).map(|line| line.needed).sum();
        assert_eq!(bought, 7.0 * build.fasteners.iter().map(|line| line.count as f64).sum::<f64>());
        for line in list.lines.iter().filter(|line| line.group == "Screws") {
            let packs = line.packs.unwrap();
            assert!(packs * 50.0 >= line.needed + 3.0 && (packs - 1.0) * 50.0 < line.needed + 3.0);
            assert_eq!(line.price, Some(2.5));
        }
        let total: f64 = list.lines.iter().filter_map(|line| Some(line.price? * line.packs?)).sum();
        assert!(list.total.is_some_and(|sum| (sum - total).abs() < 1e-9 && sum > 0.0));
        assert_eq!(list.open, list.lines.iter().filter(|line| line.price.is_none()).count());
    }
}

/// 6 mm fibreboard at 750 kg/m³ weighs 4.5 kg a square metre.
#[test]
fn masses_and_times_are_those_worked_by_hand() {
    let mut design = Design::default();
    for (rate, minutes) in [("rate.cut", 4.0), ("rate.hole", 0.5), ("rate.opening", 2.0), ("rate.panel", 10.0)] {
        design.set_json(rate, &minutes.into()).unwrap();
    }
    let build = Build::of(&design);
    let list = cut_list(&build);
    for (line, panel) in list.lines.iter().zip(&build.panels) {
        let through = panel.features.iter().filter(|feature| feature.blind.is_none() && !feature.notch);
        let area = panel.outline.area() - through.map(|feature| feature.contour.area()).sum::<f64>();
        let mass = area / 1e6 * 4.5;
        // Counterbores and rebates take off a little more.
        let got = line.mass_kg.unwrap();
        assert!(got <= mass + 1e-9 && got > mass * 0.95, "{}: {got} {mass}", line.label);
        let holes: usize = line.holes.iter().map(|(_, count)| count).sum();
        assert_eq!(holes, panel.features.iter().filter(|feature| feature.key.is_some()).count());
        let minutes = line.cut_mm / 1000.0 * 4.0 + holes as f64 * 0.5 + line.openings as f64 * 2.0 + 10.0;
        assert!((line.minutes.unwrap() - minutes).abs() < 1e-9);
    }
}

#[test]
fn film_is_cut_larger_than_the_panel_and_wasted_as_the_maker_says() {
    let mut design = Design::default();
    design.set_json("sheet.film_out", &0.1.into()).unwrap();
    design.set_json("sheet.film_in", &0.into()).unwrap();
    design.set_json("spare.film", &20.into()).unwrap();
    let build = Build::of(&design);
    let area: f64 = build.panels.iter().map(|panel| (panel.size_mm[0] + 20.0) * (panel.size_mm[1] + 20.0)).sum();
    let list = shopping(&build, None);
    let film = list.lines.iter().find(|line| line.what == "Film").unwrap();
    assert!((film.needed - area / 1e6).abs() < 1e-9 && (film.spare - film.needed * 0.2).abs() < 1e-9);
    let square_metres = film.packs.unwrap();
    assert!(square_metres >= film.needed * 1.2 - 1e-3 && square_metres < film.needed * 1.2 + 0.1);
}

#[test]
fn the_default_case_is_cut_from_one_sheet_and_many_cases_from_no_fewer_than_the_bound() {
    let need = |design: &Design| lay(&Build::of(design), 20_000).map(|laid| SheetNeed::of(&laid.plan));
    let mut design = Design::default();
    assert_eq!(need(&design).unwrap().bought, 1);
    design.set_json("kit.count", &12.into()).unwrap();
    let found = need(&design).unwrap();
    assert!(found.missing == 0 && found.bought >= found.bound && found.bound > 1, "{found:?}");
    design.set_json("kit.count", &500.into()).unwrap();
    assert_eq!(need(&design), None, "more panels than the packer takes");
}

/// Sheets that are not counted are in no sum, but their price is not said to be missing.
#[test]
fn a_sheets_price_without_their_number_is_said_as_it_is() {
    let mut design = Design::default();
    design.set_json("kit.count", &500.into()).unwrap();
    let said = |design: &Design| {
        let list = shopping(&Build::of(design), None);
        (list.table().notes.remove(0), list.open == list.lines.len(), list.total)
    };
    assert_eq!(said(&design), ("For 500 cases. No prices are stated.".to_owned(), true, None));
    design.set_json("price.sheet", &20.into()).unwrap();
    let (note, all_open, total) = said(&design);
    assert!(note.starts_with("For 500 cases. The price of a sheet is stated, but"), "{note}");
    assert!(!all_open && total.is_none());
    // With a price more there is a sum; it is still without the sheets.
    design.set_json("price.screw", &1.into()).unwrap();
    let (note, _, total) = said(&design);
    assert!(total.is_some() && note.contains("Total ") && note.contains("the sheets are in no sum"), "{note}");
    // Their number is open, not nought.
    let table = shopping(&Build::of(&design), None).table();
    assert_eq!(table.rows[0][4], Cell::Empty);
    // Sheets that are counted are in the sum.
    design.set_json("kit.count", &1.into()).unwrap();
    let need = SheetNeed { bought: 3, at_hand: 0, missing: 0, bound: 1 };
    let list = shopping(&Build::of(&design), Some(&need));
    assert!(!list.uncounted && list.lines[0].sum() == Some(60.0));
}

#[test]
fn every_row_has_a_cell_for_every_column_and_pages_hold_every_row() {
    for design in designs().into_iter().take(12) {
        let build = Build::of(&design);
        let lists = Lists::of(&build, None);
        for table in &lists.tables {
            assert!(table.rows.iter().all(|row| row.len() == table.columns.len()), "{}", table.name);
            let text = csv(table, &build.fingerprint, &[]);
            assert!(text.ends_with(&format!("{}\r\n", build.fingerprint)));
        }
        for paper in [[210.0, 297.0], [215.9, 279.4]] {
            let drawings = print::pages(&build, &lists, paper, 10.0);
            let room = kurbo::Rect::new(9.9, 9.9, paper[0] - 9.9, paper[1] - 9.9);
            let mut words: Vec<&str> = Vec::new();
            for drawing in &drawings {
                for text in drawing.layers.iter().flat_map(|layer| &layer.items).filter_map(|item| match item {
                    crate::drawing::Item::Text(text) => Some(text),
                    _ => None,
                }) {
                    let width = crate::drawing::text_width_mm(&text.text, text.size_mm, text.weight);
                    let left = match text.anchor {
                        crate::drawing::Anchor::Start => text.at.x,
                        crate::drawing::Anchor::Middle => text.at.x - width / 2.0,
                        crate::drawing::Anchor::End => text.at.x - width,
                    };
                    assert!(left >= room.x0 && left + width <= room.x1, "{}: {left} {width}", text.text);
                    assert!(text.at.y >= room.y0 && text.at.y <= room.y1, "{}", text.text);
                    words.push(&text.text);
                }
            }
            let rows: Vec<&Vec<Cell>> = lists.tables.iter().flat_map(|table| &table.rows).collect();
            assert!(rows.len() > 20 && drawings.len() > 1);
            // What a row begins with stands on the pages as often as there are such rows.
            let begins = |row: &Vec<Cell>| row[0].shown().split_whitespace().next().unwrap_or_default().to_owned();
            for row in &rows {
                let start = begins(row);
                let printed = words.iter().filter(|text| text.starts_with(&start)).count();
                let wanted = rows.iter().filter(|other| begins(other) == start).count();
                assert!(printed >= wanted, "{start}: {printed} of {wanted}");
            }
        }
    }
}
