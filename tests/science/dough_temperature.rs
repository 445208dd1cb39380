//! Water temperature and ice.

use proptest::prelude::*;
use whybake::science::dough_temperature::{
    AdditiveRule, HeatBalance, HeatItem, IceOrder, IcePlan, SPECIFIC_HEATS, dough_by_additive_rule, friction_factor,
    ice_on_top, ice_replacing_water, water_by_additive_rule, water_by_heat_balance,
};

use crate::published::{Inputs, assert_same, faulty, hold, value};

fn celsius(fahrenheit: f64) -> f64 {
    (fahrenheit - 32.0) / 1.8
}

fn fahrenheit(celsius: f64) -> f64 {
    celsius * 1.8 + 32.0
}

#[test]
fn published_values() {
    hold("dough_temperature.csv", 29, compute);
}

fn compute(calculation: &str, inputs: &Inputs) -> f64 {
    match calculation {
        "water by additive rule" => additive_water(inputs),
        "friction factor" => friction(inputs),
        "water by heat balance" => value(water_by_heat_balance(&balance(inputs))),
        "ice replacing water degF" => ice_kg(ice_replacing_water(&order(inputs, celsius)).unwrap()).0,
        "ice replacing water" => ice_kg(ice_replacing_water(&order(inputs, |it| it)).unwrap()).0,
        "tap water beside ice" => ice_kg(ice_replacing_water(&order(inputs, |it| it)).unwrap()).1,
        "ice on top" => ice_kg(ice_on_top(&order(inputs, |it| it)).unwrap()).0,
        // All the water as ice at 0 °C stands for water at −L/c.
        "melting heat over specific heat of water" => -coldest(0.0),
        "specific heat of ice" => (coldest(0.0) - coldest(-1.0)) * 4.18,
        "specific heat of water" => SPECIFIC_HEATS[0].kj_per_kg_k,
        other => panic!("{other}"),
    }
}

/// Rows up to 30 degrees are Celsius, the trade's Fahrenheit figures are all above.
fn is_fahrenheit(inputs: &Inputs) -> bool {
    inputs.get("dough") > 60.0
}

fn additive_water(inputs: &Inputs) -> f64 {
    let degrees = |name: &str| inputs.get(name);
    if is_fahrenheit(inputs) {
        let rule = AdditiveRule {
            other_celsius: vec![celsius(degrees("flour")), celsius(degrees("room"))],
            friction_kelvin: degrees("friction") / 1.8,
        };
        return fahrenheit(value(water_by_additive_rule(&rule, celsius(degrees("dough")))));
    }
    let rule =
        AdditiveRule { other_celsius: vec![degrees("flour"), degrees("room")], friction_kelvin: degrees("friction") };
    value(water_by_additive_rule(&rule, degrees("dough")))
}

fn friction(inputs: &Inputs) -> f64 {
    let degrees = |name: &str| {
        let value = inputs.get(name);
        if is_fahrenheit(inputs) { celsius(value) } else { value }
    };
    let others = [degrees("flour"), degrees("room")];
    let kelvin = value(friction_factor(&others, degrees("water"), degrees("dough")));
    if is_fahrenheit(inputs) { kelvin * 1.8 } else { kelvin }
}

fn balance(inputs: &Inputs) -> HeatBalance {
    let item = |name: &str, mass_kg: f64, celsius: f64, heat: f64| HeatItem {
        name: name.to_owned(),
        mass_kg,
        celsius,
        specific_heat_kj_per_kg_k: heat,
    };
    HeatBalance {
        items: vec![
            item("flour", inputs.get("flour_kg"), inputs.get("flour"), inputs.get("flour_heat")),
            item("other", inputs.optional("other_kg").unwrap_or(0.0), inputs.get("dough"), 2.0),
        ],
        water_kg: inputs.get("water_kg"),
        dough_celsius: inputs.get("dough"),
        mixing_energy_wh_per_kg: inputs.get("energy"),
        energy_kept_percent: 100.0,
        heat_of_hydration_kj_per_kg: inputs.get("hydration"),
    }
}

fn order(inputs: &Inputs, to_celsius: impl Fn(f64) -> f64) -> IceOrder {
    IceOrder {
        water_kg: inputs.get("water"),
        tap_celsius: to_celsius(inputs.get("tap")),
        wanted_celsius: to_celsius(inputs.get("wanted")),
        ice_celsius: 0.0,
    }
}

