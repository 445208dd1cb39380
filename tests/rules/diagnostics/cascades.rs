//! One mistake is one fault: what follows from a declaration that failed is not told on top.

use whybake::rules::{Diagnostic, RuleFiles, load};

/// The pack as it is shipped: much stands on each of its declarations.
fn pack() -> RuleFiles {
    RuleFiles::embedded()
}

/// The faults of the pack when the first `right` of a file is written otherwise.
fn faults_of(file: &str, right: &str, wrong: &str) -> Vec<String> {
    let mut files = pack();
    let text = files.text(file).expect("a file of the pack").to_owned();
    assert!(text.contains(right), "{file} has `{right}`");
    files.insert(file, &text.replacen(right, wrong, 1));
    let told = |fault: &Diagnostic| format!("{}:{} {}", fault.file, fault.line, fault.message);
    load(&files).expect_err("a mistake").iter().map(told).collect()
}

/// Files of every stage that much else names.
const DECLARING: [(&str, &str); 10] = [
    ("requirements.rhai", "diet"),
    ("cautions.rhai", "caution"),
    ("vocabulary/dough/readings.rhai", "reading"),
    ("vocabulary/dough/facts.rhai", "fact"),
    ("vocabulary/dough/actions.rhai", "action"),
    ("cookies/symptoms.rhai", "symptom"),
    ("limits.rhai", "limit"),
    ("fillings/sources.rhai", "source"),
    ("short_pastry/products.rhai", "family"),
    ("ingredients.rhai", "ingredient"),
];

#[test]
fn a_misspelt_declaring_word_is_one_fault() {
    for (file, word) in DECLARING {
        let misspelt = format!("{}{}", &word[..2], &word[3..]);
        let told = faults_of(file, &format!("{word}(\""), &format!("{misspelt}(\""));
        assert_eq!(told.len(), 1, "{file}: {told:#?}");
        assert!(told[0].contains(&format!("unknown word `{misspelt}`")), "{told:?}");
    }
}

#[test]
fn a_file_that_does_not_compile_is_one_fault() {
    for (file, word) in DECLARING {
        let told = faults_of(file, &format!("{word}(\""), &format!("{word}((\""));
        assert_eq!(told.len(), 1, "{file}: {told:#?}");
    }
}

#[test]
fn a_misspelt_property_is_one_fault() {
    let reading = "vocabulary/dough/readings.rhai";
    for (right, wrong) in
        [(".unit(", ".unt("), (".plausible(", ".plausble("), (".method(", ".methd("), ("\"Cel\"", "\"Celc\"")]
    {
        let told = faults_of(reading, right, wrong);
        assert_eq!(told.len(), 1, "{right}: {told:#?}");
    }
}

#[test]
fn what_is_declared_first_is_told_first() {
    let mut files = pack();
    let text = files.text("bread_common/bake.rhai").expect("a file").replacen("cause(\"", "cuase(\"", 1);
    files.insert("bread_common/bake.rhai", &text);
    let text = files.text("vocabulary/dough/readings.rhai").expect("a file").replacen(".unit(", ".unt(", 1);
    files.insert("vocabulary/dough/readings.rhai", &text);
    let told: Vec<String> = load(&files).expect_err("two mistakes").into_iter().map(|fault| fault.file).collect();
    assert_eq!(told, ["vocabulary/dough/readings.rhai", "bread_common/bake.rhai"]);
}
