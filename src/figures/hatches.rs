//! Hatches of what becomes of a piece, for drawings in files of their own: the same as on pages.
//!
//! A drawing that uses them styles the classes `ink`, `thin`, `thick`, `blood`, `dots` and `steel` of their lines.

use crate::model::words::Use;

use super::kind::Kind;
use super::svg::Svg;

/// Hatches: kind, size, turn in degrees, style, path. The same as on pages.
const HATCHES: &[(&str, f64, f64, &str, &str)] = &[
    ("for-cutting", 6.0, -45.0, "steel", "M2 0v6"),
    ("lean-trim", 6.0, 0.0, "blood", "M2 0v6"),
    ("fat-trim", 7.0, 0.0, "dots", "M2 2h0M5.5 5.5h0"),
    ("bone", 6.0, 45.0, "ink", "M2 0v6"),
    ("skin", 6.0, 0.0, "ink", "M0 2h6"),
    ("offal", 6.0, 0.0, "thin", "M0 1h6M1 0v6"),
    ("inedible", 8.0, 0.0, "ink", "M1 1l5 5M6 1l-5 5"),
    ("risk-material", 6.0, 0.0, "thick", "M0 1.5h3M3 4.5h3"),
];

/// The rules that fill a `rect` of the classes `piece` and the id of its kind.
pub(super) fn fills(kinds: &[Kind]) -> String {
    let mut style = String::new();
    for kind in Kind::of_a_whole().filter(|kind| kinds.contains(kind)) {
        let fill = match kind {
            Kind::Final(Use::Retail) => "var(--steel)".to_owned(),
            Kind::Final(purpose) => format!("url(#{})", purpose.word()),
            Kind::Loss | Kind::Onward => "none".to_owned(),
        };
        style.push_str(&format!(".piece.{}{{fill:{fill}}}", kind.id()));
    }
    style
}

/// The hatches of these kinds.
pub(super) fn patterns(svg: &mut Svg, kinds: &[Kind]) {
    svg.open("defs", &[]);
    for (kind, size, turn, class, path) in HATCHES {
        if kinds.iter().any(|known| known.id() == *kind) {
            let turn = format!("rotate({turn})");
            svg.open(
                "pattern",
                &[
                    ("id", (*kind).into()),
                    ("width", (*size).into()),
                    ("height", (*size).into()),
                    ("patternUnits", "userSpaceOnUse".into()),
                    ("patternTransform", turn.as_str().into()),
                ],
            );
            svg.empty("path", &[("class", (*class).into()), ("d", (*path).into())]);
            svg.close();
        }
    }
    svg.close();
}
