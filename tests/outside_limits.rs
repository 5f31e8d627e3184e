//! The built-in limits held against the figures that were read in public rules, entry by entry.
//!
//! Each row names the source that prints the figure. How it was read (in the rule, or in a code that adopts it)
//! stands with the entry itself. What no rule prints must be silent here too.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

use seamwise::analysis::cold_limits::{hold_of, of_stage};
use seamwise::model::age::Age;
use seamwise::model::builtin::Builtin;
use seamwise::model::builtin::limits::Limit;
use seamwise::model::quantity::{Range, Temperature, parse};
use seamwise::model::words::{Clock, Force, Measure, Product, Stage, Verified};

fn limit(profile: &str, id: &str) -> &'static Limit {
    let limits = &Builtin::get().profiles[profile].limits;
    limits.iter().find(|limit| limit.id == id).unwrap_or_else(|| panic!("{profile} has no `{id}`"))
}

fn degrees(text: &str) -> Temperature {
    parse::temperature(text).unwrap().low
}

/// Profile, entry, highest figure, the twin as printed, duration; and the text that prints them.
type Row = (&'static str, &'static str, &'static str, Option<&'static str>, Option<&'static str>, &'static str);

const AT_MOST: &[Row] = &[
    ("us-food-code", "hold", "5 °C", Some("41 °F"), None, "FDA Food Code 3-501.16(A)(2), in State of Delaware Food Code, 2014"),
    (
        "us-food-code",
        "receiving",
        "5 °C",
        Some("41 °F"),
        None,
        "FDA Food Code 3-202.11, in Washington Administrative Code 246-215-03235, 2021",
    ),
    ("us-food-code", "cool-down", "5 °C", Some("41 °F"), Some("4 h"), "FDA Food Code 3-501.14(C), in State of Delaware Food Code, 2014"),
    ("us-food-code", "time-out-six-hours", "21 °C", Some("70 °F"), Some("6 h"), "FDA Food Code 3-501.19(C), in Wisconsin Food Code, 2024"),
    ("us-food-code", "vacuum-pack-meat", "5 °C", Some("41 °F"), Some("30 days"), "FDA Food Code 3-502.12(B), in Wisconsin Food Code, 2020"),
    (
        "us-food-code",
        "cleaning-interval-to-5",
        "5.0 °C",
        Some("41 °F"),
        Some("24 h"),
        "FDA Food Code 4-602.11(D)(2), in the Chicago adoption",
    ),
    ("us-food-code", "cleaning-interval-to-7-2", "7.2 °C", Some("41–45 °F"), Some("20 h"), "the same"),
    ("us-food-code", "cleaning-interval-to-10", "10.0 °C", Some("45–50 °F"), Some("16 h"), "the same"),
    ("us-food-code", "cleaning-interval-to-12-8", "12.8 °C", Some("50–55 °F"), Some("10 h"), "the same"),
    (
        "us-food-code",
        "parasite-freezing-168-h",
        "-20 °C",
        Some("-4 °F"),
        Some("168 h"),
        "FDA Food Code 3-402.11(A)(1), in Washington Administrative Code 246-215-03425, 2022",
    ),
    ("us-food-code", "parasite-freezing-15-h", "-35 °C", Some("-31 °F"), Some("15 h"), "FDA Food Code 3-402.11(A)(2), the same"),
    ("us-food-code", "parasite-freezing-24-h", "-20 °C", Some("-4 °F"), Some("24 h"), "FDA Food Code 3-402.11(A)(3), the same"),
    (
        "us-plant",
        "hold-poultry-former",
        "40 °F",
        Some("4.4 °C"),
        None,
        "FSIS, questions and answers for small plants on poultry slaughter; FSIS-GD-2014-0014, 2014",
    ),
    ("us-plant", "cut-poultry-former", "55 °F", Some("12.8 °C"), None, "the same"),
    (
        "eu-853",
        "hold-red-meat",
        "7 °C",
        None,
        None,
        "Regulation (EC) 853/2004, Annex III, section I, chapter V, in Food Safety Authority of Ireland, Hygiene during cutting and boning",
    ),
    ("eu-853", "hold-offal", "3 °C", None, None, "the same"),
    ("eu-853", "room", "12 °C", None, None, "the same"),
    ("eu-853", "receiving-red-meat", "7 °C", None, None, "chapter VII, in Food Safety Authority of Ireland, Storage and transport of meat"),
    ("eu-853", "receiving-offal", "3 °C", None, None, "the same"),
    (
        "eu-853",
        "hold-poultry-and-rabbit",
        "4 °C",
        None,
        None,
        "section II, chapter V, in Food Safety Authority of Ireland, Hygiene during and after cutting and boning",
    ),
    (
        "eu-853",
        "mincing-poultry",
        "4 °C",
        None,
        None,
        "section V, chapter III, in Food Safety Authority of Ireland, Hygiene during and after production",
    ),
    ("eu-853", "mincing-offal", "3 °C", None, None, "the same"),
    ("eu-853", "mincing-red-meat", "7 °C", None, None, "the same"),
    ("eu-853", "hold-minced", "2 °C", None, None, "the same"),
    ("eu-853", "hold-preparation", "4 °C", None, None, "the same"),
    ("eu-853", "frozen", "-18 °C", None, None, "the same"),
    ("uk-retail", "hold", "8 °C", None, None, "Food Hygiene (Wales) Regulations 2006, Schedule 4, paragraph 2"),
    ("canada", "hold-meat", "4 °C", None, None, "CFIA, Manual of Procedures, 4.2.1 (archived)"),
    ("canada", "room", "10 °C", None, None, "the same"),
    ("canada", "receiving-red-meat", "4 °C", None, None, "CFIA, Refrigeration of red meat products"),
    ("canada", "hold-poultry-and-rabbit", "4 °C", None, None, "CFIA, Poultry and rabbit meat refrigeration"),
    ("australia-retail", "hold", "5 °C", None, None, "Standard 3.2.2, in NSW Food Authority, 2-hour/4-hour rule"),
];

