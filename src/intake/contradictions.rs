//! Symptoms of a text that cannot stand together.

use std::collections::BTreeSet;

use super::answer::{ComplaintContradiction, Saying};
use super::interpreter::Interpreter;
use super::mentions::Mention;

impl<'k> Interpreter<'_, 'k> {
    /// Sure symptoms that cannot stand together are sure no more.
    pub(super) fn contradictions(&self, symptoms: &mut [Mention]) -> Vec<ComplaintContradiction<'k>> {
        let mut found = Vec::new();
        let mut doubtful = BTreeSet::new();
        for (place, one) in symptoms.iter().enumerate().filter(|(_, one)| one.sure) {
            for (behind, other) in symptoms.iter().enumerate().skip(place + 1).filter(|(_, other)| other.sure) {
                if let Some(contradiction) = self.contradiction(one, other) {
                    found.push(contradiction);
                    doubtful.extend([place, behind]);
                }
            }
        }
        for place in doubtful {
            if let Some(one) = symptoms.get_mut(place) {
                one.sure = false;
            }
        }
        found
    }

    fn contradiction(&self, one: &Mention, other: &Mention) -> Option<ComplaintContradiction<'k>> {
        let keys = [one, other].map(|named| self.index.symptom_keys.get(named.found.entry).copied());
        let [Some(first), Some(second)] = keys else { return None };
        let (own, rival) = (&self.declared.symptoms[first], &self.declared.symptoms[second]);
        if first == second {
            let text = format!("`{}` is said to be both present and absent", own.id);
            return (one.said != other.said).then(|| ComplaintContradiction { ids: vec![&own.id], text });
        }
        let opposed = own.contradicts.contains(&second) || rival.contradicts.contains(&first);
        let both = one.said == Saying::Present && other.said == Saying::Present;
        (opposed && both).then(|| ComplaintContradiction {
            ids: vec![&own.id, &rival.id],
            text: format!("`{}` cannot be present together with `{}`", own.id, rival.id),
        })
    }
}
