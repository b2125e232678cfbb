//! Opening a pack that was made earlier: the design in it, and whether its files belong together.
//!
//! Every file bears the fingerprint of the design it was made from (see `stamp.rs`). The design's own fingerprint, as
//! the version that made the file gave it, must be the same; a file of another design that found its way into the
//! folder, or was left from an earlier pack, is told by that.

use serde::Serialize;
use thiserror::Error;

use super::stamp::{Stamp, stamp};
use super::unzip::{ZipError, read_zip};
use crate::design::fingerprint::{FingerprintError, VERSION, of_version, typed};
use crate::design::{Design, DesignErrors, Spec, read_file_bytes, write_file, write_link};

/// The file of a pack that holds the design.
pub const DESIGN_FILE: &str = "design.json";

/// A pack that was opened.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpenedPack {
    /// The design.
    #[serde(skip)]
    pub design: Design,
    /// Its name; may be empty.
    pub title: String,
    /// The design as a file.
    pub design_file: String,
    /// The design as a link, from behind the `#` on.
    pub link: String,
    /// Its fingerprint as its files should bear it: by the version that made them.
    pub fingerprint: String,
    /// Its fingerprint by this version; another one when another version made the pack.
    pub fingerprint_now: String,
    /// The version that made the pack, when its files say so.
    pub made_by: Option<String>,
    /// Whether that is another version than this one: the same choices may give other panels now.
    pub other_version: bool,
    /// Its files.
    pub files: Vec<OpenedFile>,
}

/// A file of a pack that was opened.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpenedFile {
    /// Its name within the pack.
    pub name: String,
    /// Whether it belongs to the design.
    pub verdict: Verdict,
    /// Fingerprints it bears.
    pub fingerprints: Vec<String>,
}

/// Whether a file belongs to the pack's design.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Verdict {
    /// It is the design.
    Design,
    /// It bears the design's fingerprint.
    Belongs,
    /// It bears another one.
    Other,
    /// It bears none: not a file of the program, or changed since.
    Unmarked,
}

/// Why a pack cannot be opened.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PackError {
    /// The zip does not read.
    #[error(transparent)]
    Zip(#[from] ZipError),
    /// There is no design in it.
    #[error("there is no {DESIGN_FILE} among its files: this is no pack")]
    NoDesign,
    /// There are several designs in it.
    #[error("it holds several designs ({}): open one of them by itself", .0.join(", "))]
    Several(Vec<String>),
    /// The design does not read.
    #[error("{place}: {problems}")]
    Design {
        /// The file's name in the pack.
        place: String,
        /// What is wrong with it.
        problems: DesignErrors,
    },
}

/// Opens a pack that is a zip.
///
/// ```
/// use panelwright::{Build, design::Design, documents::pack};
/// let build = Build::of(&Design::default());
/// let opened = pack::read_pack(&pack::zip(&pack::files(&build))).unwrap();
/// assert_eq!((opened.fingerprint.as_str(), opened.strangers().count()), (build.fingerprint.as_str(), 0));
/// ```
///
/// # Errors
/// The bytes are no zip, or hold no design.
pub fn read_pack(bytes: &[u8]) -> Result<OpenedPack, PackError> {
    open_files(&read_zip(bytes)?)
}

/// Opens a pack from its files: names within its folder, and bytes. A folder around them is passed over.
///
/// # Errors
/// There is no design among them, several, or one that does not read.
pub fn open_files(files: &[(String, Vec<u8>)]) -> Result<OpenedPack, PackError> {
    let folder_of =
        |name: &str| name.strip_suffix(DESIGN_FILE).filter(|at| at.is_empty() || at.ends_with('/')).map(str::len);
    let mut designs: Vec<(usize, &String, &Vec<u8>)> =
        files.iter().filter_map(|(name, bytes)| folder_of(name).map(|length| (length, name, bytes))).collect();
    // The outermost one, when it is alone there.
    let depth = |name: &str| name.matches('/').count();
    let least = designs.iter().map(|(_, name, _)| depth(name)).min().unwrap_or(0);
    designs.retain(|(_, name, _)| depth(name) == least);
    let (folder, place, bytes) = match designs.as_slice() {
        [] => return Err(PackError::NoDesign),
        [only] => *only,
        several => return Err(PackError::Several(several.iter().map(|(_, name, _)| (*name).clone()).collect())),
    };
    let design = read_file_bytes(bytes).map_err(|problems| PackError::Design { place: place.clone(), problems })?;
    let stamps: Vec<(&String, Stamp)> = files.iter().map(|(name, bytes)| (name, stamp(name, bytes))).collect();
    // The file of all that was worked out says it most surely; any other does, too.
    let says = |(name, stamp): &(&String, Stamp)| {
        stamp.version.clone().map(|version| (!name.ends_with("build.json"), version))
    };
    let made_by = stamps.iter().filter_map(says).min_by_key(|(other, _)| *other).map(|(_, version)| version);
    let version = made_by.as_deref().unwrap_or(VERSION);
    let fingerprint = of_version(&design, version);
    let opened = stamps.iter().map(|(name, stamp)| {
        let by_its_version = stamp.version.as_ref().map(|version| of_version(&design, version));
        let belongs = |mark: &str| mark == fingerprint || by_its_version.as_deref() == Some(mark);
        let verdict = if *name == place {
            Verdict::Design
        } else if stamp.fingerprints.is_empty() {
            Verdict::Unmarked
        } else if stamp.whose(&belongs) {
            Verdict::Belongs
        } else {
            Verdict::Other
        };
        let name = name.get(folder..).filter(|_| name.starts_with(&place[..folder])).unwrap_or(name.as_str());
        OpenedFile { name: name.to_owned(), verdict, fingerprints: stamp.fingerprints.clone() }
    });
    Ok(OpenedPack {
        title: Spec::of(&design).title,
        design_file: write_file(&design),
        link: write_link(&design),
        fingerprint_now: of_version(&design, VERSION),
        other_version: version != VERSION,
        files: opened.collect(),
        fingerprint,
        made_by,
        design,
    })
}

