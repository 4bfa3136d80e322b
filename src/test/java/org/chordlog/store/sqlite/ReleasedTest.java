package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.measure.Change;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Some;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files that released versions wrote open, and everything in them is there. A test that fails here
 * means that data in use can no longer be read.
 */
final class ReleasedTest extends Released {
  /** As a reading of version 1 comes back now: with revision and lot derived for it. */
  private static Reading derived(Reading reading, long id, int revision, String lot) {
    Circumstances derived = Circumstances.UNRECORDED.withRevision(revision).withMaterialLot(lot);
    return reading.withId(id).withCircumstances(derived);
  }

  @ParameterizedTest
  @ValueSource(strings = {"released-1.db", "released-1-full.db"})
  void theFileIsWholeAfterTheStepsSinceItsVersion(String released) throws Exception {
    open(released).close();
    assertEquals(List.of(), new SqliteFiles(directory).audit());
  }

  @Test
  void theFirstReleasedFileHoldsItsReadingsSetUpAndSamples() throws Exception {
    try (SqliteStore store = open("released-1.db")) {
      List<Reading> readings = store.readings().all(0, 100);
      assertEquals(20, readings.size());
      assertEquals(derived(Some.reading("A", 7, 1, 1), 7, 1, "lot 1"), readings.get(6));
      assertEquals(Some.setUp(store.gauges().bridges().get(0)), store.readings().setUp(1).get());
      assertEquals(300, store.traces().range("A", 1, 300, 1_000).size());
      assertEquals(1, store.jobs().eventsOfJob(1).size());
      assertEquals(1, store.readings().exclusionsOfJob(1).size());
    }
  }

  @Test
  void everyTableOfTheFullFileHasRows() throws Exception {
    try (SqliteStore store = openFull()) {
      for (String table :
          List.of(
              "run",
              "job",
              "active_job",
              "job_event",
              "bridge",
              "mount",
              "zero",
              "calibration",
              "master",
              "interim_check",
              "set_up",
              "reading",
              "job_total",
              "exclusion",
              "change",
              "incident",
              "checkpoint",
              "trace_block")) {
        String sql = "SELECT count(*) FROM " + table;
        assertTrue(store.database().read(c -> Sql.number(c, sql)) > 0, table);
      }
    }
  }

  @Test
  void readings() throws Exception {
    try (SqliteStore store = openFull()) {
      List<Reading> kept = store.readings().all(0, 100);
      assertEquals(24, kept.size());
      for (int i = 1; i <= 20; i++) {
        Reading expected = Some.at(Some.reading("A", i, 1, 1), kept.get(i - 1).wallMicros());
        String lot = i <= 10 ? "lot 1" : "lot 2";
        assertEquals(derived(expected, i, i <= 14 ? 1 : 2, lot), kept.get(i - 1));
      }
      for (int i = 1; i <= 4; i++) {
        Circumstances first = Circumstances.UNRECORDED.withRevision(1);
        Reading expected = Some.reading("B", i, 3, 2).withId(20 + i).withCircumstances(first);
        assertEquals(expected, kept.get(19 + i));
      }
      assertEquals(20, store.readings().countOfJob(1));
      assertEquals(4, store.readings().countOfMachine("N"));
    }
  }

  @Test
  void exclusions() throws Exception {
    try (SqliteStore store = openFull()) {
      assertEquals(
          List.of(
              new Exclusion(1, 3, true, "knocked", T0 + 7, "me"),
              new Exclusion(2, 4, true, "wrong piece", T0 + 8, "me"),
              new Exclusion(3, 4, false, "was right", T0 + 9, "you")),
          store.readings().exclusionsOfJob(1));
      assertEquals("knocked", store.readings().kept(3).orElseThrow().excludedReason());
      assertFalse(store.readings().kept(4).orElseThrow().excluded());
    }
  }

  @Test
  void changes() throws Exception {
    try (SqliteStore store = openFull()) {
      List<Change> kept = new ArrayList<>(store.changes().list(Long.MAX_VALUE, 100));
      Collections.reverse(kept);
      assertEquals(
          List.of(
              "bridge 200: new",
              "bridge 200 turned: feet turned",
              "bridge edge 100: new",
              "job 1: new",
              "job 2: new",
              "job 3: new",
              "job 4: new",
              "job 5: new",
              "job 1: the customer asked for it",
              "job 5: done",
              "station A: other indicator"),
          kept.stream().map(change -> change.what() + ": " + change.why()).toList());
      assertEquals(
          new Change(11, T0, "me", "station A", "1", "2", "other indicator"), kept.get(10));
      assertEquals(kept.get(3).to(), kept.get(8).from());
    }
  }

  @Test
  void incidentsOfEveryKind() throws Exception {
    try (SqliteStore store = openFull()) {
      List<Incident> expected = new ArrayList<>();
      for (String name :
          List.of(
              "LINK_LOST",
              "SILENT",
              "CLOCK_STEPPED",
              "SAMPLES_DROPPED",
              "READINGS_DROPPED",
              "UNIT_CHANGED")) {
        long n = expected.size();
        Incident.Kind kind = Incident.Kind.valueOf(name);
        expected.add(0, new Incident(n + 1, "A", kind, T0 + 10, T0 + 20, n, "detail of " + name));
      }
      assertEquals(expected, store.incidents().ofStation("A", Long.MAX_VALUE, 100));
    }
  }

  @Test
  void checkpointsAndSamples() throws Exception {
    try (SqliteStore store = openFull()) {
      Checkpoints.Slot slot = new Checkpoints.Slot("job 1", 0, 20);
      assertEquals(List.of(slot), store.checkpoints().of("job 1"));
      assertArrayEquals(
          "a state".getBytes(StandardCharsets.UTF_8), store.checkpoints().find(slot).get());
      List<Sample> expected =
          IntStream.rangeClosed(1, 400)
              .mapToObj(
                  i ->
                      new Sample(
                          i,
                          i * 50_000_000L,
                          T0 + i * 50_000L,
                          i % 60 * 10_000L,
                          i % 2,
                          i % 100 == 0))
              .toList();
      assertEquals(expected, store.traces().range("A", 1, 400, 1_000));
    }
  }

  /** Everything goes on where the released version left off. */
  @Test
  void newRecordsFollowTheOldOnes() throws Exception {
    try (SqliteStore store = openFull()) {
      Reading next = store.readings().append(Some.reading("A", 21, 1, 1)).join();
      assertEquals(25, next.id());
      assertEquals(21, store.readings().countOfJob(1));
      Job changed = store.jobs().update(job(store, 1).withState(Job.State.CLOSED), "me", "done");
      assertEquals(2, changed.revision());
      Job revised =
          store.jobs().update(changed.withSpecification(railing(1).specification()), "me", "new");
      assertEquals(3, revised.revision());
      assertEquals(3, store.jobs().revisions(1).size());
    }
    assertEquals(List.of(), new SqliteFiles(directory).audit());
  }
}
