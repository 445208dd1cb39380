//! What the evidence of the leading causes still needs.

use std::borrow::Cow;

use super::answer::Missing;
use super::circumstances::LaidOut;
use super::words::{input_id, input_title};
use crate::formulas::Figure;
use crate::knowledge::{Cause, EvidenceKind, Knowledge, ProductView, Quantity};

/// What the evidence of the leading causes still needs.
pub(super) fn missing<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    laid_out: &LaidOut,
    leading: &[usize],
) -> Vec<Missing<'k>> {
    let declared = &knowledge.declared;
    let mut missing: Vec<Missing<'k>> = Vec::new();
    for relevant in view.inputs.iter().filter(|relevant| !laid_out.circumstances.knows(relevant.input)) {
        let needed_by: Vec<&'k str> = leading
            .iter()
            .filter(|position| relevant.causes.binary_search(position).is_ok())
            .filter_map(|position| view.causes.get(*position))
            .map(|key| declared.causes[*key].id.as_str())
            .collect();
        if needed_by.is_empty() {
            continue;
        }
        let finding = input_id(declared, relevant.input);
        match missing.iter_mut().find(|other| other.finding == finding) {
            Some(other) => other
                .needed_by
                .extend(needed_by.into_iter().filter(|id| !other.needed_by.contains(id)).collect::<Vec<_>>()),
            None => {
                let title = Cow::Borrowed(input_title(declared, relevant.input));
                missing.push(Missing { finding, title, needed_by });
            }
        }
    }
    missing.extend(unknown_figures(knowledge, view, laid_out, leading));
    missing
}

/// Figures of a formula that was given, which the leading causes' evidence needs and which are not known.
fn unknown_figures<'k>(
    knowledge: &'k Knowledge,
    view: &ProductView,
    laid_out: &LaidOut,
    leading: &[usize],
) -> Vec<Missing<'k>> {
    let unknown = laid_out.figures.iter().filter(|figure| figure.estimate.is_none());
    let missing = unknown.filter_map(|figure| {
        let causes = leading.iter().filter_map(|position| view.causes.get(*position));
        let needed_by: Vec<&'k str> = causes
            .map(|key| &knowledge.declared.causes[*key])
            .filter(|cause| needs(knowledge, view, cause, figure))
            .map(|cause| cause.id.as_str())
            .collect();
        let title = Cow::Owned(format!("{}: {}", figure.quantity.title(), why_unknown(figure)));
        (!needed_by.is_empty()).then_some(Missing { finding: "formula", title, needed_by })
    });
    missing.collect()
}

/// Whether evidence of a cause asks for a figure, by itself or through a reading that is computed from it.
fn needs(knowledge: &Knowledge, view: &ProductView, cause: &Cause, figure: &Figure) -> bool {
    let main = view.main_stage.part();
    let is_it = |quantity: &Quantity| matches!(quantity, Quantity::Formula(own, part) if *own == figure.quantity && part.unwrap_or(main) == figure.part);
    let mut found = false;
    let mut visit = |quantity: &Quantity| {
        found |= is_it(quantity);
        if let Quantity::Reading(key) = quantity
            && let Some(computed) = &knowledge.declared.readings[*key].computed
        {
            computed.parts(&mut |inner| found |= is_it(inner));
        }
    };
    for item in &cause.evidence {
        match &item.kind {
            EvidenceKind::Graded(condition, _) => condition.quantities(&mut visit),
            EvidenceKind::Regions(regions) => regions.quantity.parts(&mut visit),
        }
    }
    found
}

/// Why a figure is not known.
fn why_unknown(figure: &Figure) -> String {
    match &figure.why_not {
        Some(why) => why.clone(),
        None => format!("not known of {}", figure.unknown_in.join(", ")),
    }
}
