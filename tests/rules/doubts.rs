//! Warnings: what loads, but is probably not meant; and what looks like it and is meant.

use whybake::rules::RuleFiles;

use crate::support::{Changed, assert_loads, doubts, pack};

/// Asserts that the doubts about a pack are exactly these.
#[track_caller]
fn assert_doubts(files: &RuleFiles, expected: &[&str]) {
    let told = doubts(files);
    assert!(told == expected, "told\n  {}\nexpected\n  {}", told.join("\n  "), expected.join("\n  "));
}

/// A second cause, which differs from the first by its symptom.
fn second(properties: &str) -> String {
    format!(
        "cause(\"second\").title(\"Second\").mechanism(\"M.\").products(soft_rolls).prior(COMMON)\n\
         {properties}\n.action(colder_water).confirm(dough_waits).source(common_practice);\n"
    )
}

mod unused {
    use super::*;

    #[test]
    fn everything_that_nothing_uses_is_told_at_its_declaration() {
        let files = pack()
            .and("sources.rhai", "source(\"old_book\").citation(\"A., B\").from_memory();")
            .with("cautions.rhai", "caution(\"hot_oven\").text(\"Ovens burn.\");\n")
            .with("ingredients.rhai", "ingredient(\"lard\").title(\"Lard\");\n")
            .with(
                "more/symptoms.rhai",
                "symptom(\"pale\").title(\"Pale\").description(\"Pale.\").products(soft_rolls);\n",
            )
            .with("more/facts.rhai", "fact(\"new_tins\").title(\"new tins\").question(\"New?\");\n")
            .with(
                "more/readings.rhai",
                "reading(\"mass\").title(\"mass\").method(\"scale\").unit(\"g\").plausible(0, 9);\n",
            )
            .with("more/actions.rhai", "action(\"wait\").title(\"Wait\").text(\"Wait.\");\n");
        assert_doubts(
            &files,
            &[
                "unused sources.rhai:2:1 [source] source `old_book` is never used -- name it in `.source(…)` of what it is about",
                "unused cautions.rhai:1:1 [caution] caution `hot_oven` is never used -- name it in `.caution(…)` of a cause, action or symptom, in `warn(…)`, or add `.always()`",
                "unused ingredients.rhai:1:1 [ingredient] ingredient `lard` is never used -- give its composition, or use it in a rule",
                "unused more/symptoms.rhai:1:1 [symptom] no cause shows `pale` -- add `.shows(…)` to a cause",
                "unused more/facts.rhai:1:1 [fact] fact `new_tins` is never used -- use it in `.evidence(…)` of a cause",
                "unused more/readings.rhai:1:1 [reading] reading `mass` is never used -- use it in `.evidence(…)` of a cause",
                "unused more/actions.rhai:1:1 [action] action `wait` is never used -- name it in `.action(…)` of a cause",
            ],
        );
    }

    #[test]
    fn a_limit_a_setting_a_closure_or_a_formula_is_a_use() {
        let files = pack()
            .with("cautions.rhai", "caution(\"always_told\").text(\"Mind.\").always();\n")
            .with("ingredients.rhai", "ingredient(\"lard\").title(\"Lard\").composition(#{ fat: 100 });\n")
            .and("readings.rhai", "reading(\"first\").title(\"first\").method(\"m\").unit(\"g\").plausible(0, 9);")
            .and("readings.rhai", "reading(\"other\").title(\"other\").method(\"m\").unit(\"g\").plausible(0, 9);")
            .and("readings.rhai", "reading(\"third\").title(\"third\").method(\"m\").unit(\"g\").plausible(0, 9);")
            .and(
                "readings.rhai",
                "reading(\"sum\").title(\"sum\").method(\"m\").unit(\"g\").plausible(0, 9).computed(third * 2);",
            )
            .property(".action(colder_water.set(\"mass\", target(first) + 1, \"g\"))")
            .property(".evidence(judged([other, dough_waits], \"both\", |mass, waits| waits && mass > 5), STRONG)");
        assert_loads(&files);
    }
}

