//! Which limits on cold and time hold for a guide: those of the profile, or stricter ones of the guidebook.
//!
//! A profile that is silent sets no limit, and no other profile speaks for it. What is repealed, from memory or
//! text only is never held against anything.

use crate::model::builtin::BuiltinProfile;
use crate::model::builtin::limits::{Limit, OwnFigure};
use crate::model::guidebook::Stricter;
use crate::model::quantity::{Minutes, Temperature};
use crate::model::words::{Clock, LimitKind, Measure, Product, Stage};
use crate::model::{Guidebook, Procedure};

use super::demands::product_of;

/// The profile of a guidebook, with its id; `None` when none is named, or one that nobody knows.
#[must_use]
pub fn profile_of(book: &Guidebook) -> Option<(&str, &BuiltinProfile)> {
    let id = book.limits.value()?;
    book.builtin.profiles.get(id).map(|profile| (id.as_str(), profile))
}

/// Who sets a limit.
#[derive(Debug, Clone, Copy)]
pub enum SetBy<'a> {
    /// The profile, by its id, with the entry.
    Profile(&'a str, &'a Limit),
    /// The guidebook, under `stricter`.
    Guidebook(&'a Stricter),
}

/// The highest temperature at which a guide's start may arrive.
#[derive(Debug, Clone, Copy)]
pub struct HoldLimit<'a> {
    /// The figure, in the unit that its source prints.
    pub at_most: Temperature,
    /// Who sets it.
    pub set_by: SetBy<'a>,
}

/// The hold limit of a guide: the lowest that is set for its product; `None` where all rules are silent.
#[must_use]
pub fn hold<'a>(book: &'a Guidebook, procedure: &Procedure) -> Option<HoldLimit<'a>> {
    let species = procedure.species.value().map_or("", String::as_str);
    let profile = profile_of(book).and_then(|(id, profile)| hold_of(id, profile, product_of(book, procedure)?, species));
    let own = figures(book, LimitKind::Hold).filter_map(|(stricter, figure)| match figure {
        OwnFigure::Temperature(at_most) => Some(HoldLimit { at_most, set_by: SetBy::Guidebook(stricter) }),
        OwnFigure::Time(_) => None,
    });
    profile.into_iter().chain(own).min_by_key(|limit| limit.at_most.exact())
}

/// The hold limit of a profile for a product.
#[must_use]
pub fn hold_of<'a>(id: &'a str, profile: &'a BuiltinProfile, product: Product, species: &str) -> Option<HoldLimit<'a>> {
    let limits = of_stage(profile, Stage::Hold).filter(|limit| limit.measures == Measure::Core && limit.covers(Some(product), species));
    let figures =
        limits.filter_map(|limit| Some(HoldLimit { at_most: limit.at_most.as_ref()?.temperature?, set_by: SetBy::Profile(id, limit) }));
    figures.min_by_key(|limit| limit.at_most.exact())
}

/// The limits of a stage that bind and need not be asked for.
pub fn of_stage(profile: &BuiltinProfile, stage: Stage) -> impl Iterator<Item = &Limit> {
    profile.limits.iter().filter(move |limit| limit.stage == stage && limit.binds() && !limit.only_when_asked)
}

/// The longest time out of the cold.
#[derive(Debug, Clone, Copy)]
pub struct TimeLimit<'a> {
    /// The figure.
    pub at_most: Minutes,
    /// How time counts.
    pub clock: Clock,
    /// Who sets it.
    pub set_by: SetBy<'a>,
}

/// The limit on time out of the cold: the shortest that is set. A guidebook that sets a longer time asks for an
/// option of the profile that allows it, if there is one; otherwise its time has no effect.
#[must_use]
pub fn time_out(book: &Guidebook) -> Option<TimeLimit<'_>> {
    let profile = profile_of(book);
    let clock = profile.and_then(|(_, profile)| profile.clock).unwrap_or(Clock::Single);
    let base = profile.and_then(|(id, profile)| {
        let limits = of_stage(profile, Stage::TimeOut).filter_map(|limit| {
            let at_most = limit.duration.as_ref()?.minutes;
            Some(TimeLimit { at_most, clock: limit.clock.unwrap_or(clock), set_by: SetBy::Profile(id, limit) })
        });
        limits.min_by_key(|limit| limit.at_most)
    });
    let own = figures(book, LimitKind::TimeOut).filter_map(|(stricter, figure)| match figure {
        OwnFigure::Time(at_most) => Some(TimeLimit { at_most, clock, set_by: SetBy::Guidebook(stricter) }),
        OwnFigure::Temperature(_) => None,
    });
    let own = own.min_by_key(|limit| limit.at_most);
    match (base, own) {
        (Some(base), Some(own)) if own.at_most <= base.at_most || profile.is_some_and(|(_, it)| asked_for(it, own.at_most).is_some()) => {
            Some(own)
        }
        (Some(base), _) => Some(base),
        (None, own) => own,
    }
}

/// The option of a profile that a guidebook asks for by setting this longer time.
#[must_use]
pub fn asked_for(profile: &BuiltinProfile, time: Minutes) -> Option<&Limit> {
    let options = profile.limits.iter().filter(|limit| limit.stage == Stage::TimeOut && limit.only_when_asked && limit.binds());
    options
        .filter(|limit| limit.duration.as_ref().is_some_and(|longest| time <= longest.minutes))
        .min_by_key(|limit| limit.duration.as_ref().map(|longest| longest.minutes))
}

/// The figures that the guidebook sets for a kind of limit, those that could be read.
fn figures(book: &Guidebook, kind: LimitKind) -> impl Iterator<Item = (&Stricter, OwnFigure)> {
    let own = book.stricter.iter().filter(move |stricter| stricter.limit.value() == Some(&kind));
    own.filter_map(|stricter| Some((stricter, *stricter.figure.value()?)))
}
