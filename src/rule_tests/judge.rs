//! Runs a test and compares the answer with what is wanted.

use super::expectation::{Expectation, Wanted, WantedQuantity};
use super::failure::{Failure, LeadingCause};
use super::places::Span;
use super::read::{RuleTest, RuleTests};
use crate::diagnosis::{Diagnosis, Diagnostician, RankedCause};
use crate::knowledge::{Cause, Declarations, Key};
use crate::rules::{Diagnostic, RuleFiles, Severity};

/// How many causes or readings come first.
const FIRST: usize = 3;

impl RuleTests {
    /// Runs all tests; gives what was not met, in the order of the files.
    ///
    /// The diagnostician must hold the knowledge that the tests were read against.
    #[must_use]
    pub fn run(&self, diagnostician: &Diagnostician) -> Vec<Failure> {
        self.run_and_watch(diagnostician, |_, _| {})
    }

    /// The same; every answer is shown to `watch`.
    pub fn run_and_watch<'k>(
        &self,
        diagnostician: &'k Diagnostician,
        mut watch: impl FnMut(&RuleTest, &Diagnosis<'k>),
    ) -> Vec<Failure> {
        self.tests.iter().flat_map(|test| test.run(diagnostician, &mut watch)).collect()
    }
}

/// Reads and runs the tests of a pack.
///
/// # Errors
/// Every fault of the case files, and every expectation that is not met.
pub fn tested(files: &RuleFiles, diagnostician: &Diagnostician) -> Result<(), Vec<Diagnostic>> {
    let tests = RuleTests::read(files, diagnostician.knowledge());
    let failures = tests.run(diagnostician);
    let faults = tests.diagnostics.into_iter().filter(|diagnostic| diagnostic.severity == Severity::Fault);
    let all: Vec<Diagnostic> = faults.chain(failures.iter().map(Failure::diagnostic)).collect();
    if all.is_empty() { Ok(()) } else { Err(all) }
}

impl RuleTest {
    /// Runs the test; gives every expectation that is not met.
    fn run<'k>(&self, diagnostician: &'k Diagnostician, watch: &mut impl FnMut(&Self, &Diagnosis<'k>)) -> Vec<Failure> {
        match diagnostician.diagnose(self.case.clone()) {
            Ok(answer) => {
                watch(self, &answer);
                self.judge(&answer, &diagnostician.knowledge().declared)
            }
            Err(fault) => {
                let whole = Span { line: 0, column: 0, width: 1, source_line: String::new() };
                vec![self.failure(&whole, "case", "an answer".to_owned(), fault.to_string(), Vec::new())]
            }
        }
    }

    /// What an answer to the case does not meet.
    #[must_use]
    pub fn judge(&self, answer: &Diagnosis<'_>, declared: &Declarations) -> Vec<Failure> {
        let judging = Judging { answer, declared };
        let missed = |Expectation { wanted, span }: &Expectation| {
            let found = judging.missed(wanted)?;
            Some(self.failure(span, wanted.name(), judging.in_words(wanted), found, judging.leading()))
        };
        self.expectations.iter().filter_map(missed).collect()
    }

    fn failure(
        &self,
        span: &Span,
        expectation: &'static str,
        wanted: String,
        found: String,
        leading: Vec<LeadingCause>,
    ) -> Failure {
        let Span { line, column, width, source_line } = span.clone();
        let (file, title) = (self.file.clone(), self.title.clone());
        Failure { file, line, column, width, source_line, title, expectation, wanted, found, leading }
    }
}

impl Wanted {
    /// Its name in the file.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::Leader(_) => "leader",
            Self::AmongFirstThree(_) => "among_first_three",
            Self::Above(..) => "above",
            Self::Below(..) => "below",
            Self::NextReadingAmongFirstThree(_) => "next_reading_among_first_three",
            Self::Caution(_) => "caution",
            Self::NoCaution(_) => "no_caution",
            Self::Needs(..) => "needs",
            Self::Quantity(_) => "quantity",
            Self::ExcludedAction(_) => "excluded_action",
            Self::Unexplained(_) => "unexplained",
            Self::SetAside(_) => "set_aside",
            Self::Raised(_) => "raised",
        }
    }

    /// The cause that is wanted to lead, to be among the first or to be probable.
    #[must_use]
    pub fn expected_cause(&self) -> Option<Key<Cause>> {
        match self {
            Self::Leader(key) | Self::AmongFirstThree(key) | Self::Above(key, _) => Some(*key),
            _ => None,
        }
    }
}

