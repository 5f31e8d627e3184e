//! Drawn findings, letter by letter.

use super::*;
use crate::finding::{Place, Span};

const PLAIN: Style = Style { color: false, width: 80 };

struct Desk {
    sources: SourceMap,
}

impl Desk {
    fn new(texts: &[(&str, &str)]) -> Self {
        let mut sources = SourceMap::default();
        for (path, text) in texts {
            sources.add(*path, *text);
        }
        Self { sources }
    }

    fn at(&self, path: &str, words: &str) -> Place {
        let file = self.sources.find(path).unwrap();
        let start = self.sources.get(file).unwrap().text().find(words).unwrap();
        Place::new(file, Span::new(u32::try_from(start).unwrap(), u32::try_from(start + words.len()).unwrap()))
    }
}

fn widest(text: &str) -> usize {
    text.lines().map(UnicodeWidthStr::width).max().unwrap_or(0)
}

#[test]
fn a_finding_is_drawn_with_its_line_other_places_and_help() {
    let text = "title: Café loin\nsteps:\n  - name: Take off\n    give:\n      a: 5–7 %\n      b: 99 %\n";
    let desk = Desk::new(&[("pork/loin.yaml", text), ("cuts/pork.yaml", "loin: {}\n")]);
    let findings = [
        Finding::fault("unknown-key", desk.at("pork/loin.yaml", "Café"), "a step has no key `titel`").help("write `title`"),
        Finding::fault(
            "shares-exceed-whole",
            desk.at("pork/loin.yaml", "give"),
            "the shares of this step add to 104 % at least of what it takes, 4 % too much",
        )
        .label("these")
        .also(desk.at("pork/loin.yaml", "99 %"), "at least 99 %")
        .also(desk.at("cuts/pork.yaml", "loin"), "the piece is listed here")
        .help("lower a share by 4 % or more, or take one of the pieces out of this step and give it in another"),
    ];
    let expected = "\
fault[unknown-key]: a step has no key `titel`
 --> pork/loin.yaml:1:8
  |
1 | title: Café loin
  |        ^^^^
  = help: Write `title`.

fault[shares-exceed-whole]: the shares of this step add to 104 % at least of
    what it takes, 4 % too much
 --> pork/loin.yaml:4:5
  |
4 |     give:
  |     ^^^^ these
5 |       a: 5–7 %
6 |       b: 99 %
  |          ---- at least 99 %
  = note: the piece is listed here (cuts/pork.yaml:1:1)
  = help: Lower a share by 4 % or more, or take one of the pieces out of this
          step and give it in another.

2 faults in 1 file
";
    assert_eq!(render(&findings, 0, &desk.sources, PLAIN), expected);
}

#[test]
fn several_files_have_headings_and_none_has_an_excerpt_without_text() {
    let desk = Desk::new(&[("a.yaml", "title: x\n"), ("b.yml", "")]);
    let end = Finding::fault("file-ending", Place::new(FileId(1), Span::new(0, 0)), "this file is not read").help("rename it to `b.yaml`");
    let findings = [Finding::advice("sentence-long", desk.at("a.yaml", "x"), "21 words"), end];
    let expected = "\
a.yaml: no faults, 1 piece of advice

advice[sentence-long]: 21 words
 --> a.yaml:1:8
  |
1 | title: x
  |        ^

b.yml: 1 fault

fault[file-ending]: this file is not read
 --> b.yml:1:1
  = help: Rename it to `b.yaml`.

1 fault, 1 piece of advice in 2 files
";
    assert_eq!(render(&findings, 0, &desk.sources, PLAIN), expected);
    assert_eq!(render(&[], 0, &desk.sources, PLAIN), "no faults\n");
    assert_eq!(summary(&[], 1), "no faults; 1 more piece of advice is waived or turned off");
    assert!(summary(&findings, 3).ends_with("; 3 more pieces of advice are waived or turned off"));
}

