//! What something is only compared with: a crumb that is dense as a rock holds no rocks.

use super::words::{Class, Words};

/// Takes the meaning from a noun that only heightens the quality before it: "dense as a rock", "flat as a pancake".
pub(super) fn mark(words: &mut Words) {
    let word = |at: usize| words.tokens.get(at).map_or("", |token| token.word.as_str());
    let is_content = |at: usize| words.tokens.get(at).is_some_and(|token| token.class == Class::Content);
    let in_clause =
        |start: usize, end: usize| words.clauses.iter().any(|clause| clause.contains(&start) && clause.contains(&end));
    let is_simile = |quality: &usize| {
        let (as_word, article, noun) = (quality + 1, quality + 2, quality + 3);
        is_content(*quality)
            && word(as_word) == "as"
            && matches!(word(article), "a" | "an")
            && is_content(noun)
            && in_clause(*quality, noun)
    };
    let nouns: Vec<usize> = (0..words.tokens.len()).filter(is_simile).map(|quality| quality + 3).collect();
    for noun in nouns {
        if let Some(token) = words.tokens.get_mut(noun) {
            token.class = Class::Stop;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::mark;
    use crate::intake::words::{Class, Words};

    #[test]
    fn what_a_quality_is_compared_with_means_nothing() {
        for (text, last) in
            [("dense as a rock", Class::Stop), ("served as a cake", Class::Product), ("a rock", Class::Content)]
        {
            let mut words = Words::of(text);
            mark(&mut words);
            assert_eq!(words.tokens.last().map(|token| token.class), Some(last), "{text}");
        }
    }
}
