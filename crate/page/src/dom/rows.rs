//! A list of nodes kept in step with a list of values, by key.

use crate::error::Result;
use web_sys::{Element, Node};

/// One entry of a list on the page.
pub(crate) trait Row: Sized {
    /// What it shows.
    type Item: PartialEq + Clone;

    /// Identity of the value: a row is kept as long as its key stays in the list.
    fn key(item: &Self::Item) -> String;

    /// Makes the nodes for a value; `patch` is called next.
    fn make(item: &Self::Item) -> Result<Self>;

    /// The outermost node.
    fn root(&self) -> &Element;

    /// Shows the value; `old` is what was shown before, if anything.
    fn patch(&mut self, old: Option<&Self::Item>, new: &Self::Item) -> Result<()>;
}

/// The rows inside one parent node.
pub(crate) struct Rows<R: Row> {
    parent: Element,
    rows: Vec<Entry<R>>,
}

struct Entry<R: Row> {
    key: String,
    item: R::Item,
    row: R,
}

impl<R: Row> Rows<R> {
    /// An empty list in a node that holds nothing else.
    pub(crate) fn new(parent: Element) -> Self {
        parent.set_text_content(None);
        Self {
            parent,
            rows: Vec::new(),
        }
    }

    /// Shows these values. Nodes of kept rows are moved only when their order changes, so that
    /// focus stays where it is.
    pub(crate) fn patch(&mut self, items: &[R::Item]) -> Result<()> {
        let same = self.rows.len() == items.len()
            && self
                .rows
                .iter()
                .zip(items)
                .all(|(entry, item)| entry.key == R::key(item));
        if !same {
            return self.rebuild(items);
        }
        for (entry, item) in self.rows.iter_mut().zip(items) {
            entry.show(item)?;
        }
        Ok(())
    }

    /// Shows one value again, if its row is in the list.
    pub(crate) fn patch_one(&mut self, item: &R::Item) -> Result<()> {
        let key = R::key(item);
        match self.rows.iter_mut().find(|entry| entry.key == key) {
            Some(entry) => entry.show(item),
            None => Ok(()),
        }
    }

    fn rebuild(&mut self, items: &[R::Item]) -> Result<()> {
        let mut old: Vec<Option<Entry<R>>> = std::mem::take(&mut self.rows)
            .into_iter()
            .map(Some)
            .collect();
        let mut next: Vec<Entry<R>> = Vec::with_capacity(items.len());
        for item in items {
            let key = R::key(item);
            let kept = old
                .iter_mut()
                .find(|slot| slot.as_ref().is_some_and(|entry| entry.key == key))
                .and_then(Option::take);
            next.push(match kept {
                Some(mut entry) => {
                    entry.show(item)?;
                    entry
                }
                None => {
                    let mut row = R::make(item)?;
                    row.patch(None, item)?;
                    Entry {
                        key,
                        item: item.clone(),
                        row,
                    }
                }
            });
        }
        for gone in old.into_iter().flatten() {
            gone.row.root().remove();
        }
        let mut cursor: Option<Node> = self.parent.first_child();
        for entry in &next {
            let root: &Node = entry.row.root();
            if cursor
                .as_ref()
                .is_some_and(|node| node.is_same_node(Some(root)))
            {
                cursor = root.next_sibling();
            } else {
                self.parent.insert_before(root, cursor.as_ref())?;
            }
        }
        self.rows = next;
        Ok(())
    }
}

impl<R: Row> Entry<R> {
    fn show(&mut self, item: &R::Item) -> Result<()> {
        if self.item != *item {
            self.row.patch(Some(&self.item), item)?;
            self.item = item.clone();
        }
        Ok(())
    }
}
