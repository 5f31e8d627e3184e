//! Pictures that are named and not there.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Finding, Level, Place};
use crate::model::Guidebook;
use crate::model::links::candidates;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "picture-missing",
        group: Group::Reference,
        level: Level::Fault,
        what: "A picture of a step, or in a text, is not in the guidebook.",
        why: "On the page there would be an empty frame where the cut should be seen.",
        example: "pictures:\n  - { file: pictures/leg-joint.svg, alt: Leg folded back }    # no such file",
        mend: "Put the file there, or mend its name. Capitals count.",
        source: "Guidebook format, version 1, \"Pictures\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let is_there = |path: &str| book.pictures.contains_key(path) || book.unshown_pictures.contains(path) || known::is_broken(book, path);
    for picture in known::pictures(book) {
        let Some(file) = picture.file.given() else { continue };
        if !is_there(&file.value) {
            let near = near(book, &file.value).map(str::to_owned);
            report.add(missing(file.place, &file.value, near));
        }
    }
    for link in book.links.iter().filter(|link| link.picture) {
        let paths = candidates(&link.folder, &link.target);
        if !paths.iter().any(|path| is_there(path)) {
            let up = if link.folder.is_empty() { "" } else { "../" };
            let near = paths.iter().find_map(|path| near(book, path)).map(|near| format!("{up}{near}"));
            report.add(missing(link.place, &link.target, near));
        }
    }
}

fn missing(place: Place, file: &str, near: Option<String>) -> Finding {
    let help = near.map_or_else(
        || "Put the picture into `pictures/`, and write its path from the top of the guidebook.".to_owned(),
        |near| format!("Write `{near}`."),
    );
    CHECK.info.at(place, format!("the picture `{file}` is not in the guidebook")).help(help)
}

/// The picture of the same name in another folder, else the nearest by spelling.
fn near<'b>(book: &'b Guidebook, path: &str) -> Option<&'b str> {
    let paths = || book.pictures.keys().map(String::as_str);
    let name = |path: &str| path.rsplit('/').next().unwrap_or("").to_lowercase();
    paths().find(|known| name(known) == name(path)).or_else(|| nearest(path, paths()))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, Files, files, steps};

    #[test]
    fn a_step() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    pictures:
      - { file: pictures/half.svg, alt: A half }
#               ^^^^^^^^^^^^^^^^^ fault[picture-missing] `pictures/half.svg` is not in the guidebook
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_text() {
        files(&[(
            "pages/a.md",
            "Look ![a half](../pictures/half.svg).
#    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[picture-missing]
",
        )]);
    }

    #[test]
    fn a_picture_that_is_there() {
        files(&[
            ("pictures/half.svg", "<svg/>"),
            ("pages/a.md", "![a half](../pictures/half.svg) and ![again](pictures/half.svg)
"),
            ("chicken/whole.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, pictures: [{ file: pictures/half.svg, alt: Both halves side by side }], do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }

    #[test]
    fn capitals_count_and_the_nearest_is_offered() {
        let (mut files, page) = (Files::new(), "![half](../pictures/Half.svg)\n");
        for (path, text) in [("guidebook.yaml", "title: G\n"), ("pages/a.md", page), ("pictures/half.svg", "<svg/>")] {
            files.insert(path.to_owned(), Entry::File(text.as_bytes().to_vec()));
        }
        let inspection = crate::inspect(files);
        let help = inspection.findings.iter().find(|finding| finding.check == "picture-missing").map(|finding| finding.help.as_str());
        assert_eq!(help, Some("Write `../pictures/half.svg`."));
    }
}
