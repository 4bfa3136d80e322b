package org.chordlog.store.postgres;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.Await;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.chart.PictureSize;
import org.chordlog.chart.Theme;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.report.JobReport;
import org.chordlog.report.PdfReport;
import org.chordlog.shop.Shop;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.FeedRow;
import org.chordlog.store.FeedRows;
import org.chordlog.store.Store;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.StoreAudit;
import org.chordlog.web.JobReports;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same records at an edge and at the plant: the same figures, pictures and certificates. */
@Tag("slow")
final class PlantEqualsEdgeTest {
  private static final JobReport.Printing CERTIFICATE =
      new JobReport.Printing(
          Instant.parse("2026-11-02T10:00:00Z"), ZoneOffset.UTC, ViewUnit.MM, false);

  @TempDir Path directory;

  @Test
  void statisticsChartsAndCertificatesOfEveryJobAreEqual() throws Exception {
    TestPlant plant = TestPlant.fresh();
    try (Store edge = Stores.open(directory, StoreSettings.USUAL.withTraceDays(0))) {
      Shop.open(edge, Shop.END_MICROS, "A").usual();
      copy(edge.feed().orElseThrow(), plant, edge.identity());
      PostgresStore copy = PostgresStore.delivered(plant.pool(), edge.identity(), "A");
      assertEquals(List.of(), copy.database().read(StoreAudit::of));
      List<Job> jobs = edge.jobs().list(Long.MAX_VALUE, 100);
      assertEquals(jobs, copy.jobs().list(Long.MAX_VALUE, 100));
      assertEquals(edge.readings().all(0, 10_000), copy.readings().all(0, 10_000));
      assertEquals(
          edge.changes().list(Long.MAX_VALUE, 1_000), copy.changes().list(Long.MAX_VALUE, 1_000));
      assertEquals(
          edge.alerts().list(Long.MAX_VALUE, 100), copy.alerts().list(Long.MAX_VALUE, 100));
      Map<Long, byte[]> printed = equal(edge, copy, jobs);
      assertEquals(jobs.size(), printed.size());
    }
    plant.pool().close();
  }

  private static Map<Long, byte[]> equal(Store edge, Store copy, List<Job> jobs) throws Exception {
    Map<Long, byte[]> printed = new LinkedHashMap<>();
    try (Monitor here = new Monitor(edge);
        Monitor there = new Monitor(copy)) {
      for (Job job : jobs) {
        Await.until(() -> here.standing(job.id()).behind() == 0);
        Await.until(() -> there.standing(job.id()).behind() == 0);
        assertEquals(
            here.<List<Object>>read(job.id(), PlantEqualsEdgeTest::seen),
            there.<List<Object>>read(job.id(), PlantEqualsEdgeTest::seen));
        byte[] certificate = certificate(edge, here, job);
        assertTrue(certificate.length > 10_000, job::name);
        assertArrayEquals(certificate, certificate(copy, there, job), job::name);
        printed.put(job.id(), certificate);
      }
    }
    return printed;
  }

  private static byte[] certificate(Store store, Monitor monitor, Job job) throws Exception {
    return PdfReport.write(new JobReports(store, monitor).of(job.id(), CERTIFICATE));
  }

  /** Every figure, and every chart as it is drawn. */
  private static List<Object> seen(JobStatistics statistics) {
    List<Object> seen = new ArrayList<>();
    for (String name : statistics.characteristics()) {
      for (ChartKind kind : statistics.kinds(name)) {
        ChartSnapshot chart = statistics.chart(name, kind);
        seen.add(chart.points());
        seen.add(chart.limits());
        seen.add(drawn(kind, chart));
      }
      seen.add(statistics.summary(name, Scope.JOB));
      seen.add(statistics.summary(name, Scope.PHASE));
    }
    return seen;
  }

  private static String drawn(ChartKind kind, ChartSnapshot chart) {
    ChartSource source = wanted -> wanted == kind ? Optional.of(chart) : Optional.empty();
    Optional<Drawing> drawing = PictureKind.of(kind).draw(source);
    return drawing.isEmpty() ? "nothing to draw" : drawn(drawing.get());
  }

  private static String drawn(Drawing drawing) {
    try (ChartRenderer renderer = ChartRenderer.idle()) {
      Optional<ChartPicture> picture =
          renderer.draw(drawing, new PictureSize(1000, 560), Theme.PAGE).join();
      return picture.orElseThrow().svg();
    }
  }

  private static void copy(Feed feed, TestPlant plant, String id) throws SQLException {
    try (Connection connection = PlantConnections.open(plant.address(), "copy")) {
      Sql.update(connection, "INSERT INTO plant.edge (edge_id, name) VALUES (?::uuid, 'A')", id);
      Sql.list(connection, "SELECT set_config('chordlog.edge', ?, false)", row -> true, id);
      connection.setAutoCommit(false);
      FeedPlace place = FeedPlace.BEGINNING;
      FeedPage page;
      do {
        page = feed.page(place, 5_000, 2_000_000);
        for (FeedRows each : page.rows()) {
          insert(connection, each);
        }
        place = page.to();
      } while (page.rest().rows() > 0);
      Sql.update(
          connection,
          "INSERT INTO plant.batch VALUES (?::uuid, 1, 1, ?, ?, 0, ?, ?, 0, 1, 5, 5)",
          id,
          place.readingId(),
          place.revision(),
          page.tip().seq(),
          page.tip().hash());
      Sql.update(
          connection,
          "INSERT INTO job_total SELECT job_id, count(*), min(id), max(id) FROM reading"
              + " WHERE kind = 'PRODUCT' GROUP BY job_id");
      connection.commit();
    }
  }

  /** Through the views, which know the edge. */
  private static void insert(Connection connection, FeedRows rows) throws SQLException {
    String columns = String.join(", ", rows.columns());
    String sql =
        "INSERT INTO edge.%s (%s) VALUES (%s)"
            .formatted(
                rows.table().table(), columns, "?" + ", ?".repeat(rows.columns().size() - 1));
    try (PreparedStatement insert = connection.prepareStatement(sql)) {
      for (FeedRow row : rows.rows()) {
        for (int i = 0; i < row.values().size(); i++) {
          insert.setObject(i + 1, row.values().get(i));
        }
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }
}
