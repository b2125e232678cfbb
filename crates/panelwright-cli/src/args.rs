//! What can be asked on the command line, with the help that says how.

use std::path::PathBuf;

use clap::{Parser, Subcommand};

/// Exit code of `check` when something blocks.
pub const BLOCKED: u8 = 1;
/// Exit code of `kits` when something finds no place.
pub const NO_PLACE: u8 = 1;
/// Exit code of `compare` when something changes.
pub const CHANGED: u8 = 1;
/// Exit code when files or prints belong to another design.
pub const STRANGE: u8 = 1;
/// Exit code when the input is wrong: arguments, a design file, a link.
pub const WRONG_INPUT: u8 = 2;
/// Exit code when a result could not be written.
pub const NOT_WRITTEN: u8 = 3;

const AFTER: &str = "\
DESIGN is a design file, a link (the whole address, or from its # on, in quotes), a pack (its zip or folder), or - for standard input.

Exit codes: 0 done; 1 check found something that blocks, kits that something finds no place, compare a change, open or check-prints something of another design; 2 the input is wrong; 3 a result could not be written.

Examples:
  panelwright make quay.json --out quay
  panelwright check quay.json
  panelwright link quay.json
  panelwright choices | less";

/// Small computer cases of sheet material: pick the parts, get a case that fits, print true-scale templates.
#[derive(Debug, Parser)]
#[command(name = "panelwright", version, after_help = AFTER, disable_help_subcommand = false)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub task: Task,
}

