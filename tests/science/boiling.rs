//! Boiling temperatures against published tables.

use proptest::prelude::*;
use whybake::science::boiling::{
    Place, boiling_point_from_water_activity, boiling_point_rise, cook_end_point, solids_at_rise, soluble_solids_at,
    water_boiling_point,
};
use whybake::science::humidity::standard_pressure;
use whybake::science::water_activity::{BinarySolution, Solute, norrish};

use crate::published::{self, assert_close, faulty, value};

const STANDARD: f64 = 101_325.0;

/// Thermometer reading, °C, at the end point under a pressure, Pa.
fn end_point(solids: f64, pascal: f64) -> f64 {
    let cook = cook_end_point(solids, Place::PressurePascal(pascal)).unwrap();
    cook.end_point.value
}

#[test]
fn published_values_come_out() {
    published::hold("boiling.csv", 55, |calculation, inputs| {
        let of = |name| inputs.get(name);
        match calculation {
            "elevation" => value(boiling_point_rise(of("sucrose"))),
            "elevation_by_activity" => elevation_by_activity(of("sucrose")),
            "cook_end_point" => end_point(of("solids"), of("pressure")),
            "water_at_altitude" => {
                let pressure = value(standard_pressure(of("altitude")));
                value(water_boiling_point(pressure))
            }
            "saturation_kelvin" => value(water_boiling_point(of("pressure"))) + 273.15,
            other => panic!("calculation `{other}`"),
        }
    });
}

fn elevation_by_activity(sucrose_percent: f64) -> f64 {
    let syrup = BinarySolution::from_mass_percent(Solute::Sucrose, sucrose_percent);
    let activity = value(norrish(&syrup));
    value(boiling_point_from_water_activity(activity, STANDARD)) - value(water_boiling_point(STANDARD))
}

#[test]
fn cook_end_point_moves_with_the_altitude() {
    let at = |metres| cook_end_point(65.0, Place::AltitudeMetres(metres)).unwrap();
    let (sea, high) = (at(0.0), at(1524.0));
    assert_close("rise", high.rise.value, sea.rise.value, 1e-9);
    let lower = sea.end_point.value - high.end_point.value;
    assert_close("5 K in 1524 m", lower, 5.1, 0.1);
    assert!(sea.end_point.outside_domain.is_empty());
    assert!(!at(3000.0).end_point.outside_domain.is_empty());
    assert!(sea.caution.contains("burn"));
}

#[test]
fn nonsense_lists_every_fault() {
    assert_eq!(faulty(cook_end_point(101.0, Place::PressurePascal(f64::NAN))), ["soluble_solids", "pressure"]);
    assert_eq!(faulty(cook_end_point(101.0, Place::AltitudeMetres(99_999.0))), ["soluble_solids", "altitude"]);
    assert_eq!(faulty(boiling_point_from_water_activity(1.1, 0.0)), ["water_activity", "pressure"]);
    assert_eq!(faulty(soluble_solids_at(f64::NAN, Place::PressurePascal(0.0))), ["boiling_temperature", "pressure"]);
    assert_eq!(faulty(water_boiling_point(-1.0)), ["pressure"]);
    assert_eq!(faulty(boiling_point_rise(f64::NAN)), ["soluble_solids"]);
    assert_eq!(faulty(solids_at_rise(-1.0)), ["rise"]);
}

#[test]
fn a_reading_below_boiling_water_is_refused() {
    let refusal = soluble_solids_at(90.0, Place::PressurePascal(STANDARD)).unwrap_err();
    assert_eq!(refusal.to_string(), "boiling_temperature: -10.0 K above boiling water is outside the table's 0-13.9 K");
}

#[test]
fn beyond_the_table_is_said() {
    let inside = boiling_point_rise(70.0).unwrap();
    assert!(inside.outside_domain.is_empty());
    let beyond = boiling_point_rise(90.0).unwrap();
    assert_eq!(beyond.outside_domain, ["90.0 % sucrose is above the table's 82 %: Norrish water activity used"]);
    let solids = solids_at_rise(20.0).unwrap();
    assert_eq!(solids.outside_domain, ["20.0 K is above the table's 13.9 K: the solids are at least this"]);
}

proptest! {
    #[test]
    fn stronger_syrup_and_higher_pressure_boil_hotter(solids in 0.0..81.0, pressure in 60_000.0..105_000.0) {
        prop_assert!(end_point(solids + 0.5, pressure) > end_point(solids, pressure));
        prop_assert!(end_point(solids, pressure + 500.0) > end_point(solids, pressure));
    }

    #[test]
    fn stronger_syrup_never_boils_cooler_beyond_the_table(solids in 80.0..94.0, more in 0.01..1.0) {
        prop_assert!(end_point(solids + more, STANDARD) >= end_point(solids, STANDARD));
    }

    #[test]
    fn the_rise_gives_back_the_solids(solids in 0.0..82.0) {
        let rise = value(boiling_point_rise(solids));
        prop_assert!((value(solids_at_rise(rise)) - solids).abs() < 1e-9);
    }

    #[test]
    fn the_reading_gives_back_the_solids(solids in 1.0..81.9, pressure in 60_000.0..105_000.0) {
        let place = Place::PressurePascal(pressure);
        let reading = end_point(solids, pressure);
        prop_assert!((value(soluble_solids_at(reading, place)) - solids).abs() < 1e-6);
    }

    #[test]
    fn water_boils_cooler_the_higher_the_kettle(metres in 0.0..4000.0, more in 1.0..1000.0) {
        let boils = |metres| cook_end_point(0.0, Place::AltitudeMetres(metres)).unwrap().water.value;
        prop_assert!(boils(metres + more) < boils(metres));
    }
}
