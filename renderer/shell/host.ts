import type { Host, HostApi, HostRequestName } from "../../electron/boundary/host-api.ts";
import { decodeMessage, encodeMessage } from "../../electron/boundary/host-codec.ts";
import { combinedWithPad, padHeader, passphrasesOf } from "../../electron/boundary/masked-passphrases.ts";
import { words } from "../words/words.ts";
import { needsAnotherAddress, secretOfTab, type Tab } from "./tab-secret.ts";

const prose = words.screens.lock;

/** What of the browser the choice of the host looks at. */
export interface Surroundings extends Tab {
  /** Put there by the window's preload; absent in a browser. */
  readonly counterpoise?: Host;
}

const silentHost = prose.programSilent;

/** A request the host refused or could not answer, with its sentence. */
export class HostProblem extends Error {
  override readonly name = "HostProblem";
}

/** The host of these screens: the window's own where there is one, else the loopback server that served the page. */
export function chooseHost(surroundings: Surroundings): Host {
  return surroundings.counterpoise ?? loopbackHost(surroundings);
}

function loopbackHost(tab: Tab): Host {
  const silent = () => {
    throw new HostProblem(silentHost);
  };
  let asked: Promise<string | undefined> | undefined;
  // A token is good once, so it is asked with once; a program that did not answer is asked again.
  const askOnce = () => {
    asked ??= secretOfTab(tab).catch(() => {
      asked = undefined;
      return silent();
    });
    return asked;
  };
  return {
    async call<Name extends HostRequestName>(name: Name, request: HostApi[Name]["request"]) {
      const secret = await askOnce();
      if (secret === undefined) throw new HostProblem(needsAnotherAddress);
      const post = (address: string, more: Readonly<Record<string, string>>, body?: Uint8Array<ArrayBuffer>) => {
        const headers = { "content-type": "application/octet-stream", "x-counterpoise-secret": secret, ...more };
        return tab.fetch(address, { method: "POST", headers, ...(body && { body }) }).catch(silent);
      };
      const hasPassphrase = passphrasesOf(request).length > 0;
      const { sent, more } = hasPassphrase
        ? await masked(request, await post("/pad", {}))
        : { sent: request, more: {} };
      const response = await post(`/api/${name}`, more, encodeMessage(sent));
      if (!response.ok) throw new HostProblem(problemSentence(response.status, await response.text()));
      return decodeMessage(new Uint8Array(await response.arrayBuffer())) as HostApi[Name]["reply"];
    },
  };
}

/**
 * The request with its passphrases masked by the pad that was answered, and the name of that pad. What was asked with
 * stays as it was: whoever weighs a passphrase sets the same one next, and blanks must not be set in its place.
 */
async function masked(request: unknown, answer: Response) {
  if (!answer.ok) throw new HostProblem(problemSentence(answer.status, await answer.text()));
  const pad = new Uint8Array(await answer.arrayBuffer());
  const sent = combinedWithPad(request, pad);
  pad.fill(0);
  return { sent, more: { [padHeader]: answer.headers.get(padHeader) ?? "" } };
}

function problemSentence(status: number, text: string): string {
  if (status === 403 || status === 421) return needsAnotherAddress;
  return text === "" ? prose.statusWithoutExplanation(status) : text;
}

/** One plain sentence for whatever went wrong in a call. */
export function sentenceOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
