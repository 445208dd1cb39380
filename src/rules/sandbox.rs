//! The one place that builds script engines, with every limit explicit.

use rhai::packages::{
    BasicArrayPackage, BasicFnPackage, BasicIteratorPackage, BasicMapPackage, BasicMathPackage, CorePackage,
    LanguageCorePackage, LogicPackage, MoreStringPackage, Package,
};
use rhai::{Engine, OptimizationLevel};

/// Limits of an engine. Rhai's own defaults leave most of them open, and differ between debug and release builds.
struct Limits {
    operations: u64,
    call_levels: usize,
    string_bytes: usize,
    array_items: usize,
    map_members: usize,
    variables: usize,
    functions: usize,
    modules: usize,
}

/// Loading a file: a thousand rules in a loop take some 100,000 operations.
const LOADING: Limits = Limits {
    operations: 2_000_000,
    call_levels: 24,
    string_bytes: 16 * 1024,
    array_items: 4_096,
    map_members: 256,
    variables: 2_048,
    functions: 512,
    modules: 64,
};

/// A closure in a request: arithmetic on a few values.
const JUDGING: Limits = Limits {
    operations: 10_000,
    call_levels: 8,
    string_bytes: 1_024,
    array_items: 256,
    map_members: 64,
    variables: 64,
    functions: 512,
    modules: 0,
};

/// Deepest nesting of an expression. A chain of methods nests once a word, and long causes chain some forty.
const EXPRESSION_DEPTH: usize = 96;

/// An engine that runs rule files.
pub(super) fn loading_engine() -> Engine {
    engine(&LOADING)
}

/// An engine that runs the closures of rule files in requests.
pub(super) fn judging_engine() -> Engine {
    engine(&JUDGING)
}

fn engine(limits: &Limits) -> Engine {
    let mut engine = Engine::new_raw();
    CorePackage::new().register_into_engine(&mut engine);
    LanguageCorePackage::new().register_into_engine(&mut engine);
    LogicPackage::new().register_into_engine(&mut engine);
    BasicMathPackage::new().register_into_engine(&mut engine);
    BasicArrayPackage::new().register_into_engine(&mut engine);
    BasicMapPackage::new().register_into_engine(&mut engine);
    BasicFnPackage::new().register_into_engine(&mut engine);
    BasicIteratorPackage::new().register_into_engine(&mut engine);
    MoreStringPackage::new().register_into_engine(&mut engine);
    engine
        // A rule runs once, so nothing is won by it; the optimizer would search all declared names for each name of a file,
        // and `Full` would call functions while compiling.
        .set_optimization_level(OptimizationLevel::None)
        .set_max_operations(limits.operations)
        .set_max_call_levels(limits.call_levels)
        .set_max_expr_depths(EXPRESSION_DEPTH, EXPRESSION_DEPTH)
        .set_max_string_size(limits.string_bytes)
        .set_max_array_size(limits.array_items)
        .set_max_map_size(limits.map_members)
        .set_max_variables(limits.variables)
        .set_max_functions(limits.functions)
        .set_max_modules(limits.modules)
        // Rhai would stop at the first unknown name of a file; the loader looks for all of them itself.
        .set_strict_variables(false)
        .set_fail_on_invalid_map_property(true)
        // The built-in comparisons would take a reading and a number for things that never compare.
        .set_fast_operators(false)
        .disable_symbol("eval")
        // Rules say nothing: what they would print has no reader.
        .disable_symbol("print")
        .disable_symbol("debug");
    engine
}
