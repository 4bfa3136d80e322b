package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.Test;

/**
 * Limits that may be a slip of the pen are asked about at the form, and taken as they are meant.
 */
final class DoubtfulLimitsTest extends ShopTest {
  private static Job canopy() {
    return shop.served.store.jobs().find(shop.jobId("Canopy hoops")).orElseThrow();
  }

  @Test
  void theFormAsksAndTakesThemAllTheSame() throws Exception {
    long job = canopy().id();
    shop.go("/job-form.html?job=" + job);
    shop.sees("h1", "Change Canopy hoops");
    shop.fillNamed("specification.upperLimitMm", "2300");
    shop.fillNamed("why", "as drawn");
    shop.press("Save");
    shop.sees("dialog", "From limit to limit it is 512 mm, more than a quarter of the radius.");
    shop.sees("dialog", "The target is almost at a limit: the lower one is 12 mm below it");
    shop.refusalsWereMeant();
    shop.findsNothingGrave();
    shop.press("Cancel");
    shop.counts("dialog", 0);
    assertEquals(1_812.0, canopy().specification().upperLimitMm());
    shop.press("Save");
    shop.press("Use them all the same");
    Await.until(() -> String.valueOf(shop.page.getCurrentUrl()).contains("/job.html"));
    shop.refusalsWereMeant();
    assertEquals(2_300.0, canopy().specification().upperLimitMm());
  }

  /** Two questions come one after the other, and both answers are sent. */
  @Test
  void aNewJobMayBeAskedAboutTwice() throws Exception {
    shop.go("/job-form.html?copy=" + canopy().id());
    shop.sees("h1", "Duplicate Canopy hoops");
    shop.fillNamed("name", "Gutter ring");
    shop.fillNamed("specification.upperLimitMm", "2301");
    shop.press("Create job");
    shop.press("Use them all the same");
    shop.sees("dialog h2", "The same name again?");
    shop.press("Use the name again");
    Await.until(() -> String.valueOf(shop.page.getCurrentUrl()).contains("/job.html"));
    shop.refusalsWereMeant();
    shop.sees("main", "2301");
  }

  @Test
  void programsHearTheKindTheFieldsAndHowItIsConfirmed() throws Exception {
    ObjectNode body = (ObjectNode) shop.served.json("/api/jobs/" + canopy().id());
    body.remove(List.of("id", "currentLot", "revision", "version", "state", "openedAt"));
    body.remove(List.of("sectionWords", "planWords", "active", "readings"));
    ((ObjectNode) body.get("specification")).put("upperLimitMm", 2_302);
    body.put("machine", "three-roll bender").put("name", "from a program");
    HttpResponse<String> answer = shop.served.post("/api/jobs", body.toString());
    assertEquals(400, answer.statusCode());
    JsonNode problem = Served.tree(answer);
    assertEquals("/problems/doubtful", problem.get("type").asText(), problem::toString);
    JsonNode fault = problem.get("faults").get(0);
    assertEquals("specification.upperLimitMm", fault.get("field").asText());
    assertTrue(fault.get("allowed").asText().contains("confirmed: true"), fault::toString);
    body.put("confirmed", true);
    assertEquals(201, shop.served.post("/api/jobs", body.toString()).statusCode());
  }
}
