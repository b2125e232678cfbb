//! The sleeve: its way off, and whether it jams or rattles.

use super::finding::Finding;
use super::mend::{Remedy, enter_at_least, enter_at_most, entered, pick};
use super::more_room::elsewhere;
use super::rule::Rule;
use super::scene::{Scene, face, outward};
use super::screws::shank;
use super::words;
use crate::design::{Corners, Slide, Value, Wall, choice, choices};
use crate::dimensions::margins::RUNNING_CLEARANCE;
use crate::dimensions::source::{Source, Sourced};
use crate::dimensions::stackup::{Link, StackUp, stack_up};
use crate::fastening::Screw;
use crate::panels::Assembly;
use crate::parts::Carrier;
use crate::solid::{Aabb, TOUCH_MM};

/// Clearance on a side beyond which the sleeve is loose enough to rattle, mm.
const LOOSE: Sourced<f64> = Sourced::new(RUNNING_CLEARANCE.get()[2], RUNNING_CLEARANCE.source());

/// Clearance on a side below which no sleeve slides that is filed by hand, mm.
const CLOSE: Sourced<f64> = Sourced::new(RUNNING_CLEARANCE.get()[0], RUNNING_CLEARANCE.source());

pub(super) const SLEEVE_PATH: Rule = Rule {
    name: "sleeve-path",
    what: "The sleeve comes straight off: nothing fixed to it hits anything fixed to floor and back on the whole way.",
    source: Source::derived("Geometry of the design", "space swept by a straight slide"),
    look: sleeve_path,
};

pub(super) const SLEEVE_JAMS: Rule = Rule {
    name: "sleeve-jams",
    what: "The sleeve goes on although sheet and cuts stray, most likely and at worst.",
    source: Source::derived("Stack-up of tolerances", "worst case and root of the sum of squares"),
    look: sleeve_jams,
};

pub(super) const SLEEVE_RATTLES: Rule = Rule {
    name: "sleeve-rattles",
    what: "The sleeve is not looser than 1 mm a side.",
    source: LOOSE.source(),
    look: sleeve_rattles,
};

/// Names told in one sentence; the rest is counted.
const MOST_NAMES: usize = 3;

/// The panel towards which the sleeve comes off.
const fn way(slide: Slide) -> Wall {
    match slide {
        Slide::Up => Wall::Top,
        Slide::Forward => Wall::Front,
    }
}

/// A solid with the name it is spoken of by.
struct Named<'a> {
    id: &'a str,
    solid: Aabb,
}

/// Everything that moves with the sleeve, and everything that stays.
fn sides<'a>(scene: &Scene<'a>) -> (Vec<Named<'a>>, Vec<Named<'a>>) {
    let (mut moving, mut staying) = (Vec::new(), Vec::new());
    for sheet in &scene.sheets {
        let named = Named { id: sheet.panel.wall.name(), solid: sheet.solid };
        if sheet.panel.assembly == Assembly::Sleeve { moving.push(named) } else { staying.push(named) }
    }
    for body in &scene.bodies {
        let named = Named { id: &body.part.id, solid: body.solid };
        if body.part.carrier == Carrier::Sleeve { moving.push(named) } else { staying.push(named) }
    }
    for screw in scene.case.screws {
        let Some(solid) = shank(screw) else { continue };
        let named = Named { id: &screw.id, solid };
        match carried_by(scene, screw) {
            Some(Carrier::Sleeve) => moving.push(named),
            Some(Carrier::Chassis) => staying.push(named),
            // It joins both: it is taken out first.
            None => {}
        }
    }
    (moving, staying)
}

/// What a screw moves with; `None` when it joins sleeve and chassis, or nothing known.
fn carried_by(scene: &Scene, screw: &Screw) -> Option<Carrier> {
    let mut carriers = screw.joins.iter().filter_map(|id| {
        let sheet = scene.sheets.iter().find(|sheet| sheet.id() == id);
        let by_sheet = sheet.map(|sheet| match sheet.panel.assembly {
            Assembly::Sleeve => Carrier::Sleeve,
            Assembly::Chassis => Carrier::Chassis,
        });
        by_sheet.or_else(|| scene.part(id).map(|part| part.carrier))
    });
    let first = carriers.next()?;
    carriers.all(|next| next == first).then_some(first)
}

/// How deep `moving` would run into `staying` on its way; `None` when it never does or is already in it.
fn hit(moving: &Aabb, staying: &Aabb, wall: Wall) -> Option<f64> {
    let (axis, sense) = outward(wall);
    let mut across = f64::INFINITY;
    // Most pairs pass each other: they are told apart here already.
    for other in (0..3).filter(|other| *other != axis) {
        across = across.min(moving.overlap_along(staying, other));
        if across <= TOUCH_MM {
            return None;
        }
    }
    let ahead = (face(staying, axis, sense) - face(moving, axis, -sense)) * sense > TOUCH_MM;
    (ahead && moving.overlap_along(staying, axis) <= TOUCH_MM).then_some(across)
}

