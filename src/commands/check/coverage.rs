//! Coverage by rule tests, for people.

use std::fmt::Write;

use crate::rule_tests::{CauseTallies, Coverage};

/// What is not reached, then the table.
pub(super) fn text(coverage: &Coverage) -> String {
    let mut text = String::new();
    let mut last = "";
    for item in &coverage.unreached {
        if item.cause != last {
            let _ = writeln!(text, "{}", item.cause);
            last = &item.cause;
        }
        let _ = writeln!(text, "  {}:{}: {}: {}", item.file, item.line, item.item, item.never);
    }
    if !text.is_empty() {
        text.push('\n');
    }
    format!("{text}{}", table(coverage))
}

/// One line a family and one for all; rounded down.
pub(super) fn table(coverage: &Coverage) -> String {
    let families = coverage.families.iter();
    let wide = families.clone().map(|family| family.title.chars().count()).max().unwrap_or_default().max(HEADING.len());
    let mut text = format!(
        "{:wide$} {:>6} {:>8} {:>8} {:>8} {:>8} {:>8} {:>8}\n",
        HEADING, "tests", "causes", "evidence", "regions", "links", "actions", "together"
    );
    for family in families {
        line(&mut text, wide, &family.title, &family.tests.to_string(), &family.reached);
    }
    line(&mut text, wide, "all causes", "", &coverage.total);
    text.push('\n');
    text
}

const HEADING: &str = "reached by rule tests";

fn line(text: &mut String, wide: usize, title: &str, tests: &str, reached: &CauseTallies) {
    let CauseTallies { causes, evidence, regions, links, prescriptions } = reached;
    let _ = writeln!(
        text,
        "{title:wide$} {tests:>6} {causes:>8} {evidence:>8} {regions:>8} {links:>8} {prescriptions:>8} {:>8}",
        reached.all()
    );
}
