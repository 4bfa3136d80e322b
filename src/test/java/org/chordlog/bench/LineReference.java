package org.chordlog.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.Part;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceResult;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.profile.TrackSettings;
import org.chordlog.radius.RadiusModel;

/**
 * Profiles against another evaluation of the same streams: a folder with {@code expected.csv}
 * (file, span, rate, feed, p0, a, b, mean, sw, nu, us, uc, windows, range) and one CSV of time_s,
 * depth_mm, length_mm a row. Prints the largest and the root mean square difference of each figure.
 */
public final class LineReference {
  private static final Map<String, List<Double>> DIFFERENCES = new TreeMap<>();

  private LineReference() {}

  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    int missed = 0;
    List<String> rows = Files.readAllLines(folder.resolve("expected.csv"));
    for (String row : rows.subList(1, rows.size())) {
      String[] cells = row.split(",", -1);
      missed += compare(folder.resolve(cells[0]), cells) ? 0 : 1;
    }
    System.out.printf("%d streams, %d without a result%n", rows.size() - 1, missed);
    System.out.println("| figure | largest difference | root mean square |\n|---|---|---|");
    DIFFERENCES.forEach(LineReference::print);
  }

  private static boolean compare(Path stream, String[] cells) throws IOException {
    double span = Double.parseDouble(cells[1]);
    RadiusModel model = RadiusModel.of(setUp(span));
    List<PieceRun> runs = new ArrayList<>();
    PieceTracker tracker =
        new PieceTracker(
            new TrackSettings(
                new TrackSettings.Feed(LengthSource.CHANNEL, false, 400),
                new TrackSettings.Gauge(false, null, 1000, Length.nm(span), span),
                KnownLengths.NONE));
    long sequence = 0;
    Map<Long, Double> lengths = new HashMap<>();
    List<String> lines = Files.readAllLines(stream);
    for (String line : lines.subList(1, lines.size())) {
      String[] values = line.split(",", -1);
      long nanos = Math.round(1e9 * Double.parseDouble(values[0]));
      lengths.put(nanos, Double.parseDouble(values[2]));
      tracker.offer(
          ++sequence,
          nanos,
          Length.nm(Double.parseDouble(values[2])),
          Length.nm(Double.parseDouble(values[1])),
          runs::add);
    }
    PieceEvaluation evaluation =
        new PieceEvaluation(
            new EvaluationSettings(
                model, LengthSource.CHANNEL, Face.OUTER, KnownLengths.NONE, null, DecideBy.MEAN));
    List<PieceOutcome> outcomes = runs.stream().map(evaluation::of).toList();
    if (outcomes.size() != 1 || !(outcomes.get(0) instanceof Measured measured)) {
      System.out.println(stream + ": " + outcomes);
      return false;
    }
    double start = lengths.getOrDefault(runs.get(0).beganNanos(), Double.NaN);
    note("", measured.result(), cells, start);
    Part same =
        new Part(
            Double.parseDouble(cells[5]) - start,
            Double.parseDouble(cells[6]) - start,
            true,
            true,
            1);
    if (evaluation.of(runs.get(0).profile(), same) instanceof Measured there) {
      note("same A, B: ", there.result(), cells, start);
    }
    return true;
  }

  private static SetUp setUp(double span) {
    double permissible = Math.sqrt(3 * (4e-6 - 1e-6 / 6));
    return new SetUp(
        new Bridge(0, "reference", new Bridge.Span(span, span * 1e-4), new Bridge.Feet(0, 0), 0),
        new Indicator(0.001, permissible, span),
        null,
        null,
        new Section.RoundTube(60.3, 3.2),
        Face.OUTER,
        Face.OUTER);
  }

  private static void note(String which, PieceResult result, String[] cells, double start) {
    double mean = Double.parseDouble(cells[7]);
    note(which + "A mm", result.zone().fromMm() + start - Double.parseDouble(cells[5]));
    note(which + "B mm", result.zone().toMm() + start - Double.parseDouble(cells[6]));
    note(which + "mean, 1e-4 of it", 1e4 * (result.mean().bendPerMm() / mean - 1));
    note(
        which + "mean, in its u of sampling",
        (result.mean().bendPerMm() - mean) / Double.parseDouble(cells[10]));
    note(
        which + "u of sampling, share",
        result.mean().samplePerMm() / Double.parseDouble(cells[10]) - 1);
    note(which + "windows", result.mean().windows() - Double.parseDouble(cells[12]));
    double common = Math.hypot(Double.parseDouble(cells[10]), Double.parseDouble(cells[11]));
    note(
        which + "u together, share",
        result.mean().radius().standardUncertaintyPerMm() / common - 1);
    note(
        which + "range, % of the mean",
        result.uniformity().rangePercent() - 100 * Double.parseDouble(cells[13]));
  }

  private static void note(String figure, double difference) {
    DIFFERENCES.computeIfAbsent(figure, name -> new ArrayList<>()).add(difference);
  }

  private static void print(String figure, List<Double> differences) {
    double largest = differences.stream().mapToDouble(Math::abs).max().orElse(Double.NaN);
    double square = differences.stream().mapToDouble(d -> d * d).average().orElse(Double.NaN);
    System.out.printf(Locale.ROOT, "| %s | %.4g | %.3g |%n", figure, largest, Math.sqrt(square));
  }
}
