//! The sheet as a page to print: one file, nothing fetched, no script.

use std::fmt::Write as _;

use super::answer::{IntakeSheet, SheetChoice};
use super::html::Escaped;

/// Blank lines for the formula.
const FORMULA_LINES: usize = 4;

const STYLE: &str = "\
@page { size: A4; margin: 12mm; }
* { box-sizing: border-box; }
body { font: 10pt/1.3 sans-serif; color: #000; background: #fff; margin: 1rem auto; max-width: 190mm; }
h1 { font-size: 15pt; margin: 0 0 2mm; }
h2 { font-size: 11.5pt; margin: 4mm 0 1mm; border-bottom: 1pt solid #000; break-after: avoid; }
h3 { font-size: 10pt; margin: 2mm 0 .5mm; break-after: avoid; }
p, ul { margin: 0 0 1.5mm; } ul { padding-left: 5mm; }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: .6mm 1.5mm; }
tr { break-inside: avoid; border-bottom: .5pt solid #767676; } thead { display: table-header-group; }
.narrow { width: 15mm; } .value { width: 38mm; } .hint { color: #333; font-size: 8.5pt; }
.blanks { display: grid; grid-template-columns: 1fr 1fr; gap: 1.5mm 6mm; } .blanks label { display: flex; gap: 2mm; }
input[type=text] { border: 0; border-bottom: .5pt solid #000; background: none; flex: 1; width: 100%; font: inherit; min-width: 10mm; }
input[type=checkbox] { margin: 0 1mm 0 0; } .choices label { display: inline-block; margin-right: 4mm; }
textarea { width: 100%; height: 18mm; border: .5pt solid #000; font: inherit; }
@media print { body { margin: 0; max-width: none; font-size: 9pt; } h1 { font-size: 13pt; } .screen { display: none; } }
";

/// The page as HTML text.
#[must_use]
pub fn page(sheet: &IntakeSheet<'_>) -> String {
    let mut html = String::with_capacity(32 * 1024);
    let title = Escaped(sheet.title);
    let _ = write!(
        html,
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>Intake sheet: {title}</title>\n\
         <style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n<h1>Intake sheet: {title}</h1>\n\
         <p class=\"hint\">Leave blank what nobody looked at or measured: unknown is not no. The most telling stands first.</p>\n"
    );
    reference(&mut html, sheet);
    cautions(&mut html, sheet);
    symptoms(&mut html, sheet);
    readings(&mut html, sheet);
    facts(&mut html, sheet);
    formula(&mut html, sheet);
    requirements(&mut html, sheet);
    html.push_str(
        "<section aria-labelledby=\"words\">\n<h2 id=\"words\">In the words of whoever complains</h2>\n\
         <textarea aria-labelledby=\"words\"></textarea>\n</section>\n</main>\n</body>\n</html>\n",
    );
    html
}

fn reference(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str("<section class=\"blanks\" aria-label=\"What identifies the case\">\n");
    for blank in &sheet.reference {
        let _ = writeln!(
            html,
            "<label>{} <input type=\"text\" name=\"{}\"></label>",
            Escaped(blank.title),
            Escaped(blank.name)
        );
    }
    html.push_str("</section>\n");
}

fn cautions(html: &mut String, sheet: &IntakeSheet<'_>) {
    if sheet.cautions.is_empty() {
        return;
    }
    html.push_str("<section aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">Before you look, smell or taste</h2>\n<ul>\n");
    for caution in &sheet.cautions {
        let _ = writeln!(html, "<li>{}</li>", Escaped(caution));
    }
    html.push_str("</ul>\n</section>\n");
}

fn symptoms(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str(
        "<section aria-labelledby=\"symptoms\">\n<h2 id=\"symptoms\">What is seen, felt and tasted</h2>\n<table>\n\
         <thead><tr><th scope=\"col\">Look for</th><th scope=\"col\" class=\"narrow\">Seen</th>\
         <th scope=\"col\" class=\"narrow\">Absent</th></tr></thead>\n",
    );
    for part in &sheet.symptoms {
        let name = if part.part.is_empty() { "product" } else { part.part };
        let _ = writeln!(html, "<tbody>\n<tr><th scope=\"rowgroup\" colspan=\"3\">{}</th></tr>", Escaped(name));
        for one in &part.symptoms {
            let (id, title) = (Escaped(one.symptom), Escaped(one.title));
            let _ = writeln!(
                html,
                "<tr><td>{title}<br><span class=\"hint\">{}</span></td>\
                 <td><input type=\"checkbox\" name=\"{id}\" value=\"present\" aria-label=\"{title}: seen\"></td>\
                 <td><input type=\"checkbox\" name=\"{id}\" value=\"absent\" aria-label=\"{title}: absent\"></td></tr>",
                Escaped(one.description)
            );
        }
        html.push_str("</tbody>\n");
    }
    html.push_str("</table>\n");
    choose(html, "other_symptom", "Also seen", &sheet.other_symptoms);
    html.push_str("</section>\n");
}

fn readings(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str(
        "<section aria-labelledby=\"readings\">\n<h2 id=\"readings\">Readings worth having first</h2>\n<table>\n\
         <thead><tr><th scope=\"col\">Reading</th><th scope=\"col\" class=\"narrow\">Minutes</th>\
         <th scope=\"col\" class=\"value\">Value</th><th scope=\"col\" class=\"value\">Plant limits</th></tr></thead>\n<tbody>\n",
    );
    for one in &sheet.readings {
        let (id, title) = (Escaped(one.reading), Escaped(one.title));
        let symbol = Escaped(&one.symbol);
        let _ = writeln!(
            html,
            "<tr><th scope=\"row\">{title}<br><span class=\"hint\">{}</span></th><td>{}</td>\
             <td><input type=\"text\" size=\"6\" style=\"width:60%\" name=\"{id}\" aria-label=\"{title}, value in {symbol}\"> {symbol}</td>\
             <td><input type=\"text\" name=\"{id}_limits\" aria-label=\"{title}, limits of the plant in {symbol}\"></td></tr>",
            Escaped(one.method),
            one.effort_minutes
        );
    }
    html.push_str("</tbody>\n</table>\n</section>\n");
}

fn facts(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str(
        "<section aria-labelledby=\"facts\">\n<h2 id=\"facts\">Questions about line and ingredients</h2>\n<table>\n\
         <thead><tr><th scope=\"col\">Question</th><th scope=\"col\" class=\"narrow\">Yes</th>\
         <th scope=\"col\" class=\"narrow\">No</th></tr></thead>\n<tbody>\n",
    );
    for one in &sheet.facts {
        let (id, question) = (Escaped(one.fact), Escaped(one.question));
        let _ = writeln!(
            html,
            "<tr><td>{question}</td>\
             <td><input type=\"checkbox\" name=\"{id}\" value=\"true\" aria-label=\"Yes: {question}\"></td>\
             <td><input type=\"checkbox\" name=\"{id}\" value=\"false\" aria-label=\"No: {question}\"></td></tr>"
        );
    }
    html.push_str("</tbody>\n</table>\n</section>\n");
}

fn formula(html: &mut String, sheet: &IntakeSheet<'_>) {
    let _ = writeln!(
        html,
        "<section aria-labelledby=\"formula\">\n<h2 id=\"formula\">Formula</h2>\n<p>{}</p>",
        Escaped(sheet.formula.note)
    );
    let given: Vec<&str> = sheet.formula.gives.iter().map(|one| one.title).collect();
    if !given.is_empty() {
        let _ = writeln!(html, "<p class=\"hint\">It gives without measuring: {}.</p>", Escaped(&given.join("; ")));
    }
    html.push_str(
        "<table>\n<thead><tr><th scope=\"col\">Ingredient</th><th scope=\"col\" class=\"value\">Amount and unit</th>\
         <th scope=\"col\" class=\"value\">Stage</th></tr></thead>\n<tbody>\n",
    );
    for one in &sheet.formula.ingredients {
        line(html, one.title, one.ingredient);
    }
    for place in 1..=FORMULA_LINES {
        let _ = writeln!(
            html,
            "<tr><td><input type=\"text\" name=\"line_{place}\" aria-label=\"Further ingredient {place}\"></td>\
             <td><input type=\"text\" name=\"line_{place}_amount\" aria-label=\"Further ingredient {place}, amount and unit\"></td>\
             <td><input type=\"text\" name=\"line_{place}_stage\" aria-label=\"Further ingredient {place}, stage\"></td></tr>"
        );
    }
    html.push_str(
        "</tbody>\n</table>\n<p class=\"choices\"><label><input type=\"checkbox\" name=\"complete\"> these are all lines</label></p>\n</section>\n",
    );
}

fn line(html: &mut String, title: &str, id: &str) {
    let (title, id) = (Escaped(title), Escaped(id));
    let _ = writeln!(
        html,
        "<tr><th scope=\"row\">{title}</th><td><input type=\"text\" name=\"{id}_amount\" aria-label=\"{title}, amount and unit\"></td>\
         <td><input type=\"text\" name=\"{id}_stage\" aria-label=\"{title}, stage\"></td></tr>"
    );
}

fn requirements(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str("<section aria-labelledby=\"requirements\">\n<h2 id=\"requirements\">What answers must respect</h2>\n");
    let wanted = &sheet.requirements;
    for (name, title, choices) in [
        ("diet", "Diets", &wanted.diets),
        ("market", "Market", &wanted.markets),
        ("avoid", "Allergens to avoid", &wanted.allergens),
    ] {
        choose(html, name, title, choices);
    }
    html.push_str(
        "<p><label>Other ingredients to avoid <input type=\"text\" name=\"avoid_other\"></label></p>\n</section>\n",
    );
}

fn choose(html: &mut String, name: &str, title: &str, choices: &[SheetChoice<'_>]) {
    if choices.is_empty() {
        return;
    }
    let _ = write!(html, "<p class=\"choices\" role=\"group\" aria-label=\"{title}\">{title}: ");
    for one in choices {
        let _ = write!(
            html,
            "<label><input type=\"checkbox\" name=\"{name}\" value=\"{}\">{}</label> ",
            Escaped(one.id),
            Escaped(one.title)
        );
    }
    html.push_str("</p>\n");
}
