//! What is computed about a plan: reach, coverage, clear zones, reactions, findings.
