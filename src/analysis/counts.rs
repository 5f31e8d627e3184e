//! Counted parts: what a step takes in ribs or vertebrae, its outputs hold together.
//!
//! A part is followed while the input is known to hold it and some output names it; a silent output then
//! holds none. Where no output names it, it is followed no further. A part that is sawn across
//! (`cuts-through`) lies in several outputs at once, each with a count of its own, none above what was taken.

use std::collections::BTreeMap;

use crate::model::procedure::CountSpec;
use crate::model::quantity::Range;
use crate::model::{Output, Procedure, Step};

use super::network::Network;

/// Something that does not add up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CountTrouble {
    /// The outputs cannot hold together what was taken.
    NotConserved {
        /// The step.
        step: usize,
        /// The part.
        part: String,
        /// How many were taken.
        taken: Range<u32>,
        /// How many the outputs hold; `rest` counts as none.
        given: Range<u32>,
    },
    /// More than one output holds the rest of the same part.
    SeveralRests {
        /// The step.
        step: usize,
        /// The part.
        part: String,
    },
    /// An output of a part that is sawn across may hold more than was taken.
    AboveTaken {
        /// The step.
        step: usize,
        /// The output.
        output: usize,
        /// The part.
        part: String,
        /// How many were taken.
        taken: Range<u32>,
        /// How many the output holds; surely too many when even its low end is above `taken.high`.
        given: Range<u32>,
    },
    /// Outputs of a part that is sawn across that give no number of their own.
    CutThroughSilent {
        /// The step.
        step: usize,
        /// The part.
        part: String,
        /// The outputs.
        outputs: Vec<usize>,
    },
}

/// Counted parts of one procedure.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Counts {
    /// For each piece of the network, the parts that it is known to hold, zero included.
    pub held: Vec<BTreeMap<String, Range<u32>>>,
    /// What does not add up, step by step.
    pub troubles: Vec<CountTrouble>,
}

impl Counts {
    /// The counts of a procedure; empty when its order is not sound.
    #[must_use]
    pub fn of(procedure: &Procedure, network: &Network) -> Self {
        if !network.is_sound() {
            return Self::default();
        }
        // A part of a tub is known when each output that gives to it says, or implies, how many.
        let mut gathered: Vec<BTreeMap<String, (Range<u32>, usize)>> = vec![BTreeMap::new(); network.pieces.len()];
        let mut counts = Self { held: vec![BTreeMap::new(); network.pieces.len()], troubles: Vec::new() };
        for (at, (step, ends)) in procedure.steps.iter().zip(&network.steps).enumerate() {
            let taken = counts.taken(&ends.takes);
            for (output, parts) in counts.step(at, step, &taken).into_iter().enumerate() {
                let Some(piece) = ends.gives.get(output) else { continue };
                let (Some(sums), Some(node), Some(held)) =
                    (gathered.get_mut(*piece), network.pieces.get(*piece), counts.held.get_mut(*piece))
                else {
                    continue;
                };
                for (part, number) in parts {
                    let (sum, givings) = sums.entry(part.clone()).or_insert((Range::single(0), 0));
                    *sum = plus(*sum, number);
                    *givings += 1;
                    if *givings == node.given_by.len() {
                        held.insert(part, *sum);
                    }
                }
            }
        }
        counts
    }

    /// The parts that all taken pieces together are known to hold.
    fn taken(&self, takes: &[Option<usize>]) -> BTreeMap<String, Range<u32>> {
        let mut pieces = takes.iter().map(|piece| piece.and_then(|piece| self.held.get(piece)));
        let Some(Some(first)) = pieces.next() else { return BTreeMap::new() };
        let mut total = first.clone();
        for piece in pieces {
            let Some(piece) = piece else { return BTreeMap::new() };
            total = total
                .into_iter()
                .filter_map(|(part, sum)| Some((plus(sum, *piece.get(&part)?), part)))
                .map(|(sum, part)| (part, sum))
                .collect();
        }
        total
    }

