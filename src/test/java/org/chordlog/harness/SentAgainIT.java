package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A correction of the rollers is sent with a key, and the service is killed (SIGKILL) as soon as it
 * is in the database; whoever sent it read no answer, and sends it again after the next start. It
 * is recorded once.
 */
final class SentAgainIT {
  private static final int KILLS = 4;
  @TempDir Path directory;

  @Test
  void whatWasCommittedBeforeAKillIsDoneOnce() throws Exception {
    Rig rig = new Rig(directory, 1, Scene.REST_SECONDS);
    long job = rig.prepare().get(0);
    List<Integer> answers = new ArrayList<>();
    for (int i = 1; i <= KILLS + 1; i++) {
      try (ServiceProcess service = ServiceProcess.serveBriefly(rig)) {
        if (i > 1) {
          answers.add(sentAgain(service, i - 1));
          assertEquals(i - 1, events(rig, job));
        }
        if (i <= KILLS) {
          killedOnceCommitted(service, rig, job, i);
        }
      }
    }
    System.out.println("sent again after a kill: " + answers);
    assertTrue(answers.stream().allMatch(each -> each == 201 || each == 409), answers::toString);
  }

  private static void killedOnceCommitted(ServiceProcess service, Rig rig, long job, int number)
      throws Exception {
    try (Socket unread = sent(service.address(), number)) {
      Await.until(() -> events(rig, job) == number, () -> events(rig, job) + " events");
      service.kill();
      assertTrue(unread.isConnected());
    }
  }

  /** The status answered. */
  private static int sentAgain(ServiceProcess service, int number) throws Exception {
    try (Socket again = sent(service.address(), number)) {
      return status(again);
    }
  }

  private static Socket sent(URI address, int number) throws Exception {
    String body = "{\"kind\": \"CORRECTION\", \"note\": \"number " + number + "\"}";
    String request =
        """
        POST /api/stations/S0/events HTTP/1.1\r
        Host: %s\r
        Chordlog-By: harness\r
        Idempotency-Key: correction-number-%d\r
        Content-Type: application/json\r
        Content-Length: %d\r
        \r
        %s"""
            .formatted(address.getAuthority(), number, body.length(), body);
    Socket socket = new Socket(address.getHost(), address.getPort());
    socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
    return socket;
  }

  private static int status(Socket answered) throws Exception {
    byte[] line = answered.getInputStream().readNBytes("HTTP/1.1 201".length());
    return Integer.parseInt(new String(line, StandardCharsets.US_ASCII).substring(9));
  }

  private static int events(Rig rig, long job) throws SQLException {
    String file = "jdbc:sqlite:" + rig.data().resolve(SqliteStore.FILE_NAME);
    try (Connection connection = DriverManager.getConnection(file);
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT count(*) FROM job_event WHERE job_id = " + job)) {
      return row.getInt(1);
    }
  }
}
