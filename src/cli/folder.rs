//! Which folder is the guidebook: the one that was named, or the one in which the person stands.
//!
//! It looks for the file `guidebook.yaml` only; what stands in it is for the reader.

use std::path::{Component, Path, PathBuf};

use super::failure::Failure;

/// The file that makes a folder a guidebook.
const GUIDEBOOK_FILE: &str = "guidebook.yaml";

/// The folder below the current one that is tried last.
const USUAL_FOLDER: &str = "procedures";

/// Finds the guidebook's folder: `named`, else the one at or above `current` that holds `guidebook.yaml`, else
/// `procedures` in `current`. The answer is as short as what the person would type. Whoever stands inside a guidebook may
/// name it as from outside.
///
/// # Errors
/// When there is none; the failure names what was looked for.
pub(super) fn find(named: Option<&Path>, current: &Path) -> Result<PathBuf, Failure> {
    match named {
        Some(folder) => check_named(folder, current),
        None => find_around(current),
    }
}

fn check_named(folder: &Path, current: &Path) -> Result<PathBuf, Failure> {
    let whole = current.join(folder);
    let plain: PathBuf = folder.components().filter(|part| *part != Component::CurDir).collect();
    if !whole.exists()
        && let Some(steps_up) = current.ancestors().position(|above| above.ends_with(&plain) && holds_guidebook(above))
    {
        return Ok(upward(steps_up));
    }
    let facts = std::fs::metadata(&whole).map_err(|error| Failure::of_disk("read the guidebook's folder", folder, &error))?;
    if !facts.is_dir() {
        let failure = Failure::new("this is a file, and a guidebook is a folder").at(folder);
        return Err(match holder(&whole) {
            Some(_) => failure.help("leave DIR out to take the guidebook that this file lies in"),
            None => failure.help(format!("name the folder that holds {GUIDEBOOK_FILE}")),
        });
    }
    if holds_guidebook(&whole) {
        return Ok(folder.to_path_buf());
    }
    let failure = Failure::new(format!("this folder holds no {GUIDEBOOK_FILE}, so it is no guidebook")).at(folder);
    Err(match holder(&whole) {
        Some(above) => failure.help(format!("name the guidebook that this folder lies in: {}", above.display())),
        None if holds_guidebook(&whole.join(USUAL_FOLDER)) => {
            failure.help(format!("name the guidebook inside it: {}", folder.join(USUAL_FOLDER).display()))
        }
        None => failure.help(format!("name the folder that holds {GUIDEBOOK_FILE}, or start a guidebook with `seamwise begin`")),
    })
}

fn find_around(current: &Path) -> Result<PathBuf, Failure> {
    for (steps_up, folder) in current.ancestors().enumerate() {
        if holds_guidebook(folder) {
            return Ok(upward(steps_up));
        }
    }
    let usual = PathBuf::from(USUAL_FOLDER);
    if holds_guidebook(&current.join(&usual)) {
        return Ok(usual);
    }
    Err(Failure::new(format!(
        "no guidebook here: no {GUIDEBOOK_FILE} in this folder, in one above it, or in {USUAL_FOLDER}{}",
        std::path::MAIN_SEPARATOR
    ))
    .at(current)
    .help("name the guidebook's folder, or start one with `seamwise begin`"))
}

/// The folder so many steps above the current one.
fn upward(steps: usize) -> PathBuf {
    if steps == 0 { PathBuf::from(".") } else { std::iter::repeat_n("..", steps).collect() }
}

/// The nearest folder above `path` that holds a guidebook.
fn holder(path: &Path) -> Option<PathBuf> {
    let whole = path.canonicalize().ok()?;
    whole.ancestors().skip(1).find(|folder| holds_guidebook(folder)).map(Path::to_path_buf)
}

/// True also when the file is there but cannot be read: that is a finding, and not for this file to judge.
fn holds_guidebook(folder: &Path) -> bool {
    std::fs::symlink_metadata(folder.join(GUIDEBOOK_FILE)).is_ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn looks_here_then_above_then_in_procedures() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        std::fs::create_dir_all(root.join("shop/procedures/pork")).unwrap();
        std::fs::write(root.join("shop/procedures/guidebook.yaml"), "title: Shop").unwrap();

        assert_eq!(find(None, &root.join("shop/procedures")).unwrap(), Path::new("."));
        assert_eq!(find(None, &root.join("shop/procedures/pork")).unwrap(), Path::new(".."));
        assert_eq!(find(None, &root.join("shop")).unwrap(), Path::new("procedures"));
        assert_eq!(find(Some(Path::new("shop/procedures")), root).unwrap(), Path::new("shop/procedures"));
    }

    #[test]
    fn a_guidebook_can_be_named_from_inside_as_from_outside() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        std::fs::create_dir_all(root.join("shop/procedures/pork")).unwrap();
        std::fs::write(root.join("shop/procedures/guidebook.yaml"), "title: Shop").unwrap();
        let found = |named: &str, current: &str| find(Some(Path::new(named)), &root.join(current));
        assert_eq!(found("procedures", "shop/procedures").unwrap(), Path::new("."));
        assert_eq!(found("./procedures/", "shop/procedures").unwrap(), Path::new("."));
        assert_eq!(found("shop/procedures", "shop/procedures/pork").unwrap(), Path::new(".."));
        assert!(found("shop", "shop/procedures").is_err());
        assert!(found("edures", "shop/procedures").is_err());
    }

    #[test]
    fn says_what_it_looked_for_and_where_a_guidebook_is() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        std::fs::create_dir_all(root.join("shop/procedures/pork")).unwrap();
        std::fs::write(root.join("shop/procedures/guidebook.yaml"), "title: Shop").unwrap();
        let told = |named: Option<&str>| find(named.map(Path::new), root).unwrap_err().to_string();

        assert!(told(None).contains("no guidebook.yaml in this folder, in one above it, or in procedures/"), "{}", told(None));
        assert!(told(Some("shop")).ends_with("name the guidebook inside it: shop/procedures"), "{}", told(Some("shop")));
        assert!(told(Some("shop/procedures/pork")).contains("name the guidebook that this folder lies in: "));
        assert!(told(Some("nowhere")).contains("it is not there"), "{}", told(Some("nowhere")));
        assert!(told(Some("shop/procedures/guidebook.yaml")).contains("this is a file"));
    }
}
