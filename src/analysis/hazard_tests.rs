//! Tests of what a guide owes and where its parts end: demands, regions, travelling parts, counts, limits of the cold.

use std::collections::{BTreeMap, BTreeSet};

use super::anatomy::Anatomy;
use super::cold_limits::{SetBy, hold, time_out};
use super::demands::{Because, Demands};
use super::network::Network;
use super::part_counts::too_many;
use super::procedure::ProcedureAnalysis;
use super::regions::Regions;
use super::risk_material::{Ending, ending, listed};
use super::testing::{given, guidebook, procedure, spanned};
use super::travel::{Trace, follow};
use super::{Analysis, starts::Starts};
use crate::model::age::Age;
use crate::model::builtin::limits::OwnFigure;
use crate::model::guidebook::{Cut, Stricter};
use crate::model::quantity::{Minutes, Range, Temperature, TemperatureUnit};
use crate::model::words::{Clock, LimitKind, Side, Use};
use crate::model::{Guidebook, Procedure, Stated};

fn guide(species: &str, steps: &[&str]) -> Procedure {
    Procedure { species: given(species.to_owned()), ..procedure(&format!("{species}/p"), "start", steps) }
}

fn cut(species: &str, piece: &str, region: &str) -> (String, Cut) {
    let cut = Cut {
        piece: spanned(piece.to_owned()),
        species: species.to_owned(),
        name: Stated::Absent,
        also: Vec::new(),
        codes: Vec::new(),
        weight: Stated::Absent,
        per_animal: Stated::Absent,
        region: given(region.to_owned()),
        lies: Stated::Absent,
        was: Vec::new(),
    };
    (piece.to_owned(), cut)
}

fn stricter(limit: LimitKind, figure: OwnFigure) -> Stricter {
    Stricter {
        place: spanned(()).place,
        limit: given(limit),
        at_most: Stated::Absent,
        figure: given(figure),
        watch: Stated::Absent,
        every: Stated::Absent,
        if_missed: Stated::Absent,
    }
}

fn book_of(species: &str, steps: &[&str]) -> Guidebook {
    guidebook(vec![guide(species, steps)])
}

/// The ends of each trace of a part, by the names of the pieces.
fn ends(species: &str, part: &str, steps: &[&str]) -> Vec<Vec<String>> {
    let book = book_of(species, steps);
    let network = Network::of(&book.procedures[0]);
    let anatomy = Anatomy::of(&book, species).unwrap();
    let traces = follow(&book.procedures[0], &network, &anatomy, part);
    let name = |piece: &usize| network.pieces[*piece].id.clone();
    traces.iter().map(|trace| trace.ends.iter().map(name).collect()).collect()
}

#[test]
fn a_held_part_travels_until_an_output_names_it() {
    let held = "start -> meat 80 | pocket 20 @popliteal-node";
    assert_eq!(ends("lamb", "popliteal-node", &[held]), [["pocket"]]);
    assert_eq!(ends("lamb", "popliteal-node", &[held, "pocket -> fat 90 | lump 10 @popliteal-node"]), [["lump"]]);
    assert_eq!(ends("lamb", "popliteal-node", &[held, "pocket -> fat 90 | lump 10"]), [["fat", "lump"]]);
    assert_eq!(ends("lamb", "popliteal-node", &[held, "meat -> a 50 | b 50"]), [["pocket"]]);
    // The part's other names, a count of it and a piece that is called like it say the same.
    assert_eq!(ends("lamb", "popliteal-node", &["start -> meat 80 | pocket 20 @gland-behind-the-knee"]), [["pocket"]]);
    assert_eq!(ends("lamb", "popliteal-node", &["start -> meat 80 | lump 20 popliteal-node:1"]), [["lump"]]);
    assert_eq!(ends("lamb", "popliteal-node", &["start -> meat 80 | lump 20 popliteal-node:0"]).len(), 0);
    assert_eq!(ends("lamb", "popliteal-node", &["start -> meat 80 | lamb-popliteal-node 20"]), [["lamb-popliteal-node"]]);
    assert_eq!(ends("beef", "vertebral-column", &["start -> meat 80 | beef-spine 20"]), [["beef-spine"]]);
}

