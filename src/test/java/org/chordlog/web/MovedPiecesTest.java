package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.chordlog.measure.Change;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.radius.RadiusModel;
import org.chordlog.station.Happening;
import org.chordlog.station.Place;
import org.chordlog.station.StationStatus;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.SentTwice;
import org.junit.jupiter.api.Test;

/** Pieces that were measured under the wrong job go to the one they belong to. */
final class MovedPiecesTest extends MovedPiecesRig {
  private static final Pattern NUMBERED = Pattern.compile("(Ids?|[nN]umber|^at)$");

  @Test
  void theReadingsCountThereAndAreExcludedHereWithWhereTheyWent() throws Exception {
    hoops(4);
    JsonNode answer = Served.tree(move(hoops, 3, rings.id()));
    assertEquals(
        "{\"jobId\":%d,\"firstPiece\":1,\"lastPiece\":2,\"pieces\":2,\"readings\":6}"
            .formatted(rings.id()),
        answer.toString());
    List<Reading> was = of(hoops).subList(6, 12);
    List<Reading> now = of(rings);
    for (int i = 0; i < 6; i++) {
      assertEquals(was.get(i).captured(), now.get(i).captured());
      assertEquals(was.get(i).measured(), now.get(i).measured());
      assertEquals(was.get(i).result(), now.get(i).result());
      assertEquals(was.get(i).rawHex(), now.get(i).rawHex());
      assertEquals(was.get(i).stationSequence() + 6, now.get(i).stationSequence());
      assertEquals(was.get(i).piece() - 2, now.get(i).piece());
      assertEquals(was.get(i).position(), now.get(i).position());
      assertEquals("Ann", now.get(i).circumstances().measuredBy());
      assertEquals("lot 9", now.get(i).circumstances().materialLot());
    }
    JsonNode exclusions = served.json("/api/jobs/" + hoops.id() + "/exclusions");
    assertEquals(6, exclusions.size());
    assertEquals("Belongs to job rings: there as piece 1", exclusions.at("/0/reason").asText());
    assertEquals("Jörg", exclusions.at("/0/by").asText());
    assertEquals(List.of("Pieces 3 to 4 moved to job rings: there pieces 1 to 2"), notes(hoops));
    assertEquals(
        List.of("Pieces 1 to 2 moved here from job hoops: there pieces 3 to 4"), notes(rings));
    Change change = served.store.changes().list(Long.MAX_VALUE, 1).get(0);
    assertEquals("Moved pieces 3 to 4 of job hoops to job rings", change.why());
    assertEquals("Jörg", change.by());
    assertEquals(List.of(), audit());
  }

  private List<String> notes(Job job) {
    return served.store.jobs().eventsOfJob(job.id()).stream()
        .filter(each -> each.kind() == JobEvent.Kind.NOTE)
        .map(JobEvent::note)
        .toList();
  }

  /** The reference: what all pages say of both jobs had the pieces been measured rightly. */
  @Test
  void bothJobsAndTheMachineSayWhatTheyWouldHadThePiecesBeenMeasuredRightly() throws Exception {
    saysTheSameAsMeasuredRightly(this::wronglyThenMoved);
  }

  private void saysTheSameAsMeasuredRightly(BiConsumer<Job, Job> bending) throws Exception {
    List<JsonNode> moved = told(bending);
    close();
    begin(directory.resolve("other"));
    List<JsonNode> right = told(this::rightly);
    for (int i = 0; i < right.size(); i++) {
      assertEquals(right.get(i).toPrettyString(), moved.get(i).toPrettyString());
    }
  }

  private List<JsonNode> told(BiConsumer<Job, Job> bending) throws Exception {
    hoops(20);
    bending.accept(hoops, rings);
    for (int i = 1; i <= 4; i++) {
      bent.piece(rings, 3 + i);
    }
    bent.piece(hoops, 21);
    bent.piece(hoops, 22);
    List<JsonNode> told = new ArrayList<>();
    for (Job job : List.of(hoops, rings)) {
      String of = "/api/jobs/" + job.id();
      told.add(plain(served.json(of + "/statistics")));
      told.add(plain(served.json(of + "/chart-facts")));
      told.add(plain(served.json(of + "/passes")));
      told.add(plain(served.json(of + "/lots")));
      told.add(served.json(of + "/left-out").get("incompletePieces"));
    }
    told.add(plain(served.json("/api/machines/three-roll%20bender")));
    told.add(plain(served.json("/api/machines/three-roll%20bender/correction")));
    return told;
  }

