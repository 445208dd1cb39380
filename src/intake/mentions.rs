//! The symptoms and facts that a text mentions.

use std::collections::{BTreeSet, HashMap};
use std::ops::Range;

use super::answer::Saying;
use super::expected::approved;
use super::matching::{Found, Meanings, Statement, Threshold};
use super::phrases::PhraseIndex;
use super::said::{Denials, is_plural};
use super::subjects::{OtherSubjects, is_ingredient};
use super::told_values::Spent;
use super::windows::{Window, windows};
use super::words::{Class, Words};

/// Least score and recall of a candidate (chosen on the tables of `tests/reference`).
const POSSIBLE: Threshold = Threshold { score: 0.5, recall: 0.35 };

/// Least score and recall of what is sure (chosen likewise).
const SURE: Threshold = Threshold { score: 0.7, recall: 0.75 };

/// Least score of what is the best for its words, to be named before what is not (chosen likewise).
const LEADS: f64 = 0.55;

/// Least score of what has one word of its own, to be named before what has none (chosen likewise).
const ADDS: f64 = 0.6;

/// Least recall of a name of which only one word is there, for it to be sure (chosen likewise).
const WHOLE_NAME: f64 = 0.9;

/// Scores nearer than this do not tell two things apart that the same words name.
const TIE: f64 = 0.03;

/// A symptom or fact that a text mentions.
#[derive(Debug, Clone)]
pub(super) struct Mention {
    pub(super) found: Found,
    pub(super) said: Saying,
    pub(super) sure: bool,
    /// Whether it is the best for most of its words, since nothing better has taken them in.
    leads: bool,
    /// Whether it is the best for at least one of its words.
    adds: bool,
    /// Whether its words stand in a statement of approval: "colour is fine".
    approved: bool,
    /// Whether only words for what was measured name it, or one word of an alarm: "acrylamide 120 µg/kg" may be high or not.
    measured: bool,
    /// Whether its one word qualifies another that is not about it: "small bubbles" is no small loaf.
    qualifies: bool,
    /// Whether its words are said of the pack or of an ingredient: "the butter was soft".
    of_another: bool,
    /// Whether the speaker hedges.
    pub(super) hedged: bool,
    /// Subject that it carries on from a statement before.
    subject: Range<usize>,
}

/// The things of an index that a text names, best first.
pub(super) fn mentions(words: &Words, index: &PhraseIndex, denials: &Denials, spent: &Spent) -> Vec<Mention> {
    let mut meanings = Meanings::default();
    let approved = approved(words);
    let others = OtherSubjects::of(words);
    let mut best: HashMap<(usize, Saying), Mention> = HashMap::new();
    for window in windows(words) {
        let statement = Statement::look_up(words, &window, index, &mut meanings, &spent.taken);
        for found in statement.find(index) {
            if !POSSIBLE.is_met(&found)
                || only_product_words(&found, words)
                || denials.only_expected(&found)
                || Denials::denies_otherwise(&found, words)
            {
                continue;
            }
            let said = denials.saying(&found, words);
            let hedged = hedged(words, &window);
            let slot = best.entry((found.entry, said));
            let qualifies = qualifies(&found, words);
            let class = |place: &usize| words.tokens.get(*place).map(|token| token.class);
            let telling: Vec<usize> =
                found.named_by.iter().copied().filter(|place| class(place) != Some(Class::Product)).collect();
            let measured = spent.leave_open(&telling);
            let approved = found.named_by.iter().any(|place| approved.get(*place).copied().unwrap_or_default());
            let entry = index.entries.get(found.entry);
            let of_another = entry.is_some_and(|entry| others.take(&found.named_by, entry, words));
            let one = Mention {
                found,
                said,
                sure: false,
                leads: false,
                adds: false,
                approved,
                measured,
                qualifies,
                of_another,
                hedged,
                subject: window.subject.clone(),
            };
            slot.and_modify(|own| {
                if one.found.score > own.found.score {
                    *own = one.clone();
                }
            })
            .or_insert(one);
        }
    }
    let mut mentions: Vec<Mention> = best.into_values().collect();
    // Of two things that are named as well, the one whose name takes in the denial is meant: "not crisp", and not the
    // absence of "too crisp".
    mentions.sort_by(|a, b| {
        let by_score =
            b.found.score.total_cmp(&a.found.score).then(b.found.turn.is_some().cmp(&a.found.turn.is_some()));
        by_score.then((a.found.entry, a.said).cmp(&(b.found.entry, b.said)))
    });
    drop_echoes(&mut mentions);
    decide(&mut mentions);
    // What else might be said of a thing counts where it is beyond doubt, and so contradicts.
    let mut told = BTreeSet::new();
    mentions.retain(|one| told.insert(one.found.entry) || one.sure);
    // A text may name several things: the best for its own words comes before the second best for those of another.
    mentions.sort_by_key(|one| (!(one.leads && one.found.score >= LEADS), !one.adds));
    mentions
}

