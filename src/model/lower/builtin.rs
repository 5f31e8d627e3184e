//! The embedded reference data into the model.

use std::collections::BTreeMap;

use serde::de::DeserializeOwned;

use crate::finding::{FileId, Finding};
use crate::model::builtin::{Builtin, BuiltinCaution, BuiltinProfile, BuiltinSpecies, BuiltinTool, BuiltinWear};
use crate::model::words::{Harm, Product, Signal};
use crate::source::documents::builtin as doc;
use crate::source::field::{Entries, Field, Optional, Required};
use crate::source::{decode, yaml};

/// Reads all embedded entries; the findings are for the test that wants none.
pub(crate) fn load() -> (Builtin, Vec<Finding>) {
    let mut findings = Vec::new();
    let builtin = Builtin {
        species: read(include_str!("../../reference/species.yaml"), &mut findings, species),
        tools: read(include_str!("../../reference/tools.yaml"), &mut findings, tool),
        wear: read(include_str!("../../reference/wear.yaml"), &mut findings, wear),
        cautions: read(include_str!("../../reference/cautions.yaml"), &mut findings, caution),
        profiles: read(include_str!("../../reference/profiles.yaml"), &mut findings, profile),
    };
    (builtin, findings)
}

fn read<D, T>(text: &str, findings: &mut Vec<Finding>, lower: impl Fn(&D) -> Option<T>) -> BTreeMap<String, T>
where
    D: DeserializeOwned + std::fmt::Debug,
{
    let (node, found) = yaml::parse(text, FileId(0));
    findings.extend(found);
    let Some(node) = node else { return BTreeMap::new() };
    let (entries, found): (Option<Entries<D>>, Vec<Finding>) = decode::decode(&node, FileId(0));
    findings.extend(found);
    let entries = entries.map_or_else(Vec::new, |entries| entries.entries);
    entries.into_iter().filter_map(|entry| Some((entry.name, lower(entry.value.value()?)?))).collect()
}

fn text<T: std::ops::Deref<Target = str>>(field: &Field<T>) -> Option<String> {
    field.value().map(|text| text.trim().to_owned())
}

fn species(stated: &doc::Species) -> Option<BuiltinSpecies> {
    Some(BuiltinSpecies { name: text(&stated.name)?, product: Product::from_word(&text(&stated.product)?)?, group: text(&stated.group)? })
}

fn tool(stated: &doc::Tool) -> Option<BuiltinTool> {
    Some(BuiltinTool { name: text(&stated.name)?, kind: text(&stated.kind)?, does: text(&stated.does)? })
}

fn wear(stated: &doc::Wear) -> Option<BuiltinWear> {
    Some(BuiltinWear { name: text(&stated.name)?, about: text(&stated.about)?, glove: *stated.glove.value()? })
}

fn caution(stated: &doc::Caution) -> Option<BuiltinCaution> {
    let sign = stated.sign.value().and_then(|sign| Some((text(&sign.code)?, text(&sign.name)?)));
    Some(BuiltinCaution {
        name: text(&stated.name)?,
        signal: Signal::from_word(&text(&stated.signal)?)?,
        hazard: text(&stated.hazard)?,
        consequence: text(&stated.consequence)?,
        avoid: text(&stated.avoid)?,
        harm: Harm::from_word(&text(&stated.harm)?)?,
        sign,
        sources: sources(&stated.sources),
        verified: text(&stated.verified)?,
    })
}

fn profile(stated: &doc::Profile) -> Option<BuiltinProfile> {
    Some(BuiltinProfile {
        name: text(&stated.name)?,
        jurisdiction: text(&stated.jurisdiction)?,
        about: text(&stated.about)?,
        edition: text(&stated.edition)?,
    })
}

/// Each source as one text: title, section, publisher, year or edition, and where it was read when elsewhere.
fn sources(field: &Optional<Vec<Required<doc::Source>>>) -> Vec<String> {
    let stated = field.value().map_or(&[][..], |list| list.as_slice());
    let one = |source: &doc::Source| {
        let parts = [text(&source.title), text(&source.section), text(&source.publisher), text(&source.edition), text(&source.year)];
        let mut line = parts.into_iter().flatten().collect::<Vec<_>>().join(", ");
        if let Some(other) = text(&source.read_in) {
            line.push_str(&format!(" (read in {other})"));
        }
        line
    };
    stated.iter().filter_map(|source| source.value()).map(one).collect()
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
