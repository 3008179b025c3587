//! What the page answers is what the headless command answers on the exported file.

use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, gearswing};
use serde_json::Value;

const QUESTIONS: [(&str, &str); 3] = [
    ("clears", "Does it clear?"),
    ("driven", "Can it be driven?"),
    ("locks", "Will it lock?"),
];

/// Exports what is shown.
pub(crate) async fn export(browser: &Browser) -> Result<Vec<u8>> {
    browser.press("#files > summary").await?;
    browser.press("[data-act=export]").await?;
    browser.keys(thirtyfour::Key::Escape).await?;
    browser.only_download().await
}

/// Compares every answer of every leg with what the command says of this file.
pub(crate) async fn ensure_same(browser: &Browser, gear_file: &[u8]) -> Result<Value> {
    let told = gearswing(gear_file)?;
    let legs = told["legs"]
        .as_array()
        .context("no legs in the command's JSON")?;
    ensure!(!legs.is_empty(), "the command answers for no leg");
    for leg in legs {
        let name = leg["leg"].as_str().context("a leg without name")?;
        browser.choose_leg(name).await?;
        for (at, (key, question)) in QUESTIONS.into_iter().enumerate() {
            let finding = &leg["result"]["findings"][at];
            let words = &leg["words"][at];
            ensure!(finding["question"] == key, "{name}: {finding}");
            let shown = browser.answer(name, question).await?;
            let verdict = finding["verdict"].as_str().unwrap_or_default();
            ensure!(
                shown.verdict == verdict.replace('_', "-"),
                "{name}, {question}: page {}, command {verdict}",
                shown.verdict
            );
            let sentence = words["sentence"].as_str().context("no sentence")?;
            ensure!(
                shown.text.contains(sentence),
                "{name}, {question}: page “{}”, command “{sentence}”",
                shown.text
            );
        }
        ensure_tables(browser, name, &leg["result"]["force"]).await?;
    }
    Ok(told)
}

/// As many load cases and joint loads stand on the page as the command gives.
async fn ensure_tables(browser: &Browser, name: &str, force: &Value) -> Result<()> {
    let rows: Vec<usize> = {
        let settled =
            "return document.getElementById('handles').getAttribute('aria-busy') === 'false';";
        browser.wait_until("the page has settled", settled).await?;
        let script = "return [...document.querySelectorAll('#load-tables table')].map((table) => table.rows.length);";
        browser.script(script, &[]).await?
    };
    let count = |key: &str| force[key].as_array().map_or(0, Vec::len);
    let wanted = [count("cases") + 1, count("joint_loads") + 1];
    ensure!(
        rows == wanted,
        "{name}: tables of {rows:?} rows, not {wanted:?}"
    );
    Ok(())
}

/// Every answer on the page as text, leg by leg.
pub(crate) async fn all_answers(browser: &Browser) -> Result<Vec<String>> {
    let names: Vec<String> = browser
        .script(
            "return [...document.querySelectorAll('#verdicts .leg-name')].map((leg) => leg.innerText);",
            &[],
        )
        .await?;
    let mut answers = Vec::new();
    for name in names {
        browser.choose_leg(&name).await?;
        for (_, question) in QUESTIONS {
            let answer = browser.answer(&name, question).await?;
            answers.push(format!("{name}: {} {}", answer.verdict, answer.text));
        }
    }
    Ok(answers)
}
