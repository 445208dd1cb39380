//! Numbers out of range, units, and weights that do not agree.

use crate::support::{Changed, assert_loads, assert_told, faults, pack};

#[test]
fn probabilities_0_and_1_are_refused() {
    for (written, shown) in [("0", "0"), ("1", "1"), ("0.0", "0"), ("1.0", "1"), ("-0.2", "-0.2"), ("1.5", "1.5")] {
        let files = pack().but("mixing.rhai", "prior(COMMON)", &format!("prior({written})"));
        let told = format!("out-of-range mixing.rhai:5:6 [prior] {shown} is not between 0 and 1, both excluded");
        assert_told(&files, &[&told]);
    }
}

#[test]
fn a_strength_of_1_is_refused() {
    let files = pack().property(".shows(low_volume, 1.0)");
    assert_told(&files, &["out-of-range mixing.rhai:10:6 [shows] 1 is not between 0 and 1, both excluded"]);
}

#[test]
fn a_word_of_a_scale_is_a_probability_too() {
    let files = pack().and("scales.rhai", "prior_word(\"ALWAYS\", 1);");
    assert_told(&files, &["out-of-range scales.rhai:5:1 [prior_word] 1 is not between 0 and 1, both excluded"]);
}

#[test]
fn whole_and_broken_numbers_mean_the_same() {
    let whole = pack().property(".evidence(dough_temperature > 29, 10, usual(0.05))");
    let broken = pack().property(".evidence(dough_temperature > 29.0, 10.0, usual(0.05))");
    let from_the_left =
        pack().property(".evidence(29 < dough_temperature & 29.5 < dough_temperature, 10, usual(0.05))");
    let computed = pack().property(".evidence(dough_temperature * 2 - 1.5 > room_temperature + 3, 10, usual(0.05))");
    for files in [whole, broken, from_the_left, computed] {
        assert_loads(&files);
    }
}

#[test]
fn rises_with_reversed_ends_tells_the_other_word() {
    let files = pack().property(".evidence(dough_temperature.rises(30, 28), STRONG)");
    assert_told(
        &files,
        &["out-of-range mixing.rhai:10:33 [rises] `rises` starts at 30, the larger end -- write `.falls(30, 28)`"],
    );
}

#[test]
fn falls_with_reversed_ends_tells_the_other_word() {
    let files = pack().property(".evidence(dough_temperature.falls(24, 26.5), STRONG)");
    assert_told(
        &files,
        &["out-of-range mixing.rhai:10:33 [falls] `falls` starts at 24, the smaller end -- write `.rises(24, 26.5)`"],
    );
}

#[test]
fn a_ramp_without_length_tells_to_compare() {
    let files = pack().property(".evidence(dough_temperature.rises(28, 28), STRONG)");
    assert_told(
        &files,
        &[
            "out-of-range mixing.rhai:10:33 [rises] `rises` from 28 to 28 is no range -- write `>` or `<` for a sharp limit",
        ],
    );
}

#[test]
fn between_with_reversed_ends_is_told() {
    let files = pack().property(".evidence(dough_temperature.between(30, 28), STRONG)");
    assert_told(&files, &["out-of-range mixing.rhai:10:33 [between] the low end 30 is not under the high end 28"]);
}

#[test]
fn a_window_outside_the_plausible_range_is_told() {
    let files = pack().but("readings.rhai", "window(soft_rolls, 25, 28)", "window(soft_rolls, 25, 82)");
    assert_told(
        &files,
        &[
            "out-of-range readings.rhai:1:1 [reading] a window of `dough_temperature`, 25 to 82, leaves its plausible range",
        ],
    );
}

#[test]
fn a_leak_out_of_range_is_told() {
    let files = pack().and("symptoms.rhai", "symptom(\"odd\").title(\"o\").description(\"d\").leak(0);");
    assert_told(&files, &["out-of-range symptoms.rhai:3:44 [leak] 0 is not between 0.000001 and 0.99"]);
}

#[test]
fn a_weight_below_0_tells_to_write_against() {
    let files = pack().property(".evidence(dough_waits, -10)");
    assert_told(
        &files,
        &[
            "out-of-range mixing.rhai:10:6 [evidence] -10 decibans are not above 0 and at most 50 -- write what speaks for the cause, and `against(…)` for the contrary",
        ],
    );
}

#[test]
fn a_weight_above_50_decibans_is_told() {
    let files = pack().property(".evidence(dough_waits, 50.5)");
    assert_told(&files, &["out-of-range mixing.rhai:10:6 [evidence] 50.5 decibans are not above 0 and at most 50"]);
}

#[test]
fn an_unknown_unit_is_told_with_the_code_that_was_meant() {
    let files = pack().but("readings.rhai", ".unit(\"Cel\")\n", ".unit(\"degC\")\n");
    assert_told(&files, &["unit readings.rhai:2:6 [unit] unknown unit `degC` -- write `Cel`"]);
}

#[test]
fn an_unknown_unit_of_a_quantity_is_told() {
    let files = pack().property(".action(colder_water.set(\"water_temperature\", 7, \"furlongs\"))");
    assert_told(&files, &["unit mixing.rhai:10:26 [set] unknown unit `furlongs`"]);
}

#[test]
fn a_weight_too_large_for_its_usual_share_is_told() {
    // 10 decibans are a ratio of 10: it cannot hold in half of all cases, since 0.5 · 10 > 1.
    let files = pack().property(".evidence(dough_waits, STRONG, usual(0.5))");
    assert_told(
        &files,
        &[
            "inconsistent-weights mixing.rhai:10:6 [evidence] 10 decibans cannot hold when the condition is usually true in 0.5 of all cases -- a usual share under 0.100, or a smaller weight",
        ],
    );
}

