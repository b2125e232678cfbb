//! Colours by what they stand for, so that the page can restyle a picture and a file still has a plain colour.
//!
//! Lines that are printed (ink, thin, hidden) are pure black: a laser printer would break up any grey into dots, and
//! a template's lines must stay sharp.

/// What a line or surface stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Colour {
    /// Visible outlines and text.
    Ink,
    /// Dimension, centre and help lines, small text.
    Thin,
    /// Hidden lines.
    Hidden,
    /// What can be changed, and what is marked.
    Accent,
    /// The ground.
    Paper,
    /// The face of a sheet.
    Sheet,
    /// The cut edge of a sheet.
    SheetEdge,
    /// A board.
    Board,
    /// Memory.
    Memory,
    /// A card.
    Card,
    /// A cooler.
    Cooler,
    /// A supply.
    Supply,
    /// A drive.
    Drive,
    /// A fan.
    Fan,
    /// Brackets, screws, nuts, plugs.
    Metal,
    /// Buttons, connectors, feet and other dark small things.
    Fitting,
    /// A colour of the maker's own: red, green, blue.
    Own(u8, u8, u8),
}

/// How a surface is lit; changes a fill only.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shade {
    /// Lighter: a face that looks up.
    Lit,
    /// The colour itself.
    #[default]
    Plain,
    /// Darker: a face turned away from the light.
    Dim,
    /// Darkest: a face in the dark.
    Dark,
}

impl Colour {
    /// Every named colour (not [`Colour::Own`]), for style sheets and legends.
    pub const NAMED: [Self; 16] = [
        Self::Ink,
        Self::Thin,
        Self::Hidden,
        Self::Accent,
        Self::Paper,
        Self::Sheet,
        Self::SheetEdge,
        Self::Board,
        Self::Memory,
        Self::Card,
        Self::Cooler,
        Self::Supply,
        Self::Drive,
        Self::Fan,
        Self::Metal,
        Self::Fitting,
    ];

    /// The word in class names: a line of this colour has the class `line-…`, a surface `fill-…`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ink => "ink",
            Self::Thin => "thin",
            Self::Hidden => "hidden",
            Self::Accent => "accent",
            Self::Paper => "paper",
            Self::Sheet => "sheet",
            Self::SheetEdge => "sheet-edge",
            Self::Board => "board",
            Self::Memory => "memory",
            Self::Card => "card",
            Self::Cooler => "cooler",
            Self::Supply => "supply",
            Self::Drive => "drive",
            Self::Fan => "fan",
            Self::Metal => "metal",
            Self::Fitting => "fitting",
            Self::Own(..) => "own",
        }
    }

    /// Red, green, blue by day, on paper.
    #[must_use]
    pub const fn rgb(self) -> [u8; 3] {
        match self {
            Self::Ink | Self::Thin | Self::Hidden => [0, 0, 0],
            Self::Accent => [176, 74, 28],
            Self::Paper => [255, 255, 255],
            Self::Sheet => [222, 202, 168],
            Self::SheetEdge => [186, 156, 112],
            Self::Board => [92, 138, 104],
            Self::Memory => [68, 108, 96],
            Self::Card => [104, 122, 158],
            Self::Cooler => [168, 178, 184],
            Self::Supply => [122, 126, 134],
            Self::Drive => [150, 152, 172],
            Self::Fan => [132, 150, 160],
            Self::Metal => [196, 200, 202],
            Self::Fitting => [82, 84, 88],
            Self::Own(red, green, blue) => [red, green, blue],
        }
    }

    /// [`Colour::rgb`] in a shade.
    #[must_use]
    pub fn shaded(self, shade: Shade) -> [u8; 3] {
        self.rgb().map(|part| {
            let part = u16::from(part);
            let part = match shade {
                Shade::Lit => 255 - (255 - part) * 7 / 10,
                Shade::Plain => part,
                Shade::Dim => part * 85 / 100,
                Shade::Dark => part * 70 / 100,
            };
            part as u8
        })
    }
}

impl Shade {
    /// The word in class names; none for the plain colour.
    #[must_use]
    pub const fn name(self) -> Option<&'static str> {
        match self {
            Self::Lit => Some("lit"),
            Self::Plain => None,
            Self::Dim => Some("dim"),
            Self::Dark => Some("dark"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_named_colour_has_a_name_of_its_own() {
        let mut names: Vec<_> = Colour::NAMED.iter().map(|colour| colour.name()).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), Colour::NAMED.len());
    }

    #[test]
    fn shades_go_from_light_to_dark_and_printed_lines_are_black() {
        let sum = |shade| Colour::Sheet.shaded(shade).map(u32::from).iter().sum::<u32>();
        assert!(sum(Shade::Lit) > sum(Shade::Plain));
        assert!(sum(Shade::Plain) > sum(Shade::Dim));
        assert!(sum(Shade::Dim) > sum(Shade::Dark));
        assert_eq!(Colour::Ink.rgb(), [0, 0, 0]);
        assert_eq!(Colour::Thin.rgb(), [0, 0, 0]);
    }
}
