//! Cautions for the maker, ready to print. Each has a name that other code may rely on.

/// One caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// Its name.
    pub id: &'static str,
    /// The words to show.
    pub text: &'static str,
}

const fn say(id: &'static str, text: &'static str) -> Caution {
    Caution { id, text }
}

/// All cautions, in the order in which a document prints them.
pub const CAUTIONS: [Caution; 20] = [
    say(
        "combustible",
        "This design is made of combustible board. Do not run the computer unattended until you have watched temperatures under full load for an hour.",
    ),
    say(
        "heat",
        "Keep heat-producing parts at least 10 mm from wood or plastic. Board that stays above 70 °C is too hot: add air or a metal shield.",
    ),
    say("vents", "Do not block the vents drawn on the panels; grilles cut smaller than drawn need more openings."),
    say("supply", "Never open the power supply. It holds dangerous voltage even when unplugged."),
    say(
        "earth",
        "Use the power supply's earthed cord. Do not remove the earth pin. Connect metal parts of the case to the supply's earth.",
    ),
    say(
        "mains",
        "Any wiring at mains voltage must be done or checked by a qualified electrician and must follow local rules.",
    ),
    say("unplug", "Unplug the cord and wait a minute before opening the case."),
    say(
        "radio",
        "A case without metal walls does not screen radio interference. If you disturb or are disturbed, add a bonded metal shield.",
    ),
    say("static", "Touch bonded metal before you touch the boards; board and acrylic charge up when wiped dry."),
    say(
        "dust",
        "MDF and plywood dust harms lungs and airways: work outdoors or with extraction, wear an FFP2 mask or better and eye protection, do not sweep dry.",
    ),
    say(
        "laser",
        "Laser cutting: never cut PVC, vinyl or imitation leather (chlorine gas and acid), ABS, polycarbonate, glass or carbon fibre laminates or any unknown plastic; extract the fumes; never leave a working laser alone; wood and acrylic can catch fire.",
    ),
    say(
        "fumes",
        "Paints, primers and spray glue: work in moving air, away from flames, wear a suitable vapour mask; let them cure for several days before closing the case.",
    ),
    say("acrylic", "Acrylic: no alcohol, ammonia cleaner or thread lock on it; edges cut by laser may crack later."),
    say(
        "eyes",
        "Wear eye protection; hold the work in a vice; keep fingers behind the blade; unplug a machine before changing its tool.",
    ),
    say("bars", "Read the dimensions off the printed check bars, not off the paper. Print again if a bar is wrong."),
    say(
        "measure",
        "Measure your real parts and your real board before cutting; the catalogue dimensions are only typical.",
    ),
    say("tipping", "Check that the case does not tip: push it gently at the top from each side before use."),
    say("estimates", "The predicted temperatures, noise and strength are rules of thumb, not a certificate of safety."),
    say("warranty", "The licence of this software gives no warranty: the person who builds the case answers for it."),
    say(
        "batteries",
        "Batteries (button cells, uninterruptible supplies) need their own ventilation and must not be enclosed in wood without their maker's consent.",
    ),
];

/// The caution of this name.
#[must_use]
pub fn caution(id: &str) -> Option<&'static Caution> {
    const ALL: &[Caution] = &CAUTIONS;
    ALL.iter().find(|caution| caution.id == id)
}