fn plain(water_kg: f64, tap_celsius: f64, wanted_celsius: f64) -> IceOrder {
    IceOrder { water_kg, tap_celsius, wanted_celsius, ice_celsius: 0.0 }
}

fn ice_kg(plan: IcePlan) -> (f64, f64) {
    match plan {
        IcePlan::Ice { ice, tap_water } => (ice.value, tap_water.value),
        other => panic!("{other:?}"),
    }
}

/// What all the water as ice of a temperature counts as, °C.
fn coldest(ice_celsius: f64) -> f64 {
    let order = IceOrder { ice_celsius, ..plain(1.0, 10.0, -200.0) };
    match ice_replacing_water(&order).unwrap() {
        IcePlan::NotEnough { short_by, .. } => -200.0 + short_by.value,
        other => panic!("{other:?}"),
    }
}

#[test]
fn preferment_is_the_fourth_factor() {
    let rule = AdditiveRule { other_celsius: vec![20.0, 22.0, 25.0], friction_kelvin: 10.0 };
    assert_same(value(water_by_additive_rule(&rule, 25.0)), 100.0 - 67.0 - 10.0);
}

#[test]
fn water_that_no_tap_gives_is_marked() {
    let rule = AdditiveRule { other_celsius: vec![30.0, 30.0], friction_kelvin: 20.0 };
    let cold = water_by_additive_rule(&rule, 24.0).unwrap();
    assert_same(cold.value, -8.0);
    assert!(cold.outside_domain[0].contains("use ice"), "{cold:?}");
    let rule = AdditiveRule { other_celsius: vec![5.0, 10.0], friction_kelvin: 2.0 };
    let hot = water_by_additive_rule(&rule, 28.0).unwrap();
    assert!(hot.outside_domain[0].contains("harms yeast"), "{hot:?}");
}

#[test]
fn unlikely_friction_factor_is_marked() {
    let friction = friction_factor(&[20.0, 20.0], 40.0, 20.0).unwrap();
    assert_same(friction.value, -20.0);
    assert_eq!(friction.outside_domain.len(), 1);
}

