//! Random designs for tests and benches, from a seed: the same seed gives the same design everywhere.
//!
//! Not part of the tool; hidden from its documentation.
//!
//! Two modes. *Wild* draws any value of any choice, ends of the ranges and nonsense included: what a hostile file or
//! link could hold. *Plausible* draws what makers would choose around a few usual builds, so that a good part of the
//! designs can really be built.

use crate::design::{Choice, Design, Kind, Unit, Value, choices};

pub use crate::chance::Random;

/// A random design: wild, or plausible.
#[must_use]
pub fn design(seed: u64, wild: bool) -> Design {
    let mut random = Random::new(seed);
    if wild { wild_design(&mut random) } else { plausible_design(&mut random) }
}

/// Changes one random choice of a design, as a visitor would: the step of a bench. Returns the changed key.
pub fn change(design: &mut Design, random: &mut Random, wild: bool) -> &'static str {
    loop {
        let index = random.below(choices().len());
        let entry = &choices()[index];
        if !design.applies(index) {
            continue;
        }
        let value = if wild { Some(any_value(entry, random)) } else { likely_value(entry, random) };
        if let Some(value) = value
            && design.set(&entry.key, value).is_ok()
        {
            return &entry.key;
        }
    }
}

fn wild_design(random: &mut Random) -> Design {
    let mut design = Design::default();
    // Few changes, some, or nearly everything.
    let percent = [4, 15, 50, 95][random.below(4)];
    for entry in choices() {
        if random.chance(percent) {
            let value = any_value(entry, random);
            // Every value drawn is one of the choice's own range; `draws_stay_in_range` holds this to it.
            let _ = design.set(&entry.key, value);
        }
    }
    design
}

/// Any value of a choice: ends of its range, presets, everything between, open.
fn any_value(entry: &Choice, random: &mut Random) -> Value {
    match &entry.kind {
        Kind::Pick(options) => Value::Pick(random.below(options.len())),
        Kind::Number { unit, min, max, presets, optional, .. } => match random.below(8) {
            0 if *optional => Value::Open,
            1 => Value::Number(*min),
            2 => Value::Number(*max),
            3 if !presets.is_empty() => Value::Number(presets[random.below(presets.len())].value),
            _ if *unit == Unit::Count => Value::Number(min + random.below((max - min) as usize + 1) as f64),
            _ => Value::Number(random.hundredths(*min, *max)),
        },
        Kind::Switch => Value::Switch(random.chance(50)),
        Kind::Text { max_chars } => {
            const LETTERS: [char; 12] = ['a', 'Z', '7', ' ', '"', '\\', '<', '&', 'ä', 'Ж', '漢', '🪚'];
            Value::Text((0..random.below(max_chars + 1)).map(|_| LETTERS[random.below(LETTERS.len())]).collect())
        }
        Kind::Points { max, limit_mm } => Value::Points(
            (0..random.below(max + 1))
                .map(|_| [random.hundredths(0.0, *limit_mm), random.hundredths(0.0, *limit_mm)])
                .collect(),
        ),
    }
}

/// What stays as it is in a plausible design unless a build says otherwise: places that the tool finds better than
/// dice, and sizes that only make sense together.
fn is_left_alone(key: &str) -> bool {
    let field = key.rsplit('.').next().unwrap_or(key);
    let placed = matches!(field, "across" | "along" | "up" | "holes" | "opening" | "spacing" | "turned" | "jack_hole");
    let measured = matches!(field, "face_width" | "face_height" | "socket_from_right" | "socket_from_rear");
    let region = key.starts_with("vent_") && matches!(field, "width" | "height" | "panel");
    let bracket = key.starts_with("bracket.") || key.starts_with("captive.");
    let money = matches!(entry_group(key), "price" | "pack" | "rate" | "spare" | "kit" | "joint");
    let sheets = key.starts_with("stock");
    placed || measured || region || bracket || money || sheets || key.starts_with("size.")
}

/// The part of a key before its dot.
fn entry_group(key: &str) -> &str {
    key.split('.').next().unwrap_or(key)
}

/// A value a maker might well choose; `None` where dice choose badly.
fn likely_value(entry: &Choice, random: &mut Random) -> Option<Value> {
    if is_left_alone(&entry.key) {
        return None;
    }
    Some(match &entry.kind {
        Kind::Number { presets, .. } if !presets.is_empty() && random.chance(50) => {
            Value::Number(presets[random.below(presets.len())].value)
        }
        Kind::Number { unit: Unit::Mm, min, max, .. } => {
            let Value::Number(usual) = entry.default else { return None };
            // A tenth around the usual value, in half millimetres where they do not vanish.
            let drawn = random.hundredths((usual * 0.9).max(*min), (usual * 1.1 + 0.1).min(*max));
            let halves = libm::round(drawn * 2.0) / 2.0;
            Value::Number(if usual > 5.0 { halves.clamp(*min, *max) } else { drawn })
        }
        Kind::Text { .. } => Value::Text(format!("Slipway {}", random.below(1000))),
        _ => any_value(entry, random),
    })
}

