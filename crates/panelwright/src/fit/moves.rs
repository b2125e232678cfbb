//! Thin webs: what the maker can move on a panel, where to, and what else there is to do.
//!
//! Fans and the button go where two choices put them: for these a place is looked for that leaves enough sheet all
//! around, and named. Everything else is said by the choice there is for it.

use kurbo::{Point, Rect, Vec2};

use super::mend::{Remedy, enter_at_least, entered};
use super::more_room::elsewhere;
use super::scene::{Scene, Shape, Sheet, towards};
use super::web_between::apart;
use super::webs::owner;
use super::words;
use crate::design::{SizeRule, SupplyPose, Value, Wall};
use crate::panels::Purpose;
use crate::parts::Part;
use crate::solid::by_axis;

/// Sheet left beyond what is needed, mm: places are entered in tenths.
const SPARE_MM: f64 = 0.1;

/// Most things to step over in one direction.
const STEPS: usize = 12;

/// What stands on a panel by two choices.
struct Mover<'a> {
    part: &'a Part,
    /// Its keys are `fan1.across` and `fan1.up`.
    group: String,
    centre: Point,
}

fn mover<'a>(scene: &Scene<'a>, shape: &Shape) -> Option<Mover<'a>> {
    let part = scene.part(shape.feature.about.first()?)?;
    let arrangement = scene.case.arrangement;
    match shape.feature.purpose {
        Purpose::FanOpening | Purpose::FanScrew => {
            let fan = arrangement.fans.iter().find(|fan| part.id == format!("fan-{}", fan.number))?;
            Some(Mover { part, group: format!("fan{}", fan.number), centre: fan.at.centre })
        }
        Purpose::Button | Purpose::ButtonCounterbore => {
            Some(Mover { part, group: "button".to_owned(), centre: arrangement.button?.centre })
        }
        _ => None,
    }
}

/// How far a rectangle must move in a direction to stand clear of another; `None` when it is clear already.
fn step(moved: &Rect, other: &Rect, way: Vec2, clear: f64) -> Option<f64> {
    (apart(moved, other) < clear).then_some(match way {
        way if way.x > 0.0 => other.x1 + clear - moved.x0,
        way if way.x < 0.0 => moved.x1 - other.x0 + clear,
        way if way.y > 0.0 => other.y1 + clear - moved.y0,
        _ => moved.y1 - other.y0 + clear,
    })
}

/// How far a rectangle must move in a direction to come inside another; `None` when it never does.
fn inside(moved: &Rect, sound: &Rect, way: Vec2) -> Option<f64> {
    let low = Vec2::new(sound.x0 - moved.x0, sound.y0 - moved.y0);
    let high = Vec2::new(moved.x1 - sound.x1, moved.y1 - sound.y1);
    // Along the way what is missing behind, across it and ahead nothing may be.
    let (behind, others) = match way {
        way if way.x > 0.0 => (low.x, [high.x, low.y, high.y]),
        way if way.x < 0.0 => (high.x, [low.x, low.y, high.y]),
        way if way.y > 0.0 => (low.y, [high.y, low.x, high.x]),
        _ => (high.y, [low.y, low.x, high.x]),
    };
    others.iter().all(|over| *over <= 1e-9).then_some(behind.max(0.0))
}

/// The nearest place along one of the panel's directions where a mover leaves `needed` of sheet all around and stands
/// in no other part.
fn place(scene: &Scene, sheet: &Sheet, shape: &Shape, mover: &Mover, needed: f64) -> Option<Point> {
    let clear = needed + SPARE_MM;
    let own = owner(shape);
    let (mine, others): (Vec<&Shape>, Vec<&Shape>) = sheet.shapes.iter().partition(|other| owner(other) == own);
    let area = mine.iter().map(|shape| shape.bounds).reduce(|all, next| all.union(next))?;
    let sound = sheet.panel.sound().inset(-clear);
    let frame = &sheet.panel.frame;
    let free_of_parts = |by: Vec2| {
        let shift = by_axis(|axis| frame.u[axis] * by.x + frame.v[axis] * by.y);
        let bodies: Vec<_> = mover.part.bodies.iter().map(|body| body.moved(shift)).collect();
        scene
            .bodies
            .iter()
            .filter(|other| other.part.id != mover.part.id)
            .all(|other| bodies.iter().all(|body| !body.overlaps(&other.solid)))
    };
    let ways = [Vec2::new(1.0, 0.0), Vec2::new(-1.0, 0.0), Vec2::new(0.0, 1.0), Vec2::new(0.0, -1.0)];
    let found = ways.into_iter().filter_map(|way| {
        let mut by =
            inside(&area, &sound, way).or_else(|| inside(&(area + way * area.size().max_side()), &sound, way))?;
        for _ in 0..STEPS {
            let moved = area + way * by;
            let Some(further) = others.iter().find_map(|other| step(&moved, &other.bounds, way, clear)) else {
                let fits = inside(&moved, &sound, way).is_some_and(|rest| rest <= 1e-9);
                return (fits && by > 0.0 && free_of_parts(way * by)).then_some((by, mover.centre + way * by));
            };
            by += further;
        }
        None
    });
    found.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, centre)| centre)
}

