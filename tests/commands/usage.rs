//! The command line itself.

use crate::program::run;

#[test]
fn an_unknown_command_is_a_usage_error() {
    for arguments in
        [&["bake"][..], &[], &["diagnose"], &["serve", "--listen", "everywhere"], &["check", "--format", "xml"]]
    {
        assert_eq!(run(arguments).code, Some(2), "{arguments:?}");
    }
}

#[test]
fn help_tells_the_exit_codes() {
    let help = run(&["--help"]).success();
    for line in ["0  done", "1  the case, the inputs, or", "2  the command line", "3  the rules", "4  a file"] {
        assert!(help.contains(line), "{help}");
    }
}
