//! What every page must keep, whatever theme made it: its content security policy, its cautions before their acts, and the
//! mark of a guide that is not in force.
//!
//! It looks at what the template got and at what came out of it, so that it holds for every view and template alike.

use serde::Serialize;
use serde_json::Value;

use super::markup::{Markup, Tag, words};
use crate::site::theme_error::{ThemeError, Wrong};

/// Templates of views to work from: they must show the instruction of every step. Others may, and then with its cautions.
const INSTRUCTS: &[&str] = &["guide.html", "bench.html", "room.html", "card.html"];

/// Looks through a page that was made by `template` from `context`.
pub(in crate::site) fn look(template: &str, context: &impl Serialize, html: &str) -> Result<(), ThemeError> {
    let got = serde_json::to_value(context).unwrap_or_default();
    let page = Markup::of(html);
    let frame = got.get("page").unwrap_or(&Value::Null);
    let told = policy(frame, &page).or_else(|| state(frame, &page)).or_else(|| cautions(template, &got, &page));
    told.map_or(Ok(()), |told| Err(told.at_file(&format!("templates/{template}"))))
}

/// What is missing of what keeps people safe.
fn unsafe_without(message: impl Into<String>, help: &str) -> ThemeError {
    ThemeError { wrong: Wrong::Safety, ..ThemeError::new(message).help(help) }
}

/// What is wrong with the policy of a page, and how it begins in a template.
fn against_policy(begins: &str, message: impl Into<String>, help: &str) -> ThemeError {
    ThemeError { wrong: Wrong::Policy, begins: begins.to_owned(), ..ThemeError::new(message).help(help) }
}

fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value.get(key).and_then(Value::as_str).unwrap_or("")
}

/// The policy stands before everything that it is about, and nothing stands there that it would keep out.
fn policy(frame: &Value, page: &Markup) -> Option<ThemeError> {
    let wanted = text(frame, "policy");
    let is_policy =
        |tag: &Tag| tag.name == "meta" && tag.get("http-equiv").is_some_and(|name| name.eq_ignore_ascii_case("content-security-policy"));
    let loads = |tag: &Tag| matches!(tag.name.as_str(), "style" | "script" | "link" | "img" | "body");
    let stands = page.tags.iter().position(|tag| is_policy(tag) && tag.get("content") == Some(wanted));
    let first = page.tags.iter().position(loads).unwrap_or(usize::MAX);
    if stands.is_none_or(|at| at > first) {
        return Some(against_policy(
            "",
            "the page has no content security policy before its style and scripts",
            "Write `<meta http-equiv=\"Content-Security-Policy\" content=\"{{ page.policy }}\">` at the head of the page.",
        ));
    }
    let sheets: Vec<&str> = page.tags.iter().filter(|tag| is_sheet(tag)).filter_map(|tag| tag.get("href")).collect();
    let apart = frame.get("style_apart").map_or("", |apart| text(apart, "href"));
    if !apart.is_empty() && !sheets.contains(&apart) {
        let message = "the page does not load its rules for paper, which mark every sheet with its revision";
        return Some(unsafe_without(message, "Keep the line with `page.style_apart` that `templates/base.html` of `paper` has."));
    }
    if let Some(other) = sheets.iter().find(|href| **href != apart && **href != text(frame, "style_below")) {
        let message = format!("the style sheet `{other}` is none of this page");
        return Some(against_policy("<link", message, "Write its rules into `styles/own.css`."));
    }
    page.tags.iter().find_map(|tag| kept_out(tag, text(frame, "style")))
}

fn is_sheet(tag: &Tag) -> bool {
    tag.name == "link" && tag.get("rel").is_some_and(|rel| rel.eq_ignore_ascii_case("stylesheet"))
}

const AS_FILE: &str = "Put it into `assets` and name it with `<script src=\"{{ page.assets[\"name.js\"] }}\" defer></script>`.";

