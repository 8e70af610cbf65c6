"""Coaching arithmetic: slot and shape, pairing, camera timing, session statistics, choosing a cue."""
