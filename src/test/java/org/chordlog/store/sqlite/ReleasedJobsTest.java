package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/**
 * Jobs, their specifications and their events in the files of released versions. A test that fails
 * here means that data in use can no longer be read.
 */
final class ReleasedJobsTest extends Released {

  @Test
  void jobsWithTheirSpecificationsAndPlans() throws Exception {
    try (SqliteStore store = openFull()) {
      Job first = Some.job("Ölwanne", "M");
      assertEquals(first.withSpecification(tighter()).stored(1, 2), job(store, 1));
      for (int i = 1; i <= 4; i++) {
        assertEquals(railing(i).stored(i + 1, 1), job(store, i + 1));
      }
      assertEquals(job(store, 1), store.jobs().activeOn("A").orElseThrow());
      assertEquals(job(store, 2), store.jobs().activeOn("B").orElseThrow());
    }
  }

  private static Specification tighter() {
    return new Specification(Face.CENTRELINE, 1800, 1790.0, 1810.0);
  }

  /** They were not in version 1 and come from its record of changes. */
  @Test
  void revisionsOfTheSpecifications() throws Exception {
    try (SqliteStore store = openFull()) {
      List<SpecificationRevision> kept = store.jobs().revisions(1);
      Specification first = Some.job("Ölwanne", "M").specification();
      long[] at = kept.stream().mapToLong(SpecificationRevision::atMicros).toArray();
      assertEquals(
          List.of(
              new SpecificationRevision(1, 1, at[0], "me", "new", null, first),
              new SpecificationRevision(
                  1, 2, at[1], "you", "the customer asked for it", first, tighter())),
          kept);
      assertTrue(at[0] < at[1]);
      for (long id = 2; id <= 5; id++) {
        assertEquals(
            List.of(job(store, id).specification()),
            store.jobs().revisions(id).stream().map(SpecificationRevision::to).toList());
      }
    }
  }

  @Test
  void jobsAreFoundByTextWithoutCase() throws Exception {
    try (SqliteStore store = openFull()) {
      assertEquals(List.of("Ölwanne"), named(store, "ölwanne"));
      assertEquals(List.of("Ölwanne"), named(store, "HOOP"));
      assertEquals(4, named(store, "geländer").size());
      assertEquals(List.of(), named(store, "%"));
    }
  }

  private static List<String> named(SqliteStore store, String text) {
    return store.jobs().search(JobQuery.of(JobQuery.Order.OLDEST, 10).containing(text)).stream()
        .map(Job::name)
        .toList();
  }

  @Test
  void eventsOfEveryKind() throws Exception {
    try (SqliteStore store = openFull()) {
      List<JobEvent> kept = store.jobs().eventsOfJob(1);
      List<JobEvent> expected = new ArrayList<>();
      expected.add(event(kept.get(0), JobEvent.Kind.MATERIAL_LOT, 10, "lot 2", ""));
      JobEvent second = kept.get(1);
      expected.add(
          new JobEvent(
              2,
              1,
              "M",
              JobEvent.Kind.CORRECTION,
              10,
              new JobEvent.Content(12.5, 12.25, "", "half a turn"),
              new Recorded(second.atMicros(), "me")));
      expected.add(event(kept.get(2), JobEvent.Kind.SET_UP, 20, "", ""));
      expected.add(event(kept.get(3), JobEvent.Kind.ZERO, 20, "", ""));
      expected.add(event(kept.get(4), JobEvent.Kind.LIMITS_FROZEN, 20, "", ""));
      expected.add(event(kept.get(5), JobEvent.Kind.LIMITS_RELEASED, 20, "", ""));
      expected.add(event(kept.get(6), JobEvent.Kind.NOTE, 20, "", "a note"));
      assertEquals(expected, kept);
      assertEquals(kept, store.jobs().eventsOfMachine("M"));
      assertEquals(List.of(), store.jobs().withdrawalsOfJob(1, 0));
    }
  }

  /** With the id and time of the stored one. */
  private static JobEvent event(
      JobEvent kept, JobEvent.Kind kind, long after, String lot, String note) {
    return new JobEvent(
        kept.id(),
        1,
        "M",
        kind,
        after,
        new JobEvent.Content(null, null, lot, note),
        new Recorded(kept.atMicros(), "me"));
  }
}
