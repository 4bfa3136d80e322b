package org.chordlog.station;

import org.chordlog.measure.BadInput;

/** The refusal of an id that names nothing. */
final class UnknownId {
  private UnknownId() {}

  static BadInput of(String field, long id) {
    return new BadInput(field, id, "is not known", "an id from the list");
  }
}
