//! What a fastener of the case is in a shop: screws of one thread and length are one thing there, whatever they hold.

use crate::Build;
use crate::design::Bought;
use crate::fastening::Fastener;

/// A fastener as it is sold.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Sold {
    /// Heading it is listed under.
    pub group: &'static str,
    /// What to ask for.
    pub name: String,
    /// What its pack and price are; `None` where the design has no choice for it.
    pub kind: Option<Bought>,
    /// What it is used for, where that is more than its name.
    pub used: String,
}

/// How a fastener is sold.
pub(super) fn sold(build: &Build, fastener: &Fastener) -> Sold {
    let what = fastener.what.as_str();
    let make = |group, name: &str, kind| Sold { group, name: name.to_owned(), kind, used: String::new() };
    if let Some(screw) = build.screws.iter().find(|screw| screw.what == what) {
        let used = what.strip_prefix(screw.thread).unwrap_or(what).trim();
        let (group, word, kind) = if used.starts_with("bolt") {
            ("Feet", "bolt", Bought::Foot)
        } else if used.starts_with("spike") {
            ("Feet", "spike", Bought::Foot)
        } else {
            ("Screws", "screw", Bought::Screw)
        };
        let name = format!("{} {word}", screw.thread);
        return Sold { group, name, kind: Some(kind), used: used.to_owned() };
    }
    if let Some(at) = what.find(" washer") {
        let name = &what[..at + " washer".len()];
        return Sold { used: what[name.len()..].trim().to_owned(), ..make("Washers", name, Some(Bought::Washer)) };
    }
    if what.ends_with(" nut") {
        return make("Nuts", what, Some(Bought::Nut));
    }
    match what {
        "Corner bracket" => make("Brackets", what, Some(Bought::Bracket)),
        "Captive-nut bracket" => make("Brackets", what, Some(Bought::Captive)),
        _ if what.contains("standoff") => make("Standoffs", what, Some(Bought::Standoff)),
        _ if what.starts_with("Pad") => make("Feet", what, Some(Bought::Foot)),
        _ => make("Other", what, None),
    }
}

/// Whether a few spares of it are bought: what rolls under the bench.
pub(super) const fn small(kind: Option<Bought>) -> bool {
    matches!(kind, Some(Bought::Screw | Bought::Nut | Bought::Washer))
}
