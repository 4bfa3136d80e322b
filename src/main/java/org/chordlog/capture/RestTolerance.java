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
    long mostNoiseNm(CaptureSettings settings, int samples) {
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
    long mostNoiseNm(CaptureSettings settings, int samples) {
      return settings.mostNoiseNm(samples);
    }
  };

  abstract long restNanos(CaptureSettings settings);

  abstract long mostNoiseNm(CaptureSettings settings, int samples);
}
