//! Names and words that nothing declares.

use crate::support::{Changed, assert_loads, assert_told, pack};

#[test]
fn a_misspelt_name_is_told_with_a_suggestion() {
    let files = pack().but("mixing.rhai", "dough_temperature.rises", "dough_temprature.rises");
    assert_told(
        &files,
        &[
            "unknown-name mixing.rhai:7:15 [dough_temprature] unknown name `dough_temprature` -- did you mean `dough_temperature`?",
        ],
    );
}

#[test]
fn a_name_unlike_all_others_gets_no_suggestion() {
    let files = pack().but("mixing.rhai", "dough_temperature.rises", "viscosity.rises");
    assert_told(&files, &["unknown-name mixing.rhai:7:15 [viscosity] unknown name `viscosity`"]);
}

#[test]
fn two_misspelt_names_in_one_file_are_both_told() {
    let files = pack().but("mixing.rhai", "prior(COMMON)", "prior(COMON)").but(
        "mixing.rhai",
        "(colder_water)",
        "(colder_watr)",
    );
    assert_told(
        &files,
        &[
            "unknown-name mixing.rhai:5:12 [COMON] unknown name `COMON` -- did you mean `COMMON`?",
            "unknown-name mixing.rhai:8:13 [colder_watr] unknown name `colder_watr` -- did you mean `colder_water`?",
        ],
    );
}

#[test]
fn misspelt_names_in_two_files_and_two_stages_are_both_told() {
    let files =
        pack().but("mixing.rhai", "prior(COMMON)", "prior(COMON)").but("readings.rhai", "(soft_rolls", "(soft_rols");
    assert_told(
        &files,
        &[
            "unknown-name readings.rhai:4:13 [soft_rols] unknown name `soft_rols` -- did you mean `soft_rolls`?",
            "unknown-name mixing.rhai:5:12 [COMON] unknown name `COMON` -- did you mean `COMMON`?",
        ],
    );
}

#[test]
fn the_same_misspelt_name_is_told_wherever_it_stands() {
    let files = pack().but("mixing.rhai", "temperature.rises", "temprature.rises").but(
        "mixing.rhai",
        "temperature >",
        "temprature >",
    );
    assert_told(
        &files,
        &[
            "unknown-name mixing.rhai:7:15 [dough_temprature] unknown name `dough_temprature` -- did you mean `dough_temperature`?",
            "unknown-name mixing.rhai:9:14 [dough_temprature] unknown name `dough_temprature` -- did you mean `dough_temperature`?",
        ],
    );
}

#[test]
fn the_same_misspelt_name_in_two_files_is_told_twice() {
    let other = "cause(\"other\").title(\"o\").mechanism(\"m\").products(soft_rolls).prior(COMON);";
    let files = pack().but("mixing.rhai", "prior(COMMON)", "prior(COMON)").with("other.rhai", other);
    assert_told(
        &files,
        &[
            "unknown-name mixing.rhai:5:12 [COMON] unknown name `COMON` -- did you mean `COMMON`?",
            "unknown-name other.rhai:1:69 [COMON] unknown name `COMON` -- did you mean `COMMON`?",
        ],
    );
}

#[test]
fn the_place_of_a_fault_counts_characters_not_bytes() {
    let files = pack().property("/* Σ für °C */ .shows(low_volme, OFTEN)");
    assert_told(
        &files,
        &["unknown-name mixing.rhai:10:27 [low_volme] unknown name `low_volme` -- did you mean `low_volume`?"],
    );
}

#[test]
fn a_misspelt_property_is_told_with_a_suggestion() {
    let files = pack().property(".evidnce(dough_temperature > 29, STRONG)");
    assert_told(
        &files,
        &["unknown-word mixing.rhai:10:6 [evidnce] unknown word `evidnce` -- did you mean `evidence`?"],
    );
}

#[test]
fn a_misspelt_condition_is_told_with_a_suggestion() {
    let files = pack().property(".evidence(dough_temperature.betwen(20, 25), STRONG)");
    assert_told(&files, &["unknown-word mixing.rhai:10:33 [betwen] unknown word `betwen` -- did you mean `between`?"]);
}

#[test]
fn a_misspelt_free_word_is_told_with_a_suggestion() {
    let files = pack().and("mixing.rhai", "cuase(\"x\").title(\"X\");");
    assert_told(&files, &["unknown-word mixing.rhai:11:1 [cuase] unknown word `cuase` -- did you mean `cause`?"]);
}

#[test]
fn a_misspelt_word_among_options_is_told_with_a_suggestion() {
    let files = pack().property(".evidence(dough_waits, STRONG, agianst(MODERATE))");
    assert_told(
        &files,
        &["unknown-word mixing.rhai:10:36 [agianst] unknown word `agianst` -- did you mean `against`?"],
    );
}

#[test]
fn a_word_after_the_wrong_thing_tells_what_it_follows() {
    let files = pack().property(".unit(\"Cel\")");
    assert_told(
        &files,
        &["wrong-arguments mixing.rhai:10:6 [unit] `unit` does not follow a cause -- it follows a reading, a limit"],
    );
}

#[test]
fn an_unknown_formula_quantity_is_told_with_a_suggestion() {
    let files = pack().property(".evidence(formula(\"salt_on_flower\") > 3, STRONG)");
    assert_told(
        &files,
        &[
            "unknown-name mixing.rhai:10:15 [formula] unknown formula quantity `salt_on_flower` -- did you mean `salt_on_flour`?",
        ],
    );
}

#[test]
fn an_unknown_part_lists_the_parts() {
    let files = pack().but("symptoms.rhai", ".title(\"Hollow\")", ".title(\"Hollow\").part(\"crumbs\")");
    assert_told(
        &files,
        &[
            "unknown-name symptoms.rhai:1:47 [part] unknown part `crumbs` -- the parts are crust, crumb, shape, volume, flavour, keeping, dough, filling",
        ],
    );
}

#[test]
fn names_may_be_used_before_they_are_declared_in_the_same_stage() {
    let early = "reading(\"heat_gain\").title(\"heat gain\").method(\"computed\").unit(\"Cel\").plausible(-50, 50)\n    \
                 .computed(late_temperature - room_temperature);\n\
                 reading(\"late_temperature\").title(\"late temperature\").method(\"probe\").unit(\"Cel\").plausible(-5, 60);";
    assert_loads(&pack().with("early/readings.rhai", early));
}

#[test]
fn names_of_a_later_stage_are_unknown() {
    let files = pack().but("readings.rhai", ".method(\"probe\")", ".method(\"probe\").low_shows(colder_water)");
    assert_told(&files, &["unknown-name readings.rhai:1:83 [colder_water] unknown name `colder_water`"]);
}
