//! Worked procedures, from texts through reading and lowering to shares of the start.
//!
//! The shares of each step are own judgement figures of the trade reference of this project; the totals
//! beside them were computed apart, by nested bounding from the last step back, and printed to one decimal.
//! Separate ranges that are merely added are wrong; those figures stand here too and must not come out.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may fail")]

use seamwise::analysis::procedure::ProcedureAnalysis;
use seamwise::analysis::shares::ShareRange;
use seamwise::source::{Entry, Files};

/// `take -> piece range | piece range | loss range`, a step a line, in percent.
const PORK_SIDE: &[&str] = &[
    "side -> dressed-side 97.0-98.8 | leaf-fat 1.0-2.5 | loss 0.1-0.5",
    "dressed-side -> side-feet-off 96.6-97.9 | fore-foot 0.9-1.4 | hind-foot 1.1-1.8 | loss 0.1-0.3",
    "side-feet-off -> leg 25.0-28.5 | side-less-leg 71.2-74.8 | loss 0.1-0.4",
    "side-less-leg -> shoulder 35.0-40.0 | middle 59.7-64.8 | loss 0.1-0.4",
    "middle -> rough-loin 52.5-58.0 | belly-with-ribs 41.7-47.3 | loss 0.1-0.4",
    "rough-loin -> loin 70.0-78.0 | back-fat 14.0-20.5 | skin 5.5-9.0 | loss 0-0.6",
    "belly-with-ribs -> belly 76.0-81.5 | spareribs 15.0-19.0 | lean-trim 2.0-5.0 | loss 0-0.6",
    "shoulder -> square-shoulder 80.0-85.0 | neck-bones 7.0-10.0 | jowl 7.0-10.5 | loss 0-0.6",
    "square-shoulder -> butt 42.0-48.0 | picnic 51.6-57.8 | loss 0.1-0.4",
];
const PORK_LOIN: &[&str] = &[
    "loin -> rough-tenderloin 4.5-6.5 | loin-less-tenderloin 93.3-95.5 | loss 0-0.3",
    "loin-less-tenderloin -> sirloin-end 18.0-23.0 | rib-and-centre 76.6-81.8 | loss 0.1-0.4",
    "rib-and-centre -> rough-boneless 66.0-72.0 | frame 27.6-33.6 | loss 0-0.5",
    "frame -> back-ribs 40.0-48.0 | chine 50.5-59.0 | loss 0.5-2.0",
    "rough-boneless -> boneless 84.0-90.0 | lean-trim 5.0-9.0 | fat-trim 4.0-8.0 | loss 0-0.5",
    "rough-tenderloin -> tenderloin 82.0-90.0 | lean-trim 9.0-16.0 | fat-trim 0.5-2.5 | loss 0-0.5",
    "sirloin-end -> sirloin 68.0-75.0 | hip-bone 15.0-21.0 | lean-trim 4.0-8.0 | fat-trim 3.0-7.0 | loss 0-0.5",
];
const LAMB_LEG: &[&str] = &[
    "leg -> leg-aitch-out 88.0-91.5 | aitch 7.5-11.0 | fat-trim 0.5-1.5 | loss 0-0.4",
    "leg-aitch-out -> topside-rough 18.0-22.0 | leg-less-topside 77.7-81.9 | loss 0-0.4",
    "leg-less-topside -> shank 15.5-20.0 | leg-less-shank 79.7-84.4 | loss 0-0.4",
    "leg-less-shank -> femur 9.0-13.0 | block 86.7-90.9 | loss 0-0.4",
    "block -> fillet-head 4.0-6.0 | thick-flank 19.0-24.0 | silverside-rough 27.0-34.0 | chump 20.0-26.0 | fat-pocket 15.0-23.0 | loss 0-0.5",
    "topside-rough -> topside 82.0-90.0 | fat-trim 6.0-12.0 | lean-trim 3.0-7.0 | loss 0-0.5",
    "silverside-rough -> silverside 86.0-94.0 | fat-trim 3.0-8.0 | lean-trim 2.0-6.0 | loss 0-0.5",
];
const CHICKEN: &[&str] = &[
    "bird -> ready-bird 95.5-98.5 | fat-pad 1.0-3.2 | loss 0.3-1.5",
    "ready-bird -> legs 31.0-35.0 | body 64.8-68.9 | loss 0-0.3",
    "legs -> thighs 53.0-58.0 | drumsticks 41.8-46.9 | loss 0-0.3",
    "body -> wings 15.0-18.5 | body-less-wings 81.3-84.9 | loss 0-0.3",
    "body-less-wings -> back 22.0-28.0 | double-breast 71.6-77.8 | loss 0-0.5",
    "double-breast -> breasts 98.5-99.7 | loss 0.3-1.5",
];
const SALMON: &[&str] = &[
    "round -> gutted 86.0-91.0 | viscera 8.0-13.0 | loss 0.3-1.5",
    "gutted -> headed 82.0-86.8 | head 13.0-17.8 | loss 0-0.3",
    "headed -> sides 78.0-84.0 | fish-frame 13.0-19.5 | scrape 1.0-3.0 | loss 0-0.6",
    "sides -> trimmed 86.0-91.2 | belly-flap 4.0-7.5 | rib-bones 3.5-6.5 | loss 0-0.5",
    "trimmed -> boned 98.9-99.8 | pin-bones 0.2-0.8 | loss 0-0.3",
    "boned -> skinless 89.0-93.5 | fish-skin 6.2-10.5 | loss 0-0.5",
    "skinless -> portions 80.0-90.5 | off-cuts 9.2-19.8 | loss 0-0.5",
];
const BEEF_ROUND: &[&str] = &[
    "beef-leg -> aitch-out 93.2-95.7 | bones 4.0-6.0 | fat-trim 0.2-1.0 | loss 0-0.3",
    "aitch-out -> thick-flank 14.5-18.0 | less-flank 81.7-85.5 | loss 0-0.3",
    "less-flank -> shank 12.0-16.0 | less-shank 83.7-88.0 | loss 0-0.3",
    "less-shank -> topside 30.0-35.0 | less-topside 64.7-70.0 | loss 0-0.3",
    "less-topside -> bones 8.0-11.0 | gooseneck 88.7-92.0 | loss 0-0.3",
    "gooseneck -> heel 14.0-19.0 | eye 15.0-19.0 | flat 48.0-56.0 | fat-trim 8.0-13.0 | lean-trim 3.0-6.0 | loss 0-0.4",
];
const BEEF_CHUCK: &[&str] = &[
    "chuck -> boneless-side 81.5-86.0 | chuck-frame 13.5-18.0 | loss 0.1-0.5",
    "chuck-frame -> ribs 35.0-45.0 | spine 53.5-64.5 | loss 0.5-2.0",
    "boneless-side -> clod 22.0-27.0 | less-clod 72.7-78.0 | loss 0-0.3",
    "less-clod -> chuck-tender 3.5-5.5 | less-tender 94.2-96.5 | loss 0-0.3",
    "less-tender -> blade 5.0-7.5 | less-blade 92.2-95.0 | loss 0-0.3",
    "less-blade -> roll 44.0-52.0 | lean-trim 30.0-38.0 | fat-trim 14.0-22.0 | loss 0-0.5",
    "clod -> heart 45.0-53.0 | flat-iron-muscle 16.0-21.0 | teres 2.5-4.0 | lean-trim 12.0-20.0 | fat-trim 10.0-16.0 | loss 0-0.4",
    "flat-iron-muscle -> flat-iron 68.0-78.0 | fat-trim 14.0-22.0 | lean-trim 4.0-10.0 | loss 0-0.5",
];
const VENISON: &[&str] = &[
    "haunch -> clean-haunch 93.0-98.0 | inedible 1.5-6.0 | loss 0.3-1.5",
    "clean-haunch -> pelvis-out 90.6-94.0 | bones 6.0-9.0 | loss 0-0.4",
    "pelvis-out -> topside 22.0-27.0 | less-topside 72.7-78.0 | loss 0-0.3",
    "less-topside -> shank 17.0-22.0 | less-shank 77.7-83.0 | loss 0-0.3",
    "less-shank -> thick-flank 22.0-28.0 | less-flank 71.7-78.0 | loss 0-0.3",
    "less-flank -> bones 14.0-19.0 | venison-block 74.5-82.0 | inedible 3.0-6.5 | loss 0-0.4",
    "venison-block -> silverside 38.0-45.0 | salmon-cut 13.0-17.0 | rump 27.0-34.0 | sinew 8.0-16.0 | loss 0-0.4",
];

