//! Chemical leavening: acid for soda, the balance of both, gas.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, DefaultValue, Input, boolean, choice, number, percent, rows, text, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::{Values, nonsense};
use crate::science::Nonsense;
use crate::science::leavening::{
    AcidDose, Carbonate, GasAmount, LeaveningBalance, PhDirection, Release, SOAPY_RESIDUAL_SODA_PERCENT, acid_for_soda,
    gas_volume, gas_yield, leavening_acid, leavening_figures, powder_carbon_dioxide, soda_for_acid,
    soda_for_carbon_dioxide, stoichiometric_neutralising_value,
};

const MASS: (f64, f64) = (0.0, 1_000_000.0);
const PRESSURE: (f64, f64) = (50_000.0, 200_000.0);
const SEA_LEVEL: &str = "standard atmosphere at sea level, 101 325 Pa (definition)";

/// The acids of `science::leavening::LEAVENING_ACIDS`.
const ACIDS: &[Choice] = &[
    word("mcp", "monocalcium phosphate monohydrate"),
    word("amcp", "monocalcium phosphate, anhydrous, coated"),
    word("sapp", "sodium acid pyrophosphate"),
    word("salp", "sodium aluminium phosphate"),
    word("dcpd", "dicalcium phosphate dihydrate"),
    word("sas", "sodium aluminium sulfate"),
    word("dmp", "dimagnesium phosphate"),
    word("fumaric_acid", "fumaric acid"),
    word("cream_of_tartar", "potassium hydrogen tartrate"),
    word("gdl", "glucono-delta-lactone"),
    word("citric_acid", "citric acid, anhydrous"),
    word("tartaric_acid", "tartaric acid"),
    word("lactic_acid", "lactic acid, pure"),
    word("adipic_acid", "adipic acid"),
];
const CARBONATES: &[Choice] = &[
    word("sodium_bicarbonate", "baking soda"),
    word("potassium_bicarbonate", "where sodium is to be low"),
    word("ammonium_bicarbonate", "only for thin dry goods, from which all ammonia leaves"),
];
const RELEASES: &[Choice] = &[word("acid", "by enough acid"), word("heat", "by heat alone")];

const ACID: Input = choice("acid", ACIDS, "leavening acid of the table; give it or `neutralising_value`").optional();
const NEUTRALISING: Input = number(
    "neutralising_value",
    "%",
    (0.0, 300.0),
    "kg of soda that 100 kg of the acid neutralise, from its data sheet; comes before that of the table",
)
.optional();
const CARBONATE: Input = choice("carbonate", CARBONATES, "leavener");
const RELEASE: Input = choice("release", RELEASES, "how the gas is set free");

