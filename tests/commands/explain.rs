//! `whybake explain`

use crate::program::run;

#[test]
fn without_a_code_it_lists_all() {
    let list = run(&["explain"]).success();
    assert!(list.lines().count() >= 20, "{list}");
    assert!(list.contains("unknown-name           Nothing declares this name.\n"), "{list}");
}

#[test]
fn a_code_is_explained_with_a_wrong_and_a_right_example() {
    let told = run(&["explain", "unit"]).success();
    let expected = "\
unit: A unit is no UCUM code, or measures something else.

Wrong, in `readings.rhai`:

    reading(\"core_temperature\").title(\"core temperature\").method(\"probe\")
        .unit(\"celsius\").plausible(0, 120).computed(dough_temperature);

The checker says:

    fault[unit]: unknown unit `celsius`
     --> readings.rhai:2:6
      |
    2 |     .unit(\"celsius\").plausible(0, 120).computed(dough_temperature);
      |      ^^^^
      = help: write `Cel`

Right, in `readings.rhai`:

    reading(\"core_temperature\").title(\"core temperature\").method(\"probe\")
        .unit(\"Cel\").plausible(0, 120).computed(dough_temperature);

UCUM is an open standard in which every unit has one code, so °C and °F cannot be mixed up.
";
    assert_eq!(told, expected);
}

#[test]
fn an_unknown_code_is_told_with_a_suggestion() {
    let told = run(&["explain", "unkown-name"]);
    assert_eq!((told.code, told.output.as_str()), (Some(2), ""));
    assert_eq!(told.complaints, "unknown code `unkown-name` (help: did you mean `unknown-name`?)\n");
    let told = run(&["explain", "E0001"]);
    assert_eq!(told.complaints, "unknown code `E0001` (help: `whybake explain` lists all codes)\n");
}
