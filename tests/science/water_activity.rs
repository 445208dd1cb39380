//! Water activity against published values, worked examples and general-purpose libraries.

use whybake::science::boiling::water_boiling_point;
use whybake::science::freezing::freezing_point_of;
use whybake::science::humidity::saturation_vapour_pressure;
use whybake::science::sugar_solubility::{Sugar, solubility};
use whybake::science::water_activity::{
    AqueousPhase, BinarySolution, CompositionPer100g, GroverInput, Solute, SorptionBranch, best_estimate,
    equilibrium_relative_humidity, grover, mixture_constant, moisture_held, money_born, norrish, raoult, ross,
    salt_hand_formula, salt_percent_for, salt_pitzer, sucrose_robinson_stokes, water_activity_of_dry_goods,
};

use crate::published::{self, Inputs};

/// A composition from the inputs of a fact; `temperature` is not part of it.
pub(crate) fn composition(inputs: &Inputs) -> CompositionPer100g {
    let mut composition = CompositionPer100g::default();
    for (name, grams) in inputs.iter() {
        match name {
            "water" => composition.water = grams,
            "sucrose" => composition.sucrose = grams,
            "glucose" => composition.glucose = grams,
            "fructose" => composition.fructose = grams,
            "lactose" => composition.lactose = grams,
            "maltose" => composition.maltose = grams,
            "glucose_syrup_solids" => composition.glucose_syrup_solids = grams,
            "glycerol" => composition.glycerol = grams,
            "sorbitol" => composition.sorbitol = grams,
            "salt" => composition.salt = grams,
            "ethanol" => composition.ethanol = grams,
            "starch" => composition.starch = grams,
            "temperature" => {}
            other => panic!("input `{other}`"),
        }
    }
    composition
}

fn binary(inputs: &Inputs) -> BinarySolution {
    let phase = composition(inputs).aqueous_phase();
    let (solute, solute_g) = *phase.solutes_g.iter().find(|(_, grams)| *grams > 0.0).unwrap();
    BinarySolution { solute, solute_g, water_g: phase.water_g }
}

#[test]
fn published_values_come_out() {
    published::hold("water_activity.csv", 200, |calculation, inputs| {
        let phase = || composition(inputs).aqueous_phase();
        let estimate = match calculation {
            "raoult" => raoult(&phase()),
            "norrish" => norrish(&binary(inputs)),
            "robinson_stokes" => sucrose_robinson_stokes(binary(inputs).molality()),
            "salt_pitzer" => salt_pitzer(binary(inputs).molality()),
            "salt_hand" => salt_hand_formula(salt_percent(inputs)),
            "salt_percent_for" => salt_percent_for(inputs.get("aw")),
            "ross" => ross(&phase()),
            "mixture" => mixture_constant(&phase()),
            "money_born" => money_born(&phase()),
            "grover" => grover(&GroverInput { phase: phase(), polysaccharide_g: 0.0, protein_g: 0.0 }),
            "gab_adsorption" => moisture_held(inputs.get("aw"), SorptionBranch::Adsorption),
            "gab_desorption" => moisture_held(inputs.get("aw"), SorptionBranch::Desorption),
            "dry_goods" => water_activity_of_dry_goods(inputs.get("moisture"), SorptionBranch::Desorption),
            "best" => best_estimate(&composition(inputs)).map(|best| best.water_activity),
            "saturated_sucrose" => Ok(best_estimate(&composition(inputs)).unwrap().if_sugar_crystallises.unwrap()),
            other => panic!("calculation `{other}`"),
        };
        estimate.unwrap().value
    });
}

fn salt_percent(inputs: &Inputs) -> f64 {
    100.0 * inputs.get("salt") / (inputs.get("salt") + inputs.get("water"))
}

/// The same file is recomputed live by `tests/reference_libraries/water.py`.
#[test]
fn libraries_agree_on_the_grid() {
    let rows = published::read("water_grid.csv");
    assert!(rows.len() >= 40);
    for row in rows {
        let number = |name| row.number(name);
        let (input, stored) = (number("input"), number("value"));
        let freezing = |composition| freezing_point_of(&composition).unwrap().value;
        let ours = match row.text("quantity") {
            "salt_water_activity" => {
                salt_pitzer(BinarySolution::from_mass_percent(Solute::Salt, input).molality()).unwrap().value
            }
            "ethanol_water_activity" => {
                best_estimate(&CompositionPer100g { water: 100.0 - input, ethanol: input, ..Default::default() })
                    .unwrap()
                    .water_activity
                    .value
            }
            "water_boiling_point" => water_boiling_point(input).unwrap().value,
            "saturation_pressure" => saturation_vapour_pressure(input).unwrap().value,
            "salt_freezing_point" => {
                freezing(CompositionPer100g { water: 100.0 - input, salt: input, ..Default::default() })
            }
            "glycerol_freezing_point" => {
                freezing(CompositionPer100g { water: 100.0 - input, glycerol: input, ..Default::default() })
            }
            other => panic!("quantity `{other}`"),
        };
        let allowed = match row.text("tolerance").strip_suffix(" relative") {
            Some(relative) => stored * relative.parse::<f64>().unwrap(),
            None => number("tolerance"),
        };
        assert!((ours - stored).abs() <= allowed, "{}: {ours}, {} gives {stored}", row.text("id"), row.text("library"));
    }
}

