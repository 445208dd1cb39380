//! Forms of one word that no stemmer joins (standard English).

/// Forms of one word.
pub(super) const WORD_FORMS: &[&[&str]] = &[
    &["fill", "filled"],
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
