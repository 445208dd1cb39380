//! Words used with the wrong number or kind of things.

use crate::support::{Changed, assert_told, pack};

#[test]
fn a_wrong_kind_of_argument_tells_both_kinds() {
    let files = pack().but("mixing.rhai", "shows(hollow_under_crust, OFTEN)", "shows(dough_temperature, OFTEN)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:6:6 [shows] `shows` wants a symptom, this is a reading -- write `.shows(hollow_under_crust, OFTEN)`",
        ],
    );
}

#[test]
fn words_of_one_scale_do_not_pass_for_another() {
    let files = pack().but("mixing.rhai", "prior(COMMON)", "prior(OFTEN)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:5:6 [prior] `prior` wants a prior, this is a strength -- write `.prior(COMMON)` or `.prior(hamburger_bun, 0.12)`",
        ],
    );
}

#[test]
fn a_text_in_place_of_a_number_is_told() {
    let files = pack().but("readings.rhai", "plausible(-5, 60)", "plausible(-5, \"60\")");
    assert_told(
        &files,
        &[
            "wrong-arguments readings.rhai:3:6 [plausible] `plausible` wants a number, this is a text -- write `.plausible(-5, 60)`",
        ],
    );
}

#[test]
fn too_few_arguments_are_counted() {
    let files = pack().but("mixing.rhai", "shows(hollow_under_crust, OFTEN)", "shows(hollow_under_crust)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:6:6 [shows] `shows` takes 2 arguments, 1 given -- write `.shows(hollow_under_crust, OFTEN)`",
        ],
    );
}

#[test]
fn too_many_arguments_are_counted() {
    let files = pack().property(".action(colder_water, OFTEN, 3)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:6 [action] `action` takes at most 2 arguments, 3 given -- write `.action(colder_mixing_water)` or `.action(colder_mixing_water, USUALLY)`",
        ],
    );
}

#[test]
fn a_word_without_its_arguments_is_told() {
    let files = pack().but("mixing.rhai", "cause(\"dough_too_warm\")", "cause()");
    assert_told(
        &files,
        &["wrong-arguments mixing.rhai:1:1 [cause] `cause` cannot be used like this -- write `cause(\"id\")`"],
    );
}

#[test]
fn a_property_without_its_argument_is_told() {
    let files = pack().but("mixing.rhai", "title(\"Dough too warm\")", "title()");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:2:6 [title] `title` takes 1 argument, 0 given -- write `.title(\"Hollow under the top crust\")`",
        ],
    );
}

#[test]
fn more_arguments_than_any_word_takes_are_told() {
    let many = ["soft_rolls"; 12].join(", ");
    let files = pack().property(&format!(".products({many})"));
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:6 [products] `products` takes at most 9 arguments, 12 given -- put them into a list: `[…, …]`",
        ],
    );
}

#[test]
fn double_ampersand_tells_to_write_one() {
    let files = pack().property(".evidence(dough_waits && room_temperature > 28, STRONG)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:15 [d] a condition is judged for every case, not while the file is read -- join conditions with `&`, `|` and `!`",
        ],
    );
}

#[test]
fn a_condition_in_an_if_is_told() {
    let files = pack().and("mixing.rhai", "if dough_waits { 1 } else { 2 }");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:11:4 [d] a condition is judged for every case, not while the file is read -- join conditions with `&`, `|` and `!`",
        ],
    );
}

#[test]
fn equality_of_a_measured_value_is_told() {
    let files = pack().property(".evidence(dough_temperature == 28, STRONG)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:33 [==] `==` does not make a condition of a measured value -- write `.between(low, high)`, or `>` and `<`",
        ],
    );
}

#[test]
fn inequality_of_a_measured_value_is_told() {
    let files = pack().property(".evidence(dough_temperature != 28.5, STRONG)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:33 [!=] `!=` does not make a condition of a measured value -- write `.between(low, high)`, or `>` and `<`",
        ],
    );
}

#[test]
fn joining_a_reading_as_if_it_were_a_condition_is_told() {
    let files = pack().property(".evidence(dough_waits & room_temperature, STRONG)");
    assert_told(
        &files,
        &["wrong-arguments mixing.rhai:10:27 [&] `&` wants a condition, this is a reading -- write `a & b`"],
    );
}

#[test]
fn a_second_weight_tells_to_write_against() {
    let files = pack().property(".evidence(dough_waits, STRONG, MODERATE)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:6 [evidence] a second weight stands in `against(…)` -- write `.evidence(dough_temperature > 29, STRONG, against(MODERATE))`",
        ],
    );
}

#[test]
fn inputs_of_judged_are_things_that_can_be_known() {
    let files = pack().property(".evidence(judged([COMMON], \"words\", |a| a > 1), STRONG)");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:15 [judged] the inputs of `judged` are readings, facts or `baker_percent(…)` of one ingredient -- write `judged([dough_temperature, room_temperature], \"in words\", |dough, room| dough - room > 5)`",
        ],
    );
}
