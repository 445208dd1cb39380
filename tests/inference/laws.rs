//! What must hold whatever the numbers are.

use proptest::prelude::*;
use whybake::inference::{
    Findings, Link, Observation, Odds, Reading, Workspace, look_for, posterior, total_under_cause, usual_share,
};

use crate::generate::{Numbers, Random};
use crate::strategies::{cases, config};

fn odds(numbers: &Numbers, findings: &Findings) -> Vec<Odds> {
    posterior(&numbers.network(), findings, &mut Workspace::new()).unwrap().odds().to_vec()
}

/// The same findings, given in another order.
fn shuffled(findings: &Findings, random: &mut Random) -> Findings {
    let mut other = Findings::new();
    let observations = findings.observations();
    for place in random.distinct(observations.len(), observations.len()) {
        other.observe(observations[place].0, observations[place].1);
    }
    for place in random.distinct(findings.readings(), findings.readings()) {
        other.weigh(findings.reading(place));
    }
    other
}

proptest! {
    #![proptest_config(config(300))]

    #[test]
    fn order_of_findings_and_of_links_changes_no_bit((numbers, findings) in cases(12), seed in any::<u64>()) {
        let random = &mut Random(seed);
        let order = random.distinct(numbers.links.len(), numbers.links.len());
        let links: Vec<Link> = order.into_iter().map(|place| numbers.links[place]).collect();
        let other = Numbers { links, ..numbers.clone() };
        prop_assert_eq!(odds(&numbers, &findings), odds(&other, &shuffled(&findings, random)));
    }

    #[test]
    fn a_used_workspace_changes_no_bit((numbers, findings) in cases(10), (others, earlier) in cases(12)) {
        let (network, other, mut workspace) = (numbers.network(), others.network(), Workspace::new());
        posterior(&other, &earlier, &mut workspace).unwrap();
        let again = posterior(&network, &findings, &mut workspace).unwrap().odds().to_vec();
        prop_assert_eq!(odds(&numbers, &findings), again);
    }

    #[test]
    fn one_more_reading_is_what_inferring_anew_gives((numbers, findings) in cases(12), seed in any::<u64>()) {
        let (network, random) = (numbers.network(), &mut Random(seed));
        let count = (1 + random.below(4)).min(network.causes());
        let touched = random.distinct(count, network.causes());
        let weights: Vec<(usize, f64)> = touched.into_iter().map(|cause| (cause, random.uniform(-2.0, 2.0))).collect();
        let mut more = findings.clone();
        more.weigh(&weights);
        let (mut workspace, mut spare) = (Workspace::new(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        let after = case.after_reading(&weights, &mut spare).unwrap();
        for (cause, (anew, after)) in odds(&numbers, &more).iter().zip(after.odds()).enumerate() {
            prop_assert!((anew.log_odds() - after.log_odds()).abs() < 1e-9, "cause {}: {:?} {:?}", cause, anew, after);
        }
        let unknown = network.causes();
        prop_assert!(case.after_reading(&[(unknown, 1.0)], &mut spare).is_err());
    }

    #[test]
    fn supporting_evidence_never_lowers_its_cause((numbers, findings) in cases(12), weight in 0.01..3.0) {
        let before = odds(&numbers, &findings);
        for (cause, before) in before.iter().enumerate() {
            let mut more = findings.clone();
            more.weigh(&[(cause, weight)]);
            let after = odds(&numbers, &more)[cause];
            // It adds exactly its weight to the log-odds.
            prop_assert!((after.decibans() - before.decibans() - 10.0 * weight).abs() < 1e-8);
        }
    }

    #[test]
    fn a_lone_symptom_supports_its_causes_the_more_the_surer_it_is((numbers, _) in cases(10)) {
        for symptom in 0..numbers.leaks.len() {
            let by_certainty = [0.0, 0.2, 0.5, 0.8, 1.0].map(|certainty| {
                let mut findings = Findings::new();
                findings.observe(symptom, Observation::Likely(certainty));
                odds(&numbers, &findings)
            });
            for link in numbers.links.iter().filter(|link| link.symptom == symptom) {
                let rising = by_certainty.windows(2).all(|pair| {
                    pair[0][link.cause].present < pair[1][link.cause].present * (1.0 + 1e-12)
                });
                prop_assert!(rising);
            }
        }
    }

    #[test]
    fn certainty_one_and_zero_are_present_and_absent((numbers, findings) in cases(12)) {
        let mut certain = Findings::new();
        for &(symptom, seen) in findings.observations() {
            certain.observe(symptom, match seen {
                Observation::Present => Observation::Likely(1.0),
                Observation::Absent => Observation::Likely(0.0),
                likely => likely,
            });
        }
        (0..findings.readings()).for_each(|place| { certain.weigh(findings.reading(place)); });
        prop_assert_eq!(odds(&numbers, &findings), odds(&numbers, &certain));
    }

    #[test]
    fn even_certainty_says_nothing((numbers, findings) in cases(12)) {
        let mut fewer = Findings::new();
        let mut even = Findings::new();
        for (place, &(symptom, seen)) in findings.observations().iter().enumerate() {
            even.observe(symptom, if place == 0 { Observation::Likely(0.5) } else { seen });
            if place > 0 {
                fewer.observe(symptom, seen);
            }
        }
        prop_assert_eq!(odds(&numbers, &fewer), odds(&numbers, &even));
    }

    #[test]
    fn an_unlinked_cause_changes_no_other((numbers, findings) in cases(10), prior in 0.01..0.5) {
        let mut more = numbers.clone();
        more.priors.push(prior);
        let (before, after) = (odds(&numbers, &findings), odds(&more, &findings));
        prop_assert_eq!(&before[..], &after[..before.len()]);
        prop_assert_eq!(after[before.len()], Odds::from_probability(prior));
    }

    #[test]
    fn sides_and_joints_add_up((numbers, findings) in cases(10)) {
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        for odds in case.odds() {
            prop_assert!((odds.present + odds.absent - 1.0).abs() < 1e-14);
        }
        let causes: Vec<usize> = (0..numbers.priors.len().min(3)).collect();
        let joint = case.joint(&causes).unwrap();
        for (place, &cause) in causes.iter().enumerate() {
            let present = joint.iter().enumerate().filter(|(index, _)| index >> place & 1 == 1);
            let marginal: f64 = present.map(|(_, mass)| mass).sum();
            prop_assert!((marginal - case.odds()[cause].present).abs() < 1e-12);
        }
    }

    #[test]
    fn usual_share_makes_both_weights_consistent(weight_for in 0.001..5.0, weight_against in -5.0..-0.001) {
        let share = usual_share(weight_for, weight_against).unwrap();
        prop_assert!(share > 0.0 && share < 1.0);
        let total = total_under_cause(&[share, 1.0 - share], &[weight_for, weight_against]);
        prop_assert!((total - 1.0).abs() < 1e-10);
    }
}

#[test]
fn usual_share_of_a_known_pair() {
    // Ten times likelier and ten times less likely: 0.9 / 9.9.
    assert!((usual_share(1.0, -1.0).unwrap() - 1.0 / 11.0).abs() < 1e-15);
    assert_eq!(usual_share(1.0, 0.5), None);
    assert_eq!(usual_share(-1.0, -2.0), None);
    assert_eq!(usual_share(f64::NAN, -1.0), None);
}

/// Pearl 1988 calls it explaining away: the other cause of the same symptom becomes less likely.
#[test]
fn evidence_for_one_cause_lowers_the_other_explanation() {
    let links = [0, 1].map(|cause| Link { cause, symptom: 0, strength: 0.8 }).to_vec();
    let numbers = Numbers { priors: vec![0.1, 0.1], leaks: vec![0.01], links };
    let mut findings = Findings::new();
    findings.observe(0, Observation::Present);
    let before = odds(&numbers, &findings);
    findings.weigh(&[(0, 2.0)]);
    let after = odds(&numbers, &findings);
    assert!(after[0].present > before[0].present && after[1].present < before[1].present);
}

/// Mean of the probabilities after each outcome, cause by cause.
fn mean_after(outcomes: &[(f64, Vec<f64>)]) -> Vec<f64> {
    let causes = outcomes[0].1.len();
    (0..causes).map(|cause| outcomes.iter().map(|(share, after)| share * after[cause]).sum()).collect()
}

proptest! {
    #![proptest_config(config(200))]

    /// What looking will tell is not known before: on the average over its outcomes it changes nothing.
    #[test]
    fn the_outcomes_of_a_symptom_average_to_what_is_known((numbers, findings) in cases(10), place in 0..8usize) {
        let symptom = place % numbers.leaks.len();
        let network = numbers.network();
        let mut open = Findings::new();
        for &(other, seen) in findings.observations().iter().filter(|(other, _)| *other != symptom) {
            open.observe(other, seen);
        }
        (0..findings.readings()).for_each(|reading| { open.weigh(findings.reading(reading)); });
        let before = odds(&numbers, &open);
        let mut workspace = Workspace::new();
        let seen = look_for(&network, &open, symptom, &mut workspace).unwrap().probability();
        let after = |observation| {
            let mut more = open.clone();
            more.observe(symptom, observation);
            odds(&numbers, &more).iter().map(|odds| odds.probability()).collect::<Vec<_>>()
        };
        let mean = mean_after(&[(seen, after(Observation::Present)), (1.0 - seen, after(Observation::Absent))]);
        for (mean, before) in mean.iter().zip(before) {
            prop_assert!((mean - before.probability()).abs() < 1e-9, "{mean} for {before:?}");
        }
    }

    /// The same for a reading of one cause whose usual share follows from its weights. With several causes the plain
    /// product of ratios, by which findings count, departs from it.
    #[test]
    fn the_outcomes_of_a_reading_average_to_what_is_known(
        (numbers, findings) in cases(10), place in 0..10usize, above in 0.05..2.0, below in -2.0..-0.05
    ) {
        let cause = place % numbers.priors.len();
        let usual = usual_share(above, below).unwrap();
        let reading = Reading::new(&[usual, 1.0 - usual], &[(cause, vec![above, below])]).unwrap();
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        let after = |weight: f64| {
            let mut more = findings.clone();
            more.weigh(&[(cause, weight)]);
            odds(&numbers, &more).iter().map(|odds| odds.probability()).collect::<Vec<_>>()
        };
        let shares = reading.probabilities(&case).unwrap();
        let mean = mean_after(&[(shares[0], after(above)), (shares[1], after(below))]);
        for (mean, before) in mean.iter().zip(case.odds()) {
            prop_assert!((mean - before.probability()).abs() < 1e-9, "{mean} for {before:?}");
        }
    }
}
