//! The way of one complaint, from its text to what it is taken for.

use std::collections::BTreeSet;
use std::sync::OnceLock;

use super::alarms::{alarms, caution};
use super::answer::{Interpretation, PossibleFact, PossibleProduct, PossibleSymptom, Quote, Saying};
use super::draft::{Sure, draft};
use super::index::{Index, product_index};
use super::leftovers::{leftovers, quotes};
use super::matching::Threshold;
use super::mentions::{Mention, mentions};
use super::phrases::PhraseIndex;
use super::products;
use super::request::Complaint;
use super::said::Denials;
use super::sheet::IntakeSheet;
use super::told_values::Spent;
use super::values::values;
use super::words::Words;
use crate::diagnosis::{Diagnostician, UsualInformation};
use crate::inference::{FindingsFault, MAX_SYMPTOMS};
use crate::knowledge::{Declarations, Key, Knowledge, Named as _, Product};

/// Least score and recall of a fact that may be meant (chosen on the tables of `tests/reference`).
const POSSIBLE_FACT: Threshold = Threshold { score: 0.6, recall: 0.6 };

/// Least score and recall of a fact that is sure (chosen likewise).
const SURE_FACT: Threshold = Threshold { score: 0.75, recall: 0.85 };

/// Fewest words that state a fact beyond doubt.
const FACT_WORDS: usize = 2;

/// The words of the rules, indexed for each product when it is first asked about.
#[derive(Debug)]
pub struct Intake {
    /// All products, then each of them.
    indexes: Vec<OnceLock<Index>>,
    products: OnceLock<PhraseIndex>,
    /// What the questions about each product usually tell.
    usual: Vec<OnceLock<Result<UsualInformation, FindingsFault>>>,
}

impl Intake {
    /// An intake for rules with so many products; nothing is indexed yet.
    #[must_use]
    pub fn new(knowledge: &Knowledge) -> Self {
        let indexes = (0..=knowledge.views().len()).map(|_| OnceLock::new()).collect();
        let usual = knowledge.views().iter().map(|_| OnceLock::new()).collect();
        Self { indexes, products: OnceLock::new(), usual }
    }

    /// Takes a complaint for what it says. The same text and rules give the same answer.
    #[must_use]
    pub fn interpret<'k>(&self, knowledge: &'k Knowledge, complaint: &Complaint) -> Interpretation<'k> {
        let words = Words::of_complaint(&complaint.text);
        let declared = &knowledge.declared;
        let names = self.products.get_or_init(|| product_index(declared));
        let (possible, sure) = products::possible(&words, names);
        let key = |entry: usize| declared.products.keys().nth(entry);
        let told = possible.first().filter(|_| sure).and_then(|found| key(found.entry));
        let product = complaint.product.or(told);
        let Some(index) = self.index(knowledge, product) else { return Interpretation::empty() };
        let mut answer = Interpreter { declared, index, words: &words, text: &complaint.text, most: complaint.most }
            .interpret(product);
        for found in possible.iter().filter(|_| complaint.product.is_none()) {
            let Some(key) = key(found.entry) else { continue };
            let product = &declared.products[key];
            let quotes = quotes(&complaint.text, &words, &found.named_by);
            answer.products.push(PossibleProduct {
                product: &product.id,
                title: &product.title,
                score: rounded(found.recall),
                quotes,
            });
        }
        answer
    }

    /// The sheet of what to ask about a product; its first asking takes the time of some thousand small inferences.
    ///
    /// # Errors
    /// Findings that do not fit the network; those made here do.
    pub fn sheet<'k>(
        &self,
        diagnostician: &'k Diagnostician,
        product: Key<Product>,
    ) -> Result<IntakeSheet<'k>, FindingsFault> {
        let knowledge = diagnostician.knowledge();
        let slot = self.usual.get(product.index());
        let usual = slot.map(|slot| slot.get_or_init(|| diagnostician.usual_information(product)).clone());
        let usual = usual.unwrap_or_else(|| diagnostician.usual_information(product))?;
        Ok(IntakeSheet::new(knowledge, knowledge.view(product), &usual))
    }

    fn index(&self, knowledge: &Knowledge, product: Option<Key<Product>>) -> Option<&Index> {
        let place = product.map_or(0, |key| key.index() + 1);
        self.indexes.get(place).map(|slot| slot.get_or_init(|| Index::new(knowledge, product)))
    }
}

impl Interpretation<'_> {
    fn empty() -> Self {
        Self {
            cautions: Vec::new(),
            product: None,
            products: Vec::new(),
            symptoms: Vec::new(),
            readings: Vec::new(),
            values: Vec::new(),
            facts: Vec::new(),
            contradictions: Vec::new(),
            not_understood: Vec::new(),
            draft: None,
        }
    }
}

