//! Big cases, extreme numbers, and what is refused.

use whybake::inference::{
    Findings, FindingsFault, Link, MAX_JOINT_CAUSES, MAX_SYMPTOMS, Network, NetworkFault, Observation, Reading,
    ReadingFault, Workspace, look_for, posterior,
};

use crate::enumeration::Enumeration;
use crate::generate::{Numbers, Random, add_readings, numbers, symptoms_seen};

/// Islands of nine causes that share two symptoms, side by side in one network of 400 causes. The
/// inference knows nothing of islands; each can be enumerated on its own.
fn islands(random: &mut Random, count: usize) -> (Vec<Numbers>, Numbers) {
    let parts: Vec<Numbers> = (0..count).map(|_| numbers(random, 9, 2)).collect();
    let mut whole = Numbers { priors: Vec::new(), leaks: Vec::new(), links: Vec::new() };
    for part in &parts {
        let (cause, symptom) = (whole.priors.len(), whole.leaks.len());
        let moved = |link: &Link| Link { cause: link.cause + cause, symptom: link.symptom + symptom, ..*link };
        whole.links.extend(part.links.iter().map(moved));
        whole.priors.extend(&part.priors);
        whole.leaks.extend(&part.leaks);
    }
    whole.priors.resize(400, 0.05);
    (parts, whole)
}

#[test]
fn fourteen_present_symptoms_among_400_causes() {
    let (parts, whole) = islands(&mut Random(14), 7);
    let mut findings = Findings::new();
    (0..14).for_each(|symptom| findings.observe(symptom, Observation::Present));
    let (network, mut workspace) = (whole.network(), Workspace::new());
    let fast = posterior(&network, &findings, &mut workspace).unwrap();
    let mut both = Findings::new();
    (0..2).for_each(|symptom| both.observe(symptom, Observation::Present));
    let slow = parts.iter().flat_map(|part| Enumeration::of(part, &both).odds());
    for (fast, slow) in fast.odds().iter().zip(slow) {
        assert!((fast.present / slow.present - 1.0).abs() < 1e-12, "{fast:?} for {slow:?}");
        assert!((fast.absent / slow.absent - 1.0).abs() < 1e-12, "{fast:?} for {slow:?}");
    }
    assert_eq!(fast.odds()[399].present, 0.05);
}

/// Over six dimensions the table is divided cause by cause; each finding left out must equal a
/// new inference without it.
#[test]
fn leave_one_out_of_a_big_case_equals_new_inferences() {
    let random = &mut Random(5);
    let (network, mut workspace, mut spare) = (numbers(random, 400, 60).network(), Workspace::new(), Workspace::new());
    let mut findings = symptoms_seen(random, 60, 10, 3);
    add_readings(random, &mut findings, 400, 8);
    let causes = random.distinct(8, 400);
    let case = posterior(&network, &findings, &mut workspace).unwrap();
    let changes = case.leave_one_out(&causes, &mut spare).unwrap();
    for left_out in 0..findings.readings() {
        let mut fewer = Findings::new();
        findings.observations().iter().for_each(|&(symptom, seen)| fewer.observe(symptom, seen));
        for place in (0..findings.readings()).filter(|&place| place != left_out) {
            fewer.weigh(findings.reading(place));
        }
        let without = posterior(&network, &fewer, &mut spare).unwrap();
        for (change, &cause) in changes.readings[left_out].iter().zip(&causes) {
            let expected = case.odds()[cause].decibans() - without.odds()[cause].decibans();
            assert!((change - expected).abs() < 1e-9, "{change} for {expected}");
        }
    }
}

/// One cause has to explain everything: the odds against it are far below the resolution of its
/// probability.
#[test]
fn log_odds_stay_accurate_where_the_probability_is_one() {
    let links = (0..5).map(|symptom| Link { cause: 0, symptom, strength: 0.9 }).collect();
    let numbers = Numbers { priors: vec![0.1], leaks: vec![1e-6; 5], links };
    let mut findings = Findings::new();
    (0..5).for_each(|symptom| findings.observe(symptom, Observation::Present));
    findings.weigh(&[(0, 5.0)]);
    let (network, mut workspace, mut spare) = (numbers.network(), Workspace::new(), Workspace::new());
    let case = posterior(&network, &findings, &mut workspace).unwrap();
    let slow = Enumeration::of(&numbers, &findings).odds()[0];
    assert_eq!(case.odds()[0].probability(), 1.0);
    assert!((case.odds()[0].decibans() - slow.decibans()).abs() < 1e-9);
    let changes = case.leave_one_out(&[0], &mut spare).unwrap();
    assert!((changes.readings[0][0] - 50.0).abs() < 1e-9, "five powers of ten are 50 decibans");
}

