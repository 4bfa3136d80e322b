package org.chordlog.decode;

/** Finds answers, exceptions and the echo of the request; the length follows from the function. */
final class ModbusFinder implements Finder {
  private final byte[] request;
  private final int payload;

  ModbusFinder(ModbusRegisters registers, byte[] request) {
    this.request = request;
    payload = 2 * registers.type().registers();
  }

  @Override
  public int start(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && bytes[at] != request[0]) {
      at++;
    }
    return at;
  }

  @Override
  public int end(byte[] bytes, int start, int to) {
    int length = to - start;
    if (isEcho(bytes, start, to)) {
      return length < request.length ? WAIT : start + request.length;
    }
    int function = length < 2 ? request[1] : bytes[start + 1];
    int needed = ModbusFrames.EXCEPTION_LENGTH;
    if (function == request[1]) {
      if (length > 2 && bytes[start + 2] != payload) {
        return NONE;
      }
      needed += payload;
    } else if (function != (byte) (request[1] | 0x80)) {
      return NONE;
    }
    return length < needed ? WAIT : start + needed;
  }

  /** Whether the bytes are those of the request as far as they go; two-wire lines echo. */
  private boolean isEcho(byte[] bytes, int start, int to) {
    int known = Math.min(request.length, to - start);
    for (int i = 0; i < known; i++) {
      if (bytes[start + i] != request[i]) {
        return false;
      }
    }
    return true;
  }
}
