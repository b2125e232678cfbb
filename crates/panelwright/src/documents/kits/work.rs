//! From the request to layouts: designs are worked out, their panels go onto the stack of their sheet, every stack is
//! searched for as long as there are steps.

use super::{KitAsk, KitError, KitPart, KitRequest, KitSheet, KitUnit, MOST_UNITS};
use crate::Build;
use crate::design::{Design, Material, choice, choices, looks_like_link, read_file, read_link};
use crate::documents::lists;
use crate::documents::sheets::Laid;
use crate::drawing::number::mm;
use crate::panels::{Assembly, Panel};
use crate::stock::{Grain, Job, Kit, KitSearch, Method, Piece, Rules, Search, Sheet};

/// A design of the kits, worked out.
#[derive(Clone, Debug)]
pub(super) struct Unit {
    pub label: String,
    pub count: usize,
    pub part: KitPart,
    pub build: Build,
}

/// Sheets of one kind and what is cut from them.
#[derive(Clone, Debug)]
pub(super) struct Stack {
    /// `Fibreboard, 6 mm`.
    pub label: String,
    /// Name within files: `fibreboard-6`.
    pub id: String,
    /// The unit and the panel of each piece of its job.
    pub pieces: Vec<(usize, usize)>,
    kits: Vec<Kit>,
    sheets: Vec<Sheet>,
    rules: Rules,
}

/// What a stack is told apart by: material and the thickness joints are worked out for.
type Kind = (Material, f64);

#[derive(Debug)]
enum Quest {
    Counts(Box<Search>),
    Most(Box<KitSearch>),
}

/// A request that is worked on, for as long as it is given steps.
#[derive(Debug)]
pub struct KitWork {
    ask: KitAsk,
    units: Vec<Unit>,
    stacks: Vec<(Stack, Quest)>,
}

/// What was found.
#[derive(Clone, Debug)]
pub struct Kits {
    pub(super) ask: KitAsk,
    pub(super) units: Vec<Unit>,
    /// Whole rounds; 1 when counts were asked for and everything lies.
    pub(super) rounds: usize,
    /// Rounds nothing can go above.
    pub(super) bound: usize,
    pub(super) stacks: Vec<(Stack, Found)>,
}

/// The layout of one stack.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub laid: Laid,
    /// Rounds it gives: more than all stacks together where one layout for fewer was not found.
    pub rounds: usize,
}

/// Steps a stack that could give more rounds than the others gets for a layout of as many as they: ten
/// times what halving gives, because the sheets left over are what it is for.
const FEWER_STEPS: u64 = 300_000;

impl KitWork {
    /// Works out the designs and makes ready to search.
    ///
    /// # Errors
    /// A design that does not read, a stack without sheets, numbers that make no sense.
    pub fn new(request: &KitRequest) -> Result<Self, KitError> {
        if request.units.is_empty() || request.units.len() > MOST_UNITS {
            return Err(KitError::Units(request.units.len()));
        }
        let mut units = Vec::new();
        for (index, unit) in request.units.iter().enumerate() {
            units.push(read(unit, index)?);
        }
        let mut stacks = Vec::new();
        for stack in stacked(&units, &request.sheets)? {
            let Stack { kits, sheets, rules, .. } = &stack;
            let quest = match request.ask {
                KitAsk::Counts => Quest::Counts(Box::new(Search::new(&once(kits, sheets, *rules))?)),
                KitAsk::Most if sheets.iter().any(|sheet| sheet.count.is_none()) => {
                    return Err(KitError::Uncounted(stack.label));
                }
                KitAsk::Most => Quest::Most(Box::new(KitSearch::new(kits, sheets, *rules)?)),
            };
            stacks.push((stack, quest));
        }
        Ok(Self { ask: request.ask, units, stacks })
    }

    /// Works for about so many steps more on every stack; gives whether more would change nothing.
    pub fn step(&mut self, steps: u64) -> bool {
        let mut done = true;
        for (_, quest) in &mut self.stacks {
            done &= match quest {
                Quest::Counts(search) => search.step(steps).done,
                Quest::Most(search) => search.step(steps),
            };
        }
        done
    }

    /// Whole rounds so far, and what nothing can go above.
    #[must_use]
    pub fn rounds(&self) -> [usize; 2] {
        let of = |(_, quest): &(Stack, Quest)| match quest {
            Quest::Counts(search) => [usize::from(search.progress().missing == 0), 1],
            Quest::Most(search) => [search.rounds(), search.bound()],
        };
        self.stacks.iter().map(of).fold([usize::MAX; 2], |a, b| [a[0].min(b[0]), a[1].min(b[1])])
    }

    /// The best layouts so far.
    #[must_use]
    pub fn found(&self) -> Kits {
        let [rounds, bound] = self.rounds();
        let stacks = self.stacks.iter().map(|(stack, quest)| {
            let found = match quest {
                Quest::Counts(search) => {
                    let job = once(&stack.kits, &stack.sheets, stack.rules);
                    let plan = search.plan();
                    let rounds = usize::from(plan.missing() == 0);
                    Found { laid: Laid { job, plan }, rounds }
                }
                Quest::Most(search) => {
                    let found = search.plan_of(rounds, FEWER_STEPS).unwrap_or_else(|| search.plan());
                    Found { laid: Laid { job: found.job, plan: found.plan }, rounds: found.rounds }
                }
            };
            (stack.clone(), found)
        });
        Kits { ask: self.ask, units: self.units.clone(), rounds, bound, stacks: stacks.collect() }
    }
}

