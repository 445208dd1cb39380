//! What a quantity of an action changes.

use crate::support::{Changed, assert_loads, assert_told, pack};
use whybake::knowledge::{Basis, Change, Setting};
use whybake::rules::{RuleFiles, load};

/// The small pack with an ingredient, and a reading that is computed from the formula.
fn weighed() -> RuleFiles {
    pack()
        .with("ingredients.rhai", "ingredient(\"water\").title(\"Water\").role(\"water\");\ningredient(\"salt\").title(\"Salt\").role(\"salt\");\n")
        .and(
            "readings.rhai",
            "reading(\"water_on_flour\").title(\"water\").method(\"formula\").unit(\"%\").plausible(0, 150).computed(formula(\"water_on_flour\"));",
        )
}

fn action(settings: &str) -> RuleFiles {
    weighed().property(&format!(".action(colder_water{settings})"))
}

fn setting(settings: &str) -> Setting {
    let loaded = load(&action(settings)).unwrap();
    let (_, cause) = loaded.knowledge.declared.causes.iter().next().unwrap();
    cause.prescriptions.last().unwrap().settings[0].clone()
}

#[test]
fn every_form_loads() {
    assert_loads(&action(
        ".set(\"a\", 2, \"%\", doses(salt)).set(\"b\", 2, \"kg\", adds(water)).set(\"c\", 200, \"g\", takes_out(\"salt\"))\
         .set(\"d\", 1, \"%\", doses(salt, water, \"filling\")).set(\"e\", 60, \"%\", doses(\"water\", water_on_flour))\
         .set(\"f\", 25, \"Cel\", reads(dough_temperature))",
    ));
}

#[test]
fn a_reading_of_the_name_is_set() {
    assert!(matches!(setting(".set(\"dough_temperature\", 80, \"[degF]\")").changes, Some(Change::Reading(_))));
    assert_eq!(setting(".set(\"resting_place\", 8, \"Cel\")").changes, None);
}

#[test]
fn a_dose_named_after_a_computed_reading_is_counted_by_it() {
    let basis = |settings| match setting(settings).changes {
        Some(Change::Amount(amount)) => amount.basis,
        other => panic!("{other:?}"),
    };
    assert!(matches!(basis(".set(\"water_on_flour\", 60, \"%\", doses(water))"), Basis::Reading(_)));
    assert_eq!(basis(".set(\"more_water\", 2, \"%\", adds(water))"), Basis::Flour);
    assert_eq!(basis(".set(\"more_water\", 2, \"kg\", adds(water))"), Basis::Batch);
}

#[test]
fn a_name_of_a_reading_with_another_kind_of_unit_is_told() {
    assert_told(
        &action(".set(\"dough_temperature\", 3, \"min\")"),
        &[
            "unit mixing.rhai:10:26 [set] `dough_temperature` is a reading in `Cel`, the quantity is in `min` -- give a unit that converts, or another name to what is not that reading",
        ],
    );
}

#[test]
fn an_amount_in_degrees_is_told() {
    assert_told(
        &action(".set(\"dose\", 3, \"Cel\", doses(salt))"),
        &[
            "unit mixing.rhai:10:26 [set] `doses` wants a mass or a share of the flour, the quantity is in `Cel` -- write `\"kg\"` or `\"%\"`",
        ],
    );
    assert_told(
        &action(".set(\"dose\", 3, \"kg\", adds(salt, \"filling\"))"),
        &["unit mixing.rhai:10:26 [set] `adds` wants a share of the part, the quantity is in `kg` -- write `\"%\"`"],
    );
}

#[test]
fn two_changes_of_one_quantity_are_told() {
    assert_told(
        &action(".set(\"dose\", 3, \"%\", doses(salt), adds(water))"),
        &["duplicate mixing.rhai:10:26 [set] the quantity changes two things -- give each its own quantity"],
    );
}

#[test]
fn a_reading_that_nothing_computes_counts_no_dose() {
    assert_told(
        &action(".set(\"dose\", 3, \"%\", doses(salt, dough_temperature))"),
        &[
            "wrong-arguments mixing.rhai:10:46 [doses] nothing computes `dough_temperature`, so no amount follows from it -- name a reading with `.computed(…)` from the formula",
        ],
    );
}

#[test]
fn what_is_no_ingredient_or_role_is_told() {
    assert_told(
        &action(".set(\"dose\", 3, \"%\", doses(dough_temperature))"),
        &[
            "wrong-arguments mixing.rhai:10:46 [doses] `doses` wants an ingredient or a role, this is a reading -- write `doses(water)` or `doses(\"fat\")` or `doses(pectin_hm, pectin_lm, \"filling\")` or `doses(\"yeast\", yeast_on_flour)`",
        ],
    );
    assert_told(
        &action(".set(\"dose\", 3, \"%\", adds(\"slat\"))"),
        &["unknown-name mixing.rhai:10:46 [adds] unknown role `slat` -- did you mean `salt`?"],
    );
    assert_told(
        &action(".set(\"dose\", 3, \"%\", salt)"),
        &[
            "wrong-arguments mixing.rhai:10:26 [set] `set` wants `capped_by(…)`, `doses(…)`, `adds(…)`, `takes_out(…)` or `reads(…)`, this is an ingredient -- write `.set(\"water_temperature\", 7, \"Cel\")` or `.set(\"dose\", 0.3, \"%\", capped_by(some_limit), doses(salt))`",
        ],
    );
}
