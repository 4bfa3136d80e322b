package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicBoolean;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Job;
import org.chordlog.report.JobReport;
import org.chordlog.store.Readings;
import org.chordlog.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A piece is measured while the report of its job is gathered. */
final class ReportOfOneMomentTest {
  @TempDir Path directory;

  @Test
  void everyPageCountsTheSameReadings() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 3);
      Store store = goingOn(served, job);
      JobReport report =
          new JobReports(store, served.monitor)
              .of(
                  job.id(),
                  new JobReport.Printing(Instant.EPOCH, ZoneOffset.UTC, ViewUnit.MM, true));
      assertEquals(4, report.measured().count());
      assertEquals(4, report.measured().readings().size());
      assertEquals(4, report.measured().decisions().size());
    }
  }

  /** The job gets its fourth reading while those before it are counted by decision. */
  private static Store goingOn(Served served, Job job) {
    AtomicBoolean once = new AtomicBoolean();
    Readings readings =
        standIn(
            Readings.class,
            (self, method, arguments) -> {
              if (method.getName().equals("ofJob") && once.compareAndSet(false, true)) {
                served.readings(job, 1);
              }
              return answer(served.store.readings(), method, arguments);
            });
    return standIn(
        Store.class,
        (self, method, arguments) ->
            method.getName().equals("readings")
                ? readings
                : answer(served.store, method, arguments));
  }

  private static Object answer(Object real, Method method, Object[] arguments) throws Throwable {
    try {
      return method.invoke(real, arguments);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  private static <T> T standIn(Class<T> kind, InvocationHandler handler) {
    return kind.cast(Proxy.newProxyInstance(kind.getClassLoader(), new Class<?>[] {kind}, handler));
  }
}
