//! A replay in words.

use std::fmt::Write as _;

use super::answer::{ActionChange, ActionDifference, Made, QuantityChange, RankingDifferences, Replay};
use crate::rule_tests::LeadingCause;

/// What a replay means.
pub(super) fn verdict(replay: &Replay) -> &'static str {
    if replay.same {
        return "the same answer, byte for byte";
    }
    if replay.same_content {
        return "the same answer, stored with other white space or another order of members";
    }
    let is_refused = !replay.refused.is_empty();
    match (replay.same_rules, replay.same_program) {
        (true, Some(true)) if is_refused => {
            "these rules and this program refuse the case: case or digest of the record have been changed"
        }
        (true, Some(true)) => "these rules and this program do not give the stored answer: the record has been changed",
        (true, None) => {
            "these rules do not give the stored answer: the record has been changed, or another version of the program \
             made it; the record does not say which"
        }
        (true, Some(false)) => "the same rules, another version of the program, another answer",
        (false, _) if is_refused => "the rules of now refuse the case",
        (false, _) if is_stamp(replay) => "other rules, and the same answer but for their version and digest",
        (false, Some(false)) => "other rules and another version of the program, another answer",
        (false, _) => "other rules, another answer",
    }
}

/// Whether nothing differs but the version and digest of the rules.
fn is_stamp(replay: &Replay) -> bool {
    let is_of_rules = |place: &String| place.starts_with("/rules/");
    replay.places_left_out == 0 && !replay.places.is_empty() && replay.places.iter().all(is_of_rules)
}

/// A replay as text, with a newline at its end.
#[must_use]
pub fn text(replay: &Replay) -> String {
    let mut text = format!("{}\n", replay.verdict);
    if replay.same {
        return text;
    }
    let _ = writeln!(text, "then: {}", made(&replay.then));
    let _ = writeln!(text, "now:  {}", made(&replay.now));
    for fault in &replay.refused {
        let _ = writeln!(text, "refused: {}: {}", fault.pointer, fault.detail);
    }
    if let Some(ranking) = &replay.ranking {
        tell_ranking(&mut text, ranking);
    }
    for action in &replay.actions {
        tell_action(&mut text, action);
    }
    let cautions = &replay.cautions;
    for (ids, what) in [(&cautions.appeared, "new"), (&cautions.vanished, "gone"), (&cautions.reworded, "reworded")] {
        if !ids.is_empty() {
            let _ = writeln!(text, "cautions {what}: {}", ids.join(", "));
        }
    }
    if !replay.places.is_empty() {
        let more =
            if replay.places_left_out > 0 { format!(" and {} more", replay.places_left_out) } else { String::new() };
        let _ = writeln!(text, "places that differ: {}{more}", replay.places.join(" "));
    }
    text
}

fn made(made: &Made) -> String {
    let program = made.program_version.as_deref().unwrap_or("not known");
    format!("rules {} {}, program {program}", made.rules_version, made.rules_digest)
}

fn tell_ranking(text: &mut String, ranking: &RankingDifferences) {
    let _ = writeln!(text, "ranking then: {}", listed(&ranking.before));
    let _ = writeln!(text, "ranking now:  {}", listed(&ranking.after));
    for (causes, what) in [(&ranking.appeared, "new"), (&ranking.vanished, "gone")] {
        if !causes.is_empty() {
            let _ = writeln!(text, "causes {what}: {}", listed(causes));
        }
    }
    for change in &ranking.changes {
        let _ = writeln!(text, "  {}: {:.3} -> {:.3}", change.cause, change.before, change.after);
    }
}

fn listed(causes: &[LeadingCause]) -> String {
    let causes: Vec<String> = causes.iter().map(|own| format!("{} {:.3}", own.cause, own.probability)).collect();
    causes.join(", ")
}

fn tell_action(text: &mut String, action: &ActionDifference) {
    let what = match action.change {
        ActionChange::Appeared => "new",
        ActionChange::Vanished => "gone",
        ActionChange::Quantities => "other quantities",
    };
    let _ = writeln!(text, "action {} of {}: {what}", action.action, action.cause);
    for QuantityChange { name, before, after, unit_before, unit_after } in &action.quantities {
        let said = |value: &Option<f64>, unit: &Option<String>| match (value, unit) {
            (Some(value), Some(unit)) => format!("{value} {unit}"),
            _ => "none".to_owned(),
        };
        let _ = writeln!(text, "  {name}: {} -> {}", said(before, unit_before), said(after, unit_after));
    }
}
