package org.chordlog.shop;

import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.jspecify.annotations.Nullable;

/** An invented order: what is asked for, and how its pieces come out. */
public record Order(
    String name,
    String machine,
    Section section,
    double targetMm,
    @Nullable Double lowerMm,
    @Nullable Double upperMm,
    List<String> positions,
    SubgroupRule subgroups,
    Level level) {
  /** Mean radius less the target at a piece, mm. */
  public interface Level {
    double offsetMm(int piece);
  }

  static Order hoops() {
    return new Order(
        "Canopy hoops",
        "roller 1",
        new Section.RoundTube(60.3, 3.2),
        1800,
        1788.0,
        1812.0,
        List.of("start", "middle", "end"),
        new SubgroupRule(SubgroupRule.Kind.PIECE, 3),
        piece -> piece < 45 ? 0.8 : piece < 75 ? 0.8 + 0.22 * (piece - 45) : 0.4);
  }

  static Order handrail() {
    return new Order(
        "Handrail 42.4",
        "roller 1",
        new Section.RoundTube(42.4, 2.6),
        950,
        944.0,
        956.0,
        List.of("middle"),
        new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1),
        piece -> 1.5);
  }

  static Order ring() {
    return new Order(
        "Gutter ring",
        "roller 2",
        new Section.Flat(30, 8),
        1200,
        null,
        1212.0,
        List.of("middle"),
        new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5),
        piece -> piece < 120 ? 2 : 9);
  }

  static Order frame() {
    return new Order(
        "Door frame arches",
        "roller 2",
        new Section.Box(40, 20, 2),
        1500,
        1490.0,
        1510.0,
        List.of("left", "right"),
        new SubgroupRule(SubgroupRule.Kind.PIECE, 2),
        piece -> 0);
  }

  static Order large(int readings) {
    return new Order(
        "Greenhouse bows, " + readings + " readings",
        "roller 3",
        new Section.RoundTube(48.3, 2.6),
        2400,
        2380.0,
        2420.0,
        List.of("start", "end"),
        new SubgroupRule(SubgroupRule.Kind.PIECE, 2),
        piece -> 2 * Math.sin(piece / 400.0));
  }

  Job job(String station, long openedAtMicros) {
    return Job.opened(
        new Job.Order(name, "drawing 4711-" + Math.round(targetMm), "A-117"),
        new Job.Workplace(machine, station),
        new Job.Inspection(
            section,
            Face.OUTER,
            new Specification(Face.CENTRELINE, targetMm, lowerMm, upperMm),
            new Plan(positions, subgroups)),
        openedAtMicros);
  }
}
