//! Solubility of sugars against published tables.

use proptest::prelude::*;
use whybake::science::sugar_solubility::{Sugar, solubility};

use crate::published;

const SUGARS: [Sugar; 5] = [Sugar::Sucrose, Sugar::Glucose, Sugar::Fructose, Sugar::Lactose, Sugar::Maltose];

#[test]
fn published_values_come_out() {
    published::hold("sugar_solubility.csv", 50, |calculation, inputs| {
        let sugar = match calculation {
            "sucrose" => Sugar::Sucrose,
            "glucose" => Sugar::Glucose,
            "fructose" => Sugar::Fructose,
            "lactose" => Sugar::Lactose,
            "maltose" => Sugar::Maltose,
            other => panic!("sugar `{other}`"),
        };
        solubility(sugar, inputs.get("temperature")).unwrap().value
    });
}

#[test]
fn outside_the_table_is_said_and_nonsense_refused() {
    let cold = solubility(Sugar::Fructose, 5.0).unwrap();
    assert_eq!(cold.value, 78.9);
    assert_eq!(cold.outside_domain, ["5.0 Cel is outside the table's 20-50 Cel"]);
    assert!(solubility(Sugar::Sucrose, f64::NAN).is_err());
    assert!(solubility(Sugar::Sucrose, 101.0).is_err());
}

proptest! {
    #[test]
    fn warmth_dissolves_more(celsius in 0.0..99.0, which in 0_usize..5) {
        let percent = |celsius| solubility(SUGARS[which], celsius).unwrap().value;
        prop_assert!(percent(celsius + 1.0) >= percent(celsius));
        prop_assert!((0.0..100.0).contains(&percent(celsius)));
    }
}
