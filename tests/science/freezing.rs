//! Freezing points and ice against published and library values.

use proptest::prelude::*;
use whybake::science::freezing::{freezing_point, freezing_point_of, ice_fraction, ice_water_activity};
use whybake::science::water_activity::CompositionPer100g;

use crate::published::{self, Inputs};
use crate::water_activity::composition;

#[test]
fn published_values_come_out() {
    published::hold("freezing.csv", 40, |calculation, inputs| match calculation {
        "ice_water_activity" => ice_water_activity(inputs.get("temperature")).unwrap().value,
        "freezing_point_of" => freezing_point_of(&composition(inputs)).unwrap().value,
        "frozen_share" => frozen_share(inputs),
        "unfrozen_solids" => {
            let liquid = inputs.get("water") * (1.0 - frozen_share(inputs));
            100.0 * inputs.get("sucrose") / (inputs.get("sucrose") + liquid)
        }
        other => panic!("calculation `{other}`"),
    });
}

fn frozen_share(inputs: &Inputs) -> f64 {
    let ice = ice_fraction(&composition(inputs), inputs.get("temperature")).unwrap();
    ice.frozen_share_of_water.value
}

#[test]
fn nonsense_lists_every_input() {
    let bad = CompositionPer100g { water: -1.0, salt: f64::NAN, ..Default::default() };
    let inputs: Vec<_> = ice_fraction(&bad, 99.0).unwrap_err().faults.into_iter().map(|fault| fault.input).collect();
    assert_eq!(inputs, ["water", "salt", "temperature"]);
    assert!(freezing_point(1.2).is_err());
    assert!(ice_water_activity(1.0).is_err());
    assert_eq!(freezing_point_of(&bad).unwrap_err().faults.len(), 2);
}

#[test]
fn below_the_end_of_freezing_is_said() {
    let syrup = CompositionPer100g { water: 70.0, sucrose: 30.0, ..Default::default() };
    let at = |celsius| ice_fraction(&syrup, celsius).unwrap().ice.outside_domain;
    assert!(at(-18.0).is_empty());
    assert_eq!(at(-35.0), ["-35.0 Cel is below -32 Cel, where no more ice forms: the figure is too high"]);
}

/// A lean dough: 40 water, 43 starch and fibre, 7 protein, 2 sugars, 1 salt; invented, only to see starch hold water.
#[test]
fn starch_keeps_water_from_freezing() {
    let dough = CompositionPer100g {
        water: 40.0,
        glucose: 2.0,
        salt: 1.0,
        starch: 43.0,
        protein: 7.0,
        fat: 7.0,
        ..Default::default()
    };
    let lean = CompositionPer100g { starch: 0.0, protein: 0.0, fat: 57.0, ..dough };
    let frozen = |of: &CompositionPer100g| ice_fraction(of, -18.0).unwrap().frozen_share_of_water.value;
    assert!(frozen(&dough) < frozen(&lean) - 0.2);
    assert!(freezing_point_of(&dough).unwrap().value < freezing_point_of(&lean).unwrap().value);
}

proptest! {
    #[test]
    fn colder_and_weaker_means_more_ice(sucrose in 5.0..50.0, celsius in -30.0..-1.0_f64, starch in 0.0..20.0) {
        let of = |sucrose: f64| CompositionPer100g {
            water: 100.0 - sucrose - starch,
            sucrose,
            starch,
            ..Default::default()
        };
        let share = |sucrose, celsius| ice_fraction(&of(sucrose), celsius).unwrap().frozen_share_of_water.value;
        let here = share(sucrose, celsius);
        prop_assert!((0.0..1.0).contains(&here));
        prop_assert!(share(sucrose, celsius - 0.5) >= here);
        prop_assert!(share(sucrose - 1.0, celsius) >= here);
        prop_assert!(freezing_point_of(&of(sucrose)).unwrap().value < 0.0);
        prop_assert_eq!(share(sucrose, 0.5), 0.0);
    }

    #[test]
    fn the_freezing_point_is_where_ice_has_that_activity(celsius in -39.0..0.0) {
        let activity = ice_water_activity(celsius).unwrap().value;
        prop_assert!((freezing_point(activity).unwrap().value - celsius).abs() < 1e-9);
    }
}
