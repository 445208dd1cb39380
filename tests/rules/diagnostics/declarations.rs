//! Declarations: twice, in the wrong file, incomplete, in a circle.

use crate::support::{Changed, assert_told, pack, told};

#[test]
fn an_id_declared_twice_tells_where_the_first_is() {
    let files = pack().and("facts.rhai", "fact(\"dough_waits\").title(\"dough waits\").question(\"Does it?\");");
    assert_told(
        &files,
        &["duplicate facts.rhai:2:1 [fact] `dough_waits` is declared twice -- the first is at facts.rhai:1:1"],
    );
}

#[test]
fn an_id_declared_twice_in_two_files_tells_where_the_first_is() {
    let files = pack().with("more/facts.rhai", "fact(\"dough_waits\").title(\"dough waits\").question(\"Does it?\");");
    assert_told(
        &files,
        &["duplicate more/facts.rhai:1:1 [fact] `dough_waits` is declared twice -- the first is at facts.rhai:1:1"],
    );
}

#[test]
fn an_id_of_another_kind_is_taken() {
    let files = pack().and("facts.rhai", "fact(\"low_volume\").title(\"low volume\").question(\"Is it low?\");");
    assert_told(
        &files,
        &["duplicate facts.rhai:2:1 [fact] `low_volume` is declared twice -- the first is at symptoms.rhai:2:1"],
    );
}

#[test]
fn a_word_of_a_scale_declared_twice_is_told() {
    let files = pack().and("scales.rhai", "weight_word(\"COMMON\", 3);");
    assert_told(
        &files,
        &["duplicate scales.rhai:5:1 [weight_word] `COMMON` is declared twice -- the first is at scales.rhai:1:1"],
    );
}

#[test]
fn a_symptom_shown_twice_is_told() {
    let files = pack().property(".shows(hollow_under_crust, 0.3)");
    assert_told(&files, &["duplicate mixing.rhai:10:6 [shows] `hollow_under_crust` is shown twice by this cause"]);
}

/// The last of the two once won without a word.
#[test]
fn a_property_said_twice_is_told() {
    let files = pack()
        .and("facts.rhai", "fact(\"crust_torn\").title(\"a\").title(\"b\").question(\"Is it?\").effort(1).effort(2);");
    let help = "leave out one of the two";
    assert_told(
        &files,
        &[
            &format!("duplicate facts.rhai:2:31 [title] `title` says again what has been said of a fact -- {help}"),
            &format!("duplicate facts.rhai:2:71 [effort] `effort` says again what has been said of a fact -- {help}"),
        ],
    );
}

#[test]
fn a_source_stands_in_one_place() {
    let files = pack()
        .and("sources.rhai", "source(\"a_book\").citation(\"Author A., Title, 1990\").published().from_memory();");
    let expected = "`from_memory` says again what has been said of a source -- leave out one of the two";
    let all = told(&files);
    assert!(all.len() == 1 && all[0].ends_with(expected), "{all:?}");
}

#[test]
fn one_prior_a_product_and_one_for_all_others() {
    let own = told(&pack().property(".prior(hamburger_bun, 0.1).prior(hamburger_bun, 0.2)"));
    assert!(own[0].ends_with("`prior` is said twice for `hamburger_bun` -- leave out one of the two"), "{own:?}");
    let all = told(&pack().property(".prior(0.1)"));
    assert!(
        all[0].ends_with("`prior` says again what has been said of a cause -- leave out one of the two"),
        "{all:?}"
    );
    assert_eq!((own.len(), all.len()), (1, 1));
}

#[test]
fn a_part_of_evidence_said_twice_is_told() {
    for (word, evidence) in [
        ("usual", "usual(0.15), usual(0.4)"),
        ("against", "against(3), against(4)"),
        ("group", "group(\"a\"), group(\"b\")"),
    ] {
        let all = told(&pack().property(&format!(".evidence(dough_waits, 2, {evidence})")));
        let expected = format!("`{word}(…)` stands twice in one piece of evidence -- leave out one of the two");
        assert!(all.len() == 1 && all[0].ends_with(&expected), "{all:?}");
    }
}

#[test]
fn an_id_that_is_no_name_is_told() {
    let help = "names are lower case: letters, digits and `_`; words of a scale and markets are upper case";
    for id in ["Low Volume", "low-volume", "9lives", "", "fn", "loop", "eval", "this", "crème"] {
        let files = pack().and("facts.rhai", &format!("fact(\"{id}\").title(\"t\").question(\"q\");"));
        assert_told(&files, &[&format!("out-of-range facts.rhai:2:1 [fact] `{id}` is not a name -- {help}")]);
    }
}

