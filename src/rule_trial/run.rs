//! Runs a trial.

use std::time::Instant;

use super::answer::{TrialAnswer, TrialCase, TrialRanking, TrialRules, TrialTests};
use super::read::Trial;
use crate::comparison::{CaseComparison, Effect, EffectCounts, case_text};
use crate::diagnosis::Diagnostician;
use crate::knowledge::Knowledge;
use crate::rule_set::{RefusedRules, RuleSet};
use crate::rule_tests::{RuleTest, RuleTests};
use crate::rules::Diagnostic;

/// Most diagnostics of an answer.
const MOST_DIAGNOSTICS: usize = 200;

/// Ended before it was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TrialTooLong;

impl Trial {
    /// Loads the changed rules, tests them, and compares the cases with what the rules in force say.
    ///
    /// # Errors
    /// When it is not done at `deadline`.
    pub fn run(&self, in_force: &Diagnostician, deadline: Instant) -> Result<TrialAnswer, TrialTooLong> {
        let mut answer = TrialAnswer {
            rules: stamp(in_force.knowledge()),
            trial: None,
            diagnostics: Vec::new(),
            diagnostics_left_out: 0,
            tests: None,
            counts: EffectCounts::default(),
            rankings: Vec::new(),
        };
        match RuleSet::load_before(deadline, self.files.clone()) {
            Ok(rules) => self.judge(&rules, in_force, deadline, &mut answer)?,
            Err(RefusedRules { diagnostics, .. }) => answer.diagnostics = diagnostics,
        }
        within(deadline)?;
        cut(&mut answer);
        Ok(answer)
    }

    fn judge(
        &self,
        rules: &RuleSet,
        in_force: &Diagnostician,
        deadline: Instant,
        answer: &mut TrialAnswer,
    ) -> Result<(), TrialTooLong> {
        let on_trial = &rules.diagnostician;
        let tests = RuleTests::read(&rules.files, on_trial.knowledge());
        answer.trial = Some(stamp(on_trial.knowledge()));
        answer.diagnostics = rules.warnings.iter().chain(&tests.diagnostics).cloned().collect();
        answer.diagnostics.sort_by_key(|diagnostic: &Diagnostic| diagnostic.severity);
        answer.tests = Some(tested(tests.tests, on_trial, deadline)?);
        let of_tests = rules.files.cases().map(|(path, text)| {
            let case = TrialCase { file: Some(path.to_owned()), index: None };
            (case, case_text(text.as_bytes()))
        });
        let of_request = self.cases.iter().enumerate().map(|(index, text)| {
            let case = TrialCase { file: None, index: Some(index) };
            (case, text.as_slice())
        });
        for (case, text) in of_tests.chain(of_request) {
            within(deadline)?;
            let comparison = CaseComparison::new(text, in_force, on_trial);
            answer.counts.add(comparison.effect);
            if comparison.effect != Effect::Unchanged {
                answer.rankings.push(TrialRanking::new(case, comparison));
            }
        }
        Ok(())
    }
}

fn tested(tests: Vec<RuleTest>, rules: &Diagnostician, deadline: Instant) -> Result<TrialTests, TrialTooLong> {
    let mut answer = TrialTests { passed: 0, failed: Vec::new() };
    for test in tests {
        within(deadline)?;
        let failures = RuleTests { tests: vec![test], diagnostics: Vec::new() }.run(rules);
        answer.passed += usize::from(failures.is_empty());
        answer.failed.extend(failures);
    }
    Ok(answer)
}

fn within(deadline: Instant) -> Result<(), TrialTooLong> {
    if Instant::now() < deadline { Ok(()) } else { Err(TrialTooLong) }
}

fn cut(answer: &mut TrialAnswer) {
    answer.diagnostics_left_out = answer.diagnostics.len().saturating_sub(MOST_DIAGNOSTICS);
    answer.diagnostics.truncate(MOST_DIAGNOSTICS);
    answer.rankings.sort_by(|one, other| {
        let by_size = || other.size().total_cmp(&one.size());
        other.effect.cmp(&one.effect).then_with(by_size).then_with(|| one.case.cmp(&other.case))
    });
}

fn stamp(knowledge: &Knowledge) -> TrialRules {
    let pack = &knowledge.declared.pack;
    TrialRules { version: pack.version.clone(), digest: pack.digest.clone() }
}
