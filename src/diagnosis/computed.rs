//! What was computed: readings that nobody took, and what the formula comes to.

use std::borrow::Cow;

use super::answer::{Computed, MethodText};
use super::calculations;
use super::circumstances::LaidOut;
use super::numbers::rounded;
use super::words::input_id;
use crate::formulas::Figure;
use crate::knowledge::{Knowledge, ProductView, Quantity, Reading};
use crate::science::Estimate;
use crate::science::formula::Part;

/// Readings that were computed, then figures of the formula that stand for no reading.
pub(super) fn computed<'k>(knowledge: &'k Knowledge, view: &ProductView, laid_out: &LaidOut) -> Vec<Computed<'k>> {
    let main = view.main_stage.part();
    let readings = laid_out.computed.iter().filter_map(|key| {
        let reading = &knowledge.declared.readings[*key];
        let value = laid_out.circumstances.reading(*key)?;
        Some(of_reading(knowledge, laid_out, reading, value, main))
    });
    let stands_for_reading = |figure: &Figure| {
        laid_out.computed.iter().any(|key| {
            let computed = knowledge.declared.readings[*key].computed.as_ref();
            computed.is_some_and(|quantity| is_figure(quantity, figure, main))
        })
    };
    let figures = laid_out.figures.iter().filter(|figure| !stands_for_reading(figure));
    readings.chain(figures.filter_map(|figure| of_figure(figure, main))).collect()
}

fn of_reading<'k>(
    knowledge: &'k Knowledge,
    laid_out: &LaidOut,
    reading: &'k Reading,
    value: f64,
    main: Part,
) -> Computed<'k> {
    let mut from: Vec<&str> = Vec::new();
    let (mut method, mut remarks) = (None, Vec::new());
    if let Some(quantity) = &reading.computed {
        // What fails gives no value and is not among the computed readings.
        (method, remarks) = calculations::explain(quantity, &laid_out.circumstances, &mut Vec::new());
        quantity.inputs(&mut |input| {
            let id = input_id(&knowledge.declared, input);
            if !from.contains(&id) {
                from.push(id);
            }
        });
        // A figure that is only a term of the sum still carries its remarks into it.
        quantity.parts(&mut |part| {
            for estimate in estimates(laid_out, part, main) {
                remarks.extend(
                    estimate.outside_domain.iter().filter(|text| !remarks.contains(text)).cloned().collect::<Vec<_>>(),
                );
            }
        });
        method = method.or_else(|| estimates(laid_out, quantity, main).next().map(method_of));
    }
    Computed {
        quantity: &reading.id,
        title: &reading.title,
        value: rounded(value),
        unit: reading.unit.code(),
        basis: basis(&reading.id),
        from: Cow::Owned(from.join(", ")),
        method,
        remarks,
    }
}

fn of_figure<'k>(figure: &Figure, main: Part) -> Option<Computed<'k>> {
    let estimate = figure.estimate.as_ref()?;
    Some(Computed {
        quantity: figure.quantity.name(),
        title: figure.quantity.title(),
        value: rounded(estimate.value),
        unit: estimate.unit,
        basis: if figure.part == main { basis(figure.quantity.name()) } else { Some(of_part(figure.part)) },
        from: Cow::Borrowed("formula"),
        method: Some(method_of(estimate)),
        remarks: estimate.outside_domain.clone(),
    })
}

/// The figures that a quantity is, if it is one.
fn estimates<'a>(laid_out: &'a LaidOut, quantity: &'a Quantity, main: Part) -> impl Iterator<Item = &'a Estimate> {
    let own = laid_out.figures.iter().filter(move |figure| is_figure(quantity, figure, main));
    own.filter_map(|figure| figure.estimate.as_ref())
}

fn is_figure(quantity: &Quantity, figure: &Figure, main: Part) -> bool {
    matches!(quantity, Quantity::Formula(own, part) if *own == figure.quantity && part.unwrap_or(main) == figure.part)
}

fn method_of(estimate: &Estimate) -> MethodText {
    MethodText { name: estimate.method.name, source: estimate.method.source }
}

fn of_part(part: Part) -> &'static str {
    match part {
        Part::Dough => "of the dough",
        Part::Filling => "of the filling",
        Part::Icing => "of the icing",
    }
}

fn basis(name: &str) -> Option<&'static str> {
    name.ends_with("_on_flour").then_some("on flour")
}
