package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.store.Some;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that released versions wrote. {@code released-1.db} has readings, a job, a set-up, an
 * event, an exclusion and samples; {@code released-1-full.db}, by the same version, has at least
 * one row in every table and of every kind of section and event.
 */
abstract class Released {
  static final long T0 = Some.T0;

  @TempDir Path directory;

  final SqliteStore open(String released) throws IOException {
    try (InputStream in = Released.class.getResourceAsStream(released)) {
      assertNotNull(in, released);
      Files.copy(in, directory.resolve(SqliteStore.FILE_NAME));
    }
    return SqliteStore.open(directory, Some.KEEPING_ALL);
  }

  final SqliteStore openFull() throws IOException {
    return open("released-1-full.db");
  }

  static Job job(SqliteStore store, long id) {
    return store.jobs().find(id).orElseThrow();
  }

  static List<Section> sections() {
    return List.of(
        new Section.SolidRound(20),
        new Section.Flat(10, 60),
        new Section.Box(40, 60, 3),
        new Section.Profile(80, 23.5));
  }

  static Job railing(int i) {
    SubgroupRule rule =
        i % 2 == 0
            ? new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)
            : new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5);
    return new Job(
        0,
        0,
        new Job.Order("GELÄNDER " + i, "", ""),
        new Job.Workplace("N", "B"),
        new Job.Inspection(
            sections().get(i - 1),
            Face.OUTER,
            new Specification(Face.OUTER, 950, null, i == 2 ? null : (Double) 960.0),
            new Plan(List.of("whole"), rule)),
        i == 4 ? Job.State.CLOSED : Job.State.OPEN,
        T0 + i);
  }
}
