import { c3dFiles } from "./c3d-files.ts";
import { columnFiles } from "./column-files.ts";
import { dialectFiles } from "./dialect-files.ts";
import { headerFiles } from "./header-files.ts";
import { notDataFiles } from "./not-data-files.ts";
import { timeFiles } from "./time-files.ts";
import type { ZooFile } from "./zoo-file.ts";

/** Every file of the zoo, by name. */
export function zooFiles(): readonly ZooFile[] {
  const files = [
    ...dialectFiles(),
    ...headerFiles(),
    ...columnFiles(),
    ...timeFiles(),
    ...notDataFiles(),
    ...c3dFiles(),
  ];
  return files.sort((one, other) => (one.name < other.name ? -1 : 1));
}
