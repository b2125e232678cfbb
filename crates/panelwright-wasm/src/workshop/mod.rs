//! What is made of a finished design, away from the page: files, lists, layouts, what an older case keeps.
//!
//! A request of the page is a method here. The page calls it by its name through its worker, see
//! `web/modules/workshop.js`; nothing else has to be told of a new one.

mod answer;
mod compare;
mod kits;
mod layout;
mod opening;
mod templates_plan;

use std::cell::OnceCell;

use panelwright::Build;
use panelwright::cutting::{CutPanel, FileMarks, cut_panel_to_dxf, cut_panel_to_svg, go_name};
use panelwright::design::{PaperName, read_file, read_link, write_link};
use panelwright::documents::kerf_test::{self, KERF_TEST};
use panelwright::documents::lists::{self, Lists, SheetNeed};
use panelwright::documents::source_list::source_list;
use panelwright::documents::templates::{self, test_page_pdf};
use panelwright::documents::warnings::warnings;
use panelwright::documents::{pack, sheets};
use serde::Serialize;
use wasm_bindgen::prelude::*;

pub use kits::KitLayout;
pub use layout::Layout;

use answer::{plain, tell_faults};

/// The types of what crosses here; the page is checked against them.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = include_str!("types.ts");

/// One finished design and everything that can be made of it.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Workshop {
    build: Build,
    /// The same with what its sheets lack among the findings, and how many it takes; worked out when first wanted.
    stocked: OnceCell<(Build, Option<SheetNeed>)>,
}

#[wasm_bindgen]
impl Workshop {
    /// A workshop for the design of a link.
    ///
    /// # Errors
    /// What is wrong with the link.
    #[wasm_bindgen(constructor)]
    pub fn new(link: &str) -> Result<Self, JsError> {
        tell_faults();
        Ok(Self { build: Build::of(&read_link(link)?), stocked: OnceCell::new() })
    }

    /// The link of the design in a design file.
    ///
    /// # Errors
    /// Everything that is wrong with the file, one problem a line.
    pub fn link_of_file(&self, text: &str) -> Result<String, JsError> {
        Ok(write_link(&read_file(text)?))
    }

    /// What the templates will be on the design's paper.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "TemplatesPlan")]
    pub fn templates_plan(&self) -> Result<JsValue, JsError> {
        plain(&templates_plan::TemplatesPlan::of(&self.stocked().0))
    }

    /// The templates on the design's paper, as PDF.
    pub fn templates_pdf(&self) -> Vec<u8> {
        templates::pdf(&self.stocked().0, &templates::setup(&self.build.spec.template, None))
    }

    /// The page to print first, on a paper as `template.paper` names it; empty for a paper nobody knows.
    pub fn test_page_pdf(&self, paper: &str) -> Vec<u8> {
        PaperName::of(paper).map(test_page_pdf).unwrap_or_default()
    }

    /// A panel's cutting files, `dxf` or `svg`, one for each go in their order: `left-first` is cut before the sheet is
    /// turned over for `left`. None when there is no such panel or kind of file.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "CuttingFile[]")]
    pub fn cut_files(&self, id: &str, kind: &str) -> Result<JsValue, JsError> {
        let Build { spec, panels, fingerprint, findings, .. } = &self.stocked().0;
        let marks = FileMarks { design: fingerprint, warnings: &warnings(findings) };
        let panel = panels.iter().find(|panel| panel.id() == id);
        let goes = panel.map(|panel| CutPanel::for_files(spec, panel)).unwrap_or_default();
        plain(&cutting_files(id, &goes, |cut| match kind {
            "dxf" => Some(cut_panel_to_dxf(cut, marks)),
            "svg" => Some(cut_panel_to_svg(cut, marks, sheets::lines(&self.build))),
            _ => None,
        }))
    }

    /// The kerf test piece as `dxf` or `svg`, the same file as in the pack; none when no panel is made with a laser.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "CuttingFile[]")]
    pub fn kerf_test(&self, kind: &str) -> Result<JsValue, JsError> {
        let files = kerf_test::files(&self.build).into_iter().filter(|(of, _)| *of == kind);
        plain(&files.map(|(_, text)| CuttingFile { name: KERF_TEST.to_owned(), text }).collect::<Vec<_>>())
    }

    /// Width of a laser's cut in mm, from what the pieces of the kerf test piece measure together; undefined for what
    /// they cannot measure.
    pub fn kerf(&self, measured_mm: f64) -> Option<f64> {
        kerf_test::kerf(measured_mm)
    }

