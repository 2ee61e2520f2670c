//! The space frame and the unit held against books, closed forms, laws and other programs.

mod any_actions;
mod any_unit;
mod beams;
mod closed_forms;
mod columns;
mod diagrams;
mod envelope_laws;
mod frame_faults;
mod jibs;
mod movements;
mod near;
mod odd_numbers;
mod space_frames;
mod stability;
mod unit_faults;
mod unit_laws;
mod worked;
mod worked_envelope;
mod worked_single;
