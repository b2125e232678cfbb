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
mod tests;
