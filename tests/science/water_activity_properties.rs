//! What physics demands of a water activity, whatever the composition.

use proptest::prelude::*;
use whybake::science::water_activity::{
    AqueousPhase, CompositionPer100g, Solute, SorptionBranch, best_estimate, mixture_constant, moisture_held,
    money_born, raoult, ross, water_activity_of_dry_goods,
};

fn any_solute() -> impl Strategy<Value = Solute> {
    proptest::sample::select(Solute::ALL.to_vec())
}

/// Up to four solutes, at most as many grams as water: there solutions, not melts, are meant.
fn any_phase() -> impl Strategy<Value = AqueousPhase> {
    (20.0..80.0, proptest::collection::vec((any_solute(), 0.0..5.0), 1..5))
        .prop_map(|(water_g, solutes_g)| AqueousPhase { water_g, solutes_g })
}

fn any_composition() -> impl Strategy<Value = CompositionPer100g> {
    let parts = (10.0..40.0, 0.0..20.0, 0.0..8.0, 0.0..4.0, 0.0..2.0, 0.0..20.0, 0.0..5.0);
    parts.prop_map(|(water, sucrose, glucose, glycerol, salt, starch, protein)| CompositionPer100g {
        water,
        sucrose,
        glucose,
        glycerol,
        salt,
        starch,
        protein,
        ..Default::default()
    })
}

proptest! {
    #[test]
    fn more_solute_lowers_it(phase in any_phase(), solute in any_solute(), more in 0.1..5.0) {
        let mut stronger = phase.clone();
        stronger.solutes_g.push((solute, more));
        for equation in [raoult, ross, mixture_constant] {
            let (before, after) = (equation(&phase).unwrap().value, equation(&stronger).unwrap().value);
            prop_assert!(after < before, "{before} {after}");
            prop_assert!((0.0..=1.0).contains(&after));
        }
        prop_assert!(money_born(&stronger).unwrap().value <= money_born(&phase).unwrap().value);
    }

    #[test]
    fn only_ratios_count(phase in any_phase(), scale in 0.01..1000.0) {
        let scaled = AqueousPhase {
            water_g: phase.water_g * scale,
            solutes_g: phase.solutes_g.iter().map(|(solute, grams)| (*solute, grams * scale)).collect(),
        };
        for equation in [raoult, ross, mixture_constant, money_born] {
            prop_assert!((equation(&phase).unwrap().value - equation(&scaled).unwrap().value).abs() < 1e-12);
        }
    }

    #[test]
    fn inert_matter_does_not_count(part in any_composition(), scale in 0.1..1.0) {
        let lean = CompositionPer100g {
            water: part.water * scale,
            sucrose: part.sucrose * scale,
            glucose: part.glucose * scale,
            glycerol: part.glycerol * scale,
            salt: part.salt * scale,
            starch: part.starch * scale,
            protein: part.protein * scale,
            ..part
        };
        let of = |composition: &CompositionPer100g| best_estimate(composition).unwrap().water_activity.value;
        prop_assert!((of(&part) - of(&lean)).abs() < 1e-9);
    }

    /// Where the chosen equation changes with the composition, it may step by its accuracy of 0.001.
    #[test]
    fn the_best_estimate_follows_physics(base in any_composition(), more in 0.1..5.0) {
        let of = |composition: CompositionPer100g| best_estimate(&composition).unwrap().water_activity.value;
        let here = of(base);
        prop_assert!((0.0..=1.0).contains(&here));
        let sweeter = CompositionPer100g { sucrose: base.sucrose + more, ..base };
        let fruitier = CompositionPer100g { fructose: more, ..base };
        let saltier = CompositionPer100g { salt: base.salt + more, ..base };
        let starchier = CompositionPer100g { starch: base.starch + more, ..base };
        for stronger in [sweeter, fruitier, saltier, starchier] {
            prop_assert!(of(stronger) < here + 0.001);
        }
        let wetter = CompositionPer100g { water: base.water + more, ..base };
        prop_assert!(of(wetter) > here - 0.001);
    }

    #[test]
    fn the_water_is_shared_out_completely(base in any_composition()) {
        let best = best_estimate(&base).unwrap();
        let held = moisture_held(best.water_activity.value, SorptionBranch::Desorption).unwrap().value / 100.0;
        prop_assert!((best.water_on_biopolymer - held * base.biopolymer()).abs() < 1e-6);
        prop_assert!((0.0..=base.water).contains(&best.water_on_biopolymer));
        if let Some(crystallised) = best.if_sugar_crystallises {
            prop_assert!(crystallised.value >= best.water_activity.value);
        }
    }

    #[test]
    fn the_isotherm_rises_and_turns_back(activity in 0.0..0.99) {
        for branch in [SorptionBranch::Adsorption, SorptionBranch::Desorption] {
            let moisture = moisture_held(activity, branch).unwrap().value;
            prop_assert!(moisture_held(activity + 0.01, branch).unwrap().value > moisture);
            let back = water_activity_of_dry_goods(moisture, branch).unwrap().value;
            prop_assert!((back - activity).abs() < 1e-9);
        }
    }
}
