import { describe, expect, it, vi } from "vitest";
import type { Host } from "../../electron/host-api.ts";
import { decodeMessage, encodeMessage } from "../../electron/host-codec.ts";
import { chooseHost, type Surroundings, sentenceOf } from "../../renderer/host.ts";

type Fetch = Surroundings["fetch"];

function loopback(answer: Fetch): Host {
  return chooseHost({ location: { hash: "#secret-of-this-launch" }, fetch: answer });
}

describe("choosing the host", () => {
  it("takes the window's own host where there is one and sends nothing over the network", () => {
    const own: Host = { call: () => Promise.reject(new Error("not called here")) };
    const fetch = vi.fn<Fetch>();
    expect(chooseHost({ counterpoise: own, location: { hash: "#x" }, fetch })).toBe(own);
    expect(fetch).not.toHaveBeenCalled();
  });

  it("else posts to the server of the page with the secret of the fragment, numbers unharmed both ways", async () => {
    const sent = { path: "a/b.csv", bytes: Uint8Array.of(0, 255, 7) };
    let posted = new Uint8Array();
    const answer = vi.fn<Fetch>(async (_address, { body }) => {
      posted = Uint8Array.from(body as Uint8Array);
      return new Response(encodeMessage({ curve: Float64Array.of(0.1, Number.NaN) }));
    });
    const reply: unknown = await loopback(answer).call("recordings.add", sent);
    const [address, init] = answer.mock.calls[0]!;
    expect(address).toBe("/api/recordings.add");
    expect(init.method).toBe("POST");
    expect(new Headers(init.headers).get("x-counterpoise-secret")).toBe("secret-of-this-launch");
    expect(decodeMessage(posted)).toEqual(sent);
    // A passphrase does not stay behind in what was sent.
    expect(new Set(init.body as Uint8Array)).toEqual(new Set([0]));
    expect(reply).toEqual({ curve: Float64Array.of(0.1, Number.NaN) });
  });

  it("hands on the host's own sentence when it refuses", async () => {
    const refuse = loopback(async () => new Response("That session is not open any more.", { status: 409 }));
    await expect(refuse.call("workspace.show", { folder: "x" })).rejects.toThrow("That session is not open any more.");
  });

  it("says what to do when the page belongs to an earlier launch", async () => {
    const stale = loopback(async () => new Response("The secret is wrong.", { status: 403 }));
    await expect(stale.call("workspace.read", {})).rejects.toThrow("Start Counterpoise again");
  });

  it("says what to do when nothing answers", async () => {
    const gone = loopback(() => Promise.reject(new TypeError("Failed to fetch")));
    const reason = await gone.call("workspace.read", {}).catch((error: unknown) => error);
    expect(sentenceOf(reason)).toContain("does not answer");
  });
});
