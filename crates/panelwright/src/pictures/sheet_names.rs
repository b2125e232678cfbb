//! Where the names of panels stand on the picture of a sheet: on the panel, clear of its holes; beside it with a line
//! that leads there where it leaves no room for letters that can be read.

use kurbo::{BezPath, Point, Rect, Vec2};

use crate::drawing::{Anchor, Colour, Item, Shape, Style, Text, Weight, text_width_mm};
use crate::sorting::sort_by;

/// Height of words, as a share of the sheet's longer side: about 15 pixels where the picture is 550 wide.
const NAME_SHARE: f64 = 0.028;

/// The least height, as a share of that: about 11 pixels.
const LEAST: f64 = 0.75;

/// Height of words as a share of the shorter side of what they stand on, where that is more than the least.
const SIDE_SHARE: f64 = 0.2;

/// Sizes that words are tried at, as shares of the one that is wanted.
const SIZES: [f64; 3] = [1.0, 0.87, LEAST];

/// Places across a panel, and as many up it, that its name is tried at.
const PLACES: u32 = 31;

/// Free room between words and the edge of what they stand on, as a share of their height.
const EDGE: f64 = 0.02;

/// Free room around words beside their panel, as a share of their height.
const ROOM: f64 = 0.15;

/// Radius of the dot at which a leader line ends within an outline (ISO 128-2), in widths of the line.
const DOT: f64 = 2.5;

/// Words at a size, not yet in a place.
#[derive(Clone, Copy)]
struct Words {
    /// Their width.
    along: f64,
    /// Above their line.
    high: f64,
    /// Below it.
    low: f64,
    upright: bool,
}

impl Words {
    fn of(text: &str, size: f64, upright: bool) -> Self {
        Self { along: text_width_mm(text, size, Weight::Regular), high: size * 0.8, low: size * 0.25, upright }
    }

    /// What they cover when the middle of what they cover is here.
    fn covered(self, at: Point) -> Rect {
        let (along, across) = (self.along / 2.0, (self.high + self.low) / 2.0);
        let (x, y) = if self.upright { (across, along) } else { (along, across) };
        Rect::new(at.x - x, at.y - y, at.x + x, at.y + y)
    }

    /// Where their line begins its middle for that: turned letters stand to the left of it.
    fn anchor(self, at: Point) -> Point {
        let shift = (self.high + self.low) / 2.0 - self.low;
        if self.upright { Point::new(at.x + shift, at.y) } else { Point::new(at.x, at.y - shift) }
    }
}

/// Words in a place.
fn put(text: &str, size: f64, upright: bool, at: Point, colour: Colour) -> Text {
    let at = Words::of(text, size, upright).anchor(at);
    let put = Text::new(at, size, text).anchored(Anchor::Middle).coloured(colour);
    if upright { put.turned(1) } else { put }
}

/// Places in an area, the one nearest to its middle first; also those this far from its edges.
fn places(area: Rect, from_edge: Vec2) -> Vec<Point> {
    let share = |place: u32| f64::from(place + 1) / f64::from(PLACES + 1);
    let along = |from: f64, to: f64, edge: f64| {
        (0..PLACES).map(move |place| from + (to - from) * share(place)).chain([from + edge, to - edge])
    };
    let mut places: Vec<Point> = along(area.y0, area.y1, from_edge.y)
        .flat_map(|y| along(area.x0, area.x1, from_edge.x).map(move |x| Point::new(x, y)))
        .collect();
    sort_by(&mut places, |a, b| (*a - area.center()).hypot2().total_cmp(&(*b - area.center()).hypot2()));
    places
}

/// The height that words in an area should have.
fn wanted(area: Rect, longest: f64) -> f64 {
    let full = longest * NAME_SHARE;
    full.min((area.width().min(area.height()) * SIDE_SHARE).max(full * LEAST))
}

/// Words clear of what is gone from an area and as near to its middle as that allows, turned where that is longer;
/// `None` where letters that can be read find no room.
pub(super) fn inside(area: Rect, longest: f64, text: &str, colour: Colour, gone: &[Rect]) -> Option<Text> {
    let wanted = wanted(area, longest);
    let along_first = area.height() > area.width() * 1.2;
    for size in
        SIZES.map(|share| share * wanted).into_iter().filter(|size| *size >= longest * NAME_SHARE * LEAST * 0.999)
    {
        for upright in [along_first, !along_first] {
            let words = Words::of(text, size, upright);
            let free = |at: &&Point| {
                let covered = words.covered(**at);
                area.contains_rect(covered) && gone.iter().all(|hole| !hole.overlaps(covered))
            };
            let half = words.covered(Point::ORIGIN).size() / 2.0;
            let places = places(area, half.to_vec2() + Vec2::splat(size * EDGE));
            if let Some(at) = places.iter().find(free) {
                return Some(put(text, size, upright, *at, colour));
            }
        }
    }
    None
}

/// Words in the middle of an area, as small as they must be to stay in it.
pub(super) fn within(area: Rect, longest: f64, text: &str, colour: Colour) -> Text {
    let upright = area.height() > area.width() * 1.2;
    let along = if upright { area.height() } else { area.width() };
    let wide = text_width_mm(text, 1.0, Weight::Regular).max(0.1);
    put(text, wanted(area, longest).min(along / wide), upright, area.center(), colour)
}

/// What a text of [`inside`], [`within`] or [`beside`] covers.
pub(super) fn covered(text: &Text) -> Rect {
    let words = Words::of(&text.text, text.size_mm, text.quarter_turns % 2 == 1);
    let at = words.anchor(Point::ORIGIN).to_vec2();
    words.covered(text.at - at)
}

