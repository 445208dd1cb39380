//! The words that raise an alarm, by kind (a list of ours, of common practice in complaint desks). All are compared by their
//! stems.

use super::answer::AlarmKind;

/// Words of one meaning that raise an alarm.
#[derive(Debug, Clone, Copy)]
pub(super) struct AlarmWord {
    pub(super) words: &'static [&'static str],
    /// Words that give them another meaning: a plastic range.
    pub(super) alike: &'static [&'static str],
    /// Words that do so only right behind them: a chemical taste is of too much soda, too.
    pub(super) behind: &'static [&'static str],
    /// Words of which one must stand beside them; may be empty.
    pub(super) beside: &'static [&'static str],
    /// Whether they must be told as a find: wires cut dough.
    pub(super) found: bool,
    /// Whether packs and wrappings are made of it.
    pub(super) is_material: bool,
}

const fn plain(words: &'static [&'static str]) -> AlarmWord {
    AlarmWord { words, alike: &[], behind: &[], beside: &[], found: false, is_material: false }
}

const fn unless(words: &'static [&'static str], alike: &'static [&'static str]) -> AlarmWord {
    AlarmWord { alike, ..plain(words) }
}

const fn beside(words: &'static [&'static str], beside: &'static [&'static str]) -> AlarmWord {
    AlarmWord { beside, ..plain(words) }
}

const fn found(words: &'static [&'static str], alike: &'static [&'static str]) -> AlarmWord {
    AlarmWord { alike, found: true, ..plain(words) }
}

const fn material(words: &'static [&'static str], alike: &'static [&'static str]) -> AlarmWord {
    AlarmWord { alike, is_material: true, ..plain(words) }
}

/// The words by kind, in the order in which they are told.
pub(super) const ALARMS: &[(AlarmKind, &[AlarmWord])] = &[
    (AlarmKind::IllnessOrInjury, ILLNESS_OR_INJURY),
    (AlarmKind::AllergicReaction, ALLERGIC_REACTION),
    (AlarmKind::ForeignMatter, FOREIGN_MATTER),
    (AlarmKind::ChemicalTaint, CHEMICAL_TAINT),
];

const FOREIGN_MATTER: &[AlarmWord] = &[
    unless(&["foreign"], &["taste", "flavour", "flavor", "smell", "odour", "odor", "aroma"]),
    material(
        &["metal"],
        &[
            "taste",
            "aftertaste",
            "flavour",
            "flavor",
            "tin",
            "pan",
            "sheet",
            "belt",
            "band",
            "mould",
            "surface",
            "spatula",
            "bowl",
            "rack",
        ],
    ),
    material(&["glass"], &["transition", "temperature", "state", "point", "bowl", "water", "milk"]),
    material(
        &["plastic"],
        &[
            "range",
            "dough",
            "fat",
            "shortening",
            "margarine",
            "butter",
            "lard",
            "mass",
            "paste",
            "state",
            "flow",
            "consistency",
            "viscosity",
            "deformation",
            "behaviour",
            "too",
            "more",
            "less",
            "container",
            "bowl",
            "scraper",
        ],
    ),
    unless(
        &["stone", "pebble"],
        &["oven", "ground", "mill", "milled", "bake", "hearth", "deck", "floor", "hard", "cold", "turn"],
    ),
    unless(&["hair"], &["crack", "line", "net", "fissure", "cysteine"]),
    plain(&[
        "insect",
        "beetle",
        "weevil",
        "maggot",
        "larva",
        "larvae",
        "cockroach",
        "moth",
        "mite",
        "bug",
        "worm",
        "spider",
    ]),
    plain(&["infested", "infestation", "rodent", "mouse", "mice", "rat", "excrement", "faeces"]),
    plain(&["splinter", "shard", "cigarette", "bandage", "fingernail", "eggshell", "nutshell"]),
    unless(&["rust"], &["colour", "color", "coloured", "colored", "brown", "red"]),
    found(&["needle"], &["crystal", "sandy", "sugar"]),
    unless(&["bone"], &["dry"]),
    found(
        &["wire"],
        &[
            "cut", "cutter", "cutting", "drag", "mark", "rack", "mesh", "belt", "band", "harp", "whip", "whisk",
            "frame", "speed", "stroke", "tension",
        ],
    ),
    found(
        &["fly", "ant", "screw", "bolt", "nail", "blade", "knife", "staple", "coin", "button", "glove", "plaster"],
        &[],
    ),
    found(&["wood", "paper", "cardboard", "rubber", "bristle", "cloth", "paint"], &["taste", "flavour", "flavor"]),
    AlarmWord { found: true, ..beside(&["shell"], &["egg", "nut", "almond", "hazelnut", "walnut"]) },
];

