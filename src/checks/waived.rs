//! Advice that somebody accepts: by a waiver at one place of one guide, or by `off` everywhere.
//!
//! A waiver silences the advice of its check in its own file, where the advice points into what `where` covers
//! (`reach`), up to and on the day `until`, as of the newest date in the guidebook. `off` silences all advice of
//! its check in every file. Neither touches a fault, nor a group that can't be waived, nor what is said of waivers
//! themselves. What was accepted is kept, so that the guide can show it. Texts of findings are the checks'.

use super::find;
use super::reach::reach;
use super::report::Subject;
use crate::finding::{Finding, Level, SourceMap, order};
use crate::model::Guidebook;
use crate::model::guidebook::Off;
use crate::model::procedure::{Procedure, Waiver};
use crate::model::stated::Spanned;

/// Checks of waivers: to waive those would be to wave oneself through. They can be turned off.
const OF_WAIVERS: [&str; 2] = ["waiver-expired", "waiver-without-finding"];

/// An advice, and what accepts it.
#[derive(Debug, Clone)]
pub struct Accepted {
    /// The advice.
    pub finding: Finding,
    /// What accepts it.
    pub by: Acceptance,
}

/// What accepts an advice; each has the reason.
#[derive(Debug, Clone)]
pub enum Acceptance {
    /// A waiver of the procedure in whose file the advice stands.
    Waiver(Waiver),
    /// An entry of `off` in `guidebook.yaml`.
    Off(Off),
}

/// A waiver that silences nothing.
#[derive(Debug, Clone, Copy)]
pub struct Idle<'a> {
    /// The guide that holds it.
    pub procedure: &'a Procedure,
    /// The waiver.
    pub waiver: &'a Waiver,
    /// The check that it names.
    pub check: &'a str,
    /// What stands under `where`.
    pub target: &'a Spanned<String>,
    /// True when `where` names something of the file.
    pub target_known: bool,
}

/// Findings after waivers were held against them.
pub(super) struct ByWaivers<'a> {
    pub(super) left: Vec<Finding>,
    pub(super) accepted: Vec<Accepted>,
    /// Empty while there is a fault: what depends on it is silent, and its waiver is not idle for that.
    pub(super) idle: Vec<Idle<'a>>,
}

/// Takes out what waivers accept.
pub(super) fn by_waivers<'a>(findings: Vec<Finding>, subject: &Subject<'a>) -> ByWaivers<'a> {
    let mut result = ByWaivers { left: Vec::new(), accepted: Vec::new(), idle: Vec::new() };
    let mut left = findings;
    for procedure in &subject.book.procedures {
        for waiver in &procedure.waivers {
            let (Some(check), Some(target)) = (waiver.check.given(), waiver.target.given()) else { continue };
            if waiver.until.is_broken() || expired(waiver, subject.book) || !is_waivable(&check.value) {
                continue;
            }
            let spans = reach(procedure, subject.sources, &target.value);
            let covers = |finding: &Finding| {
                let at = finding.place;
                let inside = spans.iter().any(|span| at.span.start == span.start || (span.start..span.end).contains(&at.span.start));
                finding.level == Level::Advice && finding.check == check.value && at.file == procedure.file && inside
            };
            // A second waiver of the same advice finds it among what the first accepts.
            let again = result.accepted.iter().any(|accepted| covers(&accepted.finding));
            let (met, rest) = left.into_iter().partition::<Vec<_>, _>(|finding| takes_waivers(finding) && covers(finding));
            left = rest;
            if met.is_empty() && !again {
                let target_known = !spans.is_empty();
                result.idle.push(Idle { procedure, waiver, check: &check.value, target, target_known });
            }
            result.accepted.extend(met.into_iter().map(|finding| Accepted { finding, by: Acceptance::Waiver(waiver.clone()) }));
        }
    }
    if left.iter().any(|finding| finding.level == Level::Fault) {
        result.idle.clear();
    }
    result.left = left;
    result
}

/// Takes out what is turned off everywhere.
pub(super) fn by_off(findings: Vec<Finding>, book: &Guidebook) -> (Vec<Finding>, Vec<Accepted>) {
    let mut accepted = Vec::new();
    let mut left = Vec::new();
    for finding in findings {
        let off = book.off.iter().find(|off| off.check.value().is_some_and(|check| check == finding.check));
        match off.filter(|_| finding.level == Level::Advice && is_waivable(finding.check)) {
            Some(off) => accepted.push(Accepted { finding, by: Acceptance::Off(off.clone()) }),
            None => left.push(finding),
        }
    }
    (left, accepted)
}

/// Sorts as findings are sorted, and drops exact repetitions of a finding.
pub(super) fn sort(accepted: &mut Vec<Accepted>, sources: &SourceMap) {
    accepted.sort_by(|a, b| order::compare(&a.finding, &b.finding, sources));
    accepted.dedup_by(|a, b| a.finding == b.finding);
}

/// True when the day until which a waiver holds lies before the newest date in the guidebook.
pub(super) fn expired(waiver: &Waiver, book: &Guidebook) -> bool {
    waiver.until.value().zip(book.newest_date()).is_some_and(|(until, newest)| *until < newest)
}

