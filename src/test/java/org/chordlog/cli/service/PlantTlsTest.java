package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.util.List;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.harness.Openssl;
import org.chordlog.harness.PostgresServer;
import org.chordlog.harness.Ran;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.PlantAddress.Host;
import org.chordlog.store.PlantAdmin;
import org.chordlog.store.StoreException;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.trust.SecretFile;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The way to a plant's database by TLS, with a real server and certificates of invented issuers.
 */
@Tag("slow")
final class PlantTlsTest {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final String SECRET = "of an invented plant";
  @TempDir static Path keys;
  private static PostgresServer server;
  private static String url;
  private static PlantAdmin admin;
  private static String readerLogin;

  @TempDir Path directory;
  private PlantFiles files;

  @BeforeAll
  static void plant() throws Exception {
    Openssl openssl = new Openssl(keys);
    for (String issuer : List.of("works", "others")) {
      openssl.issuer(issuer);
    }
    openssl.issued("right", "works", 30, "ec");
    openssl.issued("foreign", "others", 30, "ec");
    openssl.issued("elsewhere", "works", 30, "ec", "DNS:elsewhere.example");
    openssl.issued("ended", "works", -1, "ec", "DNS:localhost,IP:127.0.0.1");
    server = PostgresServer.fresh("-c", "fsync=off");
    url = "postgresql://localhost:" + server.port() + "/" + server.database();
    admin = Stores.plantAdmin(PlantAddress.of(url, PostgresServer.SUPERUSER, () -> "", null));
    int unused = admin.create();
    readerLogin = admin.addReader("pages", SECRET);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @BeforeEach
  void settings() throws Exception {
    String edge = "hall " + directory.getFileName();
    files =
        new PlantFiles(
            directory,
            new PlantFiles.Logins(
                url, edge, admin.addEdge(edge, "Main works", SECRET), readerLogin));
    Files.copy(keys.resolve("works.pem"), directory.resolve("issuers.pem"));
    files.password(SECRET, "rw-------");
    files.write("trustedCertificates: issuers.pem");
  }

  /** A service that delivers, as {@code serve} runs it. */
  private Service service() {
    Service service =
        Service.start(
            directory,
            StoreSettings.USUAL,
            List.of(),
            WebSettings.onLoopback(0),
            StationKeeper.forThisRun());
    service.deliver(Objects.requireNonNull(Service.plantOf(directory)));
    return service;
  }

  private static String get(int port, String path) throws Exception {
    URI uri = URI.create("http://127.0.0.1:" + port + path);
    return CLIENT.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString()).body();
  }

  private static void awaitHealth(Service service, String words) throws Exception {
    Await.until(
        () -> get(service.port(), "/health").contains(words), () -> get(service.port(), "/health"));
  }

  private static boolean encrypted(String user) throws Exception {
    try (Connection connection = server.connect("postgres");
        ResultSet row =
            connection
                .createStatement()
                .executeQuery(
                    "SELECT bool_and(s.ssl) FROM pg_stat_ssl s JOIN pg_stat_activity USING (pid)"
                        + " WHERE usename = '"
                        + user
                        + "'")) {
      return row.next() && row.getBoolean(1);
    }
  }

  @Test
  void aServerWithTheRightCertificateIsDeliveredToAndShown() throws Exception {
    server.tls().use(keys.resolve("right.pem"));
    assertEquals(0, files.check().code(), files.check().out());
    assertEquals(0, files.create().code(), files.create().err());
    try (Service service = service()) {
      awaitHealth(service, "\"COMPLETE\"");
      assertTrue(encrypted(files.logins().edgeLogin()));
      SecretFile secret = new SecretFile("--password-file", directory.resolve("password"));
      PlantAddress address =
          PlantAddress.of(url, readerLogin, secret::read, directory.resolve("issuers.pem"));
      try (PlantService pages =
          PlantService.start(Stores.openPlant(address), WebSettings.onLoopback(0))) {
        assertTrue(get(pages.port(), "/api/plant").contains(files.logins().edge()));
        assertTrue(encrypted(readerLogin));
      }
    }
  }

