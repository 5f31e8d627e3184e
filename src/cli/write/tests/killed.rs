//! A real process publishes again and again, and is killed at whatever moment it is in.

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use super::*;

const HOME: &str = "SEAMWISE_TEST_HOME";
const ROUNDS: u32 = 30;

/// The file by which the process says that it has published once.
const AT_WORK: &str = "at-work";

fn book(version: u32) -> Book {
    let page = |n: u32| {
        // Every third page stays as it is; one in fifty is there in one version only.
        let words = if n.is_multiple_of(3) { "the same".to_owned() } else { format!("version {version} ").repeat(200) };
        (format!("part-{}/page-{n:03}.html", n % 9), words.into_bytes())
    };
    Book((0..200).filter(|n| n % 50 != version).map(page).collect())
}

/// What the test below does in the process that it starts of itself.
fn publish_for_ever(root: &Path) {
    let target = Target::resolve(Path::new("site"), root, Path::new("book")).unwrap();
    for version in (0..2).cycle() {
        crate::cli::write::publish(&book(version), &target, &|| {}).unwrap();
        fs::write(root.join(AT_WORK), "").unwrap();
    }
}

#[test]
fn a_site_is_whole_after_every_kill() {
    if let Some(root) = std::env::var_os(HOME) {
        return publish_for_ever(Path::new(&root));
    }
    let home = Home::new();
    let others = [("CNAME", "guides.example"), (".git/objects/ab", "object")];
    for (path, text) in others {
        home.write(&format!("site/{path}"), text);
    }
    let begun = Instant::now();
    home.publish(&book(0)).unwrap();
    let usual = begun.elapsed();
    let wanted = [expected(&book(0), &others), expected(&book(1), &others)];
    let workspace = home.root.join(".site.staging-seamwise");
    let at_work = home.root.join(AT_WORK);
    let mut cut_off = 0;
    for round in 0..ROUNDS {
        drop(fs::remove_file(&at_work));
        let mut process = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "cli::write::tests::killed::a_site_is_whole_after_every_kill", "--nocapture"])
            .env(HOME, &home.root)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        while !at_work.exists() {
            assert!(process.try_wait().unwrap().is_none(), "it ended by itself in round {round}");
            std::thread::sleep(Duration::from_millis(1));
        }
        // It has begun a second site by now; the kills are spread over the time of two.
        std::thread::sleep(usual.mul_f64(f64::from(round) * 2.0 / f64::from(ROUNDS)));
        process.kill().unwrap();
        process.wait().unwrap();
        let found = content(&home.site());
        assert!(wanted.contains(&found), "round {round}: the site is neither of the two: {:?}", found.keys());
        cut_off += u32::from(workspace.exists());
    }
    assert!(cut_off > 0, "no run was cut off while it wrote");
    home.publish(&book(1)).unwrap();
    assert_eq!(content(&home.site()), wanted[1]);
    assert_eq!(home.names(), [AT_WORK, "book", "site"]);
}
