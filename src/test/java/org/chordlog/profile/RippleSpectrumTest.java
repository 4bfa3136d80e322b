package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.profile.RippleSpectrum.Wave;
import org.junit.jupiter.api.Test;

/** The mean over pieces of different length. */
final class RippleSpectrumTest {
  private static final RippleSpectrum SHORT = new RippleSpectrum(List.of(new Wave(110, 0.3)));
  private static final RippleSpectrum LONG =
      new RippleSpectrum(List.of(new Wave(110, 0.4), new Wave(113.3, 0.2)));

  @Test
  void isTheRootOfTheMeanSquareAsFarAsTheShortestGoes() {
    List<Wave> waves = RippleSpectrum.mean(List.of(SHORT, LONG)).waves();
    assertEquals(1, waves.size());
    assertEquals(Math.sqrt((0.09 + 0.16) / 2), waves.get(0).amplitudePercent(), 1e-15);
  }

  @Test
  void aPieceTooShortForAnyWaveTakesNothingFromTheOthers() {
    RippleSpectrum none = new RippleSpectrum(List.of());
    assertEquals(LONG, RippleSpectrum.mean(List.of(LONG, none)));
    assertEquals(none, RippleSpectrum.mean(List.of(none)));
  }
}
