import { describe, expect, it, vi } from "vitest";
import type { Host } from "../../../electron/boundary/host-api.ts";
import { decodeMessage, encodeMessage } from "../../../electron/boundary/host-codec.ts";
import { combinedWithPad, padHeader } from "../../../electron/boundary/masked-passphrases.ts";
import { chooseHost, type Surroundings, sentenceOf } from "../../../renderer/shell/host.ts";

type Fetch = Surroundings["fetch"];

/** A tab of a browser; answers `/secret` as the program does when the token is good. */
function tab(answer: Fetch, hash = "#token", kept: Record<string, string> = {}) {
  const fetch = vi.fn<Fetch>(async (address, init) =>
    address === "/secret" ? new Response("secret-of-this-launch") : answer(address, init),
  );
  const replaceState = vi.fn<History["replaceState"]>();
  const storage = {
    getItem: (key: string) => kept[key] ?? null,
    setItem: (key: string, value: string) => {
      kept[key] = value;
    },
  };
  const surroundings = { location: { hash, pathname: "/" }, history: { replaceState }, storage, fetch };
  return { surroundings, fetch, replaceState, kept };
}

function loopback(answer: Fetch): Host {
  return chooseHost(tab(answer).surroundings);
}

const posted = (fetch: ReturnType<typeof tab>["fetch"]) => fetch.mock.calls.map(([address]) => address);

describe("choosing the host", () => {
  it("takes the window's own host where there is one and sends nothing over the network", () => {
    const own: Host = { call: () => Promise.reject(new Error("not called here")) };
    const { surroundings, fetch } = tab(async () => new Response(""));
    expect(chooseHost({ ...surroundings, counterpoise: own })).toBe(own);
    expect(fetch).not.toHaveBeenCalled();
  });

  it("else exchanges the token of the address once, and takes it out of the address", async () => {
    const { surroundings, fetch, replaceState, kept } = tab(async () => new Response(encodeMessage({})));
    const host = chooseHost(surroundings);
    await Promise.all([host.call("workspace.read", {}), host.call("workspace.read", {})]);
    expect(posted(fetch)).toEqual(["/secret", "/api/workspace.read", "/api/workspace.read"]);
    expect(new Headers(fetch.mock.calls[0]![1].headers).get("x-counterpoise-token")).toBe("token");
    expect(replaceState.mock.calls).toEqual([[null, "", "/"]]);
    expect(Object.values(kept)).toEqual(["secret-of-this-launch"]);
  });

  it("goes on after a reload with what the tab keeps, and asks for nothing anew", async () => {
    const first = tab(async () => new Response(encodeMessage({})));
    await chooseHost(first.surroundings).call("workspace.read", {});
    const { surroundings, fetch } = tab(async () => new Response(encodeMessage({})), "", first.kept);
    await chooseHost(surroundings).call("workspace.read", {});
    expect(posted(fetch)).toEqual(["/api/workspace.read"]);
    expect(new Headers(fetch.mock.calls[0]![1].headers).get("x-counterpoise-secret")).toBe("secret-of-this-launch");
  });

  it("says where to get another address when the tab has neither token nor secret, or the token was used", async () => {
    const bare = tab(async () => new Response(encodeMessage({})), "");
    await expect(chooseHost(bare.surroundings).call("workspace.read", {})).rejects.toThrow("Press Enter");
    expect(bare.fetch).not.toHaveBeenCalled();
    const { surroundings } = tab(async () => new Response(""));
    const used = { ...surroundings, fetch: vi.fn<Fetch>(async () => new Response("used", { status: 403 })) };
    await expect(chooseHost(used).call("workspace.read", {})).rejects.toThrow("Press Enter");
  });

  it("posts to the server of the page with the secret, numbers unharmed both ways", async () => {
    const sent = { path: "a/b.csv", bytes: Uint8Array.of(0, 255, 7) };
    let posted = new Uint8Array();
    const { surroundings, fetch } = tab(async (_address, { body }) => {
      posted = Uint8Array.from(body as Uint8Array);
      return new Response(encodeMessage({ curve: Float64Array.of(0.1, Number.NaN) }));
    });
    const reply: unknown = await chooseHost(surroundings).call("recordings.add", sent);
    const [address, init] = fetch.mock.calls[1]!;
    expect(address).toBe("/api/recordings.add");
    expect(init.method).toBe("POST");
    expect(new Headers(init.headers).get("x-counterpoise-secret")).toBe("secret-of-this-launch");
    expect(decodeMessage(posted)).toEqual(sent);
    expect(reply).toEqual({ curve: Float64Array.of(0.1, Number.NaN) });
  });

  it("masks each passphrase on its way with a pad of its own, and leaves the asker's as it was to be asked with again", async () => {
    const pads = [Uint8Array.of(1, 2, 3, 4), Uint8Array.of(9, 8, 7, 6)];
    const arrived: unknown[] = [];
    let pad = new Uint8Array();
    const host = loopback(async (address, { body }) => {
      if (address !== "/pad") {
        arrived.push(combinedWithPad(decodeMessage(Uint8Array.from(body as Uint8Array)), pad));
        return new Response(encodeMessage({}));
      }
      pad = Uint8Array.from(pads.shift() ?? []);
      return new Response(Uint8Array.from(pad), { headers: { [padHeader]: "one" } });
    });
    const passphrase = Uint8Array.of(65, 66, 67);
    await host.call("passphrase.weigh", { passphrase });
    await host.call("register.setPassphrase", { passphrase });
    expect(arrived).toEqual([{ passphrase: Uint8Array.of(65, 66, 67) }, { passphrase: Uint8Array.of(65, 66, 67) }]);
  });

  it("hands on the host's own sentence when it refuses", async () => {
    const refuse = loopback(async () => new Response("That session is not open any more.", { status: 409 }));
    await expect(refuse.call("workspace.show", { folder: "x" })).rejects.toThrow("That session is not open any more.");
  });

  it("says what to do when the page belongs to an earlier launch", async () => {
    const stale = loopback(async () => new Response("The secret is wrong.", { status: 403 }));
    await expect(stale.call("workspace.read", {})).rejects.toThrow("start it again");
  });

  it("says what to do when nothing answers", async () => {
    const fails: Fetch = () => Promise.reject(new TypeError("Failed to fetch"));
    const { surroundings } = tab(fails);
    for (const gone of [loopback(fails), chooseHost({ ...surroundings, fetch: fails })]) {
      const reason = await gone.call("workspace.read", {}).catch((error: unknown) => error);
      expect(sentenceOf(reason)).toContain("does not answer");
    }
  });
});
