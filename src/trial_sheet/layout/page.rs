//! Blocks as one HTML page, with its style and without any script.

use std::fmt::Write as _;

use super::block::{Block, Cell};

const HEAD: &str = concat!(
    "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n",
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
);

/// Small type and two columns keep a usual trial on one sheet of A4.
const STYLE: &str = include_str!("page.css");

pub(super) fn write(blocks: &[Block]) -> String {
    let mut text = String::from(HEAD);
    let title =
        blocks.iter().find_map(|block| if let Block::Title(title) = block { Some(title.as_str()) } else { None });
    let _ = writeln!(text, "<title>{}</title>", escaped(title.unwrap_or_default()));
    let _ = writeln!(text, "<style>\n{STYLE}</style>\n</head>\n<body>");
    // What follows the last table are lists to read: two columns of them on paper.
    let last_table = blocks.iter().rposition(|block| matches!(block, Block::Table(_))).unwrap_or(blocks.len());
    let mut open: Vec<&str> = Vec::new();
    for (place, block) in blocks.iter().enumerate() {
        if matches!(block, Block::Heading(_)) {
            close(&mut text, &mut open, "section");
            if place > last_table && open.is_empty() {
                text.push_str("<div class=\"notes\">\n");
                open.push("div");
            }
            text.push_str("<section>\n");
            open.push("section");
        }
        if matches!(block, Block::Blanks(_)) {
            close(&mut text, &mut open, "section");
            close(&mut text, &mut open, "div");
        }
        self::block(&mut text, block);
    }
    close(&mut text, &mut open, "section");
    close(&mut text, &mut open, "div");
    text.push_str("</body>\n</html>\n");
    text
}

/// Closes the last element that is open, if it is this one.
fn close(text: &mut String, open: &mut Vec<&str>, element: &str) {
    if open.pop_if(|last| *last == element).is_some() {
        let _ = writeln!(text, "</{element}>");
    }
}

fn block(text: &mut String, block: &Block) {
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
        Block::Table(rows) => {
            let mut lines = String::new();
            for (place, row) in rows.iter().enumerate() {
                let _ = writeln!(lines, "<tr>{}</tr>", cells(row, place == 0));
            }
            writeln!(text, "<table>\n{lines}</table>")
        }
    };
}

fn cells(row: &[Cell], is_head: bool) -> String {
    let cell = |(place, cell): (usize, &Cell)| {
        let text = escaped(&cell.text);
        match (is_head, place, cell.is_marked) {
            (true, ..) => format!("<th scope=\"col\">{text}</th>"),
            (false, 0, _) => format!("<th scope=\"row\">{text}</th>"),
            (false, _, true) => format!("<td><strong>{text}</strong></td>"),
            (false, _, false) if text.is_empty() => "<td class=\"blank\"></td>".to_owned(),
            (false, _, false) => format!("<td>{text}</td>"),
        }
    };
    row.iter().enumerate().map(cell).collect()
}

/// Text of rules and callers, as text.
fn escaped(text: &str) -> String {
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
