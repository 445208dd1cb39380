//! Sizes, designs and orders of trials.

use std::collections::BTreeSet;
use std::f64::consts::FRAC_PI_4;

use serde_json::Value;
use whybake::science::trial_design::{
    Fraction, Risks, TwoLevelDesign, detectable_difference, detectable_proportion, randomised_order,
    sample_size_for_difference, sample_size_for_proportions, two_level_design,
};

use crate::published::{Inputs, faulty, hold, path};

#[test]
fn published_sizes() {
    hold("trial_sizes.csv", 15, |calculation, inputs: &Inputs| {
        let risks = Risks { alpha: inputs.get("alpha"), power: inputs.get("power") };
        match calculation {
            "difference" => sample_size_for_difference(inputs.get("effect"), 1.0, risks).unwrap().exact.value,
            "approximate" => sample_size_for_difference(inputs.get("effect"), 1.0, risks).unwrap().approximate.value,
            "proportions" => {
                // Two shares at the same distance from one half, h apart.
                let share = |h: f64| 100.0 * (FRAC_PI_4 + 0.25 * h).sin().powi(2);
                let h = inputs.get("h");
                sample_size_for_proportions(share(h), share(-h), risks).unwrap().exact.value
            }
            other => panic!("{other}"),
        }
    });
}

/// See `tests/reference_libraries/trial_sizes.py`.
#[test]
fn sizes_agree_with_independent_libraries() {
    let stored: Vec<Value> = serde_json::from_str(&std::fs::read_to_string(path("trial_sizes.json")).unwrap()).unwrap();
    assert!(stored.len() > 100);
    for problem in stored {
        let number = |name: &str| problem[name].as_f64().unwrap();
        let risks = || Risks { alpha: number("alpha"), power: number("power") };
        let whole = |name: &str| u32::try_from(problem[name].as_u64().unwrap()).unwrap();
        let own = match problem["calculation"].as_str().unwrap() {
            "difference" => sample_size_for_difference(number("effect"), 1.0, risks()).unwrap().exact,
            "detectable" => detectable_difference(number("pieces"), 1.0, risks()).unwrap(),
            "proportions" => sample_size_for_proportions(number("now"), number("wanted"), risks()).unwrap().exact,
            _ => {
                let order = randomised_order(whole("seed"), whole("block"), whole("runs")).unwrap();
                assert_eq!(serde_json::to_value(order).unwrap(), problem["expected"]);
                continue;
            }
        };
        let expected = number("expected");
        assert!((own.value / expected - 1.0).abs() < 1e-6, "{problem}: {}", own.value);
    }
}

#[test]
fn whole_pieces_reach_the_power_and_the_difference_comes_back() {
    let size = sample_size_for_difference(0.2, 0.25, Risks::USUAL).unwrap();
    assert_eq!(size.pieces.value, size.exact.value.ceil());
    let back = detectable_difference(size.exact.value, 0.25, Risks::USUAL).unwrap().value;
    assert!((back - 0.2).abs() < 1e-9, "{back}");
    let size = sample_size_for_proportions(40.0, 20.0, Risks::USUAL).unwrap();
    let back = detectable_proportion(40.0, size.exact.value, Risks::USUAL).unwrap().value;
    assert!((back - 20.0).abs() < 1e-9, "{back}");
    assert!(size.pieces.outside_domain.is_empty());
}

#[test]
fn few_faulty_pieces_are_remarked() {
    let size = sample_size_for_proportions(10.0, 0.0, Risks::USUAL).unwrap();
    assert_eq!(size.pieces.outside_domain.len(), 2, "{:?}", size.pieces.outside_domain);
    assert_eq!(faulty(detectable_proportion(2.0, 10.0, Risks::USUAL)), ["pieces"]);
}

#[test]
fn what_cannot_be_meant_is_refused() {
    let risks = Risks { alpha: 0.5, power: 0.5 };
    assert_eq!(faulty(sample_size_for_difference(-1.0, 0.0, risks)), ["difference", "standard_deviation", "power"]);
    assert_eq!(faulty(sample_size_for_difference(0.001, 1.0, Risks::USUAL)), ["difference"]);
    assert_eq!(faulty(sample_size_for_difference(f64::NAN, 1.0, Risks::USUAL)), ["difference"]);
    assert_eq!(faulty(sample_size_for_proportions(5.0, 5.0, Risks::USUAL)), ["wanted_percent"]);
    assert_eq!(faulty(detectable_difference(1.0, 1.0, Risks { alpha: 0.0, power: 1.0 })), ["pieces", "alpha", "power"]);
    assert_eq!(faulty(two_level_design(4.0, Fraction::Full)), ["factors"]);
    assert_eq!(faulty(two_level_design(2.0, Fraction::Half)), ["factors"]);
    assert_eq!(faulty(randomised_order(1, 1, 0)), ["runs"]);
}

