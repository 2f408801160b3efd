import { closeSync, openSync, rmSync, writeSync } from "node:fs";
import { resolve } from "node:path";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { ByteSink } from "./byte-source.ts";
import { finishFile, makePrivateFile, partialPath } from "./register-folder.ts";

/**
 * Writes a file whole or not at all: beside its place under another name, flushed, then renamed. Only its owner may
 * read it.
 * @throws RequestRefused when it cannot be written; then nothing is left of it
 */
export function writeFileThrough<Result>(path: string, write: (sink: ByteSink) => Result): Result {
  const place = resolve(path);
  const partial = partialPath(place);
  try {
    makePrivateFile(partial);
    const file = openSync(partial, "w");
    let result: Result;
    try {
      result = write(sinkInto(file));
    } finally {
      closeSync(file);
    }
    finishFile(partial, place);
    return result;
  } catch (error) {
    rmSync(partial, { force: true });
    throw diskTrouble(error, path) ?? error;
  }
}

/** @param file the descriptor of an open file, which stays open at the end */
export function sinkInto(file: number): ByteSink {
  return {
    write: (bytes) => {
      let written = 0;
      while (written < bytes.byteLength) written += writeSync(file, bytes, written);
    },
    end: () => undefined,
  };
}

const reasons: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EFBIG: "the disk has no room for a file of this size",
  EDQUOT: "the room allowed to this user is used up",
  EACCES: "the folder may not be written to by this user",
  EPERM: "the folder may not be written to by this user",
  EROFS: "the disk may only be read",
  ENOENT: "its folder is not there",
  ENOTDIR: "its folder is not there",
};

/** What a failure of the machine means to a person; undefined for anything else. */
export function diskTrouble(error: unknown, path: string): RequestRefused | undefined {
  const code = error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";
  const reason = reasons[code];
  return reason === undefined
    ? undefined
    : new RequestRefused(`${path} was not written: ${reason}. Nothing was left half-written.`);
}
