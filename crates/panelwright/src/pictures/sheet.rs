//! A sheet of stock with the panels that are cut from it: a picture, the saw's way in words, and what a machine cuts.
//!
//! Which panel a piece of the plan is, is asked through a [`Find`]: the panels of one case, or of several designs.

use kurbo::{Point, Rect, Vec2};

use super::sheet_names::{beside, covered, inside, within};
use crate::Build;
use crate::cutting::{CutPanel, CutSheet, inside_up};
use crate::drawing::number::mm;
use crate::drawing::{
    Colour, Contour, Dash, Drawing, Form, Item, Layer, Shape, Stroke, Style, Text, Weight, text_width_mm,
};
use crate::panels::Panel;
use crate::stock::{Cut, Edge, Job, Part, Placed, Plan};

/// Free paper around a sheet, as a share of its longer side.
const MARGIN_SHARE: f64 = 0.03;

/// Width of a line, as a share of the sheet's longer side: a picture of 600 px shows it about a pixel wide.
const LINE_SHARE: f64 = 0.0016;

/// Height of the number of a saw cut, as a share of the sheet's longer side.
const NUMBER_SHARE: f64 = 0.0196;

/// Places along its line that the number of a cut is tried at, its own height apart.
const NUMBER_PLACES: u32 = 12;

/// Before the names of the layers of a panel that lies in another's opening: it is cut before anything else.
pub const FIRST: &str = "first-";

/// The case and panel that a piece of the plan is, by the piece's index.
pub type Find<'a> = dyn Fn(usize) -> Option<(&'a Build, &'a Panel)> + 'a;

/// Pieces that are the panels of one case, in their order.
fn of_one<'a>(build: &'a Build) -> impl Fn(usize) -> Option<(&'a Build, &'a Panel)> {
    move |piece| build.panels.get(piece).map(|panel| (build, panel))
}

/// Where a placed panel's own frame goes on the sheet: quarter turns, then a move.
fn place(placed: &Placed) -> (i32, Vec2) {
    let rect = placed.rect;
    // A quarter turn to the left takes the panel's height to the left of its origin.
    if placed.turned { (1, Vec2::new(rect.x + rect.width, rect.y)) } else { (0, Vec2::new(rect.x, rect.y)) }
}

/// A panel's contour where it lies; `over` when its inside is up, so that it is seen mirrored.
fn on_sheet(contour: &Contour, panel: &Panel, over: bool, placed: &Placed, by: Vec2) -> Contour {
    let (turns, to) = place(placed);
    let seen = if over { contour.mirror_x(panel.size_mm[0] / 2.0) } else { contour.clone() };
    seen.quarter_turns(turns).translate(to + by)
}

/// The picture of one sheet of a plan whose pieces are the build's panels, in their order; `None` when there is no such
/// sheet. Groups are about the panels, so that a page can point at them.
#[must_use]
pub fn sheet_picture(build: &Build, job: &Job, plan: &Plan, index: usize) -> Option<Drawing> {
    picture(&of_one(build), job, plan, index)
}

