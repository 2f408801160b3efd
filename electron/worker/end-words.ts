import type { HostRequestName } from "../boundary/host-api.ts";
import type { HeldRegister } from "../register-host/held-register.ts";
import type { ThreadEnd } from "./host-thread.ts";

/** What a request was about, where it names no file. */
const doings: Readonly<Record<string, string>> = {
  archive: "an archive was written or read",
  athletes: "the list of athletes was read",
  backups: "a backup was made or read",
  bin: "the bin was looked at",
  files: "a sheet or a file of results was made",
  layouts: "the saved layouts were changed",
  records: "records of the register were changed",
  register: "the register was opened or changed",
  sessions: "a session of the register was opened",
  sheet: "the sheet was made",
  sides: "the sides were compared",
};

/** What came to its limit, and on what: to whoever asked for it, and to everybody who looks at the screen. */
export function endWords(end: ThreadEnd, lastRegister: HeldRegister | undefined): string {
  const [first] = end.waiting;
  const on = end.file?.path ?? (first === undefined ? undefined : fileOf(first.name, first.request));
  const what = on ?? "What the program worked on";
  const doing = on === undefined && first !== undefined ? ` while ${doingOf(first.name)}` : "";
  const why = {
    memory: `${what} took more memory than the program has for one file${doing}, and was put aside.`,
    time: `${what} took more time than the program has for one file${doing}, and was put aside.`,
    broken: `The part of the program that computes came to an unexpected end${doing}${on === undefined ? "" : ` at ${on}`}.`,
    locked: "",
  }[end.kind];
  const locked = lastRegister?.unlocked === true ? " The register is locked again: give its passphrase to go on." : "";
  return `${why} That part was started again with what was open, and goes on watching a folder that was watched.${locked}`;
}

/** To whoever had asked for something else meanwhile. */
export function notDoneWords(end: ThreadEnd): string {
  return end.kind === "locked"
    ? "The register was locked before this was begun; it was not done. Ask for it again."
    : "The part of the program that computes came to an end before this was begun; it was not done. Ask for it again.";
}

function doingOf(name: HostRequestName): string {
  return doings[name.split(".", 1)[0] ?? ""] ?? "the sessions were computed";
}

/** The file that a request brought or named. */
function fileOf(name: HostRequestName, request: unknown): string | undefined {
  const { path, place } = request as { readonly path?: unknown; readonly place?: unknown };
  const named = name === "recordings.add" || name.startsWith("backups.") ? (path ?? place) : place;
  return typeof named === "string" ? named : undefined;
}
