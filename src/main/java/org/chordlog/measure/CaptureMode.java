package org.chordlog.measure;

/** How a depth is taken from the stream of samples. */
public enum CaptureMode {
  SETTLED,
  EXTREMUM,
  TRIGGER,
  PASSING
}
