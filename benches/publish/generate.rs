//! Guidebooks of any size, the same on every run: sound guides of all built-in species, 4 to 12 steps each, with cut
//! lists, drawings and chains from one guide to the next. They pass inspection.
//!
//! Parts of animals come from the built-in anatomy; series names and regional names are invented words. Tubs (trim,
//! bone, glands) are shared by all guides of a species, as they are in a shop.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use seamwise::model::builtin::Builtin;
use seamwise::model::words::PartKind;

use crate::corpus::{Random, vocabulary};
use crate::guide::{Guide, written};

/// Parts of one region of one species, glands apart.
pub(crate) struct Place {
    pub(crate) species: &'static str,
    pub(crate) region: &'static str,
    /// Id and name of each part.
    pub(crate) parts: Vec<(&'static str, &'static str)>,
    pub(crate) glands: Vec<&'static str>,
}

/// What a guide starts from. Weights in grams.
#[derive(Clone)]
pub(crate) struct Start {
    pub(crate) place: usize,
    /// The word that sets this family of guides apart.
    pub(crate) series: String,
    pub(crate) piece: String,
    pub(crate) name: String,
    pub(crate) low: f64,
    pub(crate) high: f64,
    /// 0 for the first guide of a family.
    pub(crate) depth: usize,
}

/// A piece for the cut list. Weights in grams.
pub(crate) struct Cut {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) region: &'static str,
    pub(crate) lies: String,
    pub(crate) low: f64,
    pub(crate) high: f64,
}

/// Parts that are risk material or hang on it, and regions whose first cut frees some.
const LEFT_OUT: &[&str] = &["skull", "spinal-cord", "dorsal-root-ganglia", "vertebral-column", "brain", "eyes", "tonsils", "distal-ileum"];
const LEFT_OUT_REGIONS: &[&str] = &["head", "inside", "tail", "foot", "collar", "neck"];
/// Fewer parts than this give guides that all read alike.
const FEWEST_PARTS: usize = 4;

/// Where guides can be set, by species and region.
fn places() -> Vec<Place> {
    let builtin = Builtin::get();
    let mut places = Vec::new();
    for (id, species) in &builtin.species {
        let Some(anatomy) = builtin.anatomy.get(&species.group) else { continue };
        let regions: BTreeSet<&str> = anatomy.parts.values().flat_map(|part| &part.regions).map(String::as_str).collect();
        for region in regions.into_iter().filter(|region| !LEFT_OUT_REGIONS.contains(region)) {
            let here = || anatomy.parts.iter().filter(move |(_, part)| part.regions.iter().any(|own| own == region));
            let sound = |id: &str, of: Option<&String>| !LEFT_OUT.contains(&id) && of.is_none_or(|of| !LEFT_OUT.contains(&of.as_str()));
            let parts: Vec<_> = here()
                .filter(|(id, part)| part.kind != PartKind::Gland && sound(id, part.part_of.as_ref()))
                .map(|(id, part)| (id.as_str(), part.name.as_str()))
                .collect();
            let glands = here().filter(|(_, part)| part.kind == PartKind::Gland).map(|(id, _)| id.as_str()).collect();
            if parts.len() >= FEWEST_PARTS {
                places.push(Place { species: id, region, parts, glands });
            }
        }
    }
    places
}

/// The files of a guidebook with so many procedures, by path.
pub(crate) fn guidebook(count: usize) -> BTreeMap<String, Vec<u8>> {
    let mut random = Random(count as u64);
    let places = places();
    let series = vocabulary(count.max(50), &mut random);
    let mut files = BTreeMap::new();
    let mut cuts: BTreeMap<&str, Vec<Cut>> = BTreeMap::new();
    let mut open: Vec<Start> = Vec::new();
    for (made, name) in series.iter().enumerate().take(count) {
        let start = open.pop().unwrap_or_else(|| first(&places, name, &mut random));
        let place = &places[start.place];
        let room = count - made - 1 - open.len();
        let Guide { path, text, drawing, cuts: own, onward } = written(&start, place, room, &mut random);
        if start.depth == 0 {
            let lies = format!("The whole {} as it comes from the chill room.", place.region);
            let Start { piece: id, name, low, high, .. } = start;
            cuts.entry(place.species).or_default().push(Cut { id, name, region: place.region, lies, low, high });
        }
        cuts.entry(place.species).or_default().extend(own);
        files.insert(path, text.into_bytes());
        files.extend(drawing);
        open.extend(onward);
    }
    for (species, cuts) in cuts {
        files.insert(format!("cuts/{species}.yaml"), cut_list(&cuts, &series, &mut random).into_bytes());
    }
    files.insert("guidebook.yaml".to_owned(), GUIDEBOOK.into());
    files.insert("pages/about-the-shop.md".to_owned(), PAGE.into());
    files
}

/// The start of a new family.
fn first(places: &[Place], series: &str, random: &mut Random) -> Start {
    let place = random.below(places.len());
    let Place { species, region, .. } = places[place];
    // From a whole fish to a quarter of beef.
    let low = 900.0 + 100.0 * random.below(300) as f64;
    Start {
        place,
        series: series.to_owned(),
        piece: format!("{species}-{series}-{region}"),
        name: format!("{} {region}", capitalised(series)),
        low,
        high: low * 1.2,
        depth: 0,
    }
}

fn cut_list(cuts: &[Cut], words: &[String], random: &mut Random) -> String {
    let mut text = "# Every piece that a guide of this species starts from or sells.\n".to_owned();
    for Cut { id, name, region, lies, low, high } in cuts {
        let also = [words[random.below(words.len())].as_str(), words[random.below(words.len())].as_str()].join(" ");
        let weight = weights(*low, *high);
        let known = ["uk", "us"][random.below(2)];
        write!(text, "\n{id}:\n  name: {name}\n  also: [{{ {also}: {known} }}]\n  weight: {weight}\n  region: {region}\n  lies: {lies}\n")
            .unwrap();
    }
    text
}

/// A range of weights as a guide writes it, rounded outward.
pub(crate) fn weights(low: f64, high: f64) -> String {
    if low < 1_000.0 {
        return format!("{}–{} g", (low / 10.0).floor() * 10.0, (high / 10.0).ceil() * 10.0);
    }
    format!("{:.2}–{:.2} kg", (low / 10.0).floor() / 100.0, (high / 10.0).ceil() / 100.0)
}

/// A word with its first letter large.
pub(crate) fn capitalised(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

const GUIDEBOOK: &str = "# A guidebook of generated guides.
title: Cutting guides of a large house
publisher: The large house
language: en
units: metric
region: uk
limits: eu-853
stricter:
  - limit: time-out
    at-most: 120 minutes
    watch: the learner at the board, by the wall clock
    every: each stretch between leaving the cold and going back
    if-missed: Probe the warmest piece and put all of it back to the cold.
";
const PAGE: &str = "# About the house\n\nAll guides here are generated, for measuring.\n\n- Read the cautions first.\n- Then work.\n";
