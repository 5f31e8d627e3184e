//! What the whole of a work needs, gathered from its steps.

use super::Views;
use crate::model::Procedure;
use crate::site::context::work::{Gear, Item};

impl Views<'_> {
    /// Tools, what is worn, and what is taken off, each once with its steps.
    pub(super) fn gear(&self, procedure: &Procedure) -> Gear {
        let (mut tools, mut wear, mut off) = (Vec::new(), Vec::new(), Vec::new());
        for (number, step) in (1..).zip(&procedure.steps) {
            self.tools(procedure, step).into_iter().for_each(|choice| note(&mut tools, choice, number));
            self.wear(procedure, step).into_iter().for_each(|worn| note(&mut wear, vec![worn], number));
            self.never_wear(procedure, step).into_iter().for_each(|never| note(&mut off, vec![never], number));
        }
        for item in tools.iter_mut().chain(&mut wear).chain(&mut off) {
            item.every_step = item.steps.len() == procedure.steps.len();
        }
        Gear { tools, wear, off }
    }
}

/// Adds a step to a thing, or the thing itself where it is new.
fn note(items: &mut Vec<Item>, any_of: Vec<String>, step: usize) {
    match items.iter_mut().find(|item| item.any_of == any_of) {
        Some(item) if item.steps.last() == Some(&step) => {}
        Some(item) => item.steps.push(step),
        None => items.push(Item { any_of, steps: vec![step], every_step: false }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thing_stands_once_with_its_steps() {
        let mut items = Vec::new();
        for (name, step) in [("knife", 1), ("knife", 1), ("saw", 2), ("knife", 3)] {
            note(&mut items, vec![name.to_owned()], step);
        }
        let seen: Vec<(&str, &[usize])> = items.iter().map(|item| (item.any_of[0].as_str(), item.steps.as_slice())).collect();
        assert_eq!(seen, [("knife", &[1, 3][..]), ("saw", &[2][..])]);
    }
}
