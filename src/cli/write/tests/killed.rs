//! A real process publishes again and again, and is killed at whatever moment it is in.

use std::process::{Command, Stdio};
use std::time::Duration;

use super::*;

const HOME: &str = "SEAMWISE_TEST_HOME";
const ROUNDS: u64 = 30;

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
    home.publish(&book(0)).unwrap();
    let wanted = [expected(&book(0), &others), expected(&book(1), &others)];
    let mut seen = [0; 2];
    let mut random: u64 = 20_261_012;
    for round in 0..ROUNDS {
        let mut process = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "cli::write::tests::killed::a_site_is_whole_after_every_kill", "--nocapture"])
            .env(HOME, &home.root)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        random = random.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        std::thread::sleep(Duration::from_micros(2_000 + (random >> 33) % 150_000));
        assert!(process.try_wait().unwrap().is_none(), "it ended by itself in round {round}");
        process.kill().unwrap();
        process.wait().unwrap();
        let found = content(&home.site());
        match wanted.iter().position(|wanted| *wanted == found) {
            Some(version) => seen[version] += 1,
            None => panic!("round {round}: the site is neither of the two: {:?}", found.keys()),
        }
    }
    assert!(seen[0] > 0 && seen[1] > 0, "{seen:?}");
    home.publish(&book(1)).unwrap();
    assert_eq!(content(&home.site()), wanted[1]);
    assert_eq!(home.names(), ["book", "site"]);
}
