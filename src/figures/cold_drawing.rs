//! Time out of the cold as a drawing: a lane for each stretch, minutes from left to right, the limit as a line.
//!
//! Every lane begins at nothing, when its pieces leave the cold, so that one line is the limit of them all. Two bars
//! a lane: the shortest time is solid, the longest open with its steps in it; at their ends the pieces go back to the
//! cold. Lanes stand below each other with their words above the bars, so that a phone shows them at full size. Words,
//! fillings and dashes tell things apart, colour only repeats it. The table beside it holds the same numbers.

use super::cold_clock::{ColdTable, Lane};
use super::numbers::{NO_BREAK, coordinate, short};
use super::svg::{Svg, Value, wrapped};

/// The width of the drawing; all sizes are in its own units.
const WIDTH: f64 = 340.0;
/// Where minutes begin and end.
const LEFT: f64 = 6.0;
const RIGHT: f64 = 328.0;
/// The height of the words over the first lane.
const HEAD: f64 = 66.0;
/// The distance of two lines of words.
const LINE: f64 = 19.0;
/// Characters on a line of words.
const CHARACTERS: usize = 40;
/// The most lines of names over a lane.
const NAME_LINES: usize = 3;
/// The height of the bar of the shortest and of the longest time.
const SOLID: f64 = 13.0;
const OPEN: f64 = 22.0;
/// The distance between the two.
const BETWEEN: f64 = 4.0;
/// Room below a lane.
const GAP: f64 = 20.0;
/// The narrowest step that has room for its number.
const ROOM: f64 = 13.0;
/// A limit this many times the longest time lies off the drawing, or nothing else could be read.
const FAR: f64 = 3.0;
/// Room beside the longest bar for its mark and its number.
const NUMBER: f64 = 42.0;

/// The words of the drawing; they are the page's.
#[derive(Debug, Clone)]
pub struct ColdWords {
    /// What the axis counts: `minutes out of the cold`.
    pub axis: String,
    /// The name of the limit line: `limit 30 min`; empty without a limit.
    pub limit: String,
    /// What is said instead when the line lies off the drawing.
    pub limit_far: String,
    /// What the solid bar is: `shortest: a trained cutter`.
    pub shortest: String,
    /// What the open bar is: `longest: a learner; numbers are steps`.
    pub longest: String,
    /// What the mark at the end of a bar is: `back to the cold`.
    pub back: String,
    /// What the hatched bar is: `out before`.
    pub before: String,
    /// The heading of each lane: `Steps 1 to 4`.
    pub lanes: Vec<String>,
    /// A line below the names of each lane about steps with several at once; may be empty.
    pub notes: Vec<String>,
    /// How names that found no room are told: `and more, in the table`.
    pub more: String,
}

/// A laid-out lane.
struct Laid<'a> {
    lane: &'a Lane,
    heading: &'a str,
    names: Vec<String>,
    top: f64,
}

/// The drawing of one cold clock, laid out.
pub struct ColdDrawing<'a> {
    table: &'a ColdTable,
    words: &'a ColdWords,
    lanes: Vec<Laid<'a>>,
    /// The end of the axis in minutes.
    end: f64,
    /// The limit, where it lies on the drawing.
    limit: Option<f64>,
    height: f64,
}

impl<'a> ColdDrawing<'a> {
    /// Lays out a table whose longest times are known.
    #[must_use]
    pub fn of(table: &'a ColdTable, words: &'a ColdWords) -> Self {
        let longest = table.lanes.iter().map(|lane| lane.before.1 + lane.longest()).fold(1.0, f64::max);
        let limit = table.limit.map(|limit| limit.at_most.number()).filter(|limit| *limit <= longest * FAR);
        let end = (longest * (RIGHT - LEFT) / (RIGHT - LEFT - NUMBER)).max(limit.unwrap_or(0.0) * 1.03);
        let mut top = HEAD;
        let mut lanes = Vec::new();
        for (at, lane) in table.lanes.iter().enumerate() {
            let heading = words.lanes.get(at).map_or("", String::as_str);
            let names = names(lane, words.notes.get(at).map_or("", String::as_str), &words.more);
            let height = LINE * (1 + names.len()) as f64 + SOLID + BETWEEN + OPEN + GAP;
            lanes.push(Laid { lane, heading, names, top });
            top += height;
        }
        let legend = 3 + usize::from(table.cumulative);
        Self { table, words, lanes, end, limit, height: top + LINE * legend as f64 + 16.0 }
    }

    /// Width and height in pixels.
    #[must_use]
    pub fn size(&self) -> (u32, u32) {
        (WIDTH as u32, self.height.ceil() as u32)
    }

