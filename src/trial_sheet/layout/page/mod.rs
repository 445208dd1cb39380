//! A sheet as one HTML page, with its style and without any script.

mod columns;
mod estimate;
mod fit;
mod html;
mod type_widths;

use std::fmt::Write as _;

use self::estimate::WIDTH;
use self::fit::{Fitted, fitted};
use self::html::{escaped, push_blocks};
use super::block::Block;
use crate::trial_sheet::answer::TrialSheet;

pub use self::fit::PageFit;

const HEAD: &str = concat!(
    "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n",
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
);

const STYLE: &str = include_str!("page.css");

pub(super) fn fit(sheet: &TrialSheet<'_>) -> PageFit {
    fitted(sheet).fit
}

pub(super) fn write(sheet: &TrialSheet<'_>) -> String {
    let Fitted { fit, parts } = fitted(sheet);
    let mut text = String::from(HEAD);
    let title =
        parts.bench.iter().find_map(|own| if let Block::Title(title) = own { Some(title.as_str()) } else { None });
    let _ = writeln!(text, "<title>{}</title>", escaped(title.unwrap_or_default()));
    let size = fit.type_size_pt;
    let _ =
        writeln!(text, "<style>\n{STYLE}@media print {{ body {{ font-size: {size}pt; }} }}\n</style>\n</head>\n<body>");
    let room = WIDTH / size;
    push_blocks(&mut text, &parts.bench, room);
    push_part(&mut text, "notes", &parts.notes, room);
    push_blocks(&mut text, &parts.foot, room);
    push_part(&mut text, "second", &parts.second, room);
    text.push_str("</body>\n</html>\n");
    text
}

fn push_part(text: &mut String, class: &str, blocks: &[Block], room: f64) {
    if blocks.is_empty() {
        return;
    }
    let _ = writeln!(text, "<div class=\"{class}\">");
    push_blocks(text, blocks, room);
    text.push_str("</div>\n");
}
