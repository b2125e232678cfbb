//! Kits of several designs.

use super::*;
use crate::design::Design;
use crate::design::{write_file, write_link};
use crate::stock::check::faults;

fn design(choices: &[(&str, serde_json::Value)]) -> Design {
    let mut design = Design::default();
    for (key, value) in choices {
        design.set_json(key, value).unwrap();
    }
    design
}

fn unit(design: &Design, count: usize, part: KitPart) -> KitUnit {
    KitUnit { design: write_file(design), label: String::new(), count, part }
}

fn sheets(count: Option<usize>) -> Vec<KitSheet> {
    vec![KitSheet { width_mm: 1220.0, height_mm: 610.0, count, material: None }]
}

fn found(request: &KitRequest) -> Kits {
    let mut work = KitWork::new(request).unwrap();
    work.step(300_000);
    let kits = work.found();
    for (_, found) in &kits.stacks {
        assert_eq!(faults(&found.laid.job, &found.laid.plan), [""; 0]);
    }
    kits
}

/// Panels of each unit on the sheets.
fn laid(kits: &Kits, unit: usize) -> usize {
    let on = |(stack, found): &(work::Stack, work::Found)| {
        let placed = found.laid.plan.sheets.iter().flat_map(|sheet| &sheet.placed);
        placed.filter(|placed| stack.pieces[placed.piece].0 == unit).count()
    };
    kits.stacks.iter().map(on).sum()
}

/// Whoever has only one file of the sheets must not cut in vain.
#[test]
fn every_file_and_page_of_too_few_sheets_says_so() {
    let laser = design(&[("method", "laser".into()), ("size.rule", "given".into()), ("size.width", 90.into())]);
    let units = vec![unit(&laser, 9, KitPart::Case)];
    let kits = found(&KitRequest { units, sheets: sheets(Some(2)), ask: KitAsk::Counts });
    assert!(kits.answer().stacks.iter().all(|stack| stack.rounds == 0));
    assert!(!kits.report().contains("more than the others"));
    let placed = laid(&kits, 0);
    assert!(placed < 54);
    let short = format!("Not enough sheet: {} of 54 panels find no place", 54 - placed);
    let files = kits.files();
    let cut = files.iter().filter(|(name, _)| name.ends_with(".dxf") || name.ends_with(".svg"));
    let texts: Vec<String> = cut.map(|(_, bytes)| String::from_utf8(bytes.clone()).unwrap()).collect();
    assert!(texts.len() >= 6 && texts.iter().all(|text| text.contains(&short) && text.contains("Do not cut yet: ")));
    let pages = kits.pages();
    assert_eq!(pages.len(), 2);
    for page in pages {
        let said = format!("{:?}", page.drawing.layers);
        assert!(said.contains(&short) && said.contains("Do not cut yet: "));
    }
}

#[test]
fn counts_of_several_designs_and_a_sleeve_on_one_stack() {
    let (a, b) =
        (design(&[("method", "laser".into())]), design(&[("method", "laser".into()), ("card.kind", "none".into())]));
    let units = vec![unit(&a, 2, KitPart::Case), unit(&b, 1, KitPart::Chassis), unit(&a, 3, KitPart::Sleeve)];
    let kits = found(&KitRequest { units, sheets: sheets(None), ask: KitAsk::Counts });
    let answer = kits.answer();
    assert_eq!((answer.stacks.len(), answer.rounds), (1, 1));
    assert_eq!([0, 1, 2].map(|unit| laid(&kits, unit)), [12, 2, 12]);
    // A case that does not fit is laid as asked, and said not to.
    let small = design(&[("size.rule", "given".into()), ("size.width", 90.into())]);
    let units = vec![unit(&small, 1, KitPart::Case)];
    let blocked = found(&KitRequest { units, sheets: sheets(None), ask: KitAsk::Counts });
    assert!(blocked.answer().units[0].blocked && blocked.report().contains("do not cut it as it is"));
    let names: Vec<String> = kits.files().into_iter().map(|(name, _)| name).collect();
    for name in [
        "kits.txt",
        "kits.json",
        "sheets.pdf",
        "designs/3.json",
        "fibreboard-6/sheet-1.svg",
        "fibreboard-6/sheet-1-cut.dxf",
    ] {
        assert!(names.iter().any(|known| known == name), "{name} {names:?}");
    }
}

