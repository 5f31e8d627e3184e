//! `seamwise begin`: writes a small guidebook, to edit from there.
//!
//! It writes into a new or an empty folder only, and takes everything back when it cannot write all of it.

use std::ffi::OsString;
use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::current_folder;
use super::failure::Failure;
use super::layout::quoted;
use super::terminal::Terminal;

/// Path, text, and what it is, for the list that is printed.
const FILES: &[(&str, &str, &str)] = &[
    ("guidebook.yaml", include_str!("guidebook.yaml"), "title, units, limits"),
    ("cuts/rabbit.yaml", include_str!("rabbit-cuts.yaml"), "what the pieces are called and weigh"),
    ("rabbit/legs-and-saddle.yaml", include_str!("rabbit-procedure.yaml"), "one procedure, with comments"),
];

/// Writes the guidebook, and prints what to type next.
///
/// # Errors
/// When the folder is not empty, or cannot be written.
pub(super) fn run(folder: &Path, terminal: Terminal) -> Result<u8, Failure> {
    write(folder)?;
    let columns = FILES.iter().map(|(path, _, _)| path.len()).max().unwrap_or(0);
    let mut text = format!("Wrote a guidebook into {}:\n", folder.display());
    for (path, _, about) in FILES {
        text.push_str(&format!("  {path:<columns$}  {about}\n"));
    }
    let program = program(std::env::args_os().next(), &current_folder()?);
    let folder = spoken(folder);
    text.push_str(&format!("\nNext:\n  {program} inspect{folder}\n  {program} publish{folder}\n"));
    terminal.print(&text)?;
    Ok(0)
}

