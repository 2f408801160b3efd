import type { Host, HostApi, HostRequestName } from "../electron/host-api.ts";
import { decodeMessage, encodeMessage } from "../electron/host-codec.ts";

/** What of the browser the choice of the host looks at. */
export interface Surroundings {
  /** Put there by the window's preload; absent in a browser. */
  readonly counterpoise?: Host;
  readonly location: { readonly hash: string };
  readonly fetch: (address: string, init: RequestInit) => Promise<Response>;
}

const silentHost = "The program that holds the recordings does not answer. Start Counterpoise again.";

/** A request the host refused or could not answer, with its sentence. */
export class HostProblem extends Error {
  override readonly name = "HostProblem";
}

/**
 * The host of these screens: the window's own where there is one, else the loopback server that served the page. The
 * secret stands in the fragment, which is never sent by itself, and stays there so that reloading works.
 */
export function chooseHost(surroundings: Surroundings): Host {
  return surroundings.counterpoise ?? loopbackHost(surroundings);
}

function loopbackHost({ location, fetch }: Surroundings): Host {
  const secret = location.hash.replace(/^#/, "");
  return {
    async call<Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]) {
      const message = encodeMessage(request);
      const response = await fetch(`/api/${name}`, {
        method: "POST",
        headers: { "content-type": "application/octet-stream", "x-counterpoise-secret": secret },
        body: message,
      }).catch(() => {
        throw new HostProblem(silentHost);
      });
      // It may hold a passphrase.
      message.fill(0);
      if (!response.ok) throw new HostProblem(problemSentence(response.status, await response.text()));
      return decodeMessage(new Uint8Array(await response.arrayBuffer())) as HostApi[Name]["reply"];
    },
  };
}

function problemSentence(status: number, text: string): string {
  if (status === 403 || status === 421) {
    return "This page no longer belongs to a running program. Start Counterpoise again and use the address it prints.";
  }
  return text === "" ? `The program answered with status ${status} and no explanation.` : text;
}

/** One plain sentence for whatever went wrong in a call. */
export function sentenceOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
