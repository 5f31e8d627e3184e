//! The texts that tests of checks begin with, taken out of `src/checks`: each a small guidebook, sound or not.
//!
//! Calls of `files`, `steps`, `beside` and `procedure` with plain string literals are found by a rough reading of
//! Rust; calls that build their text are passed over, and counted.

use std::fs;
use std::path::Path;

/// A guidebook of a test.
#[derive(Debug)]
pub(crate) struct Fixture {
    /// The file of the test.
    pub(crate) from: String,
    /// Path and text of each file.
    pub(crate) files: Vec<(String, String)>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Token {
    Word(String),
    Text(String),
    Sign(char),
}

/// All fixtures below `src/checks`, and how many calls were passed over.
pub(crate) fn all(root: &Path) -> (Vec<Fixture>, usize) {
    let testing = tokens(&fs::read_to_string(root.join("src/checks/testing.rs")).unwrap());
    let (book, head, steps) = (constant(&testing, "GUIDEBOOK"), constant(&testing, "HEAD"), constant(&testing, "STEPS"));
    let (mut fixtures, mut passed_over) = (Vec::new(), 0);
    let mut folders = vec![root.join("src/checks")];
    while let Some(folder) = folders.pop() {
        let mut paths: Vec<_> = fs::read_dir(folder).unwrap().flatten().map(|entry| entry.path()).collect();
        paths.sort();
        for path in paths {
            if path.is_dir() {
                folders.push(path);
            } else if !path.ends_with("testing.rs") {
                let tokens = tokens(&fs::read_to_string(&path).unwrap());
                let from = path.strip_prefix(root).unwrap().display().to_string();
                for at in 0..tokens.len() {
                    let Some(found) = call(&tokens[at..], &head, &steps) else { continue };
                    match found {
                        Some(mut files) => {
                            if !files.iter().any(|(path, _)| path == "guidebook.yaml") {
                                files.push(("guidebook.yaml".to_owned(), book.clone()));
                            }
                            fixtures.push(Fixture { from: from.clone(), files });
                        }
                        None => passed_over += 1,
                    }
                }
            }
        }
    }
    (fixtures, passed_over)
}

/// The value of `const NAME: &str = "…";`.
fn constant(tokens: &[Token], name: &str) -> String {
    let at = tokens.iter().position(|token| *token == Token::Word(name.to_owned())).unwrap();
    let text = tokens[at..].iter().find_map(|token| if let Token::Text(text) = token { Some(text.clone()) } else { None });
    text.unwrap()
}

/// The files of the call that begins here; `Some(None)` for a call whose texts are no literals.
fn call(tokens: &[Token], head: &str, steps: &str) -> Option<Option<Vec<(String, String)>>> {
    let [Token::Word(name), Token::Sign('('), rest @ ..] = tokens else { return None };
    let whole = |text: String| vec![("chicken/whole.yaml".to_owned(), text)];
    match (name.as_str(), rest.first()?) {
        ("procedure", Token::Text(text)) => Some(Some(whole(text.clone()))),
        ("steps", Token::Text(text)) => Some(Some(whole(format!("{head}{text}")))),
        ("beside", Token::Text(text)) => Some(Some(whole(format!("{head}{text}{steps}")))),
        ("files", Token::Sign('&')) => Some(pairs(rest.get(2..)?)),
        ("procedure" | "steps" | "beside", Token::Sign('&')) => Some(None),
        _ => None,
    }
}

/// `("path", "text"), …` up to the closing bracket.
fn pairs(mut tokens: &[Token]) -> Option<Vec<(String, String)>> {
    let mut files = Vec::new();
    loop {
        match tokens {
            [Token::Sign('('), Token::Text(path), Token::Sign(','), Token::Text(text), rest @ ..] => {
                files.push((path.clone(), text.clone()));
                tokens = rest;
            }
            [Token::Sign(',' | ')'), rest @ ..] => tokens = rest,
            [Token::Sign(']'), ..] => return Some(files),
            _ => return None,
        }
    }
}

fn tokens(text: &str) -> Vec<Token> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let word = rest.find(|letter: char| !(letter.is_alphanumeric() || letter == '_')).unwrap_or(rest.len());
        if rest.starts_with("//") {
            rest = rest.split_once('\n').map_or("", |(_, after)| after);
        } else if first == '"' {
            let (text, after) = literal(&rest[1..]);
            found.push(Token::Text(text));
            rest = after;
        } else if let Some(body) = rest.strip_prefix("r#\"") {
            let (text, after) = body.split_once("\"#").unwrap_or((body, ""));
            found.push(Token::Text(text.to_owned()));
            rest = after;
        } else if word > 0 {
            found.push(Token::Word(rest[..word].to_owned()));
            rest = &rest[word..];
        } else {
            if !first.is_whitespace() {
                found.push(Token::Sign(first));
            }
            // A quote as a character would begin a text.
            rest = rest.strip_prefix("'\"'").unwrap_or(&rest[first.len_utf8()..]);
        }
    }
    found
}

/// The text up to the closing quote, its escapes resolved, and what follows.
fn literal(body: &str) -> (String, &str) {
    let mut text = String::new();
    let mut letters = body.char_indices();
    while let Some((at, letter)) = letters.next() {
        match letter {
            '"' => return (text, &body[at + 1..]),
            '\\' => match letters.next().map(|(_, escaped)| escaped) {
                Some('n') => text.push('\n'),
                Some('t') => text.push('\t'),
                Some('r') => text.push('\r'),
                Some('0') => text.push('\0'),
                Some('x') => {
                    let digits: String = letters.by_ref().take(2).map(|(_, digit)| digit).collect();
                    text.extend(u32::from_str_radix(&digits, 16).ok().and_then(char::from_u32));
                }
                Some('u') => {
                    let digits: String = letters.by_ref().map(|(_, digit)| digit).skip(1).take_while(|digit| *digit != '}').collect();
                    text.extend(u32::from_str_radix(&digits, 16).ok().and_then(char::from_u32));
                }
                Some('\n') => {
                    let after = letters.as_str();
                    letters = body.char_indices();
                    let skip = body.len() - after.trim_start().len();
                    while letters.clone().next().is_some_and(|(at, _)| at < skip) {
                        letters.next();
                    }
                }
                Some(other) => text.push(other),
                None => {}
            },
            other => text.push(other),
        }
    }
    (text, "")
}
