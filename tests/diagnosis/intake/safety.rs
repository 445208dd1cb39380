//! Complaints that are of people's safety: what they call for, and which words only look so.

use std::collections::BTreeSet;

use whybake::intake::AlarmKind;

use super::{Colloquial, RULES, read, table};

fn kinds(text: &str, product: &str) -> Vec<AlarmKind> {
    read(text, product).cautions.iter().map(|one| one.kind).collect()
}

#[test]
fn a_danger_to_people_is_told_first_and_quoted() {
    for (text, product, kind, quoted) in [
        ("pale crust; piece of metal wire in bun", "hamburger_bun", AlarmKind::ForeignMatter, "metal wire"),
        ("hard plastic in bun", "hamburger_bun", AlarmKind::ForeignMatter, "hard plastic"),
        ("glass in the jam", "jam", AlarmKind::ForeignMatter, "glass"),
        ("an insect was baked into the loaf", "white_pan_bread", AlarmKind::ForeignMatter, "insect"),
        ("a piece of wire in a cookie", "wire_cut_cookie", AlarmKind::ForeignMatter, "wire"),
        ("child sick after eating", "wire_cut_cookie", AlarmKind::IllnessOrInjury, "sick"),
        ("broken tooth", "wire_cut_cookie", AlarmKind::IllnessOrInjury, "broken tooth"),
        ("sesame allergy", "hamburger_bun", AlarmKind::AllergicReaction, "sesame allergy"),
        ("smells of cleaning chemical", "pie_crust", AlarmKind::ChemicalTaint, "cleaning chemical"),
    ] {
        let answer = read(text, product);
        let [caution] = answer.cautions.as_slice() else { panic!("{text}: {:?}", answer.cautions) };
        assert_eq!((caution.kind, caution.quotes[0].text.as_str()), (kind, quoted), "{text}");
        for part in ["Hold and trace the lot", "responsible for food safety", "local law", "does not diagnose"] {
            assert!(caution.text.contains(part), "{part}: {}", caution.text);
        }
        assert!(!caution.text.contains("  "), "{}", caution.text);
        let named = answer.symptoms.iter().filter(|one| one.sure).map(|one| one.symptom);
        assert!(named.into_iter().all(|one| one == "pale_crust"), "{text}: {:?}", answer.symptoms);
    }
}

#[test]
fn a_symptom_that_is_a_danger_itself_stays_one() {
    let answer = read("gluten detected", "gluten_free_cookie");
    assert_eq!(kinds("gluten detected", "gluten_free_cookie"), [AlarmKind::AllergicReaction]);
    assert!(answer.symptoms.first().is_some_and(|one| one.sure), "{:?}", answer.symptoms);
}

#[test]
fn a_danger_is_told_whatever_the_product_is() {
    assert_eq!(kinds("she choked, we went to hospital", ""), [AlarmKind::IllnessOrInjury]);
    assert_eq!(
        kinds("sesame allergy, went to hospital", "hamburger_bun"),
        [AlarmKind::IllnessOrInjury, AlarmKind::AllergicReaction]
    );
}

#[test]
fn words_of_the_trade_and_denied_ones_call_for_nothing() {
    for (text, product) in [
        ("plastic range of the fat too narrow", "pie_crust"),
        ("wire drag on the underside", "wire_cut_cookie"),
        ("hair cracks after two days", "wire_cut_cookie"),
        ("metallic taste", "gluten_free_cookie"),
        ("no metal found, crust pale", "white_pan_bread"),
    ] {
        assert_eq!(kinds(text, product), [], "{text}");
    }
}

/// No complaint of the tables is of people's safety.
#[test]
fn complaints_about_baking_call_for_nothing() {
    let tables = ["complaints/colloquial.csv", "complaints/fresh_tuned.csv"].map(table::<Colloquial>);
    let rows: BTreeSet<(String, String)> = tables.into_iter().flatten().map(|row| (row.text, row.product)).collect();
    for (text, product) in rows {
        assert_eq!(kinds(&text, &product), [], "{text}");
    }
}

/// What names of symptoms have that are of people's safety, too: the smell of too much soda or of rancid fat is like that of
/// cleaning agents or paint, which nobody can tell from words alone, and gluten is a danger where it is found.
const OF_BOTH: [&str; 5] = ["cleaning", "paint", "gluten", "coeliac", "celiac"];

/// Neither is any other name or description that the rules have for a symptom.
#[test]
fn names_of_symptoms_call_for_nothing() {
    let declared = &RULES.diagnostician.knowledge().declared;
    let mut raising: Vec<&str> = Vec::new();
    for (_, symptom) in declared.symptoms.iter() {
        let texts: [&str; 2] = [&symptom.title, &symptom.description];
        let names = texts.into_iter().chain(symptom.synonyms.iter().map(String::as_str));
        raising.extend(
            names.filter(|name| !OF_BOTH.iter().any(|both| name.contains(both)) && !kinds(name, "").is_empty()),
        );
    }
    assert_eq!(raising, Vec::<&str>::new());
}