/// What the policy keeps out: browsers would leave it away without a word.
fn kept_out(tag: &Tag, style: &str) -> Option<ThemeError> {
    let name = &tag.name;
    let element = format!("<{name}");
    if let Some((handler, _)) = tag.attributes.iter().find(|(attribute, _)| attribute.starts_with("on")) {
        let message = format!("browsers leave out `{handler}` of this <{name}>, for the policy allows no script in the page");
        return Some(against_policy(handler, message, AS_FILE));
    }
    if tag.get("style").is_some() {
        let message = format!("browsers leave out `style` of this <{name}>, for the policy allows no style on elements");
        return Some(against_policy("style=", message, "Give it a class, and write the rule into `styles/own.css`."));
    }
    let elsewhere =
        |link: &str| link.starts_with("//") || link.split_once(':').is_some_and(|(scheme, _)| !scheme.contains('/') && scheme != "data");
    let (message, help) = match name.as_str() {
        "style" if tag.raw != style => (
            "browsers leave out this style, for the policy names the digest of another".to_owned(),
            "Write `<style>{{ page.style | safe }}</style>` and nothing else; own rules stand in `styles/own.css`.",
        ),
        "script" if tag.get("src").is_none() => {
            ("browsers leave out this script, for the policy allows only script files".to_owned(), AS_FILE)
        }
        "iframe" | "object" | "embed" | "frame" | "base" => {
            (format!("browsers leave out this <{name}>, for the policy allows none"), "Take it out.")
        }
        "script" | "img" | "source" | "video" | "audio" if tag.get("src").is_some_and(elsewhere) => (
            format!("`{}` lies elsewhere, and a page loads nothing from there", tag.get("src").unwrap_or("")),
            "Put the file into `assets` and write `{{ page.assets[\"name\"] }}`.",
        ),
        "form" if tag.get("action").is_some() => {
            ("browsers do not send this form, for the policy allows none".to_owned(), "Take out `action`.")
        }
        _ => return None,
    };
    Some(against_policy(&element, message, help))
}

/// A guide that is not in force says so on its page.
fn state(frame: &Value, page: &Markup) -> Option<ThemeError> {
    let strip = words(text(frame, "strip"));
    if text(frame, "state").is_empty() || page.text.contains(&strip) {
        return None;
    }
    let message = format!("a guide that is not in force is not marked: `{strip}`");
    Some(unsafe_without(message, "Show `{{ page.strip }}` where `page.state` is not empty, as `templates/base.html` of `paper` does."))
}

/// A step with its instruction.
struct Act<'a> {
    number: u64,
    name: &'a str,
    instruction: String,
    cautions: Vec<String>,
}

/// Every caution of a step stands before its instruction and after that of the step before. What can hurt and belongs to
/// no one step stands before the first instruction.
fn cautions(template: &str, got: &Value, page: &Markup) -> Option<ThemeError> {
    let (mut acts, mut hurt) = (Vec::new(), Vec::new());
    gather(got, &mut acts, &mut hurt);
    let shown = shown(&acts, &page.text);
    if shown.is_empty() && !INSTRUCTS.contains(&template) {
        return None;
    }
    let first = shown.first().map_or(page.text.len(), |(start, _, _)| *start);
    let before = page.text.get(..first).unwrap_or("");
    let general = hurt.iter().find(|caution| !before.contains(caution.as_str()) && !acts.iter().any(|act| act.cautions.contains(caution)));
    if let Some(caution) = general {
        let help = "Show `guide.hurt` before the steps: `{{ <cautions groups={guide.hurt} where={true} /> }}`.";
        return Some(unsafe_without(format!("what can hurt is not shown before the first step: `{caution}`"), help));
    }
    let dangerous = acts.iter().enumerate().filter(|(_, act)| !act.cautions.is_empty());
    for (at, act) in dangerous {
        let (number, name) = (act.number, act.name);
        let mut lacking = shown.iter().enumerate().filter(|(_, (_, _, of))| *of == at).map(|(place, (start, _, _))| {
            let from = place.checked_sub(1).and_then(|earlier| shown.get(earlier)).map_or(0, |(_, end, _)| *end);
            act.lacks(page.text.get(from..*start).unwrap_or(""), place == 0)
        });
        // Where a step is shown more than once, one of them must be whole.
        let missing = lacking.next().map(|first| first.filter(|_| lacking.all(|lacks| lacks.is_some())));
        let (message, help) = match missing {
            None => (
                format!("step {number}, {name}, is shown without its instruction, so that no caution stands before it"),
                "Show `{{ step.do_html | safe }}` after the cautions of the step.",
            ),
            Some(Some(caution)) => (
                format!("step {number}, {name}, shows its instruction without a caution before it: `{caution}`"),
                "Show `{{ <cautions groups={step.cautions} /> }}` before `{{ step.do_html | safe }}`, each text as it is.",
            ),
            Some(None) => continue,
        };
        return Some(unsafe_without(message, help));
    }
    None
}

