//! Enzymes of raw fruit against the figures computed from the published constants.

use crate::published::{self, assert_close, faulty};
use proptest::prelude::*;
use whybake::science::filling::{Heating, Protease, fruit_protease, minutes_to_reduce};

fn protease(name: &str) -> Protease {
    match name {
        "bromelain" => Protease::Bromelain,
        "papain" => Protease::Papain,
        "actinidin" => Protease::Actinidin,
        other => panic!("unknown protease {other}"),
    }
}

#[test]
fn decimal_reduction_times_and_half_lives() {
    let rows = published::read("fruit_proteases.csv").into_iter().filter(|row| row.text("quantity") != "hold");
    for row in rows {
        let reductions = if row.text("quantity") == "half-life" { 2.0_f64.log10() } else { 1.0 };
        let celsius = row.number("celsius");
        let minutes = minutes_to_reduce(protease(row.text("protease")), celsius, reductions).unwrap().unwrap();
        let case = format!("{} at {celsius} °C", row.text("protease"));
        assert_close(&case, minutes.value, row.number("value"), row.rounding("value"));
        assert_eq!(row.text("note") == "extrapolated", !minutes.outside_domain.is_empty(), "{case}");
    }
}

#[test]
fn stated_holds_keep_the_rule() {
    let rows = published::read("fruit_proteases.csv").into_iter().filter(|row| row.text("quantity") == "hold");
    for row in rows {
        let heating = Heating {
            protease: protease(row.text("protease")),
            celsius: row.number("celsius"),
            minutes: row.number("value"),
        };
        assert!(fruit_protease(&heating).unwrap().keeps_rule);
    }
}

#[test]
fn no_kinetics_means_unknown_not_zero() {
    for protease in [Protease::Actinidin, Protease::Ficin] {
        let heating = Heating { protease, celsius: 20.0, minutes: 1.0 };
        let inactivation = fruit_protease(&heating).unwrap();
        assert!(inactivation.remaining.is_none() && inactivation.decimal_reductions.is_none());
        assert!(!inactivation.keeps_rule);
        assert!(minutes_to_reduce(protease, 70.0, 3.0).unwrap().is_none());
    }
}

#[test]
fn the_rules_with_kinetics_give_three_decimal_reductions() {
    for protease in [Protease::Bromelain, Protease::Papain] {
        let rule = protease.rule();
        let heating = Heating { protease, celsius: rule.celsius, minutes: rule.minutes };
        let inactivation = fruit_protease(&heating).unwrap();
        assert!(inactivation.decimal_reductions.unwrap().value >= 3.0, "{protease:?}");
        assert!(inactivation.remaining.unwrap().value <= 0.1, "{protease:?}");
        assert!(inactivation.keeps_rule);
    }
}

#[test]
fn papain_outlives_bromelain() {
    let left = |protease| {
        let heating = Heating { protease, celsius: 70.0, minutes: 3.0 };
        fruit_protease(&heating).unwrap().remaining.unwrap().value
    };
    assert!(left(Protease::Papain) > 90.0 && left(Protease::Bromelain) < 0.1);
}

#[test]
fn nonsense_lists_every_fault() {
    let heating = Heating { protease: Protease::Ficin, celsius: f64::NAN, minutes: -1.0 };
    assert_eq!(faulty(fruit_protease(&heating)), ["temperature", "time"]);
    assert_eq!(faulty(minutes_to_reduce(Protease::Papain, 999.0, 0.0)), ["temperature", "decimal_reductions"]);
}

proptest! {
    #[test]
    fn hotter_and_longer_never_leaves_more(celsius in 20.0..100.0_f64, minutes in 0.0..60.0_f64, more in 0.0..20.0_f64) {
        for protease in [Protease::Bromelain, Protease::Papain] {
            let left = |celsius, minutes| {
                fruit_protease(&Heating { protease, celsius, minutes }).unwrap().remaining.unwrap().value
            };
            let now = left(celsius, minutes);
            prop_assert!((0.0..=100.0).contains(&now));
            prop_assert!(left(celsius + more, minutes) <= now);
            prop_assert!(left(celsius, minutes + more) <= now);
        }
    }

    #[test]
    fn time_and_reductions_are_inverse(celsius in 55.0..67.0_f64, reductions in 0.1..6.0_f64) {
        let minutes = minutes_to_reduce(Protease::Bromelain, celsius, reductions).unwrap().unwrap().value;
        let heating = Heating { protease: Protease::Bromelain, celsius, minutes };
        let back = fruit_protease(&heating).unwrap().decimal_reductions.unwrap().value;
        prop_assert!((back - reductions).abs() < 1e-9);
    }
}
