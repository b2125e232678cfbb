//! Between panels on a sheet there must be room for what cuts them apart.

use super::finding::Finding;
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::cutting::laser_kerf_mm;
use crate::design::Method;
use crate::dimensions::source::Source;
use crate::solid::TOUCH_MM;

pub(super) const STOCK_GAP: Rule = Rule {
    name: "stock-gap",
    what: "Panels lie so far apart on a sheet that the tool which cuts one out leaves its neighbour whole.",
    source: Source::derived("Geometry of the design", "a cut takes its own width from what lies beside it"),
    look: stock_gap,
};

fn stock_gap(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = scene.case.spec;
    let (stock, making) = (&spec.stock, &spec.making);
    let saw = ("saw", making.hand.kerf_mm);
    // Straight cuts are sawn, however the panels are made after that.
    let tool = |method: &Method| match method {
        _ if stock.straight => saw,
        Method::Hand => saw,
        Method::Router => ("cutter", making.router.cutter_mm),
        Method::Laser => ("laser", laser_kerf_mm(spec)),
    };
    let widest = making.method_of.iter().map(tool).reduce(|a, b| if b.1 > a.1 { b } else { a });
    let Some((name, cut_mm)) = widest.filter(|(_, cut_mm)| stock.gap_mm < cut_mm - TOUCH_MM) else { return };
    let (gap, cut) = (words::limit(stock.gap_mm), words::limit(cut_mm));
    let keep = Remedy::new().at_least("stock.gap", cut_mm, |value| format!("keep {value} or more between panels"));
    let finding = if name == "saw" {
        STOCK_GAP
            .caution(format!("Panels lie {gap} apart on the sheet; the saw takes {cut}, so some come out smaller."))
            .with_mends(keep.say("enter the width of your saw's cut, under Making"))
    } else {
        STOCK_GAP
            .blocks(format!("Panels lie {gap} apart on the sheet; the {name} takes {cut} and cuts into the next one."))
            .with_mends(keep.say("leave it open"))
    };
    found.push(finding.with_mm(stock.gap_mm, cut_mm).with_about(scene.sheets.iter().map(|sheet| sheet.id())));
}
