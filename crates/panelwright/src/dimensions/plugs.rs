//! Room for plugs and the first bend of their cables, from the mating face of the connector.
//!
//! ```text
//!      connector |####plug####|___
//!      face ---->|            |    \   the bend
//!                |<---- room ------>|
//! ```

use super::catalogue::Entry;
use super::documents::{CEM, SUPPLY_GUIDE, TRADE, WORKSHOP};
use super::source::{Source, Sourced};
use super::table::sizes;

/// How the cable leaves the plug.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlugShape {
    /// Straight on, then a bend.
    Straight,
    /// Sideways at once.
    RightAngle,
}

impl PlugShape {
    /// Both shapes.
    pub const ALL: [Self; 2] = [Self::Straight, Self::RightAngle];

    /// The plain word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Straight => "straight",
            Self::RightAngle => "right-angle",
        }
    }
}

/// The plug that brings power to a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CardPowerPlug {
    /// Six pins, 75 W.
    SixPin,
    /// Eight pins, 150 W.
    EightPin,
    /// Sixteen pins, 600 W.
    SixteenPin,
}

impl CardPowerPlug {
    /// All three.
    pub const ALL: [Self; 3] = [Self::SixPin, Self::EightPin, Self::SixteenPin];

    /// The plain name.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::SixPin => "6-pin",
            Self::EightPin => "8-pin",
            Self::SixteenPin => "16-pin",
        }
    }
}

/// Plug and first bend of a card's power cable, from the card's edge outward.
///
/// Right-angle plugs for 16 pins differ by maker: none is listed.
#[must_use]
pub const fn card_power_room(plug: CardPowerPlug, shape: PlugShape) -> Option<Sourced<f64>> {
    match (plug, shape) {
        (CardPowerPlug::SixPin | CardPowerPlug::EightPin, PlugShape::Straight) => {
            Some(Sourced::new(36.0, Source::from_memory(CEM, "figure 8-8: 10.7 mm of plug, and a bend of 25 mm")))
        }
        (CardPowerPlug::SixPin | CardPowerPlug::EightPin, PlugShape::RightAngle) => {
            Some(Sourced::new(20.0, Source::from_memory(TRADE, "right-angle power plugs for cards")))
        }
        (CardPowerPlug::SixteenPin, PlugShape::Straight) => Some(Sourced::new(
            50.0,
            Source::common_practice(WORKSHOP, "16-pin plug of 10 to 15 mm, then 35 mm straight before the first bend"),
        )),
        (CardPowerPlug::SixteenPin, PlugShape::RightAngle) => None,
    }
}

/// Most power that a card plug brings, watts.
#[must_use]
pub const fn card_power_watts(plug: CardPowerPlug) -> Sourced<f64> {
    match plug {
        CardPowerPlug::SixPin => Sourced::new(75.0, Source::published(CEM, "section 1.7")),
        CardPowerPlug::EightPin => Sourced::new(150.0, Source::published(CEM, "section 1.7")),
        CardPowerPlug::SixteenPin => {
            Sourced::new(600.0, Source::published(SUPPLY_GUIDE, "multi rail guide, document 336521, page 55"))
        }
    }
}

/// Plug and bend of the mains cord at a C14 inlet, from the inlet's face.
#[must_use]
pub const fn mains_plug_room(shape: PlugShape) -> Sourced<[f64; 2]> {
    match shape {
        PlugShape::Straight => Sourced::new([60.0, 65.0], Source::from_memory(TRADE, "straight C13 plug and cord")),
        PlugShape::RightAngle => Sourced::new([25.0, 30.0], Source::from_memory(TRADE, "right-angle C13 plug")),
    }
}

/// Plug and bend of a drive's data cable.
#[must_use]
pub const fn sata_data_room(shape: PlugShape) -> Sourced<[f64; 2]> {
    match shape {
        PlugShape::Straight => {
            Sourced::new([30.0, 35.0], Source::from_memory(TRADE, "straight SATA data plug and cable"))
        }
        PlugShape::RightAngle => Sourced::new([12.0, 15.0], Source::from_memory(TRADE, "right-angle SATA data plug")),
    }
}

/// Plug and bend of a drive's power cable: the larger of a drive's two plugs.
#[must_use]
pub const fn sata_power_room(shape: PlugShape) -> Sourced<[f64; 2]> {
    match shape {
        PlugShape::Straight => {
            Sourced::new([35.0, 40.0], Source::from_memory(TRADE, "straight SATA power plug and cable"))
        }
        PlugShape::RightAngle => Sourced::new([15.0, 20.0], Source::from_memory(TRADE, "right-angle SATA power plug")),
    }
}

/// Plug and bend of a front lead (USB) behind the wall.
#[must_use]
pub const fn front_lead_room(shape: PlugShape) -> Sourced<f64> {
    match shape {
        PlugShape::Straight => {
            Sourced::new(50.0, Source::from_memory(TRADE, "USB front lead: 40 to 50 mm behind the wall"))
        }
        PlugShape::RightAngle => Sourced::new(20.0, Source::from_memory(TRADE, "right-angle USB front lead")),
    }
}

