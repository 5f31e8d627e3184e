//! The JSON Schemas of the documents: those that are kept in `schemas/` are those that the types make, their words
//! are the model's, and the files of the demo point an editor at them.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the files of the project"
)]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use seamwise::model::builtin::Builtin;
use seamwise::model::builtin::limits::own_figure;
use seamwise::model::words::{Harm, LimitKind, Parasites, PartKind, Product, Side, Signal, State, Tax, Units, Use};
use seamwise::source::schema::{Kind, render, words};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn kept(kind: Kind) -> PathBuf {
    root().join("schemas").join(kind.file_name())
}

#[test]
fn kept_schemas_are_those_that_the_types_make() {
    let mut complaints = Vec::new();
    for kind in Kind::ALL {
        let name = kind.file_name();
        if fs::read_to_string(kept(*kind)).ok() != Some(render(*kind)) {
            complaints.push(format!("schemas/{name} is not what the types in src/source/documents make"));
        }
    }
    assert!(complaints.is_empty(), "\n{}\nto rewrite: cargo test --test schemas -- --ignored rewrite\n", complaints.join("\n"));
}

/// Not a test: writes the schemas that the types make.
#[test]
#[ignore = "writes files: run it after a change of the documents, and look at the difference"]
fn rewrite() {
    for kind in Kind::ALL {
        fs::write(kept(*kind), render(*kind)).unwrap();
    }
}

/// The room that reads documents must not see the model, so the lists stand twice; here they are held together.
#[test]
fn words_are_those_of_the_model() {
    macro_rules! same {
        ($($list:ident: $type:ident,)*) => { $(
            assert_eq!(words::$list, $type::ALL.iter().map(|word| word.word()).collect::<Vec<_>>(), stringify!($list));
        )* };
    }
    same! {
        USE: Use, SIDE: Side, STATE: State, UNITS: Units, PRODUCT: Product, SIGNAL: Signal, HARM: Harm, PARASITES: Parasites,
        PART_KIND: PartKind, LIMIT: LimitKind, TAX: Tax,
    }
}

#[test]
fn offered_ids_are_those_that_are_built_in() {
    fn same<'a>(listed: &[&str], built_in: impl Iterator<Item = &'a String>) {
        let listed_once: BTreeSet<&str> = listed.iter().copied().collect();
        assert_eq!(listed_once, built_in.map(String::as_str).collect());
        assert_eq!(listed_once.len(), listed.len());
    }
    let builtin = Builtin::get();
    same(words::PROFILES, builtin.profiles.keys());
    same(words::WEAR, builtin.wear.keys());
    same(words::SPECIES, builtin.species.keys());
    same(words::TOOLS, builtin.tools.keys());
    same(words::CAUTIONS, builtin.cautions.keys());
    same(words::GROUPS, builtin.species.values().map(|species| &species.group));
}

#[test]
fn limits_of_time_are_those_that_take_a_time() {
    for limit in LimitKind::ALL {
        let takes_time = own_figure(*limit, "30 minutes").is_ok();
        assert_eq!(words::LIMIT_OF_TIME.contains(&limit.word()), takes_time, "{}", limit.word());
        assert_eq!(own_figure(*limit, "3 °C").is_ok(), !takes_time, "{}", limit.word());
    }
}

#[test]
fn signal_words_are_those_that_the_check_asks_for() {
    for (harm, signals) in words::SIGNALS_FOR {
        for signal in words::SIGNAL {
            let text =
                format!("full-tub: {{ signal: {signal}, harm: {harm}, hazard: A tub., consequence: A strain., avoid: Lift with two. }}\n");
            let files = [("cautions.yaml", text.as_str()), ("guidebook.yaml", "title: x\n")];
            let files = files.map(|(path, text)| (path.to_owned(), seamwise::source::Entry::File(text.as_bytes().to_vec())));
            let inspection = seamwise::inspect(files.into_iter().collect());
            let told = inspection.findings.iter().any(|finding| finding.check == "signal-not-matching-harm");
            assert_eq!(told, !signals.contains(signal), "{harm} and {signal}");
        }
    }
    assert_eq!(words::SIGNALS_FOR.iter().map(|(harm, _)| *harm).collect::<Vec<_>>(), words::HARM);
}

#[test]
fn reserved_names_are_those_that_no_piece_can_have() {
    for (name, reserved) in words::RESERVED.iter().map(|name| (*name, true)).chain([("pork-eye", false), ("all", false), ("use", false)]) {
        let text = format!("{name}: {{ name: Eye }}\n");
        let (mut documents, _) = seamwise::source::load_texts(&[("cuts/pork.yaml", &text)]);
        let (_, findings) = seamwise::model::lower::lower(&mut documents);
        assert_eq!(findings.iter().any(|finding| finding.check == "name-reserved"), reserved, "{name}");
    }
}

/// An open convention of editors: a comment in the first line names the schema of the file.
#[test]
fn each_file_of_the_demo_names_its_schema() {
    let demo = root().join("procedures");
    let mut seen = 0;
    for entry in walkdir::WalkDir::new(&demo).sort_by_file_name() {
        let entry = entry.unwrap();
        let path = entry.path().strip_prefix(&demo).unwrap().to_str().unwrap().replace('\\', "/");
        let Some(kind) = Kind::of_path(&path) else { continue };
        let up = "../".repeat(path.matches('/').count() + 1);
        let wanted = format!("# yaml-language-server: $schema={up}schemas/{}", kind.file_name());
        let text = fs::read_to_string(entry.path()).unwrap();
        assert_eq!(text.lines().next(), Some(wanted.as_str()), "the first line of procedures/{path}");
        seen += 1;
    }
    assert!(seen >= 8, "{seen} files");
}
