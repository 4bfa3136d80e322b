package org.chordlog.simulator;

import com.sun.jna.LastErrorException;
import com.sun.jna.Memory;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * A serial device made of software: what is written here can be read by whoever opens {@link
 * #path()}, and the other way round. Never blocks; bytes that nobody takes are lost, as on a wire.
 */
public final class PseudoTerminal implements AutoCloseable {
  /** Larger than the structure of any system; its layout is left to the C library. */
  private static final int TERMIOS_BYTES = 256;

  private static final int POLL_BYTES = 8;
  private static final NativeLong ONE = new NativeLong(1);

  private final LibC libC;
  private final int master;
  private final Path path;
  private final Object lock = new Object();
  private final Memory descriptor = new Memory(POLL_BYTES);
  private @Nullable Path link;
  private boolean closed;

  private PseudoTerminal(LibC libC, int master, Path path) {
    this.libC = libC;
    this.master = master;
    this.path = path;
    descriptor.setInt(0, master);
    descriptor.setShort(4, LibC.READABLE);
  }

  /** Whether this system has pseudo-terminals. */
  public static boolean available() {
    return !Platform.isWindows() && Files.exists(Path.of("/dev/ptmx"));
  }

  /** A new device in raw mode (no echo, no change of line ends) that nobody has open yet. */
  public static PseudoTerminal open() throws IOException {
    try {
      LibC libC = LibC.load();
      int master = libC.posix_openpt(LibC.READ_WRITE_NO_CONTROL);
      libC.grantpt(master);
      libC.unlockpt(master);
      Path path = Path.of(name(libC, master));
      libC.fcntl(master, LibC.SET_FLAGS, LibC.NON_BLOCKING);
      openOnceRaw(libC, path);
      return new PseudoTerminal(libC, master, path);
    } catch (LastErrorException | UnsatisfiedLinkError e) {
      throw new IOException("no pseudo-terminal: " + e.getMessage(), e);
    }
  }

  /** One at a time: the answer of all of them is in one place, until it is copied from there. */
  private static synchronized String name(LibC libC, int master) {
    return libC.ptsname(master);
  }

  /** Opened and closed once, so that the system tells from the start when nobody has it open. */
  private static void openOnceRaw(LibC libC, Path path) {
    int slave = libC.open(path.toString(), LibC.READ_WRITE_NO_CONTROL);
    try (Memory termios = new Memory(TERMIOS_BYTES)) {
      libC.tcgetattr(slave, termios);
      libC.cfmakeraw(termios);
      libC.tcsetattr(slave, LibC.NOW, termios);
    } finally {
      libC.close(slave);
    }
  }

  /** The device, such as {@code /dev/pts/3}. */
  public Path path() {
    return path;
  }

  /**
   * Puts a symbolic link to the device at that place, replacing an older link in one step; {@link
   * BadInput} where something else is there, which nobody would want to lose.
   */
  public void publish(Path at) throws IOException {
    if (Files.exists(at, LinkOption.NOFOLLOW_LINKS) && !Files.isSymbolicLink(at)) {
      throw new BadInput("link", at, "exists and is no link", "a new name, or an older link");
    }
    Path fresh = at.resolveSibling(at.getFileName() + ".new");
    Files.deleteIfExists(fresh);
    Files.createSymbolicLink(fresh, path);
    Files.move(fresh, at, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    synchronized (lock) {
      link = at;
    }
  }

  /** Whether somebody has the device open. */
  public boolean connected() {
    synchronized (lock) {
      return !closed && (events() & LibC.HUNG_UP) == 0;
    }
  }

  /**
   * Sends bytes.
   *
   * @return how many were taken; the rest is lost, and all of them while nobody has it open
   */
  public int write(byte[] bytes) throws IOException {
    synchronized (lock) {
      if (closed || (events() & LibC.HUNG_UP) != 0) {
        return 0;
      }
      try {
        return TerminalCalls.write(master, bytes, new NativeLong(bytes.length)).intValue();
      } catch (LastErrorException e) {
        return nothing(e, 0);
      }
    }
  }

  /**
   * Takes what the other side has sent, without waiting.
   *
   * @return how many bytes; 0 when there are none, −1 when nobody has the device open
   */
  public int read(byte[] buffer) throws IOException {
    synchronized (lock) {
      if (closed) {
        return -1;
      }
      try {
        return TerminalCalls.read(master, buffer, new NativeLong(buffer.length)).intValue();
      } catch (LastErrorException e) {
        return nothing(e, -1);
      }
    }
  }

  private static int nothing(LastErrorException e, int nobody) throws IOException {
    return switch (e.getErrorCode()) {
      case LibC.INPUT_OUTPUT_ERROR -> nobody;
      case 11, 35 -> 0;
      default -> throw new IOException("pseudo-terminal: " + e.getMessage(), e);
    };
  }

  /** The rate in bit/s that the other side has set; 0 where it is none of the usual ones. */
  public int baudRate() throws IOException {
    synchronized (lock) {
      try (Memory termios = new Memory(TERMIOS_BYTES)) {
        if (closed) {
          return 0;
        }
        libC.tcgetattr(master, termios);
        return BaudRates.fromSystem(libC.cfgetospeed(termios).longValue());
      } catch (LastErrorException e) {
        throw new IOException("pseudo-terminal: " + e.getMessage(), e);
      }
    }
  }

  /** What there is at the moment. */
  private int events() {
    TerminalCalls.poll(descriptor, ONE, 0);
    return descriptor.getShort(6);
  }

  /** Unplugs: whoever has the device open loses it, and the link goes. */
  @Override
  public void close() {
    synchronized (lock) {
      if (closed) {
        return;
      }
      closed = true;
      unpublish();
      libC.close(master);
      descriptor.close();
    }
  }

  private void unpublish() {
    try {
      if (link != null && Files.isSymbolicLink(link) && Files.readSymbolicLink(link).equals(path)) {
        Files.delete(link);
      }
    } catch (IOException e) {
      System.getLogger(PseudoTerminal.class.getName())
          .log(System.Logger.Level.WARNING, "link {0} stays: {1}", link, e.getMessage());
    }
  }
}
