//! What the supply asks of floor or back: its screw holes and the opening for inlet and air; the jack of a brick.

use kurbo::Point;

use super::bench::{Bench, Cut};
use super::front::SPANNER_MM;
use super::panel::{Face, FeatureKind, Purpose};
use super::screws::{Grip, Plan};
use crate::design::Wall;
use crate::dimensions::connectors::BARREL_SOCKETS;
use crate::dimensions::fasteners::{Fit, clearance_hole};
use crate::dimensions::source::Source;
use crate::dimensions::supplies;
use crate::drawing::Contour;
use crate::drawing::number::format_number;
use crate::parts::supply::{hole_inset_mm, holes, off_face_mm};
use crate::parts::wall;
use crate::solid::TOUCH_MM;

/// Sheet left between a screw hole and the opening, mm (common practice).
const LAND_MM: f64 = 3.0;

/// The opening stays so far inside the supply's face, mm, where no screw asks for more: the face then covers the edge
/// of the cut (common practice).
const INSIDE_FACE_MM: f64 = 6.0;

/// An opening smaller than this across is not worth cutting, mm: an inlet's plug is about 20 wide (common practice).
const LEAST_OPENING_MM: f64 = 20.0;

/// Two corners nearer than this are one point measured twice, mm.
const LEAST_MEASURED_MM: f64 = 1.0;

/// How deep a screw may go into a supply, mm (from memory: measure yours; parts behind the face stand further back).
const DEEPEST_MM: f64 = 6.5;

/// Radius of the opening's corners, mm: what a hand saw and file leave (common practice).
const CORNER_MM: f64 = 3.0;

/// The opening the maker measured.
const MEASURED_OPENING: Source = Source::common_practice("The maker's measure", "opening in the face of this supply");

pub(super) fn features(bench: &mut Bench) {
    match bench.arrangement.supply {
        Some(_) => built_in(bench),
        None => jack(bench),
    }
}

fn built_in(bench: &mut Bench) {
    let Some(place) = bench.arrangement.supply else { return };
    let wall = place.wall;
    let face = [place.size_mm[0], place.size_mm[1]];
    let holes = holes(&bench.spec.supply);
    let on_face = |at: [f64; 2], inset: f64| off_face_mm(face, at, inset) <= TOUCH_MM;
    let thread = supplies::thread().get();
    let diameter = bench.clearance(thread);
    let side = if wall == Wall::Floor { "from below" } else { "from behind" };
    // A hole off the face is a wrong measure, of which the checks tell: nothing is drilled for it.
    for (index, ([x, y], source)) in holes.iter().enumerate().filter(|(_, (at, _))| on_face(*at, hole_inset_mm())) {
        let number = index + 1;
        let at = bench.on(wall, place.face.to_case(Point::new(*x, *y), 0.0));
        let cut = Cut::new(
            format!("supply-hole-{number}"),
            Purpose::SupplyScrew,
            format!("Screw {number} of the supply: {} {side}", thread.label()),
            *source,
        )
        .about("supply");
        bench.hole(wall, cut, at, diameter);
        let id = format!("screw-supply-{number}");
        let grip = Grip::Steel(Some(DEEPEST_MM));
        let plan = Plan::new(id, "screw of the supply", thread, bench.clamped(), grip).joins([wall.name(), "supply"]);
        bench.screw_from_outside(wall, at, Plan { washers: 1..=3, ..plan });
    }
    let centres: Vec<[f64; 2]> =
        holes.iter().map(|(hole, _)| *hole).filter(|at| on_face(*at, hole_inset_mm())).collect();
    let derived = Source::derived("Size of the supply's face", "as large as its screws leave sheet around them");
    let (found, source) = match bench.spec.supply.opening {
        Some(corners) => (between(corners).filter(|_| corners.iter().all(|at| on_face(*at, 0.0))), MEASURED_OPENING),
        // As for the widest screw holes: another fit of holes must not make the opening another one.
        None => (opening(face, &centres, clearance_hole(thread, Fit::Coarse).get() / 2.0), derived),
    };
    let Some([x0, y0, x1, y1]) = found else { return };
    let a = bench.on(wall, place.face.to_case(Point::new(x0, y0), 0.0));
    let b = bench.on(wall, place.face.to_case(Point::new(x1, y1), 0.0));
    let cut = Cut::new(
        "supply-opening",
        Purpose::SupplyOpening,
        "Opening for the supply's mains inlet, its switch and its outgoing air",
        source,
    )
    .about("supply");
    // A measured opening may be smaller than the usual corners.
    let corner = CORNER_MM.min((b.x - a.x).abs() / 2.0).min((b.y - a.y).abs() / 2.0);
    bench.shape(wall, cut, FeatureKind::Opening, None, Contour::rounded_rect(a.x, a.y, b.x, b.y, corner));
}

/// The rectangle between two corners; `None` when they are nearer than a saw's cut.
fn between([one, other]: [[f64; 2]; 2]) -> Option<[f64; 4]> {
    let found = [one[0].min(other[0]), one[1].min(other[1]), one[0].max(other[0]), one[1].max(other[1])];
    (found[2] - found[0] >= LEAST_MEASURED_MM && found[3] - found[1] >= LEAST_MEASURED_MM).then_some(found)
}

