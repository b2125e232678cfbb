//! A remedy is true: every change of the design behind a remedy's number can be entered, and clears the finding it
//! belongs to. Whole designs, from choices to findings, as a maker meets it who does what the sentence says.

use std::collections::BTreeMap;

use panelwright::Build;
use panelwright::design::{Design, Value};
use panelwright::fit::{Finding, Severity};
use panelwright::sample::{self, Random};

/// Designs of makers, the same in cases that are somewhat too small in one direction, and what dice make of all choices.
fn designs() -> impl Iterator<Item = (String, Design)> {
    let plausible = (0..SEEDS).map(|seed| (format!("plausible {seed}"), sample::design(seed, false)));
    let tight = (0..SEEDS).map(|seed| (format!("tight {seed}"), tight(seed)));
    let wild = (0..SEEDS / 4).map(|seed| (format!("wild {seed}"), sample::design(seed, true)));
    plausible.chain(tight).chain(wild)
}

const SEEDS: u64 = 300;

/// A design in a case of a given size: what it needs, less up to 30 mm in one direction.
fn tight(seed: u64) -> Design {
    let mut random = Random::new(seed);
    let mut design = sample::design(seed, false);
    let needed = Build::of(&design).size().outside_mm;
    let short = random.below(3);
    design.set_json("size.rule", &"given".into()).unwrap();
    for (axis, key) in ["size.width", "size.depth", "size.height"].into_iter().enumerate() {
        let less = if axis == short { random.hundredths(0.0, 30.0) } else { 0.0 };
        // A flat case without a card may be as low as the choice goes.
        let _ = design.set(key, Value::Number((needed[axis] - less).clamp(80.0, 700.0)));
    }
    design
}

fn design(choices: &str) -> Design {
    panelwright::design::read_file(choices).unwrap()
}

/// Does what the first remedy of a rule with a number says, until the rule is quiet; how often that was.
fn follow(design: &mut Design, rule: &str) -> usize {
    for round in 0..4 {
        let build = Build::of(design);
        let Some(finding) =
            build.findings.iter().find(|finding| finding.rule == rule && finding.severity < Severity::Note)
        else {
            return round;
        };
        finding.mends.first().unwrap_or_else(|| panic!("{finding:#?}")).apply(design).unwrap();
    }
    panic!("{rule} never ends");
}

