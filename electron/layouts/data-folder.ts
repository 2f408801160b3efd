import { homedir } from "node:os";
import { join } from "node:path";

/** What of the machine decides where a person's own data lie. */
export interface DataPlace {
  readonly platform: NodeJS.Platform;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/** The folder of this person's data: COUNTERPOISE_DATA where it is set, else the usual place of the platform. */
export function dataFolder(
  { platform, environment, home }: DataPlace = {
    platform: process.platform,
    environment: process.env,
    home: homedir(),
  },
): string {
  const chosen = environment.COUNTERPOISE_DATA;
  if (chosen !== undefined && chosen !== "") return chosen;
  // Not the roaming folder: athletes' data must not travel to a server with the profile.
  if (platform === "win32") return join(environment.LOCALAPPDATA ?? join(home, "AppData", "Local"), "Counterpoise");
  if (platform === "darwin") return join(home, "Library", "Application Support", "Counterpoise");
  return join(environment.XDG_DATA_HOME || join(home, ".local", "share"), "counterpoise");
}