    /// What a file of a maker's is: a design or its link, a pack, or one that bears a fingerprint, then whether it belongs
    /// to the design at hand.
    ///
    /// # Errors
    /// What is wrong with the file.
    #[wasm_bindgen(unchecked_return_type = "LookedAt")]
    pub fn look_at(&self, name: &str, bytes: &[u8]) -> Result<JsValue, JsError> {
        plain(&opening::look_at(&self.build, name, bytes)?)
    }

    /// Whether a print with this fingerprint, as typed, belongs to the design at hand. `versions` are those of the
    /// program that are known to have made files of it.
    ///
    /// # Errors
    /// What was typed is no fingerprint.
    #[wasm_bindgen(unchecked_return_type = "PrintCheck")]
    pub fn check_print(&self, text: &str, versions: Vec<String>) -> Result<JsValue, JsError> {
        plain(&pack::check_print(&self.build.design, &versions, text)?)
    }

    /// Begins to lay several designs on one stack of sheets, as `KitRequest` in `types.ts` asks, with a first quick
    /// layout.
    ///
    /// # Errors
    /// What is wrong with a design, a count or the sheets.
    pub fn kits(&self, request: &str) -> Result<KitLayout, JsError> {
        KitLayout::of(&serde_json::from_str(request)?)
    }

    /// Every file of the design in one zip.
    pub fn pack_zip(&self) -> Vec<u8> {
        pack::zip(&pack::files(&self.build))
    }

    /// What to buy, bag, cut and drill, for as many cases as the design says.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "Lists")]
    pub fn lists(&self) -> Result<JsValue, JsError> {
        plain(&self.listed())
    }

    /// A list as CSV by its name (`shopping`); empty when there is no such list.
    pub fn list_csv(&self, name: &str) -> String {
        let warnings = warnings(&self.stocked().0.findings);
        let csv = |table| lists::csv(table, &self.build.fingerprint, &warnings);
        self.listed().table(name).map(csv).unwrap_or_default()
    }

    /// All lists on a paper (`a4`, `letter`), as PDF; the design's own paper for a name that is none.
    pub fn lists_pdf(&self, paper: &str) -> Vec<u8> {
        let setup = templates::writing(&templates::setup(&self.build.spec.template, PaperName::of(paper)));
        lists::pdf(&self.stocked().0, &self.listed(), setup.paper_mm, setup.margin_mm)
    }

    /// Every published size with its source.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "Source[]")]
    pub fn sources(&self) -> Result<JsValue, JsError> {
        plain(&source_list())
    }

    /// What becomes of each panel of a case built from an older design file, with pictures.
    ///
    /// # Errors
    /// What is wrong with the file.
    #[wasm_bindgen(unchecked_return_type = "Comparison")]
    pub fn recut_from_file(&self, text: &str) -> Result<JsValue, JsError> {
        plain(&compare::Comparison::of(&read_file(text)?, &self.build))
    }

    /// The same for the link of an older design.
    ///
    /// # Errors
    /// What is wrong with the link.
    #[wasm_bindgen(unchecked_return_type = "Comparison")]
    pub fn recut_from_link(&self, text: &str) -> Result<JsValue, JsError> {
        plain(&compare::Comparison::of(&read_link(text)?, &self.build))
    }

    /// Begins to lay the panels of every case on the stock, with a first quick layout.
    ///
    /// # Errors
    /// More panels than are laid at once.
    pub fn layout(&self) -> Result<Layout, JsError> {
        Ok(Layout::of(self.build.clone())?)
    }
}

impl Workshop {
    fn listed(&self) -> Lists {
        let (build, need) = self.stocked();
        Lists::of(build, need.as_ref())
    }

    fn stocked(&self) -> &(Build, Option<SheetNeed>) {
        self.stocked.get_or_init(|| {
            let (build, laid) = sheets::stocked(self.build.clone());
            (build, laid.map(|laid| SheetNeed::of(&laid.plan)))
        })
    }
}

/// A file for a machine; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
struct CuttingFile {
    name: String,
    text: String,
}

/// The files of the goes of a panel or sheet, in their order.
fn cutting_files<T>(stem: &str, goes: &[T], text: impl Fn(&T) -> Option<String>) -> Vec<CuttingFile> {
    let files = goes.iter().enumerate();
    files
        .filter_map(|(number, go)| Some(CuttingFile { name: go_name(stem, number, goes.len()), text: text(go)? }))
        .collect()
}
