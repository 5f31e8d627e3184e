//! Limits of the shop that are looser than those of the profile, and therefore hold nothing.

use crate::analysis::cold_limits::{asked_for, hold_of, of_stage, profile_of};
use crate::analysis::demands::product_of;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Finding, Level};
use crate::model::Guidebook;
use crate::model::builtin::BuiltinProfile;
use crate::model::builtin::limits::{Limit, OwnFigure};
use crate::model::guidebook::Stricter;
use crate::model::quantity::{Minutes, Temperature};
use crate::model::words::{LimitKind, Product, Stage};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "stricter-looser-than-profile",
        group: Group::Cold,
        level: Level::Fault,
        what: "An entry under `stricter` is looser than the limit of the profile that it should tighten.",
        why: "The page would show the learner a figure that the law of the place does not allow. A guidebook may demand more, never less.",
        example: "limits: uk-retail           # 8 °C\nstricter:\n  - { limit: hold, at-most: 10 °C }",
        mend: "Lower the figure below that of the profile, or take the entry out.",
        source: "Guidebook format, \"Built-in ids\": a guidebook may demand more, never less. The figure's own source stands in the finding.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some((id, profile)) = profile_of(subject.book) else { return };
    for stricter in &subject.book.stricter {
        let (Some(kind), Some(figure), Some(stated)) = (stricter.limit.value(), stricter.figure.value(), stricter.at_most.given()) else {
            continue;
        };
        let looser = match figure {
            OwnFigure::Temperature(own) => temperature(subject.book, id, profile, *kind, *own),
            OwnFigure::Time(own) => time(profile, *kind, *own),
        };
        let Some((limit, printed)) = looser else { continue };
        let message = format!("`{}` for `{}` is looser than the {printed} of {id} ({})", stated.value, kind.word(), limit.citation.rule());
        report.add(with_help(CHECK.info.at(stated.place, message), stricter, &printed));
    }
}

fn with_help(finding: Finding, stricter: &Stricter, printed: &str) -> Finding {
    let side = if stricter.limit.value() == Some(&LimitKind::ToolWater) { "more" } else { "less" };
    finding.help(format!("Write {printed} or {side}, or take the entry out."))
}

/// The limit of the profile that a temperature should have tightened and does not.
fn temperature<'a>(
    book: &Guidebook,
    id: &'a str,
    profile: &'a BuiltinProfile,
    kind: LimitKind,
    own: Temperature,
) -> Option<(&'a Limit, String)> {
    let figure = |limit: &'a Limit| Some((limit, limit.at_most.as_ref()?.temperature?));
    let limits: Vec<(&Limit, Temperature)> = match kind {
        // One figure for all products: it is idle only where it tightens none of those that the guidebook cuts.
        LimitKind::Hold => products(book)
            .into_iter()
            .filter_map(|(product, species)| {
                let crate::analysis::cold_limits::SetBy::Profile(_, limit) = hold_of(id, profile, product, species)?.set_by else {
                    return None;
                };
                figure(limit)
            })
            .collect(),
        LimitKind::Receiving => of_stage(profile, Stage::Receiving).filter_map(figure).collect(),
        LimitKind::Room => of_stage(profile, Stage::Room).filter_map(figure).collect(),
        LimitKind::ToolWater => {
            let hot = of_stage(profile, Stage::ToolWater).filter_map(|limit| Some((limit, limit.at_least.as_ref()?)));
            let coldest = hot.filter(|(_, figure)| figure.temperature.is_some_and(|least| own < least));
            return coldest.map(|(limit, figure)| (limit, figure.printed.clone())).next();
        }
        LimitKind::TimeOut | LimitKind::CleaningInterval => return None,
    };
    let (limit, highest) = limits.iter().copied().max_by_key(|(_, highest)| highest.exact())?;
    (own > highest).then(|| (limit, limit.at_most.as_ref().map_or_else(String::new, |figure| figure.printed.clone())))
}

/// The classes and species of all guides.
fn products(book: &Guidebook) -> Vec<(Product, &str)> {
    let all = book.procedures.iter().filter_map(|procedure| Some((product_of(book, procedure)?, procedure.species.value()?.as_str())));
    all.collect()
}

/// The limit of the profile that a time should have tightened and does not. A longer time that an option of the
/// profile allows asks for that option.
fn time(profile: &BuiltinProfile, kind: LimitKind, own: Minutes) -> Option<(&Limit, String)> {
    let stage = match kind {
        LimitKind::TimeOut => Stage::TimeOut,
        LimitKind::CleaningInterval => Stage::CleaningInterval,
        LimitKind::Hold | LimitKind::Room | LimitKind::Receiving | LimitKind::ToolWater => return None,
    };
    let limits = of_stage(profile, stage).filter_map(|limit| Some((limit, limit.duration.as_ref()?)));
    let (limit, longest) = limits.min_by_key(|(_, longest)| longest.minutes)?;
    let option = match kind {
        LimitKind::TimeOut => asked_for(profile, own).is_some(),
        _ => profile.limits.iter().any(|limit| {
            limit.stage == stage
                && limit.only_when_asked
                && limit.binds()
                && limit.duration.as_ref().is_some_and(|longest| own <= longest.minutes)
        }),
    };
    (own > longest.minutes && !option).then(|| (limit, longest.printed.clone()))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn guidebook(limits: &str, limit: &str, at_most: &str, finding: &str) {
        let text = format!(
            "title: T
limits: {limits}
stricter:
  - limit: {limit}
    at-most: {at_most}
{finding}    watch: the learner
    every: each piece
    if-missed: Put it back.
"
        );
        files(&[("guidebook.yaml", &text)]);
    }

    #[test]
    fn looser_than_the_profile() {
        let fault = |text: &str| format!("#            ^ fault[stricter-looser-than-profile] {text}\n");
        guidebook(
            "eu-853",
            "hold",
            "5 °C",
            &fault("`5 °C` for `hold` is looser than the 4 °C of eu-853 (Regulation (EC) 853/2004, Annex III, section II"),
        );
        guidebook("uk-retail", "hold", "50 °F", &fault("looser than the 8 °C of uk-retail"));
        guidebook("eu-853", "room", "15 °C", &fault("looser than the 12 °C of eu-853"));
        guidebook(
            "us-food-code",
            "time-out",
            "7 h",
            &fault("`7 h` for `time-out` is looser than the 4 h of us-food-code (FDA Food Code, 3-501.19(B)"),
        );
        guidebook("australia-retail", "time-out", "300 minutes", &fault("looser than the 2 h of australia-retail"));
        guidebook("eu-853", "tool-water", "70 °C", &fault("`70 °C` for `tool-water` is looser than the 82 °C of eu-853"));
        guidebook("us-food-code", "cleaning-interval", "30 h", &fault("looser than the 4 h of us-food-code"));
    }

    /// Options that must be asked for are asked for so; where the profile is silent, any figure is stricter.
    #[test]
    fn silent_where_it_is_stricter_or_asks_for_an_option() {
        guidebook("eu-853", "hold", "4 °C", "");
        guidebook("eu-853", "time-out", "7 h", "");
        guidebook("us-food-code", "time-out", "6 h", "");
        guidebook("us-food-code", "time-out", "90", "");
        guidebook("us-food-code", "cleaning-interval", "10 h", "");
        guidebook("eu-853", "tool-water", "85 °C", "");
        guidebook("us-plant", "hold", "55 °F", "");
    }
}
