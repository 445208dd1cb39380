//! The closest blend: against an independent library, worked examples, and properties.
//!
//! `tests/reference_libraries/least_squares.py` holds scipy against the same stored problems.

use crate::fat_solids::curve;
use crate::published::{self, assert_close, faulty};
use proptest::prelude::*;
use serde_json::Value;
use whybake::science::Nonsense;
use whybake::science::fat::blend::{
    AvailableFat, FatBlend, FatKind, Interaction, Requirements, blend_solids, match_curve,
};
use whybake::science::fat::{SolidsCurve, SolidsReading, SolidsScale};

fn fat(name: &str, kind: FatKind, solids: SolidsCurve) -> AvailableFat {
    AvailableFat {
        name: name.to_owned(),
        kind,
        partially_hydrogenated: false,
        trans_percent: None,
        saturated_percent: None,
        solids,
    }
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect()
}

fn problems() -> Vec<Value> {
    let text = std::fs::read_to_string(published::path("fat_blends.json")).unwrap();
    let stored: Value = serde_json::from_str(&text).unwrap();
    let problems = stored["problems"].as_array().unwrap().clone();
    assert!(problems.len() > 30);
    problems
}

fn solve(problem: &Value) -> Result<FatBlend, Nonsense> {
    let celsius = numbers(&problem["celsius"]);
    let solids = |percent: &Value| {
        let pairs: Vec<(f64, f64)> = celsius.iter().copied().zip(numbers(percent)).collect();
        curve(&pairs)
    };
    let fats: Vec<AvailableFat> = problem["fats"]
        .as_array()
        .unwrap()
        .iter()
        .map(|stored| AvailableFat {
            trans_percent: stored["trans"].as_f64(),
            saturated_percent: stored["saturated"].as_f64(),
            ..fat(stored["name"].as_str().unwrap(), FatKind::OtherPlant, solids(&stored["percent"]))
        })
        .collect();
    let requirements = Requirements {
        most_trans_percent: problem["most_trans"].as_f64(),
        most_saturated_percent: problem["most_saturated"].as_f64(),
        ..Requirements::default()
    };
    match_curve(&fats, &solids(&problem["target"]), &requirements)
}

#[test]
fn blends_agree_with_an_independent_library() {
    for problem in problems() {
        let name = problem["name"].as_str().unwrap();
        let (expected, found) = (&problem["expected"], solve(&problem));
        if expected.is_null() {
            assert_eq!(faulty(found), ["requirements"], "{name}");
            continue;
        }
        let blend = found.unwrap();
        let error = blend.root_mean_square_error.value;
        assert_close(name, error, expected["error"].as_f64().unwrap(), 1e-4);
        for (share, percent) in blend.shares.iter().zip(numbers(&expected["percent"])) {
            assert_close(&format!("{name}, {}", share.name), share.percent, percent, 2e-3);
        }
    }
}

#[test]
fn worked_blends_are_reproduced_to_their_rounding() {
    let worked: Vec<Value> = problems().into_iter().filter(|problem| !problem["published"].is_null()).collect();
    assert_eq!(worked.len(), 5);
    for problem in worked {
        let name = problem["name"].as_str().unwrap();
        let (blend, published) = (solve(&problem).unwrap(), &problem["published"]);
        for (share, percent) in blend.shares.iter().zip(numbers(&published["percent"])) {
            assert_close(name, share.percent, percent, 0.0501);
        }
        for (point, solids) in blend.fit.iter().zip(numbers(&published["predicted"])) {
            assert_close(name, point.predicted.value, solids, 0.0501);
        }
        assert_close(name, blend.root_mean_square_error.value, published["error"].as_f64().unwrap(), 0.00501);
    }
}

#[test]
fn one_hard_fat_in_oil_at_other_temperatures() {
    // Worked blend 5: 33.9 % of a stearin of 76/59/49/39/30/21 in oil gives SFC10 25.8 and SFC35 10.2.
    let at = |stearin: f64| blend_solids(&[(33.9, stearin), (66.1, 0.0)], &[]).unwrap().value;
    assert_close("10 °C", at(76.0), 25.8, 0.0501);
    assert_close("35 °C", at(30.0), 10.2, 0.0501);
}

