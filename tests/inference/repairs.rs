//! The order of repairs against an enumeration of everything that can happen.

use proptest::prelude::*;
use whybake::inference::{Repair, Workspace, order_repairs, posterior, takes_away_all, takes_away_some};

use crate::enumeration::Enumeration;
use crate::generate::Random;
use crate::strategies::{cases, config};

/// Some repairs of some causes.
fn repairs(random: &mut Random, causes: usize) -> Vec<Repair> {
    let repair = |random: &mut Random| {
        let count = 1 + random.below(causes.min(3));
        let mends = random.distinct(count, causes).into_iter().map(|cause| (cause, random.uniform(0.05, 0.99)));
        Repair { mends: mends.collect(), cost: random.uniform(5.0, 500.0) }
    };
    (0..12).map(|_| repair(random)).collect()
}

/// Probability that a cause stays though these repairs were done.
fn left(done: &[&Repair], causes: usize) -> Vec<f64> {
    let stays = |cause: usize| {
        let works = done.iter().flat_map(|repair| &repair.mends).filter(|(own, _)| *own == cause);
        works.map(|(_, works)| 1.0 - works).product()
    };
    (0..causes).map(stays).collect()
}

/// Over all configurations of the causes: the probability that some, and that all, that are at work are gone.
fn enumerated(all: &Enumeration, causes: &[usize], left: &[f64]) -> (f64, f64) {
    let at_work = |configuration: usize| -> Vec<f64> {
        causes.iter().zip(left).filter(|(cause, _)| configuration >> **cause & 1 == 1).map(|(_, left)| *left).collect()
    };
    let some = all.mean(|configuration| 1.0 - at_work(configuration).iter().product::<f64>());
    let gone = all.mean(|configuration| match at_work(configuration) {
        none if none.is_empty() => 0.0,
        left => left.iter().map(|left| 1.0 - left).product(),
    });
    (some, gone)
}

proptest! {
    #![proptest_config(config(150))]

    #[test]
    fn every_step_has_the_probabilities_of_the_enumeration((numbers, findings) in cases(9), seed in any::<u64>()) {
        let random = &mut Random(seed);
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        let count = 1 + random.below(numbers.priors.len().min(9));
        let causes = random.distinct(count, numbers.priors.len());
        let (joint, all) = (case.joint(&causes).unwrap(), Enumeration::of(&numbers, &findings));
        let repairs = repairs(random, count);
        let at_once = random.below(3);
        let steps = order_repairs(&joint, &repairs, at_once, 8);
        let given = steps.iter().take(at_once).map(|step| step.repair);
        prop_assert!(given.eq(0..at_once.min(repairs.len())));
        let (mut done, mut before): (Vec<&Repair>, f64) = (Vec::new(), 0.0);
        for (step_place, step) in steps.iter().enumerate() {
            // No other repair would have added more for its cost.
            for (place, other) in repairs.iter().enumerate().filter(|_| step_place >= at_once) {
                if done.iter().all(|earlier| !std::ptr::eq(*earlier, other)) {
                    let tried: Vec<&Repair> = done.iter().copied().chain([other]).collect();
                    let (some, _) = enumerated(&all, &causes, &left(&tried, count));
                    let (rate, taken) = ((some - before) / other.cost, step.adds / repairs[step.repair].cost);
                    prop_assert!(rate <= taken + 1e-12, "{place} would add {rate}, taken {taken}");
                }
            }
            done.push(&repairs[step.repair]);
            let stays = left(&done, count);
            let (some, gone) = enumerated(&all, &causes, &stays);
            prop_assert!((step.some - some).abs() < 1e-9 && (step.adds - (some - before)).abs() < 1e-9);
            prop_assert!((step.all - gone).abs() < 1e-9 && step.all <= step.some + 1e-12);
            prop_assert!((takes_away_some(&joint, &stays) - some).abs() < 1e-9);
            prop_assert!((takes_away_all(&joint, &stays) - gone).abs() < 1e-9);
            before = some;
        }
    }

    #[test]
    fn a_place_never_adds_more_for_its_cost_than_the_one_before((numbers, findings) in cases(9), seed in any::<u64>()) {
        let random = &mut Random(seed);
        let (network, mut workspace) = (numbers.network(), Workspace::new());
        let case = posterior(&network, &findings, &mut workspace).unwrap();
        let count = numbers.priors.len().min(9);
        let joint = case.joint(&(0..count).collect::<Vec<_>>()).unwrap();
        let repairs = repairs(random, count);
        let steps = order_repairs(&joint, &repairs, 0, 12);
        let rates: Vec<f64> = steps.iter().map(|step| step.adds / repairs[step.repair].cost).collect();
        prop_assert!(rates.windows(2).all(|pair| pair[1] <= pair[0] + 1e-12), "{rates:?}");
    }
}
