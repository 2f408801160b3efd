import { join } from "node:path";
import { passphraseBytes } from "../../../electron/register/passphrase-bytes.ts";
import { bytesOf, jumpText } from "../simulated-recordings.ts";
import { startHostProcess } from "./host-process.ts";
import { searchMemory } from "./process-memory.ts";
import { formsOfPassphrase, formsOfText, keysOf, type Needles, newPassphrase } from "./secrets.ts";

/** What was found in the memory of the host at one moment. */
export interface Moment {
  readonly moment: string;
  readonly megabytes: number;
  /** Of what must not be there once the register is locked: passphrase and keys. */
  readonly secrets: ReadonlyMap<string, number>;
  /** Of what the records say. */
  readonly records: ReadonlyMap<string, number>;
}

const name = "Quillonda Vexbury-Tamsin";

/**
 * A day with a register: it is put under a passphrase, worked in and locked, unlocked with a session shown and locked
 * again. The memory of the host, which goes on all the time, is searched while it is open and after each locking.
 */
export async function walk(dataFolder: string): Promise<readonly Moment[]> {
  const word = newPassphrase();
  const passphrase = () => passphraseBytes(word);
  const text = jumpText("both", 733);
  const recording = new Map([
    ["bytes of the recording", Buffer.from(text.slice(text.length / 2, text.length / 2 + 64))],
  ]);
  const records: Needles = new Map([...formsOfText("name of the athlete", name), ...recording]);
  const file = join(dataFolder, "register.sqlite");
  const moments: Moment[] = [];
  let keys: Needles | undefined;
  const host = await startHostProcess(dataFolder);
  const look = async (moment: string) => {
    keys ??= await keysOf(file, word);
    const secrets: Needles = new Map([...formsOfPassphrase(word), ...keys]);
    const found = searchMemory(host.pid, new Map([...secrets, ...records]));
    const of = (needles: Needles) => new Map([...needles.keys()].map((each) => [each, found.counts.get(each) ?? 0]));
    moments.push({ moment, megabytes: Math.round(found.bytes / 1e6), secrets: of(secrets), records: of(records) });
  };
  try {
    const [athlete, session] = [crypto.randomUUID(), crypto.randomUUID()];
    await host.host.call("register.openOwn", {});
    await host.host.call("records.save", {
      record: { kind: "athletes", id: athlete, content: { code: "QV-1", name } },
    });
    await host.host.call("register.setPassphrase", { passphrase: passphrase() });
    const shown = await host.host.call("sessions.start", { session, athlete, plan: { date: "2026-11-02" } });
    await host.host.call("recordings.add", { path: `${shown.folder}/a.csv`, bytes: bytesOf(text) });
    await host.host.call("workspace.read", {});
    await look("passphrase just set, session shown");
    await host.host.call("register.lock", {});
    await look("locked for the first time");
    await host.host.call("register.unlock", { passphrase: passphrase() });
    await host.host.call("sessions.open", { session });
    await host.host.call("athletes.page", { athlete });
    await look("unlocked, session shown");
    await host.host.call("register.lock", {});
    await look("locked again");
  } finally {
    await host.end();
  }
  return moments;
}

/** The names of what was found at all. */
export function found(counts: ReadonlyMap<string, number>): readonly string[] {
  return [...counts].flatMap(([each, count]) => (count > 0 ? [each] : []));
}
