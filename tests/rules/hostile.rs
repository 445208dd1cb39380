//! Files that would hang, exhaust or crash the loader: each ends in a named diagnostic.

use whybake::rules::{Code, RuleFiles};

use crate::support::{Changed, faults, line, pack};

/// Asserts that a file of causes ends in a fault of this code, told in the file itself.
#[track_caller]
fn ends_in(code: Code, text: &str) {
    pack_ends_in(code, &pack().with("hostile.rhai", text));
}

#[track_caller]
fn pack_ends_in(code: Code, files: &RuleFiles) {
    let faults = faults(files);
    let told: Vec<String> = faults.iter().map(line).map(|line| line.chars().take(300).collect()).collect();
    let hit = |fault: &&whybake::rules::Diagnostic| fault.code == code && fault.file == "hostile.rhai";
    assert!(faults.iter().any(|fault| hit(&fault)), "{code:?} is not among\n{}", told.join("\n"));
    assert!(faults.len() < 10, "one fault floods the list:\n{}", told.join("\n"));
}

#[test]
fn an_endless_loop() {
    ends_in(Code::Limit, "loop { }");
}

#[test]
fn an_endless_loop_with_a_condition() {
    ends_in(Code::Limit, "let n = 0; while true { n += 1; }");
}

#[test]
fn an_endless_loop_in_every_statement() {
    ends_in(Code::Limit, &"loop { }\n".repeat(1_000));
}

#[test]
fn an_endless_loop_in_the_library() {
    let files = pack().with("lib/endless.rhai", "loop { }");
    let faults = faults(&files);
    assert_eq!(
        faults.iter().map(|fault| (fault.code, fault.file.as_str())).collect::<Vec<_>>(),
        [(Code::Limit, "lib/endless.rhai")]
    );
}

#[test]
fn an_endless_loop_in_a_closure() {
    ends_in(Code::Script, "judged([dough_temperature], \"words\", |t| { loop { } });");
}

#[test]
fn a_loop_that_repeats_one_fault() {
    ends_in(Code::Limit, "loop { dough_temperature.rises(30, 28); }");
}

#[test]
fn a_loop_that_catches_its_own_end() {
    ends_in(Code::Limit, "loop { try { loop { } } catch { } }");
}

#[test]
fn a_function_that_calls_itself() {
    ends_in(Code::Limit, "fn down(n) { down(n + 1) } down(0);");
}

#[test]
fn two_functions_that_call_each_other() {
    ends_in(Code::Limit, "fn ping(n) { pong(n) } fn pong(n) { ping(n) } ping(0);");
}

#[test]
fn a_closure_that_calls_itself_through_a_function() {
    ends_in(Code::Script, "fn down(n) { down(n + 1.0) } judged([dough_temperature], \"words\", |t| down(t));");
}

#[test]
fn a_function_that_branches_without_end() {
    ends_in(Code::Limit, "fn fork(n) { if n == 0 { 1 } else { fork(n - 1) + fork(n - 1) } } fork(22);");
}

#[test]
fn a_text_that_doubles() {
    ends_in(Code::Limit, "let text = \"x\"; loop { text += text; }");
}

#[test]
fn an_array_that_grows() {
    ends_in(Code::Limit, "let list = []; loop { list.push(1); }");
}

#[test]
fn an_array_that_doubles() {
    ends_in(Code::Limit, "let list = [1]; loop { list += list; }");
}

#[test]
fn an_array_padded_to_a_huge_length() {
    ends_in(Code::Limit, "let list = []; list.pad(1000000000, 0);");
}

#[test]
fn an_array_that_holds_itself_over_and_over() {
    ends_in(Code::Limit, "let list = [1]; loop { list = [list, list]; }");
}

#[test]
fn a_map_that_grows() {
    ends_in(Code::Limit, "let map = #{}; let n = 0; loop { map[\"k\" + n] = n; n += 1; }");
}

#[test]
fn a_condition_that_doubles() {
    ends_in(Code::Limit, "let all_of = dough_waits & dough_waits; loop { all_of = all_of & all_of; }");
}

#[test]
fn an_expression_that_nests_without_end() {
    ends_in(Code::Limit, "let sum = dough_temperature + 1; loop { sum = sum + 1; }");
}

#[test]
fn a_condition_negated_without_end() {
    ends_in(Code::Limit, "let not = !dough_waits; loop { not = !not; }");
}

#[test]
fn a_literal_text_of_two_hundred_thousand_characters() {
    ends_in(Code::Limit, &format!("let text = \"{}\";", "x".repeat(200_000)));
}

#[test]
fn a_literal_array_of_a_hundred_thousand() {
    ends_in(Code::Limit, &format!("let list = [{}];", "1,".repeat(100_000)));
}

#[test]
fn a_number_of_a_hundred_thousand_digits() {
    let number = "9".repeat(100_000);
    ends_in(Code::OutOfRange, &format!("dough_temperature.rises({number}, 1);"));
    ends_in(Code::OutOfRange, &format!("dough_temperature > {number};"));
}

