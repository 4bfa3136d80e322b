package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Capital;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.ControlState;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Spell;
import org.chordlog.verdict.SignalWords;
import org.chordlog.verdict.SpellWords;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** What the control charts of a characteristic say, without the pictures. */
record ChartFacts(
    String characteristic,
    @JsonPropertyDescription("stretches that hold or held the verdict on control, newest first")
        List<SpellView> spells,
    List<LimitsView> limits,
    @JsonPropertyDescription("the newest first") List<SignalView> signals,
    @JsonPropertyDescription("how many points broke a run test, listed or not") long signalCount,
    @JsonPropertyDescription("what long charts leave out; empty while nothing is left out")
        String thinning,
    @JsonPropertyDescription("parameters of the charts, as a sentence") String settings) {
  private static final int MOST_SIGNALS = 200;

  /** Centre and control limits of a chart over some of its points. */
  record LimitsView(
      String chart,
      String unit,
      @JsonPropertyDescription("counted from 1") int phase,
      long fromNumber,
      long toNumber,
      double centre,
      @Nullable Double lower,
      @Nullable Double upper,
      boolean frozen) {}

  /** A stretch out of control; an answer names its {@code chart} and {@code readingId}. */
  record SpellView(
      String words,
      String since,
      ChartKind chart,
      long readingId,
      @JsonPropertyDescription("whether it holds the verdict now") boolean now,
      @JsonPropertyDescription("whether its cause was found") boolean answered) {}

  /** A point at which run tests fired. */
  record SignalView(
      String chart,
      long number,
      String at,
      int piece,
      String position,
      double value,
      String unit,
      long firstReadingId,
      long lastReadingId,
      @JsonPropertyDescription("in words") List<String> broken) {}

  static ChartFacts of(JobStatistics statistics, String characteristic) {
    List<LimitsView> limits = new ArrayList<>();
    List<SignalView> signals = new ArrayList<>();
    long count = 0;
    long left = 0;
    for (ChartKind kind : statistics.kinds(characteristic)) {
      ChartSnapshot chart = statistics.chart(characteristic, kind);
      chart.limits().forEach(span -> limits.add(limits(chart, span)));
      chart.points().stream()
          .filter(ChartPoint::signalling)
          .forEach(point -> signals.add(signal(chart, point)));
      count += chart.signallingCount();
      left += chart.pointCount() - chart.points().size();
    }
    signals.sort((a, b) -> Long.compare(b.lastReadingId(), a.lastReadingId()));
    return new ChartFacts(
        characteristic,
        spells(statistics.control(characteristic), statistics.kinds(characteristic)),
        limits,
        signals.subList(0, Math.min(MOST_SIGNALS, signals.size())),
        count,
        left > 0 ? ChartSnapshot.THINNING : "",
        statistics.plan().charts().sentence());
  }

  /** Of a verdict on charts of those kinds. */
  static List<SpellView> spells(ControlVerdict verdict, Set<ChartKind> kinds) {
    List<Spell> now =
        verdict.state() instanceof ControlState.NotInControl not ? not.spells() : List.of();
    List<SpellView> all = new ArrayList<>();
    now.forEach(spell -> all.add(spell(kinds, spell, true)));
    List<Spell> before = new ArrayList<>(verdict.history());
    Collections.reverse(before);
    before.forEach(spell -> all.add(spell(kinds, spell, false)));
    return all;
  }

  private static SpellView spell(Set<ChartKind> kinds, Spell spell, boolean now) {
    String words = SpellWords.byPiece(spell);
    return new SpellView(
        Capital.of(words),
        Times.iso(spell.since().atMicros()),
        kinds.stream()
            .filter(kind -> kind.ofSpread() == spell.ofSpread())
            .findFirst()
            .orElseThrow(),
        spell.newest().lastReadingId(),
        now,
        spell.answered());
  }

  static String title(ChartKind kind) {
    return PictureKind.of(kind).title();
  }

  private static LimitsView limits(ChartSnapshot chart, LimitSpan span) {
    return new LimitsView(
        title(chart.kind()),
        chart.unit(),
        span.phase(),
        span.fromNumber(),
        span.toNumber(),
        span.centre(),
        span.lower(),
        span.upper(),
        span.frozen());
  }

  private static SignalView signal(ChartSnapshot chart, ChartPoint point) {
    return new SignalView(
        title(chart.kind()),
        point.number(),
        Times.iso(point.atMicros()),
        point.piece(),
        point.position(),
        point.value(),
        chart.unit(),
        point.firstReadingId(),
        point.lastReadingId(),
        point.signals().stream().map(SignalWords::of).distinct().toList());
  }
}