mod evidence {
    use super::*;

    #[test]
    fn a_threshold_that_the_reading_cannot_reach_is_told() {
        let files = pack().property(".evidence(room_temperature > 80, STRONG)");
        let help = "values outside the plausible range are set aside; correct the number or `.plausible(…)`";
        assert_doubts(
            &files,
            &[&format!(
                "implausible-threshold mixing.rhai:10:6 [evidence] `room_temperature` is compared with 80, but plausible are -20 to 60 -- {help}"
            )],
        );
        let files = pack()
            .property(".evidence_in_regions(room_temperature, [18, 70], [-8, -2, 4.7], [0.2, 0.6, 0.2])")
            .property(".evidence(dough_waits & !dough_temperature.rises(29, 61), STRONG)")
            .property(".confirm(dough_temperature.between(-9, 10))");
        assert_doubts(
            &files,
            &[
                &format!(
                    "implausible-threshold mixing.rhai:10:6 [evidence_in_regions] `room_temperature` is compared with 70, but plausible are -20 to 60 -- {help}"
                ),
                &format!(
                    "implausible-threshold mixing.rhai:11:6 [evidence] `dough_temperature` is compared with 61, but plausible are -5 to 60 -- {help}"
                ),
                &format!(
                    "implausible-threshold mixing.rhai:12:6 [confirm] `dough_temperature` is compared with -9, but plausible are -5 to 60 -- {help}"
                ),
            ],
        );
    }

    #[test]
    fn a_condition_that_no_value_changes_is_told() {
        let files = pack()
            .property(".evidence(dough_temperature - room_temperature > 80, STRONG)")
            .property(".evidence(abs(dough_temperature) >= 0, STRONG)")
            .property(".evidence(dough_temperature > 30 & dough_temperature - 100 > 0, STRONG)")
            .property(".confirm(dough_temperature > 29, excluded(min(dough_temperature, 20) > 20))");
        let told = |line: usize, word: &str, truth: &str| {
            format!(
                "never-applies mixing.rhai:{line}:6 [{word}] this condition is {truth} for every plausible value -- compare with a number that the readings can be on either side of"
            )
        };
        assert_doubts(
            &files,
            &[
                &told(10, "evidence", "false"),
                &told(11, "evidence", "true"),
                &told(12, "evidence", "false"),
                &told(13, "confirm", "false"),
            ],
        );
    }

    #[test]
    fn limits_of_a_plant_and_formulas_may_be_anything() {
        let files = pack()
            .with("ingredients.rhai", "ingredient(\"salt\").title(\"Salt\").composition(#{ salt: 100 });\n")
            .property(".evidence(dough_temperature > high_limit(dough_temperature) + 900, STRONG)")
            .property(".evidence(baker_percent(salt) > 900, STRONG)")
            .property(".evidence(dough_temperature / room_temperature > 900, STRONG)");
        assert_loads(&files);
    }

    #[test]
    fn symptoms_of_other_products_are_told() {
        let symptoms = "symptom(\"foam_fell\").title(\"Foam fell\").description(\"It fell.\").products(cakes);";
        let files = pack()
            .and(
                "products.rhai",
                "family(\"cakes\").title(\"Cakes\");\nproduct(\"sponge\").title(\"Sponge\").family(cakes);",
            )
            .and("symptoms.rhai", symptoms)
            .property(".shows(foam_fell, OFTEN)");
        let told = "never-applies mixing.rhai:10:6 [shows] `foam_fell` belongs to other products than the cause, so it is never shown -- add the products to `foam_fell`, or use another symptom";
        assert_doubts(&files, &[told]);
        assert_loads(&files.clone().but("mixing.rhai", ".products(soft_rolls)", ".products(soft_rolls, cakes)"));
    }

