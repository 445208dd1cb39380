//! The answer as plain text for a terminal.

use super::answer::{ActionAdvice, ConfirmationStatus, Diagnosis, RankedCause};
use super::inquiry::{BriefOutcome, CauseAfter};
use super::numbers::{measure, number};
use super::remarks::percent;
use crate::paragraphs::{WIDTHS, push_paragraph};
use crate::units::Unit;

/// Most actions of the order that are written.
const MOST_ORDERED: usize = 5;

/// Renders a diagnosis as text of at most `width` characters a line (40 to 110), without colour.
#[must_use]
pub fn render(diagnosis: &Diagnosis<'_>, width: usize) -> String {
    let mut page = Page { text: String::new(), width: width.clamp(WIDTHS.0, WIDTHS.1) };
    page.line(0, &format!("{}: {}", diagnosis.product_title, diagnosis.summary));
    for (place, cause) in diagnosis.causes.iter().enumerate() {
        page.cause(place + 1, cause);
    }
    page.others(diagnosis);
    page.order(diagnosis);
    page.next(diagnosis);
    page.remarks(diagnosis);
    page.text
}

/// A computed value with its unit as people write it and can set it: three digits, and whole numbers from 100 on. The
/// rules have checked the code.
pub(crate) fn with_symbol(value: f64, code: &str) -> String {
    let value = match value.abs() {
        size if size >= 100.0 => value.round(),
        size if size >= 10.0 => (value * 10.0).round() / 10.0,
        _ => (value * 100.0).round() / 100.0,
    };
    Unit::parse(code).map_or_else(|_| format!("{} {code}", number(value)), |unit| measure(value, &unit))
}

/// Title of a cause.
fn title(diagnosis: &Diagnosis<'_>, cause: &str) -> String {
    let leading = diagnosis.causes.iter().map(|one| (one.cause, one.title));
    let others = diagnosis.other_causes.iter().map(|one| (one.cause, one.title));
    leading
        .chain(others)
        .find(|(id, _)| *id == cause)
        .map_or_else(|| cause.replace('_', " "), |(_, title)| title.to_string())
}

/// What may come out and what that would do: "above 15 min (32 %): Dough too warm 92 %, Old dough 41 %; below …".
fn outcomes(diagnosis: &Diagnosis<'_>, outcomes: &[BriefOutcome<'_>]) -> String {
    let texts = outcomes.iter().map(|outcome| {
        let cause =
            |after: &CauseAfter<'_>| format!("{} {} %", title(diagnosis, after.cause), percent(after.probability));
        let causes: Vec<String> = outcome.causes.iter().take(2).map(cause).collect();
        format!("{} ({} %): {}", outcome.outcome, percent(outcome.probability), causes.join(", "))
    });
    texts.collect::<Vec<_>>().join("; ")
}

/// What is lost until an action works.
fn waste(batches: Option<f64>) -> String {
    match batches {
        None => "waste unknown".to_owned(),
        Some(0.0) => "no waste".to_owned(),
        Some(1.0) => "waste 1 batch".to_owned(),
        Some(batches) => format!("waste {} batches", number(batches)),
    }
}

/// Text under construction.
struct Page {
    text: String,
    width: usize,
}

impl Page {
    fn cause(&mut self, place: usize, cause: &RankedCause<'_>) {
        self.blank();
        self.line(
            0,
            &format!(
                "{place}. {}   {} %  (before: {} %)",
                cause.title,
                percent(cause.probability),
                percent(cause.prior)
            ),
        );
        self.line(3, cause.mechanism);
        for argument in &cause.evidence {
            let sign = if argument.decibans >= 0.0 { '+' } else { '−' };
            self.hanging(3, &format!("{sign}{:>5.1} dB  ", argument.decibans.abs()), &argument.text);
        }
        for action in &cause.actions {
            self.action(action);
        }
        for confirm in &cause.confirm {
            let status = match confirm.status {
                ConfirmationStatus::Open => "",
                ConfirmationStatus::Confirmed => " [confirmed]",
                ConfirmationStatus::Excluded => " [excluded]",
                ConfirmationStatus::Undecided => " [between the two]",
            };
            let excludes = confirm.excludes.as_ref().map(|text| format!("; excluded by: {text}")).unwrap_or_default();
            self.hanging(3, "check: ", &format!("{}{excludes}{status} ({})", confirm.expect, confirm.method));
        }
    }

    fn action(&mut self, action: &ActionAdvice<'_>) {
        self.hanging(3, "do: ", &format!("{}. {}", action.title, action.text));
        for quantity in &action.quantities {
            self.line(
                7,
                &format!("{} = {}", quantity.name.replace('_', " "), with_symbol(quantity.value, quantity.unit)),
            );
            if let Some(text) = &quantity.capped {
                self.hanging(7, "law: ", text);
            }
            if let Some(method) = &quantity.method {
                self.hanging(9, "by: ", method.name);
            }
            for remark in &quantity.remarks {
                self.hanging(9, "note: ", remark);
            }
        }
        if !action.needs.is_empty() {
            let lead = if action.quantities.is_empty() { "for the quantity" } else { "for closer quantities" };
            self.line(7, &format!("{lead}, measure: {}", action.needs.join(", ").replace('_', " ")));
        }
        for effect in action.side_effects {
            self.hanging(7, "mind: ", effect);
        }
    }

