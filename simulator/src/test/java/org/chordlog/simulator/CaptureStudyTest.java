package org.chordlog.simulator;

import java.io.IOException;
import java.util.Locale;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Face;
import org.chordlog.simulator.CaptureStudy.Handling;
import org.chordlog.simulator.CaptureStudy.Row;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Goal: at least 99.5 % of the pieces once, none twice, bias below half a step. */
final class CaptureStudyTest {
  @ParameterizedTest
  @EnumSource(CaptureMode.class)
  @Tag("long")
  void study(CaptureMode mode) throws IOException {
    for (double rate : new double[] {2, 10, 50, 200}) {
      for (double noise : new double[] {0.2, 0.5, 1, 2}) {
        for (Handling handling : Handling.values()) {
          for (Face face : new Face[] {Face.OUTER, Face.INNER}) {
            for (double step : new double[] {0.001, 0.01}) {
              Row r = CaptureStudy.run(mode, rate, noise, handling, face, step, 1000, 5);
              System.out.println(
                  String.format(
                      Locale.ROOT,
                      "%-8s %4.0f Hz noise %.1f %-6s %-5s step %.3f: once %4d missed %3d twice %3d"
                          + " bias %+.3f spread %.3f",
                      mode,
                      rate,
                      noise,
                      handling,
                      face,
                      step,
                      r.once(),
                      r.missed(),
                      r.twice(),
                      r.bias(),
                      r.spread()));
            }
          }
        }
      }
    }
  }
}
