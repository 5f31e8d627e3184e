//! The built-in anatomy held against published counts, and guides that count against it.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

use seamwise::analysis::anatomy::Anatomy;
use seamwise::finding::{Finding, Level};
use seamwise::model::builtin::Builtin;
use seamwise::model::quantity::Range;
use seamwise::model::words::PartKind;
use seamwise::source::{Entry, Files};

/// How many of a part a species has.
fn count(species: &str, part: &str) -> Option<Range<u32>> {
    let builtin = Builtin::get();
    let group = &builtin.anatomy[&builtin.species[species].group];
    let (_, found) = group.find(part).unwrap_or_else(|| panic!("{species} has no `{part}`"));
    found.count.as_ref()?.of(species)
}

/// Vertebrae by region: University of Guelph, animal biosciences, meat laboratory notes by H. J. Swatland,
/// laboratory 8.1 (undated page), table of cervical, thoracic, lumbar, sacral and caudal vertebrae.
#[test]
fn vertebrae_by_region() {
    let range = |low, high| Some(Range { low, high });
    let table = [
        ("neck-bones", range(7, 7), range(7, 7), range(7, 7)),
        ("thoracic-vertebrae", range(13, 13), range(13, 17), range(13, 14)),
        ("lumbar-vertebrae", range(6, 6), range(5, 7), range(6, 7)),
        ("sacrum", range(5, 5), range(4, 4), range(4, 4)),
        ("tail-bones", range(18, 20), range(20, 23), range(16, 18)),
    ];
    for (part, beef, pork, lamb) in table {
        assert_eq!([count("beef", part), count("pork", part), count("lamb", part)], [beef, pork, lamb], "{part}");
    }
    // Each thoracic vertebra carries a pair of ribs (the same table; Anatomy and Physiology of Farm Animals, 8th
    // edition, table 4-4: ruminants 13 ribs, pigs 14 to 15 of the 13 to 17 that are reported).
    for species in ["beef", "veal", "pork", "lamb", "mutton"] {
        assert_eq!(count(species, "ribs"), count(species, "thoracic-vertebrae"), "{species}");
    }
}

/// Findings of one guide with these counts, faults and advice of the counts alone.
fn findings(species: &str, give: &str) -> Vec<Finding> {
    let guide = format!(
        "title: A side\nspecies: {species}\nage: under 12 months\nrevision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}\nstart: {{ piece: {species}-side, weight: 20–30 kg, temperature: 2–4 °C }}\nsteps:\n  - name: Part the side\n    take: {species}-side\n    do: Part it.\n    minutes: 1–2\n    give:\n{give}    loss: 0\n"
    );
    let mut files = Files::new();
    files.insert("guidebook.yaml".to_owned(), Entry::File(b"title: T\nlimits: eu-853\n".to_vec()));
    files.insert(format!("cuts/{species}.yaml"), Entry::File(format!("{species}-side: {{ name: Side, per-animal: 2 }}\n").into_bytes()));
    files.insert(format!("{species}/side.yaml"), Entry::File(guide.into_bytes()));
    seamwise::inspect(files).findings
}

/// Styles of parting the ribs as sources print them, one side of the animal each; every one must pass.
#[test]
fn published_styles_of_parting_the_ribs_pass() {
    let styles: [(&str, &[u32], &str); 6] = [
        (
            "beef",
            &[5, 7, 1],
            "Canada Beef, rib sheet (ribs 6 to 12); Nebraska Beef Report 2013 (break at ribs 5 and 6); the loin carries the 13th",
        ),
        ("beef", &[12, 1], "Safe Food for Canadians Regulations, section 304, quarters parted between ribs 12 and 13"),
        ("lamb", &[5, 8], "National Live Stock and Meat Board, cutting test for the US Army: shoulder of 5, rack of 8"),
        ("lamb", &[4, 8, 1], "extension slides, the 4-8-1 style"),
        ("pork", &[3, 11], "UNECE porcine standard, skeletal diagram of a pig with 14 pairs"),
        ("goat", &[5, 7, 1], "Cornell University, rack of ribs 6 to 12, quarters parted between ribs 12 and 13"),
    ];
    for (species, ribs, source) in styles {
        let outputs: Vec<String> = ribs
            .iter()
            .enumerate()
            .map(|(at, ribs)| {
                format!(
                    "      {species}-part-{at}: {{ share: {}, counts: {{ ribs: {ribs} }}, use: retail }}\n",
                    if at == 0 { "rest" } else { "20–25 %" }
                )
            })
            .collect();
        let found = findings(species, &outputs.concat());
        assert!(found.iter().all(|finding| finding.check != "count-outside-species"), "{source}: {found:#?}");
    }
}

/// A rib too many for the species: pork over 17, beef over 13, lamb over 14.
#[test]
fn a_rib_more_than_the_species_has_is_a_fault() {
    for (species, most) in [("pork", 17), ("beef", 13), ("lamb", 14)] {
        let outputs = |ribs: u32| {
            format!(
                "      {species}-loin: {{ share: 20–25 %, counts: {{ ribs: {ribs} }}, use: retail }}\n      {species}-other: {{ share: rest, use: retail }}\n"
            )
        };
        assert!(findings(species, &outputs(most)).is_empty(), "{species} with {most}");
        let found = findings(species, &outputs(most + 1));
        assert!(matches!(&found[..], [one] if one.check == "count-outside-species" && one.level == Level::Fault), "{species}: {found:#?}");
    }
}

/// A guidebook adds parts, and says more of built-in ones; what it leaves out holds as it is built in.
#[test]
fn a_guidebook_adds_to_the_anatomy() {
    let mut files = Files::new();
    let mut add = |path: &str, text: &str| files.insert(path.to_owned(), Entry::File(text.as_bytes().to_vec()));
    add("guidebook.yaml", "title: T\nlimits: eu-853\n");
    add(
        "anatomy/pork.yaml",
        "ribs: { name: Ribs, kind: bone, count: 14 }\nmystery-lump: { name: Kernel, also: [lump], kind: gland, regions: [leg] }\n",
    );
    add("anatomy/bass.yaml", "like: round-fish\n");
    let inspection = seamwise::inspect(files);
    let book = inspection.verdict.book();
    let pork = Anatomy::of(book, "pork").unwrap();
    let ribs = pork.find("ribs").unwrap();
    assert_eq!((ribs.count, ribs.paired, ribs.regions.contains(&"loin")), (Some(Range::single(14)), true, true));
    assert_eq!(pork.find("kernel").unwrap().id, "mystery-lump");
    assert_eq!(pork.find("lump").unwrap().kind, Some(PartKind::Gland));
    assert_eq!(pork.parts().filter(|part| part.id == "ribs").count(), 1);
    assert_eq!(pork.find("spine").unwrap().id, "vertebral-column");
    assert!(pork.find("keel").is_none());
    assert_eq!(Anatomy::of(book, "bass").unwrap().group, "round-fish");
    assert!(Anatomy::of(book, "bison").is_none());
}
