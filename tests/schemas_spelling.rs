//! The patterns of the schemas held against the parsers of the program, text by text: what a parser reads, the
//! pattern takes; what the pattern takes, the parser reads, unless numbers stand in the wrong order or are too long.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the files of the project"
)]

use std::sync::LazyLock;

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;
use regex::Regex;
use seamwise::model::builtin::limits::own_figure;
use seamwise::model::quantity::parse::{self, Slip, SlipKind};
use seamwise::model::words::LimitKind;
use seamwise::source::schema::{Kind, schema};

/// The pattern of a definition in the schema of a kind of document.
fn pattern(kind: Kind, definition: &str) -> Regex {
    let schema = schema(kind);
    Regex::new(schema["$defs"][definition]["pattern"].as_str().unwrap_or_else(|| panic!("{definition} has no pattern"))).unwrap()
}

/// A kind of value: its pattern, and what the program says to a text.
struct Spelling {
    name: &'static str,
    pattern: Regex,
    read: fn(&str) -> Result<(), Slip>,
}

static SPELLINGS: LazyLock<Vec<Spelling>> = LazyLock::new(|| {
    let of = |name, kind, read| Spelling { name, pattern: pattern(kind, name), read };
    vec![
        of("LimitText", Kind::Guidebook, |text| {
            let time = || own_figure(LimitKind::TimeOut, text).map(drop);
            // A time finer than a thousandth of a minute is told as no time at all.
            let fine = text.split_once('.').is_some_and(|(_, part)| part.chars().take_while(char::is_ascii_digit).count() > 3);
            let figure = own_figure(LimitKind::Hold, text).map(drop).or_else(|_| time());
            figure.map_err(|slip| if fine { Slip::new(SlipKind::Digits, slip.message, slip.help) } else { slip })
        }),
        of("ShareText", Kind::Procedure, |text| if text.trim() == "rest" { Ok(()) } else { parse::share(text).map(drop) }),
        of("OneShare", Kind::Procedure, |text| parse::share(text).and_then(|range| one(range.is_single()))),
        of("ShareOfWhole", Kind::Prices, |text| parse::share(text).map(drop)),
        of("MassText", Kind::Procedure, |text| parse::mass(text).map(drop)),
        of("OneWeight", Kind::Procedure, |text| parse::mass(text).and_then(|range| one(range.is_single()))),
        of("TemperatureText", Kind::Procedure, |text| parse::temperature(text).map(drop)),
        of("LengthText", Kind::Procedure, |text| parse::length(text).map(drop)),
        of("MinutesText", Kind::Procedure, |text| parse::minutes(text).map(drop)),
        of("CountText", Kind::Procedure, |text| if text.trim() == "rest" { Ok(()) } else { parse::whole(text).map(drop) }),
        of("Count", Kind::Procedure, |text| parse::whole(text).map(drop)),
        of("WholeText", Kind::Procedure, |text| {
            let range = parse::whole(text)?;
            one(range.is_single())?;
            if range.low == 0 { Err(Slip::new(SlipKind::OutOfBounds, "0", "")) } else { Ok(()) }
        }),
        of("PriceText", Kind::Prices, |text| {
            let (_, per) = parse::money(text)?;
            let counted = per.starts_with(|letter: char| letter.is_ascii_digit());
            parse::mass(&if counted { per.to_owned() } else { format!("1 {per}") }).map(drop)
        }),
        of("PriceOfWork", Kind::Prices, |text| {
            let (_, per) = parse::money(text)?;
            if per == "h" { Ok(()) } else { Err(Slip::new(SlipKind::UnitWrong, per, "")) }
        }),
    ]
});

fn one(single: bool) -> Result<(), Slip> {
    if single { Ok(()) } else { Err(Slip::new(SlipKind::Malformed, "a range", "")) }
}

