//! Joints: what a method can make, what a thin sheet bears, what holds.

use super::finding::Finding;
use super::mend::Remedy;
use super::rule::Rule;
use super::scene::Scene;
use super::words;
use crate::design::{Joint, Material, Method, Seam, SeamSpec, Value};
use crate::dimensions::joints::{
    CASE_IS_LIFTED_BY, FACE_SHEAR, JOINT_SAFETY, PRESS_FIBREBOARD, PRESS_PLYWOOD, internal_bond,
};
use crate::dimensions::sheets::WEB_MIN_FIBREBOARD;
use crate::dimensions::source::Source;
use crate::drawing::number::format_number;
use crate::panels::{Purpose, finger_widths};
use crate::parts::{PartKind, block_faces_mm2};
use crate::solid::TOUCH_MM;

pub(super) const JOINT_BEYOND_METHOD: Rule = Rule {
    name: "joint-beyond-method",
    what: "Each joint can be made with the tools chosen for its panels.",
    source: Source::common_practice("Workshop custom", "a rebate wants a router"),
    look: beyond_method,
};

pub(super) const REBATE_LEAVES: Rule = Rule {
    name: "rebate-leaves",
    what: "A rebate leaves enough of the sheet.",
    source: Source::common_practice("Workshop custom", "2 mm of sheet under a rebate"),
    look: rebate_leaves,
};

pub(super) const FINGER_WIDTH: Rule = Rule {
    name: "finger-width",
    what: "No finger is narrower than the sheet is thick.",
    source: Source::common_practice("Workshop custom", "fibreboard splits at fingers narrower than its thickness"),
    look: finger_width,
};

pub(super) const FINGERS_PRESS: Rule = Rule {
    name: "fingers-press",
    what: "Joints press no more than the sheet bears; acrylic must not press at all.",
    source: Source::common_practice(
        "Workshop custom",
        "press of 0 to 0.1 mm in fibreboard, 0.15 in plywood, none in acrylic",
    ),
    look: fingers_press,
};

pub(super) const GLUE_AREA: Rule = Rule {
    name: "glue-area",
    what: "A glued corner has area enough to hold.",
    source: Source::derived(
        "EN 622-5, EN 204",
        "internal bond and shear of the glued areas, a quarter of it relied on",
    ),
    look: glue_area,
};

pub(super) const CORNER_OPEN: Rule = Rule {
    name: "corner-open",
    what: "At each upper front corner one panel covers the others.",
    source: Source::derived("Geometry of the design", "three panels that each run through over the next"),
    look: corner_open,
};

fn seams<'a>(scene: &'a Scene, joint: Joint) -> impl Iterator<Item = &'a SeamSpec> {
    scene.case.spec.making.joints.seams.iter().filter(move |seam| seam.joint == joint)
}

fn names(seam: &SeamSpec) -> String {
    format!("{} and {}", words::the_panel(seam.through), words::the_panel(seam.covered))
}

fn at(scene: &Scene, seam: &SeamSpec) -> [f64; 3] {
    let [one, other] = [seam.through, seam.covered].map(|wall| scene.sheet(wall).map(|sheet| sheet.solid));
    match (one, other) {
        (Some(one), Some(other)) => one.intersection(&other).centre(),
        _ => [0.0; 3],
    }
}

fn told(finding: Finding, scene: &Scene, seam: &SeamSpec) -> Finding {
    finding.with_about([seam.through.name(), seam.covered.name()]).with_at(at(scene, seam))
}

fn beyond_method(scene: &Scene, found: &mut Vec<Finding>) {
    let making = &scene.case.spec.making;
    for seam in seams(scene, Joint::Rebate) {
        let method = making.method(seam.through);
        if method != Method::Router {
            let what =
                if method == Method::Laser { "A laser cuts no rebate" } else { "Saw and file make no clean rebate" };
            let finding = JOINT_BEYOND_METHOD
                .blocks(format!("{what}: {} cannot be joined by one.", names(seam)))
                .with_remedy("Choose fingers, tabs or brackets there, or a router for that panel.");
            found.push(told(finding, scene, seam));
        }
    }
    for seam in making.joints.seams.iter().filter(|seam| matches!(seam.joint, Joint::Finger | Joint::Tab)) {
        if [seam.through, seam.covered].iter().any(|wall| making.method(*wall) == Method::Hand) {
            let finding = JOINT_BEYOND_METHOD
                .note(format!("By hand, the joint of {} wants a fine saw and filing to fit.", names(seam)))
                .with_remedy("Cut one panel first and mark the other from it.");
            found.push(told(finding, scene, seam));
        }
    }
}

