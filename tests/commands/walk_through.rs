//! The walk-through of the authors' guide, done exactly as it says.

use std::fs;
use std::path::Path;

use crate::program::whybake;

/// A block of code: what stands behind its fence, and its text.
struct Block {
    info: String,
    text: String,
}

/// The code blocks of a section of the guide.
fn blocks(section: &str) -> Vec<Block> {
    let guide = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("rules/README.md")).unwrap();
    let (_, rest) = guide.split_once(&format!("\n## {section}\n")).unwrap();
    let text = rest.split("\n## ").next().unwrap();
    let mut blocks = Vec::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if let Some(info) = line.strip_prefix("```") {
            let text: Vec<&str> = lines.by_ref().take_while(|line| *line != "```").collect();
            blocks.push(Block { info: info.to_owned(), text: text.join("\n") + "\n" });
        }
    }
    blocks
}

/// Whether the pieces of `shown` between `…` stand in `output`, in their order.
fn shows(output: &str, shown: &str) -> bool {
    let mut rest = output;
    shown.trim_end().split('…').all(|piece| match rest.split_once(piece) {
        Some((_, after)) => {
            rest = after;
            true
        }
        None => false,
    })
}

#[test]
fn the_walk_through_does_what_it_says() {
    let dir = tempfile::tempdir().unwrap();
    let (mut output, mut commands, mut shown) = (String::new(), 0, 0);
    for Block { info, text } in blocks("Ten minutes: from a complaint to a tested rule") {
        match info.split_once(' ') {
            Some((_, path)) => {
                let file = dir.path().join(path);
                fs::create_dir_all(file.parent().unwrap()).unwrap();
                fs::write(file, text).unwrap();
            }
            None if info == "sh" => {
                let arguments: Vec<&str> = text.trim_end().strip_prefix("whybake ").unwrap().split(' ').collect();
                let run = whybake(&arguments).current_dir(dir.path()).output().unwrap();
                assert_eq!(String::from_utf8(run.stderr).unwrap(), "", "{text}");
                output = String::from_utf8(run.stdout).unwrap();
                commands += 1;
            }
            None if info == "text" => {
                assert!(shows(&output, &text), "shown\n{text}\ncame\n{output}");
                shown += 1;
            }
            None => panic!("nothing to do with a block of `{info}`"),
        }
    }
    assert_eq!((commands, shown), (5, 4));
}

#[test]
fn what_is_shown_must_come_in_order() {
    assert!(shows("a 1 b 2 c", "a … b … c"));
    assert!(!shows("b 1 a", "a … b"));
}
