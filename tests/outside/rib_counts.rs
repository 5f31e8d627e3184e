//! Ribs and vertebrae: the built-in anatomy and the counts of the demo's guides beside published ones. The anatomy is not
//! yet part of the model, so its files are read as they stand.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use seamwise::model::procedure::CountSpec;
use serde_yaml::Value;

use super::demo;

/// The bones of an animal by id.
fn bones(animal: &str) -> BTreeMap<String, Value> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("src/reference/anatomy-{animal}-bones.yaml"));
    serde_yaml::from_str(&fs::read_to_string(path).unwrap()).unwrap()
}

/// The fewest and the most of a bone.
fn count(bones: &BTreeMap<String, Value>, bone: &str) -> (u32, u32) {
    match &bones[bone]["count"] {
        Value::Number(number) => {
            let number = u32::try_from(number.as_u64().unwrap()).unwrap();
            (number, number)
        }
        Value::String(range) => {
            let (low, high) = range.split_once('–').unwrap();
            (low.parse().unwrap(), high.parse().unwrap())
        }
        other => panic!("{bone}: {other:?}"),
    }
}

fn says(bones: &BTreeMap<String, Value>, bone: &str, what: &str) -> bool {
    ["does", "lies"].iter().any(|key| bones[bone][*key].as_str().unwrap().contains(what))
}

/// University of Guelph, meat laboratory notes by H. J. Swatland, laboratory 8.1, vertebrae by region (undated, read).
#[test]
fn vertebrae_are_those_of_the_published_table() {
    const REGIONS: [&str; 5] = ["neck-bones", "thoracic-vertebrae", "lumbar-vertebrae", "sacrum", "tail-bones"];
    let published = [
        ("cattle", [(7, 7), (13, 13), (6, 6), (5, 5), (18, 20)]),
        ("pig", [(7, 7), (13, 17), (5, 7), (4, 4), (20, 23)]),
        ("sheep", [(7, 7), (13, 14), (6, 7), (4, 4), (16, 18)]),
    ];
    for (animal, counts) in published {
        let bones = bones(animal);
        assert_eq!(REGIONS.map(|region| count(&bones, region)), counts, "{animal}");
        // The page beside the table: a sheep with six neck bones and a pig with five are rare, so they are told, not counted.
        let rare = match animal {
            "sheep" => "six",
            "pig" => "five",
            _ => continue,
        };
        assert!(says(&bones, "neck-bones", rare), "{animal}");
    }
}

/// Anatomy and Physiology of Farm Animals, 8th edition, table 4-4 (read): true ribs, false ribs and segments of the breastbone
/// are 8, 5 and 7 in ruminants, 7, 7 to 8 and 6 in pigs. Ribs are as many as chest vertebrae.
/// Expected difference: the book gives pigs 14 or 15 pairs and the table of the University of Guelph 13 to 17; the anatomy keeps
/// the wider and says that 14 or 15 are most often met.
#[test]
fn ribs_are_true_and_false_ribs_together() {
    for animal in ["cattle", "sheep", "goat", "deer", "pig"] {
        let bones = bones(animal);
        let (ribs, (fewest, most), segments) = if animal == "pig" { (7, (7, 8), 6) } else { (8, (5, 5), 7) };
        let found = count(&bones, "ribs");
        assert!(found.0 <= ribs + fewest && ribs + most <= found.1, "{animal}: {found:?}");
        assert_eq!(found, count(&bones, "thoracic-vertebrae"), "{animal}");
        assert_eq!(count(&bones, "breastbone"), (segments, segments), "{animal}");
        // Sheep, goat and deer have no entry of true ribs; nothing is held against them there.
        if bones.contains_key("true-ribs") {
            assert_eq!(count(&bones, "true-ribs"), (ribs, ribs), "{animal}");
        }
        let wider = (ribs + fewest, ribs + most) != found;
        assert_eq!(wider, animal == "pig" || animal == "sheep", "{animal}: {found:?}");
    }
    assert!(says(&bones("pig"), "thoracic-vertebrae", "14 or 15"));
    // Productive Sheep Husbandry (scan, undated, read): usually 13 pairs, sometimes 14.
    assert!(says(&bones("sheep"), "ribs", "Usually 13 pairs, sometimes 14"));
}

