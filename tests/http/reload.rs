//! Rules that change while the service runs. Every test waits for what must come, and not for a time.
#![cfg(unix)]

use std::fs;
use std::os::unix::fs::symlink;
use std::path::Path;
use std::ptr;
use std::sync::Arc;
use std::time::Instant;

use whybake::live_rules::Trigger;

use crate::small_pack::{CAUSE, Folder, NEVER, SOON, cause, pack, wait_until, write, write_pack};

#[test]
fn a_change_is_noticed_and_live() {
    let folder = Folder::new(NEVER).awake();
    let before = folder.live.current();
    let started = Instant::now();
    folder.write(CAUSE, &cause(0.2));
    let attempt = folder.wait_for(0.2);
    println!("live after {:?}, of which reading and loading {:?}", started.elapsed(), attempt.took);
    assert_eq!(attempt.by, Trigger::Watch);
    assert_eq!(before.files.digest(), pack(0.1).digest(), "who holds the rules keeps them");
    assert!(folder.live.current().loaded_at > before.loaded_at);
}

#[test]
fn files_and_folders_that_come_and_go_are_noticed() {
    let folder = Folder::new(NEVER);
    let more = "source(\"more\").citation(\"more\").common_practice();\n";
    folder.write("deep/deeper/sources.rhai", more);
    let mut with_more = pack(0.1);
    with_more.insert("deep/deeper/sources.rhai", more);
    wait_until("the new folder is loaded", || (folder.digest() == with_more.digest()).then_some(()));
    // A folder that was made while the service ran is watched too.
    folder.write("deep/deeper/sources.rhai", &more.replace("citation(\"more\")", "citation(\"most\")"));
    wait_until("the change in it is loaded", || (folder.digest() != with_more.digest()).then_some(()));
    fs::remove_dir_all(folder.dir.join("deep")).unwrap();
    folder.wait_for(0.1);
}

#[test]
fn rules_with_a_fault_change_nothing_and_good_ones_mend_it() {
    let folder = Folder::new(NEVER);
    folder.write(CAUSE, &cause(0.2).replace("hollow", "hollo"));
    let by = folder.wait_for_refusal(0.1, "fault[unknown-name]: unknown name `hollo`\n --> rolls/mixing.rhai:2:");
    assert_eq!(by, Trigger::Watch);
    folder.write(CAUSE, &cause(0.3));
    folder.wait_for(0.3);
    folder.write(CAUSE, "cause(");
    folder.wait_for_refusal(0.3, " --> rolls/mixing.rhai:1:");
    // Back to what is in force.
    folder.write(CAUSE, &cause(0.3));
    folder.wait_for(0.3);
}