#[test]
fn a_name_of_a_hundred_thousand_characters() {
    ends_in(Code::UnknownName, &format!("{};", "x".repeat(100_000)));
}

#[test]
fn parentheses_nested_a_hundred_thousand_deep() {
    ends_in(Code::Limit, &format!("{}1{};", "(".repeat(100_000), ")".repeat(100_000)));
}

#[test]
fn brackets_nested_a_hundred_thousand_deep() {
    ends_in(Code::Limit, &format!("let list = {}{};", "[".repeat(100_000), "]".repeat(100_000)));
}

#[test]
fn maps_nested_ten_thousand_deep() {
    ends_in(Code::Limit, &format!("let map = {}1{};", "#{a:".repeat(10_000), "}".repeat(10_000)));
}

#[test]
fn blocks_nested_ten_thousand_deep() {
    ends_in(Code::Limit, &format!("{}{}", "{".repeat(10_000), "}".repeat(10_000)));
}

#[test]
fn signs_repeated_a_hundred_thousand_times() {
    ends_in(Code::Limit, &format!("let n = {}1;", "- ".repeat(100_000)));
    ends_in(Code::Limit, &format!("let n = {}true;", "!".repeat(100_000)));
}

#[test]
fn a_sum_of_fifty_thousand_numbers() {
    ends_in(Code::Limit, &format!("let n = dough_temperature{};", " + 1".repeat(50_000)));
}

#[test]
fn ifs_nested_ten_thousand_deep() {
    ends_in(Code::Limit, &format!("{}{}", "if true {".repeat(10_000), "}".repeat(10_000)));
}

#[test]
fn ifs_chained_ten_thousand_long() {
    ends_in(Code::Limit, &format!("if false {{ }}{}", " else if false { }".repeat(10_000)));
}

#[test]
fn comments_nested_a_hundred_thousand_deep() {
    ends_in(Code::Syntax, &format!("1;{}", "/*".repeat(100_000)));
}

#[test]
fn closures_nested_ten_thousand_deep() {
    ends_in(Code::Limit, &format!("let f = {}1;", "|a| ".repeat(10_000)));
}

#[test]
fn closures_nested_within_the_limit_that_capture() {
    let opened: String = (0..40).map(|n| format!("|a{n}| {{ let b{n} = a{n}; ")).collect();
    let text = format!("let f = {opened}1{}; loop {{ }}", "}".repeat(40));
    ends_in(Code::Limit, &text);
}

#[test]
fn a_method_chain_of_ten_thousand() {
    ends_in(Code::Limit, &format!("hollow_under_crust{};", ".title(\"x\")".repeat(10_000)));
}

#[test]
fn a_million_statements() {
    ends_in(Code::File, &"1;".repeat(1_000_000));
}

#[test]
fn ten_thousand_functions() {
    let text: String = (0..10_000).map(|n| format!("fn f{n}() {{ }}\n")).collect();
    ends_in(Code::Limit, &text);
}

#[test]
fn three_thousand_variables() {
    let text: String = (0..3_000).map(|n| format!("let v{n} = {n};\n")).collect();
    ends_in(Code::Limit, &text);
}

#[test]
fn eval_is_no_word() {
    ends_in(Code::Syntax, "eval(\"loop { }\");");
}

#[test]
fn print_is_no_word() {
    ends_in(Code::Syntax, "print(\"hello\");");
}

#[test]
fn an_import_of_a_file_outside_the_pack() {
    for path in ["/etc/passwd", "../Cargo", "../../src/lib", "mixing", "lib/../mixing"] {
        ends_in(Code::Script, &format!("import \"{path}\" as x;"));
    }
}

#[test]
fn an_import_in_a_loop() {
    let files =
        pack().with("lib/one.rhai", "fn one() { 1 }").with("hostile.rhai", "loop { import \"lib/one\" as one; }");
    pack_ends_in(Code::Limit, &files);
}

#[test]
fn a_library_that_imports_itself() {
    let files = pack().with("lib/me.rhai", "import \"lib/me\" as me; fn one() { 1 }");
    assert!(faults(&files).iter().any(|fault| fault.file == "lib/me.rhai"), "{:?}", faults(&files));
}

#[test]
fn bytes_that_are_no_script() {
    ends_in(Code::Syntax, "\u{0}\u{1}\u{feff}\u{202e}");
    ends_in(Code::Syntax, "\"no end");
    ends_in(Code::Syntax, "`${`${`${");
}

#[test]
fn texts_within_texts_ten_thousand_deep() {
    ends_in(Code::Limit, &format!("let text = {}1{};", "`${".repeat(10_000), "}`".repeat(10_000)));
}

#[test]
fn numbers_that_overflow() {
    ends_in(Code::Script, "let n = 9223372036854775807; n + 1;");
    ends_in(Code::Script, "1 / 0;");
    ends_in(Code::OutOfRange, "dough_temperature.rises(0.0 / 0.0, 1);");
}
