//! Energy of motion over the way, from which follows whether a fall reaches the lock.
use super::drop::Case;
use super::way::{COLUMNS, INERTIA, PINS_BY_MOTION, STROKE};
use crate::hydraulics::LAMINAR_BELOW;

/// Change of the factor on the drag, as a share of it, below which it is settled (ratio).
const SETTLED: f64 = 1e-5;
/// Most looks at that factor in a piece.
const MOST_LOOKS: usize = 4;
/// Damping over a piece, as the logarithm of what it leaves, from which it begins to take all, and from
/// which it does (ratio).
const STRONG: (f64, f64) = (2.0, 4.0);
/// What is less than this is worth no exponential: three terms of the series do (ratio).
const SMALL: f64 = 1e-3;

/// Columns of the table at a place.
pub(super) type Row = [f64; COLUMNS];
/// A place along the way and its row.
pub(super) type Place = (f64, Row);

/// What is left at the end of a piece of the energy of motion at its start (ratio), and of the pushes at start,
/// middle and end, over its length (m): the energy at the end is linear in them.
type Shares = [f64; 4];

fn sum(shares: &Shares, start: f64, [a, b, c]: [f64; 3]) -> f64 {
    shares[0] * start + (shares[1] * a + shares[2] * b + shares[3] * c)
}

/// What drag does over a piece of the way to the energy of motion K. It goes with the energy, c·K:
/// what is there at the start is left by e^−∫c, and the push under the same factor.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    length: f64,
    /// ∫c over the whole piece, and over its second half (ratio).
    whole: f64,
    later: f64,
    /// What these leave (ratio).
    left: f64,
    left_of_middle: f64,
    shares: Shares,
    /// Pressure with which an orifice damps without its laminar part, for each unit of energy (Pa/J), and its
    /// share in the drag (ratio).
    pressure: f64,
    by_orifice: f64,
}

impl Piece {
    /// Each by the parabola through the rows of ends and middle.
    fn over(length: f64, case: &Case, [a, b, c]: [&Row; 3]) -> Self {
        let per_energy = |row: &Row| case.drag(row) * 2.0 / row[INERTIA];
        let [a, middle, c] = [per_energy(a), per_energy(b), per_energy(c)];
        let whole = length / 6.0 * (a + 4.0 * middle + c);
        let half = length / 24.0 * (8.0 * middle + 5.0 * c - a);
        let later = half.clamp(whole.min(0.0), whole.max(0.0));
        let damper = case.damper.filter(|_| middle > 0.0);
        let [turbulent, pressure] = damper.map_or([0.0; 2], |damper| {
            [
                damper.turbulent(b[STROKE]),
                damper.turbulent_pressure(b[STROKE]),
            ]
            .map(|each| each * 2.0 / b[INERTIA])
        });
        let mut piece = Self {
            length,
            whole,
            later,
            left: shrunk(whole),
            left_of_middle: shrunk(later),
            shares: Shares::default(),
            pressure,
            by_orifice: if turbulent > 0.0 {
                turbulent * (1.0 + case.pin_factor * b[PINS_BY_MOTION]) / middle
            } else {
                0.0
            },
        };
        piece.shares = piece.shares(1.0);
        piece
    }

    /// Energy at the end, from that at the start; negative where it runs out, and the shares in it. `factor` is
    /// that on the drag, as an orifice has it: of the piece before, and then of this one.
    fn damped(&self, start: f64, pushes: [f64; 3], factor: &mut f64) -> (f64, Shares) {
        if self.by_orifice == 0.0 {
            return (sum(&self.shares, start, pushes), self.shares);
        }
        // one that has all but stopped says little of the piece behind
        *factor = factor.min(2.0);
        let shares_at = |factor: f64| match factor == 1.0 {
            true => self.shares,
            false => self.shares(factor),
        };
        let mut shares = shares_at(*factor);
        let mut end = sum(&shares, start, pushes);
        for _ in 0..MOST_LOOKS {
            let mean = 0.5 * (start + end.max(0.0));
            if mean <= 0.0 {
                break;
            }
            let before = std::mem::replace(factor, self.factor(mean));
            if (*factor - before).abs() <= SETTLED * before {
                break;
            }
            shares = shares_at(*factor);
            end = sum(&shares, start, pushes);
        }
        (end, shares)
    }

    /// All drag at an energy of motion over that which goes with its square of speed (ratio).
    fn factor(&self, energy: f64) -> f64 {
        // Δp⁴ = q⁴·(q⁴ + δ²)
        let laminar = LAMINAR_BELOW / (self.pressure * energy);
        if laminar * laminar < SETTLED {
            return 1.0;
        }
        1.0 + self.by_orifice * ((1.0 + laminar * laminar).sqrt().sqrt() - 1.0)
    }

