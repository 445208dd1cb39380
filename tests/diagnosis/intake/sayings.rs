//! What a complaint says of what it names: denials, subjects carried on, degrees of certainty and of temperature.

use whybake::intake::{Interpretation, Saying};

use super::{RULES, check_draft, read};

fn said(answer: &Interpretation<'_>, symptom: &str) -> Option<Saying> {
    answer.symptoms.iter().find(|one| one.symptom == symptom).map(|one| one.said)
}

fn certainty(answer: &Interpretation<'_>, symptom: &str) -> Option<(Option<bool>, Option<f64>)> {
    let draft = answer.draft.as_ref().unwrap();
    draft.symptoms.iter().find(|one| one.symptom == symptom).map(|one| (one.present, one.certainty))
}

#[test]
fn a_statement_without_a_subject_carries_on_the_one_before() {
    let answer = read("crumb is not sticky and not grey", "white_pan_bread");
    for symptom in ["gummy_crumb", "grey_crumb"] {
        assert_eq!(said(&answer, symptom), Some(Saying::Absent), "{symptom}: {:?}", answer.symptoms);
    }
    assert_eq!(certainty(&answer, "grey_crumb"), Some((Some(false), None)));
    let answer = read("the crust is pale, leathery", "white_pan_bread");
    for symptom in ["pale_crust", "leathery_crust"] {
        assert_eq!(said(&answer, symptom), Some(Saying::Present), "{symptom}: {:?}", answer.symptoms);
    }
    // The "and" leaves open whether the denial reaches over it.
    let answer = read("crumb is not sticky and grey", "white_pan_bread");
    assert_eq!(said(&answer, "grey_crumb"), Some(Saying::Unclear), "{:?}", answer.symptoms);
}

#[test]
fn small_degrees_are_of_low_certainty_and_no_denials() {
    for (text, expected, weight) in [
        ("crust hardly cracked", Saying::Hardly, 0.3),
        ("crust barely cracked", Saying::Hardly, 0.3),
        ("crust slightly cracked", Saying::Present, 0.7),
        ("crust a little cracked", Saying::Present, 0.7),
    ] {
        let answer = read(text, "white_pan_bread");
        assert_eq!(said(&answer, "cracked_crust"), Some(expected), "{text}: {:?}", answer.symptoms);
        assert_eq!(certainty(&answer, "cracked_crust"), Some((None, Some(weight))), "{text}");
        check_draft(&answer, text);
    }
    // "Hardly" belongs to the name of what is missing.
    let answer = read("hardly any oven spring", "white_pan_bread");
    assert_eq!(said(&answer, "poor_oven_spring"), Some(Saying::Present), "{:?}", answer.symptoms);
}

#[test]
fn opposite_words_do_not_match_each_other() {
    for (text, product, right, wrong) in [
        ("low loaf volume", "white_pan_bread", "low_volume", "excess_volume"),
        ("volume too high", "white_pan_bread", "excess_volume", "low_volume"),
        ("the crust is burnt", "white_pan_bread", "dark_crust", "pale_crust"),
        ("crust far too light", "white_pan_bread", "pale_crust", "dark_crust"),
        ("crust too soft", "white_pan_bread", "soft_crust", "hard_crust"),
        ("crust hardened", "white_pan_bread", "hard_crust", "soft_crust"),
        ("too little spread", "wire_cut_cookie", "too_little_spread", "too_much_spread"),
        ("much too thin", "wire_cut_cookie", "too_much_spread", "too_little_spread"),
        ("crumb too dry", "white_pan_bread", "dry_crumb", "gummy_crumb"),
    ] {
        let answer = read(text, product);
        let first = answer.symptoms.first().map(|one| one.symptom);
        assert_eq!(first, Some(right), "{text}: {:?}", answer.symptoms);
        assert_eq!(said(&answer, wrong), None, "{text}: {:?}", answer.symptoms);
    }
}

#[test]
fn degrees_are_of_the_only_scale_in_which_the_reading_can_have_them() {
    for (text, celsius, other) in [
        ("dough was 31 degrees", 31.0, "31 [degF]"),
        ("dough was 88 degrees", 280.0 / 9.0, "88 Cel"),
        ("dough at 31°", 31.0, "31 [degF]"),
    ] {
        let answer = read(text, "white_pan_bread");
        let told = answer.readings.first().unwrap_or_else(|| panic!("{text}: {:?}", answer.values));
        assert_eq!((told.reading, told.unit), ("dough_temperature", "Cel"));
        assert!((told.value - celsius).abs() < 1e-9, "{text}: {}", told.value);
        assert!(told.note.as_ref().is_some_and(|note| note.contains(other)), "{:?}", told.note);
    }
}

#[test]
fn degrees_that_can_be_of_either_scale_are_left_to_choose() {
    let answer = read("oven temperature 240 degrees", "white_pan_bread");
    assert!(answer.readings.is_empty(), "{:?}", answer.readings);
    let value = &answer.values[0];
    let units: Vec<(&str, bool)> = value.units.iter().map(|unit| (unit.unit, unit.plausible)).collect();
    assert_eq!(units, [("Cel", true), ("[degF]", true)]);
    assert!((value.units[1].value - 1040.0 / 9.0).abs() < 1e-9 && value.units[1].reading_unit == "Cel");
    assert_eq!(value.suggestions[0].reading, "oven_temperature");
    // In neither, and of what nobody names.
    let answer = read("dough was 900 degrees", "white_pan_bread");
    assert!(answer.values[0].units.iter().all(|unit| !unit.plausible), "{:?}", answer.values);
    let answer = read("it was 31 degrees", "white_pan_bread");
    assert!(answer.values[0].units.is_empty() && answer.values[0].reason.contains("scale"), "{:?}", answer.values);
}

