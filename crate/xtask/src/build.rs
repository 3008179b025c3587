//! The static page: wasm, the JS glue around it, and the files of `www/`.

use crate::process::{cargo, find, output, program, root, run, target, timed};
use crate::{licenses, offline, one_file, packed};
use anyhow::{Context, Result, bail, ensure};
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};
use wasm_bindgen_cli_support::{Bindgen, Output};

/// Shared with the build script of the crate that holds version and commit.
#[allow(dead_code, reason = "each of its users needs a part of it")]
#[path = "../../version/src/tree.rs"]
mod tree;

/// The compiler's name for the browser.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";

/// The profile that the page is built with.
const PROFILE: &str = "page";

/// The page's own file.
const INDEX: &str = "index.html";

/// File stem of the wasm module and of its glue.
const MODULE: &str = "gearswing_page";

/// The second module, which the page fetches when there is first something for it to do.
const WORKER_CRATE: &str = "gearswing-worker";

/// File stem of it and of its glue.
const WORKER_MODULE: &str = "gearswing_worker";

/// Files of the second module.
pub(crate) const WORKER: [&str; 3] = [
    "worker.js",
    "gearswing_worker.js",
    "gearswing_worker_bg.wasm",
];

/// Where the static page goes.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Dist {
    /// Directory; none = `dist/`.
    pub out: Option<String>,
    /// Address at which it will live, from which its links are made.
    pub home: Option<String>,
}

/// An address that links can be made from.
pub(crate) fn home(address: &str) -> Result<String> {
    let is_of_web = ["http://", "https://"]
        .iter()
        .any(|scheme| address.len() > scheme.len() && address.starts_with(scheme));
    let is_plain = !address.contains(['#', '?', '"', '<', '&', ' ']);
    if !is_of_web || !is_plain {
        bail!(
            "--home takes an address that begins with http:// or https:// and has no ?, # or quotes, not '{address}'"
        );
    }
    Ok(address.to_owned())
}

/// Builds the page into `out`, or into `dist/`.
pub(crate) fn dist(wanted: &Dist) -> Result<()> {
    let dir = match &wanted.out {
        Some(dir) => {
            let dir = std::path::absolute(dir)?;
            refuse_foreign(&dir)?;
            dir
        }
        None => root().join("dist"),
    };
    page_at(&dir, wanted.home.as_deref())?;
    println!("The page is in {}.", dir.display());
    println!("Any file host can serve it from any path; all its addresses are relative.");
    println!(
        "{} in it is the whole page in one file, which opens by a double click.",
        one_file::WHOLE
    );
    Ok(())
}

/// Where the page is built to be served and measured. Not below the profile's name, where cargo keeps what it would
/// have to compile again.
pub(crate) fn site() -> PathBuf {
    target().join("site")
}

/// Builds the page into a directory, which is emptied first.
pub(crate) fn page(dir: &Path) -> Result<()> {
    page_at(dir, None)
}

fn page_at(dir: &Path, home: Option<&str>) -> Result<()> {
    ensure_wasm_target()?;
    timed("building the page and its worker for the browser", || {
        compiled(&["--package", "gearswing-page", "--package", WORKER_CRATE])
    })?;
    let kept = packed::kept(dir)?;
    timed("making the JavaScript glue and copying www/", || {
        if dir.exists() {
            fs::remove_dir_all(dir)
                .with_context(|| format!("could not empty {}", dir.display()))?;
        }
        copy(&root().join("www"), dir)?;
        for stem in [MODULE, WORKER_MODULE] {
            glue(stem, dir)?;
        }
        for file in [
            "start.js",
            "worker.js",
            offline::WORKER,
            "colors.css",
            "style.css",
            "paper.css",
            INDEX,
        ] {
            let path = dir.join(file);
            let text = fs::read_to_string(&path)
                .with_context(|| format!("could not read {}", path.display()))?;
            let mut text = lean(&text);
            if let Some(home) = home.filter(|_| file == INDEX) {
                let named = format!("<meta name=\"gearswing-home\" content=\"{home}\">\n</head>");
                text = text.replace("</head>", &named);
            }
            fs::write(&path, text)?;
        }
        Ok(())
    })?;
    timed("writing the licenses of the libraries", || {
        licenses::write(dir)
    })?;
    timed("building the page as one file", || {
        compiled(&["--package", "gearswing-page", "--features", "whole"])?;
        let aside = target().join("whole");
        fs::create_dir_all(&aside)?;
        glue(MODULE, &aside)?;
        one_file::write(dir, &aside, MODULE, &licenses::FILES)
    })?;
    timed("writing the list of its files", || offline::write(dir))?;
    timed("packing by gzip and brotli", || packed::pack(dir, &kept))
}

/// Compiles for the browser.
fn compiled(what: &[&str]) -> Result<()> {
    run(cargo()
        .args(["build", "--profile", PROFILE, "--target", WASM])
        .args(what)
        .env(tree::GIVEN, tree::Tree::of(&root()).written())
        .env(tree::SOURCES, sum_of_sources()?))
}

/// A sum over everything that is compiled: the modules of a page tell by it whether they are of one build.
fn sum_of_sources() -> Result<String> {
    let mut all = packed::files(&root().join("crate"))?;
    all.extend(["Cargo.lock", "Cargo.toml"].map(|name| root().join(name)));
    let mut sum = Sha256::new();
    for file in all {
        sum.update(fs::read(&file).with_context(|| format!("could not read {}", file.display()))?);
    }
    let digits = sum.finalize();
    Ok(digits
        .iter()
        .take(6)
        .map(|byte| format!("{byte:02x}"))
        .collect())
}

