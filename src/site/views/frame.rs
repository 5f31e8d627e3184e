//! The frame of a page.

use std::collections::BTreeSet;

use fluent_bundle::FluentValue;

use super::Views;
use crate::figures::{Kind, YieldTable};
use crate::model::Procedure;
use crate::model::words::State;
use crate::site::context::frame::{Frame, Link, StyleLink};
use crate::site::escape::css_string;
use crate::site::paths;
use crate::site::policy::policy;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

/// What a view says of its page.
pub(super) struct About<'a> {
    /// The path of the page.
    pub(super) path: &'a str,
    /// The title of the document.
    pub(super) title: String,
    /// The way from home.
    pub(super) trail: Vec<Link>,
    /// The procedure whose revision every sheet names.
    pub(super) procedure: Option<&'a Procedure>,
    /// The path of the same content for machines.
    pub(super) data: Option<String>,
    /// What the page looks like.
    pub(super) look: Look,
    /// Kinds of pieces that the page shows.
    pub(super) paints: Vec<&'static str>,
    /// Names of the scripts of the theme that the page uses.
    pub(super) scripts: &'a [&'a str],
    /// The anchor to which the skip link leads.
    pub(super) anchor: &'static str,
}

impl Views<'_> {
    /// The frame of a page.
    pub(super) fn frame(&self, about: About<'_>) -> Result<Frame, ThemeError> {
        let description = self.description(&about)?;
        let strip = about.procedure.map_or_else(|| Ok(String::new()), |procedure| self.strip(procedure))?;
        let state = match about.procedure.map(|procedure| procedure.revision.state()) {
            Some(State::Draft) => "draft",
            Some(State::Withdrawn) => "withdrawn",
            Some(State::InForce) | None => "",
        };
        let mut own_style = String::new();
        if !strip.is_empty() {
            // A margin of large letters has room for the short line alone.
            let short = about.procedure.filter(|_| matches!(about.look, Look::Card | Look::ClassSheet));
            let on_paper = short.map_or_else(|| Ok(strip.clone()), |procedure| self.sheet_strip(procedure))?;
            own_style = format!(":root{{--card:{}", css_string(&on_paper));
            if !state.is_empty() {
                let mark = self.engine.words.plain(if state == "draft" { "mark-draft" } else { "mark-withdrawn" })?;
                own_style.push_str(&format!(";--state:{}", css_string(mark)));
            }
            own_style.push('}');
        }
        let look = self.engine.style(about.look)?;
        let (style, source) = look.with(&own_style, !state.is_empty());
        let link = |name: &str| self.engine.assets.get(name).map(|(path, _)| paths::link(about.path, path));
        Ok(Frame {
            language: self.book.language.value().cloned().unwrap_or_else(|| "en".to_owned()),
            canonical: self.absolute(about.path).unwrap_or_default(),
            data: about.data.map_or_else(String::new, |data| paths::link(about.path, &data)),
            // A guide has no byte to spare: there the script that keeps the site sets the link.
            manifest: if about.look == Look::Guide { String::new() } else { paths::link(about.path, paths::MANIFEST) },
            feed: self.absolute(paths::FEED).filter(|_| about.path == paths::HOME).map_or_else(String::new, |_| paths::FEED.to_owned()),
            title: about.title,
            description,
            site: self.book.title.value().cloned().unwrap_or_default(),
            publisher: self.book.publisher.value().cloned().unwrap_or_default(),
            policy: policy(&source),
            style,
            style_apart: look
                .apart
                .as_ref()
                .map(|linked| StyleLink { href: paths::link(about.path, &linked.path), media: linked.media.clone() }),
            style_below: look.later.as_ref().map_or_else(String::new, |linked| paths::link(about.path, &linked.path)),
            icon: link("icon.svg").unwrap_or_default(),
            state: state.to_owned(),
            strip,
            trail: about.trail,
            scripts: ["offline.js"].iter().chain(about.scripts).filter_map(|name| link(name)).collect(),
            assets: self.engine.own_assets.iter().filter_map(|name| Some((name.clone(), link(name)?))).collect(),
            paints: about.paints,
            pieces: paths::link(about.path, paths::PIECES).trim_end_matches("index.html").to_owned(),
            main_anchor: about.anchor,
        })
    }

    /// Id, revision and date in words, as every sheet carries them.
    pub(super) fn strip(&self, procedure: &Procedure) -> Result<String, ThemeError> {
        let revision = &procedure.revision;
        let date = revision.date.value().map_or_else(|| Ok(String::new()), |date| self.date(*date))?;
        let word = match revision.state() {
            State::InForce => "strip-in-force",
            State::Draft => "strip-draft",
            State::Withdrawn => "strip-withdrawn",
        };
        let number = i64::from(revision.number.value().copied().unwrap_or(0));
        let arguments = [("id", FluentValue::from(procedure.id.as_str())), ("number", number.into()), ("date", date.into())];
        self.engine.words.with(word, &arguments)
    }
}

/// The kinds of pieces that tables show.
pub(super) fn paints<'a>(tables: impl IntoIterator<Item = &'a YieldTable>) -> Vec<&'static str> {
    let kinds: BTreeSet<Kind> = tables.into_iter().flat_map(|table| &table.groups).map(|group| group.kind).collect();
    kinds.into_iter().map(Kind::id).collect()
}