    #[test]
    fn readings_and_facts_of_other_products_are_told() {
        let files = pack()
            .and(
                "products.rhai",
                "family(\"cakes\").title(\"Cakes\");\nproduct(\"sponge\").title(\"Sponge\").family(cakes);",
            )
            .and("facts.rhai", "fact(\"foam_fell\").title(\"foam fell\").question(\"Did it?\").products(cakes);")
            .and(
                "readings.rhai",
                "reading(\"foam\").title(\"foam\").method(\"m\").unit(\"g\").plausible(0, 9).window(sponge, 1, 2);",
            )
            .property(".evidence(foam_fell & dough_waits, STRONG)")
            .property(".evidence(foam.too_high(), STRONG)");
        let told = |line: usize, id: &str| {
            format!(
                "never-applies mixing.rhai:{line}:6 [evidence] `{id}` belongs to other products than the cause, so this evidence never applies -- add the products to `{id}`, or use another reading or fact"
            )
        };
        let window = "never-applies mixing.rhai:11:6 [evidence] `foam` has no usual window for the products of this cause, so this evidence seldom applies -- add `.window(…)` for them, or compare with a number";
        assert_doubts(&files, &[&told(10, "foam_fell"), window]);
        assert_loads(&files.clone().but("mixing.rhai", ".products(soft_rolls)", ".products(soft_rolls, cakes)"));
        // Products that are named add to those of the windows.
        let both = pack()
            .and(
                "products.rhai",
                "family(\"cakes\").title(\"Cakes\");\nproduct(\"sponge\").title(\"Sponge\").family(cakes);",
            )
            .but("readings.rhai", ".window(soft_rolls, 25, 28)", ".window(soft_rolls, 25, 28).products(cakes)");
        assert_loads(&both);
    }

    #[test]
    fn evidence_too_light_to_matter_is_told() {
        let files = pack()
            .property(".evidence(room_temperature > 30, 0.3, against(0.1))")
            .property(".evidence(room_temperature > 35, 0.5)")
            .property(".evidence(room_temperature < 15, 0.3, against(2))");
        assert_doubts(
            &files,
            &[
                "never-matters mixing.rhai:10:6 [evidence] evidence of 0.3 decibans changes nothing -- one deciban is the least that is noticed; give 0.5 or more, or leave the evidence out",
            ],
        );
    }

    #[test]
    fn evidence_whose_group_another_item_always_wins_is_told() {
        let files = pack()
            .property(".evidence(room_temperature > 30, STRONG, against(MODERATE), group(\"heat\"))")
            .property(".evidence(room_temperature.rises(28, 32), 4, against(2), group(\"heat\"))");
        assert_doubts(
            &files,
            &[
                "never-matters mixing.rhai:11:6 [evidence] this evidence never counts: of its group, the one at mixing.rhai:10:6 is always stronger -- leave one of them out, or take it out of the group",
            ],
        );
        // Another group, another reading, or a weaker side that may win.
        let own = pack()
            .property(".evidence(room_temperature > 30, STRONG, against(MODERATE), group(\"heat\"))")
            .property(".evidence(room_temperature.rises(28, 32), 4, against(2), group(\"room\"))")
            .property(".evidence(dough_waits, 4, against(2), group(\"heat\"))")
            .property(".evidence(room_temperature.rises(27, 31), 6, against(2), group(\"heat\"))");
        assert_loads(&own);
    }
}

mod twins {
    use super::*;

    const SAME: &str =
        ".shows(hollow_under_crust, 0.65).evidence(dough_temperature.rises(28, 30), 9.5, against(MODERATE))";

    #[test]
    fn causes_that_nothing_tells_apart_are_told_once() {
        assert_doubts(
            &pack().with("second.rhai", &second(SAME)),
            &[
                "indistinguishable second.rhai:1:1 [cause] nothing tells `dough_too_warm` and `second` apart -- add a symptom or `.evidence(…)` that only one of them has, or make them one cause",
            ],
        );
    }

