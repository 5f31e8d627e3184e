//! The fixed words of the format, and the built-in ids that an editor offers.
//!
//! Their meaning is the model's, which this room must not see; a test holds these lists against the model's.

/// What becomes of a final piece.
pub const USE: &[&str] = &["retail", "for-cutting", "lean-trim", "fat-trim", "bone", "skin", "offal", "inedible", "risk-material"];
/// The animal's side.
pub const SIDE: &[&str] = &["left", "right", "both"];
/// The state of a revision.
pub const STATE: &[&str] = &["draft", "in-force", "withdrawn"];
/// The unit system of a guidebook.
pub const UNITS: &[&str] = &["metric", "imperial"];
/// The class of product.
pub const PRODUCT: &[&str] = &["red-meat", "offal", "poultry", "rabbit", "game", "fish", "minced", "preparation"];
/// The signal word of a caution.
pub const SIGNAL: &[&str] = &["danger", "warning", "caution", "notice"];
/// What a hazard can do.
pub const HARM: &[&str] = &["death", "lasting", "healing", "property"];
/// How parasites in fish for raw service are dealt with.
pub const PARASITES: &[&str] = &["frozen", "farmed-with-letter"];
/// A kind of anatomical part.
pub const PART_KIND: &[&str] = &["bone", "muscle", "tissue", "gland"];
/// A limit that a shop may set stricter.
pub const LIMIT: &[&str] = &["hold", "room", "time-out", "receiving", "tool-water", "cleaning-interval"];
/// Those of them that are times; the others are temperatures.
pub const LIMIT_OF_TIME: &[&str] = &["time-out", "cleaning-interval"];
/// The signal words that each harm asks for.
pub const SIGNALS_FOR: &[(&str, &[&str])] =
    &[("death", &["danger", "warning"]), ("lasting", &["warning"]), ("healing", &["caution"]), ("property", &["notice"])];
/// Whether prices hold tax.
pub const TAX: &[&str] = &["with", "without"];
/// How the blade is drawn.
pub const DRAWS: &[&str] = &["toward-body"];

/// Names that a piece cannot have.
pub const RESERVED: &[&str] =
    &["start", "loss", "rest", "date", "cutter", "lot", "unit", "shop", "revision", "minutes", "received", "note"];

/// Built-in profiles of limits; there are no others.
pub const PROFILES: &[&str] = &["us-food-code", "us-plant", "eu-853", "uk-retail", "canada", "australia-retail"];
/// Built-in protection; there is no other.
pub const WEAR: &[&str] =
    &["cut-glove", "mesh-gauntlet", "arm-guard", "mesh-apron", "eye-protection", "disposable-gloves", "non-slip-boots"];
/// Built-in species.
pub const SPECIES: &[&str] = &[
    "beef", "veal", "pork", "lamb", "mutton", "goat", "venison", "rabbit", "chicken", "duck", "goose", "turkey", "salmon", "trout", "cod",
    "haddock", "mackerel", "plaice", "sole",
];
/// Built-in tools.
pub const TOOLS: &[&str] = &[
    "boning-knife",
    "breaking-knife",
    "slicing-knife",
    "fillet-knife",
    "cleaver",
    "hand-saw",
    "band-saw",
    "mincer",
    "slicing-machine",
    "tenderizer",
    "meat-hook",
    "hoist",
    "poultry-shears",
    "pliers",
    "tweezers",
    "fish-scaler",
    "twine",
    "trussing-needle",
    "steel",
    "tray",
    "cutting-board",
    "weighing-scale",
    "probe-thermometer",
    "vacuum-packer",
];
/// Built-in cautions.
pub const CAUTIONS: &[&str] = &[
    "protect-holding-hand",
    "blade-away-from-body",
    "apron-when-drawing-in",
    "no-glove-at-moving-blade",
    "saw-guard-and-pusher",
    "isolate-before-cleaning",
    "under-18-powered-machines",
    "keep-cold",
    "separate-species",
    "cover-cut-glove-for-raw-service",
    "risk-material-beef",
    "risk-material-sheep",
    "parasite-freezing",
    "histamine-cold",
    "lift-with-help",
    "bone-splinters",
    "wet-floor",
];
/// Built-in groups of species that share their anatomy; there are no others.
pub const GROUPS: &[&str] = &["cattle", "pig", "sheep", "goat", "deer", "rabbit", "bird", "round-fish", "flat-fish"];