#[test]
fn highest_figures_are_those_that_were_read() {
    for (profile, id, figure, twin, duration, source) in AT_MOST {
        let limit = limit(profile, id);
        assert_eq!(limit.at_most.as_ref().map(|figure| figure.printed.as_str()), Some(*figure), "{profile}/{id}: {source}");
        assert_eq!(limit.at_most.as_ref().unwrap().temperature, Some(degrees(figure)), "{profile}/{id}: {source}");
        assert_eq!(limit.printed_twin.as_deref(), *twin, "{profile}/{id}: {source}");
        assert_eq!(limit.duration.as_ref().map(|duration| duration.printed.as_str()), *duration, "{profile}/{id}: {source}");
        assert!(matches!(limit.verified, Verified::Read | Verified::Adopted), "{profile}/{id} was read: {source}");
    }
}

#[test]
fn lowest_figures_and_times_are_those_that_were_read() {
    let at_least = [
        ("us-food-code", "hot-hold", "57 °C", Some("135 °F"), None, "FDA Food Code 3-501.16, in State of Delaware Food Code, 2014"),
        (
            "us-food-code",
            "tool-water",
            "77 °C",
            Some("171 °F"),
            Some("30 s"),
            "FDA Food Code 4-501.111, in Washington Administrative Code 246-215-04550",
        ),
        (
            "eu-853",
            "tool-water",
            "82 °C",
            None,
            None,
            "Regulation (EC) 853/2004, Annex III, section I, chapter III, in Food Safety Authority of Ireland, Requirements for cutting plants",
        ),
        ("uk-retail", "hot-hold", "63 °C", None, None, "Food Hygiene Regulations (Northern Ireland) 2006, Schedule 4, paragraph 3"),
        ("australia-retail", "hot-hold", "60 °C", None, None, "Standard 3.2.2, in NSW Food Authority, 2-hour/4-hour rule"),
    ];
    for (profile, id, figure, twin, duration, source) in at_least {
        let limit = limit(profile, id);
        assert_eq!(limit.at_least.as_ref().map(|figure| figure.printed.as_str()), Some(figure), "{profile}/{id}: {source}");
        assert_eq!(limit.printed_twin.as_deref(), twin, "{profile}/{id}: {source}");
        assert_eq!(limit.duration.as_ref().map(|duration| duration.printed.as_str()), duration, "{profile}/{id}: {source}");
    }
    let times = [
        ("us-food-code", "time-out", "4 h", 240, Some(Clock::Single), "FDA Food Code 3-501.19(B), in Wisconsin Food Code, 2024"),
        ("us-food-code", "time-out-six-hours", "6 h", 360, Some(Clock::Single), "FDA Food Code 3-501.19(C), the same"),
        ("us-food-code", "cleaning-interval", "4 h", 240, None, "FDA Food Code 4-602.11(C), in the Chicago adoption"),
        (
            "uk-retail",
            "time-out",
            "4 h",
            240,
            Some(Clock::Single),
            "Food Hygiene Regulations (Northern Ireland) 2006, Schedule 4, paragraph 5",
        ),
        ("australia-retail", "time-out", "2 h", 120, Some(Clock::Cumulative), "NSW Food Authority, 2-hour/4-hour rule"),
        ("australia-retail", "time-out-discard", "4 h", 240, Some(Clock::Cumulative), "the same"),
        ("eu-853", "mince-age-poultry", "3 days", 4_320, None, "Regulation (EC) 853/2004, Annex III, section V, chapter III, point 2(b)"),
        ("eu-853", "mince-age-red-meat", "6 days", 8_640, None, "the same"),
        ("eu-853", "mince-age-vacuum-beef", "15 days", 21_600, None, "the same"),
    ];
    for (profile, id, printed, minutes, clock, source) in times {
        let limit = limit(profile, id);
        let duration = limit.duration.as_ref().unwrap();
        assert_eq!((duration.printed.as_str(), duration.minutes.0), (printed, minutes * 1_000), "{profile}/{id}: {source}");
        assert_eq!(limit.clock, clock, "{profile}/{id}: {source}");
    }
    // Nine samples: mean 100 mg/kg, none over 200. Regulation (EC) 2073/2005, Annex I, 1.26, as summarised by Seafish.
    assert_eq!(limit("eu-853", "histamine").at_most.as_ref().unwrap().printed, "200 mg/kg");
    assert_eq!(limit("uk-retail", "histamine").at_most.as_ref().unwrap().printed, "200 mg/kg");
}