/// Makes the glue of a module that was compiled last, and puts both into a directory.
fn glue(stem: &str, dir: &Path) -> Result<()> {
    let compiled = target().join(WASM).join(PROFILE);
    // Without the default path a bare `init()` has no module to load.
    let mut made = Bindgen::new()
        .input_path(compiled.join(format!("{stem}.wasm")))
        .web(true)?
        .typescript(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        .omit_default_module_path(false)
        .generate_output()
        .with_context(|| format!("wasm-bindgen could not make the glue of {stem}"))?;
    let names = short_names(&mut made);
    made.emit(dir)
        .with_context(|| format!("{stem} and its glue could not be written"))?;
    let path = dir.join(format!("{stem}.js"));
    let text =
        fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))?;
    fs::write(&path, with_short_names(&lean(&text), &names)?)?;
    Ok(())
}

/// Names of what the module takes from its glue, long and short.
type Names = Vec<(String, String)>;

/// Gives what the module takes from its glue short names: the long ones, made to be told apart in any program, take
/// 6 kB of a packed page.
fn short_names(made: &mut Output) -> Names {
    let imports = made.wasm_mut().imports.iter_mut();
    let named = imports.enumerate().map(|(at, import)| {
        let short = format!("i{at}");
        let long = std::mem::replace(&mut import.name, short.clone());
        (long, short)
    });
    named.collect()
}

/// The glue with these names: each stands once, as the key of a line.
fn with_short_names(glue: &str, names: &Names) -> Result<String> {
    let keys: HashMap<&str, &str> = names
        .iter()
        .map(|(long, short)| (long.as_str(), short.as_str()))
        .collect();
    let mut found = 0;
    let mut text = String::with_capacity(glue.len());
    for line in glue.lines() {
        let named = line
            .split_once(": ")
            .and_then(|(key, rest)| Some((keys.get(key)?, rest)));
        match named {
            Some((short, rest)) => {
                found += 1;
                text += &format!("{short}: {rest}\n");
            }
            None => {
                text += line;
                text.push('\n');
            }
        }
    }
    ensure!(
        found == names.len(),
        "the glue has {found} of the {} names that the module takes from it",
        names.len()
    );
    Ok(text)
}

/// A script, style sheet or page without indents and without lines that are a comment: none of ours has
/// a text that runs over lines.
fn lean(text: &str) -> String {
    let lines = text.lines().map(str::trim_start);
    let kept = lines.filter(|line| !line.is_empty() && !line.starts_with("//"));
    kept.flat_map(|line| [line, "\n"]).collect()
}

/// Adds the wasm target when the compiler has none.
pub(crate) fn ensure_wasm_target() -> Result<()> {
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let libraries = output(program(rustc).args(["--print", "target-libdir", "--target", WASM]))?;
    if Path::new(libraries.trim()).is_dir() {
        return Ok(());
    }
    if find("rustup").is_none() {
        bail!(
            "this Rust has no {WASM} target and there is no rustup to add it; install Rust from https://rustup.rs or the target with the tool that brought this Rust"
        );
    }
    timed(
        &format!("adding the compiler target {WASM} with rustup"),
        || {
            run(program("rustup").args(["target", "add", WASM]))
                .context("the wasm target could not be added; is there a network?")
        },
    )
}

/// A directory that holds something else than an earlier build is not ours to empty.
fn refuse_foreign(dir: &Path) -> Result<()> {
    let empty = !dir.exists() || fs::read_dir(dir)?.next().is_none();
    if !empty && !dir.join(format!("{MODULE}.js")).is_file() {
        bail!(
            "{} is not empty and holds no earlier build of the page; name an empty or new directory",
            dir.display()
        );
    }
    Ok(())
}

/// Copies a directory with everything below it.
fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    let mut left: Vec<(PathBuf, PathBuf)> = vec![(from.into(), to.into())];
    while let Some((from, to)) = left.pop() {
        for entry in
            fs::read_dir(&from).with_context(|| format!("could not read {}", from.display()))?
        {
            let entry = entry?;
            let target = to.join(entry.file_name());
            if entry.file_type()?.is_dir() {
                fs::create_dir_all(&target)?;
                left.push((entry.path(), target));
            } else {
                fs::copy(entry.path(), &target)?;
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_name_that_the_module_takes_is_shortened() {
        let names = |of: &[&str]| -> super::Names {
            let named = of.iter().enumerate();
            named
                .map(|(at, long)| ((*long).to_owned(), format!("i{at}")))
                .collect()
        };
        let glue =
            "const a = {\n__wbg_get_1: function(b) {\nreturn b;\n},\n__wbg_set_2: c => c,\n};\n";
        let short = super::with_short_names(glue, &names(&["__wbg_set_2", "__wbg_get_1"])).unwrap();
        assert_eq!(
            short,
            "const a = {\ni1: function(b) {\nreturn b;\n},\ni0: c => c,\n};\n"
        );
        assert!(super::with_short_names(glue, &names(&["__wbg_put_3"])).is_err());
    }

    #[test]
    fn lean_keeps_all_but_indents_and_comment_lines() {
        let text = "a {\n    b: url(https://c); // d\n\n    // e\n}\n";
        assert_eq!(super::lean(text), "a {\nb: url(https://c); // d\n}\n");
    }
}
