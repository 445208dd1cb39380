//! Parts that several resources show.

use serde::Serialize;
use utoipa::ToSchema;

use crate::knowledge::{Caution, Declarations, Key, Named, Source, Table};

/// A source of a figure or a claim.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Source)]
pub(crate) struct SourceItem<'k> {
    /// Id of the source.
    #[schema(example = "common_practice")]
    id: &'k str,
    /// Author, title, year, table.
    #[schema(example = "rule of thumb of the trade, no publication")]
    citation: &'k str,
    /// `published`, `common practice` or `from memory`.
    #[schema(example = "common practice")]
    provenance: &'static str,
}

/// A caution: read it before acting.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Caution)]
pub(crate) struct CautionItem<'k> {
    /// Id of the caution.
    #[schema(example = "hot_oven")]
    id: &'k str,
    /// The warning.
    #[schema(example = "Ovens, tins and fresh bread burn: wear gloves.")]
    text: &'k str,
}

/// The sources of some keys.
pub(crate) fn sources<'k>(declared: &'k Declarations, keys: &[Key<Source>]) -> Vec<SourceItem<'k>> {
    let items = keys.iter().map(|key| &declared.sources[*key]);
    items
        .map(|source| SourceItem { id: &source.id, citation: &source.citation, provenance: source.provenance.word() })
        .collect()
}

/// The cautions of some keys.
pub(crate) fn cautions<'k>(declared: &'k Declarations, keys: &[Key<Caution>]) -> Vec<CautionItem<'k>> {
    let items = keys.iter().map(|key| &declared.cautions[*key]);
    items.map(|caution| CautionItem { id: &caution.id, text: &caution.text }).collect()
}

/// The ids of some keys.
pub(crate) fn ids<'k, T: Named>(table: &'k Table<T>, keys: &[Key<T>]) -> Vec<&'k str> {
    keys.iter().map(|key| table[*key].id()).collect()
}

/// The keys of a product's listing, or all keys when no product is meant.
pub(crate) fn keys<T: Named>(table: &Table<T>, listed: Option<&[Key<T>]>) -> Vec<Key<T>> {
    listed.map_or_else(|| table.keys().collect(), <[_]>::to_vec)
}
