//! Inquiries as plain text for a terminal.

use super::super::numbers::number;
use super::super::remarks::percent;
use super::answer::{Inquiries, Inquiry, PlanStep, Sought};
use crate::paragraphs::{WIDTHS, push_paragraph};

/// Most inquiries in the text; the JSON has all.
const MOST: usize = 12;

/// Renders inquiries as text of at most `width` characters a line (40 to 110), without colour.
#[must_use]
pub fn render_inquiries(inquiries: &Inquiries<'_>, width: usize) -> String {
    let mut page = Page { text: String::new(), width: width.clamp(WIDTHS.0, WIDTHS.1) };
    let causes: Vec<String> =
        inquiries.causes.iter().map(|cause| format!("{} {} %", cause.title, percent(cause.probability))).collect();
    page.hanging(0, &format!("{}: ", inquiries.product.replace('_', " ")), &causes.join("; "));
    page.plan(inquiries);
    page.list(inquiries);
    page.cautions(inquiries);
    page.text
}

struct Page {
    text: String,
    width: usize,
}

impl Page {
    fn plan(&mut self, inquiries: &Inquiries<'_>) {
        let plan = &inquiries.plan;
        self.blank();
        let line = format!(
            "{} minutes on the average; with {} % probability a cause is certain ({} % or more) at its end",
            number(plan.expected_minutes.round()),
            percent(plan.probability_certain),
            percent(inquiries.options.certain_enough)
        );
        self.hanging(0, "Plan: ", &line);
        self.step(1, &plan.start);
    }

    fn step(&mut self, depth: usize, step: &PlanStep<'_>) {
        let indent = 2 * depth;
        if let Some(stop) = &step.stop {
            return self.hanging(indent, "stop: ", &stop.text);
        }
        if let Some(sought) = &step.find_out {
            self.hanging(indent, "", &in_a_line(sought));
        }
        for outcome in &step.outcomes {
            let mark = format!("{} ({} %): ", outcome.outcome, percent(outcome.probability));
            match &outcome.then.stop {
                Some(stop) => self.hanging(indent + 2, &mark, &stop.text),
                None => {
                    self.hanging(indent + 2, "", &mark);
                    self.step(depth + 2, &outcome.then);
                }
            }
        }
    }

    fn list(&mut self, inquiries: &Inquiries<'_>) {
        if inquiries.inquiries.is_empty() {
            return;
        }
        self.blank();
        self.hanging(0, "", "All that tells something, most information a minute first");
        for inquiry in inquiries.inquiries.iter().take(MOST) {
            self.hanging(2, "- ", &format!("{}: {}", in_a_line(&inquiry.find_out), inquiry.find_out.how));
            self.hanging(6, "", &outcomes(inquiry));
        }
        let rest = inquiries.inquiries.len().saturating_sub(MOST);
        if rest > 0 {
            self.hanging(2, "", &format!("and {rest} more; the JSON has them all"));
        }
    }

    fn cautions(&mut self, inquiries: &Inquiries<'_>) {
        if !inquiries.cautions.is_empty() {
            self.blank();
            self.hanging(0, "", "Cautions");
        }
        for caution in &inquiries.cautions {
            let why = caution.why.as_ref().map(|why| format!(" ({why})")).unwrap_or_default();
            self.hanging(2, "- ", &format!("{}{why}", caution.text));
        }
        self.blank();
        self.hanging(0, "", &format!("rules {} {}", inquiries.rules.version, inquiries.rules.digest));
    }

    fn blank(&mut self) {
        self.text.push('\n');
    }

    fn hanging(&mut self, indent: usize, mark: &str, text: &str) {
        push_paragraph(&mut self.text, self.width, indent, mark, text);
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
