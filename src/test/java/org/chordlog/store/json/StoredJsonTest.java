package org.chordlog.store.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Master;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The text as databases hold it, letter by letter. If one of these fails, databases in use could no
 * longer be read, or equal set-ups would be stored twice: leave the key, and map the renamed
 * component to it in the row type.
 */
final class StoredJsonTest {
  private static final String BRIDGE =
      "{\"id\":7,\"name\":\"200\",\"spanMm\":200.013,\"spanUncertaintyMm\":0.01,"
          + "\"footRadiusMm\":5.0,\"footRadiusUncertaintyMm\":0.005,\"skewLimitDegrees\":0.5}";

  private static final String TUBE =
      "{\"kind\":\"ROUND_TUBE\",\"outsideDiameterMm\":60.3,\"wallMm\":3.2}";

  private static final String SPECIFICATION =
      "{\"face\":\"CENTRELINE\",\"targetMm\":1800.0,\"lowerLimitMm\":1788.0,"
          + "\"upperLimitMm\":1812.0}";

  private static final String PLAN =
      "{\"positions\":[\"start\",\"middle\",\"end\"],"
          + "\"subgroups\":{\"kind\":\"PIECE\",\"size\":3}}";

  private static Bridge bridge() {
    return new Bridge(7, "200", new Bridge.Span(200.013, 0.01), new Bridge.Feet(5, 0.005), 0.5);
  }

  @Test
  void aBridge() {
    assertEquals(BRIDGE, StoredJson.of(bridge()));
  }

  /** A bridge from before kinds of feet has none; its text stays as it was. */
  @Test
  void aBridgeWithItsKindOfFeet() {
    Bridge across =
        new Bridge(
            7,
            "200",
            new Bridge.Span(200.013, 0.01),
            new Bridge.Feet(5, 0.005, FootKind.ACROSS),
            0.5);
    String text = BRIDGE.replace("}", ",\"footKind\":\"ACROSS\"}");
    assertEquals(text, StoredJson.of(across));
  }

  static Stream<Arguments> sections() {
    return Stream.of(
        Arguments.of(new Section.RoundTube(60.3, 3.2), TUBE),
        Arguments.of(new Section.SolidRound(20), "{\"kind\":\"SOLID_ROUND\",\"diameterMm\":20.0}"),
        Arguments.of(
            new Section.Flat(10, 60), "{\"kind\":\"FLAT\",\"heightMm\":10.0,\"widthMm\":60.0}"),
        Arguments.of(
            new Section.Box(40, 60, 3),
            "{\"kind\":\"BOX\",\"heightMm\":40.0,\"widthMm\":60.0,\"wallMm\":3.0}"),
        Arguments.of(
            new Section.Profile(80, 23.5),
            "{\"kind\":\"PROFILE\",\"heightMm\":80.0,\"centroidFromOuterMm\":23.5}"));
  }

  @ParameterizedTest
  @MethodSource("sections")
  void aSectionOfEachKind(Section section, String json) {
    assertEquals(json, StoredJson.of(section));
    assertEquals(section, StoredJson.section(json));
  }

  /** A new kind of section needs its row type and its text above. */
  @Test
  void everyKindOfSectionHasItsText() {
    assertEquals(Section.class.getPermittedSubclasses().length, sections().count());
  }

