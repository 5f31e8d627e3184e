//! The limits against which guides are held: those of the profile, and the shop's own.
//!
//! Nothing is computed here that a check computes: a page that shows a figure and a check that holds a guide against
//! it read the same entry. Where a profile is silent the page says so; no other profile's figure stands in.

use std::collections::BTreeSet;

use super::Views;
use super::control::text;
use super::frame::About;
use crate::analysis::cold_limits::{asked_for, of_stage, profile_of};
use crate::analysis::demands::product_of;
use crate::figures::units::other_scale;
use crate::model::builtin::BuiltinProfile;
use crate::model::builtin::limits::{Limit, OwnFigure};
use crate::model::guidebook::Stricter;
use crate::model::words::{Force, LimitKind, Product, Stage, Verified};
use crate::site::context::frame::Link;
use crate::site::context::limits::{Cell, CellLimit, LimitsPage, OwnLimit, ProductLimits, Profile, StageLimits};
use crate::site::escape::keep_units;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

/// What is shown for each class of product.
const OF_PRODUCTS: [Stage; 4] = [Stage::Hold, Stage::Receiving, Stage::Room, Stage::TimeOut];

/// What has its place on the page even where a profile is silent.
const ALWAYS: [Stage; 10] = [
    Stage::Hold,
    Stage::Receiving,
    Stage::Room,
    Stage::TimeOut,
    Stage::ToolWater,
    Stage::CleaningInterval,
    Stage::ParasiteFreezing,
    Stage::Histamine,
    Stage::RiskMaterial,
    Stage::YoungWorker,
];

impl Views<'_> {
    /// What `limits.html` gets.
    pub(super) fn limits_page(&self, path: &str) -> Result<LimitsPage, ThemeError> {
        let page = self.frame(About {
            path,
            title: self.engine.words.plain("limits-title")?.to_owned(),
            trail: vec![self.home_link(path)],
            procedure: None,
            data: None,
            look: Look::Limits,
            paints: Vec::new(),
            scripts: &[],
            anchor: "main",
        })?;
        let own = self.book.stricter.iter().filter_map(|stricter| self.own_limit(stricter)).collect();
        let Some((id, profile)) = profile_of(self.book) else {
            return Ok(LimitsPage { page, profile: None, own, products: Vec::new(), stages: Vec::new(), silent: Vec::new() });
        };
        let mut stages = Vec::new();
        let mut silent = Vec::new();
        let further = Stage::ALL.iter().filter(|stage| !ALWAYS.contains(stage));
        for stage in ALWAYS.iter().chain(further) {
            let limits = profile.limits.iter().filter(|limit| limit.stage == *stage);
            let limits = limits.map(|limit| self.limit_entry(path, limit)).collect::<Result<Vec<_>, _>>()?;
            if limits.is_empty() && !ALWAYS.contains(stage) {
                silent.push(stage.word());
            } else {
                stages.push(StageLimits { stage: stage.word(), limits });
            }
        }
        let about = Profile {
            id: id.to_owned(),
            name: profile.name.clone(),
            jurisdiction: profile.jurisdiction.clone(),
            about: keep_units(&profile.about),
            edition: keep_units(&profile.edition),
        };
        Ok(LimitsPage { page, profile: Some(about), own, products: self.products(profile), stages, silent })
    }

    fn own_limit(&self, stricter: &Stricter) -> Option<OwnLimit> {
        let kind = stricter.limit.value()?;
        let figure = stricter.figure.value();
        let other = match figure {
            Some(OwnFigure::Temperature(temperature)) => other_scale(*temperature),
            Some(OwnFigure::Time(_)) | None => String::new(),
        };
        let option = match (kind, figure, profile_of(self.book)) {
            (LimitKind::TimeOut, Some(OwnFigure::Time(time)), Some((_, profile))) => {
                let allowed = |limit: &Limit| limit.duration.as_ref().is_some_and(|longest| *time <= longest.minutes);
                let longer = of_stage(profile, Stage::TimeOut).any(|limit| !allowed(limit));
                asked_for(profile, *time).filter(|_| longer)
            }
            _ => None,
        };
        Some(OwnLimit {
            limit: kind.word(),
            at_most: keep_units(&text(&stricter.at_most)),
            other,
            watch: keep_units(&text(&stricter.watch)),
            every: keep_units(&text(&stricter.every)),
            if_missed: keep_units(&text(&stricter.if_missed)),
            option: option.map(|limit| Link { name: limit.citation.rule(), href: format!("#limit-{}", limit.id) }),
        })
    }

    /// What holds for each class of product, those that the guides are about first.
    fn products(&self, profile: &BuiltinProfile) -> Vec<ProductLimits> {
        let used: BTreeSet<Product> = self.book.procedures.iter().filter_map(|procedure| product_of(self.book, procedure)).collect();
        let (mut first, rest): (Vec<Product>, Vec<Product>) = Product::ALL.iter().partition(|product| used.contains(product));
        first.extend(rest);
        let limits = |product: Product| ProductLimits {
            product: product.word(),
            used: used.contains(&product),
            cells: OF_PRODUCTS.iter().map(|stage| self.cell(profile, product, *stage)).collect(),
        };
        first.into_iter().map(limits).collect()
    }

    fn cell(&self, profile: &BuiltinProfile, product: Product, stage: Stage) -> Cell {
        // What is repealed, or an option that nobody asked for, stands below alone.
        let holds = |limit: &&Limit| limit.stage == stage && limit.force != Force::Repealed && !limit.only_when_asked;
        let limits = profile.limits.iter().filter(holds).filter(|limit| limit.covers(Some(product), ""));
        let mut limits: Vec<CellLimit> = limits.map(cell_limit).collect();
        // A rule in words beside a figure says more of the same, or is about frozen goods; it stands below.
        if limits.iter().any(|limit| !limit.figure.is_empty()) {
            limits.retain(|limit| !limit.figure.is_empty());
        }
        let own = self.book.stricter.iter().find(|own| own.limit.value().is_some_and(|kind| kind.word() == stage.word()));
        Cell { stage: stage.word(), limits, own: own.map_or_else(String::new, |own| keep_units(&text(&own.at_most))) }
    }
}

fn cell_limit(limit: &Limit) -> CellLimit {
    let figure = limit.at_most.as_ref().map(|figure| figure.printed.as_str());
    let figure = figure.or(limit.duration.as_ref().map(|time| time.printed.as_str()));
    CellLimit {
        id: limit.id.clone(),
        figure: figure.map_or_else(String::new, super::limit_entries::printed),
        other: super::limit_entries::other(limit).0,
        from_memory: limit.verified == Verified::Memory,
    }
}
