//! What can be wrong with a guidebook: one check a file, each with its text, its code and its tests.
//!
//! A check reads the model and the analysis; it never sees YAML, and never calls another check. What `source`
//! and lowering tell while they read (the form group) has its text and its tests here as well. `run` is the
//! only maker of `Checked<Guidebook>`, and makes one only when there is no fault.

mod checked;
mod doubtful;
mod hazard_words;
mod info;
mod known;
mod left_out;
mod losses;
mod named_parts;
mod nearest;
mod owed;
mod reach;
mod report;
mod sentences;
#[cfg(test)]
mod testing;
mod waived;
mod weight;

pub use checked::Checked;
pub use info::{Check, CheckInfo, Group, Run};
pub use report::{Report, Subject};
pub use waived::{Acceptance, Accepted, Idle};

use crate::analysis::Analysis;
use crate::finding::{Finding, Level, SourceMap};
use crate::model::Guidebook;

/// All checks, in the order of their ids.
#[must_use]
pub const fn all() -> &'static [&'static Check] {
    ALL
}

/// The check with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Check> {
    ALL.iter().find(|check| check.info.id == id).copied()
}

/// What checking came to.
#[derive(Debug)]
pub struct Outcome {
    /// All findings, those of reading among them, in their total order.
    pub findings: Vec<Finding>,
    /// Advice that was waived or turned off; not among the findings.
    pub accepted: Vec<Accepted>,
    /// The guidebook, with proof where there is no fault.
    pub verdict: Verdict,
}

/// A guidebook after checking.
#[derive(Debug)]
pub enum Verdict {
    /// No fault: it can become a site.
    Sound(Box<Checked<Guidebook>>),
    /// Some fault: what is sound in it can still be computed with.
    Faulty(Box<(Guidebook, Analysis)>),
}

impl Verdict {
    /// The guidebook, sound or not.
    #[must_use]
    pub fn book(&self) -> &Guidebook {
        match self {
            Self::Sound(checked) => checked.value(),
            Self::Faulty(faulty) => &faulty.0,
        }
    }

    /// What was computed of it.
    #[must_use]
    pub fn analysis(&self) -> &Analysis {
        match self {
            Self::Sound(checked) => checked.analysis(),
            Self::Faulty(faulty) => &faulty.1,
        }
    }

    /// The proof that there is no fault.
    #[must_use]
    pub fn checked(&self) -> Option<&Checked<Guidebook>> {
        match self {
            Self::Sound(checked) => Some(checked),
            Self::Faulty(_) => None,
        }
    }
}

/// Runs every check over a guidebook; `earlier` are the findings made while reading it.
#[must_use]
pub fn run(book: Guidebook, analysis: Analysis, earlier: Vec<Finding>, sources: &SourceMap) -> Outcome {
    let mut report = Report::new(earlier);
    let subject = Subject { book: &book, analysis: &analysis, sources };
    for check in ALL {
        if let Run::Check(run) = check.run {
            run(&subject, &mut report);
        }
    }
    let waived = waived::by_waivers(report.into_findings(), &subject);
    let mut report = Report::new(waived.left);
    for check in ALL {
        if let Run::OfWaivers(run) = check.run {
            run(&subject, &waived.idle, &mut report);
        }
    }
    let (mut findings, turned_off) = waived::by_off(report.into_findings(), &book);
    crate::finding::order::sort(&mut findings, sources);
    let mut accepted = waived.accepted;
    accepted.extend(turned_off);
    waived::sort(&mut accepted, sources);
    let verdict = if findings.iter().all(|finding| finding.level != Level::Fault) {
        Verdict::Sound(Box::new(Checked::new(book, analysis, findings.clone(), accepted.clone(), sources.clone())))
    } else {
        Verdict::Faulty(Box::new((book, analysis)))
    };
    Outcome { findings, accepted, verdict }
}

/// Takes out of findings that were made after checking, as those of a theme are, what the guidebook turned off.
#[must_use]
pub fn accept(findings: Vec<Finding>, book: &Guidebook) -> (Vec<Finding>, Vec<Accepted>) {
    waived::by_off(findings, book)
}

/// Declares the files of checks, a folder a group, and lists their checks in the order of this table.
macro_rules! checks {
    ($($group:ident { $($name:ident,)* })*) => {
        $(mod $group { $(pub(super) mod $name;)* })*

        static ALL: &[&Check] = &[$($(&$group::$name::CHECK,)*)*];
    };
}

