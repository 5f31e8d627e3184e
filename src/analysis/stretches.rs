//! Which pieces lie out of the cold from which step to which, followed step by step.
//!
//! For the time that adds up over several stretches, each episode carries an offset: the time out before
//! it less the running time at which it left. The past of a piece at the end of a step is then the running
//! time plus the greatest offset of all that came into it, whatever the step, so one number is enough.

use std::collections::BTreeMap;

use crate::model::Procedure;
use crate::model::procedure::BackToCold;

use super::clock::{Span, Stretch, Sums};
use super::network::Network;

/// The stretches of each piece of the network, each with its offset; and names that went back in vain.
pub(super) struct Followed {
    pub pieces: Vec<Vec<(Stretch, Span)>>,
    pub idle_returns: Vec<(usize, usize)>,
}

/// A piece lying out.
struct Episode {
    piece: usize,
    from: usize,
    offset: Span,
    to: usize,
}

struct Follower<'a> {
    sums: &'a Sums,
    episodes: Vec<Episode>,
    /// The episode of each piece that lies out.
    out: BTreeMap<usize, usize>,
    /// The past of each piece that lies in the cold.
    cold: BTreeMap<usize, Span>,
    /// For each step, the episodes taken and the episodes that came of them.
    became: Vec<(Vec<usize>, Vec<usize>)>,
}

/// Follows all pieces of a procedure whose order is sound.
pub(super) fn follow(procedure: &Procedure, network: &Network, sums: &Sums) -> Followed {
    let mut follower = Follower { sums, episodes: Vec::new(), out: BTreeMap::new(), cold: BTreeMap::new(), became: Vec::new() };
    let names: BTreeMap<&str, usize> = network.pieces.iter().enumerate().map(|(at, piece)| (piece.id.as_str(), at)).collect();
    let mut idle_returns = Vec::new();
    follower.lay_out(0, 0, Span::default());
    for (at, (step, ends)) in procedure.steps.iter().zip(&network.steps).enumerate() {
        follower.work(at, &ends.takes, &ends.gives);
        match step.back_to_cold.value() {
            None => {}
            Some(BackToCold::All) => {
                let out: Vec<usize> = follower.out.keys().copied().collect();
                for piece in out {
                    follower.put_back(piece, at);
                }
            }
            Some(BackToCold::Pieces(pieces)) => {
                for (position, name) in pieces.iter().enumerate() {
                    let found = names.get(name.value.as_str()).is_some_and(|piece| follower.put_back(*piece, at));
                    if !found {
                        idle_returns.push((at, position));
                    }
                }
            }
        }
    }
    Followed { pieces: follower.finish(network.pieces.len(), procedure.steps.len()), idle_returns }
}

impl Follower<'_> {
    /// A piece, or more of it, lies out since the start of `from`.
    fn lay_out(&mut self, piece: usize, from: usize, offset: Span) -> usize {
        if let Some(at) = self.out.get(&piece)
            && let Some(episode) = self.episodes.get_mut(*at)
        {
            episode.from = episode.from.min(from);
            episode.offset = episode.offset.max(offset);
            return *at;
        }
        self.episodes.push(Episode { piece, from, offset, to: from });
        let at = self.episodes.len() - 1;
        self.out.insert(piece, at);
        at
    }

    /// One step: what it takes from the cold leaves it now; what it gives lies out since the earliest of these.
    fn work(&mut self, step: usize, takes: &[Option<usize>], gives: &[usize]) {
        let now = self.sums.until(step).minus();
        let mut taken = Vec::with_capacity(takes.len());
        let mut from = step;
        let mut offset: Option<Span> = None;
        for piece in takes.iter().flatten() {
            let past = self.cold.remove(piece);
            let at = match (past, self.out.contains_key(piece)) {
                (Some(past), _) => self.lay_out(*piece, step, past.plus(now)),
                (None, true) => self.out.get(piece).copied().unwrap_or_default(),
                (None, false) => self.lay_out(*piece, step, now),
            };
            self.out.remove(piece);
            if let Some(episode) = self.episodes.get(at) {
                from = from.min(episode.from);
                offset = Some(offset.map_or(episode.offset, |offset| offset.max(episode.offset)));
            }
            taken.push(at);
        }
        let offset = offset.unwrap_or(now);
        let given = gives.iter().map(|piece| self.lay_out(*piece, from, offset)).collect();
        self.became.push((taken, given));
    }

    /// Puts a piece back at the end of a step; false when it does not lie out.
    fn put_back(&mut self, piece: usize, step: usize) -> bool {
        let Some(episode) = self.out.remove(&piece).and_then(|at| self.episodes.get_mut(at)) else { return false };
        episode.to = step;
        let past = self.sums.until(step + 1).plus(episode.offset);
        let before = self.cold.entry(piece).or_default();
        *before = before.max(past);
        true
    }

    /// What still lies out goes back after the last step; what was taken went back with the last of what it became.
    fn finish(mut self, pieces: usize, steps: usize) -> Vec<Vec<(Stretch, Span)>> {
        let last = steps.saturating_sub(1);
        for at in self.out.values() {
            if let Some(episode) = self.episodes.get_mut(*at) {
                episode.to = last;
            }
        }
        for (taken, given) in self.became.iter().rev() {
            let end = given.iter().filter_map(|at| self.episodes.get(*at)).map(|episode| episode.to).max();
            for at in taken {
                if let (Some(episode), Some(end)) = (self.episodes.get_mut(*at), end) {
                    episode.to = episode.to.max(end);
                }
            }
        }
        let mut found = vec![Vec::new(); pieces];
        for episode in &self.episodes {
            if let Some(list) = found.get_mut(episode.piece) {
                list.push((Stretch { from: episode.from, to: episode.to }, episode.offset));
            }
        }
        found
    }
}
