//! Pictures without words for those who cannot see them.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "picture-without-alt",
        group: Group::Reference,
        level: Level::Advice,
        what: "A picture has no `alt`, or its `alt` is the name of the file.",
        why: "Whoever has the guide read aloud at the bench, or cannot see the picture, gets nothing in its place.",
        example: "- { file: pictures/leg-joint.svg }                                  # no alt\n- { file: pictures/leg-joint.svg, alt: \"Leg folded back, joint open\" }",
        mend: "Say in `alt` what one sees, not that it is a picture.",
        source: "Web Content Accessibility Guidelines 2.2, W3C, 2023, success criterion 1.1.1.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for picture in known::pictures(subject.book) {
        let Some(file) = picture.file.value() else { continue };
        if picture.alt.is_absent() {
            let finding = CHECK.info.at(picture.place, format!("the picture `{file}` has no `alt`"));
            report.add(finding.help("Add `alt:` with what one sees, as in `alt: \"Leg folded back, joint open\"`."));
        } else if let Some(alt) = picture.alt.given()
            && repeats(&alt.value, file)
        {
            let finding = CHECK.info.at(alt.place, format!("`{}` says no more than the name of the file", alt.value));
            report.add(finding.help("Write what one sees, as in `Leg folded back, joint open`."));
        }
    }
}

/// True when the words of `alt` are those of the file's name, or say only that it is a picture.
fn repeats(alt: &str, file: &str) -> bool {
    let words = |text: &str| -> Vec<String> {
        let parts = text.split(|letter: char| !letter.is_alphanumeric());
        parts.filter(|part| !part.is_empty()).map(str::to_lowercase).collect()
    };
    let name = file.rsplit('/').next().unwrap_or(file);
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    let alt = words(alt);
    alt == words(stem)
        || alt == words(name)
        || alt == words(file)
        || matches!(alt.as_slice(), [one] if matches!(one.as_str(), "picture" | "image" | "photo" | "drawing"))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn none_and_the_name_of_the_file() {
        files(&[
            ("pictures/leg-joint.svg", "<svg/>"),
            (
                "chicken/whole.yaml",
                "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - name: Halve
    pictures:
      - file: pictures/leg-joint.svg
#       ^^^^ advice[picture-without-alt] `pictures/leg-joint.svg` has no `alt`
      - { file: pictures/leg-joint.svg, alt: Leg joint }
#                                            ^^^^^^^^^ advice[picture-without-alt] says no more than the name
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
    fn what_one_sees() {
        files(&[
            ("pictures/leg-joint.svg", "<svg/>"),
            ("chicken/whole.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, pictures: [{ file: pictures/leg-joint.svg, alt: The ball shows white beside its socket }], do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }
}
