//! Where each page of the site lies, and links between pages.
//!
//! Every path is made here alone. No two pages can share one: each kind of page has a folder of its own, and inside
//! it the name is the id. All links are relative and name their file, so that the site also works from a folder.

/// The home page.
pub const HOME: &str = "index.html";
/// All tables.
pub const TABLES: &str = "tables/index.html";

/// The names of all pieces.
pub const PIECES: &str = "pieces/index.html";
/// The limits against which guides are held.
pub const LIMITS: &str = "limits/index.html";
/// What is checked.
pub const CHECKS: &str = "checks/index.html";
/// All pages for machines that look for them.
pub const SITEMAP: &str = "sitemap.xml";
/// What changed, for readers of feeds.
pub const FEED: &str = "changes.atom";
/// What keeps the site on a device. It lies at the root, for it cannot keep what lies above it.
pub const SERVICE_WORKER: &str = "service-worker.js";
/// What the site is called and looks like on a home screen.
pub const MANIFEST: &str = "site.webmanifest";
/// What is kept on a device.
pub const OFFLINE: &str = "offline/index.html";
/// The revision of each guide.
pub const REVISIONS: &str = "offline/revisions.json";

/// The page of a species.
#[must_use]
pub fn species(species: &str) -> String {
    format!("species/{species}.html")
}

/// The guide of a procedure.
#[must_use]
pub fn guide(procedure: &str) -> String {
    format!("guides/{procedure}.html")
}

/// The wall card of a procedure.
#[must_use]
pub fn card(procedure: &str) -> String {
    format!("cards/{procedure}.html")
}

/// The class sheet of a procedure.
#[must_use]
pub fn class_sheet(procedure: &str) -> String {
    format!("class/{procedure}.html")
}

/// The yield of every step of a procedure.
#[must_use]
pub fn guide_table(procedure: &str) -> String {
    format!("tables/guides/{procedure}.html")
}

/// The yields of all procedures of a species.
#[must_use]
pub fn species_table(species: &str) -> String {
    format!("tables/species/{species}.html")
}

/// What house cuts make of a starting piece.
#[must_use]
pub fn chain_table(piece: &str) -> String {
    format!("tables/chains/{piece}.html")
}

/// The drawing of where the weight of a procedure goes.
#[must_use]
pub fn flow_drawing(procedure: &str) -> String {
    format!("drawings/flow/{procedure}.svg")
}

/// The cut map of a species.
#[must_use]
pub fn cut_map(species: &str) -> String {
    format!("cuts/{species}.html")
}

/// Its drawing.
#[must_use]
pub fn cut_map_drawing(species: &str) -> String {
    format!("drawings/cuts/{species}.svg")
}

/// Time out of the cold of a procedure.
#[must_use]
pub fn cold_clock(procedure: &str) -> String {
    format!("cold/{procedure}.html")
}

/// The drawing of time out of the cold.
#[must_use]
pub fn cold_drawing(procedure: &str) -> String {
    format!("drawings/cold/{procedure}.svg")
}

/// Bones, muscles, tissues and glands of a species.
#[must_use]
pub fn anatomy(species: &str) -> String {
    format!("anatomy/{species}.html")
}

/// The pieces of a species with their names.
#[must_use]
pub fn pieces_of(species: &str) -> String {
    format!("pieces/species/{species}.html")
}

/// A course.
#[must_use]
pub fn course(course: &str) -> String {
    format!("courses/{course}.html")
}

/// A free page.
#[must_use]
pub fn free_page(page: &str) -> String {
    format!("pages/{page}.html")
}

/// The source text of a procedure.
#[must_use]
pub fn source(procedure: &str) -> String {
    format!("source/{procedure}.html")
}

/// A guide at the bench, one step a screen.
#[must_use]
pub fn bench(procedure: &str) -> String {
    format!("bench/{procedure}.html")
}

/// A guide for a projector, one picture after the other.
#[must_use]
pub fn room(procedure: &str) -> String {
    format!("room/{procedure}.html")
}

/// A guide for machines, beside the guide itself.
#[must_use]
pub fn guide_data(procedure: &str) -> String {
    format!("guides/{procedure}.jsonld")
}

/// The figures of a page of tables as a file beside it; `ending` is `csv` or `json`.
#[must_use]
pub fn table_file(table: &str, ending: &str) -> String {
    format!("{}.{ending}", table.strip_suffix(".html").unwrap_or(table))
}

/// The files of a part that can be kept: `species/pork`, `courses/first-term`, `rest`.
#[must_use]
pub fn part_files(part: &str) -> String {
    format!("offline/{part}.json")
}

/// A script of the search index; its name carries a mark of its content.
#[must_use]
pub fn search_script(name: &str) -> String {
    format!("search/{name}")
}

