//! What is refused, with nothing changed.

use super::*;

fn told(home: &Home, book: &Book) -> String {
    let before = touched(&home.root);
    let told = home.publish(book).unwrap_err().to_string();
    let after = touched(&home.root);
    // The folder in which the site would be built came and went, so the time of the folder around it has changed.
    let but_root = |map: &BTreeMap<String, String>| {
        map.iter().filter(|(path, _)| !path.is_empty()).map(|(p, f)| format!("{p}: {f}")).collect::<Vec<_>>()
    };
    assert_eq!(but_root(&after), but_root(&before), "{told}");
    told
}

#[test]
fn a_file_of_others_where_a_page_would_go() {
    let home = Home::new();
    home.write("site/index.html", "mine");
    home.write("site/pork/side/index.html", "mine");
    home.write("site/other.txt", "mine");
    let told = told(&home, &site());
    assert!(
        told.starts_with("error: `index.html`, `pork/side/index.html` stand where a page would go and did not come from here"),
        "{told}"
    );
    assert!(told.contains("at: site/index.html") && told.contains("--to"), "{told}");
}

#[test]
fn a_file_of_others_where_a_new_page_of_a_published_site_would_go() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    home.write("site/beef/index.html", "mine");
    assert!(told(&home, &site().with("beef/index.html", "beef")).contains("`beef/index.html` stands where"));
}

#[test]
fn a_file_where_a_folder_would_go_and_a_folder_where_a_page_would_go() {
    let home = Home::new();
    home.write("site/pork", "mine");
    home.write("site/index.html/mine.txt", "mine");
    let told_of = told(&home, &site());
    assert!(told_of.contains("`index.html`, `pork` stand where"), "{told_of}");

    let home = Home::new();
    fs::create_dir_all(home.site().join("index.html")).unwrap();
    assert!(told(&home, &site()).contains("`index.html` stands where"));

    let home = Home::new();
    fs::create_dir_all(home.site()).unwrap();
    std::os::unix::fs::symlink("/tmp", home.site().join("pork")).unwrap();
    assert!(told(&home, &site()).contains("`pork` stands where"));
}

#[test]
fn a_list_of_somebody_else_and_a_damaged_one() {
    let home = Home::new();
    home.write("site/seamwise-files.txt", "my shopping list");
    assert!(told(&home, &site()).contains("`seamwise-files.txt` stands where"));

    let home = Home::new();
    home.publish(&site()).unwrap();
    let list = fs::read_to_string(home.site().join("seamwise-files.txt")).unwrap();
    home.write("site/seamwise-files.txt", &list.replace("pork/side/index.html", "../book/index.html"));
    let told = told(&home, &site());
    assert!(told.contains("damaged at line 6"), "{told}");
}

#[test]
fn a_page_that_cannot_be_made() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let book = site().with("index.html", "home 2").with("look/guide.css", "unmakeable").with("z.html", "unmakeable");
    // Pages are made on all cores; whichever fails first in time, the first in the list is told.
    for _ in 0..20 {
        assert_eq!(told(&home, &book), "error: cannot make the page: a template has a hole\n   at: site/look/guide.css");
    }
}

#[test]
fn pages_that_cannot_stand_side_by_side() {
    for path in ["pork", "../up.html", "seamwise-files.txt", "a\\b", "", "/etc/x"] {
        let home = Home::new();
        assert!(told(&home, &site().with(path, "x")).contains("two pages want the same place, or a page has none"), "{path}");
    }
}

#[test]
fn a_second_run_at_the_same_time() {
    let home = Home::new();
    home.publish(&site()).unwrap();
    let target = home.target("site");
    let running = crate::cli::write::workspace::Workspace::open(&crate::cli::write::real::RealDisk, &target).unwrap();
    let told_of = told(&home, &site().with("index.html", "home 2"));
    assert!(told_of.starts_with("error: another run is publishing into the same folder\n"), "{told_of}");
    running.close();
    home.publish(&site().with("index.html", "home 2")).unwrap();
    assert_eq!(home.names(), ["book", "site"]);
}

#[test]
fn something_else_under_the_name_of_the_workspace() {
    let home = Home::new();
    home.write(".site.staging-seamwise/thesis.txt", "years of work");
    assert!(told(&home, &site()).contains("something else stands where the new site would be built"));

    let home = Home::new();
    home.write(".site.staging-seamwise/lock", "somebody else's lock");
    assert!(told(&home, &site()).contains("something else stands where"));

    let home = Home::new();
    home.write(".site.staging-seamwise", "a file");
    assert!(told(&home, &site()).contains("something else stands where"));

    let home = Home::new();
    home.write("elsewhere/new/thesis.txt", "years of work");
    std::os::unix::fs::symlink("elsewhere", home.root.join(".site.staging-seamwise")).unwrap();
    assert!(told(&home, &site()).contains("something else stands where"));
}

#[test]
fn folders_beside_it_with_a_like_name_are_let_be() {
    let home = Home::new();
    home.write(".site.staging-other/new/index.html", "mine");
    fs::create_dir(home.root.join(".site.staging-")).unwrap();
    home.publish(&site()).unwrap();
    home.publish(&site().with("index.html", "home 2")).unwrap();
    assert_eq!(home.names(), [".site.staging-", ".site.staging-other", "book", "site"]);
    assert_eq!(fs::read_to_string(home.root.join(".site.staging-other/new/index.html")).unwrap(), "mine");
}
