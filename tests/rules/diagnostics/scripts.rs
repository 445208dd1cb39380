//! Scripts: syntax, functions, loops, imports and closures.

use whybake::rules::load;

use crate::support::{Changed, assert_loads, assert_told, pack};

#[test]
fn a_syntax_fault_is_told_and_does_not_spread() {
    let files = pack().but("mixing.rhai", "prior(COMMON)", "prior(COMMON");
    assert_told(
        &files,
        &["syntax mixing.rhai:10:29 [;] expecting `,` to separate the arguments to function call `prior`"],
    );
}

#[test]
fn a_syntax_fault_in_a_vocabulary_file_does_not_make_its_names_unknown() {
    let files = pack().but("facts.rhai", ".title(", ".title((");
    let told = crate::support::told(&files);
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].starts_with("syntax facts.rhai:"), "{told:?}");
}

#[test]
fn a_syntax_fault_does_not_hide_faults_of_other_files() {
    let files = pack().but("readings.rhai", ".plausible(-5, 60)", ".plausible(-5 60)").but(
        "mixing.rhai",
        "prior(COMMON)",
        "prior(COMON)",
    );
    assert_told(
        &files,
        &[
            "syntax readings.rhai:3:19 [6] expecting `,` to separate the arguments to function call `plausible`",
            "unknown-name mixing.rhai:5:12 [COMON] unknown name `COMON` -- did you mean `COMMON`?",
        ],
    );
}

#[test]
fn a_file_that_fails_while_it_runs_tells_the_place() {
    let files = pack().and("mixing.rhai", "let weights = [1, 2];\nweights[7];");
    assert_told(&files, &["script mixing.rhai:12:9 [7] array index 7 out of bounds: only 2 elements in array"]);
}

#[test]
fn functions_may_make_rules() {
    let made = "fn late(id, reading, from, to) {\n    \
                    cause(id).title(id).mechanism(\"m\").products(soft_rolls).prior(COMMON)\n        \
                        .shows(low_volume, OFTEN).evidence(reading.rises(from, to), STRONG, against(MODERATE))\n        \
                        .action(colder_water).confirm(reading > to).source(common_practice)\n\
                }\n\
                late(\"first\", dough_temperature, 28, 30);\n\
                late(\"second\", room_temperature, 30, 35);";
    let files = pack().with("made.rhai", made);
    assert_loads(&files);
    let ids: Vec<String> = load(&files).unwrap().knowledge.declared.causes.ids().map(str::to_owned).collect();
    assert!(["dough_too_warm", "first", "second"].iter().all(|id| ids.iter().any(|own| own == id)), "{ids:?}");
}

#[test]
fn loops_may_make_rules() {
    let made = "for step in 1..=3 {\n    \
                    cause(\"step_\" + step).title(\"Step \" + step).mechanism(\"m\").products(soft_rolls).prior(COMMON)\n        \
                        .shows(low_volume, OFTEN).evidence(dough_temperature > 28 + step, STRONG, against(MODERATE))\n        \
                        .action(colder_water).confirm(dough_waits).source(common_practice);\n\
                }";
    let files = pack().with("made.rhai", made);
    assert_loads(&files);
    assert_eq!(load(&files).unwrap().knowledge.declared.causes.len(), 4);
}

#[test]
fn a_fault_in_a_function_is_told_where_it_stands() {
    let files = pack().and("mixing.rhai", "fn weigh(x) {\n    x.rises(30, 28)\n}\nweigh(dough_temperature);");
    assert_told(
        &files,
        &["out-of-range mixing.rhai:12:7 [rises] `rises` starts at 30, the larger end -- write `.falls(30, 28)`"],
    );
}

#[test]
fn a_misspelt_name_in_a_function_is_told() {
    let files = pack().and("mixing.rhai", "fn warm() {\n    dough_temprature > 29\n}\nwarm();");
    assert_told(
        &files,
        &[
            "unknown-name mixing.rhai:12:5 [dough_temprature] unknown name `dough_temprature` -- did you mean `dough_temperature`?",
        ],
    );
}

#[test]
fn functions_of_the_library_can_be_imported() {
    let files = pack()
        .with("lib/ramps.rhai", "fn warm(reading, from) {\n    reading.rises(from, from + 2)\n}\n")
        .but("mixing.rhai", "cause(", "import \"lib/ramps\" as ramps;\ncause(")
        .property(".evidence(ramps::warm(room_temperature, 30), STRONG, against(MODERATE))");
    assert_loads(&files);
}

#[test]
fn a_fault_in_a_library_function_is_told_where_it_stands() {
    let files = pack()
        .with("lib/ramps.rhai", "fn warm(reading, from) {\n    reading.rises(from, from - 2)\n}\n")
        .but("mixing.rhai", "cause(", "import \"lib/ramps\" as ramps; cause(")
        .property(".evidence(ramps::warm(room_temperature, 30), STRONG)");
    assert_told(
        &files,
        &["out-of-range lib/ramps.rhai:2:13 [rises] `rises` starts at 30, the larger end -- write `.falls(30, 28)`"],
    );
}

#[test]
fn an_import_of_nothing_is_told() {
    let files = pack().but("mixing.rhai", "cause(", "import \"lib/none\" as none; cause(");
    assert_told(&files, &["script mixing.rhai:1:8 [\"] module not found: lib/none"]);
}

#[test]
fn closures_judge_readings_and_facts() {
    assert_loads(&pack().property(
        ".evidence(judged([dough_temperature, dough_waits], \"warm and waiting\", |t, waits| waits && t > 28), STRONG, against(MODERATE))",
    ));
}

#[test]
fn a_closure_that_fails_on_typical_values_is_told() {
    let files = pack().property(".evidence(judged([dough_temperature], \"words\", |t| t.nothing()), STRONG)");
    assert_told(
        &files,
        &["script mixing.rhai:10:15 [judged] the closure fails on typical values: unknown word `nothing`"],
    );
}

#[test]
fn a_closure_with_too_many_parameters_is_told() {
    let files = pack().property(".evidence(judged([dough_temperature], \"words\", |a, b| a > b), STRONG)");
    let told = crate::support::told(&files);
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].starts_with("script mixing.rhai:10:15 [judged] the closure fails on typical values: "), "{told:?}");
}

#[test]
fn a_closure_that_gives_no_grade_is_told() {
    let files = pack().property(".evidence(judged([dough_temperature], \"words\", |t| t * 100), STRONG)");
    assert_told(
        &files,
        &["script mixing.rhai:10:15 [judged] the closure fails on typical values: 2750 is no grade from 0 to 1"],
    );
}

#[test]
fn a_closure_that_gives_a_text_is_told() {
    let files = pack().property(".evidence(judged([dough_temperature], \"words\", |t| \"warm\"), STRONG)");
    assert_told(
        &files,
        &[
            "script mixing.rhai:10:15 [judged] the closure fails on typical values: the result is neither `true`, `false` nor a number, but string",
        ],
    );
}
