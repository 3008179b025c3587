//! What was last worked out, and of what.
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Something that was worked out, kept until it is asked for of something else. Shared by the legs before and
/// after a change that it does not rest on.
#[derive(Debug)]
pub(crate) struct Kept<Of, Found>(Mutex<Option<(Of, Arc<Found>)>>);

impl<Of, Found> Default for Kept<Of, Found> {
    fn default() -> Self {
        Self(Mutex::new(None))
    }
}

impl<Of: PartialEq, Found> Kept<Of, Found> {
    /// What is found of something: as it is known, or worked out now.
    pub(crate) fn of(&self, of: Of, find: impl FnOnce() -> Found) -> Arc<Found> {
        if let Some((known, found)) = &*self.entry()
            && *known == of
        {
            return Arc::clone(found);
        }
        let found = Arc::new(find());
        *self.entry() = Some((of, Arc::clone(&found)));
        found
    }

    /// Whole entries only are set, so it is sound even where a thread has come to grief.
    fn entry(&self) -> MutexGuard<'_, Option<(Of, Arc<Found>)>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::Kept;

    #[test]
    fn it_is_worked_out_once_for_each_change() {
        let kept = Kept::default();
        let mut count = 0;
        let mut ask = |of: i32| {
            *kept.of(of, || {
                count += 1;
                2 * of
            })
        };
        assert_eq!([ask(3), ask(3), ask(4), ask(4), ask(3)], [6, 6, 8, 8, 6]);
        assert_eq!(count, 3);
    }
}