    /// The drawing.
    #[must_use]
    pub fn svg(&self) -> String {
        let (_, height) = self.size();
        let mut svg = Svg::new(WIDTH, f64::from(height));
        svg.text("style", &[], STYLE);
        self.hatch(&mut svg);
        self.axis(&mut svg);
        // Under the lanes, so that no number is struck through.
        self.limit(&mut svg);
        for laid in &self.lanes {
            self.lane(&mut svg, laid);
        }
        self.legend(&mut svg);
        svg.finish()
    }

    /// Where so many minutes lie.
    fn x(&self, minutes: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * minutes / self.end
    }

    fn bottom(&self) -> f64 {
        self.lanes.last().map_or(HEAD, |laid| laid.top + LINE * (1 + laid.names.len()) as f64 + SOLID + BETWEEN + OPEN + 6.0)
    }

    fn hatch(&self, svg: &mut Svg) {
        svg.open("defs", &[]);
        let size = 6.0;
        svg.open(
            "pattern",
            &[
                ("id", "before".into()),
                ("width", size.into()),
                ("height", size.into()),
                ("patternUnits", "userSpaceOnUse".into()),
                ("patternTransform", "rotate(45)".into()),
            ],
        );
        svg.empty("path", &[("class", "hatch".into()), ("d", "M2 0v6".into())]);
        svg.close();
        svg.close();
    }

    /// The minutes over the lanes, each with a thin line down to the last one.
    fn axis(&self, svg: &mut Svg) {
        words(svg, "soft", LEFT, 16.0, &self.words.axis);
        let step = spacing(self.end);
        let mut minutes = 0.0;
        while minutes <= self.end {
            let x = self.x(minutes);
            line(svg, "grid", x, HEAD - 10.0, x, self.bottom());
            let anchor = if minutes > 0.0 { "number" } else { "soft" };
            words(svg, anchor, x.max(LEFT), HEAD - 14.0, &short(minutes, 1));
            minutes += step;
        }
    }

    fn lane(&self, svg: &mut Svg, laid: &Laid<'_>) {
        let lane = laid.lane;
        let mut y = laid.top + 14.0;
        words(svg, "name", LEFT, y, laid.heading);
        for name in &laid.names {
            y += LINE;
            words(svg, "soft", LEFT, y, name);
        }
        let solid = y + 7.0;
        let open = solid + SOLID + BETWEEN;
        self.before(svg, lane.before.0, solid, SOLID);
        self.before(svg, lane.before.1, open, OPEN);
        self.bar(svg, "solid", lane.before.0, lane.shortest(), solid, SOLID);
        self.bar(svg, "open", lane.before.1, lane.longest(), open, OPEN);
        self.steps(svg, lane, open);
        self.going_back(svg, lane.before.0 + lane.shortest(), solid, SOLID);
        self.going_back(svg, lane.before.1 + lane.longest(), open, OPEN);
    }

    fn before(&self, svg: &mut Svg, minutes: f64, top: f64, height: f64) {
        if minutes > 0.0 {
            self.bar(svg, "before", 0.0, minutes, top, height);
        }
    }

