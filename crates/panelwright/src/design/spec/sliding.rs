//! The air a sleeve gets on each side: the maker's own figure, else what its making needs to slide.
//!
//! By hand front and top are left wide and filed to the chassis: an easy fit. Machines do not file: there each
//! side gets as much as the edges that set the play are likely to stray, never less than a close fit and never more than
//! a loose one.

use super::case::{Corners, SheetSpec};
use super::making::{MakingSpec, Method};
use super::reader::Reader;
use super::{SizeRule, Wall};
use crate::dimensions::margins::RUNNING_CLEARANCE;
use crate::dimensions::stackup::{Link, stack_up};
use crate::solid::within;

/// Width that stands for every case whose own is found later, mm: from 120 to 400 mm ISO 2768-1 has one tolerance.
const CASE_MM: f64 = 300.0;

/// Clearances worked out are rounded up to a twentieth of a millimetre: the step in which they are entered.
const STEPS_PER_MM: f64 = 20.0;

/// Guards a figure that is a whole step already.
const HAIR: f64 = 1e-6;

/// The panels whose cut edges set the play across the case.
const ACROSS: [Wall; 4] = [Wall::Floor, Wall::Back, Wall::Front, Wall::Top];

/// The clearance of a design, mm: as the maker states it, else by the making.
pub(super) fn clearance_mm(
    read: &Reader,
    making: &MakingSpec,
    sheet: &SheetSpec,
    corners: Corners,
    size: SizeRule,
) -> f64 {
    if read.name("sleeve.clearance_by") == "own" || read.is_changed("sleeve.clearance") {
        return read.mm("sleeve.clearance");
    }
    let width = match size {
        SizeRule::Given([width, ..]) => width,
        SizeRule::Paper(_) | SizeRule::Smallest => CASE_MM,
    };
    usual_mm(making, sheet, corners, width)
}

impl MakingSpec {
    /// How far a cut edge strays across a case of this width, ± mm: the least true of the panels that set the sleeve's
    /// play.
    #[must_use]
    pub fn accuracy_across_mm(&self, width_mm: f64) -> f64 {
        ACROSS.map(|wall| self.accuracy_mm(wall, width_mm).get()).into_iter().fold(0.0, f64::max)
    }
}

/// What the making needs in a case of this width, mm.
fn usual_mm(making: &MakingSpec, sheet: &SheetSpec, corners: Corners, width_mm: f64) -> f64 {
    let [close, easy, loose] = RUNNING_CLEARANCE.get();
    if making.sleeve_is_fitted() {
        return easy;
    }
    let cut = making.accuracy_across_mm(width_mm);
    let mut chain =
        vec![Link::opening(0.0, cut), Link::opening(0.0, cut), Link::closing(0.0, cut), Link::closing(0.0, cut)];
    if corners == Corners::Face {
        // Front and top then cover both sides, whose thickness counts too.
        chain.extend([Link::closing(0.0, sheet.strays_mm()); 2]);
    }
    let by_hand = ACROSS.iter().any(|wall| making.method(*wall) == Method::Hand);
    let needed = within(stack_up(&chain).likely_mm / 2.0, if by_hand { easy } else { close }, loose);
    f64::ceil(needed * STEPS_PER_MM - HAIR) / STEPS_PER_MM
}

#[cfg(test)]
mod tests {
    use crate::design::{Design, Spec};

    fn clearance(choices: &str) -> f64 {
        let design: Design = crate::design::read_file(choices).unwrap();
        Spec::of(&design).sleeve.clearance_mm
    }

    /// Four edges true to ±a are likely to stray 2a together: a on each side.
    #[test]
    fn the_making_sets_the_clearance_until_the_maker_does() {
        // Filed to the chassis.
        assert_eq!(clearance("{}"), 0.5);
        // ISO 2768-1, class m, 120 to 400 mm: ±0.5.
        assert_eq!(clearance(r#"{"method":"router"}"#), 0.5);
        // A machine that was measured.
        assert_eq!(clearance(r#"{"method":"laser","machine.accuracy":0.1}"#), 0.3);
        assert_eq!(clearance(r#"{"method":"laser","machine.accuracy":0.37}"#), 0.4);
        assert_eq!(clearance(r#"{"method":"router","machine.accuracy":2}"#), 1.0);
        // Over 400 mm class m allows ±0.8, up to 120 mm ±0.3.
        let given = |width| clearance(&format!(r#"{{"method":"router","size.rule":"given","size.width":{width}}}"#));
        assert_eq!([given(400.0), given(400.01), given(120.0)], [0.5, 0.8, 0.3]);
        // Cut by measure by hand: ±0.3 is no reason to go below an easy fit, ±0.7 is one to go beyond it.
        assert_eq!(clearance(r#"{"accuracy":"own"}"#), 0.5);
        assert_eq!(clearance(r#"{"sheet.cut":0.7}"#), 0.7);
        // The chassis sawn, class c, the sleeve routed: nobody files.
        assert_eq!(clearance(r#"{"method.front":"router","method.top":"router"}"#), 1.0);
        // Front and top over the sides: two sheets of ±0.4 as well, √(4 · 0.01 + 2 · 0.16) / 2 = 0.3.
        let over = r#"{"method":"laser","machine.accuracy":0.1,"sheet.varies":0.4,"sleeve.corners":"face"}"#;
        assert_eq!(clearance(over), 0.3);
        let over = r#"{"method":"laser","machine.accuracy":0.1,"sheet.varies":0.41,"sleeve.corners":"face"}"#;
        assert_eq!(clearance(over), 0.35);
    }

    #[test]
    fn the_makers_own_figure_stands() {
        assert_eq!(clearance(r#"{"method":"laser","machine.accuracy":0.1,"sleeve.clearance":0.45}"#), 0.45);
        let usual = r#"{"method":"laser","machine.accuracy":0.1,"sleeve.clearance":0.5,"sleeve.clearance_by":"own"}"#;
        assert_eq!(clearance(usual), 0.5);
        assert_eq!(clearance(r#"{"sleeve.clearance":0}"#), 0.0);
    }
}
