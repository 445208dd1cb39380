//! Words of a complaint that are no question of baking but of people's safety.
//!
//! In doubt an alarm is raised: one too many costs a look, one too few may cost a person's health.

use std::collections::BTreeSet;

use super::alarm_words::{ALARMS, AlarmWord, COMPARING, FOUND, OF_NOTHING, PIECES, UNDENIED, UNLIKE};
use super::answer::{AlarmKind, ComplaintCaution};
use super::leftovers::quotes;
use super::subjects::is_pack;
use super::words::{Class, Token, Words, stem};

/// What every caution ends with.
macro_rules! caution {
    ($first:literal) => {
        concat!(
            $first,
            " Hold and trace the lot at once, call the person responsible for food safety, and follow the duties of recall ",
            "and notice of the market: local law and those people decide. whybake does not diagnose foreign matter, illness, ",
            "allergic reactions or chemicals, and calls no product safe."
        )
    };
}

impl AlarmKind {
    fn text(self) -> &'static str {
        match self {
            Self::ForeignMatter => {
                caution!(
                    "Foreign matter may be in the product: keep the piece and the pack, and let nobody eat of the lot."
                )
            }
            Self::IllnessOrInjury => {
                caution!("Someone may be ill or hurt: see to medical help first, and keep what is left of the product.")
            }
            Self::AllergicReaction => caution!(
                "An allergic reaction or an undeclared allergen may be meant: call emergency help at once where anyone has \
                 symptoms, and keep the pack with its label."
            ),
            Self::ChemicalTaint => {
                caution!(
                    "A chemical may be in the product: do not taste it or smell it closely, and keep a closed sample."
                )
            }
        }
    }
}

/// So many words apart, words are still of one another: "broke one of her teeth".
const NEAR: usize = 4;

/// An alarm of a text: its kind and the places of its words.
pub(super) type Alarm = (AlarmKind, BTreeSet<usize>);

/// The alarms of a text, each kind once.
pub(super) fn alarms(words: &Words) -> Vec<Alarm> {
    let statements: Vec<_> = words.clauses.iter().flat_map(|clause| words.statements(clause)).collect();
    let of_kind = |(kind, list): &(AlarmKind, &[AlarmWord])| {
        let told = statements.iter().flat_map(|range| {
            let statement = Statement { tokens: words.tokens.get(range.clone()).unwrap_or_default() };
            statement.told(*kind, list).into_iter().map(|at| at + range.start)
        });
        let places: BTreeSet<usize> = told.collect();
        (!places.is_empty()).then_some((*kind, places))
    };
    ALARMS.iter().filter_map(of_kind).collect()
}

/// What to do first about an alarm.
pub(super) fn caution((kind, places): &Alarm, text: &str, words: &Words) -> ComplaintCaution {
    let places: Vec<usize> = places.iter().copied().collect();
    ComplaintCaution { kind: *kind, text: kind.text(), quotes: quotes(text, words, &places) }
}

/// One statement of a text.
#[derive(Debug, Clone, Copy)]
struct Statement<'a> {
    tokens: &'a [Token],
}

impl<'a> Statement<'a> {
    /// Places of the words that raise an alarm, and of those without which they would not.
    fn told(self, kind: AlarmKind, list: &[AlarmWord]) -> BTreeSet<usize> {
        let mut told = BTreeSet::new();
        for (at, token) in self.tokens.iter().enumerate() {
            let raises = |row: &&AlarmWord| {
                is_named(row.words, token) && !self.is_alike(kind, row, at) && self.has_needed(row, at)
            };
            let Some(row) = list.iter().find(raises) else { continue };
            if self.is_denied(at) {
                continue;
            }
            told.insert(at);
            told.extend(self.near(at).filter(|other| self.is(row.beside, *other)));
            // "Sesame allergy" is about no sesame on a bun, and "hard plastic" about no hard bun.
            let of_what = kind != AlarmKind::IllnessOrInjury;
            let before = at.checked_sub(1).filter(|before| of_what && self.class(*before) == Some(Class::Content));
            told.extend(before);
        }
        told
    }

