//! Where the weight of a procedure goes, as a drawing: start, steps, pieces; thickness is weight.
//!
//! Made for a phone held upright. Words and hatches say what becomes of a piece, colour only repeats it, so that it
//! reads in grey. The yield table holds the same numbers.

use crate::analysis::procedure::ProcedureAnalysis;
use crate::model::{Guidebook, Procedure};

use super::flow_layout::{Band, End, Layout, StepBlock};
use super::hatches;
use super::kind::Kind;
use super::numbers::{NO_BREAK, coordinate};
use super::outputs::kind_of;
use super::share::Worked;
use super::svg::{Svg, wrapped};
use super::yield_table::{YieldRow, YieldTable, capitalised};

/// The width of the drawing; all sizes are in its own units.
const WIDTH: f64 = 340.0;
/// The thickness of the whole.
const WHOLE: f64 = 230.0;
/// Room for the words over the drawing.
const HEAD: f64 = 34.0;
/// The left edge of the first step.
const FIRST_STEP: f64 = 36.0;
/// The left edge of the pieces.
const PIECES: f64 = 158.0;
/// The width of a block.
const BLOCK: f64 = 10.0;
/// The width of a step, where weight is parted.
const STEP: f64 = 4.0;
/// The distance of two lines of words.
const LINE: f64 = 19.0;
/// Characters on a line of words.
const CHARACTERS: usize = 18;

/// The drawing of one procedure, laid out.
#[derive(Debug, Clone)]
pub struct FlowDrawing {
    layout: Layout,
    start: Vec<String>,
    /// Beside the terminals of the layout: what becomes of each, its name on lines, its numbers.
    labels: Vec<Label>,
}

#[derive(Debug, Clone)]
struct Label {
    kind: Kind,
    name: Vec<String>,
    numbers: String,
}

impl FlowDrawing {
    /// Lays out a sound procedure.
    #[must_use]
    pub fn of(book: &Guidebook, procedure: &Procedure, analysis: &ProcedureAnalysis, worked: Worked) -> Option<Self> {
        let shares = analysis.shares.as_ref()?;
        let (table, _) = YieldTable::of_procedure(book, analysis, worked)?;
        let numbers = |row: &YieldRow| {
            let figure = &row.figure;
            format!("{}{NO_BREAK}% {}{NO_BREAK}{}", figure.of_start.typical, figure.weight.typical, table.unit)
        };
        let loss = shares.flow().node_count() - 1;
        let mut labelled: Vec<(usize, Label)> = Vec::new();
        for node in in_order_of_work(analysis, loss) {
            let id = analysis.network.pieces.get(node).map_or("", |piece| piece.id.as_str());
            let Some(row) = table.rows().find(|row| row.piece == id) else { continue };
            let kind = if node == loss { Kind::Loss } else { kind_of(analysis, node) };
            labelled.push((node, Label { kind, name: wrapped(&row.name, CHARACTERS), numbers: numbers(row) }));
        }
        // What is worked for keeps the order of the work; the rest is gathered below it by kind.
        labelled.sort_by_key(|(_, label)| if label.kind.is_main() { None } else { Some(label.kind) });
        let height = |label: &Label| LINE * (label.name.len().max(1) + 1) as f64;
        let terminals: Vec<(usize, f64)> = labelled.iter().map(|(node, label)| (*node, height(label))).collect();
        let layout = Layout::of(shares.flow(), &terminals, WHOLE);
        let start = procedure.start.piece.value().map_or_else(String::new, |piece| capitalised(&book.piece_name(piece)));
        let start = wrapped(&format!("{start}, {}{NO_BREAK}{}", table.worked, table.unit), 36);
        Some(Self { layout, start, labels: labelled.into_iter().map(|(_, label)| label).collect() })
    }

    /// Width and height in pixels.
    #[must_use]
    pub fn size(&self) -> (u32, u32) {
        (WIDTH as u32, (self.layout.height + self.head() + 6.0).ceil() as u32)
    }

