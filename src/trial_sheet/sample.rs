//! How many pieces to measure.

use super::answer::{SampleAnswer, SampleKind};
use super::measure::{Measure, Target};
use super::request::under;
use crate::case::BatchSize;
use crate::diagnosis::with_symbol;
use crate::json::{Fault, FaultCode};
use crate::knowledge::Declarations;
use crate::science::trial_design::{ONE_BATCH, Risks, sample_size_for_difference, sample_size_for_proportions};
use crate::science::{Estimate, Nonsense};

/// What a size hangs on, beside the wanted difference.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layout {
    /// In how many runs a change is made.
    pub(super) runs_with_a_change: u32,
    /// How often each is baked.
    pub(super) repeats: u32,
    /// How large a run is.
    pub(super) size: BatchSize,
}

/// The pieces, and what difference then counts, in words.
pub(super) struct Sample {
    pub(super) answer: SampleAnswer,
    pub(super) counts_from: Option<String>,
}

const NEEDED: &str = "Not known. Two figures of your own tell it: the least difference that would be worth the change and the \
    standard deviation from piece to piece, or the share of faulty pieces now and the share that is wanted. An example with \
    invented figures: 0.20 mL/g at a deviation of 0.25 mL/g takes 26 pieces of each setting; from 20 % faulty pieces to 5 %, 70.";

/// Reckons the pieces.
///
/// # Errors
/// A difference from which nothing can be computed, at its place in the request.
pub(super) fn sample(measure: &Measure, layout: Layout, declared: &Declarations) -> Result<Sample, Vec<Fault>> {
    match &measure.target {
        None => Ok(open(measure.risks)),
        Some(Target::Difference { reading, difference, standard_deviation, unit }) => {
            let size = sample_size_for_difference(*difference, *standard_deviation, measure.risks);
            let size = size.map_err(|nonsense| faults(&nonsense))?;
            let what = reading.map_or("the reading", |key| declared.readings[key].title.as_str());
            let said = |value: f64| with_symbol(value, unit.code());
            let shown = format!(
                "a difference of {} in {what}, at a standard deviation of {}",
                said(*difference),
                said(*standard_deviation)
            );
            let counts = format!(
                "the means of {what} with and without it differ by {} or more, the wanted way",
                said(size.significant.value)
            );
            Ok(sized(SampleKind::Difference, &size.pieces, &shown, counts, measure.risks, layout))
        }
        Some(Target::Proportion { symptom, now, wanted }) => {
            let size = sample_size_for_proportions(*now, *wanted, measure.risks);
            let size = size.map_err(|nonsense| faults(&nonsense))?;
            let what = symptom.map_or_else(String::new, |key| format!(" (with “{}”)", declared.symptoms[key].title));
            let percent = |value: f64| with_symbol(value, "%");
            let shown = format!("a change from {} to {} of the pieces{what}", percent(*now), percent(*wanted));
            let side = if wanted < now { "at most" } else { "at least" };
            let counts = format!(
                "{side} {} of the pieces{what} are faulty with it, where {} are without it",
                percent(size.significant.value),
                percent(*now)
            );
            Ok(sized(SampleKind::Proportion, &size.pieces, &shown, counts, measure.risks, layout))
        }
    }
}

fn open(risks: Risks) -> Sample {
    let answer = SampleAnswer {
        kind: SampleKind::Open,
        text: NEEDED.to_owned(),
        pieces_each_setting: None,
        pieces_each_run: None,
        alpha: risks.alpha,
        power: risks.power,
        method: None,
        source: None,
        remarks: vec![format!("{ONE_BATCH}.")],
    };
    Sample { answer, counts_from: None }
}

fn sized(
    kind: SampleKind,
    pieces: &Estimate,
    shown: &str,
    counts: String,
    risks: Risks,
    Layout { runs_with_a_change, repeats, size }: Layout,
) -> Sample {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole, and a million at most
    let each_setting = pieces.value as u32;
    let each_run = each_setting.div_ceil((runs_with_a_change * repeats).max(1));
    let text = format!(
        "{each_run} pieces of every run: {each_setting} with a change and {each_setting} without show {shown}, with a chance \
         of {} and a risk of false alarm of {}.",
        with_symbol(100.0 * risks.power, "%"),
        with_symbol(100.0 * risks.alpha, "%")
    );
    let mut remarks = pieces.outside_domain.clone();
    remarks.extend(too_few(size, each_run));
    remarks.push(format!("{ONE_BATCH}."));
    let answer = SampleAnswer {
        kind,
        text,
        pieces_each_setting: Some(each_setting),
        pieces_each_run: Some(each_run),
        alpha: risks.alpha,
        power: risks.power,
        method: Some(pieces.method.name),
        source: Some(pieces.method.source),
        remarks,
    };
    Sample { answer, counts_from: Some(counts) }
}

/// What to say where a run yields fewer pieces than are measured, or nobody knows how many.
fn too_few(size: BatchSize, each_run: u32) -> Option<String> {
    match size {
        BatchSize::Pieces { pieces, .. } if pieces >= each_run => None,
        BatchSize::Pieces { pieces, .. } => Some(format!(
            "A run of {pieces} pieces yields fewer than the {each_run} to measure: bake larger runs or more repeats, or look \
             for a larger difference."
        )),
        BatchSize::Mass(_) => Some(format!("Check that a run of this mass yields {each_run} pieces.")),
    }
}

fn faults(nonsense: &Nonsense) -> Vec<Fault> {
    let fault = |own: &crate::science::Fault| {
        let name = match own.input.as_str() {
            "now_percent" => "faulty_now",
            "wanted_percent" => "faulty_wanted",
            name => name,
        };
        let detail = own.message.clone();
        under("/measure", Fault { pointer: format!("/{name}"), code: FaultCode::Impossible, detail, help: None })
    };
    nonsense.faults.iter().map(fault).collect()
}

#[cfg(test)]
mod tests {
    use super::NEEDED;
    use crate::science::trial_design::{Risks, sample_size_for_difference, sample_size_for_proportions};

    #[test]
    fn the_example_is_reckoned() {
        let difference = sample_size_for_difference(0.2, 0.25, Risks::USUAL).unwrap().pieces.value;
        let shares = sample_size_for_proportions(20.0, 5.0, Risks::USUAL).unwrap().pieces.value;
        assert!(NEEDED.contains(&format!("takes {difference} pieces")), "{difference}");
        assert!(NEEDED.ends_with(&format!("to 5 %, {shares}.")), "{shares}");
    }
}
