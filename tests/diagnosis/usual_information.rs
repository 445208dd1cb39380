//! What questions usually tell, against sums over all states of a small network.

use whybake::diagnosis::Diagnostician;
use whybake::knowledge::{Input, Named};
use whybake::rules::{RuleFiles, load};

const FILES: [(&str, &str); 7] = [
    ("pack.rhai", "pack(\"two_symptoms\").title(\"Small pack\").version(\"1.0.0\");\n"),
    ("scales.rhai", "weight_word(\"STRONG\", 10);\n"),
    ("sources.rhai", "source(\"practice\").citation(\"rule of thumb of the trade\").common_practice();\n"),
    ("products.rhai", "family(\"rolls\").title(\"Rolls\");\nproduct(\"bun\").title(\"Bun\").family(rolls);\n"),
    (
        "symptoms.rhai",
        "symptom(\"hollow\").title(\"Hollow\").description(\"A gap.\").products(rolls).leak(0.01);\n\
         symptom(\"small\").title(\"Small\").description(\"A small piece.\").products(rolls).leak(0.02);\n",
    ),
    (
        "facts.rhai",
        "fact(\"dough_waits\").title(\"dough waits\").question(\"Does the dough wait?\").products(rolls).effort(2);\n",
    ),
    (
        "cause.rhai",
        "cause(\"too_warm\").title(\"Too warm\").mechanism(\"Warm dough gasses early.\").products(rolls).prior(0.1)\n    \
         .shows(hollow, 0.6).shows(small, 0.3).evidence(dough_waits, STRONG, against(STRONG)).source(practice);\n",
    ),
];

/// Prior of the cause, and P(symptom) with and without it: 1 − (1 − leak)(1 − strength).
const PRIOR: f64 = 0.1;
const HOLLOW: (f64, f64) = (1.0 - 0.99 * 0.4, 0.01);
const SMALL: (f64, f64) = (1.0 - 0.98 * 0.7, 0.02);

/// Mutual information of a cause of this probability and an answer, from P(yes) with and without the cause.
fn information(cause: f64, (with, without): (f64, f64)) -> f64 {
    let yes = cause * with + (1.0 - cause) * without;
    let term = |joint: f64, product: f64| joint * (joint / product).log2();
    term(cause * with, cause * yes)
        + term(cause * (1.0 - with), cause * (1.0 - yes))
        + term((1.0 - cause) * without, (1.0 - cause) * yes)
        + term((1.0 - cause) * (1.0 - without), (1.0 - cause) * (1.0 - yes))
}

fn seen((with, without): (f64, f64)) -> (f64, f64) {
    let probability = PRIOR * with + (1.0 - PRIOR) * without;
    (probability, PRIOR * with / probability)
}

#[test]
fn the_mean_over_complaints_agrees_with_sums_over_all_states() {
    let mut files = RuleFiles::default();
    FILES.iter().for_each(|(path, text)| files.insert(path, text));
    let loaded = load(&files).unwrap_or_else(|faults| panic!("{faults:?}"));
    let diagnostician = Diagnostician::new(loaded.knowledge).unwrap();
    let declared = &diagnostician.knowledge().declared;
    let usual = diagnostician.usual_information(declared.products.find("bun").unwrap()).unwrap();
    let ((hollow, if_hollow), (small, if_small)) = (seen(HOLLOW), seen(SMALL));
    let (of_hollow, of_small) = (hollow / (hollow + small), small / (hollow + small));
    // The usual share u of "yes" follows from the weights: 10 u + 0.1 (1 − u) = 1.
    let share = 0.9 / 9.9;
    let fact = (10.0 * share, share);
    let expected = of_hollow * information(if_hollow, fact) + of_small * information(if_small, fact);
    let [(Input::Fact(key), bits)] = usual.inputs.as_slice() else { panic!("{:?}", usual.inputs) };
    assert_eq!(declared.facts[*key].id(), "dough_waits");
    assert!((bits - expected).abs() < 1e-12, "{bits} {expected}");
    let looks =
        [(hollow, of_small * information(if_small, HOLLOW)), (small, of_hollow * information(if_hollow, SMALL))];
    for ((key, probability, bits), (expected_probability, expected_bits)) in usual.symptoms.iter().zip(looks) {
        let id = &declared.symptoms[*key].id;
        assert!((probability - expected_probability).abs() < 1e-12, "{id}: {probability} {expected_probability}");
        assert!((bits - expected_bits).abs() < 1e-12, "{id}: {bits} {expected_bits}");
    }
}
