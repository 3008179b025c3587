//! The browser is killed while somebody types: nothing older than a second is lost.
//!
//! What is typed goes into the note, letter by letter, and at times into the name, which is entered;
//! so each state differs from every other. `kill -9` on the whole process group stands for a crash.

use anyhow::{Context, Result, bail, ensure};
use gearswing_browser_tests::{Browser, Profile, is_long};
use serde_json::json;
use std::fmt;
use std::time::{Duration, Instant};

/// Kills in the two sizes of this check.
const KILLS: [u32; 2] = [10, 200];

/// What may be lost.
const GRACE: Duration = Duration::from_secs(1);

/// Letters between two entered names.
const LETTERS: u32 = 7;

/// Undo steps that are looked at after each kill.
const STEPS: usize = 3;

/// What can be seen of the gear.
#[derive(Clone, Debug, PartialEq)]
struct Seen {
    note: String,
    name: String,
}

/// A state that the page had, from when on, and how many steps of history lay behind it.
struct Typed {
    at: Instant,
    seen: Seen,
    steps: usize,
    /// The page said that it was kept.
    kept: bool,
}

/// Counts of one kill.
#[derive(Default)]
struct Lost {
    states: usize,
    lost: usize,
    seconds: f64,
    said: usize,
}

impl fmt::Display for Lost {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:3} states typed, {:2} lost, the oldest {:.2} s before; {:3} times said to be kept",
            self.states, self.lost, self.seconds, self.said
        )
    }
}

/// Numbers without rhyme, the same in every run.
struct Seeded(u64);

impl Seeded {
    /// From `least` to below `most`.
    fn between(&mut self, least: u64, most: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        least + (self.0 >> 33) % (most - least)
    }
}

#[test]
fn a_killed_browser_loses_nothing_older_than_a_second() {
    let kills = KILLS[usize::from(is_long())];
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    let all = runtime.block_on(many(kills)).unwrap();
    let lost: usize = all.iter().map(|one| one.lost).sum();
    let longest = all.iter().map(|one| one.seconds).fold(0.0, f64::max);
    println!("{kills} kills: {lost} states lost in all, the oldest {longest:.2} s before its kill");
}

/// Everything that was typed and not lost so far.
#[derive(Default)]
struct Past {
    states: Vec<Typed>,
    killed: Option<Instant>,
}

async fn many(kills: u32) -> Result<Vec<Lost>> {
    let profile = Profile::new()?;
    let mut random = Seeded(20_261_128);
    let mut past = Past::default();
    let mut all = Vec::new();
    for kill in 0..=kills {
        let which = format!("kill {kill}");
        let mortal = profile.start().await?;
        mortal.browser.open("").await?;
        if let Some(lost) = survived(&mortal.browser, &mut past)
            .await
            .with_context(|| format!("after {which}"))?
        {
            println!("{which}: {lost}");
            all.push(lost);
        }
        // what the last one has left is looked at only
        if kill < kills {
            type_on(&mortal.browser, kill, &mut random, &mut past)
                .await
                .with_context(|| which)?;
        }
        past.killed = Some(Instant::now());
        mortal.kill()?;
    }
    Ok(all)
}

/// Types until it is time for the kill.
async fn type_on(browser: &Browser, kill: u32, random: &mut Seeded, past: &mut Past) -> Result<()> {
    let mut now = seen(browser).await?;
    if past.states.is_empty() {
        // the demo as it comes
        past.states.push(Typed {
            at: Instant::now() - 10 * GRACE,
            seen: now.clone(),
            steps: 0,
            kept: true,
        });
    }
    let mut steps = past.states.last().map_or(0, |state| state.steps);
    let mut letters = random.between(0, u64::from(LETTERS)) as u32;
    let mut number = 0;
    let mut begun = false;
    focus(browser, "note").await?;
    let end = Instant::now() + Duration::from_millis(random.between(300, 5_000));
    while Instant::now() < end {
        let name_next = letters >= LETTERS;
        if name_next {
            letters = 0;
            number += 1;
            focus(browser, "name").await?;
            now.name = format!("Gear {kill}-{number}");
            browser.insert(&now.name).await?;
            steps += 1;
            begun = false;
        } else {
            letters += 1;
            let letter = char::from(b'a' + random.between(0, 26) as u8);
            browser.letter(letter).await?;
            now.note.push(letter);
            // letters that follow each other are one step
            steps += usize::from(!std::mem::replace(&mut begun, true));
        }
        browser.painted().await?;
        past.states.push(Typed {
            at: Instant::now(),
            seen: now.clone(),
            steps,
            kept: false,
        });
        let kept = browser.text("#file-state").await? == "Kept in this browser";
        if let Some(state) = past.states.last_mut() {
            state.kept = kept;
        }
        if name_next {
            browser.plain_key("Enter", false).await?;
            focus(browser, "note").await?;
        }
        tokio::time::sleep(Duration::from_millis(random.between(0, 90))).await;
    }
    Ok(())
}

