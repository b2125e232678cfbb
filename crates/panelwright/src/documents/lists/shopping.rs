//! The shopping list: everything that is bought for all cases, with spares, packs and the maker's own prices.

use super::finish::{TIN_ML, edge_paint_ml, film_pieces};
use super::glue::{BOTTLE_ML, GlueNeed, glue};
use super::sheets::SheetNeed;
use super::sold::{small, sold};
use super::table::{Cell, Table, money};
use crate::Build;
use crate::design::{Bought, Material};
use crate::drawing::number::format_number;
use crate::parts::PartKind;

/// Said in place of a sum that lacks the sheets.
const UNCOUNTED: &str = "The price of a sheet is stated, but so many cases are not laid on sheets at once: the sheets \
                         are in no sum. Make fewer cases at once to have them counted.";

/// A line of the shopping list.
#[derive(Clone, Debug, PartialEq)]
pub struct ShoppingLine {
    /// Heading: `Screws`.
    pub group: &'static str,
    /// What to ask for: `M3 screw`.
    pub what: String,
    /// Length as sold.
    pub length_mm: Option<f64>,
    /// How much one case takes, in `unit`.
    pub each: f64,
    /// How much all cases take, without spares.
    pub needed: f64,
    /// Spares on top.
    pub spare: f64,
    /// `pieces`, `m²`, `ml`.
    pub unit: &'static str,
    /// How much is in a pack.
    pub pack: f64,
    /// Packs to buy; `None` where how much is needed is not worked out.
    pub packs: Option<f64>,
    /// Price of a pack.
    pub price: Option<f64>,
    /// What it is for, or what to know.
    pub note: String,
}

impl ShoppingLine {
    /// A line of single pieces without a price.
    fn pieces(group: &'static str, what: impl Into<String>, each: usize, cases: f64) -> Self {
        Self {
            group,
            what: what.into(),
            length_mm: None,
            each: each as f64,
            needed: each as f64 * cases,
            spare: 0.0,
            unit: "pieces",
            pack: 1.0,
            packs: Some(0.0),
            price: None,
            note: String::new(),
        }
    }

    /// Works out the packs from everything else.
    fn packed(mut self) -> Self {
        // A thousandth of a pack is rounding, not a reason to buy one more.
        let packs = if self.pack > 0.0 { f64::ceil((self.needed + self.spare) / self.pack - 1e-3) } else { 0.0 };
        self.packs = Some(packs);
        self
    }

    /// Price of all packs; `None` where the price or their number is open.
    #[must_use]
    pub fn sum(&self) -> Option<f64> {
        Some(self.price? * self.packs?)
    }
}

/// The shopping list.
#[derive(Clone, Debug, PartialEq)]
pub struct Shopping {
    /// Its lines, by heading.
    pub lines: Vec<ShoppingLine>,
    /// Sum of the lines that have one; `None` when none has.
    pub total: Option<f64>,
    /// Lines without a price.
    pub open: usize,
    /// Whether a sheet's price is stated, but not how many are needed: the total is without them.
    pub uncounted: bool,
    /// How many cases it is for.
    pub cases: u32,
    /// Written before sums; may be empty.
    pub currency: String,
}

/// The shopping list of all cases, with this many sheets (see [`super::SheetNeed::of`]); `None` leaves their number open.
#[must_use]
pub fn shopping(build: &Build, sheets: Option<&SheetNeed>) -> Shopping {
    let prices = &build.spec.prices;
    let cases = f64::from(prices.cases);
    let mut lines = vec![sheet_line(build, sheets)];
    lines.extend(fastener_lines(build));
    lines.extend(finish_lines(build, cases));
    lines.extend(part_lines(build, cases));
    let sums: Vec<f64> = lines.iter().filter_map(ShoppingLine::sum).collect();
    Shopping {
        total: (!sums.is_empty()).then(|| sums.iter().sum()),
        open: lines.iter().filter(|line| line.price.is_none()).count(),
        uncounted: lines.iter().any(|line| line.price.is_some() && line.packs.is_none()),
        lines,
        cases: prices.cases,
        currency: prices.currency.clone(),
    }
}

