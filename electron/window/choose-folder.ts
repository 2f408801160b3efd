import type { Dialog } from "electron";
import type { HostApi } from "../boundary/host-api.ts";

/** Asks for a folder in the system's own dialog; a page never names one that nobody chose or typed. */
export async function chooseFolder(dialog: Pick<Dialog, "showOpenDialog">): Promise<HostApi["watch.choose"]["reply"]> {
  const { canceled, filePaths } = await dialog.showOpenDialog({ properties: ["openDirectory"] });
  const [folder] = filePaths;
  return canceled || folder === undefined ? {} : { folder };
}
