package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Of which lot a job and its readings are, by what was told and taken back. */
public abstract class MaterialLotsContract extends StoreContract {
  protected MaterialLotsContract(Opener opener) {
    super(opener);
  }

  @Test
  void theLotIsThatOfTheNewestEventThatStillCounts() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    assertEquals(Optional.of("lot 1"), store.jobs().materialLot(job.id()));
    JobEvent second = lot(job, 5, "lot 2");
    JobEvent third = lot(job, 9, "lot 3");
    lot(job, 7, "told late");
    lot(job, 9, "");
    told(job, JobEvent.Kind.NOTE, 0, "lot 2", 7);
    assertEquals(Optional.of("lot 3"), store.jobs().materialLot(job.id()));
    store.jobs().add(new EventWithdrawal(0, third.id(), "wrong", 9, "me"));
    assertEquals(Optional.of("told late"), store.jobs().materialLot(job.id()));
    assertEquals("lot 2", second.materialLot());
    assertEquals(Optional.empty(), store.jobs().materialLot(99));
  }

  /** What was recorded with a reading stays; the job knows better. */
  @Test
  void aLotThatWasNamedWronglyIsPutRightForTheReadingsThatWereTakenWithIt() {
    Reading first = Kept.first(store);
    Job job = store.jobs().find(first.jobId()).orElseThrow();
    List<Reading> readings = new ArrayList<>();
    JobEvent wrong = null;
    for (int i = 1; i <= 4; i++) {
      wrong = i == 3 ? lot(job, readings.get(1).id(), "lot 2") : wrong;
      Reading reading = Some.reading("A", i, job.id(), first.setUpId());
      Circumstances with = reading.circumstances().withMaterialLot(i < 3 ? "lot 1" : "lot 2");
      readings.add(store.readings().append(reading.withCircumstances(with)).join());
    }
    assertEquals(List.of("lot 1", "lot 1", "lot 2", "lot 2"), lots(job, readings));
    late(job, readings.get(1).id(), "lot 22");
    assertEquals(List.of("lot 1", "lot 1", "lot 22", "lot 22"), lots(job, readings));
    store.jobs().add(new EventWithdrawal(0, assertPresent(wrong).id(), "misread", 9, "me"));
    assertEquals(List.of("lot 1", "lot 1", "lot 22", "lot 22"), lots(job, readings));
    late(job, 0, "lot 11");
    late(job, readings.get(2).id(), "lot 23");
    assertEquals(List.of("lot 11", "lot 11", "lot 22", "lot 23"), lots(job, readings));
    assertEquals(Optional.of("lot 23"), store.jobs().materialLot(job.id()));
  }

  private static JobEvent assertPresent(@Nullable JobEvent event) {
    return Objects.requireNonNull(event);
  }

  private List<String> lots(Job job, List<Reading> readings) {
    MaterialLots lots = MaterialLots.of(store.jobs(), job);
    return readings.stream().map(lots::of).toList();
  }

  private void late(Job job, long afterReading, String lot) {
    lot(job, afterReading, lot, Some.T0 + 1_000_000_000);
  }

  private JobEvent lot(Job job, long afterReading, String lot) {
    return lot(job, afterReading, lot, 7);
  }

  private JobEvent lot(Job job, long afterReading, String lot, long atMicros) {
    return told(job, JobEvent.Kind.MATERIAL_LOT, afterReading, lot, atMicros);
  }

  private JobEvent told(Job job, JobEvent.Kind kind, long afterReading, String lot, long atMicros) {
    JobEvent.Content content = new JobEvent.Content(null, null, lot, "");
    Recorded recorded = new Recorded(atMicros, "me");
    return store.jobs().add(new JobEvent(0, job.id(), "M", kind, afterReading, content, recorded));
  }
}
