// What a page shows, asked for one time after the other, so that no older answer is shown over a newer one.

/**
 * load, never twice at once: who asks while it runs gets the next one, which begins afterwards and serves all who
 * asked meanwhile. A fault reaches those whose turn it was.
 */
export function oneByOne(load) {
  let running = null;
  let next = null;
  const begin = () => {
    running = load().finally(() => (running = null));
    return running;
  };
  const after = () => {
    next = null;
    return begin();
  };
  return () => {
    if (!running) return begin();
    next ??= running.then(after, after);
    return next;
  };
}
