//! Rules that cannot be loaded: files, names and words.

use super::{Example, Explanation};
use crate::rules::Code;

pub(super) const FILE: Explanation = Explanation {
    code: Code::File,
    meaning: "A file cannot be read: it is no text in UTF-8, no ordinary file, too long, or its ending is in capital letters; or the folder holds no rules, or a link that leads in a circle.",
    wrong: Example::OldEncoding(
        "buns.rhai",
        r#"// crème brûlée buns
"#,
    ),
    says: r#"fault[file]: cannot read the file: it is not text in UTF-8
 --> buns.rhai"#,
    right: Example::File(
        "buns.rhai",
        r#"// crème brûlée buns
"#,
    ),
    why: "Rule files are plain text in UTF-8, so that every letter means the same on every machine; most editors offer it under “save as”.",
};

pub(super) const SYNTAX: Explanation = Explanation {
    code: Code::Syntax,
    meaning: "The text is no script, or a rule test is no JSON: a bracket, quote or comma is missing or too many.",
    wrong: Example::File(
        "ingredients.rhai",
        r#"ingredient("rice_flour").title("Rice flour).flour()
    .composition(#{ water: 12, starch: 78 });
"#,
    ),
    says: r#"fault[syntax]: open string is not terminated
 --> ingredients.rhai:1:32
  |
1 | ingredient("rice_flour").title("Rice flour).flour()
  |                                ^"#,
    right: Example::File(
        "ingredients.rhai",
        r#"ingredient("rice_flour").title("Rice flour").flour()
    .composition(#{ water: 12, starch: 78 });
"#,
    ),
    why: "The place is where reading had to stop; the mistake is there or a little before it.",
};

pub(super) const UNKNOWN_NAME: Explanation = Explanation {
    code: Code::UnknownName,
    meaning: "Nothing declares this name.",
    wrong: Example::Cause(r#".evidence(dough_temprature > 29, STRONG)"#),
    says: r#"fault[unknown-name]: unknown name `dough_temprature`
  --> mixing.rhai:10:15
   |
10 |     .evidence(dough_temprature > 29, STRONG)
   |               ^^^^^^^^^^^^^^^^
   = help: did you mean `dough_temperature`?"#,
    right: Example::Cause(r#".evidence(dough_temperature > 29, STRONG)"#),
    why: "A misspelt name would otherwise be evidence that no case ever meets. Correct it, or declare it in the file that it belongs in.",
};

pub(super) const UNKNOWN_WORD: Explanation = Explanation {
    code: Code::UnknownWord,
    meaning: "The rule language, or a rule test, has no such word.",
    wrong: Example::Cause(r#".show(low_volume, OFTEN)"#),
    says: r#"fault[unknown-word]: unknown word `show`
  --> mixing.rhai:10:6
   |
10 |     .show(low_volume, OFTEN)
   |      ^^^^
   = help: did you mean `shows`?"#,
    right: Example::Cause(r#".shows(low_volume, OFTEN)"#),
    why: "What would be skipped in silence would be missed in the answer.",
};

pub(super) const WRONG_ARGUMENTS: Explanation = Explanation {
    code: Code::WrongArguments,
    meaning: "A word is used with too few, too many or the wrong kind of things.",
    wrong: Example::Cause(r#".shows(low_volume)"#),
    says: r#"fault[wrong-arguments]: `shows` takes 2 arguments, 1 given
  --> mixing.rhai:10:6
   |
10 |     .shows(low_volume)
   |      ^^^^^
   = help: write `.shows(hollow_under_crust, OFTEN)`"#,
    right: Example::Cause(r#".shows(low_volume, OFTEN)"#),
    why: "Every word needs certain things to mean anything; the help shows how it is written.",
};

pub(super) const OUT_OF_RANGE: Explanation = Explanation {
    code: Code::OutOfRange,
    meaning: "A number is outside the range that it can have.",
    wrong: Example::Cause(r#".shows(low_volume, 60)"#),
    says: r#"fault[out-of-range]: 60 is not between 0 and 1, both excluded
  --> mixing.rhai:10:6
   |
10 |     .shows(low_volume, 60)
   |      ^^^^^"#,
    right: Example::Cause(r#".shows(low_volume, 0.6)"#),
    why: "Probabilities lie between 0 and 1, both excluded: nothing is certain. 60 of 100 is 0.6.",
};

pub(super) const DUPLICATE: Explanation = Explanation {
    code: Code::Duplicate,
    meaning: "The same thing is said twice.",
    wrong: Example::Cause(r#".shows(hollow_under_crust, 0.3)"#),
    says: r#"fault[duplicate]: `hollow_under_crust` is shown twice by this cause
  --> mixing.rhai:10:6
   |
10 |     .shows(hollow_under_crust, 0.3)
   |      ^^^^^"#,
    right: Example::Cause(r#".shows(low_volume, 0.3)"#),
    why: "Of two strengths only one can be meant; the checker does not guess which.",
};

pub(super) const WRONG_FILE: Explanation = Explanation {
    code: Code::WrongFile,
    meaning: "A word stands in a file that may not use it.",
    wrong: Example::File(
        "lard.rhai",
        r#"ingredient("lard").title("Lard").composition(#{ fat: 99 });
"#,
    ),
    says: r#"fault[wrong-file]: `ingredient` may not stand in this file
 --> lard.rhai:1:1
  |
1 | ingredient("lard").title("Lard").composition(#{ fat: 99 });
  | ^^^^^^^^^^
  = help: it belongs in a file named `ingredients.rhai`"#,
    right: Example::File(
        "ingredients.rhai",
        r#"ingredient("lard").title("Lard").composition(#{ fat: 99 });
"#,
    ),
    why: "Files are read in an order that follows from their names, so that causes find every ingredient, symptom and reading declared.",
};

pub(super) const INCOMPLETE: Explanation = Explanation {
    code: Code::Incomplete,
    meaning: "A declaration lacks something that answers need; of a cause without symptom, action, confirming reading or source it is only a warning.",
    wrong: Example::File(
        "ingredients.rhai",
        r#"ingredient("lard").composition(#{ fat: 99 });
"#,
    ),
    says: r#"fault[incomplete]: `lard` has no title
 --> ingredients.rhai:1:1
  |
1 | ingredient("lard").composition(#{ fat: 99 });
  | ^^^^^^^^^^
  = help: add `.title(…)`"#,
    right: Example::File(
        "ingredients.rhai",
        r#"ingredient("lard").title("Lard").composition(#{ fat: 99 });
"#,
    ),
    why: "People read titles, methods and mechanisms, not ids.",
};

pub(super) const UNIT: Explanation = Explanation {
    code: Code::Unit,
    meaning: "A unit is no UCUM code, or measures something else.",
    wrong: Example::File(
        "readings.rhai",
        r#"reading("core_temperature").title("core temperature").method("probe")
    .unit("celsius").plausible(0, 120).computed(dough_temperature);
"#,
    ),
    says: r#"fault[unit]: unknown unit `celsius`
 --> readings.rhai:2:6
  |
2 |     .unit("celsius").plausible(0, 120).computed(dough_temperature);
  |      ^^^^
  = help: write `Cel`"#,
    right: Example::File(
        "readings.rhai",
        r#"reading("core_temperature").title("core temperature").method("probe")
    .unit("Cel").plausible(0, 120).computed(dough_temperature);
"#,
    ),
    why: "UCUM is an open standard in which every unit has one code, so °C and °F cannot be mixed up.",
};

pub(super) const INCONSISTENT_WEIGHTS: Explanation = Explanation {
    code: Code::InconsistentWeights,
    meaning: "Weights for and against, or a weight and a usual share, cannot both be right.",
    wrong: Example::Cause(r#".evidence(dough_waits, STRONG, usual(0.2))"#),
    says: r#"fault[inconsistent-weights]: 10 decibans cannot hold when the condition is usually true in 0.2 of all cases
  --> mixing.rhai:10:6
   |
10 |     .evidence(dough_waits, STRONG, usual(0.2))
   |      ^^^^^^^^
   = help: a usual share under 0.100, or a smaller weight"#,
    right: Example::Cause(r#".evidence(dough_waits, STRONG, usual(0.05))"#),
    why: "STRONG is ten times as often with the cause as without it. What is met in 20 of 100 cases without the cause cannot be met in 200 of 100 with it.",
};

pub(super) const LIMIT: Explanation = Explanation {
    code: Code::Limit,
    meaning: "A script ran over a limit of time, size or depth.",
    wrong: Example::File(
        "steps.rhai",
        r#"let step = 0;
loop { step += 1; }
"#,
    ),
    says: r#"fault[limit]: too many operations
 --> steps.rhai:2:13
  |
2 | loop { step += 1; }
  |             ^"#,
    right: Example::File(
        "steps.rhai",
        r#"for step in 1..=3 {
    // one rule a step
}
"#,
    ),
    why: "Rules run once while they are loaded; a loop without an end would hold the service for ever.",
};

pub(super) const SCRIPT: Explanation = Explanation {
    code: Code::Script,
    meaning: "A script, or the closure of `judged`, failed while it ran.",
    wrong: Example::Cause(r#".evidence(judged([dough_temperature], "dough is warm", |dough| dough + 1), STRONG)"#),
    says: r#"fault[script]: the closure fails on typical values: 28.5 is no grade from 0 to 1
  --> mixing.rhai:10:15
   |
10 |     .evidence(judged([dough_temperature], "dough is warm", |dough| dough + 1), STRONG)
   |               ^^^^^^"#,
    right: Example::Cause(r#".evidence(judged([dough_temperature], "dough is warm", |dough| dough > 29), STRONG)"#),
    why: "A closure gives `true`, `false` or a grade from 0 to 1. It is tried on typical values when it is loaded, so that it does not fail on a case.",
};
