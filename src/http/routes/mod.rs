//! The table of routes.

pub(super) mod calculations;
pub(super) mod causes;
pub(super) mod complaints;
pub(super) mod diagnoses;
pub(super) mod facts;
pub(super) mod formulas;
pub(super) mod health;
pub(super) mod ingredients;
pub(super) mod inquiries;
pub(super) mod intake_sheets;
pub(super) mod problems;
pub(super) mod products;
pub(super) mod readings;
pub(super) mod replays;
pub(super) mod requirements;
pub(super) mod rule_trials;
pub(super) mod rules;
pub(super) mod symptoms;
pub(super) mod trial_sheets;
pub(super) mod what_if;

use actix_web::http::Method;
use actix_web::middleware::from_fn;
use actix_web::web::{self, ServiceConfig, to};
use actix_web::{Resource, Route as Handler, guard};

use super::entity_tag::{self, Follows};
use super::problem::{Problem, ProblemKind};
use super::{openapi, page};

/// Everything that can be asked: one row a path and method.
pub static ROUTES: [Route; 32] = [
    post("/v1/diagnoses", || to(diagnoses::create)),
    post("/v1/inquiries", || to(inquiries::create)),
    post("/v1/complaints", || to(complaints::create)),
    kept("/v1/intake_sheets/{product}", || to(intake_sheets::show)),
    post("/v1/what_if", || to(what_if::create)),
    post("/v1/trial_sheets", || to(trial_sheets::create)),
    post("/v1/replays", || to(replays::create)),
    kept("/v1/calculations", || to(calculations::list)),
    kept("/v1/calculations/{name}", || to(calculations::show)),
    post("/v1/calculations/{name}", || to(calculations::compute)),
    post("/v1/formulas/figures", || to(formulas::figures)),
    post("/v1/formulas/batches", || to(formulas::batches)),
    post("/v1/formulas/ratios", || to(formulas::ratios)),
    kept("/v1/products", || to(products::list)),
    kept("/v1/ingredients", || to(ingredients::list)),
    kept("/v1/requirements", || to(requirements::list)),
    kept("/v1/symptoms", || to(symptoms::list)),
    kept("/v1/readings", || to(readings::list)),
    kept("/v1/facts", || to(facts::list)),
    kept("/v1/causes", || to(causes::list)),
    kept("/v1/causes/{id}", || to(causes::show)),
    status("/v1/rules", || to(rules::show)),
    post("/v1/rules/reload", || to(rules::reload)),
    post("/v1/rules/trial", || to(rule_trials::create)),
    kept("/v1/problems", || to(problems::list)),
    kept("/v1/problems/{id}", || to(problems::show)),
    kept("/openapi.json", || to(openapi::show)),
    get("/healthz", || to(health::live)),
    get("/readyz", || to(health::ready)),
    get("/", || to(page::redirect)),
    get("/docs", || to(page::redirect)),
    get("/docs/{file:.*}", || to(page::file)),
];

/// One row of the table.
pub struct Route {
    /// Method; `HEAD` is answered wherever `GET` is.
    pub method: Method,
    /// Path, with the placeholders of the OpenAPI document.
    pub path: &'static str,
    handler: fn() -> Handler,
    /// What its entity tag follows; `None`: it has none.
    follows: Option<Follows>,
}

const fn get(path: &'static str, handler: fn() -> Handler) -> Route {
    Route { method: Method::GET, path, handler, follows: None }
}

/// What stays as long as the rules do.
const fn kept(path: &'static str, handler: fn() -> Handler) -> Route {
    Route { method: Method::GET, path, handler, follows: Some(Follows::Rules) }
}

/// What tells of the rules.
const fn status(path: &'static str, handler: fn() -> Handler) -> Route {
    Route { method: Method::GET, path, handler, follows: Some(Follows::Status) }
}

const fn post(path: &'static str, handler: fn() -> Handler) -> Route {
    Route { method: Method::POST, path, handler, follows: None }
}

impl Route {
    /// Methods that are answered by this row.
    #[must_use]
    pub fn methods(&self) -> Vec<Method> {
        let head = (self.method == Method::GET).then_some(Method::HEAD);
        std::iter::once(self.method.clone()).chain(head).collect()
    }

    /// Whether the answer has an entity tag.
    #[must_use]
    pub fn is_tagged(&self) -> bool {
        self.follows.is_some()
    }

    fn guarded(&self) -> Handler {
        let methods = self.methods();
        (self.handler)().guard(guard::fn_guard(move |context| methods.contains(&context.head().method)))
    }
}

/// The rows of a path.
fn rows(path: &str) -> impl Iterator<Item = &'static Route> {
    ROUTES.iter().filter(move |route| route.path == path)
}

/// Methods that are answered at a path, as the `Allow` header field tells them.
fn allowed(path: &str) -> String {
    let methods: Vec<Method> = rows(path).flat_map(Route::methods).collect();
    methods.iter().map(Method::as_str).collect::<Vec<_>>().join(", ")
}

fn resource(path: &'static str) -> Resource {
    let allow = allowed(path);
    rows(path)
        .fold(web::resource(path), |resource, route| resource.route(route.guarded()))
        .default_service(to(move || std::future::ready(method_not_allowed(&allow))))
}

/// Adds all routes, and problems for everything else.
pub(super) fn configure(app: &mut ServiceConfig) {
    let is_first = |route: &Route| rows(route.path).next().is_some_and(|first| std::ptr::eq(first, route));
    for route in ROUTES.iter().filter(|route| is_first(route)) {
        let resource = resource(route.path);
        match rows(route.path).find_map(|row| row.follows) {
            Some(Follows::Rules) => app.service(resource.wrap(from_fn(entity_tag::of_rules))),
            Some(Follows::Status) => app.service(resource.wrap(from_fn(entity_tag::of_status))),
            None => app.service(resource),
        };
    }
    app.default_service(to(|| std::future::ready(unknown_route())));
}

fn method_not_allowed(allow: &str) -> Result<&'static str, Problem> {
    let verb = if allow.contains(',') { "are" } else { "is" };
    Err(Problem::new(ProblemKind::MethodNotAllowed).detail(format!("allowed {verb} {allow}")).header("allow", allow))
}

fn unknown_route() -> Result<&'static str, Problem> {
    Err(Problem::new(ProblemKind::UnknownRoute))
}
