//! Air and strips of sheet that the arrangement leaves: least, and comfortable where there are two.

use super::catalogue::Entry;
use super::documents::{ASME_B18_6_3, TRADE, WORKSHOP};
use super::source::Source;
use super::table::sizes;

const fn practice(place: &'static str) -> Source {
    Source::common_practice(WORKSHOP, place)
}

sizes! {
    group "arrangement";
    RUNNING_CLEARANCE: [f64; 3] = [0.3, 0.5, 1.0], "Running clearance of a sleeve, each side: close, easy, loose", "{} mm, {} mm, {} mm",
        practice("close slides without play, loose rattles");
    BESIDE_PART: [f64; 2] = [1.0, 3.0], "Beside a part that the sleeve slides past, beyond the running clearance", "{} mm, comfortable {}",
        practice("edges of hand-cut sheet are not straight to better than this");
    EDGE_WEB: [f64; 2] = [3.0, 6.0], "Sheet between an opening and the panel's edge", "{} mm, comfortable {}",
        practice("half the usual sheet, comfortable a whole one");
    CARD_AIR: [f64; 2] = [3.0, 10.0], "Before a card's fans, with a vent beside them", "{} mm, comfortable {}",
        practice("comfortable is a finger's width");
    CARD_END: [f64; 2] = [2.0, 10.0], "Beyond the far end of a card", "{} mm, comfortable {}",
        practice("room beyond a card");
    OVER_TOWER: [f64; 2] = [2.0, 6.0], "Above a tower cooler", "{} mm, comfortable {}",
        practice("room over a cooler");
    BEFORE_FAN: [f64; 2] = [10.0, 15.0], "Before a fan on a wall", "{} mm, comfortable {}",
        practice("fan handbooks ask for depth on the intake side; the figure is custom");
    BETWEEN_CONNECTORS: f64 = 6.0, "Between front connectors, so that plugs fit side by side", "{} mm",
        Source::from_memory(TRADE, "a USB-A plug's body is up to 16 mm wide");
    BEFORE_BOARD: f64 = 10.0, "Between the board's front edge and a supply before it", "{} mm",
        practice("leads leave the board there");
    BESIDE_SUPPLY: f64 = 3.0, "Between parts and a supply beside them", "{} mm",
        practice("room beside a supply");
    BRACKET_STRIP: f64 = 22.0, "Strip along the back kept free for brackets", "{} mm",
        practice("a bracket's leg of 20 mm and air");
    AROUND_DRIVE: f64 = 2.0, "Around a drive", "{} mm",
        practice("a fingertip's worth of slack");
    AROUND_FOOT_NUT: f64 = 0.2, "Around a foot's nut", "{} mm",
        practice("enough to turn a nut by its flats from above");
    FOOT_FROM_EDGE: f64 = 6.5, "A foot's centre from the floor's edge, least", "{} mm",
        practice("the hole's own diameter");
    AROUND_HARDWARE: f64 = 0.5, "Around brackets and captive nuts", "{} mm",
        practice("brackets are bent by hand");
    ALONG_HARDWARE: f64 = 1.0, "Beyond a bracket's own width along its corner", "{} mm",
        practice("brackets are placed in steps");
    NUT_NEAR_FRONT: f64 = 80.0, "A captive nut on left or right holds the front up to this far from it", "{} mm",
        practice("how far one captive nut holds an edge");
    SCREW_HEADS_BELOW: f64 = 5.0, "Room for screw heads below the floor: a 6-32 pan head of 2.46 and washers", "{} mm",
        Source::derived(ASME_B18_6_3, "pan head 6-32, and up to three washers");
    SIZES_ROUND_UP: f64 = 0.5, "Outside sizes are rounded up to", "{} mm",
        practice("what can be marked out with a rule and a sharp pencil");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    size_entries(out);
}
