//! The cut map of a species: its page and its drawing.

use super::frame::About;
use super::{Views, gone};
use crate::figures::Kind;
use crate::figures::cut_map::{CutMap, MapPiece};
use crate::figures::cut_map_drawing::{CutMapDrawing, MapWords};
use crate::site::context::cut_map::{CutMapPage, InsideLink, MapRow, MapWhole};
use crate::site::context::frame::Link;
use crate::site::context::guide::Drawing;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `cut-map.html` gets.
    pub(super) fn cut_map(&self, path: &str, species: &str) -> Result<CutMapPage, ThemeError> {
        let map = self.map_of(species);
        let words = self.map_words()?;
        let drawing = CutMapDrawing::of(&map, &words);
        let name = self.species_name(species);
        let page = self.frame(About {
            path,
            title: self.engine.words.with("cut-map-title", &[("species", name.as_str().into())])?,
            trail: vec![self.home_link(path), Link { name: name.clone(), href: paths::link(path, &paths::species(species)) }],
            procedure: None,
            data: None,
            look: Look::Table,
            paints: paints(&map),
            scripts: &[],
            anchor: "main",
        })?;
        let (width, height) = drawing.size();
        let src = paths::link(path, &paths::cut_map_drawing(species));
        let guide = |at: usize| map.guides.get(at).and_then(|guide| self.guide_link(path, guide.at));
        let order = drawing.order();
        let rows = |whole: Option<usize>| -> Vec<MapRow> {
            let pieces = order.iter().filter_map(|at| map.pieces.get(*at));
            let own = pieces.filter(|piece| piece.figure.as_ref().map(|(of, _)| *of) == whole);
            own.map(|piece| self.map_row(path, &map, piece)).collect()
        };
        let mut wholes: Vec<MapWhole> = map
            .wholes
            .iter()
            .enumerate()
            .map(|(at, whole)| MapWhole {
                name: whole.name.clone(),
                weight: whole.weight.clone(),
                unit: whole.unit,
                rows: rows(Some(at)),
                loss: whole.loss.clone(),
            })
            .collect();
        wholes.push(MapWhole { name: String::new(), weight: String::new(), unit: self.scale.unit(), rows: rows(None), loss: None });
        wholes.retain(|whole| !whole.rows.is_empty());
        Ok(CutMapPage {
            page,
            name,
            parts: (1..)
                .zip(drawing.parts())
                .map(|(number, (_, height))| Drawing {
                    src: paths::anchored(src.clone(), &format!("part-{number}")),
                    width,
                    height: height.ceil() as u32,
                })
                .collect(),
            drawing: Drawing { src, width, height },
            pieces: map.pieces.len(),
            guides: drawing.guides().filter_map(guide).collect(),
            wholes,
        })
    }

    /// The bytes of the drawing.
    pub(super) fn cut_map_drawing(&self, species: &str) -> Result<Vec<u8>, ThemeError> {
        let map = self.map_of(species);
        if map.guides.is_empty() {
            return Err(gone("species"));
        }
        Ok(CutMapDrawing::of(&map, &self.map_words()?).svg().into_bytes())
    }

    fn map_of(&self, species: &str) -> CutMap {
        CutMap::of(self.book, self.analysis, self.procedures_of(species), self.scale)
    }

    fn map_words(&self) -> Result<MapWords, ThemeError> {
        let word = |id: &str| self.engine.words.plain(id).map(str::to_owned);
        let kinds = Kind::of_a_whole().map(|kind| Ok((kind, word(&format!("use-{}", kind.id()))?)));
        Ok(MapWords {
            kinds: kinds.collect::<Result<_, ThemeError>>()?,
            house_cut: word("house-cut")?,
            on_the_way: word("map-on-the-way")?,
        })
    }

    fn map_row(&self, path: &str, map: &CutMap, piece: &MapPiece) -> MapRow {
        let guide = |at: &usize| self.guide_link(path, map.guides.get(*at)?.at);
        let inside = piece.inside.iter().filter_map(|(at, number)| {
            let procedure = self.book.procedures.get(map.guides.get(*at)?.at)?;
            let step = procedure.steps.get(number - 1)?;
            let guide = guide(at)?;
            Some(InsideLink { number: *number, href: paths::anchored(guide.href, &format!("step-{}", step.id)), guide: guide.name })
        });
        let givers = piece.given_by.iter().chain(piece.inside.iter().map(|(at, _)| at));
        let mut from: Vec<Link> = Vec::new();
        for link in givers.filter_map(guide) {
            if !from.contains(&link) {
                from.push(link);
            }
        }
        MapRow {
            piece: Link { name: piece.name.clone(), href: self.piece_href(path, &piece.id) },
            kind: piece.kind.map_or("", Kind::id),
            figure: piece.figure.as_ref().map(|(_, figure)| figure.clone()),
            from,
            to: piece.cut_by.iter().filter_map(guide).collect(),
            inside: inside.collect(),
        }
    }
}

/// The kinds of pieces that the table shows with their hatch.
fn paints(map: &CutMap) -> Vec<&'static str> {
    let mut kinds: Vec<Kind> = map.pieces.iter().filter_map(|piece| piece.kind).collect();
    kinds.extend(map.wholes.iter().filter(|whole| whole.loss.is_some()).map(|_| Kind::Loss));
    kinds.sort_unstable();
    kinds.dedup();
    kinds.into_iter().map(Kind::id).collect()
}
