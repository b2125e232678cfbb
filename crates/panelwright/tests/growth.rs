//! A part that grows in a case of a given size takes nothing off the list of what blocks: whole designs, from choices to
//! findings, as a maker meets it who tries a longer card. Compared where everything else stays in its place; a supply that
//! is moved out of the card's way may well clear what blocked.

use panelwright::Build;
use panelwright::design::{Design, Value, choice, choices};
use panelwright::fit::Severity;
use panelwright::parts::PartKind;
use panelwright::sample::{self, Random};

/// A size of a part and the part's name among the findings.
const SIZES: [(&str, &str); 8] = [
    ("card.length", "card"),
    ("card.above", "card"),
    ("card.thickness", "card"),
    ("cooler.height", "cooler"),
    ("cooler.width", "cooler"),
    ("cooler.depth", "cooler"),
    ("supply.depth", "supply"),
    ("board.memory_height", "memory"),
];

/// What a maker brings; the rest is hardware.
const DEVICES: [PartKind; 7] = [
    PartKind::Board,
    PartKind::Memory,
    PartKind::Cooler,
    PartKind::Card,
    PartKind::Supply,
    PartKind::Drive,
    PartKind::Fan,
];

/// A design in a case of a given size: what it needs, less up to 30 mm in one direction.
fn pinned(seed: u64, random: &mut Random) -> Design {
    let mut design = sample::design(seed, false);
    let needed = Build::of(&design).size().outside_mm;
    let short = random.below(3);
    set(&mut design, "size.rule", "given".into());
    for (axis, key) in ["size.width", "size.depth", "size.height"].into_iter().enumerate() {
        let less = if axis == short { random.hundredths(0.0, 30.0) } else { 0.0 };
        // A flat case without a card may be as low as the choice goes.
        let _ = design.set(key, Value::Number(needed[axis] - less));
    }
    design
}

fn set(design: &mut Design, key: &str, value: serde_json::Value) {
    design.set_json(key, &value).unwrap();
}

/// Makes a size larger by `by`; false when it does not apply, is open, or ends there.
fn grow(design: &mut Design, key: &str, by: f64) -> bool {
    let index = choice(key).unwrap();
    let Value::Number(now) = design.value(index).clone() else { return false };
    design.applies(index) && design.set(&choices()[index].key, Value::Number(now + by)).is_ok()
}

/// Whether everything but one part stands in the same places. Hardware goes where it finds room and does not count.
fn stays(before: &Build, after: &Build, grown: &str) -> bool {
    let places = |build: &Build| {
        let others = build.parts.iter().filter(|part| part.id != grown && DEVICES.contains(&part.kind));
        others.map(|part| (part.id.clone(), part.bodies.clone())).collect::<Vec<_>>()
    };
    places(before) == places(after)
}

fn blocking(build: &Build) -> Vec<&panelwright::fit::Finding> {
    build.findings.iter().filter(|finding| finding.severity == Severity::Blocks).collect()
}

fn texts(build: &Build) -> Vec<String> {
    blocking(build).iter().map(|finding| format!("{}: {}", finding.rule, finding.text)).collect()
}

#[test]
fn a_part_that_grows_in_a_given_case_is_never_better_off() {
    let (mut met, mut lost) = (0, Vec::new());
    for seed in 0..300 {
        let mut random = Random::new(seed);
        let mut design = pinned(seed, &mut random);
        let (key, part) = SIZES[random.below(SIZES.len())];
        let mut before = Build::of(&design);
        for _ in 0..4 {
            if !grow(&mut design, key, random.hundredths(0.5, 8.0)) {
                break;
            }
            let after = Build::of(&design);
            let about = |build: &Build| blocking(build).iter().any(|finding| finding.about.iter().any(|id| id == part));
            if stays(&before, &after, part) {
                met += usize::from(about(&before));
                if !blocking(&before).is_empty() && blocking(&after).is_empty() || about(&before) && !about(&after) {
                    lost.push(format!("seed {seed}, {key}: {:?} -> {:?}", texts(&before), texts(&after)));
                }
            }
            before = after;
        }
    }
    assert!(lost.is_empty(), "{} of {met}: {lost:#?}", lost.len());
    assert!(met > 150, "{met}");
}
