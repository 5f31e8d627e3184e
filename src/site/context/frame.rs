//! What every page has around its own content.

use std::collections::BTreeMap;

use serde::Serialize;

/// The frame of a page: `page` in every template.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Frame {
    /// The language of the guidebook: `en`.
    pub language: String,
    /// The address of the page; empty when the guidebook states none.
    pub canonical: String,
    /// The same content for machines, as a link; empty when there is none.
    pub data: String,
    /// The link to the manifest for home screens; empty where the script that keeps the site sets it.
    pub manifest: String,
    /// The link to what changed as a feed; empty but on the home page of a site whose address is known.
    pub feed: String,
    /// The title of the document, without that of the site.
    pub title: String,
    /// What the page is about, for lists of pages; at most 120 characters.
    pub description: String,
    /// The title of the guidebook.
    pub site: String,
    /// Who publishes it; may be empty.
    pub publisher: String,
    /// The content security policy.
    pub policy: String,
    /// The style sheet of the page, made small, with the line that every printed sheet carries. Nothing in it can end
    /// its element; passed through `safe`.
    pub style: String,
    /// Rules for paper and wide screens in a file of their own; absent where the page carries them.
    pub style_apart: Option<StyleLink>,
    /// The link to the style of what comes far below, to be set where that begins; empty where the page carries it.
    pub style_below: String,
    /// The link to the icon.
    pub icon: String,
    /// `draft` or `withdrawn` when the page is about a guide in that state; else empty.
    pub state: String,
    /// Id, revision and date in words, for every sheet; empty on pages without a revision.
    pub strip: String,
    /// The way from the home page to this one, itself left out.
    pub trail: Vec<Link>,
    /// Links to the scripts of the page.
    pub scripts: Vec<String>,
    /// Links to the assets that a theme has of its own, by their name: `{{ page.assets["logo.png"] }}`.
    pub assets: BTreeMap<String, String>,
    /// Kinds of pieces whose hatches the page needs, by id: `bone`.
    pub paints: Vec<&'static str>,
    /// The folder of all pieces, with its slash; behind it stands what the filter `piece_anchor` makes of a piece.
    pub pieces: String,
    /// The anchor of the main content.
    pub main_anchor: &'static str,
}

/// A style in a file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct StyleLink {
    /// Relative to the page.
    pub href: String,
    /// The media for which it is loaded.
    pub media: String,
}

/// A link with its words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Link {
    /// The words.
    pub name: String,
    /// Relative to the page; empty where there is nothing to lead to.
    pub href: String,
}
