//! Webs: the sheet left between holes, openings and edges.
//!
//! Three limits, from the heaviest (see [`super::web_limits`]): what the method cannot leave standing (*blocks*); under
//! 2 mm it does not last in fibreboard (*caution*); under the sheet's own thickness, 6 mm at most, it wants care (*note*,
//! one for each panel, and only where the maker can move something: the webs that the standards of board, card and
//! supply leave are theirs). Several thin webs between the same two things give one finding, about the thinnest.

use kurbo::Point;

use super::bracket_edges::other_brackets;
use super::cut_edges::{relief_remedy, to_broken_edge};
use super::finding::{Finding, Severity};
use super::mend::Remedy;
use super::moves::{from_another, from_edge};
use super::rule::Rule;
use super::scene::{Scene, Shape, Sheet};
use super::web_between::{apart, nominal_web, web};
use super::web_limits::{WORKSHOP, WebLimits};
use super::words;
use crate::design::{IoOpening, Material};
use crate::dimensions::acrylic_holes::acrylic_edge_web;
use crate::dimensions::boards::IO_BORDER;
use crate::dimensions::sheets::WEB_MIN_FIBREBOARD;
use crate::dimensions::source::{Source, Sourced};
use crate::panels::Purpose;
use crate::solid::TOUCH_MM;
use crate::sorting::sort_by;

pub(super) const HOLE_TO_EDGE: Rule = Rule {
    name: "hole-to-edge",
    what: "Enough sheet between each hole and the panel's edges; acrylic wants more, or it cracks.",
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
    /// What would mend it.
    pub remedy: Remedy,
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
        found.push(
            rule.finds(thin.severity, text)
                .with_mm(thin.web, thin.needed)
                .with_mends(thin.remedy)
                .with_about(thin.about)
                .with_at(thin.at)
                .with_source(thin.source),
        );
    }
}

pub(super) fn id(sheet: &Sheet, shape: &Shape) -> String {
    format!("{}/{}", sheet.id(), shape.feature.id)
}

/// What would mend a web: what it takes to make it last, or care.
fn remedy(severity: Severity, limit: f64, wider: impl FnOnce(f64) -> Remedy) -> Remedy {
    // A web that does not survive must also last, or a caution stays.
    let lasting = limit.max(WEB_MIN_FIBREBOARD.get());
    match severity {
        Severity::Blocks => wider(lasting),
        Severity::Caution => wider(lasting).say("cut with care"),
        Severity::Note => Remedy::new().say("cut and drill there with care, with the sheet on a flat board"),
    }
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
        Purpose::TongueRelief if shape.feature.blind.is_some() => "the tongue's hollow",
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
    let purpose = shape.feature.purpose;
    !purpose.is_given_by_a_part() && !matches!(purpose, Purpose::JointRebate | Purpose::JointSlot)
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

/// The nearest of the panel's edges to a shape, within `reach`: distance, and the point of the edge. A notch is not
/// measured to the edges it runs out to. Where joints break an edge its real line counts, not the strip they take.
fn nearest_edge(sheet: &Sheet, shape: &Shape, reach: f64) -> Option<(f64, Point)> {
    let sound = sheet.panel.sound();
    let (bounds, centre) = (shape.cut, shape.cut.center());
    let (web, point) = [
        (bounds.x0 - sound.x0, Point::new(sound.x0, centre.y)),
        (sound.x1 - bounds.x1, Point::new(sound.x1, centre.y)),
        (bounds.y0 - sound.y0, Point::new(centre.x, sound.y0)),
        (sound.y1 - bounds.y1, Point::new(centre.x, sound.y1)),
    ]
    .into_iter()
    .filter(|(web, _)| !(shape.feature.notch && *web <= TOUCH_MM))
    .min_by(|a, b| a.0.total_cmp(&b.0))?;
    if sheet.cut_outline.is_empty() || shape.feature.notch || web - sheet.relief_mm >= reach {
        return Some((web, point));
    }
    to_broken_edge(sheet, shape, reach).map(|web| (web, point))
}

/// Sheet that acrylic wants between a screw's hole and the panel's edge; `None` in other sheet.
fn in_acrylic(scene: &Scene, sheet: &Sheet, shape: &Shape) -> Option<Sourced<f64>> {
    let acrylic = scene.case.spec.sheet.material == Material::Acrylic && shape.is_hole();
    let hole = shape.feature.diameter_mm.filter(|_| acrylic)?;
    let bare = [Purpose::Button, Purpose::Port, Purpose::BrickJack, Purpose::Vent, Purpose::CardTie];
    (!bare.contains(&shape.feature.purpose)).then(|| acrylic_edge_web(hole, sheet.panel.thickness_mm))
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
            let acrylic = in_acrylic(scene, sheet, shape);
            let reach = acrylic.map_or(0.0, |wanted| wanted.get()).max(limits.reach());
            let Some((web, point)) = nearest_edge(sheet, shape, reach) else { continue };
            let mut told = limits.weigh(web);
            if let Some(wanted) = acrylic.filter(|wanted| web < wanted.get() - TOUCH_MM) {
                told = told.filter(|(severity, _)| *severity == Severity::Blocks).or(Some((Severity::Caution, wanted)));
            }
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
                    between: format!("{} and the edge of {}", name(shape), words::the_panel(sheet.wall())),
                    remedy: remedy(severity, limit.get(), |needed| match shape.feature.purpose {
                        Purpose::BracketScrew | Purpose::CaptiveScrew | Purpose::TongueBracketScrew
                            if acrylic.is_some() =>
                        {
                            other_brackets(scene, sheet, shape, [web, needed])
                        }
                        _ => from_edge(scene, sheet, shape, point, [web, needed]),
                    }),
                },
            );
        }
    }
    tell(rule, list, found);
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
    sort_by(shapes, |a, b| a.cut.x0.total_cmp(&b.cut.x0).then_with(|| a.feature.id.cmp(&b.feature.id)));
    let mut found = Vec::new();
    for (index, one) in shapes.iter().enumerate() {
        for other in &shapes[index + 1..] {
            if other.cut.x0 - one.cut.x1 >= reach {
                // All later ones begin further right still.
                break;
            }
            if apart(&one.cut, &other.cut) < reach {
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
            let nominal = nominal_web(one, other);
            let by_relief = !note && limits.weigh(nominal).is_none_or(|told| told.0 > severity);
            let wanted = if nominal >= WEB_MIN_FIBREBOARD.get() { WEB_MIN_FIBREBOARD.get() } else { limit.get() };
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
                    remedy: if by_relief {
                        relief_remedy(scene.case.spec, sheet, [one, other], wanted)
                    } else {
                        remedy(severity, limit.get(), |needed| from_another(scene, sheet, one, other, needed))
                    },
                },
            );
        }
    }
    tell(rule, list, found);
}
