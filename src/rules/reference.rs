//! The words of the rule language for people: what they follow, how they are written, what they mean.

use super::language;

/// Words that belong together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WordSection {
    /// What they are for.
    pub title: &'static str,
    /// The words.
    pub words: Vec<WordReference>,
}

/// One word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WordReference {
    /// The word.
    pub name: &'static str,
    /// What it follows, for example `a reading`; empty for a word that stands by itself.
    pub follows: Vec<&'static str>,
    /// How it is written; one way or several.
    pub examples: Vec<&'static str>,
    /// What it means, in a line.
    pub meaning: &'static str,
}

/// All words, section by section.
#[must_use]
pub fn words() -> Vec<WordSection> {
    let sections = language::sections().map(|(title, words)| WordSection {
        title,
        words: words
            .iter()
            .map(|word| WordReference {
                name: word.name,
                follows: word.follows.iter().map(|kind| kind.phrase()).collect(),
                examples: word.usage.split("` or `").collect(),
                meaning: word.meaning(),
            })
            .collect(),
    });
    sections.collect()
}