  /** Forgets the first look, so that statistics go back over what they included already. */
  private void wronglyThenMoved(Job from, Job to) {
    try {
      bent.piece(from, 21);
      happened(from, "21");
      bent.piece(from, 22);
      bent.piece(from, 23);
      JsonNode unused = served.json("/api/jobs/" + from.id() + "/statistics");
      unused = served.json("/api/machines/three-roll%20bender/correction");
      moves(from, 21, to);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** The right job was chosen before the wrong one's pieces were noticed: by way of both. */
  @Test
  void piecesOfAJobThatWasMeasuredOnSinceGoByWayOfTheOldOne() throws Exception {
    saysTheSameAsMeasuredRightly(this::wronglyAndMeasuredOn);
  }

  private void wronglyAndMeasuredOn(Job from, Job to) {
    try {
      bent.piece(from, 21);
      happened(from, "21");
      bent.piece(from, 22);
      bent.piece(to, 1);
      JsonNode unused = served.json("/api/machines/three-roll%20bender/correction");
      refuses(from, 21, to.id(), "of job rings move its pieces from 1 on to job hoops, then all");
      moves(to, 1, from);
      moves(from, 21, to);
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private void rightly(Job from, Job to) {
    bent.piece(to, 1);
    happened(to, "1");
    bent.piece(to, 2);
    bent.piece(to, 3);
  }

  private void happened(Job job, String note) {
    var unused =
        served
            .stations
            .at("A")
            .record(
                job,
                new Happening(JobEvent.Kind.CORRECTION, 10.0, 10.2, "", note, null, null),
                "Ann");
  }

  /** Without numbers of records and of points: those that are excluded stay on the chart. */
  private static JsonNode plain(JsonNode told) {
    if (told instanceof ObjectNode object) {
      List<String> names = new ArrayList<>();
      object.fieldNames().forEachRemaining(names::add);
      names.stream().filter(name -> NUMBERED.matcher(name).find()).forEach(object::remove);
    }
    told.forEach(MovedPiecesTest::plain);
    return told;
  }

  @Test
  void eachJobGoesOnWhereItWouldHaveAlsoAfterARestart() throws Exception {
    hoops(4);
    moves(hoops, 3, rings);
    goesOn();
    served.close();
    served = new Served(directory.resolve("one"));
    goesOn();
    assertEquals(List.of(), audit());
  }

  private void goesOn() throws Exception {
    served.stations.at("A").selectJob(hoops.id());
    assertGoesOnAt(3);
    served.stations.at("A").selectJob(rings.id());
    assertGoesOnAt(3);
  }

  private void assertGoesOnAt(int piece) {
    StationStatus.PlaceNow place = served.stations.status("A").place();
    assertEquals(piece, place.piece());
    assertEquals("start", place.position());
  }

  /** Taken by the station itself: the numbers of its readings go on, without a hole. */
  @Test
  void theStationGoesOnMeasuringAfterAMove() throws Exception {
    served.zeroAndFree();
    touch(1);
    moves(hoops, 1, rings);
    assertGoesOnAt(1);
    touch(3);
    List<Reading> newest = of(hoops);
    assertEquals(3, newest.get(newest.size() - 1).stationSequence());
    assertEquals(1, newest.get(newest.size() - 1).piece());
    assertEquals(List.of(), audit());
  }

  @Test
  void aMoveIsTakenBackByMovingThePiecesBack() throws Exception {
    hoops(4);
    moves(hoops, 3, rings);
    refuses(hoops, 3, rings.id(), "has no reading that counts");
    moves(rings, 1, hoops);
    assertEquals(
        List.of(3, 3, 3, 4, 4, 4), of(hoops).stream().skip(12).map(Reading::piece).toList());
    assertEquals(
        6, served.json("/api/jobs/" + hoops.id() + "/left-out").at("/excludedReadings").asInt());
    bent.piece(hoops, 5);
    assertEquals(List.of(), audit());
  }

  /** Excluded ones stay; those of an earlier pass go along, and do not count there either. */
  @Test
  void excludedReadingsStayAndEarlierPassesGoAlong() throws Exception {
    hoops(2);
    served.stations.at("A").exclude(4, true, "bridge on the weld", "Ann");
    Place unused = served.stations.at("A").rolledAgain(1, "Ann");
    refuses(hoops, 1, rings.id(), "piece 1 was rolled again and is not measured since");
    bent.piece(hoops, 1, 2);
    refuses(hoops, 2, rings.id(), "was measured before piece 1 of this job");
    moves(hoops, 1, rings);
    assertEquals(8, of(rings).size());
    assertEquals(
        3,
        served.store.readings().exclusionsOfJob(rings.id()).stream()
            .filter(each -> each.rolledAgain())
            .count());
    assertEquals(
        "bridge on the weld", served.store.readings().kept(4).orElseThrow().excludedReason());
    assertEquals(List.of(), audit());
  }

  /** As the statistics of the target go by its faces and section, so do the moved readings. */
  @Test
  void radiusAndDecisionAreThoseOfTheOtherJobsSectionFaceAndLimits() throws Exception {
    Job flats =
        added(
            "flats",
            new Job.Inspection(
                new Section.Flat(80, 10),
                Face.OUTER,
                new Specification(Face.OUTER, 1850, 1849.0, 1851.0),
                new Plan(Bent.POSITIONS, new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1))));
    hoops(1);
    moves(hoops, 1, flats);
    Reading was = of(hoops).get(0);
    Reading now = of(flats).get(0);
    RadiusModel model = RadiusModel.of(served.store.readings().setUp(now.setUpId()).orElseThrow());
    assertEquals(flats.section(), model.setUp().section());
    assertEquals(was.depthNm(), now.depthNm());
    assertNotEquals(was.radius(), now.radius());
    assertEquals(model.estimate(now.depthNm(), 1_500, 12), now.radius());
    assertEquals(model.decide(now.radius(), flats.specification()), now.decision());
  }

  /** A page that lost the answer sends it again. */
  @Test
  void sentAgainWithItsKeyItIsDoneOnce() throws Exception {
    hoops(2);
    String body =
        "{\"firstPiece\": 2, \"lastReadingId\": 6, \"toJobId\": %d}".formatted(rings.id());
    String path = "/api/jobs/" + hoops.id() + "/moved-pieces";
    String[] headers = {
      Call.BY, "Ann", "Content-Type", "application/json", SentTwice.KEY, "a-key-of-one-move"
    };
    assertEquals(200, served.send("POST", path, body, headers).statusCode());
    assertEquals(200, served.send("POST", path, body, headers).statusCode());
    assertEquals(3, of(rings).size());
  }
}