    /// Shares in the energy at the end with a factor on the drag. Where the drag takes all within the piece, the
    /// push is taken as even; from one to the other it goes over evenly, for a jump would keep fall and friction
    /// from agreeing.
    fn shares(&self, factor: f64) -> Shares {
        let more = factor - 1.0;
        let sixth = self.length / 6.0;
        let whole = self.whole * factor;
        let left = self.left * shrunk(self.whole * more);
        let middle = self.left_of_middle * shrunk(self.later * more);
        let weak = [left, 4.0 * middle, 1.0];
        if whole <= STRONG.0 {
            let [a, b, c] = weak.map(|each| each * sixth);
            return [left, a, b, c];
        }
        let strong = ((whole - STRONG.0) / (STRONG.1 - STRONG.0)).min(1.0);
        let even = -(-whole).exp_m1() / whole;
        let [a, b, c] = [0, 1, 2].map(|at| {
            let even = even * [1.0, 4.0, 1.0][at];
            sixth * (weak[at] + strong * (even - weak[at]))
        });
        [left, a, b, c]
    }
}

/// e^−x, which most often is next to 1.
fn shrunk(x: f64) -> f64 {
    if x.abs() < SMALL {
        1.0 - x * (1.0 - 0.5 * x * (1.0 - x / 3.0))
    } else {
        (-x).exp()
    }
}

/// Drag in a case over every piece between the rows of ends and middles.
pub(super) fn pieces(rows: &[Place], case: &Case) -> Vec<Piece> {
    let all = rows.windows(3).step_by(2);
    let over = |piece: &[Place]| match piece {
        [(from, a), (_, b), (to, c)] => Some(Piece::over(to - from, case, [a, b, c])),
        _ => None,
    };
    all.filter_map(over).collect()
}

/// Energy of motion K at the end of each piece in turn, dK/dx = N − D, and what each unit of some quantity
/// that each push has `each` so much of adds to it; from where it runs out it is not above zero.
pub(super) fn energies<'a>(
    rows: &'a [Place],
    pieces: &'a [Piece],
    case: &'a Case,
    each: &'a dyn Fn(&Row) -> f64,
) -> impl Iterator<Item = [f64; 2]> + 'a {
    let push = |(_, row): &Place| [case.net(row), each(row)];
    let mut from = rows.first().map_or([0.0; 2], push);
    let ([mut energy, mut change], mut factor) = ([0.0; 2], 1.0);
    let behind = rows.get(1..).unwrap_or_default().chunks_exact(2);
    behind.zip(pieces).map(move |(places, piece)| {
        let [middle, to] = [0, 1].map(|at| push(&places[at]));
        let shares;
        (energy, shares) = piece.damped(energy, [from[0], middle[0], to[0]], &mut factor);
        change = sum(&shares, change, [from[1], middle[1], to[1]]);
        from = to;
        [energy, change]
    })
}

/// What a fall tells of a quantity that it is driven with.
pub(super) struct Outlook {
    /// Whether the leg reaches the lock: its energy of motion must stay above zero.
    pub(super) reaches: bool,
    /// At which value it would first stop with the same drag: the energy is linear in the quantity then, so
    /// that every place has one value at which it runs out.
    pub(super) stops: f64,
}

/// The outlook of a fall at a `value` of a quantity, of which each push has `each` so much, and what starts
/// the leg at up `starts` so much.
pub(super) fn outlook(
    rows: &[Place],
    pieces: &[Piece],
    case: &Case,
    value: f64,
    each: &dyn Fn(&Row) -> f64,
    starts: &dyn Fn(&Row) -> f64,
) -> Outlook {
    let stop = |left: f64, each: f64| {
        if each < 0.0 {
            value - left / each
        } else {
            f64::INFINITY
        }
    };
    let Some((_, up)) = rows.first() else {
        return Outlook {
            reaches: false,
            stops: f64::INFINITY,
        };
    };
    let at_up = stop(case.push(up) - case.held, starts(up));
    let mut stops = at_up.min(stop(case.net(up), each(up)));
    let mut moves = true;
    for [energy, change] in energies(rows, pieces, case, each) {
        moves &= energy > 0.0;
        stops = stops.min(stop(energy, change));
    }
    // damping only takes energy: a leg with a push all the way comes down whatever the damping
    let pushed = || rows.iter().all(|(_, row)| case.net(row) > 0.0);
    Outlook {
        reaches: case.starts(up) && (moves || pushed()),
        stops,
    }
}