/// True for what the program reads and no pattern takes, as the module text of `spelling` says: numbers with a minus
/// that come to zero, or lie below it where nothing can; a range from a value to itself; a range behind a slash.
fn is_narrower(spelling: &Spelling, text: &str) -> bool {
    let minus = |letter: char| matches!(letter, '-' | '\u{2212}' | '\u{2013}' | '\u{2014}');
    let ranged = text.contains(minus) || text.contains(" to ");
    let signed = text.trim_start().starts_with(minus)
        || text.match_indices(minus).any(|(at, dash)| {
            let before = text[..at].trim_end();
            before.ends_with(minus)
                || before.ends_with("to")
                || before.ends_with('/')
                || text[at + dash.len()..].trim_start().starts_with(minus)
        });
    match spelling.name {
        "TemperatureText" => false,
        "OneShare" | "OneWeight" | "WholeText" | "LimitText" => ranged,
        "PriceText" => signed || text.split_once('/').is_some_and(|(_, per)| per.contains(minus) || per.contains(" to ")),
        _ => signed,
    }
}

#[track_caller]
fn hold(spelling: &Spelling, text: &str) {
    let taken = spelling.pattern.is_match(text);
    match (spelling.read)(text) {
        Ok(()) => {
            assert!(taken || is_narrower(spelling, text), "{}: the program reads `{text}`, and the pattern does not take it", spelling.name)
        }
        Err(slip) => {
            let beyond = matches!(slip.kind, SlipKind::Inverted | SlipKind::Digits) || is_number_too_long(text);
            assert!(!taken || beyond, "{}: the pattern takes `{text}`, and the program says: {}", spelling.name, slip.message);
        }
    }
}

/// A whole number that no 32 bits hold is malformed to the program; a pattern cannot count so far.
fn is_number_too_long(text: &str) -> bool {
    text.split(|letter: char| !letter.is_ascii_digit()).any(|digits| digits.trim_start_matches('0').len() > 9)
}

/// Parts of which spellings are made, sound or not.
const PARTS: &[&str] = &[
    "0", "1", "2", "5", "7", "12", "28", "99", "100", "101", "415", "0.5", "0.05", "6.5", "8.0", "00.5", "007", ".5", "5.", "1,5", "%",
    "kg", "g", "lb", "oz", "°C", "°F", "C", "F", "K", "mm", "cm", "in", "h", "min", "months", "rest", "to", " to ", "-", "–", "—", "−",
    "+", "/", ".", " ", " ", " ", "\u{a0}", "\u{2009}", "\u{202f}", "\n",
];

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 6_000,
        failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/schemas_spelling.txt"))),
        ..ProptestConfig::default()
    })]

    /// Anything made of the parts; most of it is no value, and both must say so.
    #[test]
    fn patterns_and_parsers_agree_on_any_text(parts in prop::collection::vec(prop::sample::select(PARTS), 1..8)) {
        let text = parts.concat();
        for spelling in SPELLINGS.iter() {
            hold(spelling, &text);
        }
    }

    /// Texts in the shape of a value or a range; most of it is sound for some kind.
    #[test]
    fn patterns_and_parsers_agree_on_likely_texts(
        low in "[+-]?[0-9]{1,3}(\\.[0-9]{1,3})?",
        high in "[+-]?[0-9]{1,3}(\\.[0-9]{1,3})?",
        ounces in "( ?[0-9]{1,2}(\\.5)? ?oz)?",
        unit in prop::sample::select(vec!["%", "kg", "g", "lb", "oz", "°C", "°F", "C", "F", "mm", "cm", "in", "", "/ kg", "/ 100 g", "/ h", "/lb", "h", "minutes", "day"]),
        both in any::<bool>(),
        dash in prop::sample::select(vec!["–", "-", " – ", " - ", " to ", "—", "−", "  to  ", "to", ""]),
        blank in prop::sample::select(vec!["", " ", "\u{a0}", "\u{202f}", "  "]),
    ) {
        let at_low = if both { format!("{blank}{unit}") } else { String::new() };
        for text in [format!("{low}{at_low}{dash}{high}{blank}{unit}{ounces}"), format!("{low}{blank}{unit}{ounces}"), format!(" {high}{blank}{unit} ")] {
            for spelling in SPELLINGS.iter() {
                hold(spelling, &text);
            }
        }
    }
}

