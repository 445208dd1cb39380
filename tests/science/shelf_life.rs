//! Mould-free shelf life against its published tables.

use proptest::prelude::*;
use whybake::science::mould_free_life::{CAUTION, highest_erh_for, mould_free_life};

use crate::published;

#[test]
fn published_days_come_out() {
    published::hold("mould_free_life.csv", 15, |_, inputs| {
        let life = mould_free_life(inputs.get("erh"), inputs.get("temperature"));
        life.unwrap().days.value
    });
}

#[test]
fn every_figure_carries_the_caution() {
    let life = mould_free_life(80.0, 21.0).unwrap();
    assert_eq!(life.caution, CAUTION);
    assert!(CAUTION.contains("not a statement that the product is safe"));
}

#[test]
fn what_the_equation_does_not_cover_is_said() {
    let remarks = |erh, celsius| mould_free_life(erh, celsius).unwrap().days.outside_domain;
    assert!(remarks(80.0, 24.0).is_empty());
    assert_eq!(remarks(95.0, 24.0), ["ERH 95.0 % is outside the 74-90 % of the equation"]);
    assert_eq!(remarks(80.0, 4.0), ["4.0 Cel is below 21 Cel: no credit is given for the cold"]);
    assert_eq!(remarks(80.0, 35.0), ["35.0 Cel is above 27 Cel: mould may come sooner than computed"]);
}

#[test]
fn nonsense_lists_every_input() {
    let faults = mould_free_life(-1.0, f64::NAN).unwrap_err().faults;
    let inputs: Vec<_> = faults.iter().map(|fault| fault.input.as_str()).collect();
    assert_eq!(inputs, ["erh", "storage_temperature"]);
    assert_eq!(faults[0].message, "`-1` % is not between 0 and 100 %");
    assert_eq!(highest_erh_for(0.0, 99.0).unwrap_err().faults.len(), 2);
}

proptest! {
    #[test]
    fn damper_or_warmer_is_never_longer(erh in 0.0..99.0, more in 0.0..1.0, celsius in 0.0..40.0, warmer in 0.0..5.0) {
        let days = |erh, celsius| mould_free_life(erh, celsius).unwrap().days.value;
        prop_assert!(days(erh + more, celsius) <= days(erh, celsius));
        prop_assert!(days(erh, celsius + warmer) <= days(erh, celsius) * (1.0 + 1e-12));
    }

    #[test]
    fn the_wanted_days_come_back(days in 2.0..60.0, celsius in 0.0..45.0) {
        let erh = highest_erh_for(days, celsius).unwrap().value;
        let back = mould_free_life(erh, celsius).unwrap().days.value;
        prop_assert!((back - days).abs() < 1e-6 * days);
    }
}
