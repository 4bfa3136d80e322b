package org.chordlog.simulator;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** Several simulators that play at once, each in a thread of its own. */
public final class Simulators implements AutoCloseable {
  private final List<Player> all = new CopyOnWriteArrayList<>();
  private final List<Thread> threads = new CopyOnWriteArrayList<>();
  private final List<AutoCloseable> files = new CopyOnWriteArrayList<>();

  /** Where a simulator tells its truth: a new file, closed with all, or nowhere. */
  public Consumer<Contact> truth(@Nullable Path path) throws IOException {
    if (path == null) {
      return contact -> {};
    }
    TruthFile file = TruthFile.create(path);
    files.add(file);
    return file;
  }

  /** The same for a line. */
  public Consumer<LineTruth> lineTruth(@Nullable Path path) throws IOException {
    if (path == null) {
      return truth -> {};
    }
    LineTruthFile file = LineTruthFile.create(path);
    files.add(file);
    return file;
  }

  public void start(Player player) {
    all.add(player);
    Thread thread = new Thread(() -> play(player), "simulator " + all.size());
    threads.add(thread);
    thread.start();
  }

  private static void play(Player player) {
    try {
      player.run();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException e) {
      System.getLogger(Simulators.class.getName())
          .log(System.Logger.Level.ERROR, "{0}: {1}", player.addresses(), e.getMessage());
    }
  }

  /** What the service has to open, in the order of their start. */
  public List<String> addresses() {
    return all.stream().flatMap(player -> player.addresses().stream()).toList();
  }

  /**
   * Tells a line to all, or to the one whose number (from 1) is in front of it; what they answer.
   */
  public String told(String line) {
    String[] words = line.trim().split("\\s+", 2);
    if (!words[0].matches("\\d{1,2}") || words.length < 2) {
      return all.stream()
          .map(player -> player.told(line))
          .filter(answer -> !answer.isEmpty())
          .collect(Collectors.joining(System.lineSeparator()));
    }
    int number = Integer.parseInt(words[0]);
    if (number < 1 || number > all.size()) {
      throw new BadInput("station", number, "is not played", "1 to " + all.size());
    }
    return all.get(number - 1).told(words[1]);
  }

  /**
   * Takes lines in a thread of its own; answers go to {@code out}, what is wrong to {@code err}.
   * {@code atEnd} runs in that thread once there are no more lines.
   */
  public void obey(InputStream in, PrintWriter out, PrintWriter err, Runnable atEnd) {
    Thread thread =
        new Thread(
            () -> {
              read(in, out, err);
              atEnd.run();
            },
            "simulator commands");
    thread.setDaemon(true);
    thread.start();
  }

  private void read(InputStream in, PrintWriter out, PrintWriter err) {
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        try {
          String answer = told(line);
          if (!answer.isEmpty()) {
            out.println(answer);
            out.flush();
          }
        } catch (BadInput e) {
          err.println(e.getMessage());
          err.flush();
        }
      }
    } catch (IOException e) {
      err.println("no more commands: " + e.getMessage());
      err.flush();
    }
  }

  /** Until all have ended. */
  public void await() throws InterruptedException {
    for (Thread thread : threads) {
      thread.join();
    }
  }

  @Override
  public void close() {
    all.forEach(Player::close);
    for (AutoCloseable file : files) {
      try {
        file.close();
      } catch (Exception e) {
        System.getLogger(Simulators.class.getName())
            .log(System.Logger.Level.ERROR, "truth file: {0}", e.getMessage());
      }
    }
  }
}
