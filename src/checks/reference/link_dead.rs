//! Links that lead to nothing.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Guidebook;
use crate::model::links::{candidates, destination};
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "link-dead",
        group: Group::Reference,
        level: Level::Fault,
        what: "A link in a free text leads to a guide, a page, a course, a cut list or a picture that is not in the guidebook.",
        why: "Whoever taps it at the bench, with wet gloves and no signal, gets an error in place of the rule.",
        example: "See [the side](side-primal.yaml).      # refused\nSee [the side](side-primals.yaml).",
        mend: "Write the path of the file as it lies in the guidebook, seen from the file that holds the link or from the top.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    for link in book.links.iter().filter(|link| !link.picture) {
        let paths = candidates(&link.folder, &link.target);
        let broken = paths
            .iter()
            .any(|path| [path.clone(), format!("{path}.yaml"), format!("{path}.md")].iter().any(|path| known::is_broken(book, path)));
        if broken || destination(book, &link.folder, &link.target).is_some() {
            continue;
        }
        if link.target.is_empty() {
            report.add(CHECK.info.at(link.place, "this link leads nowhere").help("Write a path between the round brackets."));
            continue;
        }
        let up = if link.folder.is_empty() { "" } else { "../" };
        let documents = known_paths(book);
        let near = paths.iter().find_map(|path| {
            let named = if path.contains('.') { path.clone() } else { format!("{path}.yaml") };
            nearest(&named, documents.iter().map(String::as_str))
        });
        let help = near.map_or_else(|| "Write the path of a file of this guidebook.".to_owned(), |near| format!("Write `{up}{near}`."));
        report.add(CHECK.info.at(link.place, format!("the link `{}` leads to nothing in the guidebook", link.target)).help(help));
    }
}

fn known_paths(book: &Guidebook) -> Vec<String> {
    let procedures = book.procedures.iter().map(|procedure| format!("{}.yaml", procedure.id));
    let pages = book.pages.iter().map(|page| format!("pages/{}.md", page.id));
    let courses = book.courses.iter().map(|course| format!("courses/{}.yaml", course.id));
    procedures.chain(pages).chain(courses).collect()
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files};

    #[test]
    fn a_guide_and_a_page() {
        beside(
            "purpose: See [the joints](joints.yaml).
#            ^^^^^^^^^^^^^^^^^^^^^^^^^ fault[link-dead] `joints.yaml`
",
        );
    }

    #[test]
    fn an_empty_link() {
        files(&[(
            "pages/a.md",
            "See [this]().
#   ^^^^^^^^ fault[link-dead] leads nowhere
",
        )]);
    }

    #[test]
    fn what_is_there() {
        files(&[
            (
                "pages/a.md",
                "[guide](../chicken/whole.yaml#halve), [again](chicken/whole), [page](a.md), [up](#rules), [cuts](cuts/chicken)
",
            ),
            (
                "cuts/chicken.yaml",
                "chicken-half: { name: Half }
",
            ),
        ]);
    }

    #[test]
    fn silent_where_the_guide_can_not_be_read() {
        files(&[
            (
                "chicken/other.yaml",
                "title: \"Other
#      ^ fault[unclosed-quote]
",
            ),
            (
                "pages/a.md",
                "[guide](../chicken/other.yaml) and [again](chicken/other)
",
            ),
        ]);
    }
}