/// The picture of one sheet of a plan; `None` when there is no such sheet.
#[must_use]
pub fn picture(find: &Find, job: &Job, plan: &Plan, index: usize) -> Option<Drawing> {
    let sheet = plan.sheets.get(index)?;
    let stock = job.sheets.get(sheet.sheet)?;
    let longest = stock.width.max(stock.height);
    let margin = longest * MARGIN_SHARE;
    let line = longest * LINE_SHARE;
    let by = Vec2::new(margin, margin);
    let mut drawing = Drawing::new(stock.width + 2.0 * margin, stock.height + 2.0 * margin);
    let stroke = |colour, width_mm, dash| Stroke { colour, width_mm, dash };

    let mut ground = Layer::new("sheet");
    let edge = Contour::rect(margin, margin, margin + stock.width, margin + stock.height);
    let style = Style { fill: Some(Colour::SheetEdge), ..Style::line(Colour::Ink, line) };
    ground.push(Shape::new(Form::Contours(vec![edge]), style));
    // What no name beside its panel may cover.
    let mut taken: Vec<Rect> = Vec::new();
    for offcut in &sheet.offcuts {
        let (x, y) = (offcut.x + margin, offcut.y + margin);
        let style = Style { stroke: Some(stroke(Colour::Thin, line, Dash::Hidden)), ..Style::default() };
        let area = Contour::rect(x, y, x + offcut.width, y + offcut.height);
        ground.push(Shape::new(Form::Contours(vec![area]), style));
        let words = format!("left over: {} × {}", mm(offcut.width), mm(offcut.height));
        let area = Rect::new(x, y, x + offcut.width, y + offcut.height);
        let words = inside(area, longest, &words, Colour::Thin, &[])
            .unwrap_or_else(|| within(area, longest, &words, Colour::Thin));
        taken.push(covered(&words));
        ground.push(words);
    }
    drawing.layers.push(ground);

    let mut panels: Vec<(&str, Vec<Item>, Nameless)> = Vec::new();
    let mut ids: Vec<&str> = Vec::new();
    for placed in &sheet.placed {
        let (Some((build, panel)), Some(piece)) = (find(placed.piece), job.pieces.get(placed.piece)) else { continue };
        // What lies in openings shows only where the picture has them as they are cut.
        let over = build.spec.stock.openings && inside_up(&build.spec, panel);
        let name = panel.id();
        ids.push(name);
        // The same panel of the next case: no two shapes of a file may bear one id.
        let id = match ids.iter().filter(|other| **other == name).count() {
            1 => name.to_owned(),
            number => format!("{name}-{number}"),
        };
        let (drawn, without) = drawn((panel, over), &piece.label, id, placed, by, line);
        taken.push(without.area);
        panels.push((name, drawn, without));
    }
    // Every panel is known before a name goes beside one, and all of them lie below the lines that lead to them.
    let paper = Rect::new(0.0, 0.0, drawing.width_mm, drawing.height_mm);
    let mut names: Vec<Rect> = Vec::new();
    let mut faces = Layer::new("panels");
    let mut beside_panels: Vec<crate::drawing::Group> = Vec::new();
    for (about, mut drawn, Nameless { name, area, gone }) in panels {
        let text = if let Some(text) = inside(area, longest, name, Colour::Ink, &gone) {
            drawn.push(text.clone().into());
            text
        } else if let Some((text, leader)) = beside(area, paper, line, name, &gone, &taken) {
            taken.push(covered(&text));
            let items = leader.into_iter().chain([text.clone().into()]).collect();
            beside_panels.push(crate::drawing::Group::about(about, items));
            text
        } else {
            let text = within(area, longest, name, Colour::Ink);
            drawn.push(text.clone().into());
            text
        };
        // Not so near that a number would be read as one word with the name.
        names.push(covered(&text).inflate(text.size_mm * 0.3, 0.0));
        faces.push(crate::drawing::Group::about(about, drawn));
    }
    beside_panels.into_iter().for_each(|name| faces.push(name));
    drawing.layers.push(faces);

    if !sheet.cuts.is_empty() {
        let mut cuts = Layer::new("cuts");
        let mut numbers = names;
        for (number, cut) in sheet.cuts.iter().enumerate() {
            let [from, to] = [cut.start, cut.end].map(|[x, y]| Point::new(x, y) + by);
            cuts.line(
                from,
                to,
                Style { stroke: Some(stroke(Colour::Accent, line, Dash::ChainThin)), ..Style::default() },
            );
            let (size, number) = (longest * NUMBER_SHARE, (number + 1).to_string());
            let width = text_width_mm(&number, size, Weight::Regular);
            // Cuts that start in one corner: the later number moves along its own line.
            let along = (to - from) / (to - from).hypot().max(size);
            let places =
                (0..NUMBER_PLACES).map(|step| from + along * (size * f64::from(step)) + Vec2::splat(size * 0.2));
            let box_at = |at: Point| Rect::new(at.x, at.y, at.x + width, at.y + size * 0.8);
            let free = |at: &Point| numbers.iter().all(|other| !other.overlaps(box_at(*at)));
            let at = places.clone().find(free).unwrap_or(from);
            numbers.push(box_at(at));
            cuts.push(Text::new(at, size, number).coloured(Colour::Accent));
        }
        drawing.layers.push(cuts);
    }
    Some(drawing)
}

/// A panel on its sheet that has no name yet.
struct Nameless<'a> {
    name: &'a str,
    /// Where it lies.
    area: Rect,
    /// What is gone from it.
    gone: Vec<Rect>,
}

/// A panel on its sheet: face and openings, and what its name needs to find a place.
fn drawn<'a>(
    (panel, over): (&Panel, bool),
    name: &'a str,
    id: String,
    placed: &Placed,
    by: Vec2,
    line: f64,
) -> (Vec<Item>, Nameless<'a>) {
    let on_sheet = |contour: &Contour| on_sheet(contour, panel, over, placed, by);
    let mut contours = vec![on_sheet(&panel.outline)];
    let through = panel.features.iter().filter(|feature| !feature.notch && feature.blind.is_none());
    contours.extend(through.map(|feature| on_sheet(&feature.contour)));
    // The outline is no hole, but what is notched out of it is.
    let notches =
        panel.features.iter().filter(|feature| feature.notch).map(|feature| on_sheet(&feature.contour).bbox());
    let gone: Vec<Rect> = contours[1..].iter().map(Contour::bbox).chain(notches).collect();
    let style = Style { fill: Some(Colour::Sheet), ..Style::line(Colour::Ink, line) };
    let [w, h] = panel.size_mm.map(mm);
    let face = Shape::new(Form::Contours(contours), style)
        .with_id(id)
        .with_title(format!("{name}, {w} × {h} mm{}", if placed.turned { ", turned" } else { "" }));
    let rect = placed.rect;
    let area = Rect::new(rect.x, rect.y, rect.x + rect.width, rect.y + rect.height) + by;
    (vec![face.into()], Nameless { name, area, gone })
}

