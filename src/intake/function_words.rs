//! Words by what they do in a complaint: deny, approve, join, or say nothing by themselves (common practice). A list of ours:
//! those that libraries bring hold words that a complaint needs.

/// Words for the thing itself: they say little in a complaint about it.
pub(super) const PRODUCT_WORDS: &[&str] = &[
    "biscuit", "bread", "bun", "cookie", "goods", "item", "loaf", "loaves", "pastry", "piece", "product", "roll",
    "pie", "cake", "jam", "filling",
];

/// Words that deny.
pub(super) const DENIALS: &[&str] = &[
    "no", "not", "without", "nor", "neither", "never", "none", "nothing", "cannot", "cant", "dont", "doesnt", "didnt",
    "isnt", "arent", "wasnt", "werent", "wont", "hasnt", "havent", "absent", "missing", "wouldnt", "couldnt", "aint",
    "fails", "fail", "refuses", "refuse",
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
    "and", "but", "with", "although", "though", "while", "yet", "however", "plus", "also", "then", "whereas",
    "because", "when", "since", "if", "which", "so",
];

/// Of [`CONNECTORS`], the one over which a denial may or may not reach: "no holes and cracks".
pub(super) const OPEN_CONNECTOR: &str = "and";

/// Words that may follow a denial that stands behind what it denies: "holes were not found".
pub(super) const SEEN: &[&str] =
    &["seen", "found", "present", "visible", "there", "observed", "noticed", "any", "at", "all"];

/// English words without a meaning of their own here. A list of ours: those that libraries bring hold words that a
/// complaint needs (`not`, `under`, `below`, `off`).
pub(super) const STOP_WORDS: &[&str] = &[
    "a",
    "about",
    "after",
    "again",
    "all",
    "am",
    "an",
    "any",
    "are",
    "as",
    "at",
    "be",
    "been",
    "being",
    "both",
    "by",
    "can",
    "come",
    "comes",
    "coming",
    "could",
    "did",
    "do",
    "does",
    "doing",
    "each",
    "either",
    "else",
    "etc",
    "even",
    "every",
    "feel",
    "feels",
    "for",
    "from",
    "get",
    "gets",
    "getting",
    "give",
    "go",
    "goes",
    "going",
    "got",
    "had",
    "has",
    "have",
    "having",
    "he",
    "her",
    "here",
    "him",
    "his",
    "how",
    "i",
    "in",
    "into",
    "is",
    "it",
    "its",
    "just",
    "keep",
    "keeps",
    "kind",
    "lot",
    "lots",
    "like",
    "look",
    "looks",
    "make",
    "many",
    "me",
    "more",
    "most",
    "my",
    "new",
    "now",
    "of",
    "on",
    "one",
    "only",
    "or",
    "other",
    "our",
    "ours",
    "own",
    "quite",
    "rather",
    "really",
    "same",
    "she",
    "should",
    "some",
    "still",
    "such",
    "than",
    "that",
    "the",
    "their",
    "them",
    "these",
    "they",
    "thing",
    "this",
    "those",
    "to",
    "too",
    "us",
    "very",
    "was",
    "we",
    "well",
    "were",
    "what",
    "where",
    "who",
    "why",
    "will",
    "would",
    "you",
    "your",
    "im",
    "ive",
    "weve",
    "theyre",
    "there",
    "turn",
    "turns",
    "became",
    "become",
    "becomes",
    "went",
    "wanted",
    "anymore",
    "nearly",
    "almost",
    "today",
    "yesterday",
    "last",
    "morning",
    "afternoon",
    "evening",
    "night",
    "tonight",
    "shift",
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
    "customer",
    "customers",
    "consumer",
    "consumers",
    "ago",
    "say",
    "says",
    "said",
    "write",
    "writes",
    "wrote",
    "report",
    "reports",
    "reported",
    "notice",
    "noticed",
    "see",
    "saw",
    "seen",
    "find",
    "found",
    "hi",
    "hello",
    "dear",
    "please",
    "thanks",
    "regards",
    "lately",
    "recently",
    "always",
    "often",
    "sometimes",
    "usually",
    "normally",
    "way",
    "completely",
    "totally",
    "absolutely",
    "extremely",
    "pretty",
];

/// Words of approval.
pub(super) const APPROVALS: &[&str] = &[
    "good",
    "ok",
    "okay",
    "nice",
    "nicely",
    "perfect",
    "perfectly",
    "normal",
    "correct",
    "great",
    "excellent",
    "acceptable",
    "enough",
    "unchanged",
    "alright",
];

/// Words for what is wrong: nothing is where they are denied.
pub(super) const TROUBLES: &[&str] = &[
    "problem",
    "problems",
    "issue",
    "issues",
    "trouble",
    "troubles",
    "complaint",
    "complaints",
    "wrong",
    "fault",
    "faults",
    "defect",
    "defects",
    "change",
    "changes",
    "changed",
    "difference",
    "differences",
    "different",
];

/// Words for a person or thing spoken of before.
pub(super) const PRONOUNS: &[&str] = &["i", "it", "they", "that", "this", "these", "we", "you"];

/// Words before a noun: a question follows where they stand behind "should".
pub(super) const DETERMINERS: &[&str] = &["a", "an", "the", "my", "our", "your", "anything", "something", "there"];

/// Verbs that tell how something was.
pub(super) const AUXILIARIES: &[&str] = &["was", "were", "had", "did", "been"];