fn only_product_words(found: &Found, words: &Words) -> bool {
    let class = |place: &usize| words.tokens.get(*place).map(|token| token.class);
    found.named_by.iter().all(|place| class(place) == Some(Class::Product))
}

fn qualifies(found: &Found, words: &Words) -> bool {
    let [only] = found.named_by.as_slice() else { return false };
    let next = only + 1;
    let same_clause = words.clauses.iter().any(|clause| clause.contains(only) && clause.contains(&next));
    let noun = words
        .tokens
        .get(next)
        .is_some_and(|token| token.class == Class::Content && (is_plural(&token.word) || is_ingredient(&token.word)));
    same_clause && noun && !found.about.contains(&next)
}

fn hedged(words: &Words, window: &Window) -> bool {
    words.tokens.get(window.range.clone()).unwrap_or_default().iter().any(|token| token.class == Class::Hedge)
}

/// Of one thing said in two ways by the same words, the better stays.
fn drop_echoes(mentions: &mut Vec<Mention>) {
    let mut kept: Vec<Mention> = Vec::with_capacity(mentions.len());
    for one in mentions.drain(..) {
        let echo = kept.iter().any(|other| {
            other.found.entry == one.found.entry
                && (one.said == Saying::Unclear
                    || one.found.named_by.iter().any(|place| other.found.about.contains(place)))
        });
        if !echo {
            kept.push(one);
        }
    }
    *mentions = kept;
}

/// Whether a thing is named by its name, well, and said to be there or not.
fn is_clear(Mention { found, said, approved, measured, qualifies, of_another, .. }: &Mention) -> bool {
    let slip_of_one_word = (found.misspelt || found.by_kin) && found.named_by.len() == 1;
    let piece_of_name = found.named_by.len() == 1 && found.turn.is_none() && found.recall < WHOLE_NAME;
    let of_it = !approved && !measured && !qualifies && !of_another && !found.elsewhere && !piece_of_name;
    of_it && *said != Saying::Unclear && !found.described && !slip_of_one_word && SURE.is_met(found)
}

/// Best first: sure is what is named well by words that nothing better has taken in.
fn decide(mentions: &mut [Mention]) {
    let mut spent: Vec<usize> = Vec::new();
    let mut told: Vec<usize> = Vec::new();
    for place in 0..mentions.len() {
        let rivals = mentions.get(..place).unwrap_or_default();
        let behind = mentions.get(place + 1..).unwrap_or_default();
        let Some(one) = mentions.get(place) else { continue };
        let found = &one.found;
        // A name that only the subject gives was said by the statement before.
        let own: Vec<&usize> = found.named_by.iter().filter(|place| !one.subject.contains(*place)).collect();
        let fresh = own.iter().filter(|place| !spent.contains(*place)).count();
        let leads = fresh * 2 > own.len() && !one.approved;
        // One word alone names nothing sure where something better is about it: "moulded" in "tears when it is moulded".
        let alone_elsewhere = matches!(own.as_slice(), [only] if told.contains(*only));
        let clear = is_clear(one) && leads && !alone_elsewhere;
        let tied = |other: &Mention| {
            (other.found.score - found.score).abs() < TIE
                && other.found.turn == found.turn
                && found.named_by.iter().all(|word| other.found.named_by.contains(word))
        };
        let sure = clear && !rivals.iter().any(tied) && !behind.iter().any(tied);
        if leads {
            spent.extend(&found.named_by);
            told.extend(&found.about);
        }
        if let Some(one) = mentions.get_mut(place) {
            (one.sure, one.leads, one.adds) = (sure, leads, fresh > 0 && one.found.score >= ADDS && !one.approved);
        }
    }
}
