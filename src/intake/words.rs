//! A text as words: where they stand, what they are, and where a statement ends.

use std::collections::{HashMap, HashSet};
use std::ops::Range;
use std::sync::LazyLock;

use rust_stemmers::{Algorithm, Stemmer};

use super::function_words::{BAD, CONNECTORS, DENIALS, HARDLY, HEDGES, LACKS, PRODUCT_WORDS, STOP_WORDS};
use super::kin::KIN;
use super::kinds::KINDS;
use super::numbers::number_end;
use super::translations::TRANSLATIONS;
use super::word_forms::WORD_FORMS;

/// Porter's second stemmer for English (Snowball; Porter 2001). The crate is small, has no dependency but serde, and carries
/// the reference algorithm compiled to Rust.
static STEMMER: LazyLock<Stemmer> = LazyLock::new(|| Stemmer::create(Algorithm::English));

/// Stems of the words that stand for one another, by stem.
static KINSHIP: LazyLock<HashMap<String, Vec<String>>> = LazyLock::new(|| {
    let mut kinship: HashMap<String, Vec<String>> = HashMap::new();
    for row in [KIN, WORD_FORMS, TRANSLATIONS].into_iter().flatten() {
        let stems: Vec<String> = row.iter().map(|word| stem(word)).collect();
        for own in &stems {
            let others = stems.iter().filter(|other| *other != own).cloned();
            kinship.entry(own.clone()).or_default().extend(others);
        }
    }
    for (whole, kinds) in KINDS {
        kinds.iter().for_each(|kind| kinship.entry(stem(kind)).or_default().push(stem(whole)));
    }
    kinship
});

static PRODUCT_STEMS: LazyLock<HashSet<String>> =
    LazyLock::new(|| PRODUCT_WORDS.iter().map(|word| stem(word)).collect());

const FILLED: &str = "filled";

/// Units that are written with a full stop.
const ABBREVIATED: &[&str] = &["min", "std", "sek", "sec", "seg", "hr", "hrs", "approx", "ca", "gr", "temp", "abs"];

/// Part of speech, as far as it matters here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Class {
    /// Says something.
    Content,
    /// Names the thing itself.
    Product,
    /// Says nothing by itself.
    Stop,
    /// Denies.
    Denial,
    /// Says that there is too little; `true` for a plain "bad".
    Lack(bool),
    /// Leaves next to nothing: "hardly".
    Hardly,
    /// Tells that what follows is expected, and so is not there: "should", "used to".
    Expectation,
    /// Takes back some certainty.
    Hedge,
    /// Begins another statement.
    Connector,
    /// A number.
    Number,
    /// `%`, `°` and their like.
    Sign,
}

/// One word, number or sign.
#[derive(Debug, Clone)]
pub(super) struct Token {
    /// Bytes of the text.
    pub(super) span: Range<usize>,
    /// In lower case, without apostrophes.
    pub(super) word: String,
    /// Its stem.
    pub(super) stem: String,
    pub(super) class: Class,
    /// Whether a hyphen joins it to the next word.
    pub(super) hyphen: bool,
}

/// A text in words and clauses.
#[derive(Debug, Default)]
pub(super) struct Words {
    pub(super) tokens: Vec<Token>,
    /// Tokens between two marks of punctuation; none is empty.
    pub(super) clauses: Vec<Range<usize>>,
}

/// The stem of a word in lower case.
pub(super) fn stem(word: &str) -> String {
    if word == FILLED {
        // What is filled is not the filling.
        return FILLED.to_owned();
    }
    STEMMER.stem(word).into_owned()
}

/// Stems of the words that stand for the one with this stem.
pub(super) fn kin(stem: &str) -> &'static [String] {
    KINSHIP.get(stem).map_or(&[], Vec::as_slice)
}

/// Whether the stem is that of a word for the thing itself.
pub(super) fn names_product(stem: &str) -> bool {
    PRODUCT_STEMS.contains(stem)
}

impl Words {
    /// Splits a text.
    pub(super) fn of(text: &str) -> Self {
        let mut words = Self::default();
        let mut start = 0;
        let mut rest = text.char_indices().peekable();
        while let Some((at, c)) = rest.next() {
            let number = number_end(text, at);
            let end = if let Some(end) = number {
                end
            } else if c.is_alphabetic() {
                word_end(text, at)
            } else {
                at + c.len_utf8()
            };
            while rest.next_if(|(next, _)| *next < end).is_some() {}
            let piece = text.get(at..end).unwrap_or_default();
            match c {
                _ if number.is_some() || c.is_alphanumeric() => {
                    let mut token = token(piece, at..end);
                    let mut behind = text.get(end..).unwrap_or_default().chars();
                    token.hyphen = behind.next() == Some('-') && behind.next().is_some_and(char::is_alphabetic);
                    words.push(token);
                }
                '%' | '°' | '℃' | '℉' | '‰' | 'º' => words.tokens.push(token(piece, at..end)),
                '.' if words.is_abbreviated(text.get(end..).unwrap_or_default()) => {}
                ',' | '.' | ';' | ':' | '!' | '?' | '(' | ')' | '\n' | '–' | '—' | '…' | '•' => {
                    words.end_clause(&mut start);
                }
                _ => {}
            }
        }
        words.end_clause(&mut start);
        words
    }

