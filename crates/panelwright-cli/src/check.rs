//! `check`: what the checks say of a design, for people.

use std::fmt::Write as _;

use panelwright::Build;
use panelwright::drawing::number::format_number;
use panelwright::fit::{Finding, Severity};

/// Every finding, the heaviest first, and a line that sums up.
pub fn report(build: &Build) -> String {
    let mut text = String::new();
    for finding in &build.findings {
        // Writing to a String cannot fail.
        let _ = writeln!(text, "{}: {} [{}]", finding.severity.name(), finding.text, finding.rule);
        for line in [finding.remedy.clone(), numbers(finding), about(finding)] {
            if !line.is_empty() {
                let _ = writeln!(text, "    {line}");
            }
        }
        let _ = writeln!(text, "    From {}.\n", finding.source.cite());
    }
    text + &summary(build)
}

/// How much was found, in one line.
pub fn summary(build: &Build) -> String {
    let count = |severity| build.findings.iter().filter(|finding| finding.severity == severity).count();
    let counted = |count: usize, word: &str| format!("{count} {word}{}", if count == 1 { "" } else { "s" });
    let blocking = match count(Severity::Blocks) {
        0 => "Nothing blocks".to_owned(),
        1 => "1 finding blocks this design".to_owned(),
        count => format!("{count} findings block this design"),
    };
    let cautions = counted(count(Severity::Caution), "caution");
    let notes = counted(count(Severity::Note), "note");
    format!("{blocking}; {cautions}, {notes}.\n")
}

fn about(finding: &Finding) -> String {
    if finding.about.is_empty() { String::new() } else { format!("About {}.", finding.about.join(", ")) }
}

fn numbers(finding: &Finding) -> String {
    let unit = if finding.unit.is_empty() { String::new() } else { format!(" {}", finding.unit) };
    // Hundredths are finer than any tool.
    let number = |value: f64| format!("{}{unit}", format_number(value, 2));
    match (finding.measured, finding.needed) {
        (Some(measured), Some(needed)) => format!("Measured {}, needed {}.", number(measured), number(needed)),
        (Some(measured), None) => format!("Measured {}.", number(measured)),
        (None, Some(needed)) => format!("Needed {}.", number(needed)),
        (None, None) => String::new(),
    }
}
