//! The sheet as a page to print on two sides of A4: one file, nothing fetched, no script.

use std::fmt::Write as _;

use super::answer::{IntakeSheet, SheetChoice};
use super::html::Escaped;

/// Blank lines for the formula.
const FORMULA_LINES: usize = 8;

const STYLE: &str = "\
@page { size: A4; margin: 10mm; }
* { box-sizing: border-box; }
body { font: 10pt/1.3 sans-serif; color: #000; background: #fff; margin: 1rem auto; max-width: 190mm; }
h1 { font-size: 15pt; margin: 0 0 1mm; }
h2 { font-size: 11pt; margin: 2mm 0 1mm; border-bottom: 1pt solid #000; break-after: avoid; }
h3 { font-size: 1em; margin: 1mm 0 0; break-after: avoid; }
p, ul { margin: 0 0 1mm; } ul { padding-left: 5mm; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .4mm 1mm; }
tr, .item { break-inside: avoid; border-bottom: .5pt solid #767676; } thead { display: table-header-group; }
.two { columns: 2; column-gap: 6mm; } .item { display: flex; gap: 2mm; padding: .3mm 0; }
.ticks { flex: none; white-space: nowrap; } .grow { flex: 1; } .short { flex: none; width: 26mm; }
.narrow { width: 12mm; } .value { width: 34mm; } .hint { color: #333; font-size: .85em; font-weight: normal; }
.blanks { display: grid; grid-template-columns: 1fr 1fr; gap: 1mm 6mm; } .blanks label { display: flex; gap: 2mm; white-space: nowrap; }
input[type=text] { border: 0; border-bottom: .5pt solid #000; background: none; flex: 1; width: 100%; font: inherit; min-width: 8mm; }
input.with-unit { display: inline-block; width: 55%; }
input[type=checkbox] { display: inline-block; margin: 0 .5mm 0 0; vertical-align: middle; } .choices label { display: inline-block; margin-right: 3mm; }
textarea { width: 100%; height: 16mm; border: .5pt solid #000; font: inherit; }
@media print { body { margin: 0; max-width: none; font-size: 7.5pt; line-height: 1.2; } h1 { font-size: 12pt; } h2 { font-size: 9pt; } }
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
    html.push_str(
        "<section aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">Before you look, smell or taste</h2>\n<ul>\n",
    );
    for caution in &sheet.cautions {
        let _ = writeln!(html, "<li>{}</li>", Escaped(caution));
    }
    html.push_str("</ul>\n</section>\n");
}

fn symptoms(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str(
        "<section aria-labelledby=\"symptoms\">\n<h2 id=\"symptoms\">What is seen, felt and tasted</h2>\n<div class=\"two\">\n",
    );
    for part in &sheet.symptoms {
        let name = if part.part.is_empty() { "product" } else { part.part };
        let _ = writeln!(html, "<h3>{}</h3>", Escaped(name));
        for one in &part.symptoms {
            ticks(html, one.symptom, one.title, [("present", "seen"), ("absent", "absent")], one.description);
        }
    }
    html.push_str("</div>\n");
    choose(html, "other_symptom", "Also seen", &sheet.other_symptoms);
    html.push_str("</section>\n");
}

/// Two boxes to tick, value and word each, before what is asked.
fn ticks(html: &mut String, name: &str, asked: &str, boxes: [(&str, &str); 2], hint: &str) {
    let (name, asked) = (Escaped(name), Escaped(asked));
    let _ = write!(html, "<div class=\"item\" role=\"group\" aria-label=\"{asked}\"><span class=\"ticks\">");
    for (value, word) in boxes {
        let _ = write!(html, "<label><input type=\"checkbox\" name=\"{name}\" value=\"{value}\">{word}</label> ");
    }
    let _ = write!(html, "</span><span>{asked}");
    if !hint.is_empty() {
        let _ = write!(html, " <span class=\"hint\">{}</span>", Escaped(hint));
    }
    html.push_str("</span></div>\n");
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
             <td><input type=\"text\" class=\"with-unit\" name=\"{id}\" aria-label=\"{title}, value in {symbol}\"> {symbol}</td>\
             <td><input type=\"text\" name=\"{id}_limits\" aria-label=\"{title}, limits of the plant in {symbol}\"></td></tr>",
            Escaped(one.method),
            one.effort_minutes
        );
    }
    html.push_str("</tbody>\n</table>\n</section>\n");
}

fn facts(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str(
        "<section aria-labelledby=\"facts\">\n<h2 id=\"facts\">Questions about line and ingredients</h2>\n<div class=\"two\">\n",
    );
    for one in &sheet.facts {
        ticks(html, one.fact, one.question, [("true", "yes"), ("false", "no")], "");
    }
    html.push_str("</div>\n</section>\n");
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
    html.push_str("<div class=\"two\">\n");
    for place in 1..=FORMULA_LINES {
        let (name, title) = (format!("line_{place}"), format!("Ingredient {place}"));
        let _ = write!(
            html,
            "<div class=\"item\"><span class=\"grow\"><input type=\"text\" name=\"{name}\" aria-label=\"{title}\"></span>"
        );
        amount_and_stage(html, &name, &title);
    }
    for one in &sheet.formula.ingredients {
        let _ = write!(html, "<div class=\"item\"><span class=\"grow\">{}</span>", Escaped(one.title));
        amount_and_stage(html, one.ingredient, one.title);
    }
    html.push_str(
        "</div>\n<p class=\"choices\"><label><input type=\"checkbox\" name=\"complete\">these are all lines</label></p>\n</section>\n",
    );
}

fn amount_and_stage(html: &mut String, name: &str, title: &str) {
    let (name, title) = (Escaped(name), Escaped(title));
    for (what, words) in [("amount", "amount and unit"), ("stage", "stage")] {
        let _ = write!(
            html,
            "<span class=\"short\"><input type=\"text\" name=\"{name}_{what}\" placeholder=\"{words}\" aria-label=\"{title}, {words}\"></span>"
        );
    }
    html.push_str("</div>\n");
}

fn requirements(html: &mut String, sheet: &IntakeSheet<'_>) {
    html.push_str(
        "<section aria-labelledby=\"requirements\">\n<h2 id=\"requirements\">What answers must respect</h2>\n",
    );
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
