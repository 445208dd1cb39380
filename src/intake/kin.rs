//! Words of plain speech that say the same, and words that say nothing by themselves.
//!
//! The rules hold the words of the trade for each symptom; here stand only words that people exchange for each other
//! whatever the symptom (common practice; American and British spellings), and what German, Spanish and French call dough
//! and oven, since values are often noted so. All are compared by their stems.

/// Words that people use for one another. A word may stand in several rows.
pub(super) const KIN: &[&[&str]] = &[
    &["aroma", "odor", "odour", "scent", "smell", "stink"],
    &["ashen", "gray", "grey"],
    &["apart", "pieces"],
    &["base", "bottom", "sole", "underneath", "underside"],
    &["beneath", "below", "under", "underneath"],
    &["big", "huge", "large", "oversized"],
    &["biscuit", "cookie"],
    &["bitter", "acrid"],
    &["blister", "bubble", "pimple"],
    &["black", "brown", "burn", "burnt", "charred", "dark", "scorched"],
    &["brick", "hard", "rock", "stone"],
    &["break", "breakage", "broken", "fragile", "snap"],
    &["bread", "loaf", "loaves"],
    &["bun", "roll"],
    &["burger", "hamburger"],
    &["cap", "lid", "roof", "top"],
    &["cavity", "hollow", "void"],
    &["cave", "hole", "tunnel"],
    &["cling", "stick", "sticky", "tacky"],
    &["clammy", "damp", "moist", "soaked", "sodden", "soggy", "wet"],
    &["clod", "lump"],
    &["close", "compact", "dense", "heavy", "solid", "tight"],
    &["cloudy", "hazy", "milky"],
    &["coarse", "open", "porous"],
    &["collapse", "fall", "sink", "sunken"],
    &["color", "colour", "hue"],
    &["crack", "crevice", "fissure", "split"],
    &["crisp", "crispness", "crispy", "crunchy", "snap"],
    &["crooked", "lopsided", "misshapen", "wonky"],
    &["crumble", "crumbly", "friable"],
    &["deflate", "collapse"],
    &["doughy", "raw", "unbaked", "underbaked", "underdone"],
    &["dough", "masa", "pâte", "teig"],
    &["dusty", "floury", "powdery"],
    &["edge", "rim"],
    &["excess", "excessive", "much", "over", "overly"],
    &["fat", "grease", "greasy", "oil", "oily"],
    &["fast", "quick", "rapid"],
    &["firm", "hard", "stiff"],
    &["hard", "tough"],
    &["flavor", "flavour", "taste"],
    &["flow", "run", "spread"],
    &["fluid", "liquid", "runny", "thin", "watery"],
    &["fuzz", "fur", "mold", "mould", "moldy", "mouldy"],
    &["gap", "hollow"],
    &["gluey", "gummy", "pasty", "sticky"],
    &["grain", "grainy", "gritty", "sandy"],
    &["inflate", "puff", "swell", "swollen"],
    &["irregular", "uneven", "varied"],
    &["leak", "ooze", "seep", "weep"],
    &["light", "pale", "white", "whitish"],
    &["middle", "centre", "center", "core", "inside"],
    &["narrow", "small", "tiny"],
    &["bake", "oven"],
    &["horno", "ofen", "oven"],
    &["pan", "tin"],
    &["peel", "flake"],
    &["rise", "spring", "lift"],
    &["seam", "crimp", "closure"],
    &["shape", "form"],
    &["side", "sidewall", "wall"],
    &["sharp", "sour", "acid", "acidic", "vinegar"],
    &["shrink", "shrinkage", "contract"],
    &["shrivelled", "wrinkled", "wrinkle", "crease"],
    &["slow", "sluggish"],
    &["smeared", "streak", "streaky"],
    &["split", "burst", "tear", "torn"],
    &["stale", "old"],
    &["stringy", "thread", "ropy"],
    &["leathery", "rubber", "rubbery", "tough", "chewy"],
    &["uneven", "patchy", "blotchy"],
    &["varies", "differ", "vary"],
    &["wide", "spread", "flat"],
    // Verbs whose forms no stemmer joins.
    &["blew", "blow", "blown"],
    &["break", "broke", "broken"],
    &["fall", "fallen", "fell"],
    &["ran", "run"],
    &["rise", "risen", "rose"],
    &["sank", "sink", "sunk", "sunken"],
    &["shrank", "shrink", "shrunk", "shrunken"],
    &["stick", "stuck"],
    &["tear", "tore", "torn"],
    // What it is like, and what it is like that.
    &["bean", "beany"],
    &["cardboard", "cardboardy"],
    &["chalk", "chalky"],
    &["glass", "glassy"],
    &["grass", "grassy"],
    &["leather", "leathery"],
    &["mush", "mushy"],
    &["powder", "powdery"],
    &["rubber", "rubbery"],
    &["salt", "salty"],
    &["sand", "sandy"],
    &["soap", "soapy"],
    &["sponge", "spongy"],
    &["starch", "starchy"],
    &["wool", "woolly"],
    &["yeast", "yeasty"],
];

