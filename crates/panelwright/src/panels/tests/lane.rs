//! A lane's answer is the one that looking at every solid and every feature gives, place by place.

use super::super::bench::Bench;
use super::super::corner::Corner;
use super::super::fixing::{self, Fixing, LegHole};
use super::super::seat::Seat;
use super::super::sheet::{self, Land};
use super::super::site::Site;
use super::super::{Purpose, with_parts};
use crate::arrangement::arrange;
use crate::design::{Seam, Spec, Wall};
use crate::parts::Carrier;
use crate::sample;

/// Steps between the places tried, mm: places of all kinds, none of them round.
const STEP_MM: f64 = 3.7;

/// Looks at everything, as if the bracket stood nowhere else.
fn is_free(bench: &Bench, site: &Site, seat: &Seat, carrier: Carrier) -> bool {
    let Seat { corner, holes, screws } = seat;
    let case = &bench.arrangement.case;
    let legs = corner.legs(case);
    let inner = [0, 1].map(|index| {
        let mut rooms = fixing::inner_rooms(bench, corner, index, &screws[index]);
        rooms.iter_mut().for_each(|room| *room = corner.along(*room));
        rooms
    });
    site.is_free(&legs, carrier)
        && (0..2).all(|index| {
            let panel = bench.panel(corner.walls[index]);
            let land = Land::new(panel, fixing::land(bench, holes[index].fixing));
            let centre = panel.frame.to_panel(corner.hole(case, index)).0;
            sheet::covers_nothing(panel, &legs[index])
                && land.lies_on_sheet(centre)
                && sheet::spots(panel).all(|spot| land.is_clear_of(centre, &spot))
                && (holes[index].fixing != Fixing::Short || screws[index].length_mm.is_some())
                && site.is_free(&inner[index], carrier)
                && fixing::outer_room(bench, corner, index, &screws[index])
                    .is_none_or(|room| site.is_free_at_rest(&[corner.along(room)]))
        })
        && !inner[0].iter().any(|one| inner[1].iter().any(|other| one.overlaps(other)))
}

fn seat(bench: &Bench, walls: [Wall; 2], gaps: [f64; 2], fixing: Fixing, at: f64) -> Seat {
    let hole = || LegHole {
        id: "trial".to_owned(),
        purpose: Purpose::BracketScrew,
        why: String::new(),
        what: "screw of a bracket",
        fixing,
    };
    let corner = Corner { walls, gaps, size: bench.spec.hardware.bracket, filed_mm: 0.0, at };
    Seat::new(bench, "trial", corner, [hole(), hole()])
}

#[test]
fn a_lane_answers_as_looking_at_everything_does() {
    let mut answers = [0, 0];
    for seed in 0..60 {
        let spec = Spec::of(&sample::design(seed, seed % 3 == 2));
        let arrangement = arrange(&spec);
        let bench = with_parts(&spec, &arrangement);
        let site = Site::new(&bench);
        for (seam, fixing, carrier) in [
            (Seam::FloorBack, Fixing::Through(0.0), Carrier::Chassis),
            (Seam::LeftTop, Fixing::Through(0.0), Carrier::Sleeve),
            (Seam::RightFront, Fixing::Short, Carrier::Sleeve),
            (Seam::FrontTop, Fixing::Captive, Carrier::Sleeve),
        ] {
            let [from, to] = super::super::hardware::clear_of_sliding(&bench, seam.walls());
            let gaps = [0.0, arrangement.case.gap_mm];
            let trial = |at: f64| seat(&bench, seam.walls(), gaps, fixing, at);
            let lane = trial((from + to) / 2.0).lane(&bench, &site, [from, to], carrier);
            let places = (0..).map(|step| from + f64::from(step) * STEP_MM).take_while(|at| *at < to);
            for at in places {
                let expected = is_free(&bench, &site, &trial(at), carrier);
                assert_eq!(lane.is_free(at), expected, "seed {seed}, {seam:?} at {at}");
                answers[usize::from(expected)] += 1;
            }
        }
    }
    assert!(answers.iter().all(|count| *count > 1000), "both answers are tried: {answers:?}");
}
