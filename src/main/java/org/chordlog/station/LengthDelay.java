package org.chordlog.station;

import java.util.Locale;
import org.chordlog.measure.BadInput;
import org.chordlog.profile.DelayFinder;
import org.chordlog.profile.LengthJoin;
import org.chordlog.station.StationStatus.DelayNow;
import org.chordlog.station.StationStatus.DelayOrigin;
import org.jspecify.annotations.Nullable;

/**
 * How much later depths come than the counts that belong to them: stated, or found from a piece
 * that is run forth and back when somebody asks for it. Used by the station's thread alone, but for
 * {@link #now()}.
 */
final class LengthDelay {
  private enum Search {
    NONE,
    /** A piece that runs already does not count. */
    UNTIL_FREE,
    UNTIL_PIECE,
    ON_PIECE
  }

  private volatile DelayNow now;
  private Search search = Search.NONE;
  private @Nullable DelayFinder finder;

  LengthDelay(@Nullable Double statedMs) {
    now =
        statedMs == null
            ? new DelayNow(0, null, DelayOrigin.NOT_KNOWN, false, "")
            : new DelayNow(statedMs, null, DelayOrigin.STATED, false, "");
  }

  /** Its state now. Any thread. */
  DelayNow now() {
    return now;
  }

  double ms() {
    return now.ms();
  }

  /** The next piece is run forth and back to find it. */
  void find() {
    search = Search.UNTIL_FREE;
    finder = null;
    say(true, "Run one bent piece through, back again and out, at one speed.");
  }

  /** The stream broke off. */
  void brokeOff() {
    if (search == Search.ON_PIECE) {
      search = Search.UNTIL_FREE;
      finder = null;
      say(true, "The stream broke off: run a piece forth and back again.");
    }
  }

  /** A depth less its zero at its place, while a piece runs and the plunger touches it, or not. */
  void ran(boolean running, boolean touches, Placed at, boolean concave) {
    switch (search) {
      case NONE -> {}
      case UNTIL_FREE -> search = running ? search : Search.UNTIL_PIECE;
      case UNTIL_PIECE -> begin(running, concave);
      case ON_PIECE -> end(running);
    }
    if (finder != null && touches) {
      finder.offer(at.nanos(), at.lengthNm(), at.depthNm());
    }
  }

  /** A time, the length that came with the depth, and the depth less its zero. */
  record Placed(long nanos, long lengthNm, long depthNm) {}

  private void begin(boolean running, boolean concave) {
    if (running) {
      search = Search.ON_PIECE;
      finder = new DelayFinder(concave);
      say(true, "The piece runs: take it back again when its bend has passed, and out.");
    }
  }

  private void end(boolean running) {
    DelayFinder of = finder;
    if (running || of == null) {
      return;
    }
    search = Search.NONE;
    finder = null;
    try {
      found(of.delay());
    } catch (BadInput e) {
      say(false, "Not found: " + e.getMessage());
    }
  }

  /** What is found comes on top of the delay by which the lengths were taken. */
  private void found(DelayFinder.Delay rest) {
    double ms = LengthJoin.checkedDelayMs("delay", now.ms() + rest.ms());
    String said = String.format(Locale.ROOT, "Found: %.1f ms ± %.1f ms.", ms, rest.uncertaintyMs());
    now = new DelayNow(ms, rest.uncertaintyMs(), DelayOrigin.FOUND, false, said);
  }

  private void say(boolean searching, String said) {
    DelayNow was = now;
    now = new DelayNow(was.ms(), was.uncertaintyMs(), was.origin(), searching, said);
  }
}
