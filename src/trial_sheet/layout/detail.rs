//! How much of a sheet stands on a page. Weights, settings, limits, what to write down, when to stop and the head of every
//! caution always do.

/// How much is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Detail {
    /// Everything.
    Full,
    /// Without what only the desk needs: what is not tried, what the design can tell, how pieces were reckoned.
    Bench,
    /// Of longer texts the first sentence alone.
    Headlines,
    /// No method of what is judged by eye and hand either.
    Terse,
}

impl Detail {
    /// All, the fullest first.
    pub(super) const ALL: [Self; 4] = [Self::Full, Self::Bench, Self::Headlines, Self::Terse];

    /// Whether what only the desk needs is told.
    pub(super) fn has_desk(self) -> bool {
        self == Self::Full
    }

    /// Whether longer texts are told in full.
    pub(super) fn has_texts(self) -> bool {
        self <= Self::Bench
    }

    /// A text, or its first sentence.
    pub(super) fn shortened(self, text: &str) -> String {
        if self.has_texts() { text.to_owned() } else { first_sentence(text).to_owned() }
    }

    /// A caution, or its first sentence without what it cites in brackets.
    pub(super) fn caution(self, text: &str) -> String {
        if self.has_texts() { text.to_owned() } else { without_brackets(first_sentence(text)) }
    }

    /// A way of measuring or judging, or how it begins.
    pub(super) fn method(self, text: &str, is_judged: bool) -> String {
        match self {
            Self::Full | Self::Bench => text.to_owned(),
            Self::Terse if is_judged => String::new(),
            Self::Headlines | Self::Terse => {
                let first = first_sentence(text);
                without_brackets(first.split_once("; ").map_or(first, |(start, _)| start))
            }
        }
    }

    /// What a page says of what it leaves out.
    pub(super) fn remark(self) -> Option<&'static str> {
        match self {
            Self::Full => None,
            Self::Bench => Some(
                "Left out of this page for want of room, and told in the same sheet as JSON and as Markdown: what is not tried and \
                 why, what the design can tell apart, how the number of pieces was reckoned, the finer rules of deciding.",
            ),
            Self::Headlines => Some(
                "Left out of this page for want of room, and told in the same sheet as JSON and as Markdown: what is not tried and \
                 why, what the design can tell apart, how the number of pieces was reckoned, the finer rules of deciding, side \
                 effects, and all but the first sentence of instructions, methods and cautions.",
            ),
            Self::Terse => Some(
                "Left out of this page for want of room, and told in the same sheet as JSON and as Markdown: what is not tried and \
                 why, what the design can tell apart, how the number of pieces was reckoned, the finer rules of deciding, side \
                 effects, what each fault looks like, and all but the first sentence of instructions, methods and cautions.",
            ),
        }
    }
}

/// Up to the first full stop that ends a sentence: a small letter before it, a capital after it.
fn first_sentence(text: &str) -> &str {
    let ends = text.match_indices(". ").find(|(place, _)| {
        let before = text.get(..*place).and_then(|own| own.chars().next_back());
        let after = text.get(place + 2..).and_then(|own| own.chars().next());
        before.is_some_and(|own| own.is_lowercase() || own.is_ascii_digit() || matches!(own, ')' | '%'))
            && after.is_some_and(char::is_uppercase)
    });
    ends.and_then(|(place, _)| text.get(..=place)).unwrap_or(text)
}

/// A text without what stands in brackets; an unclosed bracket stays.
fn without_brackets(text: &str) -> String {
    let mut left = String::new();
    let mut rest = text;
    while let Some((before, (_, after))) = rest.split_once(" (").and_then(|own| Some((own.0, own.1.split_once(')')?))) {
        left.push_str(before);
        rest = after;
    }
    left + rest
}

#[cfg(test)]
mod tests {
    use super::{Detail, first_sentence, without_brackets};

    #[test]
    fn a_sentence_ends_at_a_stop_before_a_capital() {
        assert_eq!(first_sentence("Use 1.5 % (e.g. agar). Watch it."), "Use 1.5 % (e.g. agar).");
        assert_eq!(first_sentence("At 30 °C no more"), "At 30 °C no more");
        assert_eq!(Detail::Headlines.method("caliper, ten pieces; mean", true), "caliper, ten pieces");
        assert_eq!(Detail::Bench.shortened("One. Two."), "One. Two.");
    }

    #[test]
    fn brackets_are_left_out_whole() {
        assert_eq!(without_brackets("Limits (EU (a) and US): check (b)."), "Limits and US): check.");
        assert_eq!(without_brackets("Open (bracket"), "Open (bracket");
        let text = "Hot (98 °C): stand back. Then close.";
        assert_eq!(
            (Detail::Terse.caution(text), Detail::Full.caution(text)),
            ("Hot: stand back.".to_owned(), text.to_owned())
        );
    }
}