#[test]
fn rules_that_fail_their_tests_change_nothing() {
    let folder = Folder::new(NEVER);
    let test = |limit: &str| {
        format!(r#"{{"title": "x", "case": {{"product": "bun"}}, "expect": {{"above": {{"too_warm": {limit}}}}}}}"#)
    };
    folder.write("rolls/cases/blank.json", &test("0.15"));
    folder.wait_for_refusal(0.1, "fault[failed-test]: `above`: wanted `too_warm` above 0.15, came 0.100\n");
    folder.write(CAUSE, &cause(0.2));
    folder.wait_for(0.2);
}

#[test]
fn a_folder_that_is_deleted_changes_nothing_and_is_loaded_when_it_is_back() {
    let folder = Folder::new(SOON);
    fs::remove_dir_all(&folder.dir).unwrap();
    folder.wait_for_refusal(0.1, "fault[file]: cannot read `");
    write_pack(&folder.dir, 0.2);
    folder.wait_for(0.2);
    // And is watched again.
    folder.write(CAUSE, &cause(0.3));
    folder.wait_for(0.3);
}

#[test]
fn a_file_that_is_half_written_changes_nothing_until_it_is_whole() {
    let folder = Folder::new(NEVER);
    let text = cause(0.2);
    let (half, _) = text.split_at(text.len() / 2);
    folder.write(CAUSE, half);
    folder.wait_for_refusal(0.1, " --> rolls/mixing.rhai:");
    folder.write(CAUSE, &text);
    folder.wait_for(0.2);
}

/// Lays a pack out as an orchestrator mounts a configuration map: files are links through `..data`, which is exchanged.
fn lay_out_map(dir: &Path, revision: &str, prior: f64) {
    let state = dir.join(revision);
    write_pack(&state, prior);
    symlink(revision, dir.join("..data_tmp")).unwrap();
    fs::rename(dir.join("..data_tmp"), dir.join("..data")).unwrap();
}

#[test]
fn a_mounted_configuration_map_that_is_exchanged_is_loaded() {
    let temporary = tempfile::tempdir().unwrap();
    let dir = temporary.path().join("rules");
    fs::create_dir(&dir).unwrap();
    lay_out_map(&dir, "..2026_01", 0.1);
    for name in ["pack.rhai", "sources.rhai", "products.rhai", "symptoms.rhai", "rolls"] {
        symlink(format!("..data/{name}"), dir.join(name)).unwrap();
    }
    let folder = Folder::of(temporary, dir, NEVER);
    for (revision, prior) in [("..2026_02", 0.2), ("..2026_03", 0.3), ("..2026_04", 0.4)] {
        lay_out_map(&folder.dir, revision, prior);
        assert_eq!(folder.wait_for(prior).by, Trigger::Watch);
    }
}

/// Links further up give no notice, as network mounts do not.
#[test]
fn a_change_that_gives_no_notice_is_found_by_looking() {
    let temporary = tempfile::tempdir().unwrap();
    let release = |name: &str| temporary.path().join(name);
    write_pack(&release("one").join("rules"), 0.1);
    write_pack(&release("two").join("rules"), 0.2);
    symlink("one", release("current")).unwrap();
    let dir = release("current").join("rules");
    let (next, current) = (release("next"), release("current"));
    let folder = Folder::of(temporary, dir, SOON).awake();
    symlink("two", &next).unwrap();
    fs::rename(&next, &current).unwrap();
    assert_eq!(folder.wait_for(0.2).by, Trigger::Poll);
    // From now on the new place is watched.
    folder.write(CAUSE, &cause(0.3));
    folder.wait_for(0.3);
}

#[test]
fn a_folder_that_is_a_link_is_exchanged() {
    let temporary = tempfile::tempdir().unwrap();
    let at = |name: &str| temporary.path().join(name);
    write_pack(&at("one"), 0.1);
    write_pack(&at("two"), 0.2);
    symlink("one", at("rules")).unwrap();
    let (next, dir) = (at("next"), at("rules"));
    let folder = Folder::of(temporary, dir.clone(), NEVER);
    symlink("two", &next).unwrap();
    fs::rename(&next, &dir).unwrap();
    assert_eq!(folder.wait_for(0.2).by, Trigger::Watch);
    folder.write(CAUSE, &cause(0.3));
    folder.wait_for(0.3);
}

#[test]
fn quick_changes_make_one_load() {
    let folder = Folder::new(NEVER);
    let mut attempts: Vec<_> = Vec::new();
    for step in 1..=40_u32 {
        folder.write(CAUSE, &cause(f64::from(step) / 100.0));
        attempts.extend(folder.live.last_attempt());
    }
    attempts.push(folder.wait_for(0.4));
    attempts.dedup_by(|one, other| ptr::eq(Arc::as_ptr(one), Arc::as_ptr(other)));
    // One, unless this test was itself held up between two changes.
    assert!(attempts.len() <= 3, "{} loads", attempts.len());
}

#[test]
fn what_is_no_rule_and_what_says_the_same_loads_nothing() {
    let folder = Folder::new(SOON);
    folder.write("rolls/.mixing.rhai.swp", "x");
    folder.write("rolls/notes.txt", "x");
    folder.write(CAUSE, &cause(0.1));
    write(&folder.dir.join("more/notes.md"), "x");
    // A change that counts comes after them; nothing before it was an attempt.
    folder.write(
        "rolls/cases/blank.json",
        r#"{"title": "x", "case": {"product": "bun"}, "expect": {"leader": "too_warm"}}"#,
    );
    let attempt = folder.wait_for(0.1);
    assert!(ptr::eq(Arc::as_ptr(&attempt), Arc::as_ptr(&folder.live.last_attempt().unwrap())));
    assert_eq!(folder.live.current().files.cases().count(), 1);
}
