package org.chordlog.notify.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.MailServer.Encryption;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Person;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The file of alerts: what a good one makes, and one message for each fault, with its place. */
final class AlertFileTest {
  private static final String GOOD =
      """
      site: Invented shop
      pages: https://chordlog.shop.example
      timeZone: Europe/London
      unit: inch
      shifts:
        - name: early
          days: [monday, friday]
          from: 06:00
          to: 14:00
        - {name: night, from: 22:00, to: 06:00}
      quietHours: {from: "20:00", to: "05:00"}
      people:
        - {name: A. Fitter, mail: fitter@shop.example, shifts: [early]}
        - {name: B. Keeper, mail: keeper@shop.example}
      groups:
        - {name: fitters, audiences: [maintenance, operator], people: [A. Fitter]}
        - {name: office, audiences: [gauge_keeper], last: true, people: [B. Keeper]}
      escalation:
        high: {secondMinutes: 10}
      daily: {at: "06:45", people: [B. Keeper]}
      mail:
        host: mail.shop.example
        from: chordlog@shop.example
        user: chordlog
        passwordFile: password
      webhooks:
        - name: maintenance system
          url: https://cmms.shop.example/hook
          secretFiles: [new, old]
      """;

  @TempDir Path folder;

  @BeforeEach
  void secrets() throws Exception {
    secret("password", "a secret");
    secret("new", "whsec_bmV3IGludmVudGVkIHNlY3JldCBvZiBhIHRlc3QhISE=");
    secret("old", "whsec_b2xkIGludmVudGVkIHNlY3JldCBvZiBhIHRlc3QhISE=");
  }

  private Path secret(String name, String text) throws Exception {
    Path file = Files.writeString(folder.resolve(name), text + "\n");
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
  }

  private AlertSettings read(String yaml) throws Exception {
    return AlertFile.read(Files.writeString(folder.resolve("alerts.yaml"), yaml));
  }

  private String refusal(String yaml) {
    return String.valueOf(assertThrows(BadInput.class, () -> read(yaml)).getMessage());
  }

  @Test
  void aGoodFileIsUnderstood() throws Exception {
    AlertSettings all = read(GOOD);
    assertEquals("https://chordlog.shop.example/alerts.html", all.site().link("alerts.html"));
    assertEquals(Lengths.INCH, all.site().lengths());
    assertEquals(ZoneId.of("Europe/London"), all.roster().zone());
    List<Group> groups = all.roster().groups();
    Person fitter = groups.get(0).people().get(0);
    assertEquals(LocalTime.of(14, 0), fitter.shifts().get(0).to());
    assertEquals(2, fitter.shifts().get(0).days().size());
    assertEquals(List.of(), groups.get(1).people().get(0).shifts());
    assertEquals(true, groups.get(1).last());
    assertEquals(
        Duration.ofMinutes(10),
        Objects.requireNonNull(all.roster().escalation().waits().get(AlertPriority.HIGH)).second());
    assertEquals(LocalTime.of(6, 45), all.daily().at());
    assertEquals(groups.get(1).people(), all.daily().people());
    assertEquals(Set.of(AlertAudience.QUALITY, AlertAudience.ADMINISTRATOR), all.unanswered());
    MailServer mail = Objects.requireNonNull(all.mail());
    assertEquals("mail.shop.example:587", mail.place());
    assertEquals(Encryption.STARTTLS, mail.encryption());
    assertEquals("a secret", Objects.requireNonNull(mail.account()).password().read());
    Webhook webhook = all.webhooks().get(0);
    assertEquals(2, webhook.secrets().size());
  }

  @Test
  void aNameOfDigitsIsTakenAsItWasWritten() throws Exception {
    AlertSettings all = read(GOOD.replace("A. Fitter", "010").replace("fitters", "1e3"));
    Group group = all.roster().groups().get(0);
    assertEquals("1e3", group.name());
    assertEquals("010", group.people().get(0).name());
  }

  @Test
  void whatIsNotGivenIsAsUsual() throws Exception {
    AlertSettings few =
        read(
            """
            site: Shop
            pages: http://127.0.0.1:8080/
            timeZone: UTC
            people: [{name: A, mail: a@shop.example}]
            groups: [{name: all, last: true, people: [A]}]
            mail: {host: localhost, encryption: none, from: c@shop.example}
            """);
    assertEquals(Lengths.MM, few.site().lengths());
    assertEquals(null, few.roster().quiet());
    assertEquals(LocalTime.of(7, 0), few.daily().at());
    assertEquals(1, few.daily().people().size());
    assertEquals(25, Objects.requireNonNull(few.mail()).port());
    assertEquals(List.of(), few.webhooks());
  }

