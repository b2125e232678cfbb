//! Writes cutting files of seeded designs by every rule into the folder named on the command line.
//!
//! The checks in `tests/` read these files with other programs. `cutting.json` beside them says for each file which
//! rule made it, and gives every contour before and after, so that offsets can be worked out anew.

use std::fs;
use std::path::Path;

use kurbo::Vec2;
use panelwright::cutting::{
    CutPanel, CutRule, CutSheet, FileMarks, Joins, Relief, RouterRule, SvgLines, TabRule, Trouble, cut_panel_to_dxf,
    cut_panel_to_svg, cut_sheet_to_dxf, cut_sheet_to_svg, kerf_test_piece, offset,
};
use panelwright::drawing::Contour;
use panelwright::panels::Purpose;
use panelwright::{Build, sample};
use serde_json::{Value, json};

/// Designs drawn; enough that every kind of part is among them.
const DESIGNS: u64 = 4;

fn rules() -> [(&'static str, CutRule); 5] {
    let router =
        |relief, compensated, tabs| CutRule::Router(RouterRule { cutter_mm: 3.175, relief, compensated, tabs });
    [
        ("nominal", CutRule::Nominal),
        ("laser", CutRule::Laser { kerf_mm: 0.2 }),
        ("router", router(Some(Relief::Diagonal), false, None)),
        ("router-edge", router(Some(Relief::AlongEdge), false, Some(TabRule::default()))),
        ("router-path", router(Some(Relief::Diagonal), true, Some(TabRule::default()))),
    ]
}

fn main() -> std::io::Result<()> {
    let Some(folder) = std::env::args_os().nth(1) else {
        return Err(std::io::Error::other("say which folder to write into"));
    };
    let folder = Path::new(&folder);
    fs::create_dir_all(folder)?;
    let mut told = Vec::new();
    for seed in 0..DESIGNS {
        let build = Build::of(&sample::design(seed, false));
        for (name, rule) in rules() {
            let mut placed = Vec::new();
            let mut left = 10.0;
            for panel in &build.panels {
                let cut = CutPanel::of(panel, rule);
                let file = format!("{seed}-{}-{name}", panel.id());
                write(folder, &file, &cut_panel_to_dxf(&cut, FileMarks::of(&build.fingerprint)), "dxf")?;
                let lines = if name == "laser" { SvgLines::Hairline } else { SvgLines::Shown };
                write(folder, &file, &cut_panel_to_svg(&cut, FileMarks::of(&build.fingerprint), lines), "svg")?;
                told.push(json!({
                    "file": file,
                    "rule": name,
                    "fingerprint": build.fingerprint,
                    "says": rule.says(),
                    "outline": panel.outline.to_path_data(),
                    "features": panel.features.iter().map(|feature| json!({
                        "id": feature.id,
                        "path": feature.contour.to_path_data(),
                        "through": feature.blind.is_none(),
                        "notch": feature.notch,
                    })).collect::<Vec<Value>>(),
                    "cuts": cut.cuts().map(|(layer, cut)| json!({
                        "of": cut.of,
                        "layer": layer.name,
                        "path": cut.contour.to_path_data(),
                    })).collect::<Vec<Value>>(),
                    "problems": cut.problems.iter().map(|problem| problem.says()).collect::<Vec<String>>(),
                }));
                // In a row, every other one turned by a quarter.
                let turned = placed.len() % 2 == 1;
                let size = panel.size_mm;
                let by = if turned { Vec2::new(left + size[1], 10.0) } else { Vec2::new(left, 10.0) };
                placed.push(cut.placed(i32::from(turned), by));
                left += if turned { size[1] } else { size[0] } + 10.0;
            }
            let sheet = CutSheet { label: "Sheet 1 of 1".to_owned(), size_mm: [left, 600.0], panels: placed };
            write(
                folder,
                &format!("{seed}-sheet-{name}"),
                &cut_sheet_to_dxf(&sheet, FileMarks::of(&build.fingerprint)),
                "dxf",
            )?;
            let svg = cut_sheet_to_svg(&sheet, FileMarks::of(&build.fingerprint), SvgLines::Shown);
            write(folder, &format!("{seed}-sheet-{name}"), &svg, "svg")?;
        }
    }
    write(folder, "kerf-test", &cut_panel_to_dxf(&kerf_test_piece(10, 100.0, 6.0), FileMarks::of("-")), "dxf")?;
    let document = json!({ "files": told, "offsets": offsets(), "goes": goes(folder)? });
    fs::write(folder.join("cutting.json"), document.to_string())
}

/// Designs whose panels are written as a pack holds them: seen from the face that is up, lettered for a laser, in two
/// goes where both faces are worked on. A thin cutter without relief, so that every contour is the panel's own.
const LETTERED: u64 = 16;

fn goes(folder: &Path) -> std::io::Result<Vec<Value>> {
    let mut all = Vec::new();
    for seed in 0..LETTERED {
        for method in ["laser", "router"] {
            let mut design = sample::design(seed, seed % 4 == 3);
            let choices: [(&str, Value); 12] = [
                ("method", method.into()),
                ("method.floor", "same".into()),
                ("method.back", "same".into()),
                ("method.left", "same".into()),
                ("method.right", "same".into()),
                ("method.front", "same".into()),
                ("method.top", "same".into()),
                ("laser.compensated", false.into()),
                ("laser.lettering", true.into()),
                ("router.relief", "none".into()),
                ("router.cutter", 0.5.into()),
                ("router.compensated", false.into()),
            ];
            // A back with work on both faces: the shield's rebate outside, a counterbored jack inside.
            let both: [(&str, Value); 3] = [
                ("board.io_opening", "rebate".into()),
                ("supply.kind", "brick".into()),
                ("supply.jack_hole", 11.2.into()),
            ];
            for (key, value) in choices.into_iter().chain(both.into_iter().filter(|_| seed % 2 == 1)) {
                design.set_json(key, &value).map_err(std::io::Error::other)?;
            }
            let build = Build::of(&design);
            for panel in &build.panels {
                let goes = CutPanel::for_files(&build.spec, panel);
                for (number, go) in goes.iter().enumerate() {
                    let file = format!("go-{seed}-{method}-{}-{number}", panel.id());
                    write(folder, &file, &cut_panel_to_dxf(go, FileMarks::of(&build.fingerprint)), "dxf")?;
                    all.push(json!({
                        "file": file,
                        "method": method,
                        "go": number + 1,
                        "of": goes.len(),
                        "seen_from": go.seen_from.name(),
                        "width": panel.size_mm[0],
                        "thickness": panel.thickness_mm,
                        "tabs": build.spec.making.router.tabs,
                        "tab_width": build.spec.making.router.tab_width_mm,
                        "tab_height": build.spec.making.router.tab_height_mm,
                        "beside_cut": go.problems.iter().any(|problem| problem.what == Trouble::TabsBesideCut),
                        "outline": panel.outline.to_path_data(),
                        "lost": go.problems.iter()
                            .filter(|problem| matches!(problem.what, Trouble::Lost(_) | Trouble::NoDepth))
                            .map(|problem| problem.of.clone())
                            .collect::<Vec<String>>(),
                        "features": panel.features.iter().map(|feature| json!({
                            "id": feature.id,
                            "path": feature.contour.to_path_data(),
                            "through": feature.blind.is_none(),
                            "face": feature.blind.map(|(_, face)| face.name()),
                            "notch": feature.notch,
                            "runs_out": feature.blind.is_some()
                                && matches!(feature.purpose, Purpose::JointRebate | Purpose::TongueRelief),
                        })).collect::<Vec<Value>>(),
                    }));
                }
            }
        }
    }
    Ok(all)
}

fn write(folder: &Path, name: &str, text: &str, ending: &str) -> std::io::Result<()> {
    fs::write(folder.join(format!("{name}.{ending}")), text)
}

/// Seeded polygons, grown and shrunk: what came out, or what was lost.
fn offsets() -> Vec<Value> {
    let mut random = sample::Random::new(7);
    let mut all = Vec::new();
    for index in 0..120 {
        let contour = match index % 4 {
            0 | 2 => star(&mut random),
            1 => comb(&mut random),
            _ => bone(&mut random),
        };
        let by = random.hundredths(0.05, 4.0) * if index % 3 == 0 { -5.0 } else { 1.0 };
        for (name, joins) in [("sharp", Joins::Sharp), ("round", Joins::Round)] {
            let got = match offset(&contour, by, joins) {
                Ok(path) => json!({ "path": path.to_path_data(), "area": path.area() }),
                Err(lost) => json!({ "lost": format!("{lost:?}") }),
            };
            all.push(json!({ "given": contour.to_path_data(), "by": by, "joins": name, "got": got }));
        }
    }
    all
}

/// A polygon around the origin with corners in and out.
fn star(random: &mut sample::Random) -> Contour {
    let count = 5 + random.hundredths(0.0, 6.0) as usize;
    Contour::polygon((0..count).map(|index| {
        let angle = core::f64::consts::TAU * index as f64 / count as f64;
        let out = random.hundredths(20.0, 60.0);
        (out * libm::cos(angle), out * libm::sin(angle))
    }))
}

/// Two blocks with a neck between them, which falls apart when shrunk.
fn bone(random: &mut sample::Random) -> Contour {
    let (wide, high) = (random.hundredths(20.0, 40.0), random.hundredths(30.0, 60.0));
    let neck = random.hundredths(2.0, 12.0) / 2.0;
    let (low, up) = (high / 2.0 - neck, high / 2.0 + neck);
    Contour::polygon([
        (0.0, 0.0),
        (wide, 0.0),
        (wide, low),
        (2.0 * wide, low),
        (2.0 * wide, 0.0),
        (3.0 * wide, 0.0),
        (3.0 * wide, high),
        (2.0 * wide, high),
        (2.0 * wide, up),
        (wide, up),
        (wide, high),
        (0.0, high),
    ])
}

/// A rectangle with rectangular teeth: an edge of a finger joint.
fn comb(random: &mut sample::Random) -> Contour {
    let (pitch, deep, high) =
        (random.hundredths(4.0, 20.0), random.hundredths(3.0, 12.0), random.hundredths(15.0, 60.0));
    let mut points = vec![(0.0, 0.0), (7.0 * pitch, 0.0)];
    for tooth in (0..4).rev() {
        let left = 2.0 * pitch * f64::from(tooth);
        points.extend([(left + pitch, high + deep), (left, high + deep)]);
        if tooth > 0 {
            points.extend([(left, high), (left - pitch, high)]);
        }
    }
    Contour::polygon(points)
}
