//! The answer as plain text for a terminal.

use super::answer::{Applied, NotApplied, WhatIf};
use crate::diagnosis::{measure, percent};
use crate::paragraphs::{WIDTHS, push_paragraph};
use crate::units::Unit;

/// Renders the answer as text of at most `width` characters a line (40 to 110), without colour.
#[must_use]
pub fn render(answer: &WhatIf<'_>, width: usize) -> String {
    let mut page = Page { text: String::new(), width: width.clamp(WIDTHS.0, WIDTHS.1) };
    page.leader(answer);
    page.list("Changed", answer.applied.iter().map(applied));
    page.list("Could not be changed", answer.not_applied.iter().map(not_applied));
    page.list(
        "Causes, before and after",
        answer
            .causes
            .iter()
            .map(|cause| format!("{}: {} % → {} %", cause.title, percent(cause.before), percent(cause.after))),
    );
    page.list(
        "Computed, before and after",
        answer.computed.iter().map(|figure| {
            let (before, after) = (known(figure.before, figure.unit), known(figure.after, figure.unit));
            format!("{}: {before} → {after}", figure.title.replace('_', " "))
        }),
    );
    page.list("New cautions", answer.cautions_new.iter().map(|caution| caution.text.to_string()));
    page.list("Cautions that go", answer.cautions_gone.iter().map(|caution| caution.text.to_string()));
    page.text.push('\n');
    page.line(
        0,
        "",
        "What an action does to a reading is what is aimed at, not what is promised: the next batch shows it.",
    );
    page.text
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

/// Text under construction.
struct Page {
    text: String,
    width: usize,
}

impl Page {
    fn leader(&mut self, answer: &WhatIf<'_>) {
        let named = |leader: &Option<super::WhatIfLeader<'_>>| {
            leader.as_ref().map_or_else(
                || "no cause".to_owned(),
                |leader| format!("{} ({} %)", leader.title, percent(leader.probability)),
            )
        };
        let (before, after) = (named(&answer.leader.before), named(&answer.leader.after));
        let product = answer.product.replace('_', " ");
        let text = if answer.leader.changed {
            format!("{product}: {after} would lead; now it is {before}.")
        } else {
            format!("{product}: {after} would still lead; now {before}.")
        };
        self.line(0, "", &text);
    }

    fn list(&mut self, title: &str, items: impl ExactSizeIterator<Item = String>) {
        if items.len() == 0 {
            return;
        }
        self.text.push('\n');
        self.line(0, "", title);
        for item in items {
            self.line(2, "- ", &item);
        }
    }

    fn line(&mut self, indent: usize, mark: &str, text: &str) {
        push_paragraph(&mut self.text, self.width, indent, mark, text);
    }
}