const DOSE: &[Input] = &[
    text("name", "name of the acid, as it should come back").optional(),
    number("mass", "g", MASS, "mass of the acid, that of baking powders included"),
    ACID,
    NEUTRALISING,
];

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "acid_for_soda",
        title: "Leavening acid for a mass of soda",
        description: "Leavening acid that neutralises a mass of baking soda, by its neutralising value.",
        inputs: &[number("soda", "kg", MASS, "sodium bicarbonate"), ACID, NEUTRALISING],
        figures: &[figure("acid", "kg", "leavening acid")],
        example: r#"{"soda": {"value": 500, "unit": "g"}, "acid": "sapp"}"#,
        science: &["leavening::acid_for_soda", "leavening::leavening_acid"],
        renamed: &[("soda_kg", "soda")],
        compute: |values| Ok(Outcome::of("acid", acid_for_soda(values.number("soda"), neutralising(values)?)?)),
    },
    Calculation {
        name: "soda_for_acid",
        title: "Soda for a mass of leavening acid",
        description: "Baking soda that a mass of leavening acid neutralises, by its neutralising value.",
        inputs: &[number("acid_mass", "kg", MASS, "leavening acid"), ACID, NEUTRALISING],
        figures: &[figure("soda", "kg", "sodium bicarbonate")],
        example: r#"{"acid_mass": {"value": 700, "unit": "g"}, "acid": "sapp"}"#,
        science: &["leavening::soda_for_acid"],
        renamed: &[("acid_kg", "acid_mass")],
        compute: |values| Ok(Outcome::of("soda", soda_for_acid(values.number("acid_mass"), neutralising(values)?)?)),
    },
    Calculation {
        name: "stoichiometric_neutralising_value",
        title: "Neutralising value by stoichiometry",
        description: "Neutralising value of an acid of which no practical one is known. Every counted proton is taken to \
            react; at the pH of a crumb fewer do.",
        inputs: &[
            number("equivalents", "1", (0.0, 10.0), "acid equivalents a mole"),
            number("molar_mass", "g/mol", (0.0, 2000.0), "molar mass"),
        ],
        figures: &[figure("neutralising_value", "%", "kg of soda that 100 kg of the acid neutralise")],
        example: r#"{"equivalents": 2, "molar_mass": 150.09}"#,
        science: &["leavening::stoichiometric_neutralising_value"],
        renamed: &[("equivalents_per_mole", "equivalents"), ("molar_mass_g_per_mol", "molar_mass")],
        compute: |values| {
            let value = stoichiometric_neutralising_value(values.number("equivalents"), values.number("molar_mass"))?;
            Ok(Outcome::of("neutralising_value", value))
        },
    },
    Calculation {
        name: "leavening_balance",
        title: "Balance of soda and acids",
        description: "What soda and acids of a batch do to each other: soda left, acid left, gas, and which way the pH of \
            the crumb is pushed. Acids and alkalis of other ingredients (buttermilk, cocoa) count only when given.",
        inputs: &[
            number("soda", "g", MASS, "sodium bicarbonate, that of baking powders included"),
            rows("acids", DOSE, (0, 20), "leavening acids"),
            number("product", "g", MASS, "mass of the finished product"),
            number("temperature", "Cel", (-40.0, 300.0), "temperature at which the gas volume is wanted")
                .or_number(100.0, "end of the bake in the crumb, common practice"),
            number("pressure", "Pa", PRESSURE, "pressure").or_number(101_325.0, SEA_LEVEL),
        ],
        figures: &[
            figure("residual_soda_share", "%", "soda left, of the product"),
            figure("residual_soda", "g", "soda left"),
            figure("residual_acid_as_soda", "g", "acid left, as the soda that it could still neutralise"),
            figure("soda_neutralised", "g", "soda that the acids neutralise"),
            figure("carbon_dioxide", "g", "carbon dioxide from soda and acid"),
            figure("carbon_dioxide_volume", "mL", "its volume"),
            figure("carbon_dioxide_by_heat", "g", "carbon dioxide that heat can still drive out of the soda left"),
        ],
        example: r#"{"soda": 10, "acids": [{"mass": 9, "acid": "sapp"}, {"mass": 4, "acid": "mcp"}], "product": 1500}"#,
        science: &["leavening::leavening_figures"],
        renamed: &[
            ("soda_g", "soda"),
            ("product_g", "product"),
            ("mass_g", "mass"),
            ("celsius", "temperature"),
            ("pressure_pa", "pressure"),
        ],
        compute: balance,
    },
    Calculation {
        name: "leavening_gas_yield",
        title: "Gas of a leavener by mass",
        description: "Carbon dioxide, ammonia and water that 100 g of a carbonate give.",
        inputs: &[CARBONATE, RELEASE],
        figures: &[
            figure("carbon_dioxide", "%", "carbon dioxide, of the carbonate"),
            figure("ammonia", "%", "ammonia, of the carbonate"),
            figure("water", "%", "water, of the carbonate: vapour above 100 °C"),
        ],
        example: r#"{"carbonate": "sodium_bicarbonate", "release": "acid"}"#,
        science: &["leavening::gas_yield"],
        renamed: &[],
        compute: |values| {
            let gases = gas_yield(carbonate(values)?, release(values)?);
            Ok(Outcome::of("carbon_dioxide", gases.carbon_dioxide)
                .and("ammonia", gases.ammonia)
                .and("water", gases.water))
        },
    },
    Calculation {
        name: "leavening_gas_volume",
        title: "Gas of a leavener by volume",
        description: "Volume of the gas that a mass of a carbonate gives, by the ideal gas law. In a dough part of it is \
            lost in mixing and part stays dissolved.",
        inputs: &[
            CARBONATE,
            RELEASE,
            number("mass", "g", MASS, "mass of the carbonate"),
            number("temperature", "Cel", (-40.0, 300.0), "temperature of the gas"),
            number("pressure", "Pa", PRESSURE, "pressure").or_number(101_325.0, SEA_LEVEL),
            boolean("with_steam", "whether the water of the reaction counts as vapour")
                .or(DefaultValue::Boolean(false), "below 100 °C most of it is liquid"),
        ],
        figures: &[figure("volume", "mL", "volume of the gas")],
        example: r#"{"carbonate": "sodium_bicarbonate", "release": "acid", "mass": 10, "temperature": 60}"#,
        science: &["leavening::gas_volume"],
        renamed: &[("carbonate_g", "mass"), ("celsius", "temperature"), ("pressure_pa", "pressure")],
        compute: |values| {
            let amount = GasAmount {
                carbonate_g: values.number("mass"),
                celsius: values.number("temperature"),
                pressure_pa: values.number("pressure"),
                with_steam: values.boolean("with_steam"),
            };
            Ok(Outcome::of("volume", gas_volume(carbonate(values)?, release(values)?, &amount)?))
        },
    },
    Calculation {
        name: "baking_powder_gas",
        title: "Carbon dioxide of a baking powder",
        description: "Carbon dioxide that a baking powder gives when it has acid enough for its soda.",
        inputs: &[percent("soda", "soda in the powder")],
        figures: &[figure("carbon_dioxide", "%", "carbon dioxide, of the powder")],
        example: r#"{"soda": 30}"#,
        science: &["leavening::powder_carbon_dioxide"],
        renamed: &[("soda_percent", "soda")],
        compute: |values| Ok(Outcome::of("carbon_dioxide", powder_carbon_dioxide(values.number("soda"))?)),
    },
    Calculation {
        name: "soda_for_baking_powder",
        title: "Soda for a baking powder",
        description: "Soda that a baking powder needs for a share of carbon dioxide. The law of a market may set a minimum.",
        inputs: &[number("carbon_dioxide", "%", (0.0, 52.4), "wanted carbon dioxide, of the powder")],
        figures: &[figure("soda", "%", "soda, of the powder")],
        example: r#"{"carbon_dioxide": 12}"#,
        science: &["leavening::soda_for_carbon_dioxide"],
        renamed: &[("carbon_dioxide_percent", "carbon_dioxide")],
        compute: |values| Ok(Outcome::of("soda", soda_for_carbon_dioxide(values.number("carbon_dioxide"))?)),
    },
];

