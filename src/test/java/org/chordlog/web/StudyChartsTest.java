package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.chart.StudySnapshot;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The charts of studies that are done, by the API and as what they are drawn from. */
final class StudyChartsTest {
  @TempDir Path directory;
  private Served served;
  private DoneStudies studies;

  @BeforeEach
  void serve() {
    served = new Served(directory);
    studies = new DoneStudies(served.store);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  private List<String> kinds(GaugeStudy study) throws Exception {
    List<String> kinds = new ArrayList<>();
    served
        .json("/api/studies/" + study.id() + "/charts")
        .forEach(each -> kinds.add(each.get("kind").asText()));
    return kinds;
  }

  private JsonNode chart(GaugeStudy study, String kind) throws Exception {
    return served.json("/api/studies/" + study.id() + "/charts/" + kind);
  }

  @Test
  void aStudyOfPiecesHasReadingsAndComponents() throws Exception {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 5, List.of(), List.of("Ann", "Bo", "Cy"));
    assertEquals(List.of("study-readings", "study-components"), kinds(study));
    JsonNode readings = chart(study, "study-readings");
    assertEquals(30, readings.get("places").size(), "15 cells, mean and range");
    assertTrue(readings.get("svg").asText().startsWith("<svg"));
    assertEquals(404, served.get("/api/studies/" + study.id() + "/charts/study-bias").statusCode());
    String inches = "/api/studies/" + study.id() + "/charts/study-components?unit=inch";
    assertTrue(served.json(inches).get("places").get(0).get("label").asText().contains(" in, "));
  }

  @Test
  void markedPlacesAreCellsOfTheirOwn() throws Exception {
    GaugeStudy study =
        studies.onPieces(Kind.SPLIT, 3, List.of("start", "end"), List.of("Ann", "Bo"));
    List<StudySnapshot.Cell> cells = snapshot(study).cells();
    assertEquals(12, cells.size());
    assertEquals("1, start", cells.get(0).spot());
    assertEquals(3, cells.get(0).values().size());
  }

  /** The picture shows the very figures of the result. */
  @Test
  void componentsAreTheFiguresOfTheResult() {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 5, List.of(), List.of("Ann", "Bo", "Cy"));
    StudyResult result = new StudyEvaluation(served.store, study).result();
    List<StudySnapshot.Component> shown = snapshot(study).components();
    assertTrue(shown.stream().anyMatch(each -> each.symbol().equals("GRR")));
    for (StudySnapshot.Component each : shown) {
      StudyFigure figure = result.figure(each.symbol()).orElseThrow();
      assertEquals(figure.value(), each.value());
      assertEquals(figure.upper(), each.upper());
    }
  }

  @Test
  void whatHasNoSymbolIsNamedInWordsOnTheAxis() throws Exception {
    GaugeStudy study = studies.overDays(3, 4);
    JsonNode chart = chart(study, "study-components");
    for (String words : List.of(">in a day<", ">days add<", ">day means<")) {
      assertTrue(chart.get("svg").asText().contains(words), words);
    }
    String label = chart.get("places").get(0).get("label").asText();
    assertTrue(label.startsWith("within a day: "), label);
  }

  /** Days of one master are no pieces, and lots none either. */
  @Test
  void readingsAreAlongWhatTheStudyMeasures() throws Exception {
    String days = chart(studies.overDays(3, 4), "study-readings").get("svg").asText();
    assertTrue(days.contains(">Day<"), "axis");
    assertTrue(days.contains("Readings by operator and day, 12 in all."), "in words");
    GaugeStudy lots = studies.onPieces(Kind.LOTS, 6, List.of(), List.of("Ann", "Bo"));
    assertTrue(chart(lots, "study-readings").get("svg").asText().contains(">Lot<"));
    GaugeStudy eye =
        studies.onPieces(
            Kind.PLACING, 5, List.of(GaugeStudy.BY_EYE, GaugeStudy.ON_MARK), List.of("Ann"));
    assertTrue(chart(eye, "study-readings").get("svg").asText().contains("how it is placed"));
  }

  @Test
  void theBiasOverDepthsIsTheOneThatTheDepthsHave() throws Exception {
    GaugeStudy study = studies.onMasters(Kind.LINEARITY, 4, 5);
    assertEquals(List.of("study-bias"), kinds(study));
    StudySnapshot.Bias bias = Objects.requireNonNull(snapshot(study).bias());
    assertEquals(20, bias.points().size());
    for (StudySnapshot.Fit each : bias.fits()) {
      assertEquals(DoneStudies.BIAS_MM, each.bias(), 0.001);
      assertTrue(each.lower() < each.bias() && each.bias() < each.upper());
    }
  }

  @Test
  void theBandOnOneMasterIsTheIntervalOfItsBias() {
    for (Kind kind : List.of(Kind.BIAS, Kind.TYPE1)) {
      GaugeStudy study = studies.onMasters(kind, 1, 12);
      StudySnapshot.Bias bias = Objects.requireNonNull(snapshot(study).bias());
      StudyFigure figure =
          new StudyEvaluation(served.store, study).result().figure("bias").orElseThrow();
      double mean =
          bias.points().stream().mapToDouble(StudySnapshot.Point::bias).average().orElseThrow();
      assertEquals(Objects.requireNonNull(figure.value()), mean, 1e-9);
      assertEquals(figure.lower(), bias.fits().get(0).lower());
      assertEquals(figure.upper(), bias.fits().get(1).upper());
    }
  }

  private StudySnapshot snapshot(GaugeStudy study) {
    return StudyCharts.of(new StudyEvaluation(served.store, study)).snapshot();
  }
}
