//! Whole guidebooks from memory.

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;

use super::*;
use crate::source::load_texts;

const PROCEDURE: &str = "title: T\nspecies: pork\nrevision: { number: 1, date: 2026-10-12, author: lead }\nstart: { piece: a, weight: 1 kg }\nyields: { b: 100 % }\n";

fn told(documents: &Documents, findings: &[Finding]) -> Vec<String> {
    let line = |finding: &Finding| {
        let at = documents.sources.line_column(finding.place);
        format!("{} {} {}:{}:{}", finding.level.word(), finding.check, documents.sources.path(finding.place.file), at.line, at.column)
    };
    findings.iter().map(line).collect()
}

#[test]
fn every_kind_of_file_finds_its_shelf() {
    let (documents, findings) = load_texts(&[
        ("anatomy/pork.yaml", "oyster: { name: Oyster, kind: muscle }\n"),
        ("cautions.yaml", "wet: { signal: caution, hazard: h, consequence: c, avoid: a, harm: healing }\n"),
        ("courses/one.yaml", "title: One\nlessons: [{ name: L, procedures: [pork/loin] }]\n"),
        ("cuts/pork.yaml", "loin: { name: Loin }\n"),
        ("cutting-tests/pork/loin.csv", "date,cutter\n2026-11-02,A\n"),
        ("guidebook.yaml", "title: G\ntheme: ours\n"),
        ("ours/words/en.ftl", "home = Start\n"),
        ("ours/notes.yaml", "broken: ["),
        ("pages/about.md", "# About\n"),
        ("pages/about.es.md", "# Acerca\n"),
        ("pictures/a.svg", "<svg/>"),
        ("pork/loin.yaml", PROCEDURE),
        ("pork/loin.es.yaml", "title: Lomo\n"),
        ("prices.yaml", "currency: EUR\ndate: 2026-11-02\n"),
        ("tools.yaml", "hook: { name: Hook }\n"),
        ("README.md", "not read"),
    ]);
    assert_eq!(told(&documents, &findings), [""; 0]);
    assert_eq!(documents.guidebook.unwrap().id, "guidebook");
    assert_eq!(documents.procedures.first().unwrap().id, "pork/loin");
    assert_eq!((documents.cuts.len(), documents.anatomy.len(), documents.courses.len()), (1, 1, 1));
    assert!(documents.cautions.is_some() && documents.tools.is_some() && documents.prices.is_some());
    assert_eq!(documents.cutting_tests.first().unwrap().id, "cutting-tests/pork/loin");
    assert_eq!(documents.pages.first().unwrap().value, "# About\n");
    assert!(documents.pictures.contains_key("pictures/a.svg"));
    assert_eq!(documents.theme.keys().collect::<Vec<_>>(), ["notes.yaml", "words/en.ftl"]);
    assert_eq!(documents.translations, ["pages/about.es.md", "pork/loin.es.yaml"]);
    assert_eq!(documents.sources.path(documents.procedures.first().unwrap().file), "pork/loin.yaml");
}

