package org.chordlog.harness;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.chordlog.Patience;

/** The service in a process of its own, as a user starts it. */
public final class ServiceProcess implements Serving {
  private static final String PROGRAM = "org.chordlog.Main";
  private static final int KILLED = 128 + 9;

  /**
   * Options for a process that lives for seconds, most of which a full compiler would take: only
   * what runs three times as often as usual is compiled at all.
   */
  private static final List<String> BRIEF =
      List.of(
          "-XX:TieredStopAtLevel=1",
          "-XX:CompileThresholdScaling=3",
          "-XX:+UseSerialGC",
          "-XX:-UsePerfData");

  private final Process process;
  private final Path log;
  private final URI address;

  private ServiceProcess(Process process, Path log, URI address) {
    this.process = process;
    this.log = log;
    this.address = address;
  }

  /** The jar under test. */
  public static Path jar() {
    return Path.of(System.getProperty("chordlog.jar", "target/chordlog.jar")).toAbsolutePath();
  }

  /** {@code java} of this run, with those options of the virtual machine and that class path. */
  public static List<String> java(String classPath, String... options) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(options));
    command.addAll(List.of("-cp", classPath));
    return command;
  }

  /** {@code java} for a process that lives for seconds. */
  public static List<String> briefJava(String classPath, String... options) {
    List<String> command = java(classPath, options);
    command.addAll(1, BRIEF);
    return command;
  }

  /** {@code chordlog serve} from the jar on what the rig holds, and waits until it says where. */
  public static ServiceProcess serve(Rig rig, String... options) throws IOException {
    List<String> command = java(jar().toString(), options);
    command.add(PROGRAM);
    return start(serving(rig, command), rig.log());
  }

  /** The same for seconds. */
  static ServiceProcess serveBriefly(Rig rig, String... options) throws IOException {
    return start(serving(rig, briefJar(options)), rig.log());
  }

  /** {@code java -jar chordlog.jar} for seconds, with those options of the virtual machine. */
  public static List<String> briefJar(String... options) {
    List<String> command = briefJarAnd("", options);
    command.set(command.indexOf("-cp"), "-jar");
    return command;
  }

  /** With that behind the jar in the class path, and no class to start yet. */
  static List<String> briefJarAnd(String more, String... options) {
    List<String> command = briefJava(jar() + more, options);
    command.add(1, ClassArchive.option(jar(), BRIEF));
    return command;
  }

  static List<String> serving(Rig rig, List<String> program) {
    return Stream.concat(program.stream(), rig.serveArguments().stream()).toList();
  }

  /** Starts it and kills it after that time at the latest, wherever it then is in its start. */
  public static void killWhileStarting(Rig rig, long millis) throws Exception {
    Process process =
        Children.start(
            new ProcessBuilder(serving(rig, briefJar()))
                .redirectError(ProcessBuilder.Redirect.appendTo(rig.log().toFile()))
                .redirectOutput(ProcessBuilder.Redirect.DISCARD));
    if (process.waitFor(millis, TimeUnit.MILLISECONDS)) {
      throw new AssertionError("ended by itself: " + Files.readString(rig.log()));
    }
    process.destroyForcibly().waitFor();
  }

  /** Any command that prints the service's address as {@code serve --json} does. */
  public static ServiceProcess start(List<String> command, Path log) throws IOException {
    Process process =
        Children.start(
            new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.appendTo(log.toFile())));
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = said.readLine();
    if (line == null) {
      throw new NotStarted(Files.readString(log), null);
    }
    String address = line.replaceAll(".*\"(http[^\"]*)\".*", "$1");
    return new ServiceProcess(process, log, URI.create(address));
  }

  @Override
  public URI address() {
    return address;
  }

  public long pid() {
    return process.pid();
  }

  public boolean alive() {
    return process.isAlive();
  }

  /** What it has logged. */
  public String logged() throws IOException {
    return Files.readString(log);
  }

  /** A line on its standard input. */
  public void say(String line) throws IOException {
    OutputStream in = process.getOutputStream();
    in.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    in.flush();
  }

  public HttpResponse<String> post(String path, String body)
      throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(address.resolve(path))
            .timeout(Patience.now())
            .header("Content-Type", "application/json")
            .header("Chordlog-By", "harness")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build();
    return CLIENT.send(request, BodyHandlers.ofString());
  }

  /** Runs a command of the jar to its end; its exit code, and what it said on standard output. */
  public static Said run(String... arguments) throws IOException, InterruptedException {
    List<String> command = briefJar();
    command.addAll(List.of(arguments));
    Process process =
        Children.start(new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT));
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Said(process.waitFor(), out);
  }

  /** What a command left. */
  public record Said(int exitCode, String out) {}

  /** SIGKILL; nothing in the process runs after it. */
  public void kill() throws Exception {
    process.toHandle().destroyForcibly();
    awaitEnd(KILLED);
  }

  /** SIGTERM, as a service manager stops it. */
  public void stop() throws Exception {
    process.toHandle().destroy();
    awaitEnd(128 + 15);
  }

  private void awaitEnd(int status) throws Exception {
    Await.end(process);
    if (process.exitValue() != status) {
      throw new AssertionError("ended with " + process.exitValue() + " instead of " + status);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly().onExit().join();
  }
}