/// The largest upright opening of a face that keeps clear of its screws: x0, y0, x1, y1 in the face's frame.
///
/// Without known screws there is none: a saw cut cannot be taken back, and the maker has yet to measure. Each hole
/// pushes the side nearest to it.
fn opening(face: [f64; 2], holes: &[[f64; 2]], radius: f64) -> Option<[f64; 4]> {
    if holes.is_empty() {
        return None;
    }
    let mut inset = [INSIDE_FACE_MM; 4];
    for hole in holes {
        let from = [hole[0], hole[1], face[0] - hole[0], face[1] - hole[1]];
        let nearest = (0..4).min_by(|a, b| from[*a].total_cmp(&from[*b])).unwrap_or(0);
        inset[nearest] = inset[nearest].max(from[nearest] + radius + LAND_MM);
    }
    let found = [inset[0], inset[1], face[0] - inset[2], face[1] - inset[3]];
    (found[2] - found[0] >= LEAST_OPENING_MM && found[3] - found[1] >= LEAST_OPENING_MM).then_some(found)
}

fn jack(bench: &mut Bench) {
    let (Some(place), Some(diameter)) = (bench.arrangement.jack, bench.spec.supply.jack_hole_mm) else { return };
    let about = "jack";
    let measured = Source::common_practice("The maker's measure", "thread of the brick's jack");
    let cut = Cut::new("jack", Purpose::BrickJack, "Hole for the jack of the external brick", measured).about(about);
    bench.hole(place.wall, cut, place.centre, diameter);
    let socket = &BARREL_SOCKETS[0];
    let deep = bench.thickness() - socket.panel_max_mm;
    if deep > 0.0 {
        // A spanner goes around its nut.
        let wide = wall::jack_side_mm(Some(diameter)) + SPANNER_MM;
        let why = format!(
            "Counterbore from inside: the jack clamps at most {} mm of sheet",
            format_number(socket.panel_max_mm, 2)
        );
        let cut = Cut::new("jack-counterbore", Purpose::PortCounterbore, why, socket.source).about(about);
        let kind = FeatureKind::Counterbore;
        bench.round(place.wall, cut, kind, Some((deep, Face::Inside)), place.centre, wide);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 150 x 86, holes at (6,80) (144,80) (6,16) (120,6), 3.9 mm: left and right 6 + 1.95 + 3, bottom the same, top 6.
    #[test]
    fn the_opening_of_a_full_size_supply_leaves_sheet_around_each_screw() {
        let holes = [[6.0, 80.0], [144.0, 80.0], [6.0, 16.0], [120.0, 6.0]];
        let [x0, y0, x1, y1] = opening([150.0, 86.0], &holes, 1.95).unwrap();
        assert!((x0 - 10.95).abs() < 1e-9 && (x1 - 139.05).abs() < 1e-9 && (y0 - 10.95).abs() < 1e-9 && y1 <= 80.0);
        for hole in holes {
            let dx = (x0 - hole[0]).max(hole[0] - x1).max(0.0);
            let dy = (y0 - hole[1]).max(hole[1] - y1).max(0.0);
            assert!(libm::hypot(dx, dy) >= 1.95 + 3.0 - 1e-9, "{hole:?}");
        }
    }

    /// An SFX supply, whose holes and openings nobody publishes, once its owner has measured them: the way from the
    /// choices to the panel, and the notes that then fall silent.
    #[test]
    fn what_the_maker_measured_is_drilled_and_cut() {
        use crate::Build;
        use crate::design::Design;
        let mut design = Design::default();
        design.set_json("supply.kind", &"sfx".into()).unwrap();
        let cut = |design: &Design| {
            let build = Build::of(design);
            let panel = build.panels.iter().find(|panel| panel.wall == build.arrangement.supply.unwrap().wall).unwrap();
            let of = |purpose| {
                panel.features.iter().filter(|feature| feature.purpose == purpose).cloned().collect::<Vec<_>>()
            };
            let told = build.findings.iter().any(|finding| finding.rule == "supply-holes-unknown");
            (of(Purpose::SupplyScrew), of(Purpose::SupplyOpening), told)
        };
        let (holes, openings, told) = cut(&design);
        assert!(holes.is_empty() && openings.is_empty() && told);
        let measured = serde_json::json!([[6.0, 6.0], [119.0, 6.0], [6.0, 57.5], [119.0, 57.5]]);
        design.set_json("supply.holes", &measured).unwrap();
        let (holes, openings, told) = cut(&design);
        assert_eq!((holes.len(), openings.len(), told), (4, 1, false));
        let apart = (holes[1].centre - holes[0].centre).hypot();
        assert!((apart - 113.0).abs() < 1e-9, "{apart}");
        design.set_json("supply.opening", &serde_json::json!([[100.0, 50.0], [20.0, 12.0]])).unwrap();
        let (holes, openings, _) = cut(&design);
        let bounds = openings[0].contour.bbox();
        let mut size = [bounds.width(), bounds.height()];
        size.sort_by(f64::total_cmp);
        assert!((size[0] - 38.0).abs() < 1e-9 && (size[1] - 80.0).abs() < 1e-9, "{size:?}");
        assert_eq!(openings[0].source, MEASURED_OPENING);
        // The corner measured as (20, 12) lies 14 and 6 from the hole at (6, 6), whichever way the supply stands.
        let near =
            holes.iter().map(|hole| openings[0].contour.distance_to_point(hole.centre)).fold(f64::INFINITY, f64::min);
        assert!((near - libm::hypot(14.0, 6.0)).abs() < 1.3, "{near}");
        // An opening alone is cut too.
        design.set_json("supply.holes", &serde_json::json!([])).unwrap();
        let (holes, openings, told) = cut(&design);
        assert_eq!((holes.len(), openings.len(), told), (0, 1, true));
    }

    #[test]
    fn nothing_is_cut_for_a_supply_whose_screws_nobody_has_measured() {
        assert_eq!(opening([125.0, 63.5], &[], 1.95), None);
    }
}
