//! The class sheet of a guide: what to wear, a table to weigh into, what can hurt, questions without their answers.

use super::card_steps::says_the_same;
use super::control::text;
use super::frame::{About, paints};
use super::{Views, gone};
use crate::analysis::cold_limits::{self, SetBy};
use crate::figures::share::Percent;
use crate::figures::type_measure::{Face, Setting, lines, width};
use crate::figures::{Kind, duration};
use crate::model::Procedure;
use crate::model::quantity::Range;
use crate::site::context::caution::CautionGroup;
use crate::site::context::class_sheet::{Class, ClassQuestion, ClassSheet, ClassSheetPage, StepWear, WeighRow};
use crate::site::escape::keep_units;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

/// One millimetre in points.
const MILLIMETRE: f64 = 72.0 / 25.4;
/// The width between the margins of a sheet, as in `styles/sheet.css`.
const SHEET: f64 = 194.0 * MILLIMETRE;
/// Its height.
const HEIGHT: f64 = 263.0 * MILLIMETRE;
/// The size of text, as in `styles/class.css`.
const SIZE: f64 = 12.0;
/// A line of it.
const LINE: f64 = 15.0;
/// A row to write in: nine millimetres, for a pen in a cold hand.
const ROW: f64 = 25.5;
/// A line to write on.
const WRITE: f64 = 23.0;
/// The heading of the table: its caption on two lines, the heads of columns, and the row of the start weight.
const TABLE: f64 = 2.0 * LINE + 3.0 + 2.0 * LINE + 2.0 + ROW;
/// The heading of a section with the line above it.
const HEADING: f64 = 33.0;

/// What stands one below the other, with its height.
enum Part {
    Row(WeighRow),
    Sums,
    Hurt(Vec<CautionGroup>),
    Question(ClassQuestion),
}