/// Moves a fan or the button to a place with enough sheet around it.
fn moved(remedy: Remedy, scene: &Scene, sheet: &Sheet, shape: &Shape, needed: f64) -> Option<Remedy> {
    // A case whose size is not given follows what hangs on its panels: a place in it is no promise.
    let SizeRule::Given(_) = scene.case.spec.size else { return None };
    let mover = mover(scene, shape)?;
    let centre = place(scene, sheet, shape, &mover, needed)?;
    let tenth = |length: f64| libm::round(length * 10.0) / 10.0;
    let key = |field: &str| format!("{}.{field}", mover.group);
    let across = enter_at_least(&key("across"), tenth(centre.x))?;
    let up = enter_at_least(&key("up"), tenth(centre.y))?;
    let words =
        format!("set the centre of {} {} across and {} up", words::part(mover.part), entered(across), entered(up));
    Some(remedy.mend(words, vec![(key("across"), Value::Number(across)), (key("up"), Value::Number(up))]))
}

/// What the maker can do about a feature, by the choices there are.
fn otherwise(scene: &Scene, shape: &Shape) -> Option<String> {
    Some(
        match shape.feature.purpose {
            Purpose::FanOpening
            | Purpose::FanScrew
            | Purpose::Button
            | Purpose::ButtonCounterbore
            | Purpose::Port
            | Purpose::PortScrew
            | Purpose::PortCounterbore
            | Purpose::DriveScrew
            | Purpose::Foot => return scene.part(shape.feature.about.first()?).and_then(elsewhere),
            Purpose::Vent => "move the vent or make it smaller",
            Purpose::BracketScrew | Purpose::TongueBracketScrew => "take smaller brackets",
            Purpose::CaptiveScrew => "take a smaller captive-nut bracket",
            Purpose::SupplyScrew | Purpose::SupplyOpening => "stand the supply elsewhere",
            Purpose::JointSlot | Purpose::JointRebate => "take another joint there",
            Purpose::CardTie => "take a screw shelf",
            Purpose::ShelfScrew => "hold the card's tab by a tie",
            Purpose::BoardStandoff
            | Purpose::BrickJack
            | Purpose::IoAperture
            | Purpose::ShieldRebate
            | Purpose::CardWindow
            | Purpose::TongueRelief => return None,
        }
        .to_owned(),
    )
}

/// Whether a feature stays where board and card have it when the case grows.
fn stands_fast(scene: &Scene, shape: &Shape) -> bool {
    let of_supply = matches!(shape.feature.purpose, Purpose::SupplyScrew | Purpose::SupplyOpening);
    if of_supply && scene.case.spec.supply.pose == SupplyPose::Auto {
        return false;
    }
    shape.feature.purpose.is_given_by_a_part()
}

/// The panel of the case towards which a direction of a panel points.
fn toward(sheet: &Sheet, way: Vec2) -> Option<Wall> {
    let frame = &sheet.panel.frame;
    let way = by_axis(|axis| frame.u[axis] * way.x + frame.v[axis] * way.y);
    towards(way)
}

/// Ways to `needed` sheet between a shape and an edge of its panel that is `web` away, in the direction of `point`.
pub(super) fn from_edge(scene: &Scene, sheet: &Sheet, shape: &Shape, point: Point, [web, needed]: [f64; 2]) -> Remedy {
    let remedy = Remedy::new();
    if stands_fast(scene, shape) {
        let way = point - shape.bounds.center();
        let way =
            if way.x.abs() > way.y.abs() { Vec2::new(way.x.signum(), 0.0) } else { Vec2::new(0.0, way.y.signum()) };
        let given = matches!(scene.case.spec.size, SizeRule::Given(_));
        let remedy = match toward(sheet, way).filter(|_| given) {
            Some(wall) => remedy.further_out(scene, wall, needed - web),
            None => remedy,
        };
        return remedy.say_if(otherwise(scene, shape)).otherwise("make the case larger");
    }
    one_of(scene, sheet, &[shape], needed)
}

/// Ways to enough sheet between two shapes.
pub(super) fn from_another(scene: &Scene, sheet: &Sheet, one: &Shape, other: &Shape, needed: f64) -> Remedy {
    one_of(scene, sheet, &[one, other], needed)
}

/// A place for the first of some shapes that has one; else what there is to do about each.
fn one_of(scene: &Scene, sheet: &Sheet, shapes: &[&Shape], needed: f64) -> Remedy {
    if let Some(remedy) = shapes.iter().find_map(|shape| moved(Remedy::new(), scene, sheet, shape, needed)) {
        return remedy;
    }
    let mut remedy = Remedy::new();
    let mut told: Option<String> = None;
    for words in shapes.iter().filter_map(|shape| otherwise(scene, shape)) {
        if told.as_ref() != Some(&words) {
            remedy = remedy.say(words.clone());
            told = Some(words);
        }
    }
    remedy.otherwise("make the case larger")
}
