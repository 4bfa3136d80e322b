package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.EvenReads;
import org.chordlog.WaitingTest;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Master;
import org.chordlog.station.StationClock;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Studies beside the crossed one, done at a station over a real pseudo-terminal. */
@Tag("slow")
final class StudyKindsAtStationTest {
  /** Of radius: more than two steps of the indicator. */
  private static final double SCATTER_MM = 1.5;

  private static final long HOUR_MICROS = 3_600_000_000L;

  @TempDir Path directory;
  private final SplittableRandom random = new SplittableRandom(20_261_127);

  /** The clock of this computer, which can be put on. */
  private static final class LaterClock implements StationClock {
    private final AtomicLong laterMicros = new AtomicLong();

    @Override
    public long wallMicros() {
      return StationClock.system().wallMicros() + laterMicros.get();
    }

    @Override
    public long monotonicNanos() {
      return StationClock.system().monotonicNanos() + 1_000 * laterMicros.get();
    }

    void goOn(long micros) {
      laterMicros.addAndGet(micros);
    }
  }

  private static String plan(String kind, String names, long job) {
    return """
        {"station": "A", "name": "hoops", "kind": "%s", %s, "repeats": 2, "jobId": %d, "seed": 7}"""
        .formatted(kind, names, job);
  }

  @WaitingTest
  void whatSpringsIsSeenAndLedToTheNestedDesign() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      String crossed =
          plan("CROSSED", "\"parts\": [\"1\",\"2\",\"3\"], \"operators\": [\"Ann\",\"Bo\"]", 1);
      StudyHands hands = StudyHands.start(served, crossed);
      Map<String, Integer> measured = new HashMap<>();
      for (int i = 0; i < 12; i++) { // each time a piece is measured it opens by 8 mm
        String part = hands.next().get("part").asText();
        int times = measured.merge(part, 1, Integer::sum);
        hands.touch(StudyHands.depthMm(1780 + 5 * (part.charAt(0) - 48) + 8 * times + scatter()));
      }
      JsonNode result = hands.result();
      assertEquals("NESTED", result.get("instead").asText());
      assertTrue(result.get("cautions").get(0).asText().contains("nested design"));
      hands.become("DONE");
      nested(served, job);
    }
  }

  private double scatter() {
    return SCATTER_MM * random.nextGaussian();
  }

  /** No piece is in two hands, and operators are told apart by pieces of one lot. */
  private void nested(Served served, Job job) throws Exception {
    String names =
        "\"parts\": [\"1\",\"2\",\"3\",\"4\",\"5\",\"6\"], \"operators\": [\"Ann\",\"Bo\"]";
    StudyHands hands = StudyHands.start(served, plan("NESTED", names, job.id()));
    Map<String, Set<String>> whose = new HashMap<>();
    for (int i = 0; i < 12; i++) {
      JsonNode next = hands.next();
      String part = next.get("part").asText();
      String who = next.get("operator").asText();
      whose.computeIfAbsent(part, key -> new HashSet<>()).add(who);
      double bias = who.equals("Ann") ? 0 : 8;
      hands.touch(StudyHands.depthMm(1790 + 2 * (Integer.parseInt(part) % 3) + bias + scatter()));
    }
    assertEquals(6, whose.size());
    whose.forEach((part, who) -> assertEquals(1, who.size(), part));
    JsonNode result = hands.result();
    StudyHands.contains(StudyHands.figure(result, "EV"), SCATTER_MM);
    StudyHands.contains(StudyHands.figure(result, "AV"), 8 / Math.sqrt(2));
    assertTrue(result.get("instead").isNull());
    assertTrue(served.get(hands.path() + "/charts/study-readings").statusCode() == 200);
    hands.become("DONE");
  }

  /** What can be measured only once: the pieces' own difference within a lot is in the scatter. */
  @WaitingTest
  void whatCanBeMeasuredOnceIsStudiedByLots() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      String names = "\"parts\": [\"a\",\"b\",\"c\",\"d\"], \"operators\": [\"Ann\",\"Bo\"]";
      StudyHands hands = StudyHands.start(served, plan("LOTS", names, job.id()));
      Map<String, Set<String>> whose = new HashMap<>();
      double withinLotMm = 3;
      for (int i = 0; i < 8; i++) {
        JsonNode next = hands.next();
        String lot = next.get("part").asText();
        assertEquals("Another piece of lot " + lot, next.get("where").asText());
        assertTrue(next.get("handling").asText().contains("not measured yet"), next.toString());
        whose.computeIfAbsent(lot, key -> new HashSet<>()).add(next.get("operator").asText());
        double piece = withinLotMm * random.nextGaussian();
        hands.touch(StudyHands.depthMm(1790 + 4 * (lot.charAt(0) - 'a') + piece + scatter()));
      }
      assertEquals(4, whose.size());
      whose.forEach((lot, who) -> assertEquals(1, who.size(), lot));
      JsonNode result = hands.result();
      assertTrue(result.get("cautions").toString().contains("at most what is shown"));
      assertTrue(result.get("budget").get("says").asText().contains("within a lot included"));
      assertFalse(result.get("verdict").asText().equals("FAILS"), "it may be the pieces");
      StudyHands.contains(StudyHands.figure(result, "EV"), Math.hypot(withinLotMm, SCATTER_MM));
      hands.become("DONE");
      assertEquals("DONE", hands.study().get("state").asText());
    }
  }

  @WaitingTest
  void placingByEyeIsToldFromPlacingOnMarks() throws Exception {
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.zeroAndFree();
      String names = "\"parts\": [\"1\",\"2\",\"3\",\"4\"], \"operators\": [\"Ann\"]";
      StudyHands hands = StudyHands.start(served, plan("PLACING", names, job.id()));
      Map<String, List<Double>> shown = new HashMap<>();
      for (int i = 0; i < 16; i++) {
        JsonNode next = hands.next();
        String place = next.get("place").asText();
        boolean eye = place.equals("by eye");
        assertEquals(eye, next.get("handling").asText().contains("Cover"), next.toString());
        String part = next.get("part").asText();
        double radius = 1790 + 6 * Integer.parseInt(part) + scatter() * (eye ? 6 : 1);
        shown.computeIfAbsent(place + part, key -> new ArrayList<>()).add(radius);
        hands.touch(StudyHands.depthMm(radius));
      }
      JsonNode result = hands.result();
      double eye = pooled(shown, "by eye");
      double mark = pooled(shown, "on the mark");
      near(result, "byEye", eye);
      near(result, "marked", mark);
      near(result, "placing", Math.sqrt(eye * eye - mark * mark));
      assertEquals("FAILS", result.get("verdict").asText(), "24 mm of tolerance");
    }
  }

  /** Standard deviation of pairs of repeats. */
  private static double pooled(Map<String, List<Double>> shown, String place) {
    return Math.sqrt(
        shown.entrySet().stream()
            .filter(each -> each.getKey().startsWith(place))
            .mapToDouble(each -> each.getValue().get(0) - each.getValue().get(1))
            .map(difference -> difference * difference / 2)
            .average()
            .orElseThrow());
  }

  /** Within what a step of the indicator, 0.7 mm of radius, may do. */
  private static void near(JsonNode result, String name, double truth) {
    JsonNode figure = StudyHands.figure(result, name);
    assertEquals(truth, figure.get("value").asDouble(), 0.5, figure.toString());
    assertTrue(figure.get("lower").asDouble() < truth, figure.toString());
  }

  @WaitingTest
  void oneMasterIsFollowedOverDays() throws Exception {
    LaterClock clock = new LaterClock();
    try (Served served = new Served(directory, WebSettings.onLoopback(0), clock)) {
      Master master = served.store.gauges().add(new Master(0, "ring", Face.OUTER, 1800, 0.2), "me");
      served.zeroAndFree();
      String plan =
          """
          {"station": "A", "name": "ring", "kind": "STABILITY", "parts": ["Mon","Tue","Wed"],
           "operators": ["Ann"], "repeats": 3, "masterIds": [%d]}"""
              .formatted(master.id());
      StudyHands hands = StudyHands.start(served, plan);
      day(hands, "Mon", 0);
      assertFalse(hands.next().get("notBefore").isNull());
      hands.refused(StudyHands.onMasterMm(1800), "STUDY_NEXT_DAY");
      later(served, clock, 20);
      served.zeroAndFree();
      day(hands, "Tue", 0.004);
      hands.become("PAUSED"); // a long weekend
      later(served, clock, 80);
      served.zeroAndFree();
      hands.become("RUNNING");
      day(hands, "Wed", -0.004);
      JsonNode result = hands.result();
      double perMm = 1800.0 * 1800 * 2 / (100.0 * 100); // of depth, near enough for an interval
      StudyHands.contains(StudyHands.figure(result, "level1"), 0.001 * perMm);
      StudyHands.contains(StudyHands.figure(result, "days"), 0.004 * perMm);
      assertEquals("3 days × 3 readings a day", result.get("design").asText());
    }
  }

  @WaitingTest
  void measurementsThatAllReadTheSameAreToldAndCanBeTakenAgain() throws Exception {
    try (Served served = new Served(directory)) {
      Master master = served.store.gauges().add(new Master(0, "ring", Face.OUTER, 1800, 0.2), "me");
      served.zeroAndFree();
      String plan =
          """
          {"station": "A", "name": "ring", "kind": "BIAS", "operators": ["Ann"], "repeats": 2,
           "masterIds": [%d]}"""
              .formatted(master.id());
      StudyHands hands = StudyHands.start(served, plan);
      hands.touch(2.772);
      hands.touch(2.772);
      var refused = served.get(hands.path() + "/result");
      assertEquals(400, refused.statusCode());
      assertTrue(refused.body().contains("all 2 read the same"), refused.body());
      StudyHands.posted(served, hands.path() + "/measure-again", "{\"reason\": \"again\"}");
      assertEquals(2, hands.next().get("step").asInt());
    }
  }

  /** Free air is seen again after the hours in which nothing was. */
  private static void later(Served served, LaterClock clock, int hours) throws Exception {
    clock.goOn(hours * HOUR_MICROS);
    EvenReads.await(() -> served.stations.status("A").counts().samples(), 30);
  }

  private void day(StudyHands hands, String name, double offMm) throws Exception {
    for (int i = 0; i < 3; i++) {
      assertEquals(name, hands.next().get("part").asText());
      hands.touch(StudyHands.onMasterMm(1800) + offMm + 0.001 * random.nextGaussian());
    }
  }
}