/// Words for the thing itself: they say little in a complaint about it.
pub(super) const PRODUCT_WORDS: &[&str] = &[
    "biscuit", "bread", "bun", "cookie", "goods", "item", "loaf", "loaves", "pastry", "piece", "product", "roll",
    "pie", "cake", "jam", "filling",
];

/// Words that deny.
pub(super) const DENIALS: &[&str] = &[
    "no", "not", "without", "nor", "neither", "never", "none", "nothing", "cannot", "cant", "dont", "doesnt", "didnt",
    "isnt", "arent", "wasnt", "werent", "wont", "hasnt", "havent", "absent", "missing",
];

/// Words for too little of something.
pub(super) const LACKS: &[&str] = &[
    "lack",
    "lacks",
    "lacking",
    "little",
    "less",
    "insufficient",
    "insufficiently",
    "low",
    "poor",
    "poorly",
    "weak",
    "bad",
];

/// Of [`LACKS`], those that also stand for a plain "bad": they turn nothing round.
pub(super) const BAD: &[&str] = &["poor", "poorly", "weak", "bad"];

/// Words for next to nothing of something.
pub(super) const HARDLY: &[&str] = &["hardly", "barely", "scarcely"];

/// Verbs behind the subject of a statement: "crumb is not sticky".
pub(super) const COPULAS: &[&str] = &[
    "is", "isnt", "are", "arent", "was", "wasnt", "were", "werent", "be", "been", "has", "have", "looks", "look",
    "feels", "feel", "tastes", "smells", "eats", "gets", "get", "goes", "went", "turned", "turns", "stays", "becomes",
    "became",
];

/// Words of a speaker who is not sure.
pub(super) const HEDGES: &[&str] =
    &["maybe", "perhaps", "possibly", "probably", "somewhat", "slightly", "seems", "apparently", "might", "bit"];

/// Words at which one statement ends and the next begins.
pub(super) const CONNECTORS: &[&str] = &[
    "and", "but", "with", "although", "though", "while", "yet", "however", "plus", "also", "then", "whereas", "because",
];

/// Of [`CONNECTORS`], the one over which a denial may or may not reach: "no holes and cracks".
pub(super) const OPEN_CONNECTOR: &str = "and";

/// Words that may follow a denial that stands behind what it denies: "holes were not found".
pub(super) const SEEN: &[&str] =
    &["seen", "found", "present", "visible", "there", "observed", "noticed", "any", "at", "all"];

/// English words without a meaning of their own here. A list of ours: those that libraries bring hold words that a
/// complaint needs (`not`, `under`, `below`, `off`).
pub(super) const STOP_WORDS: &[&str] = &[
    "a", "about", "after", "again", "all", "am", "an", "any", "are", "as", "at", "be", "been", "being", "both", "by",
    "can", "come", "comes", "coming", "could", "did", "do", "does", "doing", "each", "either", "else", "etc", "even",
    "every", "feel", "feels", "for", "from", "get", "gets", "getting", "give", "go", "goes", "going", "got", "had",
    "has", "have", "having", "he", "her", "here", "him", "his", "how", "i", "if", "in", "into", "is", "it", "its",
    "just", "keep", "keeps", "kind", "lot", "lots", "like", "look", "looks", "make", "many", "me", "more", "most",
    "my", "new", "now", "of", "on", "one", "only", "or", "other", "our", "ours", "own", "quite", "rather", "really",
    "same", "she", "should", "since", "so", "some", "still", "such", "than", "that", "the", "their", "them", "these",
    "they", "thing", "this", "those", "to", "too", "us", "very", "was", "we", "well", "were", "what", "when", "where",
    "which", "who", "why", "will", "would", "you", "your", "im", "ive", "weve", "theyre", "there", "turn", "turns",
    "became", "become", "becomes", "went", "wanted",
];
