//! Pieces that lie out of the cold longer than the limit.

use crate::analysis::clock::{ClockKind, ColdClock, Over};
use crate::analysis::cold_limits::{SetBy, TimeLimit, time_out};
use crate::analysis::minutes::bench_minutes;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Finding, Level};
use crate::model::quantity::Minutes;
use crate::model::words::Clock;
use crate::model::{Procedure, Step};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "out-too-long",
        group: Group::Cold,
        level: Level::Fault,
        what: "At the slower pace, a piece, together with what it came from, lies out of the cold longer than the profile or the guidebook allows. Several worked at once count each for all.",
        why: "The surface of a piece warms within minutes and germs double while it lies there. The clock runs for the learner who is slowest, not for the cutter who wrote the guide.",
        example: "# stricter: { limit: time-out, at-most: 30 minutes }\nsteps:\n  - { name: Lift the loin, minutes: 9–22 }\n  - { name: Saw the ribs, minutes: 3–12 }        # 34 minutes, and nothing went back",
        mend: "Put `back-to-cold: all`, or the pieces that wait, on an earlier step; or take out fewer at once.",
        source: "Guidebook format, \"Time out of the cold\"; for us-food-code FDA Food Code 3-501.19(B), applied to bench work as a prudent limit.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some(limit) = time_out(subject.book) else { return };
    let kind = match limit.clock {
        Clock::Single => ClockKind::Single,
        Clock::Cumulative => ClockKind::Cumulative,
    };
    for (_, procedure, analysis) in subject.procedures() {
        let Some(over) = analysis.cold.as_ref().and_then(|cold: &ColdClock| cold.first_over(limit.at_most, kind)) else { continue };
        if let Some(finding) = finding(procedure, analysis, &limit, over) {
            report.add(finding);
        }
    }
}

fn finding(procedure: &Procedure, analysis: &ProcedureAnalysis, limit: &TimeLimit<'_>, over: Over) -> Option<Finding> {
    let step = procedure.steps.get(over.step)?;
    let piece = analysis.network.pieces.get(over.piece)?;
    let who = match limit.set_by {
        SetBy::Profile(id, entry) => format!("{id} allows ({})", entry.citation.rule()),
        SetBy::Guidebook(_) => "this guidebook allows".to_owned(),
    };
    let so_far = |steps: &[Step]| steps.iter().filter_map(bench_minutes).fold(Minutes(0), |sum, minutes| Minutes(sum.0 + minutes.high.0));
    let stretch = procedure.steps.get(over.stretch.from..=over.step)?;
    let found = if limit.clock == Clock::Single { so_far(stretch) } else { over.longest };
    let counted = if limit.clock == Clock::Single { "" } else { " in all, all its stretches added," };
    let message = format!(
        "{}`{}` is out of the cold for {found} minutes{counted} {}, {} over the {} minutes that {who}",
        if piece.taken_by.is_some_and(|taking| taking.step < over.step) { "what came of " } else { "" },
        piece.id,
        path(procedure, over, stretch),
        Minutes(found.0 - limit.at_most.0),
        limit.at_most,
    );
    let mut finding = CHECK.info.at(step.place, message);
    if let Some(first) = procedure.steps.get(over.stretch.from).filter(|first| first.place != step.place) {
        finding = finding.also(first.place, format!("out of the cold from here, `{}`", step_name(first)));
    }
    if let SetBy::Guidebook(own) = limit.set_by {
        finding = finding.also(own.place, "the limit of the guidebook");
    }
    Some(finding.help(mend(procedure, limit, over)))
}

/// The steps of the stretch with their minutes: `through steps 1 to 5 (5 + 4 + 12 + 4 + 10)`.
fn path(procedure: &Procedure, over: Over, stretch: &[Step]) -> String {
    let minutes = |step: &Step| {
        let once = step.minutes.value().map_or_else(String::new, |minutes| minutes.high.to_string());
        match step.at_once.value() {
            Some(times) if *times > 1 => format!("{times} \u{d7} {once}"),
            _ => once,
        }
    };
    let all: Vec<String> = stretch.iter().map(minutes).collect();
    let name = procedure.steps.get(over.step).map_or("", step_name);
    if all.len() == 1 {
        return format!("in step {}, `{name}` ({})", over.step + 1, all.join(""));
    }
    format!(
        "by the end of step {}, `{name}`, through steps {} to {} ({})",
        over.step + 1,
        over.stretch.from + 1,
        over.step + 1,
        all.join(" + ")
    )
}

