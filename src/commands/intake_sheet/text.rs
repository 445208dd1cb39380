//! The intake sheet as plain text.

use crate::intake::{IntakeSheet, SheetChoice};
use crate::paragraphs::Paragraphs;

/// The sheet in paragraphs of at most `width` characters a line.
pub(super) fn sheet(sheet: &IntakeSheet<'_>, width: usize) -> String {
    let mut page = Paragraphs::new(width);
    page.add(0, "", &format!("Intake sheet: {}. The most telling stands first.", sheet.title));
    page.heading("identify the case");
    let blanks: Vec<&str> = sheet.reference.iter().map(|blank| blank.title).collect();
    page.add(2, "", &blanks.join("; "));
    if !sheet.cautions.is_empty() {
        page.heading("before you look, smell or taste");
        sheet.cautions.iter().for_each(|caution| page.add(2, "! ", caution));
    }
    page.heading("look for");
    for part in &sheet.symptoms {
        page.add(2, "", &format!("{}:", part.part));
        for one in &part.symptoms {
            let text = format!("{}: {} [{}]", one.title, one.description, one.symptom);
            page.add(4, "[ ] ", &text);
        }
    }
    let others: Vec<&str> = sheet.other_symptoms.iter().map(|one| one.title).collect();
    add_names(&mut page, "also seen: ", &others);
    page.heading("measure, where it can be had");
    for one in &sheet.readings {
        let unit = if one.symbol.is_empty() { String::new() } else { format!(", {}", one.symbol) };
        let text = format!("{}{unit}: {} ({} min) [{}]", one.title, one.method, one.effort_minutes, one.reading);
        page.add(2, "[ ] ", &text);
    }
    page.heading("ask");
    for one in &sheet.facts {
        page.add(2, "[ ] ", &format!("{} [{}]", one.question, one.fact));
    }
    page.heading("formula");
    page.add(2, "", sheet.formula.note);
    let given: Vec<&str> = sheet.formula.gives.iter().map(|one| one.title).collect();
    add_names(&mut page, "gives without measuring: ", &given);
    let named: Vec<&str> = sheet.formula.ingredients.iter().map(|one| one.ingredient).collect();
    add_names(&mut page, "asked for by name: ", &named);
    page.heading("what answers must respect");
    add_names(&mut page, "diets: ", &ids(&sheet.requirements.diets));
    add_names(&mut page, "market: ", &ids(&sheet.requirements.markets));
    add_names(&mut page, "allergens to avoid: ", &ids(&sheet.requirements.allergens));
    page.into_text()
}

fn ids<'k>(choices: &[SheetChoice<'k>]) -> Vec<&'k str> {
    choices.iter().map(|choice| choice.id).collect()
}

fn add_names(page: &mut Paragraphs, mark: &str, items: &[&str]) {
    if !items.is_empty() {
        page.add(2, "", &format!("{mark}{}", items.join(", ")));
    }
}
