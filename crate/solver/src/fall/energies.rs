//! Energy of motion over the way, from which follows whether a fall reaches the lock.
use super::drop::Case;
use super::way::{COLUMNS, INERTIA, PINS_BY_MOTION, STROKE};

/// Whether the leg reaches the lock: its energy of motion K over the way, dK/dx = N − D, must stay
/// above zero.
pub(super) fn reaches(rows: &[Place], case: &Case) -> bool {
    if !rows.first().is_some_and(|(_, row)| case.starts(row)) {
        return false;
    }
    // damping only takes energy: a leg with a push all the way comes down whatever the damping
    rows.iter().all(|(_, row)| case.net(row) > 0.0) || energies(rows, case).all(|end| end > 0.0)
}

/// Energy of motion at the end of each piece in turn; from where it runs out it is not above zero.
pub(super) fn energies<'a>(rows: &'a [Place], case: &'a Case) -> impl Iterator<Item = f64> + 'a {
    let dragged = case.damper.is_some() || rows.iter().any(|(_, row)| row[PINS_BY_MOTION] != 0.0);
    let (mut energy, mut factor) = (0.0, 1.0);
    rows.windows(3).step_by(2).map(move |piece| {
        if let [(x0, a), (_, b), (x1, c)] = piece
            && energy >= 0.0
        {
            let pushes = [a, b, c].map(|row| case.net(row));
            if dragged {
                let decay = Decay::over(x1 - x0, case, [a, b, c]);
                energy = decay.damped(energy, pushes, &mut factor, |mean| {
                    laminar_share(case, b, mean)
                });
            } else {
                energy += (x1 - x0) / 6.0 * (pushes[0] + 4.0 * pushes[1] + pushes[2]);
            }
        }
        energy
    })
}

/// What drag does over a piece of the way to the energy of motion K. It goes with the energy, c·K:
/// what is there at the start is left by e^−∫c, and the push under the same factor.
struct Decay {
    length: f64,
    /// ∫c over the whole piece, and over its second half (ratio).
    whole: f64,
    later: f64,
}

impl Decay {
    /// Each by the parabola through the rows of ends and middle.
    fn over(length: f64, case: &Case, rows: [&[f64; COLUMNS]; 3]) -> Self {
        let [a, b, c] = rows.map(|row| case.drag(row) * 2.0 / row[INERTIA]);
        let whole = length / 6.0 * (a + 4.0 * b + c);
        let half = length / 24.0 * (8.0 * b + 5.0 * c - a);
        Self {
            length,
            whole,
            later: half.clamp(whole.min(0.0), whole.max(0.0)),
        }
    }

    /// Energy at the end, from that at the start; negative where it runs out. `laminar` gives the factor on
    /// the drag at the mean energy, as an orifice has it; `factor` is that of the piece before.
    fn damped(
        &self,
        start: f64,
        pushes: [f64; 3],
        factor: &mut f64,
        laminar: impl Fn(f64) -> f64,
    ) -> f64 {
        // one that has all but stopped says little of the piece behind
        *factor = factor.min(2.0);
        let mut end = self.end(start, pushes, *factor);
        for _ in 0..4 {
            let mean = 0.5 * (start + end.max(0.0));
            if mean <= 0.0 {
                break;
            }
            let before = std::mem::replace(factor, laminar(mean));
            if (*factor - before).abs() <= SETTLED * before {
                break;
            }
            end = self.end(start, pushes, *factor);
        }
        end
    }

    /// Energy at the end, from that at the start, pushes at ends and middle, and a factor on the drag.
    /// Where the drag takes all within the piece, the push is taken as even; from one to the other it goes
    /// over evenly, for a jump would keep fall and friction from agreeing.
    fn end(&self, start: f64, [a, b, c]: [f64; 3], factor: f64) -> f64 {
        let whole = self.whole * factor;
        if whole == 0.0 {
            return start + self.length / 6.0 * (a + 4.0 * b + c);
        }
        let left = (-whole).exp();
        let strong = ((whole - STRONG.0) / (STRONG.1 - STRONG.0)).clamp(0.0, 1.0);
        let middle = (-self.later * factor).exp();
        let weak = (a * left + 4.0 * b * middle + c) / 6.0;
        if strong == 0.0 {
            return start * left + self.length * weak;
        }
        let even = -(a + 4.0 * b + c) / 6.0 * (-whole).exp_m1() / whole;
        start * left + self.length * (weak + strong * (even - weak))
    }
}

/// All drag at an energy of motion over that which goes with its square of speed (ratio).
fn laminar_share(case: &Case, row: &[f64; COLUMNS], energy: f64) -> f64 {
    let Some(damper) = case.damper else {
        return 1.0;
    };
    let square = 2.0 * energy / row[INERTIA];
    let turbulent = case.drag(row) * square;
    if turbulent > 0.0 {
        let laminar =
            damper.push(row[STROKE], square.sqrt()) - damper.turbulent(row[STROKE]) * square;
        1.0 + (1.0 + case.pin_factor * row[PINS_BY_MOTION]) * laminar / turbulent
    } else {
        1.0
    }
}

/// Change of the factor on the drag, as a share of it, below which it is settled (ratio).
const SETTLED: f64 = 1e-5;

/// Damping over a piece, as the logarithm of what it leaves, from which it begins to take all, and from
/// which it does (ratio).
const STRONG: (f64, f64) = (2.0, 4.0);

/// A place along the way and its row.
pub(super) type Place = (f64, [f64; COLUMNS]);

/// What of a net push does not hang on a quantity, and what each unit of the quantity adds.
pub(super) type Line = (f64, f64);

/// Between which values of a quantity the fall first stops short, from `line` that splits the net
/// push of a row, and `starts` that splits what is left of it at up over the friction of what has stood: up to the first value something pushes all the way, and from the second value
/// on the leg is sure to stop. `None` where nothing stops it.
///
/// The energy of motion is linear in the quantity, so that every place has one value at which it runs
/// out; with an orifice too while its laminar part, which only takes more, is left out.
pub(super) fn first_stop(
    rows: &[Place],
    case: &Case,
    line: &dyn Fn(&[f64; COLUMNS]) -> Line,
    starts: &dyn Fn(&[f64; COLUMNS]) -> Line,
) -> Option<(f64, f64)> {
    let stop = |(constant, each): Line| {
        if each < 0.0 {
            constant / -each
        } else {
            f64::INFINITY
        }
    };
    let pushed = rows
        .iter()
        .map(|(_, row)| stop(line(row)))
        .fold(f64::INFINITY, f64::min);
    let mut stopped = rows.first().map_or(f64::INFINITY, |(_, row)| {
        stop(line(row)).min(stop(starts(row)))
    });
    let pushed = pushed.min(stopped);
    let mut energy: Line = (0.0, 0.0);
    for piece in rows.windows(3).step_by(2) {
        let [(x0, a), (_, b), (x1, c)] = piece else {
            continue;
        };
        let h = x1 - x0;
        let decay = Decay::over(h, case, [a, b, c]);
        let (a, b, c) = (line(a), line(b), line(c));
        energy = (
            decay.end(energy.0, [a.0, b.0, c.0], 1.0),
            decay.end(energy.1, [a.1, b.1, c.1], 1.0),
        );
        stopped = stopped.min(stop(energy));
    }
    stopped.is_finite().then_some((pushed, stopped))
}
