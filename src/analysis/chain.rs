//! Chains over house cuts: shares carried from a starting piece through every procedure that follows.
//!
//! One id is one tub over the whole chain for starts and final pieces. A piece that a procedure gives and
//! takes itself stays its own, so that equal names inside two procedures never mix. Start weights play no
//! part in a share.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::words::Use;

use super::flow::Flow;
use super::house_cuts::HouseCuts;
use super::procedure::ProcedureAnalysis;
use super::shares::{Listed, Shares, flow_steps};
use super::starts::{HouseCut, Starts};
use super::uses::FinalUse;

/// Why a chain has no figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ChainTrouble {
    /// This procedure of the chain is not sound.
    Unsound(String),
    /// It is not clear which procedure is the house cut of this piece.
    UnclearHouseCut(String),
    /// House cuts lead back to themselves.
    Circular,
}

/// One piece with two uses in one chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UseConflict {
    /// The piece.
    pub piece: String,
    /// The procedure whose use holds, and that use.
    pub first: (String, Use),
    /// The procedure that says otherwise, and what it says.
    pub other: (String, Use),
}

/// Everything that house cuts make of one starting piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Chain {
    /// The starting piece, which no procedure gives.
    pub start: String,
    /// The ids of its procedures in the order of work.
    pub procedures: Vec<String>,
    /// Shares of the starting piece; `None` when there is some trouble. `is_final` is meant over the whole
    /// chain. Pieces of equal id inside several procedures stand in one entry, added up.
    pub shares: Option<Shares>,
    /// Why there are no shares; empty when there are.
    pub troubles: Vec<ChainTrouble>,
    /// Pieces whose use is stated in two ways.
    pub use_conflicts: Vec<UseConflict>,
}

/// All chains of a guidebook, in the order of the ids of their first procedures.
pub(super) fn chains(procedures: &[ProcedureAnalysis], starts: &Starts, cuts: &HouseCuts) -> Vec<Chain> {
    let given: BTreeSet<&str> =
        procedures.iter().flat_map(|procedure| procedure.network.given().map(|(_, piece)| piece.id.as_str())).collect();
    let mut roots: Vec<(usize, &str)> =
        starts.house_cuts().filter(|(piece, _)| !given.contains(piece)).filter_map(|(piece, at)| Some((*at.first()?, piece))).collect();
    roots.sort_unstable();
    roots.into_iter().map(|(first, piece)| chain(piece, first, procedures, starts, cuts)).collect()
}

/// The chain from one starting piece, whose house cut is `first`.
fn chain(start: &str, first: usize, procedures: &[ProcedureAnalysis], starts: &Starts, cuts: &HouseCuts) -> Chain {
    let (order, complete) = cuts.in_order(first);
    let mut troubles = Vec::new();
    if !complete {
        troubles.push(ChainTrouble::Circular);
    }
    if starts.house_cut(start) == HouseCut::Unclear {
        troubles.push(ChainTrouble::UnclearHouseCut(start.to_owned()));
    }
    let members: Vec<&ProcedureAnalysis> = order.iter().filter_map(|at| procedures.get(*at)).collect();
    for member in &members {
        if !member.is_sound() {
            troubles.push(ChainTrouble::Unsound(member.id.clone()));
        }
        let unclear = member.network.finals().filter(|(_, piece)| starts.house_cut(&piece.id) == HouseCut::Unclear);
        troubles.extend(unclear.map(|(_, piece)| ChainTrouble::UnclearHouseCut(piece.id.clone())));
    }
    let mut nodes = Nodes::new(start, &members);
    let shares = if troubles.is_empty() { nodes.shares(&members) } else { None };
    Chain {
        start: start.to_owned(),
        procedures: members.iter().map(|member| member.id.clone()).collect(),
        shares,
        troubles,
        use_conflicts: nodes.conflicts,
    }
}

/// One id of the chain.
struct Entry {
    id: String,
    /// The tub that all procedures share; `None` while the id only occurs inside procedures.
    tub: Option<usize>,
    /// Nodes inside procedures.
    inside: Vec<usize>,
    purpose: Option<(FinalUse, String)>,
}

