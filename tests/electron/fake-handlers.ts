import type { TrialTrace } from "../../core/session/trace-trial.ts";
import type { HostRequestName } from "../../electron/boundary/host-api.ts";
import type { HostHandlers } from "../../electron/boundary/host-handlers.ts";
import type { Workspace } from "../../electron/boundary/workspace-view.ts";
import { noRegisterHandlers } from "../../electron/handlers/register-handlers.ts";

const trace: TrialTrace = {
  trial: {
    file: "b.csv",
    sha256: "0".repeat(64),
    trial: 1,
    status: "analysed",
    plates: [],
    events: [],
    measures: [],
    findings: [],
    seen: false,
    edits: [],
  },
  rateHz: 1000,
  startSample: 3,
  total: Float64Array.of(1.1, -0, 1e-300),
  plates: [{ name: "plate 1", limb: "both", force: Float64Array.of(0.1, 0.2, 0.3) }],
  filtered: Float64Array.of(1, 2, 3),
  velocity: Float64Array.of(Number.NaN, 0, 1 / 3),
  displacement: new Float64Array(0),
  power: new Float64Array(0),
  phases: [],
};

const workspace: Workspace = {
  demo: false,
  sessions: [],
  folder: "",
  recordings: [],
  undo: "",
  redo: "",
  effect: "",
  unsaved: false,
  layouts: [],
  unusableLayouts: [],
};

/** Handlers that remember their calls and answer with fixed content; `fail` makes the next call throw. */
const notWatching = { state: "off" as const, folder: "", revision: 0, writing: [], notTaken: [], taken: 0, next: {} };

export function fakeHandlers() {
  const calls: { readonly name: HostRequestName; readonly request: unknown }[] = [];
  let failure: Error | undefined;
  const answer =
    <Reply>(name: HostRequestName, reply: Reply) =>
    (request: unknown): Reply => {
      calls.push({ name, request });
      const thrown = failure;
      failure = undefined;
      if (thrown !== undefined) throw thrown;
      return reply;
    };
  const handlers = {
    "application.describe": answer("application.describe", {
      version: "0.0.0",
      host: "browser" as const,
      passphraseStore: "absent" as const,
    }),
    "workspace.read": answer("workspace.read", workspace),
    "workspace.openDemo": answer("workspace.openDemo", workspace),
    "workspace.clear": answer("workspace.clear", workspace),
    "workspace.show": answer("workspace.show", workspace),
    "workspace.undo": answer("workspace.undo", workspace),
    "workspace.redo": answer("workspace.redo", workspace),
    "recordings.add": answer("recordings.add", {
      folder: "",
      outcome: "understood" as const,
      message: "",
      sameAs: [],
    }),
    "recordings.endBatch": answer("recordings.endBatch", { places: [] }),
    "recordings.takeOut": answer("recordings.takeOut", workspace),
    "recordings.lines": answer("recordings.lines", { first: 1, lines: [], total: 0 }),
    "recordings.outline": answer("recordings.outline", {}),
    "recordings.assign": answer("recordings.assign", workspace),
    "layouts.remember": answer("layouts.remember", workspace),
    "layouts.rename": answer("layouts.rename", workspace),
    "layouts.remove": answer("layouts.remove", workspace),
    "layouts.import": answer("layouts.import", workspace),
    "layouts.export": answer("layouts.export", { name: "", mediaType: "application/json", bytes: new Uint8Array() }),
    "watch.choose": answer("watch.choose", {}),
    "watch.start": answer("watch.start", notWatching),
    "watch.stop": answer("watch.stop", notWatching),
    "watch.read": answer("watch.read", notWatching),
    "watch.expect": answer("watch.expect", notWatching),
    "recordings.answer": answer("recordings.answer", workspace),
    "session.change": answer("session.change", workspace),
    "cautions.add": answer("cautions.add", workspace),
    "trials.change": answer("trials.change", workspace),
    "trials.keepOrExclude": answer("trials.keepOrExclude", workspace),
    "trials.statePlates": answer("trials.statePlates", workspace),
    "trials.trace": answer("trials.trace", trace),
    "sides.curves": answer("sides.curves", {}),
    "sheet.read": answer("sheet.read", {
      title: "",
      subtitle: "",
      language: "en" as const,
      banner: "",
      blocks: [],
      footer: "",
    }),
    "files.make": answer("files.make", { name: "a", mediaType: "text/csv", bytes: new Uint8Array(1) }),
    ...noRegisterHandlers(),
  } satisfies HostHandlers;
  return {
    handlers,
    calls,
    trace,
    fail(error: Error) {
      failure = error;
    },
  };
}