#[test]
fn long_lines_are_cut_around_the_carets() {
    let long = format!("title: x\npurpose: {}here it is {}\nend: 1\n", "word ".repeat(60), "tail ".repeat(60));
    let desk = Desk::new(&[("a.yaml", &long)]);
    let near = Finding::advice("a", desk.at("a.yaml", "purpose"), "m").label("the key");
    let far =
        Finding::advice("a", desk.at("a.yaml", "here it is"), "m").label("from here on").also(desk.at("a.yaml", "purpose"), "the key");
    let whole = Finding::advice("a", desk.at("a.yaml", long.lines().nth(1).unwrap()), "m").label("all of this line, which is cut");
    for (finding, shown) in [(near, "purpose: word"), (far, "… word word word here it is tail"), (whole, "purpose: word")] {
        let out = render(std::slice::from_ref(&finding), 0, &desk.sources, PLAIN);
        assert!(widest(&out) <= 80, "{out}");
        assert!(out.replace("word  ", "word ").contains(shown), "{out}");
        for text in finding.related.iter().map(|related| &related.text).chain([&finding.label]) {
            assert!(out.contains(text.as_str()), "{out}");
        }
    }
    let wide = format!("title: {}loin\n", "切".repeat(70));
    let desk = Desk::new(&[("a.yaml", &wide)]);
    let out = render(&[Finding::fault("a", desk.at("a.yaml", "loin"), "m")], 0, &desk.sources, PLAIN);
    assert!(widest(&out) <= 80 && out.contains("切loin"), "{out}");
}

#[test]
fn spans_over_lines_and_at_the_end_are_drawn() {
    let desk = Desk::new(&[("a.yaml", "do: |\n  One.\r\n  Two.\nend:\n")]);
    let out = |place| render(&[Finding::fault("a", place, "m")], 0, &desk.sources, PLAIN);
    let first = desk.at("a.yaml", "|\n  One.\r\n  Two.");
    assert!(out(first).contains("1 | do: |\n  |     ^\n"), "{}", out(first));
    let past = Place::new(FileId(0), Span::new(900, 999));
    assert!(out(past).contains("a.yaml:5:1"), "{}", out(past));
    let unknown = Place::new(FileId(7), Span::new(0, 3));
    assert!(out(unknown).starts_with("fault[a]: m\n"));
}

#[test]
fn authored_letters_can_not_drive_a_terminal() {
    let desk = Desk::new(&[("a.yaml", "title: \u{202e}x\u{1b}[2J\n")]);
    let finding = Finding::fault("a", desk.at("a.yaml", "title"), "`\u{1b}[2J\n\u{202e}` is odd").help("\u{7}take it away");
    let out = render(std::slice::from_ref(&finding), 0, &desk.sources, PLAIN);
    assert!(!out.contains(['\u{1b}', '\u{7}', '\u{202e}']), "{out:?}");
    assert_eq!(line(&finding, &desk.sources), "a.yaml:1:1 fault[a] `\u{fffd}[2J \u{fffd}` is odd");
    let colored = render(&[finding], 0, &desk.sources, Style { color: true, width: 80 });
    assert!(colored.starts_with("\u{1b}[1m\u{1b}[91mfault[a]\u{1b}[0m\u{1b}[1m: "), "{colored:?}");
}

#[test]
fn hundreds_are_all_shown_shortly() {
    let text = "k: v\n".repeat(500);
    let desk = Desk::new(&[("a.yaml", &text), ("b.yaml", &text)]);
    let place = |file, line: u32| Place::new(FileId(file), Span::new(line * 5, line * 5 + 1));
    let findings: Vec<Finding> = (0..2).flat_map(|file| (0..500).map(move |line| Finding::fault("x", place(file, line), "m"))).collect();
    let out = render(&findings, 0, &desk.sources, PLAIN);
    assert_eq!(out.matches("--> ").count(), 2 * DRAWN_A_FILE);
    assert!(out.contains("\na.yaml:500:1 fault[x] m\n"));
    assert!(out.ends_with("\n1000 faults in 2 files\n"));
    assert!(out.lines().count() < 1300);
}

#[test]
fn words_longer_than_a_line_are_broken() {
    let text = format!("a {} b", "x".repeat(100));
    let lines = wrapped(&text, 40, 4);
    assert!(lines.iter().all(|line| line.len() <= 40), "{lines:?}");
    assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
}
