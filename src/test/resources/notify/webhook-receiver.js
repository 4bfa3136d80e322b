// A receiver of webhooks for tests: verifies each call by the library standardwebhooks and prints a
// line for it: id, "good" or the library's complaint, body. Arguments: status of each answer in turn
// (the last one stays; "silent": none), then the secrets that it knows.
const http = require("http");
const { Webhook } = require("standardwebhooks");

const [answers, ...secrets] = process.argv.slice(2);
const statuses = answers.split(",");

function verified(body, headers) {
  let complaint = "";
  for (const secret of secrets) {
    try {
      new Webhook(secret).verify(body, headers);
      return "good";
    } catch (e) {
      complaint = e.message;
    }
  }
  return complaint;
}

const server = http.createServer((request, response) => {
  let body = "";
  request.setEncoding("utf8");
  request.on("data", (part) => (body += part));
  request.on("end", () => {
    const said = [request.headers["webhook-id"], verified(body, request.headers), body];
    console.log(JSON.stringify(said));
    const status = statuses.length > 1 ? statuses.shift() : statuses[0];
    if (status === "silent") {
      return;
    }
    response.writeHead(Number(status), { Location: "http://127.0.0.1:1/elsewhere" });
    response.end();
  });
});
server.listen(0, "127.0.0.1", () => console.log(server.address().port));
