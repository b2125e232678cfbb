//! `open` and `check-prints`: whose a file or a print is.

use std::path::Path;

use panelwright::design::fingerprint::{VERSION, fingerprint};
use panelwright::design::write_file;
use panelwright::documents::pack::{Print, check_print};
use serde_json::json;

use crate::args;
use crate::failure::Failure;
use crate::input::{self, Given};
use crate::output;

/// Prints what is in it; gives the exit code.
pub fn open(given: &str, as_json: bool) -> Result<u8, Failure> {
    match input::anything(given)? {
        Given::Design(design) if as_json => {
            let answer = json!({"fingerprint": fingerprint(&design), "design_file": write_file(&design)});
            output::print(&pretty(&answer)?)?;
        }
        Given::Design(design) => output::print(&write_file(&design))?,
        Given::Pack(pack) => {
            if as_json {
                output::print(&(serde_json::to_string_pretty(&pack)? + "\n"))?;
            } else {
                output::print(&pack.design_file)?;
                let _ = output::talk(&pack.report());
            }
            return Ok(if pack.strangers().next().is_some() { args::STRANGE } else { 0 });
        }
        Given::Stamped { place, stamp } if as_json => {
            output::print(&pretty(&json!({"file": place, "stamp": stamp}))?)?;
        }
        Given::Stamped { place, stamp } => {
            let version = stamp.version.map(|version| format!(", panelwright {version}")).unwrap_or_default();
            output::print(&format!("{place}: design {}{version}\n", stamp.fingerprints.join(", ")))?;
        }
    }
    Ok(0)
}

/// Says of each print whether it belongs to the design; gives the exit code.
pub fn check_prints(design: &str, prints: &[String], as_json: bool) -> Result<u8, Failure> {
    let (design, versions) = match input::anything(design)? {
        Given::Pack(pack) => (pack.design, pack.made_by.into_iter().collect()),
        Given::Design(design) => (*design, Vec::new()),
        Given::Stamped { place, stamp } => {
            return Err(Failure::NoDesignInIt { place, fingerprint: stamp.fingerprints.join(", ") });
        }
    };
    let own = fingerprint(&design);
    let mut answers = Vec::new();
    let mut text = String::new();
    let mut all = true;
    for given in prints {
        let mut versions: Vec<String> = versions.clone();
        let marks = if Path::new(given).is_file() {
            match input::anything(given)? {
                Given::Design(design) => vec![fingerprint(&design)],
                Given::Pack(pack) => vec![pack.fingerprint],
                Given::Stamped { stamp, .. } => {
                    versions.extend(stamp.version);
                    stamp.fingerprints
                }
            }
        } else {
            vec![given.clone()]
        };
        for mark in marks {
            let print = check_print(&design, &versions, &mark).map_err(|error| Failure::Fingerprint { error })?;
            let said = said(&print);
            let whose = if mark == *given { mark.clone() } else { format!("{given}: {mark}") };
            text.push_str(&format!("{whose} {said}\n"));
            all &= matches!(print, Print::Belongs | Print::Version { .. });
            answers.push(json!({"print": given, "fingerprint": mark, "answer": print}));
        }
    }
    if as_json {
        output::print(&pretty(&json!({"design": own, "prints": answers}))?)?;
    } else {
        output::print(&text)?;
    }
    Ok(if all { 0 } else { args::STRANGE })
}

fn said(print: &Print) -> String {
    match print {
        Print::Belongs => "belongs to this design".to_owned(),
        Print::Version { version } => {
            format!(
                "belongs to this design, made by panelwright {version}; this is {VERSION}: do not mix old prints and new"
            )
        }
        Print::Misread { design } => format!("is nearly {design}, the mark of this design: look again"),
        Print::Other { design } => format!("belongs to another design; this one has {design}"),
    }
}

fn pretty(answer: &serde_json::Value) -> Result<String, Failure> {
    Ok(serde_json::to_string_pretty(answer)? + "\n")
}