#[test]
fn palm_oil_with_palm_kernel_oil_half_and_half() {
    // Worked blend 6, ideal: 60.6/33.1/16.7/5.2/4.0/2.3 at 10/20/25/30/35/40 °C. The printed 60.6, 5.2, 4.0 and 16.7
    // are the exact 60.65, 5.25, 3.95 and 16.70 rounded half to even, so half a unit of the last place is allowed.
    let palm = [53.7, 26.1, 16.3, 10.5, 7.9, 4.6];
    let kernel = [67.6, 40.1, 17.1, 0.0, 0.0, 0.0];
    let printed = [60.6, 33.1, 16.7, 5.2, 4.0, 2.3];
    for ((palm, kernel), printed) in palm.into_iter().zip(kernel).zip(printed) {
        let parts = [(50.0, palm), (50.0, kernel)];
        assert_close("ideal", blend_solids(&parts, &[]).unwrap().value, printed, 0.0501);
        // With an illustrative k of 20 every value with both fats part solid drops by 20 x 0.25 = 5.0.
        let pair = [Interaction { first: 0, second: 1, points: 20.0 }];
        let drop = if kernel > 0.0 { 5.0 } else { 0.0 };
        assert_close("eutectic", blend_solids(&parts, &pair).unwrap().value, printed - drop, 0.0501);
    }
}

fn simple(name: &str, kind: FatKind, percent: f64) -> AvailableFat {
    fat(name, kind, curve(&[(20.0, percent)]))
}

#[test]
fn requirements_leave_fats_out_and_say_why() {
    let fats = [
        AvailableFat { partially_hydrogenated: true, ..simple("old shortening", FatKind::OtherPlant, 30.0) },
        simple("lard", FatKind::OtherAnimal, 20.0),
        simple("butter oil", FatKind::MilkFat, 17.0),
        simple("unmeasured", FatKind::PalmOil, 26.0),
        AvailableFat {
            trans_percent: Some(0.5),
            saturated_percent: Some(10.0),
            ..simple("oil", FatKind::OtherPlant, 0.0)
        },
    ];
    let requirements = Requirements {
        no_partially_hydrogenated: true,
        no_animal_fat: true,
        most_trans_percent: Some(2.0),
        most_saturated_percent: None,
    };
    let blend = match_curve(&fats, &curve(&[(20.0, 20.0)]), &requirements).unwrap();
    let left_out: Vec<String> = blend.left_out.iter().map(|fat| format!("{} {}", fat.name, fat.reason)).collect();
    assert_eq!(
        left_out,
        [
            "old shortening is partially hydrogenated",
            "lard is an animal fat",
            "butter oil is an animal fat",
            "unmeasured its trans fatty acids are not known",
        ]
    );
    assert_eq!(blend.shares.len(), 1);
    assert_close("trans", blend.trans.unwrap().value, 0.5, 1e-9);
    assert_close("residual", blend.fit[0].residual, -20.0, 1e-9);
}

#[test]
fn a_limit_with_no_room_to_spare_is_met() {
    let with = |name: &str, trans: f64, solids: f64| AvailableFat {
        trans_percent: Some(trans),
        ..simple(name, FatKind::OtherPlant, solids)
    };
    let target = curve(&[(20.0, 30.0)]);
    let most = |percent| Requirements { most_trans_percent: Some(percent), ..Requirements::default() };
    let fats = [with("hard", 0.5, 60.0), with("soft", 0.0, 10.0), with("oil", 0.0, 0.0)];
    let blend = match_curve(&fats, &target, &most(0.0)).unwrap();
    let shares: Vec<f64> = blend.shares.iter().map(|share| share.percent).collect();
    assert_close("hard", shares[0], 0.0, 1e-3);
    assert_close("soft", shares[1], 100.0, 1e-2);
    assert_close("trans", blend.trans.unwrap().value, 0.0, 1e-5);
    let exact = [with("one", 2.0, 60.0), with("two", 2.0, 0.0)];
    assert_close("both at the limit", match_curve(&exact, &target, &most(2.0)).unwrap().shares[0].percent, 50.0, 1e-3);
    assert_eq!(faulty(match_curve(&exact, &target, &most(1.99))), ["requirements"]);
}

