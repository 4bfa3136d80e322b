package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Change;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.StudyMeasurement;
import org.chordlog.store.Studies;
import org.chordlog.store.json.StoredJson;
import org.jspecify.annotations.Nullable;

record SqlStudies(Database database) implements Studies {
  private static final String STUDY = "SELECT * FROM gauge_study ";
  private static final String COUNTED =
      "SELECT * FROM study_measurement WHERE id NOT IN (SELECT measurement_id FROM study_drop) ";

  @Override
  public GaugeStudy add(GaugeStudy study) {
    return database.write(
        connection -> {
          long id =
              Sql.insert(
                  connection,
                  "INSERT INTO gauge_study (station, name, design, subject, state, made_micros,"
                      + " made_by) VALUES (?, ?, ?, ?, ?, ?, ?)",
                  study.station(),
                  study.name(),
                  StoredJson.of(study.design()),
                  StoredJson.of(study.subject()),
                  study.state().name(),
                  study.made().atMicros(),
                  study.made().by());
          GaugeStudy kept = study.withId(id);
          record(connection, kept, "", study.made().by(), "new");
          return kept;
        });
  }

  private static void record(
      Connection connection, GaugeStudy study, String from, String by, String why)
      throws SQLException {
    SqlChanges.insert(
        connection,
        new Change(0, Now.micros(), by, "study " + study.id(), from, study.state().name(), why));
  }

  @Override
  public Optional<GaugeStudy> find(long id) {
    return studies("WHERE id = ?", id).stream().findFirst();
  }

  @Override
  public List<GaugeStudy> list(long beforeId, int limit) {
    return studies("WHERE id < ? ORDER BY id DESC LIMIT ?", beforeId, limit);
  }

  @Override
  public Optional<GaugeStudy> runningAt(String station) {
    return studies("WHERE station = ? AND state = 'RUNNING'", station).stream().findFirst();
  }

  private List<GaugeStudy> studies(String where, @Nullable Object... arguments) {
    return database.read(
        connection -> Sql.list(connection, STUDY + where, SqlStudies::study, arguments));
  }

  @Override
  public GaugeStudy become(long id, GaugeStudy.State state, String by, String why) {
    return database.write(connection -> become(connection, id, state, by, why));
  }

  private static GaugeStudy become(
      Connection connection, long id, GaugeStudy.State state, String by, String why)
      throws SQLException {
    GaugeStudy study = required(connection, id);
    if (study.state().ended()) {
      throw new BadInput("study", id, "has ended", "a study that is running or paused");
    }
    if (state == GaugeStudy.State.RUNNING) {
      refuseSecond(connection, study);
    }
    Sql.update(connection, "UPDATE gauge_study SET state = ? WHERE id = ?", state.name(), id);
    GaugeStudy kept = study.become(state);
    record(connection, kept, study.state().name(), by, why);
    return kept;
  }

  private static GaugeStudy required(Connection connection, long id) throws SQLException {
    return Sql.first(connection, STUDY + "WHERE id = ?", SqlStudies::study, id)
        .orElseThrow(() -> new BadInput("study", id, "does not exist", "the number of a study"));
  }

  private static void refuseSecond(Connection connection, GaugeStudy study) throws SQLException {
    long other =
        Sql.number(
            connection,
            "SELECT id FROM gauge_study WHERE station = ? AND state = 'RUNNING' AND id <> ?",
            study.station(),
            study.id());
    if (other > 0) {
      throw new BadInput(
          "study",
          other,
          "is running at " + study.station(),
          "one study at a time; pause it first");
    }
  }

  @Override
  public StudyMeasurement add(StudyMeasurement measurement) {
    return database.write(connection -> insert(connection, measurement));
  }

  private static StudyMeasurement insert(Connection connection, StudyMeasurement m)
      throws SQLException {
    refuseOutOfTurn(connection, m);
    CapturedDepth captured = m.captured();
    long id =
        Sql.insert(
            connection,
            "INSERT INTO study_measurement (study_id, step, mode, value_nm, scatter_nm,"
                + " sample_count, first_sample, last_sample, monotonic_nanos, wall_micros,"
                + " depth_nm, set_up_id, curvature_per_mm, standard_uncertainty_per_mm) VALUES ("
                + Sql.places(14)
                + ")",
            m.studyId(),
            m.step(),
            captured.mode().name(),
            captured.valueNm(),
            captured.scatterNm(),
            captured.sampleCount(),
            captured.firstSequence(),
            captured.lastSequence(),
            captured.monotonicNanos(),
            captured.wallMicros(),
            m.depthNm(),
            m.result().setUpId(),
            m.result().curvaturePerMm(),
            m.result().standardUncertaintyPerMm());
    return m.withId(id);
  }

  private static void refuseOutOfTurn(Connection connection, StudyMeasurement m)
      throws SQLException {
    GaugeStudy study = required(connection, m.studyId());
    if (study.state() != GaugeStudy.State.RUNNING) {
      throw new BadInput("study", m.studyId(), "is not running", "a study that is running");
    }
    if (m.step() > study.design().steps()) {
      throw new BadInput("step", m.step(), "is none of it", "up to " + study.design().steps());
    }
    String same = COUNTED + "AND study_id = ? AND step = ?";
    if (Sql.first(connection, same, row -> 1, m.studyId(), m.step()).isPresent()) {
      throw new BadInput("step", m.step(), "is measured", "a step without a measurement");
    }
  }

  @Override
  public List<StudyMeasurement> counted(long studyId) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                COUNTED + "AND study_id = ? ORDER BY step",
                SqlStudies::measurement,
                studyId));
  }

  @Override
  public void drop(long measurementId, String reason, long atMicros, String by) {
    boolean unused =
        database.write(
            connection -> {
              refuseDropped(connection, measurementId);
              Sql.update(
                  connection,
                  "INSERT INTO study_drop (measurement_id, reason, at_micros, made_by)"
                      + " VALUES (?, ?, ?, ?)",
                  measurementId,
                  reason,
                  atMicros,
                  by);
              return true;
            });
  }

  private static void refuseDropped(Connection connection, long id) throws SQLException {
    if (Sql.first(connection, COUNTED + "AND id = ?", row -> 1, id).isEmpty()) {
      throw new BadInput("measurement", id, "does not count", "one that counts");
    }
  }

  private static GaugeStudy study(ResultSet row) throws SQLException {
    return new GaugeStudy(
        row.getLong("id"),
        row.getString("station"),
        row.getString("name"),
        StoredJson.studyDesign(row.getString("design")),
        StoredJson.studySubject(row.getString("subject")),
        GaugeStudy.State.valueOf(row.getString("state")),
        new GaugeStudy.Made(row.getLong("made_micros"), row.getString("made_by")));
  }

  private static StudyMeasurement measurement(ResultSet row) throws SQLException {
    return new StudyMeasurement(
        row.getLong("id"),
        row.getLong("study_id"),
        row.getInt("step"),
        new CapturedDepth(
            CaptureMode.valueOf(row.getString("mode")),
            row.getLong("value_nm"),
            row.getLong("scatter_nm"),
            row.getInt("sample_count"),
            new CapturedDepth.SampleRange(row.getLong("first_sample"), row.getLong("last_sample")),
            new CapturedDepth.Moment(row.getLong("monotonic_nanos"), row.getLong("wall_micros"))),
        row.getLong("depth_nm"),
        new StudyMeasurement.Result(
            row.getLong("set_up_id"),
            row.getDouble("curvature_per_mm"),
            row.getDouble("standard_uncertainty_per_mm")));
  }
}
