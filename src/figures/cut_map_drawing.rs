//! The cut map as a drawing: guides as boxes, pieces with their hatch, lines from a piece to the guides that cut it up and from
//! a guide to what it gives.
//!
//! It runs from top to bottom and is as wide as a phone, so that its words are read there without enlarging. What becomes of a
//! piece is told by word and hatch, and where a line passes another it leaps over it, so that it reads in grey.

use std::collections::BTreeMap;

use super::cut_map::{CutMap, MapGuide, MapPiece};
use super::cut_map_lanes::{Lanes, Line, Row};
use super::hatches;
use super::kind::Kind;
use super::numbers::{NO_BREAK, coordinate};
use super::svg::{Svg, wrapped};

/// The width of the drawing; all sizes are in its own units, which are pixels on a phone.
const WIDTH: f64 = 328.0;
/// The side of the square of a piece.
const SQUARE: f64 = 14.0;
/// The distance of two lanes, and of all lanes together at most.
const LANE: f64 = 15.0;
const LANES: f64 = 105.0;
/// More lanes than this are not drawn: what most guides give then has one line, and the table names all that give it.
const MOST_LANES: usize = 14;
/// The distance of two lines of a name, and of two lines of small words.
const NAME: f64 = 18.0;
const SMALL: f64 = 16.0;
/// Room that a letter takes: of a name, of a small word.
const NAME_LETTER: f64 = 9.2;
const SMALL_LETTER: f64 = 7.8;
/// Space between two rows, and inside a box.
const GAP: f64 = 10.0;
const INSIDE: f64 = 8.0;
/// A part of a long map: two side by side fill a sheet of paper in letters that can be read.
const PART: f64 = 700.0;

/// The words of the drawing.
#[derive(Debug, Clone, Default)]
pub struct MapWords {
    /// What becomes of pieces, each with its word.
    pub kinds: Vec<(Kind, String)>,
    /// Marks a guide that is the house cut.
    pub house_cut: String,
    /// Stands before the pieces inside a guide.
    pub on_the_way: String,
}

/// A map laid out.
#[derive(Debug, Clone)]
pub struct CutMapDrawing<'a> {
    map: &'a CutMap,
    lanes: Lanes,
    blocks: Vec<Block>,
    kinds: Vec<Kind>,
    height: f64,
}

/// A node with its words.
#[derive(Debug, Clone)]
struct Block {
    node: Node,
    top: f64,
    height: f64,
    name: Vec<String>,
    small: Vec<String>,
}

/// A piece or a guide of the map, by its position there.
#[derive(Debug, Clone, Copy)]
enum Node {
    Piece(usize),
    Guide(usize),
}

impl<'a> CutMapDrawing<'a> {
    /// Lays a map out.
    #[must_use]
    pub fn of(map: &'a CutMap, words: &MapWords) -> Self {
        // Pieces that only stand inside a guide are named in its box.
        let own = |piece: &MapPiece| !(piece.given_by.is_empty() && piece.cut_by.is_empty());
        let mut nodes: Vec<Node> = Vec::new();
        let mut place_of_piece = Vec::with_capacity(map.pieces.len());
        for (at, piece) in map.pieces.iter().enumerate() {
            place_of_piece.push(own(piece).then_some(nodes.len()));
            nodes.extend(own(piece).then_some(Node::Piece(at)));
        }
        let first_guide = nodes.len();
        nodes.extend((0..map.guides.len()).map(Node::Guide));
        let mut leads: Vec<Vec<usize>> = nodes
            .iter()
            .map(|node| match node {
                Node::Piece(at) => {
                    let mut guides = map.pieces.get(*at).map_or_else(Vec::new, |piece| piece.cut_by.clone());
                    guides.sort_by_key(|at| !map.guides.get(*at).is_some_and(|guide| guide.house_cut));
                    guides.into_iter().map(|at| first_guide + at).collect()
                }
                Node::Guide(at) => {
                    let mut gives = map.guides.get(*at).map_or_else(Vec::new, |guide| guide.gives.clone());
                    // What is worked for keeps the order of the work; the rest is gathered below it by kind.
                    gives.sort_by_key(|at| map.pieces.get(*at).and_then(|piece| piece.kind).filter(|kind| !kind.is_main()));
                    gives.into_iter().filter_map(|at| place_of_piece.get(at).copied().flatten()).collect()
                }
            })
            .collect();
        let straight: Vec<bool> = nodes.iter().map(|node| matches!(node, Node::Guide(_))).collect();
        let lanes = narrow(&mut leads, &straight);
        let mut drawing =
            Self { map, lanes, blocks: Vec::new(), kinds: map.pieces.iter().filter_map(|piece| piece.kind).collect(), height: 0.0 };
        let mut top = 1.0;
        for row in drawing.lanes.rows.clone() {
            let Some(node) = nodes.get(row.node) else { continue };
            let block = drawing.block(*node, &row, top, words);
            top += block.height + GAP;
            drawing.blocks.push(block);
        }
        drawing.height = top - GAP + 1.0;
        drawing
    }