/// A sheet of some thickness or more: the measured one is the maker's sheet itself.
fn thicker(scene: &Scene, least: f64) -> Remedy {
    let measured = scene.case.spec.sheet.measured_mm.is_some();
    let key = if measured { "sheet.measured" } else { "sheet.nominal" };
    Remedy::new().at_least(key, least, |thickness| format!("take a sheet of {thickness} or more"))
}

/// A width to ask for, so that the fingers of a seam come out no narrower than the sheet: as many as are wide enough,
/// an odd number, of just that width.
fn wider_fingers(scene: &Scene, seam: &SeamSpec, widths: &[f64]) -> Remedy {
    let length: f64 = widths.iter().sum();
    let case = &scene.case.arrangement.case;
    let most = f64::floor((length + TOUCH_MM) / case.thickness_mm);
    let count = if libm::fmod(most, 2.0) == 0.0 { most - 1.0 } else { most };
    let remedy = Remedy::new();
    let remedy = if count >= 3.0 {
        // Asked for in tenths, a width comes out at the nearest odd number of fingers.
        let asked = f64::ceil(length / count * 10.0 - 1e-6) / 10.0;
        let narrowest = finger_widths(case, seam.seam, Some(asked)).into_iter().fold(f64::INFINITY, f64::min);
        if narrowest >= case.thickness_mm - TOUCH_MM {
            remedy.at_least("joint.finger", asked, |width| format!("ask for fingers of {width} or more"))
        } else {
            remedy
        }
    } else {
        remedy
    };
    remedy.otherwise("take another joint there")
}

fn rebate_leaves(scene: &Scene, found: &mut Vec<Finding>) {
    for seam in seams(scene, Joint::Rebate) {
        let thickness = scene.case.arrangement.case.thickness_mm;
        let left = thickness - seam.reach_mm(thickness);
        let needed = WEB_MIN_FIBREBOARD.get();
        if left < needed - TOUCH_MM {
            let finding = REBATE_LEAVES
                .blocks(format!("The rebate that joins {} leaves {} of the sheet.", names(seam), words::short(left)))
                .with_mm(left, needed)
                .with_mends(thicker(scene, thickness * needed / left.max(TOUCH_MM)).say("take another joint"));
            found.push(told(finding, scene, seam));
        }
    }
}

fn finger_width(scene: &Scene, found: &mut Vec<Finding>) {
    let case = &scene.case.arrangement.case;
    for seam in seams(scene, Joint::Finger) {
        let widths = finger_widths(case, seam.seam, scene.case.spec.making.finger_mm);
        let narrowest = widths.iter().copied().fold(f64::INFINITY, f64::min);
        if narrowest < case.thickness_mm - TOUCH_MM {
            let finding = FINGER_WIDTH
                .caution(format!("The fingers of {} are {} wide.", names(seam), words::limit(narrowest)))
                .with_mm(narrowest, case.thickness_mm)
                .with_mends(wider_fingers(scene, seam, &widths));
            found.push(told(finding, scene, seam));
        }
    }
}

/// The strongest press a material bears, mm altogether; `None` where it must not press.
const fn most_press(material: Material) -> Option<f64> {
    match material {
        Material::Acrylic => None,
        Material::Plywood => Some(PRESS_PLYWOOD.get()[1]),
        _ => Some(PRESS_FIBREBOARD.get()[1]),
    }
}

fn fingers_press(scene: &Scene, found: &mut Vec<Finding>) {
    let spec = scene.case.spec;
    let joined = spec.making.joints.seams.iter().filter(|seam| matches!(seam.joint, Joint::Finger | Joint::Tab));
    let presses = joined.map(|seam| (seam, -spec.making.play_mm(seam)));
    let strongest = presses.reduce(|a, b| if b.1 > a.1 { b } else { a });
    let Some((seam, press)) = strongest.filter(|(_, press)| *press > TOUCH_MM) else { return };
    let finding = match most_press(spec.sheet.material) {
        None => FINGERS_PRESS.blocks("Acrylic joints that press crack.").with_mm(-press, 0.0).with_mends(
            Remedy::new().mend(
                "set the play of fingers and tabs to 0.05 mm or more, and cement them",
                vec![("joint.play".to_owned(), Value::Number(0.05))],
            ),
        ),
        Some(most) if press > most + TOUCH_MM => FINGERS_PRESS
            .caution(format!("The fingers press by {}; this sheet bears {}.", words::short(press), words::short(most)))
            .with_mm(-press, -most)
            .with_mends(Remedy::new().say("cut a test piece first").mend(
                format!("set the play of fingers and tabs to {} or more", words::limit(-most)),
                vec![("joint.play".to_owned(), Value::Number(-most))],
            )),
        Some(_) => return,
    };
    found.push(told(finding, scene, seam));
}

