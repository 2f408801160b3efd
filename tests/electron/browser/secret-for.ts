import { request } from "node:http";
import type { LoopbackServer } from "../../../electron/browser/loopback-server.ts";

/** What came of showing a token to the program. */
export interface Exchanged {
  readonly status: number;
  readonly body: string;
}

/** Shows a token as the page does. */
export function exchange(
  { port }: LoopbackServer,
  token: string,
  origin = `http://127.0.0.1:${port}`,
): Promise<Exchanged> {
  return new Promise((resolve, reject) => {
    const headers = { origin, "x-counterpoise-token": token };
    const sent = request(
      { host: "127.0.0.1", port, method: "POST", path: "/secret", headers, agent: false },
      (response) => {
        let body = "";
        response.setEncoding("utf8");
        response.on("data", (piece: string) => {
          body += piece;
        });
        response.on("end", () => resolve({ status: response.statusCode ?? 0, body }));
      },
    );
    sent.on("error", reject);
    sent.end();
  });
}

export function tokenOf(address: string): string {
  return new URL(address).hash.slice(1);
}

/** The secret that a tab opened at a new address has. */
export async function secretFor(server: LoopbackServer): Promise<string> {
  return (await exchange(server, tokenOf(server.newAddress(60_000)))).body;
}