/// The printed totals were rounded to hundredths and then to tenths: half of each digit.
const PRINTED: f64 = 0.055;

/// A whole text of a procedure from its steps.
fn text(steps: &[&str]) -> String {
    let start = steps.first().unwrap().split(" -> ").next().unwrap();
    let mut text = format!(
        "title: T\nspecies: pork\nrevision: {{ number: 1, date: 2026-03-02, author: A }}\nstart: {{ piece: {start}, weight: 8–12 kg }}\nsteps:\n"
    );
    for (at, step) in steps.iter().enumerate() {
        let (take, outputs) = step.split_once(" -> ").unwrap();
        let (gives, loss): (Vec<&str>, Vec<&str>) = outputs.split(" | ").partition(|output| !output.starts_with("loss "));
        let give = gives.iter().map(|output| output.replacen(' ', ": ", 1) + " %").collect::<Vec<_>>().join(", ");
        let loss = loss.first().unwrap().trim_start_matches("loss ");
        text += &format!("  - name: Step {at}\n    take: {take}\n    do: Cut.\n    give: {{ {give} }}\n    loss: {loss} %\n");
    }
    text
}

fn analysis(steps: &[&str]) -> ProcedureAnalysis {
    let mut files = Files::new();
    files.insert("guidebook.yaml".to_owned(), Entry::File(b"title: T\n".to_vec()));
    files.insert("pork/worked.yaml".to_owned(), Entry::File(text(steps).into_bytes()));
    let inspection = seamwise::inspect(files);
    inspection.verdict.analysis().procedure("pork/worked").unwrap().clone()
}

