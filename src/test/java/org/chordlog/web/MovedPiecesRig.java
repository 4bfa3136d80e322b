package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.Some;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A station with two jobs, whose pieces are moved from one to the other. */
abstract class MovedPiecesRig {
  private static final String MACHINE = "three-roll bender";

  @TempDir Path directory;
  Served served;
  Bent bent;
  Job hoops;
  Job rings;

  @BeforeEach
  final void open() {
    begin(directory.resolve("one"));
  }

  final void begin(Path at) {
    served = new Served(at);
    bent = new Bent(served);
    hoops = served.job();
    rings = added("rings", Some.job("rings", MACHINE).inspection());
  }

  final Job added(String name, Job.Inspection inspection) {
    Job.Order order = new Job.Order(name, "ring", "lot 9");
    Job job = Job.opened(order, new Job.Workplace(MACHINE, "A"), inspection, Some.T0);
    return served.store.jobs().add(job, "tester");
  }

  @AfterEach
  final void close() {
    served.close();
  }

  final void hoops(int count) {
    for (int i = 1; i <= count; i++) {
      bent.piece(hoops, i);
    }
  }

  final HttpResponse<String> move(Job from, int firstPiece, long toJobId) throws Exception {
    long last = served.store.readings().latestOfJob(from.id(), Long.MAX_VALUE, 1).get(0).id();
    return served.post(
        "/api/jobs/" + from.id() + "/moved-pieces",
        "{\"firstPiece\": %d, \"lastReadingId\": %d, \"toJobId\": %d}"
            .formatted(firstPiece, last, toJobId));
  }

  final void moves(Job from, int firstPiece, Job to) throws Exception {
    HttpResponse<String> answer = move(from, firstPiece, to.id());
    assertEquals(200, answer.statusCode(), answer.body());
  }

  final void refuses(Job from, int firstPiece, long toJobId, String why) throws Exception {
    long before = served.store.readings().lastId();
    HttpResponse<String> answer = move(from, firstPiece, toJobId);
    assertTrue(answer.statusCode() == 400 || answer.statusCode() == 409, answer.body());
    assertTrue(answer.body().contains(why), answer.body());
    assertEquals(before, served.store.readings().lastId());
  }

  final List<Reading> of(Job job) {
    return served.store.readings().ofJob(job.id(), 0, 2_000);
  }

  final List<String> audit() {
    return Stores.files(directory.resolve("one")).audit();
  }

  final void touch(long readings) throws Exception {
    served.indicator.show(2.755);
    Await.until(() -> served.store.readings().lastSequence("A") == readings);
    served.indicator.show(TerminalIndicator.FREE_MM);
    Await.until(served::free);
  }
}
