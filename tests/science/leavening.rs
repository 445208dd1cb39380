//! Neutralising values, gas and the balance of soda and acid.

use proptest::prelude::*;
use whybake::science::leavening::{
    AcidDose, Carbonate, GasAmount, LEAVENING_ACIDS, LeaveningBalance, LeaveningFigures, PhDirection, Release,
    SOAPY_RESIDUAL_SODA_PERCENT, acid_for_soda, gas_volume, gas_yield, leavening_acid, leavening_figures,
    powder_carbon_dioxide, soda_for_acid, soda_for_carbon_dioxide, stoichiometric_neutralising_value,
};

use crate::published::{Inputs, assert_same, faulty, hold, read, value};

const SEA_LEVEL_PA: f64 = 101_325.0;

#[test]
fn published_values() {
    hold("leavening.csv", 40, compute);
}

fn compute(calculation: &str, inputs: &Inputs) -> f64 {
    let words: Vec<&str> = calculation.split(':').collect();
    match words[..] {
        ["yield", release, carbonate, gas] => gas_share(release, carbonate, gas),
        ["volume", release, carbonate] => volume(inputs, release, carbonate),
        ["table", name] => leavening_acid(name).unwrap().neutralising_value,
        ["acid for soda"] => value(acid_for_soda(inputs.get("soda"), inputs.get("value"))),
        ["carbon dioxide of powder"] => value(powder_carbon_dioxide(inputs.get("soda_percent"))),
        ["soda for carbon dioxide"] => value(soda_for_carbon_dioxide(inputs.get("percent"))),
        _ => panic!("{}", calculation),
    }
}

fn carbonate(name: &str) -> Carbonate {
    match name {
        "sodium" => Carbonate::SodiumBicarbonate,
        "potassium" => Carbonate::PotassiumBicarbonate,
        "ammonium" => Carbonate::AmmoniumBicarbonate,
        other => panic!("{other}"),
    }
}

fn release(name: &str) -> Release {
    match name {
        "acid" => Release::Acid,
        "heat" => Release::Heat,
        other => panic!("{other}"),
    }
}

fn gas_share(how: &str, what: &str, gas: &str) -> f64 {
    let shares = gas_yield(carbonate(what), release(how));
    match gas {
        "carbon dioxide" => shares.carbon_dioxide.value,
        "ammonia" => shares.ammonia.value,
        "water" => shares.water.value,
        other => panic!("{other}"),
    }
}

fn volume(inputs: &Inputs, how: &str, what: &str) -> f64 {
    let amount = GasAmount {
        carbonate_g: inputs.get("g"),
        celsius: inputs.get("celsius"),
        pressure_pa: SEA_LEVEL_PA,
        with_steam: inputs.optional("steam").is_some(),
    };
    value(gas_volume(carbonate(what), release(how), &amount))
}

#[test]
fn stoichiometry_of_the_acids() {
    let mut checked = 0;
    for row in read("molar_masses.csv") {
        let Ok(equivalents) = row.text("equivalents").parse::<f64>() else {
            continue;
        };
        let number = |column: &str| row.number(column);
        let computed = value(stoichiometric_neutralising_value(equivalents, number("molar_mass")));
        let off = (computed - number("neutralising_value")).abs();
        assert!(off <= number("tolerance") + 1e-9, "{}: {computed}", row.text("substance"));
        checked += 1;
    }
    assert_eq!(checked, 10);
}

#[test]
fn molar_masses_of_the_carbonates() {
    let rows = read("molar_masses.csv");
    for (name, carbonate) in [
        ("sodium_bicarbonate", Carbonate::SodiumBicarbonate),
        ("potassium_bicarbonate", Carbonate::PotassiumBicarbonate),
        ("ammonium_bicarbonate", Carbonate::AmmoniumBicarbonate),
    ] {
        let row = rows.iter().find(|row| row.text("substance") == name).unwrap();
        let published: f64 = row.number("molar_mass");
        assert!((carbonate.molar_mass_g_per_mol() - published).abs() < 0.001, "{name}");
    }
}

#[test]
fn practical_values_lie_near_stoichiometry() {
    // Phosphates and lactone give up fewer protons than counted; nothing gives up a tenth more.
    for row in read("molar_masses.csv") {
        let stoichiometric = row.text("neutralising_value").parse::<f64>();
        if let (Ok(theory), Some(acid)) = (stoichiometric, leavening_acid(row.text("substance"))) {
            let ratio = acid.neutralising_value / theory;
            assert!((0.9..1.1).contains(&ratio), "{}: {ratio}", acid.name);
        }
    }
}

fn balance(soda_g: f64, sapp_g: f64) -> LeaveningFigures {
    leavening_figures(&order(soda_g, sapp_g)).unwrap()
}

fn order(soda_g: f64, sapp_g: f64) -> LeaveningBalance {
    LeaveningBalance {
        soda_g,
        acids: vec![AcidDose { name: "sapp".to_owned(), mass_g: sapp_g, neutralising_value: 72.0 }],
        product_g: 1000.0,
        celsius: 25.0,
        pressure_pa: SEA_LEVEL_PA,
    }
}

