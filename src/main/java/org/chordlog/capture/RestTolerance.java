package org.chordlog.capture;

/** What may still be a rest. */
enum RestTolerance {
  /** The scatter that any indicator shows. */
  USUAL {
    @Override
    long restNanos(CaptureSettings settings) {
      return settings.restNanos();
    }

    @Override
    long mostNoiseNm(CaptureSettings settings, long toleratedErrorNm, int samples) {
      return settings.usualNoiseNm();
    }
  },
  /** Vibration that a mean over a longer time takes out. */
  VIBRATION {
    @Override
    long restNanos(CaptureSettings settings) {
      return settings.restNanos() * 3 / 2;
    }

    @Override
    long mostNoiseNm(CaptureSettings settings, long toleratedErrorNm, int samples) {
      return settings.mostNoiseNm(samples, toleratedErrorNm);
    }
  };

  abstract long restNanos(CaptureSettings settings);

  /** {@code toleratedErrorNm}: standard error of a mean that the tolerance permits. */
  abstract long mostNoiseNm(CaptureSettings settings, long toleratedErrorNm, int samples);
}
