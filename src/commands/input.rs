//! JSON that a command reads, and what is wrong with it.

use std::fs;
use std::io::{self, Read};
use std::path::Path;

use super::exit::Exit;
use super::output::complain;
use crate::comparison::case_text;
use crate::json::{Fault, without_mark};

/// The bytes of a file without a byte order mark; `-` is standard input.
pub(super) fn read_input(file: &Path) -> Result<Vec<u8>, Exit> {
    let mut text = Vec::new();
    let read =
        if file == Path::new("-") { io::stdin().lock().read_to_end(&mut text).map(|_| text) } else { fs::read(file) };
    read.map(|text| without_mark(&text).to_vec()).map_err(|error| {
        complain(format_args!("{}: cannot be read: {error}", file.display()));
        Exit::Failed
    })
}

/// The text of the case in a file: the file itself, or its member `case` where it is a record or a rule test.
pub(super) fn read_case(file: &Path) -> Result<Vec<u8>, Exit> {
    Ok(case_text(&read_input(file)?).to_vec())
}

/// One fault in a line: where, what, and what to do about it. A fault of the whole document is told of `whole`.
pub(super) fn in_a_line(fault: &Fault, whole: &str) -> String {
    let place = if fault.pointer.is_empty() { whole } else { &fault.pointer };
    let help = fault.help.as_ref().map(|help| format!(" (help: {help})")).unwrap_or_default();
    format!("{place}: {}{help}", fault.detail)
}
