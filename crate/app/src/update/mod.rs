//! The only writer of the state.
use crate::effect::Effect;
use crate::msg::Msg;
use crate::state::State;

/// Does what a message asks for; what has to be done outside comes back in order.
pub fn update(state: &mut State, msg: Msg) -> Vec<Effect> {
    let _ = (state, msg);
    Vec::new()
}
