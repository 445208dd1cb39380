//! Soluble solids and cooking down.

use crate::published::{assert_close, faulty};
use proptest::prelude::*;
use whybake::science::filling::{FillingPart, cook_down, soluble_solids};

fn part(kilograms: f64, soluble_solids_percent: f64) -> FillingPart {
    FillingPart { kilograms, soluble_solids_percent }
}

#[test]
fn soluble_solids_by_mass_balance() {
    // Invented batch: 45 kg fruit at 10 %, 55 kg sugar: 59.5 kg of solids in 100 kg.
    let batch = [part(45.0, 10.0), part(55.0, 100.0)];
    assert_close("batch", soluble_solids(&batch).unwrap().value, 59.5, 1e-9);
    let down = cook_down(&batch, 65.0).unwrap();
    assert_close("final mass", down.final_mass.value, 59.5 / 0.65, 1e-9);
    assert_close("evaporated", down.water_to_evaporate.value, 100.0 - 59.5 / 0.65, 1e-9);
    let thinner = cook_down(&batch, 50.0).unwrap().water_to_evaporate;
    assert_close("added", thinner.value, -19.0, 1e-9);
    assert!(!thinner.outside_domain.is_empty());
}

#[test]
fn nonsense_lists_every_fault() {
    assert_eq!(faulty(soluble_solids(&[])), ["parts"]);
    assert_eq!(faulty(soluble_solids(&[part(0.0, 10.0)])), ["parts"]);
    let batch = [part(-1.0, 10.0), part(5.0, f64::NAN)];
    assert_eq!(faulty(cook_down(&batch, 0.0)), ["target", "parts[0].mass", "parts[1].soluble_solids"]);
}

proptest! {
    #[test]
    fn cooking_down_keeps_the_solids(kilograms in 0.1..500.0_f64, solids in 1.0..90.0_f64, target in 1.0..100.0_f64) {
        let down = cook_down(&[part(kilograms, solids)], target).unwrap();
        prop_assert!((down.final_mass.value * target - kilograms * solids).abs() < 1e-6);
        prop_assert!((down.final_mass.value + down.water_to_evaporate.value - kilograms).abs() < 1e-9);
        prop_assert_eq!(down.water_to_evaporate.outside_domain.is_empty(), down.water_to_evaporate.value >= 0.0);
    }
}
