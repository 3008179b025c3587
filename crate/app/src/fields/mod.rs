//! Numbers, texts and choices of the gear as fields addressed by their path in the gear file.
