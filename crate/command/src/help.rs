//! Texts of `--help` and `--version`.

use gearswing_report::{Program, version_words};

/// This build.
pub(crate) const PROGRAM: Program = Program {
    version: gearswing_version::VERSION,
    commit: gearswing_version::COMMIT,
    changed: gearswing_version::CHANGED,
};

/// Text of `--version`.
pub(crate) fn version() -> String {
    format!("gearswing {}\n", version_words(&PROGRAM))
}

/// Text of `--help`.
pub(crate) const HELP: &str = "\
gearswing: does the retracting leg clear, can it be driven, will it lock?

  gearswing [options] FILE...            answers for gear files; - reads standard input
  gearswing [options] --open-link TEXT   answers for a link, or for its code alone
  gearswing --link FILE...               prints the link code of gear files, one a line

Options
  --format text|json|csv|times|svg|html
                           text: the whole report (the default)
                           json: results in SI with sentences beside; one object for one
                                 file, an array for several, null for what is not finite
                           csv:  the stations table in SI
                           times: the gear against time as csv in SI, for a file that
                                 names a pump or electric actuators
                           svg:  the drawing of a leg at its worst place, at a round scale: of
                                 the leg asked for, or of the one with the worst answer
                           html: the sheets that the page prints, as one document for a browser
  --units in|mm            units of the texts: in, lb, psi (the default), or mm, N, bar.
                           json data and csv are always SI
  --leg NAME|N             only this leg, by its name or its number from 1
  --tire fitted|previous   the gear as it is (the default), or as it was kept with the
                           previous tire
  --against FILE           what differs from another gear file of the same airplane, and what
                           every answer was there; text only
  --on-jacks               the times for the airplane level on jacks, not with the attitude
                           and air that the file sets
  --stations N             json, csv: stations of the swing, 2 to 20001 (default 721), and
                           two more at each row of a table of shortening;
                           text: rows of the stations table, 0 for none (default 25)
  --out FILE               write there, all at once when done; - is standard output
  --help, --version

Exit code
  0  no answer is bad. Answers that are marginal, or that the model cannot show (a latch, a
     leg without brace), are told in words and do not change the code
  1  some answer is bad: something touches, stalls, stops on the way, or does not lock
  2  some input cannot be used, the message is on standard error; the others are still answered
The highest code wins.

Figures are no approval. Do the gear swing on locked jacks, tail supported, nobody in the arc, and
confirm every leg down and locked before the airplane comes off them. Follow the kit or
type maker's data and your country's regulations, and have the work signed for.
";