/// Every spelling that the format shows, and the likeliest slips: units, dashes, `rest`, percent and decimals.
#[test]
fn spellings_of_the_format() {
    let taken = |kind: Kind, definition: &str, texts: &[&str], sound: bool| {
        let pattern = pattern(kind, definition);
        for text in texts {
            assert_eq!(pattern.is_match(text), sound, "{definition}: `{text}`");
        }
    };
    let procedure = Kind::Procedure;
    taken(
        procedure,
        "ShareText",
        &["5–7 %", "5-7 %", "5 to 7 %", "5 %–7 %", "31–35%", "0.05–0.07", "0", "rest", "100 %", "97.5 – 100 %"],
        true,
    );
    taken(procedure, "ShareText", &["28", "1", "5–7", "101 %", "5–7 kg", "-5 %", "5 % – 7", "the rest", "5,5 %", "1.0"], false);
    taken(
        procedure,
        "MassText",
        &["6.5–8.0 kg", "14–18 lb", "18 lb 10 oz", "280 g", "155–165 g", "17 lb – 18 lb 10 oz", "900 g to 1.2 kg"],
        true,
    );
    taken(procedure, "MassText", &["6.5–8.0", "6,5 kg", "6.5–8.0 °C", "6.5 kgs", "6.5 kg–8.0", "18 lb 10", "kg", "6.5 KG"], false);
    taken(procedure, "TemperatureText", &["2–4 °C", "38 °F", "-20 to -18 °C", "−20–−18 °C", "4C", "-20 °C"], true);
    taken(procedure, "TemperatureText", &["4", "4 K", "4 °", "2–4 kg", "four °C", "4 c"], false);
    taken(procedure, "LengthText", &["20–25 mm", "1 in", "2.5 cm"], true);
    taken(procedure, "LengthText", &["20", "20 m", "1\"", "20 kg"], false);
    taken(procedure, "MinutesText", &["1–3", "0.5", "2 to 3"], true);
    taken(procedure, "MinutesText", &["1–3 min", "-1", "half", "1:30"], false);
    taken(procedure, "CountText", &["11", "13–17", "rest", "0"], true);
    taken(procedure, "CountText", &["11.5", "-1", "many", "11 ribs"], false);
    taken(procedure, "WholeText", &["2", "02", "+2"], true);
    taken(procedure, "WholeText", &["0", "2.0", "two", "2–3"], false);
    taken(
        procedure,
        "AgeText",
        &["under 12 months", "12–30 months", "12 to 30 months", "over 30 months", "unknown", "8 months", "1 month"],
        true,
    );
    taken(procedure, "AgeText", &["12", "under 1 year", "young", "over30 months", "-1 months"], false);
    taken(procedure, "DateText", &["2026-10-12", "2024-02-29"], true);
    taken(procedure, "DateText", &["2026-10", "12.10.2026", "2026-13-01", "2026-00-10", "26-10-12", "2026-10-32"], false);
    taken(procedure, "Id", &["boning-knife", "é-1", "415", "under_score", "Loin", "лопатка"], true);
    taken(procedure, "Id", &["boning knife", "a.b", "a/b", "a,b", "[a]", "", " ", "a:b", "a`"], false);
    taken(procedure, "ProcedureId", &["pork/loin-boneless", "pork/loin boneless"], true);
    taken(procedure, "ProcedureId", &["loin", "pork/loin.yaml", "a/b/c", "/loin", "pork/"], false);
    taken(Kind::Prices, "PriceText", &["3.40 / kg", "3.40/kg", "1.20 / 100 g", "4 / lb"], true);
    taken(Kind::Prices, "PriceText", &["3.40", "3.40 EUR / kg", "€3 / kg", "3,40 / kg", "3.40 / h", "3.40 / piece", "-1 / kg"], false);
    taken(Kind::Prices, "PriceOfWork", &["24.00 / h", "24/h"], true);
    taken(Kind::Prices, "PriceOfWork", &["24.00 / kg", "24.00", "24 / hour"], false);
}
