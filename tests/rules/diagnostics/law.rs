//! Words of law and safety: warnings, jurisdictions, limits, replacements.

use crate::support::{Changed, assert_loads, assert_told, pack};
use whybake::rules::RuleFiles;

fn lawful() -> RuleFiles {
    pack()
        .with("requirements.rhai", "market(\"EU\").title(\"European Union\");\n")
        .with("cautions.rhai", "caution(\"hot\").text(\"Hot.\").jurisdiction(EU).source(common_practice);\n")
        .with(
            "limits.rhai",
            "limit(\"warmth\").market(EU).of(dough_temperature).at_most(30).unit(\"Cel\").text(\"Too warm.\").source(common_practice);\n",
        )
}

#[test]
fn warnings_limits_and_replacements_load() {
    let files = lawful()
        .and("mixing.rhai", "warn(hot).when(dough_temperature > 30).also_when_unknown().products(soft_rolls);")
        .and("actions.rhai", "action(\"ice\").title(\"Ice\").text(\"Use ice.\").instead(colder_water);")
        .property(".action(ice.set(\"dough\", dough_temperature, \"Cel\", capped_by(warmth)))");
    assert_loads(&files);
}

#[test]
fn a_warning_without_a_condition_is_told() {
    let files = lawful().and("mixing.rhai", "warn(hot).products(soft_rolls);");
    assert_told(
        &files,
        &[
            "incomplete mixing.rhai:11:1 [warn] the warning has no condition -- add `.when(…)`; a caution that always holds says `.always()` itself",
        ],
    );
}

#[test]
fn a_warning_in_another_file_is_told() {
    let files = lawful().and("actions.rhai", "warn(hot).when(dough_waits);");
    assert_told(
        &files,
        &[
            "wrong-file actions.rhai:2:1 [warn] `warn` may not stand in this file -- it stands beside causes, in a file of any name that the table of files does not keep",
        ],
    );
}

#[test]
fn an_incomplete_limit_is_told() {
    let files = lawful().and("limits.rhai", "limit(\"bare\").source(common_practice);");
    assert_told(
        &files,
        &[
            "incomplete limits.rhai:2:1 [limit] `bare` has no at_most -- add `.at_most(…)`",
            "incomplete limits.rhai:2:1 [limit] `bare` has no market -- add `.market(…)`",
            "incomplete limits.rhai:2:1 [limit] `bare` has no of -- add `.of(…)`",
            "incomplete limits.rhai:2:1 [limit] `bare` has no text -- add `.text(…)`",
        ],
    );
}

#[test]
fn a_limit_in_another_unit_than_its_quantity_is_told() {
    let warned = lawful().and("mixing.rhai", "warn(hot).when(dough_temperature > 30).products(soft_rolls);");
    assert_loads(&warned.clone().but("limits.rhai", ".unit(\"Cel\")", ""));
    let files = warned.but("limits.rhai", ".unit(\"Cel\")", ".unit(\"[degF]\")");
    assert_told(
        &files,
        &[
            "unit limits.rhai:1:1 [limit] `warmth` is counted in `[degF]`, but its quantity in `Cel` -- write `.unit(\"Cel\")` and the most in it",
        ],
    );
}

#[test]
fn a_cap_in_another_kind_of_unit_is_told() {
    let files = lawful().property(".action(colder_water.set(\"dose\", 3, \"%\", capped_by(warmth)))");
    assert_told(
        &files,
        &[
            "unit mixing.rhai:10:26 [set] `warmth` is counted in `Cel`, the quantity in `%` -- give both in units that convert to each other",
        ],
    );
}

#[test]
fn a_misspelt_market_is_told_with_a_suggestion() {
    let files = lawful().but("cautions.rhai", "jurisdiction(EU)", "jurisdiction(EUR)");
    assert_told(&files, &["unknown-name cautions.rhai:1:42 [EUR] unknown name `EUR` -- did you mean `EU`?"]);
}
