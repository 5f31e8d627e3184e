//! The web application manifest (W3C, Web Application Manifest): what the site is called and looks like when a reader
//! puts it on the home screen. All its addresses are relative, so the site can lie in any folder of a host.

use serde::Serialize;

use super::Views;
use crate::site::paths;
use crate::site::theme_error::ThemeError;

/// So many letters stand below an icon (common practice; a launcher cuts off the rest).
const SHORT: usize = 14;
/// The paper of the light scheme, as in `styles/base.css`.
const PAPER: &str = "#fbfaf7";
/// Icons of the theme: name, size in pixels, kind. All fill their square and keep what matters in its middle, so a
/// launcher may cut them to its own shape.
const ICONS: &[(&str, &str, &str)] =
    &[("icon.svg", "any", "image/svg+xml"), ("icon-192.png", "192x192", "image/png"), ("icon-512.png", "512x512", "image/png")];

#[derive(Serialize)]
struct Manifest {
    name: String,
    short_name: String,
    lang: String,
    start_url: &'static str,
    scope: &'static str,
    display: &'static str,
    background_color: &'static str,
    theme_color: &'static str,
    icons: Vec<Icon>,
}

#[derive(Serialize)]
struct Icon {
    src: String,
    sizes: &'static str,
    #[serde(rename = "type")]
    kind: &'static str,
    purpose: &'static str,
}

impl Views<'_> {
    /// The manifest as JSON.
    pub(super) fn manifest(&self, path: &str) -> Result<Vec<u8>, ThemeError> {
        let name = self.book.title.value().cloned().unwrap_or_default();
        let icons = ICONS.iter().filter_map(|(name, sizes, kind)| {
            let (asset, _) = self.engine.assets.get(*name)?;
            Some(Icon { src: paths::link(path, asset), sizes, kind, purpose: "any maskable" })
        });
        let manifest = Manifest {
            short_name: short(&name),
            name,
            lang: self.book.language.value().cloned().unwrap_or_else(|| "en".to_owned()),
            start_url: paths::HOME,
            scope: "./",
            display: "standalone",
            background_color: PAPER,
            theme_color: PAPER,
            icons: icons.collect(),
        };
        let mut text = serde_json::to_string_pretty(&manifest).map_err(|error| ThemeError::new(error.to_string()))?;
        text.push('\n');
        Ok(text.into_bytes())
    }
}

/// As many whole words of a name as fit below an icon; the first word whole, however long.
fn short(name: &str) -> String {
    let mut short = String::new();
    for word in name.split_whitespace() {
        if !short.is_empty() && short.chars().count() + 1 + word.chars().count() > SHORT {
            break;
        }
        if !short.is_empty() {
            short.push(' ');
        }
        short.push_str(word);
    }
    short
}

#[cfg(test)]
mod tests {
    use super::short;

    #[test]
    fn a_name_below_an_icon_is_whole_words() {
        assert_eq!(short("Cutting guides of the Fennick Yard"), "Cutting guides");
        assert_eq!(short("Zerlegeanleitungen"), "Zerlegeanleitungen");
        assert_eq!(short("Rump"), "Rump");
        assert_eq!(short(""), "");
    }
}
