//! Webs: the sheet left between holes, openings and edges.
//!
//! Three limits, from the heaviest (see [`super::web_limits`]): what the method cannot leave standing (*blocks*); under
//! 2 mm it does not last in fibreboard (*caution*); under the sheet's own thickness, 6 mm at most, it wants care (*note*,
//! one for each panel, and only where the maker can move something: the webs that the standards of board, card and supply leave are theirs). Several thin
//! webs between the same two things give one finding, about the thinnest.

use kurbo::{Point, Rect};

use super::finding::{Finding, Severity};
use super::rule::Rule;
use super::scene::{Scene, Shape, Sheet};
use super::web_limits::{WORKSHOP, WebLimits};
use super::words;
use crate::design::IoOpening;
use crate::dimensions::boards::IO_BORDER;
use crate::dimensions::sheets::WEB_MIN_FIBREBOARD;
use crate::dimensions::source::Source;
use crate::panels::Purpose;
use crate::solid::TOUCH_MM;
use crate::sorting::sort_by;

pub(super) const HOLE_TO_EDGE: Rule = Rule {
    name: "hole-to-edge",
    what: "Enough sheet between each hole and the panel's edges.",
    source: WORKSHOP,
    look: |scene, found| edges(scene, found, EdgeOf::Hole),
};

pub(super) const OPENING_TO_EDGE: Rule = Rule {
    name: "opening-to-edge",
    what: "Enough sheet between each opening and the panel's edges.",
    source: WORKSHOP,
    look: |scene, found| edges(scene, found, EdgeOf::Opening),
};

pub(super) const APERTURE_TO_EDGE: Rule = Rule {
    name: "aperture-to-edge",
    what: "Enough sheet beside the board's connector opening; with a rebate, its flat border of 2.54 mm.",
    source: IO_BORDER.source(),
    look: |scene, found| edges(scene, found, EdgeOf::Aperture),
};

pub(super) const HOLE_TO_HOLE: Rule = Rule {
    name: "hole-to-hole",
    what: "Enough sheet between any two holes.",
    source: WORKSHOP,
    look: |scene, found| pairs(scene, found, PairOf::Holes),
};

pub(super) const HOLE_TO_OPENING: Rule = Rule {
    name: "hole-to-opening",
    what: "Enough sheet between any hole and any opening.",
    source: WORKSHOP,
    look: |scene, found| pairs(scene, found, PairOf::HoleAndOpening),
};

pub(super) const OPENING_TO_OPENING: Rule = Rule {
    name: "opening-to-opening",
    what: "Enough sheet between any two openings.",
    source: WORKSHOP,
    look: |scene, found| pairs(scene, found, PairOf::Openings),
};

#[derive(Clone, Copy, PartialEq, Eq)]
enum EdgeOf {
    Hole,
    Opening,
    Aperture,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum PairOf {
    Holes,
    HoleAndOpening,
    Openings,
}

/// One thin web, or several between the same two things.
pub(super) struct Thin {
    /// Webs of the same key and weight are told once.
    pub key: String,
    pub severity: Severity,
    pub count: usize,
    pub web: f64,
    pub needed: f64,
    pub source: Source,
    pub about: Vec<String>,
    pub at: [f64; 3],
    pub between: String,
}

/// Adds a web to the one of the same key, of which the thinnest speaks for all.
pub(super) fn add(list: &mut Vec<Thin>, new: Thin) {
    match list.iter_mut().find(|known| known.key == new.key && known.severity == new.severity) {
        Some(known) => {
            let count = known.count + 1;
            if new.web < known.web {
                *known = new;
            }
            known.count = count;
        }
        None => list.push(new),
    }
}

fn tell(rule: &Rule, list: Vec<Thin>, found: &mut Vec<Finding>) {
    for thin in list {
        let more = match thin.count {
            1 => String::new(),
            count => format!(" ({count} such webs, this is the thinnest.)"),
        };
        let text = if thin.web <= TOUCH_MM {
            format!("{} run into each other.{more}", words::capital(&thin.between))
        } else {
            format!("Only {} of sheet between {}.{more}", words::mm(thin.web), thin.between)
        };
        let remedy = match thin.severity {
            Severity::Blocks => {
                format!("Move one of them by {} or more.", words::at_least(WEB_MIN_FIBREBOARD.get() - thin.web))
            }
            Severity::Caution => {
                format!("Move one of them by {} or more, or cut with care.", words::at_least(thin.needed - thin.web))
            }
            Severity::Note => "Cut and drill there with care, with the sheet on a flat board.".to_owned(),
        };
        found.push(
            rule.finds(thin.severity, text)
                .with_mm(thin.web, thin.needed)
                .with_remedy(remedy)
                .with_about(thin.about)
                .with_at(thin.at)
                .with_source(thin.source),
        );
    }
}

pub(super) fn id(sheet: &Sheet, shape: &Shape) -> String {
    format!("{}/{}", sheet.id(), shape.feature.id)
}

/// What a shape belongs to: features with the same owner speak with one voice.
pub(super) fn owner(shape: &Shape) -> String {
    if shape.feature.about.is_empty() { format!("{:?}", shape.feature.purpose) } else { shape.feature.about.join(" ") }
}

/// What people call a feature within a sentence.
pub(super) fn name(shape: &Shape) -> &'static str {
    match shape.feature.purpose {
        Purpose::BoardStandoff => "a standoff's hole",
        Purpose::DriveScrew => "a drive's screw hole",
        Purpose::SupplyScrew => "a screw hole of the supply",
        Purpose::SupplyOpening => "the supply's opening",
        Purpose::BrickJack => "the jack's hole",
        Purpose::IoAperture => "the board's connector opening",
        Purpose::ShieldRebate => "the shield's rebate",
        Purpose::CardWindow => "the card window",
        Purpose::TongueRelief => "the tongue's slot",
        Purpose::ShelfScrew => "a screw hole of the shelf",
        Purpose::CardTie => "a hole for the card's tie",
        Purpose::TongueBracketScrew => "a screw hole of the tongue's bracket",
        Purpose::FanOpening => "a fan's opening",
        Purpose::FanScrew => "a fan's screw hole",
        Purpose::Button => "the button's hole",
        Purpose::ButtonCounterbore => "the button's counterbore",
        Purpose::Port => "a connector's opening",
        Purpose::PortScrew => "a connector's screw hole",
        Purpose::PortCounterbore => "a connector's counterbore",
        Purpose::BracketScrew => "a bracket's screw hole",
        Purpose::CaptiveScrew => "a captive nut's screw hole",
        Purpose::Foot => "a foot's hole",
        Purpose::Vent => "a vent",
        Purpose::JointRebate => "a joint's rebate",
        Purpose::JointSlot => "a tab's slot",
    }
}

