package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Orders from a CSV file become jobs like an earlier one, all or none. */
final class OrderImportTest {
  @TempDir Path directory;
  private Served served;
  private Job like;

  @BeforeEach
  void open() {
    served = new Served(directory);
    like = served.job();
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void everyRowBecomesAJobLikeTheOtherOne() throws Exception {
    String csv =
        "Order;part;lot;target;tolerance;customer\nA 1;arch;L-1;1850,5;10;Żółw\nA 2;;;;;\n";
    assertEquals(0, send(csv, false).path("jobIds").size());
    assertEquals(1, served.store.jobs().list(Long.MAX_VALUE, 9).size());
    JsonNode made = send(csv, true);
    Job first = job(made.path("jobIds").get(0).asLong());
    assertEquals("A 1", first.name());
    assertEquals("Żółw", first.details().customer());
    assertEquals(1840.5, first.specification().lowerLimitMm());
    assertEquals(1860.5, first.specification().upperLimitMm());
    assertEquals(like.section(), first.section());
    Job second = job(made.path("jobIds").get(1).asLong());
    assertEquals(like.specification(), second.specification());
    assertEquals("", second.materialLot());
  }

  @Test
  void oneRowAtFaultIsNamedByItsLineAndNoJobIsMade() throws Exception {
    String csv = "order,target,tolerance\nA 1,1850,10\nA 2,wide,10\n,1850,10\n";
    JsonNode looked = send(csv, false).path("orders");
    assertEquals("", looked.get(0).path("fault").asText());
    assertTrue(looked.get(1).path("fault").asText().startsWith("target is not a number"), csv);
    assertTrue(looked.get(2).path("fault").asText().startsWith("order is missing"), csv);
    assertEquals(3, looked.get(1).path("line").asInt());
    assertEquals(400, post(csv, true).statusCode());
    assertEquals(1, served.store.jobs().list(Long.MAX_VALUE, 9).size());
  }

  /** As a spreadsheet writes 1800 that it shows with thousands divided. */
  @Test
  void aCommaThatCouldDivideThousandsIsRefusedWhereCommasAreBetweenCells() throws Exception {
    JsonNode quoted = send("order,target\nA 1,\"1,850\"\n", false).path("orders").get(0);
    String said = quoted.path("fault").asText();
    assertTrue(said.startsWith("target could be a decimal comma or thousands"), said);
    JsonNode german = send("order;target;tolerance\nA 1;1850,000;10,125\n", false);
    assertEquals(1839.875, german.path("orders").get(0).path("lowerLimitMm").asDouble());
  }

  /** Empty columns and rows at the end are none. */
  @Test
  void whatASpreadsheetLeavesEmptyIsPassedOver() throws Exception {
    JsonNode orders = send("order;target;;\nA 1;1850;;\n;;;\n;;;\n", false).path("orders");
    assertEquals(1, orders.size());
    assertEquals("", orders.get(0).path("fault").asText());
  }

  @Test
  void limitsBesideAToleranceAreNotPassedOver() throws Exception {
    String csv = "order;tolerance;lower\nA 1;10;1795\n";
    String said = send(csv, false).path("orders").get(0).path("fault").asText();
    assertTrue(said.startsWith("lower stands beside a tolerance"), said);
  }

  /** Not by those of a job in the API. */
  @Test
  void whatIsAtFaultIsNamedByItsColumn() throws Exception {
    String csv = "order;target;lower;upper\nA 1;1850;1860;1870\nA 2;-5;;\n";
    JsonNode orders = send(csv, false).path("orders");
    String lower = orders.get(0).path("fault").asText();
    assertTrue(lower.startsWith("lower "), lower);
    String target = orders.get(1).path("fault").asText();
    assertTrue(target.startsWith("target "), target);
  }

  @Test
  void whatIsNoFileOfOrdersIsRefused() throws Exception {
    for (String csv :
        List.of(
            "",
            "order\n",
            "part;target\nx;1800\n",
            "order;weight\nA;3\n",
            "order;target;target\nA;1800;1900\n",
            "order;target;\nA;1800;7\n",
            "order;part\nA;B\uFFFDgel\n",
            "order,target\nA,1,5\n")) {
      HttpResponse<String> answer = post(csv, false);
      assertEquals(400, answer.statusCode(), csv + answer.body());
    }
  }

  /** As when a file is taken a second time; a repeat order is made all the same. */
  @Test
  void aNameThatIsThereAlreadyIsToldAndNotRefused() throws Exception {
    String csv = "order;target\nA 1;1850\n" + like.name() + ";1850\na 1;1860\n";
    JsonNode looked = send(csv, false).path("orders");
    assertEquals("", looked.get(0).path("notice").asText());
    String there = looked.get(1).path("notice").asText();
    assertTrue(there.startsWith("There is a job of this name already: job " + like.id()), there);
    assertEquals("Line 2 has this name too.", looked.get(2).path("notice").asText());
    assertEquals(3, send(csv, true).path("jobIds").size());
  }

  @Test
  void aSummaryBelowTheOrdersBecomesNoJob() throws Exception {
    String said =
        send("order;target\nA 1;1850\nTotal;1850\n", false).at("/orders/1/fault").asText();
    assertTrue(said.startsWith("order seems to sum up the other rows"), said);
  }

  private Job job(long id) {
    return served.store.jobs().find(id).orElseThrow();
  }

  private JsonNode send(String csv, boolean create) throws Exception {
    HttpResponse<String> answer = post(csv, create);
    assertEquals(200, answer.statusCode(), answer.body());
    return Served.tree(answer);
  }

  private HttpResponse<String> post(String csv, boolean create) throws Exception {
    return served.post(
        "/api/orders",
        Json.shared()
            .createObjectNode()
            .put("likeJobId", like.id())
            .put("csv", csv)
            .put("create", create)
            .toString());
  }
}
