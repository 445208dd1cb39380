//! Words of evidence: weights for and against, usual shares, groups, regions.

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::{Call, Word, describes, makes};
use crate::inference::usual_share;
use crate::knowledge::{Cause, Evidence, EvidenceKind, Regions, Weights};

const CAUSE: &[Kind] = &[Kind::Cause];

/// How far Σ share·10^(weight/10) may be from 1: authors round their figures.
const ROUNDING: f64 = 0.05;

pub(super) const WORDS: &[Word] =
    &[
        describes("evidence", CAUSE, ".evidence(dough_temperature > 29, STRONG, against(MODERATE))", evidence),
        describes(
            "evidence_in_regions",
            CAUSE,
            ".evidence_in_regions(dough_temperature, [24, 28], [-8, -2, 4.7], [0.2, 0.6, 0.2])",
            evidence_in_regions,
        ),
        makes("against", &[], "against(MODERATE)", |call| {
            if call.takes(1, 1) { call.weight(0).map(Term::Against) } else { None }
        }),
        makes("usual", &[], "usual(0.1)", |call| {
            if !call.takes(1, 1) {
                return None;
            }
            let share = call.number(0)?;
            if share > 0.0 && share < 1.0 {
                return Some(Term::Usual(share));
            }
            call.out_of_range(format!("{share} is not between 0 and 1, both excluded"));
            None
        }),
        makes("group", &[], "group(\"heat of the dough\")", |call| {
            if call.takes(1, 1) { call.text(0).map(Term::Group) } else { None }
        }),
    ];

/// What may follow the weight.
#[derive(Default)]
struct Options {
    against: Option<f64>,
    usual: Option<f64>,
    group: Option<String>,
}

fn evidence(call: &mut Call<'_>) {
    if !call.takes(3, 6) {
        return;
    }
    let (condition, supports, options) = (call.condition(1), call.weight(2), options(call, 3));
    let (Some(condition), Some(supports)) = (condition, supports) else {
        return;
    };
    let Some(weights) = weights(call, supports, &options) else {
        return;
    };
    push(call, EvidenceKind::Graded(condition, weights), options.group);
}

fn evidence_in_regions(call: &mut Call<'_>) {
    if !call.takes(5, 6) {
        return;
    }
    let quantity = call.quantity(1);
    let (edges, weights, usual) = (call.numbers(2), call.numbers(3), call.numbers(4));
    let options = options(call, 5);
    let (Some(quantity), Some(edges), Some(weights), Some(usual)) = (quantity, edges, weights, usual) else {
        return;
    };
    if regions_fit(call, &edges, &weights, &usual) {
        let regions = Regions { quantity, edges, weights, usual };
        push(call, EvidenceKind::Regions(regions), options.group);
    }
}

fn push(call: &mut Call<'_>, kind: EvidenceKind, group: Option<String>) {
    let item = Evidence { kind, group, place: call.at.clone() };
    call.set::<Cause>(|cause| cause.evidence.push(item));
}

fn options(call: &mut Call<'_>, from: usize) -> Options {
    let mut options = Options::default();
    for term in call.arguments.iter().skip(from).cloned().collect::<Vec<_>>() {
        let earlier = match term {
            Term::Against(weight) => options.against.replace(weight).map(|_| "against"),
            Term::Usual(share) => options.usual.replace(share).map(|_| "usual"),
            Term::Group(name) => options.group.replace(name).map(|_| "group"),
            Term::Unknown | Term::Nothing => None,
            Term::Weight(_) | Term::Number(_) => {
                call.wrong("a second weight stands in `against(…)`".to_owned());
                None
            }
            other => {
                call.wrong_kind("`against(…)`, `usual(…)` or `group(…)`", other.kind());
                None
            }
        };
        if let Some(word) = earlier {
            let help = Some("leave out one of the two".to_owned());
            call.fault(Code::Duplicate, format!("`{word}(…)` stands twice in one piece of evidence"), help);
        }
    }
    options
}

/// Completes the weights: of the weight for, the weight against and the usual share, two settle the third.
fn weights(call: &mut Call<'_>, supports: f64, options: &Options) -> Option<Weights> {
    let ratio = 10_f64.powf(supports / 10.0);
    let Some(usual) = options.usual else {
        let usual = options.against.and_then(|against| usual_share(supports / 10.0, -against / 10.0));
        return Some(Weights { supports, opposes: options.against.unwrap_or(0.0), usual });
    };
    let left = (1.0 - usual * ratio) / (1.0 - usual);
    if left <= 0.0 {
        let message =
            format!("{supports} decibans cannot hold when the condition is usually true in {usual} of all cases");
        let help = format!("a usual share under {:.3}, or a smaller weight", 1.0 / ratio);
        call.fault(Code::InconsistentWeights, message, Some(help));
        return None;
    }
    let opposes = -10.0 * left.log10();
    if let Some(against) = options.against
        && (usual * ratio + (1.0 - usual) * 10_f64.powf(-against / 10.0) - 1.0).abs() > ROUNDING
    {
        let message = format!("{supports} for, {against} against and a usual share of {usual} do not agree");
        let help = format!("with this share the weight against is {opposes:.1}; leave out one of the three");
        call.fault(Code::InconsistentWeights, message, Some(help));
        return None;
    }
    Some(Weights { supports, opposes: options.against.unwrap_or(opposes), usual: Some(usual) })
}

fn regions_fit(call: &mut Call<'_>, edges: &[f64], weights: &[f64], usual: &[f64]) -> bool {
    let regions = edges.len() + 1;
    if edges.is_empty() || weights.len() != regions || usual.len() != regions {
        call.wrong(format!("{} edges make {regions} regions: a weight and a share for each", edges.len()));
        return false;
    }
    if edges.iter().zip(edges.iter().skip(1)).any(|(low, high)| low >= high) {
        call.out_of_range("the edges do not ascend".to_owned());
        return false;
    }
    if usual.iter().any(|share| *share <= 0.0) || (usual.iter().sum::<f64>() - 1.0).abs() > ROUNDING {
        call.out_of_range("the usual shares are not above 0 with a sum of 1".to_owned());
        return false;
    }
    let total: f64 = usual.iter().zip(weights).map(|(share, weight)| share * 10_f64.powf(weight / 10.0)).sum();
    if (total - 1.0).abs() > ROUNDING {
        let message =
            format!("the weights do not agree with the usual shares: Σ share·10^(weight/10) is {total:.3}, not 1");
        call.fault(
            Code::InconsistentWeights,
            message,
            Some("what counts for in one region counts against in others".to_owned()),
        );
        return false;
    }
    true
}