#[test]
fn the_best_estimate_says_which_equation_it_chose() {
    let chosen = |composition: CompositionPer100g| best_estimate(&composition).unwrap().water_activity.method.name;
    let water = CompositionPer100g { water: 60.0, ..Default::default() };
    assert_eq!(chosen(CompositionPer100g { ..water }), "pure water");
    assert_eq!(chosen(CompositionPer100g { sucrose: 40.0, ..water }), "Robinson-Stokes, sucrose");
    assert_eq!(chosen(CompositionPer100g { salt: 4.0, ..water }), "Pitzer, salt");
    assert_eq!(chosen(CompositionPer100g { sorbitol: 40.0, ..water }), "Norrish, one solute");
    assert_eq!(
        chosen(CompositionPer100g { sucrose: 20.0, glucose: 20.0, ..water }),
        "Norrish with a mixture constant, salt by Ross"
    );
    assert_eq!(chosen(CompositionPer100g { starch: 40.0, ..water }), "GAB isotherm of rice starch");
    assert_eq!(
        chosen(CompositionPer100g { starch: 20.0, sucrose: 20.0, ..water }),
        "Norrish with a mixture constant on the water left by a GAB isotherm"
    );
}

#[test]
fn what_the_equations_do_not_cover_is_said() {
    let remarks = |composition: CompositionPer100g| best_estimate(&composition).unwrap().water_activity.outside_domain;
    let jam = CompositionPer100g { water: 45.0, sucrose: 25.0, glucose: 15.0, fructose: 15.0, ..Default::default() };
    assert!(remarks(jam).is_empty(), "{:?}", remarks(jam));
    let about = |composition, words: &str| remarks(composition).iter().any(|remark| remark.contains(words));
    let sugary = CompositionPer100g { water: 20.0, sucrose: 80.0, ..Default::default() };
    assert!(about(sugary, "below 0.85") && about(sugary, "may crystallise"));
    assert!(about(CompositionPer100g { water: 10.0, salt: 5.0, fat: 85.0, ..Default::default() }, "more salt"));
    assert!(about(CompositionPer100g { water: 80.0, ethanol: 20.0, ..Default::default() }, "20.0 % ethanol"));
    assert!(about(CompositionPer100g { water: 50.0, sucrose: 30.0, ..Default::default() }, "20.0 g of 100 g"));
    let bread = CompositionPer100g {
        water: 38.0,
        glucose: 4.0,
        salt: 1.0,
        starch: 45.0,
        protein: 9.0,
        fat: 3.0,
        ..Default::default()
    };
    assert!(about(bread, "isotherm's fitted 0.11-0.90"));
    assert!(raoult(&sugary.aqueous_phase()).unwrap().outside_domain[0].contains("below 0.97"));
    let salted = AqueousPhase { water_g: 50.0, solutes_g: vec![(Solute::Sucrose, 50.0), (Solute::Salt, 1.0)] };
    assert!(money_born(&salted).unwrap().outside_domain.iter().any(|remark| remark.contains("not counted")));
}

/// Icing: 85 % sugar in 12 % water cannot dissolve; the crystals hold the water activity up.
#[test]
fn crystals_hold_the_water_activity_up() {
    let icing = CompositionPer100g { water: 12.0, sucrose: 85.0, glucose_syrup_solids: 3.0, ..Default::default() };
    let best = best_estimate(&icing).unwrap();
    assert!(best.water_activity.value < 0.5);
    let crystallised = best.if_sugar_crystallises.unwrap().value;
    assert!((0.78..=0.84).contains(&crystallised), "common practice for icing and fondant 0.78-0.84: {crystallised}");
}

/// Crystals leave the solution that the solubility at 25 °C allows.
#[test]
fn crystals_leave_a_saturated_solution() {
    let saturated = |sugar, solute| {
        let percent = solubility(sugar, 25.0).unwrap().value;
        norrish(&BinarySolution::from_mass_percent(solute, percent)).unwrap().value
    };
    let of = |composition| best_estimate(&composition).unwrap().if_sugar_crystallises.unwrap().value;
    let sucrose = CompositionPer100g { water: 20.0, sucrose: 80.0, ..Default::default() };
    let lactose = CompositionPer100g { water: 70.0, lactose: 30.0, ..Default::default() };
    assert!((of(sucrose) - saturated(Sugar::Sucrose, Solute::Sucrose)).abs() < 1e-4);
    assert!((of(lactose) - saturated(Sugar::Lactose, Solute::Lactose)).abs() < 1e-4);
}