/// Words in the free place nearest to an area, on a paper of which some is taken, with a line that leads to a spot of the
/// area from which nothing is gone. `None` where no paper is free.
pub(super) fn beside(
    area: Rect,
    paper: Rect,
    line: f64,
    text: &str,
    gone: &[Rect],
    taken: &[Rect],
) -> Option<(Text, Vec<Item>)> {
    let longest = paper.width().max(paper.height());
    let spots: Vec<Point> = places(area, Vec2::splat(2.0 * DOT * line))
        .into_iter()
        .filter(|spot| {
            let dot = Rect::from_center_size(*spot, (2.0 * DOT * line, 2.0 * DOT * line));
            area.contains_rect(dot) && gone.iter().all(|hole| !hole.overlaps(dot))
        })
        .collect();
    for size in SIZES.map(|share| share * longest * NAME_SHARE) {
        let words = Words::of(text, size, false);
        let step = size / 2.0;
        let steps = |length: f64| 0..(length / step) as u32;
        let all =
            steps(paper.height()).flat_map(|row| steps(paper.width()).map(move |column| [column, row].map(f64::from)));
        let nearest = all
            .map(|[x, y]| Point::new(paper.x0 + x * step, paper.y0 + y * step))
            .filter(|at| {
                let room = words.covered(*at).inflate(size * ROOM, size * ROOM);
                paper.contains_rect(room) && taken.iter().all(|other| !other.overlaps(room))
            })
            .min_by(|a, b| gap(area, words.covered(*a)).total_cmp(&gap(area, words.covered(*b))));
        if let Some(at) = nearest {
            let from = words.covered(at);
            // Of a panel that has no face left for a dot, its edge.
            let edge = Point::new(from.center().x.max(area.x0).min(area.x1), from.center().y.max(area.y0).min(area.y1));
            let nearer = |a: &&Point, b: &&Point| gap(from, point(**a)).total_cmp(&gap(from, point(**b)));
            let spot = spots.iter().min_by(nearer).unwrap_or(&edge);
            let start = Point::new(spot.x.max(from.x0).min(from.x1), spot.y.max(from.y0).min(from.y1));
            return Some((put(text, size, false, at, Colour::Ink), leader(start, *spot, line)));
        }
    }
    None
}

const fn point(at: Point) -> Rect {
    Rect::new(at.x, at.y, at.x, at.y)
}

/// How far two rectangles are apart, squared.
fn gap(a: Rect, b: Rect) -> f64 {
    let apart = |a: [f64; 2], b: [f64; 2]| (b[0] - a[1]).max(a[0] - b[1]).max(0.0);
    let (x, y) = (apart([a.x0, a.x1], [b.x0, b.x1]), apart([a.y0, a.y1], [b.y0, b.y1]));
    x * x + y * y
}

/// A leader line with the dot it ends in.
fn leader(from: Point, to: Point, line: f64) -> Vec<Item> {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    let dot = crate::drawing::Form::Circle { centre: to, radius_mm: DOT * line };
    vec![
        Shape::new(path.into(), Style::line(Colour::Ink, line)).into(),
        Shape::new(dot, Style::filled(Colour::Ink)).into(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    const AREA: Rect = Rect::new(100.0, 100.0, 300.0, 300.0);
    const PAPER: Rect = Rect::new(0.0, 0.0, 1200.0, 600.0);
    const LEAST_MM: f64 = 1200.0 * NAME_SHARE * LEAST;

    #[test]
    fn a_name_stands_in_the_middle_where_nothing_is_gone() {
        let text = inside(AREA, 1200.0, "Back", Colour::Ink, &[]).unwrap();
        assert!((covered(&text).center() - AREA.center()).hypot() < 1e-9, "{:?}", covered(&text));
        assert_eq!(text.size_mm, 1200.0 * NAME_SHARE);
    }

    /// A strip that is free below an opening takes the name in letters as large as it can, turned if need be.
    #[test]
    fn a_strip_beside_an_opening_holds_the_name() {
        for (gone, turned) in [(Rect::new(100.0, 130.0, 300.0, 300.0), 0), (Rect::new(100.0, 100.0, 270.0, 300.0), 1)] {
            let text = inside(AREA, 1200.0, "Back", Colour::Ink, &[gone]).unwrap();
            assert_eq!(text.quarter_turns, turned);
            assert!(text.size_mm >= LEAST_MM * 0.999 && !covered(&text).overlaps(gone));
        }
    }

    #[test]
    fn a_name_without_room_stands_beside_with_a_line_to_what_is_left() {
        let gone = [Rect::new(115.0, 115.0, 285.0, 285.0)];
        assert_eq!(inside(AREA, 1200.0, "Back", Colour::Ink, &gone), None);
        // Right of it and below it other panels lie.
        let taken = [AREA, Rect::new(300.0, 0.0, 1200.0, 600.0), Rect::new(0.0, 0.0, 300.0, 100.0)];
        let (text, line) = beside(AREA, PAPER, 2.0, "Back", &gone, &taken).unwrap();
        assert!(text.size_mm >= LEAST_MM * 0.999 && PAPER.contains_rect(covered(&text)));
        assert!(taken.iter().all(|other| !other.overlaps(covered(&text))));
        let Some(Item::Shape(Shape { form: crate::drawing::Form::Circle { centre, .. }, .. })) = line.last() else {
            panic!("the line ends in a dot: {line:?}");
        };
        assert!(AREA.contains(*centre) && !gone[0].contains(*centre));
        // Without free paper there is none.
        assert_eq!(beside(AREA, PAPER, 2.0, "Back", &gone, &[PAPER]), None);
    }
}
