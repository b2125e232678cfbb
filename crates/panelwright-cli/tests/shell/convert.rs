//! `link` and `open`: designs from files, links and standard input.

use super::run::{file, folder, run, run_with};

const DESIGN: &str = "{\n  \"format\": 1,\n  \"design.title\": \"Quay\",\n  \"cooler.height\": 125.5\n}\n";

#[test]
fn a_design_goes_to_a_link_and_back_unchanged() {
    let path = file(&folder("convert"), "quay.json", DESIGN);
    let link = run(&["link", &path]).printed();
    assert!(link.starts_with("#1") && link.ends_with('\n') && link.lines().count() == 1, "{link}");
    assert_eq!(run(&["open", link.trim()]).printed(), DESIGN);
    assert_eq!(run(&["open", &format!("<https://example.org/case/{}>.", link.trim())]).printed(), DESIGN);
    assert_eq!(run_with(&["open", "-"], link.as_bytes()).printed(), DESIGN);
    // A design may be a link wherever a file would do, also on standard input.
    assert_eq!(run(&["link", link.trim()]).printed(), link);
    assert_eq!(run_with(&["link", "-"], link.as_bytes()).printed(), link);
    assert_eq!(run_with(&["link", "-"], DESIGN.as_bytes()).printed(), link);
    let whole = run(&["link", &path, "--base", "https://example.org/case/"]).printed();
    assert_eq!(whole, format!("https://example.org/case/{link}"));
}

#[test]
fn the_default_design_is_the_shortest_link() {
    assert_eq!(run_with(&["link", "-"], b"{}").printed(), "#1AI3vAtI\n");
    assert_eq!(run(&["open", "1AI3vAtI"]).printed(), "{\n  \"format\": 1\n}\n");
}

#[test]
fn every_problem_of_a_file_is_said_with_its_place() {
    let path =
        file(&folder("problems"), "wrong.json", r#"{ "cooler.height": 900, "cooler.widht": 1, "card.slots": 2 }"#);
    let said = run(&["link", &path]).failed(2);
    let expected = format!(
        "panelwright: {path}: cooler.height: 900 is not allowed; it must be 20 to 200 mm\n\
         panelwright: {path}: there is no choice \"cooler.widht\"; did you mean \"cooler.width\"?\n"
    );
    assert_eq!(said, expected);
}

#[test]
fn wrong_input_of_every_kind_is_exit_code_2() {
    let here = folder("kinds");
    let said = |given: &str, input: &[u8]| run_with(&["link", given], input).failed(2);
    assert!(said("nothing-here.json", b"").contains("nothing-here.json: there is no such file"));
    assert!(said(here.to_str().unwrap(), b"").contains("kinds: "));
    assert!(said("-", b"").contains("standard input: this is not a design file: it is empty"));
    let broken = said("-", b"{\n\"card.slots\" 2}");
    assert!(
        broken.contains("it is not JSON: line 2, column 14: a colon belongs between a key and its value"),
        "{broken}"
    );
    assert!(said("-", b"[1]").contains("it begins with a list"));
    assert!(said("-", b"{\0}\0").contains("save it again as UTF-8"));
    for text in [&b"\xef\xbb\xbf{}"[..], b"\xff\xfe{\0}\0"] {
        assert_eq!(run_with(&["link", "-"], text).printed(), "#1AI3vAtI\n");
    }
    assert!(said("-", b"{ \"design.title\": \"\xff\" }").contains("byte 20 is not UTF-8"));
    assert!(said("-", &vec![b' '; 200_000]).contains("more than the 65536 allowed"));
    assert!(said("#1AI3vAt", b"").contains("the link: the link is cut short: 7 of its 8 characters"));
    assert!(said("#1AI3vAtJ", b"").contains("damaged"));
    assert!(said("#2AI3vAtI", b"").contains("format 2"));
    assert!(said("https://example.org/", b"").contains("nothing follows a # sign"));
    assert!(run(&["open", "about"]).failed(2).contains("starts with 'a'"));
    // Wrong arguments are told by the parser of arguments, in its own form.
    for wrong in [&["open"][..], &["draw", "x"], &["link", "-", "--colour"], &[]] {
        let done = run(wrong);
        assert_eq!((done.code, done.out.as_str()), (2, ""), "{wrong:?}");
        assert!(done.err.contains("Usage: panelwright"), "{}", done.err);
    }
}
