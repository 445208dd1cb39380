//! The answer as plain text for a terminal.

use super::advice::is_excluded;
use super::answer::{ActionAdvice, ConfirmationStatus, ConfirmingReading, Diagnosis, GivenFormula, RankedCause};
use super::inquiry::{BriefOutcome, CauseAfter};
use super::names::{needed, quantity_name, title_of};
use super::numbers::{measure, number};
use super::remarks::percent;
use crate::knowledge::Declarations;
use crate::paragraphs::Paragraphs;
use crate::units::Unit;

/// Most actions of the order that are written.
const MOST_ORDERED: usize = 5;

/// Most causes written for an outcome.
const MOST_AFTER: usize = 2;

/// A cause whose probability differs by less from outcome to outcome is not moved by them.
const STEADY: f64 = 0.03;

/// What tells less, bits, is not written.
const LEAST_BITS: f64 = 0.01;

/// Renders a diagnosis as text of at most `width` characters a line (40 to 110), without colour; `declared` are the names
/// of the rules that made it.
#[must_use]
pub fn render(diagnosis: &Diagnosis<'_>, declared: &Declarations, width: usize) -> String {
    let mut page = Page { text: Paragraphs::new(width), declared, formula: diagnosis.formula };
    page.text.add(0, "", &format!("{}: {}", diagnosis.product_title, diagnosis.summary));
    for (place, cause) in diagnosis.causes.iter().enumerate() {
        page.cause(place + 1, cause);
    }
    page.others(diagnosis);
    page.order(diagnosis);
    page.next(diagnosis);
    page.remarks(diagnosis);
    page.text.into_text()
}

/// A computed value with its unit as people write it and can set it: three digits, and whole numbers from 100 on. The
/// rules have checked the code.
pub(crate) fn with_symbol(value: f64, code: &str) -> String {
    let value = match value.abs() {
        // A boiling point tells by tenths.
        size if size >= 100.0 && code != "Cel" => value.round(),
        size if size >= 10.0 => (value * 10.0).round() / 10.0,
        _ => (value * 100.0).round() / 100.0,
    };
    Unit::parse(code).map_or_else(|_| format!("{} {code}", number(value)), |unit| measure(value, &unit))
}

/// Title of a cause, up to its colon.
fn title(diagnosis: &Diagnosis<'_>, cause: &str) -> String {
    let leading = diagnosis.causes.iter().map(|one| (one.cause, one.title));
    let others = diagnosis.other_causes.iter().map(|one| (one.cause, one.title));
    let title = leading.chain(others).find(|(id, _)| *id == cause).map(|(_, title)| title.as_str());
    title.map_or_else(|| cause.replace('_', " "), |title| title.split(": ").next().unwrap_or(title).to_owned())
}

/// What may come out and what that would do: "above 15 min (32 %): Dough too warm 92 %, Old dough 41 %; below …".
fn outcomes(diagnosis: &Diagnosis<'_>, outcomes: &[BriefOutcome<'_>]) -> String {
    let steady = steady_causes(outcomes);
    let texts = outcomes.iter().map(|outcome| {
        let cause =
            |after: &CauseAfter<'_>| format!("{} {} %", title(diagnosis, after.cause), percent(after.probability));
        let moved = outcome.causes.iter().filter(|after| !steady.contains(&after.cause));
        let causes: Vec<String> = moved.take(MOST_AFTER).map(cause).collect();
        format!("{} ({} %): {}", outcome.outcome, percent(outcome.probability), causes.join(", "))
    });
    texts.collect::<Vec<_>>().join("; ")
}

/// Causes that stand alike after every outcome, where each tells of another one.
fn steady_causes<'k>(outcomes: &[BriefOutcome<'k>]) -> Vec<&'k str> {
    let Some(first) = outcomes.first() else { return Vec::new() };
    let is_steady = |cause: &CauseAfter<'_>| {
        outcomes.iter().all(|outcome| {
            let mut same = outcome.causes.iter().filter(|after| after.cause == cause.cause);
            same.any(|after| (after.probability - cause.probability).abs() < STEADY)
        })
    };
    let steady: Vec<&str> = first.causes.iter().filter(|cause| is_steady(cause)).map(|cause| cause.cause).collect();
    let tells_more = |outcome: &BriefOutcome<'_>| outcome.causes.iter().any(|after| !steady.contains(&after.cause));
    if outcomes.iter().all(tells_more) { steady } else { Vec::new() }
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

/// What excludes a cause, behind what confirms it.
fn excluding(confirm: &ConfirmingReading<'_>) -> String {
    match &confirm.excludes {
        None => String::new(),
        Some(_) if confirm.excluded_if_not && confirm.expect.ends_with(": no") => "; excluded if yes".to_owned(),
        Some(_) if confirm.excluded_if_not => "; excluded if not".to_owned(),
        Some(text) => format!("; excluded by: {text}"),
    }
}

