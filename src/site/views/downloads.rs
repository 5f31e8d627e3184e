//! The figures of a page of tables as files for other programs: the same numbers as `tally` prints.

use super::Views;
use crate::analysis::chain::Chain;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::figures::answer;
use crate::figures::numbers::{NO_BREAK, fixed};
use crate::site::context::downloads::Download;
use crate::site::page::{TableFile, TableOf};
use crate::site::paths;
use crate::site::theme_error::ThemeError;

/// Bytes in a kilobyte (IEC 80000-13, IEC, 2008: kilo is 1000).
const KILO: u64 = 1000;
/// Bytes in a megabyte.
const MEGA: u64 = KILO * KILO;

impl Views<'_> {
    /// The bytes of one file.
    pub(super) fn table_file(&self, table: &TableOf, file: TableFile) -> Result<Vec<u8>, ThemeError> {
        let (procedures, chains) = self.figures_of(table);
        let text = match file {
            TableFile::Csv => answer::csv(&procedures, &chains).map_err(ThemeError::new)?,
            TableFile::Json => answer::json(&procedures, &chains),
        };
        Ok(text.into_bytes())
    }

    /// What a page of tables offers.
    pub(super) fn downloads(&self, page: &str, table: &TableOf) -> Result<Vec<Download>, ThemeError> {
        let files = TableFile::ALL.iter().map(|file| {
            let bytes = u64::try_from(self.table_file(table, *file)?.len()).unwrap_or(u64::MAX);
            Ok(Download { kind: file.name(), href: paths::link(page, &paths::table_file(page, file.ending())), size: size(bytes) })
        });
        files.collect()
    }

    /// The procedures and chains of a page of tables.
    fn figures_of(&self, table: &TableOf) -> (Vec<&ProcedureAnalysis>, Vec<&Chain>) {
        let procedure = |at: usize| self.analysis.procedures.get(at);
        let chain = |at: usize| self.analysis.chains.get(at);
        match table {
            TableOf::Guide(at) => (procedure(*at).into_iter().collect(), Vec::new()),
            TableOf::Species(species) => {
                (self.procedures_of(species).filter_map(procedure).collect(), self.chains_of(species).filter_map(chain).collect())
            }
            TableOf::Chain(at) => (Vec::new(), chain(*at).into_iter().collect()),
        }
    }
}

/// A size as it is read: `640 bytes`, `2.1 kB`, `12.0 MB`.
pub(super) fn size(bytes: u64) -> String {
    let in_units = |unit: u64, name: &str| format!("{}{NO_BREAK}{name}", fixed(bytes as f64 / unit as f64, 1));
    match bytes {
        0..KILO => format!("{bytes}{NO_BREAK}bytes"),
        KILO..MEGA => in_units(KILO, "kB"),
        MEGA.. => in_units(MEGA, "MB"),
    }
}

#[cfg(test)]
mod tests {
    use super::size;

    #[test]
    fn sizes_are_read_at_a_glance() {
        assert_eq!(size(640), "640\u{a0}bytes");
        assert_eq!(size(2_149), "2.1\u{a0}kB");
        assert_eq!(size(12_000), "12.0\u{a0}kB");
        assert_eq!(size(2_117_267), "2.1\u{a0}MB");
    }
}
