// A provider of OpenID Connect for tests, by npm's oidc-provider; people, groups and secrets are
// invented. Arguments: folder of the npm packages, port of the service, and for https its certificate
// and key. Prints its own address.

import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { createServer as createSecureServer } from "node:https";
import { pathToFileURL } from "node:url";

const [packages, servicePort, cert, key] = process.argv.slice(2);
const { Provider } = await import(pathToFileURL(`${packages}/oidc-provider/lib/index.js`));

const GROUPS = { ann: ["benders"], quinn: ["inspection", "benders"], guest: ["visitors"] };
const NAMES = { ann: "Ann Arbor", quinn: "Quinn Frost", guest: "Gus Guest" };

const server = cert ? createSecureServer({ cert: readFileSync(cert), key: readFileSync(key) }) : createServer();
server.listen(0, "127.0.0.1", () => {
  const issuer = `${cert ? "https" : "http"}://127.0.0.1:${server.address().port}`;
  const provider = new Provider(issuer, {
    clients: [
      {
        client_id: "chordlog",
        client_secret: "an invented secret of 32 letters",
        redirect_uris: [`http://localhost:${servicePort}/api/session/provider/answer`],
      },
    ],
    claims: { openid: ["sub"], profile: ["name"], groups: ["groups"] },
    conformIdTokenClaims: false,
    pkce: { required: () => true },
    cookies: { keys: ["an invented key"] },
    findAccount: (ctx, id) => ({
      accountId: id,
      claims: () => ({ sub: id, name: NAMES[id] ?? id, groups: GROUPS[id] ?? [] }),
    }),
  });
  server.on("request", provider.callback());
  console.log(issuer);
});
