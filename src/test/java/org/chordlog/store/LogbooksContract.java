package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.LogbookEntry.Correction;
import org.chordlog.measure.LogbookEntry.Kind;
import org.chordlog.measure.LogbookEntry.Work;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The log books of the machines. */
public abstract class LogbooksContract extends StoreContract {
  protected LogbooksContract(Opener opener) {
    super(opener);
  }

  /** Work on a machine; 0 corrects nothing. */
  public static LogbookEntry entry(String machine, Kind kind, long corrects) {
    return entry(machine, kind, corrects == 0 ? null : new Correction(corrects, "slip", false));
  }

  private static LogbookEntry entry(String machine, Kind kind, @Nullable Correction correction) {
    return new LogbookEntry(
        0,
        machine,
        new Work(kind, "entry", "play 0.4 mm", "play 0.05 mm", "both bearings"),
        new Recorded(Some.T0, "fitter"),
        correction,
        new Recorded(Some.T0 + 9, "Żak"));
  }

  private static Logbooks.Listed listed(LogbookEntry entry, @Nullable Long correctedBy) {
    return new Logbooks.Listed(entry, correctedBy);
  }

  @Test
  void entriesOfEveryKindComeBackByMachineTheNewestFirst() {
    List<Logbooks.Listed> kept = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      kept.add(0, listed(store.logbooks().add(entry("M", kind, 0)), null));
    }
    LogbookEntry other = store.logbooks().add(entry("N", Kind.LUBRICATED, 0));
    reopen();
    assertEquals(kept, store.logbooks().ofMachine("M", Long.MAX_VALUE, 100));
    assertEquals(kept.subList(1, 3), store.logbooks().ofMachine("M", kept.get(0).entry().id(), 2));
    assertEquals(List.of(listed(other, null)), store.logbooks().ofMachine("N", Long.MAX_VALUE, 9));
    assertEquals(Optional.of(kept.get(0)), store.logbooks().find(kept.get(0).entry().id()));
    assertEquals(Optional.empty(), store.logbooks().find(99));
  }

  @Test
  void aCorrectedEntryStaysAndNamesTheOneThatReplacesIt() {
    LogbookEntry first = store.logbooks().add(entry("M", Kind.LUBRICATED, 0));
    LogbookEntry second = store.logbooks().add(entry("M", Kind.BEARING_RENEWED, first.id()));
    Correction back = new Correction(second.id(), "it was the other machine", true);
    LogbookEntry third = store.logbooks().add(entry("M", Kind.BEARING_RENEWED, back));
    reopen();
    assertEquals(
        List.of(listed(third, null), listed(second, third.id()), listed(first, second.id())),
        store.logbooks().ofMachine("M", Long.MAX_VALUE, 10));
  }

  @Test
  void anEntryIsCorrectedOnceAndOnItsOwnMachine() {
    LogbookEntry first = store.logbooks().add(entry("M", Kind.LUBRICATED, 0));
    LogbookEntry second = store.logbooks().add(entry("M", Kind.OTHER, first.id()));
    assertThrows(Stale.class, () -> store.logbooks().add(entry("M", Kind.OTHER, first.id())));
    assertThrows(BadInput.class, () -> store.logbooks().add(entry("N", Kind.OTHER, second.id())));
    assertThrows(BadInput.class, () -> store.logbooks().add(entry("M", Kind.OTHER, 99)));
    assertEquals(2, store.logbooks().ofMachine("M", Long.MAX_VALUE, 10).size());
  }
}
