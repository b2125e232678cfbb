//! What was found, as plain values and in words.

use serde::Serialize;

use super::KitAsk;
use super::work::Kits;
use crate::documents::sheets::SheetsView;
use crate::drawing::number::{format_number, mm};

/// The answer, as a page or another program reads it.
#[derive(Debug, Serialize)]
pub struct KitAnswer {
    /// `counts` or `most`.
    pub ask: &'static str,
    /// Whole rounds; for counts 1 when everything lies.
    pub rounds: usize,
    /// Rounds that nothing can go above.
    pub bound: usize,
    /// Whether the answer is proved: no layout gives more rounds, or takes fewer sheets.
    pub proved: bool,
    /// The units of a round.
    pub units: Vec<KitUnitAnswer>,
    /// The stacks of sheets, one for each material and thickness.
    pub stacks: Vec<KitStackAnswer>,
}

/// A unit of the kits.
#[derive(Debug, Serialize)]
pub struct KitUnitAnswer {
    /// What it is called.
    pub label: String,
    /// `case`, `sleeve` or `chassis`.
    pub part: &'static str,
    /// Fingerprint of its design.
    pub fingerprint: String,
    /// How many in a round.
    pub count: usize,
    /// How many in all rounds.
    pub total: usize,
    /// The stack it is cut from: index into the stacks.
    pub stack: usize,
    /// Whether its checks block it: what is cut would not go together.
    pub blocked: bool,
}

/// A stack of sheets.
#[derive(Debug, Serialize)]
pub struct KitStackAnswer {
    /// Material and thickness.
    pub label: String,
    /// Rounds its layout holds: more than whole ones where no layout for fewer was found; for counts 1 when everything
    /// of it lies.
    pub rounds: usize,
    /// Share of the sheets used that becomes panels.
    pub yield_share: f64,
    /// Sheets left untouched, by their labels.
    pub unused: Vec<(String, usize)>,
    /// The layouts.
    pub layouts: SheetsView,
}

impl Kits {
    /// The answer as plain values.
    #[must_use]
    pub fn answer(&self) -> KitAnswer {
        let units = self.units.iter().enumerate().map(|(index, unit)| KitUnitAnswer {
            label: unit.label.clone(),
            part: unit.part.name(),
            fingerprint: unit.build.fingerprint.clone(),
            count: unit.count,
            total: unit.count * self.rounds,
            blocked: unit.build.blocked(),
            stack: self
                .stacks
                .iter()
                .position(|(stack, _)| stack.pieces.iter().any(|(of, _)| *of == index))
                .unwrap_or(0),
        });
        let stacks = self.stacks.iter().map(|(stack, found)| {
            let sheets = &found.laid.plan.sheets;
            let unused = found.laid.job.sheets.iter().enumerate().filter_map(|(index, sheet)| {
                let used = sheets.iter().filter(|used| used.sheet == index).count();
                let left = sheet.count?.saturating_sub(used);
                (left > 0).then(|| (sheet.label.clone(), left))
            });
            KitStackAnswer {
                label: stack.label.clone(),
                rounds: found.rounds,
                yield_share: found.laid.plan.yield_share,
                unused: unused.collect(),
                layouts: found.laid.view(),
            }
        });
        KitAnswer {
            ask: match self.ask {
                KitAsk::Counts => "counts",
                KitAsk::Most => "most",
            },
            rounds: self.rounds,
            bound: self.bound,
            proved: self.proved(),
            units: units.collect(),
            stacks: stacks.collect(),
        }
    }

    /// Whether no layout could do better.
    fn proved(&self) -> bool {
        match self.ask {
            KitAsk::Counts => self.rounds == 1 && self.stacks.iter().all(|(_, found)| found.laid.plan.fewest),
            KitAsk::Most => self.rounds == self.bound,
        }
    }

    /// The answer in sentences.
    #[must_use]
    pub fn report(&self) -> String {
        let answer = self.answer();
        let mut text = String::new();
        let counted = |count: usize, word: &str| format!("{count} {word}{}", if count == 1 { "" } else { "s" });
        match self.ask {
            KitAsk::Most => {
                let proved = if answer.proved {
                    "; no layout gives more".to_owned()
                } else {
                    format!("; no layout gives more than {}", answer.bound)
                };
                text.push_str(&format!("{} from these sheets{proved}.\n", counted(answer.rounds, "whole round")));
            }
            KitAsk::Counts if answer.rounds == 0 => text.push_str("Not everything finds a place.\n"),
            KitAsk::Counts => {
                let sheets: usize = answer.stacks.iter().map(|stack| stack.layouts.sheets.len()).sum();
                let proved = if answer.proved { "; fewer will not do" } else { "" };
                text.push_str(&format!("{}{proved}.\n", counted(sheets, "sheet")));
            }
        }
        for unit in &answer.units {
            let part = if unit.part == "case" { "" } else { &format!(", {} only", unit.part) };
            let count = if self.ask == KitAsk::Most {
                format!("{} a round, {} in all", unit.count, unit.total)
            } else {
                format!("{} wanted", unit.count)
            };
            let blocked = if unit.blocked { ", which its checks block: do not cut it as it is" } else { "" };
            text.push_str(&format!("    {}{part}: {count}; design {}{blocked}\n", unit.label, unit.fingerprint));
        }
        for stack in &answer.stacks {
            let layouts = &stack.layouts;
            text.push_str(&format!(
                "\n{}: {}, {} % of them panels; at least {} by {}.\n",
                stack.label,
                counted(layouts.sheets.len(), "sheet"),
                format_number(stack.yield_share * 100.0, 1),
                layouts.bound,
                layouts.bound_by
            ));
            if self.ask == KitAsk::Most && stack.rounds > self.rounds {
                text.push_str(&format!(
                    "    The layout holds {}, more than the others.\n",
                    counted(stack.rounds, "round")
                ));
            }
            for (index, sheet) in layouts.sheets.iter().enumerate() {
                let [width, height] = sheet.size_mm.map(mm);
                text.push_str(&format!("    {}. {width} × {height}: {}\n", index + 1, in_counts(&sheet.panels)));
            }
            for (label, count) in &stack.unused {
                text.push_str(&format!("    left: {count} × {label}\n"));
            }
            for line in &layouts.unplaced {
                text.push_str(&format!("    no place: {line}\n"));
            }
        }
        text
    }
}

/// Names in their order, each once with how often it comes.
fn in_counts(names: &[String]) -> String {
    let mut counted: Vec<(&String, usize)> = Vec::new();
    for name in names {
        match counted.iter_mut().find(|(known, _)| *known == name) {
            Some((_, count)) => *count += 1,
            None => counted.push((name, 1)),
        }
    }
    let words =
        counted.into_iter().map(|(name, count)| if count == 1 { name.clone() } else { format!("{count} × {name}") });
    words.collect::<Vec<String>>().join("; ")
}
