//! The sections of the authors' guide that are written by the program.
//!
//! Each stands between `<!-- generated: NAME -->` and `<!-- end of NAME -->`.

use std::fmt::Write;

use super::code::Code;
use super::explanation::Example;
use super::reference::{WordReference, words};

/// The generated sections: name and text.
fn sections() -> [(&'static str, String); 2] {
    [("words", words_section()), ("mistakes", mistakes_section())]
}

/// The guide with its generated sections written anew.
///
/// # Errors
/// The markers that the text lacks.
pub fn with_generated_sections(guide: &str) -> Result<String, Vec<String>> {
    let (mut text, mut lacking) = (guide.to_owned(), Vec::new());
    for (name, section) in sections() {
        let (begin, end) = (format!("<!-- generated: {name} -->\n"), format!("<!-- end of {name} -->"));
        let replaced = text.split_once(&begin).and_then(|(before, rest)| {
            let (_, after) = rest.split_once(&end)?;
            Some(format!("{before}{begin}\n{section}{end}{after}"))
        });
        match replaced {
            Some(replaced) => text = replaced,
            None => lacking.push(format!("{} … {end}", begin.trim_end())),
        }
    }
    if lacking.is_empty() { Ok(text) } else { Err(lacking) }
}

/// Every word of the language in a table a section.
#[must_use]
pub fn words_section() -> String {
    let mut text = String::new();
    for section in words() {
        let _ = writeln!(text, "#### {}\n", section.title);
        let by_itself = section.words.iter().all(|word| word.follows.is_empty());
        let heading = if by_itself {
            "| write | it means |\n| --- | --- |"
        } else {
            "| write | after | it means |\n| --- | --- | --- |"
        };
        let _ = writeln!(text, "{heading}");
        for word in &section.words {
            text.push_str(&row(word, by_itself));
        }
        text.push('\n');
    }
    text
}

fn row(word: &WordReference, by_itself: bool) -> String {
    let WordReference { follows, examples, meaning, .. } = word;
    // A bar would end the cell.
    let examples: Vec<String> = examples.iter().map(|example| format!("`{}`", example.replace('|', "\\|"))).collect();
    let examples = examples.join(" or ");
    if by_itself {
        format!("| {examples} | {meaning} |\n")
    } else {
        format!("| {examples} | {} | {meaning} |\n", follows.join(", "))
    }
}

/// Every code with a wrong and a right example.
#[must_use]
pub fn mistakes_section() -> String {
    let mut text = String::new();
    for code in Code::ALL {
        let explanation = code.explanation();
        let _ = writeln!(text, "#### `{}`\n\n{} {}\n", code.word(), explanation.meaning, explanation.why);
        block(&mut text, "Wrong", &explanation.wrong);
        let _ = writeln!(text, "```text\n{}\n```\n", explanation.says);
        block(&mut text, "Right", &explanation.right);
    }
    text
}

fn block(text: &mut String, what: &str, example: &Example) {
    let _ = writeln!(text, "{what}, {}:\n\n```{}\n{}\n```\n", example.place(), example.language(), example.text());
}
