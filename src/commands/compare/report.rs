//! What `whybake compare` found, as text and as JSON.

use std::fmt::Write;

use serde::Serialize;

use crate::case::Fault;
use crate::commands::exit::Exit;
use crate::commands::input::in_a_line;
use crate::commands::output::complain;
use crate::comparison::{CaseComparison, Effect, EffectCounts};
use crate::diagnosis::RulesStamp;
use crate::rule_set::RuleSet;
use crate::rule_tests::LeadingCause;

/// What a change of rules does to the cases of a file.
#[derive(Serialize)]
pub(super) struct Report<'r> {
    old: RulesStamp<'r>,
    new: RulesStamp<'r>,
    cases: usize,
    counts: EffectCounts,
    changes: Vec<Change>,
    faulty_lines: Vec<FaultyLine>,
}

/// A case that changes.
#[derive(Serialize)]
struct Change {
    line: usize,
    #[serde(flatten)]
    comparison: CaseComparison,
}

/// A line that is no case of either set of rules.
#[derive(Serialize)]
struct FaultyLine {
    line: usize,
    /// What the new rules say of it.
    faults: Vec<Fault>,
}

fn stamp(rules: &RuleSet) -> RulesStamp<'_> {
    let pack = &rules.diagnostician.knowledge().declared.pack;
    RulesStamp { version: &pack.version, digest: &pack.digest }
}

impl<'r> Report<'r> {
    pub(super) fn new(old: &'r RuleSet, new: &'r RuleSet) -> Self {
        let counts = EffectCounts::default();
        Self { old: stamp(old), new: stamp(new), cases: 0, counts, changes: Vec::new(), faulty_lines: Vec::new() }
    }

    pub(super) fn add(&mut self, line: usize, comparison: CaseComparison) {
        self.cases += 1;
        self.counts.add(comparison.effect);
        match comparison.effect {
            Effect::Unchanged => {}
            Effect::Refused => self.faulty_lines.push(FaultyLine { line, faults: comparison.refused_after }),
            _ => self.changes.push(Change { line, comparison }),
        }
    }

    /// Refused cases and other leaders first, then the largest changes; of equals the earlier line.
    pub(super) fn sort(&mut self) {
        self.changes.sort_by(|one, other| {
            let size = |change: &Change| change.comparison.size();
            other.comparison.effect.cmp(&one.comparison.effect).then(size(other).total_cmp(&size(one)))
        });
    }

    /// Whether something came out that somebody has to look at.
    pub(super) fn is_bad(&self) -> bool {
        self.counts.leader + self.counts.newly_refused + self.counts.refused > 0
    }

    pub(super) fn json(&self) -> Result<String, Exit> {
        serde_json::to_string(self).map(|json| json + "\n").map_err(|error| {
            complain(format_args!("the comparison cannot be written as JSON: {error}"));
            Exit::Failed
        })
    }

    pub(super) fn text(&self, most: usize) -> String {
        let mut text = String::new();
        for faulty in self.faulty_lines.iter().take(most) {
            for fault in &faulty.faults {
                let _ = writeln!(text, "line {}: {}", faulty.line, in_a_line(fault, "the case"));
            }
        }
        more(&mut text, self.faulty_lines.len(), most, "faulty lines");
        for change in self.changes.iter().take(most) {
            change.tell(&mut text);
        }
        more(&mut text, self.changes.len(), most, "cases that change");
        text.push_str(&self.summary());
        text
    }

    fn summary(&self) -> String {
        let EffectCounts { unchanged, probabilities, leader, newly_refused, newly_answered, refused } = self.counts;
        format!(
            "{} cases: {unchanged} unchanged, {probabilities} with other probabilities, {leader} with another leader, \
             {newly_refused} refused by the new rules, {newly_answered} answered only by the new rules, \
             {refused} faulty\n",
            self.cases
        )
    }
}

/// Says that a list was cut.
fn more(text: &mut String, count: usize, most: usize, what: &str) {
    if count > most {
        let _ = writeln!(text, "and {} more {what}", count - most);
    }
}

impl Change {
    fn tell(&self, text: &mut String) {
        let Self { line, comparison } = self;
        let (before, after) = (leader(&comparison.before), leader(&comparison.after));
        let _ = match comparison.effect {
            Effect::NewlyRefused => writeln!(text, "line {line}: refused by the new rules; before, {before} led"),
            Effect::NewlyAnswered => writeln!(text, "line {line}: answered only by the new rules; {after} leads"),
            Effect::Leader => writeln!(text, "line {line}: the leader was {before}, now it is {after}"),
            Effect::Unchanged | Effect::Refused | Effect::Probabilities => {
                writeln!(text, "line {line}: {after} still leads; it had {}", leading_probability(&comparison.before))
            }
        };
        if let Some(change) = &comparison.largest_change {
            let _ = writeln!(text, "    `{}` changes most: {:.3} -> {:.3}", change.cause, change.before, change.after);
        }
        for fault in &comparison.refused_after {
            let _ = writeln!(text, "    {}", in_a_line(fault, "the case"));
        }
    }
}

fn leader(causes: &[LeadingCause]) -> String {
    causes.first().map_or_else(|| "no cause".to_owned(), |first| format!("`{}` {:.3}", first.cause, first.probability))
}

fn leading_probability(causes: &[LeadingCause]) -> String {
    causes.first().map_or_else(|| "none".to_owned(), |first| format!("{:.3}", first.probability))
}
