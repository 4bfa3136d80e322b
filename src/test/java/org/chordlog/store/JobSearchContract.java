package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.store.JobQuery.Order;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Jobs by text, machine, state and date, in each order. */
public abstract class JobSearchContract extends StoreContract {
  protected JobSearchContract(Opener opener) {
    super(opener);
  }

  private static final List<String> NAMES =
      List.of("Ölwanne", "Geländer", "GELÄNDER 5", "100 % Edelstahl", "a_b", "axb", "Großrohr");

  private void fill() {
    NAMES.forEach(name -> add(name, "M"));
  }

  private Job add(String name, String machine) {
    return store.jobs().add(Some.job(name, machine), "me");
  }

  /** What is looked for, and the names that are found, in the order of their ids. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "Ölwanne|Ölwanne",
        "ölw|Ölwanne",
        "ÖLWANNE|Ölwanne",
        "geländer|Geländer;GELÄNDER 5",
        "GELÄNDER|Geländer;GELÄNDER 5",
        "%|100 % Edelstahl",
        "a_b|a_b",
        "_|a_b",
        "GROSSROHR|Großrohr",
        "großrohr|Großrohr",
        "\" geländer 5 \"|GELÄNDER 5",
        "nothing|\"\"",
      })
  void aTextIsFoundWithoutCaseAndEveryCharacterStandsForItself(String text, String names) {
    fill();
    List<String> expected = names.isEmpty() ? List.of() : List.of(names.split(";", -1));
    assertEquals(expected, named(text));
    reopen();
    assertEquals(expected, named(text));
  }

  /** The same letter as one character or as a letter with a combining mark. */
  @Test
  void composedAndDecomposedLettersAreTheSame() {
    fill();
    assertEquals(List.of("Ölwanne"), named("O\u0308lwanne"));
    add("A\u0308pfel", "M");
    assertEquals(1, named("ÄPFEL").size());
  }

  @Test
  void aTextIsLookedForInNamePartLotCustomerAndDrawing() {
    OrderDetails details = new OrderDetails("Bogen & Söhne", "Z-17", null, null);
    store.jobs().add(Some.job("J", "M").withDetails(details), "me");
    for (String text : List.of("j", "HOOP", "Lot 1", "SÖHNE", "z-17", "hoop lot 1")) {
      assertEquals(List.of("J"), named(text), text);
    }
    assertEquals(List.of(), named("CENTRELINE"));
  }

  @Test
  void aChangedJobIsFoundByItsNewTextAlone() {
    Job job = add("J", "M");
    OrderDetails details = new OrderDetails("Söhne", null, null, null);
    store.jobs().update(job.withDetails(details), "me", "told");
    assertEquals(List.of("J"), named("söhne"));
    store.jobs().update(job.withDetails(OrderDetails.NONE), "me", "wrong");
    assertEquals(List.of(), named("söhne"));
  }

  @Test
  void aBlankTextIsAny() {
    fill();
    assertEquals(NAMES, named("  "));
    assertEquals(NAMES, named(null));
  }

  private List<String> named(@Nullable String text) {
    return names(JobQuery.of(Order.OLDEST, 100).containing(text));
  }

  private List<String> names(JobQuery query) {
    return store.jobs().search(query).stream().map(Job::name).toList();
  }

  @Test
  void machineStateAndDateAreFilters() {
    add("a", "M");
    Job closed = add("b", "M");
    add("c", "N");
    store.jobs().update(closed.withState(Job.State.CLOSED), "me", "done");
    JobQuery all = JobQuery.of(Order.OLDEST, 100);
    assertEquals(List.of("a", "b"), names(all.onMachine("M")));
    assertEquals(List.of("a", "c"), names(all.in(Job.State.OPEN)));
    assertEquals(List.of("b"), names(all.onMachine("M").in(Job.State.CLOSED)));
    assertEquals(3, names(all.opened(Some.T0, Some.T0)).size());
    assertEquals(List.of(), names(all.opened(Some.T0 + 1, null)));
    assertEquals(List.of(), names(all.opened(null, Some.T0 - 1)));
  }

  /** By code point: of the last two, the one outside the basic plane comes last. */
  @ParameterizedTest
  @CsvSource({"NEWEST", "OLDEST", "NAME"})
  void eachOrderIsPagedWithoutGapsOrRepeats(Order order) {
    List<String> names = List.of("B", "a", "B", "Ä", "Z", "\uD83D\uDE00", "\uFF5E", "a", "B");
    names.forEach(name -> add(name, "M"));
    List<Job> found = new ArrayList<>();
    List<Job> page;
    @Nullable Long after = null;
    do {
      page = store.jobs().search(JobQuery.of(order, 2).after(after));
      found.addAll(page);
      after = page.isEmpty() ? null : page.get(page.size() - 1).id();
    } while (!page.isEmpty());
    List<Long> expected =
        switch (order) {
          case OLDEST -> List.of(1L, 2L, 3L, 4L, 5L, 6L, 7L, 8L, 9L);
          case NEWEST -> List.of(9L, 8L, 7L, 6L, 5L, 4L, 3L, 2L, 1L);
          case NAME -> List.of(1L, 3L, 9L, 5L, 2L, 8L, 4L, 7L, 6L);
        };
    assertEquals(expected, found.stream().map(Job::id).toList());
  }
}