fn sleeve_path(scene: &Scene, found: &mut Vec<Finding>) {
    let wall = way(scene.case.spec.sleeve.slide);
    let (moving, staying) = sides(scene);
    let other_way = match scene.case.spec.sleeve.slide {
        Slide::Up => Slide::Forward,
        Slide::Forward => Slide::Up,
    };
    let mut hits: Vec<(&str, Vec<&str>, f64, [f64; 3])> = Vec::new();
    for one in &moving {
        for other in &staying {
            let Some(depth) = hit(&one.solid, &other.solid, wall) else { continue };
            let at = other.solid.centre();
            match hits.iter_mut().find(|(id, ..)| *id == one.id) {
                Some((_, others, deepest, place)) => {
                    if depth > *deepest {
                        (*deepest, *place) = (depth, at);
                    }
                    if !others.contains(&other.id) {
                        others.push(other.id);
                    }
                }
                None => hits.push((one.id, vec![other.id], depth, at)),
            }
        }
    }
    let direction = match scene.case.spec.sleeve.slide {
        Slide::Up => "upward",
        Slide::Forward => "forward",
    };
    let (other_name, other_words) = match other_way {
        Slide::Up => ("up", "let the sleeve come off upward"),
        Slide::Forward => ("forward", "let the sleeve come off forward"),
    };
    let other_is_free = !hits.is_empty() && {
        let wall = way(other_way);
        moving.iter().all(|one| staying.iter().all(|other| hit(&one.solid, &other.solid, wall).is_none()))
    };
    for (id, others, depth, at) in hits {
        let mut names: Vec<String> = others.iter().take(MOST_NAMES).map(|other| name(scene, other)).collect();
        if others.len() > MOST_NAMES {
            names.push(format!("{} more", others.len() - MOST_NAMES));
        }
        let mut remedy = Remedy::new();
        if other_is_free {
            remedy = remedy.pick("sleeve.slide", other_name, other_words);
        }
        // What moves, and the first thing in its way that can be moved.
        let first = scene.part(id).and_then(elsewhere);
        let second = others.iter().find_map(|other| scene.part(other).and_then(elsewhere));
        let second = second.filter(|words| Some(words) != first.as_ref());
        let remedy = remedy.say_if(first).say_if(second).otherwise("take smaller brackets and shorter screws there");
        let mover = name(scene, id);
        found.push(
            SLEEVE_PATH
                .blocks(format!(
                    "The sleeve does not come off {direction}: {mover} would run into {}, {} deep.",
                    words::list(&names),
                    words::short(depth)
                ))
                .with_mm(-depth, 0.0)
                .with_mends(remedy)
                .with_about([id])
                .with_about(others)
                .with_at(at),
        );
    }
}

/// What people call a panel, part or screw.
fn name(scene: &Scene, id: &str) -> String {
    if let Some(sheet) = scene.sheets.iter().find(|sheet| sheet.id() == id) {
        return words::the_panel(sheet.wall()).to_owned();
    }
    match scene.part(id) {
        Some(part) => words::part(part),
        None => scene.case.screws.iter().find(|screw| screw.id == id).map_or_else(|| id.to_owned(), words::screw),
    }
}

/// The play across the sleeve's inside, mm: what is left of it beside the chassis, after films and paint.
fn play(scene: &Scene) -> Option<StackUp> {
    let spec = scene.case.spec;
    let inside = scene.inside(Wall::Right)? - scene.inside(Wall::Left)?;
    let chassis = [Wall::Floor, Wall::Back]
        .into_iter()
        .filter_map(|wall| scene.sheet(wall))
        .map(|sheet| sheet.solid.size()[0])
        .fold(0.0, f64::max);
    let cut = cut(scene);
    let mut chain = vec![
        // Two cut edges of the front and the top set the sleeve's inside, two of floor and back the chassis.
        Link::opening(inside, cut),
        Link::opening(0.0, cut),
        Link::closing(chassis, cut),
        Link::closing(0.0, cut),
        Link::closing(2.0 * (spec.sheet.finish_in_mm + spec.sheet.paint_edges_mm), 0.0),
    ];
    if spec.sleeve.corners == Corners::Face {
        // Front and top then cover both sides: their thickness counts too.
        let varies = spec.sheet.strays_mm();
        chain.extend([Link::closing(0.0, varies), Link::closing(0.0, varies)]);
    }
    Some(stack_up(&chain))
}

