//! A declared yield that sticks out of what the steps can give.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "yield-outside-computed-range",
        group: Group::Balance,
        level: Level::Advice,
        what: "A part of a declared yield lies outside the range that the steps can give.",
        why: "The declared figure promises days that the steps do not have. Readers take it for the whole truth, since it stands beside the title.",
        example: "yields:\n  chicken-breasts: 34–44 %   # the steps give 35.5–44.7 %",
        mend: "Write the range that the steps give, or correct the share of the step that is too narrow.",
        source: "Guidebook format, \"A procedure\". What is rounded to a tenth of a percent sticks out by 0.05 points at most and is left alone (own judgement).",
    },
    run: Run::Check(run),
};

/// Half of a tenth of a percent: so much a figure rounded for print may stick out.
const ROUNDING: f64 = 0.000_5;

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (at, procedure, analysis) in subject.procedures() {
        let Some(joint) = &analysis.joint else { continue };
        for (position, declared) in joint.declared.iter().enumerate() {
            // What cannot be at all is a fault of its own.
            if !declared.meets() || joint.conflict.contains(&position) {
                continue;
            }
            let (below, above) = declared.sticks_out();
            let Some((stated, computed)) = procedure.yields.get(declared.at).zip(declared.computed) else { continue };
            let Some(share) = stated.share.given() else { continue };
            let most = below.max(above);
            if most <= ROUNDING + 1e-9 {
                continue;
            }
            let (piece, steps) = (&stated.piece.value, weight::percent(computed.range()));
            let side = if below >= above { "below" } else { "above" };
            let weight = weight::of_start(subject, at, most);
            let amount = weight::points_of(most);
            let message = format!("`{piece}` is declared as {} %, {amount} {side} what the steps give, {steps}{weight}", share.value);
            report.add(CHECK.info.at(share.place, message).help(format!("Write `{piece}: {steps}`.")));
        }
    }
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
      chicken-body: { share: 64.7–69 %, use: retail }
    loss: 0–0.3 %
";

    #[test]
    fn a_yield_that_sticks_out() {
        steps(&format!(
            "{LEGS}yields:
  chicken-legs: 30–34 %
#               ^^^^^^^ advice[yield-outside-computed-range] `chicken-legs` is declared as 30–34 %, 1 point below what the steps give, 31–35 % (0.018 kg of a 1.8 kg start)
"
        ));
    }

    /// Rounding, and a yield that cannot be at all: that is a fault of another check.
    #[test]
    fn silent_for_rounding_and_for_what_is_not_possible() {
        steps(&format!(
            "{LEGS}yields:
  chicken-legs: 40–42 %
#               ^^^^^^^ fault[yields-not-possible-with-steps]
  chicken-body: 64.65–69 %
"
        ));
    }
}