/// Plug and cable outside the I/O wall.
#[must_use]
pub const fn rear_plug_room(shape: PlugShape) -> Sourced<[f64; 2]> {
    match shape {
        PlugShape::Straight => Sourced::new([50.0, 60.0], Source::from_memory(TRADE, "thick display plugs")),
        PlugShape::RightAngle => Sourced::new([25.0, 30.0], Source::from_memory(TRADE, "right-angle display plugs")),
    }
}

sizes! {
    group "plugs";
    SLOT_POWER: f64 = 75.0, "Most power a slot gives a card", "{} W",
        Source::published(CEM, "section 4.2");
    POWER_PLUG_PITCH: f64 = 4.20, "Two-row power plugs, pitch both ways", "{} mm",
        Source::published(CEM, "figures 7-1 and 8-6");
    POWER_PLUG_8_WIDTH: f64 = 18.0, "8-pin power plug, width", "{} mm",
        Source::published(CEM, "figure 8-6");
    POWER_PLUG_24_WIDTH: f64 = 51.6, "24-pin power plug, width", "{} mm",
        Source::derived(CEM, "figure 8-6: twelve columns of 4.2 mm and 1.2 mm");
    POWER_PLUG_HEIGHT: [f64; 3] = [11.6, 14.4, 17.0], "Two-row power plug: height, over the latch, latch pressed", "{} / {} / {} mm",
        Source::published(CEM, "figures 8-6 and 8-8");
    POWER_PLUG_LENGTH: f64 = 19.6, "Two-row power plug, length", "{} mm",
        Source::published(CEM, "figure 8-6");
    POWER_PLUG_STANDS_OUT: f64 = 10.7, "Two-row power plug, part left outside its socket", "{} mm",
        Source::published(CEM, "figure 8-8");
    MAIN_PLUG_ABOVE_BOARD: f64 = 25.0, "24-pin plug above the board, before the bend", "22 to {} mm",
        Source::from_memory(TRADE, "upright 24-pin plug");
    MAIN_PLUG_ROOM: f64 = 40.0, "24-pin plug and bend", "{} mm",
        Source::from_memory(CEM, "figure 8-8: 10.7 mm of plug, and a bend of 30 mm");
    BOARD_EPS_PLUG_ROOM: f64 = 36.0, "8-pin processor plug and bend", "{} mm",
        Source::from_memory(CEM, "figure 8-8: 10.7 mm of plug, and a bend of 25 mm");
    HEADER_PITCH: f64 = 2.54, "Front panel header, pitch", "{} mm",
        Source::from_memory(TRADE, "pin headers");
    BEND_18_AWG_BUNDLE: [f64; 2] = [15.0, 20.0], "Inner bend radius, bundle of 18 AWG leads", "{} to {} mm",
        Source::from_memory(WORKSHOP, "rule of thumb for bends");
    BEND_MAIN_BUNDLE: [f64; 2] = [25.0, 30.0], "Inner bend radius, sleeved 24-pin bundle", "{} to {} mm",
        Source::from_memory(WORKSHOP, "rule of thumb for bends");
    BEND_SATA: [f64; 2] = [10.0, 15.0], "Inner bend radius, flat SATA data cable", "{} to {} mm",
        Source::from_memory(WORKSHOP, "rule of thumb for bends");
    BEND_MAINS: [f64; 2] = [25.0, 30.0], "Inner bend radius, mains cord of 7 mm", "{} to {} mm",
        Source::from_memory(WORKSHOP, "rule of thumb for bends");
}

/// Lists the sizes of this file.
pub(super) fn entries(out: &mut Vec<Entry>) {
    for plug in CardPowerPlug::ALL {
        let watts = card_power_watts(plug);
        out.push(Entry::new("plugs", format!("Card power, {}", plug.label()), "{} W", &[watts.get()], watts.source()));
        for shape in PlugShape::ALL {
            if let Some(room) = card_power_room(plug, shape) {
                out.push(Entry::new(
                    "plugs",
                    format!("Card power, {}, {}: room", plug.label(), shape.label()),
                    "{} mm",
                    &[room.get()],
                    room.source(),
                ));
            }
        }
    }
    for shape in PlugShape::ALL {
        for (what, room) in [
            ("Mains plug", mains_plug_room(shape)),
            ("SATA data plug", sata_data_room(shape)),
            ("SATA power plug", sata_power_room(shape)),
            ("Plug at the I/O connectors, outside", rear_plug_room(shape)),
        ] {
            out.push(Entry::new(
                "plugs",
                format!("{what}, {}: room", shape.label()),
                "{} to {} mm",
                &room.get(),
                room.source(),
            ));
        }
        let lead = front_lead_room(shape);
        out.push(Entry::new(
            "plugs",
            format!("Front USB lead, {}: room behind the wall", shape.label()),
            "{} mm",
            &[lead.get()],
            lead.source(),
        ));
    }
    size_entries(out);
}
