//! Search as an apprentice uses it: trade names of any region, words of the bench, and slips of cold fingers.

use crate::common::{records_of, scripts};
use crate::query::{Answer, Filters, answering, find};
use crate::reader::{ReadIndex, TINY, read};
use seamwise::site::search::{Index, Kind, Sizes};

const GUIDEBOOK: &str = "tests/search/guidebook";

fn index() -> ReadIndex {
    read(&scripts(&Index::of(records_of(GUIDEBOOK), "en"), Sizes::default()))
}

/// Title and address of what a query finds, best first.
fn found(index: &ReadIndex, query: &str) -> Vec<String> {
    titles(index, &find(index, query, &Filters::default()))
}

fn titles(index: &ReadIndex, answer: &Answer) -> Vec<String> {
    answer.hits.iter().map(|(record, _)| format!("{} → {}", index.shown[*record].title, index.shown[*record].url)).collect()
}

#[test]
fn all_names_of_a_piece_lead_to_the_step_that_gives_it() {
    let index = index();
    let piece = "Thick flank → guides/beef/round.html#seam-out-the-thick-flank";
    for query in ["knuckle", "thick flank", "sirloin tip", "Thick-Flank", "imps 167", "167", "thickflank", "beef knuckle", "knuckles"] {
        assert_eq!(found(&index, query)[0], piece, "{query}");
    }
}

#[test]
fn a_name_of_two_pieces_shows_both_and_says_the_regions() {
    let index = index();
    let answer = find(&index, "sirloin", &Filters::default());
    let shown = titles(&index, &answer);
    assert_eq!(shown[0], "Sirloin → species/beef.html#beef-strip-loin");
    assert_eq!(shown[1], "Rump → species/beef.html#beef-rump");
    let names = |at: usize| answering(&index, answer.hits[at].0, &answer);
    assert_eq!(names(0), [("uk".to_owned(), "Sirloin".to_owned())]);
    assert_eq!(names(1), [("us".to_owned(), "sirloin".to_owned())]);
    assert_eq!(names(2), [("us".to_owned(), "sirloin tip".to_owned())], "and then the longer name");
}

#[test]
fn words_of_the_bench_find_the_gland() {
    let index = index();
    let step = "guides/lamb/leg.html#node-out";
    for query in ["lump behind the knee", "gland", "kernel", "the lump behind knee", "glands", "lump behind the"] {
        assert!(found(&index, query)[0].ends_with(step), "{query}: {:?}", found(&index, query));
    }
    let steps = Filters { kinds: vec![Kind::Step as usize], ..Filters::default() };
    let answer = find(&index, "gland knee", &steps);
    assert_eq!(titles(&index, &answer)[0], format!("Take the node out of the fat → {step}"));
    assert_eq!(index.shown[answer.hits[0].0].step, "3");
    assert_eq!(index.shown[answer.hits[0].0].context, "Leg of lamb, seam-boned");
}

/// The demonstration names no part of its own: the names are those that ship inside.
#[test]
fn names_of_parts_that_ship_inside_lead_to_the_step_that_works_at_them() {
    let index = read(&scripts(&Index::of(records_of("procedures"), "en"), Sizes::default()));
    for (query, first) in [
        ("aitch bone", "Aitch bone → guides/lamb/leg-seam-boned.html#aitch-bone-out"),
        ("h-bone", "Aitch bone → guides/lamb/leg-seam-boned.html#aitch-bone-out"),
        ("dorsal root ganglia", "Root ganglia → guides/beef/chuck-boned.html#frame-off"),
        ("femur", "Thigh bone → guides/chicken/eight-pieces.html#legs-off"),
        ("lump behind the knee", "Popliteal node → guides/lamb/leg-seam-boned.html#node-out"),
        ("gland", "Popliteal node → guides/lamb/leg-seam-boned.html#node-out"),
        ("sirloin", "Rump → guides/venison/haunch-seam-boned.html#block-parted"),
    ] {
        assert_eq!(found(&index, query)[0], first, "{query}");
    }
}

#[test]
fn slips_of_cold_fingers_are_mended_and_said() {
    let index = index();
    let piece = "Tenderloin → guides/pork/loin.html#lift-the-tenderloin";
    for slip in ["tenderlion", "tendrloin", "tendeerloin", "tenderloim", "yenderloin", "etnderloin", "tender loin", "pork tenderlion"] {
        assert_eq!(found(&index, slip)[0], piece, "{slip}");
    }
    assert_eq!(find(&index, "tenderlion", &Filters::default()).instead, [("tenderlion".to_owned(), vec!["tenderloin".to_owned()])]);
    assert_eq!(found(&index, "tendrel")[0], piece, "a slip in a word that is still being typed");
    assert!(find(&index, "tenderloin", &Filters::default()).instead.is_empty());
    assert!(found(&index, "416").is_empty(), "a code is never mended");
}

