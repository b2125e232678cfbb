//! The pages for work by hand: drills and order of cuts of the whole case, and the tables for marking out.

use super::flow::Flow;
use super::plan::PageSetup;
use super::words;
use crate::cutting::{FRAME_EDGES, drill_chain, drill_list, frame_needed_mm, hand_order, is_out_of_reach};
use crate::design::{Method, Spec};
use crate::documents::marking;
use crate::drawing::Page;
use crate::drawing::number::{format_number, mm};
use crate::panels::words::{edge_words, seen_from};
use crate::panels::{Edge, FeatureKind, Panel};

/// Cuts of one kind that follow each other.
struct Cut {
    what: String,
    times: usize,
    /// The deepest frame that one of them wants.
    frame_mm: f64,
    /// Whether one lies deeper than the maker's frame reaches, and whether such a one has no chain either.
    far: bool,
    unchained: bool,
}

impl Cut {
    fn add(&mut self, other: &Self) {
        self.times += other.times;
        self.frame_mm = self.frame_mm.max(other.frame_mm);
        self.far |= other.far;
        self.unchained |= other.unchained;
    }
}

/// Drills and order of cuts of every panel made by hand; no page when none is.
#[must_use]
pub fn order_pages(spec: &Spec, panels: &[Panel], foot: &str, setup: &PageSetup) -> Vec<Page> {
    let by_hand: Vec<&Panel> = panels.iter().filter(|panel| spec.making.method(panel.wall) == Method::Hand).collect();
    if by_hand.is_empty() {
        return Vec::new();
    }
    let mut flow = Flow::new(setup, "Order of work by hand", foot);
    let drawn = if spec.making.hand.marking {
        "Glue the template on or mark out by the tables"
    } else {
        "Glue the template on"
    };
    flow.words(&format!(
        "{drawn}, punch every centre, drill, then saw from the inside out. Saw beside the line, on the waste \
         side, and file to it: the cut itself is {} mm wide. Hold the sheet close to the cut.",
        mm(spec.making.hand.kerf_mm)
    ));
    for panel in by_hand {
        flow.heading(panel.label);
        let drills: Vec<String> = drill_list(panel, &spec.making.hand)
            .iter()
            .map(|drill| {
                let size = format_number(drill.diameter_mm, 2);
                match (drill.through, drill.blind) {
                    (through, 0) => format!("⌀{size}: {through}"),
                    (0, blind) => format!("⌀{size}: {blind} to a depth"),
                    (through, blind) => format!("⌀{size}: {through}, and {blind} to a depth"),
                }
            })
            .collect();
        // A counterbore's bit runs on its middle, which a hole of the full size would have taken away.
        let sunk = panel.features.iter().any(|feature| feature.kind == FeatureKind::Counterbore);
        let sunk = if sunk {
            " A counterbore comes before the hole in its middle: mark that through with a thin drill, sink, then drill it."
        } else {
            ""
        };
        flow.words(&format!("1. Drill, thinnest first. {}.{sunk}", drills.join("; ")));
        let order = hand_order(panel);
        let mut step = 2;
        let mut cuts: Vec<Cut> = Vec::new();
        for index in &order.inside {
            let feature = &panel.features[*index];
            let what = words::short_why(feature);
            let what =
                if feature.kind == FeatureKind::Vent { "vents, between their drilled ends".to_owned() } else { what };
            let hand = &spec.making.hand;
            let far = is_out_of_reach(panel, feature, hand);
            let unchained = far && drill_chain(panel, feature, hand).is_empty();
            let frame_mm = frame_needed_mm(&feature.contour, panel.size_mm, &FRAME_EDGES);
            let cut = Cut { what, times: 1, frame_mm, far, unchained };
            match cuts.last_mut() {
                Some(last) if last.what == cut.what => last.add(&cut),
                _ => cuts.push(cut),
            }
        }
        for Cut { what, times, frame_mm, far, unchained } in cuts {
            let times = if times == 1 { String::new() } else { format!("{times} × ") };
            let chain = match (far, unchained) {
                (false, _) => "",
                (true, true) => ": deeper than the saw's frame, see the findings",
                (true, false) => ": deeper than the saw's frame, so drill its chain and file",
            };
            let depth = mm(f64::ceil(frame_mm));
            flow.words(&format!("{step}. Saw {times}{}; frame {depth} mm{chain}.", lower_first(&what)));
            step += 1;
        }
        let [first, second, third, last] = order.edges.map(Edge::name);
        flow.words(&format!(
            "{step}. Saw the outside: {first} and {second} edge, then of {third} and {last} the one with the smaller rest \
             of the sheet; last the edge that hangs on the larger rest. Support it to the end."
        ));
    }
    flow.finish()
}

/// A reason inside a sentence.
fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// The tables for marking out one panel.
#[must_use]
pub fn marking_pages(spec: &Spec, panel: &Panel, foot: &str, setup: &PageSetup) -> Vec<Page> {
    let mut flow = Flow::new(setup, &format!("Marking out: {}", panel.label), foot);
    let [w, h] = panel.size_mm;
    let named = |edge: Edge| match edge_words(panel, edge) {
        words if words.is_empty() => format!("the {} edge", edge.name()),
        words => format!("the {} edge ({words})", edge.name()),
    };
    let [left, lower] = marking::EDGES.map(named);
    flow.words(&format!("Outside face, {}. {} × {} mm.", seen_from(panel.wall), mm(w), mm(h)));
    flow.words(&format!(
        "Make {left} and {lower} straight and square to each other first: every distance is taken from these two."
    ));
    flow.words(&format!(
        "Square when both diagonals of the panel measure {} mm.",
        format_number(marking::diagonal_mm(panel), 1)
    ));
    flow.words("");
    let rows: Vec<Vec<String>> = marking::marks(panel, marking::hand_of(spec, panel))
        .into_iter()
        .map(|mark| {
            vec![mark.key, format_number(mark.across_mm, 2), format_number(mark.up_mm, 2), mark.then, mark.what]
        })
        .collect();
    flow.table(&["", "from left", "from lower", "then", "what"], &rows);
    flow.finish()
}