  /** What is changed in the good file, what it becomes, and how the message begins. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "site: Invented shop|sites: Shop|sites: \"Shop\" has no such key (line 1 column 1 of alerts.yaml)",
        "Europe/London|Europe/Nowhere|timeZone: Europe/Nowhere is not a time zone (line 3 column",
        "https://chordlog.shop.example|chordlog|pages: chordlog is not the address of pages (line 2",
        "unit: inch|unit: foot|unit: 'foot' is not understood here (line 4 column",
        "days: [monday|days: [moonday|shifts[0].days[0]: 'moonday' is not understood here (line 7",
        "from: 06:00|from: 6 am|shifts[0].from: '6 am' is not a time of day (line 8 column",
        "to: 14:00|until: 14:00|shifts[0].until: \"14:00\" has no such key (line 9 column",
        "name: night|name: early|shifts[1].name: early is taken (line 10 column",
        "fitter@shop.example|fitter.shop.example|people[0].mail: 'fitter.shop.example' is not a mail",
        "shifts: [early]|shifts: [evening]|people[0].shifts: evening is not a name under shifts (line 13",
        "people: [A. Fitter]|people: [C. Nobody]|groups[0].people: C. Nobody is not a name under people",
        "[gauge_keeper]|[janitor]|groups[1].audiences[0]: 'janitor' is not understood here (line 17",
        "secondMinutes: 10|secondMinutes: 300|escalation.high.lastMinutes: 240 is not after secondMinutes",
        "secondMinutes: 10|secondMinutes: ten|escalation.high.secondMinutes: 'ten' is not understood here",
        "\"06:45\"|soon|daily.at: 'soon' is not a time of day (line 20",
        "host: mail.shop.example|port: 587|mail.host is missing (line 21",
        "host: mail.shop.example|host: 'a b'|mail.host: 'a b' is not a host (line 22",
        "from: chordlog@shop.example|from: nobody|mail.from: 'nobody' is not a mail address (line 23",
        "user: chordlog|port: 0|mail.user is missing (line",
        "passwordFile: password|passwordFile: none|mail.passwordFile: FOLDER/none does not exist (line 25",
        "passwordFile: password|passwordFile: credential:smtp|mail.passwordFile: credential:smtp was not handed",
        "https://cmms|http://cmms|webhooks[0].url: http://cmms.shop.example/hook is not an address that may",
        "[new, old]|[new, old, new]|webhooks[0].secretFiles: 3 is not how many secrets there may be (line",
        "[new, old]|[password]|webhooks[0].secretFiles: FOLDER/password holds no secret of a webhook (line",
        "[new, old]|[]|webhooks[0].secretFiles: 0 is not how many secrets there may be",
      })
  void aFaultIsToldOnceWithKeyValueAndPlace(String good, String bad, String told) {
    assertTrue(GOOD.contains(good), good);
    String said = refusal(GOOD.replace(good, bad));
    String expected = told.replace("FOLDER", folder.toString());
    assertTrue(said.lines().anyMatch(line -> line.startsWith(expected)), said);
    assertTrue(said.lines().allMatch(line -> line.contains("; allowed: ")), said);
  }

  @Test
  void faultsAreToldAllTogether() {
    String said =
        refusal(GOOD.replace("Europe/London", "Mars").replace("early]", "x]").replace("587", "1"));
    assertEquals(2, said.lines().count(), said);
  }

  @Test
  void aSecretThatOthersMayReadIsRefused() throws Exception {
    Path file = folder.resolve("password");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    String said = refusal(GOOD);
    assertTrue(
        said.startsWith(
            "mail.passwordFile: " + file + " can be read by every user of this computer (line 25"),
        said);
    assertTrue(said.endsWith("allowed: chmod 640 " + file), said);
  }

  @Test
  void peopleNeedAServerAndSomebodyMustBeTold() {
    String lonely = GOOD.substring(0, GOOD.indexOf("mail:\n"));
    assertTrue(
        refusal(lonely).startsWith("mail is missing (in alerts.yaml); allowed: the server"),
        lonely);
    String nobody = "site: Shop\npages: http://localhost/\ntimeZone: UTC\n";
    assertTrue(
        refusal(nobody)
            .startsWith("people is missing (in alerts.yaml); allowed: people with mail, or"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "site: [|is not YAML",
        "- a list|holds no keys",
        "site: a\\nsite: b|is not YAML",
        "''|holds no keys"
      })
  void whatIsNoSuchFileIsRefused(String text, String told) {
    String said = refusal(text.replace("\\n", "\n"));
    assertTrue(said.startsWith("alerts: "), said);
    assertTrue(said.contains(told), said);
  }

  @Test
  void aFileThatDoesNotExistIsSaid() {
    Path none = folder.resolve("none.yaml");
    BadInput e = assertThrows(BadInput.class, () -> AlertFile.read(none));
    assertTrue(e.toString().contains("none.yaml does not exist"), e::toString);
  }
}
