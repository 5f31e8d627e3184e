//! Cautions of the shop whose signal word is not the one for their harm.

use crate::checks::hazard_words::{or, signals_for};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "signal-not-matching-harm",
        group: Group::Caution,
        level: Level::Fault,
        what: "A caution in `cautions.yaml` has a signal word that does not go with its harm: death asks for danger or warning, lasting harm for warning, healing harm for caution, property for notice.",
        why: "The word is all that many people read. Too weak, it hides what can maim; too strong, it wears the strong words out.",
        example: "# cautions.yaml\nbrine-injector:\n  signal: notice              # lasting asks for warning\n  harm: lasting",
        mend: "Change the signal word, or the harm if that is what is wrong.",
        source: "Guidebook format, \"Built-in ids\"; signal words after ANSI Z535 as public manuals explain them.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (id, caution) in &subject.book.cautions {
        let (Some(signal), Some(harm)) = (caution.signal.given(), caution.harm.value()) else { continue };
        let wanted = signals_for(*harm);
        if wanted.contains(&signal.value) {
            continue;
        }
        let words = or(wanted.iter().map(|word| word.word()));
        let message = format!("`{id}` is signalled `{}`, and harm `{}` asks for {words}", signal.value.word(), harm.word());
        report.add(CHECK.info.at(signal.place, message).help(format!("Write {words}, or correct `harm`.")));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn caution(signal: &str, harm: &str, finding: &str) {
        let text = format!(
            "brine-injector:\n  signal: {signal}\n{finding}  hazard: Needles.\n  consequence: A pierced hand.\n  avoid: Close the guard.\n  harm: {harm}\n"
        );
        files(&[("cautions.yaml", &text)]);
    }

    #[test]
    fn a_word_too_weak_or_too_strong() {
        caution(
            "notice",
            "lasting",
            "#         ^^^^^^ fault[signal-not-matching-harm] `brine-injector` is signalled `notice`, and harm `lasting` asks for `warning`\n",
        );
        caution("danger", "healing", "#         ^^^^^^ fault[signal-not-matching-harm] asks for `caution`\n");
        caution("caution", "death", "#         ^^^^^^^ fault[signal-not-matching-harm] asks for `danger` or `warning`\n");
        caution("caution", "property", "#         ^^^^^^^ fault[signal-not-matching-harm] asks for `notice`\n");
    }

    #[test]
    fn silent_where_the_word_goes_with_the_harm() {
        for (signal, harm) in
            [("danger", "death"), ("warning", "death"), ("warning", "lasting"), ("caution", "healing"), ("notice", "property")]
        {
            caution(signal, harm, "");
        }
    }

    /// The built-in cautions keep the same table.
    #[test]
    fn built_in_cautions_keep_it_too() {
        for (id, caution) in &crate::model::builtin::Builtin::get().cautions {
            assert!(crate::checks::hazard_words::signals_for(caution.harm).contains(&caution.signal), "{id}");
        }
    }
}
