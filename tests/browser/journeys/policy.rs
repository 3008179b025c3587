//! The page's content policy holds, and these journeys would see it when something were wrong.

use gearswing_browser_tests::{Browser, Device, journey, outcome_on};

/// The outcome of a journey that runs a script on the page.
fn outcome_of(name: &str, script: &str) -> String {
    let done = outcome_on(Device::DESK, name, async |browser: &Browser| {
        browser.open("").await?;
        browser.script::<()>(script, &[]).await
    });
    done.map_or_else(|error| format!("{error:#}"), |()| "good".into())
}

#[test]
fn an_error_in_the_console_fails_a_journey() {
    let outcome = outcome_of(
        "console error",
        "console.error('a planted error'); return null;",
    );
    assert!(outcome.contains("a planted error"), "{outcome}");
}

#[test]
fn an_uncaught_error_fails_a_journey() {
    let script = "setTimeout(() => { throw new Error('a planted throw'); }, 0);
        return new Promise(done => setTimeout(() => done(null), 100));";
    let outcome = outcome_of("uncaught error", script);
    assert!(outcome.contains("a planted throw"), "{outcome}");
}

#[test]
fn a_request_to_another_place_is_refused() {
    let script = "return fetch('http://127.0.0.2:9/').then(() => null, () => null);";
    let outcome = outcome_of("foreign request", script);
    assert!(outcome.contains("Content Security Policy"), "{outcome}");
}

#[test]
fn text_never_becomes_code() {
    // In a timer: what a driver's script does itself, the browser lets pass.
    let script = "return new Promise(done => setTimeout(() => {
            const element = document.createElement('script');
            element.textContent = 'window.inlineRan = true;';
            document.head.append(element);
            let evaluated;
            try { evaluated = String(eval('1 + 1')); } catch (e) { evaluated = e.name; }
            done([evaluated, window.inlineRan === true]);
        }, 0));";
    journey("no eval", async |browser| {
        browser.open("").await?;
        let (evaluated, inline_ran): (String, bool) = browser.script(script, &[]).await?;
        // The refusals are written to the console: read them, so that the journey ends clean.
        browser.console().await?;
        anyhow::ensure!(evaluated == "EvalError", "eval gave {evaluated}");
        anyhow::ensure!(!inline_ran, "an inline script ran");
        Ok(())
    });
}
