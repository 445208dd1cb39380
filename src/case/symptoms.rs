//! The symptoms of a case.

use super::parse::find_listed;
use super::types::Seen;
use crate::inference::MAX_SYMPTOMS;
use crate::json::{FaultCode, Faults, Node};
use crate::knowledge::{Declarations, Key, Knowledge, Named, Product};

/// Above this certainty a symptom counts as present, below it as absent.
const EVEN: f64 = 0.5;

/// The symptoms; for an unknown one those of the product are suggested before all others.
pub(super) fn read(
    node: &Node<'_>,
    knowledge: &Knowledge,
    product: Option<Key<Product>>,
    faults: &mut Faults,
) -> Vec<Seen> {
    let declared = &knowledge.declared;
    let mut symptoms: Vec<Seen> = Vec::new();
    node.items(faults, |faults, item| {
        if let Some(seen) = read_one(&item, knowledge, product, faults)
            && fits(seen, &symptoms, &item, declared, faults)
        {
            symptoms.push(seen);
        }
    });
    let weighed = symptoms.iter().filter(|seen| seen.certainty > 0.0).count();
    if weighed > MAX_SYMPTOMS {
        let detail =
            format!("{weighed} symptoms are present or uncertain; at most {MAX_SYMPTOMS} can be weighed exactly");
        node.fault(faults, FaultCode::OutOfRange, detail, Some("give those that most pieces show".to_owned()));
    }
    symptoms
}

fn read_one(
    item: &Node<'_>,
    knowledge: &Knowledge,
    product: Option<Key<Product>>,
    faults: &mut Faults,
) -> Option<Seen> {
    let object = item.object(faults, &["symptom", "present", "certainty"])?;
    let listed = product.map(|product| knowledge.view(product).listed_symptoms.as_slice()).unwrap_or_default();
    let symptom = object
        .required(faults, "symptom", None)
        .and_then(|node| find_listed(&node, &knowledge.declared.symptoms, listed, "symptom", faults));
    let present = object.optional("present").map_or(Some(true), |node| node.boolean(faults));
    let certainty = object.optional("certainty").map_or(Some(1.0), |node| node.number_within(faults, 0.0, 1.0));
    let (present, certainty) = (present?, certainty?);
    Some(Seen { symptom: symptom?, certainty: if present { certainty } else { 1.0 - certainty } })
}

/// Whether `seen` can stand beside the symptoms before it.
fn fits(seen: Seen, earlier: &[Seen], item: &Node<'_>, declared: &Declarations, faults: &mut Faults) -> bool {
    let symptom = &declared.symptoms[seen.symptom];
    for other in earlier {
        if other.symptom == seen.symptom {
            let (code, detail) = if (other.certainty > EVEN) == (seen.certainty > EVEN) {
                (FaultCode::Duplicate, format!("`{}` stands twice", symptom.id))
            } else {
                (FaultCode::Contradiction, format!("`{}` is both present and absent", symptom.id))
            };
            item.fault(faults, code, detail, None);
            return false;
        }
        if declared.contradict(seen.symptom, other.symptom) && other.certainty > EVEN && seen.certainty > EVEN {
            let detail =
                format!("`{}` cannot be present together with `{}`", symptom.id, declared.symptoms[other.symptom].id());
            item.fault(faults, FaultCode::Contradiction, detail, Some("give the one that most pieces show".to_owned()));
            return false;
        }
    }
    true
}