#[test]
fn absurd_weights_saturate() {
    let numbers = Numbers { priors: vec![0.5], leaks: vec![0.1], links: Vec::new() };
    for (weight, decibans) in [(1e300, 1000.0), (-1e300, -1000.0)] {
        let mut findings = Findings::new();
        findings.weigh(&[(0, weight)]);
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        assert!((case.odds()[0].decibans() - decibans).abs() < 1e-9);
        assert!(case.log_probability().is_finite());
    }
}

#[test]
fn too_many_symptoms_are_refused_in_words() {
    let network = numbers(&mut Random(1), 20, 30).network();
    let mut findings = Findings::new();
    (0..=MAX_SYMPTOMS).for_each(|symptom| findings.observe(symptom, Observation::Likely(0.6)));
    let fault = posterior(&network, &findings, &mut Workspace::new()).unwrap_err();
    assert_eq!(fault, FindingsFault::TooManySymptoms { count: 17, limit: 16 });
    assert_eq!(fault.to_string(), "17 symptoms are present or uncertain; exact inference takes at most 16");
}

#[test]
fn as_many_symptoms_as_the_bound_allows() {
    let random = &mut Random(16);
    let network = numbers(random, 400, 80).network();
    let findings = symptoms_seen(random, 80, MAX_SYMPTOMS, 0);
    let mut workspace = Workspace::new();
    let case = posterior(&network, &findings, &mut workspace).unwrap();
    assert!(case.odds().iter().all(|odds| odds.present > 0.0 && odds.absent > 0.0));
    assert!(look_for(&network, &findings, unobserved(&findings), &mut Workspace::new()).is_err());
}

fn unobserved(findings: &Findings) -> usize {
    (0..).find(|symptom| findings.observations().iter().all(|(other, _)| other != symptom)).unwrap()
}

#[test]
fn findings_that_do_not_fit_are_refused() {
    let network = numbers(&mut Random(1), 3, 2).network();
    let refused = |fill: &dyn Fn(&mut Findings)| {
        let mut findings = Findings::new();
        fill(&mut findings);
        posterior(&network, &findings, &mut Workspace::new()).map(|case| case.odds().len()).unwrap_err()
    };
    let observed = |symptom, seen| refused(&move |findings: &mut Findings| findings.observe(symptom, seen));
    assert_eq!(observed(2, Observation::Present), FindingsFault::UnknownSymptom { symptom: 2 });
    assert_eq!(observed(1, Observation::Likely(1.5)), FindingsFault::Certainty { symptom: 1, certainty: 1.5 });
    assert!(matches!(observed(0, Observation::Likely(f64::NAN)), FindingsFault::Certainty { symptom: 0, .. }));
    let twice = refused(&|findings| (0..2).for_each(|_| findings.observe(1, Observation::Absent)));
    assert_eq!(twice, FindingsFault::ObservedTwice { symptom: 1 });
    let weighed = |cause, weight| {
        refused(&move |findings: &mut Findings| {
            findings.weigh(&[(cause, weight)]);
        })
    };
    assert_eq!(weighed(3, 1.0), FindingsFault::UnknownCause { cause: 3 });
    assert_eq!(weighed(2, f64::NAN), FindingsFault::Weight { cause: 2 });
    assert_eq!(weighed(2, f64::INFINITY), FindingsFault::Weight { cause: 2 });
}

#[test]
fn questions_about_wrong_causes_are_refused() {
    let (network, mut workspace) = (numbers(&mut Random(1), 14, 2).network(), Workspace::new());
    let findings = Findings::new();
    let case = posterior(&network, &findings, &mut workspace).unwrap();
    assert_eq!(case.joint(&[0, 14]), Err(FindingsFault::UnknownCause { cause: 14 }));
    assert_eq!(case.joint(&[3, 3]), Err(FindingsFault::RepeatedCause { cause: 3 }));
    let all: Vec<usize> = (0..14).collect();
    assert_eq!(case.joint(&all), Err(FindingsFault::TooManyCauses { count: 14, limit: MAX_JOINT_CAUSES }));
    assert!(case.leave_one_out(&[14], &mut Workspace::new()).is_err());
    assert_eq!(case.joint(&[]), Ok(vec![1.0]));
}

