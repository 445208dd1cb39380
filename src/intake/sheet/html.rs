//! HTML text.

use std::fmt::{self, Display, Formatter, Write as _};

/// Text in which nothing can be markup, in content and in quoted attributes (HTML Living Standard, 13.3).
pub(super) struct Escaped<'a>(pub(super) &'a str);

impl Display for Escaped<'_> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        for character in self.0.chars() {
            match character {
                '&' => f.write_str("&amp;")?,
                '<' => f.write_str("&lt;")?,
                '>' => f.write_str("&gt;")?,
                '"' => f.write_str("&quot;")?,
                '\'' => f.write_str("&#39;")?,
                other => f.write_char(other)?,
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::Escaped;

    #[test]
    fn markup_becomes_text() {
        assert_eq!(Escaped("<b a='1'>&\"").to_string(), "&lt;b a=&#39;1&#39;&gt;&amp;&quot;");
    }
}
