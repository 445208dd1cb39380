//! scratch
use std::path::Path;
use whybake::rules::{RuleFiles, load};
fn main() {
    let dir = std::env::args().nth(1).unwrap_or_else(|| "rules".to_owned());
    let files = match RuleFiles::read(Path::new(&dir)) { Ok(f) => f, Err(d) => { for x in d { println!("{x}"); } return; } };
    let t = std::time::Instant::now();
    match load(&files) {
        Ok(loaded) => { for w in &loaded.warnings { println!("{w}"); } println!("ok {} causes {} symptoms {} readings, {} warnings, {:?}", loaded.knowledge.declared.causes.len(), loaded.knowledge.declared.symptoms.len(), loaded.knowledge.declared.readings.len(), loaded.warnings.len(), t.elapsed()); }
        Err(d) => { for x in d.iter().take(60) { println!("{x}"); } println!("{} faults {:?}", d.len(), t.elapsed()); }
    }
}