/// The neutralising value that is given, or that of the named acid.
fn neutralising(values: &Values) -> Result<f64, Nonsense> {
    let of_acid = || Some(leavening_acid(values.word("acid")?)?.neutralising_value);
    let missing = || nonsense("acid", "neither the acid nor its neutralising value is given".to_owned());
    values.optional("neutralising_value").or_else(of_acid).ok_or_else(missing)
}

fn carbonate(values: &Values) -> Result<Carbonate, Nonsense> {
    values.choice(
        "carbonate",
        &[
            ("sodium_bicarbonate", Carbonate::SodiumBicarbonate),
            ("potassium_bicarbonate", Carbonate::PotassiumBicarbonate),
            ("ammonium_bicarbonate", Carbonate::AmmoniumBicarbonate),
        ],
    )
}

fn release(values: &Values) -> Result<Release, Nonsense> {
    values.choice("release", &[("acid", Release::Acid), ("heat", Release::Heat)])
}

fn balance(values: &Values) -> Result<Outcome, Nonsense> {
    let mut faults = Nonsense::default();
    let mut acids = Vec::new();
    for (position, row) in values.rows("acids").iter().enumerate() {
        match neutralising(row) {
            Ok(neutralising_value) => {
                acids.push(AcidDose { name: row.text("name"), mass_g: row.number("mass"), neutralising_value });
            }
            Err(missing) => {
                for fault in missing.faults {
                    faults.unless(false, &format!("acids[{position}]"), fault.message);
                }
            }
        }
    }
    faults.or_ok()?;
    let figures = leavening_figures(&LeaveningBalance {
        soda_g: values.number("soda"),
        acids,
        product_g: values.number("product"),
        celsius: values.number("temperature"),
        pressure_pa: values.number("pressure"),
    })?;
    let soapy = figures.residual_soda_percent.value > SOAPY_RESIDUAL_SODA_PERCENT;
    let direction = match figures.ph {
        PhDirection::Raised => "soda is left: the pH of the crumb goes up; darker, coarser, in excess soapy",
        PhDirection::Neutral => "soda and acid are in balance, within the rounding of neutralising values",
        PhDirection::Lowered => "acid is left: the pH of the crumb goes down; paler, tighter, in excess sharp",
    };
    let soapy = soapy.then(|| {
        format!("residual soda above {SOAPY_RESIDUAL_SODA_PERCENT} % of the product tastes soapy (common practice)")
    });
    Ok(Outcome::of("residual_soda_share", figures.residual_soda_percent)
        .and("residual_soda", figures.residual_soda)
        .and("residual_acid_as_soda", figures.residual_acid_as_soda)
        .and("soda_neutralised", figures.soda_neutralised)
        .and("carbon_dioxide", figures.carbon_dioxide)
        .and("carbon_dioxide_volume", figures.carbon_dioxide_volume)
        .and("carbon_dioxide_by_heat", figures.carbon_dioxide_by_heat)
        .remark(direction)
        .remarks(soapy))
}

#[cfg(test)]
mod tests {
    use super::ACIDS;
    use crate::science::leavening::LEAVENING_ACIDS;

    #[test]
    fn the_words_are_the_acids_of_the_table() {
        let words: Vec<_> = ACIDS.iter().map(|acid| (acid.word, acid.meaning)).collect();
        let table: Vec<_> = LEAVENING_ACIDS.iter().map(|acid| (acid.name, acid.title)).collect();
        assert_eq!(words, table);
    }
}
