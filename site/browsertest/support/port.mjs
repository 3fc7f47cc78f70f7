import { createServer } from "node:net";

/** A port of the loopback address that nothing uses now. */
export async function freePort() {
  const server = createServer();
  await new Promise((done, failed) => server.once("error", failed).listen(0, "127.0.0.1", done));
  const { port } = server.address();
  await new Promise((done) => server.close(done));
  return port;
}