#[test]
fn a_content_that_nobody_measured_stays_unknown() {
    let fats = [simple("palm", FatKind::PalmOil, 26.0), simple("oil", FatKind::OtherPlant, 0.0)];
    let blend = match_curve(&fats, &curve(&[(20.0, 13.0)]), &Requirements::default()).unwrap();
    assert!(blend.trans.is_none() && blend.saturated.is_none());
    assert!(blend.others_may_fit, "two fats, one temperature");
}

#[test]
fn eutectic_pairs_are_named_with_their_source() {
    // Source: Liu et al., Food Chem. 286 (2019) 636-643, abstract.
    let pair = |first: FatKind, second: FatKind| {
        let fats = [simple("a", first, 10.0), simple("b", second, 60.0)];
        let blend = match_curve(&fats, &curve(&[(20.0, 30.0)]), &Requirements::default()).unwrap();
        assert_eq!(blend.interactions.is_empty(), blend.root_mean_square_error.outside_domain.is_empty());
        blend.interactions.first().map(|warning| (warning.message, warning.source))
    };
    let (message, source) = pair(FatKind::PalmStearin, FatKind::PalmKernelOil).unwrap();
    assert!(message.starts_with("eutectic") && source.contains("Food Chem. 286"));
    assert!(pair(FatKind::PalmKernelStearin, FatKind::PalmStearin).unwrap().0.starts_with("eutectic"));
    assert!(pair(FatKind::PalmKernelOil, FatKind::PalmKernelStearin).unwrap().0.starts_with("compatible"));
    assert!(pair(FatKind::PalmOil, FatKind::PalmStearin).is_none());
}

#[test]
fn a_fat_that_is_not_in_the_blend_gives_no_warning() {
    let fats = [simple("kernel", FatKind::PalmKernelOil, 40.0), simple("stearin", FatKind::PalmStearin, 60.0)];
    let blend = match_curve(&fats, &curve(&[(20.0, 90.0)]), &Requirements::default()).unwrap();
    assert_eq!(blend.shares[0].percent, 0.0);
    assert!(blend.interactions.is_empty());
}

#[test]
fn a_fat_not_measured_over_the_whole_target_is_flagged() {
    let fats = [fat("milk fat", FatKind::MilkFat, curve(&[(10.0, 42.0), (30.0, 5.0)]))];
    let blend = match_curve(&fats, &curve(&[(10.0, 40.0), (40.0, 2.0)]), &Requirements::default()).unwrap();
    assert!(blend.fit[0].predicted.outside_domain.is_empty());
    assert!(blend.fit[1].predicted.outside_domain[0].starts_with("milk fat: 40 °C lies beyond"));
    assert!(!blend.root_mean_square_error.outside_domain.is_empty());
}

#[test]
fn nonsense_lists_every_fault() {
    let target = curve(&[(20.0, 20.0)]);
    let free = Requirements::default();
    assert_eq!(faulty(match_curve(&[], &target, &free)), ["fats"]);
    let index = SolidsCurve::new(SolidsScale::SolidFatIndex, vec![SolidsReading { celsius: 20.0, percent: 20.0 }]);
    let fats = [
        AvailableFat {
            trans_percent: Some(-1.0),
            saturated_percent: Some(f64::NAN),
            ..simple("a", FatKind::PalmOil, 1.0)
        },
        simple("a", FatKind::PalmOil, 1.0),
        fat("b", FatKind::PalmOil, index.unwrap()),
        simple(" ", FatKind::PalmOil, 1.0),
    ];
    let limits = Requirements { most_trans_percent: Some(101.0), ..free };
    let faults = faulty(match_curve(&fats, &target, &limits));
    assert_eq!(faults, ["a trans", "a saturated", "a", "b", "name", "most_trans"]);
    let animal = Requirements { no_animal_fat: true, ..free };
    let lard = [simple("lard", FatKind::OtherAnimal, 20.0)];
    let refusal = match_curve(&lard, &target, &animal).unwrap_err();
    assert_eq!(refusal.to_string(), "requirements: they rule out every fat");
    let pair = [Interaction { first: 0, second: 3, points: f64::NAN }];
    let faults = faulty(blend_solids(&[(-1.0, 20.0), (101.0, 200.0)], &pair));
    assert_eq!(faults, ["parts[0].share", "parts[1].share", "parts[1].solids", "interactions[0]", "interactions[0]"]);
}

