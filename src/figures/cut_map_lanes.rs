//! Where each node of a cut map lies: every node a row, every line that is still to lead somewhere a lane beside it.
//!
//! A node stands below all that leads to it and right of all lanes that pass it, so that no line runs through words. Rows
//! follow each branch to its end; what several branches lead to stands below the last of them. Of the orders in which
//! branches can follow one another, one with few crossings is kept. It computes numbers alone.

/// So many nodes are arranged anew for fewer crossings; beyond, the first order is kept.
const ARRANGED: usize = 160;
/// So often are all neighbours tried in the other order.
const PASSES: usize = 3;

/// One node in its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The node.
    pub node: usize,
    /// Its lane, from 0 at the left.
    pub lane: usize,
    /// The last row to which a line leads from it; its own when none does.
    pub last: usize,
    /// The lines that lead to it.
    pub from: Vec<Line>,
}

/// A line that leads to a node.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Line {
    /// The row from which it comes.
    pub row: usize,
    /// The lanes that it crosses, from left to right.
    pub over: Vec<usize>,
}

/// All nodes from top to bottom.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lanes {
    /// One for each node.
    pub rows: Vec<Row>,
    /// How many lanes there are.
    pub count: usize,
    /// How often a line crosses a lane that it does not end at.
    pub crossings: usize,
}

impl Lanes {
    /// Arranges a graph, given as the nodes to which each leads. A node of `straight` stands in the lane of the one above it
    /// where that leads to nothing else. A line that leads back up is left out.
    #[must_use]
    pub fn of(leads: &[Vec<usize>], straight: &[bool]) -> Self {
        let mut parents = vec![Vec::new(); leads.len()];
        for (node, children) in leads.iter().enumerate() {
            for child in children {
                if let Some(known) = parents.get_mut(*child)
                    && *child != node
                    && !known.contains(&node)
                {
                    known.push(node);
                }
            }
        }
        let mut graph = Graph { leads: leads.to_vec(), parents, straight };
        let mut best = graph.lanes();
        if leads.len() > ARRANGED {
            return best;
        }
        for _ in 0..PASSES {
            let before = best.cost();
            for node in 0..leads.len() {
                let branches = leads.get(node).map_or(0, Vec::len);
                for at in 1..branches {
                    graph.swap(node, at);
                    let other = graph.lanes();
                    if other.cost() < best.cost() {
                        best = other;
                    } else {
                        graph.swap(node, at);
                    }
                }
            }
            if best.cost() == before {
                break;
            }
        }
        best
    }

    /// What makes a map hard to read, the worst first: crossings, lanes, length of lines.
    fn cost(&self) -> (usize, usize, usize) {
        let length = self.rows.iter().enumerate().map(|(at, row)| row.last.saturating_sub(at)).sum();
        (self.crossings, self.count, length)
    }
}

struct Graph<'a> {
    leads: Vec<Vec<usize>>,
    parents: Vec<Vec<usize>>,
    straight: &'a [bool],
}