impl OpenedPack {
    /// The files that belong to another design.
    pub fn strangers(&self) -> impl Iterator<Item = &OpenedFile> {
        self.files.iter().filter(|file| file.verdict == Verdict::Other)
    }

    /// What was found, in sentences, one a line.
    #[must_use]
    pub fn report(&self) -> String {
        let count = |verdict| self.files.iter().filter(|file| file.verdict == verdict).count();
        let named = if self.title.is_empty() { String::new() } else { format!(" ({})", self.title) };
        let mut text = format!("Design {}{named}.\n", self.fingerprint);
        if let (true, Some(version)) = (self.other_version, &self.made_by) {
            text.push_str(&format!(
                "Made by panelwright {version}; this is {VERSION}, by which the design is {}. Do not mix its prints with \
                 new ones.\n",
                self.fingerprint_now
            ));
        }
        match (count(Verdict::Belongs), count(Verdict::Other)) {
            (belong, 0) => text.push_str(&format!("{belong} files bear its fingerprint, none another.\n")),
            (belong, _) => text.push_str(&format!("{belong} files bear its fingerprint; these do not:\n")),
        }
        for file in self.strangers() {
            text.push_str(&format!("    {}: design {}\n", file.name, file.fingerprints.join(", ")));
        }
        let unmarked: Vec<&str> =
            self.files.iter().filter(|file| file.verdict == Verdict::Unmarked).map(|file| file.name.as_str()).collect();
        if !unmarked.is_empty() {
            text.push_str(&format!("Without a fingerprint: {}.\n", unmarked.join(", ")));
        }
        text
    }
}

/// What a fingerprint read from paper says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "lowercase")]
pub enum Print {
    /// The print belongs to the design.
    Belongs,
    /// It belongs to the design, but another version of the program made it.
    Version {
        /// That version.
        version: String,
    },
    /// All but one or two characters agree: most likely misread.
    Misread {
        /// The design's own.
        design: String,
    },
    /// It belongs to another design.
    Other {
        /// The design's own.
        design: String,
    },
}

/// So many characters may differ for a fingerprint to count as misread: of two designs' it happens once in a million.
const MISREAD_CHARS: usize = 2;

