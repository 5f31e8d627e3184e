//! A theme that no longer shows what keeps people safe.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "theme-hides-safety",
        group: Group::Caution,
        level: Level::Fault,
        what: "A page of the guidebook's own theme shows an instruction without its cautions before it, leaves out what can hurt at the head of a guide, or does not mark a guide that is not in force.",
        why: "Whoever works from the page reads the act first and the danger never, or works from a draft.",
        example: "{{ step.do_html | safe }}{{ <cautions groups={step.cautions} /> }}      # refused: the act comes first\n{{ <cautions groups={step.cautions} /> }}{{ step.do_html | safe }}",
        mend: "Show the cautions of a step before its instruction, `guide.hurt` before the steps, and `page.strip` where `page.state` is not empty. Keep them in sight on screen and on paper.",
        source: "ANSI Z535.6 (NEMA, 2011), section 6.2: safety messages stand before the instruction that they are about; guidebook format, version 1: \"On every view a caution stands before the act that it is about.\"",
    },
    run: Run::WithTheme,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, HEAD, STEPS, entries, theme};

    const HURT: &str = "{{ <cautions groups={guide.hurt} where={true} /> }}";
    const OWN: &str = "{{ <cautions groups={step.cautions} /> }}";
    const NAME: &str = "<h2>{{ step.name }}</h2>";
    const DO: &str = "{{ step.do_html | safe }}";

    /// A guide whose one step has a caution of its own, with another template for guides.
    fn guide(before: &str, step: &str, expected: &[&str]) {
        let main = format!("{before}{{% for step in guide.steps %}}{step}{{% endfor %}}");
        let template = format!("{{% extends \"base.html\" %}}{{% block main %}}{main}{{% endblock %}}");
        let head = HEAD.replace("cautions: [", "cautions: [keep-cold, ");
        let steps = STEPS.replace("    minutes: 1–2\n", "    minutes: 1–2\n    cautions: [blade-away-from-body]\n");
        entries(
            vec![
                ("guidebook.yaml", Entry::File("title: Our shop\nlimits: eu-853\ntheme: ours\n".into())),
                ("chicken/sound.yaml", Entry::File(format!("{head}{steps}").into())),
                ("ours/templates/guide.html", Entry::File(template.into())),
            ],
            expected,
        );
    }

    #[test]
    fn the_act_before_its_caution() {
        let lacks =
            "ours/templates/guide.html:1:1 fault[theme-hides-safety] step 1, Halve, shows its instruction without a caution before it";
        guide(HURT, &format!("{NAME}{DO}{OWN}"), &[lacks]);
        guide(HURT, &format!("{NAME}{DO}"), &[lacks]);
        guide(HURT, OWN, &["ours/templates/guide.html:1:1 fault[theme-hides-safety] is shown without its instruction"]);
    }

    /// What is weaker than a warning and about every step stands at the head alone.
    #[test]
    fn what_can_hurt_left_out() {
        let lacks = "ours/templates/guide.html:1:1 fault[theme-hides-safety] what can hurt is not shown before the first step";
        guide("", &format!("{NAME}{OWN}{DO}"), &[lacks]);
    }

    #[test]
    fn the_caution_before_the_act() {
        guide(HURT, &format!("{NAME}{OWN}{DO}"), &[]);
    }

    #[test]
    fn a_draft_that_is_not_marked() {
        let base = "<!doctype html><meta http-equiv=\"Content-Security-Policy\" content=\"{{ page.policy }}\"><style>{{ page.style | safe }}</style>{% block main %}{% endblock %}";
        let draft = HEAD.replace("approved-by: head butcher, review-by: 2027-03-02", "state: draft");
        entries(
            vec![
                ("guidebook.yaml", Entry::File("title: Our shop\nlimits: eu-853\ntheme: ours\n".into())),
                ("chicken/sound.yaml", Entry::File(format!("{draft}{STEPS}").into())),
                ("ours/templates/base.html", Entry::File(base.into())),
            ],
            &["ours/templates/base.html:1:1 fault[theme-hides-safety] a guide that is not in force is not marked: `DRAFT"],
        );
    }

    #[test]
    fn a_style_that_hides() {
        let style = "@media print { .caution { display: none } }";
        theme(&[("styles/own.css", style)], &["styles/own.css:1:16 fault[theme-hides-safety] this takes `.caution` out of sight"]);
        theme(&[("styles/own.css", "@media print { .kit { display: none } }")], &[]);
    }
}
