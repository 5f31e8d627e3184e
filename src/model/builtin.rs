//! What ships inside the program: species, tools, protection, cautions and the names of limit profiles.
//!
//! Read once from `src/reference/*.yaml`, which are embedded; a test holds that each entry can be read.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use super::words::{Harm, Product, Signal};

/// All built-in entries by id.
#[derive(Debug, Clone, Default)]
pub struct Builtin {
    /// Species.
    pub species: BTreeMap<String, BuiltinSpecies>,
    /// Tools.
    pub tools: BTreeMap<String, BuiltinTool>,
    /// Protection.
    pub wear: BTreeMap<String, BuiltinWear>,
    /// Cautions.
    pub cautions: BTreeMap<String, BuiltinCaution>,
    /// Limit profiles.
    pub profiles: BTreeMap<String, BuiltinProfile>,
}

impl Builtin {
    /// The entries that ship inside the program.
    #[must_use]
    pub fn get() -> &'static Self {
        static BUILTIN: LazyLock<Builtin> = LazyLock::new(|| super::lower::builtin().0);
        &BUILTIN
    }
}

/// A species.
#[derive(Debug, Clone)]
pub struct BuiltinSpecies {
    /// What it is called.
    pub name: String,
    /// The class of product of its meat.
    pub product: Product,
    /// The group whose anatomy it shares: `pig`, `bird`, `round-fish`.
    pub group: String,
}

/// A tool.
#[derive(Debug, Clone)]
pub struct BuiltinTool {
    /// What it is called.
    pub name: String,
    /// What sort of tool it is: `knife`, `hand-saw`, `powered-saw`, `powered-machine`, ….
    pub kind: String,
    /// What it is for.
    pub does: String,
}

impl BuiltinTool {
    /// True when it makes saw dust.
    #[must_use]
    pub fn saws(&self) -> bool {
        self.kind == "hand-saw" || self.kind == "powered-saw"
    }
}

/// Protection that is worn.
#[derive(Debug, Clone)]
pub struct BuiltinWear {
    /// What it is called.
    pub name: String,
    /// What it protects from.
    pub about: String,
    /// True for every kind of glove.
    pub glove: bool,
}

/// A caution in its four parts.
#[derive(Debug, Clone)]
pub struct BuiltinCaution {
    /// A short name.
    pub name: String,
    /// The signal word.
    pub signal: Signal,
    /// What can hurt.
    pub hazard: String,
    /// What it does.
    pub consequence: String,
    /// What to do.
    pub avoid: String,
    /// What the hazard can do.
    pub harm: Harm,
    /// The ISO 7010 code and what the sign means, when there is one.
    pub sign: Option<(String, String)>,
    /// Where it comes from, one text a source.
    pub sources: Vec<String>,
    /// How the source was verified: `read`, `adopted`, `secondary`, `memory` or `practice`.
    pub verified: String,
}

/// A profile of limits.
#[derive(Debug, Clone)]
pub struct BuiltinProfile {
    /// What it is called.
    pub name: String,
    /// Where it holds.
    pub jurisdiction: String,
    /// What it covers and what not.
    pub about: String,
    /// The text from which the figures were taken.
    pub edition: String,
}
