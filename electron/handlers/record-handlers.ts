import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import type { WrittenKind, WrittenRecord } from "../boundary/record-requests.ts";
import type { BinnedRecord } from "../boundary/register-replies.ts";
import type { Workspace } from "../boundary/workspace-view.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { certificateSections } from "../register/erasing/certificate-words.ts";
import { eraseForGood, finishErasure, previewErasure } from "../register/erasing/erase-for-good.ts";
import type { JournalAction } from "../register/journal-actions.ts";
import type { RecordKey, StoredRecord } from "../register/record-tables.ts";
import type { Register } from "../register/register.ts";
import type { ErasureCertificate } from "../register/register-views.ts";
import { editedContent } from "../register-host/edited-content.ts";
import { withoutRecent, withRecent } from "../register-host/preferences.ts";
import { binnedTitle } from "../register-host/record-titles.ts";
import type { RegisterHome } from "../register-host/register-home.ts";
import type { StepReach } from "../workspace/edit-history.ts";

type Names =
  | "athletes.list"
  | "athletes.page"
  | "records.save"
  | "records.bin"
  | "records.takeOut"
  | "records.previewErasure"
  | "records.erase"
  | "bin.read";

const actions: Readonly<Record<WrittenKind, JournalAction>> = {
  athletes: "athlete changed",
  injuries: "injury or operation changed",
  operations: "injury or operation changed",
  consents: "consent changed",
};

const nouns: Readonly<Record<WrittenKind, string>> = {
  athletes: "athlete",
  injuries: "injury",
  operations: "operation",
  consents: "consent",
};

/** Athletes and what hangs on them: reading, writing, the bin, erasing. */
export function recordHandlers(home: RegisterHome): Pick<RegisterHandlers, Names> {
  const thenRefresh = (): Workspace => {
    home.workspace.refreshKept();
    return home.workspace.read();
  };
  return {
    "athletes.list": ({ filter }) => ({
      athletes: home.register.reads.athletes(filter),
      recent: home.preferences.recent,
    }),
    "athletes.page": ({ athlete }) => {
      const page = home.register.reads.athletePage(athlete);
      if (page === undefined) return {};
      if (home.preferences.recent[0] !== athlete) home.prefer(withRecent(home.preferences, athlete));
      return { page };
    },
    "records.save": (request) => {
      const { record } = request;
      const { reads } = home.register;
      const known = reads.record(record.kind, record.id);
      const words = `${known === undefined ? "Add" : "Change"} ${nouns[record.kind]}`;
      const owner = record.athlete ?? known?.references.athlete;
      const code = record.kind === "athletes" ? record.content.code : codeOf(home.register, owner);
      const content =
        known === undefined ? record.content : editedContent<object>(known.content, record.content, request);
      // The fields of one record of a kind, merged one by one, are one of that kind.
      const merged = { ...record, content } as WrittenRecord;
      home.act(words, { beyond: `the record of athlete ${code}` }, (register) =>
        save(register, merged, known === undefined),
      );
      return thenRefresh();
    },
    "records.bin": (key) => {
      home.act("Move to the bin", inTheBin(home.register, key), (register) => register.writes.moveToBin(key));
      return thenRefresh();
    },
    "records.takeOut": (key) => {
      home.act("Take out of the bin", inTheBin(home.register, key), (register) => {
        if (key.kind === "recordings") refuseTakenName(register, key.id);
        register.writes.takeOutOfBin(key);
      });
      return thenRefresh();
    },
    "records.previewErasure": (key) => previewErasure(home.register, [key]),
    "records.erase": (key) => {
      const certificate = erased(home, key);
      home.beganAnew();
      home.prefer(withoutRecent(home.preferences, key.id));
      home.workspace.refreshKept();
      return { certificate, sections: certificateSections(certificate) };
    },
    "bin.read": () => ({ records: binned(home.register) }),
  };
}

/** Asked again about what is gone already, it goes on with what remained to be done. */
function erased(home: RegisterHome, key: RecordKey): ErasureCertificate {
  const { register } = home;
  const isGone = register.reads.record(key.kind, key.id) === undefined;
  const finished = isGone ? finishErasure(register) : undefined;
  return finished ?? eraseForGood(register, [key], { dataFolder: home.dataFolder });
}

function codeOf(register: Register, athlete: string | undefined): string {
  return (athlete === undefined ? undefined : register.reads.record("athletes", athlete)?.content.code) ?? "";
}

function inTheBin(register: Register, { kind, id }: RecordKey): StepReach {
  const record = register.reads.record(kind, id);
  return {
    beyond: record === undefined ? "what lies in the bin" : `what lies in the bin: ${binnedTitle(register, record)}`,
  };
}

function save(register: Register, record: WrittenRecord, isNew: boolean): void {
  const { kind, id, athlete, content } = record;
  if (kind === "athletes") refuseTakenCode(register, id, content.code);
  else if (athlete === undefined || register.reads.athletePage(athlete) === undefined) {
    throw new RequestRefused("This athlete is no longer in the register; nothing was changed.");
  }
  const action = kind === "athletes" && isNew ? "athlete added" : actions[kind];
  register.writes.act(action, (changes) => {
    if (isNew) changes.add(kind, kind === "athletes" || athlete === undefined ? {} : { athlete }, content, id);
    else changes.change(kind, id, content);
  });
}

function refuseTakenCode(register: Register, id: string, code: string): void {
  const other = register.reads.athletes().find((each) => each.code === code && each.id !== id);
  if (other !== undefined) throw new RequestRefused(`Another athlete has the code ${code}; nothing was changed.`);
}

/** Two recordings of one name in a session could not be told apart. */
function refuseTakenName(register: Register, id: string): void {
  const { references, content } = register.reads.record("recordings", id) ?? {};
  const session = references?.session === undefined ? undefined : register.reads.describedSession(references.session);
  if (session?.recordings.some((each) => each.id !== id && each.content.path === content?.path)) {
    throw new RequestRefused(
      `Another recording called ${content?.path} is in this session now; nothing was changed. Take that one out first.`,
    );
  }
}

function binned(register: Register): readonly BinnedRecord[] {
  // What was said of a trial comes back by undo; alone it is nothing a person threw away.
  const thrownAway = register.reads.bin().filter(({ kind }) => kind !== "trials");
  return thrownAway.map((record: StoredRecord) => ({
    kind: record.kind,
    id: record.id,
    title: binnedTitle(register, record),
  }));
}