/// How the less probable causes stand: those that explain something, then those that are merely common.
fn others(diagnosis: &Diagnosis<'_>) -> Option<String> {
    let count = diagnosis.other_causes.len();
    let suspected: Vec<_> = diagnosis.other_causes.iter().filter(|other| other.is_suspected).collect();
    let rest = count - suspected.len();
    let (causes, first, more) = match suspected.first() {
        Some(first) if rest > 0 => (
            "that explain something seen or that a finding speaks for",
            *first,
            format!("; {rest} more that nothing speaks for"),
        ),
        Some(first) => ("that explain something seen or that a finding speaks for", *first, String::new()),
        None if diagnosis.causes.iter().any(|cause| !cause.evidence.is_empty()) => {
            return (rest > 0).then(|| format!("{rest} other causes that nothing speaks for"));
        }
        None => ("of this product", diagnosis.other_causes.first()?, String::new()),
    };
    let count = if suspected.is_empty() { count } else { suspected.len() };
    let (probability, title) = (percent(first.probability), first.title);
    Some(if count == 1 {
        let causes = causes.replacen("explain", "explains", 1);
        format!("1 other cause {causes}, at {probability} %: {title}{more}")
    } else {
        format!(
            "{count} other causes {causes}, each at {probability} % or less, the most probable being: {title}{more}"
        )
    })
}

/// Text under construction.
struct Page<'a> {
    text: Paragraphs,
    declared: &'a Declarations,
    formula: GivenFormula,
}

