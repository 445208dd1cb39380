//! Water activity of compositions, solutions and dry goods.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, Input, choice, composition, number, percent, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::Values;
use crate::science::water_activity::{
    AqueousPhase, BinarySolution, CompositionPer100g, GroverInput, Solute, SorptionBranch, best_estimate,
    equilibrium_relative_humidity, grover, mixture_constant, moisture_held, money_born, norrish, raoult, ross,
    salt_hand_formula, salt_percent_for, salt_pitzer, sucrose_robinson_stokes, water_activity_of_dry_goods,
};
use crate::science::{Estimate, Nonsense};

/// The parts of `science::water_activity::CompositionPer100g`.
pub(super) const COMPONENTS: &[&str] = &[
    "water",
    "sucrose",
    "glucose",
    "fructose",
    "lactose",
    "maltose",
    "glucose_syrup_solids",
    "glycerol",
    "sorbitol",
    "xylitol",
    "erythritol",
    "mannitol",
    "citric_acid",
    "ethanol",
    "salt",
    "starch",
    "protein",
    "fibre",
    "fat",
];
/// Water and what dissolves in it.
const PHASE: &[&str] = &[
    "water",
    "sucrose",
    "glucose",
    "fructose",
    "lactose",
    "maltose",
    "glucose_syrup_solids",
    "glycerol",
    "sorbitol",
    "xylitol",
    "erythritol",
    "mannitol",
    "citric_acid",
    "ethanol",
    "salt",
];
/// Solutes that have a Norrish constant.
const SOLUTES: &[Choice] = &[
    word("sucrose", "sucrose"),
    word("glucose", "glucose (dextrose), as anhydrous"),
    word("fructose", "fructose"),
    word("lactose", "lactose"),
    word("maltose", "maltose"),
    word("glucose_syrup_solids", "solids of glucose syrup of about 42 DE"),
    word("glycerol", "glycerol"),
    word("sorbitol", "sorbitol"),
    word("xylitol", "xylitol"),
    word("erythritol", "erythritol"),
    word("mannitol", "mannitol"),
    word("citric_acid", "citric and other fruit acids"),
];
const BRANCHES: &[Choice] = &[
    word("adsorption", "taking up water: a cracker in humid air"),
    word("desorption", "giving off water: a baked and cooled loaf"),
];

const PHASE_INPUT: Input =
    composition("phase", PHASE, "water and what is dissolved in it, % of the solution or of the product");
const ACTIVITY: &[crate::calculations::FigureKind] = &[figure("water_activity", "1", "water activity at 25 °C")];
const IN_PHASE: &[(&str, &str)] = &[("water", "phase.water")];
pub(super) const IN_COMPOSITION: &[(&str, &str)] = &[("water", "composition.water")];

