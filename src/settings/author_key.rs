//! The key of those who change rules.

use std::fmt;

use sha2::{Digest, Sha256};
use subtle::ConstantTimeEq;

/// Shortest key, characters: 20 of them at random cannot be guessed over a network.
const SHORTEST: usize = 20;

/// Longest key, characters; far below what a header field may hold.
const LONGEST: usize = 512;

/// What a request must carry to reload or to try rules. Only its hash is kept, so that nothing can print the key.
#[derive(Clone)]
pub struct AuthorKey([u8; 32]);

impl AuthorKey {
    /// What a key is, in words.
    pub(super) const WANTED: &'static str = "a key of 20 to 512 visible ASCII characters without spaces";

    /// A key of 20 to 512 visible ASCII characters; `None` for other text.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let fits = (SHORTEST..=LONGEST).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_graphic());
        fits.then(|| Self(Sha256::digest(text).into()))
    }

    /// Whether `given` is the key. How long that takes tells nothing about the key.
    #[must_use]
    pub fn is(&self, given: &str) -> bool {
        let given: [u8; 32] = Sha256::digest(given).into();
        self.0.ct_eq(&given).into()
    }
}

impl fmt::Debug for AuthorKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("AuthorKey(not shown)")
    }
}

impl PartialEq for AuthorKey {
    fn eq(&self, other: &Self) -> bool {
        self.0.ct_eq(&other.0).into()
    }
}

impl Eq for AuthorKey {}

#[cfg(test)]
mod tests {
    use super::AuthorKey;

    #[test]
    fn only_the_very_key_is_the_key() {
        let key = AuthorKey::new("correct-horse-battery").unwrap();
        assert!(key.is("correct-horse-battery"));
        for other in
            ["", "correct-horse-batter", "correct-horse-batteri", "correct-horse-battery2", "Correct-horse-battery"]
        {
            assert!(!key.is(other), "{other}");
        }
    }

    #[test]
    fn a_key_is_long_and_visible() {
        for bad in ["", "short", "with a space in its midst", "with-a-\u{e9}-in-its-midst", &"x".repeat(513)] {
            assert!(AuthorKey::new(bad).is_none(), "{bad}");
        }
    }

    #[test]
    fn nothing_prints_it() {
        let key = AuthorKey::new("correct-horse-battery").unwrap();
        assert_eq!(format!("{key:?} {key:#?}"), "AuthorKey(not shown) AuthorKey(not shown)");
    }
}
