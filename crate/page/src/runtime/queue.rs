//! Messages in the order they came, pointer moves folded.

use gearswing_app::Msg;
use gearswing_app::msg::{CurvePointer, Play, Pointer, Times};
use std::collections::VecDeque;

/// Messages waiting for the next frame, first in first out.
#[derive(Default)]
pub(crate) struct Queue {
    messages: VecDeque<Msg>,
}

impl Queue {
    /// Adds a message. A move right behind a move of the same pointer takes its place: only the
    /// last one of a frame counts, and presses and releases between them keep their order.
    pub(crate) fn push(&mut self, msg: Msg) {
        match self.messages.back_mut() {
            Some(last) if folds(last, &msg) => *last = msg,
            _ => self.messages.push_back(msg),
        }
    }

    /// The oldest message.
    pub(crate) fn pop(&mut self) -> Option<Msg> {
        self.messages.pop_front()
    }

    /// Nothing is waiting.
    pub(crate) fn is_empty(&self) -> bool {
        self.messages.is_empty()
    }
}

/// Whether `new` makes `old` pointless.
fn folds(old: &Msg, new: &Msg) -> bool {
    match (old, new) {
        (
            Msg::Pointer(Pointer::Move { id: old, .. }),
            Msg::Pointer(Pointer::Move { id: new, .. }),
        ) => old == new,
        (
            Msg::CurvePointer(CurvePointer::Scrub { .. }),
            Msg::CurvePointer(CurvePointer::Scrub { .. }),
        )
        | (Msg::Play(Play::Scrub { .. }), Msg::Play(Play::Scrub { .. }))
        | (Msg::Times(Times::Scrub { .. }), Msg::Times(Times::Scrub { .. }))
        | (Msg::Times(Times::Seek { .. }), Msg::Times(Times::Seek { .. })) => true,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gearswing_app::msg::{Modifiers, PointerKind};
    use gearswing_app::scene::ScreenPoint;

    fn moved(id: i32, x_px: f64) -> Msg {
        Msg::Pointer(Pointer::Move {
            id,
            kind: PointerKind::Mouse,
            at: ScreenPoint { x_px, y_px: 0.0 },
            modifiers: Modifiers::default(),
        })
    }

    fn up(id: i32) -> Msg {
        Msg::Pointer(Pointer::Up {
            id,
            at: ScreenPoint::default(),
        })
    }

    fn all(mut queue: Queue) -> Vec<Msg> {
        std::iter::from_fn(|| queue.pop()).collect()
    }

    #[test]
    fn moves_fold_into_the_last_and_edges_stay() {
        let mut queue = Queue::default();
        for msg in [
            moved(1, 1.0),
            moved(1, 2.0),
            up(1),
            moved(1, 3.0),
            moved(1, 4.0),
        ] {
            queue.push(msg);
        }
        assert_eq!(all(queue), [moved(1, 2.0), up(1), moved(1, 4.0)]);
    }

    #[test]
    fn scrubs_fold_into_the_last() {
        let mut queue = Queue::default();
        let seek = |time_s| Msg::Times(Times::Seek { time_s });
        let scrub = |x_px| {
            let at = ScreenPoint { x_px, y_px: 0.0 };
            Msg::Times(Times::Scrub { at })
        };
        let play = |progress| Msg::Play(Play::Scrub { progress });
        for msg in [
            seek(1.0),
            seek(2.0),
            scrub(1.0),
            scrub(2.0),
            play(0.1),
            play(0.2),
        ] {
            queue.push(msg);
        }
        assert_eq!(all(queue), [seek(2.0), scrub(2.0), play(0.2)]);
    }

    #[test]
    fn two_fingers_do_not_fold_into_each_other() {
        let mut queue = Queue::default();
        for msg in [moved(1, 1.0), moved(2, 1.0), moved(1, 2.0)] {
            queue.push(msg);
        }
        assert_eq!(all(queue).len(), 3);
    }
}
