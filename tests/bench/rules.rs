//! Loading a rule pack of 400 files of causes: text to linked knowledge, with all checks.
#![allow(
    clippy::panic,
    missing_docs,
    reason = "a bench fails by panicking, and criterion's macros make undocumented items"
)]

use std::fmt::Write;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use whybake::rules::{RuleFiles, load};

/// Families, each with as many products, symptoms, readings and facts of its own.
const FAMILIES: usize = 10;

/// Files of causes of a family; each holds two causes.
const FILES: usize = 40;

/// Texts as long as those of the pack.
const SENTENCE: &str =
    "Warm dough gasses before it has strength; cells near the skin merge, and the crust is lifted off the crumb.";

/// The invented pack: 10 families, 30 products, 800 causes in 400 files.
fn pack_of_400_files() -> RuleFiles {
    let mut files = RuleFiles::default();
    files.insert("pack.rhai", "pack(\"bench\").title(\"Invented\").version(\"1\");\n");
    files.insert(
        "scales.rhai",
        "prior_word(\"RARE\", 0.01);\nstrength_word(\"OFTEN\", 0.6);\nstrength_word(\"SOMETIMES\", 0.3);\n\
         weight_word(\"STRONG\", 10);\nweight_word(\"MODERATE\", 5);\n",
    );
    files.insert("sources.rhai", "source(\"rule\").citation(\"rule of thumb of the trade\").common_practice();\n");
    let mut products = String::new();
    for family in 0..FAMILIES {
        let _ = writeln!(products, "family(\"family_{family}\").title(\"Family {family}\");");
        for product in 0..3 {
            let _ = writeln!(
                products,
                "product(\"product_{family}_{product}\").title(\"Product {family} {product}\").family(family_{family});"
            );
        }
        vocabulary(&mut files, family);
        for file in 0..FILES {
            files.insert(&format!("family_{family}/causes_{file}.rhai"), &causes(family, file));
        }
    }
    files.insert("products.rhai", &products);
    files
}

fn vocabulary(files: &mut RuleFiles, family: usize) {
    let (mut symptoms, mut facts, mut readings, mut actions) = Default::default();
    let lists: [(&mut String, usize, &str); 4] = [
        (
            &mut symptoms,
            25,
            "symptom(\"symptom_{}\").title(\"Symptom {}\").description(\"SENTENCE\").part(\"crumb\").products(FAMILY);",
        ),
        (&mut facts, 30, "fact(\"fact_{}\").title(\"fact {}\").question(\"Is it so?\").products(FAMILY).effort(3);"),
        (
            &mut readings,
            40,
            "reading(\"reading_{}\").title(\"reading {}\").description(\"SENTENCE\").unit(\"Cel\").plausible(-50, 150)\n    .window(FAMILY, 20, 30).method(\"probe thermometer\").effort(3).source(rule);",
        ),
        (&mut actions, 40, "action(\"action_{}\").title(\"Action {}\").text(\"SENTENCE\").effort(10).source(rule);"),
    ];
    for (text, count, pattern) in lists {
        for number in 0..count {
            let line = pattern.replace("{}", &format!("{family}_{number}"));
            let line = line.replace("SENTENCE", SENTENCE).replace("FAMILY", &format!("family_{family}"));
            let _ = writeln!(text, "{line}");
        }
    }
    for (name, text) in [("symptoms", symptoms), ("facts", facts), ("readings", readings), ("actions", actions)] {
        files.insert(&format!("family_{family}/{name}.rhai"), &text);
    }
}

fn causes(family: usize, file: usize) -> String {
    let mut text = String::new();
    for number in [2 * file, 2 * file + 1] {
        let of = |kind: &str, offset: usize, count: usize| format!("{kind}_{family}_{}", (number + offset) % count);
        let (first, second) = (of("reading", 0, 40), of("reading", 7, 40));
        let _ = writeln!(
            text,
            "cause(\"cause_{family}_{number}\")\n    .title(\"Cause {family} {number}\")\n    .mechanism(\"{SENTENCE}\")\n    .products(family_{family})\n    .prior(RARE)\n    \
             .shows({}, OFTEN)\n    .shows({}, OFTEN)\n    .shows({}, SOMETIMES)\n    .shows({}, 0.1)\n    \
             .evidence({first}.rises(28, 30), STRONG, against(MODERATE))\n    .evidence({second}.too_low() & {}, MODERATE)\n    .evidence({}, STRONG, usual(0.05))\n    \
             .action({}.set(\"value\", target({first}) * 3 - {second}, \"Cel\"), OFTEN)\n    .confirm({first} > 29, excluded({first} < 26))\n    .source(rule);\n",
            of("symptom", 1, 25),
            of("symptom", 4, 25),
            of("symptom", 9, 25),
            of("symptom", 13, 25),
            of("fact", 1, 30),
            of("fact", 11, 30),
            of("action", 0, 40),
        );
    }
    text
}

fn loading(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("rules");
    group.sample_size(20);
    let embedded = RuleFiles::embedded();
    group.bench_function("load the embedded pack", |bench| bench.iter(|| load(black_box(&embedded))));
    let files = pack_of_400_files();
    if let Err(faults) = load(&files) {
        panic!("{}", faults.iter().take(3).map(ToString::to_string).collect::<String>());
    }
    group.bench_function("load 400 files of causes", |bench| bench.iter(|| load(black_box(&files))));
    group.finish();
}

criterion_group!(benches, loading);
criterion_main!(benches);
