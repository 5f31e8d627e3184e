//! Tests of the walk: what is read, what is left out, and what is told of.

use std::fs;
use std::path::Path;

use super::*;

fn write(root: &Path, path: &str, bytes: impl AsRef<[u8]>) {
    let whole = root.join(path);
    fs::create_dir_all(whole.parent().unwrap()).unwrap();
    fs::write(whole, bytes).unwrap();
}

fn paths(files: &Files) -> Vec<&str> {
    files.keys().map(String::as_str).collect()
}

#[test]
fn reads_files_in_order_and_leaves_out_hidden_ones_and_sites() {
    let home = tempfile::tempdir().unwrap();
    let root = home.path();
    write(root, "pork/loin.yaml", "title: Loin");
    write(root, "guidebook.yaml", "title: Shop");
    write(root, ".git/config", "x");
    write(root, "pork/.loin.yaml.swp", "x");
    write(root, "site/index.html", "x");
    write(root, "site/pork/loin/index.html", "x");
    let list = "# Files that seamwise published here, each with the BLAKE3 hash of its bytes; it replaces and removes no others.\n";
    write(root, "site/seamwise-files.txt", list);
    write(root, "beef/seamwise-files.txt", "somebody else's file of this name hides nothing");
    write(root, "beef/rump.yaml", "title: Rump");
    write(root, ".site.staging-seamwise/new/index.html", "x");
    let files = read(root).unwrap();
    assert_eq!(paths(&files), ["beef/rump.yaml", "beef/seamwise-files.txt", "guidebook.yaml", "pork/loin.yaml"]);
    assert_eq!(files["pork/loin.yaml"], Entry::File(b"title: Loin".to_vec()));
}

#[test]
fn a_folder_that_is_not_there_is_a_failure() {
    let home = tempfile::tempdir().unwrap();
    assert!(read(&home.path().join("nowhere")).unwrap_err().to_string().contains("it is not there"));
}

#[test]
fn large_files_are_not_read() {
    let home = tempfile::tempdir().unwrap();
    let root = home.path();
    write(root, "pork/long.yaml", vec![b'#'; 2 * 1024 * 1024 + 1]);
    write(root, "pork/full.yaml", vec![b'#'; 2 * 1024 * 1024]);
    fs::File::create(root.join("film.bin")).unwrap().set_len(MOST_BYTES + 1).unwrap();
    let files = read(root).unwrap();
    assert_eq!(files["pork/long.yaml"], Entry::TooLarge { bytes: 2 * 1024 * 1024 + 1 });
    assert!(matches!(&files["pork/full.yaml"], Entry::File(bytes) if bytes.len() == 2 * 1024 * 1024));
    assert_eq!(files["film.bin"], Entry::TooLarge { bytes: MOST_BYTES + 1 });
}

#[cfg(unix)]
mod links {
    use std::os::unix::ffi::OsStrExt;
    use std::os::unix::fs::symlink;

    use super::*;

    #[test]
    fn links_are_followed_inside_the_guidebook_only() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path().join("book");
        write(home.path(), "secret/key.txt", "secret");
        write(&root, "pork/loin.yaml", "title: Loin");
        symlink("loin.yaml", root.join("pork/again.yaml")).unwrap();
        symlink("../secret/key.txt", root.join("key.txt")).unwrap();
        symlink("../secret", root.join("folder")).unwrap();
        symlink("nowhere", root.join("dangling")).unwrap();
        let files = read(&root).unwrap();
        assert_eq!(paths(&files), ["dangling", "folder", "key.txt", "pork/again.yaml", "pork/loin.yaml"]);
        assert_eq!(files["pork/again.yaml"], Entry::File(b"title: Loin".to_vec()));
        assert_eq!(files["key.txt"], Entry::LinkOutside { target: "../secret/key.txt".into() });
        assert_eq!(files["folder"], Entry::LinkOutside { target: "../secret".into() });
        assert_eq!(files["dangling"], Entry::Unreadable { reason: "this link leads nowhere: nowhere".into() });
    }

    #[test]
    fn links_in_a_circle_end() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        for folder in ["a", "b", "c", "d"] {
            write(root, &format!("{folder}/{folder}.txt"), folder);
            for other in ["a", "b", "c", "d"] {
                symlink(format!("../{other}"), root.join(folder).join(format!("to-{other}"))).unwrap();
            }
        }
        symlink("self", root.join("self")).unwrap();
        let files = read(root).unwrap();
        let real = files.values().filter(|entry| matches!(entry, Entry::File(_))).count();
        assert!((4..=8).contains(&real), "{real} files read: {:?}", paths(&files));
        assert!(files.len() < 200, "{} entries", files.len());
        assert!(matches!(&files["self"], Entry::Unreadable { .. }));
        assert_eq!(files["a/to-a"], Entry::Unreadable { reason: "this link leads back to a folder that holds it".into() });
    }

    #[test]
    fn what_is_no_file_and_names_that_are_not_utf_8_are_told() {
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        let made = std::process::Command::new("mkfifo").arg(root.join("pipe")).status();
        fs::write(root.join(std::ffi::OsStr::from_bytes(b"p\xffrk.yaml")), "x").unwrap();
        let files = read(root).unwrap();
        if made.is_ok_and(|status| status.success()) {
            assert_eq!(files["pipe"], Entry::Unreadable { reason: "it is neither a file nor a folder".into() });
        }
        assert!(matches!(&files["p\u{fffd}rk.yaml"], Entry::Unreadable { reason } if reason.contains("not UTF-8")));
    }

    #[test]
    fn closed_files_and_folders_are_told() {
        use std::os::unix::fs::PermissionsExt;
        let home = tempfile::tempdir().unwrap();
        let root = home.path();
        write(root, "pork/loin.yaml", "x");
        write(root, "beef/rump.yaml", "x");
        fs::set_permissions(root.join("pork/loin.yaml"), fs::Permissions::from_mode(0o000)).unwrap();
        fs::set_permissions(root.join("beef"), fs::Permissions::from_mode(0o000)).unwrap();
        let files = read(root).unwrap();
        let open = fs::File::open(root.join("pork/loin.yaml")).is_ok();
        fs::set_permissions(root.join("beef"), fs::Permissions::from_mode(0o755)).unwrap();
        // Root may read everything, so there is nothing to tell.
        if !open {
            assert_eq!(files["pork/loin.yaml"], Entry::Unreadable { reason: "permission denied".into() });
            assert_eq!(files["beef"], Entry::Unreadable { reason: "permission denied".into() });
        }
    }
}