struct Judging<'a> {
    answer: &'a Diagnosis<'a>,
    declared: &'a Declarations,
}

impl Judging<'_> {
    /// What came in place of what is wanted; `None` when it came.
    fn missed(&self, wanted: &Wanted) -> Option<String> {
        let (answer, declared) = (self.answer, self.declared);
        let causes = || answer.causes.iter().map(|cause| cause.cause);
        match wanted {
            Wanted::Leader(key) => lacks(causes().take(1), &declared.causes[*key].id),
            Wanted::AmongFirstThree(key) => lacks(causes().take(FIRST), &declared.causes[*key].id),
            Wanted::Above(key, limit) => self.probability(*key, *limit, |probability, limit| probability > limit),
            Wanted::Below(key, limit) => self.probability(*key, *limit, |probability, limit| probability < limit),
            Wanted::NextReadingAmongFirstThree(key) => {
                let first = answer.next_readings.iter().map(|next| next.reading).take(FIRST);
                lacks(first, &declared.readings[*key].id)
            }
            Wanted::Caution(key) => {
                lacks(answer.cautions.iter().map(|caution| caution.caution), &declared.cautions[*key].id)
            }
            Wanted::NoCaution(key) => {
                let id = &declared.cautions[*key].id;
                let given = answer.cautions.iter().find(|caution| caution.caution == id)?;
                Some(given.why.as_ref().map_or_else(|| "it".to_owned(), |why| format!("it ({why})")))
            }
            Wanted::Needs(key, need) => self.needs(&declared.actions[*key].id, need),
            Wanted::Quantity(quantity) => self.quantity(quantity),
            Wanted::ExcludedAction(key) => {
                lacks(answer.excluded_actions.iter().map(|action| action.action), &declared.actions[*key].id)
            }
            Wanted::Unexplained(key) => {
                lacks(answer.unexplained.iter().map(|symptom| symptom.symptom), &declared.symptoms[*key].id)
            }
            Wanted::SetAside(id) => lacks(answer.set_aside.iter().map(|aside| aside.finding), id),
            Wanted::Raised(key) => {
                let raised = answer.raised.iter().filter(|raised| raised.present).map(|raised| raised.symptom);
                lacks(raised, &declared.symptoms[*key].id)
            }
        }
    }

    fn probability(&self, key: Key<Cause>, limit: f64, holds: fn(f64, f64) -> bool) -> Option<String> {
        let id = &self.declared.causes[key].id;
        match self.ranking().find(|(own, _)| own == id) {
            Some((_, probability)) if holds(probability, limit) => None,
            Some((_, probability)) => Some(decimals(probability, limit)),
            None => Some(format!("nothing: it is no cause of `{}`", self.answer.product)),
        }
    }

    fn needs(&self, action: &str, need: &str) -> Option<String> {
        let actions = self.answer.causes.iter().flat_map(|cause| &cause.actions);
        let mut advised = actions.filter(|advice| advice.action == action).peekable();
        if advised.peek().is_none() {
            return Some("no such action of those that lead".to_owned());
        }
        let needs: Vec<&str> = advised.flat_map(|advice| advice.needs.iter().copied()).collect();
        lacks(needs.into_iter(), need)
    }

    fn quantity(&self, wanted: &WantedQuantity) -> Option<String> {
        let action = &self.declared.actions[wanted.action].id;
        let cause = match wanted.cause.map(|key| self.declared.causes[key].id.as_str()) {
            None => self.answer.causes.first(),
            Some(id) => self.answer.causes.iter().find(|cause| cause.cause == id),
        };
        let Some(cause) = cause else { return Some("no such cause among those that lead".to_owned()) };
        let Some(advice) = cause.actions.iter().find(|advice| advice.action == action) else {
            return Some(other_actions(cause));
        };
        match advice.quantities.iter().find(|quantity| quantity.name == wanted.name) {
            Some(quantity) if (quantity.value - wanted.value).abs() <= wanted.within => None,
            Some(quantity) => Some(format!("{} {}", quantity.value, quantity.unit)),
            None if advice.needs.is_empty() => Some("no such quantity".to_owned()),
            None => Some(format!("no value, for it needs {}", listed(advice.needs.iter().copied()))),
        }
    }

    fn in_words(&self, wanted: &Wanted) -> String {
        let declared = self.declared;
        match wanted {
            Wanted::Leader(key) | Wanted::AmongFirstThree(key) => format!("`{}`", declared.causes[*key].id),
            Wanted::Above(key, limit) => format!("`{}` above {limit}", declared.causes[*key].id),
            Wanted::Below(key, limit) => format!("`{}` below {limit}", declared.causes[*key].id),
            Wanted::NextReadingAmongFirstThree(key) => format!("`{}`", declared.readings[*key].id),
            Wanted::Caution(key) => format!("`{}`", declared.cautions[*key].id),
            Wanted::NoCaution(key) => format!("no `{}`", declared.cautions[*key].id),
            Wanted::Needs(key, need) => format!("`{need}` for `{}`", declared.actions[*key].id),
            Wanted::Quantity(quantity) => {
                let action = &declared.actions[quantity.action].id;
                format!("`{}` {} ± {} by `{action}`", quantity.name, quantity.value, quantity.within)
            }
            Wanted::ExcludedAction(key) => format!("`{}`", declared.actions[*key].id),
            Wanted::Unexplained(key) | Wanted::Raised(key) => format!("`{}`", declared.symptoms[*key].id),
            Wanted::SetAside(id) => format!("`{id}`"),
        }
    }

    /// All causes with their probabilities, most probable first.
    fn ranking(&self) -> impl Iterator<Item = (&str, f64)> {
        let leading = self.answer.causes.iter().map(|cause| (cause.cause, cause.probability));
        leading.chain(self.answer.other_causes.iter().map(|cause| (cause.cause, cause.probability)))
    }

    fn leading(&self) -> Vec<LeadingCause> {
        let first = self.ranking().take(FIRST);
        first.map(|(cause, probability)| LeadingCause { cause: cause.to_owned(), probability }).collect()
    }
}

