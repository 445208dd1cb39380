//! The kinds of diagnostics.

use serde::Serialize;
use utoipa::ToSchema;

/// Defines the codes with their words, so that none is left out anywhere.
macro_rules! codes {
    ($($(#[$doc:meta])+ $code:ident $word:literal),+ $(,)?) => {
        /// Kind of a diagnostic; the word is stable.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, ToSchema)]
        #[serde(rename_all = "kebab-case")]
        pub enum Code {
            $($(#[$doc])+ $code),+
        }

        impl Code {
            /// All codes: first those of files and scripts, then doubts, then rule tests.
            pub const ALL: &[Self] = &[$(Self::$code),+];

            /// The stable word, for example `unknown-name`.
            #[must_use]
            pub fn word(self) -> &'static str {
                match self {
                    $(Self::$code => $word),+
                }
            }

            /// The code of a word.
            #[must_use]
            pub fn named(word: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|code| code.word() == word)
            }
        }
    };
}

codes! {
    /// A file that cannot be read, is no text or is too long.
    File "file",
    /// Text that is no script, or a rule test that is no JSON.
    Syntax "syntax",
    /// A name that nothing declares.
    UnknownName "unknown-name",
    /// A word that the rule language or a rule test does not have.
    UnknownWord "unknown-word",
    /// A word used with the wrong number or kind of things.
    WrongArguments "wrong-arguments",
    /// A number outside the range that it can have.
    OutOfRange "out-of-range",
    /// The same id declared twice, or one property set twice.
    Duplicate "duplicate",
    /// A word in a file that may not use it.
    WrongFile "wrong-file",
    /// A declaration that lacks something.
    Incomplete "incomplete",
    /// A unit that is no UCUM code, or measures something else.
    Unit "unit",
    /// Weights for and against that cannot both be right.
    InconsistentWeights "inconsistent-weights",
    /// A limit of the sandbox that a script ran over.
    Limit "limit",
    /// A script that failed while it ran.
    Script "script",
    /// Something that is declared and never used.
    Unused "unused",
    /// Evidence or a confirmation that no case can meet, or that every case meets.
    NeverApplies "never-applies",
    /// Evidence that changes nothing.
    NeverMatters "never-matters",
    /// A reading compared with a number that it cannot have.
    ImplausibleThreshold "implausible-threshold",
    /// Two causes that nothing in the rules tells apart.
    Indistinguishable "indistinguishable",
    /// Ids or titles that are easily taken for each other.
    LookAlike "look-alike",
    /// Priors of a product that add up to more causes than can be at work.
    HighPriors "high-priors",
    /// Two statements of a rule test that cannot both hold.
    Contradiction "contradiction",
    /// A rule test that expects nothing.
    ExpectsNothing "expects-nothing",
    /// An expectation of a rule test that the answer does not meet.
    FailedTest "failed-test",
}

#[cfg(test)]
mod tests {
    use super::Code;

    #[test]
    fn json_has_the_same_words() {
        for code in Code::ALL {
            assert_eq!(serde_json::to_value(code).unwrap(), code.word());
        }
    }
}