/// Where going back would mend it; or that it cannot.
fn mend(procedure: &Procedure, limit: &TimeLimit<'_>, over: Over) -> String {
    let longest = |step: &Step| bench_minutes(step).map_or(0, |minutes| minutes.high.0);
    let step = procedure.steps.get(over.step);
    let alone = step.map_or(0, longest);
    if alone > limit.at_most.0 {
        let at_once = step.and_then(|step| step.at_once.value()).is_some_and(|times| *times > 1);
        return if at_once {
            "Take out fewer at once: this step alone is longer than the limit.".to_owned()
        } else {
            "Split this step: it alone is longer than the limit, so going back before it does not help.".to_owned()
        };
    }
    if limit.clock == Clock::Cumulative {
        return "Put back what waits, with `back-to-cold` on an earlier step, so that only the piece at work is out; or shorten the work."
            .to_owned();
    }
    let before = over.step.checked_sub(1).and_then(|at| procedure.steps.get(at));
    before.map_or_else(
        || "Shorten the work, or take out less at once.".to_owned(),
        |before| format!("Put `back-to-cold: all` on step {}, `{}`, or at an earlier one.", over.step, step_name(before)),
    )
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files};

    const STEPS: &str = "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 10–20
    give: { chicken-legs: { share: 31–35 %, use: retail }, chicken-body: rest }
    loss: 0
";

    fn under(guidebook: &str, lines: &str) {
        let guide = format!(
            "{HEAD}{STEPS}{lines}    take: chicken-body
    do: Cut.
    give: {{ chicken-wings: {{ share: 15–18 %, use: retail }}, chicken-crown: {{ share: rest, use: retail }} }}
    loss: 0
"
        );
        files(&[("guidebook.yaml", guidebook), ("chicken/whole.yaml", &guide)]);
    }

    fn wings(own: &str, lines: &str) {
        let stricter = format!("{{ limit: time-out, at-most: {own}, watch: the learner, every: each piece, if-missed: Put it back. }}");
        under(&format!("title: T\nlimits: eu-853\nstricter:\n  - {stricter}\n"), lines);
    }

    #[test]
    fn a_learner_who_is_too_slow() {
        wings(
            "30 minutes",
            "  - name: Take off the wings
#   ^^^^ fault[out-too-long] what came of `chicken-whole` is out of the cold for 35 minutes by the end of step 2, `Take off the wings`, through steps 1 to 2 (20 + 15), 5 over the 30 minutes that this guidebook allows
    minutes: 5–15
",
        );
    }

    /// Equal is not over; what goes back begins a new stretch.
    #[test]
    fn silent_at_the_limit_and_after_going_back() {
        wings("30 minutes", "  - name: Take off the wings\n    minutes: 5–10\n");
        wings("30 minutes", "    back-to-cold: all\n  - name: Take off the wings\n    minutes: 5–15\n");
    }

    /// Six loins that are pulled together by one trained cutter, 22 minutes each: the last is out for 132.
    #[test]
    fn several_at_once() {
        wings(
            "2 h",
            "    back-to-cold: all
  - name: Take off the wings
#   ^^^^ fault[out-too-long] `chicken-body` is out of the cold for 132 minutes in step 2, `Take off the wings` (6 × 22), 12 over the 120 minutes
    minutes: 22
    at-once: 6
",
        );
    }

    /// One run of 240 minutes under the Food Code; two hours in all, over every stretch, in Australia.
    #[test]
    fn the_clock_of_the_profile() {
        under(
            "title: T\nlimits: us-food-code\n",
            "    back-to-cold: all
  - name: Take off the wings
#   ^^^^ fault[out-too-long] in step 2, `Take off the wings` (241), 1 over the 240 minutes that us-food-code allows (FDA Food Code, 3-501.19(B))
    minutes: 241
",
        );
        under("title: T\nlimits: us-food-code\n", "    back-to-cold: all\n  - name: Take off the wings\n    minutes: 240\n");
        under(
            "title: T\nlimits: australia-retail\n",
            "    back-to-cold: all
  - name: Take off the wings
#   ^^^^ fault[out-too-long] out of the cold for 121 minutes in all, all its stretches added, in step 2, `Take off the wings` (101), 1 over the 120 minutes that australia-retail allows
    minutes: 101
",
        );
        under("title: T\nlimits: australia-retail\n", "    back-to-cold: all\n  - name: Take off the wings\n    minutes: 100\n");
        under("title: T\nlimits: canada\n", "  - name: Take off the wings\n    minutes: 500\n");
    }
}