/// A file of the theme whose name carries a mark of its content.
#[must_use]
pub fn asset(name: &str, mark: &str) -> String {
    match name.rsplit_once('.') {
        Some((stem, ending)) => format!("assets/{stem}.{mark}.{ending}"),
        None => format!("assets/{name}.{mark}"),
    }
}

/// The mark of a content: the first ten digits of its BLAKE3 digest.
#[must_use]
pub fn mark(bytes: &[u8]) -> String {
    blake3::hash(bytes).to_hex().chars().take(10).collect()
}

/// The link from one page to another; both are paths from the root of the site.
#[must_use]
pub fn link(from: &str, to: &str) -> String {
    let from: Vec<&str> = from.split('/').collect();
    let to: Vec<&str> = to.split('/').collect();
    let folders = from.len().saturating_sub(1).min(to.len().saturating_sub(1));
    let common = from.iter().zip(&to).take(folders).take_while(|(one, other)| one == other).count();
    let mut link = "../".repeat(from.len().saturating_sub(1) - common);
    for (at, part) in to.iter().skip(common).enumerate() {
        if at > 0 {
            link.push('/');
        }
        encode(part, &mut link);
    }
    link
}

/// The link to a piece on the page of its species.
#[must_use]
pub fn link_to_piece(from: &str, species: &str, piece: &str) -> String {
    anchored(link(from, &pieces_of(species)), &format!("piece-{piece}"))
}

/// The link with an anchor behind it; nothing in the anchor can end it.
#[must_use]
pub fn anchored(mut link: String, anchor: &str) -> String {
    link.push('#');
    encode(anchor, &mut link);
    link
}

/// Adds a part of a path with every byte but letters, digits and `-._~` written as `%20`.
fn encode(part: &str, link: &mut String) {
    use std::fmt::Write as _;
    for byte in part.bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b'~') {
            link.push(char::from(byte));
        } else {
            let _ = write!(link, "%{byte:02X}");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn links_are_relative_and_name_their_file() {
        assert_eq!(link("index.html", "guides/pork/loin.html"), "guides/pork/loin.html");
        assert_eq!(link("guides/pork/loin.html", "index.html"), "../../index.html");
        assert_eq!(link("guides/pork/loin.html", "guides/pork/side.html"), "side.html");
        assert_eq!(link("guides/pork/loin.html", "guides/lamb/leg.html"), "../lamb/leg.html");
        assert_eq!(link("tables/index.html", "tables/guides/pork/loin.html"), "guides/pork/loin.html");
        assert_eq!(link("species/pork.html", "species/pork.html"), "pork.html");
    }

    #[test]
    fn names_that_mean_something_in_a_link_are_encoded() {
        assert_eq!(link("index.html", "guides/fisch/Lachs für 2?#1.html"), "guides/fisch/Lachs%20f%C3%BCr%202%3F%231.html");
        assert_eq!(link("index.html", "guides/a/javascript:alert(1).html"), "guides/a/javascript%3Aalert%281%29.html");
    }

    #[test]
    fn anchors_are_encoded() {
        assert_eq!(link_to_piece("guides/pork/loin.html", "pork", "größe"), "../../pieces/species/pork.html#piece-gr%C3%B6%C3%9Fe");
        assert_eq!(anchored(String::new(), "a\"#b"), "#a%22%23b");
        assert_eq!(table_file("tables/guides/pork/loin.html", "csv"), "tables/guides/pork/loin.csv");
    }

    #[test]
    fn kinds_of_pages_never_share_a_path() {
        let odd = ["species/index", "chains/pork", "guides/x"];
        let mut all: Vec<String> = odd
            .iter()
            .flat_map(|id| {
                [
                    guide(id),
                    guide_data(id),
                    card(id),
                    class_sheet(id),
                    guide_table(id),
                    flow_drawing(id),
                    source(id),
                    course(id),
                    free_page(id),
                    bench(id),
                    room(id),
                ]
            })
            .collect();
        all.extend(odd.iter().flat_map(|id| [cold_clock(id), cold_drawing(id)]));
        all.extend(["species", "chains", "guides", "index"].iter().flat_map(|id| {
            [species(id), species_table(id), pieces_of(id), chain_table(id), anatomy(id), cut_map(id), cut_map_drawing(id)]
        }));
        let tables: Vec<String> = all.iter().filter(|path| path.starts_with("tables/")).cloned().collect();
        all.extend(tables.iter().flat_map(|path| [table_file(path, "csv"), table_file(path, "json")]));
        all.extend(["species/index", "species/revisions", "courses/index", "rest"].map(part_files));
        all.extend([HOME, TABLES, PIECES, LIMITS, CHECKS, SITEMAP, FEED, SERVICE_WORKER, MANIFEST, OFFLINE, REVISIONS].map(str::to_owned));
        let count = all.len();
        all.sort();
        all.dedup();
        assert_eq!(all.len(), count);
    }
}
