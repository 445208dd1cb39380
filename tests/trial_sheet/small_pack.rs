//! A small pack whose figures can be worked by hand. All of it is invented.

use std::sync::LazyLock;

use serde_json::{Value, json};
use whybake::case::Fault;
use whybake::diagnosis::Diagnostician;
use whybake::json::DocumentFaults;
use whybake::rules::{RuleFiles, load};
use whybake::trial_sheet::{TrialRequest, TrialSheet};

const FILES: [(&str, &str); 10] = [
    ("pack.rhai", r#"pack("small").title("Small pack").version("1.0.0");"#),
    ("sources.rhai", r#"source("practice").citation("invented for tests").common_practice();"#),
    (
        "requirements.rhai",
        r#"
allergen("milk").title("Milk");
diet("vegan").title("Vegan");
"#,
    ),
    (
        "cautions.rhai",
        r#"
caution("mind_label").text("Check the label.");
caution("slippery").text("The floor is slippery.");
"#,
    ),
    (
        "products.rhai",
        r#"
family("rolls").title("Rolls");
product("bun").title("Bun").family(rolls);
"#,
    ),
    (
        "ingredients.rhai",
        r#"
ingredient("flour").title("Flour").flour().composition(#{ salt: 0 }).source(practice);
ingredient("water").title("Water").role("water").composition(#{ salt: 0 }).source(practice);
ingredient("yeast").title("Yeast").role("yeast").composition(#{ salt: 0 }).source(practice);
ingredient("salt").title("Salt").role("salt").composition(#{ salt: 100 }).source(practice);
ingredient("salted_butter").title("Salted butter").role("fat").brings(milk).not_for(vegan).composition(#{ salt: 2 }).source(practice);
ingredient("lard").title("Lard").role("fat").composition(#{ salt: 0 }).source(practice);
ingredient("milk_powder").title("Milk powder").role("milk").brings(milk).composition(#{ salt: 0 }).source(practice);
"#,
    ),
    (
        "symptoms.rhai",
        r#"
symptom("flat").title("Flat").description("Lower than usual.").products(rolls);
symptom("tough").title("Tough").description("Hard to bite.").products(rolls);
"#,
    ),
    (
        "readings.rhai",
        r#"
reading("salt_on_flour").title("salt on flour").description("All salt.").unit("%").plausible(0, 10).window(rolls, 1.6, 2)
    .computed(formula("salt_on_flour")).method("from the formula").effort(3).source(practice);
reading("proof_time").title("proof time").description("Time.").unit("min").plausible(0, 300).window(rolls, 50, 70)
    .method("clock").effort(1).source(practice);
reading("height").title("height").description("Of a piece.").unit("mm").plausible(1, 200).window(rolls, 50, 60)
    .low_shows(flat).method("caliper").effort(2).source(practice);
"#,
    ),
    (
        "actions.rhai",
        r#"
action("set_salt").title("Set the salt").text("Bring salt to its target.").effort(10).caution(mind_label).source(practice);
action("more_water").title("More water").text("Add water.").effort(10).source(practice);
action("less_fat").title("Less fat").text("Take fat out.").effort(10).caution(slippery).source(practice);
action("add_milk").title("Add milk powder").text("Add it.").effort(10).uses(milk_powder).source(practice);
action("proof_longer").title("Prove longer").text("Longer.").effort(60).source(practice);
action("no_lard").title("No lard").text("Leave it out.").effort(10).source(practice);
action("weigh_again").title("Weigh again").text("By hand.").effort(10).source(practice);
"#,
    ),
    (
        "causes.rhai",
        r#"
cause("salt_wrong").title("Salt wrong").mechanism("M.").products(rolls).prior(0.3).shows(flat, 0.9)
    .action(set_salt.set("salt_on_flour", 1.8, "%", doses(salt)).set("salt_to_take_out", formula("flour_mass") * (salt_on_flour - 1.8) / 100, "kg", takes_out(salt)), 0.9)
    .action(weigh_again, 0.8)
    .confirm(salt_on_flour > 2.2, excluded(salt_on_flour < 2)).source(practice);
cause("too_dry").title("Too dry").mechanism("M.").products(rolls).prior(0.3).shows(flat, 0.8)
    .action(more_water.set("water_to_add", formula("flour_mass") * 3 / 100, "kg", adds(water)).set("more_water_on_flour", 3, "%", adds(water)), 0.8)
    .source(practice);
cause("too_rich").title("Too rich").mechanism("M.").products(rolls).prior(0.3).shows(flat, 0.7)
    .action(less_fat.set("less_fat_on_flour", 2, "%", takes_out("fat")), 0.7)
    .action(no_lard.set("lard_on_flour", 0, "%", doses(lard)), 0.01)
    .action(add_milk.set("milk_powder_on_flour", 4, "%", adds(milk_powder)), 0.6)
    .source(practice);
cause("short_proof").title("Short proof").mechanism("M.").products(rolls).prior(0.3).shows(flat, 0.6)
    .action(proof_longer.set("proof_time", 65, "min"), 0.6)
    .confirm(proof_time < 50, excluded(proof_time > 55)).source(practice);
"#,
    ),
];

pub(crate) static RULES: LazyLock<Diagnostician> = LazyLock::new(|| {
    let mut files = RuleFiles::default();
    for (path, text) in FILES {
        files.insert(path, text);
    }
    let loaded = load(&files).unwrap_or_else(|diagnostics| panic!("{diagnostics:#?}"));
    Diagnostician::new(loaded.knowledge).unwrap()
});

/// A flat bun: 50 kg flour, 30 kg water, 1 kg yeast, 1.5 kg salt, 4 kg salted butter, 3 kg lard; 89.5 kg in all.
pub(crate) fn request() -> Value {
    let line = |ingredient: &str, amount: f64| json!({"ingredient": ingredient, "amount": amount, "unit": "kg"});
    json!({
        "case": {
            "product": "bun",
            "symptoms": [{"symptom": "flat"}],
            "readings": {"proof_time": {"value": 45, "unit": "min", "low": 50, "high": 70}},
            "formula": {"ingredients": [
                line("flour", 50.0), line("water", 30.0), line("yeast", 1.0), line("salt", 1.5),
                line("salted_butter", 4.0), line("lard", 3.0),
            ]},
            "reference": {"lot": "A1"},
        },
        "batch": {"mass": {"value": 17.9, "unit": "kg"}},
        "seed": 1,
    })
}

/// The request with other members.
pub(crate) fn with(members: &Value) -> Value {
    let mut request = request();
    for (name, value) in members.as_object().unwrap() {
        request[name] = value.clone();
    }
    request
}

pub(crate) fn try_plan(request: &Value) -> Result<Value, Vec<Fault>> {
    let faulty = |faults: DocumentFaults| match faults {
        DocumentFaults::Faulty(faults) => faults,
        DocumentFaults::Malformed(detail) => panic!("{detail}"),
    };
    let request = TrialRequest::parse(request.to_string().as_bytes(), RULES.knowledge()).map_err(faulty)?;
    let sheet = TrialSheet::plan(&RULES, &request).map_err(faulty)?;
    Ok(serde_json::to_value(&sheet).unwrap())
}

#[track_caller]
pub(crate) fn plan(request: &Value) -> Value {
    try_plan(request).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// Mass of an ingredient in the run of a label, kg.
#[track_caller]
pub(crate) fn mass(sheet: &Value, label: &str, ingredient: &str) -> f64 {
    let run = run(sheet, label);
    let lines = run["weights"].as_array().unwrap();
    let line = lines.iter().find(|line| line["ingredient"] == ingredient).unwrap_or_else(|| panic!("{run}"));
    line["mass_kg"].as_f64().unwrap()
}

#[track_caller]
pub(crate) fn run<'s>(sheet: &'s Value, label: &str) -> &'s Value {
    let runs = sheet["runs"].as_array().unwrap();
    runs.iter().find(|run| run["label"] == label).unwrap_or_else(|| panic!("no run {label} in {sheet:#}"))
}

/// Texts of a list, or of a member of its items.
pub(crate) fn texts<'s>(list: &'s Value, member: &str) -> Vec<&'s str> {
    let items = list.as_array().unwrap().iter();
    items.map(|item| if member.is_empty() { item } else { &item[member] }.as_str().unwrap()).collect()
}
