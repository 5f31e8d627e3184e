//! Drawings that can do more than be looked at.

use std::collections::BTreeMap;

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::links::candidates;
use crate::model::picture_safety::{Danger, danger};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "picture-unsafe",
        group: Group::Reference,
        level: Level::Fault,
        what: "A step or a text names a drawing in SVG that runs a script, holds foreign content, or fetches something from elsewhere.",
        why: "A drawing is a text that a browser carries out. Copied from elsewhere, it could run on the phone of whoever opens it, or tell another computer who did.",
        example: "<svg><script>…</script></svg>",
        mend: "Save the drawing as plain SVG, without scripts, links and embedded files, or as `.png`.",
        source: "SVG 2, W3C Candidate Recommendation, 2018, section 2 (conformance: secure static mode of images).",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let steps = known::pictures(book).filter_map(|picture| picture.file.given()).map(|file| (file.place, file.value.clone()));
    let texts = book.links.iter().filter(|link| link.picture).flat_map(|link| {
        let paths = candidates(&link.folder, &link.target);
        paths.into_iter().map(|path| (link.place, path))
    });
    // A drawing named twice is looked at once.
    let mut dangers: BTreeMap<String, Option<Danger>> = BTreeMap::new();
    for (place, path) in steps.chain(texts) {
        let Some(file) = book.pictures.get(&path) else { continue };
        if let Some(danger) = dangers.entry(path).or_insert_with(|| danger(&file.bytes)) {
            let finding = CHECK.info.at(place, format!("this drawing can do more than be looked at: {danger}"));
            report.add(finding.help("Save it as plain SVG without scripts and links, or as `.png`."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_script() {
        files(&[
            ("pictures/half.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><script>1</script></svg>"),
            (
                "pages/a.md",
                "Look ![half](../pictures/half.svg).
#    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[picture-unsafe] an element `script`
",
            ),
        ]);
    }

    #[test]
    fn lines_and_words() {
        files(&[
            ("pictures/half.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"M0 0L1 1\"/><text>Cut here</text></svg>"),
            (
                "pages/a.md",
                "Look ![half](../pictures/half.svg).
",
            ),
        ]);
    }

    #[test]
    fn a_drawing_that_nothing_names() {
        files(&[("pictures/half.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><script>1</script></svg>")]);
    }
}
