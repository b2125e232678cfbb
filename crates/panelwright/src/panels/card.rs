//! What the card asks of back and floor: its window, what holds its tab, room for its tongues.

use kurbo::Point;

use super::bench::{Bench, Cut};
use super::panel::{Face, FeatureKind, Purpose};
use super::screws::{Grip, Plan};
use crate::design::{CardHold, CardSpec, Method, Wall, Window};
use crate::dimensions::cards;
use crate::dimensions::fasteners::Thread;
use crate::dimensions::source::Source;
use crate::drawing::Contour;
use crate::parts::{card, tongue};

/// Narrowest strip left standing beside a window that runs out to the top, mm (common practice: it is as tall as the
/// card's bracket and held at one end only).
const SLIVER_MM: f64 = 10.0;

/// Hole for a cable tie, mm (common practice: a tie of 2.5 to 4.8 mm passes).
const TIE_HOLE_MM: f64 = 5.0;

/// From the window's edge to the middle of a tie's hole, mm (common practice).
const TIE_BESIDE_MM: f64 = 6.0;

/// From the tab down to the two holes of a tie, mm: one loop around the bracket's edge (common practice).
const TIE_DOWN_MM: [f64; 2] = [6.0, 18.0];

/// Play of a tongue above the floor that needs no slot, mm: shelf ±0.52 and bracket ±0.25 (see
/// `STANDOFF_CLEARING_TONGUE`).
const TONGUE_PLAY_MM: f64 = 0.77;

pub(super) fn features(bench: &mut Bench) {
    let Some(spec) = bench.spec.card.as_ref() else { return };
    window(bench, spec);
    match spec.hold {
        CardHold::Shelf => shelf(bench, spec),
        CardHold::Tie => tie(bench, spec),
        CardHold::None => {}
    }
    tongue_slots(bench, spec);
    tongue_hollows(bench, spec);
}

fn window(bench: &mut Bench, spec: &CardSpec) {
    let place = bench.arrangement.board;
    let window = card::window(spec, &bench.spec.board, bench.thickness());
    let at = |x: f64, z: f64| bench.on(Wall::Back, place.to_case([x, 0.0, z]));
    // Seen from behind, x runs to the left.
    let low = at(window.plug_x[1], window.bottom);
    let step = at(window.plug_x[0], window.step);
    let wide = [at(window.x[1], window.step).x, at(window.x[0], window.step).x];
    let slots = if spec.slots == 1 { "its slot".to_owned() } else { format!("its {} slots", spec.slots) };
    let cut = Cut::new(
        "card-window",
        Purpose::CardWindow,
        match spec.window {
            Window::Edge => {
                format!("Window of the card for {slots}, open at the top so that the tab comes down from above")
            }
            Window::Closed => format!("Window of the card for {slots}, wide enough at its top for the tab"),
        },
        cards::PLUG_FREE_WIDTHS.source(),
    )
    .about("card")
    .about("card-bracket");
    match window.top {
        None => {
            // A sliver beside the window would break off at the first touch: the window then runs out to the side too.
            let width = bench.panel(Wall::Back).size_mm[0];
            let out = |x: f64| match x {
                x if x < SLIVER_MM => 0.0,
                x if x > width - SLIVER_MM => width,
                x => x,
            };
            let steps = [[out(low.x), out(step.x), low.y], [out(wide[0]), out(wide[1]), step.y]];
            bench.notch(Wall::Back, cut, &steps);
        }
        Some(top) => {
            let top = at(0.0, top).y;
            let contour = Contour::polygon([
                low,
                Point::new(step.x, low.y),
                step,
                Point::new(wide[1], step.y),
                Point::new(wide[1], top),
                Point::new(wide[0], top),
                Point::new(wide[0], step.y),
                Point::new(low.x, step.y),
            ]);
            bench.shape(Wall::Back, cut, FeatureKind::Opening, None, contour);
        }
    }
}

fn shelf(bench: &mut Bench, spec: &CardSpec) {
    let thread = tongue::thread(bench.spec.hardware.thread);
    let diameter = bench.clearance(thread);
    for (index, at) in bench.arrangement.shelf_screws.iter().enumerate() {
        let number = index + 1;
        let cut = Cut::new(
            format!("shelf-screw-{number}"),
            Purpose::ShelfScrew,
            format!(
                "Screw {number} of the shelf that carries the card's tab: {} from behind, nut inside",
                thread.label()
            ),
            card::SHELF_SOURCE,
        )
        .about("shelf");
        bench.hole(Wall::Back, cut, *at, diameter);
        let frame = bench.panel(Wall::Back).frame;
        let clamped = card::LUG_THICK_MM + bench.thickness();
        let plan = Plan::new(format!("screw-shelf-{number}"), "screw of the card's shelf", thread, clamped, Grip::Nut)
            .joins(["shelf", "back"]);
        bench.screws.push(plan.screw(frame.to_case(*at, card::LUG_THICK_MM), [0.0, -1.0, 0.0]));
    }
    // The card's own screws, down through the tab into the shelf.
    let height = card::table_height(spec.kind);
    let first = card::slot(spec, &bench.spec.board);
    for (index, slot) in (first..first + u32::from(spec.slots).max(1)).enumerate() {
        let axis = cards::screw_axis(slot, height);
        let [x, y] = axis.get();
        let top = cards::shelf_z(height).get() + cards::BRACKET_THICKNESS.get();
        let head = bench.arrangement.board.to_case([x, y, top]);
        let id = format!("screw-card-{}", index + 1);
        let grip = Grip::Steel(None);
        let plan = Plan::new(
            id,
            "screw of the card's tab into the shelf",
            Thread::Unc6_32,
            cards::BRACKET_THICKNESS.get(),
            grip,
        )
        .joins(["card-bracket", "shelf"]);
        bench.screws.push(Plan { washers: 0..=0, source: Some(axis.source()), ..plan }.screw(head, [0.0, 0.0, -1.0]));
    }
}

