package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.Test;

/** A form that was loaded before somebody else changed the job, in a real browser. */
final class StaleFormPageTest extends ShopTest {
  private static final String LIMIT = "[name='specification.lowerLimitMm']";

  private static void anotherTightensTheLimit(long job) throws Exception {
    ObjectNode body = (ObjectNode) shop.served.json("/api/jobs/" + job);
    body.remove(List.of("id", "currentLot", "revision", "version", "state", "openedAt"));
    body.remove(List.of("sectionWords", "planWords"));
    body.remove(List.of("active", "readings"));
    ((ObjectNode) body.get("specification")).put("lowerLimitMm", 1_795);
    body.put("why", "customer asked").put("confirmed", true);
    assertEquals(200, shop.served.put("/api/jobs/" + job, body.toString()).statusCode());
  }

  @Test
  void theFormSaysWhatChangedAndKeepsWhatWasTyped() throws Exception {
    long job = shop.jobId("Canopy hoops");
    shop.go("/job-form.html?job=" + job);
    shop.sees("h1", "Change Canopy hoops");
    shop.fillNamed("materialLot", "lot 77");
    shop.fillNamed("why", "another lot");
    anotherTightensTheLimit(job);
    shop.press("Save");
    shop.sees(".fault.general", "Lower limit (LSL) was 1788 mm, is now 1795 mm");
    shop.refusalsWereMeant();
    assertEquals("lot 77", shop.find("[name='materialLot']").getDomProperty("value"));
    assertEquals("1795", shop.find(LIMIT).getDomProperty("value"));
    shop.press("Save");
    Await.until(() -> shop.page.getCurrentUrl().contains("/job.html"));
    Job kept = shop.served.store.jobs().find(job).orElseThrow();
    assertEquals("lot 77", kept.materialLot());
    assertEquals(1_795.0, kept.specification().lowerLimitMm());
    assertTrue(shop.served.get("/api/changes").body().contains("customer asked"));
  }
}
