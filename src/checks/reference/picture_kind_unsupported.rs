//! Pictures that no browser shows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::links::candidates;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "picture-kind-unsupported",
        group: Group::Reference,
        level: Level::Fault,
        what: "A step or a text names a picture of a kind that browsers do not show.",
        why: "Phones store photographs in forms that other phones cannot show. On the page there would be an empty frame.",
        example: "pictures:\n  - { file: pictures/leg.heic, alt: Leg folded back }    # refused",
        mend: "Save it as `.jpg`, `.png`, `.webp` or `.svg`, and name that file.",
        source: "WHATWG, MIME Sniffing Standard (living standard), section on image types.",
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
    for (place, path) in steps.chain(texts).filter(|(_, path)| book.unshown_pictures.contains(path)) {
        let ending = path.rsplit('.').next().unwrap_or("");
        let finding = CHECK.info.at(place, format!("a browser shows no `.{ending}` file"));
        report.add(finding.help("Save it as `.jpg`, `.png`, `.webp` or `.svg`, and name that file here."));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_photograph_of_a_phone() {
        files(&[
            ("pictures/half.heic", "x"),
            (
                "chicken/whole.yaml",
                "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - name: Halve
    pictures: [{ file: pictures/half.heic, alt: Both halves side by side }]
#                      ^^^^^^^^^^^^^^^^^^ fault[picture-kind-unsupported] `.heic`
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }
    loss: 0–2 %
",
            ),
        ]);
    }

    #[test]
    fn the_source_of_a_drawing_that_nothing_names() {
        files(&[("pictures/half.psd", "x")]);
    }
}
