//! Published item numbers, names and weights of cuts, and what each comes to beside the demo's cut lists. Figures and
//! names only, each with its source; the checks stand in `outside_cuts.rs`.

/// Where a list was published, and how it was read.
pub(crate) struct Source {
    pub(crate) title: &'static str,
    pub(crate) publisher: &'static str,
    /// As the page says, or "undated".
    pub(crate) year: &'static str,
    pub(crate) section: &'static str,
    /// `read`, `secondary` or `memory`.
    pub(crate) tag: &'static str,
}

const BEEF_CHUCK: Source = Source {
    title: "Bovine myology, list of beef chuck items",
    publisher: "University of Nebraska",
    year: "undated",
    section: "item numbers and names of the chuck",
    tag: "read",
};
const PORK_LEG: Source = Source {
    title: "Porcine myology, item 401",
    publisher: "University of Nebraska",
    year: "undated",
    section: "401 Pork Leg (Fresh Ham), weights and fat under the skin edge",
    tag: "read",
};
const PORK_NAMES: Source = Source {
    title: "Wholesale Meat Specifications, Pork",
    publisher: "Canadian Food Inspection Agency",
    year: "undated",
    section: "item numbers and names, said to be those of the IMPS",
    tag: "read",
};
/// The names were read, the numbers beside them are from memory.
const PORK_NUMBERS: Source = Source { section: "names; their item numbers from memory", tag: "memory", ..PORK_NAMES };
const PORK_RIBS: Source = Source {
    title: "422 Pork Loin, Back Ribs",
    publisher: "Texas A&M University, Meat Science",
    year: "undated",
    section: "name of the item",
    tag: "read",
};
const PORK_RANGES: Source = Source {
    title: "Institutional Meat Purchase Specifications, Fresh Pork, older edition",
    publisher: "USDA Agricultural Marketing Service",
    year: "undated copy",
    section: "weight ranges A to C",
    tag: "secondary",
};
const BEEF_RANGES: Source = Source {
    title: "The Meat Buyer's Guide",
    publisher: "North American Meat Processors Association",
    year: "undated copy",
    section: "index of beef items, weight ranges A to D; the copy ends after 112",
    tag: "secondary",
};

