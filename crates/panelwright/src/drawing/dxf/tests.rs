//! The DXF writer, as far as it can be held without another reader: `tests/outside/test_cutting.py` does the rest.

use super::*;

/// Groups of a file: code and value.
fn groups(text: &str) -> Vec<(u16, &str)> {
    let lines: Vec<&str> = text.split_terminator("\r\n").collect();
    assert_eq!(lines.len() % 2, 0, "every code has a value");
    lines.chunks(2).map(|pair| (pair[0].parse().expect("a code"), pair[1])).collect()
}

fn specimen() -> String {
    let rounded = Contour::rounded_rect(0.0, 0.0, 100.0, 60.0, 5.0);
    let hole = Contour::circle(20.5, 30.0, 1.7);
    let line = [Point::new(0.0, -10.0), Point::new(12.345_67, -10.0)];
    let bent = [Point::new(0.0, -20.0), Point::new(1e-9, -25.0), Point::new(5.0, -25.0)];
    let layer = |name: &str, printed| DxfLayer { name: name.to_owned(), colour: 7, printed };
    let item = |layer, form| DxfItem { layer, form };
    dxf(&Dxf {
        remarks: vec!["Größe: nominal".to_owned()],
        layers: vec![layer("holes", true), layer("outline", true), layer("rebate 2.0mm|x", false)],
        items: vec![
            item(0, DxfForm::Contour(&hole)),
            item(2, DxfForm::Line(&line)),
            item(2, DxfForm::Line(&bent)),
            item(2, DxfForm::Line(&line[..1])),
            item(1, DxfForm::Contour(&rounded)),
        ],
    })
}

#[test]
fn a_file_is_whole_pairs_of_plain_letters_and_says_its_unit() {
    let text = specimen();
    assert!(text.is_ascii() && !text.replace("\r\n", "").contains(['\r', '\n']));
    let groups = groups(&text);
    assert_eq!(groups[0], (999, "Gr??e: nominal"));
    let after = |name: &str| {
        let place = groups.iter().position(|group| *group == (9, name)).unwrap();
        groups[place + 1]
    };
    assert_eq!(after("$ACADVER"), (1, "AC1015"));
    assert_eq!(after("$INSUNITS"), (70, "4"));
    assert_eq!(after("$MEASUREMENT"), (70, "1"));
    assert_eq!(after("$EXTMIN"), (10, "0.0"));
    assert_eq!(after("$EXTMAX"), (10, "100.0"));
    assert_eq!(groups.last(), Some(&(0, "EOF")));
    assert_eq!(groups.iter().filter(|group| **group == (0, "SECTION")).count(), 6);
    assert_eq!(groups.iter().filter(|group| **group == (0, "ENDSEC")).count(), 6);
    for (code, value) in groups {
        if (10..60).contains(&code) || (140..150).contains(&code) {
            assert!(
                value.contains('.') && value.parse::<f64>().is_ok() && !value.contains(['e', 'E']),
                "{code} {value}"
            );
        }
    }
}

#[test]
fn every_handle_is_there_once_and_the_next_one_is_free() {
    let text = specimen();
    let mut handles: Vec<u64> = groups(&text)
        .windows(2)
        .filter(|pair| matches!(pair[1].0, 5 | 105) && pair[0] != (9, "$HANDSEED"))
        .map(|pair| u64::from_str_radix(pair[1].1, 16).unwrap())
        .collect();
    handles.sort_unstable();
    assert!(handles.windows(2).all(|pair| pair[0] < pair[1]), "{handles:X?}");
    let groups = groups(&text);
    let seed = groups.iter().position(|group| *group == (9, "$HANDSEED")).unwrap();
    assert!(u64::from_str_radix(groups[seed + 1].1, 16).unwrap() > *handles.last().unwrap());
}

#[test]
fn forms_are_written_as_what_they_are() {
    let text = specimen();
    let groups = groups(&text);
    let start = groups.iter().position(|group| *group == (2, "ENTITIES")).unwrap();
    let end = start + groups[start..].iter().position(|group| *group == (0, "ENDSEC")).unwrap();
    let kinds: Vec<&str> = groups[start..=end].iter().filter(|group| group.0 == 0).map(|group| group.1).collect();
    assert_eq!(kinds[..5], ["CIRCLE", "LINE", "LWPOLYLINE", "LWPOLYLINE", "ENDSEC"]);
    let bulges: Vec<f64> =
        groups[start..end].iter().filter(|group| group.0 == 42).map(|g| g.1.parse().unwrap()).collect();
    assert_eq!(bulges, [0.414_213_562; 4]);
    assert!(groups.contains(&(8, "rebate_2.0mm_x")));
    assert!(groups[start..].contains(&(10, "0.0")) && !groups.contains(&(10, "-0.0")));
}
