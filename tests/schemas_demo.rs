//! The single mistakes that spoil the guides of the demonstration, held against the schema: it must know those that
//! one file without sums can show, and is asked how many it does.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the files of the project"
)]

#[path = "mutations/bytes.rs"]
mod bytes;
#[path = "mutations/give.rs"]
mod give;
#[path = "mutations/guide.rs"]
mod guide;
#[path = "mutations/head.rs"]
mod head;
#[path = "schemas/known.rs"]
mod known;
#[path = "mutations/order.rs"]
mod order;
#[path = "mutations/step.rs"]
mod step;
#[path = "schemas/validator.rs"]
mod validator;

use std::path::Path;

use guide::Guide;
use known::KNOWN;
use seamwise::source::schema::Kind;
use validator::{Validator, Verdict};

#[test]
fn mistakes_of_form_in_the_demonstration_are_refused() {
    let validator = Validator::new();
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures");
    let (mut refused, mut all) = (0, 0);
    let mut complaints = Vec::new();
    for entry in walkdir::WalkDir::new(&root).sort_by_file_name() {
        let entry = entry.unwrap();
        let path = entry.path().strip_prefix(&root).unwrap().to_str().unwrap().replace('\\', "/");
        if Kind::of_path(&path) != Some(Kind::Procedure) {
            continue;
        }
        let guide = Guide::new(&path, &std::fs::read_to_string(entry.path()).unwrap());
        let made =
            [head::mistakes(&guide), step::mistakes(&guide), give::mistakes(&guide), order::mistakes(&guide), bytes::mistakes(&guide)];
        for mistake in made.concat() {
            // A file that is no text never comes as far as a schema.
            let Ok(text) = std::str::from_utf8(&mistake.bytes) else { continue };
            let sound = validator.text(Kind::Procedure, text) == Verdict::Sound;
            all += 1;
            refused += usize::from(!sound);
            if sound && KNOWN.contains(&mistake.check) {
                complaints
                    .push(format!("{path}: {}: {} is among those that a schema knows, and it takes this", mistake.kind, mistake.check));
            }
        }
    }
    println!("{refused} of {all} mistakes are refused");
    assert!(all > 1000 && refused * 3 > all * 2, "{refused} of {all}");
    assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
}
