//! Every act of publishing fails once: the earlier site is then whole, or the new one is, and the next run mends all.

use std::io::ErrorKind;

use super::faulty::{FaultyDisk, Trouble};
use super::*;

const OTHERS: &[(&str, &str)] = &[
    ("CNAME", "guides.example"),
    (".git/HEAD", "ref: main"),
    ("pork/loin/notes.txt", "mine"),
    ("empty", "dir"),
    ("latest", "link -> nowhere"),
];

/// What a disk can do.
#[derive(Debug, Clone, Copy)]
struct Skill {
    exchanges: bool,
    links: bool,
}

const SKILLS: &[Skill] = &[
    Skill { exchanges: true, links: true },
    Skill { exchanges: false, links: true },
    Skill { exchanges: true, links: false },
    Skill { exchanges: false, links: false },
];

fn disk(trouble: Trouble, skill: Skill) -> FaultyDisk {
    FaultyDisk { exchanges: skill.exchanges, links: skill.links, ..FaultyDisk::new(trouble) }
}

fn later() -> Book {
    summed().with("index.html", "home 2").without("pork/side/index.html").with("beef/rump/index.html", "rump")
}

/// A home with a published site and things of others in it; without, a home with nothing.
fn home(published: bool) -> Home {
    let home = Home::quick();
    if published {
        home.publish_on(&FaultyDisk::new(Trouble::None), &summed()).unwrap();
        home.write("site/CNAME", "guides.example");
        home.write("site/.git/HEAD", "ref: main");
        home.write("site/pork/loin/notes.txt", "mine");
        fs::create_dir(home.site().join("empty")).unwrap();
        std::os::unix::fs::symlink("nowhere", home.site().join("latest")).unwrap();
    }
    home
}

/// Runs a publish with trouble at every act in turn, and holds what is there afterwards against `check`; then a run
/// without trouble must give the new site and leave nothing beside it.
fn at_every_act(
    published: bool,
    trouble: impl Fn(usize) -> Trouble,
    check: impl Fn(&Home, &Before, &Result<Outcome, Failure>, Skill, &str),
) {
    for skill in SKILLS {
        let acts = {
            let disk = disk(Trouble::None, *skill);
            home(published).publish_on(&disk, &later()).unwrap();
            disk.acts()
        };
        assert!(acts > 30, "only {acts} acts");
        for at in 0..=acts {
            let home = home(published);
            let before = Before { touched: published.then(|| touched(&home.site())), others: if published { OTHERS } else { &[] } };
            let disk = disk(trouble(at), *skill);
            let result = home.publish_on(&disk, &later());
            let told = format!("act {at} of {acts}, {skill:?}: {result:?}");
            check(&home, &before, &result, *skill, &told);
            let again = home.publish_on(&FaultyDisk::new(Trouble::None), &later());
            assert!(again.is_ok(), "{told}, then {again:?}");
            assert_eq!(content(&home.site()), expected(&later(), before.others), "{told}");
            assert_eq!(home.names(), ["book", "site"], "{told}");
        }
    }
}

struct Before {
    /// Nothing when there was no site.
    touched: Option<BTreeMap<String, String>>,
    others: &'static [(&'static str, &'static str)],
}

impl Before {
    fn is_untouched(&self, home: &Home) -> bool {
        match &self.touched {
            None => !home.site().exists(),
            Some(before) => home.site().exists() && touched(&home.site()) == *before,
        }
    }

    fn is_replaced(&self, home: &Home) -> bool {
        home.site().exists() && content(&home.site()) == expected(&later(), self.others)
    }
}

/// When the run says that it failed, the site is untouched and nothing lies beside it; else the new one is in place.
fn told_truly(home: &Home, before: &Before, result: &Result<Outcome, Failure>, told: &str) {
    match result {
        Err(_) => assert!(before.is_untouched(home), "{told}"),
        Ok(_) => assert!(before.is_replaced(home), "{told}"),
    }
}

#[test]
fn one_act_is_refused() {
    for published in [true, false] {
        let trouble = |at| Trouble::Once(at, ErrorKind::PermissionDenied);
        at_every_act(published, trouble, |home, before, result, _, told| told_truly(home, before, result, told));
    }
}

#[test]
fn the_disk_is_full_from_then_on() {
    for published in [true, false] {
        at_every_act(published, Trouble::Full, |home, before, result, _, told| {
            told_truly(home, before, result, told);
            if result.is_err() {
                let names: &[_] = if published { &["book", "site"] } else { &["book"] };
                assert_eq!(home.names(), names, "{told}");
            }
        });
    }
}

#[test]
fn the_run_is_killed() {
    for published in [true, false] {
        at_every_act(published, Trouble::Killed, |home, before, _, skill, told| {
            let old = home.root.join(".site.staging-seamwise/old");
            let between_two_moves = published && !skill.exchanges && !home.site().exists() && old.exists();
            if between_two_moves {
                let mut kept = touched(&old);
                assert_eq!(kept.remove("").is_some(), before.touched.is_some());
                let mut wanted = before.touched.clone().unwrap();
                wanted.remove("");
                assert_eq!(kept, wanted, "{told}");
            } else {
                assert!(before.is_untouched(home) || before.is_replaced(home), "{told}: {:#?}", content(&home.root));
            }
        });
    }
}

#[test]
fn a_run_that_is_killed_while_it_clears_up_after_a_killed_run() {
    let acts = {
        let disk = FaultyDisk::new(Trouble::None);
        home(true).publish_on(&disk, &later()).unwrap();
        disk.acts()
    };
    for first in (0..acts).step_by(11) {
        for second in (0..60).step_by(3) {
            let home = home(true);
            let before = Before { touched: Some(touched(&home.site())), others: OTHERS };
            let _ = home.publish_on(&FaultyDisk::new(Trouble::Killed(first)), &later());
            let _ = home.publish_on(&FaultyDisk::new(Trouble::Killed(second)), &later());
            assert!(before.is_untouched(&home) || before.is_replaced(&home), "{first}, {second}");
            home.publish_on(&FaultyDisk::new(Trouble::None), &later()).unwrap();
            assert_eq!(content(&home.site()), expected(&later(), OTHERS));
            assert_eq!(home.names(), ["book", "site"]);
        }
    }
}
