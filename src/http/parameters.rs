//! The query parameters of a request: what is known is read, what is not known is refused.

use std::future::{Ready, ready};

use actix_web::dev::Payload;
use actix_web::web::Query;
use actix_web::{FromRequest, HttpRequest};

use super::problem::{ErrorCode, Problem, ProblemEntry, ProblemKind};
use crate::knowledge::{Key, Knowledge, Product, ProductView};
use crate::suggest::did_you_mean;

/// Name and value of each parameter, in their order.
type Pairs = Vec<(String, String)>;

/// A request without query parameters.
#[derive(Debug)]
pub(super) struct NoParameters;

/// `?product=`, by which a listing is narrowed.
#[derive(Debug)]
pub(super) struct ProductFilter(Option<String>);

impl ProductFilter {
    const NAME: &'static str = "product";

    /// The view of the named product; `None` when no product is named.
    ///
    /// # Errors
    /// A problem with a suggestion when the rules do not declare the product.
    pub(super) fn view<'k>(&self, knowledge: &'k Knowledge) -> Result<Option<&'k ProductView>, Problem> {
        self.0.as_deref().map(|id| find_product(id, knowledge).map(|key| knowledge.view(key))).transpose()
    }
}

/// `?format=`, by which an answer for people is had on paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PaperFormat {
    Json,
    Markdown,
    Page,
}

impl PaperFormat {
    const NAME: &'static str = "format";
    const WORDS: [(&'static str, Self); 3] = [("json", Self::Json), ("markdown", Self::Markdown), ("page", Self::Page)];

    fn named(word: &str) -> Result<Self, Problem> {
        let words = Self::WORDS.map(|(own, _)| own);
        let found = Self::WORDS.into_iter().find(|(own, _)| *own == word).map(|(_, format)| format);
        found.ok_or_else(|| {
            let help = did_you_mean(word, words).unwrap_or_else(|| format!("the formats are `{}`", words.join("`, `")));
            let detail = format!("unknown format `{word}`");
            let entry = ProblemEntry::parameter(Self::NAME, ErrorCode::UnknownName, detail);
            Problem::new(ProblemKind::FaultyParameters).entries([entry.help(help)])
        })
    }
}

fn find_product(id: &str, knowledge: &Knowledge) -> Result<Key<Product>, Problem> {
    let products = &knowledge.declared.products;
    products.find(id).ok_or_else(|| {
        let help = did_you_mean(id, products.ids()).unwrap_or_else(|| "`/v1/products` lists the products".to_owned());
        let entry =
            ProblemEntry::parameter(ProductFilter::NAME, ErrorCode::UnknownName, format!("unknown product `{id}`"));
        Problem::new(ProblemKind::FaultyParameters).entries([entry.help(help)])
    })
}

/// `?format=`: how a sheet is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SheetFormat {
    /// JSON, for programs.
    Json,
    /// A page to print.
    Page,
}

impl SheetFormat {
    const NAME: &'static str = "format";

    fn named(word: &str) -> Result<Self, Problem> {
        match word {
            "json" => Ok(Self::Json),
            "page" => Ok(Self::Page),
            _ => {
                let detail = format!("unknown format `{word}`");
                let entry = ProblemEntry::parameter(Self::NAME, ErrorCode::UnknownName, detail);
                let help = "the formats are `json` and `page`".to_owned();
                Err(Problem::new(ProblemKind::FaultyParameters).entries([entry.help(help)]))
            }
        }
    }
}

impl FromRequest for SheetFormat {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        ready(word(request, Self::NAME).and_then(|word| word.map_or(Ok(Self::Json), |word| Self::named(&word))))
    }
}

impl FromRequest for NoParameters {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        ready(pairs(request).and_then(|pairs| check(&pairs, &[])).map(|()| Self))
    }
}

impl FromRequest for ProductFilter {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        ready(word(request, Self::NAME).map(Self))
    }
}

impl FromRequest for PaperFormat {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        ready(word(request, Self::NAME).and_then(|word| word.map_or(Ok(Self::Json), |word| Self::named(&word))))
    }
}

/// The value of the only parameter that a route takes, where it is given.
fn word(request: &HttpRequest, name: &'static str) -> Result<Option<String>, Problem> {
    let pairs = pairs(request)?;
    check(&pairs, &[name])?;
    Ok(pairs.into_iter().next().map(|(_, word)| word))
}

fn pairs(request: &HttpRequest) -> Result<Pairs, Problem> {
    let pairs = Query::<Pairs>::from_query(request.query_string()).map(Query::into_inner);
    pairs.map_err(|_| Problem::new(ProblemKind::FaultyParameters).detail("the query cannot be decoded"))
}

/// Every parameter must be known and stand once.
fn check(pairs: &Pairs, known: &[&'static str]) -> Result<(), Problem> {
    let faults: Vec<ProblemEntry> =
        pairs.iter().enumerate().filter_map(|(index, (name, _))| fault(name, pairs.get(..index)?, known)).collect();
    if faults.is_empty() { Ok(()) } else { Err(Problem::new(ProblemKind::FaultyParameters).entries(faults)) }
}

fn fault(name: &str, earlier: &[(String, String)], known: &[&'static str]) -> Option<ProblemEntry> {
    if !known.contains(&name) {
        let help = did_you_mean(name, known.iter().copied()).unwrap_or_else(|| listing(known));
        let detail = format!("unknown parameter `{name}`");
        return Some(ProblemEntry::parameter(name, ErrorCode::UnknownParameter, detail).help(help));
    }
    let is_double = earlier.iter().any(|(other, _)| other == name);
    is_double.then(|| ProblemEntry::parameter(name, ErrorCode::Duplicate, format!("`{name}` stands twice")))
}

fn listing(known: &[&str]) -> String {
    if known.is_empty() {
        return "this route takes no parameters".to_owned();
    }
    format!("the parameters are `{}`", known.join("`, `"))
}
