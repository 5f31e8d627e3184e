//! Parts a style: what a phone in the hand needs at once, and what it does not (paper, wide screens, colours of the
//! system).
//!
//! Whole rules are moved and none is changed. Their order among themselves stays, and they come after all that stay, so
//! a rule for paper or a wide screen must not count on one that stands behind it.

/// A style in two parts.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Apart {
    /// What the page carries.
    pub(super) here: String,
    /// What stands in a file beside it.
    pub(super) there: String,
    /// The media for which that file is loaded: `print,(min-width:64rem)`.
    pub(super) media: String,
}

/// Parts a style that was made small.
pub(super) fn apart(css: &str) -> Apart {
    let (mut here, mut there) = (String::new(), String::new());
    let mut media: Vec<&str> = Vec::new();
    for rule in rules(css) {
        let queries = later(rule);
        if queries.is_empty() {
            here.push_str(rule);
            continue;
        }
        there.push_str(rule);
        for query in queries {
            if !media.contains(&query) {
                media.push(query);
            }
        }
    }
    Apart { here, there, media: media.join(",") }
}

/// The media of a rule for which a phone in the hand has no use; none where it has one.
fn later(rule: &str) -> Vec<&str> {
    let head = rule.split_once('{').map_or(rule, |(head, _)| head);
    if head.starts_with("@page") {
        return vec!["print"];
    }
    let queries: Vec<&str> = head.strip_prefix("@media").unwrap_or("").split(',').map(str::trim).collect();
    let other = |query: &&str| *query == "print" || query.starts_with("(min-width:") || query.starts_with("(forced-colors:");
    if queries.iter().all(other) { queries } else { Vec::new() }
}

/// The rules of a style, one after the other, each with the braces inside it.
fn rules(css: &str) -> Vec<&str> {
    let (mut all, mut from, mut depth) = (Vec::new(), 0, 0_u32);
    let mut quote = None;
    let mut chars = css.char_indices();
    while let Some((at, character)) = chars.next() {
        match (quote, character) {
            (Some(_), '\\') => drop(chars.next()),
            (Some(open), _) if open == character => quote = None,
            (None, '"' | '\'') => quote = Some(character),
            (None, '{') => depth += 1,
            (None, '}') => {
                depth = depth.saturating_sub(1);
                if depth == 0 {
                    all.extend(css.get(from..=at));
                    from = at + 1;
                }
            }
            _ => {}
        }
    }
    all.extend(css.get(from..).filter(|rest| !rest.is_empty()));
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rules_for_paper_and_wide_screens_go() {
        let css = "a{b:c}@page{margin:1mm;@top-left{content:\"}\"}}@media (prefers-color-scheme:dark){a{b:d}}\
                   @media print,(min-width:64rem){a{b:e}}f{g:h}@media (min-width:64rem){f{g:i}}@media (forced-colors:active){f{g:j}}";
        let Apart { here, there, media } = apart(css);
        assert_eq!(here, "a{b:c}@media (prefers-color-scheme:dark){a{b:d}}f{g:h}");
        assert_eq!(
            there,
            "@page{margin:1mm;@top-left{content:\"}\"}}@media print,(min-width:64rem){a{b:e}}@media (min-width:64rem){f{g:i}}\
             @media (forced-colors:active){f{g:j}}"
        );
        assert_eq!(media, "print,(min-width:64rem),(forced-colors:active)");
    }

    #[test]
    fn nothing_is_lost_of_a_broken_style() {
        for css in ["", "a", "a{", "}", "a{b:\"}", "a{b:'\\", "@media print{a{b:c}", "}}a{b:c}"] {
            let Apart { here, there, .. } = apart(css);
            assert_eq!(here.len() + there.len(), css.len(), "{css}");
        }
    }
}
