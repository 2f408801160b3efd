import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { archiveByteLimit } from "../../core/recording/size-limit.ts";
import type { BackupPreview, CheckedCopy, CopyList } from "../register/register-views.ts";
import type { MadeFile } from "./made-file.ts";
import type { ImportedArchive } from "./register-replies.ts";
import { nothing, request } from "./request.ts";
import { bytesUpTo, id, line, passphrase, place } from "./request-parts.ts";
import type { Workspace } from "./workspace-view.ts";

/** The name of a file, or an identifier. */
const copyKey = line(255).min(1);

/** Where a backup lies, and the passphrases it may need: of a sealed file, and of the register inside. */
const backupChoice = z.strictObject({
  path: place,
  filePassphrase: passphrase.exactOptional(),
  registerPassphrase: passphrase.exactOptional(),
});

export type BackupChoice = SchemaType<typeof backupChoice>;

/** Copies of the register: those that are known, backups and archives. */
export const copyRequests = {
  /** Every copy of the register that is known, kept beside it or elsewhere. */
  "copies.read": request(nothing).replies<CopyList>(),
  /** Checks one of them as far as the keys at hand go, and keeps when; the passphrase is that of its envelope. */
  "copies.verify": request(
    z.strictObject({ key: copyKey, passphrase: passphrase.exactOptional() }),
  ).replies<CheckedCopy>(),
  /** Takes a copy elsewhere off the list, of which the person says that it is no longer there. */
  "copies.forget": request(z.strictObject({ key: copyKey })).replies<Workspace>(),
  /** Beside the register, or at a place of the person's choice, there under a passphrase if one is given. */
  "backups.make": request(
    z.strictObject({ place: place.exactOptional(), passphrase: passphrase.exactOptional() }),
  ).replies<{ readonly path: string }>(),
  "backups.preview": request(backupChoice).replies<BackupPreview>(),
  "backups.restore": request(backupChoice).replies<Workspace>(),
  /** One athlete, or the whole register; as a file for the person, or at a place of their choice. */
  "archive.export": request(
    z.strictObject({
      athlete: id.exactOptional(),
      passphrase: passphrase.exactOptional(),
      place: place.exactOptional(),
    }),
  ).replies<{ readonly records: number; readonly recordings: number; readonly file?: MadeFile }>(),
  "archive.import": request(
    z.strictObject({
      bytes: bytesUpTo(archiveByteLimit, "64 MB").exactOptional(),
      place: place.exactOptional(),
      passphrase: passphrase.exactOptional(),
    }),
  ).replies<ImportedArchive>(),
};
