//! What a design means: plain typed values, read from the choices once. Nobody looks at a key after this.
//!
//! After [`Spec::of`] you may rely on: lengths are finite millimetres inside their choice's range; parts that are
//! "none" are `None` or absent; what the maker left open and a published size exists for is filled in with that size;
//! what is unknown stays `None`.

mod case;
mod joints;
mod making;
mod parts;
mod picks;
mod prices;
mod printer;
mod reader;
mod sliding;
mod stock;

use super::design::Design;
use super::list::{DRIVES, FANS};
pub use case::{
    BracketScrews, BracketSize, BracketThread, Corners, FeetKind, FeetSpec, FullPanel, HardwareSpec, HoleFit,
    SheetSpec, SleeveJoin, SleeveSpec, Slide, TemplateSpec, VentFor, VentPattern, VentSpec,
};
pub use joints::{Joints, REBATE_SHARE, SLOT_FROM_EDGE, Seam, SeamSpec};
pub use making::{HandSpec, Joint, LaserSpec, MakingSpec, Method, Relief, RouterSpec};
pub use parts::{
    BoardForm, BoardSpec, ButtonSpec, CardHold, CardKind, CardPlug, CardSpec, CoolerAir, CoolerKind, CoolerSpec,
    DriveKind, DrivePlace, DriveSpec, FanAir, FanSide, FanSpec, IoOpening, MemorySide, PlugAt, PlugShape, PortsSpec,
    SupplyKind, SupplyPose, SupplySpec, Window,
};
use picks::picks;
pub use prices::{Bought, PackSpec, PricesSpec, RatesSpec};
pub use printer::{PrinterSpec, factor, skew_deg};
use reader::Reader;
pub use stock::{GrainAlong, HalfSheetSpec, StockSheetSpec, StockSpec};

/// The whole meaning of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct Spec {
    /// Name of the design; may be empty.
    pub title: String,
    /// The main board.
    pub board: BoardSpec,
    /// The card, if any.
    pub card: Option<CardSpec>,
    /// The cooler, if any.
    pub cooler: Option<CoolerSpec>,
    /// The supply.
    pub supply: SupplySpec,
    /// Drives that are there, with their number (1 …).
    pub drives: Vec<DriveSpec>,
    /// Fans that are there.
    pub fans: Vec<FanSpec>,
    /// Power button.
    pub button: Option<ButtonSpec>,
    /// Front connectors.
    pub ports: Option<PortsSpec>,
    /// How the outside size is found.
    pub size: SizeRule,
    /// Sheet and finish.
    pub sheet: SheetSpec,
    /// Sleeve.
    pub sleeve: SleeveSpec,
    /// Brackets and screws.
    pub hardware: HardwareSpec,
    /// Feet.
    pub feet: FeetSpec,
    /// Vents, in the order card, supply, cooler, extra.
    pub vents: Vec<VentSpec>,
    /// Templates.
    pub template: TemplateSpec,
    /// How it is made: method, tools, joints.
    pub making: MakingSpec,
    /// The sheets at hand.
    pub stock: StockSpec,
    /// Prices, packs, spares and rates.
    pub prices: PricesSpec,
}

picks!(/// One of the six panels of the case.
    Wall { Floor = "floor", Back = "back", Left = "left", Right = "right", Front = "front", Top = "top" });
picks!(/// Material of the sheet.
    Material { Fibreboard = "fibreboard", Plywood = "plywood", Acrylic = "acrylic", Hardboard = "hardboard", Other = "other" });
picks!(/// A paper size.
    PaperName { A4 = "a4", A3 = "a3", Letter = "letter", Legal = "legal", Tabloid = "tabloid", A1 = "a1", A0 = "a0" });

/// How the outside size is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SizeRule {
    /// No panel larger than a paper.
    Paper(PaperName),
    /// As small as the parts allow.
    Smallest,
    /// This outside size: width, depth, height.
    Given([f64; 3]),
}

