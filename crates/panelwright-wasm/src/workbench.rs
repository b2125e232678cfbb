//! The design on screen, as the page sees it: take a change, give a view.

use panelwright::dimensions::cautions::CAUTIONS;
use panelwright::documents::{
    build_json::build_json, choice_list::choice_list, source_list::source_list, templates::test_page_pdf,
};
use std::cell::OnceCell;

use panelwright::Build;
use panelwright::design::{Design, PaperName, choice, choices, read_file, read_link, write_file, write_link};
use panelwright::documents::pack;
use panelwright::panels::Panel;
use panelwright::pictures::panel::{all_panels_svg, file_svg};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::sheets::Layout;
use crate::{handover, pictures, view};

/// The types of everything that crosses the boundary; the page is checked against them.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = include_str!("types.ts");

/// The version of Panelwright the page runs, for example `0.1.0`.
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

/// Holds one design and what follows from it.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct Workbench {
    design: Design,
    /// What follows from the design, worked out when it is first looked at.
    build: OnceCell<Build>,
    /// The panels on the stock, laid when they are first looked at.
    pub(crate) layout: Option<Layout>,
}

#[wasm_bindgen]
impl Workbench {
    /// A workbench with the default design on it.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// The one list of choices, in the order of the page.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "Choice[]")]
    pub fn choices(&self) -> Result<JsValue, JsError> {
        plain(&choice_list())
    }

    /// Takes one change: the choice's key and its new value as a design file writes it.
    ///
    /// # Errors
    /// A key nobody knows or a value out of range; the message names key, value and what is
    /// allowed, and the design stays as it was.
    pub fn set(
        &mut self,
        key: &str,
        #[wasm_bindgen(unchecked_param_type = "Value")] value: JsValue,
    ) -> Result<(), JsError> {
        let value: serde_json::Value = serde_wasm_bindgen::from_value(value)?;
        self.design.set_json(key, &value)?;
        self.put_away();
        Ok(())
    }

    /// Gives one choice its default back.
    ///
    /// # Errors
    /// A key nobody knows.
    pub fn reset(&mut self, key: &str) -> Result<(), JsError> {
        let default = choice(key).map(|index| choices()[index].default.clone());
        // An unknown key gets the core's own message.
        let value = default.unwrap_or(panelwright::design::Value::Open);
        self.design.set(key, value)?;
        self.put_away();
        Ok(())
    }

    /// Puts the default design on the bench.
    pub fn clear(&mut self) {
        self.design = Design::default();
        self.put_away();
    }

    /// Puts the design of a design file on the bench.
    ///
    /// # Errors
    /// Everything that is wrong with the file, one problem a line; the design stays as it was.
    pub fn replace_with_file(&mut self, text: &str) -> Result<(), JsError> {
        self.design = read_file(text)?;
        self.put_away();
        Ok(())
    }

    /// Puts the design of a link, or of its fragment alone, on the bench.
    ///
    /// # Errors
    /// What is wrong with the link; the design stays as it was.
    pub fn replace_with_link(&mut self, text: &str) -> Result<(), JsError> {
        self.design = read_link(text)?;
        self.put_away();
        Ok(())
    }

    /// What the page shows of the design.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "View")]
    pub fn view(&self) -> Result<JsValue, JsError> {
        parsed(&self.view_text())
    }

    /// The case as one sees it.
    ///
    /// # Errors
    /// A look that is none.
    #[wasm_bindgen(unchecked_return_type = "CasePicture")]
    pub fn case_picture(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Look")] look: JsValue,
    ) -> Result<JsValue, JsError> {
        let look: pictures::Look = serde_wasm_bindgen::from_value(look)?;
        plain(&pictures::CasePicture::of(self.build(), &look))
    }

    /// A panel flat, for the page; empty when there is no such panel.
    pub fn panel_svg(&self, id: &str) -> String {
        self.panel(id).map(pictures::flat).unwrap_or_default()
    }

    /// A panel at true scale, as a file; empty when there is no such panel.
    pub fn panel_file(&self, id: &str) -> String {
        self.panel(id).and_then(|panel| file_svg(self.build(), panel.wall)).unwrap_or_default()
    }

