//! Warnings: what can be loaded, but is probably not meant.

use super::{Example, Explanation};
use crate::rules::Code;

pub(super) const UNUSED: Explanation = Explanation {
    code: Code::Unused,
    meaning: "Something is declared and never used.",
    wrong: Example::File(
        "ingredients.rhai",
        r#"ingredient("lard").title("Lard");
"#,
    ),
    says: r#"warning[unused]: ingredient `lard` is never used
 --> ingredients.rhai:1:1
  |
1 | ingredient("lard").title("Lard");
  | ^^^^^^^^^^
  = help: give its composition, or use it in a rule"#,
    right: Example::File(
        "ingredients.rhai",
        r#"ingredient("lard").title("Lard").composition(#{ fat: 99 });
"#,
    ),
    why: "What is forgotten in the rules helps nobody: a symptom that no cause shows is answered with “unexplained”, a reading that no evidence needs is never asked for.",
};

pub(super) const NEVER_APPLIES: Explanation = Explanation {
    code: Code::NeverApplies,
    meaning: "Evidence or a confirmation that no case can meet, or that every case meets.",
    wrong: Example::Cause(r#".evidence(dough_temperature > room_temperature + 90, STRONG)"#),
    says: r#"warning[never-applies]: this condition is false for every plausible value
  --> mixing.rhai:10:6
   |
10 |     .evidence(dough_temperature > room_temperature + 90, STRONG)
   |      ^^^^^^^^
   = help: compare with a number that the readings can be on either side of"#,
    right: Example::Cause(r#".evidence(dough_temperature > room_temperature + 9, STRONG)"#),
    why: "All readings run through their plausible ranges here. A condition that stays true or false for all of them tells nothing, as does a reading or a symptom of other products.",
};

pub(super) const NEVER_MATTERS: Explanation = Explanation {
    code: Code::NeverMatters,
    meaning: "Evidence that changes nothing: too light, or always outweighed in its group.",
    wrong: Example::Cause(r#".evidence(dough_waits, 0.2)"#),
    says: r#"warning[never-matters]: evidence of 0.2 decibans changes nothing
  --> mixing.rhai:10:6
   |
10 |     .evidence(dough_waits, 0.2)
   |      ^^^^^^^^
   = help: one deciban is the least that is noticed; give 0.5 or more, or leave the evidence out"#,
    right: Example::Cause(r#".evidence(dough_waits, 2)"#),
    why: "Half a deciban changes odds by an eighth, less than anybody notices. Of a group only the strongest item counts.",
};

pub(super) const IMPLAUSIBLE_THRESHOLD: Explanation = Explanation {
    code: Code::ImplausibleThreshold,
    meaning: "A reading is compared with a number outside its plausible range.",
    wrong: Example::Cause(r#".evidence(room_temperature > 86, STRONG)"#),
    says: r#"warning[implausible-threshold]: `room_temperature` is compared with 86, but plausible are -20 to 60
  --> mixing.rhai:10:6
   |
10 |     .evidence(room_temperature > 86, STRONG)
   |      ^^^^^^^^
   = help: values outside the plausible range are set aside; correct the number or `.plausible(…)`"#,
    right: Example::Cause(r#".evidence(room_temperature > 30, STRONG)"#),
    why: "Values outside the plausible range are set aside, so the limit is never passed. Often the number is in another unit: 86 °F are 30 °C.",
};

pub(super) const INDISTINGUISHABLE: Explanation = Explanation {
    code: Code::Indistinguishable,
    meaning: "Nothing in the rules tells two causes of a product apart.",
    wrong: Example::File(
        "room.rhai",
        r#"cause("dough_hot").title("Dough hot").mechanism("Warm dough gasses too early.")
    .products(soft_rolls).prior(COMMON)
    .shows(hollow_under_crust, OFTEN)
    .evidence(dough_temperature.rises(28, 30), STRONG, against(MODERATE))
    .action(colder_water).confirm(dough_temperature > 29).source(common_practice);
"#,
    ),
    says: r#"warning[indistinguishable]: nothing tells `dough_too_warm` and `dough_hot` apart
 --> room.rhai:1:1
  |
1 | cause("dough_hot").title("Dough hot").mechanism("Warm dough gasses too early.")
  | ^^^^^
  = help: add a symptom or `.evidence(…)` that only one of them has, or make them one cause"#,
    right: Example::File(
        "room.rhai",
        r#"cause("room_too_warm").title("Room too warm").mechanism("A warm room warms the dough while it rests.")
    .products(soft_rolls).prior(COMMON)
    .shows(hollow_under_crust, OFTEN)
    .evidence(room_temperature > 30, STRONG, against(MODERATE))
    .action(colder_water).confirm(room_temperature > 30).source(common_practice);
"#,
    ),
    why: "They would always share their probability, and no reading could settle which it is. Say what only one of them shows, or make them one.",
};

pub(super) const LOOK_ALIKE: Explanation = Explanation {
    code: Code::LookAlike,
    meaning: "Two ids of one kind differ by a letter, an underscore or a plural, or two titles of one product are equal.",
    wrong: Example::File(
        "ingredients.rhai",
        r#"ingredient("rye_flour").title("Rye flour").flour();
ingredient("rye_flours").title("Rye flour, coarse").flour();
"#,
    ),
    says: r#"warning[look-alike]: the ids of `rye_flour` and `rye_flours` look alike
 --> ingredients.rhai:2:1
  |
2 | ingredient("rye_flours").title("Rye flour, coarse").flour();
  | ^^^^^^^^^^
  = help: choose names that nobody takes for each other, or make them one"#,
    right: Example::File(
        "ingredients.rhai",
        r#"ingredient("rye_flour").title("Rye flour").flour();
ingredient("coarse_rye_meal").title("Coarse rye meal").flour();
"#,
    ),
    why: "Sooner or later somebody takes one for the other, and no check can tell.",
};

pub(super) const HIGH_PRIORS: Explanation = Explanation {
    code: Code::HighPriors,
    meaning: "The priors of a product add up to more causes than can be at work at once.",
    wrong: Example::File(
        "late.rhai",
        r#"for hour in 1..=8 {
    cause("late_by_" + hour).title("Late by " + hour + " h").mechanism("Dough waits.")
        .products(soft_rolls).prior(0.6)
        .shows(low_volume, 0.1 + 0.05 * hour).evidence(dough_temperature > 20 + hour, STRONG)
        .action(colder_water).confirm(dough_waits).source(common_practice);
}
"#,
    ),
    says: r#"warning[high-priors]: the priors of `hamburger_bun` add up to 4.9: so many causes would be at work in every complaint
 --> products.rhai:2:1
  |
2 | product("hamburger_bun").title("Hamburger bun").family(soft_rolls);
  | ^^^^^^^
  = help: choose rarer priors, so that they add up to 4 at most"#,
    right: Example::File(
        "late.rhai",
        r#"for hour in 1..=8 {
    cause("late_by_" + hour).title("Late by " + hour + " h").mechanism("Dough waits.")
        .products(soft_rolls).prior(0.2)
        .shows(low_volume, 0.1 + 0.05 * hour).evidence(dough_temperature > 20 + hour, STRONG)
        .action(colder_water).confirm(dough_waits).source(common_practice);
}
"#,
    ),
    why: "Priors add up to the number of causes behind an average complaint. With too high priors everything is probable and nothing is told apart.",
};
