//! Inquiries as plain text for a terminal.

use super::super::numbers::number;
use super::super::remarks::percent;
use super::answer::{Inquiries, Inquiry, PlanStep, Sought};
use crate::paragraphs::Paragraphs;

/// Most inquiries in the text; the JSON has all.
const MOST: usize = 12;

/// Renders inquiries as text of at most `width` characters a line (40 to 110), without colour.
#[must_use]
pub fn render_inquiries(inquiries: &Inquiries<'_>, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    let causes: Vec<String> =
        inquiries.causes.iter().map(|cause| format!("{} {} %", cause.title, percent(cause.probability))).collect();
    page.add(0, &format!("{}: ", inquiries.product.replace('_', " ")), &causes.join("; "));
    add_plan(&mut page, inquiries);
    add_list(&mut page, inquiries);
    let cautions = inquiries.cautions.iter().map(|caution| {
        let why = caution.why.as_ref().map(|why| format!(" ({why})")).unwrap_or_default();
        format!("{}{why}", caution.text)
    });
    page.list("Cautions", cautions);
    page.blank();
    page.add(0, "", &format!("rules {} {}", inquiries.rules.version, inquiries.rules.digest));
    page.into_text()
}

fn add_plan(page: &mut Paragraphs, inquiries: &Inquiries<'_>) {
    let plan = &inquiries.plan;
    page.blank();
    let line = format!(
        "{} minutes on the average; with {} % probability a cause is certain ({} % or more) at its end",
        number(plan.expected_minutes.round()),
        percent(plan.probability_certain),
        percent(inquiries.options.certain_enough)
    );
    page.add(0, "Plan: ", &line);
    add_step(page, 1, &plan.start);
}

fn add_step(page: &mut Paragraphs, depth: usize, step: &PlanStep<'_>) {
    let indent = 2 * depth;
    if let Some(stop) = &step.stop {
        return page.add(indent, "stop: ", &stop.text);
    }
    if let Some(sought) = &step.find_out {
        page.add(indent, "", &in_a_line(sought));
    }
    for outcome in &step.outcomes {
        let mark = format!("{} ({} %): ", outcome.outcome, percent(outcome.probability));
        match &outcome.then.stop {
            Some(stop) => page.add(indent + 2, &mark, &stop.text),
            None => {
                page.add(indent + 2, "", &mark);
                add_step(page, depth + 2, &outcome.then);
            }
        }
    }
}

fn add_list(page: &mut Paragraphs, inquiries: &Inquiries<'_>) {
    if inquiries.inquiries.is_empty() {
        return;
    }
    page.heading("All that tells something, most information a minute first");
    for inquiry in inquiries.inquiries.iter().take(MOST) {
        page.add(2, "- ", &format!("{}: {}", in_a_line(&inquiry.find_out), inquiry.find_out.how));
        page.add(6, "", &outcomes(inquiry));
    }
    let rest = inquiries.inquiries.len().saturating_sub(MOST);
    if rest > 0 {
        page.add(2, "", &format!("and {rest} more; the JSON has them all"));
    }
}

fn in_a_line(sought: &Sought<'_>) -> String {
    format!("{} ({} min, {:.2} bit)", sought.title, number(sought.effort_minutes), sought.information_bits)
}

/// "above 29 °C (31 %): Dough too warm 38 → 83 %; below …".
fn outcomes(inquiry: &Inquiry<'_>) -> String {
    let outcomes = inquiry.outcomes.iter().map(|outcome| {
        let changes = outcome
            .changes
            .iter()
            .take(2)
            .map(|change| format!("{} {} → {} %", change.title, percent(change.before), percent(change.after)));
        let changes: Vec<String> = changes.collect();
        format!("{} ({} %): {}", outcome.outcome, percent(outcome.probability), changes.join(", "))
    });
    outcomes.collect::<Vec<_>>().join("; ")
}
