//! Closures of rule files, called in requests under a budget.

use std::fmt;
use std::sync::Arc;

use rhai::{AST, Dynamic, Engine, FnPtr};

use super::failure;
use crate::knowledge::{Input, Judge, JudgeFault};

/// A closure with the engine and the functions that it needs.
pub(super) struct ScriptedJudge {
    closure: FnPtr,
    engine: Arc<Engine>,
    functions: Arc<AST>,
    /// Which arguments are facts: the closure takes them as booleans.
    facts: Vec<bool>,
}

impl ScriptedJudge {
    pub(super) fn new(closure: FnPtr, engine: &Arc<Engine>, functions: &Arc<AST>, inputs: &[Input]) -> Self {
        Self {
            closure,
            engine: Arc::clone(engine),
            functions: Arc::clone(functions),
            facts: inputs.iter().map(|input| matches!(input, Input::Fact(_))).collect(),
        }
    }
}

impl Judge for ScriptedJudge {
    fn judge(&self, inputs: &[f64]) -> Result<f64, JudgeFault> {
        let arguments: Vec<Dynamic> = inputs
            .iter()
            .zip(&self.facts)
            .map(|(value, is_fact)| if *is_fact { Dynamic::from(*value > 0.5) } else { Dynamic::from(*value) })
            .collect();
        let result: Dynamic = self
            .closure
            .call(&self.engine, &self.functions, arguments)
            .map_err(|error| JudgeFault { message: failure::of_closure(&error) })?;
        grade(&result)
    }
}

/// `true`, `false`, or a number from 0 to 1.
fn grade(result: &Dynamic) -> Result<f64, JudgeFault> {
    if let Ok(truth) = result.as_bool() {
        return Ok(f64::from(truth));
    }
    #[allow(clippy::cast_precision_loss)] // only 0 and 1 pass
    let number = result.as_float().or_else(|_| result.as_int().map(|number| number as f64));
    match number {
        Ok(grade) if (0.0..=1.0).contains(&grade) => Ok(grade),
        Ok(number) => Err(JudgeFault { message: format!("{number} is no grade from 0 to 1") }),
        Err(kind) => {
            Err(JudgeFault { message: format!("the result is neither `true`, `false` nor a number, but {kind}") })
        }
    }
}

impl fmt::Debug for ScriptedJudge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("ScriptedJudge").field("closure", &self.closure.fn_name()).finish_non_exhaustive()
    }
}
