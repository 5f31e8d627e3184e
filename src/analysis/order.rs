//! The order of work inside one procedure: what is taken must have been made, once, and all of it.
//!
//! One mistake gives one fault: what follows from another fault is left out.

use std::collections::BTreeSet;

use super::network::{Giving, NetworkPiece, NetworkStep, Taking};
use super::upstream::needs;

/// Something wrong with the order of work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OrderFault {
    /// A step takes a piece that is neither the start nor given by any step.
    UnknownTake {
        /// Where it is taken.
        at: Taking,
    },
    /// A step takes a piece that only later steps give.
    TakenBeforeMade {
        /// Where it is taken.
        at: Taking,
        /// The first output that gives it.
        made_by: Giving,
        /// True when the giver itself needs what this step gives, so that no order mends it.
        circular: bool,
    },
    /// A step takes a piece of which a later step gives more.
    TakenBeforeComplete {
        /// Where it is taken.
        at: Taking,
        /// The last output that gives it.
        given_by: Giving,
    },
    /// A step takes a piece that has been taken already.
    TakenTwice {
        /// Where it is taken again.
        at: Taking,
        /// Where it was taken first.
        first: Taking,
    },
    /// A step gives nothing but what it takes.
    DoesNothing {
        /// The step.
        step: usize,
    },
    /// A step gives, beside other pieces, one under the name of what it takes.
    GivesWhatItTakes {
        /// The output.
        output: Giving,
        /// Where the step takes it.
        at: Taking,
    },
    /// A step gives the piece that the whole procedure starts from.
    GivesTheStart {
        /// The output.
        output: Giving,
    },
    /// No step takes the piece that the procedure starts from.
    StartNeverTaken,
}

/// All faults of order, step by step; `complete` is false when something may be missing.
pub(super) fn order_faults(pieces: &[NetworkPiece], steps: &[NetworkStep], complete: bool) -> Vec<OrderFault> {
    let mut walk = Walk { pieces, steps, complete, given_anew: BTreeSet::new(), taken: vec![None; pieces.len()], faults: Vec::new() };
    for (step_at, step) in steps.iter().enumerate() {
        for (take_at, piece) in step.takes.iter().enumerate() {
            walk.take(Taking { step: step_at, take: take_at }, *piece);
        }
        walk.give(step_at, step);
    }
    let start_is_lost = pieces.first().is_some_and(|piece| piece.is_start && piece.taken_by.is_none());
    if complete && start_is_lost && walk.faults.is_empty() {
        walk.faults.push(OrderFault::StartNeverTaken);
    }
    walk.faults
}

/// What is known while walking the steps in order.
struct Walk<'a> {
    pieces: &'a [NetworkPiece],
    steps: &'a [NetworkStep],
    complete: bool,
    /// Pieces given by a step that takes them: a fault of its own, after which taking them again is none.
    given_anew: BTreeSet<usize>,
    taken: Vec<Option<Taking>>,
    faults: Vec<OrderFault>,
}

