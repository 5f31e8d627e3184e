//! Small models for tests, from a line a step; nothing outside tests uses it.
//!
//! `"side, bones -> leg 25-28.5 ~26 =retail x2 ribs:3 | rest-of-it rest | loss 0-0.4 ; minutes 3-7 ; back all"`
//! takes two pieces and gives two: shares in percent, `~` a typical share, `=` a use, `x` pieces, `part:n` a
//! count, `@part` what it holds. After `;` stand `minutes`, `at-once`, `back`, `cuts`, `names` (anatomy) and `tools`.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::{FileId, Place, Span};
use crate::model::builtin::Builtin;
use crate::model::own_theme::OwnTheme;
use crate::model::procedure::{BackToCold, Count, CountSpec, Output, Procedure, Revision, ShareSpec, Start, Step, ToolChoice};
use crate::model::quantity::{Mass, Minutes, Range, Share};
use crate::model::words::Use;
use crate::model::{Guidebook, Spanned, Stated};

const PLACE: Place = Place { file: FileId(0), span: Span { start: 0, end: 0 } };

pub(super) fn spanned<T>(value: T) -> Spanned<T> {
    Spanned::new(value, PLACE)
}

pub(super) fn given<T>(value: T) -> Stated<T> {
    Stated::Given(spanned(value))
}

/// `0.25-0.5` in units of `unit`, as whole numbers.
fn numbers(text: &str, unit: f64) -> Range<i64> {
    let number = |text: &str| (text.parse::<f64>().unwrap() * unit).round() as i64;
    let (low, high) = text.split_once('-').unwrap_or((text, text));
    Range { low: number(low), high: number(high) }
}

/// A range of shares, written in percent.
pub(super) fn percent(text: &str) -> Range<Share> {
    numbers(text, 1e7).map(Share::from_billionths)
}

/// A range of weights, written in kilograms.
pub(super) fn kilograms(text: &str) -> Range<Mass> {
    numbers(text, 1e6).map(|milligrams| Mass::from_kilograms(milligrams as f64 / 1e6))
}

/// An output, `name share` and what follows.
fn output(text: &str) -> Output {
    let mut words = text.split_whitespace();
    let piece = spanned(words.next().unwrap().to_owned());
    let share = match words.next().unwrap() {
        "rest" => given(ShareSpec::Rest),
        "broken" => Stated::Broken,
        range => given(ShareSpec::Between(percent(range))),
    };
    let mut output = Output {
        piece,
        place: PLACE,
        share,
        typical: Stated::Absent,
        pieces: Stated::Absent,
        counts: Vec::new(),
        holds: Vec::new(),
        purpose: Stated::Absent,
        portions: Stated::Absent,
        side: Stated::Absent,
        sources: Vec::new(),
        long: true,
    };
    for word in words {
        if let Some(typical) = word.strip_prefix('~') {
            output.typical = given(percent(typical).low);
        } else if let Some(purpose) = word.strip_prefix('=') {
            output.purpose = given(Use::from_word(purpose).unwrap());
        } else if let Some(pieces) = word.strip_prefix('x') {
            output.pieces = given(pieces.parse().unwrap());
        } else if let Some(part) = word.strip_prefix('@') {
            output.holds.push(spanned(part.to_owned()));
        } else if let Some((part, number)) = word.split_once(':') {
            let number = match number {
                "rest" => CountSpec::Rest,
                number => CountSpec::Between(numbers(number, 1.0).map(|number| number as u32)),
            };
            output.counts.push(Count { part: spanned(part.to_owned()), number: given(number) });
        } else {
            panic!("`{word}` in `{text}`");
        }
    }
    output
}