    /// Width and height in pixels.
    #[must_use]
    pub fn size(&self) -> (u32, u32) {
        (WIDTH as u32, self.height.ceil() as u32)
    }

    /// Where a map that is too long for a sheet of paper is parted, between two rows: top and height of each part, of
    /// much the same height. None for a map that stands on one sheet whole.
    #[must_use]
    pub fn parts(&self) -> Vec<(f64, f64)> {
        let wanted = (self.height / PART).ceil();
        if wanted < 2.0 {
            return Vec::new();
        }
        let mut parts = Vec::new();
        let mut from = 0.0;
        for block in self.blocks.iter().skip(1) {
            let between = block.top - GAP / 2.0;
            let end = block.top + block.height;
            if between >= self.height / wanted * (parts.len() + 1) as f64 || end - from > PART {
                parts.push((from, between - from));
                from = between;
            }
        }
        parts.push((from, self.height.ceil() - from));
        parts
    }

    /// The pieces in the order in which they stand, those inside a guide behind it, as positions in `CutMap::pieces`.
    #[must_use]
    pub fn order(&self) -> Vec<usize> {
        let mut order: Vec<usize> = Vec::with_capacity(self.map.pieces.len());
        let mut seen = vec![false; self.map.pieces.len()];
        for block in &self.blocks {
            let own = match &block.node {
                Node::Piece(at) => std::slice::from_ref(at),
                Node::Guide(at) => self.map.guides.get(*at).map_or(&[][..], |guide| guide.inside.as_slice()),
            };
            for at in own {
                if let Some(flag) = seen.get_mut(*at).filter(|flag| !**flag) {
                    *flag = true;
                    order.push(*at);
                }
            }
        }
        order
    }

    /// The guides in the order in which they stand, as positions in `CutMap::guides`.
    pub fn guides(&self) -> impl Iterator<Item = usize> {
        self.blocks.iter().filter_map(|block| match block.node {
            Node::Guide(at) => Some(at),
            Node::Piece(_) => None,
        })
    }

    /// How many lines cross another.
    #[must_use]
    pub const fn crossings(&self) -> usize {
        self.lanes.crossings
    }

    /// The drawing.
    #[must_use]
    pub fn svg(&self) -> String {
        let mut svg = Svg::new(WIDTH, self.height.ceil());
        svg.text("style", &[], &format!("{STYLE}{}", hatches::fills(&self.kinds)));
        hatches::patterns(&mut svg, &self.kinds);
        for (number, (top, height)) in (1..).zip(self.parts()) {
            let view = format!("0 {} {} {}", coordinate(top), coordinate(WIDTH), coordinate(height));
            svg.empty("view", &[("id", format!("part-{number}").as_str().into()), ("viewBox", view.as_str().into())]);
        }
        for (at, row) in self.lanes.rows.iter().enumerate() {
            for line in &row.from {
                self.line(&mut svg, line, at);
            }
        }
        for (block, row) in self.blocks.iter().zip(&self.lanes.rows) {
            self.draw(&mut svg, block, row);
        }
        svg.finish()
    }

    fn lane_width(&self) -> f64 {
        LANE.min(LANES / self.lanes.count.max(1) as f64)
    }

    /// The left edge of what stands in a lane.
    fn left(&self, lane: usize) -> f64 {
        1.0 + self.lane_width() * lane as f64
    }

