//! Pieces in the openings of other pieces: what falls out of a large opening is cut into a small piece first.
//!
//! An opening goes where its piece goes, so what lies in it is settled before anything is laid on a sheet: the pieces
//! that find room in openings, largest first, are taken out of the job, and are put back beside their hosts when the
//! plan is made. A piece in an opening holds no others itself: the order of cutting then has two steps, not many.
//!
//! A piece with a direction, or one that must not be turned, only goes into a host of the same kind and lies in it
//! upright: whichever way the host may lie, it may lie, too.

use super::board::{Board, Fit, Place, Split};
use super::job::{Grain, Job, Method, Piece, mm, units};
use super::plan::{Placed, Plan, Reason, Rect, Unplaced};
use super::problem::{Block, Problem};
use crate::sorting::sort_by_key;

/// A piece in an opening.
#[derive(Clone, Debug)]
struct Inside {
    piece: usize,
    /// The job's piece whose opening it lies in, and which one of them.
    host: usize,
    which: usize,
    /// Where, in the host's own directions.
    at: Block,
    turned: bool,
}

/// An opening of one particular piece, and what is free in it.
struct Room {
    host: usize,
    which: usize,
    /// Its lower left corner in the host's own directions.
    x: i64,
    y: i64,
    board: Board,
}

/// What was put into openings, and the job that is left for the sheets.
#[derive(Clone, Debug)]
pub(super) struct Nest {
    inside: Vec<Inside>,
    /// The job without what lies in openings.
    pub rest: Job,
    /// By piece: whether it could lie in some opening.
    fits_some: Vec<bool>,
}

impl Nest {
    /// Takes a job that has been validated.
    pub fn new(job: &Job) -> Self {
        let mut nest = Self { inside: Vec::new(), rest: job.clone(), fits_some: vec![false; job.pieces.len()] };
        let gap = units(job.rules.gap);
        let hosts: Vec<usize> = (0..job.pieces.len())
            .filter(|&host| job.rules.method == Method::Free && !job.pieces[host].openings.is_empty())
            .collect();
        if hosts.is_empty() {
            return nest;
        }
        // A host that no sheet holds brings no openings.
        let too_big: Vec<usize> = Problem::new(job).too_big.iter().map(|unplaced| unplaced.piece).collect();
        let opening = |rect: &Rect| Block {
            x: units(rect.x),
            y: units(rect.y),
            w: units(rect.width) + gap,
            h: units(rect.height) + gap,
        };
        let mut rooms: Vec<Room> = Vec::new();
        for &host in hosts.iter().filter(|host| !too_big.contains(host)) {
            for which in 0..job.pieces[host].count {
                rooms.extend(job.pieces[host].openings.iter().map(opening).map(|free| Room {
                    host,
                    which,
                    x: free.x,
                    y: free.y,
                    board: Board::new(free.w, free.h, Method::Free),
                }));
            }
        }
        let grained = job.sheets.iter().any(|sheet| sheet.grain != Grain::None);
        let size = |piece: &Piece| (units(piece.width) + gap, units(piece.height) + gap);
        for (piece, fits) in job.pieces.iter().zip(&mut nest.fits_some) {
            let (w, h) = size(piece);
            let takes =
                |room: &Room| room.board.best(w, h, ways(piece, &job.pieces[room.host], grained), Fit::Small).is_some();
            *fits = rooms.iter().filter(|room| room.which == 0).any(takes);
        }
        let mut order: Vec<usize> = (0..job.pieces.len()).filter(|&piece| nest.fits_some[piece]).collect();
        sort_by_key(&mut order, |&piece| {
            let (w, h) = size(&job.pieces[piece]);
            -w * h
        });
        for piece in order {
            let (w, h) = size(&job.pieces[piece]);
            for _ in 0..job.pieces[piece].count {
                let mut best: Option<(usize, Place)> = None;
                for (index, room) in rooms.iter().enumerate().filter(|(_, room)| room.host != piece) {
                    let ways = ways(&job.pieces[piece], &job.pieces[room.host], grained);
                    let place = room.board.best(w, h, ways, Fit::Small);
                    if let Some(place) = place
                        && best.is_none_or(|(_, best)| place.score < best.score)
                    {
                        best = Some((index, place));
                    }
                }
                let Some((index, place)) = best else { break };
                // What lies in an opening holds nothing itself: the last of its kind that holds nothing yet.
                let last = nest.rest.pieces[piece].count - 1;
                if nest.inside.iter().any(|inside| inside.host == piece && inside.which == last) {
                    break;
                }
                rooms[index].board.lay(&place, Split::Large);
                let room = &rooms[index];
                let at = Block {
                    x: room.x + place.block.x,
                    y: room.y + place.block.y,
                    w: place.block.w - gap,
                    h: place.block.h - gap,
                };
                nest.inside.push(Inside { piece, host: room.host, which: room.which, at, turned: place.turned });
                rooms.retain(|room| !(room.host == piece && room.which == last));
                nest.rest.pieces[piece].count = last;
            }
        }
        nest
    }

