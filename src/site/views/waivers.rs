//! Accepted advice as it is shown: what was advised, where, why it is accepted, by whom and until when.

use super::Views;
use super::checks::{coded, link_to_check};
use super::control::text;
use crate::checks::Acceptance;
use crate::figures::yield_table::capitalised;
use crate::model::Procedure;
use crate::model::procedure::Waiver as ModelWaiver;
use crate::site::context::frame::Link;
use crate::site::context::guide::Waiver;
use crate::site::escape::keep_units;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

impl Views<'_> {
    /// The waivers of a procedure, each with the advice that it accepts.
    pub(super) fn waivers(&self, page: &str, procedure: &Procedure) -> Result<Vec<Waiver>, ThemeError> {
        let waivers = procedure.waivers.iter().map(|waiver| {
            let check = text(&waiver.check);
            Ok(Waiver {
                advice_html: self.advice_of(waiver),
                target: target(procedure, &text(&waiver.target)),
                reason: waiver.reason.value().map_or_else(String::new, |reason| keep_units(&markdown::first_line(reason))),
                by: text(&waiver.by),
                until: waiver.until.value().map_or_else(|| Ok(String::new()), |date| self.date(*date))?,
                check: Link { href: link_to_check(page, &check), name: check },
            })
        });
        waivers.collect()
    }

    /// What was advised, each advice a sentence; none where the waiver accepts nothing.
    fn advice_of(&self, waiver: &ModelWaiver) -> Vec<String> {
        let own = self.accepted.iter().filter(|accepted| matches!(&accepted.by, Acceptance::Waiver(by) if by.place == waiver.place));
        own.map(|accepted| {
            let mut sentence = String::new();
            coded(&format!("{}.", capitalised(&accepted.finding.message)), &mut sentence);
            sentence
        })
        .collect()
    }
}

/// What a waiver is about: a step by its number, with a link to it; anything else by its key.
fn target(procedure: &Procedure, target: &str) -> Link {
    let first = target.split('.').next().unwrap_or(target);
    match procedure.steps.iter().position(|step| step.id == first) {
        Some(at) => Link { name: (at + 1).to_string(), href: paths::anchored(String::new(), &format!("step-{first}")) },
        None => Link { name: target.to_owned(), href: String::new() },
    }
}