/// A case that grows on both sides gives each half; one that is too small in width names one number for all.
#[test]
fn one_width_clears_what_a_narrow_case_lacks() {
    let mut narrow = design(r#"{"size.rule":"given","size.width":200,"size.height":240}"#);
    assert_eq!(follow(&mut narrow, "size-too-small"), 1);
    let build = Build::of(&narrow);
    assert!(!build.blocked(), "{:#?}", build.findings);
    let mut narrow = design(r#"{"size.rule":"given","size.width":200,"size.height":240}"#);
    assert_eq!(follow(&mut narrow, "card-thickness"), 1);
}

/// A case that a saw's joints bring onto a paper does not come onto it with those that reach through; it does again, with
/// nothing new in the way, once the first remedy is followed.
#[test]
fn a_case_whose_fingers_outgrow_its_paper_gets_back_onto_it() {
    let file = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/a-harbour-office.json"));
    let by_hand = design(&file.unwrap());
    assert!(!Build::of(&by_hand).blocked());
    for method in ["laser", "router"] {
        let mut changed = by_hand.clone();
        changed.set_json("method", &method.into()).unwrap();
        assert!(Build::of(&changed).blocked(), "{method}");
        assert_eq!(follow(&mut changed, "panel-on-paper"), 1);
        let build = Build::of(&changed);
        assert!(!build.blocked(), "{method}: {:#?}", build.findings);
        assert!(build.panels.iter().all(|panel| {
            let [short, long] = [panel.size_mm[0].min(panel.size_mm[1]), panel.size_mm[0].max(panel.size_mm[1])];
            // ISO 216: A4 is 210 x 297 mm.
            short < 210.0 + 1e-6 && long < 297.0 + 1e-6
        }));
    }
}

/// A fan pinned too near to the edge it counts from is no matter of the case's size.
#[test]
fn a_pinned_fan_asks_for_another_place_and_not_for_a_larger_case() {
    let mut pinned = design(r#"{"size.rule":"given","fan1.across":40}"#);
    let build = Build::of(&pinned);
    assert!(build.findings.iter().all(|finding| finding.rule != "size-too-small"), "{:#?}", build.findings);
    for rule in ["hole-to-edge", "opening-to-edge"] {
        follow(&mut pinned, rule);
    }
    let build = Build::of(&pinned);
    let thin = |finding: &&Finding| finding.rule == "opening-to-edge" && finding.severity != Severity::Note;
    assert_eq!(build.findings.iter().find(thin), None);
}

/// A number of a remedy that cannot be entered is not said.
#[test]
fn nothing_is_asked_for_that_does_not_exist() {
    for choices in [
        r#"{"size.rule":"given","size.width":80}"#,
        r#"{"size.rule":"given","size.depth":80}"#,
        r#"{"size.rule":"given","size.height":80}"#,
    ] {
        let build = Build::of(&design(choices));
        for finding in &build.findings {
            assert!(!finding.remedy.contains(" -"), "{}", finding.remedy);
            for mend in &finding.mends {
                mend.apply(&mut design(choices)).unwrap();
            }
        }
    }
}

/// Whether two findings say the same of the same thing.
fn alike(one: &Finding, other: &Finding) -> bool {
    let panel = |id: &String| ["floor", "back", "left", "right", "front", "top"].contains(&id.as_str());
    one.rule == other.rule
        && match one.rule {
            // About whatever reaches past a panel, one for each direction.
            "size-too-small" => one.text.split(' ').nth(2) == other.text.split(' ').nth(2),
            _ if one.about.first().is_some_and(panel) => one.about == other.about,
            _ => one.about.first() == other.about.first(),
        }
}

/// What is left of a finding after a change; a note may stay of what was heavier.
fn left<'a>(finding: &Finding, after: &'a Build) -> Option<&'a Finding> {
    let counts = |other: &&Finding| finding.severity == Severity::Note || other.severity < Severity::Note;
    after.findings.iter().filter(counts).find(|other| alike(finding, other))
}

#[derive(Default)]
struct Tally {
    tried: usize,
    stayed: Vec<String>,
    new_blocks: Vec<String>,
}

#[test]
fn what_a_remedy_names_clears_its_finding() {
    let mut tallies: BTreeMap<String, Tally> = BTreeMap::new();
    for (name, design) in designs() {
        let before = Build::of(&design);
        for finding in &before.findings {
            for mend in &finding.mends {
                let mut changed = design.clone();
                mend.apply(&mut changed).unwrap();
                assert_ne!(changed, design, "{name}: {} changes nothing", finding.remedy);
                let after = Build::of(&changed);
                let keys: Vec<&str> = mend.choices.iter().map(|(key, _)| key.as_str()).collect();
                let key = keys.join("+").replace(|c: char| c.is_ascii_digit(), "N");
                let tally = tallies.entry(format!("{} by {key}", finding.rule)).or_default();
                tally.tried += 1;
                let what = || format!("{name}: {} {} -> {:?}", finding.text, finding.remedy, mend.choices);
                if let Some(left) = left(finding, &after) {
                    tally.stayed.push(format!("{} LEFT {}", what(), left.text));
                }
                let blocks = |build: &Build| -> Vec<Finding> {
                    build.findings.iter().filter(|finding| finding.severity == Severity::Blocks).cloned().collect()
                };
                let old = blocks(&before);
                let new = blocks(&after).into_iter().find(|new| !old.iter().any(|old| old.rule == new.rule));
                if let Some(new) = new {
                    tally.new_blocks.push(format!("{} NEW {} {}", what(), new.rule, new.text));
                }
            }
        }
    }
    let (mut tried, mut stayed, mut blocked) = (0, 0, 0);
    for (key, tally) in &tallies {
        println!("{key:60} {:5} stayed {:4} new blocks {:4}", tally.tried, tally.stayed.len(), tally.new_blocks.len());
        for line in tally.stayed.iter().take(4).chain(tally.new_blocks.iter().take(2)) {
            println!("      {line}");
        }
        tried += tally.tried;
        stayed += tally.stayed.len();
        blocked += tally.new_blocks.len();
    }
    println!("tried {tried}, stayed {stayed}, new blocks {blocked}");
    assert!(tried > 1000, "{tried}");
    // What a part that finds its place by itself does in a changed case is worked out, not foreseen: of a hundred
    // remedies one may fail so, and of those of one kind one in ten.
    assert!(100 * stayed <= tried, "{stayed} of {tried}");
    let often: Vec<&String> =
        tallies.iter().filter(|(_, tally)| tally.stayed.len() > 1 + tally.tried / 10).map(|(key, _)| key).collect();
    assert!(often.is_empty(), "{often:?}");
    assert!(20 * blocked <= tried, "{blocked} of {tried}");
}
