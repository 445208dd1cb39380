//! `GET /docs/`

use crate::service::get;

#[actix_web::test]
async fn the_root_leads_to_the_page() {
    for path in ["/", "/docs"] {
        let answer = get(path).await;
        assert_eq!((answer.status, answer.header("location")), (308, "docs/"), "{path}");
    }
}

#[actix_web::test]
async fn the_page_and_all_that_it_loads_come_from_the_service() {
    let page = get("/docs/").await;
    assert_eq!(page.status, 200);
    let text = std::str::from_utf8(&page.body).unwrap();
    let links: Vec<&str> = ["src=\"", "href=\""].iter().flat_map(|start| text.split(start).skip(1)).collect();
    let links: Vec<&str> = links.iter().map(|rest| rest.split('"').next().unwrap()).collect();
    assert!(links.len() >= 5, "{links:?}");
    for link in links {
        assert!(!link.contains("//"), "{link} comes from elsewhere");
        assert_eq!(get(&format!("/docs/{}", link.trim_start_matches("./"))).await.status, 200, "{link}");
    }
}

#[actix_web::test]
async fn the_page_reads_the_document_and_calls_no_validator() {
    let answer = get("/docs/swagger-initializer.js").await;
    let script = std::str::from_utf8(&answer.body).unwrap();
    assert!(script.contains(r#""url": "../openapi.json""#), "{script}");
    assert!(script.contains(r#""validatorUrl": "none""#), "{script}");
    assert!(answer.header("content-security-policy").starts_with("default-src 'self';"));
}