  /** Each place says the same, with the name that the setting has there. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "foreign   | at localhost was issued by CN=others, who is not among those in SETTING (FILE)",
        "elsewhere | at localhost is for elsewhere.example: the URL of the database must name the"
            + " server as its certificate does (SETTING vouches for the issuer alone)",
        "ended     | : the server needs a new one; one of the same issuer needs no change of SETTING"
      })
  void anotherCertificateIsRefusedInWords(String certificate, String words) throws Exception {
    server.tls().use(keys.resolve(certificate + ".pem"));
    refusedEverywhere(words.replace("FILE", directory.resolve("issuers.pem").toString()));
  }

  private void refusedEverywhere(String words) throws Exception {
    String atEdge = words.replace("SETTING", "trustedCertificates");
    String elsewhere = words.replace("SETTING", "--database-certificates");
    Ran checked = files.check();
    assertEquals(1, checked.code());
    assertTrue(checked.out().contains(atEdge), checked.out());
    assertTrue(checked.out().contains("\nNOT WELL: "), checked.out());
    for (Ran ran : List.of(files.serve(), files.create())) {
      assertEquals(1, ran.code());
      assertTrue(ran.err().contains(elsewhere), ran.err());
      assertEquals(1, ran.err().lines().count(), ran.err());
    }
    try (Service service = service()) {
      awaitHealth(service, atEdge);
      assertTrue(get(service.port(), "/health").contains("\"REFUSED\""));
    }
  }

  @Test
  void aServerWithoutTlsIsRefusedInWords() throws Exception {
    server.tls().refuse();
    refusedEverywhere("offers no TLS");
    refusedEverywhere("nor where SETTING is given: set ssl = on at the server");
  }

  /** To this computer itself TLS is not needed, unless the server asks for it. */
  @Test
  void aServerThatTakesTlsAloneSaysWhichSettingIsMissing() throws Exception {
    server.tls().use(keys.resolve("right.pem"));
    files.write("");
    Ran checked = files.check();
    assertEquals(1, checked.code());
    assertTrue(
        checked.out().contains("TLS to this computer itself needs trustedCertificates"),
        checked.out());
  }

  @Test
  void anIssuerWhomJavaDoesNotTrustIsRefusedWithoutTheSetting() throws Exception {
    server.tls().use(keys.resolve("right.pem"));
    Host written = new Host("127.1", server.port()); // not known as this computer itself
    PlantAddress address =
        new PlantAddress(List.of(written), "postgres", readerLogin, () -> SECRET, null);
    StoreException e = assertThrows(StoreException.class, () -> Stores.openPlant(address));
    String words = "issued by CN=works, whom Java does not trust: --database-certificates takes";
    assertTrue(String.valueOf(e.getMessage()).contains(words), e::getMessage);
  }

  /** The server gets a certificate of another issuer; the file of issuers follows. */
  @Test
  void aRenewedFileOfIssuersIsUsedFromTheNextConnectionOn() throws Exception {
    server.tls().use(keys.resolve("right.pem"));
    try (Service service = service()) {
      awaitHealth(service, "\"COMPLETE\"");
      server.tls().use(keys.resolve("foreign.pem"));
      awaitHealth(service, "\"COMPLETE\"");
      endConnections();
      awaitHealth(service, "issued by CN=others, who is not among those in trustedCertificates");
      replaceIssuers("nothing that is a certificate");
      awaitHealth(service, "can't be read as certificates");
      replaceIssuers(
          Files.readString(keys.resolve("works.pem"))
              + Files.readString(keys.resolve("others.pem")));
      awaitHealth(service, "\"COMPLETE\"");
    }
  }

  private void replaceIssuers(String pem) throws Exception {
    Path made = Files.writeString(directory.resolve("issuers.new"), pem);
    Files.move(made, directory.resolve("issuers.pem"), StandardCopyOption.REPLACE_EXISTING);
  }

  private void endConnections() {
    server.execute(
        "postgres",
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = '%s'"
            .formatted(files.logins().edgeLogin()));
  }

  /** Before the start as a mistake in the file, afterwards as what waits for somebody. */
  @Test
  void aFileOfThePasswordThatCantBeUsedIsSaid() throws Exception {
    server.tls().use(keys.resolve("right.pem"));
    try (Service service = service()) {
      awaitHealth(service, "\"COMPLETE\"");
      files.password(SECRET, "rw-r--r--");
      refusedPassword(service, "can be read by every user of this computer");
      files.password("", "rw-------");
      refusedPassword(service, "holds no secret of one line");
      Files.delete(directory.resolve("password"));
      refusedPassword(service, "does not exist");
      files.password("of another plant", "rw-------");
      endConnections();
      awaitHealth(service, "refuses the user or the password in plant.yaml");
      assertTrue(
          files.check().out().contains("refuses the user or the password"), files.check().out());
      assertTrue(
          files.serve().err().contains("refuses the user or the password"), files.serve().err());
      files.password(SECRET, "rw-------");
      awaitHealth(service, "\"COMPLETE\"");
    }
  }

  private void refusedPassword(Service service, String words) throws Exception {
    endConnections();
    awaitHealth(service, words);
    Ran checked = files.check();
    assertEquals(2, checked.code());
    assertTrue(
        checked.err().contains("passwordFile") && checked.err().contains(words), checked.err());
    Ran served = files.serve();
    assertEquals(2, served.code());
    assertTrue(
        served.err().contains("--password-file") && served.err().contains(words), served.err());
  }
}
