package org.chordlog.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Decimals;
import org.chordlog.stats.math.Interval;
import org.chordlog.study.FigureMaker.About;
import org.chordlog.study.VarianceComponents.Component;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a study of variances: standard deviations, their shares of the total and of the
 * tolerance, and the number of categories (automotive reference manual on measurement systems, 4th
 * edition, chapter III, from memory).
 */
final class GaugeFigures {
  static final String MANUAL = "measurement systems analysis manual, 4th ed., chapter III";
  private static final String MLS =
      "interval by modified large samples (Burdick and Larsen 1997; Ting et al. 1990)";
  private static final String GENERALISED =
      "generalised interval from 10,000 draws (Weerahandi 1993)";

  private static final String TOTAL = "TV";

  /** Of a split study, whose level {@link Shares} moves. */
  private static final Set<String> SET = Set.of("GRR", "PV", "PVpiece");

  /** Above this many times the total deviation an upper end says nothing. */
  private static final double USELESS = 100;

  private final VarianceComponents components;
  private final StudySettings settings;
  private final double mean;
  private final Mls mls;
  private final Interval total;
  private final Shares shares;
  private final FigureMaker make;
  private final List<StudyFigure> figures = new ArrayList<>();

  /** {@code mean} of all readings, for a tolerance with one limit. */
  GaugeFigures(VarianceComponents study, double mean, StudySettings settings) {
    Double process = settings.processSigma();
    components = process == null ? study : study.withProcess(process * process);
    this.settings = settings;
    this.mean = mean;
    mls = new Mls(settings.evaluation().confidence());
    shares = new Shares(components, settings);
    total = ofTotal();
    make = new FigureMaker(settings);
  }

  /** Components that one figure is about. */
  private record Group(String symbol, String words, List<Component> parts) {
    static Group of(Component part) {
      return new Group(part.source().symbol(), part.source().words(), List.of(part));
    }

    boolean isTotal() {
      return symbol.equals(TOTAL);
    }

    String method() {
      return isTotal() ? GENERALISED : MLS;
    }
  }

  private Interval variance(Group group) {
    if (group.isTotal()) {
      return total;
    }
    Interval sum = mls.of(VarianceComponents.sum(group.parts()));
    double told = VarianceComponents.variance(group.parts());
    return Mls.notBelow(
        new Interval(told, sum.lower(), sum.upper()),
        group.parts().stream().map(part -> mls.of(part.combination())).toList());
  }

  /** From draws, and no end below that of a part, as long as the total is not stated. */
  private Interval ofTotal() {
    Interval drawn = shares.ofTotal();
    List<Interval> parts = parts().stream().map(this::variance).toList();
    return settings.processSigma() != null ? drawn : Mls.notBelow(drawn, parts);
  }

  List<StudyFigure> figures() {
    groups().forEach(this::deviation);
    Map<Group, Interval> ofVariance = new LinkedHashMap<>();
    Interval gauge = shares.ofGauge();
    parts().forEach(group -> ofVariance.put(group, share(group, gauge)));
    ofVariance.forEach(this::percentOfVariation);
    ofVariance.forEach(this::contribution);
    Double room = settings.tolerance().room(mean);
    if (room != null) {
      groups().forEach(group -> percentOfTolerance(group, room));
    }
    categories(gauge);
    return List.copyOf(figures);
  }

  /** The product's is what the gauge's leaves. */
  private Interval share(Group group, Interval gauge) {
    return switch (group.symbol()) {
      case "GRR" -> gauge;
      case "PV" -> new Interval(1 - gauge.value(), 1 - gauge.upper(), 1 - gauge.lower());
      default -> shares.of(group.parts());
    };
  }

  private String ofShare(Group group) {
    boolean set = shares.split() && SET.contains(group.symbol());
    return set ? GENERALISED + ", its level set by simulation" : GENERALISED;
  }

  private List<Group> groups() {
    List<Group> groups = parts();
    groups.add(new Group(TOTAL, "total", components.components()));
    return groups;
  }

  /** All but the total. */
  private List<Group> parts() {
    List<Group> groups = new ArrayList<>();
    components.gauge().forEach(part -> groups.add(Group.of(part)));
    groups.add(gauge());
    if (components.product().size() > 1) {
      components.product().forEach(part -> groups.add(Group.of(part)));
    }
    boolean alone = components.product().size() == 1;
    String words = alone ? "between pieces" : "pieces and their places together";
    groups.add(new Group("PV", words, components.product()));
    return groups;
  }

  private Group gauge() {
    return new Group("GRR", "gauge (repeatability and reproducibility)", components.gauge());
  }

  private void deviation(Group group) {
    About about =
        new About(
            group.symbol(),
            group.words(),
            "standard deviation from mean squares; " + group.method(),
            MANUAL);
    StudyFigure figure = make.deviation(about, variance(group));
    figures.add(useless(figure.upper()) ? figure.withoutUpper() : figure);
  }

  private boolean useless(@Nullable Double upper) {
    double total = Math.sqrt(VarianceComponents.variance(components.components()));
    return upper != null && upper > USELESS * settings.telling().deviation(total);
  }

  private void percentOfVariation(Group group, Interval share) {
    About about = about("percent", group, "of the study variation", "100·σ/TV; " + ofShare(group));
    StudyFigure figure = make.percentOfDeviation(about, share);
    figures.add(
        group.symbol().equals("GRR")
            ? figure.atMost(settings.criteria().gaugePercent(), " %")
            : figure);
  }

  private void contribution(Group group, Interval share) {
    About about =
        about("percentContribution", group, "of the variance", "100·σ²/TV²; " + ofShare(group));
    figures.add(make.percent(about, share));
  }

  private void percentOfTolerance(Group group, double room) {
    double k = settings.evaluation().sigmas();
    String method =
        Decimals.significant(k) + "·100·σ/(USL − LSL), one limit: half of it to the mean; ";
    About about = about("percentTolerance", group, "of the tolerance", method + group.method());
    Interval told = FigureMaker.roots(variance(group), 100 * k / room);
    StudyFigure figure = make.figure(about, told, "%");
    figures.add(
        group.symbol().equals("GRR")
            ? figure.atMost(settings.criteria().gaugePercent(), " %")
            : figure);
  }

  private static About about(String kind, Group group, String of, String method) {
    String words = group.words() + ", share " + of;
    return new About(kind + group.symbol(), words, method, MANUAL);
  }

  /** From the gauge's share g: PV/GRR = √(1/g − 1), falling in g. */
  private void categories(Interval gauge) {
    Interval ratio =
        new Interval(
            categories(gauge.value()), categories(gauge.upper()), categories(gauge.lower()));
    String method = "1.41·PV/GRR; from the interval of GRR's share";
    figures.add(
        make.figure(
            new About("ndc", "distinct categories", "whole part of it, at least 1", MANUAL),
            whole(ratio),
            ""));
    figures.add(
        make.figure(
                new About("ndcUnrounded", "distinct categories, unrounded", method, MANUAL),
                ratio,
                "")
            .atLeast(settings.criteria().categories()));
  }

  private static double categories(double share) {
    return 1.41 * Math.sqrt(Math.max(0, 1 / share - 1));
  }

  private static Interval whole(Interval ratio) {
    return new Interval(
        Math.max(1, Math.floor(ratio.value())),
        Math.max(1, Math.floor(ratio.lower())),
        Math.max(1, Math.floor(ratio.upper())));
  }
}
