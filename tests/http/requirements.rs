//! `GET /v1/requirements`

use crate::schema;
use crate::service::{get, item};

#[actix_web::test]
async fn diets_allergens_and_markets_are_listed() {
    let list = get("/v1/requirements").await.success();
    assert_eq!(schema::faults("RequirementList", &list), Vec::<String>::new());
    assert_eq!(item(&list["diets"], "halal")["title"], "Halal");
    assert_eq!(item(&list["allergens"], "milk")["title"], "Milk");
    assert_eq!(item(&list["markets"], "EU")["title"], "European Union");
}