    /// All panels at true scale in one file.
    pub fn all_panels_file(&self) -> String {
        all_panels_svg(self.build())
    }

    /// A panel's cutting file, nominal: `dxf` or `svg`; empty when there is no such panel or kind of file.
    pub fn cut_file(&self, id: &str, kind: &str) -> String {
        self.panel(id).map(|panel| handover::cut_file(self.build(), panel, kind)).unwrap_or_default()
    }

    /// A panel's table for marking out, as CSV; empty when there is no such panel.
    pub fn marking_file(&self, id: &str) -> String {
        self.panel(id).map(|panel| handover::marking_file(self.build(), panel)).unwrap_or_default()
    }

    /// Everything that follows from the design, as data for other programs.
    pub fn build_file(&self) -> String {
        build_json(self.build())
    }

    /// What the templates will be on the design's paper.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "TemplatesPlan")]
    pub fn templates_plan(&self) -> Result<JsValue, JsError> {
        plain(&handover::TemplatesPlan::of(self.build()))
    }

    /// The templates on the design's paper, as PDF.
    pub fn templates_pdf(&self) -> Vec<u8> {
        handover::templates_pdf(self.build())
    }

    /// The page to print first, on a paper as `template.paper` names it; empty for a paper nobody knows.
    pub fn test_page_pdf(&self, paper: &str) -> Vec<u8> {
        PaperName::of(paper).map(test_page_pdf).unwrap_or_default()
    }

    /// Every file of the design in one zip.
    pub fn pack_zip(&self) -> Vec<u8> {
        pack::zip(&pack::files(self.build()))
    }

    /// What to buy, bag, cut and drill, for as many cases as the design says.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "Lists")]
    pub fn lists(&self) -> Result<JsValue, JsError> {
        plain(&handover::lists(self.build()))
    }

    /// A list as CSV by its name (`shopping`); empty when there is no such list.
    pub fn list_csv(&self, name: &str) -> String {
        handover::list_csv(self.build(), name)
    }

    /// All lists on a paper (`a4`, `letter`), as PDF; the design's own paper for a name that is none.
    pub fn lists_pdf(&self, paper: &str) -> Vec<u8> {
        handover::lists_pdf(self.build(), paper)
    }

    /// The design file: only what differs from the default.
    pub fn design_file(&self) -> String {
        write_file(&self.design)
    }

    /// Every published size with its source.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "Source[]")]
    pub fn sources(&self) -> Result<JsValue, JsError> {
        plain(&source_list())
    }

    /// The cautions of the trade.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "string[]")]
    pub fn cautions(&self) -> Result<JsValue, JsError> {
        plain(&CAUTIONS.map(|caution| caution.text))
    }

    /// The design as the fragment of a link, without its `#`.
    pub fn link(&self) -> String {
        write_link(&self.design)
    }
}

impl Workbench {
    /// A workbench with a design on it, for programs that are not a page.
    #[must_use]
    pub fn with_design(design: Design) -> Self {
        Self { design, ..Self::default() }
    }

    /// What [`Workbench::view`] hands to the page, as the text that crosses the boundary.
    #[must_use]
    pub fn view_text(&self) -> String {
        panelwright::json::to_text(&view::View::of(self.build()))
    }

    pub(crate) fn build(&self) -> &Build {
        self.build.get_or_init(|| Build::of(&self.design))
    }

    fn panel(&self, id: &str) -> Option<&Panel> {
        self.build().panels.iter().find(|panel| panel.id() == id)
    }

    /// Lets go of what followed from the design before.
    fn put_away(&mut self) {
        self.build = OnceCell::new();
        self.layout = None;
    }
}

#[wasm_bindgen]
extern "C" {
    /// The browser's own reader of JSON.
    #[wasm_bindgen(js_namespace = JSON, catch)]
    fn parse(text: &str) -> Result<JsValue, JsValue>;
}

/// A plain object of the page's language.
///
/// It crosses as one text: a call across the boundary for each field and number would take several times as long.
pub(crate) fn plain(value: &impl Serialize) -> Result<JsValue, JsError> {
    parsed(&panelwright::json::to_text(value))
}

fn parsed(text: &str) -> Result<JsValue, JsError> {
    parse(text).map_err(|_| JsError::new("the page cannot read what the core says"))
}