    fn word(self, at: Option<usize>) -> &'a str {
        at.and_then(|at| self.tokens.get(at)).map_or("", |token| token.word.as_str())
    }

    fn class(self, at: usize) -> Option<Class> {
        self.tokens.get(at).map(|token| token.class)
    }

    fn is(self, list: &[&str], at: usize) -> bool {
        self.tokens.get(at).is_some_and(|token| is_any(list, token))
    }

    fn has(self, list: &[&str]) -> bool {
        self.tokens.iter().any(|token| is_any(list, token))
    }

    fn near(self, at: usize) -> std::ops::Range<usize> {
        at.saturating_sub(NEAR)..(at + NEAR + 1).min(self.tokens.len())
    }

    fn has_near(self, list: &[&str], at: usize) -> bool {
        self.near(at).any(|other| other != at && self.is(list, other))
    }

    fn has_needed(self, row: &AlarmWord, at: usize) -> bool {
        let found = || self.is_piece(at) || self.is_inside(at + 1) || self.has_near(FOUND, at);
        (row.beside.is_empty() || self.has_near(row.beside, at)) && (!row.found || found())
    }

    /// "A piece of metal", "bits of hard plastic".
    fn is_piece(self, at: usize) -> bool {
        let of = (1..=2).filter_map(|back| at.checked_sub(back)).find(|place| self.word(Some(*place)) == "of");
        of.is_some_and(|of| PIECES.contains(&self.word(of.checked_sub(1))))
    }

    fn is_inside(self, at: usize) -> bool {
        matches!(self.word(Some(at)), "in" | "inside" | "into")
    }

    /// "Glass in it", "plastic baked into the bread", "found some glass".
    fn is_found(self, at: usize) -> bool {
        let of_product = |place: usize| {
            self.is_inside(place) && (1..=2).any(|next| self.class(place + next) == Some(Class::Product))
        };
        self.is_inside(at + 1) || self.has_near(FOUND, at) || (0..self.tokens.len()).any(of_product)
    }

    /// Whether the word has another meaning here: "plastic range", "hard as stone", "packed in plastic bags".
    fn is_alike(self, kind: AlarmKind, row: &AlarmWord, at: usize) -> bool {
        let Some(token) = self.tokens.get(at) else { return true };
        let next = self.tokens.get(at + 1);
        let before = |back: usize| self.word(at.checked_sub(back));
        let like = |back: usize| COMPARING.contains(&before(back));
        let compared = like(1) || (matches!(before(1), "a" | "an") && like(2)) || (before(1) == "or" && like(3));
        let compound = token.hyphen || next.is_some_and(|next| is_any(row.alike, next) || is_any(row.behind, next));
        let packed =
            self.tokens.iter().any(|token| is_pack(&token.word) || matches!(token.stem.as_str(), "pack" | "wrap"));
        let elsewhere = self.has(row.alike) || (packed && row.is_material);
        // "Tastes like bleach" tells of bleach.
        (compared && kind == AlarmKind::ForeignMatter)
            || (!self.is_piece(at) && (compound || (elsewhere && !self.is_found(at))))
    }

    /// "No metal found", "no sign of glass or metal", "metal was not found", "free from hair"; "did not see the glass" denies
    /// no glass. What is joined to a denied word by "and" may be there.
    fn is_denied(self, at: usize) -> bool {
        if self.tokens.get(at).is_some_and(|token| UNDENIED.contains(&token.stem.as_str())) {
            return false;
        }
        let passes = |token: &&Token| {
            let alarm = ALARMS.iter().any(|(_, list)| list.iter().any(|row| is_named(row.words, token)));
            let article = matches!(token.word.as_str(), "the" | "this" | "that" | "my");
            !article && (token.class == Class::Stop || alarm || is_any(OF_NOTHING, token) || is_any(FOUND, token))
        };
        let denies = |token: &Token| token.class == Class::Denial || matches!(token.word.as_str(), "free" | "nobody");
        let before = self.tokens.get(..at).unwrap_or_default();
        let behind = self.tokens.get(at + 1..).unwrap_or_default();
        let stands = |token: &&Token| denies(token) || !passes(token);
        let denied_before = before.iter().rev().find(stands).is_some_and(denies);
        let denial = behind.iter().position(denies);
        let denied_behind = denial.is_some_and(|place| {
            let (until, rest) = behind.split_at(place);
            until.iter().all(|token| token.class == Class::Stop) && rest.iter().skip(1).all(|token| passes(&token))
        });
        denied_before || denied_behind
    }
}