    /// Where the line of a lane runs.
    fn middle(&self, lane: usize) -> f64 {
        self.left(lane) + SQUARE / 2.0
    }

    fn block(&self, node: Node, row: &Row, top: f64, words: &MapWords) -> Block {
        let fits = |left: f64, letter: f64| ((WIDTH - left - 3.0) / letter).floor().max(6.0) as usize;
        let left = self.left(row.lane);
        let (name, small, around) = match (node, self.node(node)) {
            (Node::Piece(_), (Some(piece), _)) => {
                let left = left + SQUARE + 7.0;
                (wrapped(&piece.name, fits(left, NAME_LETTER)), wrapped(&self.told(piece, words), fits(left, SMALL_LETTER)), 0.0)
            }
            (Node::Guide(_), (_, Some(guide))) => {
                let left = left + 2.0 * INSIDE;
                let inside = guide.inside.iter().filter_map(|at| self.map.pieces.get(*at)).map(|piece| piece.name.as_str());
                let inside = inside.collect::<Vec<_>>().join(", ");
                let mut small = if guide.house_cut { wrapped(&words.house_cut, fits(left, SMALL_LETTER)) } else { Vec::new() };
                if !inside.is_empty() {
                    small.extend(wrapped(&format!("{} {inside}", words.on_the_way), fits(left, SMALL_LETTER)));
                }
                (wrapped(&guide.title, fits(left, NAME_LETTER)), small, 2.0 * INSIDE)
            }
            _ => (Vec::new(), Vec::new(), 0.0),
        };
        let height = NAME * name.len().max(1) as f64 + SMALL * small.len() as f64 + around;
        Block { node, top, height, name, small }
    }

    /// The piece or the guide that a node is.
    fn node(&self, node: Node) -> (Option<&'a MapPiece>, Option<&'a MapGuide>) {
        match node {
            Node::Piece(at) => (self.map.pieces.get(at), None),
            Node::Guide(at) => (None, self.map.guides.get(at)),
        }
    }

    /// The small words of a piece: what becomes of it, then its typical share and weight, where it is of a first start.
    fn told(&self, piece: &MapPiece, words: &MapWords) -> String {
        let word = piece.kind.and_then(|kind| words.kinds.iter().find(|(known, _)| *known == kind)).map(|(_, word)| word.clone());
        let whole = |at: &usize| self.map.wholes.get(*at).filter(|whole| whole.is_first);
        let figures = piece.figure.as_ref().and_then(|(at, figure)| {
            let weight = format!("{}{NO_BREAK}{}", figure.weight.typical, whole(at)?.unit);
            let is_start = piece.given_by.is_empty();
            Some(if is_start { weight } else { format!("{}{NO_BREAK}% {weight}", figure.of_start.typical) })
        });
        word.into_iter().chain(figures).collect::<Vec<_>>().join(", ")
    }

    /// Where a line arrives at a block.
    fn arrival(&self, at: usize) -> f64 {
        self.blocks.get(at).map_or(0.0, |block| match block.node {
            Node::Piece(_) => block.top + NAME / 2.0,
            Node::Guide(_) => block.top + INSIDE + NAME / 2.0,
        })
    }

    /// The line from one row to another: down its lane, then across, with a leap over each lane that it passes.
    fn line(&self, svg: &mut Svg, line: &Line, to: usize) {
        let (Some(begin), Some(end), Some(above)) = (self.lanes.rows.get(line.row), self.lanes.rows.get(to), self.blocks.get(line.row))
        else {
            return;
        };
        let x = self.middle(begin.lane);
        let top = match above.node {
            Node::Piece(_) => above.top + NAME / 2.0 + SQUARE / 2.0,
            Node::Guide(_) => above.top + above.height,
        };
        let at = coordinate;
        if begin.lane == end.lane {
            let bottom = self.blocks.get(to).map_or(0.0, |block| block.top);
            svg.empty("path", &[("class", "line".into()), ("d", format!("M{} {}V{}", at(x), at(top), at(bottom)).as_str().into())]);
            return;
        }
        let y = self.arrival(to);
        let mut path = format!("M{} {}V{}q0 5 5 5", at(x), at(top), at(y - 5.0));
        let leap = (self.lane_width() / 2.0 - 1.0).min(5.0);
        for lane in &line.over {
            let over = self.middle(*lane);
            path.push_str(&format!("H{}a{leap} {leap} 0 0 1 {} 0", at(over - leap), at(2.0 * leap), leap = at(leap)));
        }
        path.push_str(&format!("H{}", at(self.left(end.lane))));
        svg.empty("path", &[("class", "line".into()), ("d", path.as_str().into())]);
    }

