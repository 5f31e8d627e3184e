//! A theme made ready: templates compiled, words read, the style sheet made small, scripts named by their content.

use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use fluent_bundle::FluentValue;
use serde::Serialize;
use tera::{Context, Kwargs, State, Tera, TeraResult, Value};

use super::escape::keep_units;
use super::own_theme::guard;
use super::paths;
use super::script_words;
use super::style::{Look, Style};
use super::templates;
use super::theme::Theme;
use super::theme_error::ThemeError;
use super::words::Words;
use crate::model::words::{Clock, Force, Measure, PartKind, Product, Stage, Verified};

/// Words that the program itself asks for, or that templates name by an id they put together.
const OWN_WORDS: &[&str] = &[
    "home",
    "the-guide",
    "bench-view",
    "room-view",
    "wall-card",
    "class-sheet",
    "use-retail",
    "use-for-cutting",
    "use-lean-trim",
    "use-fat-trim",
    "use-bone",
    "use-skin",
    "use-offal",
    "use-inedible",
    "use-risk-material",
    "use-loss",
    "sum-retail",
    "sum-for-cutting",
    "sum-lean-trim",
    "sum-fat-trim",
    "sum-bone",
    "sum-skin",
    "sum-offal",
    "sum-inedible",
    "sum-risk-material",
    "sum-loss",
    "signal-danger",
    "signal-warning",
    "signal-caution",
    "signal-notice",
    "state-draft",
    "state-in-force",
    "state-withdrawn",
    "side-left",
    "side-right",
    "side-both",
    "limit-hold",
    "limit-room",
    "limit-time-out",
    "limit-receiving",
    "limit-tool-water",
    "limit-cleaning-interval",
    "level-fault",
    "level-advice",
    "age-from",
    "age-any",
    "time-at-most",
    "time-within",
    "time-every",
    "time-from-slaughter",
    "time-at-least",
    "limit-above",
    "limit-at-most",
    "limit-at-least",
    "limits-title",
    "anatomy-title",
    "region-inside",
    "region-none",
    "cold-clock-title",
    "cold-axis",
    "cold-axis-in-all",
    "cold-shortest",
    "cold-longest",
    "cold-back",
    "cold-before",
    "cold-more",
    "cold-at-once",
    "cold-limit-line",
    "cold-limit-far",
    "limit-of-shop",
    "limit-of-profile",
    "with",
    "or",
];

/// Words that are named after the fixed words of the format: `stage-hold`, `product-red-meat`.
fn words_of_the_format() -> Vec<String> {
    fn named<T: Copy>(start: &str, all: &[T], word: fn(T) -> &'static str) -> Vec<String> {
        all.iter().map(|one| format!("{start}-{}", word(*one))).collect()
    }
    [
        named("stage", Stage::ALL, Stage::word),
        named("product", Product::ALL, Product::word),
        named("measure", Measure::ALL, Measure::word),
        named("force", Force::ALL, Force::word),
        named("verified", Verified::ALL, Verified::word),
        named("clock", Clock::ALL, Clock::word),
        named("kind", PartKind::ALL, PartKind::word),
    ]
    .concat()
}

/// A theme made ready.
pub(super) struct Engine {
    tera: Tera,
    /// The words.
    pub(super) words: Arc<Words>,
    /// The style of each kind of page.
    styles: BTreeMap<Look, Style>,
    /// Scripts, the icon and styles in files of their own by name: path in the site, and bytes.
    pub(super) assets: BTreeMap<String, (String, Vec<u8>)>,
    /// Names of the assets that `paper` does not have.
    pub(super) own_assets: Vec<String>,
    /// True when every page is looked through for what it must keep.
    guarded: bool,
    /// The species of each piece of the guidebook, for the filter `piece_anchor`.
    species_of: Arc<OnceLock<BTreeMap<String, String>>>,
    /// The code of the service worker.
    pub(super) worker: String,
}

impl Engine {
    /// Compiles everything; what is wrong is found here and not while pages are made.
    pub(super) fn new(theme: &Theme, language: &str) -> Result<Self, ThemeError> {
        Self::with_all_errors(theme, language).map_err(|errors| errors.into_iter().next().unwrap_or_default())
    }

