//! Blocks as Markdown.

use std::fmt::Write as _;

use super::block::{Block, Cell, CellKind};

/// Characters that Markdown or HTML would take for more than themselves.
const SPECIAL: [char; 12] = ['\\', '`', '*', '_', '[', ']', '<', '>', '|', '#', '&', '~'];

pub(super) fn write(blocks: &[Block]) -> String {
    let mut text = String::new();
    for block in blocks {
        let _ = match block {
            Block::Title(title) => writeln!(text, "# {}\n", escaped(title)),
            Block::Heading(heading) => writeln!(text, "## {heading}\n"),
            Block::Text(paragraph) => writeln!(text, "{}\n", escaped(paragraph)),
            Block::List(items) => {
                items.iter().for_each(|item| {
                    let _ = writeln!(text, "- {}", escaped(item));
                });
                writeln!(text)
            }
            Block::Blanks(labels) => {
                labels.iter().for_each(|label| {
                    let _ = writeln!(text, "- {}: ____________________", escaped(label));
                });
                writeln!(text)
            }
            Block::Table(rows) => {
                table(&mut text, rows);
                writeln!(text)
            }
        };
    }
    text.truncate(text.trim_end().len());
    text.push('\n');
    text
}

fn table(text: &mut String, rows: &[Vec<Cell>]) {
    for (place, row) in rows.iter().enumerate() {
        let cells: Vec<String> = row.iter().map(cell).collect();
        let _ = writeln!(text, "| {} |", cells.join(" | "));
        if place == 0 {
            let _ = writeln!(text, "|{}", " --- |".repeat(row.len()));
        }
    }
}

fn cell(cell: &Cell) -> String {
    let text = escaped(&cell.whole());
    if cell.kind == CellKind::Changed { format!("**{text}**") } else { text }
}

/// Text of rules and callers, as text: no link, no heading, no HTML, no new line.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for (place, own) in text.chars().enumerate() {
        let starts_item = place == 0 && matches!(own, '-' | '+' | '=');
        if own.is_control() {
            escaped.push(' ');
            continue;
        }
        if SPECIAL.contains(&own) || starts_item {
            escaped.push('\\');
        }
        escaped.push(own);
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn nothing_of_a_text_is_markup() {
        assert_eq!(escaped("a | b\n# <b>"), r"a \| b \# \<b\>");
        assert_eq!(escaped("- x_y [z](u)"), r"\- x\_y \[z\](u)");
    }
}
