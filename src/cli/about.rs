//! The text of one check, for `inspect --about`.

use super::failure::Failure;
use super::layout::wrap;
use super::terminal::Terminal;
use crate::checks::{self, CheckInfo};

/// How many ids to offer for one that is not known.
const OFFERED: usize = 3;

/// Prints what a check says of itself.
///
/// # Errors
/// When there is no such check; the nearest ids are offered.
pub(super) fn run(id: &str, terminal: Terminal) -> Result<u8, Failure> {
    let check = checks::find(id).ok_or_else(|| unknown(id))?;
    terminal.print(&text(&check.info, terminal.columns))?;
    Ok(0)
}

fn text(info: &CheckInfo, columns: usize) -> String {
    let mut text = format!("{}: {} of the group {}\n", info.id, info.level.word(), info.group.word());
    for (heading, body) in [("What it finds", info.what), ("Why it matters", info.why)] {
        section(&mut text, heading, body, columns);
    }
    text.push_str("\nExample\n");
    for line in info.example.trim_matches('\n').lines() {
        text.push_str(format!("    {line}").trim_end());
        text.push('\n');
    }
    for (heading, body) in [("How to mend it", info.mend), ("Source", info.source)] {
        section(&mut text, heading, body, columns);
    }
    text
}

/// A heading, and its paragraphs set in.
fn section(text: &mut String, heading: &str, body: &str, columns: usize) {
    text.push_str(&format!("\n{heading}\n"));
    for (at, paragraph) in body.trim().split("\n\n").enumerate() {
        if at > 0 {
            text.push('\n');
        }
        for line in wrap(paragraph, columns.saturating_sub(2)) {
            text.push_str(&format!("  {line}\n"));
        }
    }
}

fn unknown(id: &str) -> Failure {
    let ids: Vec<&str> = checks::all().iter().map(|check| check.info.id).collect();
    let failure = Failure::new(format!("there is no check `{id}`"));
    match nearest(id, &ids).as_slice() {
        [] => failure.help("take the id from the brackets of a finding: `fault[shares-exceed-whole]`"),
        near => failure.help(format!("did you mean {}?", near.iter().map(|id| format!("`{id}`")).collect::<Vec<_>>().join(" or "))),
    }
}

/// The nearest of `ids`: with a few letters wrong, or sharing most of their words. Nearest first.
fn nearest<'a>(wrong: &str, ids: &[&'a str]) -> Vec<&'a str> {
    let wrong = wrong.to_lowercase().replace(['_', ' '], "-");
    let words: Vec<&str> = wrong.split('-').filter(|word| word.len() > 2).collect();
    let score = |id: &str| {
        let letters = strsim::damerau_levenshtein(&wrong, id);
        let shared = words.iter().filter(|word| id.split('-').any(|part| part.starts_with(**word))).count();
        let close = letters <= 1 + wrong.len() / 4;
        (close || (shared > 0 && shared * 2 >= words.len())).then_some((usize::MAX - shared, letters))
    };
    let mut found: Vec<_> = ids.iter().filter_map(|id| Some((score(id)?, *id))).collect();
    found.sort_unstable();
    found.into_iter().take(OFFERED).map(|(_, id)| id).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn offers_the_nearest_ids() {
        let ids = ["shares-exceed-whole", "shares-fall-short", "unknown-key", "glove-at-moving-saw"];
        assert_eq!(nearest("shares-exeed-whole", &ids), ["shares-exceed-whole"]);
        assert_eq!(nearest("shares", &ids), ["shares-fall-short", "shares-exceed-whole"]);
        assert_eq!(nearest("unknwon-key", &ids), ["unknown-key"]);
        assert_eq!(nearest("glove", &ids), ["glove-at-moving-saw"]);
        assert_eq!(nearest("E0308", &ids), [""; 0]);
    }

    #[test]
    fn every_text_fits_the_window_and_names_its_parts() {
        for check in checks::all() {
            let text = text(&check.info, 80);
            assert!(text.starts_with(check.info.id));
            for heading in ["What it finds", "Why it matters", "Example", "How to mend it", "Source"] {
                assert!(text.contains(&format!("\n\n{heading}\n  ")), "{text}");
            }
            assert!(text.lines().all(|line| super::super::layout::width(line) <= 80 || line.starts_with("    ")), "{text}");
        }
    }
}