    /// The job without anything that could lie in an opening: what no plan can do with less sheet than.
    pub fn least(&self) -> Job {
        let mut least = self.rest.clone();
        for (piece, fits) in least.pieces.iter_mut().zip(&self.fits_some) {
            if *fits {
                piece.count = 0;
            }
        }
        least
    }

    /// Whether no piece could lie in an opening.
    pub fn is_empty(&self) -> bool {
        !self.fits_some.contains(&true)
    }

    /// Adds what lies in openings to a plan for the rest.
    pub fn put_back(&self, plan: &mut Plan) {
        let mut lies = vec![false; self.inside.len()];
        let mut seen = vec![0; self.rest.pieces.len()];
        for sheet in &mut plan.sheets {
            for index in 0..sheet.placed.len() {
                let host = sheet.placed[index];
                let which = seen[host.piece];
                seen[host.piece] += 1;
                for (inside, lies) in self.inside.iter().zip(&mut lies) {
                    if inside.host == host.piece && inside.which == which {
                        sheet.placed.push(inside.placed(&host, index));
                        *lies = true;
                    }
                }
            }
        }
        // A host without a place has no opening to cut from.
        for (inside, _) in self.inside.iter().zip(&lies).filter(|(_, lies)| !**lies) {
            let left = |other: &&mut Unplaced| other.piece == inside.piece && other.reason == Reason::NoSheetLeft;
            match plan.unplaced.iter_mut().find(left) {
                Some(other) => other.count += 1,
                None => plan.unplaced.push(Unplaced { piece: inside.piece, count: 1, reason: Reason::NoSheetLeft }),
            }
        }
        sort_by_key(&mut plan.unplaced, |unplaced| unplaced.piece);
    }
}

impl Inside {
    /// Where it lies on the sheet, with its host there.
    fn placed(&self, host: &Placed, index: usize) -> Placed {
        let (left, lower, right) =
            (units(host.rect.x), units(host.rect.y), units(host.rect.x) + units(host.rect.width));
        let Block { x, y, w, h } = self.at;
        // A quarter turn to the left, as the host lies.
        let (x, y, w, h) = if host.turned { (right - y - h, lower + x, h, w) } else { (left + x, lower + y, w, h) };
        let rect = Rect { x: mm(x), y: mm(y), width: mm(w), height: mm(h) };
        Placed { piece: self.piece, rect, turned: self.turned != host.turned, inside: Some(index) }
    }
}

/// Which ways up a piece may lie in a host, seen from the host.
fn ways(piece: &Piece, host: &Piece, grained: bool) -> (bool, bool) {
    let free = piece.may_turn && (piece.grain == Grain::None || !grained);
    let alike = piece.grain == host.grain && piece.may_turn == host.may_turn;
    (free || alike, free)
}