/// Whether a word raises an alarm of the list: "I'll" is not ill, and a metallic taste no metal.
fn is_named(list: &[&str], token: &Token) -> bool {
    let whole = token.span.len() == token.word.len() && token.class == Class::Content;
    whole && !UNLIKE.contains(&token.word.as_str()) && is_any(list, token)
}

fn is_any(list: &[&str], token: &Token) -> bool {
    list.iter().any(|word| *word == token.word || stem(word) == token.stem)
}

#[cfg(test)]
mod tests {
    use super::alarms;
    use crate::intake::answer::AlarmKind;
    use crate::intake::words::Words;

    fn kinds(text: &str) -> Vec<AlarmKind> {
        alarms(&Words::of_complaint(text)).into_iter().map(|(kind, _)| kind).collect()
    }

    #[test]
    fn alarms_are_told_by_their_kinds() {
        use AlarmKind::{AllergicReaction, ChemicalTaint, ForeignMatter, IllnessOrInjury};
        for (text, kind) in [
            ("piece of metal wire in bun", ForeignMatter),
            ("glass", ForeignMatter),
            ("piece of plastic bag in the bread", ForeignMatter),
            ("plastic bag baked into the bread", ForeignMatter),
            ("a hard stone in a bun", ForeignMatter),
            ("insects", ForeignMatter),
            ("found a hair", ForeignMatter),
            ("we did not see the glass until he bit on it", ForeignMatter),
            ("child sick after eating", IllnessOrInjury),
            ("she choked", IllnessOrInjury),
            ("broken tooth", IllnessOrInjury),
            ("bread so hard he broke his teeth", IllnessOrInjury),
            ("a customer died after eating it", IllnessOrInjury),
            ("peanut allergy", AllergicReaction),
            ("could not breathe", AllergicReaction),
            ("undeclared milk", AllergicReaction),
            ("smells of cleaning chemical", ChemicalTaint),
            ("tastes like bleach", ChemicalTaint),
            ("tastes of chemicals", ChemicalTaint),
        ] {
            assert_eq!(kinds(text), [kind], "{text}");
        }
        assert_eq!(kinds("sesame allergy, went to hospital"), [IllnessOrInjury, AllergicReaction]);
    }

    #[test]
    fn words_that_only_look_alike_raise_none() {
        for text in [
            "plastic range of the fat",
            "plastic dough",
            "dough too plastic",
            "packed in plastic bags",
            "baked in a stone oven",
            "stone ground flour",
            "stone-ground flour",
            "hard as a stone",
            "hard as stone",
            "snaps like glass or stone",
            "glass transition of the sugar",
            "glassy crumb",
            "sick dough",
            "hair cracks found on the top",
            "hairline cracks",
            "sticks to the knife",
            "metallic taste",
            "chemical taste",
            "wire-cut cookies",
            "wire drag",
            "marks of the wire",
            "allergen label wanted",
            "bleached flour",
            "chemical leavening",
            "solvent retention capacity",
            "sickly sweet",
            "I'll send a sample",
            "sticks to the teeth",
            "mouldy after 3 days",
        ] {
            assert_eq!(kinds(text), [], "{text}");
        }
    }

    #[test]
    fn denied_words_raise_none() {
        for text in [
            "no metal found",
            "no sign of glass or metal",
            "metal was not found",
            "nobody got sick",
            "no one was ill",
            "no allergic reaction",
            "free from hair",
        ] {
            assert_eq!(kinds(text), [], "{text}");
        }
        assert_eq!(kinds("no glass but metal"), [AlarmKind::ForeignMatter]);
    }
}
