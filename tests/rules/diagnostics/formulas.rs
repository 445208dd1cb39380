//! Words about formulas and ingredients: roles, parts, stages, soda and acids.

use crate::support::{Changed, assert_loads, assert_told, faults, pack};

const INGREDIENTS: &str = "ingredients.rhai";

#[test]
fn the_words_of_ingredients_and_formulas_load() {
    let files = pack()
        .with(
            INGREDIENTS,
            r#"ingredient("powder").title("Baking powder").role("leavening").soda(27).acid("sapp", 38).neutralising_value(1).source(common_practice);
ingredient("fat").title("Fat").role("fat", "emulsifier").composition(#{ fat: 100, dextrins: 0, fibre: 0 }).source(common_practice);
ingredient("hartshorn").title("Hartshorn").role("leavening").ammonium_bicarbonate(100).potassium_bicarbonate(0).source(common_practice);
"#,
        )
        .property(
            r#".evidence(all([formula_has(fat, powder), formula_has_role("emulsifier"), role_percent("fat") > 1, mass_percent(fat, powder, "filling") > 1, baker_percent(fat, powder) > 2, formula("soluble_solids", "icing") > 3, either(baker_percent(fat), 1) > 0]), STRONG)"#,
        );
    assert_loads(&files);
}

#[test]
fn an_unknown_role_is_told_with_a_suggestion() {
    let files =
        pack().with(INGREDIENTS, "ingredient(\"fat\").title(\"Fat\").role(\"fats\").source(common_practice);\n");
    assert_told(&files, &["unknown-name ingredients.rhai:1:32 [role] unknown role `fats` -- did you mean `fat`?"]);
}

#[test]
fn an_unknown_acid_is_told_with_a_suggestion() {
    let files =
        pack().with(INGREDIENTS, "ingredient(\"a\").title(\"A\").acid(\"fumaric_acd\").source(common_practice);\n");
    assert_told(
        &files,
        &[
            "unknown-name ingredients.rhai:1:28 [acid] unknown leavening acid `fumaric_acd` -- did you mean `fumaric_acid`?",
        ],
    );
}

#[test]
fn an_unknown_stage_or_part_is_told() {
    let files = pack()
        .but("products.rhai", ".title(\"Soft rolls\")", ".title(\"Soft rolls\").main_stage(\"doug\")")
        .property(".evidence(formula(\"soluble_solids\", \"sponge\") > 1, STRONG)");
    assert_told(
        &files,
        &[
            "unknown-name products.rhai:1:42 [main_stage] unknown stage `doug` -- did you mean `dough`?",
            "unknown-name mixing.rhai:10:15 [formula] unknown part `sponge` -- `sponge` counts to the dough: write `\"dough\"`",
        ],
    );
}

#[test]
fn soda_is_a_percentage() {
    let files = pack().with(INGREDIENTS, "ingredient(\"a\").title(\"A\").soda(127).source(common_practice);\n");
    assert_told(&files, &["out-of-range ingredients.rhai:1:28 [soda] 127 is not between 0 and 100"]);
}

#[test]
fn a_fact_is_answered_by_ingredients_alone() {
    let fact = |condition: &str| {
        let line = format!(".question(\"Does dough wait?\").answered_by({condition})");
        let lard = "ingredient(\"lard\").title(\"Lard\").role(\"fat\");\n";
        pack().with(INGREDIENTS, lard).but("facts.rhai", ".question(\"Does dough wait?\")", &line)
    };
    let told = faults(&fact("baker_percent(lard) > 2"));
    assert_eq!((told.len(), told[0].message.as_str()), (1, "a fact is answered by what a formula has"), "{told:?}");
    assert_loads(&fact("formula_has(lard) & !formula_has_role(\"starch\")"));
}
