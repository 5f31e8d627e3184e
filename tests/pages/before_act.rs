//! For every view of a guide: a caution stands before the act that it is about, and whole.

use super::html::Page;

/// What a view calls its parts.
pub(crate) struct Parts<'a> {
    /// The class of what holds one step: a list item, a screen, a card.
    pub(crate) step: &'a str,
    /// The class of the text that says what to do.
    pub(crate) act: &'a str,
}

/// Holds that in each step of a page every caution stands before the act, with a signal word, what can hurt and what to
/// do. Gives back how many cautions were looked at, so that a test can want some.
pub(crate) fn cautions_stand_before_acts(path: &str, page: &Page, parts: &Parts<'_>) -> usize {
    let mut seen = 0;
    for (step, _) in page.with_class(parts.step) {
        let act = page.with_class(parts.act).find(|(at, _)| page.is_inside(*at, step)).map(|(at, _)| at);
        for (group, element) in page.with_class("caution").filter(|(at, _)| page.is_inside(*at, step)) {
            assert!(act.is_none_or(|act| group < act), "{path}: a caution after its act: {}", element.text);
            assert!(signal(element.get("class").unwrap_or_default()).is_some(), "{path}: a caution without its signal word");
            for (item, caution) in page.inside(group, "li") {
                let avoid = page.inside(item, "strong").next().map(|(_, strong)| strong.text.trim().to_owned());
                assert!(avoid.is_some_and(|avoid| avoid.len() > 10), "{path}: a caution that says not what to do: {}", caution.text);
                seen += 1;
            }
        }
    }
    seen
}

/// The signal word of a group by its classes.
pub(crate) fn signal(classes: &str) -> Option<&'static str> {
    let own: Vec<&str> = classes.split(' ').filter(|class| *class != "caution").collect();
    let twice = classes.split(' ').filter(|class| *class == "caution").count() > 1;
    ["danger", "warning", "notice"].into_iter().find(|signal| own.contains(signal)).or(twice.then_some("caution"))
}

/// Every caution inside of an element: its signal word, and what to do.
pub(crate) fn cautions_inside(page: &Page, outer: usize) -> Vec<(&'static str, String)> {
    let mut found = Vec::new();
    for (group, element) in page.with_class("caution").filter(|(at, _)| page.is_inside(*at, outer)) {
        let Some(signal) = signal(element.get("class").unwrap_or_default()) else { continue };
        found.extend(page.inside(group, "strong").map(|(_, strong)| (signal, strong.text.clone())));
    }
    found
}