/// True when advice of this check can be accepted at all.
pub(super) fn is_waivable(check: &str) -> bool {
    find(check).is_some_and(|check| check.info.can_be_waived())
}

fn takes_waivers(finding: &Finding) -> bool {
    !OF_WAIVERS.contains(&finding.check)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Inspection;
    use crate::checks::testing::{Entry, HEAD, files};

    const STEPS: &str = "steps:
  - name: Halve
    take: chicken-whole
    do: Cut carefully along the keel.
    minutes: 1–2
    pictures: [{ file: pictures/keel.svg, alt: The keel }, { file: pictures/keel.svg, alt: The keel again }]
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
";

    fn inspected(beside: &str, off: &str) -> Inspection {
        let picture = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"4\" height=\"4\"></svg>";
        let texts = [
            ("chicken/whole.yaml", format!("{HEAD}{beside}{STEPS}")),
            ("guidebook.yaml", format!("title: Shop\nlimits: eu-853\n{off}")),
            ("pictures/keel.svg", picture.to_owned()),
            ("turkey/whole.yaml", format!("{HEAD}{STEPS}").replace("chicken", "turkey")),
        ];
        crate::inspect(texts.into_iter().map(|(path, text)| (path.to_owned(), Entry::File(text.into_bytes()))).collect())
    }

    fn told(inspection: &Inspection) -> Vec<(&str, &'static str)> {
        inspection.findings.iter().map(|finding| (inspection.sources.path(finding.place.file), finding.check)).collect()
    }

    #[test]
    fn a_waiver_reaches_its_own_file_and_is_kept_with_its_reason() {
        let waiver = "waivers: [{ check: vague-words, where: halve, reason: They know it., by: head butcher, until: 2026-12-31 }]\n";
        assert_eq!(told(&inspected("", "")), [("chicken/whole.yaml", "vague-words"), ("turkey/whole.yaml", "vague-words")]);
        let waived = inspected(waiver, "");
        assert_eq!(told(&waived), [("turkey/whole.yaml", "vague-words")]);
        let kept = waived.verdict.checked().map(crate::checks::Checked::accepted).unwrap_or_default();
        let [Accepted { finding, by: Acceptance::Waiver(by) }] = kept else { panic!("{kept:?}") };
        assert_eq!((finding.check, by.reason.value().map(String::as_str)), ("vague-words", Some("They know it.")));
        assert_eq!(waived.accepted.len(), 1);
    }

    #[test]
    fn off_reaches_every_file() {
        let off = inspected("", "off: [{ check: vague-words, reason: Later. }]\n");
        assert_eq!(told(&off), []);
        let reasons: Vec<_> =
            off.accepted.iter().map(|accepted| matches!(&accepted.by, Acceptance::Off(off) if off.reason.value().is_some())).collect();
        assert_eq!(reasons, [true, true]);
    }

    #[test]
    fn two_waivers_of_one_advice_are_both_met() {
        let twice = "waivers:\n  - { check: vague-words, where: halve, reason: A., by: x }\n  - { check: vague-words, where: halve.do, reason: B., by: y }\n";
        let waived = inspected(twice, "");
        assert_eq!(told(&waived), [("turkey/whole.yaml", "vague-words")]);
        assert_eq!(waived.accepted.len(), 1);
    }

    #[test]
    fn what_reading_told_can_be_waived_at_its_place() {
        let raw = "purpose: |\n  See <b>this</b>.\n";
        files(&[(
            "chicken/whole.yaml",
            &format!(
                "{HEAD}waivers: [{{ check: raw-html, where: purpose, reason: It is a sign., by: lead }}]\n{raw}{}",
                crate::checks::testing::STEPS
            ),
        )]);
    }

    #[test]
    fn no_fault_and_nothing_of_balance_is_silenced() {
        for (check, level) in [("shares-exceed-whole", Level::Fault), ("loss-unstated", Level::Advice), ("range-inverted", Level::Fault)] {
            assert!(find(check).is_some_and(|known| known.info.level == level), "{check}");
            assert!(!is_waivable(check), "{check}");
        }
        let unstated = STEPS
            .replace("    do: Cut carefully along the keel.", "    do: Saw along the keel.\n    tools: [hand-saw]\n    wear: [cut-glove]")
            .replace("    loss: 0–2 %\n", "");
        let waiver = "waivers: [{ check: loss-unstated, where: halve, reason: None., by: lead }]\n";
        let text = format!("{HEAD}{waiver}{unstated}");
        let entry = |text: &str| Entry::File(text.as_bytes().to_vec());
        let book = [
            ("guidebook.yaml", "title: Shop\nlimits: eu-853\noff: [{ check: loss-unstated, reason: None. }]\n"),
            ("chicken/whole.yaml", text.as_str()),
        ];
        let inspection = crate::inspect(book.into_iter().map(|(path, text)| (path.to_owned(), entry(text))).collect());
        let checks: Vec<_> = inspection.findings.iter().map(|finding| finding.check).collect();
        assert!(checks.contains(&"loss-unstated") && checks.contains(&"check-not-waivable"), "{checks:?}");
        assert!(inspection.accepted.is_empty());
    }
}
