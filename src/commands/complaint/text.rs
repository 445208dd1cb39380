//! What a complaint is taken for, as plain text.

use crate::intake::{Interpretation, PossibleSymptom, PossibleUnit, Quote, Saying, UnnamedValue};
use crate::paragraphs::{WIDTHS, push_paragraph};

/// What a complaint is taken for, in paragraphs of at most `width` characters a line.
pub(super) fn interpretation(answer: &Interpretation<'_>, width: usize) -> String {
    let width = width.clamp(WIDTHS.0, WIDTHS.1);
    let mut page = String::new();
    let product = match (answer.product, answer.products.is_empty()) {
        (Some(product), _) => format!("product: {product}"),
        (None, true) => "product: not known; name it with --product".to_owned(),
        (None, false) => {
            let ids: Vec<&str> = answer.products.iter().map(|one| one.product).collect();
            format!("product: not certain; name it with --product, for example {}", ids.join(", "))
        }
    };
    push_paragraph(&mut page, width, 0, "", &product);
    let (sure, candidates): (Vec<_>, Vec<_>) = answer.symptoms.iter().partition(|one| one.sure);
    list(&mut page, width, "understood", sure.iter().map(|one| symptom(one)).chain(understood(answer)));
    let facts = answer.facts.iter().filter(|one| !one.sure);
    let facts = facts.map(|one| format!("{}: {} ({})", one.fact, one.question, quotes(&one.quotes)));
    list(&mut page, width, "perhaps meant, choose", candidates.iter().map(|one| symptom(one)).chain(facts));
    list(&mut page, width, "values without a reading", answer.values.iter().map(value));
    list(&mut page, width, "contradictions", answer.contradictions.iter().map(|one| one.text.clone()));
    list(&mut page, width, "not understood", answer.not_understood.iter().map(|quote| format!("“{}”", quote.text)));
    let draft = answer.draft.as_ref().and_then(|draft| serde_json::to_string(draft).ok());
    if let Some(draft) = draft {
        page.push_str("\ndraft of a case (for `whybake diagnose -`)\n");
        page.push_str(&draft);
        page.push('\n');
    }
    page
}

fn list(page: &mut String, width: usize, heading: &str, items: impl Iterator<Item = String>) {
    let items: Vec<String> = items.collect();
    if items.is_empty() {
        return;
    }
    page.push('\n');
    push_paragraph(page, width, 0, "", heading);
    items.iter().for_each(|item| push_paragraph(page, width, 2, "- ", item));
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
