//! The load as a whole: all or nothing, warnings, digests, the printed form.

use whybake::rules::{Code, RuleFiles, Severity, load};

use crate::support::{Changed, assert_loads, faults, line, pack};

#[test]
fn a_good_pack_loads() {
    assert_loads(&pack());
    let loaded = load(&pack()).unwrap();
    let declared = &loaded.knowledge.declared;
    assert_eq!((declared.pack.id.as_str(), declared.pack.version.as_str()), ("small", "1.0.0"));
    assert_eq!(declared.pack.digest, pack().digest());
    assert_eq!(declared.causes.ids().collect::<Vec<_>>(), ["dough_too_warm"]);
    assert_eq!(declared.readings.ids().collect::<Vec<_>>(), ["dough_temperature", "room_temperature"]);
}

#[test]
fn the_order_in_which_files_are_found_does_not_matter() {
    let (sorted, mut reversed) = (pack(), RuleFiles::default());
    for (path, text) in sorted.iter().collect::<Vec<_>>().into_iter().rev() {
        reversed.insert(path, text);
    }
    assert_eq!(sorted.digest(), reversed.digest());
    assert_eq!(
        load(&sorted).unwrap().knowledge.declared.pack.files,
        load(&reversed).unwrap().knowledge.declared.pack.files
    );
}

#[test]
fn any_change_changes_the_digest() {
    let first = pack().digest();
    assert!(first.strip_prefix("sha256:").is_some_and(|hex| hex.len() == 64), "{first}");
    assert_ne!(first, pack().but("mixing.rhai", "28, 30", "28, 31").digest());
    assert_ne!(first, pack().with("empty.rhai", "").digest());
    // The same characters, cut at another place between path and text.
    let (mut one, mut other) = (RuleFiles::default(), RuleFiles::default());
    one.insert("ab", "c");
    other.insert("a", "bc");
    assert_ne!(one.digest(), other.digest());
}

#[test]
fn one_fault_keeps_the_whole_pack_from_loading() {
    let other = "cause(\"other\").title(\"o\").mechanism(\"m\").products(soft_rolls).prior(2);";
    assert!(load(&pack().with("other.rhai", other)).is_err());
}

#[test]
fn a_pack_loads_again_after_its_fault_is_mended() {
    let bad = pack().but("mixing.rhai", "COMMON", "COMON");
    assert!(load(&bad).is_err());
    assert_loads(&bad.but("mixing.rhai", "COMON", "COMMON"));
}

#[test]
fn a_property_that_is_stated_wrongly_is_not_lacking_on_top() {
    let files = pack().but("mixing.rhai", ".action(colder_water)", ".action(coldest_tap)");
    assert_eq!(
        faults(&files).iter().map(line).collect::<Vec<_>>(),
        ["unknown-name mixing.rhai:8:13 [coldest_tap] unknown name `coldest_tap`"]
    );
}

#[test]
fn a_cause_without_symptom_action_confirmation_or_source_is_only_a_warning() {
    let poor = "cause(\"poor\").title(\"p\").mechanism(\"m\").products(soft_rolls).prior(COMMON);";
    let warnings = load(&pack().with("poor.rhai", poor)).unwrap().warnings;
    assert!(warnings.iter().all(|warning| warning.severity == Severity::Warning));
    let said: Vec<String> = warnings.iter().filter(|warning| warning.code == Code::Incomplete).map(line).collect();
    assert_eq!(
        said,
        [
            "incomplete poor.rhai:1:1 [cause] `poor` has no action -- add `.action(…)`",
            "incomplete poor.rhai:1:1 [cause] `poor` has no confirming reading -- add `.confirm(…)`",
            "incomplete poor.rhai:1:1 [cause] `poor` has no source -- add `.source(…)`",
            "incomplete poor.rhai:1:1 [cause] `poor` has no symptom -- add `.shows(…)`",
        ],
    );
}

#[test]
fn faults_of_many_kinds_are_told_at_once_in_the_order_of_reading() {
    let files = pack()
        .but("readings.rhai", ".unit(\"Cel\")\n", ".unit(\"degC\")\n")
        .but("mixing.rhai", "prior(COMMON)", "prior(2)")
        .and("mixing.rhai", "reading(\"ph\");")
        .and("facts.rhai", "fact(\"dough_waits\");");
    let codes: Vec<Code> = faults(&files).iter().map(|fault| fault.code).collect();
    assert_eq!(codes, [Code::Duplicate, Code::Unit, Code::OutOfRange, Code::WrongFile]);
}

#[test]
fn a_fault_prints_with_its_line_underlined() {
    let files = pack().but("mixing.rhai", "prior(COMMON)", "prior(COMON)");
    assert_eq!(
        faults(&files)[0].to_string(),
        "fault[unknown-name]: unknown name `COMON`
 --> mixing.rhai:5:12
  |
5 |     .prior(COMON)
  |            ^^^^^
  = help: did you mean `COMMON`?
"
    );
}