/// Percent to one decimal, as the totals are printed.
fn percent(share: ShareRange) -> [f64; 3] {
    let one = |share: f64| (share * 1000.0).round() / 10.0;
    [one(share.low), one(share.typical), one(share.high)]
}

/// Holds the total of the named pieces (`loss` included where named) against what is printed.
#[track_caller]
fn totals(steps: &[&str], printed: &[(&str, [f64; 3])]) {
    let analysis = analysis(steps);
    let shares = analysis.shares.as_ref().unwrap();
    for (names, expected) in printed {
        let names: Vec<&str> = names.split(' ').collect();
        for name in &names {
            assert!(*name == "loss" || shares.piece(name).is_some_and(|piece| piece.is_final), "no final piece {name}");
        }
        let worth = |named: bool| if named { 1.0 } else { 0.0 };
        let total = shares.weighted(|piece| worth(names.contains(&piece.piece.as_str())), worth(names.contains(&"loss")));
        let found = [total.low, total.typical, total.high].map(|share| share * 100.0);
        let close = found.iter().zip(expected).all(|(found, expected)| (found - expected).abs() <= PRINTED);
        assert!(close, "{names:?}: {found:?}, printed {expected:?}");
    }
}

/// What comes out when separate ranges are added: a trap, never an answer.
#[track_caller]
fn added(steps: &[&str], names: &str, expected: [f64; 2]) {
    let analysis = analysis(steps);
    let shares = analysis.shares.as_ref().unwrap();
    let pieces = || names.split(' ').map(|name| shares.piece(name).unwrap().share);
    let low: f64 = pieces().map(|share| share.low * 100.0).sum();
    let high: f64 = pieces().map(|share| share.high * 100.0).sum();
    assert!((low - expected[0]).abs() < 0.06 && (high - expected[1]).abs() < 0.06, "{low} {high}");
    let [least, _, greatest] =
        percent(shares.weighted(|piece| if names.split(' ').any(|name| name == piece.piece) { 1.0 } else { 0.0 }, 0.0));
    assert!(least > low + 1.0 && greatest < high - 1.0);
}

#[test]
fn pork_side() {
    totals(
        PORK_SIDE,
        &[
            ("leg", [23.4, 25.5, 27.6]),
            ("loin", [14.6, 17.8, 21.2]),
            ("belly", [12.6, 15.2, 18.1]),
            ("spareribs", [2.5, 3.3, 4.2]),
            ("butt", [7.8, 9.7, 11.8]),
            ("picnic", [9.6, 11.8, 14.2]),
            ("back-fat", [2.9, 4.2, 5.6]),
            ("skin", [1.2, 1.8, 2.4]),
            ("jowl", [1.6, 2.3, 3.0]),
            ("neck-bones", [1.6, 2.2, 2.9]),
            ("fore-foot hind-foot", [1.9, 2.5, 3.2]),
            ("leaf-fat", [1.0, 1.8, 2.5]),
            ("lean-trim", [0.3, 0.7, 1.1]),
            ("loss", [0.4, 1.3, 2.2]),
            ("leg loin belly spareribs butt picnic", [79.0, 83.2, 87.3]),
        ],
    );
    added(PORK_SIDE, "leg loin belly spareribs butt picnic", [70.7, 97.1]);
}

#[test]
fn pork_loin() {
    totals(
        PORK_LOIN,
        &[
            ("boneless", [39.6, 44.9, 50.6]),
            ("back-ribs", [7.9, 10.1, 12.6]),
            ("tenderloin", [3.7, 4.7, 5.9]),
            ("sirloin", [11.4, 13.8, 16.5]),
            // A tub that three steps fill: products of extremes, added, give 3.44 to 7.86.
            ("lean-trim", [3.7, 5.4, 7.4]),
            ("fat-trim", [2.5, 4.1, 5.9]),
            ("chine hip-bone", [13.1, 16.0, 19.2]),
            ("loss", [0.2, 1.0, 2.0]),
            ("boneless back-ribs tenderloin sirloin", [68.8, 73.5, 78.4]),
        ],
    );
    added(PORK_LOIN, "boneless back-ribs tenderloin sirloin", [62.6, 85.5]);
}

