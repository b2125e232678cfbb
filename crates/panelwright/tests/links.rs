//! Links and design files: nothing is lost on the way there and back, old links open for ever, no input is a panic.

use std::fmt::Write as _;
use std::path::PathBuf;

use panelwright::design::{
    Choice, Design, Kind, LinkError, Value, choices, read_file, read_file_bytes, read_link, write_file, write_link,
};
use panelwright::sample;
use proptest::prelude::*;

/// Set this variable to write the kept files anew; only for additions, never because a test fails.
const REWRITE: &str = "PANELWRIGHT_REWRITE_LINKS";

fn kept(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/links").join(name)
}

#[test]
fn every_random_design_comes_back_from_its_link_and_from_its_file() {
    for seed in 0..4000 {
        let design = sample::design(seed, seed % 2 == 0);
        let link = write_link(&design);
        assert!(link.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-' || b == b'_'), "{link}");
        assert_eq!(read_link(&link).as_ref(), Ok(&design), "seed {seed}");
        assert_eq!(read_link(&format!("https://example.org/#{link}.")).as_ref(), Ok(&design), "seed {seed}");
        let file = write_file(&design);
        assert_eq!(read_file(&file).as_ref(), Ok(&design), "seed {seed}");
        assert_eq!(write_file(&read_file(&file).unwrap()), file);
    }
}

/// A design of exactly `changes` changes, drawn as makers would.
fn changed_by(changes: usize, seed: u64) -> Design {
    let mut random = sample::Random::new(seed);
    let mut design = Design::default();
    design.set_json("design.title", &"Harbour office, second draft".into()).unwrap();
    while design.changed().len() < changes {
        sample::change(&mut design, &mut random, false);
    }
    design
}

/// The promise is 400 characters for a typical design, `#` included.
#[test]
fn a_typical_design_takes_far_less_than_400_characters() {
    let mut lengths: Vec<usize> = (0..1000).map(|seed| write_link(&changed_by(25, seed)).len() + 1).collect();
    lengths.sort_unstable();
    println!("link of 25 changes and a title of 28 characters: p50 {}, longest {}", lengths[500], lengths[999]);
    assert!(lengths[999] <= 200, "{}", lengths[999]);
    let everything = (0..1000).map(|seed| write_link(&sample::design(seed, true)).len() + 1).max().unwrap();
    println!("longest link of a wild design: {everything}");
    assert!(everything < 2000);
}

#[test]
fn links_of_every_version_still_open_to_the_same_design() {
    let path = kept("v1.txt");
    if std::env::var_os(REWRITE).is_some() {
        std::fs::write(&path, links_of_today()).unwrap();
    }
    let text = std::fs::read_to_string(&path).unwrap();
    let lines: Vec<&str> = text.lines().filter(|line| !line.is_empty() && !line.starts_with("//")).collect();
    assert!(lines.len() >= 40, "the kept links are gone");
    for pair in lines.chunks(2) {
        let [link, file] = pair else { panic!("a link without its design: {pair:?}") };
        let opened = read_link(link).unwrap_or_else(|error| panic!("{link}: {error}"));
        assert_eq!(Ok(&opened), read_file(file).as_ref(), "{link}");
        // Stronger than equal designs: the values themselves, so a changed default cannot hide.
        let values: serde_json::Value = serde_json::from_str(file).unwrap();
        for (key, value) in values.as_object().unwrap() {
            let index = choices().iter().position(|choice| choice.key == *key).unwrap();
            assert_eq!(&opened.json(index), value, "{key} of {link}");
        }
    }
}

fn links_of_today() -> String {
    let mut text =
        "// Links of format 1, each with the values it holds. They must open for ever: append, never change.\n"
            .to_owned();
    let one_line = |design: &Design| {
        let values: Vec<String> = design
            .changed()
            .iter()
            .map(|index| format!("{:?}: {}", choices()[*index].key, design.json(*index)))
            .collect();
        format!("{{{}}}", values.join(", "))
    };
    let mut designs = vec![Design::default()];
    designs.extend((0..12).map(|seed| changed_by(25, seed)));
    designs.extend((0..12).map(|seed| sample::design(seed, true)));
    for design in designs {
        writeln!(text, "{}\n{}", write_link(&design), one_line(&design)).unwrap();
    }
    text
}

/// What a link of format 1 relies on, one choice per line.
fn line(choice: &Choice) -> String {
    let kind = match &choice.kind {
        Kind::Pick(options) => options.iter().map(|option| option.name).collect::<Vec<_>>().join("|"),
        Kind::Number { .. } => "number".to_owned(),
        Kind::Switch => "switch".to_owned(),
        Kind::Text { .. } => "text".to_owned(),
        Kind::Points { .. } => "points".to_owned(),
    };
    let default = match &choice.default {
        Value::Open => "open".to_owned(),
        Value::Number(number) => number.to_string(),
        Value::Pick(option) => option.to_string(),
        Value::Switch(on) => on.to_string(),
        Value::Text(text) => format!("{text:?}"),
        Value::Points(points) => format!("{points:?}"),
    };
    format!("{} {} {kind} = {default}", choice.code, choice.key)
}

/// A link holds codes, places of options, and only what differs from the defaults: all three are permanent.
#[test]
fn codes_options_and_defaults_of_released_choices_have_not_changed() {
    let path = kept("v1-choices.txt");
    if std::env::var_os(REWRITE).is_some() {
        let lines: Vec<String> = choices().iter().map(line).collect();
        std::fs::write(&path, lines.join("\n") + "\n").unwrap();
    }
    let text = std::fs::read_to_string(&path).unwrap();
    for kept in text.lines() {
        let code = kept.split(' ').next().unwrap();
        let now = choices().iter().find(|choice| choice.code.to_string() == code).map(line);
        let now = now.unwrap_or_else(|| panic!("choice {kept} is gone; links that name it no longer open"));
        // Options may be appended to a pick.
        let (kept_kind, kept_default) = kept.split_once(" = ").unwrap();
        let (now_kind, now_default) = now.split_once(" = ").unwrap();
        assert_eq!(now_default, kept_default, "the default of {kept} changed");
        let appended = now_kind.strip_prefix(kept_kind).is_some_and(|rest| rest.is_empty() || rest.starts_with('|'));
        assert!(appended, "was {kept}, is {now}");
    }
    for choice in choices() {
        let known = text.lines().any(|kept| kept.starts_with(&format!("{} {} ", choice.code, choice.key)));
        assert!(known, "append to tests/links/v1-choices.txt: {}", line(choice));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_are_a_panic(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        let _ = read_file_bytes(&bytes);
        let _ = read_link(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn no_text_is_a_panic(text in "[1#]?[\\PC]{0,60}") {
        let _ = read_file(&text);
        let _ = read_link(&text);
    }

    /// Objects of real keys with odd values: read, or refused with one line for each problem.
    #[test]
    fn real_keys_with_odd_values_are_read_or_refused(
        entries in proptest::collection::vec((any::<proptest::sample::Index>(), 0..9_usize, any::<f64>(), "\\PC{0,9}"), 0..9)
    ) {
        let fields: Vec<String> = entries.iter().map(|(at, kind, number, text)| {
            let value = match kind {
                0 => "null".to_owned(),
                1 => "true".to_owned(),
                2 => serde_json::Value::from(text.as_str()).to_string(),
                3 => "[[1, 2], [3]]".to_owned(),
                4 => "1e400".to_owned(),
                5 => "{}".to_owned(),
                6 => format!("{}", (number % 400.0) as i32),
                _ => serde_json::Value::from(*number).to_string(),
            };
            format!("{:?}: {value}", choices()[at.index(choices().len())].key)
        }).collect();
        match read_file(&format!("{{{}}}", fields.join(","))) {
            Ok(design) => prop_assert_eq!(read_file(&write_file(&design)), Ok(design)),
            Err(errors) => prop_assert_eq!(errors.to_string().lines().count(), errors.iter().count()),
        }
    }

    /// Real links with bytes changed: the same design only when nothing changed.
    #[test]
    fn a_damaged_link_never_opens(seed in 0..500_u64, at in any::<proptest::sample::Index>(), with in "[A-Za-z0-9_-]{1,6}") {
        let link = write_link(&sample::design(seed, false));
        let at = at.index(link.len());
        let end = (at + with.len()).min(link.len());
        let damaged = format!("{}{with}{}", &link[..at], &link[end..]);
        prop_assert!(damaged == link || read_link(&damaged).is_err());
    }

    /// Whatever a crafted link with a right check number holds, it is refused or read as values inside their ranges.
    #[test]
    fn crafted_links_are_read_or_refused(body in proptest::collection::vec(any::<u8>(), 0..40)) {
        match read_link(&crafted(&body)) {
            Ok(design) => prop_assert_eq!(read_link(&write_link(&design)), Ok(design)),
            Err(LinkError::Damaged | LinkError::UnknownChoice { .. } | LinkError::Value(_)) => {}
            Err(other) => prop_assert!(false, "{}", other),
        }
    }
}

/// A link with any changes inside, written without the tool: length, changes, CRC-32, base64url.
fn crafted(body: &[u8]) -> String {
    assert!(body.len() < 128);
    let mut bytes = vec![body.len() as u8];
    bytes.extend(body);
    let mut crc = u32::MAX;
    for byte in &bytes {
        for bit in 0..8 {
            let feedback = (crc ^ u32::from(byte >> bit)) & 1;
            crc = (crc >> 1) ^ (0xedb8_8320 * feedback);
        }
    }
    bytes.extend((!crc).to_le_bytes());
    let digits = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let bits: Vec<u8> = bytes.iter().flat_map(|byte| (0..8).rev().map(move |bit| byte >> bit & 1)).collect();
    let text: String = bits
        .chunks(6)
        .map(|six| digits[six.iter().enumerate().map(|(at, bit)| usize::from(*bit) << (5 - at)).sum::<usize>()] as char)
        .collect();
    format!("1{text}")
}
