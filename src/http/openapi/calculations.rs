//! The operations of the calculations: one path each, with the schema of its inputs, made from the registry.

use serde_json::{Value, json};
use utoipa::openapi::path::{HttpMethod, OperationBuilder};
use utoipa::openapi::request_body::RequestBodyBuilder;
use utoipa::openapi::schema::{AdditionalProperties, ArrayBuilder, ObjectBuilder, OneOfBuilder};
use utoipa::openapi::{
    ContentBuilder, OpenApi, PathItem, Ref, RefOr, Required, ResponseBuilder, ResponsesBuilder, Schema, Type,
};

use super::JSON;
use super::problems::CalculationProblems;
use crate::calculations::{Calculation, Choice, DefaultValue, Input, InputKind, NumberKind, Presence, RowsKind, all};

/// Name of the schema of a value with its unit.
const VALUE_WITH_UNIT: &str = "ValueWithUnit";

/// Adds an operation for every calculation.
pub(super) fn add(document: &mut OpenApi) -> serde_json::Result<()> {
    if let Some(components) = &mut document.components {
        components.schemas.insert(VALUE_WITH_UNIT.to_owned(), value_with_unit());
        components.responses.extend(CalculationProblems::components());
    }
    for calculation in all() {
        let path = format!("/v1/calculations/{}", calculation.name);
        document.paths.paths.insert(path, PathItem::new(HttpMethod::Post, operation(calculation)?));
    }
    Ok(())
}

fn operation(calculation: &Calculation) -> serde_json::Result<OperationBuilder> {
    let example: Value = serde_json::from_str(calculation.example)?;
    let inputs = ContentBuilder::new().schema(Some(object(calculation.inputs))).example(Some(example.clone())).build();
    let body = RequestBodyBuilder::new()
        .description(Some("The inputs"))
        .required(Some(Required::True))
        .content(JSON, inputs)
        .build();
    let answer = calculation.answer(calculation.example.as_bytes()).ok();
    let answer = answer.map(serde_json::to_value).transpose()?;
    let content =
        ContentBuilder::new().schema(Some(Ref::from_schema_name("CalculationAnswer"))).example(answer).build();
    let success = ResponseBuilder::new().description("The figures").content(JSON, content).build();
    let mut responses = ResponsesBuilder::new().response("200", success).build();
    responses.responses.extend(CalculationProblems::references());
    Ok(OperationBuilder::new()
        .tag("calculations")
        .summary(Some(calculation.title))
        .description(Some(calculation.description))
        .operation_id(Some(format!("calculate_{}", calculation.name)))
        .request_body(Some(body))
        .responses(responses))
}

/// An object with the inputs as members.
fn object(inputs: &'static [Input]) -> RefOr<Schema> {
    let mut object = ObjectBuilder::new()
        .schema_type(Type::Object)
        .additional_properties(Some(AdditionalProperties::FreeForm(false)));
    for input in inputs {
        object = object.property(input.name, schema(input));
        if input.is_required() {
            object = object.required(input.name);
        }
    }
    object.build().into()
}

fn schema(input: &Input) -> RefOr<Schema> {
    let description = Some(described(input));
    let default = default(input.presence);
    match input.kind {
        InputKind::Number(kind) => OneOfBuilder::new()
            .item(number(kind))
            .item(Ref::from_schema_name(VALUE_WITH_UNIT))
            .description(description)
            .default(default)
            .into(),
        InputKind::Choice(choices) => ObjectBuilder::new()
            .schema_type(Type::String)
            .enum_values(Some(choices.iter().map(|choice| choice.word)))
            .description(description)
            .default(default)
            .build()
            .into(),
        InputKind::Boolean => {
            ObjectBuilder::new().schema_type(Type::Boolean).description(description).default(default).build().into()
        }
        InputKind::Text => ObjectBuilder::new()
            .schema_type(Type::String)
            .min_length(Some(1))
            .max_length(Some(crate::calculations::LONGEST_TEXT))
            .description(description)
            .build()
            .into(),
        InputKind::Composition(components) => composition(components, description),
        InputKind::Rows(RowsKind { inputs, least, most }) => ArrayBuilder::new()
            .items(object(inputs))
            .min_items(Some(least))
            .max_items(Some(most))
            .description(description)
            .build()
            .into(),
    }
}

/// The description with the unit of a number or the meaning of the words.
fn described(input: &Input) -> String {
    let meaning = |choice: &Choice| format!("`{}`: {}", choice.word, choice.meaning);
    match input.kind {
        InputKind::Number(NumberKind { unit, .. }) => {
            format!("{}; a bare number is in `{unit}`", input.description)
        }
        InputKind::Choice(choices) => {
            let meanings: Vec<String> = choices.iter().map(meaning).collect();
            format!("{}; {}", input.description, meanings.join("; "))
        }
        _ => input.description.to_owned(),
    }
}

fn default(presence: Presence) -> Option<Value> {
    match presence {
        Presence::Default { value: DefaultValue::Number(number), .. } => Some(json!(number)),
        Presence::Default { value: DefaultValue::Word(word), .. } => Some(json!(word)),
        Presence::Default { value: DefaultValue::Boolean(yes), .. } => Some(json!(yes)),
        Presence::Required | Presence::Optional => None,
    }
}

fn number(kind: NumberKind) -> RefOr<Schema> {
    let object = ObjectBuilder::new().schema_type(Type::Number);
    object.minimum(Some(kind.low)).maximum(Some(kind.high)).build().into()
}

fn composition(components: &'static [&'static str], description: Option<String>) -> RefOr<Schema> {
    let percent = NumberKind { unit: "%", low: 0.0, high: 100.0, is_difference: false };
    let object = ObjectBuilder::new()
        .schema_type(Type::Object)
        .description(description)
        .additional_properties(Some(AdditionalProperties::FreeForm(false)));
    let share = || OneOfBuilder::new().item(number(percent)).item(Ref::from_schema_name(VALUE_WITH_UNIT));
    components.iter().fold(object, |object, name| object.property(*name, share())).build().into()
}

fn value_with_unit() -> RefOr<Schema> {
    let member = |kind: Type, description: &str| {
        ObjectBuilder::new().schema_type(kind).description(Some(description.to_owned())).build()
    };
    ObjectBuilder::new()
        .schema_type(Type::Object)
        .description(Some("A value in a unit of its own, which is converted".to_owned()))
        .property("value", member(Type::Number, "Value in `unit`"))
        .required("value")
        .property("unit", member(Type::String, "UCUM code"))
        .required("unit")
        .additional_properties(Some(AdditionalProperties::FreeForm(false)))
        .build()
        .into()
}