#[test]
fn a_part_that_steps_only_name_lies_somewhere_in_their_outputs() {
    let named = "start -> meat 80 | pocket 20 ; names popliteal-node";
    assert_eq!(ends("lamb", "popliteal-node", &[named]), [["meat", "pocket"]]);
    assert_eq!(ends("lamb", "popliteal-node", &[named, "pocket -> fat 90 | lump 10"]), [["meat", "fat", "lump"]]);
    // Where some output holds it, the steps that name it speak of that.
    assert_eq!(ends("lamb", "popliteal-node", &[named, "pocket -> fat 90 | lump 10 @popliteal-node"]), [["lump"]]);
    // Two outputs can each hold some.
    assert_eq!(ends("beef", "neck-bones", &["start -> a 50 @neck-bones | b 50 @neck-bones"]), [["a"], ["b"]]);
    // An order that is not sound is followed nowhere.
    assert_eq!(ends("lamb", "popliteal-node", &[named, "nothing -> x 100"]).len(), 0);
}

#[test]
fn a_part_ends_well_in_the_wanted_use_or_goes_on_to_be_cut() {
    let book = book_of("lamb", &["start -> meat 50 =retail | lump 20 =inedible | side 20 =for-cutting | scrap 10"]);
    let analysis = Analysis::of(&book);
    let uses = &analysis.procedures[0].uses;
    let trace = |pieces: &[usize], held| Trace { named: spanned(()).place, step: 0, held, ends: pieces.iter().copied().collect() };
    assert_eq!(ending(&trace(&[2], true), uses, &[Use::Inedible]), Ending::Sound);
    assert_eq!(ending(&trace(&[1, 2], false), uses, &[Use::Inedible]), Ending::Sound);
    assert_eq!(ending(&trace(&[3], true), uses, &[Use::Inedible]), Ending::Sound);
    assert_eq!(ending(&trace(&[1], true), uses, &[Use::Inedible]), Ending::Wrong(Some(1)));
    assert_eq!(ending(&trace(&[1], false), uses, &[Use::Inedible]), Ending::Wrong(None));
    assert_eq!(ending(&trace(&[2], true), uses, &[Use::RiskMaterial]), Ending::Wrong(Some(2)));
    assert_eq!(ending(&trace(&[4], true), uses, &[Use::Inedible]), Ending::Unclear);
}

#[test]
fn risk_material_is_what_the_profile_lists_at_this_age() {
    let parts = |limits: &str, age: Stated<Age>| {
        let mut book = book_of("beef", &["start -> a 50 | b 50"]);
        book.limits = given(limits.to_owned());
        book.procedures[0].age = age;
        listed(&book, &book.procedures[0]).iter().map(|listed| listed.part.to_owned()).collect::<BTreeSet<_>>()
    };
    let has = |found: &BTreeSet<String>, part: &str| found.contains(part);
    let young = parts("eu-853", given(Age::Under(12)));
    assert!(has(&young, "tonsils") && !has(&young, "skull") && !has(&young, "neck-bones"));
    let middle = parts("eu-853", given(Age::Between(Range { low: 12, high: 30 })));
    assert!(has(&middle, "skull") && !has(&middle, "neck-bones"));
    for unknown in [Stated::Absent, given(Age::Unknown), given(Age::Over(12))] {
        let old = parts("eu-853", unknown);
        assert!(has(&old, "skull") && has(&old, "neck-bones") && !has(&old, "feather-bones") && !has(&old, "tail-bones"));
    }
    assert!(parts("eu-853", Stated::Broken).is_empty() && parts("australia-retail", Stated::Absent).is_empty());
}