/// All kits once, each as often as it is wanted.
fn once(kits: &[Kit], sheets: &[Sheet], rules: Rules) -> Job {
    let pieces = kits.iter().flat_map(|kit| {
        kit.pieces.iter().map(|piece| Piece { count: piece.count.saturating_mul(kit.share), ..piece.clone() })
    });
    Job { pieces: pieces.collect(), sheets: sheets.to_vec(), rules }
}

/// The design of a unit, worked out.
fn read(unit: &KitUnit, index: usize) -> Result<Unit, KitError> {
    let label = if unit.label.is_empty() { format!("design {}", index + 1) } else { unit.label.clone() };
    if unit.count == 0 {
        return Err(KitError::None(label));
    }
    let design: Design = if looks_like_link(&unit.design) {
        read_link(&unit.design).map_err(|error| KitError::Link { label: label.clone(), error })?
    } else {
        read_file(&unit.design).map_err(|problems| KitError::Design { label: label.clone(), problems })?
    };
    let build = Build::of(&design);
    let title = &build.spec.title;
    let label = if unit.label.is_empty() && !title.is_empty() { title.clone() } else { label };
    Ok(Unit { label, count: unit.count, part: unit.part, build })
}

impl Unit {
    /// The panels that are wanted, with their places among all.
    fn panels(&self) -> impl Iterator<Item = (usize, &Panel)> {
        self.build.panels.iter().enumerate().filter(|(_, panel)| match self.part {
            KitPart::Case => true,
            KitPart::Sleeve => panel.assembly == Assembly::Sleeve,
            KitPart::Chassis => panel.assembly == Assembly::Chassis,
        })
    }
}

/// The units by the sheet they are cut from.
fn stacked(units: &[Unit], given: &[KitSheet]) -> Result<Vec<Stack>, KitError> {
    for name in given.iter().filter_map(|sheet| sheet.material.as_ref()) {
        if Material::of(name).is_none() {
            let allowed = choice("sheet.material").map(|index| choices()[index].allowed()).unwrap_or_default();
            return Err(KitError::Material { given: name.chars().take(40).collect(), allowed });
        }
    }
    let mut kinds: Vec<(Kind, Vec<usize>)> = Vec::new();
    for (index, unit) in units.iter().enumerate() {
        let sheet = &unit.build.spec.sheet;
        let kind = (sheet.material, sheet.thickness_mm());
        match kinds.iter_mut().find(|(known, _)| *known == kind) {
            Some((_, of)) => of.push(index),
            None => kinds.push((kind, vec![index])),
        }
    }
    kinds.iter().map(|(kind, of)| stack(units, *kind, of, given)).collect()
}

fn stack(units: &[Unit], (material, thickness_mm): Kind, of: &[usize], given: &[KitSheet]) -> Result<Stack, KitError> {
    let mut name = material.name().to_owned();
    let id = format!("{name}-{}", mm(thickness_mm));
    name[..1].make_ascii_uppercase();
    let label = format!("{name}, {} mm", mm(thickness_mm));
    let mut rules = Rules { trim: 0.0, gap: 0.0, method: Method::Free };
    let (mut grain, mut sheets, mut kits, mut pieces) = (Grain::None, Vec::new(), Vec::new(), Vec::new());
    for &index in of {
        let unit = &units[index];
        let job = lists::job(&unit.build);
        // What one design asks for, all on the sheet keep.
        rules.trim = job.rules.trim.max(rules.trim);
        rules.gap = job.rules.gap.max(rules.gap);
        if job.rules.method == Method::Guillotine {
            rules.method = Method::Guillotine;
        }
        if let (Grain::None, Some(first)) = (grain, job.sheets.first()) {
            grain = first.grain;
        }
        let piece = |(panel, of): (usize, &Panel)| {
            pieces.push((index, panel));
            let piece = job.pieces[panel].clone();
            Piece { label: format!("{}: {}", unit.label, of.label), count: 1, ..piece }
        };
        let kit = Kit { label: unit.label.clone(), share: unit.count, pieces: unit.panels().map(piece).collect() };
        kits.push(kit);
        if sheets.is_empty() {
            sheets = job.sheets;
        }
    }
    if !given.is_empty() {
        let mine = given
            .iter()
            .filter(|sheet| sheet.material.as_deref().is_none_or(|name| Material::of(name) == Some(material)));
        sheets = mine
            .map(|sheet| Sheet {
                label: format!("Sheet {} × {}", mm(sheet.width_mm), mm(sheet.height_mm)),
                width: sheet.width_mm,
                height: sheet.height_mm,
                count: sheet.count,
                grain,
                offcut: false,
                price: None,
            })
            .collect();
        if sheets.is_empty() {
            return Err(KitError::NoSheet(label));
        }
    }
    for sheet in &mut sheets {
        sheet.grain = grain;
    }
    for piece in kits.iter_mut().flat_map(|kit| &mut kit.pieces) {
        // With a direction on the sheet every panel keeps upright to it, as its own design would have it.
        piece.grain = if grain == Grain::None { Grain::None } else { Grain::AlongHeight };
    }
    // An opening's own design kept its own gap from the rim; a wider one here leaves less.
    for (kit, index) in kits.iter_mut().zip(of) {
        let less = rules.gap - units[*index].build.spec.stock.gap_mm;
        for piece in &mut kit.pieces {
            for room in &mut piece.openings {
                *room = room.inset(less);
            }
            piece.openings.retain(|room| room.width > 0.0 && room.height > 0.0);
        }
    }
    Ok(Stack { label, id, pieces, kits, sheets, rules })
}