pub(super) fn two(one: &Shape, other: &Shape) -> String {
    let (a, b) = (name(one), name(other));
    if a == b { format!("{a} and another") } else { format!("{a} and {b}") }
}

/// Whether the maker can move a feature: those that the standards of board, card and supply place stay where they are.
fn is_movable(shape: &Shape) -> bool {
    !matches!(
        shape.feature.purpose,
        Purpose::BoardStandoff
            | Purpose::SupplyScrew
            | Purpose::SupplyOpening
            | Purpose::IoAperture
            | Purpose::ShieldRebate
            | Purpose::CardWindow
            | Purpose::TongueRelief
            | Purpose::ShelfScrew
            | Purpose::CardTie
            | Purpose::JointRebate
            | Purpose::JointSlot
    )
}

fn edge_class(shape: &Shape) -> EdgeOf {
    if shape.feature.purpose == Purpose::IoAperture {
        EdgeOf::Aperture
    } else if shape.is_hole() {
        EdgeOf::Hole
    } else {
        EdgeOf::Opening
    }
}

/// The nearest of the panel's edges to a shape: distance, and the point of the edge. A notch is not measured to the
/// edges it runs out to.
fn nearest_edge(sheet: &Sheet, shape: &Shape) -> Option<(f64, Point)> {
    let sound = sheet.panel.sound();
    let (bounds, centre) = (shape.bounds, shape.bounds.center());
    [
        (bounds.x0 - sound.x0, Point::new(sound.x0, centre.y)),
        (sound.x1 - bounds.x1, Point::new(sound.x1, centre.y)),
        (bounds.y0 - sound.y0, Point::new(centre.x, sound.y0)),
        (sound.y1 - bounds.y1, Point::new(centre.x, sound.y1)),
    ]
    .into_iter()
    .filter(|(web, _)| !(shape.feature.notch && *web <= TOUCH_MM))
    .min_by(|a, b| a.0.total_cmp(&b.0))
}

fn edges(scene: &Scene, found: &mut Vec<Finding>, class: EdgeOf) {
    let rule = match class {
        EdgeOf::Hole => &HOLE_TO_EDGE,
        EdgeOf::Opening => &OPENING_TO_EDGE,
        EdgeOf::Aperture => &APERTURE_TO_EDGE,
    };
    let rebated = scene.case.spec.board.io_opening == IoOpening::Rebate;
    let mut list = Vec::new();
    for sheet in &scene.sheets {
        let limits = WebLimits::of(scene, sheet);
        for shape in sheet.shapes.iter().filter(|shape| shape.is_through() && edge_class(shape) == class) {
            let Some((web, point)) = nearest_edge(sheet, shape) else { continue };
            let mut told = limits.weigh(web);
            let border = IO_BORDER.get();
            if class == EdgeOf::Aperture
                && rebated
                && (WEB_MIN_FIBREBOARD.get() - TOUCH_MM..border - TOUCH_MM).contains(&web)
            {
                told = Some((Severity::Caution, IO_BORDER));
            }
            let Some((severity, limit)) = told else { continue };
            let note = severity == Severity::Note;
            if note && !is_movable(shape) {
                continue;
            }
            add(
                &mut list,
                Thin {
                    key: if note { sheet.id().to_owned() } else { format!("{} {}", sheet.id(), owner(shape)) },
                    severity,
                    count: 1,
                    web: web.max(0.0),
                    needed: limit.get(),
                    source: limit.source(),
                    about: vec![sheet.id().to_owned(), id(sheet, shape)],
                    at: sheet.panel.frame.to_case(point, 0.0),
                    between: format!("{} and the edge of {}", name(shape), words::panel(sheet.wall())),
                },
            );
        }
    }
    tell(rule, list, found);
}