    /// The same, with everything that is wrong and not only the first of it.
    pub(super) fn with_all_errors(theme: &Theme, language: &str) -> Result<Self, Vec<ThemeError>> {
        let words = Arc::new(theme.words(language).map_err(|error| vec![error]).and_then(|files| Words::read(&files))?);
        let mut tera = Tera::new();
        let known = Arc::clone(&words);
        tera.register_filter("word", move |id: &str, arguments: Kwargs, _: &State| word(&known, id, &arguments));
        let species_of = Arc::new(OnceLock::new());
        let known = Arc::clone(&species_of);
        tera.register_filter("piece_anchor", move |piece: &str, _: Kwargs, _: &State| piece_anchor(&known, piece));
        templates::compile(theme, &mut tera)?;
        let mut errors = missing_words(theme, &words);
        let mut assets = BTreeMap::new();
        let mut own_assets = Vec::new();
        for path in theme.in_folder("assets/") {
            let mut bytes = theme.bytes(path).unwrap_or_default().to_vec();
            if path.ends_with(".js") {
                match theme.text(path).and_then(|script| script_words::filled(path, script, &words)) {
                    Ok(script) => bytes = script.into_bytes(),
                    Err(error) => errors.push(error),
                }
            }
            let name = path.trim_start_matches("assets/");
            assets.insert(name.to_owned(), (paths::asset(name, &paths::mark(&bytes)), bytes));
            if !theme.is_of_paper(path) {
                own_assets.push(name.to_owned());
            }
        }
        let mut styles = BTreeMap::new();
        for look in Look::ALL {
            match Style::of(theme, *look, &mut assets) {
                Ok(style) => drop(styles.insert(*look, style)),
                Err(error) => errors.push(error),
            }
        }
        errors.dedup();
        if !errors.is_empty() {
            return Err(errors);
        }
        let worker = theme.text("worker/service-worker.js").map_err(|error| vec![error])?.to_owned();
        Ok(Self { tera, words, styles, assets, own_assets, guarded: false, species_of, worker })
    }

    /// The same, looking through every page that it makes.
    pub(super) fn guarded(self) -> Self {
        Self { guarded: true, ..self }
    }

    /// Tells the filter `piece_anchor` the species of each piece. The first telling holds.
    pub(super) fn know_pieces(&self, species: BTreeMap<String, String>) {
        let _ = self.species_of.set(species);
    }

    /// The style of a kind of page.
    pub(super) fn style(&self, look: Look) -> Result<&Style, ThemeError> {
        self.styles.get(&look).ok_or_else(|| ThemeError::new("a page asks for a style that no page has"))
    }

    /// Makes one page.
    pub(super) fn render(&self, template: &str, context: &impl Serialize) -> Result<Vec<u8>, ThemeError> {
        let filled = self.tera.render(template, &Context::from_serialize(context)?)?;
        if self.guarded {
            guard::look(template, context, &filled)?;
        }
        Ok(filled.into_bytes())
    }
}

/// The filter `word`: `{{ "steps" | word }}`, `{{ "pieces" | word(n=4) }}`.
fn word(words: &Words, id: &str, arguments: &Kwargs) -> TeraResult<Value> {
    let mut given = Vec::new();
    for (name, value) in arguments.iter() {
        let name = name.to_string();
        let value = match value.as_i64() {
            Some(number) => FluentValue::from(number),
            None => FluentValue::from(value.as_str().map_or_else(|| value.to_string(), str::to_owned)),
        };
        given.push((name, value));
    }
    let text = if given.is_empty() {
        words.plain(id).map(str::to_owned)
    } else {
        let given: Vec<(&str, FluentValue<'_>)> = given.iter().map(|(name, value)| (name.as_str(), value.clone())).collect();
        words.with(id, &given)
    };
    text.map(|text| Value::normal_string(&keep_units(&text))).map_err(|error| tera::Error::message(error.to_string()))
}

/// Words that templates ask for, or the program itself, and that the theme does not have.
fn missing_words(theme: &Theme, words: &Words) -> Vec<ThemeError> {
    let mut errors = Vec::new();
    let file = words.file();
    for path in theme.in_folder("templates/") {
        let Ok(text) = theme.text(path) else { continue };
        let mut asked: Vec<&str> = words_named_in(text).filter(|id| !words.has(id)).collect();
        asked.sort_unstable();
        asked.dedup();
        for id in asked {
            let named = format!("\"{id}\"");
            let message = format!("the word `{id}` is missing in {file}; add a line `{id} = …`");
            let nearest = crate::model::names::nearest(id, words.ids()).map_or_else(String::new, |near| format!("Or write \"{near}\"."));
            errors.push(ThemeError::at(path, text, text.find(&named).unwrap_or(0), message).wide(&named).help(nearest));
        }
    }
    let own = OWN_WORDS.iter().map(|id| (*id).to_owned()).chain(words_of_the_format()).filter(|id| !words.has(id));
    errors.extend(own.map(|id| ThemeError::new(format!("the word `{id}` is missing in {file}; add a line `{id} = …`"))));
    errors
}

/// The filter `piece_anchor`: where a piece stands, seen from the folder of all pieces, which is `page.pieces`.
fn piece_anchor(species_of: &OnceLock<BTreeMap<String, String>>, piece: &str) -> String {
    match species_of.get().and_then(|species_of| species_of.get(piece)) {
        Some(species) => paths::link_to_piece(paths::PIECES, species, piece),
        None => paths::anchored(paths::link(paths::PIECES, paths::PIECES), &format!("piece-{piece}")),
    }
}

/// Ids that stand as texts before the filter `word`.
pub(super) fn words_named_in(template: &str) -> impl Iterator<Item = &str> {
    template.match_indices("| word").filter_map(|(at, _)| {
        let before = template.get(..at)?.trim_end().strip_suffix('"')?;
        before.rsplit('"').next()
    })
}
