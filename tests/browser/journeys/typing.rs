//! Fields: fractions, other units, nonsense.

use crate::same::all_answers;
use anyhow::ensure;
use gearswing_browser_tests::journey;
use thirtyfour::Key;

const BORE: &str = "legs[2].actuator.bore_m";

#[test]
fn fractions_and_other_units_are_understood_and_echoed() {
    journey("understood", async |browser| {
        browser.open("").await?;
        browser.open_group("Actuator").await?;
        for (typed, echo) in [
            ("7/8", "0.875 in"),
            ("1 1/8 in", "1.125 in"),
            ("22.2 mm", "22.2 mm"),
            ("25,4 mm", "1 in"),
        ] {
            browser.enter(BORE, typed).await?;
            let shown = browser.field(BORE).await?;
            ensure!(shown == typed, "{typed:?} turned into {shown:?}");
            let said = browser.text(&format!("[id=\"field-{BORE}-echo\"]")).await?;
            ensure!(said.contains(echo), "{typed:?} is echoed as {said:?}");
            ensure!(
                browser.field_error(BORE).await?.is_empty(),
                "{typed:?} refused"
            );
        }
        Ok(())
    });
}

#[test]
fn nonsense_keeps_the_last_good_result_and_says_why() {
    journey("nonsense", async |browser| {
        browser.open("").await?;
        let answers = all_answers(browser).await?;
        browser.choose_leg("Right main").await?;
        browser.open_group("Actuator").await?;
        for typed in [
            "banana",
            "1/0",
            "1e999",
            "--3",
            "12 psi",
            "1 2 3",
            "<img src=x onerror=alert(1)>",
            "٣",
        ] {
            browser.enter(BORE, typed).await?;
            ensure!(browser.field(BORE).await? == typed, "{typed:?} is gone");
            ensure!(
                !browser.field_error(BORE).await?.is_empty(),
                "{typed:?} is taken"
            );
            let images: u32 = browser
                .script("return document.images.length;", &[])
                .await?;
            ensure!(images == 0, "typed text became markup");
        }
        ensure!(
            all_answers(browser).await? == answers,
            "the answers changed"
        );
        browser.choose_leg("Right main").await?;
        browser.open_group("Brace").await?;
        let head = browser.text("[data-group=\"actuator\"]").await?;
        ensure!(
            head.contains("1 entry can't be read"),
            "folded away, the entry is not told: {head}"
        );
        browser.open_group("Actuator").await?;
        browser.press(&format!("[id=\"field-{BORE}\"]")).await?;
        browser.keys(Key::Escape).await?;
        ensure!(
            browser.field_error(BORE).await?.is_empty(),
            "the error stays"
        );
        Ok(())
    });
}

#[test]
fn an_impossible_number_fades_the_drawing_and_names_the_part() {
    journey("impossible", async |browser| {
        browser.open("").await?;
        browser.choose_leg("Right main").await?;
        let drawn = browser.picture("drawing").await?;
        browser.open_group("Actuator").await?;
        browser.enter("legs[2].actuator.rod_m", "2 in").await?;
        let said = browser.text("#faded").await?;
        ensure!(said.contains("rod"), "over the drawing stands {said}");
        let said = browser.text(".verdict-row[data-selected=true]").await?;
        ensure!(said.contains("rod"), "among the verdicts stands {said}");
        ensure!(browser.picture("drawing").await? != drawn, "nothing faded");
        let answer = browser.answer("Right main", "Does it clear?").await?;
        ensure!(
            answer.verdict == "bad",
            "the last good answer is gone: {answer:?}"
        );
        browser.press("#undo").await?;
        ensure!(browser.text("#faded").await?.is_empty(), "still faded");
        Ok(())
    });
}
