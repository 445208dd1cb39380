//! The answer as plain text for a terminal.

use super::answer::{Applied, NotApplied, WhatIf, WhatIfLeader};
use crate::diagnosis::{measure, percent};
use crate::paragraphs::Paragraphs;
use crate::units::Unit;

/// Most causes that are told; the answer has more.
const MOST_CAUSES: usize = 10;

/// Renders the answer as text of at most `width` characters a line (40 to 110), without colour.
#[must_use]
pub fn render(answer: &WhatIf<'_>, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    page.add(0, "", &leader(answer));
    page.list("Changed", answer.applied.iter().map(applied));
    page.list("Could not be changed", answer.not_applied.iter().map(not_applied));
    page.list("Causes, before and after", causes(answer));
    page.list(
        "Computed, before and after",
        answer.computed.iter().map(|figure| {
            let (before, after) = (known(figure.before, figure.unit), known(figure.after, figure.unit));
            format!("{}: {before} → {after}", figure.title.replace('_', " "))
        }),
    );
    page.list("New cautions", answer.cautions_new.iter().map(|caution| caution.text.to_string()));
    page.list("Cautions that go", answer.cautions_gone.iter().map(|caution| caution.text.to_string()));
    page.blank();
    page.add(
        0,
        "",
        "What an action does to a reading is what is aimed at, not what is promised: the next batch shows it.",
    );
    page.into_text()
}

/// Who leads, before and after.
fn leader(answer: &WhatIf<'_>) -> String {
    let named = |leader: &Option<WhatIfLeader<'_>>| {
        leader.as_ref().map_or_else(
            || "no cause".to_owned(),
            |leader| format!("{} ({} %)", leader.title, percent(leader.probability)),
        )
    };
    let (before, after) = (named(&answer.leader.before), named(&answer.leader.after));
    let product = answer.product.replace('_', " ");
    match (answer.leader.changed, &answer.leader.before) {
        (true, _) => format!("{product}: {after} would lead; now it is {before}."),
        (false, Some(then)) => {
            format!("{product}: {after} would lead as it does now ({} %).", percent(then.probability))
        }
        (false, None) => format!("{product}: no cause leads, now or then."),
    }
}

/// The causes whose probability moves in what is told of it; the leading ones always.
fn causes(answer: &WhatIf<'_>) -> Vec<String> {
    let leaders = [&answer.leader.before, &answer.leader.after];
    let leads = |id: &str| leaders.into_iter().flatten().any(|leader| leader.cause == id);
    let told = answer.causes.iter().map(|cause| (cause, percent(cause.before), percent(cause.after)));
    let told: Vec<_> = told.filter(|(cause, before, after)| before != after || leads(cause.cause)).collect();
    let mut lines: Vec<String> = told
        .iter()
        .take(MOST_CAUSES)
        .map(|(cause, before, after)| format!("{}: {before} % → {after} %", cause.title))
        .collect();
    if let Some(more) = told.len().checked_sub(MOST_CAUSES).filter(|more| *more > 0) {
        lines.push(format!("{more} others move less"));
    }
    lines
}

fn known(value: Option<f64>, code: &str) -> String {
    let with_unit = |value| Unit::parse(code).map_or_else(|_| format!("{value} {code}"), |unit| measure(value, &unit));
    value.map_or_else(|| "unknown".to_owned(), with_unit)
}

fn applied(one: &Applied<'_>) -> String {
    let what = one.changes.as_ref().map_or_else(
        || one.finding.unwrap_or_default().to_owned(),
        |change| {
            let ingredients = change.ingredients.join(" and ");
            let names = [change.ingredient, change.role, Some(ingredients.as_str()).filter(|all| !all.is_empty())];
            names.into_iter().flatten().next().or(change.reading).unwrap_or_default().to_owned()
        },
    );
    let by = one.action.map(|action| format!(" ({})", action.replace('_', " "))).unwrap_or_default();
    let (before, after) = match one.unit {
        Some(unit) => (known(one.before, unit), known(Some(one.after), unit)),
        None => (one.before.map_or_else(|| "unknown".to_owned(), said), said(one.after)),
    };
    format!("{}: {before} → {after}{by}", what.replace('_', " "))
}

/// A fact or a certainty.
fn said(value: f64) -> String {
    match value {
        1.0 => "yes".to_owned(),
        0.0 => "no".to_owned(),
        other => format!("{} % yes", percent(other)),
    }
}

fn not_applied(one: &NotApplied<'_>) -> String {
    let names: Vec<String> = [one.action, one.quantity].into_iter().flatten().map(|id| id.replace('_', " ")).collect();
    format!("{}: {}", names.join(", "), one.text)
}
