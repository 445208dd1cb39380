//! Forms of yeast and their gas.

use proptest::prelude::*;
use whybake::science::yeast::{FermentableSugar, YeastForm, fermentation_carbon_dioxide, substitute_yeast};

use crate::published::{Inputs, assert_same, faulty, hold, value};

#[test]
fn published_values() {
    hold("yeast.csv", 7, compute);
}

fn compute(calculation: &str, inputs: &Inputs) -> f64 {
    let instead = |to: YeastForm| substitute_yeast(inputs.get("kg"), YeastForm::Fresh, to).unwrap();
    match calculation {
        "active dry from fresh" => instead(YeastForm::ActiveDry).yeast.value,
        "instant from fresh" => instead(YeastForm::Instant).yeast.value,
        "cream from fresh" => instead(YeastForm::Cream).yeast.value,
        "water with active dry" => instead(YeastForm::ActiveDry).extra_water.value,
        "water with instant" => instead(YeastForm::Instant).extra_water.value,
        "carbon dioxide:hexose" => gas(inputs, FermentableSugar::Hexose),
        "carbon dioxide:disaccharide" => gas(inputs, FermentableSugar::Disaccharide),
        other => panic!("{other}"),
    }
}

fn gas(inputs: &Inputs, sugar: FermentableSugar) -> f64 {
    value(fermentation_carbon_dioxide(inputs.get("g"), sugar))
}

#[test]
fn negative_mass_is_nonsense() {
    let other = substitute_yeast(-1.0, YeastForm::Fresh, YeastForm::Instant);
    assert_eq!(faulty(other), ["mass_kg"]);
    let gas = fermentation_carbon_dioxide(f64::NAN, FermentableSugar::Hexose);
    assert_eq!(faulty(gas), ["sugar_g"]);
}

#[test]
fn cream_yeast_brings_water() {
    let cream = substitute_yeast(3.0, YeastForm::Fresh, YeastForm::Cream).unwrap();
    assert_same(cream.yeast.value, 5.0);
    assert_same(cream.extra_water.value, -2.0);
}

fn any_form() -> impl Strategy<Value = YeastForm> {
    prop::sample::select(vec![YeastForm::Fresh, YeastForm::ActiveDry, YeastForm::Instant, YeastForm::Cream])
}

proptest! {
    #[test]
    fn substitution_goes_there_and_back_and_conserves_mass(
        mass in 0.0..100.0_f64, from in any_form(), to in any_form(),
    ) {
        let there = substitute_yeast(mass, from, to).unwrap();
        assert_same(there.yeast.value + there.extra_water.value, mass);
        let back = substitute_yeast(there.yeast.value, to, from).unwrap();
        assert_same(back.yeast.value, mass);
    }
}