#[test]
fn a_piece_lies_where_the_cut_list_says_or_where_it_came_from() {
    let steps = [
        "start -> rest-of-it 80 | shank 20",
        "rest-of-it -> chump 40 | block 60",
        "block -> tub 50 | topside 50",
        "topside -> tub 10 | meat 90",
    ];
    let mut book = book_of("lamb", &steps);
    book.cuts = BTreeMap::from([
        cut("lamb", "start", "leg"),
        cut("lamb", "shank", "shank"),
        cut("lamb", "chump", "chump"),
        cut("pork", "block", "loin"),
    ]);
    let analysis = Analysis::of(&book);
    let network = &analysis.procedures[0].network;
    let anatomy = Anatomy::of(&book, "lamb").unwrap();
    let regions = Regions::of(&book, &book.procedures[0], network, &anatomy);
    let set = |names: &[&'static str]| Some(names.iter().copied().collect::<BTreeSet<_>>());
    let at = |id: &str| network.pieces.iter().position(|piece| piece.id == id).unwrap();
    assert_eq!(regions.lies(at("block")).cloned(), set(&["leg"]), "the cut list of another animal says nothing");
    assert_eq!(regions.lies(at("shank")).cloned(), set(&["shank"]));
    assert_eq!(regions.lies(at("tub")), None, "a tub holds of several pieces");
    assert_eq!(regions.reaches(at("start")), set(&["leg", "shank", "chump"]));
    assert_eq!(regions.of_step(network, 1), set(&["leg", "chump"]));
    assert_eq!(regions.of_step(network, 3), set(&["leg"]));
    let mut silent = book.clone();
    silent.cuts.remove("start");
    let regions = Regions::of(&silent, &silent.procedures[0], network, &anatomy);
    assert_eq!(regions.of_step(network, 1), None);
}

#[test]
fn tools_demand_together_and_can_contradict_each_other() {
    let mut book =
        book_of("pork", &["start -> a 50 | b 50 ; tools boning-knife, slicing-knife", "a -> c 50 | d 50 ; tools hand-saw, band-saw"]);
    book.limits = given("us-plant".to_owned());
    let demands = Demands::of(&book, &book.procedures[0]);
    let knives = demands.of_step(&book.procedures[0].steps[0]).unwrap();
    let cautions: Vec<&str> = knives.cautions.iter().map(|demand| demand.what).collect();
    assert_eq!(cautions, ["protect-holding-hand", "blade-away-from-body"]);
    assert_eq!((knives.wear.len(), knives.contradictions.len()), (2, 0));
    let saws = demands.of_step(&book.procedures[0].steps[1]).unwrap();
    assert!(saws.cautions.iter().any(|demand| demand.what == "under-18-powered-machines"));
    let [contradiction] = &saws.contradictions[..] else { panic!("{:?}", saws.contradictions) };
    assert_eq!((&contradiction.demand.because, contradiction.forbidden_by), (&Because::Tool("hand-saw"), "band-saw"));
}

/// Of a choice one tool is taken: both demand their cautions, the band saw's ban holds, and the glove of the hand saw is
/// for who takes that.
#[test]
fn a_choice_of_tools_demands_for_all_and_contradicts_nothing_in_itself() {
    let mut book = book_of("pork", &["start -> a 50 | b 50 ; tools hand-saw"]);
    let Stated::Given(tools) = &mut book.procedures[0].steps[0].tools else { panic!() };
    tools.value[0].value.any_of.push(spanned("band-saw".to_owned()));
    let demands = Demands::of(&book, &book.procedures[0]);
    let saws = demands.of_step(&book.procedures[0].steps[0]).unwrap();
    let cautions: Vec<&str> = saws.cautions.iter().map(|demand| demand.what).collect();
    assert!(cautions.contains(&"protect-holding-hand") && cautions.contains(&"no-glove-at-moving-blade"), "{cautions:?}");
    assert!(saws.never.contains(&("cut-glove", "band-saw")));
    assert_eq!((saws.wear.len(), saws.contradictions.len()), (0, 0));
    assert_eq!(saws.wear_where_taken.iter().map(|demand| &demand.because).collect::<Vec<_>>(), [&Because::Tool("hand-saw")]);
}

#[test]
fn a_part_that_a_step_names_frees_or_takes_demands_its_caution() {
    let demanded = |species: &str, step: &str| {
        let book = book_of(species, &["start -> beef-spine 50 | a 50", step]);
        let demands = Demands::of(&book, &book.procedures[0]);
        let owed = demands.of_step(&book.procedures[0].steps[1]).unwrap();
        owed.cautions
            .iter()
            .find(|demand| demand.what.starts_with("risk-material"))
            .map(|demand| (demand.what.to_owned(), format!("{:?}", demand.because)))
    };
    let beef = |part: &str| Some(("risk-material-beef".to_owned(), format!("Part(\"{part}\")")));
    assert_eq!(demanded("beef", "a -> c 50 | d 50 ; names ribs, spine"), beef("vertebral-column"));
    assert_eq!(demanded("beef", "a -> c 50 @sacrum | d 50"), beef("sacrum"));
    assert_eq!(demanded("beef", "a -> c 50 lumbar-vertebrae:6 | d 50"), beef("lumbar-vertebrae"));
    assert_eq!(demanded("beef", "a -> c 50 | d 50 ; cuts chine-bone"), beef("chine-bone"));
    assert_eq!(demanded("beef", "beef-spine -> c 50 | d 50"), beef("vertebral-column"));
    assert_eq!(demanded("beef", "a -> c 50 | d 50 ; names ribs, tail-bones"), None);
    assert_eq!(demanded("pork", "a -> c 50 | d 50 ; names spine"), None);
    assert_eq!(demanded("goat", "a -> c 50 | d 50 ; names spinal-cord").unwrap().0, "risk-material-sheep");
}

#[test]
fn the_stricter_of_profile_and_guidebook_holds() {
    let celsius = |degrees: i64| Temperature::from_thousandths(degrees * 1_000, TemperatureUnit::Celsius);
    let mut book = book_of("pork", &["start -> a 50 | b 50"]);
    assert!(hold(&book, &book.procedures[0]).is_none() && time_out(&book).is_none());
    book.limits = given("eu-853".to_owned());
    assert_eq!(hold(&book, &book.procedures[0]).unwrap().at_most, celsius(7));
    book.stricter =
        vec![stricter(LimitKind::Hold, OwnFigure::Temperature(celsius(5))), stricter(LimitKind::TimeOut, OwnFigure::Time(Minutes(30_000)))];
    let found = hold(&book, &book.procedures[0]).unwrap();
    assert!(found.at_most == celsius(5) && matches!(found.set_by, SetBy::Guidebook(_)));
    let limit = time_out(&book).unwrap();
    assert_eq!((limit.at_most, limit.clock), (Minutes(30_000), Clock::Single));
    // A looser figure of the guidebook has no effect, unless it asks for an option of the profile.
    let us = |minutes: i64| {
        let mut book = book_of("pork", &["start -> a 50 | b 50"]);
        book.limits = given("us-food-code".to_owned());
        book.stricter = vec![stricter(LimitKind::TimeOut, OwnFigure::Time(Minutes(minutes * 1_000)))];
        time_out(&book).unwrap().at_most.0 / 1_000
    };
    assert_eq!([us(60), us(240), us(300), us(360), us(361)], [60, 240, 300, 360, 240]);
    book.limits = given("australia-retail".to_owned());
    book.stricter.clear();
    let limit = time_out(&book).unwrap();
    assert_eq!((limit.at_most, limit.clock), (Minutes(120_000), Clock::Cumulative));
}

#[test]
fn counts_are_held_against_one_side_or_both() {
    let found = |species: &str, side: Stated<Side>, step: &str| {
        let mut book = book_of(species, &[step]);
        book.procedures[0].start.side = side;
        let starts = Starts::of(&book);
        let analysis = ProcedureAnalysis::of(&book, &book.procedures[0], &starts, &Analysis::of(&book).test_runs);
        let anatomy = Anatomy::of(&book, species).unwrap();
        too_many(&book, &book.procedures[0], &analysis, &anatomy).iter().map(|found| (found.output, found.found.high)).collect::<Vec<_>>()
    };
    let one = "start -> a 50 ribs:14 | b 50";
    assert_eq!(found("beef", Stated::Absent, one), [(Some(0), 14)]);
    assert_eq!(found("beef", given(Side::Both), one), []);
    assert_eq!(found("beef", Stated::Absent, "start -> a 50 ribs:14 x2 | b 50"), []);
    assert_eq!(found("beef", given(Side::Left), "start -> a 50 ribs:14 x2 | b 50"), [(Some(0), 14)]);
    assert_eq!(found("chicken", Stated::Absent, one), []);
    assert_eq!(found("beef", Stated::Absent, "start -> a 50 ribs:7 | b 50 ribs:7"), [(None, 14)]);
    assert_eq!(found("beef", Stated::Absent, "start -> a 50 ribs:13 | b 50 ribs:13 ; cuts ribs"), []);
}
