//! Words that describe the simpler things: titles, texts, sources, products, ingredients, symptoms, facts.

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::arguments;
use super::{Call, Word, describes, settles};
use crate::knowledge::{
    Action, Allergen, Cause, Caution, Declarations, Diet, Fact, Family, Ingredient, Limit, Market, Pack, Product,
    Provenance, Reading, Source, Symptom, Warning,
};

const TITLED: &[Kind] = &[
    Kind::Pack,
    Kind::Diet,
    Kind::Allergen,
    Kind::Market,
    Kind::Family,
    Kind::Product,
    Kind::Ingredient,
    Kind::Symptom,
    Kind::Fact,
    Kind::Reading,
    Kind::Action,
    Kind::Cause,
];

const CAUTIONED: &[Kind] = &[Kind::Symptom, Kind::Action, Kind::Cause];

const SOURCED: &[Kind] = &[Kind::Caution, Kind::Ingredient, Kind::Reading, Kind::Limit, Kind::Action, Kind::Cause];

const SCOPED: &[Kind] = &[Kind::Symptom, Kind::Fact, Kind::Reading, Kind::Limit, Kind::Cause, Kind::Warning];

pub(super) const WORDS: &[Word] = &[
    settles("title", TITLED, ".title(\"Hollow under the top crust\")", title),
    settles("version", &[Kind::Pack], ".version(\"0.1.0\")", |call| {
        if let Some(version) = only_text(call) {
            call.set::<Pack>(|pack| pack.version = version);
        }
    }),
    settles("text", &[Kind::Caution, Kind::Limit, Kind::Action], ".text(\"What to do.\")", text),
    settles("description", &[Kind::Product, Kind::Symptom, Kind::Reading], ".description(\"…\")", description),
    describes("source", SOURCED, ".source(some_handbook, common_practice)", source),
    describes("caution", CAUTIONED, ".caution(hot_oven)", caution),
    settles("citation", &[Kind::Source], ".citation(\"Author A., Title, year, table\")", |call| {
        if let Some(citation) = only_text(call) {
            call.set::<Source>(|source| source.citation = citation.into());
        }
    }),
    provenance("published", ".published()", |call| tell_provenance(call, Provenance::Published)),
    provenance("common_practice", ".common_practice()", |call| tell_provenance(call, Provenance::CommonPractice)),
    provenance("from_memory", ".from_memory()", |call| tell_provenance(call, Provenance::FromMemory)),
    settles("always", &[Kind::Caution], ".always()", |call| {
        if call.takes(1, 1) {
            call.set::<Caution>(|caution| caution.always = true);
        }
    }),
    settles("family", &[Kind::Product], ".family(soft_rolls)", |call| {
        if call.takes(2, 2)
            && let Some(family) = call.many(1, "a family", arguments::family).first().copied()
        {
            call.set::<Product>(|product| product.family = Some(family));
        }
    }),
    describes("not_for", &[Kind::Ingredient, Kind::Action], ".not_for(vegan)", |call| {
        let diets = call.many(1, "a diet", arguments::diet);
        call.set::<Ingredient>(|ingredient| ingredient.not_for.extend(&diets));
        call.set::<Action>(|action| action.not_for.extend(&diets));
    }),
    settles("part", &[Kind::Symptom], ".part(\"crust\")", part),
    describes("products", SCOPED, ".products(soft_rolls)", products),
    describes("synonyms", &[Kind::Product, Kind::Symptom, Kind::Reading], ".synonyms(\"flying top\")", |call| {
        let synonyms = call.many(1, "a text", arguments::text);
        call.set::<Product>(|product| product.synonyms.extend(synonyms.iter().cloned()));
        call.set::<Reading>(|reading| reading.synonyms.extend(synonyms.iter().cloned()));
        call.set::<Symptom>(|symptom| symptom.synonyms.extend(synonyms));
    }),
    settles("leak", &[Kind::Symptom], ".leak(0.02)", |call| {
        if call.takes(2, 2)
            && let Some(leak) = call.number_within(1, LEAST_LEAK, MOST_LEAK)
        {
            call.set::<Symptom>(|symptom| symptom.leak = leak);
        }
    }),
    describes("contradicts", &[Kind::Symptom], ".contradicts(high_volume)", |call| {
        let others = call.many(1, "a symptom", arguments::symptom);
        call.set::<Symptom>(|symptom| symptom.contradicts.extend(others));
    }),
    settles("question", &[Kind::Fact], ".question(\"…?\")", |call| {
        if let Some(question) = only_text(call) {
            call.set::<Fact>(|fact| fact.question = question.into());
        }
    }),
    settles("answered_by", &[Kind::Fact], ".answered_by(formula_has(lard))", |call| {
        if call.takes(2, 2)
            && let Some(condition) = call.condition(1)
        {
            if condition.asks_only_for_ingredients() {
                call.set::<Fact>(|fact| fact.answered_by = Some(condition));
            } else {
                let help = Some("join `formula_has(…)` and `formula_has_role(…)` by `&`, `|` and `!`".to_owned());
                let message = "a fact is answered by what a formula has".to_owned();
                call.fault(Code::WrongArguments, message, help);
            }
        }
    }),
    settles("effort", &[Kind::Fact, Kind::Reading, Kind::Action], ".effort(5)", effort),
];