const DESIGN: &str = "A design file, a link in quotes, a pack, or - for standard input";

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Task {
    /// Write every file of a design into a folder: templates, panels, cutting files, findings
    ///
    /// Writes README.txt, design.json, build.json, findings.json, case.svg, panels/*.svg, cut/*.dxf, cut/*.svg,
    /// templates.pdf, lists.pdf, lists/*.csv and the sheets with their saw cuts as sheets/*: all of them, or none when
    /// something goes wrong. Files that are there already are replaced with --force only. Files that an earlier pack left
    /// and the new one has not are removed then: those of a pack's names that bear a fingerprint. Other files stay.
    ///
    /// Tables for marking out come as marking/*.csv where the design asks for them.
    #[command(after_help = "\
Examples:
  panelwright make quay.json --out quay
  panelwright make quay.json --zip quay.zip
  panelwright make quay.json --out quay --force --paper a3
  panelwright make '#1AI3vAtI' --out first-draft
  panelwright open '#1AI3vAtI' | panelwright make - --out first-draft

Exit codes: 0 done, whatever the checks say of the design; 2 the input is wrong; 3 a result could not be written.")]
    Make {
        #[arg(help = DESIGN)]
        design: String,
        /// The folder; made when it is not there
        #[arg(long, value_name = "DIR", required_unless_present = "zip")]
        out: Option<PathBuf>,
        /// Write the same files as one zip
        #[arg(long, value_name = "FILE")]
        zip: Option<PathBuf>,
        /// Print on this paper instead of the design's own: a4, a3, letter, legal, tabloid, a1, a0
        #[arg(long, value_name = "PAPER")]
        paper: Option<String>,
        /// Replace the pack that is there; files only that one has are removed
        #[arg(long)]
        force: bool,
    },
    /// Write a page to print first, with bars to measure, so that templates can be corrected for the printer
    ///
    /// Measure its bars of 100 mm and set the choices printer.across and printer.down to what you read.
    #[command(after_help = "\
Examples:
  panelwright test-page --out test.pdf
  panelwright test-page --paper letter --out test.pdf")]
    TestPage {
        /// The paper: a4, a3, letter, legal, tabloid, a1, a0
        #[arg(long, value_name = "PAPER", default_value = "a4")]
        paper: String,
        /// The file
        #[arg(long, value_name = "FILE")]
        out: PathBuf,
        /// Replace the file when it is there
        #[arg(long)]
        force: bool,
    },
    /// Say how wide a laser cuts, from what the ten pieces of the kerf test piece measure together
    ///
    /// The test piece is cut/kerf-test.dxf in the pack of a design with a panel made by laser: 100 mm wide as drawn.
    #[command(after_help = "\
Examples:
  panelwright kerf 98.5")]
    Kerf {
        /// What the pieces measure, pushed together, in mm
        measured: f64,
    },
    /// Say whether everything fits; exit code 1 when something blocks
    #[command(after_help = "\
Exit codes: 0 nothing blocks; 1 something blocks; 2 the input is wrong.

Examples:
  panelwright check quay.json
  panelwright check quay.json --json > findings.json
  panelwright check - < quay.json && echo fits")]
    Check {
        #[arg(help = DESIGN)]
        design: String,
        /// Print the findings as JSON, as in findings.json
        #[arg(long)]
        json: bool,
    },
    /// Say what a new design means for a case built already: which panels stay, want more holes, are trimmed or recut
    ///
    /// Exit code 1 when something changes. With --out, a picture of each panel that changes is written: the old one
    /// dashed, the new one strong, what is added marked.
    #[command(after_help = "\
Exit codes: 0 nothing changes; 1 something changes; 2 the input is wrong.

Examples:
  panelwright compare quay.json quay-2.json
  panelwright compare quay.json quay-2.json --out changes
  panelwright compare quay.json - --json < quay-2.json")]
    Compare {
        #[arg(help = "The design the case was built from: a file, a link in quotes, or - for standard input")]
        old: String,
        #[arg(help = "The design it is to become: a file, a link in quotes, or - for standard input")]
        new: String,
        /// Print the comparison as JSON
        #[arg(long)]
        json: bool,
        /// A folder for the pictures
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Replace pictures that are there already
        #[arg(long)]
        force: bool,
    },
    /// Print a design as a link
    ///
    /// The link holds the whole design; nothing is stored anywhere. Give the address of a page with --base to get a
    /// whole address.
    #[command(after_help = "\
Examples:
  panelwright link quay.json
  panelwright link quay.json --base https://example.org/case/
  panelwright open '#1AI3vAtI' | panelwright link -")]
    Link {
        #[arg(help = DESIGN)]
        design: String,
        /// Address that the fragment is put behind
        #[arg(long, value_name = "ADDRESS", default_value = "", hide_default_value = true)]
        base: String,
    },
    /// Give back the design that a link or a pack holds, and say whether the files of a pack belong together
    ///
    /// The design is printed as a design file: only what differs from the defaults is written. Of a pack, zip or
    /// folder, it is said which fingerprint its design has, which files bear another one or none, and whether another
    /// version of the program made it. Any other file of a pack tells the fingerprint it bears.
    ///
    /// Line breaks, quote marks and a full stop that came with a link are passed over. Quote the link: a shell takes #
    /// for the start of a remark.
    #[command(after_help = "\
Exit codes: 0 done; 1 files of the pack belong to another design; 2 the input is wrong.

Examples:
  panelwright open '#1AI3vAtI'
  panelwright open 'https://example.org/case/#1AI3vAtI' > quay.json
  panelwright open - < mail.txt
  panelwright open quay.zip > quay.json
  panelwright open quay.zip --json
  panelwright open quay/templates.pdf")]
    Open {
        /// A link in quotes, a pack (zip or folder), a file of a pack, or - for standard input
        given: String,
        /// Print what was found as JSON, the design in it
        #[arg(long)]
        json: bool,
    },
    /// Say whether prints and files belong to a design, by the fingerprints they bear
    ///
    /// Each PRINT is a fingerprint as read from paper (capitals, spaces and hyphens do not matter), or a file. When
    /// DESIGN is a pack, prints of the version that made it are known, too.
    #[command(after_help = "\
Exit codes: 0 all belong; 1 some do not; 2 the input is wrong.

Examples:
  panelwright check-prints quay.json 7K3MWQ2H
  panelwright check-prints quay.zip 7k3m-wq2h old/templates.pdf old/cut/left.dxf")]
    CheckPrints {
        #[arg(help = DESIGN)]
        design: String,
        /// Fingerprints, or files that bear one
        #[arg(value_name = "PRINT", required = true)]
        prints: Vec<String>,
        /// Print the answers as JSON
        #[arg(long)]
        json: bool,
    },
    /// Lay several designs on one stack of sheets: how many sheets so many kits take, or how many kits the sheets give
    ///
    /// Each KIT is a DESIGN, after it what is wanted of it: `quay.json:3` three of it, `quay.json:sleeve` only its
    /// sleeve, `quay.json:sleeve:2` two of that. Without --most the counts are what is wanted altogether; with --most
    /// they are what one round holds, and as many whole rounds as the sheets give are laid.
    ///
    /// Designs of another material or measured thickness are cut from a stack of their own. Without --sheet each stack
    /// has the sheets that its first design names.
    #[command(after_help = "\
Examples:
  panelwright kits quay.json:10
  panelwright kits quay.json:2 dinghy.json --sheet 1220x610:5 --most
  panelwright kits quay.json oak.json:sleeve --sheet 1220x610@fibreboard --sheet 800x600:4@plywood --out kits")]
    Kits {
        /// Designs with counts
        #[arg(value_name = "KIT", required = true)]
        kits: Vec<String>,
        /// Sheets at hand: WIDTHxHEIGHT in mm, then :COUNT when there are only so many, then @MATERIAL when only for it
        #[arg(long, value_name = "SHEET")]
        sheet: Vec<String>,
        /// Find the most whole rounds from the sheets
        #[arg(long)]
        most: bool,
        /// How long to search: steps for each stack, of about a tenth of a microsecond
        #[arg(long, value_name = "STEPS", default_value_t = 5_000_000)]
        steps: u64,
        /// Print the answer as JSON
        #[arg(long)]
        json: bool,
        /// A folder for pictures, cutting files or saw cuts, a PDF of all sheets and the answer
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Replace files that are there already
        #[arg(long)]
        force: bool,
    },
    /// List every choice: key, allowed values, default
    #[command(after_help = "\
Examples:
  panelwright choices
  panelwright choices | grep cooler
  panelwright choices --json")]
    Choices {
        /// Print everything known of each choice as JSON
        #[arg(long)]
        json: bool,
    },
    /// List every published size with its source
    #[command(after_help = "\
Examples:
  panelwright sources
  panelwright sources | grep 'from memory'
  panelwright sources --json")]
    Sources {
        /// Print the list as JSON
        #[arg(long)]
        json: bool,
    },
    /// Print build.json of seeded random designs, one a line, each with its seed and its design file
    ///
    /// For tests and trials: the same seeds give the same designs on every machine.
    #[command(hide = true)]
    Samples {
        /// The first seed
        #[arg(long, default_value_t = 0)]
        from: u64,
        /// How many
        #[arg(long, default_value_t = 10)]
        count: u64,
        /// Draw from the whole of every range instead of from what makers are likely to choose
        #[arg(long)]
        wild: bool,
    },
    /// Digests of everything some designs give, to hold against the same in the page
    #[command(hide = true)]
    Digests,
    /// Lay rectangles on sheets: a job as JSON a line on standard input, a plan as JSON a line out
    ///
    /// For tests and benches.
    #[command(hide = true)]
    Lay,
}
