//! What a statement is about that is not the product: its pack, or an ingredient before it went in.

use std::ops::Range;

use super::function_words::COPULAS;
use super::naming::Entry;
use super::opposites::qualities;
use super::words::{Class, Words, kin};

/// Words for what a product is packed in (common practice), but for their plurals.
const PACKS: &[&str] = &[
    "bag",
    "box",
    "carton",
    "clamshell",
    "cling",
    "crate",
    "film",
    "foil",
    "jar",
    "pack",
    "package",
    "packaging",
    "packet",
    "pouch",
    "punnet",
    "sleeve",
    "tray",
    "tub",
    "wrap",
    "wrapper",
    "wrapping",
];

/// Stems in the names of symptoms that concern the pack.
const OF_PACKS: &[&str] = &["bag", "pack", "packag", "wrap", "wrapper", "film"];

/// Words for ingredients that nobody sees in the product as such (common practice).
const INGREDIENTS: &[&str] = &[
    "butter",
    "cocoa",
    "cream",
    "egg",
    "eggs",
    "fat",
    "flour",
    "flours",
    "lard",
    "margarine",
    "milk",
    "oil",
    "salt",
    "shortening",
    "starch",
    "sugar",
    "syrup",
    "water",
    "yeast",
];

/// Places of a pack: "the lid of the tub".
const PLACES: &[&str] = &["bottom", "corner", "corners", "inside", "lid", "outside", "seal", "seam", "top"];

/// Words before the noun that a statement begins with.
const ARTICLES: &[&str] = &[
    "a", "all", "an", "every", "its", "many", "most", "our", "some", "that", "the", "their", "these", "this", "those",
];

/// Words that may stand before a quality: "butter too soft".
const DEGREES: &[&str] = &["rather", "so", "too", "very"];

/// Where a statement is about something else than the product.
#[derive(Debug)]
pub(super) struct OtherSubjects(Vec<Option<usize>>);

impl OtherSubjects {
    pub(super) fn of(words: &Words) -> Self {
        let mut subjects = vec![None; words.tokens.len()];
        for statement in words.clauses.iter().flat_map(|clause| words.statements(clause)) {
            let Some(subject) = pack(words, &statement).or_else(|| ingredient(words, &statement)) else { continue };
            subjects.iter_mut().take(statement.end).skip(statement.start).for_each(|slot| *slot = Some(subject));
        }
        Self(subjects)
    }

    /// Whether words of a name stand in such a statement, and the thing that they name is none of its subject's: "wet" of a
    /// bag, and not "leaks" of the pack in "leaks in the pack".
    pub(super) fn take(&self, named_by: &[usize], entry: &Entry, words: &Words) -> bool {
        let has = |stem: &str| entry.fields.contains_key(stem);
        named_by.iter().filter_map(|place| self.0.get(*place).copied().flatten()).any(|subject| {
            let Some(token) = words.tokens.get(subject) else { return false };
            let own = has(&token.stem) || kin(&token.stem).iter().any(|stem| has(stem));
            let of_packs = is_pack(&token.word) && OF_PACKS.iter().any(|stem| has(stem));
            !named_by.contains(&subject) && !own && !of_packs
        })
    }
}

/// Whether the word is an ingredient: "soft butter" is no soft product.
pub(super) fn is_ingredient(word: &str) -> bool {
    INGREDIENTS.contains(&word)
}

/// Whether the word is for what a product is packed in.
pub(super) fn is_pack(word: &str) -> bool {
    let singular = [Some(word), word.strip_suffix('s'), word.strip_suffix("es")];
    singular.into_iter().flatten().any(|one| PACKS.contains(&one))
}

/// A word of a statement; empty behind its end.
fn word<'a>(words: &'a Words, statement: &Range<usize>, place: usize) -> &'a str {
    let token = words.tokens.get(place).filter(|_| statement.contains(&place));
    token.map_or("", |token| token.word.as_str())
}

/// Behind the articles at the beginning of a statement.
fn beginning(words: &Words, statement: &Range<usize>, start: usize) -> usize {
    let is_article = |place: &usize| ARTICLES.contains(&word(words, statement, *place));
    (start..statement.end).find(|place| !is_article(place)).unwrap_or(statement.end)
}

/// The pack that a statement begins with: "bags wet inside", "the lid of the tub was damp", and neither "soft in the pack" nor
/// "tray bread is dry" nor "film on the top".
fn pack(words: &Words, statement: &Range<usize>) -> Option<usize> {
    let mut place = beginning(words, statement, statement.start);
    if PLACES.contains(&word(words, statement, place)) && word(words, statement, place + 1) == "of" {
        place = beginning(words, statement, place + 2);
    }
    let own = is_pack(word(words, statement, place));
    let next = word(words, statement, place + 1);
    let of_the_product = words.tokens.get(place + 1).is_some_and(|token| token.class == Class::Product);
    (own && !matches!(next, "of" | "on" | "after") && !of_the_product).then_some(place)
}

/// The ingredient that a statement begins with and tells the state of: "the butter was soft", "flour too cold".
fn ingredient(words: &Words, statement: &Range<usize>) -> Option<usize> {
    let place = beginning(words, statement, statement.start);
    let next = word(words, statement, place + 1);
    let is_quality = || {
        let token = words.tokens.get(place + 1).filter(|_| statement.contains(&(place + 1)));
        token.is_some_and(|token| !qualities(&token.word, &token.stem).is_empty())
    };
    let told = COPULAS.contains(&next) || DEGREES.contains(&next) || is_quality();
    (is_ingredient(word(words, statement, place)) && told).then_some(place)
}

#[cfg(test)]
mod tests {
    use super::OtherSubjects;
    use crate::intake::words::Words;

    #[test]
    fn statements_about_a_pack_or_an_ingredient_are_told_from_those_about_the_product() {
        let is_other = |text: &str| OtherSubjects::of(&Words::of(text)).0.iter().any(Option::is_some);
        for text in [
            "bags wet inside",
            "the lid of the tub was damp",
            "all boxes are soft",
            "the butter was soft",
            "flour too wet",
        ] {
            assert!(is_other(text), "{text}");
        }
        for text in [
            "soft in the pack",
            "tray bread is dry",
            "film on the top",
            "bag of soft cookies",
            "butter taste missing",
            "the cookies are soft",
        ] {
            assert!(!is_other(text), "{text}");
        }
    }
}