/// What is left of what was typed before the last kill, held against it.
async fn survived(browser: &Browser, past: &mut Past) -> Result<Option<Lost>> {
    let Some(killed) = past.killed else {
        return Ok(None);
    };
    let problems: u32 = browser
        .script(
            "return document.querySelectorAll('.notice[data-kind=problem]').length;",
            &[],
        )
        .await?;
    ensure!(problems == 0, "{}", browser.text("#notices").await?);
    let files: u32 = browser
        .script(
            "return document.querySelectorAll('#file-list .file').length;",
            &[],
        )
        .await?;
    ensure!(files <= 1, "{files} files where one was made");
    let now = seen(browser).await?;
    let Some(at) = past.states.iter().rposition(|state| state.seen == now) else {
        bail!("{now:?} was never typed");
    };
    let said = past.states.iter().filter(|state| state.kept).count();
    let gone = past.states.split_off(at + 1);
    let ages = gone.iter().map(|state| killed.duration_since(state.at));
    let oldest = ages.max().unwrap_or_default();
    ensure!(
        oldest < GRACE,
        "{} states are lost, the oldest {:.2} s before the kill",
        gone.len(),
        oldest.as_secs_f64()
    );
    let broken = gone.iter().find(|state| state.kept);
    ensure!(
        broken.is_none(),
        "it was said to be kept: {:?}",
        broken.map(|state| &state.seen)
    );
    history(browser, &past.states).await?;
    Ok(Some(Lost {
        states: at + 1 + gone.len(),
        lost: gone.len(),
        seconds: oldest.as_secs_f64(),
        said,
    }))
}

/// The last steps are undone one by one: each comes to the state that was before it; then redone.
async fn history(browser: &Browser, typed: &[Typed]) -> Result<()> {
    let now = seen(browser).await?;
    let all = typed.last().map_or(0, |state| state.steps);
    let mut undone = 0;
    for step in 1..=STEPS.min(all) {
        browser
            .wait_until(
                "the history is read",
                "return !document.getElementById('undo').disabled;",
            )
            .await?;
        browser.press("#undo").await?;
        undone += 1;
        // the last state with that many steps behind it
        let Some(wanted) = typed.iter().rev().find(|state| state.steps == all - step) else {
            break;
        };
        let found = seen(browser).await?;
        ensure!(
            found == wanted.seen,
            "undone {step}: {found:?} is not {:?}",
            wanted.seen
        );
    }
    for _ in 0..undone {
        browser.press("#redo").await?;
    }
    let found = seen(browser).await?;
    ensure!(found == now, "redone: {found:?} is not {now:?}");
    Ok(())
}

async fn seen(browser: &Browser) -> Result<Seen> {
    browser.open_group("Gear file").await?;
    Ok(Seen {
        note: browser.field("note").await?,
        name: browser.field("name").await?,
    })
}

/// Puts the focus on a field: at the end of the note, on all of the name.
async fn focus(browser: &Browser, path: &str) -> Result<()> {
    browser
        .script::<Option<bool>>(
            "const node = document.getElementById('field-' + arguments[0]);
             node.focus();
             if (node.tagName === 'TEXTAREA') node.setSelectionRange(node.value.length, node.value.length);
             else node.select();
             return null;",
            &[json!(path)],
        )
        .await?;
    browser.painted().await
}
