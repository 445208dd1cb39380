//! Air of the proofer, volume, spread, bake loss, gelatinisation, evaporation.

use proptest::prelude::*;
use whybake::science::humidity::{AirCondition, BulbReading, air_condition, dew_point, wet_bulb_for};
use whybake::science::proof_bake::{
    CookieStack, bake_loss, dough_for_baked_mass, evaporation_heat, evaporative_cooling, specific_volume,
    spread_factor, volume_yield, wheat_starch_onset,
};

use crate::published::{Inputs, assert_same, faulty, hold, value};

const STANDARD: f64 = 101_325.0;

fn air(dry_bulb_celsius: f64, wet_bulb_celsius: f64) -> AirCondition {
    air_condition(BulbReading { dry_bulb_celsius, wet_bulb_celsius, pressure_pascal: STANDARD }).unwrap()
}

#[test]
fn published_values() {
    hold("proof_bake.csv", 50, compute);
}

fn compute(calculation: &str, inputs: &Inputs) -> f64 {
    let of = |name: &str| inputs.get(name);
    value(match calculation {
        "relative humidity" => return air(of("dry"), of("wet")).relative_humidity.value,
        "dew point from wet bulb" => return air(of("dry"), of("wet")).dew_point.value,
        "wet bulb" => wet_bulb_for(of("dry"), of("rh"), STANDARD),
        "dew point" => dew_point(of("dry"), of("rh")),
        "bake loss" => bake_loss(of("dough"), of("baked")),
        "extra dough" => {
            return value(dough_for_baked_mass(of("baked"), of("loss"))) - of("baked");
        }
        "spread factor" => spread_factor(&CookieStack {
            width_mm: of("width"),
            thickness_mm: of("thickness"),
            pressure_correction: 1.0,
        }),
        "specific volume" => specific_volume(of("volume"), of("mass")),
        "volume yield" => volume_yield(of("volume"), of("flour")),
        "latent heat" => evaporation_heat(1.0, of("celsius")),
        "gelatinisation onset low" => wheat_starch_onset(of("sucrose")).map(|onset| onset.low),
        "gelatinisation onset high" => wheat_starch_onset(of("sucrose")).map(|onset| onset.high),
        other => panic!("{other}"),
    })
}

#[test]
fn more_sugar_than_was_studied_gives_a_marked_lower_bound() {
    let onset = wheat_starch_onset(70.0).unwrap();
    assert_same(onset.low.value, 88.0);
    assert_eq!(onset.high.outside_domain, ["70 % sucrose is above the 60 % studied: a lower bound"]);
}

#[test]
fn one_percent_of_water_cools_bread_by_about_eight_kelvins() {
    // 0.01 × 2305 kJ/kg over 2.76 kJ/(kg K) at 80 °C.
    let drop = value(evaporative_cooling(1.0, 80.0, 2.76));
    assert!((drop - 8.35).abs() < 0.02, "{drop}");
    assert_eq!(evaporative_cooling(20.0, 80.0, 2.76).unwrap().outside_domain.len(), 1);
}

#[test]
fn nonsense_lists_every_fault() {
    assert_eq!(faulty(bake_loss(500.0, 550.0)), ["baked_g"]);
    assert_eq!(faulty(bake_loss(f64::NAN, -1.0)), ["dough_g", "baked_g"]);
    assert_eq!(faulty(dough_for_baked_mass(0.0, 100.0)), ["baked_g", "bake_loss_percent"]);
    let stack = CookieStack { width_mm: 0.0, thickness_mm: f64::NAN, pressure_correction: 10.0 };
    assert_eq!(faulty(spread_factor(&stack)), ["width_mm", "thickness_mm", "pressure_correction"]);
    assert_eq!(faulty(wheat_starch_onset(-1.0)), ["sucrose_in_liquid_percent"]);
    assert_eq!(faulty(specific_volume(-1.0, 0.0)), ["volume_ml", "mass_g"]);
}

#[test]
fn brick_is_marked() {
    assert_eq!(specific_volume(0.45, 1.0).unwrap().outside_domain.len(), 1);
}

proptest! {
    #[test]
    fn bake_loss_goes_there_and_back(baked in 1.0..5000.0_f64, loss in 0.0..60.0_f64) {
        let dough = value(dough_for_baked_mass(baked, loss));
        assert_same(value(bake_loss(dough, baked)), loss);
    }

    #[test]
    fn more_sugar_sets_later(sugar in 0.0..60.0_f64, more in 0.01..40.0_f64) {
        let one = wheat_starch_onset(sugar).unwrap();
        let other = wheat_starch_onset((sugar + more).min(100.0)).unwrap();
        prop_assert!(one.low.value <= other.low.value && one.high.value <= other.high.value);
        prop_assert!(one.low.value < one.high.value);
    }

    #[test]
    fn flatter_cookies_spread_more(width in 100.0..800.0_f64, thickness in 20.0..120.0_f64) {
        let spread = |thickness_mm: f64| {
            value(spread_factor(&CookieStack { width_mm: width, thickness_mm, pressure_correction: 1.0 }))
        };
        prop_assert!(spread(thickness * 0.9) > spread(thickness));
    }
}
