//! What a design says of the stock: sheets and offcuts at hand, how they are cut, which way the grain runs.

use super::making::{MakingSpec, Method};
use super::picks::picks;
use super::reader::Reader;

picks!(/// Which way grain, or a face's pattern, runs on the sheet.
    GrainAlong { Width = "width", Height = "height" });

/// Clearance between the cuts of a router beside its cutter, mm (*common practice*: what is thinner breaks out).
const ROUTER_STRIP_MM: f64 = 3.0;

/// Between the cuts of a laser, mm (*common practice*: thinner strips burn).
const LASER_GAP_MM: f64 = 2.0;

/// Sheets of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockSheetSpec {
    /// The number of its choices: 1 for the sheet that is bought, 2 and 3 for what else is at hand.
    pub number: u8,
    /// Width and height.
    pub size_mm: [f64; 2],
    /// How many there are; `None`: as many as it takes.
    pub count: Option<u32>,
}

/// A sheet at hand of which something is stated, but not both sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HalfSheetSpec {
    /// The number of its choices: 2 or 3.
    pub number: u8,
    /// Whether its width is stated.
    pub width: bool,
    /// Whether its height is stated.
    pub height: bool,
}

/// The stock.
#[derive(Clone, Debug, PartialEq)]
pub struct StockSpec {
    /// The sheet that is bought, then what else is at hand.
    pub sheets: Vec<StockSheetSpec>,
    /// What is at hand but lacks a side: nothing can be laid on it.
    pub half_sheets: Vec<HalfSheetSpec>,
    /// Taken off each edge of a sheet.
    pub trim_mm: f64,
    /// Kept between panels.
    pub gap_mm: f64,
    /// Whether every cut goes straight from edge to edge.
    pub straight: bool,
    /// The direction of grain; `None` when panels may be turned.
    pub grain: Option<GrainAlong>,
    /// Whether small panels may be cut from the openings of large ones.
    pub openings: bool,
    /// The diameter of the cutter when some panel is made with a router; 0 for saws and lasers alone.
    pub cutter_mm: f64,
}

impl StockSpec {
    pub(super) fn of(read: &Reader, making: &MakingSpec) -> Self {
        let count = |key: &str| read.open(key).map(|count| count as u32);
        let mut sheets = vec![StockSheetSpec {
            number: 1,
            size_mm: [read.mm("stock.width"), read.mm("stock.height")],
            count: count("stock.count"),
        }];
        let mut half_sheets = Vec::new();
        for number in [2_u8, 3] {
            let key = |field: &str| format!("stock{number}.{field}");
            let count = count(&key("count"));
            match [read.open(&key("width")), read.open(&key("height"))] {
                [Some(width), Some(height)] => {
                    sheets.push(StockSheetSpec { number, size_mm: [width, height], count: Some(count.unwrap_or(1)) });
                }
                [None, None] if count.is_none() => {}
                [width, height] => {
                    half_sheets.push(HalfSheetSpec { number, width: width.is_some(), height: height.is_some() });
                }
            }
        }
        let straight = match read.name("stock.cuts") {
            "straight" => true,
            "free" => false,
            _ => making.method == Method::Hand,
        };
        let (saw_kerf_mm, cutter_mm) = (making.hand.kerf_mm, making.router.cutter_mm);
        let usual_gap = |method: &Method| match method {
            Method::Hand => saw_kerf_mm,
            Method::Router => cutter_mm + ROUTER_STRIP_MM,
            Method::Laser => LASER_GAP_MM,
        };
        // Panels made in different ways may lie beside each other: the widest tool decides.
        let usual_gap_mm =
            making.method_of.iter().map(usual_gap).fold(if straight { saw_kerf_mm } else { 0.0 }, f64::max);
        Self {
            sheets,
            half_sheets,
            trim_mm: read.mm("stock.trim"),
            gap_mm: read.open("stock.gap").unwrap_or(usual_gap_mm),
            straight,
            grain: GrainAlong::of(read.name("stock.grain")),
            openings: read.on("stock.openings"),
            cutter_mm: if making.method_of.contains(&Method::Router) { cutter_mm } else { 0.0 },
        }
    }
}
