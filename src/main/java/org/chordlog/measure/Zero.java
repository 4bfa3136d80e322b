package org.chordlog.measure;

/** Indicator value on a flat: mean, standard deviation of the samples, and their count. */
public record Zero(
    long id,
    String station,
    long bridgeId,
    long valueNm,
    long scatterNm,
    int sampleCount,
    Recorded taken) {
  public Zero {
    Check.text("station", station);
    Check.within("scatterNm", scatterNm, 0, Long.MAX_VALUE);
    Check.within("sampleCount", sampleCount, 1, Integer.MAX_VALUE);
  }

  public long takenAtMicros() {
    return taken.atMicros();
  }

  public String takenBy() {
    return taken.by();
  }
}
