import type { FileInspection } from "../../core/recording/file-inspection.ts";

/** One file as inspected. */

export type InspectedFile = { readonly file: string; readonly sha256: string; readonly bytes: number } & FileInspection;