/// One usual build: choices to set first, written as in a design file.
const BUILDS: &[&str] = &[
    r#"{"size.rule": "smallest"}"#,
    r#"{"size.rule": "smallest", "card.kind": "none", "supply.kind": "sfx", "cooler.kind": "flat",
        "cooler.height": 47, "fan1.size": "92"}"#,
    r#"{"size.rule": "smallest", "card.kind": "none", "supply.kind": "brick", "cooler.kind": "flat",
        "cooler.height": 37, "fan1.size": "80"}"#,
    r#"{"size.rule": "smallest", "card.length": 167.65, "card.slots": 1, "card.plug_at": "none",
        "supply.kind": "sfx-l"}"#,
    r#"{"size.rule": "smallest", "board.form": "microatx", "card.length": 241.3}"#,
    r#"{"size.rule": "smallest", "board.form": "mini-dtx", "card.length": 200, "supply.pose": "end-beside"}"#,
    r#"{"size.rule": "smallest", "card.kind": "none", "drive2.kind": "3.5", "drive2.place": "floor",
        "fan2.size": "120", "fan2.wall": "front", "fan2.air": "in"}"#,
    r#"{"size.rule": "smallest", "sleeve.corners": "face", "sleeve.join": "glue", "feet.kind": "pads",
        "feet.height": 10, "supply.pose": "back-flat", "supply.plug": "straight"}"#,
    r#"{"size.rule": "given", "size.width": 300, "size.depth": 400, "size.height": 320}"#,
    r#"{"size.rule": "given", "size.width": 360, "size.depth": 460, "size.height": 360,
        "board.form": "microatx", "sheet.nominal": 9}"#,
    r#"{"size.rule": "paper", "size.paper": "a4"}"#,
    r#"{"size.rule": "paper", "size.paper": "a3", "card.length": 312}"#,
];

fn plausible_design(random: &mut Random) -> Design {
    let build = BUILDS[random.below(BUILDS.len())];
    // `every_build_is_a_design` holds the builds to this.
    let mut design = crate::design::read_file(build).unwrap_or_default();
    let given = design.changed();
    for (index, entry) in choices().iter().enumerate() {
        // What makes the build what it is stays; further drives and fans are the rarer the higher their number.
        let percent = 12 / further(&entry.key);
        if given.contains(&index) || !design.applies(index) || !random.chance(percent) {
            continue;
        }
        if let Some(value) = likely_value(entry, random) {
            let _ = design.set(&entry.key, value);
        }
    }
    design
}

/// The number of a drive or a fan that a choice adds to the case (`drive3.kind`: 3), 1 for any other choice.
fn further(key: &str) -> usize {
    let number = |group: &str, field: &str| key.strip_prefix(group)?.strip_suffix(field)?.parse().ok();
    number("drive", ".kind").or_else(|| number("fan", ".size")).unwrap_or(1).max(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// First outputs for seed 1234567, as printed with the widely used reference code of SplitMix64.
    #[test]
    fn the_generator_gives_the_reference_numbers() {
        let mut random = Random::new(1_234_567);
        let drawn: Vec<u64> = (0..3).map(|_| random.next()).collect();
        assert_eq!(drawn, [6_457_827_717_110_365_317, 3_203_168_211_198_807_973, 9_817_491_932_198_370_423]);
    }

    #[test]
    fn every_build_is_a_design() {
        for build in BUILDS {
            crate::design::read_file(build).unwrap();
        }
    }

    #[test]
    fn draws_stay_in_range_and_reach_its_ends() {
        let mut random = Random::new(7);
        let mut design = Design::default();
        for entry in choices() {
            let (mut low, mut high) = (false, false);
            for _ in 0..80 {
                let value = any_value(entry, &mut random);
                if let (Kind::Number { min, max, .. }, Value::Number(number)) = (&entry.kind, &value) {
                    low |= number == min;
                    high |= number == max;
                }
                design.set(&entry.key, value).unwrap();
                if let Some(value) = likely_value(entry, &mut random) {
                    design.set(&entry.key, value).unwrap();
                }
            }
            assert!(!matches!(entry.kind, Kind::Number { .. }) || low && high, "{}", entry.key);
        }
    }

    #[test]
    fn one_seed_is_one_design_and_seeds_differ() {
        for wild in [true, false] {
            assert_eq!(super::design(5, wild), super::design(5, wild));
            let different = (0..200).filter(|seed| super::design(*seed, wild) != super::design(seed + 1, wild)).count();
            assert!(different > 195, "{different}");
        }
    }

    #[test]
    fn a_change_changes_only_the_choice_it_names() {
        let mut random = Random::new(3);
        let mut design = Design::default();
        for step in 0..500 {
            let before = design.clone();
            let key = change(&mut design, &mut random, step % 2 == 0);
            for (index, entry) in choices().iter().enumerate() {
                assert!(entry.key == key || design.value(index) == before.value(index));
            }
        }
    }
}
