//! What may be left out is left out, never `null`: neither in cases, where `null` is a fault, nor in answers.

use utoipa::openapi::schema::{OneOf, SchemaType};
use utoipa::openapi::{OpenApi, RefOr, Schema, Type};

/// Takes `null` out of every optional member, where the derived schemas put it.
pub(super) fn forbid_null(document: &mut OpenApi) {
    let schemas = document.components.iter_mut().flat_map(|components| components.schemas.values_mut());
    for schema in schemas {
        if let RefOr::T(Schema::Object(object)) = schema {
            object.properties.values_mut().for_each(without_null);
        }
    }
}

fn without_null(member: &mut RefOr<Schema>) {
    match member {
        RefOr::T(Schema::Object(object)) => forbid_null_type(&mut object.schema_type),
        RefOr::T(Schema::Array(array)) => forbid_null_type(&mut array.schema_type),
        RefOr::T(Schema::OneOf(choice)) => {
            if let Some(only) = only_choice(choice) {
                *member = only;
            }
        }
        _ => {}
    }
}

fn forbid_null_type(schema_type: &mut SchemaType) {
    if let SchemaType::Array(types) = schema_type
        && let [only] = types.iter().filter(|own| **own != Type::Null).collect::<Vec<_>>().as_slice()
    {
        *schema_type = SchemaType::Type((*only).clone());
    }
}

/// The schema that stands beside `null`, if there is one such.
fn only_choice(choice: &OneOf) -> Option<RefOr<Schema>> {
    let is_null = |item: &RefOr<Schema>| match item {
        RefOr::T(Schema::Object(object)) => object.schema_type == SchemaType::Type(Type::Null),
        _ => false,
    };
    let (nulls, others): (Vec<_>, Vec<_>) = choice.items.iter().partition(|item| is_null(item));
    match (nulls.as_slice(), others.as_slice()) {
        ([_], [only]) => Some((*only).clone()),
        _ => None,
    }
}
