//! What a complaint is about: the product, its pack, an ingredient, the shop, another time.

use whybake::intake::{Interpretation, Saying};

use super::{check_draft, read};

fn sure<'k>(answer: &Interpretation<'k>) -> Vec<(&'k str, Saying)> {
    answer.symptoms.iter().filter(|one| one.sure).map(|one| (one.symptom, one.said)).collect()
}

fn readings<'k>(answer: &Interpretation<'k>) -> Vec<&'k str> {
    answer.readings.iter().map(|one| one.reading).collect()
}

#[test]
fn a_word_that_names_a_symptom_stays_one_beside_a_value() {
    for text in ["mould after 3 days", "mold after 3 days", "mould on the crust after 3 days in the shop"] {
        let answer = read(text, "white_pan_bread");
        assert!(sure(&answer).contains(&("mould", Saying::Present)), "{text}: {:?}", answer.symptoms);
        check_draft(&answer, text);
    }
    let answer = read("mould after 3 days", "white_pan_bread");
    assert_eq!(readings(&answer), ["mould_free_days"]);
}

#[test]
fn words_of_a_reading_alone_name_no_symptom() {
    for (text, product) in [
        ("dough temperature 31", "white_pan_bread"),
        ("dough temperature 31 °C", "white_pan_bread"),
        ("mould-free life 21 days", "white_pan_bread"),
        ("acrylamide 120 µg/kg", "wire_cut_cookie"),
    ] {
        assert_eq!(sure(&read(text, product)), [], "{text}");
    }
}

#[test]
fn what_is_said_of_the_pack_is_no_fault_of_the_product() {
    let text = "mould on soft cookies after 3 weeks, bags wet inside, aw was 0.78";
    let answer = read(text, "deposited_cookie");
    assert_eq!(sure(&answer), [("mould", Saying::Present)], "{:?}", answer.symptoms);
    for text in ["the wrapper is wet inside", "the lid of the tub was wet inside", "trays wet inside"] {
        assert_eq!(sure(&read(text, "deposited_cookie")), [], "{text}");
    }
    // The pack is only where it happens.
    assert_eq!(sure(&read("pale crust in the bag", "white_pan_bread")), [("pale_crust", Saying::Present)]);
}

#[test]
fn what_is_said_of_an_ingredient_is_no_fault_of_the_product() {
    for text in ["too wide; the butter was soft", "too wide; soft butter", "too wide, butter too soft"] {
        assert_eq!(sure(&read(text, "wire_cut_cookie")), [("too_much_spread", Saying::Present)], "{text}");
    }
}

#[test]
fn approved_words_are_no_fault() {
    for text in ["top is nice and brown but sides cave in", "top brown and nice but sides cave in"] {
        assert_eq!(sure(&read(text, "hamburger_bun")), [("caved_sides", Saying::Present)], "{text}");
    }
    let answer = read("top is good and sides cave in", "hamburger_bun");
    assert_eq!(sure(&answer), [("caved_sides", Saying::Present)], "{:?}", answer.symptoms);
}

#[test]
fn what_was_not_there_yet_is_no_lack_of_it() {
    let answer = read("cracked the day after packing, no cracks when packed", "deposited_cookie");
    assert_eq!(sure(&answer), [("checking", Saying::Present)], "{:?}", answer.symptoms);
    let answer = read("mould after 5 days, no mould at packing", "white_pan_bread");
    assert!(answer.contradictions.is_empty(), "{:?}", answer.contradictions);
    assert_eq!(sure(&answer), [("mould", Saying::Present)], "{:?}", answer.symptoms);
    // With nothing told of another time it is a denial as any.
    let answer = read("no cracks when packed", "deposited_cookie");
    assert_eq!(sure(&answer), [("smooth_top", Saying::Present)], "{:?}", answer.symptoms);
}

#[test]
fn the_temperature_of_a_place_is_none_of_an_ingredient() {
    let answer = read("gelatin glaze melts on the strawberries in the shop at 30 degrees", "gelled_filling");
    assert_eq!(sure(&answer), [("gel_melts_warm", Saying::Present)]);
    assert_eq!(readings(&answer), Vec::<&str>::new());
    assert!(answer.values[0].suggestions.iter().all(|one| one.reading != "gelatin_temperature"), "{:?}", answer.values);
    assert_eq!(readings(&read("gelatin at 85 °C", "gelled_filling")), ["gelatin_temperature"]);
}

#[test]
fn a_unit_that_names_what_was_measured_suggests_nothing_else() {
    let answer = read("Brix 52", "filled_hand_pie");
    assert!(answer.readings.is_empty() && answer.values[0].suggestions.is_empty(), "{:?}", answer.values);
    assert!(answer.values[0].reason.contains("no reading of that kind"), "{}", answer.values[0].reason);
    assert_eq!(readings(&read("Brix 52", "fruit_filling")), ["filling_soluble_solids"]);
}
