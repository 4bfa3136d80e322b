package org.chordlog.store;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * Where the database of a plant is and as whom to sign in there. {@code password} is asked for at
 * each connection, so that it may be replaced while the program runs. {@code trusted} holds the
 * certificates (PEM) of who issued the server's; null: those that Java trusts.
 */
public record PlantAddress(
    List<Host> hosts,
    String database,
    String user,
    Supplier<String> password,
    @Nullable Path trusted) {
  private static final String FORM = "postgresql://HOST[:PORT][,HOST[:PORT]…]/DATABASE";
  private static final int USUAL_PORT = 5_432;
  private static final Pattern URL =
      Pattern.compile("(?:jdbc:)?postgres(?:ql)?://([^/?]+)/([A-Za-z0-9_.-]+)");
  private static final Pattern HOST =
      Pattern.compile("([A-Za-z0-9._-]+|\\[[0-9A-Fa-f:.]+])(?::([0-9]{1,5}))?");

  /** One computer of the database's cluster. */
  public record Host(String name, int port) {
    public Host {
      Check.within("port", port, 1, 65_535);
    }

    /** This computer itself, where nobody can listen on the way. */
    boolean isLoopback() {
      return name.equals("localhost")
          || name.matches("127(\\.[0-9]{1,3}){3}")
          || name.equals("[::1]");
    }

    @Override
    public String toString() {
      return name + ":" + port;
    }
  }

  public PlantAddress {
    hosts = List.copyOf(hosts);
    Check.text("user", user);
  }

  /** {@code url}: postgresql://HOST:PORT/DATABASE, with several hosts where one may take over. */
  public static PlantAddress of(
      String url, String user, Supplier<String> password, @Nullable Path trusted) {
    refuseSecret(url);
    Matcher parts = URL.matcher(url);
    if (!parts.matches()) {
      throw new BadInput("database", "'" + url + "'", "is not the URL of a database", FORM);
    }
    List<Host> hosts =
        Arrays.stream(parts.group(1).split(",", -1)).map(PlantAddress::host).toList();
    return new PlantAddress(hosts, parts.group(2), user, password, trusted);
  }

  /** Without repeating it. */
  private static void refuseSecret(String url) {
    if (url.contains("@") || url.contains("?")) {
      throw new BadInput(
          "database",
          "the URL",
          "holds a user, a password or settings",
          FORM + "; the user and the file of the password are settings of their own");
    }
  }

  private static Host host(String text) {
    Matcher parts = HOST.matcher(text);
    if (!parts.matches()) {
      throw new BadInput("database", "'" + text + "'", "is not a host", FORM);
    }
    return new Host(
        parts.group(1), parts.group(2) == null ? USUAL_PORT : Integer.parseInt(parts.group(2)));
  }

  /** Whether every host is this computer: then TLS is not required. */
  public boolean loopback() {
    return hosts.stream().allMatch(Host::isLoopback);
  }

  /** For people and for JDBC after "jdbc:"; no secret. */
  public String url() {
    return hosts.stream()
        .map(Host::toString)
        .collect(Collectors.joining(",", "postgresql://", "/" + database));
  }

  @Override
  public String toString() {
    return user + " at " + url();
  }
}
