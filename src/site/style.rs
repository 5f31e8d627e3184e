//! The style sheet made small enough for the first flight of a page: comments and needless space taken out.
//!
//! Nothing else is changed, so that what is served is what was written.

/// Without comments, line breaks and indentation. Strings and `url(…)` are kept as they are.
pub(super) fn small(css: &str) -> String {
    let mut out = String::with_capacity(css.len());
    let mut rest = css;
    let mut quote: Option<char> = None;
    while let Some(character) = rest.chars().next() {
        if quote.is_none() && rest.starts_with("/*") {
            rest = rest.split_once("*/").map_or("", |(_, after)| after);
            continue;
        }
        rest = rest.get(character.len_utf8()..).unwrap_or("");
        match quote {
            Some(open) => {
                out.push(character);
                if character == '\\'
                    && let Some(next) = rest.chars().next()
                {
                    out.push(next);
                    rest = rest.get(next.len_utf8()..).unwrap_or("");
                } else if character == open {
                    quote = None;
                }
            }
            None if character.is_whitespace() => {
                let idle = out.is_empty() || out.ends_with([' ', '{', '}', ';', ',']);
                if !idle {
                    out.push(' ');
                }
            }
            None => {
                if matches!(character, '{' | '}' | ';') && out.ends_with(' ') {
                    out.pop();
                }
                if matches!(character, '"' | '\'') {
                    quote = Some(character);
                }
                out.push(character);
            }
        }
    }
    out.truncate(out.trim_end().len());
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_needless_space_go() {
        assert_eq!(small("/* a */\na {\n  b: c d;\n  /* e */ f: g;\n}\n\nh, i > j { k: l }\n"), "a{b: c d;f: g;}h,i > j{k: l}");
    }

    #[test]
    fn strings_stay() {
        assert_eq!(small("a::before { content: \"  /* \\\" */ \" }"), "a::before{content: \"  /* \\\" */ \"}");
    }

    #[test]
    fn conditions_keep_the_space_that_they_need() {
        assert_eq!(small("@media print, (min-width: 64rem)\n{ a { b: c } }"), "@media print,(min-width: 64rem){a{b: c}}");
        assert_eq!(small("@media (a) and (b) { c d { e: calc(1px + 2px) } }"), "@media (a) and (b){c d{e: calc(1px + 2px)}}");
    }
}