impl Graph<'_> {
    fn swap(&mut self, node: usize, at: usize) {
        if let Some(children) = self.leads.get_mut(node).filter(|children| at < children.len()) {
            children.swap(at - 1, at);
        }
    }

    fn lanes(&self) -> Lanes {
        let order = self.order();
        let mut place = vec![0; order.len()];
        for (row, node) in order.iter().enumerate() {
            if let Some(known) = place.get_mut(*node) {
                *known = row;
            }
        }
        let at = |node: &usize| place.get(*node).copied().unwrap_or(0);
        let none = Vec::new();
        let mut rows: Vec<Row> = Vec::with_capacity(order.len());
        // The last row of the line that holds each lane.
        let mut held: Vec<usize> = Vec::new();
        let mut crossings = 0;
        for (row, node) in order.iter().enumerate() {
            let mut above: Vec<usize> = self.parents.get(*node).unwrap_or(&none).iter().map(at).filter(|other| *other < row).collect();
            above.sort_unstable();
            let last = self.leads.get(*node).unwrap_or(&none).iter().map(at).filter(|other| *other > row).max().unwrap_or(row);
            while held.last().is_some_and(|until| *until < row) {
                held.pop();
            }
            let straight =
                self.straight.get(*node) == Some(&true) && above.len() == 1 && above.last().is_some_and(|above| above + 1 == row);
            if straight && held.last() == Some(&row) {
                held.pop();
            }
            let lane = held.len();
            let over = |from: usize| {
                let begin = rows.get(from).map_or(0, |row: &Row| row.lane) + 1;
                held.iter().enumerate().skip(begin).filter(|(_, until)| **until > row).map(|(lane, _)| lane).collect::<Vec<_>>()
            };
            let from: Vec<Line> = above.into_iter().map(|from| Line { row: from, over: over(from) }).collect();
            crossings += from.iter().map(|line| line.over.len()).sum::<usize>();
            held.push(last);
            rows.push(Row { node: *node, lane, last, from });
        }
        let count = rows.iter().map(|row| row.lane + 1).max().unwrap_or(0);
        Lanes { rows, count, crossings }
    }

    /// Each node below all that leads to it, and each branch followed to its end: of what a node leads to, its own ends come
    /// first, then what goes on, then what others lead to as well. Where lines go in circles, the first node of the circle is taken as it comes.
    fn order(&self) -> Vec<usize> {
        let none = Vec::new();
        let mut waiting: Vec<usize> = self.parents.iter().map(Vec::len).collect();
        let mut placed = vec![false; self.leads.len()];
        let mut order = Vec::with_capacity(self.leads.len());
        let roots = (0..self.leads.len()).filter(|node| waiting.get(*node) == Some(&0));
        let mut open: Vec<usize> = roots.collect();
        open.reverse();
        let mut first = 0;
        while order.len() < self.leads.len() {
            let Some(node) = open.pop() else {
                while placed.get(first) == Some(&true) {
                    first += 1;
                }
                open.push(first);
                continue;
            };
            if placed.get(node) != Some(&false) {
                continue;
            }
            if let Some(flag) = placed.get_mut(node) {
                *flag = true;
            }
            order.push(node);
            let mut ready = Vec::new();
            for child in self.leads.get(node).unwrap_or(&none) {
                let Some(left) = waiting.get_mut(*child) else { continue };
                *left = left.saturating_sub(1);
                if *left == 0 {
                    ready.push(*child);
                }
            }
            // Lines from other branches lead to what several give: behind all else of this one, they pass nothing of it.
            let turn = |node: &usize| match self.leads.get(*node).is_some_and(|leads| !leads.is_empty()) {
                true => 1,
                false if self.parents.get(*node).is_some_and(|parents| parents.len() > 1) => 2,
                false => 0,
            };
            ready.sort_by_key(turn);
            open.extend(ready.into_iter().rev());
        }
        order
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(leads: &[&[usize]]) -> (String, usize) {
        let lanes = Lanes::of(&leads.iter().map(|children| children.to_vec()).collect::<Vec<_>>(), &[]);
        let rows: Vec<String> = lanes.rows.iter().map(|row| format!("{}@{}", row.node, row.lane)).collect();
        (rows.join(" "), lanes.crossings)
    }

    #[test]
    fn a_branch_is_followed_to_its_end_and_own_ends_come_first() {
        // 0 leads to 1; 1 to the pieces 2, 3 and 4; 3 goes on to 5, which gives 6.
        assert_eq!(shown(&[&[1], &[2, 3, 4], &[], &[5], &[], &[6], &[]]), ("0@0 1@1 2@2 4@2 3@2 5@3 6@4".to_owned(), 0));
    }

    #[test]
    fn a_guide_stands_straight_below_its_piece() {
        let leads = [vec![1], vec![2, 3], vec![], vec![4, 5], vec![], vec![]];
        let lanes = |straight: [bool; 6]| Lanes::of(&leads, &straight).rows.iter().map(|row| row.lane).collect::<Vec<_>>();
        assert_eq!(lanes([false, true, false, false, true, true]), [0, 0, 1, 1, 2, 2]);
        assert_eq!(lanes([false; 6]), [0, 1, 2, 2, 3, 3]);
    }

    #[test]
    fn what_two_branches_give_stands_below_both() {
        // 1 and 4 give the tub 3.
        let (rows, crossings) = shown(&[&[1], &[2, 3], &[4], &[], &[3, 5], &[]]);
        assert_eq!((rows.as_str(), crossings), ("0@0 1@1 2@2 4@3 5@4 3@4", 0));
    }

    /// Of three branches the first and the third give one tub. Whatever stands between the two is led to across the line of the
    /// first: only the third itself, once the second has been moved out of the way.
    #[test]
    fn of_two_orders_the_one_with_fewer_crossings_is_kept() {
        let leads: Vec<Vec<usize>> = [&[1, 2, 3][..], &[4], &[5, 6], &[4, 7], &[], &[], &[], &[]].iter().map(|to| to.to_vec()).collect();
        let lanes = Lanes::of(&leads, &[]);
        let row = |node: usize| lanes.rows.iter().position(|row| row.node == node).unwrap();
        assert_eq!(lanes.crossings, 1, "{lanes:?}");
        assert!(row(2) < row(1).min(row(3)) || row(2) > row(4), "{lanes:?}");
        let tub = lanes.rows.get(row(4)).unwrap();
        assert_eq!(tub.from.len(), 2);
        let across = lanes.rows.iter().find(|row| row.from.iter().any(|line| !line.over.is_empty())).unwrap();
        assert_eq!((across.node, across.from.as_slice()), (3, &[Line { row: 0, over: vec![1] }][..]));
    }

    #[test]
    fn every_node_has_a_row_even_in_circles() {
        for leads in [&[&[1][..], &[2], &[0]][..], &[&[0]], &[&[1], &[0], &[1, 9]], &[]] {
            let lanes = Lanes::of(&leads.iter().map(|children| children.to_vec()).collect::<Vec<_>>(), &[]);
            let mut nodes: Vec<usize> = lanes.rows.iter().map(|row| row.node).collect();
            nodes.sort_unstable();
            assert_eq!(nodes, (0..leads.len()).collect::<Vec<_>>());
        }
    }

    /// A long chain, as a guidebook in bad order might have it, is no deeper than any other.
    #[test]
    fn length_is_no_depth() {
        let leads: Vec<Vec<usize>> = (1..=50_000).map(|next| if next < 50_000 { vec![next] } else { Vec::new() }).collect();
        assert_eq!(Lanes::of(&leads, &[]).rows.len(), 50_000);
    }
}
