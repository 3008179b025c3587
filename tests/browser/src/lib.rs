//! Drives the page in Chromium: a journey gets a fresh profile and ends with a look at the console.
//!
//! ```no_run
//! use gearswing_browser_tests::journey;
//!
//! journey("title", async |browser| {
//!     browser.open("").await?;
//!     anyhow::ensure!(browser.driver.title().await?.contains("Gearswing"));
//!     Ok(())
//! });
//! ```
//!
//! Needs `chromedriver` and Chromium on the search path; `cargo xtask test` brings them where it may.
//! A failed journey leaves a screenshot and says where.

/// The browser of one journey: profile, window, waiting, console, screenshots.
mod browser;
/// The driver program of the browser.
mod chromedriver;
/// The headless command, to compare with.
mod command;
/// A file host that can be switched off.
mod host;
/// A browser that can be killed.
#[cfg(unix)]
mod killed;
/// What a person does and reads on the page.
mod page;
/// The page's server, one for all journeys of a test binary.
mod server;
/// Short and long sizes of heavy checks.
mod size;
/// How long the page takes: its start, its frames, its solving.
mod timing;
/// The browser's own tools.
mod tools;

pub use browser::{Browser, Device, in_browser, journey, journey_on, outcome_on};
pub use command::{fixture, gearswing};
pub use host::Host;
#[cfg(unix)]
pub use killed::{Mortal, Profile};
pub use page::{Answer, SHEETS, Spot};
pub use server::address;
pub use size::is_long;
pub use timing::{Busy, Frames, Times};
pub use tools::Memory;
