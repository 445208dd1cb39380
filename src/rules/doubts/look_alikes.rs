//! Ids and titles that are easily taken for each other.

use std::collections::{BTreeMap, BTreeSet};

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::{Declared, Doubts};
use crate::knowledge::ProductView;

/// In shorter names one letter makes a difference that everybody sees.
const SHORTEST: usize = 5;

/// Longer texts are no names, bytes; the work grows with the square of the length.
const LONGEST: usize = 200;

/// In shorter parts of a name, such as `hm` and `lm`, another letter is seen.
const SHORTEST_PART: usize = 4;

pub(super) fn look(doubts: &mut Doubts<'_>) {
    let things = doubts.things();
    let parts = parts_in_use(things.iter().map(|thing| &thing.id));
    let mut told = BTreeSet::new();
    let kinds: BTreeSet<Kind> = things.iter().map(|thing| thing.kind).collect();
    for kind in kinds {
        // A name of another kind cannot be taken for it: it does not fit where it stands.
        let ids: Vec<&str> = things.iter().filter(|thing| thing.kind == kind).map(|thing| thing.id.as_str()).collect();
        for (first, second) in pairs(&ids).into_iter().filter(|(first, second)| is_slip(first, second, &parts)) {
            tell(doubts, &things, &first, &second, &mut told, "ids", &format!("`{first}` and `{second}`"));
        }
    }
    for (first, second) in near_titles(doubts, &things) {
        let title = |id: &str| title(doubts, id).unwrap_or_default();
        let (one, other) = (title(&first), title(&second));
        let titles = if one == other { format!("“{one}”") } else { format!("“{one}” and “{other}”") };
        tell(doubts, &things, &first, &second, &mut told, "titles", &format!("`{first}` and `{second}`, {titles},"));
    }
}

fn tell(
    doubts: &mut Doubts<'_>,
    things: &[Declared],
    first: &str,
    second: &str,
    told: &mut BTreeSet<(String, String)>,
    what: &str,
    which: &str,
) {
    let Some(later) = [first, second]
        .into_iter()
        .filter_map(|id| things.iter().find(|thing| thing.id == id))
        .max_by_key(|thing| (thing.kind, thing.place.clone()))
    else {
        return;
    };
    if told.insert((first.to_owned(), second.to_owned())) {
        let help = "choose names that nobody takes for each other, or make them one".to_owned();
        doubts.tell_of(Code::LookAlike, later, format!("the {what} of {which} look alike"), Some(help));
    }
}

/// Pairs of names that are one letter, an underscore or a plural apart, each once.
fn pairs(names: &[&str]) -> BTreeSet<(String, String)> {
    let mut near: Vec<(String, &str)> = Vec::new();
    for name in without_numbered(names) {
        near.extend(outlines(name).map(|outline| (outline, name)));
    }
    near.sort_unstable();
    near.dedup();
    let mut pairs = BTreeSet::new();
    for group in near.chunk_by(|(one, _), (other, _)| one == other) {
        for (nth, (_, second)) in group.iter().enumerate() {
            for (_, first) in group.iter().take(nth).filter(|(_, first)| is_near(first, second)) {
                pairs.insert((first.min(second).to_string(), first.max(second).to_string()));
            }
        }
    }
    pairs
}

fn is_near(first: &str, second: &str) -> bool {
    strsim::osa_distance(first, second) <= 1 || singular(first) == singular(second)
}

/// Of names that differ only in their numbers, which are meant so, the first.
fn without_numbered<'n>(names: &[&'n str]) -> Vec<&'n str> {
    let mut kept: BTreeMap<String, &'n str> = BTreeMap::new();
    for name in names.iter().filter(|name| (SHORTEST..=LONGEST).contains(&name.len())) {
        let lettered = name.chars().filter(|letter| !letter.is_ascii_digit()).collect();
        kept.entry(lettered).or_insert(name);
    }
    kept.into_values().collect()
}

/// What a name becomes by the loss of no letter, of one letter, or of its underscores and plurals: near names share one of
/// these.
fn outlines(name: &str) -> impl Iterator<Item = String> {
    let without = move |lost: usize| {
        name.char_indices().filter(move |(at, _)| *at != lost).map(|(_, letter)| letter).collect::<String>()
    };
    let shortened = name.char_indices().map(move |(at, _)| without(at));
    shortened.chain([name.to_owned(), singular(name)])
}

/// A name without underscores and plural endings.
fn singular(name: &str) -> String {
    name.split('_').map(|part| if part.len() > 2 { part.trim_end_matches('s') } else { part }).collect()
}

/// How many names have each part.
fn parts_in_use<'n>(names: impl Iterator<Item = &'n String>) -> BTreeMap<String, usize> {
    let mut parts = BTreeMap::new();
    for part in names.flat_map(|name| name.split('_')) {
        *parts.entry(part.to_owned()).or_insert(0) += 1;
    }
    parts
}

/// Whether two near names may be one name mistyped, and not `salt_on_flour` and `malt_on_flour`: words that other ids have
/// too are no slips, and numbers count on purpose.
fn is_slip(first: &str, second: &str, parts: &BTreeMap<String, usize>) -> bool {
    if singular(first) == singular(second) {
        return true;
    }
    let (first, second): (Vec<&str>, Vec<&str>) = (first.split('_').collect(), second.split('_').collect());
    let differing: Vec<(&str, &str)> =
        first.iter().zip(&second).filter(|(one, other)| one != other).map(|(one, other)| (*one, *other)).collect();
    let is_word = |part: &str| parts.get(part).is_some_and(|count| *count > 1);
    let numbered = |part: &str| part.chars().any(|letter| letter.is_ascii_digit());
    let meant = |one: &str, other: &str| {
        (is_word(one) && is_word(other))
            || numbered(one)
            || numbered(other)
            || (one.len() == other.len() && one.len() < SHORTEST_PART)
    };
    first.len() != second.len() || !differing.iter().any(|(one, other)| meant(one, other))
}

