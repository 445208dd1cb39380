//! Blocks as plain text.

use super::block::{Block, Cell, CellKind};
use crate::paragraphs::Paragraphs;

/// Widest cell beside the first of its row before a table is written row by row, characters.
const WIDEST: usize = 16;

pub(super) fn write(blocks: &[Block], width: usize) -> String {
    let mut page = Paragraphs::new(width);
    for block in blocks {
        match block {
            Block::Title(title) => page.add(0, "", title),
            Block::Heading(heading) => page.heading(heading),
            Block::Text(paragraph) => page.add(2, "", paragraph),
            Block::List(items) => items.iter().for_each(|item| page.add(2, "- ", item)),
            Block::Blanks(labels) => {
                labels.iter().for_each(|label| page.add(2, "", &format!("{label}: ____________")));
            }
            Block::Table(rows) => table(&mut page, rows),
        }
    }
    page.into_text()
}

/// Longest name of a row, characters; what is longer is cut.
const LONGEST_NAME: usize = 34;

/// Longest unit with its comma, characters.
const LONGEST_UNIT: usize = 8;

/// Columns side by side where their cells are short, else row by row.
fn table(page: &mut Paragraphs, rows: &[Vec<Cell>]) {
    let longest =
        rows.iter().flat_map(|row| row.iter().skip(1)).map(|cell| cell.text.chars().count()).max().unwrap_or_default();
    let is_noted = rows.iter().flatten().any(|cell| !cell.note.is_empty());
    if longest > WIDEST || is_noted {
        return listed(page, rows);
    }
    let columns = rows.iter().map(Vec::len).max().unwrap_or_default();
    let widths: Vec<usize> = (0..columns)
        .map(|column| rows.iter().filter_map(|row| row.get(column)).map(shown).map(|own| own.chars().count()).max())
        .map(Option::unwrap_or_default)
        .map(|width| width.min(LONGEST_NAME))
        .collect();
    for row in rows {
        let cells = row.iter().zip(&widths).enumerate().map(|(place, (cell, &width))| {
            if place == 0 { format!("{:width$}", cut(&shown(cell), width)) } else { format!("{:>width$}", shown(cell)) }
        });
        page.add_unbroken(&format!("  {}", cells.collect::<Vec<_>>().join("  ").trim_end()));
    }
}

/// A name of at most `width` characters; the unit behind its comma stays.
fn cut(name: &str, width: usize) -> String {
    if name.chars().count() <= width {
        return name.to_owned();
    }
    let unit = name.rfind(", ").and_then(|comma| name.get(comma..)).filter(|unit| unit.chars().count() <= LONGEST_UNIT);
    let unit = unit.unwrap_or_default();
    let kept: String = name.chars().take(width.saturating_sub(1 + unit.chars().count())).collect();
    format!("{}…{unit}", kept.trim_end())
}

fn listed(page: &mut Paragraphs, rows: &[Vec<Cell>]) {
    let Some((head, rows)) = rows.split_first() else { return };
    for row in rows {
        let Some((first, rest)) = row.split_first() else { continue };
        page.add(2, "- ", &first.whole());
        let columns = || head.iter().skip(1).zip(rest);
        for (name, cell) in columns().filter(|(_, cell)| !cell.text.is_empty()) {
            page.add(6, &format!("{}: ", name.text), &shown(cell));
        }
        let blanks = columns().filter(|(_, cell)| cell.kind == CellKind::Blank);
        let blanks: Vec<String> = blanks.map(|(name, _)| format!("{}: ______", name.text)).collect();
        if !blanks.is_empty() {
            page.add(6, "", &blanks.join("  "));
        }
    }
}

fn shown(cell: &Cell) -> String {
    if cell.kind == CellKind::Changed { format!("*{}", cell.text) } else { cell.whole() }
}

#[cfg(test)]
mod tests {
    use super::cut;

    #[test]
    fn a_name_that_is_cut_keeps_its_unit() {
        assert_eq!(cut("Bread flour (strong white wheat flour), kg", 24), "Bread flour (strong…, kg");
        assert_eq!(cut("Water, kg", 24), "Water, kg");
        assert_eq!(cut("a name without any unit", 10), "a name wi…");
    }
}
