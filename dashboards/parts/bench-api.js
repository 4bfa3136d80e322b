// Calls to the service; a problem document becomes an Error with its faults.

export async function get(path) {
  const answer = await fetch(path, { headers: { Accept: "application/json" } });
  if (!answer.ok) throw await problem(answer);
  return answer.json();
}

async function problem(answer) {
  const said = await answer.json().catch(() => ({}));
  const error = new Error(said.detail || `the service answered ${answer.status}`);
  error.status = answer.status;
  error.faults = said.faults || [];
  return error;
}

// Events until closed. The browser resumes by itself with the id of the last reading;
// `onStale(true)` comes when nothing, not even a heartbeat, was heard for 25 s.
export function listen(station, handlers, onStale) {
  const source = new EventSource(`/api/events?station=${encodeURIComponent(station)}`);
  const silence = watch(onStale);
  for (const [name, handle] of Object.entries(handlers)) {
    source.addEventListener(name, (event) => { silence.heard(); handle(JSON.parse(event.data)); });
  }
  source.addEventListener("heartbeat", silence.heard);
  source.addEventListener("error", () => onStale(true));
  return () => { source.close(); silence.stop(); };
}

function watch(onStale) {
  const longest = 25000;
  let timer = setTimeout(() => onStale(true), longest);
  return {
    heard() { clearTimeout(timer); onStale(false); timer = setTimeout(() => onStale(true), longest); },
    stop() { clearTimeout(timer); },
  };
}
