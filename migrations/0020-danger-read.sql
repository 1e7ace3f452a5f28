-- Readings that make a fence dangerous at once, by the moment at which they were entered: the season brief names those that no sweep
-- has seen yet.
create index readings_dangerous on readings (updated_at) where closed_off = 1 or groundline_kind = 'broken';
