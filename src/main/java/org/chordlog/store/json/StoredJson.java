package org.chordlog.store.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Job;
import org.chordlog.measure.Master;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.measure.alert.AlertFigure;

/**
 * Domain records to the JSON that is stored, and back. Doubles come back bit for bit; equal records
 * give equal text. Reading throws {@link IllegalStateException} for text that was not written here.
 */
public final class StoredJson {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private StoredJson() {}

  public static String of(SetUp setUp) {
    return write(SetUpJson.of(setUp));
  }

  public static SetUp setUp(String json) {
    return read(json, SetUpJson.class).setUp();
  }

  public static String of(Section section) {
    return write(SectionJson.of(section));
  }

  public static Section section(String json) {
    return read(json, SectionJson.class).section();
  }

  public static String of(Specification specification) {
    return write(SpecificationJson.of(specification));
  }

  public static Specification specification(String json) {
    return read(json, SpecificationJson.class).specification();
  }

  public static String of(Plan plan) {
    return write(PlanJson.of(plan));
  }

  public static Plan plan(String json) {
    return read(json, PlanJson.class).plan();
  }

  /** For the record of changes. */
  public static String of(Job job) {
    return write(JobJson.of(job));
  }

  /** For the record of changes. */
  public static String of(Bridge bridge) {
    return write(BridgeJson.of(bridge));
  }

  /** For the record of changes. */
  public static String of(Master master) {
    return write(MasterJson.of(master));
  }

  /** For the record of changes. */
  public static String of(Calibration calibration) {
    return write(CalibrationJson.of(calibration));
  }

  public static String of(GaugeStudy.Design design) {
    return write(StudyDesignJson.of(design));
  }

  public static GaugeStudy.Design studyDesign(String json) {
    return read(json, StudyDesignJson.class).design();
  }

  public static String of(GaugeStudy.Subject subject) {
    return write(StudySubjectJson.of(subject));
  }

  public static GaugeStudy.Subject studySubject(String json) {
    return read(json, StudySubjectJson.class).subject();
  }

  public static String of(PassedProfile.Basis basis) {
    return write(ProfileBasisJson.of(basis));
  }

  public static PassedProfile.Basis profileBasis(String json) {
    return read(json, ProfileBasisJson.class).basis();
  }

  public static String of(SortedMap<AlertFigure, Double> figures) {
    return write(new AlertFiguresJson(figures));
  }

  public static SortedMap<AlertFigure, Double> figures(String json) {
    return read(json, AlertFiguresJson.class).figures();
  }

  /** The rows of a matrix. */
  public static String of(List<List<Double>> matrix) {
    return write(matrix);
  }

  public static List<List<Double>> matrix(String json) {
    return Arrays.stream(read(json, Double[][].class)).map(List::of).toList();
  }

  /**
   * Whether a job is as an entry of the record of changes says, in all that the entry tells;
   * entries of former releases tell less.
   */
  public static boolean agrees(String recorded, Job job) {
    return agrees(read(recorded, JsonNode.class), read(of(job), JsonNode.class));
  }

  private static boolean agrees(JsonNode recorded, JsonNode now) {
    if (!recorded.isObject() || !now.isObject()) {
      return recorded.equals(StoredJson::compared, now);
    }
    return recorded.properties().stream()
        .allMatch(
            each -> !now.has(each.getKey()) || agrees(each.getValue(), now.get(each.getKey())));
  }

  /** 1 and 1.0 are the same number. */
  private static int compared(JsonNode a, JsonNode b) {
    boolean numbers = a.isNumber() && b.isNumber();
    boolean same = numbers ? a.asDouble() == b.asDouble() : a.equals(b);
    return same ? 0 : 1;
  }

  private static String write(Object row) {
    try {
      return MAPPER.writeValueAsString(row);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("can't be written as JSON: " + row, e);
    }
  }

  private static <T> T read(String json, Class<T> type) {
    try {
      return MAPPER.readValue(json, type);
    } catch (JsonProcessingException e) {
      String what = type.getSimpleName().replace("Json", "");
      throw new IllegalStateException("stored " + what + " is not readable", e);
    }
  }
}