    /// Looks at one step and says what each output is known to hold.
    fn step(&mut self, at: usize, step: &Step, taken: &BTreeMap<String, Range<u32>>) -> Vec<BTreeMap<String, Range<u32>>> {
        let mut known = vec![BTreeMap::new(); step.give.len()];
        let mut parts: Vec<&str> = Vec::new();
        let named = step.give.iter().flat_map(|output| output.counts.iter().map(|count| count.part.value.as_str()));
        for part in step.cuts_through.iter().map(|part| part.value.as_str()).chain(named) {
            if !parts.contains(&part) {
                parts.push(part);
            }
        }
        for part in parts {
            let row: Vec<Said> = step.give.iter().map(|output| said(output, part)).collect();
            let numbers = if step.cuts_through.iter().any(|cut| cut.value == part) {
                self.cut_through(at, part, &row, taken.get(part).copied())
            } else {
                self.conserved(at, part, &row, taken.get(part).copied())
            };
            for (output, number) in known.iter_mut().zip(numbers) {
                if let Some(number) = number {
                    output.insert(part.to_owned(), number);
                }
            }
        }
        known
    }

    /// A part that stays whole: the outputs add up to what was taken.
    fn conserved(&mut self, step: usize, part: &str, row: &[Said], taken: Option<Range<u32>>) -> Vec<Option<Range<u32>>> {
        let named = |said: &Said| if let Said::Number(range) = said { Some(*range) } else { None };
        if row.contains(&Said::Broken) {
            return row.iter().map(named).collect();
        }
        let rests = row.iter().filter(|said| **said == Said::Rest).count();
        if rests > 1 {
            self.troubles.push(CountTrouble::SeveralRests { step, part: part.to_owned() });
            return row.iter().map(named).collect();
        }
        let Some(taken) = taken else { return row.iter().map(named).collect() };
        let given = row.iter().filter_map(named).fold(Range::single(0), plus);
        let short = rests == 0 && given.high < taken.low;
        if given.low > taken.high || short {
            self.troubles.push(CountTrouble::NotConserved { step, part: part.to_owned(), taken, given });
            // What depends on a number that is wrong is not known.
            return vec![None; row.len()];
        }
        let rest = Range { low: taken.low.saturating_sub(given.high), high: taken.high.saturating_sub(given.low) };
        row.iter()
            .map(|said| match said {
                Said::Number(range) => Some(*range),
                Said::Rest => Some(rest),
                Said::Nothing => Some(Range::single(0)),
                Said::Broken => None,
            })
            .collect()
    }

    /// A part that is sawn across: each output has a number of its own.
    fn cut_through(&mut self, step: usize, part: &str, row: &[Said], taken: Option<Range<u32>>) -> Vec<Option<Range<u32>>> {
        let silent = |said: &Said| matches!(said, Said::Nothing | Said::Rest);
        let outputs: Vec<usize> = row.iter().enumerate().filter(|(_, said)| silent(said)).map(|(at, _)| at).collect();
        if !outputs.is_empty() {
            self.troubles.push(CountTrouble::CutThroughSilent { step, part: part.to_owned(), outputs });
        }
        let mut numbers = Vec::with_capacity(row.len());
        for (output, said) in row.iter().enumerate() {
            let Said::Number(given) = *said else {
                numbers.push(None);
                continue;
            };
            if let Some(taken) = taken.filter(|taken| given.high > taken.high) {
                self.troubles.push(CountTrouble::AboveTaken { step, output, part: part.to_owned(), taken, given });
                let can_be = Range::new(given.low, given.high.min(taken.high));
                numbers.push(can_be);
                continue;
            }
            numbers.push(Some(given));
        }
        numbers
    }
}

/// What one output says of one part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Said {
    Nothing,
    Broken,
    Rest,
    Number(Range<u32>),
}

