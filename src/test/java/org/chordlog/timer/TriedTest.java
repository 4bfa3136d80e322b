package org.chordlog.timer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

final class TriedTest {
  private final LoggerContext logs = new LoggerContext();
  private final ListAppender<ILoggingEvent> logged = new ListAppender<>();
  private final AtomicInteger runs = new AtomicInteger();

  /** The second to the fourth and the sixth run fail. */
  private void work() {
    int run = runs.incrementAndGet();
    if (run > 1 && run != 5) {
      throw new IllegalStateException("run " + run);
    }
  }

  @Test
  void whatFailsIsDoneAgainAndLoggedOnceUntilItSucceeds() {
    logged.start();
    logs.getLogger("tried").addAppender(logged);
    Tried tried = new Tried(logs.getLogger("tried"), "not done; tried again", this::work);
    for (int i = 0; i < 6; i++) {
      tried.run();
    }
    assertEquals(6, runs.get());
    assertEquals(
        List.of("run 2", "run 6"),
        logged.list.stream().map(each -> each.getThrowableProxy().getMessage()).toList());
    assertEquals("not done; tried again", logged.list.get(0).getMessage());
  }
}
