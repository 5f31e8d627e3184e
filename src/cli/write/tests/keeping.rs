//! What is not ours stays: files, folders, links, and whatever is put there at the last moment.

use super::faulty::{FaultyDisk, Trouble};
use super::*;

/// Puts things of others into the site folder.
fn furnish(home: &Home) -> Vec<(&'static str, &'static str)> {
    use std::os::unix::fs::PermissionsExt;
    home.write("site/CNAME", "guides.example");
    home.write("site/.git/HEAD", "ref: main");
    home.write("site/.git/objects/ab/cd", "object");
    home.write("site/pork/loin/my-notes.txt", "mine");
    fs::create_dir_all(home.site().join("empty/inner")).unwrap();
    std::os::unix::fs::symlink("nowhere", home.site().join("latest")).unwrap();
    std::os::unix::fs::symlink("/", home.site().join("pork/root")).unwrap();
    fs::set_permissions(home.site().join(".git/objects/ab/cd"), fs::Permissions::from_mode(0o444)).unwrap();
    fs::set_permissions(home.site().join(".git/objects"), fs::Permissions::from_mode(0o500)).unwrap();
    vec![
        ("CNAME", "guides.example"),
        (".git/HEAD", "ref: main"),
        (".git/objects/ab/cd", "object"),
        ("pork/loin/my-notes.txt", "mine"),
        ("empty/inner", "dir"),
        ("latest", "link -> nowhere"),
        ("pork/root", "link -> /"),
    ]
}

/// The part of `touched` that tells of files of others, and of folders that only they use.
fn untouched_part(home: &Home) -> BTreeMap<String, String> {
    let ours = |path: &str| path.is_empty() || path == "pork" || path == "pork/loin";
    let site = site();
    touched(&home.site())
        .into_iter()
        .filter(|(path, _)| !site.0.contains_key(path) && path != crate::cli::write::list::LIST_FILE && !ours(path))
        .filter(|(path, _)| path != "look" && path != "pork/side")
        .map(|(path, facts)| {
            // A folder is a new one with the same permissions and time; everything else is the very same.
            let facts = if facts.ends_with(" dir") { facts.split_once(' ').unwrap().1.to_owned() } else { facts };
            (path, facts)
        })
        .collect()
}

#[test]
fn files_folders_and_links_of_others_are_carried_along() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let others = furnish(&home);
    let before = untouched_part(&home);
    assert_eq!(before.len(), 11, "{before:#?}");
    let later = site().with("index.html", "home 2").without("pork/side/index.html");
    home.publish(&later).unwrap();
    assert_eq!(content(&home.site()), expected(&later, &others));
    assert_eq!(untouched_part(&home), before);
    assert_eq!(home.names(), ["book", "site"]);
}

#[test]
fn where_files_have_one_name_only_they_are_copied_with_their_times() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let others = furnish(&home);
    let times = |home: &Home| {
        walk(&home.site(), &|_, metadata| format!("{:o} {} {}", metadata.mode(), metadata.mtime(), metadata.mtime_nsec()))
            .into_iter()
            .filter(|(path, _)| [".git/HEAD", ".git/objects/ab/cd", "CNAME", "pork/loin/index.html", "empty"].contains(&path.as_str()))
            .collect::<Vec<_>>()
    };
    let before = times(&home);
    let later = site().with("index.html", "home 2");
    let disk = FaultyDisk { links: false, ..FaultyDisk::new(Trouble::None) };
    home.publish_on(&disk, &later).unwrap();
    assert_eq!(content(&home.site()), expected(&later, &others));
    assert_eq!(times(&home), before);
    assert_eq!(home.names(), ["book", "site"]);
}

#[test]
fn a_folder_of_others_without_a_list_is_used_when_nothing_is_in_the_way() {
    let home = Home::new();
    fs::create_dir(home.site()).unwrap();
    let others = furnish(&home);
    home.publish(&site()).unwrap();
    assert_eq!(content(&home.site()), expected(&site(), &others));
}

#[test]
fn what_is_put_there_at_the_last_moment_is_not_lost() {
    for exchanges in [true, false] {
        let home = Home::new();
        home.publish(&site()).unwrap();
        let late = home.site().join("new/late.txt");
        let put = move || {
            fs::create_dir_all(late.parent().unwrap()).unwrap();
            fs::write(&late, "late").unwrap();
        };
        let disk = FaultyDisk { before_exchange: Some(Box::new(put)), exchanges, ..FaultyDisk::new(Trouble::None) };
        let later = site().with("index.html", "home 2");
        home.publish_on(&disk, &later).unwrap();
        assert_eq!(content(&home.site()), expected(&later, &[("new/late.txt", "late")]));
        assert_eq!(home.names(), ["book", "site"]);
    }
}

#[test]
fn a_file_of_others_that_cannot_be_put_back_stays_where_it_lies_and_is_told() {
    let home = Home::new();
    home.write("site/CNAME", "one");
    home.publish(&site()).unwrap();
    let replaced = home.site().join("CNAME");
    // As an editor saves: a new file takes the name of the old one, after that was carried over.
    let save = move || {
        fs::write(replaced.with_extension("new"), "two").unwrap();
        fs::rename(replaced.with_extension("new"), &replaced).unwrap();
    };
    let disk = FaultyDisk { before_exchange: Some(Box::new(save)), ..FaultyDisk::new(Trouble::None) };
    let later = site().with("index.html", "home 2");
    let outcome = home.publish_on(&disk, &later).unwrap();
    let stranded = home.root.join(".site.staging-seamwise/kept/CNAME");
    assert_eq!(outcome.stranded, std::slice::from_ref(&stranded));
    assert_eq!(fs::read_to_string(&stranded).unwrap(), "two");
    assert_eq!(content(&home.site()), expected(&later, &[("CNAME", "one")]));
    // It is told again until somebody has looked at it; then the folder goes away. Meanwhile publishing works.
    let outcome = home.publish(&site().with("index.html", "home 3")).unwrap();
    assert_eq!(outcome.stranded, [stranded]);
    fs::write(home.site().join("CNAME"), "two").unwrap();
    assert_eq!(home.publish(&site()).unwrap().stranded, [""; 0].map(PathBuf::from));
    assert_eq!(home.names(), ["book", "site"]);
}
