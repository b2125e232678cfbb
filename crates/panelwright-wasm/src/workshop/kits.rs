//! Several designs on one stack of sheets: a search that is given time slice by slice, and the best layouts so far.

use panelwright::documents::kits::{KitAnswer, KitAsk, KitRequest, KitWork, Kits};
use panelwright::documents::pack;
use panelwright::drawing::{SvgOptions, svg};
use panelwright::json::to_text;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::answer::plain;

/// Steps between two looks at what was found for counts: to see whether it is better takes about as long as some ten
/// thousand of them.
const LOOK_STEPS: u64 = 500_000;

/// A search under way and the best layouts it has found.
#[wasm_bindgen]
#[derive(Debug)]
pub struct KitLayout {
    ask: KitAsk,
    work: KitWork,
    kits: Kits,
    steps: u64,
    /// Steps at the last look.
    looked: u64,
    done: bool,
}

/// The best layouts so far; its TypeScript twin is in `types.ts`.
#[derive(Debug, Serialize)]
struct KitsTwin {
    sentence: String,
    answer: KitAnswer,
    pictures: Vec<Vec<String>>,
}

#[wasm_bindgen]
impl KitLayout {
    /// Looks for better layouts, for about so many steps; whether some were found.
    pub fn step(&mut self, steps: u32) -> bool {
        let before = self.work.rounds();
        self.done = self.work.step(u64::from(steps));
        self.steps += u64::from(steps);
        // More rounds show at once; fewer sheets only in the layouts.
        let due = match self.ask {
            KitAsk::Most => self.work.rounds() != before,
            KitAsk::Counts => self.steps >= self.looked + LOOK_STEPS,
        };
        (due || self.done) && self.look()
    }

    /// Takes up what was found since the last look; whether it is better.
    pub fn look(&mut self) -> bool {
        self.looked = self.steps;
        let found = self.work.found();
        let better = to_text(&found.answer()) != to_text(&self.kits.answer());
        self.kits = found;
        better
    }

    /// Steps taken so far.
    pub fn steps(&self) -> f64 {
        self.steps as f64
    }

    /// Whether looking on would change nothing.
    pub fn done(&self) -> bool {
        self.done
    }

    /// The best layouts so far, with a picture of each sheet.
    ///
    /// # Errors
    /// None that a design can cause; the signature is what handing a value to the page needs.
    #[wasm_bindgen(unchecked_return_type = "KitsFound")]
    pub fn found(&self) -> Result<JsValue, JsError> {
        let answer = self.kits.answer();
        let pictures = answer.stacks.iter().enumerate().map(|(stack, laid)| {
            let sheets = 0..laid.layouts.sheets.len();
            sheets.map(|sheet| self.picture(stack, sheet)).collect()
        });
        let pictures = pictures.collect();
        let sentence = self.kits.report().lines().next().unwrap_or_default().to_owned();
        plain(&KitsTwin { sentence, answer, pictures })
    }

    /// Every file of the kits in one zip: the answer, the designs, pictures and cutting files of the sheets.
    pub fn zip(&self) -> Vec<u8> {
        pack::zip(&self.kits.files())
    }
}

impl KitLayout {
    /// First quick layouts.
    pub(super) fn of(request: &KitRequest) -> Result<Self, JsError> {
        let work = KitWork::new(request)?;
        Ok(Self { ask: request.ask, kits: work.found(), work, steps: 0, looked: 0, done: false })
    }

    fn picture(&self, stack: usize, sheet: usize) -> String {
        let drawing = self.kits.picture(stack, sheet);
        let options = SvgOptions::for_page(format!("kits-{stack}-{sheet}-"));
        drawing.map(|drawing| svg(&drawing, &options)).unwrap_or_default()
    }
}
