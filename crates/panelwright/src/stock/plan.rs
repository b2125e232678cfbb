//! The answer: where every piece lies, what is left, how it is sawn, and how good that is.

use super::cuts::Cut;

/// How a job is cut.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// The sheets that are used, in the order in which they were filled.
    pub sheets: Vec<SheetPlan>,
    /// What finds no place, and why.
    pub unplaced: Vec<Unplaced>,
    /// What no plan can go below.
    pub bounds: Bounds,
    /// Area of all pieces placed over area of all sheets used, 0 to 1.
    pub yield_share: f64,
    /// Whether no plan can use fewer sheets: the bound is met.
    pub fewest: bool,
}

/// One sheet that is used.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetPlan {
    /// Index into the job's sheets.
    pub sheet: usize,
    /// The pieces on it.
    pub placed: Vec<Placed>,
    /// What is left in usable rectangles, largest first; at least [`OFFCUT`] both ways.
    pub offcuts: Vec<Rect>,
    /// Area of the pieces over area of the sheet, 0 to 1; those in openings of others lie on area that counts already.
    pub yield_share: f64,
    /// For sawing: the cuts in the order in which they are made. Empty for free cuts.
    pub cuts: Vec<Cut>,
}

/// A piece on a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Index into the job's pieces.
    pub piece: usize,
    /// Where it lies and how large it is there.
    pub rect: Rect,
    /// Whether it lies turned by 90 degrees, to the left.
    pub turned: bool,
    /// The piece in whose opening it lies: index into what is placed on the same sheet. It is cut before that opening.
    pub inside: Option<usize>,
}

/// A rectangle on a sheet, from its lower left corner, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub x: f64,
    /// Lower edge.
    pub y: f64,
    /// Size along x.
    pub width: f64,
    /// Size along y.
    pub height: f64,
}

/// Pieces that find no place.
#[derive(Clone, Debug, PartialEq)]
pub struct Unplaced {
    /// Index into the job's pieces.
    pub piece: usize,
    /// How many of them.
    pub count: usize,
    /// Why.
    pub reason: Reason,
}

/// Why a piece finds no place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// It is larger than every sheet inside the trim.
    TooBig {
        /// The sheet it comes closest to fitting, if there is any: index into the job's sheets.
        sheet: Option<usize>,
        /// How much the piece is too wide for that sheet, mm; 0 if it is not.
        width: f64,
        /// How much it is too high, mm.
        height: f64,
        /// Whether that is measured with the piece turned.
        turned: bool,
    },
    /// It would fit a sheet, but none is left.
    NoSheetLeft,
}

/// What no plan can go below, in sheets of any size. They are shown beside a plan, so that one sees how close it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Bounds {
    /// By area: all pieces together over one sheet (the largest), rounded up.
    pub area: usize,
    /// By Martello and Vigo's L2 (1998): large pieces that cannot share a sheet, and what still fits beside them.
    pub martello_vigo: usize,
    /// By trying everything: 2 when it is proved that one sheet does not hold all, else 0.
    pub tried: usize,
}

impl Bounds {
    /// The strongest of them.
    #[must_use]
    pub fn sheets(&self) -> usize {
        self.area.max(self.martello_vigo).max(self.tried)
    }
}

/// Smaller rectangles are not worth keeping, mm. Common practice.
pub const OFFCUT: f64 = 150.0;

impl Rect {
    /// The same with so much off every edge; width or height may fall below 0.
    #[must_use]
    pub fn inset(&self, by: f64) -> Self {
        Self { x: self.x + by, y: self.y + by, width: self.width - 2.0 * by, height: self.height - 2.0 * by }
    }

    /// Its area, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.width * self.height
    }
}

impl Plan {
    /// How many pieces find no place.
    #[must_use]
    pub fn missing(&self) -> usize {
        self.unplaced.iter().map(|unplaced| unplaced.count).sum()
    }
}
