package org.chordlog.simulator;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;

/**
 * Those calls of POSIX that are made for every value: bound to the C library directly, since each
 * call through an interface as {@link LibC} takes several times as long.
 */
final class TerminalCalls {
  static {
    Native.register(Platform.C_LIBRARY_NAME);
  }

  private TerminalCalls() {}

  static native NativeLong read(int fd, byte[] buffer, NativeLong count) throws LastErrorException;

  static native NativeLong write(int fd, byte[] buffer, NativeLong count) throws LastErrorException;

  static native int poll(Pointer descriptors, NativeLong count, int timeoutMillis)
      throws LastErrorException;
}
