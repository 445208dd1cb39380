//! Blocks as HTML.

use std::fmt::Write as _;

use super::columns::shares;
use crate::trial_sheet::layout::block::{Block, Cell, CellKind};

/// Adds blocks; the columns of their tables are laid out for a page that is `room` type sizes wide.
pub(super) fn push_blocks(text: &mut String, blocks: &[Block], room: f64) {
    blocks.iter().for_each(|block| push_block(text, block, room));
}

fn push_block(text: &mut String, block: &Block, room: f64) {
    let _ = match block {
        Block::Title(title) => writeln!(text, "<h1>{}</h1>", escaped(title)),
        Block::Heading(heading) => writeln!(text, "<h2>{}</h2>", escaped(heading)),
        Block::Text(paragraph) => writeln!(text, "<p>{}</p>", escaped(paragraph)),
        Block::List(items) => {
            let items: String = items.iter().map(|item| format!("<li>{}</li>\n", escaped(item))).collect();
            writeln!(text, "<ul>\n{items}</ul>")
        }
        Block::Blanks(labels) => {
            let labels: String =
                labels.iter().map(|label| format!("<span>{}: <i></i></span>\n", escaped(label))).collect();
            writeln!(text, "<p class=\"blanks\">\n{labels}</p>")
        }
        Block::Table(rows) => writeln!(text, "<table>\n{}</table>", table(rows, room)),
    };
}

fn table(rows: &[Vec<Cell>], room: f64) -> String {
    let mut lines = String::from("<colgroup>");
    for share in shares(rows, room) {
        let _ = write!(lines, "<col style=\"width:{:.2}%\">", 100.0 * share);
    }
    lines.push_str("</colgroup>\n");
    for (place, row) in rows.iter().enumerate() {
        let _ = writeln!(lines, "<tr>{}</tr>", cells(row, place == 0));
    }
    lines
}

fn cells(row: &[Cell], is_head: bool) -> String {
    let cell = |(place, cell): (usize, &Cell)| {
        let (text, note) = (escaped(&cell.text), escaped(&cell.note));
        let told = if note.is_empty() { text } else { format!("<b>{text}</b> {note}") };
        match (is_head, place, cell.kind) {
            (true, ..) => format!("<th scope=\"col\">{told}</th>"),
            (false, 0, _) => format!("<th scope=\"row\">{told}</th>"),
            (false, _, CellKind::Changed) => format!("<td><strong>{told}</strong></td>"),
            (false, _, CellKind::Blank) => "<td class=\"blank\"></td>".to_owned(),
            (false, _, CellKind::Said) => format!("<td>{told}</td>"),
        }
    };
    row.iter().enumerate().map(cell).collect()
}

/// Text of rules and callers, as text.
pub(super) fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for own in text.chars() {
        match own {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            own if own.is_control() => escaped.push(' '),
            own => escaped.push(own),
        }
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn nothing_of_a_text_is_markup() {
        assert_eq!(
            escaped("<b title='a'>\"x\" & y</b>\n"),
            "&lt;b title=&#39;a&#39;&gt;&quot;x&quot; &amp; y&lt;/b&gt; "
        );
    }
}