const ILLNESS_OR_INJURY: &[AlarmWord] = &[
    plain(&[
        "vomit",
        "nausea",
        "nauseous",
        "nauseated",
        "diarrhoea",
        "diarrhea",
        "stomach",
        "tummy",
        "fever",
        "unwell",
    ]),
    plain(&[
        "ambulance",
        "dentist",
        "doctor",
        "hospitalised",
        "hospitalized",
        "injured",
        "injury",
        "poison",
        "poisonous",
    ]),
    plain(&["salmonella", "listeria", "botulism", "death"]),
    unless(&["hospital"], &["kitchen", "canteen", "order", "contract"]),
    unless(&["sick", "ill"], &["dough", "yeast", "starter", "sponge"]),
    unless(&["choke"], &["burner", "nozzle", "pump", "depositor", "valve", "line", "pipe", "filter", "duct", "hose"]),
    unless(&["blood"], &["orange"]),
    AlarmWord {
        alike: &["stick", "cling"],
        ..beside(
            &["tooth", "teeth"],
            &["break", "broke", "broken", "chip", "crack", "lost", "loose", "damage", "knock", "hurt"],
        )
    },
    beside(&["cut", "bleed"], &["lip", "tongue", "mouth", "finger"]),
    AlarmWord {
        alike: &["taste", "aftertaste", "flavour", "flavor", "on"],
        ..beside(&["burn", "burnt", "scald"], &["mouth", "tongue", "lip", "skin"])
    },
    beside(&["die"], &["child", "baby", "man", "woman", "person", "people", "customer", "eat", "eating", "he", "she"]),
    beside(&["throw", "threw"], &["up"]),
];

const ALLERGIC_REACTION: &[AlarmWord] = &[
    unless(
        &["allergy", "allergic"],
        &["label", "advice", "statement", "declaration", "information", "free", "friendly", "card", "list", "warning"],
    ),
    plain(&["anaphylaxis", "anaphylactic", "epipen", "hives", "rash", "undeclared"]),
    beside(
        &["allergen", "gluten"],
        &[
            "undeclared",
            "trace",
            "positive",
            "detected",
            "contaminated",
            "contamination",
            "missing",
            "reaction",
            "reacted",
        ],
    ),
    beside(&["coeliac", "celiac"], &["reaction", "reacted"]),
    beside(&["swell", "swollen"], &["lip", "throat", "tongue", "face", "eye"]),
    beside(&["throat"], &["closed", "closing", "itch", "itchy", "tight"]),
    unless(&["breathe"], &["dough", "crust", "film", "bag", "pack", "product", "bread"]),
];

const CHEMICAL_TAINT: &[AlarmWord] = &[
    AlarmWord {
        behind: &[
            "leaven",
            "leavening",
            "leavener",
            "raising",
            "aerated",
            "aeration",
            "improver",
            "analysis",
            "oxidation",
            "oxidant",
            "development",
            "composition",
            "preservative",
            "taste",
            "aftertaste",
            "flavour",
            "flavor",
        ],
        ..plain(&["chemical"])
    },
    plain(&["detergent", "disinfectant", "sanitiser", "sanitizer", "diesel", "petrol", "gasoline", "kerosene"]),
    plain(&["pesticide", "insecticide", "fumigant"]),
    unless(&["bleach", "chlorine"], &["flour", "cake"]),
    unless(&["solvent"], &["retention", "capacity"]),
    beside(&["lubricant", "paint", "ink", "perfume", "hydraulic"], TAINTED),
    beside(&["engine", "mineral"], &["oil"]),
    AlarmWord { alike: &["spray", "sprayer", "oiling"], ..beside(&["machine"], &["oil"]) },
    beside(&["cleaning"], &["agent", "fluid", "liquid", "residue", "solution"]),
];

/// Words for what has taken up a chemical.
const TAINTED: &[&str] =
    &["smell", "taste", "odour", "odor", "stink", "reek", "flavour", "flavor", "aroma", "contaminated", "found"];

/// Words that look like those above by their stems.
pub(super) const UNLIKE: &[&str] = &["metallic", "sickly", "bleached", "bleaching"];

/// Words for a find.
pub(super) const FOUND: &[&str] =
    &["found", "find", "contain", "fragment", "particle", "sliver", "foreign", "swallowed", "bite", "bitten"];

/// Words for a part of something, before "of".
pub(super) const PIECES: &[&str] = &["bit", "bits", "chip", "chips", "piece", "pieces", "fragments", "lump", "strip"];

/// Words before a comparison: "hard as stone".
pub(super) const COMPARING: &[&str] = &["as", "like"];

/// Words over which a denial reaches: "no sign of metal".
pub(super) const OF_NOTHING: &[&str] = &[
    "sign", "trace", "evidence", "visible", "piece", "child", "children", "person", "people", "customer", "report",
    "case", "reaction",
];

/// Stems of what is worse when denied: "could not breathe".
pub(super) const UNDENIED: &[&str] = &["breath"];
