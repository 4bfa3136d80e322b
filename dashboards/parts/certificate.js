// Until when browsers trust this service: a line at the foot of the front page, where it is reached by https.

import { get } from "./api.js";
import { h } from "./dom.js";

const WARNED_DAYS = 30;

export async function showCertificate(place) {
  if (location.protocol !== "https:") return;
  const { certificate } = await get("health").catch(() => ({}));
  if (!certificate) return; // a proxy speaks for the service
  const { urgent, text } = said(certificate);
  const state = urgent ? "bad" : "quiet";
  place.append(h("p", { id: "certificate", class: "state", data: { state } }, text));
}

function said({ daysLeft, problem }) {
  const urgent = daysLeft < WARNED_DAYS || problem !== "";
  const left =
    daysLeft < 0
      ? "The certificate of this service has expired. Renew it."
      : `The certificate of this service is valid for ${daysLeft} more days.` +
        (daysLeft < WARNED_DAYS ? " Renew it." : "");
  return { urgent, text: problem ? `${left} A new one can’t be used: ${problem}` : left };
}