/// Whether a print with this fingerprint, as typed, belongs to a design. `versions` are those of the program besides
/// this one that may have made it.
///
/// # Errors
/// What was typed is no fingerprint.
pub fn check_print(design: &Design, versions: &[String], text: &str) -> Result<Print, FingerprintError> {
    let given = typed(text)?;
    let own = of_version(design, VERSION);
    if given == own {
        return Ok(Print::Belongs);
    }
    if let Some(version) = versions.iter().find(|version| of_version(design, version) == given) {
        return Ok(Print::Version { version: version.clone() });
    }
    let differ = given.bytes().zip(own.bytes()).filter(|(a, b)| a != b).count();
    Ok(if differ <= MISREAD_CHARS { Print::Misread { design: own } } else { Print::Other { design: own } })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Build;
    use crate::documents::pack::{files, zip};

    fn of(choices: &[(&str, serde_json::Value)]) -> Build {
        let mut design = Design::default();
        for (key, value) in choices {
            design.set_json(key, value).unwrap();
        }
        Build::of(&design)
    }

    #[test]
    fn every_file_of_a_pack_bears_its_fingerprint() {
        for method in ["hand", "router", "laser"] {
            let build = of(&[
                ("method", method.into()),
                ("hand.marking", true.into()),
                ("design.title", "redesign BBBB2222".into()),
            ]);
            let opened = read_pack(&zip(&files(&build))).unwrap();
            assert_eq!(opened.design, build.design);
            assert_eq!((opened.title.as_str(), opened.other_version), ("redesign BBBB2222", false));
            assert_eq!(opened.made_by.as_deref(), Some(VERSION));
            for file in &opened.files {
                let wanted = if file.name == DESIGN_FILE { Verdict::Design } else { Verdict::Belongs };
                assert_eq!(file.verdict, wanted, "{method} {}: {:?}", file.name, file.fingerprints);
            }
            assert!(opened.report().contains("none another"));
        }
    }

    #[test]
    fn a_file_of_another_design_is_told_also_within_a_folder() {
        let (mine, other) = (of(&[]), of(&[("cooler.height", 100.into())]));
        let mut mixed: Vec<(String, Vec<u8>)> =
            files(&mine).into_iter().map(|(name, bytes)| (format!("quay/{name}"), bytes)).collect();
        for name in ["cut/left.dxf", "templates.pdf", "lists/shopping.csv", "panels/left.svg"] {
            let theirs = files(&other).into_iter().find(|(other, _)| other == name).unwrap().1;
            mixed.iter_mut().find(|(mine, _)| mine.ends_with(name)).unwrap().1 = theirs;
        }
        mixed.push(("quay/notes.txt".to_owned(), b"bought on Friday".to_vec()));
        let opened = read_pack(&zip(&mixed)).unwrap();
        let mut strange: Vec<&str> = opened.strangers().map(|file| file.name.as_str()).collect();
        strange.sort_unstable();
        assert_eq!(strange, ["cut/left.dxf", "lists/shopping.csv", "panels/left.svg", "templates.pdf"]);
        let report = opened.report();
        assert!(
            report.contains(&other.fingerprint) && report.contains("Without a fingerprint: notes.txt."),
            "{report}"
        );
    }

    #[test]
    fn a_pack_of_another_version_belongs_together_and_says_so() {
        let build = of(&[]);
        let old = of_version(&build.design, "0.0.7");
        let made: Vec<(String, Vec<u8>)> = [
            (DESIGN_FILE, write_file(&build.design)),
            ("build.json", format!("{{\"program\": \"panelwright 0.0.7\", \"fingerprint\": \"{old}\"}}")),
            ("cut/left.svg", format!("<title>Left panel, design {old}, panelwright 0.0.7</title>")),
        ]
        .map(|(name, text)| (name.to_owned(), text.into_bytes()))
        .to_vec();
        let opened = open_files(&made).unwrap();
        assert_eq!((opened.made_by.as_deref(), opened.other_version), (Some("0.0.7"), true));
        assert_eq!((opened.strangers().count(), opened.fingerprint_now), (0, build.fingerprint.clone()));
        let versions = ["0.0.7".to_owned()];
        assert_eq!(check_print(&build.design, &versions, &old), Ok(Print::Version { version: versions[0].clone() }));
    }

    #[test]
    fn what_is_no_pack_is_said_to_be_none() {
        assert_eq!(open_files(&[]), Err(PackError::NoDesign));
        let two = ["a/design.json", "b/design.json"].map(|name| (name.to_owned(), b"{}".to_vec()));
        assert!(matches!(open_files(&two), Err(PackError::Several(names)) if names.len() == 2));
        let wrong = [("design.json".to_owned(), b"{ \"cooler.height\": 900 }".to_vec())];
        assert!(open_files(&wrong).unwrap_err().to_string().contains("900 is not allowed"));
        assert!(matches!(read_pack(b"%PDF"), Err(PackError::Zip(ZipError::NoEnd))));
    }

    #[test]
    fn a_fingerprint_read_from_paper_is_judged() {
        let build = of(&[]);
        let mine = &build.fingerprint;
        assert_eq!(check_print(&build.design, &[], &mine.to_lowercase()), Ok(Print::Belongs));
        let letter = if mine.starts_with('A') { "B" } else { "A" };
        let close = format!("{letter}{}", &mine[1..]);
        assert_eq!(check_print(&build.design, &[], &close), Ok(Print::Misread { design: mine.clone() }));
        let other = of(&[("cooler.height", 100.into())]).fingerprint;
        assert_eq!(check_print(&build.design, &[], &other), Ok(Print::Other { design: mine.clone() }));
        assert!(check_print(&build.design, &[], "A1").is_err());
    }
}
