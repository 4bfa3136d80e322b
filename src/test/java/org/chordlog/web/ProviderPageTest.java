package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.account.Role;
import org.chordlog.store.Accounts.Person;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;

/** People sign in at npm's oidc-provider, in the browser, from the first page to the record. */
final class ProviderPageTest extends BrowserTest {
  @TempDir static Path folder;
  private static OpenIdProcess provider;
  private static Served served;

  @BeforeAll
  static void serve() throws Exception {
    int port = free();
    provider = OpenIdProcess.start(folder, port);
    Path settings = OpenIdSettingsFile.written(folder, provider.issuer());
    Reach reach = Reach.PLAIN.withProvider(settings);
    served = new Served(folder.resolve("data"), WebSettings.onLoopback(port).reached(reach));
    var unused = new ShopPeople(served).signedIn("Boss", Role.ADMINISTRATOR);
    served.job();
  }

  private static int free() throws Exception {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  @AfterAll
  static void close() {
    if (served != null) {
      served.close();
    }
    if (provider != null) {
      provider.close();
    }
  }

  @BeforeEach
  void nobodyIsSignedIn() {
    SharedBrowser.signOut();
    browser.get("http://localhost:" + served.web.port() + "/sign-in.html");
  }

  private static void click(By by) throws Exception {
    Await.until(() -> done(by, WebElement::click), browser::getCurrentUrl);
  }

  private static void type(String name, String text) throws Exception {
    Await.until(() -> done(By.name(name), field -> field.sendKeys(text)), browser::getCurrentUrl);
  }

  /** What is done with an element. */
  private interface Act {
    void on(WebElement element);
  }

  private static boolean done(By by, Act act) {
    List<WebElement> found = browser.findElements(by);
    try {
      found.stream().findFirst().ifPresent(act::on);
      return !found.isEmpty();
    } catch (StaleElementReferenceException e) {
      return false; // the page has changed meanwhile
    }
  }

  private static void signIn(String login) throws Exception {
    click(By.id("provider"));
    type("login", login);
    type("password", "any");
    click(By.cssSelector("button.login-submit"));
    click(By.xpath("//button[normalize-space()='Continue']"));
  }

  private static void sees(By by, String words) throws Exception {
    Await.until(
        () -> browser.findElements(by).stream().anyMatch(each -> each.getText().contains(words)),
        () -> browser.getCurrentUrl() + browser.findElement(By.tagName("body")).getText());
  }

  private static List<Person> known() {
    return served.web.entrance().people().all().stream()
        .filter(each -> !each.secrets().identity().isEmpty())
        .toList();
  }

  @Test
  void whoSignsInAtTheProviderWorksUnderThatNameWithTheRolesOfTheGroups() throws Exception {
    browser.get("http://localhost:" + served.web.port() + "/jobs.html?state=open");
    sees(By.id("provider"), "plant's directory");
    SignInPageTest.picture("sign-in-provider");
    signIn("quinn");
    sees(By.id("signed-in"), "Quinn Frost");
    assertTrue(browser.getCurrentUrl().endsWith("/jobs.html?state=open"), browser.getCurrentUrl());
    assertEquals(
        Set.of("OPERATOR", "QUALITY", "GAUGE_KEEPER"),
        known().stream()
            .filter(each -> each.name().equals("Quinn Frost"))
            .findFirst()
            .orElseThrow()
            .roles());
    String record = served.store.changes().about("account Quinn Frost").toString();
    assertTrue(record.contains(provider.issuer().toString()), record);
  }

  @Test
  void aSecondTimeItIsTheSameAccountAndADisabledOneIsRefused() throws Exception {
    signIn("ann");
    sees(By.id("signed-in"), "Ann Arbor");
    long id =
        known().stream()
            .filter(each -> each.name().equals("Ann Arbor"))
            .findFirst()
            .orElseThrow()
            .id();
    int people = served.web.entrance().people().all().size();
    click(By.id("sign-out"));
    click(By.id("provider"));
    sees(By.id("signed-in"), "Ann Arbor");
    assertEquals(people, served.web.entrance().people().all().size());
    var unused = served.web.entrance().people().disable(id, true, "a test");
    served.web.entrance().endOf(id);
    browser.get("http://localhost:" + served.web.port() + "/sign-in.html");
    click(By.id("provider"));
    sees(By.cssSelector(".fault.general"), "is disabled");
    var again = served.web.entrance().people().disable(id, false, "a test");
    assertEquals(id, again.id());
  }

  @Test
  void whoHasNoGroupWithARoleIsToldSo() throws Exception {
    signIn("guest");
    sees(By.cssSelector(".fault.general"), "none of your groups has a role here");
    SignInPageTest.picture("sign-in-refused");
    assertTrue(known().stream().noneMatch(each -> each.name().equals("Gus Guest")));
  }
}
