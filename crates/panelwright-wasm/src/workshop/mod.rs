//! What is made of a finished design, away from the page: files, lists, layouts, what an older case keeps.
//!
//! A request of the page is a method here. The page calls it by its name through its worker, see
//! `web/modules/workshop.js`; nothing else has to be told of a new one.

mod compare;
mod layout;
mod templates_plan;

use panelwright::Build;
use panelwright::cutting::{CutPanel, SvgLines, cut_panel_to_dxf, cut_panel_to_svg};
use panelwright::design::{PaperName, read_file, read_link};
use panelwright::documents::lists::{self, Lists};
use panelwright::documents::pack;
use panelwright::documents::source_list::source_list;
use panelwright::documents::templates::{self, test_page_pdf};
use wasm_bindgen::prelude::*;

pub use layout::Layout;

use crate::plain::plain;

/// The types of what crosses here; the page is checked against them.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = include_str!("types.ts");

/// One finished design and everything that can be made of it.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Workshop {
    build: Build,
}

#[wasm_bindgen]
impl Workshop {
    /// A workshop for the design of a link.
    ///
    /// # Errors
    /// What is wrong with the link.
    #[wasm_bindgen(constructor)]
    pub fn new(link: &str) -> Result<Self, JsError> {
        Ok(Self { build: Build::of(&read_link(link)?) })
    }

    /// What the templates will be on the design's paper.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "TemplatesPlan")]
    pub fn templates_plan(&self) -> Result<JsValue, JsError> {
        plain(&templates_plan::TemplatesPlan::of(&self.build))
    }

    /// The templates on the design's paper, as PDF.
    pub fn templates_pdf(&self) -> Vec<u8> {
        let Build { spec, panels, fingerprint, .. } = &self.build;
        templates::pdf(spec, panels, fingerprint, &templates::setup(&spec.template, None))
    }

    /// The page to print first, on a paper as `template.paper` names it; empty for a paper nobody knows.
    pub fn test_page_pdf(&self, paper: &str) -> Vec<u8> {
        PaperName::of(paper).map(test_page_pdf).unwrap_or_default()
    }

    /// A panel's cutting file, nominal: `dxf` or `svg`; empty when there is no such panel or kind of file.
    pub fn cut_file(&self, id: &str, kind: &str) -> String {
        let Build { spec, panels, fingerprint, .. } = &self.build;
        let Some(panel) = panels.iter().find(|panel| panel.id() == id) else { return String::new() };
        // What is cut from the inside before the sheet is turned over is in the pack.
        let Some(cut) = CutPanel::for_files(spec, panel).pop() else { return String::new() };
        match kind {
            "dxf" => cut_panel_to_dxf(&cut, fingerprint),
            "svg" => cut_panel_to_svg(&cut, fingerprint, svg_lines(&self.build)),
            _ => String::new(),
        }
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
        self.listed().table(name).map(|table| lists::csv(table, &self.build.fingerprint)).unwrap_or_default()
    }

    /// All lists on a paper (`a4`, `letter`), as PDF; the design's own paper for a name that is none.
    pub fn lists_pdf(&self, paper: &str) -> Vec<u8> {
        let setup = templates::writing(&templates::setup(&self.build.spec.template, PaperName::of(paper)));
        lists::pdf(&self.build, &self.listed(), setup.paper_mm, setup.margin_mm)
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
        Lists::of(&self.build, lists::sheets(&self.build, lists::SHEET_STEPS).as_ref())
    }
}

/// Lines of an SVG as the design wants them.
fn svg_lines(build: &Build) -> SvgLines {
    if build.spec.making.hairline { SvgLines::Hairline } else { SvgLines::Shown }
}