    /// The drawing; `lost` names what is lost.
    #[must_use]
    pub fn svg(&self, lost: &str) -> String {
        let (_, height) = self.size();
        let mut svg = Svg::new(WIDTH, f64::from(height));
        let kinds: Vec<Kind> = self.labels.iter().map(|label| label.kind).collect();
        svg.text("style", &[], &format!("{STYLE}{}", hatches::fills(&kinds)));
        hatches::patterns(&mut svg, &kinds);
        for (at, line) in self.start.iter().enumerate() {
            svg.text("text", &[("class", "name".into()), ("x", 2.0.into()), ("y", (15.0 + LINE * at as f64).into())], line);
        }
        let shift = format!("translate(0 {})", coordinate(self.head()));
        svg.open("g", &[("transform", shift.as_str().into())]);
        for band in &self.layout.bands {
            self.band(&mut svg, band);
        }
        self.block(&mut svg, 2.0, BLOCK, self.layout.start_top, self.layout.start_thickness);
        for (at, label) in self.labels.iter().enumerate() {
            self.piece(&mut svg, at, label, lost);
        }
        for (number, step) in (1_usize..).zip(&self.layout.steps) {
            let x = self.column(step.column);
            self.block(&mut svg, x, STEP, step.top, step.thickness);
            let (x, y) = (x + STEP / 2.0, step.top + step.thickness / 2.0 + self.aside(step));
            svg.empty("circle", &[("class", "step".into()), ("cx", x.into()), ("cy", y.into()), ("r", 11.0.into())]);
            svg.text("text", &[("class", "number".into()), ("x", x.into()), ("y", (y + 4.8).into())], &number.to_string());
        }
        svg.finish()
    }

    fn head(&self) -> f64 {
        HEAD + LINE * self.start.len().saturating_sub(1) as f64
    }

    /// How far the number of a step stands off its middle, so that numbers of close columns do not lie on each other.
    fn aside(&self, step: &StepBlock) -> f64 {
        let close = self.column(1) - self.column(0) < 23.0;
        match (close && step.thickness > 50.0, step.column % 2) {
            (false, _) => 0.0,
            (true, 0) => -12.0,
            (true, _) => 12.0,
        }
    }

    fn column(&self, column: usize) -> f64 {
        let last = PIECES - 46.0;
        let steps = (self.layout.columns.max(2) - 1) as f64;
        FIRST_STEP + (last - FIRST_STEP) * column as f64 / steps
    }

    fn block(&self, svg: &mut Svg, x: f64, width: f64, top: f64, thickness: f64) {
        let size = thickness.max(1.0);
        svg.empty("rect", &[("x", x.into()), ("y", top.into()), ("width", width.into()), ("height", size.into())]);
    }

    fn band(&self, svg: &mut Svg, band: &Band) {
        let x1 = match band.from {
            None => 2.0 + BLOCK,
            Some(at) => self.layout.steps.get(at).map_or(0.0, |step| self.column(step.column) + STEP),
        };
        let (x2, class) = match band.to {
            End::Step(at) => (self.layout.steps.get(at).map_or(0.0, |step| self.column(step.column)), "on"),
            End::Terminal(at) => (PIECES, self.labels.get(at).map_or("", |label| label.kind.id())),
        };
        let middle = f64::midpoint(x1, x2);
        let (top, to, thick) = (band.from_top, band.to_top, band.thickness);
        let at = coordinate;
        let path = format!(
            "M{} {}C{} {} {} {} {} {}V{}C{} {} {} {} {} {}Z",
            at(x1),
            at(top),
            at(middle),
            at(top),
            at(middle),
            at(to),
            at(x2),
            at(to),
            at(to + thick),
            at(middle),
            at(to + thick),
            at(middle),
            at(top + thick),
            at(x1),
            at(top + thick)
        );
        svg.empty("path", &[("class", format!("band {class}").as_str().into()), ("d", path.as_str().into())]);
    }

