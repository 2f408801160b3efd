import type { C3dReading } from "./c3d/c3d-reading.ts";
import type { TableReading } from "./request.ts";

/** What was understood of a file, by its kind. */
export type FileReading = TableReading | C3dReading;