#[test]
fn the_norrish_constants_are_the_published_ones() {
    let rows = published::read("norrish_constants.csv");
    for row in &rows {
        let solute = Solute::ALL.into_iter().find(|solute| solute.facts().name == row.text("solute")).unwrap();
        let published: f64 = row.number("constant");
        let natural = if row.text("logarithm") == "decimal" { published * std::f64::consts::LN_10 } else { published };
        assert!((solute.facts().norrish_k.unwrap() - natural).abs() < 0.005, "{}", row.text("solute"));
    }
    let with_constant = Solute::ALL.into_iter().filter(|solute| solute.facts().norrish_k.is_some());
    assert_eq!(with_constant.count(), rows.len());
}

/// From memory: Grover 1947 counts a gram of protein as 1.3 g and a gram of starch as 0.8 g of sucrose.
#[test]
fn grover_counts_protein_and_starch_as_sucrose() {
    let of = |sucrose_g, polysaccharide_g, protein_g| {
        let phase = AqueousPhase { water_g: 40.0, solutes_g: vec![(Solute::Sucrose, sucrose_g)] };
        grover(&GroverInput { phase, polysaccharide_g, protein_g }).unwrap().value
    };
    assert!((of(60.0, 0.0, 0.0) - of(47.0, 0.0, 10.0)).abs() < 1e-12);
    assert!((of(60.0, 0.0, 0.0) - of(52.0, 10.0, 0.0)).abs() < 1e-12);
}

#[test]
fn all_but_dry_matter_is_still_computed() {
    for water in [1e-300, 1e-12, 0.01] {
        for starch in [0.0, 50.0] {
            let dry = CompositionPer100g { water, sucrose: 20.0, salt: 5.0, starch, ..Default::default() };
            let activity = best_estimate(&dry).unwrap().water_activity;
            assert!((0.0..0.1).contains(&activity.value) && !activity.outside_domain.is_empty());
        }
    }
}

#[test]
fn erh_is_a_hundred_times_the_water_activity() {
    assert!((equilibrium_relative_humidity(0.81).unwrap().value - 81.0).abs() < 1e-12);
    let syrup = CompositionPer100g { water: 50.0, sucrose: 50.0, ..Default::default() };
    let best = best_estimate(&syrup).unwrap();
    assert!((best.equilibrium_relative_humidity.value - 100.0 * best.water_activity.value).abs() < 1e-12);
}

#[test]
fn nonsense_lists_every_input() {
    let bad = CompositionPer100g { water: f64::NAN, sucrose: -1.0, starch: f64::INFINITY, ..Default::default() };
    let error = best_estimate(&bad).unwrap_err();
    let inputs: Vec<_> = error.faults.iter().map(|fault| fault.input.as_str()).collect();
    assert_eq!(inputs, ["water", "sucrose", "starch"]);
    let too_much = CompositionPer100g { water: 60.0, sucrose: 60.0, ..Default::default() };
    assert_eq!(
        best_estimate(&too_much).unwrap_err().to_string(),
        "composition: the parts of 100 g add up to `120.0` g"
    );
    assert!(best_estimate(&CompositionPer100g::default()).is_err());
    let phase = AqueousPhase { water_g: 0.0, solutes_g: vec![(Solute::Sucrose, f64::NAN), (Solute::Salt, -2.0)] };
    for result in [raoult(&phase), ross(&phase), mixture_constant(&phase), money_born(&phase)] {
        assert_eq!(result.unwrap_err().faults.len(), 3);
    }
    let grovers = GroverInput { phase, polysaccharide_g: -1.0, protein_g: f64::NAN };
    assert_eq!(grover(&grovers).unwrap_err().faults.len(), 5);
    let brine = BinarySolution { solute: Solute::Salt, solute_g: 5.0, water_g: 0.0 };
    let message = norrish(&brine).unwrap_err().to_string();
    assert_eq!(message, "water: `0` is not above zero; sodium chloride: has no constant Norrish K");
    assert!(sucrose_robinson_stokes(-1.0).is_err());
    assert!(salt_pitzer(f64::NAN).is_err());
    assert!(salt_hand_formula(120.0).is_err());
    assert!(salt_percent_for(1.2).is_err());
    assert!(moisture_held(-0.1, SorptionBranch::Adsorption).is_err());
    assert!(water_activity_of_dry_goods(f64::NAN, SorptionBranch::Adsorption).is_err());
    assert!(equilibrium_relative_humidity(f64::NAN).is_err());
}