#[test]
fn what_can_not_be_read_is_one_finding_each_and_the_rest_is_read() {
    let mut files: Files = [
        ("pork/latin.yaml", &b"title: Caf\xe9 loin of pork\n"[..]),
        ("pork/loin.yml", b"title: x\n"),
        ("pork/list.yaml", b"- a\n"),
        ("pork/sound.yaml", PROCEDURE.as_bytes()),
        ("pork/unclosed.yaml", b"title: \"x\nspecies: pork\n"),
        ("tools.yaml", b"# none yet\n"),
    ]
    .into_iter()
    .map(|(path, bytes)| (path.to_owned(), Entry::File(bytes.to_vec())))
    .collect();
    files.insert("pork/link.yaml".to_owned(), Entry::LinkOutside { target: "/etc/passwd".to_owned() });
    files.insert("lamb".to_owned(), Entry::Unreadable { reason: "permission denied".to_owned() });
    files.insert("pork/film.mp4".to_owned(), Entry::TooLarge { bytes: 9_000_000_000 });
    files.insert("pork/locked.yaml".to_owned(), Entry::Unreadable { reason: "permission denied".to_owned() });
    files.insert("pork/vast.yaml".to_owned(), Entry::TooLarge { bytes: 9_000_000_000 });
    files.insert(".hidden/link".to_owned(), Entry::LinkOutside { target: "/".to_owned() });
    let (documents, findings) = load(files);
    assert_eq!(
        told(&documents, &findings),
        [
            "fault guidebook-missing guidebook.yaml:1:1",
            "fault file-unreadable lamb:1:1",
            "fault not-utf-8 pork/latin.yaml:1:11",
            "fault link-leaves-guidebook pork/link.yaml:1:1",
            "fault wrong-kind pork/list.yaml:1:1",
            "fault file-unreadable pork/locked.yaml:1:1",
            "fault file-ending pork/loin.yml:1:1",
            "fault unclosed-quote pork/unclosed.yaml:1:8",
            "fault too-large pork/vast.yaml:1:1",
            "advice empty-list tools.yaml:1:1",
        ]
    );
    assert_eq!(documents.procedures.len(), 1);
    assert!(documents.is_broken("lamb/leg.yaml") && documents.is_broken("pork/loin.yaml") && !documents.is_broken("pork/sound.yaml"));
    let broken = [
        "guidebook.yaml",
        "lamb",
        "pork/latin.yaml",
        "pork/link.yaml",
        "pork/list.yaml",
        "pork/locked.yaml",
        "pork/loin.yaml",
        "pork/unclosed.yaml",
        "pork/vast.yaml",
    ];
    assert_eq!(documents.broken, broken);
}

/// A sound procedure with random bytes put in, taken out or doubled.
fn spoilt() -> impl Strategy<Value = Vec<u8>> {
    let bit = prop_oneof![any::<u8>().prop_map(|byte| vec![byte]), "[\\[\\]{}:,#&*!|>'\"%@`\\-\t\n é]{1,4}".prop_map(String::into_bytes)];
    proptest::collection::vec((any::<prop::sample::Index>(), 0..4_usize, bit), 0..6).prop_map(|changes| {
        let mut bytes = SAMPLE.as_bytes().to_vec();
        for (at, taken, put) in changes {
            let at = at.index(bytes.len().max(1)).min(bytes.len());
            let end = (at + taken).min(bytes.len());
            bytes.splice(at..end, put);
        }
        bytes
    })
}

const SAMPLE: &str = "title: Whole chicken\nspecies: chicken\nhouse-cut: true  # usual\nrevision: { number: 3, date: 2026-10-12 }\nstart:\n  piece: a\n  weight: 1.6–2.0 kg\nsteps:\n  - name: Take off\n    take: [a, b]\n    do: |\n      Fold: each # leg.\n    tools: [{ any-of: [x] }, 'y']\n    give:\n      c: { share: 31–35 %, counts: { ribs: 2 } }\n      d: rest\n";

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/load.txt"))), ..ProptestConfig::default() })]
    /// No bytes make reading, drawing or writing findings panic, and every finding has a line of its file.
    #[test]
    fn no_bytes_make_reading_panic(spoilt in spoilt(), any in proptest::collection::vec(any::<u8>(), 0..80)) {
        let files: Files = [
            ("cuts/pork.yaml", any.clone()),
            ("cutting-tests/pork/loin.csv", any.clone()),
            ("guidebook.yaml", spoilt.clone()),
            ("pages/a.md", any.clone()),
            ("pictures/a.png", any),
            ("pork/loin.yaml", spoilt.clone()),
            ("cutting-tests/pork/sample.csv", spoilt),
        ]
        .into_iter()
        .map(|(path, bytes)| (path.to_owned(), Entry::File(bytes)))
        .collect();
        let (documents, findings) = load(files.clone());
        for finding in &findings {
            let source = documents.sources.get(finding.place.file).unwrap();
            prop_assert!(source.line_column(finding.place.span.start).line as usize <= source.text().lines().count() + 1);
            prop_assert!(source.text().is_char_boundary((finding.place.span.start as usize).min(source.text().len())), "{finding:?}");
        }
        let text = crate::finding::text::render(&findings, 0, &documents.sources, crate::finding::text::Style::default());
        prop_assert!(text.lines().all(|line| unicode_width::UnicodeWidthStr::width(line) <= 80), "{text}");
        let written = crate::finding::json::render(&findings, &documents.sources);
        prop_assert!(serde_json::from_str::<serde_json::Value>(&written).is_ok());
        let (_, again) = load(files);
        prop_assert_eq!(findings, again);
    }
}
