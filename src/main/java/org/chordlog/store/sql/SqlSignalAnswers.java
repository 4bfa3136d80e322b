package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.store.SignalAnswers;

record SqlSignalAnswers(Database database) implements SignalAnswers {
  private static final String SELECT = "SELECT * FROM signal_answer ";

  @Override
  public SignalAnswer add(SignalAnswer answer) {
    return database.write(connection -> insert(connection, answer));
  }

  private static SignalAnswer insert(Connection connection, SignalAnswer answer)
      throws SQLException {
    requireReading(connection, answer);
    long id =
        Sql.insert(
            connection,
            "INSERT INTO signal_answer (job_id, characteristic, chart, reading_id, cause, action,"
                + " at_micros, made_by) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            answer.jobId(),
            answer.characteristic(),
            answer.chart(),
            answer.readingId(),
            answer.cause(),
            answer.action(),
            answer.atMicros(),
            answer.by());
    return Sql.first(connection, SELECT + "WHERE id = ?", SqlSignalAnswers::map, id).orElseThrow();
  }

  private static void requireReading(Connection connection, SignalAnswer answer)
      throws SQLException {
    long job =
        Sql.number(connection, "SELECT job_id FROM reading WHERE id = ?", answer.readingId());
    if (job == 0 || job != answer.jobId()) {
      throw new BadInput(
          "readingId",
          answer.readingId(),
          "is not of job " + answer.jobId(),
          "the number of a reading of that job");
    }
  }

  @Override
  public List<SignalAnswer> ofJob(long jobId, long afterId) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                SELECT + "WHERE job_id = ? AND id > ? ORDER BY id",
                SqlSignalAnswers::map,
                jobId,
                afterId));
  }

  @Override
  public List<SignalAnswer> ofMachine(String machine, int limit) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT a.* FROM job j JOIN signal_answer a ON a.job_id = j.id WHERE j.machine = ?"
                    + " AND NOT EXISTS (SELECT 1 FROM signal_answer n WHERE n.job_id = a.job_id"
                    + " AND n.characteristic = a.characteristic AND n.chart = a.chart"
                    + " AND n.reading_id = a.reading_id AND n.id > a.id)"
                    + " ORDER BY a.id DESC LIMIT ?",
                SqlSignalAnswers::map,
                machine,
                limit));
  }

  private static SignalAnswer map(ResultSet row) throws SQLException {
    return new SignalAnswer(
        row.getLong("id"),
        row.getLong("job_id"),
        new SignalAnswer.PointName(
            row.getString("characteristic"), row.getString("chart"), row.getLong("reading_id")),
        row.getString("cause"),
        row.getString("action"),
        new Recorded(row.getLong("at_micros"), row.getString("made_by")));
  }
}