/// The table of hold figures by product and regime: a figure, or a dash where the regime has none.
///
/// Compiled from the sources above; the fish of the EU has words and no figure, and US plants set their own.
#[test]
fn hold_figures_by_product_and_silence_where_no_rule_speaks() {
    use Product::{Fish, Game, Minced, Offal, Poultry, Preparation, Rabbit, RedMeat};
    let profiles = ["us-food-code", "us-plant", "eu-853", "uk-retail", "canada", "australia-retail"];
    let rows: [(Product, [&str; 6]); 8] = [
        (RedMeat, ["5 °C", "-", "7 °C", "8 °C", "4 °C", "5 °C"]),
        (Offal, ["5 °C", "-", "3 °C", "8 °C", "4 °C", "5 °C"]),
        (Poultry, ["5 °C", "-", "4 °C", "8 °C", "4 °C", "5 °C"]),
        (Rabbit, ["5 °C", "-", "4 °C", "8 °C", "4 °C", "5 °C"]),
        (Game, ["5 °C", "-", "7 °C", "8 °C", "-", "5 °C"]),
        (Fish, ["5 °C", "-", "-", "8 °C", "-", "5 °C"]),
        (Minced, ["5 °C", "-", "2 °C", "8 °C", "4 °C", "5 °C"]),
        (Preparation, ["5 °C", "-", "4 °C", "8 °C", "4 °C", "5 °C"]),
    ];
    for (product, figures) in rows {
        for (id, figure) in profiles.into_iter().zip(figures) {
            let found = hold_of(id, &Builtin::get().profiles[id], product, "pork").map(|limit| limit.at_most.to_string());
            assert_eq!(found.as_deref().unwrap_or("-"), figure, "{} under {id}", product.word());
        }
    }
    let silent = [
        ("eu-853", Stage::TimeOut),
        ("canada", Stage::TimeOut),
        ("us-plant", Stage::TimeOut),
        ("us-plant", Stage::Room),
        ("us-plant", Stage::ToolWater),
        ("uk-retail", Stage::Room),
        ("uk-retail", Stage::ToolWater),
        ("canada", Stage::ToolWater),
        ("canada", Stage::ParasiteFreezing),
        ("australia-retail", Stage::Room),
        ("australia-retail", Stage::RiskMaterial),
        ("australia-retail", Stage::ParasiteFreezing),
    ];
    for (id, stage) in silent {
        assert_eq!(of_stage(&Builtin::get().profiles[id], stage).count(), 0, "{id}: {}", stage.word());
    }
}

