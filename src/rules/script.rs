//! Compiles and runs rule files, and tells everything that goes wrong.

use std::any::TypeId;
use std::collections::BTreeSet;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Instant;

use rhai::module_resolvers::StaticModuleResolver;
use rhai::{AST, ASTNode, Dynamic, Engine, Expr, Module, NativeCallContext, Position, Scope, Stmt};

use super::build::{Build, Name, place};
use super::code::Code;
use super::failure;
use super::files::LARGEST_FILE;
use super::language::{self, Call, Effect};
use super::names::{self, Declared};
use super::sandbox;
use super::stage::Stage;
use super::term::{Kind, Term};
use crate::knowledge::Place;
use crate::suggest::{closest, did_you_mean};

/// Most arguments of a word, its receiver included; longer lists go in brackets.
pub(super) const MOST_ARGUMENTS: usize = 10;

/// Most operations of all files together; a pack of a thousand rules takes some 500,000.
const MOST_OPERATIONS: u64 = 50_000_000;

/// Most parts of a condition or expression; more cannot be read by anybody.
const MOST_NODES: usize = 256;

/// Operators of the language; the rest are words.
const OPERATORS: [&str; 12] = ["+", "-", "*", "/", ">", ">=", "<", "<=", "==", "!=", "&", "|"];

/// Operators on one term.
const SIGNS: [&str; 2] = ["-", "!"];

/// Runs files and builds what they declare.
pub(super) struct Runner {
    engine: Engine,
    build: Arc<Mutex<Build>>,
    known_words: BTreeSet<String>,
    /// Names that scripts know already.
    published: BTreeSet<String>,
}

/// A file that compiles.
pub(super) struct Script {
    path: Arc<str>,
    ast: AST,
}

impl Runner {
    /// A runner that ends scripts at a deadline, if there is one.
    pub(super) fn new(build: Build, deadline: Option<Instant>) -> Self {
        let build = Arc::new(Mutex::new(build));
        let mut engine = sandbox::loading_engine();
        engine.register_type_with_name::<Term>("term");
        let spent = AtomicU64::new(0);
        engine.on_progress(move |_| {
            let spent = spent.fetch_add(1, Ordering::Relaxed);
            // The clock is slow beside an operation.
            let is_late = || spent.is_multiple_of(1_024) && deadline.is_some_and(|deadline| Instant::now() >= deadline);
            (spent > MOST_OPERATIONS || is_late()).then_some(Dynamic::UNIT)
        });
        let mut runner = Self { engine, build, known_words: BTreeSet::new(), published: BTreeSet::new() };
        for word in language::words() {
            runner.know(word.name);
        }
        runner
    }

    /// The state of the load; a panic elsewhere cannot leave it half written, since words run one at a time.
    pub(super) fn build(&self) -> MutexGuard<'_, Build> {
        self.build.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Registers a name, once, for every number of arguments.
    fn know(&mut self, name: &str) {
        if !self.known_words.insert(name.to_owned()) {
            return;
        }
        let (term, any) = (TypeId::of::<Term>(), TypeId::of::<Dynamic>());
        if OPERATORS.contains(&name) || SIGNS.contains(&name) {
            self.register(name, &[term]);
            for other in operands() {
                self.register(name, &[term, other]);
                self.register(name, &[other, term]);
            }
            return;
        }
        let is_word = language::words().any(|word| word.name == name);
        for count in 1..=MOST_ARGUMENTS {
            // A name that is no word is caught only where it follows a term: functions of scripts go their own way.
            let mut types = vec![any; count];
            if let Some(first) = types.first_mut()
                && !is_word
            {
                *first = term;
            }
            self.register(name, &types);
        }
    }