impl Walk<'_> {
    /// Looks at one name in a step's `take`.
    fn take(&mut self, at: Taking, piece: Option<usize>) {
        let Some((index, piece)) = piece.and_then(|index| Some((index, self.pieces.get(index)?))) else {
            // Where something could not be read, it may have given this piece.
            if self.complete {
                self.faults.push(OrderFault::UnknownTake { at });
            }
            return;
        };
        let Some(slot) = self.taken.get_mut(index) else { return };
        if let Some(first) = *slot {
            if !self.given_anew.contains(&index) {
                self.faults.push(OrderFault::TakenTwice { at, first });
            }
            return;
        }
        *slot = Some(at);
        let earlier = piece.is_start || piece.given_by.first().is_some_and(|giving| giving.step < at.step);
        let later = |giving: &&Giving| giving.step >= at.step && !self.takes(giving.step, index);
        if !earlier {
            if let Some(made_by) = piece.given_by.first().copied() {
                let circular = self.needs(made_by.step, at.step);
                if self.complete {
                    self.faults.push(OrderFault::TakenBeforeMade { at, made_by, circular });
                }
            }
        } else if !piece.is_start
            && let Some(given_by) = piece.given_by.iter().rev().find(later).copied()
        {
            self.faults.push(OrderFault::TakenBeforeComplete { at, given_by });
        }
    }

    /// Looks at what a step gives.
    fn give(&mut self, step_at: usize, step: &NetworkStep) {
        let own = |piece: &usize| step.takes.contains(&Some(*piece));
        let made_before = |piece: &usize| {
            self.pieces
                .get(*piece)
                .is_some_and(|piece| piece.is_start || piece.given_by.first().is_some_and(|giving| giving.step < step_at))
        };
        let does_nothing = !step.gives.is_empty() && step.gives.iter().all(|piece| own(piece) && made_before(piece));
        let mut faults = Vec::new();
        if does_nothing {
            faults.push(OrderFault::DoesNothing { step: step_at });
        }
        for (output_at, piece) in step.gives.iter().enumerate() {
            let output = Giving { step: step_at, output: output_at };
            let is_start = self.pieces.get(*piece).is_some_and(|piece| piece.is_start);
            if let Some(take) = step.takes.iter().position(|taken| *taken == Some(*piece)) {
                if made_before(piece) && !does_nothing {
                    faults.push(OrderFault::GivesWhatItTakes { output, at: Taking { step: step_at, take } });
                }
                self.given_anew.insert(*piece);
            } else if is_start {
                faults.push(OrderFault::GivesTheStart { output });
                self.given_anew.insert(*piece);
            }
        }
        self.faults.append(&mut faults);
    }

    /// True when this step takes this piece.
    fn takes(&self, step: usize, piece: usize) -> bool {
        self.steps.get(step).is_some_and(|step| step.takes.contains(&Some(piece)))
    }

    /// True when `step` is `other`, or takes something that comes from it.
    fn needs(&self, step: usize, other: usize) -> bool {
        needs(self.pieces, self.steps, step, other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::network::Network;
    use crate::analysis::testing::procedure;

    fn faults(steps: &[&str]) -> Vec<OrderFault> {
        Network::of(&procedure("p/p", "a", steps)).faults
    }

    fn taking(step: usize, take: usize) -> Taking {
        Taking { step, take }
    }

    fn giving(step: usize, output: usize) -> Giving {
        Giving { step, output }
    }

    #[test]
    fn splits_tubs_and_joins_in_order_are_sound() {
        let steps = ["a -> b 50 | c 50", "b -> d 60 | trim 40", "c -> e 60 | trim 40", "d, e -> f 90 | trim 10", "trim -> mince 100"];
        assert_eq!(faults(&steps), []);
    }

    #[test]
    fn a_piece_must_be_known_made_and_complete() {
        assert_eq!(faults(&["a -> b 50 | c 50", "bb -> d 100"]), [OrderFault::UnknownTake { at: taking(1, 0) }]);
        assert_eq!(
            faults(&["a -> b 50 | c 50", "d -> e 100", "b -> d 100"]),
            [OrderFault::TakenBeforeMade { at: taking(1, 0), made_by: giving(2, 0), circular: false }]
        );
        assert_eq!(
            faults(&["a -> b 50 | trim 50", "trim -> mince 100", "b -> c 90 | trim 10"]),
            [OrderFault::TakenBeforeComplete { at: taking(1, 0), given_by: giving(2, 1) }]
        );
    }

    #[test]
    fn a_circle_is_told_apart_from_a_wrong_order() {
        let circle = faults(&["a, c -> b 100", "b -> c 50 | d 50"]);
        assert_eq!(circle, [OrderFault::TakenBeforeMade { at: taking(0, 1), made_by: giving(1, 0), circular: true }]);
    }

    #[test]
    fn a_piece_is_taken_once() {
        assert_eq!(
            faults(&["a -> b 50 | c 50", "b -> d 100", "c, b -> e 100"]),
            [OrderFault::TakenTwice { at: taking(2, 1), first: taking(1, 0) }]
        );
        assert_eq!(faults(&["a, a -> b 100"]), [OrderFault::TakenTwice { at: taking(0, 1), first: taking(0, 0) }]);
    }

    #[test]
    fn a_step_that_gives_what_it_takes_is_one_fault() {
        assert_eq!(faults(&["a -> b 50 | c 50", "b -> b 100", "b -> d 100"]), [OrderFault::DoesNothing { step: 1 }]);
        assert_eq!(
            faults(&["a -> a 97-99 | fat 1-3", "a -> b 50 | c 50"]),
            [OrderFault::GivesWhatItTakes { output: giving(0, 0), at: taking(0, 0) }]
        );
        assert_eq!(faults(&["a -> b 50 | c 50", "b -> a 100"]), [OrderFault::GivesTheStart { output: giving(1, 0) }]);
    }

    #[test]
    fn where_something_could_not_be_read_nothing_is_said_of_unknown_pieces() {
        let mut broken = procedure("p/p", "a", &["a -> b 50 | c 50", "d -> e 100", "b -> f 100", "b -> g 100"]);
        broken.steps[0].give_known = false;
        let network = Network::of(&broken);
        assert_eq!(network.faults, [OrderFault::TakenTwice { at: taking(3, 0), first: taking(2, 0) }]);
        assert!(!network.is_sound() && !network.finals_are_certain());
    }

    #[test]
    fn finals_and_tubs_are_told() {
        let network = Network::of(&procedure("p/p", "a", &["a -> b 50 | trim 50", "b -> d 60 | trim 40"]));
        let finals: Vec<&str> = network.finals().map(|(_, piece)| piece.id.as_str()).collect();
        assert_eq!(finals, ["trim", "d"]);
        assert_eq!(network.pieces.iter().map(NetworkPiece::is_tub).collect::<Vec<_>>(), [false, false, true, false]);
    }
}