  @Test
  void aSpecificationWithAndWithoutLimits() {
    Specification both = new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0);
    Specification none = new Specification(Face.OUTER, 950, null, null);
    String open =
        "{\"face\":\"OUTER\",\"targetMm\":950.0,\"lowerLimitMm\":null,\"upperLimitMm\":null}";
    assertEquals(SPECIFICATION, StoredJson.of(both));
    assertEquals(both, StoredJson.specification(SPECIFICATION));
    assertEquals(open, StoredJson.of(none));
    assertEquals(none, StoredJson.specification(open));
  }

  @Test
  void aPlan() {
    Plan plan =
        new Plan(List.of("start", "middle", "end"), new SubgroupRule(SubgroupRule.Kind.PIECE, 3));
    assertEquals(PLAN, StoredJson.of(plan));
    assertEquals(plan, StoredJson.plan(PLAN));
  }

  @Test
  void aSetUpWithZeroAndCalibration() {
    String json =
        "{\"bridge\":"
            + BRIDGE
            + ",\"indicator\":{\"resolutionMm\":0.01,\"permissibleErrorMm\":0.02,"
            + "\"travelMm\":12.5},\"zero\":{\"id\":3,\"station\":\"A\",\"bridgeId\":7,"
            + "\"valueNm\":-12340000,\"scatterNm\":2000,\"sampleCount\":20,"
            + "\"takenAtMicros\":1790000000000000,\"takenBy\":\"me\"},\"calibration\":{\"id\":4,"
            + "\"station\":\"A\",\"bridgeId\":7,\"spanMm\":200.021,\"zeroOffsetMm\":0.0,"
            + "\"footRadiusMm\":5.0,\"covariance\":[[3.3333333333333335E-5,0.0,0.0],"
            + "[0.0,0.0,0.0],[0.0,0.0,0.0]],\"degreesOfFreedom\":\"Infinity\","
            + "\"takenAtMicros\":1790000000000000,\"dueAtMicros\":1790000000000001,"
            + "\"takenBy\":\"me\",\"summary\":\"two masters\"},\"section\":"
            + TUBE
            + ",\"measuredFace\":\"OUTER\",\"specifiedFace\":\"CENTRELINE\"}";
    assertEquals(json, StoredJson.of(Some.setUp(bridge())));
    assertEquals(Some.setUp(bridge()), StoredJson.setUp(json));
  }

  @Test
  void aSetUpWithoutZeroAndCalibration() {
    SetUp bare =
        new SetUp(
            bridge(),
            new Indicator(0.001, 0.003, 25),
            null,
            null,
            new Section.Flat(10, 60),
            Face.INNER,
            Face.OUTER);
    String json =
        "{\"bridge\":"
            + BRIDGE
            + ",\"indicator\":{\"resolutionMm\":0.001,\"permissibleErrorMm\":0.003,"
            + "\"travelMm\":25.0},\"zero\":null,\"calibration\":null,\"section\":"
            + "{\"kind\":\"FLAT\",\"heightMm\":10.0,\"widthMm\":60.0},"
            + "\"measuredFace\":\"INNER\",\"specifiedFace\":\"OUTER\"}";
    assertEquals(json, StoredJson.of(bare));
    assertEquals(bare, StoredJson.setUp(json));
  }

  @Test
  void aJob() {
    String json =
        "{\"id\":0,\"name\":\"J\",\"part\":\"hoop\",\"machine\":\"M\",\"station\":\"A\","
            + "\"section\":"
            + TUBE
            + ",\"materialLot\":\"lot 1\",\"measuredFace\":\"OUTER\",\"specification\":"
            + SPECIFICATION
            + ",\"plan\":"
            + PLAN
            + ",\"state\":\"OPEN\",\"openedAtMicros\":1790000000000000}";
    assertEquals(json, StoredJson.of(Some.job("J", "M")));
    OrderDetails details = new OrderDetails("Bogen & Sohn", "C", 2827.433, 90.0);
    assertEquals(
        json.substring(0, json.length() - 1)
            + ",\"customer\":\"Bogen & Sohn\",\"drawingRevision\":\"C\","
            + "\"developedLengthMm\":2827.433,\"developedAngleDegrees\":90.0}",
        StoredJson.of(Some.job("J", "M").withDetails(details)));
  }

  @Test
  void aStudyOfTheGauge() {
    GaugeStudy.Design design =
        new GaugeStudy.Design(
            GaugeStudy.Kind.SPLIT, List.of("1", "2"), List.of("start"), List.of("Żak"), 3, 42);
    GaugeStudy.Subject subject =
        new GaugeStudy.Subject(
            new Section.Flat(10, 60),
            Face.OUTER,
            new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
            List.of(new Master(7, "arc", Face.OUTER, 1800.25, 0.2, 1.5)));
    String designText =
        "{\"kind\":\"SPLIT\",\"parts\":[\"1\",\"2\"],\"places\":[\"start\"],"
            + "\"operators\":[\"Żak\"],\"repeats\":3,\"seed\":42}";
    String subjectText =
        "{\"section\":{\"kind\":\"FLAT\",\"heightMm\":10.0,\"widthMm\":60.0},"
            + "\"measuredFace\":\"OUTER\",\"specification\":"
            + SPECIFICATION
            + ",\"masters\":[{\"id\":7,\"name\":\"arc\",\"face\":\"OUTER\",\"radiusMm\":1800.25,"
            + "\"expandedUncertaintyMm\":0.2,\"checkLimitMm\":1.5}]}";
    assertEquals(designText, StoredJson.of(design));
    assertEquals(design, StoredJson.studyDesign(designText));
    assertEquals(subjectText, StoredJson.of(subject));
    assertEquals(subject, StoredJson.studySubject(subjectText));
  }

  @Test
  void aCovariance() {
    List<List<Double>> matrix = List.of(List.of(1e-4 / 3, 0.0), List.of(0.0, -0.5));
    String json = "[[3.3333333333333335E-5,0.0],[0.0,-0.5]]";
    assertEquals(json, StoredJson.of(matrix));
    assertEquals(matrix, StoredJson.matrix(json));
  }

  @Test
  void whatAProfileWasEvaluatedBy() {
    PassedProfile.Basis basis =
        new PassedProfile.Basis(
            LengthSource.CHANNEL,
            Face.OUTER,
            new KnownLengths(1200.5, 100.0, null, null, null),
            DecideBy.BOTH,
            new PassedProfile.Extent(90.5, 1100.25, false, true, 2));
    String json =
        "{\"source\":\"CHANNEL\",\"lengthFace\":\"OUTER\",\"known\":{\"pieceMm\":1200.5,\"leadInMm\":100.0,"
            + "\"leadOutMm\":null,\"riseMm\":null,\"stretchMm\":null},\"decideBy\":\"BOTH\","
            + "\"extent\":{\"fromMm\":90.5,\"toMm\":1100.25,\"openStart\":false,"
            + "\"openEnd\":true,\"stretch\":2}}";
    assertEquals(json, StoredJson.of(basis));
    assertEquals(basis, StoredJson.profileBasis(json));
  }

  /** In the order of the constants, whichever came first. */
  @Test
  void figuresOfAnAlert() {
    TreeMap<AlertFigure, Double> figures =
        new TreeMap<>(Map.of(AlertFigure.CHANGE, 0.25, AlertFigure.SINCE_PIECE, 40.0));
    String json =
        AlertFigure.CHANGE.compareTo(AlertFigure.SINCE_PIECE) < 0
            ? "{\"CHANGE\":0.25,\"SINCE_PIECE\":40.0}"
            : "{\"SINCE_PIECE\":40.0,\"CHANGE\":0.25}";
    assertEquals(json, StoredJson.of(figures));
    assertEquals(figures, StoredJson.figures(json));
  }

  @Test
  void textOfAnotherKindIsSaidToBeUnreadable() {
    IllegalStateException e =
        assertThrows(IllegalStateException.class, () -> StoredJson.setUp("{\"bridge\":1}"));
    assertTrue(String.valueOf(e.getMessage()).contains("SetUp"), e::toString);
  }
}
