//! The fast code against the enumeration on generated cases.

use proptest::prelude::*;
use whybake::inference::{Findings, MAX_READING_CAUSES, Odds, Reading, Workspace, look_for, posterior};

use crate::enumeration::{Enumeration, symptom_given};
use crate::generate::Numbers;
use crate::strategies::{cases, config, findings, networks, readings};

/// Relative error allowed on either side of the odds, also where that side is 1e-20.
const RELATIVE: f64 = 1e-10;
/// Absolute error allowed in bits and in probabilities.
const ABSOLUTE: f64 = 1e-12;
/// Decibans: ten times the decimal logarithm carries the relative error of two odds.
const DECIBANS: f64 = 1e-8;

fn assert_odds(fast: &[Odds], slow: &[Odds]) -> Result<(), TestCaseError> {
    prop_assert_eq!(fast.len(), slow.len());
    for (fast, slow) in fast.iter().zip(slow) {
        for (fast, slow) in [(fast.present, slow.present), (fast.absent, slow.absent)] {
            prop_assert!((fast - slow).abs() <= RELATIVE * slow, "{fast:e} for {slow:e}");
        }
    }
    Ok(())
}

fn assert_close(fast: &[f64], slow: &[f64], tolerance: f64) -> Result<(), TestCaseError> {
    prop_assert_eq!(fast.len(), slow.len());
    for (fast, slow) in fast.iter().zip(slow) {
        prop_assert!((fast - slow).abs() <= tolerance, "{fast:e} for {slow:e}");
    }
    Ok(())
}

/// The findings without one observation or without one reading.
fn without(findings: &Findings, observation: Option<usize>, reading: Option<usize>) -> Findings {
    let mut fewer = Findings::new();
    for (place, &(symptom, seen)) in findings.observations().iter().enumerate() {
        if observation != Some(place) {
            fewer.observe(symptom, seen);
        }
    }
    for place in (0..findings.readings()).filter(|&place| reading != Some(place)) {
        fewer.weigh(findings.reading(place));
    }
    fewer
}

fn slow_decibans(numbers: &Numbers, with: &Enumeration, fewer: &Findings) -> Vec<f64> {
    let without = Enumeration::of(numbers, fewer).odds();
    with.odds().iter().zip(without).map(|(with, without)| with.decibans() - without.decibans()).collect()
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn posterior_and_probability((numbers, findings) in cases(12)) {
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let fast = posterior(&network, &findings, &mut workspace).unwrap();
        let slow = Enumeration::of(&numbers, &findings);
        assert_odds(fast.odds(), &slow.odds())?;
        assert_close(&[fast.log_probability()], &[slow.log_probability()], 1e-10)?;
    }

    #[test]
    fn joint((numbers, findings) in cases(9), seed in any::<u64>()) {
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let fast = posterior(&network, &findings, &mut workspace).unwrap();
        let slow = Enumeration::of(&numbers, &findings);
        let chosen = crate::generate::Random(seed).distinct(4, numbers.priors.len());
        for count in 0..=chosen.len() {
            let causes = &chosen[..count];
            assert_close(&fast.joint(causes).unwrap(), &slow.joint(causes), ABSOLUTE)?;
        }
    }

    #[test]
    fn leave_one_out((numbers, findings) in cases(8)) {
        let (network, mut workspace, mut spare) = (numbers.network(), Workspace::new(), Workspace::new());
        let fast = posterior(&network, &findings, &mut workspace).unwrap();
        let slow = Enumeration::of(&numbers, &findings);
        let causes: Vec<usize> = (0..numbers.priors.len()).collect();
        let fast = fast.leave_one_out(&causes, &mut spare).unwrap();
        for place in 0..findings.observations().len() {
            let slow = slow_decibans(&numbers, &slow, &without(&findings, Some(place), None));
            assert_close(&fast.observations[place], &slow, DECIBANS)?;
        }
        for place in 0..findings.readings() {
            let slow = slow_decibans(&numbers, &slow, &without(&findings, None, Some(place)));
            assert_close(&fast.readings[place], &slow, DECIBANS)?;
        }
    }

    #[test]
    fn information_and_outcomes_of_a_reading(
        (numbers, findings, (usual, weights)) in cases(8).prop_flat_map(|(numbers, findings)| {
            let readings = readings(numbers.priors.len());
            (Just(numbers), Just(findings), readings)
        })
    ) {
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        let reading = Reading::new(&usual, &weights).unwrap();
        let slow = Enumeration::of(&numbers, &findings);
        let causes: Vec<usize> = (0..numbers.priors.len()).collect();
        let region = |configuration: usize| regions(&usual, &weights, configuration);
        let bits = reading.information(&case).unwrap();
        prop_assert!(bits <= reading.bound().bits(&case) + ABSOLUTE);
        let explaining: Vec<usize> = causes.iter().copied().filter(|cause| case.explains(*cause)).collect();
        let about = reading.information_about(&case, &explaining).unwrap();
        prop_assert!(about <= reading.bound().bits_about(&case, |cause| case.explains(cause)) + ABSOLUTE);
        assert_close(&[bits], &[slow.information(&causes, region)], ABSOLUTE)?;
        let some = &causes[..causes.len().min(2)];
        let about = reading.information_about(&case, some).unwrap();
        assert_close(&[about], &[slow.information(some, region)], ABSOLUTE)?;
        for (place, outcome) in reading.outcomes(&case, &causes).unwrap().iter().enumerate() {
            assert_close(&[outcome.probability], &[slow.mean(|configuration| region(configuration)[place])], ABSOLUTE)?;
            let mut more = findings.clone();
            more.weigh(&weights.iter().map(|(cause, weight)| (*cause, weight[place])).collect::<Vec<_>>());
            let expected = Enumeration::of(&numbers, &more).odds();
            let probability = |odds: &Odds| odds.present;
            let (fast, slow) = (outcome.odds.iter().map(probability), expected.iter().map(probability));
            assert_close(&fast.collect::<Vec<_>>(), &slow.collect::<Vec<_>>(), 1e-10)?;
        }
    }

    #[test]
    fn looking_for_a_symptom((numbers, findings) in cases(8), place in 0..8usize) {
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let symptom = place % numbers.leaks.len();
        let observed = findings.observations().iter().position(|&(other, _)| other == symptom);
        let findings = without(&findings, observed, None);
        let look = look_for(&network, &findings, symptom, &mut workspace).unwrap();
        let slow = Enumeration::of(&numbers, &findings);
        let causes: Vec<usize> = (0..numbers.priors.len()).collect();
        let given = |configuration: usize| symptom_given(&numbers, symptom, configuration);
        assert_close(&[look.probability()], &[slow.mean(|configuration| given(configuration).0)], ABSOLUTE)?;
        let outcome = |configuration: usize| vec![given(configuration).0, given(configuration).1];
        let linked: Vec<usize> = network.causes_of(symptom).collect();
        assert_close(&[look.information(&linked).unwrap()], &[slow.information(&causes, outcome)], ABSOLUTE)?;
        let some = &causes[..causes.len().min(3)];
        assert_close(&[look.information(some).unwrap()], &[slow.information(some, outcome)], ABSOLUTE)?;
        for (seen, odds) in [
            (whybake::inference::Observation::Present, look.if_present(&causes)),
            (whybake::inference::Observation::Absent, look.if_absent(&causes)),
        ] {
            let mut more = findings.clone();
            more.observe(symptom, seen);
            assert_odds(&odds.unwrap(), &Enumeration::of(&numbers, &more).odds())?;
        }
    }
}

