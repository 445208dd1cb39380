//! Air humidity against published tables and against stored values of general-purpose libraries.

use proptest::prelude::*;
use whybake::science::humidity::{
    BulbReading, air_condition, dew_point, saturation_vapour_pressure, standard_pressure, wet_bulb_for,
};

use crate::published::{self, Row};

fn reading(dry_bulb_celsius: f64, wet_bulb_celsius: f64, pressure_pascal: f64) -> BulbReading {
    BulbReading { dry_bulb_celsius, wet_bulb_celsius, pressure_pascal }
}

#[test]
fn published_values_come_out() {
    published::hold("humidity.csv", 50, |calculation, inputs| {
        let get = |name| inputs.get(name);
        let air = || air_condition(reading(get("dry"), get("wet"), get("pressure"))).unwrap();
        match calculation {
            "saturation_pressure" => saturation_vapour_pressure(get("temperature")).unwrap().value,
            "relative_humidity" => air().relative_humidity.value,
            "dew_point" => air().dew_point.value,
            "dew_point_of_rh" => dew_point(get("dry"), get("rh")).unwrap().value,
            "wet_bulb" => wet_bulb_for(get("dry"), get("rh"), get("pressure")).unwrap().value,
            "humidity_ratio" => air().humidity_ratio.value,
            "standard_pressure" => standard_pressure(get("altitude")).unwrap().value,
            other => panic!("calculation `{other}`"),
        }
    });
}

/// The same file is recomputed live by `tests/reference_libraries/humidity.py`.
#[test]
fn libraries_agree_on_the_grid() {
    let rows = published::read("humidity_grid.csv");
    assert!(rows.len() >= 100);
    for row in rows {
        let number = |name| row.number(name);
        let (stored, ours) = (number("value"), on_grid(&row));
        let allowed = match row.text("quantity") {
            "saturation_pressure" => number("tolerance") * stored,
            _ => number("tolerance"),
        };
        assert!((ours - stored).abs() <= allowed, "{}: {ours}, {} gives {stored}", row.text("id"), row.text("library"));
    }
}

fn on_grid(row: &Row) -> f64 {
    let number = |name| row.number(name);
    let air = || {
        let of = reading(number("dry_bulb_celsius"), number("wet_bulb_celsius"), number("pressure_pascal"));
        air_condition(of).unwrap()
    };
    match row.text("quantity") {
        "relative_humidity" => air().relative_humidity.value,
        "dew_point" => air().dew_point.value,
        "wet_bulb" => {
            let humidity = number("relative_humidity_percent");
            wet_bulb_for(number("dry_bulb_celsius"), humidity, number("pressure_pascal")).unwrap().value
        }
        "saturation_pressure" => saturation_vapour_pressure(number("dry_bulb_celsius")).unwrap().value,
        "standard_pressure" => standard_pressure(number("altitude_metres")).unwrap().value,
        other => panic!("quantity `{other}`"),
    }
}

#[test]
fn a_depression_of_3_kelvin_is_near_80_percent() {
    for dry in 27..=43 {
        let percent = air_condition(reading(f64::from(dry), f64::from(dry - 3), 101_325.0)).unwrap();
        assert!((percent.relative_humidity.value - 80.7).abs() < 3.0);
    }
}

#[test]
fn nonsense_lists_every_input() {
    let faults = air_condition(reading(38.0, 41.0, 0.0)).unwrap_err().faults;
    let inputs: Vec<_> = faults.iter().map(|fault| fault.input.as_str()).collect();
    assert_eq!(inputs, ["wet_bulb", "pressure", "wet_bulb"]);
    assert_eq!(faults[0].message, "`41` Cel is above the dry bulb of `38` Cel");
    let faults = air_condition(reading(f64::NAN, f64::NAN, f64::NAN)).unwrap_err().faults;
    assert_eq!(faults.len(), 3);
    let dry_air = air_condition(reading(60.0, 5.0, 101_325.0)).unwrap_err();
    assert_eq!(dry_air.to_string(), "wet_bulb: `5` Cel is lower than dry air could bring it");
    assert_eq!(dew_point(f64::INFINITY, 0.0).unwrap_err().faults.len(), 2);
    assert_eq!(wet_bulb_for(-300.0, 120.0, f64::NAN).unwrap_err().faults.len(), 3);
    assert!(saturation_vapour_pressure(201.0).is_err());
    assert!(standard_pressure(f64::NAN).is_err());
}

proptest! {
    #[test]
    fn a_wetter_wick_means_damper_air(dry in 5.0..60.0, share in 0.5..0.95, pressure in 80_000.0..105_000.0) {
        let wet = dry * share;
        if let Ok(air) = air_condition(reading(dry, wet, pressure)) {
            let damper = air_condition(reading(dry, wet + 0.1, pressure)).unwrap();
            prop_assert!(damper.relative_humidity.value > air.relative_humidity.value);
            prop_assert!(damper.dew_point.value > air.dew_point.value);
            prop_assert!((0.0..=100.0).contains(&air.relative_humidity.value));
            prop_assert!(air.dew_point.value <= wet + 1e-6);
        }
    }

    #[test]
    fn the_wet_bulb_set_gives_the_humidity_wanted(dry in 5.0..80.0, percent in 40.0..100.0) {
        let wet = wet_bulb_for(dry, percent, 101_325.0).unwrap().value;
        let back = air_condition(reading(dry, wet, 101_325.0)).unwrap();
        prop_assert!((back.relative_humidity.value - percent).abs() < 1e-6);
        let direct = dew_point(dry, percent).unwrap().value;
        prop_assert!((back.dew_point.value - direct).abs() < 1e-6);
    }

    #[test]
    fn equal_bulbs_mean_saturated_air(dry in -20.0..90.0) {
        let air = air_condition(reading(dry, dry, 101_325.0)).unwrap();
        prop_assert!((air.relative_humidity.value - 100.0).abs() < 1e-6);
        prop_assert!((air.dew_point.value - dry).abs() < 1e-6);
    }
}
