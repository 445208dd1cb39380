//! From errors of the script engine to diagnostics in the words of rule authors.

use rhai::{EvalAltResult, ParseError, ParseErrorType, Position};

use super::build::{Build, place};
use super::code::Code;
use super::language;
use super::script::MOST_ARGUMENTS;
use super::term::Term;
use crate::suggest::did_you_mean;

/// Deepest chain of calls that is followed to the place where a script failed.
const DEEPEST_CALL: usize = 64;

/// Tells why a text is no script.
pub(super) fn syntax(build: &mut Build, error: &ParseError) {
    let code = match error.err_type() {
        ParseErrorType::ExprTooDeep | ParseErrorType::TooManyFunctions | ParseErrorType::LiteralTooLarge(..) => {
            Code::Limit
        }
        _ => Code::Syntax,
    };
    let at = build.place(error.position());
    build.fault(code, &at, 1, plain(&error.err_type().to_string()), None);
}

/// Tells why a script failed; `true` when the rest of the file cannot be run either.
pub(super) fn run(build: &mut Build, error: &EvalAltResult, depth: usize) -> bool {
    match error {
        EvalAltResult::ErrorInFunctionCall(_, source, inner, _) | EvalAltResult::ErrorInModule(source, inner, _)
            if depth < DEEPEST_CALL && inner.position() != Position::NONE =>
        {
            let outer = build.file.clone();
            if !source.is_empty() {
                build.file = source.as_str().into();
            }
            let hopeless = run(build, inner, depth + 1);
            build.file = outer;
            hopeless
        }
        EvalAltResult::ErrorParsing(kind, position) => {
            syntax(build, &ParseError(Box::new(kind.clone()), *position));
            true
        }
        EvalAltResult::ErrorFunctionNotFound(signature, position) => {
            unknown_function(build, signature, *position);
            false
        }
        EvalAltResult::ErrorMismatchDataType(wanted, found, position) if is_term(found) && wanted == "bool" => {
            let message = "a condition is judged for every case, not while the file is read".to_owned();
            let help = "join conditions with `&`, `|` and `!`".to_owned();
            tell(build, Code::WrongArguments, *position, 1, message, Some(help));
            false
        }
        other => {
            let limit = is_limit(other);
            let code = if limit { Code::Limit } else { Code::Script };
            tell(build, code, other.position(), 1, plain(&without_place(other)), None);
            limit
        }
    }
}

/// Whether a type's name, as registered or as compiled, is that of a term.
fn is_term(type_name: &str) -> bool {
    type_name == "term" || type_name == std::any::type_name::<Term>()
}

fn is_limit(error: &EvalAltResult) -> bool {
    matches!(
        error,
        EvalAltResult::ErrorTooManyOperations(..)
            | EvalAltResult::ErrorTooManyVariables(..)
            | EvalAltResult::ErrorTooManyModules(..)
            | EvalAltResult::ErrorStackOverflow(..)
            | EvalAltResult::ErrorDataTooLarge(..)
            | EvalAltResult::ErrorTerminated(..)
    )
}

fn unknown_function(build: &mut Build, signature: &str, position: Position) {
    let name = signature.split([' ', '(']).next().unwrap_or(signature);
    let given = signature.matches(", ").count() + 1;
    let (code, message, help) = match language::words().find(|word| word.name == name) {
        Some(word) if given > MOST_ARGUMENTS => {
            let receivers = usize::from(word.usage.starts_with('.'));
            let (given, most) = (given - receivers, MOST_ARGUMENTS - receivers);
            let message = format!("`{name}` takes at most {most} arguments, {given} given");
            (Code::WrongArguments, message, Some("put them into a list: `[…, …]`".to_owned()))
        }
        Some(word) => {
            let help = Some(format!("write `{}`", word.usage));
            (Code::WrongArguments, format!("`{name}` cannot be used like this"), help)
        }
        None => {
            let help = did_you_mean(name, language::words().map(|word| word.name));
            (Code::UnknownWord, format!("unknown word `{name}`"), help)
        }
    };
    tell(build, code, position, name.chars().count(), message, help);
}

fn tell(build: &mut Build, code: Code, position: Position, width: usize, message: String, help: Option<String>) {
    let at = place(&build.file, position);
    build.fault(code, &at, width, message, help);
}

/// Why a closure failed, in one line.
pub(super) fn of_closure(error: &EvalAltResult) -> String {
    match error {
        EvalAltResult::ErrorInFunctionCall(_, _, inner, _) => of_closure(inner),
        EvalAltResult::ErrorFunctionNotFound(signature, _) => {
            format!("unknown word `{}`", signature.split([' ', '(']).next().unwrap_or(signature))
        }
        other => plain(&without_place(other)),
    }
}

/// The engine's message without its "(line …)".
fn without_place(error: &EvalAltResult) -> String {
    let text = error.to_string();
    match text.rfind(" (line ") {
        Some(end) => text.get(..end).unwrap_or(&text).to_owned(),
        None => text,
    }
}

/// Lower case at the start, no full stop at the end.
fn plain(message: &str) -> String {
    let quoted = message.replace('\'', "`");
    let trimmed = quoted.trim_end_matches('.');
    let mut characters = trimmed.chars();
    characters.next().map_or_else(String::new, |first| first.to_lowercase().chain(characters).collect())
}
