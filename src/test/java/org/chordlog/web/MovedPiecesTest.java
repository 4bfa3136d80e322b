package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.chordlog.Await;
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
import org.chordlog.store.Some;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.SentTwice;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pieces that were measured under the wrong job go to the one they belong to. */
final class MovedPiecesTest {
  private static final String MACHINE = "three-roll bender";

  private static final Pattern NUMBERED = Pattern.compile("(Ids?|[nN]umber|^at)$");

  @TempDir Path directory;
  private Served served;
  private Bent bent;
  private Job hoops;
  private Job rings;

  @BeforeEach
  void open() {
    begin(directory.resolve("one"));
  }

  private void begin(Path at) {
    served = new Served(at);
    bent = new Bent(served);
    hoops = served.job();
    rings = added("rings", Some.job("rings", MACHINE).inspection());
  }

  private Job added(String name, Job.Inspection inspection) {
    Job.Order order = new Job.Order(name, "ring", "lot 9");
    Job job = Job.opened(order, new Job.Workplace(MACHINE, "A"), inspection, Some.T0);
    return served.store.jobs().add(job, "tester");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void hoops(int count) {
    for (int i = 1; i <= count; i++) {
      bent.piece(hoops, i);
    }
  }

  private HttpResponse<String> move(Job from, int firstPiece, long toJobId) throws Exception {
    long last = served.store.readings().latestOfJob(from.id(), Long.MAX_VALUE, 1).get(0).id();
    return served.post(
        "/api/jobs/" + from.id() + "/moved-pieces",
        "{\"firstPiece\": %d, \"lastReadingId\": %d, \"toJobId\": %d}"
            .formatted(firstPiece, last, toJobId));
  }

  private void moves(Job from, int firstPiece, Job to) throws Exception {
    HttpResponse<String> answer = move(from, firstPiece, to.id());
    assertEquals(200, answer.statusCode(), answer.body());
  }

  private void refuses(Job from, int firstPiece, long toJobId, String why) throws Exception {
    long before = served.store.readings().lastId();
    HttpResponse<String> answer = move(from, firstPiece, toJobId);
    assertTrue(answer.statusCode() == 400 || answer.statusCode() == 409, answer.body());
    assertTrue(answer.body().contains(why), answer.body());
    assertEquals(before, served.store.readings().lastId());
  }

  private List<Reading> of(Job job) {
    return served.store.readings().ofJob(job.id(), 0, 1_000);
  }

  private List<String> audit() {
    return Stores.files(directory.resolve("one")).audit();
  }

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
    List<JsonNode> moved = told(this::wronglyThenMoved);
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

  private void touch(long readings) throws Exception {
    served.indicator.show(2.755);
    Await.until(() -> served.store.readings().lastSequence("A") == readings);
    served.indicator.show(TerminalIndicator.FREE_MM);
    Await.until(served::free);
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

  /** Else it would count twice. */
  @Test
  void aMovedReadingIsNotPutBackByHand() throws Exception {
    hoops(1);
    moves(hoops, 1, rings);
    HttpResponse<String> answer =
        served.post("/api/readings/1/exclusion", "{\"excluded\": false, \"reason\": \"mine\"}");
    assertEquals(400, answer.statusCode());
    assertTrue(answer.body().contains("move its piece back from there"), answer.body());
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

  @Test
  void whatCanNotBeMovedIsRefusedInPlainWords() throws Exception {
    hoops(3);
    refuses(hoops, 2, hoops.id(), "is the job that they are in");
    refuses(hoops, 2, 99, "is not known");
    refuses(hoops, 9, rings.id(), "has no reading that counts");
    Job one =
        added(
            "one place",
            new Job.Inspection(
                new Section.RoundTube(60.3, 3.2),
                Face.OUTER,
                new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
                new Plan(List.of("middle"), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1))));
    refuses(hoops, 2, one.id(), "is not measured at start, but at middle");
    Job inner =
        added(
            "inner",
            new Job.Inspection(
                new Section.RoundTube(60.3, 3.2),
                Face.INNER,
                new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
                new Plan(Bent.POSITIONS, new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1))));
    refuses(hoops, 2, inner.id(), "can't take piece 2, start");
    Job elsewhere = served.store.jobs().add(Some.job("far", "other bender"), "tester");
    refuses(hoops, 2, elsewhere.id(), "another open job of three-roll bender and station A");
    served.store.jobs().update(rings.withState(Job.State.CLOSED), "me", "done");
    refuses(hoops, 2, rings.id(), "is closed; reopen it first");
    HttpResponse<String> empty =
        served.post("/api/jobs/" + hoops.id() + "/moved-pieces", "{\"firstPiece\": 1}");
    assertEquals(400, empty.statusCode());
    assertTrue(empty.body().contains("lastReadingId") && empty.body().contains("toJobId"));
    assertEquals(List.of(), audit());
  }

  @Test
  void whatWasMeasuredSinceForbidsIt() throws Exception {
    hoops(2);
    HttpResponse<String> old =
        served.post(
            "/api/jobs/" + hoops.id() + "/moved-pieces",
            "{\"firstPiece\": 2, \"lastReadingId\": 5, \"toJobId\": %d}".formatted(rings.id()));
    assertEquals(409, old.statusCode());
    assertTrue(old.body().contains("The last reading is now piece 2, end."), old.body());
    bent.piece(rings, 1);
    refuses(hoops, 2, rings.id(), "has readings that were taken after piece 2");
    Job third = added("third", rings.inspection());
    refuses(hoops, 2, third.id(), "is no longer the newest on three-roll bender");
  }

  @Test
  void noMoreThanAThousandReadingsGoAtOnce() throws Exception {
    served.readings(hoops, 1_002);
    refuses(hoops, 1, rings.id(), "have too many readings");
    moves(hoops, 2, rings);
    assertEquals(999, of(rings).size());
    assertEquals(List.of(), audit());
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
