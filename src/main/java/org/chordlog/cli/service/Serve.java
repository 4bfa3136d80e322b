package org.chordlog.cli.service;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.chordlog.account.People;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.station.ServiceOptions;
import org.chordlog.measure.BadInput;
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
  @Spec private CommandSpec spec;

  @Mixin private StationsOptions stations = new StationsOptions();

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
      defaultValue = "" + WebSettings.USUAL_EVENT_CLIENTS,
      paramLabel = "N",
      description = "Most pages that listen at once (${DEFAULT-VALUE}).")
  private int eventClients;

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
    OutOfMemory.endsTheProgram();
    boolean open = !WebSettings.isLoopback(host);
    Reach way = reach.reach(open && tokenFile == null);
    if (open) {
      reach.refusePlain(host);
    }
    WebSettings web =
        new WebSettings(
            host,
            port,
            token(),
            eventClients,
            clientsOfOne(),
            WebSettings.USUAL_REQUEST_BYTES,
            way);
    if (plant.given()) {
      return servePlant(web);
    }
    plant.refuseWithout();
    Service service = stations.start(web);
    return runs(service, service.port(), service.entrance().people(), way);
  }

  private int servePlant(WebSettings web) throws InterruptedException {
    stations.refuseWithPlant();
    PlantService.Alerts watched = PlantService.Alerts.usual(plant.silent(), stations.alerts());
    PlantService service = PlantService.start(Stores.openPlant(plant.address()), web, watched);
    return runs(service, service.port(), service.entrance().people(), web.reach());
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
