//! Writing a pack to disk: all of it or nothing.
//!
//! Everything is written into a new folder first. When the pack's own folder does not exist yet, that folder becomes
//! it by one rename. When it exists, the files are moved in one by one; should one of the moves fail, those before
//! it are undone. What else lies in the folder stays.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use panelwright::documents::pack;

use crate::failure::Failure;
use crate::make::File;

/// Writes the files into the folder `out`.
///
/// Existing files are replaced with `force` only; otherwise the first one is reported and nothing is written.
pub fn write(out: &Path, files: &[File], force: bool) -> Result<(), Failure> {
    replace(out, files, &[], force)
}

/// Writes a whole pack into the folder `out`; with `force` in place of the pack that is there, if one is. What that has
/// and the new one has not goes: prints of two designs side by side would be taken for one. Gives the names of what went.
pub fn write_whole(out: &Path, files: &[File], force: bool) -> Result<Vec<String>, Failure> {
    let gone = if force { left_over(out, files)? } else { Vec::new() };
    replace(out, files, &gone, force)?;
    for name in &gone {
        // Fails where the folder still holds something, as it should.
        let _ = fs::remove_dir(parent(&out.join(name)));
    }
    Ok(gone)
}

/// Files of an earlier pack that the new one has not: named as files of a pack are, and with a fingerprint in them. All
/// others are somebody else's.
fn left_over(out: &Path, files: &[File]) -> Result<Vec<String>, Failure> {
    let mut found = Vec::new();
    for folder in pack::FOLDERS {
        let Ok(entries) = fs::read_dir(out.join(folder)) else { continue };
        for entry in entries.flatten() {
            let name = format!("{folder}/{}", entry.file_name().to_string_lossy());
            let stays = files.iter().any(|(other, _)| *other == name);
            let plain = entry.file_type().is_ok_and(|kind| kind.is_file());
            if stays || !plain || !pack::is_pack_name(&name) {
                continue;
            }
            let bytes = fs::read(entry.path())
                .map_err(|error| Failure::Read { place: entry.path().display().to_string(), error })?;
            if !pack::stamp(&name, &bytes).fingerprints.is_empty() {
                found.push(name);
            }
        }
    }
    found.sort();
    Ok(found)
}

fn replace(out: &Path, files: &[File], gone: &[String], force: bool) -> Result<(), Failure> {
    if out.exists() && !out.is_dir() {
        return Err(Failure::InTheWay { place: out.to_owned() });
    }
    if !force && let Some((name, _)) = files.iter().find(|(name, _)| out.join(name).symlink_metadata().is_ok()) {
        return Err(Failure::Exists { place: out.join(name) });
    }
    if out.is_dir() {
        let new = Temporary::within(out, "new")?;
        let old = Temporary::within(out, "old")?;
        fill(&new.0, files)?;
        swap(out, &new.0, old, files, gone)
    } else {
        let parents = Parents::of(out)?;
        let name = out.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let new = Temporary::within(parent(out), &name)?;
        fill(&new.0, files)?;
        fs::rename(&new.0, out).map_err(|error| failure(out, error))?;
        parents.keep();
        Ok(())
    }
}

fn failure(place: &Path, error: io::Error) -> Failure {
    Failure::Write { place: place.to_owned(), error }
}

/// The folder that holds `out`; a bare name lies in the current one.
fn parent(out: &Path) -> &Path {
    out.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

fn fill(folder: &Path, files: &[File]) -> Result<(), Failure> {
    for (name, bytes) in files {
        let path = folder.join(name);
        fs::create_dir_all(parent(&path))
            .and_then(|()| fs::write(&path, bytes))
            .map_err(|error| failure(&path, error))?;
    }
    Ok(())
}

/// Moves the new files in, and out what they replace and what is to be gone; undoes it all when one move fails.
fn swap(out: &Path, new: &Path, old: Temporary, files: &[File], gone: &[String]) -> Result<(), Failure> {
    let mut done = Vec::new();
    let step = |from: &Path, to: &Path, done: &mut Vec<Step>| {
        for folder in missing(parent(to)) {
            fs::create_dir(&folder)?;
            done.push(Step::Created(folder));
        }
        fs::rename(from, to)?;
        done.push(Step::Moved(from.to_owned(), to.to_owned()));
        io::Result::Ok(())
    };
    let mut moved = || -> Result<(), Failure> {
        for name in gone {
            let target = out.join(name);
            step(&target, &old.0.join(name), &mut done).map_err(|error| failure(&target, error))?;
        }
        for (name, _) in files {
            let target = out.join(name);
            if target.is_dir() {
                return Err(Failure::InTheWay { place: target });
            }
            if target.symlink_metadata().is_ok() {
                step(&target, &old.0.join(name), &mut done).map_err(|error| failure(&target, error))?;
            }
            step(&new.join(name), &target, &mut done).map_err(|error| failure(&target, error))?;
        }
        Ok(())
    };
    let result = moved();
    if result.is_err() {
        let mut undone = true;
        for step in done.iter().rev() {
            undone &= match step {
                Step::Created(folder) => fs::remove_dir(folder).is_ok(),
                Step::Moved(from, to) => fs::rename(to, from).is_ok(),
            };
        }
        if !undone {
            // It still holds files of the maker.
            std::mem::forget(old);
        }
    }
    result
}

/// What was done, so that it can be undone.
enum Step {
    Created(PathBuf),
    Moved(PathBuf, PathBuf),
}

/// The folders of a path that do not exist yet, outermost first.
fn missing(folder: &Path) -> Vec<PathBuf> {
    let mut missing: Vec<PathBuf> = folder
        .ancestors()
        .take_while(|folder| !folder.as_os_str().is_empty() && !folder.exists())
        .map(Path::to_owned)
        .collect();
    missing.reverse();
    missing
}

/// A folder that is gone when this is dropped, unless it was renamed.
struct Temporary(PathBuf);

impl Temporary {
    fn within(folder: &Path, name: &str) -> Result<Self, Failure> {
        // The number of the process keeps two runs apart.
        let path = folder.join(format!(".{name}.panelwright-{}", std::process::id()));
        fs::create_dir(&path).map_err(|error| failure(folder, error))?;
        Ok(Self(path))
    }
}

impl Drop for Temporary {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// Folders made on the way to the pack, removed again unless the pack got there.
struct Parents(Vec<PathBuf>);

impl Parents {
    fn of(out: &Path) -> Result<Self, Failure> {
        let mut made = Self(Vec::new());
        for folder in missing(parent(out)) {
            fs::create_dir(&folder).map_err(|error| failure(&folder, error))?;
            made.0.push(folder);
        }
        Ok(made)
    }

    fn keep(mut self) {
        self.0.clear();
    }
}

impl Drop for Parents {
    fn drop(&mut self) {
        for folder in self.0.iter().rev() {
            let _ = fs::remove_dir(folder);
        }
    }
}
