//! Names for people of what an answer gives in ids.

use super::answer::GivenFormula;
use super::sentence::{in_sentence, short};
use crate::knowledge::Declarations;

/// Title of a reading, fact, symptom or ingredient; what has none is its id in words.
pub(crate) fn title_of(declared: &Declarations, id: &str) -> String {
    let reading = declared.readings.find(id).map(|key| declared.readings[key].title.as_str());
    let fact = || declared.facts.find(id).map(|key| declared.facts[key].title.as_str());
    let symptom = || declared.symptoms.find(id).map(|key| declared.symptoms[key].title.as_str());
    let ingredient = || declared.ingredients.find(id).map(|key| declared.ingredients[key].title.as_str());
    reading.or_else(fact).or_else(symptom).or_else(ingredient).map_or_else(|| in_words(id), in_sentence)
}

/// The formula as something that is needed: of a formula that is given only a part can be missing.
pub(crate) fn needed(declared: &Declarations, id: &str, formula: GivenFormula) -> String {
    match (id, formula) {
        ("formula", GivenFormula::InMass) => "the formula with all its ingredients".to_owned(),
        ("formula", GivenFormula::InPercent) => "the formula of a batch in kg, with all its ingredients".to_owned(),
        ("formula", GivenFormula::Not) => "the whole formula".to_owned(),
        _ => title_of(declared, id),
    }
}

/// Name of a quantity that an action sets: that of the reading or ingredient that it is called after, else its own. One
/// that begins with "or" is a choice instead of the one before it.
pub(crate) fn quantity_name(declared: &Declarations, name: &str) -> String {
    if let Some(choice) = name.strip_prefix("or_") {
        return format!("or {}", quantity_name(declared, choice));
    }
    if declared.readings.find(name).is_some() {
        return title_of(declared, name);
    }
    let (ingredient, basis) = name.strip_suffix("_on_flour").map_or((name, ""), |of| (of, " on flour"));
    let title = declared.ingredients.find(ingredient).map(|key| &declared.ingredients[key].title);
    title.map_or_else(|| in_words(name), |title| format!("{}{basis}", in_sentence(short(title))))
}

/// An id in words.
fn in_words(id: &str) -> String {
    let words = id.split('_').map(|word| if word == "ph" { "pH" } else { word });
    words.collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::in_words;

    #[test]
    fn ids_become_words() {
        assert_eq!(in_words("ph_of_the_brine"), "pH of the brine");
        assert_eq!(in_words("time_at_the_boil"), "time at the boil");
    }
}
