package org.chordlog.web;

import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * One thing that happened to a job: who did what, when, from what to what, and why, in words; and
 * what it is about, where that is a reading or an event.
 */
record JobHappening(
    Kind kind,
    long atMicros,
    String by,
    String what,
    Sentence from,
    Sentence to,
    String why,
    @Nullable Reading reading,
    @Nullable JobEvent event) {
  /** What a program sorts by; the words may change. */
  enum Kind {
    /** The job itself, but for its limits. */
    JOB,
    LIMITS,
    EVENT,
    EVENT_TAKEN_BACK,
    READING_EXCLUDED,
    READING_INCLUDED,
    SIGNAL_ANSWERED
  }
}