    fn others(&mut self, diagnosis: &Diagnosis<'_>) {
        if let Some(first) = diagnosis.other_causes.first() {
            self.blank();
            let count = diagnosis.other_causes.len();
            self.line(
                0,
                &format!(
                    "{count} other causes, each at {} % or less, the most probable being: {}",
                    percent(first.probability),
                    first.title
                ),
            );
        }
    }

    fn order(&mut self, diagnosis: &Diagnosis<'_>) {
        let order = &diagnosis.action_order;
        self.heading("Do in this order", order.actions.is_empty());
        for (place, action) in order.actions.iter().take(MOST_ORDERED).enumerate() {
            let text = format!(
                "{} ({} % that it takes a cause away; {} min, {}, {})",
                action.title,
                percent(action.mends),
                number(action.effort_minutes),
                action.cost.map_or_else(|| "cost unknown".to_owned(), |word| word.to_lowercase().replace('_', " ")),
                waste(action.waste_batches)
            );
            self.hanging(2, &format!("{}. ", place + 1), &text);
            for brought in action.may_bring.iter().filter(|brought| brought.already_seen) {
                self.hanging(
                    6,
                    "against it: ",
                    &format!("it can bring {}, seen already", brought.symptom.replace('_', " ")),
                );
            }
        }
        if let Some(last) = order.after.last() {
            let actions =
                if last.actions == 1 { "the first".to_owned() } else { format!("the first {}", last.actions) };
            let text = format!(
                "after {actions}: {} % that a cause is gone, {} % that all are",
                percent(last.one_cause_gone),
                percent(last.all_causes_gone)
            );
            self.hanging(2, "", &text);
        }
    }

    fn next(&mut self, diagnosis: &Diagnosis<'_>) {
        self.heading("Measure next", diagnosis.next_readings.is_empty());
        for next in &diagnosis.next_readings {
            let text = format!(
                "{} ({} min, {:.2} bit): {}",
                next.title,
                number(next.effort_minutes),
                next.information_bits,
                next.method
            );
            self.hanging(2, "- ", &text);
            let apart: Vec<String> = next.tells_apart.iter().map(|id| title(diagnosis, id)).collect();
            self.hanging(6, "tells apart: ", &apart.join("; "));
            self.hanging(6, "", &outcomes(diagnosis, &next.outcomes));
        }
        self.heading("Ask or look", diagnosis.next_questions.is_empty());
        for next in &diagnosis.next_questions {
            self.hanging(2, "- ", &format!("{} ({:.2} bit)", next.text, next.information_bits));
            self.hanging(6, "", &outcomes(diagnosis, &next.outcomes));
        }
    }

    fn remarks(&mut self, diagnosis: &Diagnosis<'_>) {
        self.list("Contradictions", diagnosis.contradictions.iter().map(|item| item.text.clone()));
        self.list("Not explained", diagnosis.unexplained.iter().map(|item| format!("{}: {}", item.title, item.text)));
        self.list("Speaks against the leader", diagnosis.against_leader.iter().map(|item| item.text.to_string()));
        self.list(
            "Set aside",
            diagnosis.set_aside.iter().map(|item| format!("{}: {}", item.finding.replace('_', " "), item.text)),
        );
        self.list(
            "Taken from readings",
            diagnosis.raised.iter().map(|item| {
                let state = if item.present { "seen" } else { "not seen" };
                format!("{} {state}: {}", item.symptom.replace('_', " "), item.text)
            }),
        );
        self.list(
            "Computed",
            diagnosis.computed.iter().map(|item| {
                let remarks: String = item.remarks.iter().map(|remark| format!("; mind: {remark}")).collect();
                format!(
                    "{} {} (from {}){remarks}",
                    item.title.replace('_', " "),
                    with_symbol(item.value, item.unit),
                    item.from.replace('_', " ")
                )
            }),
        );
        self.list(
            "Excluded actions",
            diagnosis.excluded_actions.iter().map(|item| {
                let instead: Vec<String> = item.instead.iter().map(|other| other.title.to_string()).collect();
                let joint = if instead.is_empty() { "" } else { "; instead: " };
                format!("{}: {}{joint}{}", item.title, item.text, instead.join("; "))
            }),
        );
        self.list(
            "Rules that failed",
            diagnosis.rule_faults.iter().map(|item| format!("{}:{}: {}", item.file, item.line, item.message)),
        );
        self.list(
            "Cautions",
            diagnosis.cautions.iter().map(|item| {
                let why = item.why.as_ref().map(|why| format!(" ({why})")).unwrap_or_default();
                format!("{}{why}", item.text)
            }),
        );
        self.blank();
        self.line(0, &format!("rules {} {}", diagnosis.rules.version, diagnosis.rules.digest));
    }

    fn list(&mut self, title: &str, items: impl ExactSizeIterator<Item = String>) {
        self.heading(title, items.len() == 0);
        for item in items {
            self.hanging(2, "- ", &item);
        }
    }

    fn heading(&mut self, title: &str, empty: bool) {
        if !empty {
            self.blank();
            self.line(0, title);
        }
    }

    fn blank(&mut self) {
        self.text.push('\n');
    }

    fn line(&mut self, indent: usize, text: &str) {
        self.hanging(indent, "", text);
    }

    /// A paragraph whose further lines stand under its text.
    fn hanging(&mut self, indent: usize, mark: &str, text: &str) {
        push_paragraph(&mut self.text, self.width, indent, mark, text);
    }
}