/// What there is when `wanted` is not among it.
fn lacks<'a>(found: impl Iterator<Item = &'a str> + Clone, wanted: &str) -> Option<String> {
    (!found.clone().any(|id| id == wanted)).then(|| listed(found))
}

fn listed<'a>(ids: impl Iterator<Item = &'a str>) -> String {
    let quoted: Vec<String> = ids.map(|id| format!("`{id}`")).collect();
    if quoted.is_empty() { "nothing".to_owned() } else { quoted.join(", ") }
}

fn other_actions(cause: &RankedCause<'_>) -> String {
    let actions = listed(cause.actions.iter().map(|advice| advice.action));
    format!("only {actions} for `{}`", cause.cause)
}

/// A probability with as many decimals, three or more, as show on which side of the limit it is.
fn decimals(probability: f64, limit: f64) -> String {
    let tells = |text: &String| {
        let shown = text.parse::<f64>().unwrap_or(probability);
        shown.total_cmp(&limit) == probability.total_cmp(&limit)
    };
    let mut texts = (3..=MOST_DECIMALS).map(|decimals| format!("{probability:.decimals$}"));
    texts.find(tells).unwrap_or_else(|| probability.to_string())
}

/// Decimals beyond which a probability is shown as it is computed.
const MOST_DECIMALS: usize = 9;

#[cfg(test)]
mod tests {
    use super::decimals;

    #[test]
    fn a_probability_is_never_rounded_onto_its_limit() {
        assert_eq!(decimals(0.412_345, 0.6), "0.412");
        assert_eq!(decimals(0.599_96, 0.6), "0.59996");
        assert_eq!(decimals(0.6, 0.6), "0.600");
    }
}
