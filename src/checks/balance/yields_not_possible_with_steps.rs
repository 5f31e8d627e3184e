//! Declared yields that the steps cannot give.

use crate::analysis::joint::{Declared, Joint};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::Procedure;
use crate::model::procedure::DeclaredYield;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "yields-not-possible-with-steps",
        group: Group::Balance,
        level: Level::Fault,
        what: "A declared yield, or several of them together, cannot come out of the steps, whatever each step gives within its ranges.",
        why: "Two figures for one piece in one guide: whoever buys by the one and cuts by the other is short of meat.",
        example: "yields:\n  chicken-breasts: 50–55 %   # the steps give 35.5–44.7 %",
        mend: "Correct the declared yield, or the shares of the steps that it comes from.",
        source: "Guidebook format, \"A procedure\": a declared yield must be jointly possible with the steps. Decided by a linear program over the weights.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (at, procedure, analysis) in subject.procedures() {
        let Some(joint) = &analysis.joint else { continue };
        let mut alone = joint.declared.iter().filter(|declared| !declared.meets()).peekable();
        if alone.peek().is_none() {
            together(subject, at, procedure, joint, report);
        }
        for declared in alone {
            tell(subject, at, procedure, declared, report);
        }
    }
}

/// A yield that not even alone can come out of the steps.
fn tell(subject: &Subject<'_>, at: usize, procedure: &Procedure, declared: &Declared, report: &mut Report) {
    let (Some(stated), Some(computed)) = (procedure.yields.get(declared.at), declared.computed) else { return };
    let Some(share) = stated.share.given() else { return };
    let (low, high) = (share.value.low.fraction(), share.value.high.fraction());
    let (by, side) = if low > computed.high { (low - computed.high, "over") } else { (computed.low - high, "under") };
    let (piece, steps) = (&stated.piece.value, weight::percent(computed.range()));
    let weight = weight::of_start(subject, at, by);
    let message = format!("`{piece}` is declared {} {side} the {steps} that the steps give{weight}", weight::points_of(by));
    report.add(CHECK.info.at(share.place, message).help(format!("Write `{piece}: {steps}`, or take the line out.")));
}

/// Yields that can each come out of the steps, but not all at once: told at the last of them.
fn together(subject: &Subject<'_>, at: usize, procedure: &Procedure, joint: &Joint, report: &mut Report) {
    let members = joint.conflict.iter().filter_map(|position| procedure.yields.get(joint.declared.get(*position)?.at));
    let members: Vec<&DeclaredYield> = members.collect();
    let Some((last, others)) = members.split_last() else { return };
    let Some(share) = last.share.given() else { return };
    let by = joint.total_miss.unwrap_or_default();
    let names: Vec<String> = others.iter().map(|other| format!("`{}`", other.piece.value)).collect();
    let weight = weight::of_start(subject, at, by);
    let message = format!(
        "`{}` cannot be so beside {}: together they miss the steps by {}{weight}",
        last.piece.value,
        names.join(", "),
        weight::points_of(by)
    );
    report.add(CHECK.info.at(share.place, message).help("Widen one of these yields, or take one out."));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    const LEGS: &str = "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
";

    /// The body is 65–69 %, so the crown is at least 65 · 0.82 = 53.3 % and at most 69 · 0.85 = 58.65 %.
    #[test]
    fn one_yield_that_the_steps_cannot_give() {
        steps(&format!(
            "{LEGS}yields:
  chicken-crown: 60–62 %
#                ^^^^^^^ fault[yields-not-possible-with-steps] `chicken-crown` is declared 1.35 points over the 53.3–58.65 % that the steps give (0.024 kg of a 1.8 kg start)
"
        ));
    }

    /// Few legs leave much body, and then neither wings nor crown can be at their lowest: 31 + 9.75 + 53.3 is short.
    #[test]
    fn yields_that_cannot_hold_together() {
        steps(&format!(
            "{LEGS}yields:
  chicken-legs: 31–31.5 %
  chicken-wings: 10–12 %
  chicken-crown: 53.3–55 %
#                ^^^^^^^^^ fault[yields-not-possible-with-steps] `chicken-crown` cannot be so beside `chicken-legs`
"
        ));
    }

    /// A yield that is possible and lies inside, one for the loss, and one beside a step that is not sound.
    #[test]
    fn silent_where_the_steps_can_give_it() {
        steps(&format!("{LEGS}yields: {{ chicken-crown: 54–58 %, loss: 0 }}\n"));
    }
}