/// What a machine cuts from one sheet of a plan whose pieces are the build's panels (see [`cut`]).
#[must_use]
pub fn cut_sheet(build: &Build, job: &Job, plan: &Plan, index: usize) -> Vec<CutSheet> {
    cut(&of_one(build), job, plan, index)
}

/// What a machine cuts from one sheet, go by go: every panel by its own method, in its place, with the face up that is
/// worked on. Where some panels are worked on both faces there are two: the first holds what is cut from the inside of
/// those, drawn as the sheet lies before it is turned over.
///
/// Panels in openings of others come first, on layers of their own: once the opening is cut, nothing holds them.
#[must_use]
pub fn cut(find: &Find, job: &Job, plan: &Plan, index: usize) -> Vec<CutSheet> {
    let Some(sheet) = plan.sheets.get(index) else { return Vec::new() };
    let Some(stock) = job.sheets.get(sheet.sheet) else { return Vec::new() };
    let (inside, others): (Vec<&Placed>, Vec<&Placed>) =
        sheet.placed.iter().partition(|placed| placed.inside.is_some());
    let (mut first, mut last) = (Vec::new(), Vec::new());
    for placed in inside.into_iter().chain(others) {
        let Some((build, panel)) = find(placed.piece) else { continue };
        let (turns, to) = place(placed);
        let mut goes = CutPanel::for_files(&build.spec, panel);
        for layer in goes.iter_mut().flat_map(|go| &mut go.layers).filter(|_| placed.inside.is_some()) {
            layer.name.insert_str(0, FIRST);
        }
        last.extend(goes.pop().map(|go| go.placed(turns, to)));
        first.extend(goes.into_iter().map(|go| go.turned_over().placed(turns, to)));
    }
    let label = format!("Sheet {} of {}", index + 1, plan.sheets.len());
    let of = |label: String, panels| CutSheet { label, size_mm: [stock.width, stock.height], panels };
    let before = (!first.is_empty()).then(|| of(format!("{label}, first go"), first).turned_over());
    before.into_iter().chain([of(label, last)]).collect()
}

/// Which side of the line a saw cut takes, for those who follow [`saw_cut`].
pub const SAW_SIDE: &str = "Measure what comes off; the saw's cut lies beyond that line. A trim holds its own cut.";

/// One saw cut in words: from which edge, how far, what comes off.
#[must_use]
pub fn saw_cut(job: &Job, plan: &Plan, index: usize, cut: &Cut) -> String {
    let edge = match cut.from {
        Edge::Left => "left",
        Edge::Right => "right",
        Edge::Bottom => "lower",
        Edge::Top => "upper",
    };
    let part = |part: Part| match part {
        Part::Plate(number) => format!("piece {number}, to be cut on"),
        Part::Piece(placed) => plan
            .sheets
            .get(index)
            .and_then(|sheet| sheet.placed.get(placed))
            .and_then(|placed| job.pieces.get(placed.piece))
            .map(|piece| piece.label.clone())
            .unwrap_or_default(),
        Part::Offcut(_) => "an offcut to keep".to_owned(),
        Part::Waste | Part::Dust => "waste".to_owned(),
    };
    let plate = if cut.plate == 1 { "The sheet".to_owned() } else { format!("Piece {}", cut.plate) };
    if let (Part::Waste, Part::Plate(_) | Part::Piece(_)) = (cut.off, cut.rest) {
        let [distance, length] = [cut.distance, cut.length].map(mm);
        return format!(
            "{plate}: trim {distance} mm off its {edge} edge, {length} mm long. Left is {}.",
            part(cut.rest)
        );
    }
    format!(
        "{plate}: {} mm from its {edge} edge, {} mm long. Off comes {}; left is {}.",
        mm(cut.distance),
        mm(cut.length),
        part(cut.off),
        part(cut.rest)
    )
}

#[cfg(test)]
mod tests {
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
                let outline =
                    panel.layers.iter().flat_map(|layer| &layer.cuts).find(|cut| cut.of == "outline").unwrap();
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
}