#[test]
fn three_figures_of_evidence_that_disagree_are_told_with_the_third() {
    // (1 - 0.05·10) / (1 - 0.05) = 0.526 = -2.8 decibans.
    let files = pack().property(".evidence(dough_waits, STRONG, usual(0.05), against(10))");
    assert_told(
        &files,
        &[
            "inconsistent-weights mixing.rhai:10:6 [evidence] 10 for, 10 against and a usual share of 0.05 do not agree -- with this share the weight against is 2.8; leave out one of the three",
        ],
    );
}

#[test]
fn three_figures_of_evidence_that_agree_load() {
    assert_loads(&pack().property(".evidence(dough_waits, STRONG, usual(0.05), against(2.8))"));
}

#[test]
fn regions_whose_weights_do_not_sum_are_told_with_the_sum() {
    // 0.2·10^-0.8 + 0.6·10^0 + 0.2·10^0.9 = 0.032 + 0.6 + 1.589 = 2.220
    let files = pack().property(".evidence_in_regions(dough_temperature, [24, 28], [-8, 0, 9], [0.2, 0.6, 0.2])");
    assert_told(
        &files,
        &[
            "inconsistent-weights mixing.rhai:10:6 [evidence_in_regions] the weights do not agree with the usual shares: Σ share·10^(weight/10) is 2.220, not 1 -- what counts for in one region counts against in others",
        ],
    );
}

#[test]
fn shares_of_regions_that_do_not_sum_are_told() {
    let files = pack().property(".evidence_in_regions(dough_temperature, [24, 28], [-8, 0, 3], [0.2, 0.6, 0.4])");
    assert_told(
        &files,
        &["out-of-range mixing.rhai:10:6 [evidence_in_regions] the usual shares are not above 0 with a sum of 1"],
    );
}

#[test]
fn regions_and_edges_must_be_as_many() {
    let files = pack().property(".evidence_in_regions(dough_temperature, [24, 28], [-8, 3], [0.2, 0.8])");
    assert_told(
        &files,
        &[
            "wrong-arguments mixing.rhai:10:6 [evidence_in_regions] 2 edges make 3 regions: a weight and a share for each -- write `.evidence_in_regions(dough_temperature, [24, 28], [-8, -2, 4.7], [0.2, 0.6, 0.2])`",
        ],
    );
}

#[test]
fn edges_of_regions_must_ascend() {
    let files = pack().property(".evidence_in_regions(dough_temperature, [28, 24], [-1, 0, 1], [0.2, 0.6, 0.2])");
    assert_told(&files, &["out-of-range mixing.rhai:10:6 [evidence_in_regions] the edges do not ascend"]);
}

#[test]
fn regions_that_the_guide_shows_load() {
    assert_loads(&pack().property(".evidence_in_regions(dough_temperature, [24, 28], [-8, -2, 4.7], [0.2, 0.6, 0.2])"));
}

#[test]
fn a_share_of_an_ingredient_over_100_is_told() {
    let files = pack().with("ingredients.rhai", "ingredient(\"salt\").title(\"Salt\").composition(#{ salt: 101 });");
    assert_told(
        &files,
        &["out-of-range ingredients.rhai:1:34 [composition] `salt` is not a number between 0 and 100 g/100 g"],
    );
}

#[test]
fn a_cost_is_a_word_of_its_scale_and_a_waste_a_number_of_batches() {
    let scale = || pack().and("scales.rhai", "cost_word(\"PURCHASE\", 240);\nwaste_word(\"ONE_BATCH\", 1);");
    assert_loads(&scale().but("actions.rhai", "water.\");", "water.\").cost(PURCHASE).waste(0.5);"));
    assert_told(
        &scale().but("actions.rhai", "water.\");", "water.\").cost(240).waste(-1);"),
        &[
            "wrong-arguments actions.rhai:1:81 [cost] `cost` wants a cost, this is a number -- write `.cost(PURCHASE)`",
            "out-of-range actions.rhai:1:91 [waste] -1 is not between 0 and 1000",
        ],
    );
    assert_told(
        &scale().but("actions.rhai", "water.\");", "water.\").cost(PURCHASES).waste(ONE_BATCH);"),
        &["unknown-name actions.rhai:1:86 [PURCHASES] unknown name `PURCHASES` -- did you mean `PURCHASE`?"],
    );
    assert_told(
        &scale().and("scales.rhai", "cost_word(\"cheap\", -5);"),
        &["out-of-range scales.rhai:7:1 [cost_word] -5 is not between 0 and 20160"],
    );
}

#[test]
fn what_a_script_divided_by_zero_is_told() {
    let regions = |weights: &str| {
        let line = format!(".evidence_in_regions(dough_temperature, [24, 28], {weights}, [0.2, 0.6, 0.2])");
        pack().property(&line)
    };
    for not_a_number in ["[0.0 / 0.0, -2, 4.7]", "[1.0 / 0.0, -2, 4.7]"] {
        let told = faults(&regions(not_a_number));
        let messages: Vec<&str> = told.iter().map(|fault| fault.message.as_str()).collect();
        assert_eq!(messages.len(), 1, "{messages:?}");
        assert!(messages[0].ends_with("is not a number to compute with"), "{messages:?}");
    }
    let compared = faults(&pack().property(".evidence(dough_temperature > 0.0 / 0.0, STRONG)"));
    assert_eq!(compared[0].message, "NaN is not a number to compute with");
}