/// How far a cut edge strays across the case, ±: the least true of the panels that set the sleeve's play.
fn cut(scene: &Scene) -> f64 {
    scene.case.spec.making.accuracy_across_mm(scene.case.arrangement.case.outside_mm[0])
}

fn middle(scene: &Scene) -> [f64; 3] {
    let [_, depth, height] = scene.case.arrangement.case.outside_mm;
    [scene.inside(Wall::Right).unwrap_or(0.0), depth / 2.0, height / 2.0]
}

/// The choice of the running clearance.
const CLEARANCE: &str = "sleeve.clearance";

/// A running clearance as the maker's own figure: one that a design has which states none must be said to be that.
fn stated(side: Option<f64>, words: &dyn Fn(String) -> String) -> Remedy {
    let Some(side) = side else { return Remedy::new() };
    let mut changes = vec![(CLEARANCE.to_owned(), Value::Number(side))];
    if choice(CLEARANCE).is_some_and(|place| choices()[place].default == Value::Number(side)) {
        changes.extend(pick("sleeve.clearance_by", "own"));
    }
    Remedy::new().mend(words(entered(side)), changes)
}

fn sleeve_jams(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(play) = play(scene) else { return };
    let ([likely, _], [worst, _]) = (play.likely_range_mm(), play.worst_range_mm());
    let clearance = scene.case.spec.sleeve.clearance_mm;
    let cut = words::limit(cut(scene));
    // What suits the worst case ends the finding altogether.
    let more = |words: &dyn Fn(String) -> String| stated(enter_at_least(CLEARANCE, clearance - worst / 2.0), words);
    let fitted = scene.case.spec.making.sleeve_is_fitted();
    let side = play.mean_mm / 2.0;
    let finding = if fitted && side < CLOSE.get() - TOUCH_MM {
        SLEEVE_JAMS
            .caution(format!(
                "The sleeve jams: it has {} of air on each side, and what is filed by hand wants {}.",
                words::mm(side.max(0.0)),
                words::limit(CLOSE.get())
            ))
            .with_mm(side, CLOSE.get())
            .with_mends(stated(enter_at_least(CLEARANCE, clearance + CLOSE.get() - side), &|side| {
                format!("take a running clearance of {side} a side")
            }))
    } else if fitted {
        if likely >= -TOUCH_MM {
            return;
        }
        // What comes out too narrow cannot be filed wider: the room for the file is left while sawing.
        SLEEVE_JAMS
            .note(format!(
                "Work by hand is true to some ±{cut}: the sleeve may come out {} too narrow.",
                words::short(-likely)
            ))
            .with_mm(likely, 0.0)
            .with_remedy(format!(
                "Leave front and top {} wider than their lines, try the sleeve on and file them until it slides, before \
                 its joints are fixed; or state how true you cut.",
                words::short(-likely)
            ))
    } else if likely < -TOUCH_MM {
        SLEEVE_JAMS
            .caution(format!(
                "The sleeve is likely to jam: cut to ±{cut}, it may be {} too narrow.",
                words::short(-likely)
            ))
            .with_mm(likely, 0.0)
            .with_mends(more(&|side| format!("take a running clearance of {side} a side")).say("cut closer"))
    } else if worst < -TOUCH_MM {
        SLEEVE_JAMS
            .note(format!(
                "The sleeve goes on unless every edge strays its ±{cut} the wrong way at once; then it jams by {}.",
                words::short(-worst)
            ))
            .with_mm(worst, 0.0)
            .with_mends(
                Remedy::new()
                    .say("try the sleeve on before its joints are fixed")
                    .and(more(&|side| format!("take a running clearance of {side} a side"))),
            )
    } else {
        return;
    };
    found.push(finding.with_about(["left", "right", "floor", "back"]).with_at(middle(scene)));
}

fn sleeve_rattles(scene: &Scene, found: &mut Vec<Finding>) {
    let Some(play) = play(scene) else { return };
    let side = play.mean_mm / 2.0;
    if side <= LOOSE.get() + TOUCH_MM {
        return;
    }
    found.push(
        SLEEVE_RATTLES
            .note(format!(
                "The sleeve has {} of play on each side; over {} it rattles.",
                words::mm(side),
                words::limit(LOOSE.get())
            ))
            .with_mm(side, LOOSE.get())
            .with_mends(stated(enter_at_most(CLEARANCE, LOOSE.get()), &|side| {
                format!("take a running clearance of {side} or less")
            }))
            .with_about(["left", "right", "floor", "back"])
            .with_at(middle(scene)),
    );
}
