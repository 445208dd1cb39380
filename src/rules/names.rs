//! Names that a file declares, found before it runs, so that files may name what stands further down.

use rhai::{AST, ASTNode, Expr, FnCallExpr, Position, Stmt};

use super::stage::Stage;
use super::term::Kind;

/// Ids that stand as literals in declaring words of a compiled file.
pub(super) fn declared_in(ast: &AST, stage: Stage) -> Vec<(Kind, String, Position)> {
    let mut found = Vec::new();
    each_call(ast, &mut |call, at| {
        if let Some(Expr::StringConstant(id, _)) = call.args.first()
            && let Some(kind) = kind_of(&call.name, stage)
        {
            found.push((kind, id.to_string(), at));
        }
    });
    found
}

/// The same for a file that does not compile: what looks like a declaration.
pub(super) fn declared_in_text(text: &str, stage: Stage) -> Vec<(Kind, String)> {
    let mut found = Vec::new();
    for (word, kind) in stage.declaring_words() {
        for (start, _) in text.match_indices(&format!("{word}(\"")) {
            let rest = text.get(start + word.len() + 2..).unwrap_or_default();
            if let Some((id, _)) = rest.split_once('"') {
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