#[test]
fn every_fault_of_a_network_is_listed() {
    let link = |cause, symptom, strength| Link { cause, symptom, strength };
    let links = vec![link(1, 0, 0.5), link(1, 0, 0.6), link(0, 0, 1.0), link(9, 0, 0.5), link(0, 9, f64::NAN)];
    let faults = Network::new(vec![0.0, f64::NAN, 0.5, 1.0], vec![0.0, 1e-7, 1e-6, 1.0], links).unwrap_err();
    let words: Vec<String> = faults.iter().map(NetworkFault::to_string).collect();
    assert_eq!(
        words,
        [
            "prior 0 of cause 0 is not between 0 and 1",
            "prior NaN of cause 1 is not between 0 and 1",
            "prior 1 of cause 3 is not between 0 and 1",
            "leak 0 of symptom 0 is not between 0.000001 and 1",
            "leak 0.0000001 of symptom 1 is not between 0.000001 and 1",
            "leak 1 of symptom 3 is not between 0.000001 and 1",
            "strength 1 of cause 0 for symptom 0 is not between 0 and 1",
            "cause 1 is linked to symptom 0 twice",
            "a link joins cause 9 and symptom 0, which are not both declared",
            "a link joins cause 0 and symptom 9, which are not both declared",
            "strength NaN of cause 0 for symptom 9 is not between 0 and 1",
        ]
    );
}

#[test]
fn faults_of_a_reading_are_named() {
    let fault = |usual: &[f64], weights: &[(usize, Vec<f64>)]| Reading::new(usual, weights).unwrap_err();
    assert_eq!(fault(&[], &[]), ReadingFault::Usual { sum: 0.0 });
    assert_eq!(fault(&[0.5, 0.25], &[]), ReadingFault::Usual { sum: 0.75 });
    assert!(matches!(fault(&[0.5, f64::NAN], &[]), ReadingFault::Usual { .. }));
    assert_eq!(fault(&[0.5, 0.5], &[(4, vec![0.1])]), ReadingFault::Weights { cause: 4 });
    assert_eq!(fault(&[1.0], &[(4, vec![f64::INFINITY])]), ReadingFault::Weights { cause: 4 });
    assert_eq!(fault(&[1.0], &[(4, vec![0.0]), (4, vec![0.0])]), ReadingFault::RepeatedCause { cause: 4 });
    let many: Vec<_> = (0..13).map(|cause| (cause, vec![0.0])).collect();
    assert_eq!(fault(&[1.0], &many), ReadingFault::TooManyCauses { count: 13 });
}

/// Found on a generated case: two subtractions, each of which left just enough digits, together left eight.
#[test]
fn what_several_subtractions_leave_counts_together() {
    let link = |cause, symptom, strength| Link { cause, symptom, strength };
    let links = vec![link(0, 1, 0.003_647_375_8), link(0, 4, 0.005_089_019), link(1, 5, 0.417_559_08)];
    let leaks = vec![0.001, 1e-6, 0.001, 0.001, 1e-6, 6.151_058_5e-5, 0.001];
    let numbers = Numbers { priors: vec![0.270_498_12, 0.214_835_59, 0.01], leaks, links };
    let mut findings = Findings::new();
    findings.observe(0, Observation::Likely(0.460_812_71));
    findings.observe(1, Observation::Present);
    findings.observe(4, Observation::Likely(0.662_551_96));
    findings.observe(5, Observation::Present);
    findings.weigh(&[(1, -1.357_608_82)]);
    findings.weigh(&[(0, 0.627_520_47), (1, -1.408_575_06)]);
    findings.weigh(&[(1, -1.176_576_83), (0, 1.044_018_52)]);
    findings.weigh(&[(1, 5.100_477_55)]);
    let (network, mut workspace, mut spare) = (numbers.network(), Workspace::new(), Workspace::new());
    let case = posterior(&network, &findings, &mut workspace).unwrap();
    let changes = case.leave_one_out(&[0, 1, 2], &mut spare).unwrap();
    // The two causes share no symptom: what is weighed for the second says nothing of the first.
    for place in [0, 3] {
        assert!(changes.readings[place][0].abs() < 1e-10, "{:e}", changes.readings[place][0]);
    }
}
