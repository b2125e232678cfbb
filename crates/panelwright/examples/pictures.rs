//! Writes pictures of a design into a folder, to look at, and says how long each case picture takes (build it with
//! `--release` when the time matters): `cargo run --example pictures -- FOLDER [DESIGN.json]`.

use panelwright::Build;
use panelwright::design::{Design, Wall, read_file};
use panelwright::documents::panel_files::file_svg;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::pictures::panel::page_picture;
use panelwright::pictures::{CaseView, case_picture};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let folder = arguments.next().unwrap_or_else(|| "target/pictures".to_owned());
    std::fs::create_dir_all(&folder)?;
    let design = match arguments.next() {
        Some(file) => read_file(&std::fs::read_to_string(file)?)?,
        None => Design::default(),
    };
    let build = Build::of(&design);
    let mut views: Vec<(String, CaseView)> = Vec::new();
    for turn in 0..4 {
        let closed = CaseView::quarter(turn);
        let open = CaseView { off: vec![Wall::Left, Wall::Right, Wall::Front, Wall::Top], ..closed.clone() };
        views.push((format!("open-{turn}"), open));
        views.push((format!("through-{turn}"), CaseView { see_through: true, ..closed.clone() }));
        views.push((format!("apart-{turn}"), CaseView { apart: 1.0, ..closed.clone() }));
        views.push((format!("closed-{turn}"), closed));
    }
    for (name, view) in views {
        let picture = case_picture(&build, &view);
        let mut times: Vec<std::time::Duration> = (0..50)
            .map(|_| {
                let start = std::time::Instant::now();
                std::hint::black_box(case_picture(&build, &view));
                start.elapsed()
            })
            .collect();
        times.sort();
        println!("{name}: {:?} (half of 50 runs are faster)", times[25]);
        std::fs::write(format!("{folder}/case-{name}.svg"), svg(&picture.drawing, &SvgOptions::for_file()))?;
    }
    for panel in &build.panels {
        let id = panel.id();
        std::fs::write(format!("{folder}/panel-{id}.svg"), svg(&page_picture(panel), &SvgOptions::for_file()))?;
        std::fs::write(format!("{folder}/file-{id}.svg"), file_svg(&build, panel.wall).unwrap_or_default())?;
    }
    Ok(())
}
