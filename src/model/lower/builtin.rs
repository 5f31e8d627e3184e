//! The embedded reference data into the model.

mod anatomy;
mod demands;
mod limits;
mod read;

use std::collections::BTreeMap;

use self::read::{mapping, optional, sources, text, word};
use crate::finding::Finding;
use crate::model::builtin::{Builtin, BuiltinCaution, BuiltinProfile, BuiltinSpecies, BuiltinTool, BuiltinWear};
use crate::model::words::{Clock, Harm, Product, Signal, Verified};
use crate::source::documents::builtin as doc;

/// Reads all embedded entries; the findings are for the test that wants none.
pub(crate) fn load() -> (Builtin, Vec<Finding>) {
    let mut findings = Vec::new();
    let builtin = Builtin {
        species: mapping(include_str!("../../reference/species.yaml"), &mut findings, species),
        tools: mapping(include_str!("../../reference/tools.yaml"), &mut findings, tool),
        wear: mapping(include_str!("../../reference/wear.yaml"), &mut findings, wear),
        cautions: mapping(include_str!("../../reference/cautions.yaml"), &mut findings, caution),
        profiles: profiles(&mut findings),
        anatomy: anatomy::load(&mut findings),
    };
    (builtin, findings)
}

fn species(stated: &doc::Species) -> Option<BuiltinSpecies> {
    Some(BuiltinSpecies {
        name: text(&stated.name)?,
        animal: text(&stated.animal)?,
        product: word(&stated.product, Product::from_word)?,
        group: text(&stated.group)?,
        allergen: text(&stated.allergen),
        histamine: stated.histamine.value().copied().unwrap_or(false),
    })
}

fn tool(stated: &doc::Tool) -> Option<BuiltinTool> {
    Some(BuiltinTool {
        name: text(&stated.name)?,
        kind: text(&stated.kind)?,
        does: text(&stated.does)?,
        demands: demands::of_tool(stated)?,
        sources: sources(&stated.sources),
        verified: word(&stated.verified, Verified::from_word)?,
    })
}

fn wear(stated: &doc::Wear) -> Option<BuiltinWear> {
    Some(BuiltinWear {
        name: text(&stated.name)?,
        about: text(&stated.about)?,
        glove: *stated.glove.value()?,
        kind: text(&stated.kind)?,
        sources: sources(&stated.sources),
        verified: word(&stated.verified, Verified::from_word)?,
    })
}

fn caution(stated: &doc::Caution) -> Option<BuiltinCaution> {
    let sign = stated.sign.value().and_then(|sign| Some((text(&sign.code)?, text(&sign.name)?)));
    Some(BuiltinCaution {
        name: text(&stated.name)?,
        signal: word(&stated.signal, Signal::from_word)?,
        hazard: text(&stated.hazard)?,
        consequence: text(&stated.consequence)?,
        avoid: text(&stated.avoid)?,
        harm: word(&stated.harm, Harm::from_word)?,
        sign,
        demanded_when: demands::conditions(&stated.demanded_when)?,
        wear: demands::wear(&stated.wear)?,
        advised_wear: demands::wear(&stated.advise_wear)?,
        sources: sources(&stated.sources),
        verified: word(&stated.verified, Verified::from_word)?,
    })
}

/// The profiles, each with its limits.
fn profiles(findings: &mut Vec<Finding>) -> BTreeMap<String, BuiltinProfile> {
    let mut profiles = mapping(include_str!("../../reference/profiles.yaml"), findings, profile);
    let mut limits = limits::load(findings);
    for (id, profile) in &mut profiles {
        profile.limits = limits.remove(id).unwrap_or_default();
    }
    profiles
}

fn profile(stated: &doc::Profile) -> Option<BuiltinProfile> {
    Some(BuiltinProfile {
        name: text(&stated.name)?,
        jurisdiction: text(&stated.jurisdiction)?,
        about: text(&stated.about)?,
        edition: text(&stated.edition)?,
        clock: optional(&stated.clock, |word| Clock::from_word(word.trim()))?,
        limits: Vec::new(),
    })
}

#[cfg(test)]
mod tests {
    use super::load;

    /// The ids that the format promises (format.md, "Built-in ids").
    #[test]
    fn every_promised_id_can_be_read() {
        let (builtin, findings) = load();
        assert!(findings.is_empty(), "{findings:#?}");
        let ids = |text: &str| text.split_whitespace().map(str::to_owned).collect::<std::collections::BTreeSet<_>>();
        let keys = |keys: Vec<&String>| keys.into_iter().cloned().collect::<std::collections::BTreeSet<_>>();
        assert_eq!(
            keys(builtin.species.keys().collect()),
            ids("beef veal pork lamb mutton goat venison rabbit chicken duck goose turkey salmon trout cod haddock mackerel plaice sole")
        );
        assert_eq!(
            keys(builtin.tools.keys().collect()),
            ids(
                "boning-knife breaking-knife slicing-knife fillet-knife cleaver hand-saw band-saw mincer slicing-machine tenderizer meat-hook hoist poultry-shears pliers tweezers fish-scaler twine trussing-needle steel tray cutting-board weighing-scale probe-thermometer vacuum-packer"
            )
        );
        assert_eq!(
            keys(builtin.wear.keys().collect()),
            ids("cut-glove mesh-gauntlet arm-guard mesh-apron eye-protection disposable-gloves non-slip-boots")
        );
        assert_eq!(
            keys(builtin.cautions.keys().collect()),
            ids(
                "protect-holding-hand blade-away-from-body apron-when-drawing-in no-glove-at-moving-blade saw-guard-and-pusher isolate-before-cleaning under-18-powered-machines keep-cold separate-species cover-cut-glove-for-raw-service risk-material-beef risk-material-sheep parasite-freezing histamine-cold lift-with-help bone-splinters wet-floor"
            )
        );
        assert_eq!(keys(builtin.profiles.keys().collect()), ids("us-food-code us-plant eu-853 uk-retail canada australia-retail"));
    }
}
