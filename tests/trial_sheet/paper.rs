//! The sheet on paper: everything stands in it, and nothing in it is markup.

use serde_json::{Value, json};
use whybake::trial_sheet::{Detail, TrialRequest, TrialSheet, markdown, page, page_fit, text};

use crate::small_pack::{RULES, with};

/// Calls `check` with the sheet of a request.
fn sheet_of(request: &Value, check: impl FnOnce(&TrialSheet<'_>)) {
    let request = TrialRequest::parse(request.to_string().as_bytes(), RULES.knowledge()).unwrap();
    check(&TrialSheet::plan(&RULES, &request).unwrap());
}

/// The same of one whose ingredient has a hostile name.
fn sheet(check: impl FnOnce(&TrialSheet<'_>)) {
    let mut request = with(&json!({"actions": ["more_water", "proof_longer"]}));
    let hostile = json!({"name": "<script>alert('|x|')</script>\n# y", "amount": 1, "unit": "kg"});
    request["case"]["formula"]["ingredients"].as_array_mut().unwrap().push(hostile);
    sheet_of(&request, check);
}

const HEADINGS: [&str; 9] = [
    "What is tried",
    "Runs",
    "Write down at every run",
    "Counts as fixed",
    "Hold the same",
    "How many pieces",
    "Decide",
    "Stop when",
    "Cautions",
];

#[test]
fn every_part_stands_on_every_paper() {
    sheet(|sheet| {
        for paper in [text(sheet, 80), markdown(sheet), page(sheet)] {
            let places: Vec<Option<usize>> = HEADINGS.iter().map(|heading| paper.find(heading)).collect();
            assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?}\n{paper}");
            for wanted in ["Trial sheet: Bun", "proof time", "65 min", "Released", "Lot"] {
                let found = paper.to_lowercase().contains(&wanted.to_lowercase());
                assert!(found, "{wanted} is not in\n{paper}");
            }
        }
    });
}

#[test]
fn the_page_holds_no_script_and_asks_for_nothing() {
    sheet(|sheet| {
        let page = page(sheet);
        assert!(page.starts_with("<!doctype html>") && page.ends_with("</html>\n"));
        assert!(page.contains("&lt;script&gt;alert(&#39;|x|&#39;)&lt;/script&gt; # y"), "{page}");
        for forbidden in ["<script", "<link", "<img", "src=", "href=", "http:", "https:", "@import", "url("] {
            assert!(!page.contains(forbidden), "{forbidden}");
        }
        assert!(page.contains("size: A4"));
        for element in [
            "section", "table", "ul", "p", "tr", "td", "th", "strong", "style", "body", "head", "span", "div", "b",
            "colgroup",
        ] {
            let opened = page.matches(&format!("<{element}>")).count() + page.matches(&format!("<{element} ")).count();
            assert_eq!(opened, page.matches(&format!("</{element}>")).count(), "{element}");
        }
        // The water of run A and the proof time of run B, and nothing else, differ from the control.
        assert_eq!(page.matches("<td><strong>").count(), 2);
    });
}

#[test]
fn markdown_keeps_its_tables_whole() {
    sheet(|sheet| {
        let markdown = markdown(sheet);
        assert!(markdown.contains(r"\<script\>alert('\|x\|')\</script\> \# y"), "{markdown}");
        for table in markdown.split("\n\n").filter(|part| part.starts_with('|')) {
            let columns: Vec<usize> = table.lines().map(|line| line.replace(r"\|", "").matches('|').count()).collect();
            assert!(columns.windows(2).all(|pair| pair[0] == pair[1]), "{columns:?}\n{table}");
        }
    });
}

#[test]
fn text_keeps_to_its_width() {
    sheet(|sheet| {
        let text = text(sheet, 72);
        assert!(text.lines().all(|line| line.chars().count() <= 72 || line.contains("sha256:")), "{text}");
    });
}

/// One sheet for all, so that a row of grams is not taken for one of kilograms: 0.2 kg yeast, 10 kg flour.
#[test]
fn every_line_names_its_unit_and_a_place_for_its_lot() {
    sheet_of(&with(&json!({"actions": ["more_water"]})), |sheet| {
        let markdown = markdown(sheet);
        for line in ["| Flour, kg | 10.000 |", "| Yeast, g | 200 |", "| Water, kg | 6.000 | **6.300** |"] {
            assert!(markdown.contains(line), "{line} is not in\n{markdown}");
        }
        assert!(markdown.contains("Lot used") && markdown.contains("Case: lot A1."), "{markdown}");
    });
}

/// A place to write for every bake, in the order of baking: with repeats a run has several.
#[test]
fn every_bake_has_a_column_to_write_in() {
    let request = with(&json!({"actions": ["more_water", "proof_longer"], "repeats": 4, "control": "first_and_last"}));
    sheet_of(&request, |sheet| {
        let page = page(sheet);
        let places: Vec<Option<usize>> = (1..=16).map(|bake| page.find(&format!(">no. {bake} "))).collect();
        assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?}\n{page}");
        assert_eq!(page.matches(">no. ").count(), 16);
        assert!(page.contains(">no. 1 control<") && page.contains(">no. 4 control<"), "{page}");
        assert!(page.contains("1 control, 2 "), "{page}");
        assert_eq!(page.matches("<td class=\"blank\">").count(), 16 * (sheet.record.len() + 2));
    });
}

