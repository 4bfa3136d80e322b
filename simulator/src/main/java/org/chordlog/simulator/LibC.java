package org.chordlog.simulator;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Platform;

/** The calls of POSIX that open, set and close a pseudo-terminal; constants of Linux and macOS. */
interface LibC extends Library {
  int READ_WRITE_NO_CONTROL = 2 | (Platform.isMac() ? 0x20000 : 0x100);
  int NON_BLOCKING = Platform.isMac() ? 0x4 : 0x800;
  int SET_FLAGS = 4;
  int NOW = 0;
  int INPUT_OUTPUT_ERROR = 5;
  short READABLE = 1;
  short HUNG_UP = 0x10;

  static LibC load() {
    return Native.load(Platform.C_LIBRARY_NAME, LibC.class);
  }

  int posix_openpt(int flags) throws LastErrorException;

  int grantpt(int fd) throws LastErrorException;

  int unlockpt(int fd) throws LastErrorException;

  String ptsname(int fd) throws LastErrorException;

  int open(String path, int flags) throws LastErrorException;

  int close(int fd) throws LastErrorException;

  int fcntl(int fd, int command, Object... argument) throws LastErrorException;

  int tcgetattr(int fd, Memory termios) throws LastErrorException;

  int tcsetattr(int fd, int when, Memory termios) throws LastErrorException;

  void cfmakeraw(Memory termios);

  NativeLong cfgetospeed(Memory termios);
}