    /// The block of a piece with its hatch, and the words beside it.
    fn piece(&self, svg: &mut Svg, at: usize, label: &Label, lost: &str) {
        let Some(block) = self.layout.terminals.get(at) else { return };
        let size = block.thickness.max(1.5);
        // The style of the drawing would win over an attribute, so the hatch is a style of its own.
        let class = format!("piece {}", label.kind.id());
        let mut attributes: Vec<(&str, super::svg::Value<'_>)> = vec![("class", class.as_str().into())];
        if label.kind == Kind::Loss {
            attributes.push(("stroke-dasharray", "3 2".into()));
        }
        attributes.extend([("x", PIECES.into()), ("y", block.top.into()), ("width", (BLOCK + 6.0).into()), ("height", size.into())]);
        svg.empty("rect", &attributes);
        let x = PIECES + BLOCK + 13.0;
        let lines = label.name.len().max(1);
        let mut y = block.middle - LINE * (lines + 1) as f64 / 2.0 + 14.0;
        let lost = [lost.to_owned()];
        for line in if label.name.is_empty() { &lost[..] } else { label.name.as_slice() } {
            svg.text("text", &[("class", "name".into()), ("x", x.into()), ("y", y.into())], line);
            y += LINE;
        }
        svg.text("text", &[("x", x.into()), ("y", y.into())], &label.numbers);
    }
}

/// Final pieces, by node, in the order in which the work makes them, following each piece to its end; the loss last.
fn in_order_of_work(analysis: &ProcedureAnalysis, loss: usize) -> Vec<usize> {
    let network = &analysis.network;
    let mut order = Vec::new();
    let mut done = vec![false; network.steps.len()];
    let mut open: Vec<usize> = vec![0];
    while let Some(node) = open.pop() {
        let taken = network.pieces.get(node).and_then(|piece| piece.taken_by);
        let Some(taking) = taken else {
            if !order.contains(&node) {
                order.push(node);
            }
            continue;
        };
        if let (Some(step), Some(flag)) = (network.steps.get(taking.step), done.get_mut(taking.step))
            && !*flag
        {
            *flag = true;
            open.extend(step.gives.iter().rev());
        }
    }
    order.push(loss);
    order
}

const STYLE: &str = ":root{--steel:#2f4a58}text{font:16px system-ui,Roboto,sans-serif;fill:#16130f}.name{font-weight:650}\
.number{fill:#fbfaf7;text-anchor:middle;font-weight:700;font-size:13px}circle.step{fill:#16130f;stroke:#fbfaf7;stroke-width:1.5}\
rect{fill:#16130f}.piece{stroke:#16130f;stroke-width:1.2}.steel{stroke:#2f4a58;stroke-width:3.5}\
.band{fill:#16130f;fill-opacity:.14;stroke:#16130f;stroke-opacity:.55;stroke-width:.6}.band.loss{stroke:none;fill-opacity:.3}\
.ink,.thin,.blood,.thick,.dots{stroke:#16130f;stroke-width:1.8}.thin{stroke-width:1.5}.thick{stroke-width:3}.blood{stroke:#7a1e1e;stroke-width:3}\
.dots{stroke:#75550f;stroke-width:3.2;stroke-linecap:round}\
@media(prefers-color-scheme:dark){:root{--steel:#a9c9d8}text{fill:#f4efe6}.number{fill:#151311}circle.step{fill:#f4efe6;stroke:#151311}rect{fill:#f4efe6}\
.piece{stroke:#f4efe6}.steel{stroke:#a9c9d8}.band{fill:#f4efe6;stroke:#f4efe6}.ink,.thin,.thick{stroke:#f4efe6}.blood{stroke:#f0a39b}.dots{stroke:#e0bd6c}}\
@media print{text,rect,circle.step{fill:#000}.number{fill:#fff}}";