fn said(output: &Output, part: &str) -> Said {
    let Some(count) = output.counts.iter().find(|count| count.part.value == part) else { return Said::Nothing };
    match count.number.value() {
        Some(CountSpec::Between(range)) => Said::Number(*range),
        Some(CountSpec::Rest) => Said::Rest,
        None => Said::Broken,
    }
}

fn plus(one: Range<u32>, other: Range<u32>) -> Range<u32> {
    Range { low: one.low.saturating_add(other.low), high: one.high.saturating_add(other.high) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::testing::procedure;

    fn counts(steps: &[&str]) -> Counts {
        let procedure = procedure("p/p", "side", steps);
        Counts::of(&procedure, &Network::of(&procedure))
    }

    const PARTED: &str = "side -> shoulder 30 ribs:3 | middle 40 ribs:11 | leg 30";

    #[test]
    fn ribs_are_conserved_and_a_silent_output_holds_none() {
        assert_eq!(counts(&[PARTED, "middle -> slab 40 ribs:8 | frame 20 ribs:3 | eye 40"]).troubles, []);
        let single = Range::single;
        assert_eq!(
            counts(&[PARTED, "middle -> slab 40 ribs:8 | frame 20 ribs:2 | eye 40"]).troubles,
            [CountTrouble::NotConserved { step: 1, part: "ribs".to_owned(), taken: single(11), given: single(10) }]
        );
        assert_eq!(counts(&[PARTED, "middle -> slab 40 ribs:8-10 | frame 20 ribs:1-3 | eye 40"]).troubles, []);
        assert_eq!(counts(&[PARTED, "middle -> slab 40 ribs:12 | frame rest ribs:rest | eye 40"]).troubles.len(), 1);
    }

    #[test]
    fn rest_is_resolved_and_followed() {
        let steps = [PARTED, "middle -> slab 40 ribs:8-9 | frame 60 ribs:rest", "frame -> riblets 50 ribs:4 | chine 50"];
        let counts = counts(&steps);
        assert_eq!(counts.held[5].get("ribs"), Some(&Range { low: 2, high: 3 }));
        assert!(matches!(&counts.troubles[..], [CountTrouble::NotConserved { step: 2, .. }]));
    }

    #[test]
    fn where_no_output_names_the_part_it_is_followed_no_further() {
        let counts = counts(&[PARTED, "middle -> slab 40 | frame 60", "slab -> x 50 ribs:20 | y 50"]);
        assert_eq!(counts.troubles, []);
    }

    #[test]
    fn joins_and_tubs_add_up() {
        let join = "shoulder, middle -> front 60 ribs:10 | back 40 ribs:4";
        assert_eq!(counts(&[PARTED, join]).troubles, []);
        let tub = ["side -> one 50 ribs:3 | tub 50 ribs:4", "one -> tub 50 ribs:2 | two 50 ribs:1", "tub -> x 50 ribs:6 | y 50 ribs:1"];
        assert!(matches!(&counts(&tub).troubles[..], [CountTrouble::NotConserved { step: 2, taken: Range { low: 6, .. }, .. }]));
    }

    #[test]
    fn parts_sawn_across_lie_in_several_outputs() {
        let sawn = |outputs: &str| counts(&[PARTED, &format!("middle -> {outputs} ; cuts ribs")]).troubles;
        assert_eq!(sawn("loin 50 ribs:11 | belly 50 ribs:11"), []);
        assert!(matches!(&sawn("loin 50 ribs:11 | belly 50 ribs:12")[..], [CountTrouble::AboveTaken { output: 1, .. }]));
        assert!(matches!(&sawn("loin 50 ribs:11 | belly 50")[..], [CountTrouble::CutThroughSilent { outputs, .. }] if *outputs == [1]));
    }

    #[test]
    fn two_rests_of_one_part_are_told() {
        assert!(matches!(&counts(&["side -> a 50 ribs:rest | b 50 ribs:rest"]).troubles[..], [CountTrouble::SeveralRests { step: 0, .. }]));
    }
}
