//! Cautions as they are shown: those of one step before its act, and all of a guide once at its head.

use std::collections::BTreeMap;

use super::Views;
use crate::model::words::Signal;
use crate::model::{Procedure, Step};
use crate::site::context::caution::{Caution, CautionGroup};
use crate::site::escape::keep_units;

/// Signal words, the strongest first.
const STRENGTH: [Signal; 4] = [Signal::Danger, Signal::Warning, Signal::Caution, Signal::Notice];

impl Views<'_> {
    /// The cautions of a step: its own, and the dangers and warnings that stand beside the steps. What is weaker and
    /// covers every step stands once, at the head, before all of them.
    pub(super) fn cautions_of_step(&self, procedure: &Procedure, step: &Step) -> Vec<CautionGroup> {
        let mut all: Vec<(Signal, Caution)> = Vec::new();
        let own = step.cautions.iter().map(|id| (id, true));
        for (id, is_own) in own.chain(procedure.cautions.iter().map(|id| (id, false))) {
            let (signal, caution) = self.caution(&id.value);
            let wanted = is_own || matches!(signal, Signal::Danger | Signal::Warning);
            if wanted && !all.iter().any(|(_, known)| known.id == caution.id) {
                all.push((signal, caution));
            }
        }
        grouped(all)
    }

    /// Every caution of a guide once, with the steps that it is about.
    pub(super) fn cautions_of_guide(&self, procedure: &Procedure) -> Vec<CautionGroup> {
        let mut order: Vec<&str> = Vec::new();
        let mut steps: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
        let everywhere: Vec<&str> = procedure.cautions.iter().map(|id| id.value.as_str()).collect();
        for (at, step) in procedure.steps.iter().enumerate() {
            for id in &step.cautions {
                if !order.contains(&id.value.as_str()) {
                    order.push(&id.value);
                }
                let list = steps.entry(&id.value).or_default();
                if list.last() != Some(&(at + 1)) {
                    list.push(at + 1);
                }
            }
        }
        for id in &everywhere {
            if !order.contains(id) {
                order.push(id);
            }
        }
        let all = order.into_iter().map(|id| {
            let (signal, mut caution) = self.caution(id);
            caution.steps = steps.remove(id).unwrap_or_default();
            caution.every_step = everywhere.contains(&id) || caution.steps.len() == procedure.steps.len();
            (signal, caution)
        });
        grouped(all.collect())
    }

    /// One caution: the shop's own where it has one of that id, else the built-in one.
    pub(super) fn caution(&self, id: &str) -> (Signal, Caution) {
        let own = self.book.cautions.get(id);
        let builtin = self.book.builtin.cautions.get(id);
        let text = |own: Option<&String>, builtin: Option<&String>| keep_units(own.or(builtin).map_or("", |text| text.trim()));
        let signal = own.and_then(|own| own.signal.value().copied()).or(builtin.map(|builtin| builtin.signal)).unwrap_or(Signal::Caution);
        let builtin_sign = builtin.and_then(|builtin| builtin.sign.clone());
        let (sign, sign_name) = match (own.and_then(|own| own.sign.value()), builtin_sign) {
            (Some(code), Some((known, name))) if *code == known => (known, name),
            (Some(code), _) => (code.clone(), String::new()),
            (None, Some(sign)) => sign,
            (None, None) => (String::new(), String::new()),
        };
        let caution = Caution {
            id: id.to_owned(),
            name: own
                .and_then(|own| own.name.value())
                .or(builtin.map(|builtin| &builtin.name))
                .map_or_else(|| id.replace('-', " "), Clone::clone),
            hazard: text(own.and_then(|own| own.hazard.value()), builtin.map(|builtin| &builtin.hazard)),
            consequence: text(own.and_then(|own| own.consequence.value()), builtin.map(|builtin| &builtin.consequence)),
            avoid: text(own.and_then(|own| own.avoid.value()), builtin.map(|builtin| &builtin.avoid)),
            sign,
            sign_name,
            steps: Vec::new(),
            every_step: false,
        };
        (signal, caution)
    }
}

/// By signal word, the strongest first; the order inside a word is kept.
pub(super) fn grouped(all: Vec<(Signal, Caution)>) -> Vec<CautionGroup> {
    let of = |signal: Signal| {
        let items: Vec<Caution> = all.iter().filter(|(own, _)| *own == signal).map(|(_, caution)| caution.clone()).collect();
        CautionGroup { signal: signal.word(), items }
    };
    STRENGTH.into_iter().map(of).filter(|group| !group.items.is_empty()).collect()
}