    /// Adds a word; "a little" takes back some certainty, where "little" alone tells of a lack, "no longer" denies as "no"
    /// does, and "this week" tells when, where "after a week" tells of keeping.
    fn push(&mut self, mut token: Token) {
        let before = self.tokens.last().map_or("", |before| before.word.as_str());
        match (before, token.word.as_str()) {
            ("a", "little") => token.class = Class::Hedge,
            ("no", "longer") => token.class = Class::Stop,
            (
                "last" | "this" | "every" | "each" | "next",
                "week" | "weeks" | "month" | "year" | "day" | "days" | "time" | "batch",
            ) => {
                token.class = Class::Stop;
            }
            _ => {}
        }
        self.tokens.push(token);
    }

    /// Splits a complaint, in which what was expected, was so before or is only compared with is told from what is.
    pub(super) fn of_complaint(text: &str) -> Self {
        let mut words = Self::of(text);
        super::similes::mark(&mut words);
        super::earlier::mark(&mut words);
        super::expected::mark(&mut words);
        words
    }

    /// Whether a full stop belongs to the unit before it: "20 Min. proof".
    fn is_abbreviated(&self, behind: &str) -> bool {
        let shortened = self.tokens.last().is_some_and(|token| ABBREVIATED.contains(&token.word.as_str()));
        shortened && behind.trim_start().starts_with(char::is_lowercase)
    }

    fn end_clause(&mut self, start: &mut usize) {
        if *start < self.tokens.len() {
            self.clauses.push(*start..self.tokens.len());
            *start = self.tokens.len();
        }
    }

    /// The statement that a word stands in; none of a connector.
    pub(super) fn statement_of(&self, place: usize) -> Option<Range<usize>> {
        let clause = self.clauses.iter().find(|clause| clause.contains(&place))?;
        self.statements(clause).into_iter().find(|statement| statement.contains(&place))
    }

    /// The statements of a clause: what stands between its connectors.
    pub(super) fn statements(&self, clause: &Range<usize>) -> Vec<Range<usize>> {
        let mut statements = Vec::new();
        let mut start = clause.start;
        for at in clause.clone() {
            if self.tokens.get(at).is_some_and(|token| token.class == Class::Connector) {
                statements.push(start..at);
                start = at + 1;
            }
        }
        statements.push(start..clause.end);
        statements.retain(|statement| !statement.is_empty());
        statements
    }
}

/// A word with its apostrophes; hyphens part words.
fn word_end(text: &str, start: usize) -> usize {
    let rest = text.get(start..).unwrap_or_default();
    let mut end = start;
    let mut inside = rest.chars().peekable();
    while let Some(c) = inside.next() {
        let apostrophe = matches!(c, '\'' | '’') && inside.peek().is_some_and(|next| next.is_alphabetic());
        if !(c.is_alphanumeric() || apostrophe || c == '³' || c == '²') {
            break;
        }
        end += c.len_utf8();
    }
    end
}

fn token(piece: &str, span: Range<usize>) -> Token {
    let word: String = piece.to_lowercase().chars().filter(|c| !matches!(c, '\'' | '’')).collect();
    let class = class(&word);
    let stem = stem(&word);
    Token { span, word, stem, class, hyphen: false }
}

fn class(word: &str) -> Class {
    if number_end(word, 0).is_some() {
        return Class::Number;
    }
    if word.starts_with(|c: char| !c.is_alphanumeric()) {
        return Class::Sign;
    }
    let is_in = |list: &[&str]| list.contains(&word);
    if is_in(DENIALS) {
        Class::Denial
    } else if is_in(LACKS) {
        Class::Lack(is_in(BAD))
    } else if is_in(HARDLY) {
        Class::Hardly
    } else if is_in(HEDGES) {
        Class::Hedge
    } else if is_in(CONNECTORS) {
        Class::Connector
    } else if is_in(STOP_WORDS) {
        Class::Stop
    } else if is_in(PRODUCT_WORDS) || word.strip_suffix('s').is_some_and(|one| PRODUCT_WORDS.contains(&one)) {
        Class::Product
    } else {
        Class::Content
    }
}

#[cfg(test)]
mod tests {
    use super::{Class, Words};

    fn words(text: &str) -> Vec<String> {
        Words::of(text).tokens.into_iter().map(|token| token.word).collect()
    }

    #[test]
    fn decimal_commas_stay_in_their_number() {
        assert_eq!(words("31,5 °C, wet; 7."), ["31,5", "°", "c", "wet", "7"]);
        assert_eq!(Words::of("31,5 °C, wet; 7.").clauses, vec![0..3, 3..4, 4..5]);
    }

    #[test]
    fn apostrophes_fall_away_and_hyphens_part() {
        assert_eq!(words("doesn't, under-baked"), ["doesnt", "under", "baked"]);
        assert_eq!(Words::of("doesn’t").tokens[0].class, Class::Denial);
    }
}