#[test]
fn the_most_rounds_from_the_sheets_at_hand() {
    let a = design(&[]);
    let units = vec![unit(&a, 1, KitPart::Case), unit(&a, 1, KitPart::Sleeve)];
    let kits = found(&KitRequest { units: units.clone(), sheets: sheets(Some(4)), ask: KitAsk::Most });
    let answer = kits.answer();
    assert!(answer.rounds >= 4 && answer.rounds <= answer.bound, "{} of {}", answer.rounds, answer.bound);
    assert_eq!([0, 1].map(|unit| laid(&kits, unit)), [6 * answer.rounds, 4 * answer.rounds]);
    assert_eq!(answer.units[1].total, answer.rounds);
    assert!(kits.stacks[0].1.laid.plan.sheets.len() <= 4);
    // With one sheet less there is never more.
    let fewer = found(&KitRequest { units, sheets: sheets(Some(3)), ask: KitAsk::Most });
    assert!(fewer.rounds <= answer.rounds);
}

#[test]
fn another_material_is_another_stack_and_the_scarcer_one_decides() {
    let (a, oak) = (design(&[]), design(&[("sheet.material", "plywood".into()), ("sheet.measured", 5.8.into())]));
    let units = vec![unit(&a, 1, KitPart::Case), unit(&oak, 1, KitPart::Sleeve)];
    let of = |count, material: &str| KitSheet { material: Some(material.to_owned()), ..sheets(Some(count)).remove(0) };
    let request = KitRequest { units, sheets: vec![of(9, "fibreboard"), of(1, "plywood")], ask: KitAsk::Most };
    let kits = found(&request);
    let answer = kits.answer();
    assert_eq!(answer.stacks.len(), 2);
    assert_eq!(answer.stacks[1].label, "Plywood, 5.8 mm");
    assert!(answer.rounds >= 1 && answer.rounds <= 3, "{}", answer.rounds);
    assert_eq!((laid(&kits, 0), laid(&kits, 1)), (6 * answer.rounds, 4 * answer.rounds));
    // The fibreboard that is not needed stays whole.
    assert!(answer.stacks[0].unused[0].1 >= 6, "{:?}", answer.stacks[0].unused);
    let one = KitRequest { sheets: vec![of(9, "fibreboard")], ..request.clone() };
    assert!(matches!(KitWork::new(&one), Err(KitError::NoSheet(label)) if label.starts_with("Plywood")));
    let endless = KitRequest { sheets: sheets(None), ..request.clone() };
    assert!(matches!(KitWork::new(&endless), Err(KitError::Uncounted(_))));
    let tin = KitRequest { sheets: vec![of(1, "tin")], ..request };
    assert!(KitWork::new(&tin).unwrap_err().to_string().contains("one of fibreboard"));
}

#[test]
fn a_request_comes_as_text_and_nonsense_is_refused() {
    let link = write_link(&design(&[("design.title", "Quay".into())]));
    let text = format!(
        r##"{{"units": [{{"design": "#{link}", "part": "sleeve"}}], "sheets": [{{"width_mm": 900, "height_mm": 600}}]}}"##
    );
    let request: KitRequest = serde_json::from_str(&text).unwrap();
    let answer = found(&request).answer();
    assert_eq!((answer.units[0].label.as_str(), answer.units[0].count), ("Quay", 1));
    assert_eq!(answer.stacks[0].layouts.sheets[0].panels.len(), 4);
    let refused = |change: &dyn Fn(&mut KitRequest)| {
        let mut request = request.clone();
        change(&mut request);
        KitWork::new(&request).unwrap_err()
    };
    assert_eq!(refused(&|request| request.units.clear()), KitError::Units(0));
    assert!(matches!(refused(&|request| request.units[0].count = 0), KitError::None(_)));
    assert!(matches!(refused(&|request| request.units[0].count = usize::MAX), KitError::Job(_)));
    assert!(matches!(refused(&|request| request.units[0].design = "{\"a\": 1}".to_owned()), KitError::Design { .. }));
    assert!(matches!(refused(&|request| request.units[0].design = "#1AAAA".to_owned()), KitError::Link { .. }));
    assert!(matches!(refused(&|request| request.sheets[0].width_mm = -1.0), KitError::Job(_)));
}
