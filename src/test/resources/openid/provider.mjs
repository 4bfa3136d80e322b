// A provider of OpenID Connect for tests, by npm's oidc-provider; people, groups and secrets are
// invented. Arguments: folder of the npm packages, port of the service. Prints its own address.

import { createServer } from "node:http";
import { pathToFileURL } from "node:url";

const [packages, servicePort] = process.argv.slice(2);
const { Provider } = await import(pathToFileURL(`${packages}/oidc-provider/lib/index.js`));

const GROUPS = { ann: ["benders"], quinn: ["inspection", "benders"], guest: ["visitors"] };
const NAMES = { ann: "Ann Arbor", quinn: "Quinn Frost", guest: "Gus Guest" };

const server = createServer();
server.listen(0, "127.0.0.1", () => {
  const issuer = `http://127.0.0.1:${server.address().port}`;
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