#[test]
fn the_expected_is_not_what_is_there() {
    for (text, product, right, not_present) in [
        ("should be crisp but bends", "wire_cut_cookie", "not_crisp", "too_crisp"),
        ("should be soft but is hard", "gluten_free_soft_cookie", "hard_bite", "not_crisp"),
        ("they used to be chewy", "wire_cut_cookie", "not_chewy", "too_crisp"),
        ("supposed to be smooth on top but the surface has cracks", "deposited_cookie", "cracked_top", "smooth_top"),
        ("underside not browned", "wire_cut_cookie", "pale_underside", "dark_bottom"),
    ] {
        let answer = read(text, product);
        assert!(
            answer.symptoms.iter().take(3).any(|one| one.symptom == right && one.said == Saying::Present),
            "{text}: {:?}",
            answer.symptoms
        );
        let other = answer.symptoms.iter().find(|one| one.symptom == not_present);
        assert!(!other.is_some_and(|one| one.sure && one.said == Saying::Present), "{text}: {other:?}");
    }
}

fn sure(answer: &Interpretation<'_>) -> Vec<(&'static str, Saying)> {
    let all = RULES.diagnostician.knowledge();
    let id = |id: &str| all.declared.symptoms.find(id).map(|key| all.declared.symptoms[key].id.as_str()).unwrap();
    answer.symptoms.iter().filter(|one| one.sure).map(|one| (id(one.symptom), one.said)).collect()
}

#[test]
fn a_lack_of_one_thing_is_no_lack_of_the_next() {
    let answer = read("low volume; sour smell and the crumb is grey", "white_pan_bread");
    for symptom in ["low_volume", "sour_flavour", "grey_crumb"] {
        assert_eq!(said(&answer, symptom), Some(Saying::Present), "{symptom}: {:?}", answer.symptoms);
    }
}

#[test]
fn what_was_so_on_an_earlier_day_is_not_what_is_there() {
    let answer = read("crust was soft on Monday, leathery by Friday", "white_pan_bread");
    assert_eq!(sure(&answer), [("leathery_crust", Saying::Present)]);
    let answer = read("crisp on Monday, soft by Friday", "wire_cut_cookie");
    assert_eq!(sure(&answer), [("not_crisp", Saying::Present)]);
    // One day alone tells when it was seen.
    assert_eq!(sure(&read("pale crust on Monday", "white_pan_bread")), [("pale_crust", Saying::Present)]);
}

#[test]
fn what_a_crumb_is_compared_with_is_no_fault_of_its_own() {
    for text in ["dense as a rock", "crumb dense as a rock"] {
        let answer = read(text, "white_pan_bread");
        assert!(
            answer.symptoms.iter().take(3).any(|one| one.symptom == "dense_grain"),
            "{text}: {:?}",
            answer.symptoms
        );
    }
}

#[test]
fn pastry_that_is_being_rolled_is_not_dry_to_eat() {
    let answer = read("pastry too dry, falls apart while rolling", "pie_crust");
    assert_eq!(sure(&answer), [], "{:?}", answer.symptoms);
    assert!(answer.symptoms.iter().take(3).any(|one| one.symptom == "dry_dough"), "{:?}", answer.symptoms);
    assert_eq!(sure(&read("pastry too dry", "pie_crust")), [("dry_pastry", Saying::Present)]);
}

#[test]
fn approval_and_another_part_name_nothing_sure() {
    for (text, product, symptom) in [
        ("no colour problems", "white_pan_bread", "pale_crust"),
        ("the jelly is firm enough", "jam", "filling_rubbery"),
        ("the lid has a nice brown", "pie_crust", "dark_crust"),
        ("the crumb is hard", "white_pan_bread", "hard_crust"),
        ("small bubbles on top", "hamburger_bun", "low_volume"),
    ] {
        let answer = read(text, product);
        let sure = answer.symptoms.iter().any(|one| one.symptom == symptom && one.sure);
        assert!(!sure, "{text}: {:?}", answer.symptoms);
    }
}

#[test]
fn values_beside_each_other_share_what_they_are_of() {
    let told = |text: &str, product: &str| {
        let answer = read(text, product);
        answer.readings.iter().map(|one| (one.reading.to_owned(), one.value)).collect::<Vec<_>>()
    };
    let own = |reading: &str, value: f64| (reading.to_owned(), value);
    assert_eq!(
        told("flat buns, proofer 38 °C, 85 % rH, 55 min", "hamburger_bun"),
        [own("proof_temperature", 38.0), own("proof_humidity", 85.0), own("proof_time", 55.0)]
    );
    // Only the oven is so hot.
    assert_eq!(
        told("pale, 25 min / 200 °C", "white_pan_bread"),
        [own("bake_time", 25.0), own("oven_temperature", 200.0)]
    );
    assert_eq!(told("aw 0,52", "wire_cut_cookie"), [own("water_activity", 0.52)]);
    // What is usual or allowed was not measured.
    assert_eq!(told("usually the dough is at 26 °C", "white_pan_bread"), []);
}

#[test]
fn a_word_for_the_product_is_no_slip_of_another() {
    let heard = read("burger buns come out flat", "hamburger_bun");
    assert!(heard.facts.is_empty(), "{:?}", heard.facts);
}
