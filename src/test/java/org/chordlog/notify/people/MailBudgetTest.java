package org.chordlog.notify.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

final class MailBudgetTest {
  private static final Instant START = Instant.parse("2026-11-26T10:00:00Z");

  @Test
  void threeAtOnceThenOneEachTwentyMinutes() {
    List<Instant> sent = new ArrayList<>();
    assertEquals(3, MailBudget.left(sent, START));
    for (int i = 0; i < 3; i++) {
      sent.add(START);
    }
    assertEquals(0, MailBudget.left(sent, START));
    assertEquals(0, MailBudget.left(sent, START.plus(Duration.ofMinutes(20)).minusMillis(1)));
    assertEquals(1, MailBudget.left(sent, START.plus(Duration.ofMinutes(20))));
    assertEquals(2, MailBudget.left(sent, START.plus(Duration.ofMinutes(59))));
    assertEquals(3, MailBudget.left(sent, START.plus(Duration.ofMinutes(60))));
  }

  /** Whenever somebody wants to send, and takes all there is. */
  @Property(tries = 300)
  void noSixtyMinutesHaveMoreThanSixAndNobodyWaitsLongerThanTwenty(
      @ForAll @Size(min = 20, max = 200) List<@IntRange(min = 0, max = 1_500) Integer> pauses) {
    List<Instant> sent = new ArrayList<>();
    Instant now = START;
    Instant denied = Instant.MIN;
    for (int seconds : pauses) {
      now = now.plusSeconds(seconds);
      int left = MailBudget.left(sent, now);
      denied = left > 0 ? Instant.MIN : denied.equals(Instant.MIN) ? now : denied;
      assertTrue(left > 0 || Duration.between(denied, now).toMinutes() < 20);
      for (int i = 0; i < left; i++) {
        sent.add(now);
      }
    }
    for (Instant from : sent) {
      Instant to = from.plus(Duration.ofHours(1));
      long in = sent.stream().filter(at -> !at.isBefore(from) && !at.isAfter(to)).count();
      assertTrue(in <= 6, in + " mails from " + from);
    }
  }
}
