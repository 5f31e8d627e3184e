//! The page of what is kept on a device.

use super::Views;
use super::downloads::size;
use super::frame::About;
use crate::site::context::kept::{OfflinePage, OfflinePart};
use crate::site::offline::{Listing, Part, all_parts};
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `offline.html` gets.
    pub(super) fn kept(&self, path: &str, listing: &Listing<'_>) -> Result<OfflinePage, ThemeError> {
        let page = self.frame(About {
            path,
            title: self.engine.words.plain("offline-title")?.to_owned(),
            trail: vec![self.home_link(path)],
            procedure: None,
            paints: Vec::new(),
            look: Look::Offline,
            scripts: &["offline-page.js"],
            data: None,
            anchor: "main",
        })?;
        let (mut species, mut courses) = (Vec::new(), Vec::new());
        let mut rest = self.part(&Part::Rest, listing);
        for part in all_parts(self.book) {
            let told = self.part(&part, listing);
            match part {
                Part::Species(_) => species.push(told),
                Part::Course(_) => courses.push(told),
                Part::Rest => rest = told,
            }
        }
        Ok(OfflinePage {
            page,
            all: listing.is_kept_at_once(),
            size: size(listing.whole().bytes),
            shell: size(listing.sum_of_shell().bytes),
            species,
            courses,
            rest,
        })
    }

    fn part(&self, part: &Part, listing: &Listing<'_>) -> OfflinePart {
        let name = match part {
            Part::Species(species) => self.species_name(species),
            Part::Course(at) => self
                .book
                .courses
                .get(*at)
                .map_or_else(String::new, |course| course.title.value().cloned().unwrap_or_else(|| course.id.clone())),
            Part::Rest => String::new(),
        };
        OfflinePart { id: part.id(self.book), name, guides: self.parts.guides(part), size: size(listing.sum_of(part).bytes) }
    }
}
