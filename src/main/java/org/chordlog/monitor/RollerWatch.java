package org.chordlog.monitor;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Roller;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.RippleScan;
import org.chordlog.profile.RippleSpectrum;
import org.chordlog.profile.RollerDrift;
import org.chordlog.profile.RollerPool;
import org.chordlog.profile.RollerSearch;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.StoredPiece;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * Which roller of a machine makes a ripple, from the newest pieces that ran through and count. Each
 * piece is evaluated once for the rollers that are recorded now, so a roller recorded later is
 * looked for in earlier pieces too. Any thread.
 */
public final class RollerWatch {
  /** Over so many pieces the amplitude of a roller is followed. */
  public static final int PIECES = 200;

  /** The spectrum is a mean over so many of them at most. */
  public static final int SPECTRUM_PIECES = 25;

  private static final int HELD = 4 * PIECES;

  private final Store store;
  private final Map<Key, Seen> seen =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Seen> eldest) {
          return size() > HELD;
        }
      };

  private record Key(long readingId, List<Roller> rollers) {}

  /** What one piece tells; null scan: it can't be evaluated. */
  private record Seen(@Nullable RippleScan scan, @Nullable RippleSpectrum spectrum) {}

  /**
   * What the newest pieces tell of the rollers of a machine: {@code verdict} over 25 of them at
   * most, of the newest alone while there are fewer than five, null without any; {@code trends}
   * from piece to piece.
   */
  public record Report(
      List<Roller> rollers,
      int pieces,
      @Nullable RollerVerdict verdict,
      List<RollerTrend> trends,
      RippleSpectrum spectrum) {}

  public RollerWatch(Store store) {
    this.store = store;
  }

  public synchronized Report of(String machine) {
    List<Roller> rollers = store.machines().rollers(machine);
    List<Reading> newest =
        new ArrayList<>(store.readings().latestProfiled(machine, Long.MAX_VALUE, PIECES));
    Collections.reverse(newest);
    RollerPool pool = new RollerPool();
    RollerDrift drift = new RollerDrift();
    List<RippleSpectrum> spectra = new ArrayList<>();
    @Nullable RippleScan last = null;
    for (Reading reading : newest) {
      Seen piece =
          seen.computeIfAbsent(new Key(reading.id(), rollers), key -> look(reading, rollers));
      if (piece.scan() != null && piece.spectrum() != null) {
        last = piece.scan();
        pool.add(piece.scan());
        drift.add(piece.scan().points());
        spectra.add(piece.spectrum());
      }
    }
    return new Report(
        rollers,
        spectra.size(),
        rollers.isEmpty() || last == null ? null : verdict(pool, last),
        drift.trends(),
        RippleSpectrum.mean(
            spectra.subList(Math.max(0, spectra.size() - SPECTRUM_PIECES), spectra.size())));
  }

  private static RollerVerdict verdict(RollerPool pool, RippleScan last) {
    RollerVerdict pooled = pool.verdict();
    return pooled == null ? RollerSearch.verdict(List.of(last)) : pooled;
  }

  private Seen look(Reading reading, List<Roller> rollers) {
    List<PassedProfile> stored = store.readings().profiles(reading.id());
    RadiusModel model = RadiusModel.of(store.readings().setUp(reading.setUpId()).orElseThrow());
    StoredPiece again = StoredPiece.evaluated(stored, model, null);
    return again.outcome() instanceof PieceOutcome.Measured measured
        ? new Seen(
            RippleScan.of(again.profile(), measured.result(), again.settings(), rollers),
            RippleSpectrum.of(again.profile(), measured.result(), again.settings()))
        : new Seen(null, null);
  }
}