impl Spec {
    /// The meaning of `design`.
    #[must_use]
    pub fn of(design: &Design) -> Self {
        let read = Reader(design);
        let making = MakingSpec::of(&read);
        let stock = StockSpec::of(&read, &making);
        let size = match read.name("size.rule") {
            "given" => SizeRule::Given([read.mm("size.width"), read.mm("size.depth"), read.mm("size.height")]),
            "smallest" => SizeRule::Smallest,
            _ => SizeRule::Paper(PaperName::of(read.name("size.paper")).unwrap_or(PaperName::A4)),
        };
        let sheet = case::sheet(&read);
        let corners = Corners::of(read.name("sleeve.corners")).unwrap_or(Corners::Sides);
        Self {
            title: read.text("design.title"),
            board: parts::board(&read),
            card: parts::card(&read),
            cooler: parts::cooler(&read),
            supply: parts::supply(&read),
            drives: (1..=DRIVES).filter_map(|number| parts::drive(&read, number)).collect(),
            fans: (1..=FANS).filter_map(|number| parts::fan(&read, number)).collect(),
            button: parts::button(&read),
            ports: parts::ports(&read),
            size,
            sleeve: SleeveSpec {
                clearance_mm: sliding::clearance_mm(&read, &making, &sheet, corners, size),
                corners,
                join: SleeveJoin::of(read.name("sleeve.join")).unwrap_or(SleeveJoin::Brackets),
                slide: Slide::of(read.name("sleeve.slide")).unwrap_or(Slide::Up),
                side_screws: read.on("sleeve.side_screws"),
            },
            sheet,
            hardware: case::hardware(&read),
            feet: case::feet(&read),
            vents: case::vents(&read),
            template: TemplateSpec {
                paper: PaperName::of(read.name("template.paper")).unwrap_or(PaperName::A4),
                margin_mm: read.mm("template.margin"),
                full: FullPanel::of(read.name("template.full")).unwrap_or(FullPanel::Ticks),
                overlap_mm: read.mm("template.overlap"),
                printer: PrinterSpec::of(&read),
            },
            making,
            stock,
            prices: PricesSpec::of(&read),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::choice::{Choice, Kind, Value, When};
    use crate::design::list::choices;

    #[test]
    fn drives_and_fans_up_to_the_last_are_read() {
        let mut design = Design::default();
        for number in 1..=DRIVES {
            design.set_json(&format!("drive{number}.kind"), &"3.5".into()).unwrap();
        }
        for number in 1..=FANS {
            design.set_json(&format!("fan{number}.size"), &"120".into()).unwrap();
        }
        design.set_json("ports.wall", &"front".into()).unwrap();
        let spec = Spec::of(&design);
        assert_eq!(spec.drives.len(), DRIVES);
        assert_eq!(spec.fans.len(), FANS);
        assert!(spec.button.is_some() && spec.ports.is_some() && spec.card.is_some() && spec.cooler.is_some());
        assert_eq!(spec.drives[0].height_mm, 26.1);
    }

    /// A design in which a choice applies, and whatever that takes.
    fn with_effect(design: &mut Design, choice: &Choice) {
        let (key, name) = match &choice.when {
            When::Always => return,
            When::Is { key, names } => (key, names[0]),
            When::AnyIs { keys, names } => (&keys[0], names[0]),
            When::IsNot { key, names } => {
                let index = super::super::list::choice(key).unwrap();
                let Kind::Pick(options) = &choices()[index].kind else { panic!("{key} is no pick") };
                (key, options.iter().find(|option| !names.contains(&option.name)).unwrap().name)
            }
        };
        with_effect(design, &choices()[super::super::list::choice(key).unwrap()]);
        design.set_json(key, &name.into()).unwrap();
    }

    /// Values of a choice that must all mean something else.
    fn values(choice: &Choice) -> Vec<Value> {
        match &choice.kind {
            Kind::Pick(options) => (0..options.len()).map(Value::Pick).collect(),
            Kind::Number { min, max, .. } => vec![Value::Number(*min), Value::Number(*max)],
            Kind::Switch => vec![Value::Switch(false), Value::Switch(true)],
            Kind::Text { .. } => ["a", "b"].map(|text| Value::Text(text.to_owned())).to_vec(),
            Kind::Points { .. } => vec![Value::Points(Vec::new()), Value::Points(vec![[1.0, 2.0], [30.0, 40.0]])],
        }
    }

    /// Options that leave it to another choice, so that they mean what one of the others means.
    const LEFT_TO_ANOTHER: [&str; 3] = ["same", "auto", "method"];

    /// A key that is misspelt where it is read, or an option without a meaning, would go unnoticed for ever.
    #[test]
    fn every_value_has_a_meaning() {
        let mut alike = Vec::new();
        for choice in choices() {
            let mut base = Design::default();
            // Chains are drilled, and a second sheet is there, when more than one choice says so.
            base.set_json("hand.chain", &true.into()).unwrap();
            for size in ["stock2.width", "stock2.height", "stock3.width", "stock3.height"] {
                base.set_json(size, &300.into()).unwrap();
            }
            with_effect(&mut base, choice);
            let specs: Vec<Spec> = values(choice)
                .into_iter()
                .map(|value| {
                    let mut design = base.clone();
                    design.set(&choice.key, value).unwrap();
                    Spec::of(&design)
                })
                .collect();
            let own = |index: usize| match &choice.kind {
                Kind::Pick(options) => !LEFT_TO_ANOTHER.contains(&options[index].name),
                _ => true,
            };
            for (index, spec) in specs.iter().enumerate().filter(|(index, _)| own(*index)) {
                let same = (0..index).find(|other| own(*other) && specs[*other] == *spec);
                alike.extend(same.map(|other| format!("{}: {other} and {index}", choice.key)));
            }
        }
        assert_eq!(alike, [""; 0]);
    }
}