pub(super) const COMPOSITION: Input = composition(
    "composition",
    COMPONENTS,
    "composition of the product; what is not named is taken as inert, invert sugar is half glucose, half fructose",
);

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "water_activity",
        title: "Water activity of a composition",
        description: "Water activity of a dough, filling, icing or baked product by the equation that suits its composition. \
            A measurement comes before any estimate.",
        inputs: &[COMPOSITION],
        figures: &[
            figure("water_activity", "1", "water activity at 25 °C with all sugar dissolved"),
            figure("equilibrium_relative_humidity", "%", "equilibrium relative humidity"),
            figure(
                "if_sugar_crystallises",
                "1",
                "water activity when sucrose and lactose crystallise; only when they can",
            ),
        ],
        example: r#"{"composition": {"water": 25, "sucrose": 22, "glucose": 3, "fructose": 3, "salt": 0.5, "starch": 25, "protein": 5, "fat": 16}}"#,
        science: &["water_activity::best_estimate"],
        renamed: IN_COMPOSITION,
        compute: |values| {
            let estimate = best_estimate(&composition_of(values))?;
            Ok(Outcome::of("water_activity", estimate.water_activity)
                .and("equilibrium_relative_humidity", estimate.equilibrium_relative_humidity)
                .and_if_known("if_sugar_crystallises", estimate.if_sugar_crystallises)
                .remark(format!(
                    "{:.1} g of water per 100 g are held by starch, protein and fibre",
                    estimate.water_on_biopolymer
                )))
        },
    },
    Calculation {
        name: "equilibrium_relative_humidity",
        title: "Equilibrium relative humidity",
        description: "The humidity of the air with which a product neither dries nor gets moist: 100 times its water activity.",
        inputs: &[number("water_activity", "1", (0.0, 1.0), "water activity")],
        figures: &[figure("equilibrium_relative_humidity", "%", "equilibrium relative humidity")],
        example: r#"{"water_activity": 0.83}"#,
        science: &["water_activity::equilibrium_relative_humidity"],
        renamed: &[],
        compute: |values| {
            let erh = equilibrium_relative_humidity(values.number("water_activity"))?;
            Ok(Outcome::of("equilibrium_relative_humidity", erh))
        },
    },
    Calculation {
        name: "water_activity_by_raoult",
        title: "Water activity by Raoult's law",
        description: "Water activity of an ideal solution; for dilute solutions.",
        inputs: &[PHASE_INPUT],
        figures: ACTIVITY,
        example: r#"{"phase": {"water": 95, "glucose": 4, "salt": 1}}"#,
        science: &["water_activity::raoult"],
        renamed: IN_PHASE,
        compute: |values| activity(raoult(&phase(values))),
    },
    Calculation {
        name: "water_activity_by_norrish",
        title: "Water activity of one solute by Norrish",
        description: "Water activity of a solution of one sugar, polyol or acid.",
        inputs: &[
            choice("solute", SOLUTES, "what is dissolved"),
            number("share", "%", (0.0, 99.0), "its share of the solution, by mass"),
        ],
        figures: ACTIVITY,
        example: r#"{"solute": "sucrose", "share": 60}"#,
        science: &["water_activity::norrish"],
        renamed: &[],
        compute: |values| {
            let solution = BinarySolution::from_mass_percent(solute(values)?, values.number("share"));
            activity(norrish(&solution))
        },
    },
    Calculation {
        name: "water_activity_by_norrish_mixture",
        title: "Water activity of a mixture by Norrish",
        description: "Water activity of several solutes by Norrish's equation with one constant for the mixture, salt by Ross.",
        inputs: &[PHASE_INPUT],
        figures: ACTIVITY,
        example: r#"{"phase": {"water": 30, "sucrose": 40, "glucose": 15, "fructose": 15}}"#,
        science: &["water_activity::mixture_constant"],
        renamed: IN_PHASE,
        compute: |values| activity(mixture_constant(&phase(values))),
    },
    Calculation {
        name: "water_activity_by_ross",
        title: "Water activity of a mixture by Ross",
        description: "Water activity as a product over the solutes, each as if it had all the water to itself.",
        inputs: &[PHASE_INPUT],
        figures: ACTIVITY,
        example: r#"{"phase": {"water": 60, "sucrose": 30, "salt": 2}}"#,
        science: &["water_activity::ross"],
        renamed: IN_PHASE,
        compute: |values| activity(ross(&phase(values))),
    },
    Calculation {
        name: "water_activity_by_money_born",
        title: "Water activity by Money and Born",
        description: "Rule for boiled sugar goods, jams and fondants; counts sugars only.",
        inputs: &[PHASE_INPUT],
        figures: ACTIVITY,
        example: r#"{"phase": {"water": 35, "sucrose": 45, "glucose": 20}}"#,
        science: &["water_activity::money_born"],
        renamed: IN_PHASE,
        compute: |values| activity(money_born(&phase(values))),
    },
    Calculation {
        name: "water_activity_by_grover",
        title: "Water activity by Grover",
        description: "Rule for confectionery by sucrose equivalents.",
        inputs: &[
            PHASE_INPUT,
            percent("polysaccharide", "starch, pectin and other polysaccharides, on the scale of the phase")
                .or_number(0.0, "none unless given"),
            percent("protein", "gelatine, casein, egg white and other protein, on the scale of the phase")
                .or_number(0.0, "none unless given"),
        ],
        figures: ACTIVITY,
        example: r#"{"phase": {"water": 20, "sucrose": 50, "glucose_syrup_solids": 26}, "protein": 4}"#,
        science: &["water_activity::grover"],
        renamed: IN_PHASE,
        compute: |values| {
            activity(grover(&GroverInput {
                phase: phase(values),
                polysaccharide_g: values.number("polysaccharide"),
                protein_g: values.number("protein"),
            }))
        },
    },
    Calculation {
        name: "water_activity_of_brine",
        title: "Water activity of brine",
        description: "Water activity of salt in the water phase, by Pitzer's equation and by a formula for the back of an \
            envelope.",
        inputs: &[number("salt", "%", (0.0, 26.0), "salt in the water phase: salt over salt and water")],
        figures: &[
            figure("water_activity", "1", "water activity by Pitzer's equation"),
            figure("by_hand_formula", "1", "the same by the hand formula"),
        ],
        example: r#"{"salt": 8}"#,
        science: &["water_activity::salt_pitzer", "water_activity::salt_hand_formula"],
        renamed: &[("molality", "salt")],
        compute: |values| {
            let salt = values.number("salt");
            let molality = BinarySolution::from_mass_percent(Solute::Salt, salt).molality();
            Ok(Outcome::of("water_activity", salt_pitzer(molality)?).and("by_hand_formula", salt_hand_formula(salt)?))
        },
    },
    Calculation {
        name: "brine_for_water_activity",
        title: "Salt for a water activity",
        description: "Salt in the water phase that gives a wanted water activity.",
        inputs: &[number("water_activity", "1", (0.85, 0.98), "wanted water activity")],
        figures: &[figure("salt", "%", "salt in the water phase")],
        example: r#"{"water_activity": 0.95}"#,
        science: &["water_activity::salt_percent_for"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("salt", salt_percent_for(values.number("water_activity"))?)),
    },
    Calculation {
        name: "water_activity_of_sucrose_syrup",
        title: "Water activity of sucrose syrup",
        description: "Water activity of sucrose in water by the osmotic coefficients of Robinson and Stokes.",
        inputs: &[number("sucrose", "%", (0.0, 70.5), "sucrose in the syrup, by mass")],
        figures: ACTIVITY,
        example: r#"{"sucrose": 60}"#,
        science: &["water_activity::sucrose_robinson_stokes"],
        renamed: &[("molality", "sucrose")],
        compute: |values| {
            let syrup = BinarySolution::from_mass_percent(Solute::Sucrose, values.number("sucrose"));
            activity(sucrose_robinson_stokes(syrup.molality()))
        },
    },
    Calculation {
        name: "moisture_at_water_activity",
        title: "Moisture that starch holds at a water activity",
        description: "Sorption isotherm of starch, a stand-in for flour and gluten: water per 100 g of dry matter.",
        inputs: &[
            number("water_activity", "1", (0.0, 1.0), "water activity, or relative humidity of the air over 100"),
            choice("branch", BRANCHES, "whether the food came to its moisture from below or from above"),
        ],
        figures: &[figure("moisture", "%", "water on dry matter")],
        example: r#"{"water_activity": 0.6, "branch": "adsorption"}"#,
        science: &["water_activity::moisture_held"],
        renamed: &[],
        compute: |values| {
            let moisture = moisture_held(values.number("water_activity"), branch(values)?)?;
            Ok(Outcome::of("moisture", moisture))
        },
    },
    Calculation {
        name: "water_activity_of_dry_goods",
        title: "Water activity of starchy dry goods",
        description: "Water activity of crackers, crisp bread and crumbs without sugar, salt or fat, from their water on dry \
            matter.",
        inputs: &[
            percent("moisture", "water on dry matter"),
            choice("branch", BRANCHES, "whether the food came to its moisture from below or from above"),
        ],
        figures: ACTIVITY,
        example: r#"{"moisture": 6, "branch": "desorption"}"#,
        science: &["water_activity::water_activity_of_dry_goods"],
        renamed: &[],
        compute: |values| activity(water_activity_of_dry_goods(values.number("moisture"), branch(values)?)),
    },
];

