//! How much sugar stays dissolved.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, choice, number, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::science::sugar_solubility::{Sugar, solubility};

const SUGARS: &[Choice] = &[
    word("sucrose", "sucrose"),
    word("glucose", "glucose (dextrose), as anhydrous"),
    word("fructose", "fructose"),
    word("lactose", "lactose, final solubility"),
    word("maltose", "maltose"),
];

pub(super) const CALCULATIONS: &[Calculation] = &[Calculation {
    name: "sugar_solubility",
    title: "Solubility of a sugar",
    description: "How much of one sugar alone stays dissolved in water: beyond it, syrup, icing or filling may crystallise. A \
        second sugar changes the limit of the first.",
    inputs: &[choice("sugar", SUGARS, "the sugar"), number("temperature", "Cel", (0.0, 100.0), "temperature")],
    figures: &[figure("solubility", "%", "sugar in the saturated solution, by mass")],
    example: r#"{"sugar": "sucrose", "temperature": 20}"#,
    science: &["sugar_solubility::solubility"],
    renamed: &[],
    compute: |values| {
        let sugars = [
            ("sucrose", Sugar::Sucrose),
            ("glucose", Sugar::Glucose),
            ("fructose", Sugar::Fructose),
            ("lactose", Sugar::Lactose),
            ("maltose", Sugar::Maltose),
        ];
        let sugar = values.choice("sugar", &sugars)?;
        Ok(Outcome::of("solubility", solubility(sugar, values.number("temperature"))?))
    },
}];
