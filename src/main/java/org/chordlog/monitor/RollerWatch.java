package org.chordlog.monitor;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Roller;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceResult;
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

  /** What one piece tells; null: it can't be evaluated. */
  private record Seen(@Nullable Scans scans) {}

  /** Waves once and twice a turn of a roller, and at each wavelength. */
  private record Scans(RippleScan once, RippleScan twice, RippleSpectrum spectrum) {}

  /**
   * What the newest pieces tell of the rollers of a machine: {@code verdict} over 25 of them at
   * most, of the newest alone while there are fewer than five, null without any; {@code twice} the
   * same for two waves a turn; {@code trends} from piece to piece.
   */
  public record Report(
      List<Roller> rollers,
      int pieces,
      @Nullable RollerVerdict verdict,
      @Nullable RollerVerdict twice,
      List<RollerTrend> trends,
      RippleSpectrum spectrum) {}

  public RollerWatch(Store store) {
    this.store = store;
  }

  /** Of a machine as it is now, over its jobs. */
  public Report of(String machine) {
    List<Reading> newest = store.readings().latestProfiled(machine, Long.MAX_VALUE, PIECES);
    return report(store.machines().rollers(machine), newest);
  }

  /** The same over the newest pieces of one job alone, with the rollers recorded now. */
  public Report of(Job job) {
    Map<Long, Exclusion> last = new HashMap<>();
    store.readings().exclusionsOfJob(job.id()).forEach(each -> last.put(each.readingId(), each));
    List<Reading> newest =
        store.readings().latestOfJob(job.id(), Long.MAX_VALUE, PIECES).stream()
            .filter(reading -> reading.captured().mode() == CaptureMode.PASSING)
            .filter(reading -> counts(last.get(reading.id())))
            .toList();
    return report(store.machines().rollers(job.machine()), newest);
  }

  private static boolean counts(@Nullable Exclusion last) {
    return last == null || !last.excluded();
  }

  private synchronized Report report(List<Roller> rollers, List<Reading> newestFirst) {
    List<Scans> pieces = new ArrayList<>();
    for (Reading reading : newestFirst) {
      Scans scans =
          seen.computeIfAbsent(new Key(reading.id(), rollers), key -> look(reading, rollers))
              .scans();
      if (scans != null) {
        pieces.add(scans);
      }
    }
    Collections.reverse(pieces);
    RollerDrift drift = new RollerDrift();
    pieces.forEach(piece -> drift.add(piece.once().points()));
    return new Report(
        rollers,
        pieces.size(),
        rollers.isEmpty() ? null : verdict(pieces, Scans::once, RollerSearch.PROBABILITY),
        rollers.isEmpty() ? null : verdict(pieces, Scans::twice, RollerSearch.PROBABILITY_TWICE),
        drift.trends(),
        RippleSpectrum.mean(
            pieces.stream()
                .skip(Math.max(0, pieces.size() - SPECTRUM_PIECES))
                .map(Scans::spectrum)
                .toList()));
  }

  /** Oldest first. */
  private static @Nullable RollerVerdict verdict(
      List<Scans> pieces, Function<Scans, RippleScan> which, double named) {
    if (pieces.isEmpty()) {
      return null;
    }
    RollerPool pool = new RollerPool(named);
    pieces.stream().map(which).forEach(pool::add);
    RollerVerdict pooled = pool.verdict();
    return pooled == null
        ? RollerSearch.verdict(List.of(which.apply(pieces.get(pieces.size() - 1))), named)
        : pooled;
  }

  private Seen look(Reading reading, List<Roller> rollers) {
    StoredPiece again = evaluated(store, reading);
    return again.outcome() instanceof PieceOutcome.Measured measured
        ? new Seen(scans(again, measured.result(), rollers))
        : new Seen(null);
  }

  private static Scans scans(StoredPiece piece, PieceResult result, List<Roller> rollers) {
    return new Scans(
        RippleScan.of(piece.profile(), result, piece.settings(), rollers),
        RippleScan.ofTwoWavesATurn(piece.profile(), result, piece.settings(), rollers),
        RippleSpectrum.of(piece.profile(), result, piece.settings()));
  }

  /** The piece once more from what is stored of it. */
  static StoredPiece evaluated(Store store, Reading reading) {
    List<PassedProfile> stored = store.readings().profiles(reading.id());
    RadiusModel model = RadiusModel.of(store.readings().setUp(reading.setUpId()).orElseThrow());
    return StoredPiece.evaluated(stored, model, null);
  }
}
