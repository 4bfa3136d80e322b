package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.measure.Sample;

/**
 * Tells that the value in free air has not changed by one step for as long as the settings say.
 * Only of an indicator whose noise shows: one whose value changed often enough while it rested.
 */
final class FrozenAir {
  private static final double SHOWS_NOISE = 0.05;
  private static final double MEMORY = 0.005;

  /** A longer run without a change says nothing more about the noise. */
  private static final int A_RUN = 20;

  private final CaptureSettings settings;
  private long lastNm;
  private long changedNanos;
  private double changeShare;
  private int unchanged;
  private boolean started;
  private boolean told;

  FrozenAir(CaptureSettings settings) {
    this.settings = settings;
  }

  void offer(Sample sample, AirLevel air, Consumer<StreamDoubt> sink) {
    long now = sample.monotonicNanos();
    boolean changed = !started || sample.valueNm() != lastNm;
    boolean inAir = air.isAt(sample.valueNm());
    if (changed) {
      changedNanos = now;
      told = false;
    }
    unchanged = changed ? 0 : unchanged + 1;
    if (inAir && unchanged < A_RUN) {
      changeShare += MEMORY * ((changed ? 1 : 0) - changeShare);
    }
    started = true;
    lastNm = sample.valueNm();
    if (!told && inAir && changeShare > SHOWS_NOISE && now - changedNanos > settings.stuckNanos()) {
      told = true;
      sink.accept(new StreamDoubt(StreamDoubt.Kind.FROZEN, now, changedNanos, lastNm, lastNm));
    }
  }
}
