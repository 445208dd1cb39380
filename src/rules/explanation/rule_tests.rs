//! Rule tests: cases beside the rules.

use super::{Example, Explanation};
use crate::rules::Code;

pub(super) const CONTRADICTION: Explanation = Explanation {
    code: Code::Contradiction,
    meaning: "Two statements of a case cannot both hold.",
    wrong: Example::File(
        "rolls/cases/hot_dough.json",
        r#"{ "title": "hot dough",
  "case": { "product": "hamburger_bun",
            "symptoms": [{ "symptom": "low_volume" }, { "symptom": "low_volume", "present": false }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } },
  "expect": { "below": { "dough_too_warm": 0.99 } } }
"#,
    ),
    says: r#"fault[contradiction]: `low_volume` is both present and absent
 --> rolls/cases/hot_dough.json:3:55
  |
3 |             "symptoms": [{ "symptom": "low_volume" }, { "symptom": "low_volume", "present": false }],
  |                                                       ^"#,
    right: Example::File(
        "rolls/cases/hot_dough.json",
        r#"{ "title": "hot dough",
  "case": { "product": "hamburger_bun",
            "symptoms": [{ "symptom": "low_volume", "present": false }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } },
  "expect": { "below": { "dough_too_warm": 0.99 } } }
"#,
    ),
    why: "A symptom is present, absent, or not looked at; what nobody looked at is left out.",
};

pub(super) const EXPECTS_NOTHING: Explanation = Explanation {
    code: Code::ExpectsNothing,
    meaning: "A rule test expects nothing.",
    wrong: Example::File(
        "rolls/cases/hot_dough.json",
        r#"{ "title": "hot dough",
  "case": { "product": "hamburger_bun",
            "symptoms": [{ "symptom": "hollow_under_crust" }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } },
  "expect": {} }
"#,
    ),
    says: r#"warning[expects-nothing]: the case expects nothing
 --> rolls/cases/hot_dough.json:5:3
  |
5 |   "expect": {} }
  |   ^^^^^^^^
  = help: add `"expect": { "leader": "…" }`"#,
    right: Example::File(
        "rolls/cases/hot_dough.json",
        r#"{ "title": "hot dough",
  "case": { "product": "hamburger_bun",
            "symptoms": [{ "symptom": "hollow_under_crust" }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } },
  "expect": { "leader": "dough_too_warm" } }
"#,
    ),
    why: "A case that expects nothing passes whatever the answer is.",
};

pub(super) const FAILED_TEST: Explanation = Explanation {
    code: Code::FailedTest,
    meaning: "The answer to a rule test is not what the test expects.",
    wrong: Example::File(
        "rolls/cases/hot_dough.json",
        r#"{ "title": "hot dough",
  "case": { "product": "hamburger_bun",
            "symptoms": [{ "symptom": "hollow_under_crust" }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } },
  "expect": { "above": { "dough_too_warm": 0.99 } } }
"#,
    ),
    says: r#"fault[failed-test]: `above`: wanted `dough_too_warm` above 0.99, came 0.971
 --> rolls/cases/hot_dough.json:5:26
  |
5 |   "expect": { "above": { "dough_too_warm": 0.99 } } }
  |                          ^^^^^^^^^^^^^^^^
  = help: the first causes are `dough_too_warm` 0.971"#,
    right: Example::File(
        "rolls/cases/hot_dough.json",
        r#"{ "title": "hot dough",
  "case": { "product": "hamburger_bun",
            "symptoms": [{ "symptom": "hollow_under_crust" }],
            "readings": { "dough_temperature": { "value": 31, "unit": "Cel" } } },
  "expect": { "above": { "dough_too_warm": 0.9 } } }
"#,
    ),
    why: "Either the change to the rules was wrong, or the expectation is: decide which, and correct that one. The first causes with their probabilities show how far off it is.",
};
