package org.chordlog.cli.records;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.SealExpected;
import org.chordlog.store.SealReport;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.open.Stores;
import org.chordlog.verdict.Counted;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Reads everything that is stored and says what is wrong with it. */
@Command(
    name = "audit",
    mixinStandardHelpOptions = true,
    description = {
      "Reads everything that is stored and says what is damaged or missing.",
      "Looked at are the file's pages and references, every reading and set-up, every block of"
          + " samples, the jobs' totals, holes in the stations' sequences, and the chain of hashes"
          + " over the records with its signed checkpoints: rows that were altered, removed or put"
          + " in are named.",
      "A cut end, or a chain made anew by whoever has the key too, is shown only by what was"
          + " printed or noted elsewhere: give it as --anchor.",
      "Exit code 1 when anything is wrong. Nothing is changed, and the service may go on meanwhile."
    })
public final class Audit implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data;

  @Option(
      names = "--anchor",
      paramLabel = "SEQ:HASH",
      description = "Entry of the chain as a report or an export has it; may be repeated.")
  private List<String> anchors = new ArrayList<>();

  @Option(
      names = "--key",
      paramLabel = "FINGERPRINT",
      description = "The key that must have signed every checkpoint, 16 hexadecimal digits.")
  private String key = "";

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    SealExpected expected =
        new SealExpected(anchors.stream().map(SealExpected.Anchor::of).toList(), key);
    StoreFiles files = Stores.files(data.directory);
    SealReport seal = files.auditSeal(expected);
    Set<String> faults = new LinkedHashSet<>(files.audit());
    faults.addAll(seal.faults());
    tell(List.copyOf(faults), seal);
    return faults.isEmpty() ? ExitCode.WELL : ExitCode.FAULT;
  }

  private void tell(List<String> faults, SealReport seal) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(JsonText.of(new Told(faults, seal.notes(), Told.Seal.of(seal))));
      return;
    }
    faults.forEach(each -> out.println("Wrong: " + each));
    seal.notes().forEach(each -> out.println("Note: " + each));
    out.println("Newest entry of the chain: " + seal.newest().anchor());
    out.println("Key of the checkpoints: " + orNone(seal.keyFingerprint()));
    out.println("Measuring part of this program: " + MeasuringPart.sha256());
    out.println(verdict(faults.size()));
  }

  private static String verdict(int faults) {
    return faults == 0
        ? "All is well."
        : Counted.of(faults, "thing") + (faults == 1 ? " is wrong." : " are wrong.");
  }

  private static String orNone(String fingerprint) {
    return fingerprint.isEmpty() ? "none" : fingerprint;
  }

  /** As JSON. */
  record Told(List<String> faults, List<String> notes, Seal seal) {
    /** The anchor to note elsewhere, the key, and what identifies the measuring part. */
    record Seal(String newest, String key, String measuringPart) {
      static Seal of(SealReport report) {
        return new Seal(report.newest().anchor(), report.keyFingerprint(), MeasuringPart.sha256());
      }
    }
  }
}