/// Whatever is left out for want of room: never weights, limits, records, when to stop, the head of a caution.
#[test]
fn a_crowded_sheet_is_cut_in_words_and_never_in_figures() {
    let mut request = with(&json!({"actions": ["set_salt", "more_water", "less_fat", "proof_longer"], "repeats": 2}));
    let lines = request["case"]["formula"]["ingredients"].as_array_mut().unwrap();
    lines.extend((0..44).map(|own| json!({"name": format!("Seed blend {own}"), "amount": 1, "unit": "kg"})));
    sheet_of(&request, |sheet| {
        let (fit, page) = (page_fit(sheet), page(sheet));
        assert!(fit.detail > Detail::Full && fit.pages == 1 && fit.filled <= 0.98, "{fit:?}");
        assert!(page.contains("Left out of this page for want of room"), "{page}");
        for own in sheet.record.iter().map(|own| own.title.as_str()).chain(sheet.stop.iter().map(String::as_str)) {
            assert!(page.contains(&own.replace('\'', "&#39;")), "{own} is not in\n{page}");
        }
        for own in
            ["Seed blend 43", "from 50 min to 70 min", "below 2 %", "65 min", "The floor is slippery", "Lot used"]
        {
            assert!(page.contains(own), "{own} is not in\n{page}");
        }
        assert!(!markdown(sheet).contains("Left out"));
    });
}

#[test]
fn a_sheet_with_room_is_printed_in_large_type_and_in_full() {
    sheet_of(&with(&json!({"actions": ["more_water"]})), |sheet| {
        let fit = page_fit(sheet);
        assert_eq!((fit.type_size_pt, fit.detail, fit.pages), (9.0, Detail::Full, 1));
        assert!(page(sheet).contains("font-size: 9pt"));
    });
}

#[test]
fn what_takes_more_than_a_page_has_a_second_one_to_write_on() {
    let mut request = with(&json!({"actions": ["set_salt", "more_water", "less_fat", "proof_longer"], "repeats": 4}));
    let lines = request["case"]["formula"]["ingredients"].as_array_mut().unwrap();
    lines.extend((0..70).map(|own| json!({"name": format!("Seed blend {own}"), "amount": 1, "unit": "kg"})));
    sheet_of(&request, |sheet| {
        let (fit, page) = (page_fit(sheet), page(sheet));
        assert!(fit.pages == 2 && fit.filled <= 0.98, "{fit:?}");
        let told = page.find("stands on page 2").unwrap();
        assert!(told < page.find("Cautions").unwrap() && page.contains("page 2</h1>"), "{page}");
        assert!(page.find("Write down at every run").unwrap() > page.find("released or discarded by").unwrap());
    });
}
