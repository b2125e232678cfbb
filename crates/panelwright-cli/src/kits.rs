//! `kits`: from what was typed to the request that the core works on.

use std::path::Path;

use panelwright::design::{Spec, write_file};
use panelwright::documents::kits::{KitAsk, KitPart, KitRequest, KitSheet, KitUnit, KitWork, Kits};

use crate::failure::Failure;
use crate::input;

/// Steps between two looks at whether there is more to gain.
const SLICE: u64 = 100_000;

/// Reads the designs and lays them on their sheets.
pub fn found(kits: &[String], sheets: &[String], most: bool, steps: u64) -> Result<Kits, Failure> {
    if kits.iter().filter(|kit| Wanted::of(kit).design == "-").count() > 1 {
        return Err(Failure::Twice);
    }
    let request = KitRequest {
        units: kits.iter().map(|kit| unit(kit)).collect::<Result<_, _>>()?,
        sheets: sheets.iter().map(|given| sheet(given)).collect::<Result<_, _>>()?,
        ask: if most { KitAsk::Most } else { KitAsk::Counts },
    };
    let mut work = KitWork::new(&request)?;
    let mut done = 0;
    while done < steps && !work.step(SLICE.min(steps - done)) {
        done += SLICE;
    }
    Ok(work.found())
}

/// A design as typed, and what is wanted of it.
struct Wanted<'a> {
    design: &'a str,
    count: usize,
    part: KitPart,
}

impl<'a> Wanted<'a> {
    /// Takes the words behind the last colons off, as long as they say how many or which part: an address of a link has
    /// colons, too.
    fn of(given: &'a str) -> Self {
        let mut wanted = Self { design: given, count: 1, part: KitPart::Case };
        while let Some((rest, word)) = wanted.design.rsplit_once(':') {
            let part = [KitPart::Case, KitPart::Sleeve, KitPart::Chassis].into_iter().find(|part| part.name() == word);
            match (part, word.parse()) {
                (Some(part), _) => wanted.part = part,
                (None, Ok(count)) => wanted.count = count,
                _ => break,
            }
            wanted.design = rest;
        }
        wanted
    }
}

fn unit(given: &str) -> Result<KitUnit, Failure> {
    // A file may really be called so.
    let wanted = if Path::new(given).exists() {
        Wanted { design: given, count: 1, part: KitPart::Case }
    } else {
        Wanted::of(given)
    };
    let design = input::design(wanted.design)?;
    let title = Spec::of(&design).title;
    let file = Path::new(wanted.design).file_stem().filter(|_| Path::new(wanted.design).exists());
    let label = match file {
        Some(file) if title.is_empty() => file.to_string_lossy().into_owned(),
        _ => title,
    };
    Ok(KitUnit { design: write_file(&design), label, count: wanted.count, part: wanted.part })
}

fn sheet(given: &str) -> Result<KitSheet, Failure> {
    let wrong = || Failure::Sheet { given: given.to_owned() };
    let (rest, material) = given.split_once('@').map_or((given, None), |(rest, name)| (rest, Some(name.to_owned())));
    let (size, count) = rest.split_once(':').map_or((rest, None), |(size, count)| (size, Some(count)));
    let (width, height) = size.split_once(['x', 'X', '×']).ok_or_else(wrong)?;
    let number = |text: &str| text.trim().parse::<f64>().map_err(|_| wrong());
    let count = count.map(|count| count.trim().parse().map_err(|_| wrong())).transpose()?;
    Ok(KitSheet { width_mm: number(width)?, height_mm: number(height)?, count, material })
}
