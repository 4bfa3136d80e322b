package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.Job;
import org.jspecify.annotations.Nullable;

/** The text of a job that a search looks in, folded as the text that is looked for. */
public final class JobSearchText {
  private JobSearchText() {}

  static String of(Job job) {
    return joined(
        Stream.of(
            job.name(),
            job.part(),
            job.materialLot(),
            job.details().customer(),
            job.details().drawingRevision()));
  }

  private static String joined(Stream<@Nullable String> parts) {
    return parts
        .filter(part -> part != null && !part.isEmpty())
        .map(JobSearchText::fold)
        .collect(Collectors.joining(" "));
  }

  /**
   * Without differences of case, in any alphabet: letters composed (NFC), then through upper case
   * to lower case, so that ß is found as SS.
   */
  static String fold(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFC)
        .toUpperCase(Locale.ROOT)
        .toLowerCase(Locale.ROOT);
  }

  private record Found(long id, String text) {}

  /**
   * The second half of schema step 2: the text of every job there is. It reads the columns that a
   * job had before that step, since later steps have not run yet.
   */
  public static void writeAll(Connection connection) throws SQLException {
    List<Found> jobs =
        Sql.list(
            connection,
            "SELECT id, name, part, material_lot FROM job",
            row ->
                new Found(
                    row.getLong(1),
                    joined(Stream.of(row.getString(2), row.getString(3), row.getString(4)))));
    for (Found job : jobs) {
      Sql.update(connection, "UPDATE job SET search_text = ? WHERE id = ?", job.text, job.id);
    }
  }
}
