//! How many symptoms an answer lists.

use super::{check_draft, read_at_most};

const TEXT: &str =
    "pale crust; hollow under the lid; low volume; sour smell; the crumb is grey; sticky dough; leathery crust";

#[test]
fn a_short_listing_shortens_neither_the_draft_nor_what_is_understood() {
    let whole = read_at_most(TEXT, "white_pan_bread", 50);
    let sure = whole.symptoms.iter().filter(|one| one.sure).count();
    assert!(sure >= 6, "{:?}", whole.symptoms);
    let short = read_at_most(TEXT, "white_pan_bread", 1);
    assert_eq!(short.symptoms.len(), 1);
    assert_eq!(short.draft.as_ref().map(|draft| draft.symptoms.len()), Some(sure));
    let ids =
        |draft: &whybake::case::CaseDocument| draft.symptoms.iter().map(|one| one.symptom.clone()).collect::<Vec<_>>();
    assert_eq!(short.draft.as_ref().map(ids), whole.draft.as_ref().map(ids));
    assert_eq!(short.not_understood, whole.not_understood);
    check_draft(&short, TEXT);
}
