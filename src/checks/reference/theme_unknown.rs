//! A theme that is neither built in nor in the guidebook.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Guidebook;
use crate::model::names::meant;
use crate::model::own_theme::{BUILT_IN, folder_named};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "theme-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "`theme` in `guidebook.yaml` names neither a built-in theme nor a folder of the guidebook that holds one.",
        why: "The pages would come out in another look than the one that was made for them, and nobody would know why.",
        example: "theme: papr          # refused\ntheme: paper\ntheme: ./our-theme",
        mend: "Write the name of a built-in theme, or the path of a folder of the guidebook that holds `templates`, `styles`, `words` or `assets`. A folder of one's own comes before a built-in theme of the same name.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let Some(theme) = book.theme.given() else { return };
    let folder = folder_named(&theme.value);
    let built_in = BUILT_IN.contains(&theme.value.as_str());
    if built_in || book.own_theme.folders.contains(folder) || known::is_broken(book, folder) {
        return;
    }
    let (message, help) = told(book, &theme.value, folder);
    report.add(CHECK.info.at(theme.place, message).help(help));
}

/// What is wrong, and what to type.
fn told(book: &Guidebook, named: &str, folder: &str) -> (String, String) {
    if folder.starts_with(['/', '\\', '~']) || folder.split(['/', '\\']).any(|part| part == "..") || folder.contains(':') {
        let message = format!("the theme `{named}` would lie outside of the guidebook");
        return (message, "Put its folder into the guidebook, and write the path from there.".to_owned());
    }
    if book.own_theme.other_folders.contains(folder) || folder == "." || folder.is_empty() {
        let message = format!("the folder `{named}` holds nothing of a theme");
        return (message, "Put its files into `templates`, `styles`, `words` and `assets` there, or name a built-in theme.".to_owned());
    }
    let known = || BUILT_IN.iter().copied().chain(book.own_theme.folders.iter().map(String::as_str));
    let slashes = folder.replace('\\', "/");
    let near = meant(&slashes, known());
    let help = near.map_or_else(
        || format!("Write one of {}, or the path of a folder of the guidebook that holds a theme.", known().collect::<Vec<_>>().join(", ")),
        |near| format!("Write {near}."),
    );
    (format!("`{named}` is neither a built-in theme nor a folder of this guidebook"), help)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn told(guidebook: &str) {
        files(&[("guidebook.yaml", guidebook), ("our-theme/styles/own.css", "a { color: #000 }\n")]);
    }

    #[test]
    fn a_misspelt_theme() {
        told(
            "title: Our shop\nlimits: eu-853\ntheme: papr\n#      ^^^^ fault[theme-unknown] `papr` is neither a built-in theme nor a folder\n",
        );
        told("title: Our shop\nlimits: eu-853\ntheme: ./our-them\n#      ^^^^^^^^^^ fault[theme-unknown] `./our-them` is neither\n");
    }

    #[test]
    fn a_folder_that_holds_no_theme_and_one_elsewhere() {
        told(
            "title: Our shop\nlimits: eu-853\ntheme: chicken\n#      ^^^^^^^ fault[theme-unknown] the folder `chicken` holds nothing of a theme\n",
        );
        told(
            "title: Our shop\nlimits: eu-853\ntheme: ../our-theme\n#      ^^^^^^^^^^^^ fault[theme-unknown] would lie outside of the guidebook\n",
        );
    }

    #[test]
    fn themes_that_are_there() {
        for theme in ["paper", "steel", "our-theme", "./our-theme", "./our-theme/"] {
            told(&format!("title: Our shop\nlimits: eu-853\ntheme: {theme}\n"));
        }
    }

    #[test]
    fn a_folder_of_ones_own_comes_before_a_built_in_theme() {
        files(&[
            ("guidebook.yaml", "title: Our shop\nlimits: eu-853\ntheme: steel\n"),
            ("steel/words/en.ftl", "hme = Home\n#^1:1 advice[theme-part-unused] `hme`\n"),
        ]);
    }
}
