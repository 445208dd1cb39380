//! scratch
use std::path::Path;
use whybake::rules::{RuleFiles, load};
fn main() {
    let dir = "rules";
    let files = match RuleFiles::read(Path::new(&dir)) { Ok(f) => f, Err(d) => { for x in d { println!("{x}"); } return; } };
    let k = match load(&files) { Ok(loaded) => loaded.knowledge, Err(d) => { for x in d.iter().take(60) { println!("{x}"); } return; } };
    let d = whybake::diagnosis::Diagnostician::new(k).unwrap();
    let text = std::fs::read(std::env::args().nth(1).unwrap()).unwrap();
    match whybake::case::Case::parse(&text, d.knowledge()) {
        Ok(case) => { let a = d.diagnose(case).unwrap(); println!("{}", whybake::diagnosis::render(&a, 100)); }
        Err(e) => println!("{e}"),
    }
}