    fn register(&mut self, name: &str, types: &[TypeId]) {
        let build = Arc::clone(&self.build);
        let word = name.to_owned();
        self.engine.register_raw_fn(
            name,
            types,
            move |context: NativeCallContext<'_>, arguments: &mut [&mut Dynamic]| {
                let terms = arguments.iter().map(|argument| Term::from_dynamic((**argument).clone())).collect();
                let mut build = build.lock().unwrap_or_else(PoisonError::into_inner);
                let file = context.call_source().map_or_else(|| Arc::clone(&build.file), Arc::from);
                let at = place(&file, context.call_position());
                Ok(match apply(&mut build, &word, at, terms) {
                    Term::Nothing => Dynamic::UNIT,
                    term => Dynamic::from(term),
                })
            },
        );
    }

    /// Compiles a file; a syntax fault is told, and what the text seems to declare is reserved all the same.
    pub(super) fn compile(&self, path: &str, text: &str) -> Option<Script> {
        let path: Arc<str> = Arc::from(path);
        self.build().file = Arc::clone(&path);
        if text.len() as u64 > LARGEST_FILE {
            self.refuse(Code::File, format!("the file is longer than {} KiB", LARGEST_FILE / 1024), None);
            return None;
        }
        match self.engine.compile(text) {
            // One bracket too many is a fault everywhere but in a comment.
            Ok(_) if text.contains("/*") && self.engine.compile(format!("{text}\n)")).is_ok() => {
                self.refuse(Code::Syntax, "a comment does not end".to_owned(), Some("close it with `*/`".to_owned()));
                None
            }
            Ok(mut ast) => {
                ast.set_source(path.as_ref());
                Some(Script { path, ast })
            }
            Err(error) => {
                failure::syntax(&mut self.build(), &error);
                None
            }
        }
    }

    /// Tells what is wrong with the whole file.
    fn refuse(&self, code: Code, message: String, help: Option<String>) {
        let mut build = self.build();
        let at = build.place(Position::NONE);
        build.fault(code, &at, 1, message, help);
    }

    /// Makes the functions of files under `lib/` importable.
    pub(super) fn import(&mut self, scripts: &[Script]) {
        let mut resolver = StaticModuleResolver::new();
        for script in scripts {
            self.build().file = Arc::clone(&script.path);
            match Module::eval_ast_as_new(Scope::new(), &script.ast, &self.engine) {
                Ok(module) => resolver.insert(script.path.trim_end_matches(".rhai"), module),
                Err(error) => {
                    failure::run(&mut self.build(), &error, 0);
                }
            }
        }
        self.engine.set_module_resolver(resolver);
    }

    /// Runs all files of a stage.
    pub(super) fn run_stage(&mut self, stage: Stage, scripts: &[Script]) {
        for script in scripts {
            self.reserve(stage, script);
        }
        self.publish_names();
        for script in scripts {
            self.absorb_unknown(script);
            self.run(stage, script);
        }
        // Names that were made up while the files ran.
        self.publish_names();
    }

    fn reserve(&self, stage: Stage, script: &Script) {
        let mut build = self.build();
        build.file = Arc::clone(&script.path);
        for Declared { kind, id, at, is_misspelt } in names::declared_in(&script.ast, stage) {
            if build.is_name(&id, kind) {
                let at = build.place(at);
                build.reserve(kind, &id, &at);
                if is_misspelt {
                    build.believe_declared(&id);
                }
            }
        }
    }

    /// Makes all names known to the scripts, in functions too.
    fn publish_names(&mut self) {
        let mut module = Module::new();
        let build = Arc::clone(&self.build);
        for (id, Name { term, .. }) in &build.lock().unwrap_or_else(PoisonError::into_inner).names {
            if self.published.insert(id.clone()) {
                module.set_var(id.as_str(), Dynamic::from(term.clone()));
            }
        }
        self.register_names(module);
    }

    /// Adds names, if there are any: every lookup goes through all modules, so there must be few.
    fn register_names(&mut self, names: Module) {
        if !names.is_empty() {
            self.engine.register_global_module(names.into());
        }
    }

    /// Tells all names that nothing declares, and lets them and unknown words pass, so that the run finds further faults.
    pub(super) fn absorb_unknown(&mut self, script: &Script) {
        let mut unknown = Module::new();
        each_free_name(&script.ast, &mut |name, position| {
            let mut build = self.build();
            if !build.names.contains_key(name) {
                let at = place(&script.path, position);
                let help = build.suggestion(name).or_else(|| looks_like_word(name));
                build.fault(Code::UnknownName, &at, name.chars().count(), format!("unknown name `{name}`"), help);
                unknown.set_var(name, Dynamic::from(Term::Unknown));
            }
        });
        self.register_names(unknown);
        let mut called = BTreeSet::new();
        names::each_call(&script.ast, &mut |call, _| {
            called.insert(call.name.to_string());
        });
        for name in called {
            if name.chars().all(|c| c.is_ascii_alphanumeric() || c == '_') {
                self.know(&name);
            }
        }
    }

    /// Runs a file statement by statement, so that one fault does not hide the next.
    fn run(&self, stage: Stage, script: &Script) {
        let functions = AST::new_with_source([], script.ast.shared_lib().clone(), script.path.as_ref());
        {
            let mut build = self.build();
            build.file = Arc::clone(&script.path);
            build.stage = stage;
            build.functions = Arc::new(functions);
        }
        let (mut scope, mut imports) = (Scope::new(), Vec::new());
        for statement in script.ast.statements() {
            let own = if matches!(statement, Stmt::Import(..)) {
                imports.push(statement.clone());
                None
            } else {
                Some(statement)
            };
            let statements = imports.iter().chain(own).cloned();
            let part = AST::new_with_source(statements, script.ast.shared_lib().clone(), script.path.as_ref());
            if let Err(error) = self.engine.run_ast_with_scope(&mut scope, &part) {
                // A variable that was not made would be missing in all that follows.
                let hopeless = failure::run(&mut self.build(), &error, 0) || matches!(statement, Stmt::Var(..));
                self.excuse(stage, if hopeless { &script.ast } else { &part });
                if hopeless {
                    return;
                }
            }
        }
    }

    /// What a failed script did not come to declare is not told on top.
    fn excuse(&self, stage: Stage, failed: &AST) {
        let mut build = self.build();
        for declared in names::declared_in(failed, stage) {
            build.believe_declared(&declared.id);
        }
    }
}

