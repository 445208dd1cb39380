//! What a complaint is taken for, as plain text.

use crate::intake::{Interpretation, PossibleSymptom, PossibleUnit, Quote, Saying, UnnamedValue};
use crate::paragraphs::Paragraphs;

/// What a complaint is taken for, in paragraphs of at most `width` characters a line.
pub(super) fn interpretation(answer: &Interpretation<'_>, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    if !answer.cautions.is_empty() {
        page.add(0, "", "first of all");
        answer.cautions.iter().for_each(|one| page.add(2, "- ", &format!("{} ({})", one.text, quotes(&one.quotes))));
        page.blank();
    }
    let product = match (answer.product, answer.products.is_empty()) {
        (Some(product), _) => format!("product: {product}"),
        (None, true) => "product: not known; name it with --product".to_owned(),
        (None, false) => {
            let ids: Vec<&str> = answer.products.iter().map(|one| one.product).collect();
            format!("product: not certain; name it with --product, for example {}", ids.join(", "))
        }
    };
    page.add(0, "", &product);
    let (sure, candidates): (Vec<_>, Vec<_>) = answer.symptoms.iter().partition(|one| one.sure);
    page.list("understood", sure.iter().map(|one| symptom(one)).chain(understood(answer)));
    let facts = answer.facts.iter().filter(|one| !one.sure);
    let facts = facts.map(|one| format!("{}: {} ({})", one.fact, one.question, quotes(&one.quotes)));
    page.list("perhaps meant, choose", candidates.iter().map(|one| symptom(one)).chain(facts));
    page.list("values without a reading", answer.values.iter().map(value));
    page.list("contradictions", answer.contradictions.iter().map(|one| one.text.clone()));
    page.list("not understood", answer.not_understood.iter().map(|quote| format!("“{}”", quote.text)));
    let draft = answer.draft.as_ref().and_then(|draft| serde_json::to_string(draft).ok());
    if let Some(draft) = draft {
        page.heading("draft of a case (for `whybake diagnose -`)");
        page.add_unbroken(&draft);
    }
    page.into_text()
}

fn symptom(one: &PossibleSymptom<'_>) -> String {
    let said = match one.said {
        Saying::Present => "",
        Saying::Hardly => ", hardly there",
        Saying::Absent => ", not there",
        Saying::Unclear => ", there or not: unclear",
    };
    format!("{}{said}: {} ({:.2}; {})", one.symptom, one.title, one.score, quotes(&one.quotes))
}

/// Readings and facts that are sure.
fn understood(answer: &Interpretation<'_>) -> Vec<String> {
    let readings = answer.readings.iter().map(|one| {
        let note = one.note.as_ref().map(|note| format!("; {note}")).unwrap_or_default();
        format!("{}: {} {} ({}{note})", one.reading, short(one.value), one.unit, quotes(&one.quotes))
    });
    let facts = answer.facts.iter().filter(|one| one.sure);
    let facts = facts.map(|one| {
        let answer = if one.said == Saying::Present { "yes" } else { "no" };
        format!("{}: {answer} ({})", one.fact, quotes(&one.quotes))
    });
    readings.chain(facts).collect()
}

fn value(one: &UnnamedValue<'_>) -> String {
    let suggestions: Vec<&str> = one.suggestions.iter().map(|reading| reading.reading).collect();
    let perhaps = if suggestions.is_empty() { String::new() } else { format!("; perhaps {}", suggestions.join(", ")) };
    let unit = |unit: &PossibleUnit<'_>| {
        let plausible = if unit.plausible { "plausible" } else { "cannot be true" };
        format!("; in {}: {} {}, {plausible}", unit.unit, short(unit.value), unit.reading_unit)
    };
    let units: String = one.units.iter().map(unit).collect();
    format!("“{}”: {}{perhaps}{units}", one.quote.text, one.reason)
}

/// Six places: more are of the conversion.
fn short(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

fn quotes(quotes: &[Quote]) -> String {
    let texts: Vec<String> = quotes.iter().map(|quote| format!("“{}”", quote.text)).collect();
    texts.join(", ")
}