/// What the published name comes to in the cut list.
pub(crate) enum Named {
    /// It stands there, as the name or as another name.
    Same,
    /// It does not, for this reason.
    Otherwise(&'static str),
}

/// An item number, its published name, and the piece of the demo that carries the number.
pub(crate) struct Name {
    pub(crate) item: &'static str,
    pub(crate) name: &'static str,
    pub(crate) piece: &'static str,
    pub(crate) named: Named,
    pub(crate) source: Source,
}

const fn same(item: &'static str, name: &'static str, piece: &'static str, source: Source) -> Name {
    Name { item, name, piece, named: Named::Same, source }
}

const fn otherwise(item: &'static str, name: &'static str, piece: &'static str, why: &'static str, source: Source) -> Name {
    Name { item, name, piece, named: Named::Otherwise(why), source }
}

pub(crate) const NAMES: [Name; 15] = [
    otherwise("113", "square-cut chuck", "beef-chuck-bone-in", "the house adds that the bone is in", BEEF_CHUCK),
    same("114", "shoulder clod", "beef-clod", BEEF_CHUCK),
    otherwise("114D", "top blade roast", "beef-flat-iron", "a roast with the sheet in it; the house takes the sheet out", BEEF_CHUCK),
    otherwise("114E", "arm roast", "beef-shoulder-heart", "the house names the muscle group, not the roast", BEEF_CHUCK),
    same("116A", "chuck roll", "beef-chuck-roll", BEEF_CHUCK),
    same("116B", "chuck tender", "beef-chuck-tender", BEEF_CHUCK),
    same("401", "fresh ham", "pork-leg", PORK_LEG),
    same("405", "shoulder picnic", "pork-picnic", PORK_RANGES),
    same("406", "boston butt", "pork-butt", PORK_NAMES),
    same("408", "belly", "pork-belly", PORK_NAMES),
    otherwise("410", "loin", "pork-loin-bone-in", "the house tells it apart from the boneless loin", PORK_NAMES),
    same("413", "boneless loin", "boneless-loin", PORK_NAMES),
    same("415", "tenderloin", "pork-tenderloin", PORK_NUMBERS),
    same("416", "spareribs", "pork-spareribs", PORK_NUMBERS),
    same("422", "loin back ribs", "pork-back-ribs", PORK_RIBS),
];

/// How a published range may be held against the demo.
pub(crate) enum Held {
    /// The same cut: so many pieces together weigh what one item weighs. `beyond` says what lies outside of the published range.
    Overlaps { piece: &'static str, pieces: i128, beyond: Option<&'static str> },
    /// The item holds the piece, so the heaviest piece is lighter than the lightest item.
    Holds { piece: &'static str },
    /// Not the same cut, for this reason; no piece of the demo may carry the number.
    Not(&'static str),
}

/// Published weights of one item in pounds, class by class; a class without an upper end is "and up".
pub(crate) struct Weights {
    pub(crate) item: &'static str,
    pub(crate) name: &'static str,
    pub(crate) classes: &'static [(u32, Option<u32>)],
    pub(crate) held: Held,
    pub(crate) source: Source,
}

const fn weights(item: &'static str, name: &'static str, classes: &'static [(u32, Option<u32>)], held: Held, source: Source) -> Weights {
    Weights { item, name, classes, held, source }
}

const NO_RIB: Held = Held::Not("the demo has no guide to the rib");
const ROAST_READY: [(u32, Option<u32>); 4] = [(14, Some(16)), (16, Some(19)), (19, Some(22)), (22, None)];
const BONELESS_RIB: [(u32, Option<u32>); 4] = [(11, Some(13)), (13, Some(16)), (16, Some(19)), (19, None)];

pub(crate) const BEEF_WEIGHTS: [Weights; 12] = [
    weights(
        "100",
        "Carcass",
        &[(500, Some(600)), (600, Some(700)), (700, Some(800)), (800, None)],
        Held::Holds { piece: "beef-chuck-bone-in" },
        BEEF_RANGES,
    ),
    weights(
        "101",
        "Side",
        &[(250, Some(300)), (300, Some(350)), (350, Some(400)), (400, None)],
        Held::Holds { piece: "beef-chuck-bone-in" },
        BEEF_RANGES,
    ),
    weights(
        "102",
        "Forequarter",
        &[(131, Some(157)), (157, Some(183)), (183, Some(400)), (400, None)],
        Held::Holds { piece: "beef-chuck-bone-in" },
        BEEF_RANGES,
    ),
    weights("103", "Rib, Primal", &[(24, Some(28)), (28, Some(33)), (33, Some(38)), (38, None)], NO_RIB, BEEF_RANGES),
    weights("107", "Rib, Oven-Prepared", &[(17, Some(19)), (19, Some(23)), (23, Some(26)), (26, None)], NO_RIB, BEEF_RANGES),
    weights("109", "Rib, Roast-Ready", &ROAST_READY, NO_RIB, BEEF_RANGES),
    weights("109A", "Rib, Roast-Ready, Special", &ROAST_READY, NO_RIB, BEEF_RANGES),
    weights("109B", "Rib, Blade Meat", &[(3, None)], NO_RIB, BEEF_RANGES),
    weights(
        "109D",
        "Rib, Roast-Ready, Cover Off, Short-Cut",
        &[(12, Some(14)), (14, Some(17)), (17, Some(20)), (20, None)],
        NO_RIB,
        BEEF_RANGES,
    ),
    weights(
        "109E",
        "Rib, Ribeye Roll, Lip-On, Bone In",
        &[(11, Some(13)), (13, Some(16)), (16, Some(19)), (20, None)],
        NO_RIB,
        BEEF_RANGES,
    ),
    weights("110", "Rib, Roast-Ready, Boneless", &BONELESS_RIB, NO_RIB, BEEF_RANGES),
    weights("112", "Rib, Ribeye Roll", &[(5, Some(6)), (6, Some(8)), (8, Some(10)), (10, None)], NO_RIB, BEEF_RANGES),
];

/// The leaf fat is still in the house's side; that it is out of the packer-style carcass is from memory.
pub(crate) const PORK_WEIGHTS: [Weights; 7] = [
    weights(
        "400",
        "Carcass, packer style",
        &[(120, Some(150)), (150, Some(180)), (180, Some(210))],
        Held::Overlaps { piece: "pork-side", pieces: 2, beyond: None },
        PORK_RANGES,
    ),
    weights(
        "401",
        "Pork Leg (Fresh Ham)",
        &[(14, Some(17)), (17, Some(20)), (20, Some(26)), (26, None)],
        Held::Overlaps { piece: "pork-leg", pieces: 1, beyond: None },
        PORK_LEG,
    ),
    weights(
        "402B",
        "Ham, Boned and Tied",
        &[(6, Some(8)), (8, Some(10)), (10, Some(12))],
        Held::Not("the demo does not bone the leg"),
        PORK_RANGES,
    ),
    weights(
        "405",
        "Shoulder Picnic",
        &[(4, Some(6)), (6, Some(8)), (8, Some(12))],
        Held::Overlaps { piece: "pork-picnic", pieces: 1, beyond: Some("heavier sides than those of the older edition") },
        PORK_RANGES,
    ),
    weights(
        "410",
        "Loin",
        &[(10, Some(14)), (14, Some(17)), (17, Some(20))],
        Held::Overlaps { piece: "pork-loin-bone-in", pieces: 1, beyond: Some("heavier sides than those of the older edition") },
        PORK_RANGES,
    ),
    weights(
        "412",
        "Loin, Center-cut",
        &[(4, Some(6)), (6, Some(8)), (8, Some(10))],
        Held::Not("eight ribs at most, blade end off; the demo's centre keeps ten to fourteen and goes straight on to boning"),
        PORK_RANGES,
    ),
    weights(
        "413A",
        "Loin, Boned and Tied",
        &[(6, Some(8)), (8, Some(10)), (10, Some(12))],
        Held::Not("both ends on and tied; the house's boneless loin (413) leaves the sirloin end off"),
        PORK_RANGES,
    ),
];
