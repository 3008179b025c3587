//! Small numeric tools: every loop bounded.
