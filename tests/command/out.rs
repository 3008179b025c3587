//! `--out`: whole or as it was, never over an input, and through links, pipes and devices. Expected: what
//! the same run prints on standard output.
use std::fs::{self, OpenOptions, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::support::{demo, file, folder, gear_file, program, run};

/// A fresh folder with the demo in it; its path, the demo's, and what a run on the demo prints.
fn prepared(test: &str) -> (PathBuf, String, String) {
    let folder = folder(test);
    fs::remove_dir_all(&folder).expect("emptied");
    fs::create_dir_all(&folder).expect("made anew");
    let gear = gear_file(&folder, "gear.json", &demo());
    let printed = run([&gear]).out;
    assert!(printed.len() > 4096);
    (folder, gear, printed)
}

fn text(path: &Path) -> String {
    fs::read_to_string(path).expect("readable")
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut names: Vec<_> = entries
        .map(|entry| {
            entry
                .expect("an entry")
                .file_name()
                .into_string()
                .expect("UTF-8")
        })
        .collect();
    names.sort();
    names
}

/// Runs the program by the shell, `$1` the gear, `$2` the program.
fn by_shell(folder: &Path, script: &str, gear: &str) -> (Option<i32>, String) {
    let done = Command::new("sh")
        .args(["-c", script, "sh", gear, env!("CARGO_BIN_EXE_gearswing")])
        .current_dir(folder)
        .stdin(Stdio::null())
        .output()
        .expect("a shell");
    let said = String::from_utf8(done.stderr).expect("UTF-8");
    (done.status.code(), said)
}

#[test]
fn nothing_but_the_file_is_left() {
    let (folder, gear, printed) = prepared("out-new");
    let out = folder.join("out.txt");
    let got = run([&gear, "--out", out.to_str().expect("UTF-8")]);
    assert_eq!((got.out.as_str(), got.err.as_str()), ("", ""));
    assert_eq!(text(&out), printed);
    assert_eq!(names(&folder), ["gear.json", "out.txt"]);
    // a new file gets what the user's mask leaves
    let usual = file(&folder, "usual.txt", "");
    let mode = |path: &Path| fs::metadata(path).expect("there").mode();
    assert_eq!(mode(&out), mode(Path::new(&usual)));
    // without a directory part too
    let (code, said) = by_shell(&folder, "\"$2\" \"$1\" --out again.txt", &gear);
    assert_eq!((code, said.as_str()), (Some(got.code), ""));
    assert_eq!(text(&folder.join("again.txt")), printed);
}

#[test]
fn an_old_file_keeps_its_mode_and_goes_at_once() {
    let (folder, gear, printed) = prepared("out-old");
    let out = folder.join("out.txt");
    for mode in [0o640, 0o600, 0o755] {
        fs::write(&out, "old").expect("written");
        fs::set_permissions(&out, Permissions::from_mode(mode)).expect("a mode");
        // whoever has it open keeps what he has
        let reader = fs::File::open(&out).expect("open");
        run([&gear, "--out", out.to_str().expect("UTF-8")]);
        assert_eq!(text(&out), printed);
        assert_eq!(fs::metadata(&out).expect("there").mode() & 0o777, mode);
        assert_eq!(std::io::read_to_string(reader).expect("readable"), "old");
    }
    assert_eq!(names(&folder), ["gear.json", "out.txt"]);
}

/// The system ends the program in the middle of its writing: no file may be larger than 512 bytes.
#[test]
fn a_run_that_is_cut_leaves_the_old_file() {
    let (folder, gear, _) = prepared("out-cut");
    let out = folder.join("out.txt");
    fs::write(&out, "old").expect("written");
    let (code, _) = by_shell(
        &folder,
        "ulimit -f 1; exec \"$2\" \"$1\" --out out.txt",
        &gear,
    );
    assert!(code.is_none_or(|code| code == 2), "{code:?}");
    assert_eq!(text(&out), "old");
}

#[test]
fn no_input_is_written_over() {
    let (folder, gear, _) = prepared("out-input");
    let whole = text(Path::new(&gear));
    let hard = folder.join("hard.json");
    fs::hard_link(&gear, &hard).expect("a second name");
    let soft = folder.join("soft.json");
    symlink(&gear, &soft).expect("a link");
    for (script, why) in [
        ("\"$2\" \"$1\" --out gear.json", "itself"),
        ("\"$2\" \"$1\" --out hard.json", "a hard link"),
        ("\"$2\" hard.json --out gear.json", "a hard link read"),
        ("\"$2\" \"$1\" --out soft.json", "a symbolic link"),
        ("\"$2\" soft.json --out hard.json", "both"),
        ("\"$2\" - --out gear.json < \"$1\"", "standard input"),
        (
            "\"$2\" - --out hard.json < \"$1\"",
            "standard input, hard link",
        ),
        ("\"$2\" - --out soft.json < \"$1\"", "standard input, link"),
        ("\"$2\" /dev/stdin --out gear.json < \"$1\"", "its name"),
    ] {
        let (code, said) = by_shell(&folder, script, &gear);
        assert_eq!(code, Some(2), "{why}");
        assert!(
            said.contains("is an input; --out would overwrite it"),
            "{why}: {said}"
        );
        assert_eq!(text(Path::new(&gear)), whole, "{why}");
    }
    assert_eq!(names(&folder), ["gear.json", "hard.json", "soft.json"]);
}

#[test]
fn a_dash_is_standard_output() {
    let (folder, gear, printed) = prepared("out-dash");
    let got = run([&gear, "--out", "-"]);
    assert_eq!(got.out, printed);
    let got = run([&gear, "--out=-"]);
    assert_eq!(got.out, printed);
    // also when it is the terminal or file that standard input reads
    assert_eq!(names(&folder), ["gear.json"]);
}

#[test]
fn links_are_written_through() {
    let (folder, gear, printed) = prepared("out-links");
    fs::create_dir(folder.join("kept")).expect("a folder");
    fs::write(folder.join("kept/there.txt"), "old").expect("written");
    for (link, to) in [
        ("first.txt", "kept/there.txt"),
        ("second.txt", "first.txt"),
        ("to_nothing.txt", "kept/not_yet.txt"),
    ] {
        let link = folder.join(link);
        symlink(to, &link).expect("a link");
        run([&gear, "--out", link.to_str().expect("UTF-8")]);
        assert!(link.is_symlink());
        assert_eq!(text(&link), printed);
    }
    assert_eq!(names(&folder.join("kept")), ["not_yet.txt", "there.txt"]);
    let ring = folder.join("ring.txt");
    symlink("ring.txt", &ring).expect("a link");
    let got = run([&gear, "--out", ring.to_str().expect("UTF-8")]);
    assert_eq!(got.code, 2);
    assert!(got.err.contains("too many symbolic links"), "{}", got.err);
}

#[test]
fn pipes_and_devices_are_written_through() {
    let (folder, gear, printed) = prepared("out-pipes");
    let (code, said) = by_shell(
        &folder,
        "mkfifo pipe && { cat pipe > read.txt & } && \"$2\" \"$1\" --out pipe; code=$?; wait; exit $code",
        &gear,
    );
    assert_eq!((code, said.as_str()), (Some(run([&gear]).code), ""));
    assert_eq!(text(&folder.join("read.txt")), printed);
    let got = run([&gear, "--out", "/dev/null"]);
    assert_eq!(got.err, "");
    assert!(!fs::metadata("/dev/null").expect("there").is_file());
    let got = run([&gear, "--out", "/dev/full"]);
    assert_eq!(got.code, 2);
    assert!(got.err.contains("cannot write /dev/full"), "{}", got.err);
    let got = run([&gear, "--out", "/dev/stdout"]);
    assert_eq!(got.out, printed);
}

/// A log is not lost when its name is standard output.
#[test]
fn what_stands_in_a_log_stays() {
    let (folder, gear, printed) = prepared("out-log");
    let log = folder.join("log.txt");
    fs::write(&log, "before\n").expect("written");
    let open = OpenOptions::new().append(true).open(&log).expect("open");
    let ended = program()
        .args([&gear, "--out", "/dev/stdout"])
        .stdin(Stdio::null())
        .stdout(open)
        .status()
        .expect("it runs");
    assert!(ended.code().is_some());
    assert_eq!(text(&log), format!("before\n{printed}"));
}
