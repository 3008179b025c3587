//! Tire sizes, growth in service, clearances asked for.