#[test]
fn lamb_leg() {
    totals(
        LAMB_LEG,
        &[
            ("topside", [13.0, 15.4, 18.1]),
            ("thick-flank", [9.0, 11.3, 13.8]),
            ("silverside", [11.0, 14.4, 18.4]),
            ("chump", [9.4, 12.1, 14.9]),
            ("fillet-head", [1.9, 2.6, 3.4]),
            ("shank", [10.6, 12.7, 15.0]),
            ("aitch femur", [12.6, 15.6, 19.0]),
            ("fat-trim fat-pocket", [9.2, 13.5, 18.2]),
            ("lean-trim", [0.7, 1.5, 2.5]),
            ("loss", [0.0, 0.9, 1.8]),
            ("topside thick-flank silverside chump fillet-head shank", [61.7, 68.5, 75.6]),
        ],
    );
}

#[test]
fn chicken() {
    totals(
        CHICKEN,
        &[
            ("breasts", [35.5, 39.9, 44.7]),
            ("thighs", [15.7, 17.8, 20.0]),
            ("drumsticks", [12.4, 14.2, 16.2]),
            ("wings", [9.3, 10.9, 12.6]),
            ("back", [11.1, 13.5, 16.1]),
            ("fat-pad", [1.0, 2.1, 3.2]),
            ("loss", [0.4, 1.7, 3.0]),
            ("breasts thighs drumsticks wings", [78.6, 82.7, 86.8]),
        ],
    );
    added(CHICKEN, "breasts thighs drumsticks wings", [72.8, 93.4]);
}

#[test]
fn salmon_in_the_round_and_gutted() {
    totals(
        SALMON,
        &[
            ("portions", [33.3, 41.7, 51.1]),
            ("off-cuts", [3.8, 7.1, 11.2]),
            ("head", [11.2, 13.7, 16.2]),
            ("fish-frame", [9.2, 12.3, 15.4]),
            ("viscera", [8.0, 10.5, 13.0]),
            ("fish-skin", [2.9, 4.5, 6.3]),
            ("belly-flap", [2.2, 3.6, 5.0]),
        ],
    );
    totals(SALMON.get(1..6).unwrap(), &[("skinless", [48.4, 55.2, 62.0])]);
    totals(SALMON.get(1..).unwrap(), &[("portions", [38.7, 47.1, 56.2])]);
}

#[test]
fn beef_round() {
    totals(
        BEEF_ROUND,
        &[
            ("topside", [19.1, 22.0, 25.2]),
            ("thick-flank", [13.5, 15.3, 17.2]),
            ("flat", [17.6, 21.3, 26.0]),
            ("eye", [5.5, 7.0, 8.8]),
            ("heel", [5.1, 6.7, 8.8]),
            ("shank", [9.1, 11.0, 13.1]),
            ("bones", [7.4, 9.3, 11.4]),
            ("fat-trim", [3.1, 4.8, 7.0]),
            ("lean-trim", [1.1, 1.8, 2.8]),
            ("topside thick-flank flat eye heel", [66.6, 72.4, 78.2]),
        ],
    );
}

#[test]
fn beef_chuck() {
    totals(
        BEEF_CHUCK,
        &[
            ("roll", [22.6, 27.0, 32.0]),
            ("heart", [8.1, 10.1, 12.3]),
            ("chuck-tender", [2.1, 2.8, 3.7]),
            ("flat-iron", [2.0, 2.8, 3.8]),
            ("teres", [0.4, 0.7, 0.9]),
            ("lean-trim", [18.2, 22.7, 27.5]),
            ("fat-trim", [9.9, 13.5, 17.4]),
            ("ribs", [4.7, 6.3, 8.1]),
            ("spine", [7.2, 9.3, 11.6]),
            ("blade", [2.8, 3.8, 4.9]),
            ("loss", [0.2, 1.0, 1.9]),
            ("roll heart chuck-tender flat-iron teres", [37.4, 43.4, 49.8]),
            ("roll heart chuck-tender flat-iron teres lean-trim", [59.9, 66.1, 72.3]),
        ],
    );
}

#[test]
fn venison_haunch() {
    totals(
        VENISON,
        &[
            ("topside", [18.5, 21.6, 24.9]),
            ("thick-flank", [10.5, 13.3, 16.7]),
            ("silverside", [9.7, 13.1, 17.2]),
            ("salmon-cut", [3.3, 4.7, 6.5]),
            ("rump", [6.9, 9.6, 13.0]),
            ("shank", [10.4, 12.9, 15.8]),
            ("bones", [10.5, 13.8, 17.4]),
            ("inedible", [2.6, 5.6, 8.9]),
            ("topside thick-flank silverside salmon-cut rump", [54.4, 62.3, 70.8]),
        ],
    );
}