#[derive(Debug, Clone)]
struct Invented {
    fats: Vec<(Vec<f64>, f64)>,
    target: Vec<f64>,
    most_saturated: Option<f64>,
}

fn falling(length: usize) -> impl Strategy<Value = Vec<f64>> {
    (0.0..100.0_f64, proptest::collection::vec(0.2..1.0_f64, length)).prop_map(|(first, factors)| {
        factors
            .into_iter()
            .scan(first, |solids, factor| {
                *solids *= factor;
                Some((*solids * 10.0).round() / 10.0)
            })
            .collect()
    })
}

fn invented() -> impl Strategy<Value = Invented> {
    (1..7_usize, 1..7_usize).prop_flat_map(|(fats, temperatures)| {
        (
            proptest::collection::vec((falling(temperatures), 0.0..100.0_f64), fats),
            falling(temperatures),
            proptest::option::of(0.0..100.0_f64),
        )
            .prop_map(|(fats, target, most_saturated)| Invented { fats, target, most_saturated })
    })
}

impl Invented {
    fn solve(&self) -> Result<FatBlend, Nonsense> {
        let at = |percent: &[f64]| {
            let readings: Vec<(f64, f64)> =
                (0..).map(|step| f64::from(step) * 5.0).zip(percent.iter().copied()).collect();
            curve(&readings)
        };
        let fats: Vec<AvailableFat> = (0..)
            .zip(&self.fats)
            .map(|(place, (solids, saturated))| AvailableFat {
                saturated_percent: Some(*saturated),
                ..fat(&format!("fat {place}"), FatKind::OtherPlant, at(solids))
            })
            .collect();
        let requirements = Requirements { most_saturated_percent: self.most_saturated, ..Requirements::default() };
        match_curve(&fats, &at(&self.target), &requirements)
    }

    /// Slow and obvious: the squared error of given shares (0 to 1).
    fn squared_error(&self, shares: &[f64]) -> f64 {
        self.target
            .iter()
            .enumerate()
            .map(|(place, target)| {
                let solids: f64 = self.fats.iter().zip(shares).map(|(fat, share)| fat.0[place] * share).sum();
                (solids - target).powi(2)
            })
            .sum()
    }

    fn saturated(&self, shares: &[f64]) -> f64 {
        self.fats.iter().zip(shares).map(|(fat, share)| fat.1 * share).sum()
    }

    fn keeps_limit(&self, shares: &[f64]) -> bool {
        self.most_saturated.is_none_or(|most| self.saturated(shares) <= most)
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn shares_are_a_blend_within_the_limits(case in invented()) {
        if let Ok(blend) = case.solve() {
            let shares: Vec<f64> = blend.shares.iter().map(|share| share.percent / 100.0).collect();
            prop_assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!(shares.iter().all(|share| *share >= 0.0));
            if let Some(most) = case.most_saturated {
                prop_assert!(case.saturated(&shares) <= most + 1e-3);
            }
            let error = (case.squared_error(&shares) / case.target.len() as f64).sqrt();
            prop_assert!((error - blend.root_mean_square_error.value).abs() < 1e-9);
        } else {
            let least = case.fats.iter().map(|fat| fat.1).fold(f64::INFINITY, f64::min);
            prop_assert!(case.most_saturated.is_some_and(|most| least > most - 1e-6), "a blend exists");
        }
    }

    #[test]
    fn no_other_blend_comes_closer(case in invented(), tries in proptest::collection::vec(proptest::collection::vec(0.0..1.0_f64, 7), 40)) {
        if let Ok(blend) = case.solve() {
            let found: Vec<f64> = blend.shares.iter().map(|share| share.percent / 100.0).collect();
            let best = case.squared_error(&found);
            for weights in tries {
                // Cubed weights reach near the corners; a short step from the found blend tests its neighbourhood.
                let weights: Vec<f64> = weights.iter().take(found.len()).map(|weight| weight.powi(3) + 1e-9).collect();
                let total: f64 = weights.iter().sum();
                for step in [1.0, 0.1, 0.001] {
                    let other: Vec<f64> = found.iter().zip(&weights)
                        .map(|(share, weight)| share * (1.0 - step) + weight / total * step).collect();
                    prop_assert!(!case.keeps_limit(&other) || case.squared_error(&other) >= best - 1e-4 * (1.0 + best));
                }
            }
        }
    }
}
