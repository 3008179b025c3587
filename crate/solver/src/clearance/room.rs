//! Room along the trunnion axis: what the tire reaches out of the drawn plane.
use crate::model::{ClearanceRule, Leg, View};
use crate::result::{Room, RoomClearance, RoomSide, SkewLosses, TireState};
use crate::tires::{TireSizes, room_requirement};

/// Room along the trunnion axis less what the tire reaches there: half its diameter in a front
/// view, half its width in a side view.
pub(crate) fn room(
    leg: &Leg,
    sizes: &TireSizes,
    rule: &ClearanceRule,
    losses: &SkewLosses,
) -> Room {
    let reach = |tire| {
        let size = match tire {
            TireState::New => &sizes.new,
            TireState::Grown => &sizes.grown,
        };
        match leg.view {
            View::Front => 0.5 * size.diameter,
            View::Side => 0.5 * size.width,
        }
    };
    let mut rows = Vec::new();
    for (side, room) in [
        (RoomSide::Near, leg.out_of_plane.room_near),
        (RoomSide::Far, leg.out_of_plane.room_far),
    ] {
        let Some(room) = room else { continue };
        for tire in [TireState::New, TireState::Grown] {
            let less = losses.of(tire).along_trunnion;
            rows.push(RoomClearance {
                side,
                tire,
                room,
                clearance: room - reach(tire) - less,
                less_for_skew: less,
                requirement: room_requirement(rule, tire),
            });
        }
    }
    Room {
        reach_new: reach(TireState::New),
        reach_grown: reach(TireState::Grown),
        rows,
    }
}
