package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import org.chordlog.Await;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A run of tests is killed: what it had started ends too. */
@Tag("slow")
final class ChildrenTest {
  @Test
  void nothingOutlivesARunThatIsKilled() throws Exception {
    Process run =
        Children.program(Run.class, "32m").redirectError(ProcessBuilder.Redirect.INHERIT).start();
    try (BufferedReader out = run.inputReader(StandardCharsets.UTF_8)) {
      ProcessHandle child = ProcessHandle.of(Long.parseLong(out.readLine())).orElseThrow();
      ProcessHandle grandchild = ProcessHandle.of(Long.parseLong(out.readLine())).orElseThrow();
      assertTrue(child.isAlive() && grandchild.isAlive());
      run.destroyForcibly().waitFor();
      Await.until(() -> !child.isAlive() && !grandchild.isAlive());
    }
  }

  /** Stands for a run of tests: starts a shell that waits for a program of its own. */
  static final class Run {
    private Run() {}

    public static void main(String[] arguments) throws Exception {
      Process shell = Children.start(new ProcessBuilder("sh", "-c", "sleep 3600 & echo $!; wait"));
      System.out.println(shell.pid());
      System.out.println(shell.inputReader(StandardCharsets.UTF_8).readLine());
      shell.waitFor();
    }
  }
}
