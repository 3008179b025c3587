//! A map of a few entries: a sorted list, which is far less code in the page than a tree or a hash table.

use std::borrow::Borrow;

/// Values by their key, in the order of the keys.
#[derive(Clone, Debug, PartialEq)]
pub struct Few<K, V>(Vec<(K, V)>);

impl<K, V> Default for Few<K, V> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<K: Ord, V> Few<K, V> {
    /// Where a key stands, or where it would.
    fn place<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        self.0
            .binary_search_by(|(known, _)| known.borrow().cmp(key))
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        let at = self.place(key).ok()?;
        self.0.get(at).map(|(_, value)| value)
    }

    /// The value of a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let at = self.place(key).ok()?;
        self.0.get_mut(at).map(|(_, value)| value)
    }

    /// Puts a value in, over the one that was there.
    pub fn insert(&mut self, key: K, value: V) {
        match self.place(&key) {
            Ok(at) => {
                if let Some((_, known)) = self.0.get_mut(at) {
                    *known = value;
                }
            }
            Err(at) => self.0.insert(at, (key, value)),
        }
    }

    /// The value of a key, to be changed; one that is missing is put in.
    pub fn entry(&mut self, key: K) -> &mut V
    where
        V: Default,
    {
        let at = self.place(&key).unwrap_or_else(|at| {
            self.0.insert(at, (key, V::default()));
            at
        });
        &mut self.0[at].1
    }

    /// Takes a value out.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        let at = self.place(key).ok()?;
        Some(self.0.remove(at).1)
    }

    /// Takes all out.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// Keys and values.
    pub fn iter(&self) -> impl Iterator<Item = (&K, &V)> {
        self.0.iter().map(|(key, value)| (key, value))
    }

    /// The values, to be changed.
    pub fn values_mut(&mut self) -> impl Iterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    /// Keeps what `kept` holds of.
    pub fn retain(&mut self, kept: impl Fn(&K, &V) -> bool) {
        self.0.retain(|(key, value)| kept(key, value));
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for Few<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(all: I) -> Self {
        let mut few = Self::default();
        for (key, value) in all {
            few.insert(key, value);
        }
        few
    }
}

impl<K, V> IntoIterator for Few<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

#[cfg(test)]
mod tests {
    use super::Few;

    #[test]
    fn holds_one_value_a_key_in_order() {
        let mut few: Few<String, i32> = Few::default();
        for (key, value) in [("b", 1), ("a", 2), ("c", 3), ("a", 4)] {
            few.insert(key.to_owned(), value);
        }
        assert_eq!((few.get("a"), few.get("d")), (Some(&4), None));
        assert_eq!((few.remove("b"), few.remove("b")), (Some(1), None));
        if let Some(value) = few.get_mut("c") {
            *value = 5;
        }
        few.retain(|_, value| *value > 0);
        let all: Vec<_> = few.clone().into_iter().collect();
        assert_eq!(all, [("a".to_owned(), 4), ("c".to_owned(), 5)]);
        *few.entry("d".to_owned()) += 7;
        *few.entry("a".to_owned()) += 1;
        let again: Few<_, _> = few.clone().into_iter().collect();
        assert_eq!((again.get("d"), again.get("a")), (Some(&7), Some(&5)));
        few.clear();
        assert_eq!(few.iter().count(), 0);
    }
}
