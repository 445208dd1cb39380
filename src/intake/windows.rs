//! Where a text may name something: its statements, its clauses, and statements with the subject of one before.

use std::ops::Range;

use super::function_words::COPULAS;
use super::words::{Class, Words};

/// Most words with a meaning in a statement that may lack its subject: "not grey", "sticks to the knife".
const MOST_WITHOUT_SUBJECT: usize = 2;

/// Places of a text that are looked at together.
#[derive(Debug, Clone)]
pub(super) struct Window {
    /// The subject that it carries on, as "crumb" for "not grey" in "crumb is not sticky and not grey"; may be empty.
    pub(super) subject: Range<usize>,
    /// The statement or clause.
    pub(super) range: Range<usize>,
    /// What the statement is likely about, though its words are not part of the window.
    pub(super) about: Range<usize>,
}

impl From<Range<usize>> for Window {
    fn from(range: Range<usize>) -> Self {
        Self { subject: 0..0, range, about: 0..0 }
    }
}

impl Window {
    pub(super) fn places(&self) -> impl Iterator<Item = usize> {
        self.subject.clone().chain(self.range.clone())
    }
}

/// Statements, the whole clauses that they make up, since a phrase may hold a connector, and statements with the subject
/// that they carry on.
pub(super) fn windows(words: &Words) -> Vec<Window> {
    let mut windows = Vec::new();
    let mut subject: Option<Range<usize>> = None;
    for clause in &words.clauses {
        let statements = words.statements(clause);
        if statements.first() != Some(clause) {
            windows.push(Window::from(clause.clone()));
        }
        for statement in statements {
            let own = subject_of(words, &statement);
            if own.is_some() || telling(words, &statement) > MOST_WITHOUT_SUBJECT {
                subject = own;
            } else if let Some(subject) = &subject {
                windows.push(Window { subject: subject.clone(), range: statement.clone(), about: 0..0 });
                windows.push(Window { about: subject.clone(), ..Window::from(statement) });
                continue;
            }
            windows.push(Window::from(statement));
        }
    }
    windows
}

/// What stands before the verb of a statement, if it tells something.
fn subject_of(words: &Words, statement: &Range<usize>) -> Option<Range<usize>> {
    let is_verb = |place: &usize| words.tokens.get(*place).is_some_and(|token| COPULAS.contains(&token.word.as_str()));
    let verb = statement.clone().find(is_verb)?;
    let subject = statement.start..verb;
    (telling(words, &subject) > 0).then_some(subject)
}

/// How many words of a range have a meaning.
fn telling(words: &Words, range: &Range<usize>) -> usize {
    let tokens = words.tokens.get(range.clone()).unwrap_or_default();
    tokens.iter().filter(|token| matches!(token.class, Class::Content | Class::Product)).count()
}

#[cfg(test)]
mod tests {
    use super::windows;
    use crate::intake::words::Words;

    fn told(text: &str) -> Vec<String> {
        let words = Words::of(text);
        let carried = windows(&words).into_iter().filter(|window| !window.subject.is_empty());
        let word = |place: usize| words.tokens[place].word.clone();
        carried.map(|window| window.places().map(word).collect::<Vec<_>>().join(" ")).collect()
    }

    #[test]
    fn subjects_are_carried_on() {
        assert_eq!(told("crumb is not sticky and not grey"), ["crumb not grey"]);
        assert_eq!(told("the crust is pale, leathery"), ["the crust leathery"]);
        assert_eq!(told("crust is pale and the crumb is grey"), Vec::<String>::new());
        assert_eq!(told("pale crust, grey"), Vec::<String>::new());
        assert_eq!(told("crust is pale, oven door seal worn out, dry"), Vec::<String>::new());
    }
}