    #[test]
    fn another_strength_symptom_weight_threshold_or_product_tells_them_apart() {
        for properties in [
            SAME.replace("0.65", "0.75"),
            SAME.replace("hollow_under_crust", "low_volume"),
            SAME.replace("9.5", "3"),
            SAME.replace("28, 30", "28, 31"),
            format!("{SAME}.shows(low_volume, 0.1)"),
            format!("{SAME}.evidence(dough_waits, STRONG)"),
        ] {
            assert_loads(&pack().with("second.rhai", &second(&properties)));
        }
        let elsewhere = second(SAME).replace("products(soft_rolls)", "products(cakes)");
        let files = pack()
            .and(
                "products.rhai",
                "family(\"cakes\").title(\"Cakes\");\nproduct(\"sponge\").title(\"Sponge\").family(cakes);",
            )
            .and("readings.rhai", "")
            .but("readings.rhai", ".window(soft_rolls, 25, 28)", ".window(soft_rolls, 25, 28).window(cakes, 20, 22)")
            .but("facts.rhai", ".products(soft_rolls)", ".products(soft_rolls, cakes)")
            .but("symptoms.rhai", "crust.\").products(soft_rolls)", "crust.\").products(soft_rolls, cakes)")
            .with("second.rhai", &elsewhere);
        assert_loads(&files);
    }
}

mod look_alikes {
    use super::*;

    const HELP: &str = "choose names that nobody takes for each other, or make them one";

    fn with_fact(id: &str, title: &str) -> RuleFiles {
        pack()
            .with(
                "more/facts.rhai",
                &format!("fact(\"{id}\").title(\"{title}\").question(\"?\").products(soft_rolls);\n"),
            )
            .property(&format!(".evidence(dough_waits & {id}, STRONG)"))
    }

    #[test]
    fn ids_one_letter_or_a_plural_or_an_underscore_apart_are_told_once() {
        for id in ["dough_wait", "dough_wails", "doughwaits", "doughs_waits"] {
            let [first, second] = if id < "dough_waits" { [id, "dough_waits"] } else { ["dough_waits", id] };
            assert_doubts(
                &with_fact(id, "another"),
                &[&format!(
                    "look-alike more/facts.rhai:1:1 [fact] the ids of `{first}` and `{second}` look alike -- {HELP}"
                )],
            );
        }
    }

    #[test]
    fn equal_or_mistyped_titles_in_one_product_are_told() {
        let told = |titles: &str| {
            format!(
                "look-alike more/facts.rhai:1:1 [fact] the titles of `dough_waits` and `rests_long`, {titles}, look alike -- {HELP}"
            )
        };
        assert_doubts(&with_fact("rests_long", "dough waits"), &[&told("“dough waits”")]);
        assert_doubts(&with_fact("rests_long", "Dough wails"), &[&told("“dough waits” and “Dough wails”")]);
        assert_loads(&with_fact("rests_long", "dough waits long"));
    }

    #[test]
    fn names_of_other_kinds_numbers_and_common_words_are_no_slips() {
        assert_loads(&with_fact("dough_temperatures", "another"));
        let numbered = pack()
            .and("facts.rhai", "fact(\"zone_1_hot\").title(\"zone 1 hot\").question(\"?\");")
            .and("facts.rhai", "fact(\"zone_2_hot\").title(\"zone 2 hot\").question(\"?\");")
            .property(".evidence(zone_1_hot & zone_2_hot & dough_waits, STRONG)");
        assert_loads(&numbered);
    }
}

mod priors {
    use super::*;

    #[test]
    fn priors_that_add_up_to_too_many_causes_are_told() {
        let made = "for n in 1..=9 {\n cause(\"made_\" + n).title(\"Made \" + n).mechanism(\"M.\").products(soft_rolls).prior(PRIOR)\n\
                    .shows(low_volume, 0.1).evidence(dough_temperature > 20 + n, STRONG).action(colder_water).confirm(dough_waits).source(common_practice);\n}";
        let many = pack().with("made.rhai", &made.replace("PRIOR", "0.5"));
        assert_doubts(
            &many,
            &[
                "high-priors products.rhai:2:1 [product] the priors of `hamburger_bun` add up to 4.6: so many causes would be at work in every complaint -- choose rarer priors, so that they add up to 4 at most",
            ],
        );
        assert_loads(&pack().with("made.rhai", &made.replace("PRIOR", "0.4")));
    }
}
