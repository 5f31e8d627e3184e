//! What embedded tools and cautions demand, into the model.

use super::read::{list, text};
use crate::model::builtin::demands::{Condition, ToolDemands, WearDemand};
use crate::model::words::Product;
use crate::source::documents::builtin as doc;
use crate::source::field::{Field, Required};

/// The demands of a tool.
pub(super) fn of_tool(stated: &doc::Tool) -> Option<ToolDemands> {
    let under = stated.cautions_in.value().into_iter().flat_map(|entries| &entries.entries);
    Some(ToolDemands {
        cautions: list(&stated.cautions),
        cautions_in: under.map(|entry| (entry.name.clone(), list(&entry.value))).collect(),
        advised_cautions: list(&stated.advise_cautions),
        wear: wear(&stated.wear)?,
        advised_wear: wear(&stated.advise_wear)?,
        never: list(&stated.never),
    })
}

/// Demands for protection; `None` when one lists no set.
pub(super) fn wear(field: &Field<Vec<Required<doc::AnySet>>>) -> Option<Vec<WearDemand>> {
    let demand = |stated: &Required<doc::AnySet>| {
        let any_of: Vec<Vec<String>> = stated.value()?.any_of.value()?.iter().map(|set| list(set)).collect();
        (!any_of.is_empty() && any_of.iter().all(|set| !set.is_empty())).then_some(WearDemand { any_of })
    };
    field.value().into_iter().flatten().map(demand).collect()
}

/// Conditions under which a caution is demanded; `None` when one holds a word that is not known.
pub(super) fn conditions(field: &Field<Vec<Required<doc::Condition>>>) -> Option<Vec<Condition>> {
    field.value().into_iter().flatten().map(|stated| condition(stated.value()?)).collect()
}

fn condition(stated: &doc::Condition) -> Option<Condition> {
    let product = match text(&stated.product) {
        Some(word) => Some(Product::from_word(&word)?),
        None => None,
    };
    let draws = text(&stated.draws);
    if draws.as_deref().is_some_and(|word| word != "toward-body") {
        return None;
    }
    Some(Condition {
        group: text(&stated.group),
        anatomy: list(&stated.anatomy),
        product,
        served_raw: stated.served_raw.value().copied(),
        histamine: stated.histamine.value().copied(),
        draws_toward_body: draws.is_some(),
        wear: list(&stated.wear),
    })
}

#[cfg(test)]
mod tests {
    use crate::model::builtin::Builtin;
    use crate::model::builtin::demands::WearDemand;

    /// Whatever is demanded is there: cautions, protection, groups and parts.
    #[test]
    fn demands_name_what_is_there() {
        let builtin = Builtin::get();
        let worn = |demands: &[WearDemand], by: &str| {
            for id in demands.iter().flat_map(|demand| demand.any_of.iter().flatten()) {
                assert!(builtin.wear.contains_key(id), "{by}: no protection `{id}`");
            }
        };
        for (id, tool) in &builtin.tools {
            let demands = &tool.demands;
            let under = demands.cautions_in.iter().flat_map(|(_, cautions)| cautions);
            for caution in demands.cautions.iter().chain(under).chain(&demands.advised_cautions) {
                assert!(builtin.cautions.contains_key(caution), "{id}: no caution `{caution}`");
            }
            worn(&demands.wear, id);
            worn(&demands.advised_wear, id);
            assert!(demands.never.iter().all(|never| builtin.wear.contains_key(never)), "{id}: forbids what is not there");
        }
        for (id, caution) in &builtin.cautions {
            worn(&caution.wear, id);
            worn(&caution.advised_wear, id);
            for condition in &caution.demanded_when {
                assert!(condition.wear.iter().all(|wear| builtin.wear.contains_key(wear)), "{id}: worn");
                let Some(group) = &condition.group else {
                    assert!(condition.anatomy.is_empty(), "{id}: parts of no group");
                    continue;
                };
                let anatomy = &builtin.anatomy[group];
                for part in &condition.anatomy {
                    assert!(anatomy.parts.contains_key(part), "{id}: {group} has no `{part}`");
                }
            }
        }
    }

    /// The table of the guidebook format, "Built-in ids": cautions, protection, and what is forbidden, tool by tool.
    #[test]
    fn tools_demand_what_the_format_says() {
        let knife = [&["mesh-gauntlet"][..], &["cut-glove", "arm-guard"]];
        let either = [&["cut-glove"][..], &["mesh-gauntlet"]];
        let saw = ["no-glove-at-moving-blade", "saw-guard-and-pusher", "isolate-before-cleaning", "under-18-powered-machines"];
        let machine = ["isolate-before-cleaning", "under-18-powered-machines"];
        let hands = ["protect-holding-hand", "blade-away-from-body"];
        type Row<'a> = (&'a [&'a str], &'a [&'a str], &'a [&'a [&'a str]], &'a [&'a str]);
        let gloves = ["cut-glove", "mesh-gauntlet", "disposable-gloves"];
        let rows: [Row<'_>; 4] = [
            (&["boning-knife", "breaking-knife"], &hands, &knife, &[]),
            (&["slicing-knife", "fillet-knife", "cleaver", "hand-saw"], &hands[..1], &either, &[]),
            (&["band-saw"], &saw, &[], &gloves),
            (&["mincer", "slicing-machine", "tenderizer"], &machine, &[], &gloves[..2]),
        ];
        for (id, tool) in &Builtin::get().tools {
            let row = rows.iter().find(|row| row.0.contains(&id.as_str()));
            let (_, cautions, wear, never) = row.copied().unwrap_or_default();
            for (profile, last) in [("us-plant", 0), ("us-food-code", 0), ("eu-853", 1), ("uk-retail", 1)] {
                let powered = cautions.last() == Some(&"under-18-powered-machines");
                let expected = if powered { &cautions[..cautions.len() - last] } else { cautions };
                assert_eq!(tool.demands.cautions_under(Some(profile)).collect::<Vec<_>>(), expected, "{id} under {profile}");
            }
            let sets: Vec<Vec<Vec<String>>> = tool.demands.wear.iter().map(|demand| demand.any_of.clone()).collect();
            let expected: Vec<Vec<Vec<String>>> = if wear.is_empty() {
                Vec::new()
            } else {
                vec![wear.iter().map(|set| set.iter().map(|id| (*id).to_owned()).collect()).collect()]
            };
            assert_eq!(sets, expected, "{id}");
            assert_eq!(tool.demands.never, never, "{id}");
        }
    }
}