fn labels(design: &TwoLevelDesign) -> Vec<String> {
    design.runs.iter().map(|levels| TwoLevelDesign::label(levels)).collect()
}

/// Box, Hunter and Hunter, Statistics for Experimenters, 2005, table of two-level fractional factorials (from memory):
/// 2^(4-1) of resolution IV with D = ABC; the two halves of 2^3 are C = AB and C = -AB.
#[test]
fn published_designs() {
    let full = two_level_design(3.0, Fraction::Full).unwrap();
    assert_eq!(labels(&full), ["(1)", "a", "b", "ab", "c", "ac", "bc", "abc"]);
    assert_eq!((full.name.as_str(), full.resolution, full.aliases.len()), ("2^3", None, 0));
    assert_eq!(labels(&two_level_design(2.0, Fraction::Full).unwrap()), ["(1)", "a", "b", "ab"]);

    let half = two_level_design(4.0, Fraction::Half).unwrap();
    assert_eq!(labels(&half), ["(1)", "ad", "bd", "ab", "cd", "ac", "bc", "abcd"]);
    assert_eq!((half.name.as_str(), half.resolution), ("2^(4-1)", Some("IV")));
    assert_eq!(half.generator.as_deref(), Some("D = ABC"));
    assert_eq!(half.defining_relation.as_deref(), Some("I = ABCD"));
    let aliases: Vec<String> = half.aliases.iter().map(|own| format!("{} = {}", own.effect, own.with)).collect();
    assert_eq!(aliases, ["A = BCD", "B = ACD", "C = ABD", "D = ABC", "AB = CD", "AC = BD", "BC = AD"]);

    let half = two_level_design(3.0, Fraction::Half).unwrap();
    assert_eq!(labels(&half), ["(1)", "ac", "bc", "ab"]);
    assert_eq!((half.name.as_str(), half.resolution), ("2^(3-1)", Some("III")));
    assert_eq!(half.generator.as_deref(), Some("C = -AB"));
    let aliases: Vec<String> = half.aliases.iter().map(|own| format!("{} = {}", own.effect, own.with)).collect();
    assert_eq!(aliases, ["A = -BC", "B = -AC", "C = -AB"]);
}

/// Sum over the runs of the product of the signs of some factors.
fn contrast(design: &TwoLevelDesign, factors: &[usize]) -> i32 {
    let sign = |high: bool| if high { 1 } else { -1 };
    design.runs.iter().map(|run| factors.iter().map(|factor| sign(run[*factor])).product::<i32>()).sum()
}

#[test]
fn designs_are_balanced_and_aliases_are_those_of_their_runs() {
    for (factors, fraction) in [(2, Fraction::Full), (3, Fraction::Full), (3, Fraction::Half), (4, Fraction::Half)] {
        let design = two_level_design(f64::from(factors), fraction).unwrap();
        let all: Vec<usize> = (0..design.factors).collect();
        assert!(design.runs[0].iter().all(|high| !high), "the control comes first");
        assert_eq!(design.runs.iter().collect::<BTreeSet<_>>().len(), design.runs.len());
        for &one in &all {
            assert_eq!(contrast(&design, &[one]), 0, "{}", design.name);
            for &other in all.iter().filter(|other| **other > one) {
                assert_eq!(contrast(&design, &[one, other]), 0, "{}", design.name);
            }
        }
        for alias in &design.aliases {
            let sign = if alias.with.starts_with('-') { -1 } else { 1 };
            let letters = alias.effect.chars().chain(alias.with.chars()).filter(|c| *c != '-');
            let factors: Vec<usize> = letters.map(|letter| usize::try_from(letter as u32 - 65).unwrap()).collect();
            let runs = i32::try_from(design.runs.len()).unwrap();
            assert_eq!(contrast(&design, &factors), sign * runs, "{} {alias:?}", design.name);
        }
    }
}

#[test]
fn an_order_is_a_permutation_and_hangs_on_the_seed() {
    let order = randomised_order(1, 1, 8).unwrap();
    assert_eq!(order.iter().copied().collect::<BTreeSet<_>>(), (1..=8).collect());
    assert_eq!(order, randomised_order(1, 1, 8).unwrap());
    let orders: BTreeSet<Vec<u32>> = (0..50).map(|seed| randomised_order(seed, 1, 8).unwrap()).collect();
    assert!(orders.len() > 45, "{}", orders.len());
}