fn tie(bench: &mut Bench, spec: &CardSpec) {
    let place = bench.arrangement.board;
    let window = card::window(spec, &bench.spec.board, bench.thickness());
    let shelf = cards::shelf_z(card::table_height(spec.kind)).get();
    for (index, down) in TIE_DOWN_MM.into_iter().enumerate() {
        let at = bench.on(Wall::Back, place.to_case([window.x[1] + TIE_BESIDE_MM, 0.0, shelf - down]));
        let cut = Cut::new(
            format!("card-tie-{}", index + 1),
            Purpose::CardTie,
            "Hole for the cable tie that holds the card's tab",
            Source::common_practice("Workshop custom", "a cable tie around the bracket's edge"),
        )
        .about("card-bracket");
        bench.hole(Wall::Back, cut, at, TIE_HOLE_MM);
    }
}

/// The end of each tongue bends outward, into the back: a hollow in its inside face, open at the window, takes it. A
/// laser cuts no hollows, and thin sheet has none to give: there the checks say what to do.
fn tongue_hollows(bench: &mut Bench, spec: &CardSpec) {
    let (deep, back) = (cards::TONGUE_RELIEF, bench.panel(Wall::Back));
    let thin = bench.thickness() - deep.get() < cards::HOLLOW_LEAVES.get();
    if thin || bench.spec.making.method(Wall::Back) == Method::Laser {
        return;
    }
    let area = back.sound();
    let place = bench.arrangement.board;
    let bottom = card::window(spec, &bench.spec.board, bench.thickness()).bottom;
    let tip = cards::tongue_tip_z(card::table_height(spec.kind)).get() - TONGUE_PLAY_MM;
    let half = cards::TONGUE_SLOT_WIDTH.get() / 2.0;
    let first = card::slot(spec, &bench.spec.board);
    for (index, slot) in (first..first + u32::from(spec.slots).max(1)).enumerate() {
        let middle = cards::tongue_centre_x(slot).get();
        let low = bench.on(Wall::Back, place.to_case([middle + half, 0.0, tip]));
        let high = bench.on(Wall::Back, place.to_case([middle - half, 0.0, bottom]));
        let hollow = kurbo::Rect::from_points(low, high).intersect(area);
        if hollow.width() < half || hollow.height() <= 0.0 {
            // The slot lies beside the back: the size of the case is what is wrong.
            continue;
        }
        let cut = Cut::new(
            format!("tongue-hollow-{}", index + 1),
            Purpose::TongueRelief,
            "Hollow for the end of the card bracket's tongue, which bends outward",
            deep.source(),
        )
        .about("card-bracket");
        let contour = Contour::rect(hollow.x0, hollow.y0, hollow.x1, hollow.y1);
        bench.shape(Wall::Back, cut, FeatureKind::Rebate, Some((deep.get(), Face::Inside)), contour);
    }
}

/// Tongues that would reach the floor get a slot in its rear edge.
fn tongue_slots(bench: &mut Bench, spec: &CardSpec) {
    let height = card::table_height(spec.kind);
    let tip = cards::tongue_tip_z(height);
    if bench.spec.board.standoff_mm >= TONGUE_PLAY_MM - tip.get() - 1e-9 {
        return;
    }
    let place = bench.arrangement.board;
    let first = card::slot(spec, &bench.spec.board);
    let half = cards::TONGUE_SLOT_WIDTH.get() / 2.0;
    for (index, slot) in (first..first + u32::from(spec.slots).max(1)).enumerate() {
        let middle = cards::tongue_centre_x(slot).get();
        let front = cards::TONGUE_SLOT_Y.get()[1];
        let a = bench.on(Wall::Floor, place.to_case([middle + half, front, 0.0]));
        let b = bench.on(Wall::Floor, place.to_case([middle - half, front, 0.0]));
        let cut = Cut::new(
            format!("tongue-slot-{}", index + 1),
            Purpose::TongueRelief,
            "Slot for the tongue of the card's bracket, which reaches below the board",
            cards::TONGUE_SLOT_WIDTH.source(),
        )
        .about("card-bracket");
        bench.notch(Wall::Floor, cut, &[[a.x, b.x, a.y]]);
    }
}