// One line a check, sorted within its group: the file `src/checks/<group>/<id with underscores>.rs`.
checks! {
    anatomy {
        count_outside_species,
        gland_not_inedible,
        gland_unnamed,
        part_not_in_region,
        part_not_in_species,
        part_unknown,
    }
    balance {
        chain_weights_can_leave,
        chain_weights_never_meet,
        final_piece_without_use,
        loss_large,
        loss_unstated,
        more_than_one_rest,
        piece_weight_outside_cut_list,
        portions_hardly_fit,
        portions_never_fit,
        range_wider_than_can_occur,
        shares_exceed_whole,
        shares_fall_short,
        taken_piece_with_use,
        tub_stated_differently,
        typical_outside_range,
        typicals_cannot_add_up,
        yield_outside_computed_range,
        yields_not_possible_with_steps,
    }
    caution {
        advised_caution_missing,
        advised_protection_missing,
        caution_after_act,
        caution_missing,
        caution_weaker_than_built_in,
        parasites_unstated,
        protection_forbidden,
        protection_missing,
        risk_material_age_unstated,
        risk_material_not_listed,
        risk_material_not_set_apart,
        signal_not_matching_harm,
        species_change_unmarked,
        theme_hides_safety,
        tools_contradict,
    }
    cold {
        limit_unwatched,
        minutes_missing,
        out_too_long,
        product_not_of_species,
        profile_missing,
        start_above_hold_limit,
        stricter_looser_than_profile,
    }
    control {
        house_cut_not_in_force,
        review_before_date,
        review_overdue,
        reviewer_is_author,
        waiver_expired,
        waiver_without_finding,
    }
    counts {
        count_above_taken,
        counts_not_conserved,
        counts_with_several_rests,
        cut_through_uncounted,
        pieces_exceed_animal,
        sides_do_not_pair,
    }
    form {
        anchor_or_alias,
        colon_in_text,
        comma_in_text,
        control_character,
        date_malformed,
        decimal_comma,
        doubled_key,
        doubled_piece,
        doubled_step_id,
        edition_unread,
        empty_file,
        empty_list,
        empty_value,
        file_ending,
        file_out_of_place,
        file_unreadable,
        guidebook_missing,
        hash_after_text,
        hash_cuts_text,
        id_malformed,
        indent,
        language_malformed,
        link_leaves_guidebook,
        link_unsafe,
        missing_key,
        name_reserved,
        not_true_or_false,
        not_utf_8,
        nul_byte,
        picture_ending,
        picture_unreadable,
        portions_cut_twice,
        quote_in_text,
        range_inverted,
        raw_html,
        several_documents,
        share_with_two_readings,
        space_missing,
        species_not_folder,
        step_gives_nothing,
        step_takes_nothing,
        tab_indent,
        table_malformed,
        text_start,
        theme_breaks_policy,
        theme_broken,
        theme_part_unused,
        too_deep,
        too_large,
        too_many_digits,
        translation_unread,
        trim_unsorted,
        unclosed_bracket,
        unclosed_quote,
        unit_missing,
        unit_wrong,
        unknown_key,
        unknown_word,
        value_malformed,
        value_out_of_bounds,
        wrong_kind,
        yaml_refused,
        yaml_tag,
    }
    language {
        sentence_too_long,
        two_instructions,
        vague_words,
    }
    order {
        after_unknown_step,
        cycle_across_procedures,
        cycle_in_steps,
        guide_too_long,
        not_out_of_the_cold,
        order_against_anatomy,
        piece_given_after_taken,
        piece_unknown,
        piece_used_before_made,
        piece_used_twice,
        start_given_by_step,
        step_does_nothing,
        step_gives_what_it_takes,
        two_house_cuts,
    }
    reference {
        caution_unknown,
        check_not_waivable,
        check_unknown,
        cooked_yield_for_unknown_piece,
        cutting_test_for_unknown_piece,
        cutting_test_for_unknown_procedure,
        former_id_taken,
        guides_alike,
        like_unknown,
        limits_unknown,
        link_dead,
        picture_kind_unsupported,
        picture_missing,
        picture_unsafe,
        picture_without_alt,
        price_for_unknown_piece,
        procedure_unknown,
        species_unknown,
        theme_unknown,
        tool_unknown,
        wear_unknown,
        yield_for_unknown_piece,
    }
}