/// Rules that have words and no figure never fail, and neither does what is repealed or from memory.
#[test]
fn words_repealed_rules_and_memory_bind_nobody() {
    // EU fresh fish: "approaching that of melting ice", read in UK SI 1998/994, schedule 3, the rule before it.
    let fish = limit("eu-853", "hold-fish");
    assert!(fish.at_most.is_none() && fish.at_least.is_none() && fish.verified == Verified::Read);
    // 9 CFR 381.66(b), 2019: no figure and no hour.
    let poultry = limit("us-plant", "hold-poultry");
    assert!(poultry.at_most.is_none() && poultry.duration.is_none());
    for id in ["hold-poultry-former", "cut-poultry-former"] {
        assert_eq!(limit("us-plant", id).force, Force::Repealed);
        assert!(!limit("us-plant", id).binds(), "{id}");
    }
    for (id, profile) in &Builtin::get().profiles {
        for limit in &profile.limits {
            assert!(!limit.binds() || (limit.force != Force::Repealed && limit.verified != Verified::Memory), "{id}/{}", limit.id);
        }
    }
    // The same freezing time means different things: 24 h at −20 °C alone do not meet the Food Code.
    assert!(limit("us-food-code", "parasite-freezing-24-h").note.as_ref().unwrap().contains("solid"));
    assert_eq!(limit("eu-853", "parasite-freezing-24-h").verified, Verified::Secondary);
}

