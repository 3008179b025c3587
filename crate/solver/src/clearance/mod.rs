//! Signed clearance of every moving part to every obstacle over the whole path, certified.
