import { isAbsolute } from "node:path";
import type { BackupChoice } from "../boundary/copy-requests.ts";
import type { RegisterHandlers } from "../boundary/host-handlers.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { backUpTo, makeDailyBackup } from "../register/backups.ts";
import { previewBackup, restoreBackup } from "../register/restore-backup.ts";
import { requireStrength } from "../register/strength/passphrase-strength.ts";
import type { RegisterHome } from "../register-host/register-home.ts";

type Names = "backups.make" | "backups.preview" | "backups.restore";

/** Backups of the register: made beside it and elsewhere, and going back to one. */
export function backupHandlers(home: RegisterHome): Pick<RegisterHandlers, Names> {
  return {
    "backups.make": async ({ place, passphrase }) => {
      if (place === undefined) return { path: await makeDailyBackup(home.register) };
      await requireStrength(passphrase, [home.register.circumstances.who]);
      await backUpTo(home.register, wholePath(place), passphrase);
      return { path: place };
    },
    "backups.preview": (choice) => previewBackup(home.register, wholePath(choice.path), passphrasesOf(choice)),
    "backups.restore": async (choice) => {
      if (home.watch !== undefined && home.watch.read().state !== "off")
        throw new RequestRefused("Stop watching the folder first; nothing was changed.");
      await restoreBackup(home.register, wholePath(choice.path), passphrasesOf(choice));
      home.beganAnew();
      home.attend();
      return home.workspace.read();
    },
  };
}

/** A path as a person gives it: whole, so that it means the same wherever the program was started. */
export function wholePath(path: string): string {
  if (!isAbsolute(path)) throw new RequestRefused("Give the file with its whole path, from the disk on.");
  return path;
}

function passphrasesOf({ filePassphrase, registerPassphrase }: BackupChoice) {
  return {
    ...(filePassphrase !== undefined && { file: filePassphrase }),
    ...(registerPassphrase !== undefined && { register: registerPassphrase }),
  };
}
