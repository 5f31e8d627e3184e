//! Files in, documents out: each value with its place, each mistake as a finding.
//!
//! The walk over folders is `cli`'s; this room gets bytes and paths. It knows what keys a document has and of what
//! kind their values are, and nothing of what they mean: quantities, ids and references are the model's and the
//! checks'. Reading never fails as a whole: a broken file yields findings, and the rest is read all the same.

pub mod bytes;
pub mod decode;
pub mod documents;
pub mod field;
mod layout;
mod load;
mod outline;
mod picture;
pub mod schema;
pub mod table;
mod theme;
mod traps;
pub mod yaml;

use std::collections::{BTreeMap, BTreeSet};

use self::documents::guidebook::Guidebook;
use self::documents::others::{AnatomyEntry, Caution, Course, Cut, Prices, Tool};
use self::documents::procedure::Procedure;
use self::field::Entries;
pub use self::load::load;
pub use self::picture::{PictureFile, PictureKind};
pub use self::table::{Cell, Table};
pub use self::theme::ThemeFile;
use crate::finding::{FileId, Finding, SourceMap};

/// What the walk found at a path.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Entry {
    /// A file with these bytes.
    File(Vec<u8>),
    /// A link to something outside of the guidebook.
    LinkOutside {
        /// Where it leads.
        target: String,
    },
    /// Something that could not be read.
    Unreadable {
        /// Why, in words of the system.
        reason: String,
    },
    /// A file too large to be read.
    TooLarge {
        /// How large it is.
        bytes: u64,
    },
}

/// Paths relative to the guidebook, with forward slashes, and what was found there.
pub type Files = BTreeMap<String, Entry>;

/// A document that was read.
#[derive(Debug, Clone)]
pub struct Document<T> {
    /// Its file.
    pub file: FileId,
    /// Its path without the ending: `pork/loin-boneless`, `cuts/pork`, `cutting-tests/pork/loin-boneless`.
    pub id: String,
    /// What stands in it.
    pub value: T,
}

/// All documents of a guidebook, each list in the order of the paths.
#[derive(Debug, Clone, Default)]
pub struct Documents {
    /// The texts, so that places can be shown.
    pub sources: SourceMap,
    /// `guidebook.yaml`.
    pub guidebook: Option<Document<Guidebook>>,
    /// `<species>/<name>.yaml`.
    pub procedures: Vec<Document<Procedure>>,
    /// `cuts/<species>.yaml`.
    pub cuts: Vec<Document<Entries<Cut>>>,
    /// `anatomy/<species>.yaml`.
    pub anatomy: Vec<Document<Entries<AnatomyEntry>>>,
    /// `cautions.yaml`.
    pub cautions: Option<Document<Entries<Caution>>>,
    /// `tools.yaml`.
    pub tools: Option<Document<Entries<Tool>>>,
    /// `courses/<name>.yaml`.
    pub courses: Vec<Document<Course>>,
    /// `prices.yaml`.
    pub prices: Option<Document<Prices>>,
    /// `cutting-tests/<species>/<name>.csv`.
    pub cutting_tests: Vec<Document<Table>>,
    /// `pages/*.md`: Markdown as it stands.
    pub pages: Vec<Document<String>>,
    /// `pictures/`, by path.
    pub pictures: BTreeMap<String, PictureFile>,
    /// Paths in `pictures/` of a kind that no browser shows.
    pub unshown: Vec<String>,
    /// The files of the guidebook's own theme, by path inside its folder.
    pub theme: BTreeMap<String, ThemeFile>,
    /// All folders of the guidebook that could be a theme: they hold a file where themes hold one.
    pub theme_folders: BTreeSet<String>,
    /// All other folders of the guidebook.
    pub other_folders: BTreeSet<String>,
    /// Paths of documents and folders that exist but could not be read, so that references to them stay silent. A
    /// procedure that ends in `.yml` stands here under the path that it should have.
    pub broken: Vec<String>,
    /// Paths of translations.
    pub translations: Vec<String>,
}

impl Documents {
    /// True when `path`, or a folder that holds it, exists but could not be read.
    #[must_use]
    pub fn is_broken(&self, path: &str) -> bool {
        let holds = |broken: &String| path.strip_prefix(broken.as_str()).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'));
        self.broken.iter().any(holds)
    }
}

/// Reads a guidebook from texts, for tests: `[("guidebook.yaml", "title: …"), …]`.
#[must_use]
pub fn load_texts(texts: &[(&str, &str)]) -> (Documents, Vec<Finding>) {
    load(texts.iter().map(|(path, text)| ((*path).to_owned(), Entry::File(text.as_bytes().to_vec()))).collect())
}