impl Views<'_> {
    /// What `class-sheet.html` gets.
    pub(super) fn class_page(&self, path: &str, at: usize) -> Result<ClassSheetPage, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let class = self.class_head(path, at, procedure)?;
        let page = self.frame(About {
            path,
            title: self.engine.words.with("class-sheet-title", &[("title", class.title.as_str().into())])?,
            trail: self.trail_behind(path, at),
            procedure: Some(procedure),
            paints: paints(self.yields(path, at).as_ref().map(|(yields, _)| &yields.table)),
            look: Look::ClassSheet,
            scripts: &["print.js"],
            data: None,
            anchor: "main",
        })?;
        let mut parts: Vec<Part> = self.weigh_rows(path, at).into_iter().map(Part::Row).collect();
        if !parts.is_empty() {
            parts.push(Part::Sums);
        }
        parts.push(Part::Hurt(self.cautions_of_guide(procedure)));
        parts.extend(questions(procedure).map(Part::Question));
        let sheets = self.class_sheets(&class, parts)?;
        Ok(ClassSheetPage { page, class, sheets })
    }

    fn class_head(&self, path: &str, at: usize, procedure: &Procedure) -> Result<Class, ThemeError> {
        let analysis = self.analysis.procedures.get(at).ok_or_else(|| gone("analysis"))?;
        let work = self.card_work(path, at, procedure)?;
        let start = self.start(path, procedure);
        let yields = self.yields(path, at).map(|(yields, _)| yields);
        let hold = cold_limits::hold(self.book, procedure).map(|limit| self.scale.temperatures(Range::single(limit.at_most)));
        let time_out = cold_limits::time_out(self.book);
        let if_missed = time_out.as_ref().map_or_else(String::new, |limit| match limit.set_by {
            SetBy::Guidebook(stricter) => keep_units(&text(&stricter.if_missed)),
            SetBy::Profile(..) => String::new(),
        });
        let loss = yields.iter().flat_map(|yields| &yields.table.groups).find(|group| group.kind == Kind::Loss);
        let wear = |(number, step)| StepWear { number, wear: self.wear(procedure, step), take_off: self.never_wear(procedure, step) };
        let other: Vec<StepWear> =
            (1..).zip(&procedure.steps).map(wear).filter(|step| step.wear != work.wear || !step.take_off.is_empty()).collect();
        Ok(Class {
            title: keep_units(&markdown::first_line(&self.title(at))),
            guide_href: paths::link(path, &paths::guide(&procedure.id)),
            ways: self.ways(path, at, "class-sheet")?,
            strip: self.sheet_strip(procedure)?,
            mark: self.mark(procedure),
            start: start.name,
            weight: start.weight,
            unit: self.scale.unit(),
            basis: start.basis,
            temperature: start.temperature,
            minutes: analysis.minutes.bench.map_or_else(String::new, duration::minutes),
            hold: hold.unwrap_or_default(),
            time_out: time_out.map_or_else(String::new, |limit| duration::minutes(Range::single(limit.at_most))),
            if_missed,
            tools: work.tools,
            wear: work.wear,
            other_wear: other,
            loss: loss.map(|group| group.sum.of_start.clone()),
            own_judgement: yields.is_some_and(|yields| yields.rests_on == "own"),
        })
    }

    /// The pieces with their shares, and the sum of each use that has several.
    fn weigh_rows(&self, path: &str, at: usize) -> Vec<WeighRow> {
        let mut rows = Vec::new();
        let Some((yields, _)) = self.yields(path, at) else { return rows };
        for group in yields.table.groups.iter().filter(|group| group.kind != Kind::Loss) {
            let word = self.engine.words.plain(&format!("use-{}", group.kind.id())).unwrap_or_default();
            let row = |name: &str, share: &Percent| WeighRow {
                name: name.to_owned(),
                named_by_use: says_the_same(name, word),
                kind: group.kind,
                low: share.low.clone(),
                typical: share.typical.clone(),
                high: share.high.clone(),
            };
            rows.extend(group.rows.iter().map(|piece| row(&piece.name, &piece.figure.of_start)));
            if group.rows.len() > 1 {
                rows.push(row("", &group.sum.of_start));
            }
        }
        rows
    }

    /// Fills sheet after sheet.
    fn class_sheets(&self, class: &Class, parts: Vec<Part>) -> Result<Vec<ClassSheet>, ThemeError> {
        let top = LINE + 11.0 + if class.mark.is_empty() { 0.0 } else { 42.0 };
        let mut sheets: Vec<ClassSheet> = Vec::new();
        let mut sheet = ClassSheet { number: 1, ..ClassSheet::default() };
        let mut left = HEIGHT - top - self.class_head_height(class)?;
        let mut begun = false;
        for part in parts {
            let heading = match &part {
                Part::Row(_) | Part::Sums if sheet.rows.is_empty() => TABLE,
                Part::Hurt(_) => HEADING,
                Part::Question(_) if sheet.questions.is_empty() => HEADING,
                _ => 0.0,
            };
            let own = self.class_part_height(&part)?;
            if own + heading > left && left < HEIGHT - top {
                sheets.push(std::mem::take(&mut sheet));
                sheet.number = sheets.len() + 1;
                left = HEIGHT - top - if matches!(part, Part::Row(_) | Part::Sums) { TABLE } else { HEADING };
            } else {
                left -= heading;
            }
            left -= own;
            match part {
                Part::Row(row) => {
                    sheet.begins |= !begun;
                    begun = true;
                    sheet.rows.push(row);
                }
                Part::Sums => sheet.ends = true,
                Part::Hurt(hurt) => sheet.hurt = hurt,
                Part::Question(question) => sheet.questions.push(question),
            }
        }
        sheets.push(sheet);
        Ok(sheets)
    }

    /// What stands once, at the head of the first sheet.
    fn class_head_height(&self, class: &Class) -> Result<f64, ThemeError> {
        let words = &self.engine.words;
        let or = format!(" {} ", words.plain("or")?);
        let tools = class.tools.iter().map(|choice| choice.join(&or)).collect::<Vec<_>>().join(", ");
        let start = format!("{} {} {} {}", class.start, class.weight, class.basis, class.temperature);
        let hold = words.with("card-hold", &[("most", class.hold.as_str().into())])?;
        let time = words.with("card-time-out", &[("time", class.time_out.as_str().into())])?;
        let cold = format!("{hold} {time} {}", class.if_missed);
        let mut height = lines(&class.title, Face::Bold, 20.0 * 1.1, SHEET) as f64 * 23.0 + 3.0 + 3.0 * 26.0 + 25.0;
        let wear = class.wear.join(", ");
        let others = class.other_wear.iter().map(|step| format!("{} {}", step.wear.join(", "), step.take_off.join(", ")));
        for text in [start, cold, tools, wear].into_iter().chain(others) {
            height += lines(&text, Face::Bold, SIZE, SHEET - 70.0) as f64 * LINE + 2.0;
        }
        Ok(height)
    }

    fn class_part_height(&self, part: &Part) -> Result<f64, ThemeError> {
        Ok(match part {
            Part::Row(row) => {
                let kind = if row.name.is_empty() { "sum" } else { "use" };
                let word = self.engine.words.plain(&format!("{kind}-{}", row.kind.id()))?;
                let name = lines(&format!("{} {word}", row.name), Face::Bold, SIZE, 180.0) as f64 * LINE + 4.0;
                name.max(ROW)
            }
            Part::Sums => 3.0 * ROW + 2.0 * LINE + 3.0,
            Part::Hurt(groups) => {
                let items = groups.iter().flat_map(|group| group.items.iter().map(move |item| (group.signal, item)));
                let mut height = LINE + 3.0;
                for (signal, item) in items {
                    let signal = width(self.engine.words.plain(&format!("signal-{signal}"))?, Face::Bold, SIZE);
                    let set = Setting::new(SHEET, SIZE).mark(22.0 + signal).run(&item.name, Face::Bold);
                    let which = if item.every_step {
                        self.engine.words.plain("every-step")?.to_owned()
                    } else {
                        let steps = item.steps.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
                        let count = i64::try_from(item.steps.len()).unwrap_or(i64::MAX);
                        self.engine.words.with("in-steps", &[("n", count.into()), ("steps", steps.into())])?
                    };
                    let set = set.run(&item.avoid, Face::Regular).run(&which, Face::Regular);
                    height += set.lines() as f64 * LINE + 3.0;
                }
                height
            }
            Part::Question(question) => {
                let text = format!("{}. {} step 10", question.number, question.question);
                lines(&text, Face::Bold, SIZE, SHEET) as f64 * LINE + 2.0 * WRITE + 6.0
            }
        })
    }
}

/// Questions in the order of the steps.
fn questions(procedure: &Procedure) -> impl Iterator<Item = ClassQuestion> + '_ {
    let asked = (1..).zip(&procedure.steps).flat_map(|(number, step)| step.ask.iter().map(move |ask| (number, ask)));
    (1..).zip(asked).map(|(number, (step, ask))| ClassQuestion {
        number,
        step,
        question: ask.question.value().map_or_else(String::new, |question| markdown::first_line(question)),
    })
}
