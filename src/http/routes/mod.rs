//! The table of routes.

pub(super) mod calculations;
pub(super) mod causes;
mod common;
pub(super) mod complaints;
pub(super) mod diagnoses;
pub(super) mod facts;
pub(super) mod formulas;
pub(super) mod health;
pub(super) mod ingredients;
pub(super) mod inquiries;
pub(super) mod intake_sheets;
mod listing;
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

pub(crate) use listing::{Listing, listing_json};

use actix_web::http::Method;
use actix_web::web::{self, ServiceConfig, to};
use actix_web::{Resource, Route as Handler, guard};

use super::problem::{Problem, ProblemKind};
use super::{openapi, page};

/// Everything that can be asked: one row a path and method.
pub static ROUTES: [Route; 32] = [
    post("/v1/diagnoses", || to(diagnoses::create)),
    post("/v1/inquiries", || to(inquiries::create)),
    post("/v1/complaints", || to(complaints::create)),
    get("/v1/intake_sheets/{product}", || to(intake_sheets::show)),
    post("/v1/what_if", || to(what_if::create)),
    post("/v1/trial_sheets", || to(trial_sheets::create)),
    post("/v1/replays", || to(replays::create)),
    get("/v1/calculations", || to(calculations::list)),
    get("/v1/calculations/{name}", || to(calculations::show)),
    post("/v1/calculations/{name}", || to(calculations::compute)),
    post("/v1/formulas/figures", || to(formulas::figures)),
    post("/v1/formulas/batches", || to(formulas::batches)),
    post("/v1/formulas/ratios", || to(formulas::ratios)),
    get("/v1/products", || to(products::list)),
    get("/v1/ingredients", || to(ingredients::list)),
    get("/v1/requirements", || to(requirements::list)),
    get("/v1/symptoms", || to(symptoms::list)),
    get("/v1/readings", || to(readings::list)),
    get("/v1/facts", || to(facts::list)),
    get("/v1/causes", || to(causes::list)),
    get("/v1/causes/{id}", || to(causes::show)),
    get("/v1/rules", || to(rules::show)),
    post("/v1/rules/reload", || to(rules::reload)),
    post("/v1/rules/trial", || to(rule_trials::create)),
    get("/v1/problems", || to(problems::list)),
    get("/v1/problems/{id}", || to(problems::show)),
    get("/openapi.json", || to(openapi::show)),
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
}

const fn get(path: &'static str, handler: fn() -> Handler) -> Route {
    Route { method: Method::GET, path, handler }
}

const fn post(path: &'static str, handler: fn() -> Handler) -> Route {
    Route { method: Method::POST, path, handler }
}

impl Route {
    /// Methods that are answered by this row.
    #[must_use]
    pub fn methods(&self) -> Vec<Method> {
        let head = (self.method == Method::GET).then_some(Method::HEAD);
        std::iter::once(self.method.clone()).chain(head).collect()
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
        app.service(resource(route.path));
    }
    app.default_service(to(|| std::future::ready(unknown_route())));
}

fn method_not_allowed(allow: &str) -> Result<&'static str, Problem> {
    Err(Problem::new(ProblemKind::MethodNotAllowed).detail(format!("allowed are {allow}")).header("allow", allow))
}

fn unknown_route() -> Result<&'static str, Problem> {
    Err(Problem::new(ProblemKind::UnknownRoute))
}
