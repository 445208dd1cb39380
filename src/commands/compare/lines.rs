//! The lines of a file, compared on all cores.

use std::fs::File;
use std::io::{self, BufRead, BufReader};
use std::path::Path;

use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

use super::report::Report;
use crate::comparison::{CaseComparison, case_text};
use crate::rule_set::RuleSet;

/// Lines that are held at a time, so that a file of any length can be read.
const LINES_AT_A_TIME: usize = 4_096;

/// Compares the case of every line; empty lines are none.
pub(super) fn compare(file: &Path, old: &RuleSet, new: &RuleSet, report: &mut Report) -> io::Result<()> {
    let mut reader: Box<dyn BufRead> =
        if file == Path::new("-") { Box::new(io::stdin().lock()) } else { Box::new(BufReader::new(File::open(file)?)) };
    let mut number = 0;
    loop {
        let (lines, is_end) = some_lines(&mut reader, &mut number)?;
        let compared: Vec<(usize, CaseComparison)> = lines
            .par_iter()
            .map(|(number, line)| {
                (*number, CaseComparison::new(case_text(line), &old.diagnostician, &new.diagnostician))
            })
            .collect();
        for (number, comparison) in compared {
            report.add(number, comparison);
        }
        if is_end {
            return Ok(());
        }
    }
}

type Lines = Vec<(usize, Vec<u8>)>;

/// The next lines with their numbers, from 1, and whether the file ends with them.
fn some_lines(reader: &mut dyn BufRead, number: &mut usize) -> io::Result<(Lines, bool)> {
    let mut lines = Vec::new();
    while lines.len() < LINES_AT_A_TIME {
        let mut line = Vec::new();
        if reader.read_until(b'\n', &mut line)? == 0 {
            return Ok((lines, true));
        }
        *number += 1;
        if !line.trim_ascii().is_empty() {
            lines.push((*number, line));
        }
    }
    Ok((lines, false))
}
