//! House cuts as a graph: which procedure carries on with what another gives, and where that goes in circles.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::procedure::ProcedureAnalysis;
use super::starts::{HouseCut, Starts};

/// One procedure's final piece goes on to another procedure, by positions in the list of procedures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Link {
    /// The procedure that gives the piece.
    pub giver: usize,
    /// The piece, as a position in the giver's network.
    pub piece: usize,
    /// The house cut of that piece.
    pub taker: usize,
}

/// The links of each procedure, in the order of first giving.
#[derive(Debug, Clone, Default)]
pub struct HouseCuts {
    links: Vec<Vec<Link>>,
}

impl HouseCuts {
    /// Finds all links. A procedure of which it is not certain what is final has none.
    #[must_use]
    pub fn of(procedures: &[ProcedureAnalysis], starts: &Starts) -> Self {
        let mut links = Vec::with_capacity(procedures.len());
        for (giver, procedure) in procedures.iter().enumerate() {
            let mut own = Vec::new();
            if procedure.network.finals_are_certain() {
                for (piece, node) in procedure.network.finals() {
                    if let HouseCut::One(taker) = starts.house_cut(&node.id)
                        && taker != giver
                    {
                        own.push(Link { giver, piece, taker });
                    }
                }
            }
            links.push(own);
        }
        Self { links }
    }

    /// The links out of one procedure.
    #[must_use]
    pub fn from(&self, procedure: usize) -> &[Link] {
        self.links.get(procedure).map_or(&[], Vec::as_slice)
    }

    /// All links, procedure by procedure.
    pub fn iter(&self) -> impl Iterator<Item = &Link> {
        self.links.iter().flatten()
    }

    /// All procedures that carry on from `first`, itself included, in an order in which each comes after all
    /// that give its start; among those ready, in the order of first giving. The flag is false when some
    /// could not be ordered, because they go in circles; those are left out.
    #[must_use]
    pub fn in_order(&self, first: usize) -> (Vec<usize>, bool) {
        let mut waiting: BTreeMap<usize, usize> = BTreeMap::from([(first, 0)]);
        let mut open = vec![first];
        while let Some(at) = open.pop() {
            for link in self.from(at) {
                if !waiting.contains_key(&link.taker) {
                    open.push(link.taker);
                }
                *waiting.entry(link.taker).or_default() += 1;
            }
        }
        let all = waiting.len();
        let mut ready = VecDeque::from([first]);
        if waiting.get(&first).is_some_and(|givers| *givers > 0) {
            ready.clear();
        }
        let mut order = Vec::with_capacity(all);
        while let Some(at) = ready.pop_front() {
            order.push(at);
            for link in self.from(at) {
                let Some(givers) = waiting.get_mut(&link.taker) else { continue };
                *givers = givers.saturating_sub(1);
                if *givers == 0 {
                    ready.push_back(link.taker);
                }
            }
        }
        let complete = order.len() == all;
        (order, complete)
    }

    /// One circle of procedures for each place where house cuts lead back, the first id in order first.
    #[must_use]
    pub fn cycles(&self) -> Vec<Vec<usize>> {
        let mut cycles = BTreeSet::new();
        let mut done = vec![false; self.links.len()];
        for first in 0..self.links.len() {
            if !done.get(first).copied().unwrap_or(true) {
                self.walk(first, &mut done, &mut cycles);
            }
        }
        cycles.into_iter().collect()
    }

    /// Walks all that follows from `first`; a link back into the path walked is a circle.
    fn walk(&self, first: usize, done: &mut [bool], cycles: &mut BTreeSet<Vec<usize>>) {
        let mut path: Vec<(usize, usize)> = vec![(first, 0)];
        let mut depth: BTreeMap<usize, usize> = BTreeMap::from([(first, 0)]);
        while let Some((at, next)) = path.last_mut() {
            let at = *at;
            let Some(link) = self.from(at).get(*next) else {
                path.pop();
                depth.remove(&at);
                if let Some(flag) = done.get_mut(at) {
                    *flag = true;
                }
                continue;
            };
            *next += 1;
            if let Some(from) = depth.get(&link.taker) {
                let mut cycle: Vec<usize> = path.iter().skip(*from).map(|(at, _)| *at).collect();
                let least = cycle.iter().enumerate().min_by_key(|(_, at)| **at).map_or(0, |(position, _)| position);
                cycle.rotate_left(least);
                cycles.insert(cycle);
            } else if !done.get(link.taker).copied().unwrap_or(true) {
                depth.insert(link.taker, path.len());
                path.push((link.taker, 0));
            }
        }
    }
}