#[test]
fn left_over_soda_raises_the_ph() {
    let figures = balance(10.0, 10.0);
    assert_same(figures.soda_neutralised.value, 7.2);
    assert_same(figures.residual_soda.value, 2.8);
    assert_same(figures.residual_soda_percent.value, 0.28);
    assert!(figures.residual_soda_percent.value > SOAPY_RESIDUAL_SODA_PERCENT);
    assert_same(figures.residual_acid_as_soda.value, 0.0);
    // Heat drives half of the carbon dioxide out of the soda that is left: 26.19 %.
    assert!((figures.carbon_dioxide_by_heat.value - 0.733).abs() < 0.001);
    assert_eq!(figures.ph, PhDirection::Raised);
}

#[test]
fn left_over_acid_lowers_the_ph() {
    let figures = balance(10.0, 20.0);
    assert_same(figures.residual_soda.value, 0.0);
    assert_same(figures.residual_acid_as_soda.value, 4.4);
    assert_eq!(figures.ph, PhDirection::Lowered);
    // 10 g of soda with acid give 2.91 L at 25 °C.
    assert!((figures.carbon_dioxide_volume.value - 2912.0).abs() < 3.0);
}

#[test]
fn rounding_of_the_neutralising_value_says_nothing_about_the_ph() {
    assert_eq!(balance(10.0, 13.9).ph, PhDirection::Neutral);
    assert_eq!(balance(0.0, 0.0).ph, PhDirection::Neutral);
}

#[test]
fn nonsense_lists_every_fault() {
    let mut order = order(f64::NAN, -1.0);
    order.acids[0].neutralising_value = 0.0;
    order.product_g = 0.0;
    order.celsius = 900.0;
    order.pressure_pa = 1.0;
    assert_eq!(
        faulty(leavening_figures(&order)),
        ["soda_g", "acids[0].mass_g", "acids[0].neutralising_value", "product_g", "celsius", "pressure_pa",]
    );
    assert_eq!(faulty(acid_for_soda(-1.0, 400.0)), ["soda_kg", "neutralising_value"]);
    assert_eq!(faulty(powder_carbon_dioxide(101.0)), ["soda_percent"]);
    assert_eq!(faulty(soda_for_carbon_dioxide(60.0)), ["carbon_dioxide_percent"]);
}

#[test]
fn steam_below_boiling_is_marked() {
    let amount = GasAmount { carbonate_g: 1.0, celsius: 60.0, pressure_pa: SEA_LEVEL_PA, with_steam: true };
    let cool = gas_volume(Carbonate::AmmoniumBicarbonate, Release::Heat, &amount).unwrap();
    assert_eq!(cool.outside_domain.len(), 1);
}

#[test]
fn names_of_the_acids_are_unique() {
    for acid in LEAVENING_ACIDS {
        let same = LEAVENING_ACIDS.iter().filter(|other| other.name == acid.name);
        assert_eq!(same.count(), 1, "{}", acid.name);
    }
}

proptest! {
    #[test]
    fn acid_for_soda_goes_there_and_back(soda in 0.0..1000.0_f64, neutralising_value in 10.0..200.0_f64) {
        let acid = value(acid_for_soda(soda, neutralising_value));
        assert_same(value(soda_for_acid(acid, neutralising_value)), soda);
    }

    #[test]
    fn powder_goes_there_and_back(soda in 0.0..100.0_f64) {
        let gas = value(powder_carbon_dioxide(soda));
        assert_same(value(soda_for_carbon_dioxide(gas)), soda);
    }

    #[test]
    fn soda_is_conserved(soda in 0.0..100.0_f64, acid in 0.0..100.0_f64) {
        let figures = balance(soda, acid);
        assert_same(figures.soda_neutralised.value + figures.residual_soda.value, soda);
        assert_same(figures.soda_neutralised.value + figures.residual_acid_as_soda.value, acid * 0.72);
        prop_assert!(figures.residual_soda.value * figures.residual_acid_as_soda.value == 0.0);
    }

    #[test]
    fn more_acid_never_leaves_more_soda(soda in 0.1..100.0_f64, acid in 0.0..100.0_f64, more in 0.0..50.0_f64) {
        let (less, rest) = (balance(soda, acid), balance(soda, acid + more));
        prop_assert!(rest.residual_soda.value <= less.residual_soda.value);
        prop_assert!(rest.carbon_dioxide.value >= less.carbon_dioxide.value);
    }

    #[test]
    fn gas_grows_with_temperature(celsius in -10.0..200.0_f64, more in 0.1..50.0_f64) {
        let volume = |celsius: f64| {
            let amount = GasAmount { carbonate_g: 1.0, celsius, pressure_pa: SEA_LEVEL_PA, with_steam: false };
            value(gas_volume(Carbonate::SodiumBicarbonate, Release::Acid, &amount))
        };
        prop_assert!(volume(celsius + more) > volume(celsius));
    }
}

#[test]
fn masses_of_a_carbonate_add_up() {
    // Ammonium bicarbonate leaves nothing behind.
    let gases = gas_yield(Carbonate::AmmoniumBicarbonate, Release::Heat);
    let sum = gases.carbon_dioxide.value + gases.ammonia.value + gases.water.value;
    assert!((sum - 100.0).abs() < 0.01, "{sum}");
}
