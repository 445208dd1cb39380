//! Titles in the middle of a sentence.

/// A title as it stands inside a sentence: its first letter small, unless that letter begins a code (`E 282`, `L-cysteine`,
/// `pH`, `DATEM`). Everything after it stays as the authors wrote it.
pub(crate) fn in_sentence(title: &str) -> String {
    let mut characters = title.chars();
    let Some(first) = characters.next() else { return String::new() };
    let rest = characters.as_str();
    let begins_a_word = rest.chars().next().is_none_or(char::is_lowercase);
    if begins_a_word { first.to_lowercase().chain(rest.chars()).collect() } else { title.to_owned() }
}

/// A title without what follows its first comma: among others "butter" is enough of "Butter, unsalted". A comma in
/// brackets ends nothing.
pub(super) fn short(title: &str) -> &str {
    match title.split_once(", ") {
        Some((start, _)) if !start.contains('(') || start.contains(')') => start,
        _ => title,
    }
}

#[cfg(test)]
mod tests {
    use super::{in_sentence, short};

    #[test]
    fn a_short_title_ends_at_its_first_comma() {
        assert_eq!(short("Butter, unsalted"), "Butter");
        assert_eq!(short("Maize (corn) starch, native"), "Maize (corn) starch");
        assert_eq!(short("Whey (sweet, dried)"), "Whey (sweet, dried)");
    }

    #[test]
    fn only_the_first_letter_of_a_word_gets_small() {
        assert_eq!(in_sentence("Bread flour T45"), "bread flour T45");
        assert_eq!(in_sentence("Calcium propionate (E 282)"), "calcium propionate (E 282)");
        for code in ["E 282", "L-cysteine", "DATEM", "pH of the crumb", ""] {
            assert_eq!(in_sentence(code), code);
        }
    }
}