fn activity(estimate: Result<Estimate, Nonsense>) -> Result<Outcome, Nonsense> {
    Ok(Outcome::of("water_activity", estimate?))
}

fn branch(values: &Values) -> Result<SorptionBranch, Nonsense> {
    let branches = [("adsorption", SorptionBranch::Adsorption), ("desorption", SorptionBranch::Desorption)];
    values.choice("branch", &branches)
}

const MEANINGS: [(&str, Solute); 14] = [
    ("sucrose", Solute::Sucrose),
    ("glucose", Solute::Glucose),
    ("fructose", Solute::Fructose),
    ("lactose", Solute::Lactose),
    ("maltose", Solute::Maltose),
    ("glucose_syrup_solids", Solute::GlucoseSyrup42),
    ("glycerol", Solute::Glycerol),
    ("sorbitol", Solute::Sorbitol),
    ("xylitol", Solute::Xylitol),
    ("erythritol", Solute::Erythritol),
    ("mannitol", Solute::Mannitol),
    ("citric_acid", Solute::CitricAcid),
    ("ethanol", Solute::Ethanol),
    ("salt", Solute::Salt),
];

fn solute(values: &Values) -> Result<Solute, Nonsense> {
    values.choice("solute", &MEANINGS)
}

fn share(shares: &[(&'static str, f64)], wanted: &str) -> f64 {
    shares.iter().find(|(name, _)| *name == wanted).map_or(0.0, |(_, share)| *share)
}

fn phase(values: &Values) -> AqueousPhase {
    let shares = values.composition("phase");
    let solutes = MEANINGS.iter().map(|(name, solute)| (*solute, share(shares, name)));
    AqueousPhase { water_g: share(shares, "water"), solutes_g: solutes.filter(|(_, grams)| *grams > 0.0).collect() }
}

/// The composition of the input `composition`.
pub(super) fn composition_of(values: &Values) -> CompositionPer100g {
    let shares = values.composition("composition");
    let part = |name: &str| share(shares, name);
    CompositionPer100g {
        water: part("water"),
        sucrose: part("sucrose"),
        glucose: part("glucose"),
        fructose: part("fructose"),
        lactose: part("lactose"),
        maltose: part("maltose"),
        glucose_syrup_solids: part("glucose_syrup_solids"),
        glycerol: part("glycerol"),
        sorbitol: part("sorbitol"),
        xylitol: part("xylitol"),
        erythritol: part("erythritol"),
        mannitol: part("mannitol"),
        citric_acid: part("citric_acid"),
        ethanol: part("ethanol"),
        salt: part("salt"),
        starch: part("starch"),
        protein: part("protein"),
        fibre: part("fibre"),
        fat: part("fat"),
    }
}

#[cfg(test)]
mod tests {
    use super::{COMPONENTS, MEANINGS, PHASE, SOLUTES, composition_of};
    use crate::calculations::values::{Value, Values};
    use crate::science::water_activity::Solute;

    #[test]
    fn every_component_counts() {
        for name in COMPONENTS {
            let mut values = Values::default();
            values.set("composition", Value::Composition(vec![(name, 7.0)]));
            assert_eq!(composition_of(&values).total(), 7.0, "{name}");
        }
    }

    #[test]
    fn the_words_are_the_solutes() {
        assert_eq!(MEANINGS.map(|(_, solute)| solute), Solute::ALL);
        assert_eq!(PHASE[1..], MEANINGS.map(|(name, _)| name));
        let with_constant = MEANINGS.iter().filter(|(_, solute)| solute.facts().norrish_k.is_some());
        let words: Vec<&str> = SOLUTES.iter().map(|solute| solute.word).collect();
        assert_eq!(with_constant.map(|(name, _)| *name).collect::<Vec<_>>(), words);
    }
}