#[test]
fn tap_cold_enough_needs_no_ice() {
    for plan in [ice_replacing_water(&plain(10.0, 12.0, 18.0)), ice_on_top(&plain(10.0, 12.0, 18.0))] {
        match plan.unwrap() {
            IcePlan::NoIce { water } => assert_same(water.value, 18.0),
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn all_the_water_as_ice_is_the_limit() {
    let (ice, tap) = ice_kg(ice_replacing_water(&plain(10.0, 20.0, -80.0)).unwrap());
    assert_same(ice, 10.0);
    assert_same(tap, 0.0);
    match ice_replacing_water(&plain(10.0, 20.0, -85.0)).unwrap() {
        IcePlan::NotEnough { ice, short_by } => {
            assert_same(ice.value, 10.0);
            assert_same(short_by.value, 5.0);
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn more_ice_than_water_on_top_is_marked() {
    let IcePlan::Ice { ice, .. } = ice_on_top(&plain(10.0, 20.0, -40.0)).unwrap() else {
        panic!("no ice");
    };
    assert_same(ice.value, 15.0);
    assert!(ice.outside_domain[0].contains("more ice than water"));
    let never = ice_on_top(&plain(10.0, 20.0, -80.0)).unwrap();
    assert!(matches!(never, IcePlan::NotEnough { .. }));
}

#[test]
fn nonsense_lists_every_fault() {
    let rule = AdditiveRule { other_celsius: Vec::new(), friction_kelvin: f64::NAN };
    assert_eq!(faulty(water_by_additive_rule(&rule, 2500.0)), ["other_celsius", "friction_kelvin", "dough_celsius"]);
    let order = IceOrder { water_kg: -1.0, tap_celsius: 70.0, wanted_celsius: f64::NAN, ice_celsius: 1.0 };
    assert_eq!(faulty(ice_replacing_water(&order)), ["water_kg", "tap_celsius", "wanted_celsius", "ice_celsius"]);
    let balance = HeatBalance {
        items: vec![HeatItem {
            name: "flour".to_owned(),
            mass_kg: -1.0,
            celsius: f64::INFINITY,
            specific_heat_kj_per_kg_k: 1760.0,
        }],
        water_kg: 0.0,
        dough_celsius: 27.0,
        mixing_energy_wh_per_kg: -1.0,
        energy_kept_percent: 120.0,
        heat_of_hydration_kj_per_kg: 15_000.0,
    };
    assert_eq!(faulty(water_by_heat_balance(&balance)).len(), 7);
}

fn mixed(water_celsius: f64, flour: f64, room: f64, friction: f64) -> f64 {
    let rule = AdditiveRule { other_celsius: vec![flour, room], friction_kelvin: friction };
    value(dough_by_additive_rule(&rule, water_celsius))
}

proptest! {
    #[test]
    fn additive_rule_goes_there_and_back(
        dough in 10.0..40.0_f64, flour in 0.0..35.0_f64, room in 5.0..40.0_f64, friction in 0.0..30.0_f64,
    ) {
        let rule = AdditiveRule { other_celsius: vec![flour, room], friction_kelvin: friction };
        let water = value(water_by_additive_rule(&rule, dough));
        if water <= 100.0 {
            assert_same(mixed(water, flour, room, friction), dough);
            assert_same(value(friction_factor(&[flour, room], water, dough)), friction);
        }
    }

    #[test]
    fn warmer_flour_wants_colder_water(flour in 0.0..30.0_f64, more in 0.1..10.0_f64) {
        let water = |flour: f64| {
            let rule = AdditiveRule { other_celsius: vec![flour, 22.0], friction_kelvin: 10.0 };
            value(water_by_additive_rule(&rule, 27.0))
        };
        prop_assert!(water(flour + more) < water(flour));
    }

    #[test]
    fn heat_is_conserved(
        flour_kg in 1.0..200.0_f64, flour in 0.0..35.0_f64, water_kg in 1.0..150.0_f64,
        dough in 10.0..35.0_f64, energy in 0.0..15.0_f64, kept in 0.0..100.0_f64,
    ) {
        let balance = HeatBalance {
            items: vec![HeatItem { name: "flour".to_owned(), mass_kg: flour_kg, celsius: flour, specific_heat_kj_per_kg_k: 1.8 }],
            water_kg,
            dough_celsius: dough,
            mixing_energy_wh_per_kg: energy,
            energy_kept_percent: kept,
            heat_of_hydration_kj_per_kg: 0.0,
        };
        let water = value(water_by_heat_balance(&balance));
        // Straight from the first law: heat in equals heat of the dough.
        let mixing = energy * 3.6 * kept / 100.0 * (flour_kg + water_kg);
        let before = flour_kg * 1.8 * flour + water_kg * 4.18 * water + mixing;
        let after = (flour_kg * 1.8 + water_kg * 4.18) * dough;
        prop_assert!((before - after).abs() < 1e-6 * after.abs().max(1.0));
    }

    #[test]
    fn ice_and_water_mix_to_the_wanted_temperature(
        water_kg in 1.0..300.0_f64, tap in 1.0..35.0_f64, below in 0.1..60.0_f64, ice_celsius in -20.0..0.0_f64,
    ) {
        let wanted = tap - below;
        let order = IceOrder { water_kg, tap_celsius: tap, wanted_celsius: wanted, ice_celsius };
        let (ice, tap_water) = ice_kg(ice_replacing_water(&order).unwrap());
        assert_same(ice + tap_water, water_kg);
        // Ice counts as water at −80 K less half its own temperature.
        let ice_counts_as = -80.0 + 2.1 / 4.18 * ice_celsius;
        let mix = (ice * ice_counts_as + tap_water * tap) / water_kg;
        prop_assert!((mix - wanted).abs() < 1e-6);
        let (on_top, all) = ice_kg(ice_on_top(&order).unwrap());
        let mix = (on_top * ice_counts_as + all * tap) / (on_top + all);
        prop_assert!((mix - wanted).abs() < 1e-6);
    }

    #[test]
    fn colder_water_takes_more_ice(tap in 5.0..30.0_f64, wanted in -50.0..5.0_f64, colder in 0.1..20.0_f64) {
        let ice = |wanted: f64| ice_kg(ice_replacing_water(&plain(50.0, tap, wanted)).unwrap()).0;
        prop_assert!(ice(wanted - colder) > ice(wanted - 0.05));
    }
}