#[test]
fn a_declaration_in_the_wrong_file_tells_the_right_one() {
    let files = pack().and("mixing.rhai", "reading(\"ph\").title(\"pH\");");
    assert_told(
        &files,
        &[
            "wrong-file mixing.rhai:11:1 [reading] `reading` may not stand in this file -- it belongs in a file named `readings.rhai`",
        ],
    );
}

#[test]
fn a_cause_in_a_file_of_the_table_is_told() {
    let files = pack().and("facts.rhai", "cause(\"x\").title(\"X\");");
    assert_told(
        &files,
        &[
            "wrong-file facts.rhai:2:1 [cause] `cause` may not stand in this file -- causes stand in files of any name that the table of files does not keep",
        ],
    );
}

#[test]
fn a_property_set_in_the_wrong_file_is_told() {
    let files = pack().and("mixing.rhai", "dough_temperature.unit(\"K\");");
    assert_told(
        &files,
        &[
            "wrong-file mixing.rhai:11:19 [unit] `unit` describes a reading, which may not be changed in this file -- it belongs in a file named `readings.rhai`",
        ],
    );
}

#[test]
fn an_incomplete_cause_tells_everything_it_lacks() {
    let files = pack().and("mixing.rhai", "cause(\"bare\");");
    assert_told(
        &files,
        &[
            "incomplete mixing.rhai:11:1 [cause] `bare` has no mechanism -- add `.mechanism(…)`",
            "incomplete mixing.rhai:11:1 [cause] `bare` has no prior -- add `.prior(…)`",
            "incomplete mixing.rhai:11:1 [cause] `bare` has no products -- add `.products(…)`",
            "incomplete mixing.rhai:11:1 [cause] `bare` has no title -- add `.title(…)`",
        ],
    );
}

#[test]
fn an_incomplete_reading_tells_everything_it_lacks() {
    let files = pack().and("readings.rhai", "reading(\"bare\");");
    assert_told(
        &files,
        &[
            "incomplete readings.rhai:6:1 [reading] `bare` has no method -- add `.method(…)`",
            "incomplete readings.rhai:6:1 [reading] `bare` has no plausible -- add `.plausible(…)`",
            "incomplete readings.rhai:6:1 [reading] `bare` has no title -- add `.title(…)`",
            "incomplete readings.rhai:6:1 [reading] `bare` has no unit -- add `.unit(…)`",
        ],
    );
}

#[test]
fn a_pack_without_a_name_is_incomplete() {
    let files = pack().with("pack.rhai", "// nothing yet\n");
    assert_told(
        &files,
        &[
            "incomplete pack.rhai:0:0 [] the pack has no name and version -- write `pack(\"name\").title(\"…\").version(\"0.1.0\");` in `pack.rhai`",
        ],
    );
}

#[test]
fn a_reading_computed_from_itself_is_told() {
    let files = pack().but("readings.rhai", ".unit(\"Cel\")\n", ".unit(\"Cel\").computed(dough_temperature + 1)\n");
    assert_told(&files, &["out-of-range readings.rhai:1:1 [reading] `dough_temperature` is computed from itself"]);
}

#[test]
fn readings_computed_in_a_circle_are_told() {
    let circle = "reading(\"a\").title(\"a\").method(\"m\").unit(\"g\").plausible(0, 9).computed(b * 2);\n\
                  reading(\"b\").title(\"b\").method(\"m\").unit(\"g\").plausible(0, 9).computed(c * 2);\n\
                  reading(\"c\").title(\"c\").method(\"m\").unit(\"g\").plausible(0, 9).computed(a * 2);";
    assert_told(
        &pack().with("circle/readings.rhai", circle),
        &[
            "out-of-range circle/readings.rhai:1:1 [reading] `a` is computed from itself",
            "out-of-range circle/readings.rhai:2:1 [reading] `b` is computed from itself",
            "out-of-range circle/readings.rhai:3:1 [reading] `c` is computed from itself",
        ],
    );
}

#[test]
fn a_declaration_that_never_runs_is_told() {
    let files = pack().and("facts.rhai", "fn never() { fact(\"ghost\").title(\"g\").question(\"q\") }");
    assert_told(&files, &["incomplete facts.rhai:2:14 [fact] `ghost` stands in a declaration that never runs"]);
}