/// The nodes of the chain's flow.
struct Nodes {
    entries: Vec<Entry>,
    /// For each member and each piece of its network, the node.
    maps: Vec<Vec<usize>>,
    /// Tubs that some member starts from.
    starts: BTreeSet<usize>,
    count: usize,
    conflicts: Vec<UseConflict>,
}

impl Nodes {
    /// Gives a node to each piece, in the order of first giving; the starting piece has node 0.
    fn new(start: &str, members: &[&ProcedureAnalysis]) -> Self {
        let mut index: BTreeMap<String, usize> = BTreeMap::from([(start.to_owned(), 0)]);
        let first = Entry { id: start.to_owned(), tub: Some(0), inside: Vec::new(), purpose: None };
        let mut nodes = Self { entries: vec![first], maps: Vec::new(), starts: BTreeSet::new(), count: 1, conflicts: Vec::new() };
        for member in members {
            let mut map = Vec::with_capacity(member.network.pieces.len());
            for (at, piece) in member.network.pieces.iter().enumerate() {
                let entry_at = *index.entry(piece.id.clone()).or_insert_with(|| {
                    nodes.entries.push(Entry { id: piece.id.clone(), tub: None, inside: Vec::new(), purpose: None });
                    nodes.entries.len() - 1
                });
                let shared = piece.is_start || piece.is_final();
                let node = nodes.node(entry_at, shared);
                if piece.is_start {
                    nodes.starts.insert(node);
                } else if shared && let Some(purpose) = member.uses.get(at).copied().flatten() {
                    nodes.state_use(entry_at, purpose, &member.id);
                }
                map.push(node);
            }
            nodes.maps.push(map);
        }
        nodes
    }

    /// The shared tub of an id, or a new node inside one procedure.
    fn node(&mut self, entry: usize, shared: bool) -> usize {
        let Some(entry) = self.entries.get_mut(entry) else { return 0 };
        if let (true, Some(tub)) = (shared, entry.tub) {
            return tub;
        }
        let node = self.count;
        self.count += 1;
        if shared {
            entry.tub = Some(node);
        } else {
            entry.inside.push(node);
        }
        node
    }

    /// Notes the use that one procedure gives to a tub; a stated use goes before an implied one.
    fn state_use(&mut self, entry: usize, purpose: FinalUse, procedure: &str) {
        let Some(entry) = self.entries.get_mut(entry) else { return };
        match (&entry.purpose, purpose) {
            (Some((FinalUse::Stated(first), by)), FinalUse::Stated(other)) if *first != other => {
                self.conflicts.push(UseConflict {
                    piece: entry.id.clone(),
                    first: (by.clone(), *first),
                    other: (procedure.to_owned(), other),
                });
            }
            (None, _) | (Some((FinalUse::Implied | FinalUse::Missing | FinalUse::Unclear, _)), FinalUse::Stated(_)) => {
                entry.purpose = Some((purpose, procedure.to_owned()));
            }
            _ => {}
        }
    }

    /// The shares over all members, whose steps stand one procedure after another.
    fn shares(&mut self, members: &[&ProcedureAnalysis]) -> Option<Shares> {
        let loss = self.count;
        let mut steps = Vec::new();
        for (member, map) in members.iter().zip(&self.maps) {
            steps.extend(flow_steps(&member.network, &member.balances, map, loss)?);
        }
        let listed = self.entries.iter().skip(1).map(|entry| {
            let is_final = entry.tub.is_some_and(|tub| !self.starts.contains(&tub));
            Listed {
                piece: entry.id.clone(),
                is_final,
                purpose: entry.purpose.as_ref().and_then(|(purpose, _)| purpose.purpose()),
                nodes: entry.tub.map_or_else(|| entry.inside.clone(), |tub| vec![tub]),
            }
        });
        let listed = listed.collect();
        Some(Shares::over(Flow::new(loss + 1, 0, steps), listed, loss))
    }
}
