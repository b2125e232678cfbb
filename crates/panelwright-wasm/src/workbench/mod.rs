//! The design on screen, as the page sees it: take a change, give a view.

mod given;
mod pictures;
mod plain;
mod view;

use std::cell::OnceCell;

use panelwright::Build;
use panelwright::design::{Design, Value, choice, choices, read_link, write_file, write_link};
use panelwright::dimensions::cautions::CAUTIONS;
use panelwright::documents::choice_list::choice_list;
use panelwright::panels::Panel;
use panelwright::pictures::CaseView;
use wasm_bindgen::prelude::*;

use given::given;
use plain::{parsed, plain};

/// The types of what crosses here; the page is checked against them.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = include_str!("types.ts");

/// Holds one design and what follows from it.
#[wasm_bindgen]
#[derive(Debug, Default)]
pub struct Workbench {
    design: Design,
    /// What follows from the design, worked out when it is first looked at.
    build: OnceCell<Build>,
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
        self.design.set_json(key, &given(&value)?)?;
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
        let value = default.unwrap_or(Value::Open);
        self.design.set(key, value)?;
        self.put_away();
        Ok(())
    }

    /// Puts the default design on the bench.
    pub fn clear(&mut self) {
        self.design = Design::default();
        self.put_away();
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
    #[wasm_bindgen(unchecked_return_type = "Told")]
    pub fn view(&self) -> Result<JsValue, JsError> {
        parsed(&self.view_text())
    }

    /// The case as one sees it: where the eye is, in degrees (see [`panelwright::pictures::CaseView`]); panels taken
    /// off, by id; whether panels are seen through; how far they are pulled apart, 0 to 1. A line of JSON (`CasePlaces`),
    /// then the drawing.
    pub fn case_picture(
        &self,
        azimuth_deg: f64,
        elevation_deg: f64,
        off: Vec<String>,
        see_through: bool,
        apart: f64,
    ) -> String {
        let build = self.build();
        let off = build.panels.iter().filter(|panel| off.iter().any(|id| id == panel.id()));
        let off = off.map(|panel| panel.wall).collect();
        pictures::case(build, &CaseView { azimuth_deg, elevation_deg, off, see_through, apart })
    }

    /// A panel flat, for the page; empty when there is no such panel.
    pub fn panel_svg(&self, id: &str) -> String {
        self.panel(id).map(pictures::flat).unwrap_or_default()
    }

    /// The same as one among others: without dimensions and words.
    pub fn small_panel_svg(&self, id: &str) -> String {
        self.panel(id).map(pictures::small).unwrap_or_default()
    }

    /// What is cut into a panel; empty when there is no such panel.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "Feature[]")]
    pub fn features(&self, panel: &str) -> Result<JsValue, JsError> {
        plain(&self.panel(panel).map(view::features).unwrap_or_default())
    }

    /// The design file: only what differs from the default.
    pub fn design_file(&self) -> String {
        write_file(&self.design)
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

    fn build(&self) -> &Build {
        self.build.get_or_init(|| Build::of(&self.design))
    }

    fn panel(&self, id: &str) -> Option<&Panel> {
        self.build().panels.iter().find(|panel| panel.id() == id)
    }

    /// Lets go of what followed from the design before.
    fn put_away(&mut self) {
        self.build = OnceCell::new();
    }
}