/// A score to three places: more would claim a precision that words do not have.
fn rounded(score: f64) -> f64 {
    (score * 1e3).round() / 1e3
}

/// One text being taken for what it says.
pub(super) struct Interpreter<'a, 'k> {
    pub(super) declared: &'k Declarations,
    pub(super) index: &'a Index,
    pub(super) words: &'a Words,
    pub(super) text: &'a str,
    most: usize,
}

impl<'k> Interpreter<'_, 'k> {
    fn interpret(&self, product: Option<Key<Product>>) -> Interpretation<'k> {
        let mut answer = Interpretation::empty();
        let mut understood: BTreeSet<usize> = BTreeSet::new();
        let mut sure = Sure::default();
        let values = values(self.text, self.words);
        let mut spent = Spent::new(self.words.tokens.len());
        self.take_values(&values, &mut answer, &mut sure, &mut spent);
        for alarm in alarms(self.words) {
            answer.cautions.push(caution(&alarm, self.text, self.words));
            spent.alarm(&alarm);
        }
        understood.extend(spent.places());
        let denials = Denials::of(self.words);
        let mut symptoms = mentions(self.words, &self.index.symptoms, &denials, &spent);
        answer.contradictions.extend(self.contradictions(&mut symptoms));
        let facts = mentions(self.words, &self.index.facts, &denials, &spent);
        self.take_facts(&facts, &symptoms, &mut answer, &mut sure, &mut understood);
        self.take_symptoms(&symptoms, &mut answer, &mut sure, &mut understood);
        answer.not_understood = leftovers(self.text, self.words, &understood);
        answer.product = product.map(|key| self.declared.products[key].id());
        answer.draft = answer.product.map(|product| draft(product, &sure));
        answer
    }

    fn take_facts(
        &self,
        facts: &[Mention],
        symptoms: &[Mention],
        answer: &mut Interpretation<'k>,
        sure: &mut Sure<'k>,
        understood: &mut BTreeSet<usize>,
    ) {
        let likely = facts.iter().filter(|one| POSSIBLE_FACT.is_met(&one.found));
        for (place, one) in likely.enumerate() {
            let Some(key) = self.index.fact_keys.get(one.found.entry) else { continue };
            let fact = &self.declared.facts[*key];
            let is_sure = one.sure && is_beyond_doubt(one, symptoms);
            if is_sure {
                sure.facts.push((&fact.id, one.said == Saying::Present));
                understood.extend(&one.found.named_by);
            }
            // The caller's limit shortens the listing, and never the draft.
            if place >= self.most {
                continue;
            }
            understood.extend(&one.found.named_by);
            answer.facts.push(PossibleFact {
                fact: &fact.id,
                question: &fact.question,
                score: rounded(one.found.score),
                said: one.said,
                sure: is_sure,
                quotes: quotes(self.text, self.words, &one.found.named_by),
            });
        }
    }

    fn take_symptoms(
        &self,
        symptoms: &[Mention],
        answer: &mut Interpretation<'k>,
        sure: &mut Sure<'k>,
        understood: &mut BTreeSet<usize>,
    ) {
        for (place, one) in symptoms.iter().enumerate() {
            let listed = place < self.most;
            // A case holds no more than can be weighed exactly.
            let drafted = one.sure && sure.symptoms.len() < MAX_SYMPTOMS;
            let Some(key) = self.index.symptom_keys.get(one.found.entry).filter(|_| listed || drafted) else {
                continue;
            };
            let symptom = &self.declared.symptoms[*key];
            if drafted {
                sure.symptoms.push((&symptom.id, one.said, one.hedged));
            }
            let words = if one.sure { &one.found.about } else { &one.found.named_by };
            understood.extend(words.iter().chain(&one.found.turn));
            // The caller's limit shortens the listing, and never the draft.
            if !listed {
                continue;
            }
            answer.symptoms.push(PossibleSymptom {
                symptom: &symptom.id,
                title: &symptom.title,
                description: &symptom.description,
                score: rounded(one.found.score),
                said: one.said,
                sure: one.sure,
                quotes: self.words_of(one),
            });
        }
    }

    fn words_of(&self, one: &Mention) -> Vec<Quote> {
        let places: Vec<usize> = one.found.about.iter().copied().chain(one.found.turn).collect();
        quotes(self.text, self.words, &places)
    }
}

/// Whether a fact is stated plainly, and none of its words belongs to a symptom that is named better.
fn is_beyond_doubt(fact: &Mention, symptoms: &[Mention]) -> bool {
    let (found, named_by) = (&fact.found, &fact.found.named_by);
    let better = symptoms.iter().any(|symptom| {
        symptom.found.score > found.score && named_by.iter().all(|place| symptom.found.named_by.contains(place))
    });
    let plain = fact.said != Saying::Hardly && named_by.len() >= FACT_WORDS;
    plain && !better && SURE_FACT.is_met(found)
}
