//! How to decide, and when to stop. What names no other source is common practice.

use super::request::{ControlPlace, DesignKind, TrialRequest};

/// The rule by which a change is taken or left.
pub(super) fn decide(counts_from: Option<&str>, changes: usize, request: &TrialRequest) -> Vec<String> {
    let counts = counts_from.map_or_else(
        || "the complaint is gone with it, or clearly less than without it on the same day".to_owned(),
        str::to_owned,
    );
    let against = match request.design {
        DesignKind::OneChangeAtATime => "The control is what every change is held against.",
        DesignKind::Factorial | DesignKind::HalfFactorial => {
            "Hold the mean of all runs with a change against the mean of all runs without it."
        }
    };
    let mut rules = vec![
        format!("A change has helped when {counts}."),
        against.to_owned(),
        "Let somebody judge the pieces who does not know which run they are of.".to_owned(),
    ];
    if request.control == ControlPlace::FirstAndLast {
        rules.push(
            "First and last control differ by what the day did: a change that differs from them by no more has not been shown."
                .to_owned(),
        );
    }
    // Nobody reckons with risks where no size was reckoned.
    if changes > 1 && counts_from.is_some() {
        // Independent comparisons; a control that they share makes the chance a little smaller.
        let chance =
            100.0 * (1.0 - (1.0 - request.measure.risks.alpha).powi(i32::try_from(changes).unwrap_or(i32::MAX)));
        rules.push(format!(
            "With {changes} changes the chance that at least one false alarm is among them is up to {chance:.0} %."
        ));
    }
    rules.push(if request.repeats > 1 {
        "What shows in one repeat only has not been shown.".to_owned()
    } else {
        "Bake the best change and the control once more on another day before it becomes the rule.".to_owned()
    });
    rules.push("Of changes that help alike take the one with the fewest side effects.".to_owned());
    rules
}

/// When to stop.
pub(super) fn stop() -> Vec<String> {
    [
        "The control does not show the complaint: what made it is not at work today, and no change can be judged.",
        "A dough or filling cannot be worked safely, or a machine, belt or oven behaves otherwise than usual.",
        "A limit that the plant's food safety plan sets (metal, core temperature, holding time) is passed: hold the run.",
        "A weight, lot or setting was not as written: void the run, note why, bake it again at the end.",
    ]
    .map(str::to_owned)
    .to_vec()
}
