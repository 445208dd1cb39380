//! What German, Spanish and French call dough, oven and temperature, since values are often noted so.

/// Words of one meaning, the English one among them.
pub(super) const TRANSLATIONS: &[&[&str]] = &[
    &["dough", "masa", "pâte", "teig"],
    &["horno", "ofen", "oven"],
    &["temp", "temperatur", "temperatura", "temperature"],
];