/// What may stand beside a term in an operation: operators are looked up by exact types only.
fn operands() -> [TypeId; 6] {
    [
        TypeId::of::<Term>(),
        TypeId::of::<rhai::INT>(),
        TypeId::of::<rhai::FLOAT>(),
        TypeId::of::<bool>(),
        TypeId::of::<rhai::ImmutableString>(),
        TypeId::of::<rhai::Array>(),
    ]
}

/// Variables that no `let`, parameter or loop of the file makes.
fn each_free_name(ast: &AST, visit: &mut dyn FnMut(&str, Position)) {
    ast.walk(&mut |path| {
        if let Some(ASTNode::Expr(Expr::Variable(variable, short_index, at))) = path.last()
            && short_index.is_none()
            && variable.0.is_none()
            && variable.2.is_empty()
        {
            visit(&variable.1, *at);
        }
        true
    });
}

fn looks_like_word(name: &str) -> Option<String> {
    did_you_mean(name, language::words().map(|word| word.name))
}

/// Does what a word says.
fn apply(build: &mut Build, name: &str, at: Place, arguments: Vec<Term>) -> Term {
    let receiver = arguments.first().map(Term::kind);
    if receiver == Some(Kind::Unknown) {
        return Term::Unknown;
    }
    if let Some(number) = arguments.iter().find_map(Term::not_finite) {
        let message = format!("{number} is not a number to compute with");
        build.fault(Code::OutOfRange, &at, name.chars().count(), message, None);
        return Term::Unknown;
    }
    let Some(word) = language::find(name, receiver) else {
        unknown_word(build, name, arguments.first(), &at);
        // The rest of the chain can be read all the same.
        let stage = build.stage;
        return arguments
            .into_iter()
            .next()
            .filter(|term| Stage::declaring(term.kind()) == Some(stage))
            .unwrap_or(Term::Unknown);
    };
    let mut call = Call { build, name: name.to_owned(), usage: word.usage, at, arguments };
    match word.effect {
        Effect::Makes(make) => {
            let made = make(&mut call).unwrap_or(Term::Unknown);
            small_enough(call.build, word.name, &call.at, made)
        }
        Effect::Describes(describe) => {
            if call.receiver_is_declared_here() {
                if let Some(property) = word.once {
                    call.has_once(property);
                }
                if let Some((kind, index)) = call.arguments.first().and_then(Term::thing) {
                    call.build.stated.insert((kind, index, word.name));
                }
                describe(&mut call);
            }
            call.arguments.into_iter().next().unwrap_or(Term::Unknown)
        }
    }
}

/// Refuses what a loop piled up: everything that walks a condition or expression goes as deep as it does.
fn small_enough(build: &mut Build, name: &str, at: &Place, made: Term) -> Term {
    if made.nodes() <= MOST_NODES {
        return made;
    }
    let message = format!("a condition or expression of more than {MOST_NODES} parts");
    build.fault(Code::Limit, at, name.chars().count(), message, None);
    Term::Unknown
}

fn unknown_word(build: &mut Build, name: &str, receiver: Option<&Term>, at: &Place) {
    let width = name.chars().count();
    let (thing, receiver) = (receiver.and_then(Term::thing), receiver.map(Term::kind));
    let elsewhere: Vec<&'static str> = language::words()
        .filter(|word| word.name == name)
        .flat_map(|word| word.follows)
        .map(|kind| kind.phrase())
        .collect();
    let after = receiver.map_or("nothing", Kind::phrase);
    if elsewhere.is_empty() {
        let own = language::words()
            .filter(|word| word.follows.is_empty() || receiver.is_some_and(|kind| word.follows.contains(&kind)));
        let meant = closest(name, own.map(|word| word.name));
        // What the word was to state is not told to be lacking on top.
        if let (Some((kind, index)), Some(word)) = (thing, meant) {
            build.stated.insert((kind, index, word));
        }
        let help = meant.map(|word| format!("did you mean `{word}`?"));
        build.fault(Code::UnknownWord, at, width, format!("unknown word `{name}`"), help);
    } else {
        let help = Some(format!("it follows {}", elsewhere.join(", ")));
        build.fault(Code::WrongArguments, at, width, format!("`{name}` does not follow {after}"), help);
    }
}
