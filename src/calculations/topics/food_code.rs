//! Whether water activity and pH call for time and temperature control.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, choice, number, word};
use crate::calculations::outcome::Outcome;
use crate::calculations::values::Values;
use crate::science::Nonsense;
use crate::science::food_code::{Reading, Table, Treatment, designation};

const TREATMENTS: &[Choice] = &[
    word("heat_treated_then_packaged", "heat-treated to destroy vegetative cells and then packaged: Table A"),
    word("not_heat_treated", "not heat-treated: Table B"),
    word("heat_treated_not_packaged", "heat-treated but not packaged: Table B"),
];

pub(super) const CALCULATIONS: &[Calculation] = &[Calculation {
    name: "food_code_category",
    title: "Category by pH and water activity, Food Code Tables A and B",
    description: "Looks the finished food up in the interaction tables of the FDA Food Code. The wording of a table is no \
        finding that a product is safe; the local food authority and the code in force decide.",
    inputs: &[
        number("ph", "[pH]", (0.0, 14.0), "equilibrium pH of the finished food"),
        number("water_activity", "1", (0.0, 1.0), "water activity of the finished food"),
        choice("treatment", TREATMENTS, "how the food was treated: this picks the table"),
    ],
    figures: &[],
    example: r#"{"ph": 4.4, "water_activity": 0.9, "treatment": "not_heat_treated"}"#,
    science: &["food_code::designation"],
    renamed: &[],
    compute: category,
}];

fn category(values: &Values) -> Result<Outcome, Nonsense> {
    let treatments = [
        ("heat_treated_then_packaged", Treatment::HeatTreatedThenPackaged),
        ("not_heat_treated", Treatment::NotHeatTreated),
        ("heat_treated_not_packaged", Treatment::HeatTreatedNotPackaged),
    ];
    let outcome = designation(&Reading {
        ph: values.number("ph"),
        water_activity: values.number("water_activity"),
        treatment: values.choice("treatment", &treatments)?,
    })?;
    let table = match outcome.table {
        Table::A => "Table A",
        Table::B => "Table B",
    };
    Ok(Outcome::default()
        .remark(format!(
            "{table}, water activity {}, pH {}: {}",
            outcome.water_activity_band,
            outcome.ph_band,
            outcome.designation.wording()
        ))
        .remark(format!("{} ({})", outcome.method.name, outcome.method.source))
        .remark(format!("domain: {}", outcome.method.domain))
        .remark(outcome.caution))
}