/// A leak below it would let P(findings) vanish.
const LEAST_LEAK: f64 = 1e-6;

/// A symptom that is nearly always there tells nothing.
const MOST_LEAK: f64 = 0.99;

/// Longest effort, minutes: two weeks.
pub(super) const MOST_EFFORT: f64 = 20_160.0;

/// Parts of a product that a symptom can concern.
const PARTS: [&str; 8] = ["crust", "crumb", "shape", "volume", "flavour", "keeping", "dough", "filling"];

/// Something whose properties words can set.
pub(super) trait Describable: Sized {
    /// The declared thing that a term stands for.
    fn of<'d>(declared: &'d mut Declarations, term: &Term) -> Option<&'d mut Self>;
}

macro_rules! describable {
    ($($of:ident in $table:ident),+ $(,)?) => {
        $(impl Describable for $of {
            fn of<'d>(declared: &'d mut Declarations, term: &Term) -> Option<&'d mut Self> {
                if let Term::$of(key) = term { declared.$table.get_mut(*key) } else { None }
            }
        })+
    };
}

describable!(
    Source in sources, Caution in cautions, Diet in diets, Allergen in allergens, Market in markets, Family in families,
    Product in products, Ingredient in ingredients, Symptom in symptoms, Fact in facts, Reading in readings,
    Limit in limits, Action in actions, Cause in causes,
);

impl Describable for Warning {
    fn of<'d>(declared: &'d mut Declarations, term: &Term) -> Option<&'d mut Self> {
        if let Term::Warning(key) = term { declared.warnings.get_mut(key.index()) } else { None }
    }
}

impl Describable for Pack {
    fn of<'d>(declared: &'d mut Declarations, term: &Term) -> Option<&'d mut Self> {
        matches!(term, Term::Pack).then_some(&mut declared.pack)
    }
}

impl Call<'_> {
    /// Changes the receiver, when it is of this type.
    pub(super) fn set<T: Describable>(&mut self, change: impl FnOnce(&mut T)) {
        if let Some(receiver) = self.arguments.first()
            && let Some(thing) = T::of(&mut self.build.declared, receiver)
        {
            change(thing);
        }
    }
}

fn only_text(call: &mut Call<'_>) -> Option<String> {
    if call.takes(2, 2) { call.text(1) } else { None }
}

