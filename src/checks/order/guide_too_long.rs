//! A guide of more than twelve steps.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "guide-too-long",
        group: Group::Order,
        level: Level::Advice,
        what: "A procedure has more than twelve steps.",
        why: "Nobody keeps so many in mind with wet hands, and a wall card of it is small print. Two linked guides are learned one after the other.",
        example: "steps:   # thirteen of them",
        mend: "Split the guide at a piece that is worked later, and start a second guide from that piece.",
        source: "Handbook of Hygiene Control in the Food Industry, section 22.1 (publisher and year from memory: Woodhead, 2005).",
    },
    run: Run::Check(run),
};

/// The most steps of one guide before it is better split.
const MOST: usize = 12;

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(first) = procedure.steps.get(MOST) else { continue };
        let count = procedure.steps.len();
        let message = format!("the guide has {count} steps, {} over {MOST}: this is step {}", count - MOST, MOST + 1);
        let help = format!("Start a second guide at or before `{}`, and link the two.", weight::step_name(first));
        report.add(CHECK.info.at(first.place, message).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// A guide of so many steps, each taking 10 % off.
    fn guide(steps: usize, mark: &str) -> String {
        let mut text = "steps:\n".to_owned();
        for step in 1..=steps {
            let take = if step == 1 { "chicken-whole".to_owned() } else { format!("chicken-{}", step - 1) };
            let usage = if step == steps { ", use: retail" } else { "" };
            text.push_str(&format!("  - name: Take off part {step}\n"));
            if step == 13 {
                text.push_str(mark);
            }
            text.push_str(&format!("    take: {take}\n    do: Cut.\n    minutes: 1\n    loss: 0\n    give:\n"));
            text.push_str(&format!(
                "      chicken-off-{step}: {{ share: 10 %, use: retail }}\n      chicken-{step}: {{ share: rest{usage} }}\n"
            ));
        }
        text
    }

    #[test]
    fn thirteen_steps() {
        steps(&guide(14, "#   ^^^^ advice[guide-too-long] 14 steps, 2 over 12\n"));
    }

    #[test]
    fn silent_for_twelve() {
        steps(&guide(12, ""));
    }
}