/// Pairs of ids of one kind with the same or a mistyped title that may stand in one answer.
fn near_titles(doubts: &Doubts<'_>, things: &[Declared]) -> Vec<(String, String)> {
    let mut titles: BTreeMap<Kind, BTreeMap<String, Vec<&str>>> = BTreeMap::new();
    for thing in things {
        if let Some(title) = title(doubts, &thing.id) {
            let plain = title.to_lowercase().replace(' ', "_");
            titles.entry(thing.kind).or_default().entry(plain).or_default().push(&thing.id);
        }
    }
    let parts = parts_in_use(titles.values().flat_map(BTreeMap::keys));
    let mut near = Vec::new();
    for ids in titles.values() {
        for same in ids.values() {
            near.extend(same.iter().zip(same.iter().skip(1)).map(|(first, second)| (*first, *second)));
        }
        for (one, other) in pairs(&ids.keys().map(String::as_str).collect::<Vec<_>>())
            .iter()
            .filter(|(one, other)| is_slip(one, other, &parts))
        {
            near.extend(
                ids.get(one)
                    .and_then(|ids| ids.first())
                    .copied()
                    .zip(ids.get(other).and_then(|ids| ids.first()).copied()),
            );
        }
    }
    let shown_together = near.into_iter().filter(|(first, second)| share_a_product(doubts, first, second));
    shown_together.map(|(one, other)| (one.min(other).to_owned(), one.max(other).to_owned())).collect()
}

fn share_a_product(doubts: &Doubts<'_>, first: &str, second: &str) -> bool {
    let (Some(first), Some(second)) = (doubts.term(first), doubts.term(second)) else { return false };
    doubts.knowledge.views().iter().any(|view| concerns(doubts, view, &first) && concerns(doubts, view, &second))
}

/// Whether a thing may stand in answers for a product.
fn concerns(doubts: &Doubts<'_>, view: &ProductView, term: &Term) -> bool {
    match term {
        Term::Symptom(key) => view.listed_symptoms.contains(key),
        Term::Fact(key) => view.listed_facts.contains(key),
        Term::Reading(key) => view.listed_readings.contains(key),
        Term::Cause(key) => view.causes.contains(key),
        Term::Action(key) => view.causes.iter().any(|cause| {
            doubts.declared().causes[*cause].prescriptions.iter().any(|prescription| prescription.action == *key)
        }),
        _ => true,
    }
}

fn title(doubts: &Doubts<'_>, id: &str) -> Option<String> {
    let declared = doubts.declared();
    let title = match doubts.term(id)? {
        Term::Product(key) => &*declared.products[key].title,
        Term::Family(key) => &*declared.families[key].title,
        Term::Ingredient(key) => &*declared.ingredients[key].title,
        Term::Symptom(key) => &*declared.symptoms[key].title,
        Term::Fact(key) => &*declared.facts[key].title,
        Term::Reading(key) => &*declared.readings[key].title,
        Term::Action(key) => &*declared.actions[key].title,
        Term::Cause(key) => &*declared.causes[key].title,
        _ => return None,
    };
    Some(title.to_owned())
}

#[cfg(test)]
mod tests {
    use super::{is_slip, pairs};
    use std::collections::BTreeMap;

    fn found(names: &[&str]) -> Vec<(String, String)> {
        pairs(names).into_iter().collect()
    }

    #[test]
    fn one_letter_an_underscore_or_a_plural_makes_a_pair_once() {
        let pair = |first: &str, second: &str| vec![(first.to_owned(), second.to_owned())];
        assert_eq!(found(&["pale_crust", "pale_crusts"]), pair("pale_crust", "pale_crusts"));
        assert_eq!(found(&["over_proof", "overproof"]), pair("over_proof", "overproof"));
        assert_eq!(found(&["tins_new", "tin_news"]), pair("tin_news", "tins_new"));
        assert_eq!(found(&["dough_warm", "dough_worm"]), pair("dough_warm", "dough_worm"));
        assert_eq!(found(&["salt", "malt"]), []);
        assert_eq!(found(&["oven_too_hot", "oven_too_cool"]), []);
        let long = "warm ".repeat(5_000);
        assert_eq!(found(&[&format!("{long}dough"), &format!("{long}doughs")]), []);
    }

    #[test]
    fn words_that_other_ids_have_and_numbers_are_no_slips() {
        let parts: BTreeMap<String, usize> = [("salt", 2), ("malt", 2), ("mallt", 1)]
            .into_iter()
            .map(|(part, count)| (part.to_owned(), count))
            .collect();
        assert!(!is_slip("salt_low", "malt_low", &parts));
        assert!(is_slip("mallt_low", "malt_low", &parts));
        assert!(!is_slip("zone_1", "zone_2", &parts));
        assert!(!is_slip("pectin_hm", "pectin_lm", &parts));
        assert!(is_slip("dough_too_warm", "dough_to_warm", &parts));
    }
}