    /// The square or the box of a node, and its words.
    fn draw(&self, svg: &mut Svg, block: &Block, row: &Row) {
        let left = self.left(row.lane);
        let (x, mut y) = match block.node {
            Node::Piece(at) => {
                let kind = self.map.pieces.get(at).and_then(|piece| piece.kind);
                let class = kind.map_or_else(|| "piece start".to_owned(), |kind| format!("piece {}", kind.id()));
                let y = block.top + (NAME - SQUARE) / 2.0;
                svg.empty(
                    "rect",
                    &[
                        ("class", class.as_str().into()),
                        ("x", left.into()),
                        ("y", y.into()),
                        ("width", SQUARE.into()),
                        ("height", SQUARE.into()),
                    ],
                );
                (left + SQUARE + 7.0, block.top)
            }
            Node::Guide(_) => {
                let width = WIDTH - left - 1.0;
                svg.empty(
                    "rect",
                    &[
                        ("class", "box".into()),
                        ("x", left.into()),
                        ("y", block.top.into()),
                        ("width", width.into()),
                        ("height", block.height.into()),
                    ],
                );
                (left + INSIDE, block.top + INSIDE)
            }
        };
        for line in &block.name {
            svg.text("text", &[("class", "name".into()), ("x", x.into()), ("y", (y + 13.5).into())], line);
            y += NAME;
        }
        for line in &block.small {
            svg.text("text", &[("x", x.into()), ("y", (y + 12.0).into())], line);
            y += SMALL;
        }
    }
}

/// Lanes that have room. Where there are too many, the pieces with most givers keep only the line from the last of them.
fn narrow(leads: &mut [Vec<usize>], straight: &[bool]) -> Lanes {
    loop {
        let lanes = Lanes::of(leads, straight);
        let most = lanes.rows.iter().map(|row| row.from.len()).max().unwrap_or(0);
        if lanes.count <= MOST_LANES || most < 2 {
            return lanes;
        }
        let row = |at: usize| lanes.rows.get(at).map(|row| row.node);
        let tubs: BTreeMap<usize, Option<usize>> = lanes
            .rows
            .iter()
            .filter(|row| row.from.len() == most)
            .map(|tub| (tub.node, tub.from.last().and_then(|line| row(line.row))))
            .collect();
        for (from, children) in leads.iter_mut().enumerate() {
            children.retain(|child| tubs.get(child).is_none_or(|last| *last == Some(from)));
        }
    }
}

const STYLE: &str = ":root{--steel:#2f4a58}text{font:13px system-ui,Roboto,sans-serif;fill:#16130f}.name{font-weight:650;font-size:15px}\
.piece{stroke:#16130f;stroke-width:1.5}.start{fill:#16130f}.box{fill:none;stroke:#16130f;stroke-width:2}.line{fill:none;stroke:#16130f;stroke-width:1.5}\
.ink,.thin,.blood,.thick,.dots{stroke:#16130f;stroke-width:1.8}.steel{stroke:#2f4a58;stroke-width:3.5}.thin{stroke-width:1.5}.thick{stroke-width:3}\
.blood{stroke:#7a1e1e;stroke-width:3}.dots{stroke:#75550f;stroke-width:3.2;stroke-linecap:round}\
@media(prefers-color-scheme:dark){:root{--steel:#a9c9d8}text,.start{fill:#f4efe6}.piece,.box,.line,.ink,.thin,.thick{stroke:#f4efe6}\
.steel{stroke:#a9c9d8}.blood{stroke:#f0a39b}.dots{stroke:#e0bd6c}}\
@media print{text,.start{fill:#000}.piece,.box,.line{stroke:#000}}";
