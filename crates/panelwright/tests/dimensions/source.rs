//! A value keeps its source, and a source reads as a sentence.

use panelwright::dimensions::source::{Confidence, Source, Sourced};

#[test]
fn each_confidence_has_its_words() {
    let made = [
        (Source::published("A", "b"), Confidence::Published, "A, b (published)"),
        (Source::derived("A", "b"), Confidence::Derived, "A, b (derived)"),
        (Source::common_practice("A", "b"), Confidence::CommonPractice, "A, b (common practice)"),
        (Source::from_memory("A", "b"), Confidence::FromMemory, "A, b (from memory: measure yours)"),
    ];
    for (source, confidence, citation) in made {
        assert_eq!(source.confidence, confidence);
        assert_eq!(source.cite(), citation);
    }
}

#[test]
fn a_sourced_value_gives_back_both() {
    const SOURCE: Source = Source::published("Some standard", "table 1");
    const VALUE: Sourced<[f64; 2]> = Sourced::new([1.0, 2.0], SOURCE);
    assert_eq!(VALUE.get(), [1.0, 2.0]);
    assert_eq!(VALUE.source(), SOURCE);
    assert_ne!(VALUE, Sourced::new([1.0, 2.0], Source::derived("Some standard", "table 1")));
}