/// What a glued seam holds, N, with the safety.
fn holds_n(scene: &Scene, seam: &SeamSpec) -> f64 {
    let case = &scene.case.arrangement.case;
    let t = case.thickness_mm;
    let (shear, bond) = (FACE_SHEAR.get(), internal_bond(t).get());
    let [one, other] = seam.seam.walls();
    let length = clear_length(scene, seam.seam);
    let force = match seam.joint {
        Joint::Brackets => return f64::INFINITY,
        Joint::Blocks => {
            let stem = format!("block-{}-{}", one.name(), other.name());
            let blocks =
                scene.case.parts.iter().filter(|part| part.kind == PartKind::Block && part.id.starts_with(&stem));
            // The narrower of its faces gives way first.
            let area: f64 = blocks.flat_map(|part| &part.bodies).map(|body| block_faces_mm2(body)[0]).sum();
            // The edge itself holds by the face's bond.
            area * shear + length * t * bond
        }
        Joint::Rebate => length * (t + seam.reach_mm(t)) * bond,
        Joint::Finger => {
            let count = finger_widths(case, seam.seam, scene.case.spec.making.finger_mm).len();
            count.saturating_sub(1) as f64 * t * t * shear
        }
        Joint::Tab => {
            let slots = scene
                .sheet(seam.through)
                .into_iter()
                .flat_map(|sheet| sheet.with_purpose(Purpose::JointSlot))
                .filter(|shape| shape.feature.about.iter().any(|about| about == seam.covered.name()))
                .count();
            // Both flanks of each tab, and the shoulders' edge.
            slots as f64 * 2.0 * t * t * shear + length * t * bond * 0.5
        }
    };
    force / JOINT_SAFETY.get()
}

/// Length of a seam inside the case, mm.
fn clear_length(scene: &Scene, seam: Seam) -> f64 {
    let inside = scene.case.arrangement.case.inside_mm;
    match seam {
        Seam::LeftFront | Seam::RightFront => inside[2],
        Seam::LeftTop | Seam::RightTop => inside[1],
        Seam::FrontTop | Seam::FloorBack => inside[0],
    }
}

fn glue_area(scene: &Scene, found: &mut Vec<Finding>) {
    for seam in &scene.case.spec.making.joints.seams {
        let holds = holds_n(scene, seam);
        if holds < CASE_IS_LIFTED_BY.get() {
            let mut finding = GLUE_AREA
                .caution(format!("The glued joint of {} holds some {} N.", names(seam), format_number(holds, 0)))
                .with_remedy("Take narrower and so more fingers, blocks, or brackets there.");
            finding.measured = Some(libm::round(holds));
            finding.needed = Some(CASE_IS_LIFTED_BY.get());
            finding.unit = "N";
            found.push(told(finding, scene, seam));
        }
    }
}

fn corner_open(scene: &Scene, found: &mut Vec<Finding>) {
    use crate::design::Wall::{Front, Left, Right, Top};
    let case = &scene.case.arrangement.case;
    for side in [Left, Right] {
        let seams: Vec<&SeamSpec> = [(side, Front), (side, Top), (Front, Top)]
            .into_iter()
            .filter_map(|(one, other)| case.joints.between(one, other))
            .collect();
        let covers = |wall| seams.iter().filter(|seam| seam.through == wall).count();
        let ring = [side, Front, Top].into_iter().all(|wall| covers(wall) == 1);
        // With fingers the side fills the corner.
        let filled = seams.iter().filter(|seam| seam.joint == Joint::Finger).count() == 3;
        if !ring || filled {
            continue;
        }
        let t = case.thickness_mm;
        let (_, sense, x) = case.inner(side);
        found.push(
            CORNER_OPEN
                .caution(format!(
                    "At the upper front corner of {} each panel covers the next: a hole of {} a side is left.",
                    words::the_panel(side),
                    words::short(t)
                ))
                .with_mm(t, 0.0)
                .with_remedy("Let one of the three panels run through over both others.")
                .with_about([side.name(), "front", "top"])
                .with_at([x - sense * t / 2.0, case.inner(Front).2 - t / 2.0, case.inner(Top).2 + t / 2.0]),
        );
    }
}
