package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.DriverManager;
import org.chordlog.measure.Job;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A job that can't be read is named among those that need attention, and its page says so. */
final class DamagedJobPageTest extends BrowserTest {
  @TempDir Path directory;

  @Test
  void aDamagedJobIsNamedAndLeadsToThoseThatAreThere() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      damage(job);
      Visitor visitor = new Visitor(served, browser, "Quinn");
      visitor.go("/jobs.html");
      visitor.sees("#attention-list", "can't be read");
      assertEquals("Job " + job.id(), visitor.text("#attention-list a"));
      visitor.findsNothingGrave();
      visitor.go("/job.html?job=" + job.id());
      visitor.sees("main", "This record is damaged.");
      visitor.sees("main", "All jobs");
      visitor.findsNothingGrave();
    }
  }

  private void damage(Job job) throws Exception {
    String url = "jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME);
    String sql = "UPDATE job SET plan = replace(plan, 'positions', 'positionz') WHERE id = ";
    try (var connection = DriverManager.getConnection(url);
        var statement = connection.createStatement()) {
      assertTrue(statement.executeUpdate(sql + job.id()) > 0);
    }
  }
}
