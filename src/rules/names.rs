//! Names that a file declares, found before it runs, so that files may name what stands further down.

use rhai::{AST, ASTNode, Expr, FnCallExpr, Position, Stmt};

use super::language;
use super::stage::Stage;
use super::term::Kind;
use crate::suggest::closest;

/// An id that stands as a literal in a declaring word of a compiled file.
pub(super) struct Declared {
    pub(super) kind: Kind,
    pub(super) id: String,
    pub(super) at: Position,
    /// Whether the word is none, but nearly a declaring one.
    pub(super) is_misspelt: bool,
}

/// Ids that stand as literals in declaring words of a compiled file, or in what nearly is one.
pub(super) fn declared_in(ast: &AST, stage: Stage) -> Vec<Declared> {
    let mut found = Vec::new();
    each_call(ast, &mut |call, at| {
        let Some(Expr::StringConstant(id, _)) = call.args.first() else { return };
        let exact = kind_of(&call.name, stage);
        let is_unknown = || language::words().all(|word| word.name != call.name.as_str());
        let meant = || closest(&call.name, stage.declaring_words().iter().map(|(word, _)| *word));
        let near = || meant().filter(|_| is_unknown()).and_then(|word| kind_of(word, stage));
        if let Some(kind) = exact.or_else(near) {
            found.push(Declared { kind, id: id.to_string(), at, is_misspelt: exact.is_none() });
        }
    });
    found
}

/// The same for a file that does not compile: what looks like a declaration.
pub(super) fn declared_in_text(text: &str, stage: Stage) -> Vec<(Kind, String)> {
    let mut found = Vec::new();
    for (word, kind) in stage.declaring_words() {
        for (start, _) in text.match_indices(&format!("{word}(")) {
            let rest = text.get(start + word.len()..).unwrap_or_default();
            let quoted = rest.trim_start_matches(['(', ' ']).strip_prefix('"');
            if let Some((id, _)) = quoted.and_then(|rest| rest.split_once('"')) {
                found.push((*kind, id.to_owned()));
            }
        }
    }
    found
}

/// Every call of a function or method, nested ones included, with its position.
pub(super) fn each_call(ast: &AST, visit: &mut dyn FnMut(&FnCallExpr, Position)) {
    ast.walk(&mut |path| {
        match path.last() {
            Some(ASTNode::Expr(Expr::FnCall(call, at) | Expr::MethodCall(call, at))) => visit(call, *at),
            Some(ASTNode::Stmt(Stmt::FnCall(call, at))) => visit(call, *at),
            _ => {}
        }
        true
    });
}

/// Scale words get their value when they run; only things are declared ahead.
fn kind_of(word: &str, stage: Stage) -> Option<Kind> {
    let found = stage.declaring_words().iter().find(|(own, _)| *own == word);
    found.map(|(_, kind)| *kind).filter(|kind| !kind.is_of_scale())
}
