//! Lists: what to buy, what goes into which bag, what to cut, drill and cover.
//!
//! ```text
//! Build -> Shopping, bags, cut list (plain values) -> Table -> CSV, pages of a PDF, the page
//! ```
//!
//! Every list is worked out for one case and shown for as many as the design says (`kit.count`). Counts come from the
//! same fasteners as `build.json`; nothing is counted twice in two ways.

mod bags;
mod csv;
mod cut_list;
mod finish;
mod glue;
mod openings;
mod print;
mod sheets;
mod shopping;
mod sold;
mod table;
#[cfg(test)]
mod tests;

use serde::Serialize;

use super::templates;
use super::warnings::warnings;
use crate::Build;

pub use bags::{Bag, BagLine, bags};
pub(in crate::documents) use csv::field;
pub use csv::{csv, file_name};
pub use cut_list::{CutLine, CutList, cut_list};
pub use finish::{FilmPiece, film_pieces};
pub use glue::{GlueNeed, glue};
pub use openings::openings;
pub use print::pdf;
pub use sheets::{SheetNeed, job};
pub use shopping::{Shopping, ShoppingLine, shopping};
pub use table::{Cell, Column, Table};

/// Every list of a design as tables, for the page.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Lists {
    /// Fingerprint of the design.
    pub fingerprint: String,
    /// How many cases the lists are for.
    pub cases: u32,
    /// Written before every sum; may be empty.
    pub currency: String,
    /// Sum of everything that has a price and a number; `None` when nothing has.
    pub total: Option<f64>,
    /// Lines of the shopping list without a price.
    pub open_prices: usize,
    /// Whether the total lacks sheets whose price is stated, because their number is not worked out.
    pub sheets_uncounted: bool,
    /// Mass of the panels of one case, kg; `None` for a sheet nothing is known of.
    pub mass_kg: Option<f64>,
    /// Minutes for all cases by the maker's rates; `None` when none is stated.
    pub minutes: Option<f64>,
    /// The lists: shopping, bags, panels, drilling, film.
    pub tables: Vec<Table>,
}

/// Steps of the packer for a list, each about a tenth of a microsecond natively (see [`crate::stock`]): about 20 ms, and
/// the same sheets everywhere. Whoever wants the best layout gives [`crate::documents::sheets::lay`] more.
pub const SHEET_STEPS: u64 = 200_000;

/// Names of all lists there may be.
pub const NAMES: [&str; 5] = ["shopping", "bags", "panels", "drilling", "film"];

/// The files of the lists: `lists.pdf` on the design's paper, and each list as CSV; with this many sheets.
#[must_use]
pub fn files(build: &Build, sheets: Option<&SheetNeed>) -> Vec<(String, Vec<u8>)> {
    let lists = Lists::of(build, sheets);
    let setup = templates::writing(&templates::setup(&build.spec.template, None));
    let warnings = warnings(&build.findings);
    let mut out = vec![("lists.pdf".to_owned(), pdf(build, &lists, setup.paper_mm, setup.margin_mm))];
    for table in &lists.tables {
        out.push((file_name(table), csv(table, &lists.fingerprint, &warnings).into_bytes()));
    }
    out
}

impl Lists {
    /// The lists of a case that is worked out, with this many sheets to buy (see [`crate::documents::sheets::lay`]).
    #[must_use]
    pub fn of(build: &Build, sheets: Option<&SheetNeed>) -> Self {
        let shopping = shopping(build, sheets);
        let cut = cut_list(build);
        let mut tables =
            vec![shopping.table(), bags::table(build, &bags(build)), cut.panels_table(), cut.drilling_table()];
        let film = film_pieces(build);
        if !film.is_empty() {
            tables.push(finish::table(build, &film));
        }
        Self {
            fingerprint: build.fingerprint.clone(),
            cases: build.spec.prices.cases,
            currency: build.spec.prices.currency.clone(),
            total: shopping.total,
            open_prices: shopping.open,
            sheets_uncounted: shopping.uncounted,
            mass_kg: cut.mass_kg(),
            minutes: cut.minutes(),
            tables,
        }
    }

    /// The table of this name.
    #[must_use]
    pub fn table(&self, name: &str) -> Option<&Table> {
        self.tables.iter().find(|table| table.name == name)
    }
}
