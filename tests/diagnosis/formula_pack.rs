//! A small pack with a filling, leavening and roles, for what formulas come to.

use std::sync::LazyLock;

use serde_json::Value;
use whybake::case::{Case, Fault};
use whybake::diagnosis::Diagnostician;
use whybake::formulas::{Figure, Weighed};
use whybake::json::DocumentFaults;
use whybake::knowledge::FormulaQuantity;
use whybake::rules::{RuleFiles, load};
use whybake::science::formula::Part;

const FILES: [(&str, &str); 13] = [
    ("pack.rhai", r#"pack("formulas").title("Formulas").version("1.0.0");"#),
    ("scales.rhai", r#"prior_word("COMMON", 0.1); strength_word("OFTEN", 0.6); weight_word("STRONG", 10);"#),
    ("sources.rhai", r#"source("trade").citation("rule of thumb of the trade").common_practice();"#),
    (
        "requirements.rhai",
        r#"diet("vegan").title("Vegan"); market("US").title("United States"); market("EU").title("European Union");"#,
    ),
    (
        "cautions.rhai",
        r#"caution("hot_sugar").text("Boiling sugar burns.").source(trade);
caution("us_label").text("Label it.").jurisdiction(US).always().source(trade);
caution("mould").text("It may mould.").source(trade);"#,
    ),
    (
        "limits.rhai",
        r#"limit("sorbate_eu").market(EU).of(baker_percent(sorbate)).at_most(0.2).unit("%").text("Sorbate in fine bakery wares.").source(trade);
limit("sorbate_us").market(US).of(baker_percent(sorbate)).at_most(0.3).unit("%").text("Sorbate in cakes.").products(cakes).source(trade);
limit("solids_eu").market(EU).of(formula("soluble_solids")).at_most(50).unit("%").text("Solids of jam.").products(fillings).source(trade);"#,
    ),
    (
        "preserving.rhai",
        r#"warn(hot_sugar).when(formula("syrup_strength") > 70).products(fillings);
warn(mould).when(water_activity > 0.85).also_when_unknown().products(fillings);
cause("unpreserved").title("Unpreserved").mechanism("Mould.").products(cakes).prior(COMMON).shows(dense, OFTEN)
    .evidence(baker_percent(sorbate) < 0.1, STRONG)
    .action(add_sorbate.set("sorbate", 5000, "mg/kg", capped_by(sorbate_eu, sorbate_us)))
    .action(add_butter).action(bleach)
    .confirm(baker_percent(sorbate) < 0.1).source(trade);"#,
    ),
    (
        "products.rhai",
        r#"family("cakes").title("Cakes");
family("fillings").title("Fillings").main_stage("filling");
product("cake").title("Cake").family(cakes);
product("jam").title("Jam").family(fillings);"#,
    ),
    (
        "ingredients.rhai",
        r#"fn none() { #{ water: 0, fat: 0, protein: 0, starch: 0, sucrose: 0, glucose: 0, fructose: 0, lactose: 0, maltose: 0, salt: 0 } }
ingredient("flour").title("Flour").flour().composition(#{ water: 14, fat: 1, protein: 10, starch: 72, sucrose: 1, glucose: 0, fructose: 0, lactose: 0, maltose: 1, salt: 0 }).source(trade);
ingredient("water").title("Water").role("water").composition(#{ water: 100 }).source(trade);
ingredient("sugar").title("Sugar").role("sugar").composition(#{ water: 0, sucrose: 100 }).source(trade);
ingredient("glucose").title("Glucose").role("sugar").composition(#{ water: 0, glucose: 100 }).source(trade);
ingredient("salt").title("Salt").role("salt").composition(#{ water: 0, salt: 100 }).source(trade);
ingredient("butter").title("Butter").role("fat").composition(#{ water: 16, fat: 82, protein: 1, starch: 0, sucrose: 0, glucose: 0, fructose: 0, lactose: 1, maltose: 0, salt: 0 }).not_for(vegan).source(trade);
ingredient("lard").title("Lard").role("fat").composition(#{ fat: 100 }).not_for(vegan).source(trade);
ingredient("soda").title("Soda").role("leavening").composition(none()).soda(100).source(trade);
ingredient("sapp").title("SAPP").role("leavening").composition(none()).acid("sapp").source(trade);
ingredient("powder").title("Baking powder").role("leavening").composition(none()).soda(30).acid("sapp", 41.67).source(trade);
ingredient("hartshorn").title("Ammonium bicarbonate").role("leavening").composition(none()).ammonium_bicarbonate(100).source(trade);
ingredient("lecithin").title("Lecithin").role("emulsifier").composition(none()).source(trade);
ingredient("sorbate").title("Potassium sorbate").role("preservative").composition(none()).source(trade);
ingredient("bleaching_agent").title("Bleaching agent").role("oxidant").composition(none()).not_permitted(EU).source(trade);"#,
    ),
    ("symptoms.rhai", r#"symptom("dense").title("Dense").description("Dense.").products(cakes, fillings);"#),
    (
        "readings.rhai",
        r#"reading("water_activity").title("water activity").unit("1").plausible(0, 1).method("meter").products(fillings).computed(formula("water_activity")).source(trade);"#,
    ),
    (
        "actions.rhai",
        r#"action("weigh").title("Weigh").text("Weigh.");
action("add_sorbate").title("Add sorbate").text("Add sorbate.").uses(sorbate);
action("add_butter").title("Add butter").text("Add butter.").uses(butter).instead(add_lard, add_oil);
action("add_lard").title("Add lard").text("Add lard.").uses(lard);
action("add_oil").title("Add oil").text("Add oil.");
action("bleach").title("Bleach").text("Bleach the flour.").uses(bleaching_agent).instead(weigh);"#,
    ),
    (
        "causes.rhai",
        r#"cause("soapy").title("Soda left").mechanism("Soda.").products(cakes).prior(COMMON).shows(dense, OFTEN)
    .evidence(formula("soda_surplus_on_flour") > 0.2, STRONG)
    .evidence(role_percent("fat") > 40, STRONG)
    .evidence(formula_has_role("emulsifier"), STRONG)
    .evidence(baker_percent(butter, lard) > 45, STRONG)
    .evidence(formula("soluble_solids", "filling") > 60, STRONG)
    .evidence(mass_percent(sugar, "filling") > 55, STRONG)
    .action(weigh.set("fat", either(baker_percent(lard), 0.5), "%")).confirm(formula("soda_surplus_on_flour") > 0.2).source(trade);
cause("too_sweet").title("Too sweet").mechanism("Sugar.").products(fillings).prior(COMMON).shows(dense, OFTEN)
    .evidence(formula("soluble_solids") > 65, STRONG).evidence(water_activity < 0.8, STRONG)
    .evidence(mass_percent(sugar) > 60, STRONG)
    .action(weigh).confirm(formula("soluble_solids") > 65).source(trade);"#,
    ),
];

static RULES: LazyLock<Diagnostician> = LazyLock::new(|| {
    let mut files = RuleFiles::default();
    for (path, text) in FILES {
        files.insert(path, text);
    }
    let loaded = load(&files).unwrap_or_else(|faults| panic!("{faults:?}"));
    Diagnostician::new(loaded.knowledge).unwrap()
});

fn parse(product: &str, formula: &Value) -> Result<Case, DocumentFaults> {
    let case = serde_json::json!({"product": product, "formula": formula});
    Case::parse(case.to_string().as_bytes(), RULES.knowledge())
}

/// The answer to a case that is nothing but a formula.
pub(crate) fn answer(product: &str, formula: &Value) -> Value {
    let case = parse(product, formula).unwrap();
    serde_json::to_value(RULES.diagnose(case).unwrap()).unwrap()
}

/// The answer to a case.
pub(crate) fn answer_to(case: &Value) -> Value {
    let case = Case::parse(case.to_string().as_bytes(), RULES.knowledge()).unwrap();
    serde_json::to_value(RULES.diagnose(case).unwrap()).unwrap()
}

/// The faults of a formula.
pub(crate) fn faults(formula: &Value) -> Vec<Fault> {
    match parse("cake", formula) {
        Err(DocumentFaults::Faulty(faults)) => faults,
        other => panic!("{other:?}"),
    }
}

/// One figure of a formula.
pub(crate) fn figure(product: &str, formula: &Value, quantity: &str, part: Part) -> Figure {
    let case = parse(product, formula).unwrap();
    let declared = &RULES.knowledge().declared;
    let given = case.formula.unwrap();
    let weighed = Weighed::new(&given, declared, declared.main_stage(case.product)).unwrap();
    weighed.figure(FormulaQuantity::named(quantity).unwrap(), part).unwrap()
}

/// Lines of declared ingredients in kg; `stage:ingredient` names the stage.
pub(crate) fn kilograms(lines: &[(&str, f64)]) -> Value {
    let lines: Vec<Value> = lines
        .iter()
        .map(|(name, amount)| match name.split_once(':') {
            Some((stage, name)) => {
                serde_json::json!({"ingredient": name, "amount": amount, "unit": "kg", "stage": stage})
            }
            None => serde_json::json!({"ingredient": name, "amount": amount, "unit": "kg"}),
        })
        .collect();
    serde_json::json!({"ingredients": lines, "complete": true})
}