fn write(folder: &Path) -> Result<(), Failure> {
    let trouble = |path: &Path, error: &io::Error| Failure::of_disk("write the guidebook", path, error);
    match fs::read_dir(folder) {
        Ok(mut entries) => {
            if let Some(entry) = entries.next() {
                let first = entry.map(|entry| entry.file_name()).unwrap_or_default();
                return Err(Failure::new(format!("this folder is not empty: it holds `{}`", first.display()))
                    .at(folder)
                    .help("name a new or an empty folder"));
            }
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => {
            return Err(Failure::new("this is a file, or lies in one").at(folder).help("name a new or an empty folder"));
        }
        Err(error) => return Err(trouble(folder, &error)),
    }
    let mut made = Vec::new();
    for (path, text, _) in FILES {
        let path = folder.join(path);
        if let Err(error) = write_file(&path, text, &mut made) {
            take_back(&made);
            return Err(trouble(&path, &error));
        }
    }
    Ok(())
}

/// Writes one file, and notes what was made, parents first.
fn write_file(path: &Path, text: &str, made: &mut Vec<PathBuf>) -> io::Result<()> {
    let missing: Vec<&Path> = path.ancestors().skip(1).take_while(|folder| !folder.as_os_str().is_empty() && !folder.exists()).collect();
    for folder in missing.into_iter().rev() {
        fs::create_dir(folder)?;
        made.push(folder.to_path_buf());
    }
    let mut file = OpenOptions::new().write(true).create_new(true).open(path)?;
    made.push(path.to_path_buf());
    file.write_all(text.as_bytes())
}

fn take_back(made: &[PathBuf]) {
    for path in made.iter().rev() {
        // A folder goes only when nothing else is in it.
        drop(if path.is_dir() { fs::remove_dir(path) } else { fs::remove_file(path) });
    }
}

/// The program as it can be typed here and inside the new guidebook: its name when the shell finds it by that, else its
/// whole path.
fn program(typed: Option<OsString>, current: &Path) -> String {
    let typed = typed.map_or_else(|| PathBuf::from("seamwise"), PathBuf::from);
    let Some(name) = typed.file_name() else { return "seamwise".to_owned() };
    let whole = current.join(&typed);
    let same = |found: &Path| matches!((found.canonicalize(), whole.canonicalize()), (Ok(found), Ok(whole)) if found == whole);
    let by_name = typed.components().count() == 1;
    let folders = std::env::var_os("PATH").unwrap_or_default();
    if by_name || std::env::split_paths(&folders).any(|folder| same(&folder.join(name))) {
        return quoted(&name.display().to_string());
    }
    let whole = whole.components().collect::<PathBuf>();
    quoted(&whole.display().to_string())
}

/// The folder as an argument, with a space before it; nothing for the folder in which one stands.
fn spoken(folder: &Path) -> String {
    let short: PathBuf = folder.components().filter(|part| *part != std::path::Component::CurDir).collect();
    let text = short.display().to_string();
    match text.chars().next() {
        None => String::new(),
        Some('-') => format!(" {}", quoted(&format!("./{text}"))),
        Some(_) => format!(" {}", quoted(&text)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{Entry, Files};

    #[test]
    fn the_guidebook_passes_inspection_without_advice() {
        let files: Files = FILES.iter().map(|(path, text, _)| ((*path).to_owned(), Entry::File(text.as_bytes().to_vec()))).collect();
        let inspection = crate::inspect(files);
        let told = crate::finding::text::render(
            &inspection.findings,
            inspection.accepted.len(),
            &inspection.sources,
            crate::finding::text::Style::default(),
        );
        assert!(inspection.findings.is_empty(), "{told}");
        let figures = inspection.verdict.analysis().procedure("rabbit/legs-and-saddle").unwrap();
        let finals: Vec<_> =
            figures.shares.as_ref().unwrap().pieces.iter().filter(|piece| piece.is_final).map(|piece| piece.piece.as_str()).collect();
        assert_eq!(finals, ["rabbit-hind-legs", "rabbit-forelegs", "rabbit-saddle", "rabbit-rib-cage"]);
    }

    #[test]
    fn its_lines_are_short_and_it_shows_each_idea() {
        for (path, text, _) in FILES {
            assert!(text.lines().all(|line| line.chars().count() <= 120), "{path}");
        }
        for word in ["take:", "give:", "rest", "loss:", "cautions:", "counts:"] {
            assert!(FILES[2].1.contains(word), "{word}");
        }
    }

    #[test]
    fn writes_into_new_and_empty_folders_only() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        write(&root.join("shop/new")).unwrap();
        fs::create_dir(root.join("empty")).unwrap();
        write(&root.join("empty")).unwrap();
        assert!(root.join("empty/rabbit/legs-and-saddle.yaml").is_file());
        let told = write(&root.join("shop")).unwrap_err().to_string();
        assert!(told.starts_with("error: this folder is not empty: it holds `new`\n"), "{told}");
        let told = write(&root.join("empty/guidebook.yaml")).unwrap_err().to_string();
        assert!(told.contains("this is a file"), "{told}");
        let told = write(&root.join("empty/guidebook.yaml/deeper")).unwrap_err().to_string();
        assert!(told.contains("this is a file"), "{told}");
    }

    #[test]
    fn takes_everything_back_when_it_cannot_write_all() {
        let home = tempfile::tempdir().unwrap();
        let mut made = Vec::new();
        write_file(&home.path().join("a/b/one.yaml"), "x", &mut made).unwrap();
        assert!(write_file(&home.path().join("a/b/one.yaml/two.yaml"), "x", &mut made).is_err());
        take_back(&made);
        assert!(!home.path().join("a").exists());
    }

    #[test]
    fn names_program_and_folder_so_that_they_can_be_typed() {
        assert_eq!(program(Some("seamwise".into()), Path::new("/shop")), "seamwise");
        assert_eq!(program(Some("target/debug/seamwise".into()), Path::new("/my shop")), "'/my shop/target/debug/seamwise'");
        assert_eq!(program(None, Path::new("/shop")), "seamwise");
        assert_eq!(spoken(Path::new(".")), "");
        assert_eq!(spoken(Path::new("./course/")), " course");
        assert_eq!(spoken(Path::new("my course")), " 'my course'");
        assert_eq!(spoken(Path::new("-x")), " ./-x");
    }
}
