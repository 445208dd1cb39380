//! A small valid pack to spoil, and the one line that a test says of a diagnostic.

use whybake::rules::{Diagnostic, RuleFiles, Severity, load};

/// Files of the small pack; one cause, one of everything that it needs.
const FILES: [(&str, &str); 9] = [
    ("pack.rhai", "pack(\"small\").title(\"Small pack\").version(\"1.0.0\");\n"),
    (
        "scales.rhai",
        r#"prior_word("COMMON", 0.10);
strength_word("OFTEN", 0.6);
weight_word("STRONG", 10);
weight_word("MODERATE", 5);
"#,
    ),
    ("sources.rhai", "source(\"common_practice\").citation(\"rule of thumb of the trade\").common_practice();\n"),
    (
        "products.rhai",
        r#"family("soft_rolls").title("Soft rolls");
product("hamburger_bun").title("Hamburger bun").family(soft_rolls);
"#,
    ),
    (
        "symptoms.rhai",
        r#"symptom("hollow_under_crust").title("Hollow").description("A gap under the crust.").products(soft_rolls);
symptom("low_volume").title("Low volume").description("A small piece.").products(soft_rolls);
"#,
    ),
    (
        "facts.rhai",
        "fact(\"dough_waits\").title(\"dough waits\").question(\"Does dough wait?\").products(soft_rolls);\n",
    ),
    (
        "readings.rhai",
        r#"reading("dough_temperature").title("dough temperature").method("probe")
    .unit("Cel")
    .plausible(-5, 60)
    .window(soft_rolls, 25, 28);
reading("room_temperature").title("room temperature").method("thermometer").unit("Cel").plausible(-20, 60);
"#,
    ),
    ("actions.rhai", "action(\"colder_water\").title(\"Use colder water\").text(\"Cool the mixing water.\");\n"),
    (
        "mixing.rhai",
        r#"cause("dough_too_warm")
    .title("Dough too warm")
    .mechanism("Warm dough gasses too early.")
    .products(soft_rolls)
    .prior(COMMON)
    .shows(hollow_under_crust, OFTEN)
    .evidence(dough_temperature.rises(28, 30), STRONG, against(MODERATE))
    .action(colder_water)
    .confirm(dough_temperature > 29)
    .source(common_practice);
"#,
    ),
];

/// The small valid pack.
pub(crate) fn pack() -> RuleFiles {
    let mut files = RuleFiles::default();
    for (path, text) in FILES {
        files.insert(path, text);
    }
    files
}

/// Changes to a pack that leave a readable test.
pub(crate) trait Changed {
    /// The pack with a file added or replaced.
    fn with(self, path: &str, text: &str) -> Self;

    /// The pack with lines added at the end of a file.
    fn and(self, path: &str, lines: &str) -> Self;

    /// The pack with one text of a file put in the place of another, which must stand there once.
    fn but(self, path: &str, is: &str, becomes: &str) -> Self;

    /// The pack with one more property of its cause, on line 10 of `mixing.rhai` from column 5 on.
    fn property(self, property: &str) -> Self;
}

impl Changed for RuleFiles {
    fn with(mut self, path: &str, text: &str) -> Self {
        self.insert(path, text);
        self
    }

    fn and(self, path: &str, lines: &str) -> Self {
        let text = format!("{}{lines}\n", self.text(path).unwrap_or_default());
        self.with(path, &text)
    }

    fn but(self, path: &str, is: &str, becomes: &str) -> Self {
        let text = self.text(path).expect("the file is in the pack");
        assert_eq!(text.matches(is).count(), 1, "`{is}` stands once in {path}");
        let text = text.replace(is, becomes);
        self.with(path, &text)
    }

    fn property(self, property: &str) -> Self {
        self.but("mixing.rhai", "    .source", &format!("    {property}\n    .source"))
    }
}

/// The faults of a pack that must not load.
pub(crate) fn faults(files: &RuleFiles) -> Vec<Diagnostic> {
    match load(files) {
        Ok(_) => panic!("the pack loads, though it has a fault"),
        Err(diagnostics) => {
            diagnostics.into_iter().filter(|diagnostic| diagnostic.severity == Severity::Fault).collect()
        }
    }
}

/// One line a fault: `code file:line:column [underlined] message -- help`.
pub(crate) fn told(files: &RuleFiles) -> Vec<String> {
    faults(files).iter().map(line).collect()
}

/// Everything that matters of a diagnostic, on one line.
pub(crate) fn line(diagnostic: &Diagnostic) -> String {
    let Diagnostic { code, file, line, column, width, source_line, message, help, .. } = diagnostic;
    assert!(*width > 0, "nothing is underlined by {diagnostic}");
    let underlined: String = match column.checked_sub(1) {
        Some(start) => source_line.chars().skip(start).take(*width).collect(),
        None => String::new(),
    };
    let help = help.as_ref().map_or_else(String::new, |help| format!(" -- {help}"));
    format!("{} {file}:{line}:{column} [{underlined}] {message}{help}", code.word())
}

/// Asserts that the faults of a pack are exactly these.
#[track_caller]
pub(crate) fn assert_told(files: &RuleFiles, expected: &[&str]) {
    let told = told(files);
    assert!(told == expected, "told\n  {}\nexpected\n  {}", told.join("\n  "), expected.join("\n  "));
}

/// Asserts that a pack loads, and that nothing in it is doubtful.
#[track_caller]
pub(crate) fn assert_loads(files: &RuleFiles) {
    assert_eq!(doubts(files), [""; 0]);
}

/// The warnings of a pack that loads, without those about what the small pack declares for tests to use.
#[track_caller]
pub(crate) fn doubts(files: &RuleFiles) -> Vec<String> {
    match load(files) {
        Ok(loaded) => loaded.warnings.iter().map(line).filter(|told| !is_spare(told)).collect(),
        Err(faults) => panic!("{}", faults.iter().map(line).collect::<Vec<_>>().join("\n")),
    }
}

pub(crate) fn is_spare(told: &str) -> bool {
    let spare = ["unused facts.rhai:1:1", "unused readings.rhai:5:1", "unused symptoms.rhai:2:1"];
    spare.iter().any(|start| told.starts_with(start))
}
