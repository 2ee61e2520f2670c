//! The space frame and the unit held against books, closed forms, laws and other programs.

mod beams;
mod columns;
mod frame_faults;
mod jibs;
mod near;
mod space_frames;
mod worked;
mod worked_single;
