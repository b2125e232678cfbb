//! Tests of the rules over cases made up for them.

mod fixture;
mod growth;
mod limits;
mod limits_board;
mod limits_card;
mod limits_case;
mod limits_making;
mod limits_measures;
mod limits_screws;
mod limits_supply;
mod limits_webs;
mod solids;

use super::RULES;

#[test]
fn every_rule_says_what_it_does_and_has_its_own_name() {
    assert!(RULES.len() >= 24);
    let mut names: Vec<&str> = RULES.iter().map(|rule| rule.name).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), RULES.len());
    for rule in RULES {
        assert!(rule.what.len() > 20 && rule.what.ends_with('.'), "{}", rule.name);
        assert!(!rule.source.document.is_empty() && !rule.source.place.is_empty(), "{}", rule.name);
    }
}

/// The default design with plain panels: a case that can be built.
#[test]
fn nothing_blocks_a_case_that_fits() {
    let fixture = fixture::Fixture::new(&[]);
    let blocks: Vec<_> = fixture.check().into_iter().filter(|finding| finding.severity.name() == "blocks").collect();
    assert!(blocks.is_empty(), "{blocks:#?}");
    let closest = super::closest(&fixture.case(), &super::check(&fixture.case()));
    assert!(closest.starts_with("Nothing stands in the way. Closest call: "), "{closest}");
}

#[test]
fn findings_are_sorted_and_speak_in_sentences() {
    let mut fixture = fixture::Fixture::new(&[("cooler.height", 199.into()), ("size.rule", "given".into())]);
    fixture.spec.feet.height_mm = 0.0;
    let found = fixture.check();
    assert!(found.len() > 5);
    assert!(found.windows(2).all(|two| (two[0].severity, two[0].rule) <= (two[1].severity, two[1].rule)));
    for finding in found {
        assert!(finding.text.ends_with('.') || finding.text.ends_with(".)"), "{}", finding.text);
        assert!(finding.text.chars().next().is_some_and(|first| first.is_uppercase() || first.is_numeric()));
        assert!(!finding.text.contains("NaN") && !finding.text.contains("inf"), "{}", finding.text);
        assert!(finding.remedy.is_empty() || finding.remedy.ends_with('.'), "{}", finding.remedy);
        assert_eq!(
            finding.measured.is_some() && finding.unit.is_empty(),
            ["drive-washers", "hole-from-memory", "bracket-without-place", "card-slot", "air-ways"]
                .contains(&finding.rule)
        );
    }
}

/// The words the page was promised.
#[test]
fn a_cooler_too_high_is_told_with_the_numbers_that_would_do() {
    let mut fixture = fixture::Fixture::new(&[]);
    let top = fixture.inside(crate::design::Wall::Top);
    fixture.part("cooler").bodies[0].max[2] = top + 3.4;
    let found = fixture.check();
    let finding = found.iter().find(|finding| finding.rule == "cooler-under-top").unwrap();
    assert_eq!(finding.text, "The cooler stands 3.4 mm too high for the top.");
    // The gap of 2 mm that ends the caution, too, is asked for.
    assert_eq!(
        finding.remedy,
        "Choose a given size of 222 × 296.5 × 215.4 mm, larger than A4, or take a cooler of 152.6 mm or less."
    );
    assert_eq!(finding.about, ["cooler", "top"]);
}

/// A cooler over the memory or the connectors may be so by our guess of the processor's place alone: as long as it is
/// one, the first thing to do is to measure.
#[test]
fn what_a_guessed_processor_brings_about_asks_for_the_measure() {
    let flat = r#""cooler.kind":"flat","cooler.height":55,"cooler.width":120,"cooler.depth":120,"card.kind":"none""#;
    let measured = r#","board.socket_from_right":79,"board.socket_from_rear":75"#;
    for (under, rules) in [(0, &["part-overlaps-part"][..]), (25, &["memory-height", "part-overlaps-part"][..])] {
        for (socket, asked) in [("", true), (measured, false)] {
            let design = crate::design::read_file(&format!(r#"{{{flat},"cooler.under":{under}{socket}}}"#)).unwrap();
            let build = crate::Build::of(&design);
            for rule in rules {
                let finding = build.findings.iter().find(|finding| finding.rule == *rule).unwrap();
                assert_eq!(finding.remedy.starts_with("Measure where the processor sits"), asked, "{}", finding.remedy);
            }
        }
    }
}

/// Hole 9 from the corner, a gap of 0.5 to the edge of floor and back, radius 2 in 6 mm acrylic: what is missing is added
/// to the 9, and then nothing is missing any more. A nut near another edge is no matter of its hole.
#[test]
fn captive_nuts_in_acrylic_say_where_their_holes_must_be() {
    let mut design = crate::design::read_file(r#"{"sheet.material":"acrylic","size.rule":"smallest"}"#).unwrap();
    let near = |design: &crate::design::Design| -> Vec<super::Finding> {
        let named = |finding: &super::Finding| finding.remedy.contains("whose hole lies");
        let hole = |finding: &super::Finding| finding.mends.iter().any(|mend| mend.choices[0].0 == "captive.hole");
        let found = crate::Build::of(design).findings.into_iter().filter(named);
        found
            .inspect(|finding| assert!(hole(finding) || !finding.text.contains("6.5 mm"), "{finding:?}"))
            .filter(hole)
            .collect()
    };
    let before = near(&design);
    assert!(before.len() >= 2, "{before:?}");
    before[0].mends[0].apply(&mut design).unwrap();
    assert_eq!(near(&design), []);
}