/// Chuck, rib, loin: ribs 1 to 5, the break behind the fifth (University of Nebraska, Nebraska Beef Cattle Report, 2013, read), 6 to 12
/// (Canada Beef, technical sheet of the rib, undated, read), and the thirteenth on the loin. Lamb: shoulder 4, rack 8, loin
/// 1 (extension slides by D. W. Warren, undated, read in part), or shoulder 5 and rack 8 (Handbook on Cutting Lamb, National Live
/// Stock and Meat Board, undated, read). Goat: 5, then 6 to 12, and a cut before the 13th (Cornell University, sheep and goat
/// marketing pages, undated, read).
/// A consumer's page that gives the beef rib "the last six" of thirteen is at odds with all: it would make twelve.
#[test]
fn ribs_of_the_cuts_add_up_to_those_of_the_animal() {
    let styles: [(&str, &[u32]); 4] = [("cattle", &[5, 7, 1]), ("sheep", &[4, 8, 1]), ("sheep", &[5, 8]), ("goat", &[5, 7, 1])];
    for (animal, cuts) in styles {
        assert_eq!(cuts.iter().sum::<u32>(), count(&bones(animal), "ribs").0, "{animal}: {cuts:?}");
    }
    assert_ne!([5, 6, 1].iter().sum::<u32>(), count(&bones("cattle"), "ribs").0);
    let cattle = bones("cattle");
    assert!(says(&cattle, "ribs", "five in the chuck, seven in the rib, the thirteenth with the loin"));
    assert!(says(&bones("goat"), "ribs", "6th to the 12th"));
    assert!(says(&bones("sheep"), "ribs", "eight where the shoulder kept four"));
}

/// The counts of one piece in a guide of the demo: part, fewest and most.
fn counted(procedure: &str, piece: &str) -> Vec<(String, u32, u32)> {
    let demo = demo();
    let steps = &demo.procedure(procedure).unwrap().steps;
    let output = steps.iter().flat_map(|step| &step.give).find(|output| output.piece.value == piece).unwrap();
    let counts = output.counts.iter().map(|count| match count.number.value().unwrap() {
        CountSpec::Between(range) => (count.part.value.clone(), range.low, range.high),
        CountSpec::Rest => panic!("{piece}: the rest"),
    });
    counts.collect()
}

/// The same sources for the chuck: five ribs, five chest vertebrae and the whole neck of seven.
#[test]
fn the_chuck_of_the_demo_holds_the_published_bones() {
    let cattle = bones("cattle");
    let five_and_seven = |parts: &[(String, u32, u32)]| {
        for (part, low, high) in parts {
            let wanted = if part == "neck-bones" { count(&cattle, "neck-bones") } else { (5, 5) };
            assert_eq!((*low, *high), wanted, "{part}");
        }
        parts.len()
    };
    assert_eq!(five_and_seven(&counted("beef/chuck-boned", "beef-chuck-frame")), 3);
    assert_eq!(five_and_seven(&counted("beef/chuck-boned", "beef-chuck-ribs")), 1);
}

/// Pork: three ribs stay on the shoulder, so 13 to 17 pairs (University of Guelph, as above) leave 10 to 14. Back ribs hold eight
/// at least (Texas A&M University, Meat Science, 422, undated, read).
/// Expected differences: AHDB, cut specifications for pork (undated, read), parts the forequarter at the fourth or fifth rib, a
/// British line that leaves one or two ribs fewer on the loin than the house's line before rib 4; and centre-cut loins (IMPS 412,
/// older edition, secondary) hold 8 or 11 ribs by count, where the demo's centre holds all that the loin has.
#[test]
fn the_ribs_of_a_pork_side_are_those_of_the_pig() {
    let (fewest, most) = count(&bones("pig"), "ribs");
    let ribs = |procedure: &str, piece: &str| counted(procedure, piece)[0].clone();
    let shoulder = ribs("pork/side-primals", "pork-shoulder");
    assert_eq!((shoulder.1, shoulder.2), (3, 3));
    let left = ("ribs".to_owned(), fewest - shoulder.1, most - shoulder.1);
    for piece in ["pork-middle", "pork-loin-bone-in", "pork-spareribs"] {
        assert_eq!(ribs("pork/side-primals", piece), left, "{piece}");
    }
    let back_ribs = ribs("pork/loin-boneless", "pork-back-ribs");
    assert_eq!(back_ribs, left);
    assert!(back_ribs.1 >= 8, "422 asks for eight at least");
    let centre = ribs("pork/loin-boneless", "pork-loin-rib-and-centre");
    assert!(centre.1 > 8 && (centre.1..=centre.2).contains(&11), "8 is out of the demo's reach, 11 is not");
}
