"""Speech: words with their times, heard by a speech model or read from a timed text."""
