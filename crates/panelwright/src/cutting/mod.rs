//! Cutting: from a finished flat panel to what a tool follows.
//!
//! ```text
//! Panel (nominal, exact arcs) --relief--> edges --offset--> paths --order--> CutPanel --faces--> DXF, SVG
//! ```
//!
//! Everything here takes plain numbers: which tool cuts is decided elsewhere, as a [`CutRule`].
//!
//! Invariant: arcs stay arcs and circles stay circles, all the way into the files. What a tool cannot do comes back as a
//! value ([`Lost`], [`CornerFault`], [`CutProblem`]), never as a contour that is only nearly right.

mod chain;
mod faces;
mod files;
mod hand;
mod kerf;
mod lettering;
mod method;
mod offset;
mod order;
mod panel;
mod relief;
mod router;
mod rule;
mod strokes;
mod tabs;
mod test_piece;

pub use chain::{FRAME_EDGES, drill_chain, is_out_of_reach, opening_holes};
pub use faces::PART;
pub use files::{
    CutSheet, FileMarks, MARGIN_MM, SvgLines, cut_panel_to_dxf, cut_panel_to_svg, cut_sheet_to_dxf, cut_sheet_to_svg,
};
pub use hand::{
    BLADE_AIR_MM, BladeHole, Drill, HandOrder, blade_holes, drill_list, frame_needed_mm, hand_order, is_sawn,
    is_sawn_out, slot_ends,
};
pub use kerf::{compensated, kerf_from_test};
pub use lettering::LETTERING;
pub use method::{go_name, inside_up, laser_kerf_mm};
pub use offset::{Joins, Lost, offset};
pub use order::tidy;
pub use panel::{Cut, CutLayer, CutPanel, LayerUse, OUTLINE, TABS, layer_name};
pub use relief::{CornerFault, LEAST_RESIDUE_MM, Relief, ReliefCircle, Relieved, Void, relieve, residue_mm};
pub use router::{Reach, reach};
pub use rule::{CutProblem, CutRule, RELIEF_ROOM, RouterRule, Trouble};
pub use strokes::{strokes, strokes_width_mm};
pub use tabs::{MARK_MM, TabRule, Tabs, mark, tabs};
pub use test_piece::{KERF_DRAWN_MM, KERF_PIECES, kerf_test_piece};