/// A step.
pub(super) fn step(text: &str) -> Step {
    let mut clauses = text.split(';').map(str::trim);
    let (takes, gives) = clauses.next().unwrap().split_once("->").unwrap();
    let names = |text: &str| text.split(',').map(|name| spanned(name.trim().to_owned())).collect::<Vec<_>>();
    let (mut give, mut loss) = (Vec::new(), Stated::Absent);
    for text in gives.split('|').map(str::trim) {
        let output = output(text);
        if output.piece.value == "loss" { loss = given(output) } else { give.push(output) }
    }
    let mut step = Step {
        id: text.to_owned(),
        place: PLACE,
        name: Stated::Absent,
        take: names(takes),
        take_known: true,
        instruction: Stated::Absent,
        hold: Stated::Absent,
        draws_toward_body: Stated::Absent,
        tools: Stated::Absent,
        tools_key: PLACE,
        cautions: Vec::new(),
        cautions_known: true,
        wear: Stated::Absent,
        minutes: Stated::Absent,
        landmark: Stated::Absent,
        anatomy: Vec::new(),
        anatomy_note: Stated::Absent,
        good: Stated::Absent,
        mistakes: Stated::Absent,
        pictures: Vec::new(),
        ask: Vec::new(),
        give,
        give_key: PLACE,
        give_known: true,
        loss,
        after: Vec::new(),
        at_once: Stated::Absent,
        back_to_cold: Stated::Absent,
        cuts_through: Vec::new(),
        side: Stated::Absent,
        sources: Vec::new(),
    };
    for clause in clauses {
        match clause.split_once(' ').unwrap() {
            ("minutes", range) => step.minutes = given(numbers(range, 1000.0).map(Minutes)),
            ("at-once", times) => step.at_once = given(times.parse().unwrap()),
            ("back", "all") => step.back_to_cold = given(BackToCold::All),
            ("back", pieces) => step.back_to_cold = given(BackToCold::Pieces(names(pieces))),
            ("cuts", parts) => step.cuts_through = names(parts),
            ("names", parts) => step.anatomy = names(parts),
            ("tools", tools) => step.tools = given(names(tools).into_iter().map(one_tool).collect()),
            (other, _) => panic!("`{other}` in `{text}`"),
        }
    }
    step
}

fn one_tool(tool: Spanned<String>) -> Spanned<ToolChoice> {
    spanned(ToolChoice { any_of: vec![tool] })
}

/// A procedure that starts from `start` at 8 to 12 kg, typically 10.
pub(super) fn procedure(id: &str, start: &str, steps: &[&str]) -> Procedure {
    Procedure {
        id: id.to_owned(),
        file: FileId(0),
        place: PLACE,
        title: Stated::Absent,
        species: Stated::Absent,
        house_cut: Stated::Absent,
        revision: Revision {
            place: PLACE,
            number: Stated::Absent,
            date: Stated::Absent,
            author: Stated::Absent,
            owner: Stated::Absent,
            approved_by: Stated::Absent,
            review_by: Stated::Absent,
            change: Stated::Absent,
            state: Stated::Absent,
        },
        start: Start {
            place: PLACE,
            piece: given(start.to_owned()),
            weight: given(kilograms("8-12")),
            typical: Stated::Absent,
            basis: Stated::Absent,
            temperature: Stated::Absent,
            side: Stated::Absent,
            sources: Vec::new(),
        },
        steps: steps.iter().map(|text| step(text)).collect(),
        steps_from_yields: false,
        yields: Vec::new(),
        purpose: Stated::Absent,
        level: Stated::Absent,
        needs: Vec::new(),
        product: Stated::Absent,
        served_raw: Stated::Absent,
        parasites: Stated::Absent,
        allergens: Vec::new(),
        age: Stated::Absent,
        tools: Stated::Absent,
        wear: Stated::Absent,
        cautions: Vec::new(),
        cautions_known: true,
        set_up_minutes: Stated::Absent,
        clean_minutes: Stated::Absent,
        after_work: Stated::Absent,
        sources: Vec::new(),
        waivers: Vec::new(),
        was: Vec::new(),
        complete: true,
    }
}

/// A procedure that is the house cut of its start.
pub(super) fn house_cut(id: &str, start: &str, steps: &[&str]) -> Procedure {
    Procedure { house_cut: given(true), ..procedure(id, start, steps) }
}

/// A guidebook of these procedures.
pub(super) fn guidebook(procedures: Vec<Procedure>) -> Guidebook {
    Guidebook {
        place: PLACE,
        title: Stated::Absent,
        publisher: Stated::Absent,
        language: Stated::Absent,
        also_in: Vec::new(),
        units: Stated::Absent,
        region: Stated::Absent,
        limits: Stated::Absent,
        stricter: Vec::new(),
        site: Stated::Absent,
        theme: Stated::Absent,
        own_theme: OwnTheme::default(),
        off: Vec::new(),
        procedures,
        broken_procedures: BTreeSet::new(),
        broken_files: BTreeSet::new(),
        cuts: BTreeMap::new(),
        cut_lists: BTreeSet::new(),
        anatomy: BTreeMap::new(),
        anatomy_like: BTreeMap::new(),
        cautions: BTreeMap::new(),
        tools: BTreeMap::new(),
        courses: Vec::new(),
        prices: None,
        cutting_tests: Vec::new(),
        pages: Vec::new(),
        pictures: BTreeMap::new(),
        unshown_pictures: BTreeSet::new(),
        links: Vec::new(),
        builtin: Builtin::get(),
    }
}
