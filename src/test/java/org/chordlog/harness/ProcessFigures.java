package org.chordlog.harness;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a process uses, as the kernel and its virtual machine say (proc(5), jcmd). */
public record ProcessFigures(
    double cpuSeconds, int threads, long descriptors, double residentMiB, double heapMiB) {
  private static final double TICKS_PER_SECOND = 100;
  private static final Pattern TOTAL = Pattern.compile("Total\\s+\\d+\\s+(\\d+)");

  /** Heap: what is alive after a full collection, as the class histogram sums it up. */
  public static ProcessFigures of(long pid) throws IOException, InterruptedException {
    Matcher total = TOTAL.matcher(jcmd(pid, "GC.class_histogram"));
    double heap = total.find() ? Long.parseLong(total.group(1)) / 1048576.0 : Double.NaN;
    String status = Files.readString(Path.of("/proc/" + pid + "/status"));
    return new ProcessFigures(
        cpuSeconds(pid),
        (int) number(status, "Threads:"),
        descriptors(pid),
        number(status, "VmRSS:") / 1024.0,
        heap);
  }

  /** User and system time so far. */
  public static double cpuSeconds(long pid) throws IOException {
    String stat = Files.readString(Path.of("/proc/" + pid + "/stat"));
    String[] after = stat.substring(stat.lastIndexOf(')') + 2).split(" ", -1);
    return (Long.parseLong(after[11]) + Long.parseLong(after[12])) / TICKS_PER_SECOND;
  }

  private static long descriptors(long pid) throws IOException {
    try (var open = Files.list(Path.of("/proc/" + pid + "/fd"))) {
      return open.count();
    }
  }

  private static long number(String status, String key) {
    Matcher found = Pattern.compile(key + "\\s+(\\d+)").matcher(status);
    return found.find() ? Long.parseLong(found.group(1)) : -1;
  }

  private static String jcmd(long pid, String what) throws IOException, InterruptedException {
    String jcmd = Path.of(System.getProperty("java.home"), "bin", "jcmd").toString();
    Process process =
        new ProcessBuilder(jcmd, Long.toString(pid), what).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return said;
  }
}
