//! What a second publish writes, leaves and removes.

use super::*;

fn site_time(home: &Home, path: &str) -> (u64, i64, i64) {
    let metadata = fs::metadata(home.site().join(path)).unwrap();
    (metadata.ino(), metadata.mtime(), metadata.mtime_nsec())
}

#[test]
fn a_new_folder_is_made_with_all_above_it() {
    let home = Home::new();
    let target = home.target("deep/er/site");
    let outcome = crate::cli::write::publish(&site(), &target, &|| {}).unwrap();
    assert_eq!(content(&home.root.join("deep/er/site")), expected(&site(), &[]));
    assert_eq!((outcome.pages, outcome.new, outcome.changed), (5, 5, 0));
    assert_eq!(fs::read_dir(home.root.join("deep/er")).unwrap().count(), 1, "nothing is left beside the site");
}

#[test]
fn an_empty_folder_is_used_and_keeps_its_permissions() {
    use std::os::unix::fs::PermissionsExt;
    let home = Home::new();
    fs::create_dir(home.site()).unwrap();
    fs::set_permissions(home.site(), fs::Permissions::from_mode(0o2775)).unwrap();
    home.publish(&site()).unwrap();
    assert_eq!(content(&home.site()), expected(&site(), &[]));
    assert_eq!(fs::metadata(home.site()).unwrap().mode() & 0o7777, 0o2775);
    assert_eq!(home.names(), ["book", "site"]);
}

#[test]
fn publishing_the_same_again_writes_nothing() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let before = touched(&home.site());
    let outcome = home.publish(&site()).unwrap();
    assert!(outcome.is_same(), "{outcome:?}");
    assert_eq!(outcome.pages, 5);
    assert_eq!(touched(&home.site()), before);
    assert_eq!(home.names(), ["book", "site"]);
}

#[test]
fn only_what_changed_is_written_and_only_what_went_is_removed() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let kept: Vec<_> =
        ["look/guide.css", "pork/loin/index.html", "pork/loin/weights.svg"].iter().map(|path| site_time(&home, path)).collect();
    let later = site().with("index.html", "home 2").without("pork/side/index.html").with("beef/rump/index.html", "rump");
    let outcome = home.publish(&later).unwrap();
    assert_eq!((outcome.pages, outcome.new, outcome.changed), (5, 1, 1));
    assert_eq!(outcome.removed, ["pork/side/index.html"]);
    assert_eq!(outcome.edited, [""; 0]);
    assert_eq!(content(&home.site()), expected(&later, &[]));
    let after: Vec<_> =
        ["look/guide.css", "pork/loin/index.html", "pork/loin/weights.svg"].iter().map(|path| site_time(&home, path)).collect();
    assert_eq!(after, kept, "unchanged pages are the very same files");
}

#[test]
fn a_page_edited_in_the_site_is_put_right_and_told() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    home.write("site/pork/loin/index.html", "my own words");
    home.write("site/pork/side/index.html", "my own words");
    fs::remove_file(home.site().join("look/guide.css")).unwrap();
    let outcome = home.publish(&site().without("pork/side/index.html")).unwrap();
    assert_eq!(outcome.edited, ["pork/loin/index.html", "pork/side/index.html"]);
    assert_eq!((outcome.new, outcome.changed), (1, 1));
    assert_eq!(content(&home.site()), expected(&site().without("pork/side/index.html"), &[]));
}

#[test]
fn a_page_that_became_a_link_or_vanished_is_a_page_again() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    fs::remove_file(home.site().join("index.html")).unwrap();
    std::os::unix::fs::symlink("/etc/hostname", home.site().join("index.html")).unwrap();
    let outcome = home.publish(&site()).unwrap();
    assert_eq!(outcome.edited, ["index.html"]);
    assert_eq!(content(&home.site()), expected(&site(), &[]));
}

#[test]
fn a_page_can_become_a_folder_and_a_folder_a_page() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let turned = Book::of(&[("index.html/deep", "x"), ("pork", "y")]);
    home.publish(&turned).unwrap();
    assert_eq!(content(&home.site()), expected(&turned, &[]));
    home.publish(&site()).unwrap();
    assert_eq!(content(&home.site()), expected(&site(), &[]));
}

#[test]
fn the_bytes_do_not_depend_on_what_was_there_before() {
    let (one, other) = (Home::new(), Home::new());
    one.publish(&site().with("index.html", "earlier").with("old/page.html", "old")).unwrap();
    one.publish(&site()).unwrap();
    other.publish(&site()).unwrap();
    assert_eq!(content(&one.site()), content(&other.site()));
}

#[test]
fn a_site_is_published_through_a_link() {
    let home = Home::new();
    fs::create_dir(home.root.join("v1")).unwrap();
    std::os::unix::fs::symlink("v1", home.site()).unwrap();
    home.publish(&site()).unwrap();
    home.publish(&site().with("index.html", "home 2")).unwrap();
    assert!(home.site().is_symlink());
    assert_eq!(content(&home.root.join("v1")), expected(&site().with("index.html", "home 2"), &[]));
    assert_eq!(home.names(), ["book", "site", "v1"]);
}

#[test]
fn many_pages_are_made_in_parallel_and_listed_in_order() {
    let home = Home::new();
    let many = Book((0..500).map(|n| (format!("part-{}/page-{n:03}.html", n % 7), format!("page {n}").into_bytes())).collect());
    let count = std::sync::atomic::AtomicUsize::new(0);
    let progress = || {
        count.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
    };
    crate::cli::write::publish(&many, &home.target("site"), &progress).unwrap();
    assert_eq!(count.into_inner(), 500);
    assert_eq!(content(&home.site()), expected(&many, &[]));
}

#[test]
fn a_page_that_lists_others_is_made_last_and_changes_with_them() {
    let home = Home::new();
    home.publish(&summed()).unwrap();
    assert_eq!(content(&home.site()), expected(&summed(), &[]));
    let later = summed().with("pork/side/index.html", "side 2");
    let outcome = home.publish(&later).unwrap();
    assert_eq!((outcome.pages, outcome.new, outcome.changed), (6, 0, 2));
    assert_eq!(content(&home.site()), expected(&later, &[]));
    assert!(home.publish(&later).unwrap().is_same());
    let broken = home.publish(&later.clone().with(SUMS, "unmakeable")).unwrap_err().to_string();
    assert!(broken.contains("cannot make the page: a template has a hole"), "{broken}");
    assert_eq!(content(&home.site()), expected(&later, &[]));
}
