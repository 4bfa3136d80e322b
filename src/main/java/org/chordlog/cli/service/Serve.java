package org.chordlog.cli.service;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.chordlog.account.People;
import org.chordlog.cli.common.DataPlace;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.station.ServiceOptions;
import org.chordlog.forward.PlantSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.settings.AlertFile;
import org.chordlog.station.StationFile;
import org.chordlog.station.StationKeeper;
import org.chordlog.station.StationSettings;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.web.http.Reach;
import org.chordlog.web.http.WebSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs the service until it is told to stop. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description =
        "Reads the stations, keeps their readings and serves the pages until stopped. Without any"
            + " station the first page leads to one.",
    footer = {
      "",
      "SIGTERM or Ctrl-C stops it cleanly. Beyond 127.0.0.1 people sign in; the first"
          + " start prints the code of the first administrator. It takes a certificate with its"
          + " key there, so that passwords travel encrypted, or --unencrypted."
    })
public final class Serve implements Callable<Integer> {
  private static final String STATION_FILE = "stations.yaml";
  private static final int EVENT_CLIENTS = 32;
  private static final int REQUEST_BYTES = 65_536;

  @Spec private CommandSpec spec;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Data directory (chordlog in the user's own data folder).")
  private @Nullable Path data;

  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Station file (stations.yaml in the data directory; the pages make it).")
  private @Nullable Path config;

  @Option(
      names = "--port",
      defaultValue = "8080",
      paramLabel = "N",
      description = "Port of the pages, 0 for any free one (${DEFAULT-VALUE}).")
  private int port;

  @Option(
      names = "--host",
      defaultValue = WebSettings.LOOPBACK,
      paramLabel = "ADDRESS",
      description = "Address to bind (${DEFAULT-VALUE}: this computer only).")
  private String host;

  @Option(
      names = "--token-file",
      paramLabel = "FILE",
      description = "One token for all changes, in place of accounts; reading needs none then.")
  private @Nullable Path tokenFile;

  @Mixin private ReachOptions reach = new ReachOptions();

  @Mixin private PlantOptions plant = new PlantOptions();

  @Option(
      names = "--event-clients",
      defaultValue = "" + EVENT_CLIENTS,
      paramLabel = "N",
      description = "Most pages that listen at once (${DEFAULT-VALUE}).")
  private int eventClients;

  @Option(
      names = "--trace-days",
      defaultValue = "30",
      paramLabel = "N",
      description = "Days that raw samples are kept, 0: for ever (${DEFAULT-VALUE}).")
  private int traceDays;

  @Option(
      names = "--seal-key",
      paramLabel = "FILE",
      description =
          "Keep the key that signs the record in this file outside of the data directory; also"
              + " without this option from then on.")
  private @Nullable Path sealKey;

  @Option(
      names = "--alerts",
      paramLabel = "FILE",
      description =
          "Who is told of alerts, and how (alerts.yaml beside the station file; nobody is told"
              + " where there is none).")
  private @Nullable Path alerts;

  @Option(
      names = "--log-format",
      defaultValue = "text",
      paramLabel = "text|json",
      description = "Log lines as text, or each as a JSON object (${DEFAULT-VALUE}).")
  private LogFormat logFormat;

  @Option(names = "--json", description = "Tell the address as JSON.")
  private boolean json;

  @Override
  public Integer call() throws InterruptedException {
    logFormat.use();
    boolean open = !WebSettings.isLoopback(host);
    Reach way = reach.reach(open && tokenFile == null);
    if (open) {
      reach.refusePlain(host);
    }
    WebSettings web =
        new WebSettings(host, port, token(), eventClients, clientsOfOne(), REQUEST_BYTES, way);
    if (plant.given()) {
      return servePlant(web);
    }
    plant.refuseWithout();
    return serveStations(web);
  }

  private int serveStations(WebSettings web) throws InterruptedException {
    Path place = data == null ? DataPlace.usual() : data;
    Path file = config == null ? place.resolve(STATION_FILE) : config;
    List<StationSettings> stations = stations(file);
    if (sealKey != null) {
      Stores.files(place).sealKeyAt(sealKey);
    }
    @Nullable AlertSource told = told(file);
    @Nullable PlantSettings deliveredTo = Service.plantOf(place);
    Service service =
        Service.start(
            place,
            StoreSettings.USUAL.withTraceDays(traceDays),
            stations,
            web,
            StationKeeper.file(file));
    if (told != null) {
      service.tell(told);
    }
    if (deliveredTo != null) {
      service.deliver(deliveredTo);
    }
    return runs(service, service.port(), service.entrance().people(), web.reach());
  }

  /** What is measured at the plant's workshop computers; this one measures nothing then. */
  private int servePlant(WebSettings web) throws InterruptedException {
    refuseWithPlant("--data", data);
    refuseWithPlant("--config", config);
    refuseWithPlant("--seal-key", sealKey);
    refuseWithPlant("--alerts", alerts);
    PlantService service = PlantService.start(Stores.openPlant(plant.address()), web);
    return runs(service, service.port(), service.entrance().people(), web.reach());
  }

  private static void refuseWithPlant(String option, @Nullable Path given) {
    if (given != null) {
      throw new BadInput(
          option, given, "means nothing with --plant", "a service of its own for the stations");
    }
  }

  /** Until it is told to stop. */
  private int runs(AutoCloseable service, int boundPort, People people, Reach way)
      throws InterruptedException {
    Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(service), "stop"));
    tell(boundPort);
    if (way.accounts()) {
      new FirstAccount(people).tell(spec.commandLine().getOut(), json);
      warnOfPlainPasswords(way);
    }
    new CountDownLatch(1).await();
    return ExitCode.WELL;
  }

  private static void stop(AutoCloseable service) {
    try {
      service.close();
    } catch (Exception e) {
      throw new IllegalStateException("the service did not stop well", e);
    }
  }

  /** Beyond this computer, one device leaves half of the places to the others. */
  private int clientsOfOne() {
    return host.equals(WebSettings.LOOPBACK) ? eventClients : Math.max(1, eventClients / 2);
  }

  /** None where nobody named a file and none was made yet: the pages lead to the first one. */
  private List<StationSettings> stations(Path file) {
    return config == null && Files.notExists(file) ? List.of() : StationFile.read(file);
  }

  /** Null where nobody named a file and there is none beside the station file. */
  private @Nullable AlertSource told(Path stationFile) {
    Path usual = stationFile.toAbsolutePath().resolveSibling(AlertFile.NAME);
    return alerts == null && Files.notExists(usual)
        ? null
        : AlertSource.read(alerts == null ? usual : alerts);
  }

  private String token() {
    if (tokenFile == null) {
      return "";
    }
    String token = ServiceOptions.read(tokenFile);
    if (token.length() < WebSettings.LEAST_TOKEN) {
      throw new BadInput(
          "--token-file",
          tokenFile,
          token.isEmpty() ? "is empty" : "holds a token that is too short",
          "at least " + WebSettings.LEAST_TOKEN + " characters, or no token file on 127.0.0.1");
    }
    return token;
  }

  private void warnOfPlainPasswords(Reach way) {
    if (way.tls() == null && way.proxies().isEmpty() && !WebSettings.isLoopback(host)) {
      spec.commandLine().getErr().println("Passwords travel unencrypted (--unencrypted).");
      spec.commandLine().getErr().flush();
    }
  }

  private void tell(int boundPort) {
    String scheme = reach.encrypted() ? "https://" : "http://";
    String address = scheme + ShownAddress.of(host) + ":" + boundPort + "/";
    PrintWriter out = spec.commandLine().getOut();
    out.println(json ? "{\"address\":\"" + address + "\"}" : "Chordlog is at " + address);
    out.flush();
  }
}
