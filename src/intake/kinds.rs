//! Kinds of things: who says cherry speaks of a fruit.

/// Kinds of a thing that may stand for it, and not the other way round.
pub(super) const KINDS: &[(&str, &[&str])] = &[
    (
        "fruit",
        &[
            "apple",
            "apricot",
            "berry",
            "blackberry",
            "blackcurrant",
            "blueberry",
            "cherry",
            "cranberry",
            "currant",
            "fig",
            "lemon",
            "mango",
            "orange",
            "peach",
            "pear",
            "pineapple",
            "plum",
            "raspberry",
            "rhubarb",
            "strawberry",
        ],
    ),
    ("seed", &["linseed", "poppy", "sesame", "sunflower"]),
];