fn sheet_line(build: &Build, sheets: Option<&SheetNeed>) -> ShoppingLine {
    let spec = &build.spec.sheet;
    let [width, height] = spec.stock_mm;
    let mm = |value: f64| format_number(value, 1);
    let what = format!("{}, {} mm, {} × {}", spec.material.name(), mm(spec.nominal_mm), mm(width), mm(height));
    let mut line = ShoppingLine::pieces("Sheets", what, 0, 0.0);
    line.price = build.spec.prices.sheet;
    match sheets {
        Some(need) => {
            line.needed = need.bought as f64;
            line.each = line.needed / f64::from(build.spec.prices.cases);
            let mut notes = Vec::new();
            if need.at_hand > 0 {
                notes.push(format!("and {} of the other sheets at hand", need.at_hand));
            }
            if need.missing > 0 {
                notes.push(format!("{} panels find no place on the sheets stated", need.missing));
            }
            line.note = notes.join("; ");
            line.packed()
        }
        None => {
            line.packs = None;
            line.note = "not worked out for so many cases at once".to_owned();
            line
        }
    }
}

/// Screws, nuts, washers, brackets, standoffs, feet: each thing that is sold once.
fn fastener_lines(build: &Build) -> Vec<ShoppingLine> {
    let prices = &build.spec.prices;
    let cases = f64::from(prices.cases);
    let mut lines: Vec<(ShoppingLine, Option<Bought>)> = Vec::new();
    for fastener in &build.fasteners {
        let thing = sold(build, fastener);
        let found = lines.iter_mut().find(|(line, kind)| {
            line.what == thing.name && line.length_mm == fastener.length_mm && *kind == thing.kind
        });
        match found {
            Some((line, _)) => {
                line.each += fastener.count as f64;
                line.needed += fastener.count as f64 * cases;
                if !thing.used.is_empty() {
                    let gap = if line.note.is_empty() { "" } else { "; " };
                    line.note.push_str(gap);
                    line.note.push_str(&thing.used);
                }
            }
            None => {
                let mut line = ShoppingLine::pieces(thing.group, thing.name, fastener.count, cases);
                line.length_mm = fastener.length_mm;
                line.note = thing.used;
                lines.push((line, thing.kind));
            }
        }
    }
    let order = ["Brackets", "Screws", "Nuts", "Washers", "Standoffs", "Feet", "Other"];
    let mut out = Vec::new();
    for group in order {
        for (line, kind) in lines.iter().filter(|(line, _)| line.group == group) {
            let mut line = line.clone();
            if small(*kind) {
                line.spare = f64::from(prices.spare_small);
            }
            if let Some(kind) = kind {
                let pack = prices.pack(*kind);
                line.pack = f64::from(pack.pieces);
                line.price = pack.price;
            }
            if group == "Screws" && line.length_mm.is_none() {
                line.note = format!("no sold length fits; {}", line.note);
            }
            out.push(line.packed());
        }
    }
    out
}

fn finish_lines(build: &Build, cases: f64) -> Vec<ShoppingLine> {
    let prices = &build.spec.prices;
    let mut out = Vec::new();
    let glue = glue(build);
    if glue.area_mm2 > 0.0 {
        let mut line = ShoppingLine::pieces("Glue", glue_for(build.spec.sheet.material), 0, 0.0);
        line.each = glue.volume_ml;
        line.needed = glue.volume_ml * cases;
        line.unit = "ml";
        line.pack = BOTTLE_ML.get();
        line.price = prices.glue;
        line.note = format!("{}, {} cm² for each case", glued(&glue), format_number(glue.area_mm2 / 100.0, 0));
        out.push(line.packed());
    }
    let film: f64 = film_pieces(build).iter().map(|piece| piece.area_m2()).sum();
    if film > 0.0 {
        let mut line = ShoppingLine::pieces("Finish", "Film", 0, 0.0);
        line.each = film;
        line.needed = film * cases;
        line.spare = line.needed * prices.film_waste;
        line.unit = "m²";
        line.price = prices.film;
        line.note = "pieces in the list of film".to_owned();
        // Sold by the square metre, in tenths.
        line.packs = Some(f64::ceil((line.needed + line.spare) * 10.0 - 1e-3) / 10.0);
        out.push(line);
    }
    let paint = edge_paint_ml(build);
    if paint > 0.0 {
        let mut line = ShoppingLine::pieces("Finish", "Edge paint", 0, 0.0);
        line.each = paint;
        line.needed = paint * cases;
        line.unit = "ml";
        line.pack = TIN_ML.get();
        line.price = prices.paint;
        let edges: f64 = build.panels.iter().map(super::cut_list::edge_length_mm).sum();
        line.note = format!(
            "{} m of edge for each case, {} coats",
            format_number(edges / 1000.0, 1),
            format_number(super::finish::EDGE_COATS.get(), 0)
        );
        out.push(line.packed());
    }
    out
}

