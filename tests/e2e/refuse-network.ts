// Loaded before a program (node --import): writes down every attempt of each of its threads to reach a network, and
// refuses whatever is not the loopback address. Where the lines go stands in COUNTERPOISE_NETWORK_LOG.
import dgram from "node:dgram";
import dns from "node:dns";
import { appendFileSync } from "node:fs";
import http from "node:http";
import http2 from "node:http2";
import https from "node:https";
import { syncBuiltinESMExports } from "node:module";
import net from "node:net";
import { isMainThread } from "node:worker_threads";

const file = process.env.COUNTERPOISE_NETWORK_LOG;
if (file === undefined) throw new Error("COUNTERPOISE_NETWORK_LOG names no file.");

function write(what: string, to: string, allowed: boolean): void {
  const line = { thread: isMainThread ? "main" : "worker", what, to, allowed };
  appendFileSync(file as string, `${JSON.stringify(line)}\n`);
}

function isLoopback(host: string): boolean {
  return host === "localhost" || host === "::1" || /^127(\.\d{1,3}){3}$/.test(host);
}

/** Writes an attempt down. @throws where it leads anywhere but to this computer */
function allowOnlyLoopback(what: string, host: string): void {
  write(what, host, isLoopback(host));
  if (!isLoopback(host)) throw new Error(`${what} to ${host} was refused.`);
}

type Callable = (...given: unknown[]) => unknown;

/** Puts a look at its arguments before a function of a module or a prototype. */
function guard(holder: object, name: string, hostOf: (given: readonly unknown[]) => string, what = name): void {
  const functions = holder as Record<string, Callable>;
  const original = functions[name];
  if (typeof original !== "function") throw new Error(`There is no ${name} to guard.`);
  functions[name] = function guarded(this: unknown, ...given: unknown[]) {
    allowOnlyLoopback(what, hostOf(given));
    return original.apply(this, given);
  };
}

/** The host in the arguments of `connect` and `listen`: options, or a port and a host; a pipe by its path. */
function hostOfSocket(given: readonly unknown[]): string {
  const [first, second] = Array.isArray(given[0]) ? (given[0] as readonly unknown[]) : given;
  if (typeof first === "object" && first !== null) {
    const { host, path } = first as { readonly host?: string; readonly path?: string };
    return host ?? (path === undefined ? "localhost" : `pipe ${path}`);
  }
  if (typeof first === "string" && !/^\d+$/.test(first)) return `pipe ${first}`;
  return typeof second === "string" ? second : "localhost";
}

function hostOfAddress([first]: readonly unknown[]): string {
  if (typeof first === "string" || first instanceof URL) return new URL(first).hostname.replace(/^\[|\]$/g, "");
  const { hostname, host, url } = first as {
    readonly hostname?: string;
    readonly host?: string;
    readonly url?: string;
  };
  return url === undefined ? (hostname ?? host ?? "localhost") : new URL(url).hostname;
}

const firstText = ([first]: readonly unknown[]): string => String(first);
const anywhere = (): string => "a datagram";

guard(net.Socket.prototype, "connect", hostOfSocket, "socket");
guard(net.Server.prototype, "listen", (given) => {
  const host = hostOfSocket(given);
  // without a host a server listens to every network
  return typeof given[1] === "string" || host !== "localhost" ? host : "every address";
});
for (const module of [http, https]) {
  guard(module, "request", hostOfAddress, "request");
  guard(module, "get", hostOfAddress, "request");
}
guard(http2, "connect", hostOfAddress, "request");
for (const name of ["bind", "connect", "send"]) guard(dgram.Socket.prototype, name, anywhere, "datagram");
for (const holder of [dns, dns.promises]) {
  for (const name of ["lookup", "resolve", "resolve4", "resolve6", "resolveAny", "reverse"]) {
    guard(holder, name, firstText, "name");
  }
}
guard(globalThis, "fetch", hostOfAddress);
syncBuiltinESMExports();
write("guarded", "", true);
