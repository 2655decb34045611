// Package journal keeps what was really done: JSON Lines, one event a line,
// appended and synced as it happens, never rewritten.
package journal