fn title(call: &mut Call<'_>) {
    let Some(text) = only_text(call) else { return };
    call.set::<Pack>(|thing| thing.title.clone_from(&text));
    call.set::<Diet>(|thing| thing.title.clone_from(&text));
    call.set::<Allergen>(|thing| thing.title.clone_from(&text));
    call.set::<Market>(|thing| thing.title.clone_from(&text));
    call.set::<Family>(|thing| thing.title.clone_from(&text));
    call.set::<Product>(|thing| thing.title.clone_from(&text));
    call.set::<Ingredient>(|thing| thing.title.clone_from(&text));
    call.set::<Symptom>(|thing| thing.title = text.as_str().into());
    call.set::<Fact>(|thing| thing.title = text.as_str().into());
    call.set::<Reading>(|thing| thing.title = text.as_str().into());
    call.set::<Action>(|thing| thing.title = text.as_str().into());
    call.set::<Cause>(|thing| thing.title = text.as_str().into());
}

fn text(call: &mut Call<'_>) {
    let Some(text) = only_text(call) else { return };
    call.set::<Caution>(|thing| thing.text = text.as_str().into());
    call.set::<Limit>(|thing| thing.text = text.as_str().into());
    call.set::<Action>(|thing| thing.text = text.as_str().into());
}

fn description(call: &mut Call<'_>) {
    let Some(text) = only_text(call) else { return };
    call.set::<Product>(|thing| thing.description.clone_from(&text));
    call.set::<Symptom>(|thing| thing.description = text.as_str().into());
    call.set::<Reading>(|thing| thing.description = text.as_str().into());
}

fn source(call: &mut Call<'_>) {
    let sources = call.many(1, "a source", arguments::source);
    call.set::<Caution>(|thing| thing.sources.extend(&sources));
    call.set::<Limit>(|thing| thing.sources.extend(&sources));
    call.set::<Ingredient>(|thing| thing.sources.extend(&sources));
    call.set::<Reading>(|thing| thing.sources.extend(&sources));
    call.set::<Action>(|thing| thing.sources.extend(&sources));
    call.set::<Cause>(|thing| thing.sources.extend(&sources));
}

fn caution(call: &mut Call<'_>) {
    let cautions = call.many(1, "a caution", arguments::caution);
    call.set::<Symptom>(|thing| thing.cautions.extend(&cautions));
    call.set::<Action>(|thing| thing.cautions.extend(&cautions));
    call.set::<Cause>(|thing| thing.cautions.extend(&cautions));
}

/// A word that tells where a source stands, which is one of three.
const fn provenance(name: &'static str, usage: &'static str, effect: fn(&mut Call<'_>)) -> Word {
    Word { once: Some("provenance"), ..settles(name, &[Kind::Source], usage, effect) }
}

fn tell_provenance(call: &mut Call<'_>, provenance: Provenance) {
    if call.takes(1, 1) {
        call.set::<Source>(|source| source.provenance = provenance);
    }
}

fn products(call: &mut Call<'_>) {
    let scopes = call.scopes(1);
    call.set::<Symptom>(|thing| thing.products.extend(&scopes));
    call.set::<Limit>(|thing| thing.products.extend(&scopes));
    call.set::<Warning>(|thing| thing.products.extend(&scopes));
    call.set::<Fact>(|thing| thing.products.extend(&scopes));
    call.set::<Reading>(|thing| thing.products.extend(&scopes));
    call.set::<Cause>(|thing| thing.products.extend(&scopes));
}

fn effort(call: &mut Call<'_>) {
    if !call.takes(2, 2) {
        return;
    }
    let Some(minutes) = call.number_within(1, 0.0, MOST_EFFORT) else { return };
    call.set::<Fact>(|thing| thing.effort_minutes = minutes);
    call.set::<Reading>(|thing| thing.effort_minutes = minutes);
    call.set::<Action>(|thing| thing.effort_minutes = minutes);
}

fn part(call: &mut Call<'_>) {
    let Some(part) = only_text(call) else { return };
    if PARTS.contains(&part.as_str()) {
        call.set::<Symptom>(|symptom| symptom.part = part);
    } else {
        let help = Some(format!("the parts are {}", PARTS.join(", ")));
        call.fault(Code::UnknownName, format!("unknown part `{part}`"), help);
    }
}
