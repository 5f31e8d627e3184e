//! Where the site goes: the real folder behind what was typed, and the folders that it must not be.
//!
//! It only looks. Whether files in the folder stand in the way is for `survey.rs`.

use std::ffi::OsString;
use std::path::{Component, Path, PathBuf};

use super::list::holds_site;
use crate::cli::failure::Failure;

/// The folder of the site. It may be missing yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::cli) struct Target {
    /// As it was typed, for messages.
    pub(super) shown: PathBuf,
    /// The real folder, links resolved.
    pub(super) real: PathBuf,
    /// The folder that it lies in.
    pub(super) parent: PathBuf,
    /// Its name there.
    pub(super) name: OsString,
}

impl Target {
    /// The target meant by `to`, seen from `current`, for the guidebook in the folder `guidebook`.
    ///
    /// # Errors
    /// When nothing can or should be published there.
    pub(in crate::cli) fn resolve(to: &Path, current: &Path, guidebook: &Path) -> Result<Self, Failure> {
        let real = real_path(to, current)?;
        let (Some(parent), Some(name)) = (real.parent(), real.file_name()) else {
            return Err(Failure::new("the site cannot be the root of a disk").at(to).help("name a folder for it with --to"));
        };
        let unreadable = |error| Failure::of_disk("find the guidebook's folder", guidebook, &error);
        let guidebook = current.join(guidebook).canonicalize().map_err(unreadable)?;
        let target = Self { shown: to.to_path_buf(), real: real.clone(), parent: parent.to_path_buf(), name: name.to_os_string() };
        target.keeps_clear_of(&guidebook, current)?;
        Ok(target)
    }

    fn keeps_clear_of(&self, guidebook: &Path, current: &Path) -> Result<(), Failure> {
        let elsewhere = "name another folder with --to; a new one is made";
        if self.real == guidebook {
            return Err(Failure::new("this folder is the guidebook itself").at(&self.shown).help(elsewhere));
        }
        if guidebook.starts_with(&self.real) {
            return Err(Failure::new("the guidebook lies inside this folder").at(&self.shown).help(elsewhere));
        }
        if self.real.starts_with(guidebook) && holds_sources(&self.real) {
            return Err(Failure::new("this folder holds files of the guidebook").at(&self.shown).help(elsewhere));
        }
        let standing = current.canonicalize().unwrap_or_else(|_| current.to_path_buf());
        if standing.starts_with(&self.real) {
            return Err(Failure::new("you stand inside this folder, and publishing puts a new one in its place")
                .at(&self.shown)
                .help("run the command from a folder outside it"));
        }
        Ok(())
    }
}

/// Inside a guidebook only a site of ours and an empty folder are free of its files.
fn holds_sources(folder: &Path) -> bool {
    let empty = std::fs::read_dir(folder).map_or(true, |mut entries| entries.next().is_none());
    !empty && !holds_site(folder)
}

/// The path with links resolved as far as it exists, and the rest of it as it stands.
fn real_path(to: &Path, current: &Path) -> Result<PathBuf, Failure> {
    if to.as_os_str().is_empty() {
        return Err(Failure::new("no folder is named for the site").help("name one with --to"));
    }
    let whole = current.join(to);
    let existing = whole.ancestors().find(|path| path.symlink_metadata().is_ok()).unwrap_or(Path::new("/"));
    // As it was typed, where it was typed from here.
    let shown = existing.strip_prefix(current).unwrap_or(existing);
    let real = existing
        .canonicalize()
        .map_err(|_| Failure::new("this is a link that leads nowhere").at(shown).help("mend the link, or name another folder with --to"))?;
    if !real.is_dir() {
        return Err(Failure::new("this is a file, and the site needs a folder").at(shown).help("name another folder with --to"));
    }
    let missing = whole.strip_prefix(existing).unwrap_or(Path::new(""));
    if missing.components().any(|part| part == Component::ParentDir) {
        return Err(Failure::new("a folder before `..` is not there").at(to).help("write the path without `..`"));
    }
    // Joining nothing would add a final slash.
    Ok(if missing.as_os_str().is_empty() { real } else { real.join(missing) })
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    /// A shop with a guidebook, a site inside it and one beside it.
    fn shop() -> (tempfile::TempDir, PathBuf) {
        let home = tempfile::tempdir().unwrap();
        let root = home.path().canonicalize().unwrap();
        for folder in ["shop/procedures/pork", "shop/procedures/site", "shop/procedures/empty", "shop/public", "other"] {
            fs::create_dir_all(root.join(folder)).unwrap();
        }
        for file in ["shop/procedures/guidebook.yaml", "shop/procedures/pork/loin.yaml", "shop/note.txt"] {
            fs::write(root.join(file), "x").unwrap();
        }
        let list = crate::cli::write::list::List::default().to_bytes();
        fs::write(root.join("shop/procedures/site/seamwise-files.txt"), list).unwrap();
        (home, root.join("shop"))
    }

    #[test]
    fn takes_new_and_free_folders() {
        let (_home, shop) = shop();
        let real = |to: &str| Target::resolve(Path::new(to), &shop, Path::new("procedures")).map(|target| target.real);
        assert_eq!(real("site").unwrap(), shop.join("site"));
        assert_eq!(real("a/b/c/").unwrap(), shop.join("a/b/c"));
        assert_eq!(real("./public/.").unwrap(), shop.join("public"));
        assert_eq!(real("../other").unwrap(), shop.parent().unwrap().join("other"));
        assert_eq!(real("procedures/site").unwrap(), shop.join("procedures/site"));
        assert_eq!(real("procedures/empty").unwrap(), shop.join("procedures/empty"));
        assert_eq!(real("procedures/new").unwrap(), shop.join("procedures/new"));
    }

    #[test]
    fn refuses_the_guidebook_what_holds_it_and_its_files() {
        let (_home, shop) = shop();
        let told = |to: &str| Target::resolve(Path::new(to), &shop, Path::new("procedures")).unwrap_err().to_string();
        assert!(told("procedures").contains("is the guidebook itself"));
        assert!(told("procedures/pork").contains("holds files of the guidebook"));
        assert!(told("procedures/pork/../pork").contains("holds files of the guidebook"));
        assert!(told(".").contains("the guidebook lies inside"));
        assert!(told("..").contains("the guidebook lies inside"));
        assert!(told("/").contains("root of a disk"), "{}", told("/"));
        assert!(told("note.txt").contains("this is a file"));
        assert!(told("note.txt/site").contains("this is a file"));
        assert!(told("missing/../site").contains("before `..`"));
        assert!(told("").contains("no folder is named"));
    }

    #[test]
    fn refuses_the_folder_that_one_stands_in() {
        let (_home, shop) = shop();
        let public = shop.join("public");
        let told = Target::resolve(Path::new("."), &public, Path::new("../procedures")).unwrap_err().to_string();
        assert!(told.contains("you stand inside"), "{told}");
    }

    #[cfg(unix)]
    #[test]
    fn resolves_links() {
        use std::os::unix::fs::symlink;
        let (_home, shop) = shop();
        symlink("public", shop.join("live")).unwrap();
        symlink("gone", shop.join("dead")).unwrap();
        symlink("procedures/pork", shop.join("sly")).unwrap();
        let real = |to: &str| Target::resolve(Path::new(to), &shop, Path::new("procedures"));
        assert_eq!(real("live").unwrap().real, shop.join("public"));
        assert!(real("dead").unwrap_err().to_string().contains("leads nowhere"));
        assert!(real("sly").unwrap_err().to_string().contains("files of the guidebook"));
    }
}
