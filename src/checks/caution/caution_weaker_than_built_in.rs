//! Cautions of the shop that say less than the built-in ones of the same id.

use crate::checks::hazard_words::signals_for;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::{Harm, Signal};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "caution-weaker-than-built-in",
        group: Group::Caution,
        level: Level::Fault,
        what: "`cautions.yaml` has an entry with the id of a built-in caution, and gives it a weaker signal word or a lesser harm.",
        why: "A guidebook may demand more, never less. The entry would stand in the place of the stronger warning on every page.",
        example: "# cautions.yaml\nno-glove-at-moving-blade:\n  signal: caution             # built in as a warning\n  harm: healing",
        mend: "Use the built-in signal word and harm, or give the entry another id.",
        source: "Guidebook format, \"Built-in ids\": a guidebook may demand more, never less.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (id, own) in &subject.book.cautions {
        let Some(builtin) = subject.book.builtin.cautions.get(id) else { continue };
        let (Some(signal), Some(harm)) = (own.signal.given(), own.harm.given()) else { continue };
        // A word that does not even go with the entry's own harm is told by the check of that.
        if !signals_for(harm.value).contains(&signal.value) {
            continue;
        }
        if strength(signal.value) < strength(builtin.signal) {
            let (own, strong) = (signal.value.word(), builtin.signal.word());
            let message = format!("`{id}` is signalled `{own}` here, and `{strong}` where it is built in");
            report.add(CHECK.info.at(signal.place, message).help(format!("Write `{strong}`, or give the entry another id.")));
        } else if graveness(harm.value) < graveness(builtin.harm) {
            let (own, grave) = (harm.value.word(), builtin.harm.word());
            let message = format!("`{id}` has the harm `{own}` here, and `{grave}` where it is built in");
            report.add(CHECK.info.at(harm.place, message).help(format!("Write `{grave}`, or give the entry another id.")));
        }
    }
}

const fn strength(signal: Signal) -> u8 {
    match signal {
        Signal::Danger => 3,
        Signal::Warning => 2,
        Signal::Caution => 1,
        Signal::Notice => 0,
    }
}

const fn graveness(harm: Harm) -> u8 {
    match harm {
        Harm::Death => 3,
        Harm::Lasting => 2,
        Harm::Healing => 1,
        Harm::Property => 0,
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn caution(id: &str, lines: &str) {
        files(&[(
            "cautions.yaml",
            &format!("{id}:\n  hazard: A running blade.\n  consequence: A lost finger.\n  avoid: Take the gloves off.\n{lines}"),
        )]);
    }

    #[test]
    fn weaker_than_built_in() {
        caution(
            "no-glove-at-moving-blade",
            "  signal: caution\n#         ^^^^^^^ fault[caution-weaker-than-built-in] is signalled `caution` here, and `warning` where it is built in\n  harm: healing\n",
        );
        caution(
            "blade-away-from-body",
            "  signal: warning\n  harm: lasting\n#       ^^^^^^^ fault[caution-weaker-than-built-in] has the harm `lasting` here, and `death` where it is built in\n",
        );
    }

    /// A stronger word is fine, and so is an id of the shop's own.
    #[test]
    fn silent_where_it_says_as_much_or_more() {
        caution("blade-away-from-body", "  signal: danger\n  harm: death\n");
        caution("keep-cold", "  signal: warning\n  harm: death\n");
        caution("floor-of-the-shop", "  signal: caution\n  harm: healing\n");
    }
}
