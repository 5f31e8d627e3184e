//! A guide to work from at the bench and to teach from on a projector: views over the guide and its steps.

use super::frame::{About, paints};
use super::{Views, gone};
use crate::site::context::caution::CautionGroup;
use crate::site::context::guide::Guide;
use crate::site::context::work::WorkPage;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

/// How such a view differs from the others.
pub(super) struct WorkView {
    /// Its word, by which it is known among the views of a guide.
    word: &'static str,
    look: Look,
    scripts: &'static [&'static str],
    /// Where the skip link leads.
    anchor: &'static str,
}

/// One step a screen, for a phone and a glove.
pub(super) const BENCH: WorkView = WorkView {
    word: "bench-view",
    look: Look::Bench,
    scripts: &["bench-place.js", "bench-clock.js", "bench-device.js", "bench.js"],
    anchor: "before",
};

/// One picture after the other, for a projector.
pub(super) const ROOM: WorkView = WorkView { word: "room-view", look: Look::Room, scripts: &["room.js"], anchor: "opening" };

impl Views<'_> {
    /// What `bench.html` and `room.html` get.
    pub(super) fn work(&self, path: &str, at: usize, view: &WorkView) -> Result<WorkPage, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let guide = self.guide_content(path, at, procedure, view.word)?;
        let page = self.frame(About {
            paints: paints(guide.yields.as_ref().map(|yields| &yields.table)),
            path,
            title: format!("{}: {}", self.engine.words.plain(view.word)?, guide.title),
            trail: Vec::new(),
            procedure: Some(procedure),
            look: view.look,
            scripts: view.scripts,
            data: None,
            anchor: view.anchor,
        })?;
        Ok(WorkPage {
            page,
            general: general(&guide),
            gear: self.gear(procedure),
            guide_href: paths::link(path, &paths::guide(&procedure.id)),
            guide,
        })
    }
}

/// Cautions that stand at the head of a guide and beside no step, or not beside all that they are about.
fn general(guide: &Guide) -> Vec<CautionGroup> {
    let beside_steps = |signal: &str| matches!(signal, "danger" | "warning");
    let groups = guide.hurt.iter().filter(|group| !beside_steps(group.signal)).cloned();
    let kept = groups.map(|mut group| {
        group.items.retain(|item| item.every_step && item.steps.len() < guide.steps.len());
        group
    });
    kept.filter(|group| !group.items.is_empty()).collect()
}
