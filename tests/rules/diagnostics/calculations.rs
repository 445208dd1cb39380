//! Calculations in rules: what is wrong with their inputs is told when the pack is loaded.

use whybake::rules::RuleFiles;

use crate::support::{Changed, assert_loads, assert_told, pack};

/// The small pack with a quantity of its action, on line 9 of `mixing.rhai`.
fn setting(quantity: &str, unit: &str) -> RuleFiles {
    let action = format!(".action(colder_water.set(\"water_temperature\", {quantity}, \"{unit}\"))");
    pack().but("mixing.rhai", ".action(colder_water)", &action)
}

const WHOLE: &str = "mixing_water_temperature(#{ dough_temperature: target(dough_temperature), \
    flour_temperature: room_temperature - 1, room_temperature: room_temperature, friction_factor: 12 })";

#[test]
fn a_calculation_is_a_word_under_its_own_name() {
    assert_loads(&setting(WHOLE, "Cel"));
    assert_loads(&setting(
        "calculate(\"ice_for_mixing_water\", \"ice\", #{ water: 30, tap_temperature: room_temperature, \
        wanted_temperature: 4, way: \"on_top_of_water\" })",
        "kg",
    ));
}

#[test]
fn an_unknown_input_and_a_missing_one_are_told() {
    let files = setting(
        "mixing_water_temperature(#{ dough_temprature: 26, flour_temperature: 22, room_temperature: 24, \
        friction_factor: 12 })",
        "Cel",
    );
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:8:51 [mixing_water_temperature] `mixing_water_temperature` lacks `dough_temperature` -- `dough_temperature`: wanted dough temperature, in `Cel`",
            "unknown-name mixing.rhai:8:51 [mixing_water_temperature] unknown input `dough_temprature` of `mixing_water_temperature` -- did you mean `dough_temperature`?",
        ],
    );
}

#[test]
fn constants_out_of_range_and_words_that_are_not_there_are_told() {
    let files = setting(
        "ice_for_mixing_water(#{ water: 30, tap_temperature: 180, wanted_temperature: 4, way: \"on_top_of_watr\" })",
        "kg",
    );
    assert_told(
        &files,
        &[
            "out-of-range mixing.rhai:8:51 [ice_for_mixing_water] `tap_temperature`: 180 Cel is not between 0 and 60 Cel",
            "unknown-name mixing.rhai:8:51 [ice_for_mixing_water] unknown word `on_top_of_watr` for `way` -- did you mean `on_top_of_water`?",
        ],
    );
}

#[test]
fn what_is_no_map_or_no_number_is_told() {
    assert_told(
        &setting("ice_for_mixing_water(30)", "kg"),
        &[
            "wrong-arguments mixing.rhai:8:51 [ice_for_mixing_water] `ice_for_mixing_water` wants a map of inputs, this is a number -- write `ice_for_mixing_water(#{ water: …, tap_temperature: …, wanted_temperature: … })`",
        ],
    );
    assert_told(
        &setting(
            "ice_for_mixing_water(#{ water: dough_waits, tap_temperature: 18, wanted_temperature: 4, way: 3 })",
            "kg",
        ),
        &[
            "wrong-arguments mixing.rhai:8:51 [ice_for_mixing_water] `water` wants a number, reading or expression, this is a fact -- `water`: mixing water by the formula, in `kg`",
            "wrong-arguments mixing.rhai:8:51 [ice_for_mixing_water] `way` wants one of `in_place_of_water`, `on_top_of_water`, this is a number -- `way`: how the ice is used: `in_place_of_water`, `on_top_of_water`",
        ],
    );
}

#[test]
fn a_reading_of_another_kind_is_told() {
    let files =
        setting("ice_for_mixing_water(#{ water: room_temperature, tap_temperature: 18, wanted_temperature: 4 })", "kg");
    assert_told(
        &files,
        &[
            "unit mixing.rhai:8:51 [ice_for_mixing_water] `water`: `Cel` measures temperature, but mass (`kg`) is wanted -- `water`: mixing water by the formula, in `kg`",
        ],
    );
}

#[test]
fn a_figure_in_a_unit_of_another_kind_is_told() {
    assert_loads(&setting(WHOLE, "[degF]"));
    assert_told(
        &setting(WHOLE, "kg"),
        &[
            "unit mixing.rhai:8:26 [set] `Cel` measures temperature, but mass (`kg`) is wanted -- mixing water temperature is computed in `Cel`",
        ],
    );
}

#[test]
fn names_of_calculations_and_figures_are_suggested() {
    assert_told(
        &setting("calculate(\"ice_for_mixing_watr\", \"ice\", #{})", "kg"),
        &[
            "unknown-name mixing.rhai:8:51 [calculate] unknown calculation `ice_for_mixing_watr` -- did you mean `ice_for_mixing_water`?",
        ],
    );
    assert_told(
        &setting("calculate(\"ice_for_mixing_water\", \"ise\", #{})", "kg"),
        &[
            "unknown-name mixing.rhai:8:51 [calculate] unknown figure `ise` of `ice_for_mixing_water` -- did you mean `ice`?",
        ],
    );
    assert_told(
        &setting("calculate(\"mixing_water_by_heat_balance\", \"water_temperature\", #{})", "Cel"),
        &[
            "unknown-name mixing.rhai:8:51 [calculate] the calculation `mixing_water_by_heat_balance` takes what a rule cannot give",
        ],
    );
}

#[test]
fn a_computed_reading_is_in_the_unit_of_its_calculation() {
    let reading = |unit: &str| {
        let text = format!(
            "reading(\"water_temperature\").title(\"water temperature\").method(\"probe\").plausible(-99, 99).unit(\"{unit}\")\n    .computed({WHOLE});"
        );
        pack().and("readings.rhai", &text)
    };
    assert_loads(&reading("Cel"));
    assert_told(
        &reading("[degF]"),
        &[
            "unit readings.rhai:6:1 [reading] mixing water temperature is computed in `Cel`, but `water_temperature` is in `[degF]` -- write `.unit(\"Cel\")`",
        ],
    );
}

#[test]
fn a_reading_that_is_declared_later_has_no_unit_yet() {
    let files = pack().but(
        "readings.rhai",
        "    .window(soft_rolls, 25, 28);",
        "    .window(soft_rolls, 25, 28)\n    .computed(expected_dough_temperature(#{ water_temperature: 20, flour_temperature: 20, room_temperature: room_temperature, friction_factor: 9 }));",
    );
    assert_told(
        &files,
        &[
            "unit readings.rhai:5:15 [expected_dough_temperature] the unit of `room_temperature` is not stated before this line -- declare the reading first, with its `.unit(…)`",
        ],
    );
}

#[test]
fn constants_that_give_no_figure_are_told() {
    assert_told(
        &setting("bake_loss(#{ dough: 400, baked: 450 })", "%"),
        &[
            "out-of-range mixing.rhai:8:51 [bake_loss] `bake_loss` gives no figure: `baked`: must not be heavier than its dough (400), is 450",
        ],
    );
    assert_told(
        &setting("pectin_setting_class(#{ esterification: 65.5 })", "Cel"),
        &[
            "out-of-range mixing.rhai:8:51 [pectin_setting_class] `pectin_setting_class` has no `setting_temperature_low` for these inputs",
        ],
    );
}
