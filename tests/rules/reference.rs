//! The reference of words in the authors' guide: every example compiles, and the guide shows what the program knows.

use std::fs;
use std::path::Path;

use whybake::rules::guide::with_generated_sections;
use whybake::rules::{Code, RuleFiles, load, words};

use crate::support::{Changed, line, pack};

/// What a word follows, the file that declares it, and the word that declares it.
const DECLARED: [(&str, &str, &str); 15] = [
    ("the pack", "pack.rhai", "pack"),
    ("a source", "sources.rhai", "source"),
    ("a caution", "cautions.rhai", "caution"),
    ("a diet", "requirements.rhai", "diet"),
    ("an allergen", "requirements.rhai", "allergen"),
    ("a market", "requirements.rhai", "market"),
    ("a family", "products.rhai", "family"),
    ("a product", "products.rhai", "product"),
    ("an ingredient", "ingredients.rhai", "ingredient"),
    ("a symptom", "symptoms.rhai", "symptom"),
    ("a fact", "facts.rhai", "fact"),
    ("a reading", "readings.rhai", "reading"),
    ("a limit", "limits.rhai", "limit"),
    ("an action", "actions.rhai", "action"),
    ("a cause", "causes.rhai", "cause"),
];

/// The small pack with every name that the examples use.
fn vocabulary() -> RuleFiles {
    let mut readings = String::new();
    for id in ["loaf_mass", "loaf_volume", "filling_ph"] {
        readings.push_str(&format!("reading(\"{id}\").title(\"{id}\").method(\"m\").unit(\"g\").plausible(0, 9);\n"));
    }
    let mut symptoms = String::new();
    for id in ["excess_volume", "high_volume"] {
        symptoms.push_str(&format!("symptom(\"{id}\").title(\"{id}\").description(\"d\").products(soft_rolls);\n"));
    }
    let ingredients: String = [
        "butter",
        "lard",
        "salt",
        "sugar",
        "honey",
        "pectin",
        "calcium_propionate",
        "water",
        "dextrose",
        "pectin_hm",
        "pectin_lm",
    ]
    .iter()
    .map(|id| format!("ingredient(\"{id}\").title(\"{id}\").composition(#{{ water: 1 }});\n"))
    .collect();
    let facts: String =
        ["a", "b", "c", "fact"].iter().map(|id| format!("fact(\"{id}\").title(\"t\").question(\"q\");\n")).collect();
    let limits: String = ["some_limit", "propionate_eu"]
        .iter()
        .map(|id| {
            format!(
                "limit(\"{id}\").text(\"t\").market(EU).of(baker_percent(salt)).at_most(1).unit(\"%\").source(some_handbook);\n"
            )
        })
        .collect();
    pack()
        .and("sources.rhai", "source(\"some_handbook\").citation(\"A., Title, 2001\").published();")
        .and("scales.rhai", "strength_word(\"USUALLY\", 0.8);\ncost_word(\"PURCHASE\", 240);\nwaste_word(\"ONE_BATCH\", 1);")
        .with("cautions.rhai", "caution(\"hot_oven\").text(\"Hot.\");\ncaution(\"hot_sugar\").text(\"Hot.\");\n")
        .with(
            "requirements.rhai",
            "market(\"EU\").title(\"E\");\nmarket(\"GB\").title(\"G\");\nmarket(\"US\").title(\"U\");\nmarket(\"CA\").title(\"C\");\ndiet(\"vegan\").title(\"V\");\nallergen(\"milk\").title(\"M\");\nallergen(\"wheat\").title(\"W\");\n",
        )
        .and("readings.rhai", &readings)
        .and(
            "readings.rhai",
            "reading(\"yeast_on_flour\").title(\"y\").method(\"m\").unit(\"%\").plausible(0, 9).computed(role_percent(\"yeast\"));",
        )
        .and("symptoms.rhai", &symptoms)
        .with("ingredients.rhai", &ingredients)
        .and("facts.rhai", &facts)
        .with("limits.rhai", &limits)
        .and("actions.rhai", "action(\"colder_mixing_water\").title(\"Colder\").text(\"Cool it.\");")
        .and("actions.rhai", "action(\"set_water\").title(\"Set\").text(\"Set it.\");")
}

/// Faults of a pack that are about more than what a sample declaration lacks.
fn faults(files: &RuleFiles) -> Vec<String> {
    let told = load(files).err().unwrap_or_default();
    told.iter().filter(|fault| fault.code != Code::Incomplete).map(line).collect()
}

/// The vocabulary with an example after something of a kind.
fn used(example: &str, after: &str) -> RuleFiles {
    let statement = match (after, DECLARED.iter().find(|(kind, ..)| *kind == after)) {
        ("the pack", _) => return vocabulary().with("pack.rhai", &format!("pack(\"small\"){example};\n")),
        ("a market", _) => {
            return vocabulary().with("sample/requirements.rhai", &format!("market(\"XX\"){example};\n"));
        }
        (_, Some((_, file, word))) => {
            return vocabulary().with(&format!("sample/{file}"), &format!("{word}(\"sample\"){example};\n"));
        }
        ("a warning", _) => format!("warn(hot_oven){example};\n"),
        ("an expression", _) => format!("(dough_temperature + 1){example};\n"),
        ("an action with quantities", _) => format!("colder_mixing_water.set(\"x\", 1, \"1\"){example};\n"),
        _ => panic!("nothing to try `{example}` after {after}"),
    };
    vocabulary().with("sample.rhai", &statement)
}

