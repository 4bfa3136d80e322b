package org.chordlog.station;

import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.decode.Proposals;
import org.chordlog.decode.RegisterBlock;
import org.chordlog.decode.RegisterGuess;
import org.chordlog.link.Link;
import org.chordlog.link.LinkException;
import org.chordlog.link.LinkSettings;

/** Reads the registers of a Modbus RTU device over and over while its plunger is moved. */
public final class RegisterSearch {
  private static final Duration USUAL_ANSWER = Duration.ofMillis(400);
  private static final long PAUSE_NANOS = TimeUnit.MILLISECONDS.toNanos(20);
  private static final long NAP_NANOS = TimeUnit.MILLISECONDS.toNanos(2);
  private final RegisterBlock wanted;
  private final long answerNanos;
  private final byte[] buffer = new byte[512];

  public RegisterSearch(RegisterBlock wanted) {
    this(wanted, USUAL_ANSWER);
  }

  /** {@code answer}: how long the device has for one. */
  RegisterSearch(RegisterBlock wanted, Duration answer) {
    this.wanted = wanted;
    this.answerNanos = answer.toNanos();
  }

  /**
   * What was found.
   *
   * @param answered whether the device answers at these settings at all
   * @param registers how many of those asked for it has
   * @param proposals what may be the depth
   */
  public record Found(
      LinkSettings link, boolean answered, int registers, int sweeps, Proposals proposals) {}

  /** Asks once, and where there is an answer reads for so many seconds. */
  public Found search(LinkSettings settings, double seconds) throws LinkException {
    try (Link link = settings.open()) {
      List<RegisterBlock> blocks = new ArrayList<>();
      boolean answered = blocks(link, wanted, blocks, true);
      List<Map<Integer, Integer>> sweeps = new ArrayList<>();
      long until = System.nanoTime() + (long) (seconds * 1e9);
      while (!blocks.isEmpty() && System.nanoTime() < until) {
        sweep(link, blocks).ifPresent(sweeps::add);
      }
      int registers = blocks.stream().mapToInt(RegisterBlock::count).sum();
      Proposals proposals = RegisterGuess.of(wanted.device(), wanted.table(), sweeps);
      return new Found(settings, answered, registers, sweeps.size(), proposals);
    }
  }

  /**
   * Gathers the blocks that the device has, in halves where it refuses one as a whole; whether it
   * answered. A device that does not answer the first request is not asked again.
   */
  private boolean blocks(Link link, RegisterBlock block, List<RegisterBlock> found, boolean first)
      throws LinkException {
    byte[] answer = first ? ask(link, block) : askTwice(link, block);
    if (block.words(answer).isPresent()) {
      found.add(block);
      return true;
    }
    boolean refused = block.refused(answer);
    if (refused && block.count() > 1) {
      int half = block.count() / 2;
      blocks(link, part(block, block.first(), half), found, false);
      blocks(link, part(block, block.first() + half, block.count() - half), found, false);
    }
    return refused || !first;
  }

  /** Once more where no answer came: one that is lost on the way must hide no register. */
  private byte[] askTwice(Link link, RegisterBlock block) throws LinkException {
    byte[] answer = ask(link, block);
    return block.words(answer).isPresent() || block.refused(answer) ? answer : ask(link, block);
  }

  private static RegisterBlock part(RegisterBlock block, int first, int count) {
    return new RegisterBlock(block.device(), block.table(), first, count);
  }

  /** One reading of all blocks; empty where an answer failed to come. */
  private Optional<Map<Integer, Integer>> sweep(Link link, List<RegisterBlock> blocks)
      throws LinkException {
    Map<Integer, Integer> words = new TreeMap<>();
    for (RegisterBlock block : blocks) {
      Optional<int[]> read = block.words(ask(link, block));
      if (read.isEmpty()) {
        return Optional.empty();
      }
      for (int i = 0; i < block.count(); i++) {
        words.put(block.first() + i, read.get()[i]);
      }
    }
    return Optional.of(words);
  }

  private byte[] ask(Link link, RegisterBlock block) throws LinkException {
    LockSupport.parkNanos(PAUSE_NANOS);
    dropWhatCameLate(link);
    link.write(block.request());
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    long until = System.nanoTime() + answerNanos;
    while (System.nanoTime() < until) {
      int count = link.readAvailable(buffer);
      answer.write(buffer, 0, count);
      if (count == 0) {
        LockSupport.parkNanos(NAP_NANOS);
      } else if (block.words(answer.toByteArray()).isPresent()
          || block.refused(answer.toByteArray())) {
        break;
      }
    }
    return answer.toByteArray();
  }

  /** An answer that came after its time belongs to no request. */
  private void dropWhatCameLate(Link link) throws LinkException {
    int late = buffer.length;
    while (late == buffer.length) {
      late = link.readAvailable(buffer);
    }
  }
}
