package org.chordlog.web;

import org.chordlog.measure.Reading;
import org.chordlog.web.http.Json;

/** A reading as events and API show it, for tests outside of this package. */
public final class ShownReading {
  private ShownReading() {}

  public static String json(Reading reading) {
    return Json.text(ReadingView.of(reading));
  }
}
