import { readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import type { HostApi } from "../boundary/host-api.ts";
import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import { fileStem } from "../files/recording-names.ts";
import { RequestRefused, telling } from "../refusals/request-refused.ts";
import { type MergedArchive, mergeOpened } from "../register/archive/merge-archive.ts";
import { type ArchiveReading, withArchive } from "../register/archive/read-archive.ts";
import { writeArchive } from "../register/archive/write-archive.ts";
import type { Register } from "../register/register.ts";
import { passingPath } from "../register/register-folder.ts";
import { requireStrength } from "../register/strength/passphrase-strength.ts";
import type { RegisterHome } from "../register-host/register-home.ts";
import { wholePath } from "./backup-handlers.ts";

/** An archive beyond this is written to a place of the person's choice instead of being handed to the page. */
const mostBytesHanded = 256 * 1024 * 1024;

/** Archives of one athlete or of the whole register: out as a file or to a place, and in again. */
export function archiveHandlers(home: RegisterHome): Pick<RegisterHandlers, "archive.export" | "archive.import"> {
  return {
    "archive.export": async (request) => {
      await requireStrength(request.passphrase, [home.register.circumstances.who]);
      return request.place === undefined
        ? exportFile(home.register, request)
        : exportTo(home.register, request, request.place);
    },
    "archive.import": ({ bytes, place, passphrase }) => {
      if (place !== undefined) return withArchive(wholePath(place), passphrase, (archive) => takeIn(home, archive));
      if (bytes === undefined) throw new RequestRefused("Choose an archive, or give the place of one.");
      return passing(home.register, (path) => {
        writeFileSync(path, bytes, { mode: 0o600 });
        return withArchive(path, passphrase, (archive) => takeIn(home, archive));
      });
    },
  };
}

/** All of it, or nothing: the file was read before, and nothing here waits. */
function takeIn(home: RegisterHome, archive: ArchiveReading): MergedArchive {
  return home.workspace.whole(() => {
    const reach = { beyond: "everything the archive brought" };
    const merged = home.act("Import an archive", reach, (register) => mergeOpened(register, archive));
    home.workspace.refreshKept();
    return merged;
  });
}

type ExportRequest = HostApi["archive.export"]["request"];

function exportTo(register: Register, { athlete, passphrase }: ExportRequest, place: string) {
  return writeArchive(register, wholePath(place), chosen(athlete, passphrase));
}

function exportFile(register: Register, { athlete, passphrase }: ExportRequest) {
  const code = athlete === undefined ? undefined : register.reads.record("athletes", athlete)?.content.code;
  const day = register.circumstances.now().toISOString().slice(0, 10);
  const name = `${fileStem(code ?? "register")}-${day}.${passphrase === undefined ? "zip" : "sealed"}`;
  return passing(register, (path) => {
    const contents = writeArchive(register, path, chosen(athlete, passphrase));
    nameCopy(register, path, `handed over as ${name}`);
    if (statSync(path).size > mostBytesHanded) {
      throw new RequestRefused("This archive is larger than 256 MB: give a place to write it to.");
    }
    return { ...contents, file: { name, mediaType: "application/octet-stream", bytes: readFileSync(path) } };
  });
}

function chosen(athlete: string | undefined, passphrase: Uint8Array | undefined) {
  return { ...(athlete !== undefined && { athlete }), ...(passphrase !== undefined && { passphrase }) };
}

/** The passing file is nobody's copy: what left is the file under its own name. */
function nameCopy(register: Register, path: string, where: string): void {
  if (register.readOnlyBecause !== undefined) return;
  const copy = register.reads.records("copies").findLast(({ content }) => content.path === path);
  if (copy === undefined) throw new Error("The copy that was just made is not noted.");
  register.writes.act("copy made elsewhere", (changes) =>
    changes.change("copies", copy.id, { ...copy.content, path: where }),
  );
}

/** Lends a place beside the register for a file that is only wanted for a moment. */
async function passing<Result>(register: Register, work: (path: string) => Result | Promise<Result>): Promise<Result> {
  const path = `${passingPath(register.file)}-archive`;
  try {
    return await work(path);
  } catch (error) {
    // What a part of it says of the passing file is true no more.
    throw telling(error, "Nothing was handed over.");
  } finally {
    rmSync(path, { force: true });
  }
}