/// Risk material: the age, whether that age itself is meant, and the parts.
#[test]
fn risk_material_is_listed_as_it_was_read() {
    let spine = ["vertebral-column", "neck-bones", "thoracic-vertebrae", "chine-bone", "lumbar-vertebrae", "sacrum", "dorsal-root-ganglia"];
    let head = ["skull", "brain", "eyes", "spinal-cord"];
    let rows: [(&str, &str, &str, Vec<&str>, &str); 8] = [
        (
            "us-plant",
            "risk-material-30-months",
            "from 30 months",
            [&spine[..], &head, &["trigeminal-ganglia"]].concat(),
            "9 CFR 310.22(a)(1), edition of 1 January 2007",
        ),
        ("us-plant", "risk-material-any-age", "", vec!["tonsils", "distal-ileum"], "9 CFR 310.22(a)(2), (3)"),
        (
            "us-food-code",
            "risk-material-30-months",
            "from 30 months",
            [&spine[..], &head].concat(),
            "the same, to which the Food Code leaves it",
        ),
        (
            "eu-853",
            "risk-material-12-months",
            "over 12 months",
            head.to_vec(),
            "Regulation (EC) 999/2001, Annex V, point 1(a)(i), version of 1 January 2018",
        ),
        ("eu-853", "risk-material-30-months", "over 30 months", spine.to_vec(), "point 1(a)(ii)"),
        ("eu-853", "risk-material-any-age", "", vec!["tonsils", "distal-ileum"], "point 1(a)(iii)"),
        ("eu-853", "risk-material-sheep", "over 12 months", [&head[..], &["tonsils"]].concat(), "point 1(b)"),
        (
            "uk-retail",
            "risk-material-30-months",
            "over 30 months",
            spine.to_vec(),
            "Regulation (EC) 999/2001 as retained, Article 8 and Annex V",
        ),
    ];
    for (profile, id, age, parts, source) in rows {
        let limit = limit(profile, id);
        assert_eq!(limit.age.map_or_else(String::new, |age| age.to_string()), age, "{profile}/{id}: {source}");
        for part in parts {
            assert!(limit.parts.iter().any(|own| own == part), "{profile}/{id} lists no `{part}`: {source}");
        }
        // Tail vertebrae are excluded in both lists, spinous processes in that of the EU only.
        assert!(!limit.parts.iter().any(|part| part == "tail-bones"), "{profile}/{id}: {source}");
        let spinous = limit.parts.iter().any(|part| part == "feather-bones");
        assert_eq!(spinous, profile.starts_with("us") && id == "risk-material-30-months", "{profile}/{id}: {source}");
    }
    let ages = [
        (Age::Under(12), false, false),
        (Age::Under(30), true, false),
        (Age::Between(Range { low: 24, high: 36 }), true, true),
        (Age::Over(30), true, true),
        (Age::Unknown, true, true),
    ];
    for (age, over_12, over_30) in ages {
        assert_eq!(limit("eu-853", "risk-material-12-months").counts_at(age), over_12, "{age}");
        assert_eq!(limit("eu-853", "risk-material-30-months").counts_at(age), over_30, "{age}");
    }
    // "30 months or older" meets an animal of just 30 months, "over 30 months" does not.
    let just = Age::Between(Range { low: 12, high: 30 });
    assert!(limit("us-plant", "risk-material-30-months").counts_at(just) && !limit("eu-853", "risk-material-30-months").counts_at(just));
}

/// Printed pairs are rounded, so a figure is never exchanged for its twin: the exact conversions, by hand.
///
/// Formula: t_F = 1.8 t_C + 32. The pairs are those that rules and charts print side by side.
#[test]
fn printed_pairs_are_not_the_same_temperature() {
    use std::cmp::Ordering::{Equal, Greater, Less};
    // Celsius as printed, Fahrenheit as printed, how the first compares with the second, and the second in Celsius.
    let pairs = [
        ("5 °C", "41 °F", Equal, 5.0),
        ("7 °C", "45 °F", Less, 7.2),
        ("4 °C", "40 °F", Less, 4.4),
        ("21 °C", "70 °F", Less, 21.1),
        ("57 °C", "135 °F", Less, 57.2),
        ("63 °C", "145 °F", Greater, 62.8),
        ("68 °C", "155 °F", Less, 68.3),
        ("74 °C", "165 °F", Greater, 73.9),
        ("77 °C", "171 °F", Less, 77.2),
        ("82 °C", "180 °F", Less, 82.2),
        ("-20 °C", "-4 °F", Equal, -20.0),
        ("-35 °C", "-31 °F", Equal, -35.0),
    ];
    for (celsius, fahrenheit, order, exact) in pairs {
        assert_eq!(degrees(celsius).partial_cmp(&degrees(fahrenheit)), Some(order), "{celsius} and {fahrenheit}");
        let found = degrees(fahrenheit).exact() as f64 / 9_000.0;
        assert!((found - exact).abs() < 0.051, "{fahrenheit} is {found} °C, printed {exact}");
    }
    // A limit keeps the unit in which its source prints it.
    assert_eq!(limit("us-plant", "hold-poultry-former").at_most.as_ref().unwrap().temperature.unwrap().to_string(), "40 °F");
    assert_eq!(limit("us-food-code", "hold").at_most.as_ref().unwrap().temperature.unwrap().to_string(), "5 °C");
    assert_eq!(limit("us-food-code", "hold").measures, Measure::Core);
}