#[test]
fn a_word_is_found_while_it_is_typed() {
    let index = index();
    let piece = "Tenderloin → guides/pork/loin.html#lift-the-tenderloin";
    for end in 3..="tenderloin".len() {
        assert_eq!(found(&index, &"tenderloin"[..end])[0], piece, "{end} letters");
    }
    assert!(found(&index, "q").is_empty(), "one letter says nothing yet");
    assert_eq!(found(&index, "tbone")[0], "T-bone chop → species/lamb.html#lamb-t-bone");
}

#[test]
fn names_rank_above_steps_above_text_above_notes() {
    let index = index();
    let order = found(&index, "silverside");
    assert_eq!(order[0], "Silverside → guides/beef/round.html#part-topside-and-silverside");
    assert!(order[1].starts_with("Beef round into topside"), "the title of a guide: {order:?}");
    assert!(order[2].starts_with("Part topside and silverside"), "the title of a step: {order:?}");
    assert!(order[3].starts_with("Open the seam at the back"), "its text: {order:?}");
    let order = found(&index, "kneecap");
    assert_eq!(order[0], "Kneecap → guides/beef/round.html#seam-out-the-thick-flank", "a part of the animal");
}

#[test]
fn words_must_all_be_there_and_if_none_has_all_it_is_said() {
    let index = index();
    let answer = find(&index, "topside seam natural", &Filters::default());
    assert!(answer.all);
    assert_eq!(titles(&index, &answer), ["Part topside and silverside → guides/beef/round.html#part-topside-and-silverside"]);
    let answer = find(&index, "topside zzzz", &Filters::default());
    assert!(!answer.all && titles(&index, &answer)[0].starts_with("Topside"));
    let answer = find(&index, "zzzz qqqq topside", &Filters::default());
    assert!(answer.hits.is_empty(), "one of three is too little");
    assert!(find(&index, "of the", &Filters::default()).hits.is_empty());
}

#[test]
fn filters_keep_species_and_kinds() {
    let index = index();
    let lamb = Filters { species: vec!["lamb".to_owned()], ..Filters::default() };
    let answer = find(&index, "seam", &lamb);
    assert!(answer.total > answer.hits.len() && !answer.hits.is_empty());
    assert!(answer.hits.iter().all(|(record, _)| index.species[*record].as_deref() == Some("lamb")));
}

#[test]
fn drafts_and_pages_are_known() {
    let index = index();
    let find_one = |query: &str| find(&index, query, &Filters::default()).hits[0].0;
    assert_eq!(index.shown[find_one("part topside and silverside seam natural")].step, "2d");
    assert_eq!(index.shown[find_one("cold room")].url, "pages/cold-room.html");
    assert_eq!(index.species[find_one("cold room")], None);
}

#[test]
fn the_demo_answers_as_well() {
    let index = read(&scripts(&Index::of(records_of("procedures"), "en"), Sizes::default()));
    for query in ["knuckle", "thick flank", "sirloin tip"] {
        assert!(found(&index, query)[0].starts_with("Thick flank →"), "{query}: {:?}", found(&index, query));
    }
    for query in ["lump behind the knee", "kernel"] {
        assert!(found(&index, query)[0].ends_with("lamb/leg-seam-boned.html#node-out"), "{query}: {:?}", found(&index, query));
    }
    assert!(found(&index, "gland").iter().take(3).any(|one| one.ends_with("#node-out")), "{:?}", found(&index, "gland"));
}

#[test]
fn the_box_offers_what_there_is() {
    let index = Index::of(records_of(GUIDEBOOK), "en");
    assert_eq!(index.species(), ["beef", "lamb", "pork"]);
    assert_eq!(index.kinds(), [Kind::Piece, Kind::Anatomy, Kind::Guide, Kind::Step, Kind::Page]);
}

#[test]
fn the_same_records_give_the_same_bytes() {
    let all = || scripts(&Index::of(records_of(GUIDEBOOK), "en"), TINY);
    assert_eq!(all(), all());
    assert!(all().len() >= 3, "parted into files");
    assert!(all()[1..].iter().all(|script| script.text.starts_with("seamwiseIndex.")));
}
