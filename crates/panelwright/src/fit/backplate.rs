//! Where a cooler's backplate may hang below the board, and the standoffs beside it.
//!
//! Backplates lie around the holes of their socket: a square, or an oblong that lies either way. No standard fixes where
//! the socket is: until the maker has measured it, the room is as much larger as boards are known to differ.

use super::finding::Finding;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::BoardForm;
use crate::dimensions::boards::{PAD_SQUARE, UNDERSIDE_BACKPLATE};
use crate::dimensions::coolers::{MOUNT_AM4, MOUNT_LGA115X, MOUNT_LGA1700, SOCKET_SCATTER};
use crate::parts::{PartKind, board};
use crate::solid::{Aabb, TOUCH_MM};

pub(super) const STANDOFF_AT_SOCKET: Rule = Rule {
    name: "standoff-at-socket",
    what: "No standoff of the board stands where its processor, measured, has the cooler's backplate.",
    source: MOUNT_AM4.source(),
    look: standoff_at_socket,
};

/// The holes around sockets: width and depth, mm, the oblong of AM4 and AM5 both ways.
fn mounts() -> [[f64; 2]; 4] {
    let square = |side: f64| [side, side];
    let [one, other] = MOUNT_AM4.get();
    [square(MOUNT_LGA115X.get()), square(MOUNT_LGA1700.get()), [one, other], [other, one]]
}

/// The rooms in which a backplate may hang, as far as they lie below the board.
pub(super) fn rooms(scene: &Scene) -> impl Iterator<Item = Aabb> {
    let spec = &scene.case.spec.board;
    let place = scene.case.arrangement.board;
    let outline = board::outline(spec);
    let [x, y] = board::socket(spec);
    let strays = SOCKET_SCATTER.get()[usize::from(spec.form != BoardForm::MiniItx)];
    let stray = |measured: Option<f64>| if measured.is_some() { 0.0 } else { strays };
    let beyond = [stray(spec.socket_from_right_mm), stray(spec.socket_from_rear_mm)];
    mounts().into_iter().filter_map(move |[width, depth]| {
        let (half_x, half_y) = (width / 2.0 + beyond[0], depth / 2.0 + beyond[1]);
        let x = [(x - half_x).max(outline.left_x), (x + half_x).min(outline.right_x)];
        let y = [(y - half_y).max(outline.rear_y), (y + half_y).min(outline.front_y)];
        (x[0] < x[1] && y[0] < y[1]).then(|| board::u_box(&place, x, y, [-UNDERSIDE_BACKPLATE.get(), 0.0]))
    })
}

/// The room that every backplate fills, whatever the socket: the least of their widths, both ways.
fn core(scene: &Scene) -> Option<Aabb> {
    let spec = &scene.case.spec.board;
    spec.socket_from_right_mm.and(spec.socket_from_rear_mm)?;
    let [x, y] = board::socket(spec);
    let half = mounts().into_iter().flatten().fold(f64::INFINITY, f64::min) / 2.0;
    Some(board::u_box(
        &scene.case.arrangement.board,
        [x - half, x + half],
        [y - half, y + half],
        [-UNDERSIDE_BACKPLATE.get(), 0.0],
    ))
}

fn standoff_at_socket(scene: &Scene, found: &mut Vec<Finding>) {
    if scene.case.spec.cooler.is_none() {
        return;
    }
    let Some(core) = core(scene) else { return };
    for standoff in scene.of(PartKind::Standoff) {
        let middle = standoff.bounds().centre();
        // The board keeps a square around each of its holes free, for the standoff and nothing else.
        let half = PAD_SQUARE.get() / 2.0;
        let beside = (0..2).map(|axis| half - (middle[axis] - core.centre()[axis]).abs() + core.size()[axis] / 2.0);
        let shared = beside.fold(f64::INFINITY, f64::min);
        if shared <= TOUCH_MM {
            continue;
        }
        found.push(
            STANDOFF_AT_SOCKET
                .caution(format!(
                    "{} stands {} into the place of the cooler's backplate: no board has its processor there.",
                    words::capital(&words::part(standoff)),
                    words::short(shared)
                ))
                .with_mm(-shared, 0.0)
                .with_remedy("Measure again how far the processor's middle is from the rear and the right edge.")
                .with_about([standoff.id.as_str(), "cooler"])
                .with_at([middle[0], middle[1], scene.board_under()]),
        );
    }
}
