//! The sheet on paper: everything stands in it, and nothing in it is markup.

use serde_json::json;
use whybake::trial_sheet::{TrialRequest, TrialSheet, markdown, page, text};

use crate::small_pack::{RULES, with};

/// Calls `check` with the sheet of a request whose ingredient has a hostile name.
fn sheet(check: impl FnOnce(&TrialSheet<'_>)) {
    let mut request = with(&json!({"actions": ["more_water", "proof_longer"]}));
    let hostile = json!({"name": "<script>alert('|x|')</script>\n# y", "amount": 1, "unit": "kg"});
    request["case"]["formula"]["ingredients"].as_array_mut().unwrap().push(hostile);
    let request = TrialRequest::parse(request.to_string().as_bytes(), RULES.knowledge()).unwrap();
    check(&TrialSheet::plan(&RULES, &request).unwrap());
}

const HEADINGS: [&str; 9] = [
    "What is tried",
    "Runs",
    "Hold the same",
    "Write down at every run",
    "How many pieces",
    "Counts as fixed",
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
        for element in
            ["section", "table", "ul", "p", "tr", "td", "th", "strong", "style", "body", "head", "span", "div"]
        {
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
