//! The intake sheet as plain text.

use crate::intake::{IntakeSheet, SheetChoice};
use crate::paragraphs::{WIDTHS, push_paragraph};

/// The sheet in paragraphs of at most `width` characters a line.
pub(super) fn sheet(sheet: &IntakeSheet<'_>, width: usize) -> String {
    let width = width.clamp(WIDTHS.0, WIDTHS.1);
    let mut page = String::new();
    let heading = |page: &mut String, text: &str| {
        page.push('\n');
        push_paragraph(page, width, 0, "", text);
    };
    push_paragraph(&mut page, width, 0, "", &format!("Intake sheet: {}. The most telling stands first.", sheet.title));
    heading(&mut page, "identify the case");
    let blanks: Vec<&str> = sheet.reference.iter().map(|blank| blank.title).collect();
    push_paragraph(&mut page, width, 2, "", &blanks.join("; "));
    if !sheet.cautions.is_empty() {
        heading(&mut page, "before you look, smell or taste");
        sheet.cautions.iter().for_each(|caution| push_paragraph(&mut page, width, 2, "! ", caution));
    }
    heading(&mut page, "look for");
    for part in &sheet.symptoms {
        push_paragraph(&mut page, width, 2, "", &format!("{}:", part.part));
        for one in &part.symptoms {
            let text = format!("{}: {} [{}]", one.title, one.description, one.symptom);
            push_paragraph(&mut page, width, 4, "[ ] ", &text);
        }
    }
    let others: Vec<&str> = sheet.other_symptoms.iter().map(|one| one.title).collect();
    push_list(&mut page, width, "also seen: ", &others);
    heading(&mut page, "measure, where it can be had");
    for one in &sheet.readings {
        let unit = if one.symbol.is_empty() { String::new() } else { format!(", {}", one.symbol) };
        let text = format!("{}{unit}: {} ({} min) [{}]", one.title, one.method, one.effort_minutes, one.reading);
        push_paragraph(&mut page, width, 2, "[ ] ", &text);
    }
    heading(&mut page, "ask");
    for one in &sheet.facts {
        push_paragraph(&mut page, width, 2, "[ ] ", &format!("{} [{}]", one.question, one.fact));
    }
    heading(&mut page, "formula");
    push_paragraph(&mut page, width, 2, "", sheet.formula.note);
    let given: Vec<&str> = sheet.formula.gives.iter().map(|one| one.title).collect();
    push_list(&mut page, width, "gives without measuring: ", &given);
    let named: Vec<&str> = sheet.formula.ingredients.iter().map(|one| one.ingredient).collect();
    push_list(&mut page, width, "asked for by name: ", &named);
    heading(&mut page, "what answers must respect");
    push_list(&mut page, width, "diets: ", &ids(&sheet.requirements.diets));
    push_list(&mut page, width, "market: ", &ids(&sheet.requirements.markets));
    push_list(&mut page, width, "allergens to avoid: ", &ids(&sheet.requirements.allergens));
    page
}

fn ids<'k>(choices: &[SheetChoice<'k>]) -> Vec<&'k str> {
    choices.iter().map(|choice| choice.id).collect()
}

fn push_list(page: &mut String, width: usize, mark: &str, items: &[&str]) {
    if !items.is_empty() {
        push_paragraph(page, width, 2, "", &format!("{mark}{}", items.join(", ")));
    }
}
