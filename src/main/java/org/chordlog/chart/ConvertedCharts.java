package org.chordlog.chart;

import java.util.Optional;
import org.chordlog.stats.PositionsSnapshot;
import org.chordlog.stats.capability.DistributionSnapshot;
import org.chordlog.stats.control.Axis;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.drift.DriftSnapshot;

/** Charts of lengths in a viewer's unit; what is no length (%, sigma) stays as it is. */
record ConvertedCharts(ChartSource source, ViewUnit unit) implements ChartSource {
  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return source.chart(kind).map(each -> unit.converts(each.unit()) ? converted(each) : each);
  }

  @Override
  public Optional<DistributionSnapshot> distribution() {
    return source.distribution().map(each -> unit.converts(each.unit()) ? converted(each) : each);
  }

  @Override
  public Optional<DistributionSnapshot> edge() {
    return source.edge().map(each -> unit.converts(each.unit()) ? converted(each) : each);
  }

  @Override
  public Optional<PositionsSnapshot> positions() {
    return source.positions().map(each -> unit.converts(each.unit()) ? converted(each) : each);
  }

  @Override
  public Optional<DriftSnapshot> drift() {
    return source.drift();
  }

  /** In percent and the scale's own unit; lengths are in its words alone. */
  @Override
  public Optional<CorrectionTrail> corrections() {
    return source.corrections().map(each -> each.in(unit.lengths()));
  }

  @Override
  public Optional<StudySnapshot> study() {
    return source.study().map(each -> unit.converts(each.unit()) ? each.in(unit) : each);
  }

  @Override
  public Optional<LineSnapshot> line() {
    return source.line().map(each -> unit.converts(each.unit()) ? each.in(unit) : each);
  }

  private ChartSnapshot converted(ChartSnapshot chart) {
    return new ChartSnapshot(
        chart.kind(),
        new Axis(chart.quantity(), unit.symbol()),
        chart.points().stream().map(this::point).toList(),
        chart.limits().stream().map(this::limits).toList(),
        chart.events(),
        limits(chart.specification()),
        chart.totals());
  }

  private ChartPoint point(ChartPoint p) {
    return p.with(unit.of(p.value()), unit.orNull(p.lowerValue()), p.signals());
  }

  private Limits limits(Limits limits) {
    return new Limits(
        unit.orNull(limits.lower()), unit.orNull(limits.upper()), unit.orNull(limits.target()));
  }

  private LimitSpan limits(LimitSpan span) {
    return new LimitSpan(
        span.fromNumber(),
        span.toNumber(),
        unit.of(span.centre()),
        unit.orNull(span.lower()),
        unit.orNull(span.upper()),
        span.frozen(),
        span.phase());
  }

  private DistributionSnapshot converted(DistributionSnapshot values) {
    return new DistributionSnapshot(
        new Axis(values.quantity(), unit.symbol()),
        values.bins().stream().map(this::bin).toList(),
        values.curves().stream().map(this::curve).toList(),
        limits(values.specification()),
        unit.orNull(values.mean()),
        values.count());
  }

  private DistributionSnapshot.Bin bin(DistributionSnapshot.Bin bin) {
    return new DistributionSnapshot.Bin(unit.of(bin.low()), unit.of(bin.high()), bin.count());
  }

  /** A density is per unit, so it grows as the values shrink. */
  private DistributionSnapshot.Curve curve(DistributionSnapshot.Curve curve) {
    double perUnit = 1 / unit.of(1);
    return new DistributionSnapshot.Curve(
        curve.name(),
        curve.densities().stream()
            .map(
                at -> new DistributionSnapshot.Density(unit.of(at.value()), at.density() * perUnit))
            .toList());
  }

  private PositionsSnapshot converted(PositionsSnapshot positions) {
    return new PositionsSnapshot(
        positions.quantity(),
        unit.symbol(),
        positions.rows().stream().map(this::row).toList(),
        unit.orNull(positions.lowerSpecificationLimit()),
        unit.orNull(positions.upperSpecificationLimit()),
        unit.orNull(positions.target()));
  }

  private PositionsSnapshot.Row row(PositionsSnapshot.Row row) {
    return new PositionsSnapshot.Row(
        row.position(),
        row.count(),
        unit.of(row.mean()),
        unit.orNull(row.meanLower()),
        unit.orNull(row.meanUpper()),
        unit.of(row.least()),
        unit.of(row.most()));
  }
}