/// The vocabulary with an example that stands by itself.
fn by_itself(example: &str, name: &str) -> RuleFiles {
    let file = match name {
        "pack" => return vocabulary().with("pack.rhai", &format!("{example};\n")),
        "prior_word" | "strength_word" | "weight_word" | "cost_word" | "waste_word" => "scales.rhai",
        _ => DECLARED.iter().find(|(.., word)| *word == name).map_or("sample.rhai", |(_, file, _)| file),
    };
    let fresh = example
        .replace("\"COMMON\"", "\"SAMPLE\"")
        .replace("\"OFTEN\"", "\"SAMPLE\"")
        .replace("\"STRONG\"", "\"SAMPLE\"")
        .replace("\"PURCHASE\"", "\"SAMPLE\"")
        .replace("\"ONE_BATCH\"", "\"SAMPLE\"");
    vocabulary().with(&format!("sample/{file}"), &format!("{fresh};\n"))
}

#[test]
fn every_example_of_the_reference_compiles() {
    assert_eq!(faults(&vocabulary()), [""; 0]);
    for section in words() {
        for word in &section.words {
            for example in &word.examples {
                if !example.starts_with('.') {
                    assert_eq!(faults(&by_itself(example, word.name)), [""; 0], "{example}");
                    continue;
                }
                for after in &word.follows {
                    assert_eq!(faults(&used(example, after)), [""; 0], "{after} {example}");
                }
            }
        }
    }
}

#[test]
fn a_spoilt_example_would_be_found() {
    assert_ne!(faults(&used(".unit(\"celsius\")", "a reading")), [""; 0]);
    assert_ne!(faults(&by_itself("target(sample_temperature)", "target")), [""; 0]);
}

#[test]
fn the_guide_shows_what_the_program_knows() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("rules/README.md");
    let guide = fs::read_to_string(path).unwrap();
    let fresh = with_generated_sections(&guide).unwrap();
    assert!(guide == fresh, "run `cargo run -- rules guide rules/README.md`");
}

/// The arithmetic of "How to set a weight from counts".
#[test]
fn the_guide_counts_rightly() {
    let guide = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("rules/README.md")).unwrap();
    let share = |held: f64, of: f64| (held + 0.5) / (of + 1.0);
    let (with, without) = (share(14.0, 20.0), share(4.0, 50.0));
    let decibans = |ratio: f64| 10.0 * ratio.log10();
    let supports = decibans(with / without);
    let against = decibans((1.0 - without) / (1.0 - with));
    for shown in [
        format!("14.5 / 21 = {with:.3}"),
        format!("4.5 / 51 = {without:.3}"),
        format!("10·log10({with:.3} / {without:.3}) = {supports:.1}"),
        format!("10·log10((1 − {without:.3}) / (1 − {with:.3})) = {against:.1}"),
        format!("{supports:.1}, against({against:.1})"),
        format!("{supports:.1}, usual({without:.3})"),
    ] {
        assert!(guide.contains(&shown), "{shown}");
    }
    for (times, weight) in [(1.26, 1.0), (2.0, 3.0), (3.2, 5.0), (5.0, 7.0), (10.0, 10.0), (32.0, 15.0), (100.0, 20.0)]
    {
        assert!((decibans(times) - weight).abs() < 0.06, "{times}");
        assert!(guide.contains(&format!("| {times} ")) && guide.contains(&format!("| {weight} ")), "{times}");
    }
    // The three figures agree with each other, so the pack takes all of them.
    let property = format!(".evidence(dough_waits, {supports:.1}, against({against:.1}), usual({without:.3}))");
    assert_eq!(faults(&pack().property(&property)), [""; 0]);
}

#[test]
fn a_guide_without_markers_is_told() {
    assert_eq!(
        with_generated_sections("# Guide\n").unwrap_err(),
        [
            "<!-- generated: words --> … <!-- end of words -->",
            "<!-- generated: mistakes --> … <!-- end of mistakes -->",
        ]
    );
}

/// The long example of the guide, cut at the comments that name its files.
fn long_example() -> RuleFiles {
    let guide = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("rules/README.md")).unwrap();
    let (_, block) = guide.split_once("\n## The words\n\n```rhai\n").unwrap();
    let block = block.split("\n```").next().unwrap();
    let mut files: Vec<(String, String)> = Vec::new();
    for line in block.lines() {
        let name = line.strip_prefix("// ").and_then(|comment| comment.split([':', ' ']).next());
        match name {
            Some(name) if name.ends_with(".rhai") => files.push((name.to_owned(), String::new())),
            Some("any") => files.push(("causes.rhai".to_owned(), String::new())),
            _ => files.last_mut().unwrap().1.push_str(&format!("{line}\n")),
        }
    }
    files.iter().fold(RuleFiles::default(), |pack, (path, text)| pack.with(path, text))
}

#[test]
fn the_long_example_uses_every_word_as_it_is_used() {
    let files = long_example();
    assert_eq!(files.iter().count(), 13);
    let told = load(&files).err().unwrap();
    // It is an excerpt: it names things that it does not declare, and cuts their texts short.
    let wrong = told.iter().filter(|fault| !matches!(fault.code, Code::UnknownName | Code::Incomplete));
    assert_eq!(wrong.map(line).collect::<Vec<_>>(), [""; 0]);
}