proptest! {
    #![proptest_config(config(12))]

    /// A reading that bears on every cause, as many as are taken: those that explain nothing seen are averaged over.
    #[test]
    fn information_of_a_reading_on_all_causes(
        (numbers, findings) in networks_and_findings(MAX_READING_CAUSES), seed in any::<u64>()
    ) {
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        let random = &mut crate::generate::Random(seed);
        let usual = [0.2, 0.5, 0.3];
        let mut weights = || (0..3).map(|_| random.uniform(-1.0, 1.0)).collect::<Vec<_>>();
        let weights: Vec<_> = (0..numbers.priors.len()).map(|cause| (cause, weights())).collect();
        let reading = Reading::new(&usual, &weights).unwrap();
        let slow = Enumeration::of(&numbers, &findings);
        let causes: Vec<usize> = (0..numbers.priors.len()).collect();
        let explaining: Vec<usize> = causes.iter().copied().filter(|cause| case.explains(*cause)).collect();
        let rows: Vec<Vec<f64>> =
            (0..1 << causes.len()).map(|configuration| regions(&usual, &weights, configuration)).collect();
        for some in [&causes, &explaining] {
            let about = reading.information_about(&case, some).unwrap();
            assert_close(&[about], &[slow.information(some, |configuration| rows[configuration].clone())], 1e-11)?;
        }
        let slow: Vec<f64> =
            (0..3).map(|place| slow.mean(|configuration| rows[configuration][place])).collect();
        assert_close(&reading.probabilities(&case).unwrap(), &slow, ABSOLUTE)?;
    }
}

/// A network of so many causes and six symptoms.
fn networks_and_findings(causes: usize) -> impl Strategy<Value = (Numbers, Findings)> {
    (networks(causes, 6), findings(causes, 6))
}

/// P(region | configuration) as documented at `Reading`.
fn regions(usual: &[f64], weights: &[(usize, Vec<f64>)], configuration: usize) -> Vec<f64> {
    let present = || weights.iter().filter(|(cause, _)| configuration >> cause & 1 == 1);
    let ratio = |region: usize| 10f64.powf(present().map(|(_, weight)| weight[region]).sum());
    let products: Vec<f64> = usual.iter().enumerate().map(|(region, share)| share * ratio(region)).collect();
    let sum: f64 = products.iter().sum();
    products.into_iter().map(|product| product / sum).collect()
}