impl Act<'_> {
    /// A caution that does not stand in the text before the instruction. Before the `first` step the head shows cautions
    /// too, so there they must stand behind the name of the step, or twice. A view may repeat the name, so the first counts.
    fn lacks(&self, before: &str, first: bool) -> Option<&String> {
        let step = before.find(self.name).and_then(|at| before.get(at..)).filter(|_| first && !self.name.is_empty());
        self.cautions.iter().find(|caution| match step {
            Some(step) => !step.contains(caution.as_str()) && before.matches(caution.as_str()).count() < 2,
            None => !before.contains(caution.as_str()),
        })
    }
}

/// Where instructions stand in a page: begin, end, which act; sorted, and none inside another.
fn shown(acts: &[Act<'_>], text: &str) -> Vec<(usize, usize, usize)> {
    let mut order: Vec<(usize, &Act<'_>)> = acts.iter().enumerate().collect();
    order.sort_by_key(|(at, act)| (std::cmp::Reverse(act.instruction.len()), *at));
    let mut shown: Vec<(usize, usize, usize)> = Vec::new();
    for (number, act) in order {
        for (start, met) in text.match_indices(act.instruction.as_str()) {
            let end = start + met.len();
            if shown.iter().all(|(from, to, of)| end <= *from || *to <= start || (*from == start && *to == end && *of != number)) {
                shown.push((start, end, number));
            }
        }
    }
    shown.sort_unstable();
    shown
}

/// Steps with cautions, and the cautions at the head, wherever a template gets them.
fn gather<'a>(value: &'a Value, acts: &mut Vec<Act<'a>>, head: &mut Vec<String>) {
    match value {
        Value::Array(items) => items.iter().for_each(|item| gather(item, acts, head)),
        Value::Object(fields) => {
            let instruction = Markup::of(text(value, "do_html")).text;
            let own = fields.get("cautions").map_or_else(Vec::new, texts);
            if !instruction.is_empty() {
                let number = fields.get("number").and_then(Value::as_u64).unwrap_or(0);
                acts.push(Act { number, name: text(value, "name"), instruction, cautions: own });
            }
            head.extend(fields.get("hurt").map_or_else(Vec::new, texts));
            fields.iter().filter(|(key, _)| key.as_str() != "cautions").for_each(|(_, field)| gather(field, acts, head));
        }
        _ => {}
    }
}

/// What a reader must see of groups of cautions: what can hurt, and how to avoid it.
fn texts(groups: &Value) -> Vec<String> {
    let items = groups.as_array().into_iter().flatten().filter_map(|group| group.get("items")?.as_array()).flatten();
    items.flat_map(|item| ["hazard", "avoid"].map(|key| words(text(item, key)))).filter(|text| !text.is_empty()).collect()
}
