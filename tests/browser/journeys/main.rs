//! Journeys through the page, each with a fresh profile.

#![allow(missing_docs, reason = "test binary")]

/// Version and licenses at the foot.
mod about;
/// Rules of accessibility, room for fingers.
mod accessible;
/// States kept to compare with, an adviser.
mod compare;
/// Frame time of a drag, memory over a long one.
mod drag;
/// Files: kept, exported, imported, opened elsewhere.
mod files;
/// What the browser keeps.
mod kept;
/// The main journeys by keyboard alone.
mod keyboard;
/// The keyboard reaches everything.
mod keys;
/// The browser is killed.
#[cfg(unix)]
mod killed;
/// Links, whole and damaged.
mod links;
/// The main job from start to finish.
mod main_job;
/// The printed file measured: scale bars, and lines beyond a page.
mod measured;
/// Names of any length and direction.
mod names;
/// What the page says when it cannot start or breaks off.
mod notices;
/// Without a network: the page that was kept, a newer one, the page as one file.
mod offline;
/// What is printed.
mod paper;
/// The place of an answer, and what a zoom keeps to.
mod places;
/// The content policy, and the journeys' own eyes.
mod policy;
/// The room at every size, the strip, the browser's back key.
mod room;
/// Same answers on the page and from the command.
mod same;
/// Large gears.
mod sketch;
mod slices;
/// The page starts, on a desk and on a phone.
mod start;
/// What is pressed stays where it is.
mod steady;
/// A stop seen on the jacks.
mod stopped;
/// The gear against time.
mod times;
/// Touch: drag, pinch, scroll beside.
mod touch;
/// Numbers typed, right and wrong.
mod typing;
