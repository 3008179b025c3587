//! Down lock: over-centre offset and what loads do to it.
