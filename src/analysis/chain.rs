//! Chains over house cuts: shares carried from a starting piece through every procedure that follows.
//!
//! One id is one tub over the whole chain for starts and final pieces. A piece that a procedure gives and
//! takes itself stays its own, so that equal names inside two procedures never mix. Start weights play no
//! part in a share.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

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
    roots.into_par_iter().map(|(first, piece)| chain(piece, first, procedures, starts, cuts)).collect()
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::Analysis;
    use crate::analysis::testing::{guidebook, house_cut, procedure};
    use crate::model::Procedure;
    use crate::model::words::Use;

    fn analysis(procedures: Vec<Procedure>) -> Analysis {
        Analysis::of(&guidebook(procedures))
    }

    fn percent(chain: &Chain, piece: &str) -> (f64, f64, f64) {
        let share = chain.shares.as_ref().unwrap().piece(piece).unwrap().share.map(|share| (share * 1e6).round() / 1e4);
        (share.low, share.typical, share.high)
    }

    #[test]
    fn shares_multiply_and_a_tub_of_two_procedures_is_one() {
        let analysis = analysis(vec![
            house_cut("a/loin", "loin", &["loin -> boneless 60-70 =retail | trim 30-40 =lean-trim"]),
            house_cut("a/side", "side", &["side -> loin 40-50 | leg 30-40 =retail | trim 10-30 =lean-trim"]),
        ]);
        let chain = &analysis.chains[0];
        assert_eq!((analysis.chains.len(), chain.start.as_str()), (1, "side"));
        assert_eq!(chain.procedures, ["a/side", "a/loin"]);
        let pieces: Vec<&str> = chain.shares.as_ref().unwrap().pieces.iter().map(|piece| piece.piece.as_str()).collect();
        assert_eq!(pieces, ["loin", "leg", "trim", "boneless"]);
        assert_eq!(percent(chain, "loin"), (40.0, 45.0, 50.0));
        assert_eq!(percent(chain, "boneless"), (24.0, 29.25, 35.0));
        // Trim of both: at least 10 % with the most loin (50 · 0.3), at most 30 % with the least (40 · 0.4).
        assert_eq!(percent(chain, "trim"), (25.0, 35.75, 46.0));
        let shares = chain.shares.as_ref().unwrap();
        assert!(!shares.piece("loin").unwrap().is_final && shares.piece("loin").unwrap().purpose.is_none());
        assert_eq!(shares.uses.iter().map(|entry| entry.purpose).collect::<Vec<_>>(), [Use::Retail, Use::LeanTrim]);
        assert!(analysis.cycles.is_empty() && chain.use_conflicts.is_empty());
    }

    #[test]
    fn a_start_that_two_procedures_give_is_cut_after_both() {
        let analysis = analysis(vec![
            house_cut("a/belly", "belly", &["belly -> trim 20 | streaky 80 =retail"]),
            house_cut("a/side", "side", &["side -> belly 50 | trim 10 | rest-of-side 40"]),
            house_cut("a/trim", "trim", &["trim -> mince 95 =retail | waste 5 =inedible"]),
        ]);
        let chain = &analysis.chains[0];
        assert_eq!(chain.procedures, ["a/side", "a/belly", "a/trim"]);
        assert_eq!(percent(chain, "trim"), (20.0, 20.0, 20.0));
        assert_eq!(percent(chain, "mince"), (19.0, 19.0, 19.0));
    }

    #[test]
    fn equal_names_inside_two_procedures_do_not_mix() {
        let analysis = analysis(vec![
            house_cut("a/leg", "leg", &["leg -> body 90 | bone 10 =bone", "body -> topside 50 =retail | flank 50 =retail"]),
            house_cut("a/side", "side", &["side -> body 80 | head 20 =bone", "body -> leg 25 | loin 75 =retail"]),
        ]);
        let chain = &analysis.chains[0];
        assert_eq!(percent(chain, "topside"), (9.0, 9.0, 9.0));
        // Listed once, added up: 80 % in one procedure, 0.8 · 0.25 · 0.9 in the other.
        assert_eq!(percent(chain, "body"), (98.0, 98.0, 98.0));
    }

    #[test]
    fn a_chain_with_trouble_has_no_figures() {
        let impossible = analysis(vec![
            house_cut("a/leg", "leg", &["leg -> topside 60 =retail | flank 50 =retail"]),
            house_cut("a/side", "side", &["side -> leg 25 | loin 75 =retail"]),
        ]);
        assert_eq!(impossible.chains[0].troubles, [ChainTrouble::Unsound("a/leg".to_owned())]);
        assert!(impossible.chains[0].shares.is_none() && impossible.procedures[1].is_sound());
        let two_house_cuts = analysis(vec![
            house_cut("a/leg", "leg", &["leg -> topside 50 | flank 50"]),
            house_cut("a/leg-too", "leg", &["leg -> topside 60 | flank 40"]),
            house_cut("a/side", "side", &["side -> leg 25 | loin 75 =retail"]),
        ]);
        assert_eq!(two_house_cuts.chains[0].troubles, [ChainTrouble::UnclearHouseCut("leg".to_owned())]);
    }

    #[test]
    fn a_circle_of_house_cuts_is_told_once() {
        let circle = analysis(vec![
            house_cut("a/one", "b", &["b -> c 50 | x 50"]),
            house_cut("a/root", "a", &["a -> b 50 | y 50"]),
            house_cut("a/two", "c", &["c -> b 50 | z 50"]),
        ]);
        assert_eq!(circle.cycles, [["a/one", "a/two"]]);
        assert_eq!(circle.chains[0].troubles, [ChainTrouble::Circular]);
    }

    #[test]
    fn only_house_cuts_carry_on_and_a_missing_use_is_implied() {
        let analysis = analysis(vec![
            procedure("a/leg", "leg", &["leg -> topside 50 =retail | flank 50 =retail"]),
            house_cut("a/side", "side", &["side -> leg 25 | loin 75"]),
        ]);
        let chain = &analysis.chains[0];
        assert_eq!(chain.procedures, ["a/side"]);
        let shares = chain.shares.as_ref().unwrap();
        assert_eq!(shares.piece("leg").unwrap().purpose, Some(Use::ForCutting));
        assert_eq!(shares.piece("loin").unwrap().purpose, None);
    }

    #[test]
    fn two_uses_of_one_tub_are_told() {
        let analysis = analysis(vec![
            house_cut("a/loin", "loin", &["loin -> boneless 60-70 =retail | trim 30-40 =fat-trim"]),
            house_cut("a/side", "side", &["side -> loin 40-50 | trim 50-60 =lean-trim"]),
        ]);
        let conflict = &analysis.chains[0].use_conflicts[0];
        assert_eq!((conflict.first.1, conflict.other.1), (Use::LeanTrim, Use::FatTrim));
    }
}
