package org.chordlog.capture;

/** The capture of each mode. */
public final class Captures {
  private Captures() {}

  /** The capture of the mode that is set. */
  public static Capture of(CaptureSettings settings) {
    return switch (settings.mode()) {
      case SETTLED -> new SettledCapture(settings);
      case EXTREMUM -> new ExtremumCapture(settings);
      case TRIGGER -> new TriggerCapture(settings);
      case PASSING -> new PassingCapture(settings);
    };
  }
}
