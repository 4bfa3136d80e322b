package org.chordlog.store.postgres;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Properties;
import org.chordlog.store.PlantAddress;

/** Connections to the database of a plant. */
public final class PlantConnections {
  static final int LOGIN_SECONDS = 15;

  private static final String PATH = "edge, plant";

  private PlantConnections() {}

  /**
   * How long a statement may take at the server, and how long nothing may be heard of it before the
   * connection is given up, s; 0 is for ever.
   */
  record Limits(int statementSeconds, int silenceSeconds) {
    /** A batch may wait for a slow disk. */
    static final Limits DELIVERY = new Limits(50, 60);

    /** Somebody waits for the page. */
    static final Limits PAGES = new Limits(20, 25);

    /** A new index of many readings takes its time. */
    static final Limits SET_UP = new Limits(0, 0);
  }

  /**
   * One connection to the host that takes writes, which looks at the schema of edges first. {@code
   * name}: as what it is listed at the server.
   */
  public static Connection open(PlantAddress address, String name) throws SQLException {
    return open(address, name, Limits.DELIVERY);
  }

  static Connection open(PlantAddress address, String name, Limits limits) throws SQLException {
    return DriverManager.getConnection("jdbc:" + address.url(), settings(address, name, limits));
  }

  /**
   * Everything but the URL; with the password as it is now. Statements are planned for their
   * values, since a text that half of all jobs contain is found in another way than a rare one.
   */
  private static Properties settings(PlantAddress address, String name, Limits limits) {
    Properties settings = new Properties();
    settings.setProperty("user", address.user());
    settings.setProperty("password", address.password().get());
    settings.setProperty("ApplicationName", name);
    settings.setProperty("currentSchema", PATH);
    settings.setProperty("targetServerType", "primary");
    settings.setProperty("connectTimeout", "10");
    settings.setProperty("loginTimeout", String.valueOf(LOGIN_SECONDS));
    settings.setProperty("socketTimeout", String.valueOf(limits.silenceSeconds()));
    settings.setProperty("tcpKeepAlive", "true");
    settings.setProperty(
        "options",
        "-c idle_in_transaction_session_timeout=60s -c plan_cache_mode=force_custom_plan"
            + " -c statement_timeout="
            + limits.statementSeconds()
            + "s");
    trust(settings, address);
    return settings;
  }

  /** Without TLS only to this computer itself. */
  private static void trust(Properties settings, PlantAddress address) {
    Path trusted = address.trusted();
    if (trusted == null && address.loopback()) {
      settings.setProperty("sslmode", "disable");
      return;
    }
    settings.setProperty("sslmode", "verify-full");
    settings.setProperty("sslfactory", PlantTls.class.getName());
    if (trusted != null) {
      settings.setProperty(PlantTls.ISSUERS, trusted.toString());
    }
  }
}