/// What is glued: `4 glued corners, 1 locating block`.
fn glued(glue: &GlueNeed) -> String {
    let counted = |count: usize, one: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        more => Some(format!("{more} {one}s")),
    };
    let parts = [counted(glue.seams, "glued corner"), counted(glue.blocks, "locating block")];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// What joins such a sheet: wood glue holds on wood, acrylic is welded by its own cement (common practice).
const fn glue_for(material: Material) -> &'static str {
    match material {
        Material::Fibreboard | Material::Plywood | Material::Hardboard => "Wood glue",
        Material::Acrylic => "Acrylic cement",
        Material::Other => "Glue for this sheet",
    }
}

/// Fans, button, sockets and the card's shelf.
fn part_lines(build: &Build, cases: f64) -> Vec<ShoppingLine> {
    let prices = &build.spec.prices;
    let mut names: Vec<(String, usize, bool)> = Vec::new();
    let mut add = |name: String, fan: bool| match names.iter_mut().find(|(other, _, _)| *other == name) {
        Some((_, count, _)) => *count += 1,
        None => names.push((name, 1, fan)),
    };
    for fan in &build.spec.fans {
        add(format!("Fan, 12 V, {} × {} mm", format_number(fan.size_mm, 0), format_number(fan.thickness_mm, 1)), true);
    }
    for part in &build.parts {
        match part.kind {
            PartKind::Button | PartKind::Port | PartKind::Jack | PartKind::Shelf => add(part.label.clone(), false),
            _ => {}
        }
    }
    names
        .into_iter()
        .map(|(name, count, fan)| {
            let mut line = ShoppingLine::pieces("Parts in the panels", name, count, cases);
            if fan {
                let pack = prices.pack(Bought::Fan);
                line.pack = f64::from(pack.pieces);
                line.price = pack.price;
            }
            line.packed()
        })
        .collect()
}

impl Shopping {
    /// As rows and columns.
    pub(super) fn table(&self) -> Table {
        let with =
            |what: &str| if self.currency.is_empty() { what.to_owned() } else { format!("{what}, {}", self.currency) };
        let (price, sum) = (with("#price of a pack"), with("#sum"));
        let columns = [
            "group",
            "what",
            "#length, mm",
            "#for one case",
            "#for all",
            "#spare",
            "unit",
            "#in a pack",
            "#packs",
            &price,
            &sum,
            "note",
        ];
        let mut table = Table::new("shopping", "Shopping list", &columns);
        for line in &self.lines {
            // How much is needed is as open as the packs are.
            let amount = |value: f64| match line.packs {
                None => Cell::Empty,
                Some(_) => Cell::number(value, if line.unit == "m²" { 3 } else { 1 }),
            };
            table.rows.push(vec![
                Cell::text(line.group),
                Cell::text(line.what.as_str()),
                line.length_mm.map_or(Cell::Empty, |length| Cell::number(length, 4)),
                amount(line.each),
                amount(line.needed),
                amount(line.spare),
                Cell::text(line.unit),
                amount(line.pack),
                line.packs.map_or(Cell::Empty, amount),
                Cell::money(line.price),
                Cell::money(line.sum()),
                Cell::text(line.note.as_str()),
            ]);
        }
        let cases = if self.cases == 1 { "1 case".to_owned() } else { format!("{} cases", self.cases) };
        table.notes.push(match self.total {
            None if self.uncounted => format!("For {cases}. {UNCOUNTED}"),
            None => format!("For {cases}. No prices are stated."),
            Some(total) => {
                let total = format!("{} {}", self.currency, money(total));
                let open = match self.open {
                    0 => String::new(),
                    1 => " 1 line has no price and is left out.".to_owned(),
                    count => format!(" {count} lines have no price and are left out."),
                };
                let sheets = if self.uncounted { format!(" {UNCOUNTED}") } else { String::new() };
                format!("For {cases}. Total {}.{open}{sheets}", total.trim())
            }
        });
        table
    }
}
