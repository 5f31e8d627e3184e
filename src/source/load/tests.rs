//! Whole guidebooks from memory.
#![expect(clippy::unwrap_used, reason = "a failing test may panic")]

use super::*;
use crate::source::load_texts;

const PROCEDURE: &str =
    "title: T\nspecies: pork\nrevision: { number: 1, date: 2026-10-12, author: lead }\nstart: { piece: a, weight: 1 kg }\nyields: { b: 100 % }\n";

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
        ("ours/words.yaml", "broken: ["),
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
    assert!(documents.theme.contains_key("ours/words.yaml"));
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
    files.insert("pork/locked.yaml".to_owned(), Entry::Unreadable { reason: "permission denied".to_owned() });
    files.insert("pork/vast.yaml".to_owned(), Entry::TooLarge { bytes: 9_000_000_000 });
    files.insert(".hidden/link".to_owned(), Entry::LinkOutside { target: "/".to_owned() });
    let (documents, findings) = load(files);
    assert_eq!(
        told(&documents, &findings),
        [
            "fault guidebook-missing guidebook.yaml:1:1",
            "fault not-utf-8 pork/latin.yaml:1:11",
            "fault link-leaves-guidebook pork/link.yaml:1:1",
            "fault wrong-kind pork/list.yaml:1:1",
            "fault file-unreadable pork/locked.yaml:1:1",
            "fault file-out-of-place pork/loin.yml:1:1",
            "fault unclosed-quote pork/unclosed.yaml:1:8",
            "fault too-large pork/vast.yaml:1:1",
            "advice empty-file tools.yaml:1:1",
        ]
    );
    assert_eq!(documents.procedures.len(), 1);
    let broken = [
        "guidebook.yaml",
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
