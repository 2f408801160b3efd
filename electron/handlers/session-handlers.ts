import type { HostApi } from "../boundary/host-api.ts";
import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import type { SessionNotes } from "../boundary/record-requests.ts";
import { writtenCautions } from "../cautions/add-cautions.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { readLimits } from "../register/clinic-limits.ts";
import { importSession } from "../register/import-sessions.ts";
import type { RecordContent } from "../register/record-schemas.ts";
import type { Register } from "../register/register.ts";
import { describedAthlete } from "../register/session-conversion.ts";
import { editedContent } from "../register-host/edited-content.ts";
import { freeFolder, keptSession } from "../register-host/kept-session.ts";
import type { RegisterHome } from "../register-host/register-home.ts";

type Names = "sessions.open" | "sessions.start" | "sessions.note" | "sessions.keep";

/** Sessions of the register: opening, beginning, noting, and taking in what lives in memory alone. */
export function sessionHandlers(home: RegisterHome): Pick<RegisterHandlers, Names> {
  return {
    "sessions.open": ({ session }) => {
      home.show(session);
      return home.workspace.read();
    },
    "sessions.start": (request) => {
      const { athlete } = request;
      const code = home.register.reads.record("athletes", athlete)?.content.code ?? "";
      const reach = { beyond: `which sessions athlete ${code} has` };
      home.act("Begin session", reach, (register) => start(register, request));
      home.show(request.session);
      return home.workspace.read();
    },
    "sessions.note": (request) => {
      const { session } = request;
      const folder = home.workspace.sessions.find(({ keptAs }) => keptAs === session)?.folder;
      const reach = folder === undefined ? { beyond: "a session that is not open" } : { folder };
      home.act("Note about the session", reach, (register) => note(register, request));
      home.workspace.refreshKept(folder);
      return home.workspace.read();
    },
    "sessions.keep": (request) => {
      keep(home, request);
      return home.workspace.read();
    },
  };
}

function start(register: Register, { session, athlete, plan }: HostApi["sessions.start"]["request"]): void {
  const page = register.reads.athletePage(athlete);
  if (page === undefined) throw new RequestRefused("This athlete is no longer in the register; nothing was changed.");
  const labels = new Set(page.sessions.map((each) => each.session.content.folder));
  const folder = freeFolder(`${labelOf(page.athlete.content.code)}/${plan.date}`, labels);
  const { cautions, ...planned } = plan;
  const added = writtenCautions(cautions ?? {}, plan.date, register.circumstances.now());
  const { confirmed } = readLimits(register);
  const content = {
    folder,
    ...planned,
    ...(added.answers !== undefined && { cautionAnswers: added.answers }),
    ...(added.readings !== undefined && { readings: added.readings }),
    ...(added.opening !== undefined && { gateOpenings: [added.opening] }),
    ...(confirmed !== undefined && { limits: confirmed }),
  };
  register.writes.act("session added", (changes) => changes.add("sessions", { athlete }, content, session));
}

/** A code as one part of a path. */
function labelOf(code: string): string {
  return /^\.+$/.test(code) ? "athlete" : code.replaceAll(/[/\\]/g, "-");
}

/** Absent parts stay as they were. */
function note(register: Register, { session: id, notes, ...started }: HostApi["sessions.note"]["request"]): void {
  const record = register.reads.record("sessions", id);
  if (record === undefined || record.binned) {
    throw new RequestRefused("This session is no longer in the register; nothing was changed.");
  }
  const about = Object.keys(notes);
  const startedFrom = started.before && { before: only(started.before, about) };
  const content: RecordContent<"sessions"> = {
    ...record.content,
    ...editedContent(only(record.content, about), notes, { ...started, ...startedFrom }),
  };
  register.writes.act("session changed", (changes) => changes.change("sessions", id, content));
}

function only(content: object, names: readonly string[]): SessionNotes {
  return Object.fromEntries(Object.entries(content).filter(([name]) => names.includes(name)));
}

/** The session in memory becomes one of the register, with everything that was decided; it stays where it is shown. */
function keep(home: RegisterHome, { folder, athlete }: HostApi["sessions.keep"]["request"]): void {
  if (home.isDemo) {
    throw new RequestRefused(
      "The demo's register can be thrown away at any time. Start your own register to keep this session.",
    );
  }
  const session = home.workspace.sessions.find((each) => each.folder === folder);
  if (session === undefined) throw new RequestRefused("This session is no longer open; nothing was changed.");
  if (session.keptAs !== undefined) throw new RequestRefused("This session is in the register already.");
  const { description, findings } = session.stated;
  const reach = { beyond: "which sessions and athletes the register holds" };
  const imported = home.act("Keep the session in the register", reach, (register) =>
    importSession(register, {
      folder,
      files: session.files,
      unreadable: [],
      descriptionFindings: findings,
      description: { ...description, athlete: chosenAthlete(register, athlete) },
    }),
  );
  const { register, workspace } = home;
  workspace.openKept({ ...keptSession(register, imported.session, new Set()), folder });
}

function chosenAthlete(register: Register, chosen: HostApi["sessions.keep"]["request"]["athlete"]) {
  if ("code" in chosen) {
    if (register.reads.athletes().some(({ code }) => code === chosen.code)) {
      throw new RequestRefused(`There is an athlete with the code ${chosen.code} already; choose it from the list.`);
    }
    return chosen;
  }
  const record = register.reads.record("athletes", chosen.id);
  if (record === undefined || record.binned) throw new RequestRefused("This athlete is no longer in the register.");
  return describedAthlete(record.content);
}