impl Page<'_> {
    fn cause(&mut self, place: usize, cause: &RankedCause<'_>) {
        self.text.blank();
        self.text.add(
            0,
            "",
            &format!(
                "{place}. {}   {} %  (before: {} %)",
                cause.title,
                percent(cause.probability),
                percent(cause.prior)
            ),
        );
        self.text.add(3, "", cause.mechanism);
        for argument in &cause.evidence {
            let sign = if argument.decibans >= 0.0 { '+' } else { '−' };
            self.text.add(3, &format!("{sign}{:>5.1} dB  ", argument.decibans.abs()), &argument.text);
        }
        // Each by itself mends the cause: they are alternatives, the rules' first choice first.
        let first = if is_excluded(cause.confirm.iter().map(|own| own.status)) {
            "do, if what excludes it was misread: "
        } else {
            "do: "
        };
        for (place, action) in cause.actions.iter().enumerate() {
            self.action(if place == 0 { first } else { "or: " }, action);
        }
        for confirm in &cause.confirm {
            let (mark, status) = match confirm.status {
                ConfirmationStatus::Open => ("check: ", ""),
                ConfirmationStatus::Confirmed => ("check ", "[confirmed]: "),
                ConfirmationStatus::Excluded => ("check ", "[excluded]: "),
                ConfirmationStatus::Undecided => ("check ", "[between the two]: "),
            };
            let text = format!("{status}{}{} ({})", confirm.expect, excluding(confirm), confirm.method);
            self.text.add(3, mark, &text);
        }
    }

    fn action(&mut self, mark: &str, action: &ActionAdvice<'_>) {
        self.text.add(3, mark, &format!("{}. {}", action.title, action.text));
        self.quantities(action);
        if !action.needs.is_empty() {
            let lead = if action.quantities.is_empty() { "for the quantity" } else { "for closer quantities" };
            let needs: Vec<String> = action.needs.iter().map(|id| needed(self.declared, id, self.formula)).collect();
            self.text.add(7, "", &format!("{lead}, find out: {}", needs.join("; ")));
        }
        for effect in &action.side_effects {
            self.text.add(7, "mind: ", effect);
        }
    }

    /// The quantities of an action; what is to be said of several of them stands once, under the first.
    fn quantities(&mut self, action: &ActionAdvice<'_>) {
        let mut said: Vec<&str> = Vec::new();
        for quantity in &action.quantities {
            let name = quantity_name(self.declared, quantity.name);
            let now = if quantity.as_now { ", as it is now" } else { "" };
            self.text.add(7, "", &format!("{name} = {}{now}", with_symbol(quantity.value, quantity.unit)));
            let law = quantity.capped.iter().map(|text| (7, "law: ", text.as_str()));
            let method = quantity.method.iter().map(|method| (9, "by: ", method.name));
            let remarks = quantity.remarks.iter().map(|remark| (9, "note: ", remark.as_str()));
            for (indent, mark, text) in law.chain(method).chain(remarks) {
                if !said.contains(&text) {
                    self.text.add(indent, mark, text);
                    said.push(text);
                }
            }
        }
    }

    fn others(&mut self, diagnosis: &Diagnosis<'_>) {
        if let Some(text) = others(diagnosis) {
            self.text.blank();
            self.text.add(0, "", &text);
        }
    }

    fn order(&mut self, diagnosis: &Diagnosis<'_>) {
        let order = &diagnosis.action_order;
        self.heading("Do in this order", order.actions.is_empty());
        for (place, action) in order.actions.iter().take(MOST_ORDERED).enumerate() {
            let text = format!(
                "{}{} ({} % that it takes a cause away; {} min, {}, {})",
                if action.at_once { "At once: " } else { "" },
                action.title,
                percent(action.mends),
                number(action.effort_minutes),
                action.cost.map_or_else(|| "cost unknown".to_owned(), |word| word.to_lowercase().replace('_', " ")),
                waste(action.waste_batches)
            );
            self.text.add(2, &format!("{}. ", place + 1), &text);
            for displaced in &action.in_place_of {
                let earlier = order.actions.iter().position(|other| other.action == displaced.action);
                let why = match displaced.both_change {
                    Some(id) => format!("both change {}", title_of(self.declared, id)),
                    None => "one undoes the other".to_owned(),
                };
                self.text.add(6, &format!("in place of {}: ", earlier.unwrap_or(place) + 1), &why);
            }
            for brought in action.may_bring.iter().filter(|brought| brought.already_seen) {
                let title = title_of(self.declared, brought.symptom);
                self.text.add(6, "against it: ", &format!("it can bring {title}, seen already"));
            }
        }
        if let Some(more) = order.actions.len().checked_sub(MOST_ORDERED).filter(|more| *more > 0) {
            self.text.add(2, "", &format!("and {more} more; the JSON has them all"));
        }
        if let Some(last) = order.after.last() {
            let actions =
                if last.actions == 1 { "the first".to_owned() } else { format!("the first {}", last.actions) };
            let text = format!(
                "after {actions}: {} % that a cause is gone, {} % that all are",
                percent(last.one_cause_gone),
                percent(last.all_causes_gone)
            );
            self.text.add(2, "", &text);
        }
    }

    fn next(&mut self, diagnosis: &Diagnosis<'_>) {
        let readings = || diagnosis.next_readings.iter().filter(|next| next.information_bits >= LEAST_BITS);
        self.heading("Measure next", readings().next().is_none());
        for next in readings() {
            let text = format!(
                "{} ({} min, {:.2} bit): {}",
                next.title,
                number(next.effort_minutes),
                next.information_bits,
                next.method
            );
            self.text.add(2, "- ", &text);
            let apart: Vec<String> = next.tells_apart.iter().map(|id| title(diagnosis, id)).collect();
            self.text.add(6, "tells apart: ", &apart.join("; "));
            self.text.add(6, "", &outcomes(diagnosis, &next.outcomes));
        }
        let questions = || diagnosis.next_questions.iter().filter(|next| next.information_bits >= LEAST_BITS);
        self.heading("Ask or look", questions().next().is_none());
        for next in questions() {
            self.text.add(2, "- ", &format!("{} ({:.2} bit)", next.text, next.information_bits));
            self.text.add(6, "", &outcomes(diagnosis, &next.outcomes));
        }
    }

    fn remarks(&mut self, diagnosis: &Diagnosis<'_>) {
        let declared = self.declared;
        self.text.list("Contradictions", diagnosis.contradictions.iter().map(|item| item.text.clone()));
        self.text
            .list("Not explained", diagnosis.unexplained.iter().map(|item| format!("{}: {}", item.title, item.text)));
        self.text.list("Speaks against the leader", diagnosis.against_leader.iter().map(|item| item.text.to_string()));
        self.text.list(
            "Set aside",
            diagnosis.set_aside.iter().map(|item| format!("{}: {}", title_of(declared, item.finding), item.text)),
        );
        self.text.list("Taken from readings", diagnosis.raised.iter().map(|item| item.text.clone()));
        self.text.list(
            "Computed",
            diagnosis.computed.iter().map(|item| {
                let remarks: String = item.remarks.iter().map(|remark| format!("; mind: {remark}")).collect();
                let from: Vec<String> = item.from.split(", ").map(|id| title_of(declared, id)).collect();
                let value = with_symbol(item.value, item.unit);
                format!("{} {value} (from {}){remarks}", item.title, from.join("; "))
            }),
        );
        self.text.list(
            "Excluded actions",
            diagnosis.excluded_actions.iter().map(|item| {
                let instead: Vec<String> = item.instead.iter().map(|other| other.title.to_string()).collect();
                let joint = if instead.is_empty() { "" } else { "; instead: " };
                format!("{}: {}{joint}{}", item.title, item.text, instead.join("; "))
            }),
        );
        self.text.list(
            "Rules that failed",
            diagnosis.rule_faults.iter().map(|item| format!("{}:{}: {}", item.file, item.line, item.message)),
        );
        self.text.list(
            "Cautions",
            diagnosis.cautions.iter().map(|item| {
                let why = item.why.as_ref().map(|why| format!(" ({why})")).unwrap_or_default();
                format!("{}{why}", item.text)
            }),
        );
        self.text.blank();
        self.text.add(0, "", &format!("rules {} {}", diagnosis.rules.version, diagnosis.rules.digest));
    }

    fn heading(&mut self, title: &str, empty: bool) {
        if !empty {
            self.text.heading(title);
        }
    }
}
