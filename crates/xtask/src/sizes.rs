//! What a visitor loads: file by file, as it is and compressed in the two ways hosts compress, and what of it comes first.

use std::fmt::Write as _;
use std::fs;
use std::io::Write as _;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use flate2::{Compression, write::GzEncoder};

use crate::commands;
use crate::dist::{files_below, slashed};

/// What is loaded before the page works may weigh compressed, in bytes: the project's own limit.
const SIZE_BUDGET: usize = 350 * 1000;

/// What is loaded beside the page when it already stands: the second module, parts of the page that are not wanted at
/// once, letters that the page itself has not, and what only keeping the page on the device asks for.
const LATER: [&str; 8] = [
    "files.json",
    "fonts/LICENSE",
    "sw.js",
    "modules/later/",
    "modules/workshop/",
    "wasm/workshop",
    "fonts/panelwright-sans-regular-accented",
    "fonts/panelwright-sans-semibold-accented",
];

/// Gives the size of each file it is told, compressed by brotli at its best (quality 11).
const BROTLI: &str = "const z = require('node:zlib'), fs = require('node:fs');
for (const name of process.argv.slice(1)) console.log(z.brotliCompressSync(fs.readFileSync(name)).length);";

#[derive(Debug)]
struct Weighed {
    name: String,
    raw: usize,
    gzip: usize,
    brotli: Option<usize>,
}

impl Weighed {
    fn is_later(&self) -> bool {
        LATER.iter().any(|start| self.name.starts_with(start))
    }
}

/// The page, weighed.
#[derive(Debug)]
pub struct Sizes {
    files: Vec<Weighed>,
}

impl Sizes {
    /// Weighs the page.
    pub fn of(dist: &Path) -> Result<Self> {
        let names = files_below(dist)?;
        let brotli = brotli_sizes(dist, &names)?;
        let mut files = Vec::new();
        for (index, file) in names.iter().enumerate() {
            let bytes = fs::read(dist.join(file))?;
            let mut squeezed = GzEncoder::new(Vec::new(), Compression::best());
            squeezed.write_all(&bytes)?;
            files.push(Weighed {
                name: slashed(file),
                raw: bytes.len(),
                gzip: squeezed.finish()?.len(),
                brotli: brotli.get(index).copied(),
            });
        }
        Ok(Self { files })
    }

    /// Bytes as they are, by gzip -9 and by brotli -q 11 where it could be measured.
    fn sum(&self, of: impl Fn(&Weighed) -> bool) -> Weighed {
        let files = || self.files.iter().filter(|file| of(file));
        Weighed {
            name: String::new(),
            raw: files().map(|file| file.raw).sum(),
            gzip: files().map(|file| file.gzip).sum(),
            brotli: files().map(|file| file.brotli).sum(),
        }
    }

    /// Whether what comes first keeps to the limit, compressed as well as a host can; by gzip where brotli could not
    /// be measured.
    pub fn within(&self) -> bool {
        let first = self.sum(|file| !file.is_later());
        first.brotli.unwrap_or(first.gzip) <= SIZE_BUDGET
    }

    /// A table in kilobytes: what comes first, what comes later, and the sums.
    pub fn table(&self) -> String {
        let mut table = format!("{:<40} {:>9} {:>9} {:>10}\n", "loaded", "kB", "gzip -9", "brotli 11");
        for later in [false, true] {
            for file in self.files.iter().filter(|file| file.is_later() == later) {
                line(&mut table, &file.name, file);
            }
        }
        let first = self.sum(|file| !file.is_later());
        line(&mut table, "first, before the page works", &first);
        line(&mut table, "later, beside the page", &self.sum(Weighed::is_later));
        line(&mut table, "in all", &self.sum(|_| true));
        let way = if first.brotli.is_some() { "brotli" } else { "gzip, as there is no node to measure brotli" };
        let verdict = if self.within() { "within" } else { "OVER" };
        let _ = writeln!(table, "What comes first is {verdict} the {} kB it may weigh, by {way}.", SIZE_BUDGET / 1000);
        table
    }
}

fn line(table: &mut String, name: &str, sizes: &Weighed) {
    let kilobytes = |bytes: usize| format!("{:.1}", bytes as f64 / 1000.0);
    let brotli = sizes.brotli.map_or_else(|| "-".to_owned(), kilobytes);
    let _ = writeln!(table, "{name:<40} {:>9} {:>9} {brotli:>10}", kilobytes(sizes.raw), kilobytes(sizes.gzip));
}

/// The files' sizes by brotli, in their order; empty where there is no Node, which has it built in.
fn brotli_sizes(dist: &Path, names: &[std::path::PathBuf]) -> Result<Vec<usize>> {
    if commands::find(&["node"]).is_none() {
        return Ok(Vec::new());
    }
    let told = commands::output(Command::new("node").current_dir(dist).args(["-e", BROTLI, "--"]).args(names))?;
    let sizes: Vec<usize> = told.lines().filter_map(|line| line.parse().ok()).collect();
    (sizes.len() == names.len()).then_some(sizes).context("node did not weigh every file")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weighed(name: &str, gzip: usize, brotli: Option<usize>) -> Weighed {
        Weighed { name: name.to_owned(), raw: 3 * gzip, gzip, brotli }
    }

    #[test]
    fn only_what_comes_first_counts_and_the_table_says_all() {
        let later = weighed("wasm/workshop_bg.wasm", 900_000, Some(800_000));
        let sizes = Sizes { files: vec![weighed("wasm/panelwright_bg.wasm", 400_000, Some(350_000)), later] };
        assert!(sizes.within());
        let table = sizes.table();
        assert!(table.contains("1300.0") && table.contains("1150.0") && table.contains("within the 350 kB"), "{table}");
        let heavier = Sizes { files: vec![weighed("index.html", 400_000, Some(350_001))] };
        assert!(!heavier.within() && heavier.table().contains("OVER"));
    }

    #[test]
    fn without_brotli_gzip_is_what_counts() {
        let sizes = Sizes { files: vec![weighed("a.js", 350_001, None)] };
        assert!(!sizes.within());
        assert!(sizes.table().contains("by gzip"), "{}", sizes.table());
    }
}