/// Distance between two rectangles' sides, 0 when they meet.
pub(super) fn apart(a: &Rect, b: &Rect) -> f64 {
    let x = (a.x0 - b.x1).max(b.x0 - a.x1);
    let y = (a.y0 - b.y1).max(b.y0 - a.y1);
    x.max(y)
}

/// Whether one rectangle lies within another.
fn within(inner: &Rect, outer: &Rect) -> bool {
    outer.x0 <= inner.x0 && inner.x1 <= outer.x1 && outer.y0 <= inner.y0 && inner.y1 <= outer.y1
}

/// Sheet between two shapes: 0 when they touch, cross, or one lies in the other.
pub(super) fn web(one: &Shape, other: &Shape) -> f64 {
    match (one.round(), other.round()) {
        (Some((a, r)), Some((b, s))) => (libm::sqrt(a.distance_squared(b)) - r - s).max(0.0),
        (Some((centre, radius)), None) => round_web(centre, radius, other),
        (None, Some((centre, radius))) => round_web(centre, radius, one),
        (None, None) => {
            let (a, b) = (&one.feature.contour, &other.feature.contour);
            let holds = |outer: &Shape, inner: &Shape| {
                within(&inner.bounds, &outer.bounds)
                    && inner.feature.contour.vertices().first().is_some_and(|at| outer.feature.contour.contains(at.at))
            };
            if holds(one, other) || holds(other, one) { 0.0 } else { a.distance_to(b) }
        }
    }
}

/// Sheet between a circle and a shape of another form.
fn round_web(centre: Point, radius: f64, shape: &Shape) -> f64 {
    let contour = &shape.feature.contour;
    let inside = shape.bounds.contains(centre) && contour.contains(centre);
    if inside { 0.0 } else { (contour.distance_to_point(centre) - radius).max(0.0) }
}

fn pair_class(one: &Shape, other: &Shape) -> PairOf {
    match (one.is_hole(), other.is_hole()) {
        (true, true) => PairOf::Holes,
        (false, false) => PairOf::Openings,
        _ => PairOf::HoleAndOpening,
    }
}

/// Every two shapes nearer than `reach`, seen once: sorted from left to right, each looks only as far as it must.
fn near<'s, 'a>(shapes: &mut [&'s Shape<'a>], reach: f64) -> Vec<(&'s Shape<'a>, &'s Shape<'a>)> {
    sort_by(shapes, |a, b| a.bounds.x0.total_cmp(&b.bounds.x0).then_with(|| a.feature.id.cmp(&b.feature.id)));
    let mut found = Vec::new();
    for (index, one) in shapes.iter().enumerate() {
        for other in &shapes[index + 1..] {
            if other.bounds.x0 - one.bounds.x1 >= reach {
                // Later ones begin further right still, but one wide shape may yet reach them.
                break;
            }
            if apart(&one.bounds, &other.bounds) < reach {
                found.push((*one, *other));
            }
        }
    }
    found
}

fn pairs(scene: &Scene, found: &mut Vec<Finding>, class: PairOf) {
    let rule = match class {
        PairOf::Holes => &HOLE_TO_HOLE,
        PairOf::HoleAndOpening => &HOLE_TO_OPENING,
        PairOf::Openings => &OPENING_TO_OPENING,
    };
    let mut list = Vec::new();
    for sheet in &scene.sheets {
        let limits = WebLimits::of(scene, sheet);
        let mut shapes: Vec<&Shape> = sheet.shapes.iter().filter(|shape| shape.is_through()).collect();
        for (one, other) in near(&mut shapes, limits.reach()) {
            if pair_class(one, other) != class {
                continue;
            }
            let web = web(one, other);
            let Some((severity, limit)) = limits.weigh(web) else { continue };
            let (mut first, mut second) = (owner(one), owner(other));
            if first > second {
                std::mem::swap(&mut first, &mut second);
            }
            let note = severity == Severity::Note;
            if note && (first == second || !(is_movable(one) || is_movable(other))) {
                continue;
            }
            let middle = one.feature.centre.midpoint(other.feature.centre);
            add(
                &mut list,
                Thin {
                    key: if note { sheet.id().to_owned() } else { format!("{} {first} {second}", sheet.id()) },
                    severity,
                    count: 1,
                    web,
                    needed: limit.get(),
                    source: limit.source(),
                    about: vec![sheet.id().to_owned(), id(sheet, one), id(sheet, other)],
                    at: sheet.panel.frame.to_case(middle, 0.0),
                    between: two(one, other),
                },
            );
        }
    }
    tell(rule, list, found);
}