    fn bar(&self, svg: &mut Svg, class: &str, from: f64, minutes: f64, top: f64, height: f64) {
        let (x, width) = (self.x(from), self.x(from + minutes) - self.x(from));
        let at: [(&str, Value<'_>); 5] =
            [("class", class.into()), ("x", x.into()), ("y", top.into()), ("width", width.max(0.5).into()), ("height", height.into())];
        svg.empty("rect", &at);
    }

    /// The steps of the longest time: a line between two, their numbers where there is room, and dots between the pieces
    /// that are worked one after another in one of them.
    fn steps(&self, svg: &mut Svg, lane: &Lane, top: f64) {
        let mut from = lane.before.1;
        for step in &lane.steps {
            let to = from + step.minutes.1;
            for piece in 1..step.at_once {
                let x = self.x(from + step.minutes.1 * f64::from(piece) / f64::from(step.at_once));
                line(svg, "piece", x, top + 2.0, x, top + OPEN - 2.0);
            }
            let last = to >= lane.before.1 + lane.longest() - 1e-9;
            // The mark of going back takes the end of the last step.
            let right = if last { self.x(to) - 7.0 } else { self.x(to) };
            let width = right - self.x(from);
            let number = match step.at_once {
                1 => step.number.to_string(),
                several => format!("{}{NO_BREAK}\u{d7}{several}", step.number),
            };
            let room = if step.at_once > 1 { ROOM * 3.0 } else { ROOM };
            if width >= room {
                words(svg, "number on", f64::midpoint(self.x(from), right), top + OPEN / 2.0 + 5.0, &number);
            }
            if !last {
                let x = self.x(to);
                line(svg, "part", x, top, x, top + OPEN);
            }
            from = to;
        }
    }

    /// The mark of going back, with the minutes out beside it.
    fn going_back(&self, svg: &mut Svg, minutes: f64, top: f64, height: f64) {
        let (x, middle) = (self.x(minutes), top + height / 2.0);
        svg.empty("path", &[("class", "back".into()), ("d", mark(x, middle).as_str().into())]);
        words(svg, "minutes", x + 9.0, middle + 5.0, &short(minutes, 1));
    }

    /// The limit over all lanes, with its name.
    fn limit(&self, svg: &mut Svg) {
        match self.limit {
            Some(minutes) => {
                let x = self.x(minutes);
                // The number of the axis below the name stays readable.
                line(svg, "limit", x, 22.0, x, 38.0);
                line(svg, "limit", x, HEAD - 10.0, x, self.bottom());
                let right = x > WIDTH / 2.0;
                let (class, x) = if right { ("name left", x - 6.0) } else { ("name", x + 6.0) };
                words(svg, class, x, 34.0, &self.words.limit);
            }
            None => words(svg, "name", LEFT, 34.0, &self.words.limit_far),
        }
    }

    fn legend(&self, svg: &mut Svg) {
        let mut y = self.bottom() + LINE;
        let x = LEFT + 34.0;
        let mut entry = |svg: &mut Svg, class: &str, text: &str| {
            let at: [(&str, Value<'_>); 5] =
                [("class", class.into()), ("x", LEFT.into()), ("y", (y - 11.0).into()), ("width", 26.0.into()), ("height", SOLID.into())];
            match class {
                "back" => svg.empty("path", &[("class", class.into()), ("d", mark(LEFT + 13.0, y - 5.0).as_str().into())]),
                _ => svg.empty("rect", &at),
            }
            words(svg, "soft", x, y, text);
            y += LINE;
        };
        entry(svg, "solid", &self.words.shortest);
        entry(svg, "open", &self.words.longest);
        if self.table.cumulative {
            entry(svg, "before", &self.words.before);
        }
        entry(svg, "back", &self.words.back);
    }
}

/// The names of a lane on a few lines, and the note below them.
fn names(lane: &Lane, note: &str, more: &str) -> Vec<String> {
    let mut lines = wrapped(&lane.pieces.join(", "), CHARACTERS);
    if lines.len() > NAME_LINES {
        lines.truncate(NAME_LINES - 1);
        lines.push(more.to_owned());
    }
    if !note.is_empty() {
        lines.extend(wrapped(note, CHARACTERS));
    }
    lines
}

/// A distance of minutes that leaves room for their numbers.
fn spacing(end: f64) -> f64 {
    let steps = [1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0, 480.0, 1_440.0];
    steps.into_iter().find(|step| end / step <= 8.0).unwrap_or((end / 8.0).ceil())
}

/// A wedge that points down: out of the air, into the cold.
fn mark(x: f64, middle: f64) -> String {
    let at = coordinate;
    format!("M{} {}H{}L{} {}Z", at(x - 6.0), at(middle - 6.0), at(x + 6.0), at(x), at(middle + 7.0))
}

fn words(svg: &mut Svg, class: &str, x: f64, y: f64, text: &str) {
    svg.text("text", &[("class", class.into()), ("x", x.into()), ("y", y.into())], text);
}

fn line(svg: &mut Svg, class: &str, x1: f64, y1: f64, x2: f64, y2: f64) {
    svg.empty("line", &[("class", class.into()), ("x1", x1.into()), ("y1", y1.into()), ("x2", x2.into()), ("y2", y2.into())]);
}

const STYLE: &str = "text{font:15px system-ui,Roboto,sans-serif;fill:#16130f}.name,.minutes{font-weight:650}.number{text-anchor:middle}.on{font-weight:650}\
.left{text-anchor:end}.minutes,.soft,.name,.on{paint-order:stroke;stroke:#fbfaf7;stroke-width:3px}\
.solid{fill:#2f4a58;stroke:#16130f;stroke-width:1.2}.open{fill:#fbfaf7;stroke:#16130f;stroke-width:1.5}.before{fill:url(#before);stroke:#16130f;stroke-width:1.2}\
.hatch{stroke:#16130f;stroke-width:1.5}.grid{stroke:#16130f;stroke-opacity:.25;stroke-width:1}.part{stroke:#16130f;stroke-width:1.2}\
.piece{stroke:#16130f;stroke-width:1;stroke-dasharray:1 3}.back{fill:#16130f;stroke:#fbfaf7;stroke-width:1}.limit{stroke:#7a1e1e;stroke-width:3;stroke-dasharray:9 4}\
@media(prefers-color-scheme:dark){text,.back{fill:#f4efe6}.minutes,.soft,.name,.on,.back{stroke:#151311}.solid{fill:#a9c9d8;stroke:#f4efe6}.open{fill:#151311;stroke:#f4efe6}.before{stroke:#f4efe6}\
.hatch,.grid,.part,.piece{stroke:#f4efe6}.limit{stroke:#f0a39b}}\
@media print{text{fill:#000}.solid{fill:#555}}";
