//! The places of the path at which a sweep has its stations.
use super::Linkage;
use crate::model::Shortening;
use crate::result::Phase;

/// Stations of the shortening phase.
const SHORTEN_STATIONS: usize = 13;
/// Stations of the unlocking phase.
const UNLOCK_STATIONS: usize = 25;
/// Distance from a jump, in progress, that is beside it (ratio).
const BESIDE: f64 = 1e-9;

/// Progress at every station.
pub(super) fn progress_grid(linkage: &Linkage, stations: usize) -> Vec<f64> {
    let path = linkage.path();
    let even = path.phases().flat_map(move |(phase, start)| {
        let count = match phase {
            Phase::Shorten => SHORTEN_STATIONS,
            Phase::Unlock => UNLOCK_STATIONS,
            Phase::Swing => stations,
        };
        // the swing owns both of its ends, the other phases their beginning
        let last = if phase == Phase::Swing {
            count - 1
        } else {
            count
        };
        (0..count).map(move |i| start + i as f64 / last as f64)
    });
    // rising, as the phases are in order
    let mut grid = Vec::with_capacity(stations + SHORTEN_STATIONS + UNLOCK_STATIONS);
    grid.extend(even);
    for place in beside_rows(linkage).chain(linkage.hand_over) {
        let at = grid.partition_point(|station| *station < place);
        grid.insert(at, place);
    }
    grid
}

/// Places on both sides of each row of a table of shortening: the slope of the table, and the load
/// with it, jumps there.
fn beside_rows(linkage: &Linkage) -> impl Iterator<Item = f64> {
    let table = match &linkage.shortening {
        Shortening::WithTravel { table } => table.as_slice(),
        _ => &[],
    };
    table.iter().flat_map(|row| {
        let at = linkage.progress_at_travel(row.travel);
        [at - BESIDE, at + BESIDE]
            .into_iter()
            .filter(|beside| (0.0..1.0).contains(beside))
    })
}
