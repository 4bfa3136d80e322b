package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What is seen of a machine: whether it moved, its jobs together, its corrections. */
final class MachinePagesTest extends ShopTest {

  @Test
  void maintenanceSeesWhichMachineMovedAndSinceWhen() throws Exception {
    shop.go("/machines.html");
    shop.sees("#machines", "Machine jumped at piece");
    assertTrue(shop.text("#machines > section:first-child").contains("roller 2"));
    shop.click("#machines a");
    shop.sees("h1", "roller 2");
    shop.counts(".picture svg", 3);
    shop.sees("section", "It began on");
    shop.sees("table", "Door frame arches");
    String card = shop.text(".machine-card");
    assertEquals(card.indexOf("locked out"), card.lastIndexOf("locked out"), "said once: " + card);
  }

  @Test
  void shortJobsOfAMachineAreSeenTogetherAndAPointLeadsToItsJob() throws Exception {
    shop.go("/machine.html?machine=roller%201");
    shop.sees("[aria-label='Short runs']", "how far it lies from the target of its own job");
    shop.sees("[aria-label='Short runs'] [data-figure='n']", "212");
    shop.sees("[aria-label='Short runs'] svg", "Standardised deviation chart");
    shop.choose("kind", "ewma");
    shop.sees("[aria-label='Short runs'] svg", "EWMA chart");
    shop.choose("jobs", "5");
    shop.choose("basis", "deviation");
    shop.sees("[aria-label='Short runs'] dl", "Mean, mm");
    WebElement chart = shop.find("[aria-label='Short runs'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.END, Keys.ENTER);
    shop.sees("[aria-label='Short runs'] p a", "Handrail 42.4");
  }

  @Test
  void correctionsAndJobChangesStandOnTheMachinesChart() throws Exception {
    shop.go("/machine.html?machine=roller%201");
    shop.sees("[aria-label='Drift'] svg", "Correction");
    shop.sees("[aria-label='Drift'] svg", "Handrail 42.4");
    WebElement chart = shop.find("[aria-label='Drift'] .picture");
    shop.page.executeScript("arguments[0].focus()", chart);
    chart.sendKeys(Keys.HOME);
    shop.sees(".callout", "Job Canopy hoops begins");
    chart.sendKeys(Keys.ARROW_RIGHT);
    shop.sees(".callout", "Correction: 25.58 to 25.67; crept up since piece 45");
  }
}
