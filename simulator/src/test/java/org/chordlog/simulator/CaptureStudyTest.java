package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Locale;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Face;
import org.chordlog.simulator.CaptureStudy.Handling;
import org.chordlog.simulator.CaptureStudy.Row;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Captures judged by the simulator's truth. Goal: at least 99.5 % of the pieces once, none twice,
 * bias below half a step, for noise of up to one step (standard deviation).
 */
final class CaptureStudyTest {
  private static final double[] RATES = {2, 10, 50, 200};

  @ParameterizedTest
  @EnumSource(value = CaptureMode.class, names = "PASSING", mode = EnumSource.Mode.EXCLUDE)
  void shortStudy(CaptureMode mode) throws IOException {
    for (double rate : RATES) {
      for (Handling handling : Handling.values()) {
        judge(CaptureStudy.run(mode, rate, 0.5, handling, Face.OUTER, 0.001, 200, 11));
      }
    }
  }

  @ParameterizedTest
  @EnumSource(value = CaptureMode.class, names = "PASSING", mode = EnumSource.Mode.EXCLUDE)
  @Tag("long")
  void study(CaptureMode mode) throws IOException {
    for (double rate : RATES) {
      for (double noise : new double[] {0.2, 0.5, 1, 2}) {
        for (Handling handling : Handling.values()) {
          for (Face face : new Face[] {Face.OUTER, Face.INNER}) {
            for (double step : new double[] {0.001, 0.01}) {
              Row row = CaptureStudy.run(mode, rate, noise, handling, face, step, 1000, 5);
              System.out.println(said(row));
              if (noise <= 1) {
                judge(row);
              }
            }
          }
        }
      }
    }
  }

  private static void judge(Row row) {
    assertTrue(row.once() >= 0.995 * row.pieces(), said(row));
    assertTrue(row.twice() == 0, said(row));
    assertTrue(Math.abs(row.bias()) < 0.5, said(row));
  }

  private static String said(Row r) {
    return String.format(
        Locale.ROOT,
        "%-8s %4.0f Hz noise %.1f %-6s %-5s step %.3f: once %4d missed %3d twice %3d"
            + " bias %+.3f spread %.3f",
        r.mode(),
        r.rate(),
        r.noise(),
        r.handling(),
        r.face(),
        r.step(),
        r.once(),
        r.missed(),
        r.twice(),
        r.bias(),
        r.spread());
  }
}
